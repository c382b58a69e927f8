using MenuLab.Core.Pantry;

namespace MenuLab.Core.Preps;

/// <summary>One thing that goes into a prep, weighed.</summary>
/// <param name="Ingredient">What it is: bought, or another prep.</param>
/// <param name="Grams">Mass, g, above 0.</param>
/// <param name="Solid">Whether it dissolves, or stays a solid that is steeped and strained.</param>
/// <param name="Text">As typed; empty where nobody typed it.</param>
public sealed record PrepLine(IngredientId Ingredient, double Grams, SolidKind Solid = SolidKind.Dissolves, string Text = "")
{
    /// <summary>Standard uncertainty of the mass, g; 0 where the scale is good enough not to matter.</summary>
    public double GramsUncertainty { get; init; }

    /// <summary>A line that was measured by volume.</summary>
    /// <param name="ingredient">What it is.</param>
    /// <param name="millilitres">Volume at 20 °C, mL.</param>
    /// <param name="composition">What it is made of: its density turns mL into g.</param>
    /// <param name="solid">Whether it dissolves.</param>
    /// <param name="text">As typed.</param>
    /// <exception cref="ArgumentOutOfRangeException">Negative, infinite or NaN.</exception>
    public static PrepLine FromMillilitres(
        IngredientId ingredient, double millilitres, Composition composition, SolidKind solid = SolidKind.Dissolves, string text = "") =>
        new(ingredient, Guard.FiniteNonNegative(millilitres) * composition.GramsPerMillilitre, solid, text);
}

/// <summary>How a line behaves in the pot; decides what it gives to the liquid and how much liquid it keeps at straining.</summary>
public enum SolidKind
{
    /// <summary>It becomes part of the liquid whole: juice, syrup, sugar, acid, salt.</summary>
    Dissolves,
    /// <summary>Fruit or vegetable with juice of its own.</summary>
    Fruit,
    /// <summary>Leaf of the tea plant.</summary>
    TeaLeaf,
    /// <summary>Dried herbs and flowers.</summary>
    DryHerb,
    /// <summary>Fresh herbs.</summary>
    FreshHerb,
    /// <summary>Whole spices, bark, seeds.</summary>
    Spice,
    /// <summary>Ground coffee.</summary>
    GroundCoffee,
    /// <summary>Peel of citrus fruit.</summary>
    CitrusPeel,
    /// <summary>Coconut flakes.</summary>
    CoconutFlakes,
    /// <summary>A solid that no table knows: what it keeps is asked for.</summary>
    OtherSolid,
}

/// <summary>A figure with its usual range, as the tables of practice give it.</summary>
/// <param name="Value">The default.</param>
/// <param name="Low">Low end of the usual range.</param>
/// <param name="High">High end of the usual range.</param>
public readonly record struct UsualRange(double Value, double Low, double High)
{
    /// <summary>The range read as a 95 % interval.</summary>
    public double Uncertainty => (High - Low) / 3.92;
}

/// <summary>What is known of each kind of solid.</summary>
/// <remarks>Source: MEMORY and ESTIMATE throughout (common practice, no source); weighing before and after straining overrules all of it.</remarks>
public static class SolidRules
{
    /// <summary>Share of a fruit's mass that is juice and evens out with the liquid round it.</summary>
    public static UsualRange FruitJuice => new(0.80, 0.75, 0.85);

    /// <summary>Water that sugar draws from citrus peel, g per g of peel.</summary>
    public static UsualRange PeelWater => new(0.10, 0.05, 0.15);

    /// <summary>Liquid that a solid keeps when it is strained and pressed.</summary>
    /// <param name="kind">The solid.</param>
    /// <returns>g of liquid per g of the solid as it went in; null for a kind that no table knows.</returns>
    /// <remarks>
    /// Source: MEMORY: tea leaf 2.5 (2 to 3), dry herbs 3 (2 to 4), whole spices 0.8 (0.5 to 1.2), ground coffee 2.0 (1.8 to 2.3), fresh herbs
    /// 0.3, pressed fruit pulp 0.25 (0.15 to 0.35), peel 0.2, coconut flakes 1.5; the ranges of fresh herbs, peel and coconut are ESTIMATE.
    /// Valid for: liquids near the thickness of water. Error: the range.
    /// </remarks>
    public static UsualRange? Kept(SolidKind kind) => kind switch
    {
        SolidKind.Dissolves => new UsualRange(0, 0, 0),
        SolidKind.Fruit => new UsualRange(0.25, 0.15, 0.35),
        SolidKind.TeaLeaf => new UsualRange(2.5, 2, 3),
        SolidKind.DryHerb => new UsualRange(3, 2, 4),
        SolidKind.FreshHerb => new UsualRange(0.3, 0.2, 0.4),
        SolidKind.Spice => new UsualRange(0.8, 0.5, 1.2),
        SolidKind.GroundCoffee => new UsualRange(2.0, 1.8, 2.3),
        SolidKind.CitrusPeel => new UsualRange(0.2, 0.1, 0.3),
        SolidKind.CoconutFlakes => new UsualRange(1.5, 1, 2),
        _ => null,
    };

    /// <summary>The kind of solid that a sort of ingredient usually is; a person may say otherwise.</summary>
    public static SolidKind Usual(IngredientKind kind) => kind switch
    {
        IngredientKind.Produce => SolidKind.Fruit,
        IngredientKind.HerbOrSpice => SolidKind.DryHerb,
        IngredientKind.NutOrSeed => SolidKind.OtherSolid,
        _ => SolidKind.Dissolves,
    };
}
