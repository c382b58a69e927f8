using MenuLab.Core.House;
using MenuLab.Core.Pantry;

namespace MenuLab.Core.Drafts.Reading;

/// <content>How much: the readings of an amount, and what is asked about it.</content>
internal sealed partial class LineReader
{
    // Nobody pours less than this many mL by a bare number, or more than that many ounces into one glass.
    private const double LeastBareMillilitres = 4;
    private const double MostBareOunces = 8;
    private const double MostBareDashes = 10;
    private const double MostBarePieces = 6;

    private static string? NoAmountProblem(Clause clause, Place place, bool isEqualPart)
    {
        if (clause.HasAmount || isEqualPart || place != Place.In || clause.Says(Sense.Top) || clause.Says(Sense.Float))
        {
            return null;
        }
        if (clause.Says(Sense.OnTop) && clause.Unit is null)
        {
            return null;
        }
        if (clause.Unit is null)
        {
            return "How much?";
        }
        return clause.Unit is Unit.Millilitre or Unit.Centilitre or Unit.Litre or Unit.FluidOunce or Unit.Gram or Unit.Kilogram or Unit.WeightOunce or Unit.Pound or Unit.Cup or Unit.Part
            ? "The number in front of the unit is missing: how much?"
            : null;
    }

    private Outcome AskHowMuch(Clause clause, string problem, IReadOnlyList<Vocabulary.Alias> aliases, bool known, string named, LineSpec spec, int line, int column, string typed)
    {
        var offered = known || aliases.Count > 0 ? Narrow(aliases, Unit.Millilitre, spec, clause) : Near(clause);
        if (offered.Count == 0 && !known)
        {
            return Unread($"No amount, and “{named}” is not in the pantry: write how much and what.");
        }
        return new Outcome(
            new Pending
            {
                Text = typed, Line = line, Column = column, Specs = [spec], Ingredients = [.. offered.Select(a => (a.Ingredient, (string?)null))], Asks = problem,
                NewName = known ? null : named,
            },
            null);
    }

    /// <summary>The readings of the amount, and what must be asked about them.</summary>
    private (IReadOnlyList<LineSpec> Specs, string? Asks) Amounts(Clause clause, LineSpec spec, IReadOnlyList<Vocabulary.Alias>? aliases, bool isEqualPart = false)
    {
        if (isEqualPart)
        {
            return ([spec with { Amount = 1, Low = 1, High = 1, Unit = Unit.Part }], null);
        }
        if (clause.Amount is not { } amount)
        {
            return (WithoutFigure(clause, spec), null);
        }
        spec = spec with { Amount = amount.Value, Low = amount.Low, High = amount.High };
        if (!double.IsNaN(clause.Times))
        {
            var times = spec with { Amount = amount.Value * clause.Times, Low = amount.Low * clause.Times, High = amount.High * clause.Times, Unit = clause.Unit ?? settings.BareNumber };
            return ([times, times with { Amount = amount.Value, Low = amount.Low, High = amount.High }], "Is it poured so many times, or once?");
        }
        if (amount.HasTwoReadings)
        {
            var unit = clause.Unit ?? settings.BareNumber;
            return ([spec with { Amount = amount.Grouped, Low = amount.Grouped, High = amount.Grouped, Unit = unit }, spec with { Unit = unit }],
                $"{HouseParse.Echo(amount.Value)} or {HouseParse.Echo(amount.Grouped)}?");
        }
        if (clause.Again is { } again && !SaysTheSame(clause, again))
        {
            return ([spec with { Unit = clause.Unit ?? settings.BareNumber }, spec with { Amount = again.Amount.Value, Low = again.Amount.Low, High = again.Amount.High, Unit = again.Unit ?? settings.BareNumber }],
                "The two amounts are not the same: which one holds?");
        }
        if (clause.EitherSpoon)
        {
            return ([spec with { Unit = Unit.Tablespoon }, spec with { Unit = Unit.Teaspoon }], "Tablespoon or teaspoon?");
        }
        return clause.Unit is { } typedUnit ? WithUnit(clause, spec, typedUnit, aliases) : Bare(clause, spec, amount, aliases);
    }

