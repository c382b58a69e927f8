using System.Globalization;
using MenuLab.Core.Solutions;

namespace MenuLab.Core.Preps;

/// <summary>Finds the model of a step for what is in the pot, and says what it asks for or why it cannot be done.</summary>
internal sealed class StepModels(int step, PrepStep of, Pot pot, PrepTalk talk)
{
    private const double ScaleGrams = 1;
    private const double RateUncertainty = 0.10;
    private const double CarbonationUncertainty = 0.05;
    private const double YieldUncertainty = 0.02;
    private const double JugUncertainty = 0.02;
    private const double BrixUncertainty = 0.3;

    // A pan with a fiftieth of what it held is dry at its rim.
    private const double MostBoiledOff = 0.98;

    // A scale and a slip of 0.5 %: above that, more is there than can be.
    private const double WeighedTolerance = 0.005;

    // The pans and rates of practice: 15 cm at 2 g/min per 20 cm to 35 cm at 6.
    private static readonly UsualRange AnyPan = new(9.8, 1.1, 18.4);

    // Juice of anything pressed: the tables of practice run from 30 to 85 % (common practice, no source).
    private static readonly UsualRange AnyJuice = new(0.575, 0.30, 0.85);

    // Pulp that only drips keeps more than pressed pulp and less than its own mass (common practice, no source).
    private static readonly UsualRange DrippingPulp = new(0.575, 0.15, 1);

    private static readonly UsualRange Anything = new(0.5, 0, 1);

    /// <summary>The model, but for what the lines of an adding step bring.</summary>
    public StepModel Model() => of switch
    {
        Toast => ToastModel(),
        Heat heat => HeatModel(heat),
        Steep steep => InfusionModel(steep.Minutes, steep.Celsius, steep.Cut, steep.InBag),
        Rest rest => InfusionModel(60 * rest.Hours, rest.Celsius, LeafCut.Coarse, false),
        Blend => new StepModel((after, _) => PotModels.Blend(after), [], []),
        Press press => PressModel(press),
        Strain strain => StrainModel(strain),
        Clarify clarify => ClarifyModel(clarify),
        Reduce reduce => ReduceModel(reduce),
        Carbonate carbonate => CarbonateModel(carbonate),
        Ferment ferment => FermentModel(ferment),
        _ => StepModel.Nothing,
    };

    /// <summary>A weight after a step that changes no mass of itself: the rest is on the spoon.</summary>
    public StepModel? Spilt()
    {
        if (of.WeighedGrams is not { } weighed || of is Toast or Heat or Reduce or Press or Strain or Clarify or Ferment || !CanWeigh(weighed, pot.Grams))
        {
            return null;
        }
        if (weighed <= pot.SolidGrams)
        {
            Refuse(nameof(PrepStep.WeighedGrams), Say($"weighs {weighed:0.#} g, less than the solids in it ({pot.SolidGrams:0.#} g); weigh again"));
            return null;
        }
        return new StepModel(
            (after, figures) =>
            {
                var liquid = after.LiquidGrams;
                after.Spilt += liquid > 0 ? after.LoseLiquid(Math.Clamp(1 - (figures[0] - after.SolidGrams) / liquid, 0, 1)) : 0;
            },
            [weighed], [ScaleGrams]);
    }

