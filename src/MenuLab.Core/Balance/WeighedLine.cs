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
/// <param name="CostPerGram">Net cost per gram used, in the house's currency; NaN where unpriced.</param>
public readonly record struct WeighedLine(
    IngredientId Ingredient, Composition Composition, double Grams, double GramsUncertainty, Joins Joins, Place Place, double StartCelsius, bool IsTopUp,
    double CostPerGram = double.NaN);

/// <summary>A build with its models looked up.</summary>
/// <param name="Method">The method, or null where the text names none: then only the mixed figures exist.</param>
/// <param name="MethodIce">The ice of the method, or null for none.</param>
/// <param name="Glass">The glass, or null.</param>
/// <param name="ServedIce">The ice in the served glass, or null for none.</param>
public sealed record BuildModel(MethodModel? Method, Ice? MethodIce, Glass? Glass, Ice? ServedIce);

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
