using MenuLab.Core.Solutions;

namespace MenuLab.Core.Preps;

/// <summary>A refractometer reading.</summary>
/// <param name="Shown">What the scale shows, Brix.</param>
/// <param name="Celsius">Temperature of the sample, °C; null where the instrument corrects for it.</param>
public readonly record struct BrixReading(double Shown, double? Celsius)
{
    /// <summary>Lowest temperature of the correction table, °C.</summary>
    public const double LowestCelsius = 10;

    /// <summary>Highest temperature of the correction table, °C.</summary>
    public const double HighestCelsius = 30;

    private static ReadOnlySpan<double> Columns => [0, 10, 20, 30, 40, 50, 60, 70];

    private static ReadOnlySpan<double> At10 => [-0.54, -0.59, -0.65, -0.69, -0.72, -0.74, -0.75, -0.75];

    private static ReadOnlySpan<double> At15 => [-0.30, -0.32, -0.34, -0.36, -0.37, -0.38, -0.38, -0.38];

    private static ReadOnlySpan<double> At25 => [0.36, 0.37, 0.38, 0.40, 0.40, 0.40, 0.40, 0.40];

    private static ReadOnlySpan<double> At30 => [0.74, 0.77, 0.79, 0.80, 0.81, 0.81, 0.81, 0.81];

    /// <summary>What is to be added to a reading for the temperature of the sample.</summary>
    /// <param name="brix">The reading, 0 to 85 Brix.</param>
    /// <param name="celsius">Temperature of the sample, °C.</param>
    /// <returns>Brix; below 0 for a cold sample, 0 at 20 °C.</returns>
    /// <remarks>
    /// Source: OIV-MA-AS2-02, Table I, at 10 and 15 °C from 10 Brix on (read in a copy); 25 and 30 °C and the column of 0 Brix MEMORY. Between them a
    /// parabola through 20 °C, between columns straight; 70 Brix is held above. Valid for: 10 to 30 °C. Error: 0.02 below 20 °C, 0.05 above.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">Outside 0 to 85 Brix or 10 to 30 °C, or NaN.</exception>
    public static double TemperatureCorrection(double brix, double celsius)
    {
        var column = Math.Min(Guard.InRange(brix, 0, 85) / 10, Columns.Length - 1);
        Guard.InRange(celsius, LowestCelsius, HighestCelsius);
        return celsius <= 20
            ? Parabola(celsius - 20, -10, Between(At10, column), -5, Between(At15, column))
            : Parabola(celsius - 20, 5, Between(At25, column), 10, Between(At30, column));
    }

    /// <summary>The reading at 20 °C.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside 0 to 85 Brix or the temperatures of the table.</exception>
    public double At20 => Celsius is { } celsius ? Math.Max(0, Shown + TemperatureCorrection(Shown, celsius)) : Shown;

    /// <summary>What a refractometer should show for a liquid at 20 °C, without a jump at the first trace of acid.</summary>
    /// <param name="liquid">The mixing state.</param>
    /// <returns>Brix; NaN where the reading would mean nothing.</returns>
    /// <remarks>
    /// Source: <see cref="Refractometer.ExpectedReading"/>. The constant 0.012 of its acid correction, fitted to juices, is faded in up to 0.05 % acid: ranges
    /// are slopes, and a slope across a jump is none. Valid for and error: as there.
    /// </remarks>
    public static double Expected(Liquid liquid)
    {
        const double constant = 0.012;
        const double fadedIn = 0.05;
        var equivalents = PrepFigures.Form(liquid.Parts, LinearForm.AcidEquivalents)
            - liquid[Component.Acetic] * LinearForms.Weight(LinearForm.AcidEquivalents, Component.Acetic);
        var percent = 100 * equivalents * AcidBase.EquivalentMass(Component.Citric) / liquid.Grams;
        return Refractometer.ExpectedReading(liquid) + (percent > 0 ? constant * Math.Max(0, 1 - percent / fadedIn) : 0);
    }

    private static double Between(ReadOnlySpan<double> row, double column)
    {
        var below = Math.Min((int)column, row.Length - 2);
        return row[below] + (column - below) * (row[below + 1] - row[below]);
    }

    // Through the origin and two points.
    private static double Parabola(double t, double t1, double v1, double t2, double v2) =>
        v1 * t * (t - t2) / (t1 * (t1 - t2)) + v2 * t * (t - t1) / (t2 * (t2 - t1));
}
