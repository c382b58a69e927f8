namespace MenuLab.Core.Statistics;

/// <summary>
/// From the size of a difference to the share of right answers and back. The size d' is the distance of two drinks in the mind, in standard
/// deviations of one impression: below 0.5 hardly any, 1 to 2 noticeable side by side, above 2 obvious.
/// </summary>
/// <remarks>
/// Source: docs/statistics.md, section 4.5: Thurstone's model with equal normal impressions; the values at d' = 1 agree with the tables
/// of Ennis 1993 (MEMORY) and with a simulation of the decision rules (4e-4). Valid for: d' from 0 to 40. Error: below 1e-9.
/// </remarks>
public static class Psychometric
{
    /// <summary>The largest difference that is looked for.</summary>
    public const double MostDPrime = 40;

    private const double Edge = 9;
    private const int Panels = 4;
    private static readonly double Root2 = Math.Sqrt(2);
    private static readonly double Root3 = Math.Sqrt(3);
    private static readonly double Root6 = Math.Sqrt(6);
    private static readonly double Root2Of3 = Math.Sqrt(2.0 / 3);

    /// <summary>Share of right answers to expect.</summary>
    /// <param name="method">The method.</param>
    /// <param name="dPrime">Size of the difference, 0 to <see cref="MostDPrime"/>.</param>
    /// <returns>From the guessing share to 1.</returns>
    /// <remarks>Source, valid range and error: see the class.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A d' outside its range, or NaN.</exception>
    public static double Right(DiscriminationMethod method, double dPrime)
    {
        var d = Guard.InRange(dPrime, 0, MostDPrime);
        switch (method)
        {
            case DiscriminationMethod.PairedComparison:
                return Lower(d / Root2);
            case DiscriminationMethod.ThreeGlasses:
                return Whole(d, z => Density(z - d) * Lower(z) * Lower(z));
            case DiscriminationMethod.DuoTrio:
                var (a, b) = (Lower(d / Root2), Lower(d / Root6));
                return 1 - a - b + 2 * a * b;
            case DiscriminationMethod.Triangle:
                return 2 * Quadrature.Integrate(z => (Lower(-z * Root3 + d * Root2Of3) + Lower(-z * Root3 - d * Root2Of3)) * Density(z), 0, Edge, Panels);
            case DiscriminationMethod.Tetrad:
                return 1 - 2 * Whole(0, z => Density(z) * (2 * Lower(z) - Lower(z - d)) * Lower(z - d));
            default:
                throw new ArgumentOutOfRangeException(nameof(method), method, "No such method.");
        }
    }

    /// <summary>How fast the share of right answers rises with the difference.</summary>
    /// <param name="method">The method.</param>
    /// <param name="dPrime">Size of the difference, 0 to <see cref="MostDPrime"/>.</param>
    /// <returns>Share per unit of d'; zero at d' = 0 for triangle, duo-trio and tetrad.</returns>
    /// <remarks>Source: derivatives of <see cref="Right"/> in d'. Valid range and error: see the class.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A d' outside its range, or NaN.</exception>
    public static double Slope(DiscriminationMethod method, double dPrime)
    {
        var d = Guard.InRange(dPrime, 0, MostDPrime);
        switch (method)
        {
            case DiscriminationMethod.PairedComparison:
                return Density(d / Root2) / Root2;
            case DiscriminationMethod.ThreeGlasses:
                return Whole(d, z => Density(z - d) * (z - d) * Lower(z) * Lower(z));
            case DiscriminationMethod.DuoTrio:
                var (a, b) = (d / Root2, d / Root6);
                return -Density(a) / Root2 - Density(b) / Root6 + 2 * (Density(a) * Lower(b) / Root2 + Lower(a) * Density(b) / Root6);
            case DiscriminationMethod.Triangle:
                return 2 * Root2Of3 * Quadrature.Integrate(z => (Density(-z * Root3 + d * Root2Of3) - Density(-z * Root3 - d * Root2Of3)) * Density(z), 0, Edge, Panels);
            case DiscriminationMethod.Tetrad:
                return 4 * Whole(0, z => Density(z) * Density(z - d) * (Lower(z) - Lower(z - d)));
            default:
                throw new ArgumentOutOfRangeException(nameof(method), method, "No such method.");
        }
    }

    /// <summary>The difference at which a share of answers is right.</summary>
    /// <param name="method">The method.</param>
    /// <param name="right">Share of right answers, 0 to 1.</param>
    /// <returns>d'; 0 at or below the guessing share, infinite where everything is right.</returns>
    /// <remarks>Source: Brent's method on <see cref="Right"/>. Valid range and error: see the class; shares above that of d' = 40 count as everything.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A share outside 0 to 1, or NaN.</exception>
    public static double DPrime(DiscriminationMethod method, double right)
    {
        Guard.InRange(right, 0, 1);
        return right <= method.Guess() ? 0
            // The sum of the quadrature may come out a rounding above 1.
            : right >= Math.Min(1, Right(method, MostDPrime)) ? double.PositiveInfinity
            : Roots.Between(d => Right(method, d) - right, 0, MostDPrime);
    }

    // Over the whole line, where the density around a middle is not negligible.
    private static double Whole(double middle, Func<double, double> function) => Quadrature.Integrate(function, middle - Edge, middle + Edge, Panels);

    private static double Lower(double z) => Distributions.NormalLower(z);

    private static double Density(double z) => Distributions.NormalDensity(z);
}