    private StepModel ToastModel()
    {
        if (pot.LiquidGrams > 0)
        {
            Refuse(nameof(PrepStep.WeighedGrams), "comes after liquid went in; put it before, or heat instead");
            return StepModel.Nothing;
        }
        var water = 0.0;
        foreach (var solid in pot.Solids)
        {
            water += solid.Parts[(int)Component.Water];
        }
        Note(PrepNoteKind.Estimate, "Toasting changes aroma and colour; only its loss of water is counted.");
        if (of.WeighedGrams is { } weighed)
        {
            if (!CanWeigh(weighed, pot.Grams))
            {
                return StepModel.Nothing;
            }
            var dry = pot.Grams - water;
            if (weighed < dry)
            {
                Refuse(nameof(PrepStep.WeighedGrams), Say($"weighs {weighed:0.#} g, but {dry:0.#} g of it is not water; weigh again, or check the water of the ingredient"));
                return StepModel.Nothing;
            }
            return new StepModel(
                (after, figures) => PotModels.Toast(after, ShareOfWater(after, after.Grams - figures[0])), [weighed], [ScaleGrams]);
        }
        Asks(AskKind.Weight, nameof(PrepStep.WeighedGrams), "Weigh after toasting: how much water goes is not modelled.", pot.Grams - water, pot.Grams, "g");
        return new StepModel((after, figures) => PotModels.Toast(after, figures[0]), [Anything.Value], [Anything.Uncertainty]);
    }

    private static double ShareOfWater(Pot pot, double grams)
    {
        var water = 0.0;
        foreach (var solid in pot.Solids)
        {
            water += solid.Parts[(int)Component.Water];
        }
        return water > 0 ? grams / water : 0;
    }

    private StepModel InfusionModel(double minutes, double celsius, LeafCut cut, bool inBag) =>
        new((after, figures) => PotModels.Infuse(after, minutes, celsius, cut, inBag, InfusionFigures.From(figures)),
            InfusionFigures.Values, InfusionFigures.Uncertainties(pot, inBag));

    private StepModel HeatModel(Heat heat)
    {
        if (!HasLiquid())
        {
            return StepModel.Nothing;
        }
        var (evaporated, uncertainty) = Evaporated(heat);
        if (talk.Problems.Count > 0)
        {
            return StepModel.Nothing;
        }
        return Boil(heat.Minutes, heat.Celsius, evaporated, uncertainty, (_, figure) => figure, heat.WeighedGrams);
    }

    private (double Grams, double Uncertainty) Evaporated(Heat heat)
    {
        var water = pot.Liquid[(int)Component.Water];
        UsualRange? range = null;
        double grams, u;
        if (heat.WeighedGrams is { } weighed)
        {
            var gone = pot.Grams - weighed;
            if (CanWeigh(weighed, pot.Grams) && gone >= water)
            {
                Refuse(nameof(PrepStep.WeighedGrams), Say($"weighs {weighed:0.#} g: {gone:0.#} g would be gone, and there were {water:0.#} g of water. Weigh again with all that is in the pot"));
            }
            return (Math.Max(0, gone), ScaleGrams);
        }
        if (heat.GramsPerMinute is { } rate)
        {
            (grams, u) = (rate * heat.Minutes, RateUncertainty * rate * heat.Minutes);
        }
        else if (heat.Lid)
        {
            range = Evaporation.CoveredLoss;
            (grams, u) = (pot.LiquidGrams * range.Value.Value, pot.LiquidGrams * range.Value.Uncertainty);
        }
        else if (heat.Watts is { } watts)
        {
            grams = Evaporation.BoiledOffGrams(watts, heat.Hob, heat.Minutes);
            u = Evaporation.EfficiencyUncertainty * grams;
        }
        else
        {
            range = heat.PanCentimetres is { } pan ? Evaporation.SimmeredOffGrams(pan, heat.Minutes)
                : new UsualRange(AnyPan.Value * heat.Minutes, AnyPan.Low * heat.Minutes, AnyPan.High * heat.Minutes);
            (grams, u) = (range.Value.Value, range.Value.Uncertainty);
        }
        var isOpen = heat.GramsPerMinute is null && !heat.Lid && heat.Watts is null && heat.PanCentimetres is null && heat.Minutes > 0;
        // Of a pot that even the narrowest pan would boil dry no weight between nearly all and nearly nothing is left.
        if (isOpen && range!.Value.Low < water)
        {
            // Nothing is known of pan or burner: what is left of a pot is between nearly all and nearly nothing, and the middle is no estimate.
            Asks(
                AskKind.Weight, nameof(PrepStep.WeighedGrams),
                "Weigh the pot before and after, or give the burner's power or the pan's width: without them nobody knows how much boiled off.",
                Math.Max(pot.Grams - water, pot.Grams - range.Value.High), pot.Grams - range.Value.Low, "g");
            (grams, u) = (Math.Min(grams, water / 2), Math.Min(u, water / 4));
        }
        else if (grams >= water)
        {
            Refuse(nameof(Heat.Minutes), Say($"boils {grams:0} g off, but there are {water:0} g of water: it boils dry. Shorten the time or lower the power"));
        }
        return (grams, u);
    }

