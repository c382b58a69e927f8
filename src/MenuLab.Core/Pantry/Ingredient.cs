namespace MenuLab.Core.Pantry;

/// <summary>Identifies an ingredient for ever; never reused. The engine sums lines in the order of ids.</summary>
/// <param name="Value">A version 7 Guid; shipped ingredients have fixed ones, written in seed-data.</param>
public readonly record struct IngredientId(Guid Value) : IComparable<IngredientId>
{
    /// <summary>A new id; later ids sort later.</summary>
    public static IngredientId New() => new(Guid.CreateVersion7());

    /// <inheritdoc/>
    public int CompareTo(IngredientId other) => Value.CompareTo(other.Value);

    /// <summary>Sorts earlier.</summary>
    public static bool operator <(IngredientId left, IngredientId right) => left.CompareTo(right) < 0;

    /// <summary>Sorts earlier or is the same.</summary>
    public static bool operator <=(IngredientId left, IngredientId right) => left.CompareTo(right) <= 0;

    /// <summary>Sorts later.</summary>
    public static bool operator >(IngredientId left, IngredientId right) => left.CompareTo(right) > 0;

    /// <summary>Sorts later or is the same.</summary>
    public static bool operator >=(IngredientId left, IngredientId right) => left.CompareTo(right) >= 0;
}

/// <summary>What sort of thing an ingredient is; decides defaults (acid profile, where it is kept, when it joins).</summary>
public enum IngredientKind
{
    /// <summary>Citrus juice.</summary>
    CitrusJuice,
    /// <summary>Other fruit or vegetable juice.</summary>
    Juice,
    /// <summary>Whole fruit or vegetable.</summary>
    Produce,
    /// <summary>Herb or spice.</summary>
    HerbOrSpice,
    /// <summary>Sugar or syrup.</summary>
    SugarOrSyrup,
    /// <summary>Vinegar.</summary>
    Vinegar,
    /// <summary>Dairy or a plant drink that stands for it.</summary>
    Dairy,
    /// <summary>Egg or another foaming agent.</summary>
    EggOrFoamer,
    /// <summary>Tea, coffee, cocoa and other infusions.</summary>
    TeaOrCoffee,
    /// <summary>Carbonated drink.</summary>
    Carbonated,
    /// <summary>Still water.</summary>
    Water,
    /// <summary>Nut or seed.</summary>
    NutOrSeed,
    /// <summary>Acid, salt or gum as a powder or solution.</summary>
    AcidSaltOrGum,
    /// <summary>Spirit, wine, beer, liqueur, aperitif, bitters, and what imitates them without alcohol.</summary>
    Alcohol,
}

/// <summary>How a figure became known.</summary>
public enum FigureStatus
{
    /// <summary>Seen in the cited source, or computed from figures seen there.</summary>
    Confirmed,
    /// <summary>Recalled, not seen; a default, never a citation.</summary>
    Memory,
    /// <summary>Follows from other figures of the same ingredient by a stated rule.</summary>
    Computed,
    /// <summary>A choice or a bound by the kind of ingredient: common practice, no source.</summary>
    Assumed,
    /// <summary>Read on the bench; outranks all others.</summary>
    Measured,
}

/// <summary>One figure of an ingredient with where it comes from. What nobody knows has no row.</summary>
/// <param name="Quantity">Column name as in seed-data, e.g. "citric_g".</param>
/// <param name="Value">The figure, per 100 g or 100 mL as the ingredient's basis says, unless the quantity is itself an intensive one; NaN where only bounds are known.</param>
/// <param name="Low">Lower bound, or NaN.</param>
/// <param name="High">Upper bound, or NaN.</param>
/// <param name="Source">Where it was read.</param>
/// <param name="Status">How it became known.</param>
/// <param name="Origin">Who holds it: "shipped 1", "house", "reading".</param>
public sealed record IngredientFigure(string Quantity, double Value, double Low, double High, string Source, FigureStatus Status, string Origin);

/// <summary>What pieces of an ingredient weigh and yield; a figure that is not known is absent.</summary>
/// <param name="Measure">piece, leaf, sprig, slice, wedge, peel, pinch, cube, juice_of_one.</param>
/// <param name="Grams">Mass of one, g.</param>
/// <param name="Source">Where it was read.</param>
public sealed record PieceWeight(string Measure, double Grams, string Source);

/// <summary>What is known of one allergen of an ingredient, and from where. An allergen without such a row is absent as far as anybody knows.</summary>
/// <param name="Allergen">Which.</param>
/// <param name="State">There, or an open question.</param>
/// <param name="Law">Whose list it stands on: "EU", "US" or "EU US".</param>
/// <param name="Source">Where it was read.</param>
/// <param name="Note">The species, or what to ask: "almond", "finings".</param>
public sealed record AllergenFact(Allergen Allergen, AllergenState State, string Law, string Source, string Note);

/// <summary>An ingredient as the reader and the engine need it: shipped, or of the house.</summary>
public sealed class Ingredient
{
    /// <summary>Identity.</summary>
    public required IngredientId Id { get; init; }

    /// <summary>Stable key, snake_case, e.g. "lemon_juice".</summary>
    public required string Key { get; init; }

    /// <summary>Name as shown.</summary>
    public required string Name { get; init; }

    /// <summary>What sort of thing it is.</summary>
    public required IngredientKind Kind { get; init; }

    /// <summary>What its figures are per: "100 g" or "100 mL" (<see cref="CompositionBuilder.PerMass"/>, <see cref="CompositionBuilder.PerVolume"/>).</summary>
    public string Basis { get; init; } = CompositionBuilder.PerMass;

    /// <summary>Other ways to write it: house abbreviations, other languages, trade words.</summary>
    public IReadOnlyList<string> Aliases { get; init; } = [];

    /// <summary>
    /// What an alias takes for granted, by alias: "simple syrup" is taken as 1:1 by mass. To be shown beside the line; an alias that is
    /// not among the keys takes nothing for granted.
    /// </summary>
    public IReadOnlyDictionary<string, string> AliasAssumptions { get; init; } = new Dictionary<string, string>();

    /// <summary>Its allergens with source and species; their states stand in <see cref="Composition.Allergens"/>.</summary>
    public IReadOnlyList<AllergenFact> AllergenFacts { get; init; } = [];

    /// <summary>The figures behind the composition, each with its source.</summary>
    public IReadOnlyList<IngredientFigure> Figures { get; init; } = [];

    /// <summary>What pieces of it weigh.</summary>
    public IReadOnlyList<PieceWeight> Pieces { get; init; } = [];

    /// <summary>Where it is usually kept, °C: fridge 4, shelf 22, freezer -18.</summary>
    public required double KeptAtCelsius { get; init; }

    /// <summary>What it is made of.</summary>
    public required Composition Composition { get; init; }

    /// <summary>Remarks of the record: doubts, stand-ins, what to read on the label.</summary>
    public string Note { get; init; } = "";
}
