using System.Globalization;
using MenuLab.Core.Pantry;
using MenuLab.Core.Quantities;
using MenuLab.Core.Solutions;

namespace MenuLab.Core.Preps;

/// <summary>Works a recipe out: what comes out, how much of it, and what nobody knows.</summary>
public static class PrepProcess
{
    private const double OverSteepedMinutes = 5;
    private const double OverSteepedCelsius = 90;
    private const double MuchLeafPerMillilitre = 0.02;
    private const double InversionPh = 3.5;
    private const double FridgeCelsius = 4;

    /// <summary>Works a recipe out.</summary>
    /// <param name="recipe">The recipe.</param>
    /// <param name="compositionOf">What an ingredient is made of; null for one that is not there.</param>
    /// <param name="costPerGram">Net cost per gram; null as a function or as an answer means unpriced.</param>
    /// <returns>The outcome, or problems with the field of each.</returns>
    /// <remarks>
    /// Source: mass balance of each step; models of <see cref="Evaporation"/>, <see cref="Infusion"/> and <see cref="SolidRules"/>. What has no model
    /// is asked for: until it is answered the figures stand between the bounds of the ask, and where nothing bounds them they are unknown.
    /// Valid for: what a bar makes in a pot. Error: told in the ranges, to first order.
    /// </remarks>
    public static Result<PrepOutcome> Work(RecipeVersion recipe, Func<IngredientId, Composition?> compositionOf, Func<IngredientId, double?>? costPerGram = null)
    {
        var lines = new (PrepLine, Composition)[recipe.Lines.Count];
        for (var i = 0; i < lines.Length; i++)
        {
            if (compositionOf(recipe.Lines[i].Ingredient) is not { } composition)
            {
                return Result.Invalid<PrepOutcome>(new Problem(
                    RecipeVersion.LineField(i, nameof(PrepLine.Ingredient)), $"Line {i + 1} is an ingredient that nobody has; choose another."));
            }
            lines[i] = (recipe.Lines[i], composition);
        }

        var work = new PrepWork();
        var ledger = new List<LedgerEntry>(recipe.Steps.Count);
        var massTellsWater = false;
        var strained = false;
        for (var step = 0; step < recipe.Steps.Count; step++)
        {
            ledger.Add(Do(work, step, recipe.Steps[step], lines));
            if (work.Talk.Problems.Count > 0)
            {
                return Result.Invalid<PrepOutcome>(work.Talk.Problems);
            }
            massTellsWater |= recipe.Steps[step] is Heat { WeighedGrams: null };
            strained |= ledger[^1].StrainedGrams > 0;
        }
        if (!(work.Pot.Grams > 0))
        {
            return Result.Invalid<PrepOutcome>(new Problem(nameof(RecipeVersion.Steps), "Nothing is left in the pot; check weights and yields."));
        }
        if (IsBeyondModels(work.Pot))
        {
            return Result.Invalid<PrepOutcome>(new Problem(
                nameof(RecipeVersion.Steps), "Next to nothing is left of the liquid, and no model knows so dry a thing; boil or press off less."));
        }
        Remarks(work, recipe);
        return Result.Ok(Outcome(work, recipe, ledger, costPerGram, massTellsWater && !strained));
    }

    // Water 1, spirit 0.8, dry salt 2.2 g/mL: outside 0.5 to 2.5 a volume residual has outgrown what it belonged to.
    private static bool IsBeyondModels(Pot pot)
    {
        var grams = pot.LiquidGrams;
        var density = grams / Density.Millilitres(new Liquid(pot.Liquid));
        return grams > 0 && !(density >= 0.5 && density <= 2.5);
    }

    private static LedgerEntry Do(PrepWork work, int step, PrepStep of, (PrepLine, Composition)[] lines)
    {
        var before = work.Pot;
        var added = 0.0;
        if (of is AddingStep adding)
        {
            var joining = new List<(PrepLine Line, Composition)>(adding.Lines.Count);
            foreach (var line in adding.Lines)
            {
                joining.Add(lines[line]);
            }
            work.Add(joining);
            foreach (var (line, _) in joining.OrderBy(l => l.Line.Grams))
            {
                added += line.Grams;
            }
        }
        var model = new StepModels(step, of, work.Pot, work.Talk).Model();
        if (work.Talk.Problems.Count > 0)
        {
            return default;
        }
        var infuses = of is Steep or Rest or Heat or Reduce or Ferment;
        var wetted = infuses ? work.Pot.Solids.ConvertAll(s => s.Wetted).ToArray() : [];
        if (!ReferenceEquals(model, StepModel.Nothing))
        {
            work.Do(model);
        }
        if (infuses)
        {
            work.AfterInfusion(step, wetted);
        }
        Opens(work, of);
        if (new StepModels(step, of, work.Pot, work.Talk).Spilt() is { } spilt)
        {
            work.Do(spilt);
        }
        StepRemarks(work, step, of);
        var after = work.Pot;
        return new LedgerEntry(
            step, of.Word, added, after.GasIn - before.GasIn, after.Evaporated - before.Evaporated, after.GasOut - before.GasOut,
            after.Strained - before.Strained, after.Spilt - before.Spilt, after.LiquidGrams, after.SolidGrams);
    }

