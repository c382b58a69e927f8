namespace MenuLab.Core.Solutions;

/// <summary>Density of sucrose in water, and the ways between Brix, density and grams per 100 mL.</summary>
/// <remarks>Brix here is grams of sucrose in 100 g of solution.</remarks>
public static class SucroseDensity
{
    /// <summary>Highest Brix of the tabulated equation.</summary>
    public const double HighestBrix = 85;

    /// <summary>Highest temperature of the equation, °C.</summary>
    public const double HighestCelsius = 80;

    private const int Powers = 6;
    private const double BrixTolerance = 1e-9;

    internal static readonly double WaterAt20 = WaterDensity.KilogramsPerCubicMetre(20);

    // Rows: power of (t - 20)/100, 0 to 4. Columns: power of the mass fraction, 1 to 6. An array for the reason given at the ethanol's.
    internal static readonly double[] Coefficients =
    [
        385.1761, 135.3705, 40.9299, -3.9643, 13.4853, -17.2890,
        -46.2720, -7.1720, 1.1597, 5.1126, 17.5254, 0,
        59.7712, 7.2491, 12.3630, -35.4791, 0, 0,
        -47.2207, -21.6977, 27.6301, 0, 0, 0,
        18.3184, 12.3081, 0, 0, 0, 0,
    ];

    /// <summary>Density of a sucrose solution.</summary>
    /// <param name="brix">Grams of sucrose in 100 g of solution.</param>
    /// <param name="celsius">Temperature, °C.</param>
    /// <returns>Density, kg/m³.</returns>
    /// <remarks>
    /// Source: ICUMSA SPS-4 (measurements of PTB, Emmerich and co-workers), coefficients as in Llano 2005.
    /// Valid for: 0 to 70 Brix and 0 to 80 °C by the standard, tabulated to 85 Brix.
    /// Error: formula 0.05 kg/m³; against tables on the older Plato scale up to 0.5 kg/m³ at 70 Brix.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">Outside 0 to 85 Brix or 0 to 80 °C, or NaN.</exception>
    public static double KilogramsPerCubicMetre(double brix, double celsius = 20)
    {
        Span<double> coefficients = stackalloc double[Powers];
        var water = Collapse(celsius, coefficients);
        return Evaluate(Guard.InRange(brix, 0, HighestBrix) / 100, water, coefficients, out _);
    }

    /// <summary>Brix of a sucrose solution of known density.</summary>
    /// <param name="kilogramsPerCubicMetre">Density, kg/m³.</param>
    /// <param name="celsius">Temperature, °C.</param>
    /// <returns>Grams of sucrose in 100 g of solution.</returns>
    /// <remarks>
    /// Source: inverse of <see cref="KilogramsPerCubicMetre"/> (Newton, guarded by a bracket).
    /// Valid for: densities from water to 85 Brix at that temperature. Error: 0.05 kg/m³ is about 0.01 Brix.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A density outside that of 0 to 85 Brix, a temperature outside 0 to 80 °C, or NaN.</exception>
    public static double BrixFrom(double kilogramsPerCubicMetre, double celsius = 20)
    {
        Span<double> coefficients = stackalloc double[Powers];
        var water = Collapse(celsius, coefficients);
        var densest = Evaluate(HighestBrix / 100, water, coefficients, out _);
        Guard.InRange(kilogramsPerCubicMetre, water, densest);
        return 100 * Invert(kilogramsPerCubicMetre, perVolume: false, water, coefficients);
    }

    /// <summary>Grams of sucrose in 100 mL of solution.</summary>
    /// <param name="brix">Grams of sucrose in 100 g of solution.</param>
    /// <param name="celsius">Temperature at which the 100 mL are measured, °C.</param>
    /// <returns>g/100 mL.</returns>
    /// <remarks>Source, range and error: those of <see cref="KilogramsPerCubicMetre"/>; Brix times density over 1000.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Outside 0 to 85 Brix or 0 to 80 °C, or NaN.</exception>
    public static double GramsPer100Millilitres(double brix, double celsius = 20) =>
        brix * KilogramsPerCubicMetre(brix, celsius) / 1000;

    /// <summary>Brix of a solution that holds so many grams of sucrose in 100 mL.</summary>
    /// <param name="gramsPer100Millilitres">g of sucrose in 100 mL of solution.</param>
    /// <param name="celsius">Temperature at which the 100 mL are measured, °C.</param>
    /// <returns>Grams of sucrose in 100 g of solution.</returns>
    /// <remarks>
    /// Source: inverse of <see cref="GramsPer100Millilitres"/>. Valid for: 0 to what 85 Brix holds (122.6 g/100 mL at 20 °C).
    /// Error: that of the density.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">More than 85 Brix holds, negative, outside 0 to 80 °C, or NaN.</exception>
    public static double BrixFromGramsPer100Millilitres(double gramsPer100Millilitres, double celsius = 20)
    {
        Span<double> coefficients = stackalloc double[Powers];
        var water = Collapse(celsius, coefficients);
        var most = HighestBrix / 1000 * Evaluate(HighestBrix / 100, water, coefficients, out _);
        Guard.InRange(gramsPer100Millilitres, 0, most);
        return 100 * Invert(gramsPer100Millilitres * 10, perVolume: true, water, coefficients);
    }