    private static List<LineSpec> WithoutFigure(Clause clause, LineSpec spec)
    {
        if (spec.Place == Place.Rinse)
        {
            return [spec with { Unit = Unit.Rinse }];
        }
        if (clause.Unit is { } unit)
        {
            spec = spec with { Unit = unit };
            return spec.Place == Place.In && UnitWords.IsCount(unit) && unit is not (Unit.Leaf or Unit.Piece or Unit.Cube)
                && clause.Treatments.Count == 0 && !clause.HasBuild
                ? [(spec with { Place = Place.Garnish, Joins = null }).Assuming("No amount: taken as a garnish.")]
                : [spec.Place == Place.In && !clause.Says(Sense.Top) ? spec.Assuming("No number: taken as one.") : spec];
        }
        if (clause.Says(Sense.Float))
        {
            return [spec with { Unit = Unit.Float }];
        }
        if (clause.Says(Sense.Top))
        {
            return [spec with { Unit = Unit.Top }];
        }
        // "Fennel frond on top", "nutmeg on top": what has no amount and lies on top is a garnish.
        return clause.Says(Sense.OnTop) ? [(spec with { Place = Place.Garnish, Joins = null }).Assuming("No amount: taken as a garnish.")] : [spec];
    }

    private bool SaysTheSame(Clause clause, (Amount Amount, Unit? Unit) again)
    {
        var first = clause.Amount!.Value.Value * UnitWords.Millilitres(clause.Unit ?? settings.BareNumber, measures);
        var second = again.Amount.Value * UnitWords.Millilitres(again.Unit ?? settings.BareNumber, measures);
        // A bracket that weighs what was counted ("1 egg white (33 g)") does not contradict it.
        return double.IsNaN(first) || double.IsNaN(second) || Math.Abs(first - second) <= 0.12 * Math.Max(first, second);
    }

    private (IReadOnlyList<LineSpec>, string?) WithUnit(Clause clause, LineSpec spec, Unit unit, IReadOnlyList<Vocabulary.Alias>? aliases)
    {
        spec = spec with { Unit = unit };
        // Zest by number goes into a syrup or an infusion; a peel or twist lies on the drink.
        var isZest = clause.UnitAt >= 0 && tokens[clause.UnitAt].Plain.StartsWith("zest", StringComparison.Ordinal);
        if (unit == Unit.Peel && !isZest && spec.Place == Place.In && clause.Treatments.Count == 0 && spec.Joins is null && aliases is not null)
        {
            return ([(spec with { Place = Place.Garnish }).Assuming("A peel: taken as a garnish.")], null);
        }
        if (unit == Unit.FluidOunce && aliases is { Count: > 0 } && aliases.All(a => LineMaker.IsSolid(a.Ingredient) || LineMaker.IsPowder(a.Ingredient)))
        {
            var byWeight = (spec with { Unit = Unit.WeightOunce }).Assuming("Read as ounces by weight.");
            return aliases.All(a => a.Ingredient.Kind is IngredientKind.Produce or IngredientKind.NutOrSeed)
                ? ([byWeight], null)
                : ([byWeight, spec], "Ounces by weight, or by the measure?");
        }
        return ([spec], null);
    }

