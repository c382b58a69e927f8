namespace MenuLab.Core.Solutions;

/// <summary>Density of ethanol in water, and strength by mass and by volume.</summary>
public static class EthanolDensity
{
    /// <summary>Density of pure ethanol at 20 °C, kg/m³: the value of the equation below (the printed erratum says 789.24).</summary>
    public const double PureAt20 = 789.2391233;

    /// <summary>Lowest temperature of the equation, °C.</summary>
    public const double LowestCelsius = -20;

    /// <summary>Highest temperature of the equation, °C.</summary>
    public const double HighestCelsius = 40;

    // A1 to A12: powers 0 to 11 of the mass fraction at 20 °C. An array, since a span of constants allocates in unoptimised builds,
    // where the tests count allocations.
    internal static readonly double[] A =
    [
        998.20123, -192.9769495, 389.1238958, -1668.103923, 13522.15441, -88292.78388,
        306287.4042, -613838.1234, 747017.2998, -547846.1354, 223446.0334, -39032.85426,
    ];

    // B1 to B6: powers 1 to 6 of (t - 20).
    internal static ReadOnlySpan<double> B =>
        [-0.20618513, -5.2682542e-3, 3.6130013e-5, -3.8957702e-7, 7.1693540e-9, -9.9739231e-11];

    // C: for each power i = 1 to 5 of (t - 20) the powers of the mass fraction from 1.
    internal static ReadOnlySpan<double> C1 =>
    [
        1.693443461530087e-1, -1.046914743455169e1, 7.196353469546523e1, -7.047478054272792e2, 3.924090430035045e3, -1.210164659068747e4,
        2.248646550400788e4, -2.605562982188164e4, 1.852373922069467e4, -7.420201433430137e3, 1.285617841998974e3,
    ];

    internal static ReadOnlySpan<double> C2 =>
    [
        -1.193013005057010e-2, 2.517399633803461e-1, -2.170575700536993, 1.353034988843029e1, -5.029988758547014e1,
        1.096355666577570e2, -1.422753946421155e2, 1.080435942856230e2, -4.414153236817392e1, 7.442971530188783,
    ];

    internal static ReadOnlySpan<double> C3 =>
    [
        -6.802995733503803e-4, 1.876837790289664e-2, -2.002561813734156e-1, 1.022992966719220, -2.895696483903638,
        4.810060584300675, -4.672147440794683, 2.458043105903461, -5.411227621436812e-1,
    ];

    internal static ReadOnlySpan<double> C4 =>
        [4.075376675622027e-6, -8.763058573471110e-6, 6.515031360099368e-6, -1.515784836987210e-6];

    internal static ReadOnlySpan<double> C5 => [-2.788074354782409e-8, 1.345612883493354e-8];

    /// <summary>Density of a mixture of ethanol and water.</summary>
    /// <param name="massFraction">Grams of ethanol per gram of mixture, 0 to 1.</param>
    /// <param name="celsius">Temperature, °C.</param>
    /// <returns>Density, kg/m³.</returns>
    /// <remarks>
    /// Source: OIML R 22 (1975), after Wagenbreth and Blanke.
    /// Valid for: mass fraction 0 to 1, -20 to 40 °C. Error: 0.005 kg/m³ against the printed tables.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">Outside 0 to 1 or -20 to 40 °C, or NaN.</exception>
    public static double KilogramsPerCubicMetre(double massFraction, double celsius = 20)
    {
        var p = Guard.InRange(massFraction, 0, 1);
        var t = Guard.InRange(celsius, LowestCelsius, HighestCelsius) - 20;
        var sum = At20(p, out _);
        if (t == 0)
        {
            return sum;
        }
        var warming = Horner(B, t) * t;
        var cross = p * t * (Horner(C1, p) + t * (Horner(C2, p) + t * (Horner(C3, p) + t * (Horner(C4, p) + t * Horner(C5, p)))));
        return sum + warming + cross;
    }

    /// <summary>Strength by volume at 20 °C.</summary>
    /// <param name="massFraction">Grams of ethanol per gram of mixture, 0 to 1.</param>
    /// <returns>mL of pure ethanol in 100 mL of mixture, both at 20 °C (% vol).</returns>
    /// <remarks>Source, range and error: those of <see cref="KilogramsPerCubicMetre"/>; labels carry 0.3 to 0.5 % vol by law, which dominates.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Outside 0 to 1, or NaN.</exception>
    public static double AbvPercent(double massFraction) =>
        100 * massFraction * At20(Guard.InRange(massFraction, 0, 1), out _) / PureAt20;

    /// <summary>Strength by mass of a mixture of known strength by volume.</summary>
    /// <param name="abvPercent">% vol at 20 °C, 0 to 100.</param>
    /// <returns>Grams of ethanol per gram of mixture.</returns>
    /// <remarks>Source: inverse of <see cref="AbvPercent"/> (Newton, guarded by a bracket). Valid for: 0 to 100 % vol. Error: below 0.001 % by mass.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Outside 0 to 100 % vol, or NaN.</exception>
    public static double MassFraction(double abvPercent)
    {
        var target = Guard.InRange(abvPercent, 0, 100) / 100 * PureAt20;
        var low = 0.0;
        var high = 1.0;
        var p = abvPercent / 100;
        for (var step = 0; step < 100; step++)
        {
            var density = At20(p, out var slope);
            var excess = p * density - target;
            if (excess > 0)
            {
                high = p;
            }
            else
            {
                low = p;
            }
            var next = p - excess / (density + p * slope);
            if (next < low || next > high)
            {
                next = (low + high) / 2;
            }
            if (Math.Abs(next - p) < 1e-14)
            {
                return next;
            }
            p = next;
        }
        return p;
    }

    /// <summary>Density at 20 °C (mass fraction unchecked), kg/m³, with its slope by the fraction.</summary>
    internal static double At20(double massFraction, out double slope)
    {
        var coefficients = A;
        var sum = 0.0;
        var derivative = 0.0;
        for (var k = coefficients.Length - 1; k >= 0; k--)
        {
            derivative = derivative * massFraction + sum;
            sum = sum * massFraction + coefficients[k];
        }
        slope = derivative;
        return sum;
    }

    private static double Horner(ReadOnlySpan<double> coefficients, double x)
    {
        var sum = 0.0;
        for (var k = coefficients.Length - 1; k >= 0; k--)
        {
            sum = sum * x + coefficients[k];
        }
        return sum;
    }
}