    /// <summary>Apparent volume of a gram of sucrose: what it adds to the volume of its water.</summary>
    /// <param name="brix">Grams of sucrose in 100 g of solution; 0 gives the limit of great dilution.</param>
    /// <param name="celsius">Temperature, °C.</param>
    /// <returns>mL/g.</returns>
    /// <remarks>
    /// Source: from <see cref="KilogramsPerCubicMetre"/> and the water of the same standard.
    /// Valid for: 0 to 85 Brix, 0 to 80 °C. Error: 0.0004 mL/g against tables of 10 to 60 Brix at 20 °C.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">Outside 0 to 85 Brix or 0 to 80 °C, or NaN.</exception>
    public static double ApparentMillilitresPerGram(double brix, double celsius = 20)
    {
        Span<double> coefficients = stackalloc double[Powers];
        var water = Collapse(celsius, coefficients);
        var fraction = Guard.InRange(brix, 0, HighestBrix) / 100;
        var density = Evaluate(fraction, water, coefficients, out var slope);
        // Below that the difference of two nearly equal volumes would be lost; there the limit is exact to eight digits.
        return fraction < 1e-7
            ? 1000 / water * (1 - slope / water)
            : 1000 * (1 / density - (1 - fraction) / water) / fraction;
    }

    /// <summary>Brix above which sucrose crystallises from a pure syrup at rest.</summary>
    /// <param name="celsius">Temperature of storage, °C.</param>
    /// <returns>Grams of sucrose in 100 g of saturated solution.</returns>
    /// <remarks>
    /// Source: CRC-type solubility table (the older series), linear between its rows of 5 °C.
    /// Valid for: 0 to 25 °C. Error: newer measurements run up to 0.5 Brix lower near 20 °C; treat 66.5 to 67.1 there as on the line.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">Outside 0 to 25 °C, or NaN.</exception>
    public static double SaturationBrix(double celsius)
    {
        ReadOnlySpan<double> everyFiveDegrees = [64.18, 64.87, 65.58, 66.33, 67.09, 67.89];
        var place = Guard.InRange(celsius, 0, 25) / 5;
        var below = Math.Min((int)place, everyFiveDegrees.Length - 2);
        return everyFiveDegrees[below] + (place - below) * (everyFiveDegrees[below + 1] - everyFiveDegrees[below]);
    }

    /// <summary>Density at 20 °C by mass fraction of sucrose (0 to 1, unchecked), kg/m³, with its slope by the fraction.</summary>
    internal static double At20(double fraction, out double slope) => Evaluate(fraction, WaterAt20, Coefficients.AsSpan(0, Powers), out slope);

    // Sums the powers of temperature once, so that what is left is one polynomial in the mass fraction. Returns the water's density.
    private static double Collapse(double celsius, Span<double> coefficients)
    {
        var tau = (Guard.InRange(celsius, 0, HighestCelsius) - 20) / 100;
        var all = Coefficients;
        for (var k = 0; k < Powers; k++)
        {
            var sum = 0.0;
            for (var i = all.Length / Powers - 1; i >= 0; i--)
            {
                sum = sum * tau + all[i * Powers + k];
            }
            coefficients[k] = sum;
        }
        return WaterDensity.KilogramsPerCubicMetre(celsius);
    }

    private static double Evaluate(double fraction, double water, ReadOnlySpan<double> coefficients, out double slope)
    {
        var sum = 0.0;
        var derivative = 0.0;
        for (var k = Powers - 1; k >= 0; k--)
        {
            derivative = derivative * fraction + sum;
            sum = sum * fraction + coefficients[k];
        }
        slope = derivative * fraction + sum;
        return water + sum * fraction;
    }

    // Both targets rise with the fraction, so a bracket always holds the answer; Newton needs four or five steps.
    private static double Invert(double target, bool perVolume, double water, ReadOnlySpan<double> coefficients)
    {
        var low = 0.0;
        var high = HighestBrix / 100;
        var fraction = high / 2;
        for (var step = 0; step < 100; step++)
        {
            var density = Evaluate(fraction, water, coefficients, out var slope);
            var excess = (perVolume ? fraction * density : density) - target;
            if (excess > 0)
            {
                high = fraction;
            }
            else
            {
                low = fraction;
            }
            var next = fraction - excess / (perVolume ? density + fraction * slope : slope);
            if (next < low || next > high)
            {
                next = (low + high) / 2;
            }
            if (Math.Abs(next - fraction) < BrixTolerance / 100)
            {
                return next;
            }
            fraction = next;
        }
        return fraction;
    }
}
