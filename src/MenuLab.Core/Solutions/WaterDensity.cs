namespace MenuLab.Core.Solutions;

/// <summary>Density of pure water.</summary>
public static class WaterDensity
{
    /// <summary>Lowest temperature of the formula, °C.</summary>
    public const double LowestCelsius = 0;

    /// <summary>Highest temperature of the formula, °C.</summary>
    public const double HighestCelsius = 100;

    /// <summary>Density of water at 101.325 kPa.</summary>
    /// <param name="celsius">Temperature, °C.</param>
    /// <returns>Density, kg/m³.</returns>
    /// <remarks>
    /// Source: the Kell-type equation that the ICUMSA SPS-4 sucrose standard uses for its water.
    /// Valid for: 0 to 100 °C. Error: below 0.01 kg/m³ against handbook values from 0 to 25 °C.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">Outside 0 to 100 °C, or NaN.</exception>
    public static double KilogramsPerCubicMetre(double celsius)
    {
        var t = Guard.InRange(celsius, LowestCelsius, HighestCelsius);
        var numerator = 999.83952 + t * (16.952577 + t * (-7.9905127e-3 + t * (-46.241757e-6 + t * (105.84601e-9 - t * 281.03006e-12))));
        return numerator / (1 + 16.887236e-3 * t);
    }
}