    private StepModel ReduceModel(Reduce reduce)
    {
        if (!HasLiquid())
        {
            return StepModel.Nothing;
        }
        if (reduce.WeighedGrams is { } weighed)
        {
            Evaporated(new Heat(0) { WeighedGrams = weighed });
            return talk.Problems.Count == 0
                ? Boil(0, 100, Math.Max(0, pot.Grams - weighed), ScaleGrams, (_, figure) => figure, weighed)
                : StepModel.Nothing;
        }
        var now = Reduction.Measure(pot, reduce.To);
        if (double.IsNaN(now))
        {
            Refuse(nameof(Reduce.Target), "is to stop at a Brix, but more than 1 % alcohol by mass makes a refractometer read wrong. Reduce to a volume or a mass");
            return StepModel.Nothing;
        }
        var isBelow = reduce.To == ReduceTo.Brix ? reduce.Target < now : reduce.Target > now;
        if (isBelow)
        {
            Refuse(nameof(Reduce.Target), Say($"is to stop at {reduce.Target:0.#} {Unit(reduce.To)}, but the pot is past it already ({now:0.#}); dilute instead, or change the target"));
            return StepModel.Nothing;
        }
        var tried = pot.Copy();
        PotModels.Evaporate(tried, double.MaxValue, Evaporation.AceticVolatility.Value, AlcoholShare);
        var most = Reduction.Measure(tried, reduce.To);
        if (reduce.To == ReduceTo.Brix ? reduce.Target >= most : reduce.Target <= most)
        {
            Refuse(nameof(Reduce.Target), Say($"is to stop at {reduce.Target:0.#} {Unit(reduce.To)}, but without any water it is {most:0.#}; choose a target before that"));
            return StepModel.Nothing;
        }
        var off = Reduction.GramsTo(pot, reduce.To, reduce.Target, AlcoholShare);
        if (off > MostBoiledOff * pot.LiquidGrams)
        {
            Refuse(nameof(Reduce.Target), Say($"is to stop at {reduce.Target:0.#} {Unit(reduce.To)}: {off:0} g of {pot.LiquidGrams:0} g would boil off, and it burns before that. Choose a target before it"));
            return StepModel.Nothing;
        }
        if (reduce.To == ReduceTo.Millilitres)
        {
            Note(PrepNoteKind.Estimate, "The target is the volume at 20 °C; boiling liquid measures 2 to 4 % more.");
        }
        var u = reduce.To switch
        {
            ReduceTo.Brix => BrixUncertainty,
            ReduceTo.Grams => ScaleGrams,
            _ => JugUncertainty * reduce.Target,
        };
        return Boil(0, 100, reduce.Target, u, (before, target) => Reduction.GramsTo(before, reduce.To, target, AlcoholShare), null);
    }

    private static string Unit(ReduceTo to) => to switch
    {
        ReduceTo.Millilitres => "mL",
        ReduceTo.Grams => "g",
        _ => "Brix",
    };

    // Of the alcohol in a heated pot nobody knows what is left: none to all.
    private double AlcoholShare => pot.Liquid[(int)Component.Ethanol] > 0.001 * pot.LiquidGrams ? Anything.Value : 0;

