using MenuLab.Core.House;
using MenuLab.Core.Pantry;
using MenuLab.Core.Solutions;

namespace MenuLab.Core.Drafts.Reading;

/// <summary>A line before its ingredient is settled: everything that the text said of it.</summary>
internal sealed record LineSpec
{
    public required string Text { get; init; }

    public double Amount { get; init; } = double.NaN;

    public double Low { get; init; } = double.NaN;

    public double High { get; init; } = double.NaN;

    public Unit Unit { get; init; } = Unit.None;

    public Place Place { get; init; } = Place.In;

    /// <summary>Said in the text; null leaves it to the method.</summary>
    public Joins? Joins { get; init; }

    public string Treatment { get; init; } = "";

    public double StartCelsius { get; init; } = double.NaN;

    public bool IsScant { get; init; }

    public bool IsFat { get; init; }

    public bool IsAbout { get; init; }

    /// <summary>"Juice of 1 lemon", or a whole fruit whose juice is meant.</summary>
    public bool IsJuiceOf { get; init; }

    /// <summary>mL of one part, where a ratio has its total; else NaN.</summary>
    public double PartMillilitres { get; init; } = double.NaN;

    public IReadOnlyList<string> Assumptions { get; init; } = [];

    public LineSpec Assuming(string sentence) => this with { Assumptions = [.. Assumptions, sentence] };
}

/// <summary>Makes a draft line of an ingredient and what was said: mL, grams, their uncertainty and the defaults.</summary>
internal static class LineMaker
{
    // A jigger filled to its line: beverage science, section 14 (ESTIMATE).
    private const double SmallJigger = 1.0;
    private const double LargeJigger = 1.5;
    private const double LargeJiggerFrom = 30;
    private const double Scale = 0.5;
    // A piece of fruit is a fifth heavier or lighter than the next: common practice, no source.
    private const double PieceSpread = 0.2;
    // A measuring spoon, level: common practice, no source.
    private const double SpoonSpread = 0.1;
    // "Scant" and "fat" say which way, not how far: a tenth, give or take half of that. Common practice, no source.
    private const double ScantShare = 0.1;
    private const double ScantUncertainty = 0.05;
    private const double AboutUncertainty = 0.1;
    // Bulk of powders and cut herbs by the spoon, against the substance itself; from 0.3 (leaves) to 0.7 (crystals).
    private const double BulkShare = 0.55;
    private const double BulkSpread = 0.3;

    public static DraftLine Make(Ingredient ingredient, LineSpec spec, MeasuresSet measures)
    {
        var assumptions = new List<string>(spec.Assumptions);
        var share = spec.IsScant ? 1 - ScantShare : spec.IsFat ? 1 + ScantShare : 1;
        var amount = spec.Amount;
        var (millilitres, grams, uncertainty) = Weigh(ingredient, spec, amount * share, measures, assumptions);
        if (spec.IsScant || spec.IsFat)
        {
            assumptions.Add(spec.IsScant ? "Scant is read as a tenth less." : "Fat is read as a tenth more.");
            uncertainty = Combine(uncertainty, grams * ScantUncertainty);
        }
        if (spec.IsAbout)
        {
            assumptions.Add("“About” is read as give or take a tenth.");
            uncertainty = Combine(uncertainty, grams * AboutUncertainty);
        }
        if (spec.Low < spec.High && amount > 0)
        {
            // Anything between the ends is as likely as the middle: a rectangle's standard deviation.
            uncertainty = Combine(uncertainty, grams * (spec.High - spec.Low) / amount / Math.Sqrt(12));
        }
        var start = spec.StartCelsius;
        return new DraftLine
        {
            Text = spec.Text,
            Ingredient = ingredient.Id,
            Amount = amount,
            AmountLow = spec.IsScant ? amount * share : spec.Low,
            AmountHigh = spec.IsFat ? amount * share : spec.High,
            Unit = spec.Unit,
            Millilitres = millilitres,
            Grams = grams,
            GramsUncertainty = double.IsFinite(uncertainty) ? uncertainty : 0,
            Place = spec.Place,
            Joins = spec.Joins ?? Joins.Mixed,
            StartCelsius = double.IsNaN(start) ? ingredient.KeptAtCelsius : start,
            Treatment = spec.Treatment,
            Assumptions = assumptions,
        };
    }

    /// <summary>A powder or a dry herb: a spoon of it holds air.</summary>
    public static bool IsPowder(Ingredient ingredient)
    {
        if (ingredient.Kind is IngredientKind.Alcohol or IngredientKind.Carbonated or IngredientKind.Water or IngredientKind.Juice or IngredientKind.CitrusJuice or IngredientKind.Vinegar)
        {
            return false;
        }
        var parts = ingredient.Composition.PerGram;
        return parts[(int)Component.Water] + parts[(int)Component.Ethanol] < 0.11;
    }

    /// <summary>Counted or weighed rather than poured.</summary>
    public static bool IsSolid(Ingredient ingredient) =>
        ingredient.Kind is IngredientKind.Produce or IngredientKind.NutOrSeed
        || (ingredient.Kind is IngredientKind.HerbOrSpice && !ingredient.Name.Contains("extract", StringComparison.OrdinalIgnoreCase));