    /// <summary>What nobody knows any more after a step.</summary>
    private static void Opens(PrepWork work, PrepStep of)
    {
        switch (of)
        {
            case Clarify { By: ClarifiedBy.Milk }:
                work.Open(Bits(Component.Protein, Component.Fat, Component.Fibre, Component.Tannin, Component.Bitter, Component.Charge));
                break;
            case Clarify:
                work.Open(Component.Fibre.Bit());
                break;
            case Ferment:
                var all = Composition.TotalSugarKnown | Composition.TotalAcidKnown | Composition.SolidsKnown;
                for (var c = Component.Ethanol; c <= Component.Charge; c++)
                {
                    all |= c.Bit();
                }
                work.Open(all);
                break;
            case Carbonate:
                work.Caveats |= CompositionCaveats.Carbonated;
                break;
            case Heat or Reduce:
                work.Caveats &= ~CompositionCaveats.Carbonated;
                break;
        }
    }

    private static ulong Bits(params ReadOnlySpan<Component> components)
    {
        var bits = 0UL;
        foreach (var component in components)
        {
            bits |= component.Bit();
        }
        return bits;
    }

    private static void StepRemarks(PrepWork work, int step, PrepStep of)
    {
        if (of is Steep steep && work.Pot.Solids.Exists(s => s.Kind == SolidKind.TeaLeaf))
        {
            var leaf = work.Pot.Solids.Where(s => s.Kind == SolidKind.TeaLeaf).Sum(s => s.StartGrams);
            var millilitres = Density.Millilitres(new Liquid(work.Pot.Liquid));
            if ((steep.Minutes > OverSteepedMinutes && steep.Celsius > OverSteepedCelsius) || leaf > MuchLeafPerMillilitre * millilitres)
            {
                work.Talk.Notes.Add(new PrepNote(
                    step, PrepNoteKind.OverSteeped,
                    "More than 5 min above 90 °C, or more than 2 g of leaf per 100 mL: it grows astringent in a way that is not modelled. Taste it."));
            }
            if (steep.Celsius < Infusion.ColdBelowCelsius)
            {
                work.Talk.Notes.Add(new PrepNote(step, PrepNoteKind.Estimate, "What cold water takes from tea is extrapolated and capped: an estimate."));
            }
        }
        if (of is Steep { Stop: SteepStop.Cooling })
        {
            work.Talk.Notes.Add(new PrepNote(step, PrepNoteKind.Estimate, "Solids that stay in go on giving while it cools; that is not counted."));
        }
    }

    private static void Remarks(PrepWork work, RecipeVersion recipe)
    {
        var liquid = new Liquid(work.Pot.Liquid);
        if (!(liquid.Grams > 0))
        {
            return;
        }
        var notes = work.Talk.Notes;
        if (work.Pot.SolidGrams > 0)
        {
            notes.Add(new PrepNote(-1, PrepNoteKind.SolidsStillIn, "Solids are still in it; the figures are those of the liquid."));
        }
        var sucrose = liquid[Component.Sucrose] + liquid[Component.SugarNotToldApart];
        var saturation = SucroseDensity.SaturationBrix(FridgeCelsius);
        if (100 * sucrose > saturation * (sucrose + liquid[Component.Water]))
        {
            notes.Add(new PrepNote(
                -1, PrepNoteKind.MayCrystallise,
                string.Create(CultureInfo.InvariantCulture, $"More sugar than water holds at {FridgeCelsius} °C ({saturation:0.0} Brix): it may crystallise in the refrigerator.")));
        }
        var ph = PrepFigures.Value(work.Pot.Liquid, PrepFigure.Ph);
        if (ph < InversionPh && sucrose > 0.01 * liquid.Grams && recipe.Steps.Any(s => s is Heat or Reduce))
        {
            notes.Add(new PrepNote(
                -1, PrepNoteKind.Inversion,
                "Heated so sour, sucrose turns into glucose and fructose: sweetness falls by at most 5 %, Brix rises by at most 5 %. Not counted."));
        }
    }

    private static PrepOutcome Outcome(
        PrepWork work, RecipeVersion recipe, List<LedgerEntry> ledger, Func<IngredientId, double?>? costPerGram, bool massTellsWater)
    {
        var content = work.Content();
        double added = 0, most = 0;
        foreach (var entry in ledger)
        {
            added += entry.AddedGrams;
            most += entry.AddedGrams + entry.GasInGrams;
        }
        return new PrepOutcome(content.UnknownPercent)
        {
            Recipe = recipe,
            Composition = content.Composition,
            Grams = Range(content.Grams, content.GramsUncertainty, most, "g"),
            Millilitres = Range(content.Millilitres, content.MillilitresUncertainty, double.PositiveInfinity, "mL"),
            YieldPercent = Range(100 * content.Grams / added, 100 * content.GramsUncertainty / added, 100 * most / added, "%"),
            Ledger = ledger,
            Asks = work.Talk.Asks,
            Notes = work.Talk.Notes,
            Cost = Cost(recipe, costPerGram, content.Grams),
            MassTellsWater = massTellsWater,
        };
    }

    private static Estimate Range(double value, double u, double most, string unit) =>
        new(value, Math.Max(0, value - 1.96 * u), Math.Max(value, Math.Min(most, value + 1.96 * u)), unit, 0);

    private static PrepCost Cost(RecipeVersion recipe, Func<IngredientId, double?>? costPerGram, double grams)
    {
        double total = 0;
        var unpriced = 0;
        foreach (var line in recipe.Lines.OrderBy(l => l.Ingredient).ThenBy(l => l.Grams))
        {
            if (costPerGram?.Invoke(line.Ingredient) is { } perGram)
            {
                total += line.Grams * perGram;
            }
            else
            {
                unpriced++;
            }
        }
        return new PrepCost(total, total / grams, unpriced);
    }
}