    /// <summary>Infuses at a temperature, then takes off what a figure says.</summary>
    private StepModel Boil(double minutes, double celsius, double figure, double uncertainty, Func<Pot, double, double> grams, double? weighed)
    {
        var alcohol = AlcoholShare;
        if (alcohol > 0)
        {
            Asks(
                AskKind.Strength, "Strength", "Alcohol boils off at a rate that is not modelled: have the strength measured before saying anything about it.",
                Abv(1), Abv(0), "% vol");
            Note(PrepNoteKind.Alcohol, "Heating does not remove all alcohol.");
        }
        return new StepModel(
            (after, figures) =>
            {
                PotModels.Infuse(after, minutes, celsius, LeafCut.Coarse, false, InfusionFigures.From(figures));
                // A weight decides what is left, however much was there.
                var off = weighed is null ? grams(after, figures[InfusionFigures.Count]) : after.Grams - weighed.Value + figures[InfusionFigures.Count] - figure;
                PotModels.Evaporate(after, Math.Max(0, off), figures[InfusionFigures.Count + 1], figures[InfusionFigures.Count + 2]);
            },
            [.. InfusionFigures.Values, figure, Evaporation.AceticVolatility.Value, alcohol],
            [
                .. InfusionFigures.Uncertainties(pot, false), uncertainty,
                pot.Liquid[(int)Component.Acetic] > 0 ? Evaporation.AceticVolatility.Uncertainty : 0, alcohol > 0 ? Anything.Uncertainty : 0,
            ]);

        // The strength if the most or the least of what leaves is alcohol.
        double Abv(double share)
        {
            var after = pot.Copy();
            PotModels.Evaporate(after, Math.Max(0, weighed is null ? grams(after, figure) : after.Grams - weighed.Value), Evaporation.AceticVolatility.Value, share);
            return PrepFigures.Value(after.Liquid, PrepFigure.Abv);
        }
    }

    private StepModel PressModel(Press press)
    {
        var solids = pot.SolidGrams;
        if (!(solids > 0))
        {
            Refuse(nameof(Press.Yield), "finds nothing to press; put the fruit in first");
            return StepModel.Nothing;
        }
        var soluble = 0.0;
        foreach (var solid in pot.Solids)
        {
            soluble += PotModels.SolubleGrams(solid);
        }
        if (press.WeighedGrams is { } weighed)
        {
            var juice = weighed - pot.LiquidGrams;
            if (juice <= 0 || juice > soluble * (1 + WeighedTolerance))
            {
                Refuse(nameof(PrepStep.WeighedGrams), Say($"gives {juice:0.#} g of juice, but the fruit holds {soluble:0.#} g; the yield would be over 100 %. Weigh the juice again"));
                return StepModel.Nothing;
            }
            return new StepModel((after, figures) => PotModels.Press(after, figures[0] - after.LiquidGrams), [weighed], [ScaleGrams]);
        }
        if (press.Yield is { } yield)
        {
            if (yield * solids > soluble * (1 + WeighedTolerance))
            {
                Refuse(nameof(Press.Yield), Say($"has a yield of {100 * yield:0.#} %, but only {100 * soluble / solids:0.#} % of it can be juice; check the yield"));
                return StepModel.Nothing;
            }
            return new StepModel((after, figures) => PotModels.Press(after, figures[0] * after.SolidGrams), [yield], [YieldUncertainty]);
        }
        Asks(
            AskKind.JuiceYield, nameof(Press.Yield), "Weigh the fruit and its juice once: the yield depends on fruit and press. Until then 30 to 85 %.",
            100 * AnyJuice.Low, 100 * AnyJuice.High, "%");
        return new StepModel(
            (after, figures) => PotModels.Press(after, figures[0] * after.SolidGrams),
            [Math.Min(AnyJuice.Value, soluble / solids)], [AnyJuice.Uncertainty]);
    }

