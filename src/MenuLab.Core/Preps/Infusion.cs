namespace MenuLab.Core.Preps;

/// <summary>What tea leaf gives to water with time and temperature: first order, after a short delay.</summary>
public static class Infusion
{
    /// <summary>Wetting takes so long before anything comes out, min.</summary>
    public const double DelayMinutes = 0.27;

    /// <summary>Of what a leaf holds, the share that ever comes out (86 to 98 %, Taiwanese leaf study).</summary>
    public static UsualRange Extractable => new(0.90, 0.86, 0.98);

    /// <summary>Caffeine of dry leaf, mg/g; MEMORY.</summary>
    public static UsualRange LeafCaffeine => new(30, 20, 45);

    /// <summary>Extractable polyphenols of dry leaf, mg of gallic acid equivalents per g; MEMORY.</summary>
    public static UsualRange LeafPolyphenols => new(200, 150, 250);

    /// <summary>How much slower leaf in a bag is; MEMORY.</summary>
    public static UsualRange BagFactor => new(0.6, 0.5, 0.7);

    /// <summary>Below this a steep counts as cold, °C: the rates are extrapolated and what comes out is capped.</summary>
    public const double ColdBelowCelsius = 40;

    /// <summary>Most caffeine that a cold steep gives, as a share; ESTIMATE.</summary>
    public const double ColdCaffeine = 0.9;

    /// <summary>Most polyphenols that a cold steep gives, as a share; ESTIMATE.</summary>
    public const double ColdPolyphenols = 0.7;

    private const double GasConstant = 8.314462;
    private const double ZeroCelsius = 273.15;

    /// <summary>Rate at which caffeine leaves black leaf.</summary>
    /// <param name="celsius">Temperature, °C.</param>
    /// <returns>1/min.</returns>
    /// <remarks>
    /// Source: Jaganyi and Price 1999, Food Chem. (0.99/min at 80 °C, 40.3 kJ/mol; leaf of 1.4 to 2.0 mm). Valid for: 60 to 95 °C, below
    /// extrapolated. Error: 20 % by leaf (ESTIMATE).
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">Outside -30 to 130 °C, or NaN.</exception>
    public static double CaffeinePerMinute(double celsius) => Rate(0.99, 80, 40_300, celsius);

    /// <summary>Rate at which polyphenols leave black leaf.</summary>
    /// <param name="celsius">Temperature, °C.</param>
    /// <param name="cut">How finely the leaf is cut.</param>
    /// <returns>1/min.</returns>
    /// <remarks>
    /// Source: Farakte et al. 2015, Int. J. Food Eng. (coarse 0.257, fine 0.685/min at 60 °C; 32.6 kJ/mol from the diffusivities at 60 and
    /// 80 °C). Valid for: 60 to 95 °C, below extrapolated. Error: 25 % by leaf (ESTIMATE).
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">Outside -30 to 130 °C, or NaN.</exception>
    public static double PolyphenolsPerMinute(double celsius, LeafCut cut) => Rate(cut == LeafCut.Fine ? 0.685 : 0.257, 60, 32_600, celsius);

    /// <summary>Share that has come out after an exposure.</summary>
    /// <param name="exposure">Sum of rate times minutes after the delay, no unit.</param>
    /// <returns>0 to 1.</returns>
    /// <remarks>Source: first-order infusion, E = 1 - exp(-k (t - t0)). Valid for: one leaf, steeped once or several times. Error: that of the rates.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Negative or NaN.</exception>
    public static double Share(double exposure) => 1 - Math.Exp(-Guard.InRange(exposure, 0, double.PositiveInfinity));

    private static double Rate(double atReference, double referenceCelsius, double joulesPerMole, double celsius) =>
        atReference * Math.Exp(-joulesPerMole / GasConstant * (1 / (Guard.InRange(celsius, -30, 130) + ZeroCelsius) - 1 / (referenceCelsius + ZeroCelsius)));
}
