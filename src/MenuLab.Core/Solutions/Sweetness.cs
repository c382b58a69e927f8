namespace MenuLab.Core.Solutions;

/// <summary>Sweetness of a gram beside a gram of sucrose: the figure used and the span that is published.</summary>
/// <param name="Default">The figure used.</param>
/// <param name="Low">Lowest published.</param>
/// <param name="High">Highest published.</param>
public readonly record struct RelativeSweetness(double Default, double Low, double High);

/// <summary>A sweetener so strong that its sweetness levels off: sweetness = ceiling times C/(half + C).</summary>
/// <param name="CeilingPercentSucrose">Sweetness that it never exceeds, g of sucrose per 100 mL.</param>
/// <param name="HalfMilligramsPerLitre">Level that gives half the ceiling, mg/L.</param>
public readonly record struct HighPotencySweetener(double CeilingPercentSucrose, double HalfMilligramsPerLitre)
{
    /// <summary>Rebaudioside A. Source: DuBois et al. 1991, MEMORY.</summary>
    public static HighPotencySweetener RebaudiosideA => new(10.0, 200);

    /// <summary>Aspartame. Source: DuBois et al. 1991, MEMORY.</summary>
    public static HighPotencySweetener Aspartame => new(16.0, 560);

    /// <summary>Acesulfame potassium. Source: DuBois et al. 1991, MEMORY.</summary>
    public static HighPotencySweetener AcesulfamePotassium => new(11.6, 470);

    /// <summary>Saccharin sodium. Source: DuBois et al. 1991, MEMORY.</summary>
    public static HighPotencySweetener SaccharinSodium => new(10.1, 115);

    /// <summary>Cyclamate sodium. Source: DuBois et al. 1991, MEMORY.</summary>
    public static HighPotencySweetener CyclamateSodium => new(15.2, 2490);
}

/// <summary>Sweetness as grams of sucrose.</summary>
public static class Sweetness
{
    /// <summary>Sweetness of a component beside sucrose, by mass.</summary>
    /// <param name="component">Any component; 0 for what is not sweet.</param>
    /// <returns>Grams of sucrose as sweet as one gram: default, low and high.</returns>
    /// <remarks>
    /// Source: PMC3982014 Table 2 and PMC10346066 Table 2 (nutritive sweeteners and sweetener categories), a food dictionary table;
    /// sugars not told apart count as sucrose, with the span of glucose to fructose (ESTIMATE); other polyols 0.60 between lactitol
    /// and maltitol (ESTIMATE); dextrins 0 to 0.2. Valid for: drinks of 2 to 15 % sugar at or above 5 °C; fructose is sweeter cold and
    /// freshly dissolved. Error: the low and high figures.
    /// </remarks>
    public static RelativeSweetness Factor(Component component) => component switch
    {
        Component.Sucrose => new(1, 1, 1),
        Component.Glucose => new(0.70, 0.50, 0.80),
        Component.Fructose => new(1.20, 1.14, 1.80),
        Component.Galactose => new(0.60, 0.60, 0.63),
        Component.Lactose => new(0.20, 0.16, 0.40),
        Component.Maltose => new(0.40, 0.25, 0.50),
        Component.SugarNotToldApart => new(1, 0.70, 1.20),
        Component.Glycerol => new(0.60, 0.55, 0.70),
        Component.Sorbitol => new(0.60, 0.50, 0.70),
        Component.Mannitol => new(0.60, 0.50, 0.72),
        Component.Xylitol => new(1.00, 0.95, 1.00),
        Component.Erythritol => new(0.70, 0.60, 0.80),
        Component.OtherPolyol => new(0.60, 0.30, 0.90),
        Component.OtherCarbohydrate => new(0, 0, 0.20),
        _ => default,
    };

    /// <summary>Sweetness of a high-potency sweetener at a level.</summary>
    /// <param name="sweetener">Which one.</param>
    /// <param name="milligramsPerLitre">Its level, mg/L.</param>
    /// <returns>g of sucrose per 100 mL that are as sweet; never above the ceiling.</returns>
    /// <remarks>
    /// Source: hyperbolas of DuBois et al. 1991 (ACS Symp. Ser. 450), MEMORY. Valid for: one sweetener in water; blends are added up,
    /// synergy (10 to 30 % for some pairs) is not modelled. Error: unknown, people differ twofold.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">Negative, infinite or NaN level.</exception>
    public static double HighPotency(HighPotencySweetener sweetener, double milligramsPerLitre)
    {
        var level = Guard.FiniteNonNegative(milligramsPerLitre);
        return level == 0 ? 0 : sweetener.CeilingPercentSucrose * level / (sweetener.HalfMilligramsPerLitre + level);
    }
}