    private StepModel StrainModel(Strain strain)
    {
        if (!HasLiquid())
        {
            return StepModel.Nothing;
        }
        if (strain.WeighedGrams is { } weighed)
        {
            return CanWeigh(weighed, pot.LiquidGrams)
                ? new StepModel((after, figures) => PotModels.Strain(after, Math.Max(0, after.LiquidGrams - figures[0])), [weighed], [ScaleGrams])
                : StepModel.Nothing;
        }
        var kept = new double[pot.Solids.Count];
        var u = new double[kept.Length];
        for (var i = 0; i < kept.Length; i++)
        {
            var solid = pot.Solids[i];
            var drips = solid.Kind == SolidKind.Fruit && !strain.Pressed;
            var known = drips ? null : SolidRules.Kept(solid.Kind);
            var range = known ?? (drips ? DrippingPulp : new UsualRange(1.5, 0, 3));
            kept[i] = range.Value * solid.StartGrams;
            u[i] = range.Uncertainty * solid.StartGrams;
            if (known is null)
            {
                Asks(
                    AskKind.Weight, nameof(PrepStep.WeighedGrams),
                    drips ? "Weigh what came through: how much pulp that only drips keeps is not modelled." : "Weigh what came through: how much this solid keeps is not modelled.",
                    Math.Max(0, pot.LiquidGrams - range.High * solid.StartGrams), pot.LiquidGrams - range.Low * solid.StartGrams, "g");
            }
        }
        var sum = kept.Sum();
        if (sum >= pot.LiquidGrams)
        {
            Refuse(
                nameof(PrepStep.WeighedGrams),
                Say($"leaves nothing: the solids hold {sum:0} g and there are {pot.LiquidGrams:0} g of liquid. Add liquid, or weigh what comes through"));
            return StepModel.Nothing;
        }
        return new StepModel((after, figures) => PotModels.Strain(after, Math.Max(0, figures.Sum())), kept, u);
    }

    private StepModel ClarifyModel(Clarify clarify)
    {
        if (!HasLiquid())
        {
            return StepModel.Nothing;
        }
        if (clarify.By == ClarifiedBy.Milk)
        {
            Note(PrepNoteKind.Allergen, "Milk stays an allergen of a liquid that was cleared with it, however clear it is.");
        }
        if (clarify.WeighedGrams is { } weighed)
        {
            return CanWeigh(weighed, pot.LiquidGrams)
                ? new StepModel((after, figures) => PotModels.Strain(after, Math.Max(0, after.LiquidGrams - figures[0])), [weighed], [ScaleGrams])
                : StepModel.Nothing;
        }
        Asks(AskKind.Weight, nameof(PrepStep.WeighedGrams), "Weigh the clear liquid: how much stays in gel or curd is not modelled.", 0, pot.LiquidGrams, "g");
        return new StepModel(
            (after, figures) => PotModels.Strain(after, Math.Clamp(figures[0], 0, 1) * after.LiquidGrams), [Anything.Value], [Anything.Uncertainty]);
    }

    private StepModel CarbonateModel(Carbonate carbonate)
    {
        if (!HasLiquid())
        {
            return StepModel.Nothing;
        }
        var volumes = carbonate.Volumes ?? VolumesUnder(carbonate.GaugeBar!.Value, carbonate.Celsius!.Value);
        return new StepModel((after, figures) => PotModels.Carbonate(after, figures[0]), [volumes], [CarbonationUncertainty * volumes]);
    }

    private double VolumesUnder(double gaugeBar, double celsius)
    {
        var millilitres = Density.Millilitres(new Liquid(pot.Liquid));
        var abv = 100 * PrepFigures.Form(pot.Liquid, LinearForm.EthanolMillilitres) / millilitres;
        var solids = 1000 * PrepFigures.Form(pot.Liquid, LinearForm.SolubleSolidsGrams) / millilitres;
        if (abv > Carbonation.HighestAbvPercent || solids > Carbonation.HighestSolidsGramsPerLitre)
        {
            Note(PrepNoteKind.Estimate, "How much gas it takes up is taken at the edge of the model: 15 % vol, 300 g/L of solids.");
        }
        return Carbonation.Volumes(gaugeBar, celsius, Math.Min(abv, Carbonation.HighestAbvPercent), Math.Min(solids, Carbonation.HighestSolidsGramsPerLitre));
    }

