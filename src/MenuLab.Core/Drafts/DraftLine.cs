using MenuLab.Core.Pantry;

namespace MenuLab.Core.Drafts;

/// <summary>Units in which an amount may be written.</summary>
public enum Unit
{
    /// <summary>mL.</summary>
    Millilitre,
    /// <summary>cL.</summary>
    Centilitre,
    /// <summary>L.</summary>
    Litre,
    /// <summary>The house's fluid ounce.</summary>
    FluidOunce,
    /// <summary>Teaspoon.</summary>
    Teaspoon,
    /// <summary>Tablespoon.</summary>
    Tablespoon,
    /// <summary>Bar spoon.</summary>
    BarSpoon,
    /// <summary>Dash.</summary>
    Dash,
    /// <summary>Drop.</summary>
    Drop,
    /// <summary>One press of an atomiser.</summary>
    Mist,
    /// <summary>Cup.</summary>
    Cup,
    /// <summary>g.</summary>
    Gram,
    /// <summary>kg.</summary>
    Kilogram,
    /// <summary>Ounce by weight.</summary>
    WeightOunce,
    /// <summary>Pound.</summary>
    Pound,
    /// <summary>A part of a ratio; becomes a volume when a total is given.</summary>
    Part,
    /// <summary>Whole pieces ("ea"); fruit whose juice is meant counts as juice of one.</summary>
    Piece,
    /// <summary>Leaf.</summary>
    Leaf,
    /// <summary>Sprig.</summary>
    Sprig,
    /// <summary>Slice, wheel.</summary>
    Slice,
    /// <summary>Wedge.</summary>
    Wedge,
    /// <summary>Peel, twist, zest strip.</summary>
    Peel,
    /// <summary>Pinch.</summary>
    Pinch,
    /// <summary>Sugar cube.</summary>
    Cube,
    /// <summary>Splash.</summary>
    Splash,
    /// <summary>Float on top.</summary>
    Float,
    /// <summary>To the wash line.</summary>
    Top,
    /// <summary>Rinse, poured away.</summary>
    Rinse,
    /// <summary>No amount was written and none is needed (a garnish, a rim).</summary>
    None,
}

/// <summary>Where a line goes. Only <see cref="In"/> joins the liquid.</summary>
public enum Place
{
    /// <summary>Into the drink.</summary>
    In,
    /// <summary>Rinsed round the glass and poured away.</summary>
    Rinse,
    /// <summary>On the rim.</summary>
    Rim,
    /// <summary>Garnish.</summary>
    Garnish,
    /// <summary>Served beside.</summary>
    Beside,
}

/// <summary>When a line joins the others.</summary>
public enum Joins
{
    /// <summary>In the tin or mixing glass, chilled together.</summary>
    Mixed,
    /// <summary>In the glass over the ice, not shaken or stirred with it.</summary>
    InTheGlass,
    /// <summary>On top: to the wash line, or a stated amount.</summary>
    OnTop,
}

/// <summary>A line of a drink as typed and as understood.</summary>
public sealed record DraftLine
{
    /// <summary>The text as typed, exactly.</summary>
    public required string Text { get; init; }

    /// <summary>What it is.</summary>
    public required IngredientId Ingredient { get; init; }

    /// <summary>The amount as typed, in <see cref="Unit"/>; the middle of a range; NaN where none was written.</summary>
    public required double Amount { get; init; }

    /// <summary>Lower end where a range was typed, else the amount.</summary>
    public double AmountLow { get; init; } = double.NaN;

    /// <summary>Upper end where a range was typed, else the amount.</summary>
    public double AmountHigh { get; init; } = double.NaN;

    /// <summary>The unit as typed, or the house's where a bare number was typed.</summary>
    public required Unit Unit { get; init; }

    /// <summary>mL understood, at 20 °C; NaN for a top to the wash line and for what has no volume of its own.</summary>
    public required double Millilitres { get; init; }

    /// <summary>g understood; NaN where unknown.</summary>
    public required double Grams { get; init; }

    /// <summary>Standard uncertainty of the amount, g.</summary>
    public double GramsUncertainty { get; init; }

    /// <summary>Where it goes.</summary>
    public Place Place { get; init; } = Place.In;

    /// <summary>When it joins.</summary>
    public Joins Joins { get; init; } = Joins.Mixed;

    /// <summary>Temperature at which it starts, °C.</summary>
    public required double StartCelsius { get; init; }

    /// <summary>What is done to it: "muddled", "fine-strained", "toasted"; empty where nothing was said.</summary>
    public string Treatment { get; init; } = "";

    /// <summary>What was assumed in reading it, a plain sentence each.</summary>
    public IReadOnlyList<string> Assumptions { get; init; } = [];

    /// <summary>To the wash line: the amount follows from the glass.</summary>
    public bool IsTopUp => Unit == Unit.Top;
}
