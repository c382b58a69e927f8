using MenuLab.Core.Drafts.Reading;
using MenuLab.Core.Pantry;

namespace MenuLab.Core.Drafts;

/// <summary>An amount as typed: it means nothing without its unit, so the two change as one.</summary>
/// <param name="Value">The amount, the middle of a range; null where none was written.</param>
/// <param name="Low">Lower end where a range was typed.</param>
/// <param name="High">Upper end where a range was typed.</param>
/// <param name="Unit">The unit.</param>
public readonly record struct TypedAmount(double? Value, double? Low, double? High, Unit Unit);

/// <summary>What an amount of an ingredient was understood as.</summary>
/// <param name="Millilitres">mL at 20 °C; null where it has no volume of its own or follows from the glass.</param>
/// <param name="Grams">g; null where unknown.</param>
/// <param name="GramsUncertainty">Standard uncertainty of the mass, g.</param>
/// <param name="Assumptions">What was assumed, a plain sentence each.</param>
public sealed record Understood(double? Millilitres, double? Grams, double GramsUncertainty, IReadOnlyList<string> Assumptions)
{
    /// <summary>Nothing was understood.</summary>
    public static Understood Nothing { get; } = new(null, null, 0, []);
}

/// <summary>
/// The content of a line of a working copy. Unlike a <see cref="DraftLine"/> it may be one that is kept as typed: with
/// no ingredient yet, because nobody has answered what it is.
/// </summary>
public sealed record LineContent
{
    /// <summary>The text as typed, exactly.</summary>
    public required string Text { get; init; }

    /// <summary>What it is; null for a line that is kept as typed until answered.</summary>
    public IngredientId? Ingredient { get; init; }

    /// <summary>The amount as typed.</summary>
    public TypedAmount Amount { get; init; } = new(null, null, null, Unit.None);

    /// <summary>What the amount was understood as.</summary>
    public Understood Understood { get; init; } = Understood.Nothing;

    /// <summary>Where it goes.</summary>
    public Place Place { get; init; } = Place.In;

    /// <summary>When it joins.</summary>
    public Joins Joins { get; init; } = Joins.Mixed;

    /// <summary>Temperature at which it starts, °C; null where the line is not understood.</summary>
    public double? StartCelsius { get; init; }

    /// <summary>What is done to it.</summary>
    public string Treatment { get; init; } = "";

    /// <summary>A line that the reader understood.</summary>
    public static LineContent Of(DraftLine line) => new()
    {
        Text = line.Text,
        Ingredient = line.Ingredient,
        Amount = new TypedAmount(Known(line.Amount), Known(line.AmountLow), Known(line.AmountHigh), line.Unit),
        Understood = new Understood(Known(line.Millilitres), Known(line.Grams), line.GramsUncertainty, line.Assumptions),
        Place = line.Place,
        Joins = line.Joins,
        StartCelsius = line.StartCelsius,
        Treatment = line.Treatment,
    };

    /// <summary>A line that is kept as typed.</summary>
    /// <param name="text">The text as typed.</param>
    /// <param name="millilitres">mL where the amount is certain, so that the drink's unknown share can be told; else null.</param>
    /// <param name="place">Where it would go.</param>
    public static LineContent KeptAsTyped(string text, double? millilitres = null, Place place = Place.In) => new()
    {
        Text = text,
        Understood = new Understood(millilitres, null, 0, []),
        Place = place,
    };

    /// <summary>A line that is kept as typed until its question is answered.</summary>
    public static LineContent KeptAsTyped(LineQuestion question) => KeptAsTyped(question.Text, Known(question.Millilitres), question.Place);

    /// <summary>The line as the balance takes it; null for one that is kept as typed.</summary>
    public DraftLine? ToDraftLine() => Ingredient is not { } ingredient ? null : new DraftLine
    {
        Text = Text,
        Ingredient = ingredient,
        Amount = Amount.Value ?? double.NaN,
        AmountLow = Amount.Low ?? double.NaN,
        AmountHigh = Amount.High ?? double.NaN,
        Unit = Amount.Unit,
        Millilitres = Understood.Millilitres ?? double.NaN,
        Grams = Understood.Grams ?? double.NaN,
        GramsUncertainty = Understood.GramsUncertainty,
        Place = Place,
        Joins = Joins,
        StartCelsius = StartCelsius ?? RoomCelsius,
        Treatment = Treatment,
        Assumptions = Understood.Assumptions,
    };

    // A shelf in a warm bar, as seed-data keeps things at room temperature (common practice, no source).
    private const double RoomCelsius = 22;

    private static double? Known(double value) => double.IsNaN(value) ? null : value;
}

/// <summary>The fields of a line; each is merged on its own.</summary>
[Flags]
public enum LineFields
{
    /// <summary>None.</summary>
    None = 0,
    /// <summary>The text as typed.</summary>
    Text = 1,
    /// <summary>What it is.</summary>
    Ingredient = 2,
    /// <summary>Amount and unit.</summary>
    Amount = 4,
    /// <summary>Where it goes.</summary>
    Place = 8,
    /// <summary>When it joins.</summary>
    Joins = 16,
    /// <summary>Temperature at which it starts.</summary>
    Start = 32,
    /// <summary>What is done to it.</summary>
    Treatment = 64,
}

/// <summary>The fields of a build; each is merged on its own.</summary>
[Flags]
public enum BuildFields
{
    /// <summary>None.</summary>
    None = 0,
    /// <summary><see cref="Build.Method"/>.</summary>
    Method = 1,
    /// <summary><see cref="Build.Seconds"/>.</summary>
    Seconds = 2,
    /// <summary><see cref="Build.Ice"/>.</summary>
    Ice = 4,
    /// <summary><see cref="Build.Glass"/>.</summary>
    Glass = 8,
    /// <summary><see cref="Build.Strain"/>.</summary>
    Strain = 16,
    /// <summary><see cref="Build.ServedOn"/>.</summary>
    ServedOn = 32,
    /// <summary><see cref="Build.Steps"/>.</summary>
    Steps = 64,
}