    /// <summary>Grams of one piece, or NaN.</summary>
    public static double PieceGrams(Ingredient ingredient, Unit unit, bool juice)
    {
        var measure = unit switch
        {
            Unit.Piece => juice ? "juice_of_one" : "piece",
            Unit.Leaf => "leaf",
            Unit.Sprig => "sprig",
            Unit.Slice => "slice",
            Unit.Wedge => "wedge",
            Unit.Peel => "peel",
            Unit.Cube => "cube",
            Unit.Pinch => "pinch",
            Unit.Teaspoon => "teaspoon",
            Unit.Tablespoon => "tablespoon",
            Unit.Cup => "cup",
            _ => "",
        };
        foreach (var piece in ingredient.Pieces)
        {
            if (piece.Measure == measure)
            {
                return piece.Grams;
            }
        }
        return double.NaN;
    }

    private static (double Millilitres, double Grams, double Uncertainty) Weigh(
        Ingredient ingredient, LineSpec spec, double amount, MeasuresSet measures, List<string> assumptions)
    {
        var density = ingredient.Composition.GramsPerMillilitre;
        switch (spec.Unit)
        {
            case Unit.Top or Unit.None:
                return (double.NaN, double.NaN, 0);
            case Unit.Rinse:
                assumptions.Add($"A rinse leaves {HouseParse.Echo(measures.RinseKept)} mL in the glass.");
                return (measures.RinseKept, measures.RinseKept * density, measures.RinseKeptUncertainty * density);
            case Unit.Part:
                var part = amount * spec.PartMillilitres;
                return (part, part * density, Jigger(part) * density);
            case Unit.Pinch:
                return Pinch(ingredient, OneUnlessSaid(amount), measures, assumptions);
        }
        amount = OneUnlessSaid(amount);
        var mass = UnitWords.Grams(spec.Unit, measures) * amount;
        if (!double.IsNaN(mass))
        {
            return (mass / density, mass, Math.Min(Scale, mass / 4));
        }
        if (UnitWords.IsCount(spec.Unit))
        {
            return Count(ingredient, spec, amount, density, assumptions);
        }
        var millilitres = UnitWords.Millilitres(spec.Unit, measures) * amount;
        var spoon = PieceGrams(ingredient, spec.Unit, juice: false) * amount;
        if (!double.IsNaN(spoon))
        {
            return (spoon / density, spoon, spoon * 0.1);
        }
        if (IsPowder(ingredient) || IsSolid(ingredient))
        {
            assumptions.Add("A spoon of it holds air: taken as about half its volume; weigh it to be sure.");
            return (millilitres * BulkShare, millilitres * BulkShare * density, millilitres * BulkShare * density * BulkSpread);
        }
        return (millilitres, millilitres * density, density * VolumeUncertainty(spec.Unit, amount, millilitres, measures));
    }

    private static double OneUnlessSaid(double amount) => double.IsNaN(amount) ? 1 : amount;

    private static (double Millilitres, double Grams, double Uncertainty) Pinch(Ingredient ingredient, double amount, MeasuresSet measures, List<string> assumptions)
    {
        // Dried herbs and spices differ in weight by the pinch; crystals do not, and the house has its own figure for them.
        var own = ingredient.Kind == IngredientKind.HerbOrSpice ? PieceGrams(ingredient, Unit.Pinch, juice: false) : double.NaN;
        var grams = amount * (double.IsNaN(own) ? measures.PinchGrams : own);
        assumptions.Add($"A pinch is {HouseParse.Echo(grams / amount)} g.");
        return (grams / ingredient.Composition.GramsPerMillilitre, grams, double.IsNaN(own) ? amount * measures.PinchGramsUncertainty : grams / 2);
    }

    private static (double Millilitres, double Grams, double Uncertainty) Count(Ingredient ingredient, LineSpec spec, double amount, double density, List<string> assumptions)
    {
        var juice = spec.Unit == Unit.Piece && (spec.IsJuiceOf || ingredient.Kind is IngredientKind.CitrusJuice or IngredientKind.Juice);
        var one = PieceGrams(ingredient, spec.Unit, juice);
        if (double.IsNaN(one))
        {
            if (spec.Place == Place.In)
            {
                assumptions.Add("Nobody knows what one weighs: weigh it, and say grams.");
            }
            return (double.NaN, double.NaN, 0);
        }
        var grams = one * amount;
        if (spec.Place == Place.In)
        {
            assumptions.Add(juice
                ? $"The juice of one is taken as {HouseParse.Echo(one)} g, {HouseParse.Echo(Math.Round(one / density, 1))} mL."
                : $"One is taken as {HouseParse.Echo(one)} g.");
        }
        return (grams / density, grams, grams * PieceSpread);
    }

    private static double VolumeUncertainty(Unit unit, double amount, double millilitres, MeasuresSet measures) => unit switch
    {
        // One hand pours all dashes alike, so their error grows with their number.
        Unit.Dash => measures.DashUncertainty * amount,
        Unit.Drop => measures.DropUncertainty * amount,
        Unit.Mist => measures.MistUncertainty * amount,
        Unit.BarSpoon => measures.BarSpoonUncertainty * amount,
        Unit.Splash => measures.SplashUncertainty * amount,
        Unit.Float => measures.FloatUncertainty * amount,
        Unit.Teaspoon or Unit.Tablespoon => millilitres * SpoonSpread,
        // A litre is measured in a jug and the jug read to one part in a hundred.
        Unit.Litre or Unit.Cup => Math.Max(Jigger(millilitres), millilitres * 0.01),
        _ => Math.Min(Jigger(millilitres), millilitres / 4),
    };

    private static double Jigger(double millilitres) =>
        millilitres < LargeJiggerFrom ? SmallJigger : Math.Max(LargeJigger, millilitres * 0.01);

    private static double Combine(double a, double b) => Math.Sqrt(a * a + b * b);
}