    private (IReadOnlyList<LineSpec>, string?) Bare(Clause clause, LineSpec spec, Amount amount, IReadOnlyList<Vocabulary.Alias>? aliases)
    {
        var house = settings.BareNumber;
        var inHouse = spec with { Unit = house };
        var pieces = spec with { Unit = Unit.Piece };
        var ounces = spec with { Unit = Unit.FluidOunce };
        var millilitres = spec with { Unit = Unit.Millilitre };
        if (spec.Place is Place.Rim)
        {
            // "Half salt rim": half the rim, not half a measure.
            return ([spec with { Amount = double.NaN, Low = double.NaN, High = double.NaN, Treatment = "half" }], null);
        }
        if (clause.Says(Sense.Count))
        {
            return ([pieces], null);
        }
        if (spec.Place is Place.Garnish)
        {
            return ([pieces], null);
        }
        if (spec.IsJuiceOf)
        {
            return ([pieces], null);
        }
        if (aliases is { Count: > 0 } && Counted(clause, amount, aliases) is { } counted)
        {
            return counted switch
            {
                Counting.Pieces => ([pieces], null),
                Counting.WholeFruit when house == Unit.Millilitre => ([pieces], null),
                Counting.WholeFruit => ([inHouse, pieces with { IsJuiceOf = true }], "An ounce of the juice, or a whole fruit?"),
                Counting.Dashes => ([spec with { Unit = Unit.Dash }, inHouse], "Dashes, or the house's unit?"),
                Counting.Weighed => ([spec with { Unit = Unit.Gram }, inHouse], $"Grams, or {UnitNames.Of(house)}?"),
                _ => ([pieces, inHouse], $"Pieces, or {UnitNames.Of(house)}?"),
            };
        }
        if (house == Unit.Millilitre && amount.Low < LeastBareMillilitres)
        {
            return ([ounces, millilitres], $"{HouseParse.Echo(amount.Value)} mL is little: are ounces meant?");
        }
        if (house == Unit.FluidOunce && amount.High > MostBareOunces)
        {
            return ([millilitres, ounces], $"{HouseParse.Echo(amount.Value)} ounces are many: are millilitres meant?");
        }
        return ([inHouse.Assuming($"Read {HouseParse.Echo(amount.Value)} as {UnitNames.Of(house)}, the house's unit.")], null);
    }

    private enum Counting
    {
        Pieces,
        WholeFruit,
        Dashes,
        Weighed,
        Unclear,
    }

    /// <summary>What a bare number counts where it is not poured; null where it is.</summary>
    private Counting? Counted(Clause clause, Amount amount, IReadOnlyList<Vocabulary.Alias> aliases)
    {
        var whole = amount.Value == Math.Floor(amount.Value);
        var first = aliases[0].Ingredient;
        var last = tokens[clause.Name.Max()].Plain;
        if (aliases.All(a => LineMaker.IsSolid(a.Ingredient)))
        {
            var isPlural = PlainText.Singular(last) != last || clause.Name.Select(i => tokens[i].Plain).Any(w => PlainText.Singular(w) != w);
            return isPlural || amount.Value <= MostBarePieces ? Counting.Pieces : Counting.Unclear;
        }
        if (aliases.All(a => a.Ingredient.Kind == IngredientKind.EggOrFoamer && !double.IsNaN(LineMaker.PieceGrams(a.Ingredient, Unit.Piece, false))))
        {
            return whole && amount.Value <= MostBarePieces ? Counting.Pieces : amount.Value > 9 && settings.BareNumber == Unit.Millilitre ? null : Counting.Unclear;
        }
        if (aliases.Any(a => a.Ingredient.Kind == IngredientKind.CitrusJuice && IsFruitWord(a)) && amount.Value < LeastBareMillilitres
            && (whole || amount.Value == 0.5) && (settings.BareNumber == Unit.Millilitre || (whole && !amount.IsFraction)))
        {
            return Counting.WholeFruit;
        }
        if (first.Kind == IngredientKind.Alcohol && first.Key.Contains("bitters", StringComparison.Ordinal) && amount.Value <= MostBareDashes)
        {
            return Counting.Dashes;
        }
        return aliases.All(a => LineMaker.IsPowder(a.Ingredient) || a.Ingredient.Kind == IngredientKind.AcidSaltOrGum) ? Counting.Weighed : null;
    }

    private static bool IsFruitWord(Vocabulary.Alias alias) => !alias.Text.Contains("ju", StringComparison.OrdinalIgnoreCase)
        && !alias.Text.Contains("saft", StringComparison.OrdinalIgnoreCase) && !alias.Text.Contains("zumo", StringComparison.OrdinalIgnoreCase)
        && !alias.Text.Contains("suc", StringComparison.OrdinalIgnoreCase) && !alias.Text.Contains("sumo", StringComparison.OrdinalIgnoreCase)
        && !alias.Text.Contains("lj", StringComparison.OrdinalIgnoreCase);
}