    private StepModel FermentModel(Ferment ferment)
    {
        if (!HasLiquid())
        {
            return StepModel.Nothing;
        }
        // Of glucose, 51.1 % can become ethanol and 48.9 % gas; sucrose takes up water and gives 53.8 and 51.4 %: standard atomic weights.
        const double alcoholPerSugar = 0.538;
        const double gasPerSugar = 0.514;
        // The juice of fruit goes in as in a rest, and what is left in the fruit ferments with it.
        var sugar = PrepFigures.Form(pot.Liquid, LinearForm.SugarGrams) + pot.Solids.Sum(s => PrepFigures.Form(s.Parts, LinearForm.SugarGrams));
        var alcohol = pot.Liquid[(int)Component.Ethanol] + alcoholPerSugar * sugar;
        var infused = pot.Copy();
        Infuse(infused, InfusionFigures.Values);
        Asks(
            AskKind.Strength, "Strength", "What a ferment makes is not modelled: have the alcohol measured. A refractometer cannot tell it.",
            0, 100 * alcohol / (EthanolDensity.PureAt20 / 1000) / Density.Millilitres(new Liquid(infused.Liquid)), "% vol");
        Asks(AskKind.Titration, "Titration", "Titrate after the ferment: the acids it makes are not modelled.", double.NaN, double.NaN, "g/100 mL");
        Asks(AskKind.Ph, "Ph", "Read the pH after the ferment.", double.NaN, double.NaN, "");
        Note(PrepNoteKind.Alcohol, "A ferment makes alcohol; without a measurement nothing may be claimed of it.");
        if (of.WeighedGrams is { } weighed)
        {
            return CanWeigh(weighed, pot.Grams) ? Model(weighed, ScaleGrams, (after, figure) => after.Grams - figure) : StepModel.Nothing;
        }
        Asks(AskKind.Weight, nameof(PrepStep.WeighedGrams), "Weigh after the ferment: the gas that left is not modelled.", pot.Grams - gasPerSugar * sugar, pot.Grams, "g");
        return Model(gasPerSugar * sugar / 2, gasPerSugar * sugar / 3.92, (_, figure) => figure);

        void Infuse(Pot after, double[] figures) =>
            PotModels.Infuse(after, 24 * 60 * ferment.Days, ferment.Celsius, LeafCut.Coarse, false, InfusionFigures.From(figures));

        StepModel Model(double figure, double uncertainty, Func<Pot, double, double> gas) => new(
            (after, figures) =>
            {
                Infuse(after, figures);
                PotModels.Ferment(after, gas(after, figures[InfusionFigures.Count]));
            },
            [.. InfusionFigures.Values, figure], [.. InfusionFigures.Uncertainties(pot, false), uncertainty]);
    }

    private bool HasLiquid()
    {
        if (pot.LiquidGrams > 0)
        {
            return true;
        }
        Refuse(nameof(PrepStep.WeighedGrams), "finds no liquid in the pot; put some in first");
        return false;
    }

    private bool CanWeigh(double weighed, double there)
    {
        if (weighed <= there * (1 + WeighedTolerance) + ScaleGrams)
        {
            return true;
        }
        Refuse(nameof(PrepStep.WeighedGrams), Say($"weighs {weighed:0.#} g, but there were only {there:0.#} g: a yield of {100 * weighed / there:0} %, over 100 %. Weigh again without the pot"));
        return false;
    }

    private void Refuse(string field, string says) => talk.Problems.Add(new Problem(RecipeVersion.StepField(step, field), Say($"Step {step + 1} ({of.Word}) {says}.")));

    private void Asks(AskKind kind, string field, string text, double low, double high, string unit) =>
        talk.Asks.Add(new Ask(step, kind, RecipeVersion.StepField(step, field), text, low, high, unit));

    private void Note(PrepNoteKind kind, string text) => talk.Notes.Add(new PrepNote(step, kind, text));

    private static string Say(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
