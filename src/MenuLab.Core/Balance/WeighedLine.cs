using MenuLab.Core.Drafts;
using MenuLab.Core.Pantry;

namespace MenuLab.Core.Balance;

/// <summary>A line as the engine takes it: a mass of a composition, with where and when it joins.</summary>
/// <param name="Ingredient">Identity; the engine sums in its order, then by mass.</param>
/// <param name="Composition">What it is made of.</param>
/// <param name="Grams">Mass that goes into the liquid, g; ignored for a top-up.</param>
/// <param name="GramsUncertainty">Standard uncertainty of that mass, g.</param>
/// <param name="Joins">When it joins.</param>
/// <param name="Place">Where it goes; only <see cref="Place.In"/> counts for the liquid, and what a rinse leaves.</param>
/// <param name="StartCelsius">Temperature at which it starts, °C.</param>
/// <param name="IsTopUp">The mass follows from the glass: filled to the wash line.</param>
/// <param name="Cost">What the line uses and what that costs; the default is "unpriced".</param>
public readonly record struct WeighedLine(
    IngredientId Ingredient, Composition Composition, double Grams, double GramsUncertainty, Joins Joins, Place Place, double StartCelsius, bool IsTopUp,
    LineCost Cost = default)
{
    /// <summary>Some of it stays in the liquid: it is in the drink, or it is what a rinse leaves.</summary>
    public bool IsInLiquid => Place is Place.In or Place.Rinse;
}

/// <summary>What a line costs, net. The default value is "unpriced".</summary>
/// <param name="GramsUsed">Mass taken from stock, g (a rinse uses more than stays); ignored for a top-up, which uses what it pours.</param>
/// <param name="PerGram">Net cost per gram taken from stock, trim loss included; zero or less means unpriced.</param>
public readonly record struct LineCost(double GramsUsed, double PerGram)
{
    /// <summary>Somebody entered a price.</summary>
    public bool IsPriced => PerGram > 0;
}

/// <summary>A build with its models looked up.</summary>
/// <param name="Method">The method, or null where the text names none: then only the mixed figures exist.</param>
/// <param name="MethodIce">The ice of the method, or null for none.</param>
/// <param name="Glass">The glass, or null.</param>
/// <param name="ServedIce">The ice in the served glass, or null for none.</param>
public sealed record BuildModel(MethodModel? Method, IceForm? MethodIce, Glass? Glass, IceForm? ServedIce);

/// <summary>How much the engine is to work out.</summary>
public enum Detail
{
    /// <summary>Figures alone; ranges equal the values.</summary>
    Figures,
    /// <summary>Figures with ranges.</summary>
    Ranges,
    /// <summary>Figures with ranges and each line's share of each metric.</summary>
    RangesAndShares,
}
