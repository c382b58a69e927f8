using MathNet.Numerics;

namespace MenuLab.Core.Statistics;

/// <summary>
/// Tails and quantiles of the standard distributions. Upper tails are computed as such, never as 1 minus the lower one: a chance of
/// 1e-9 would lose its digits.
/// </summary>
/// <remarks>Regularised incomplete beta and gamma functions and erfc: MathNet.Numerics; the tests hold them against R and SciPy.</remarks>
internal static class Distributions
{
    private static readonly double DensityAtZero = 1 / Math.Sqrt(2 * Math.PI);

    public static double NormalDensity(double z) => DensityAtZero * Math.Exp(-z * z / 2);

    public static double NormalLower(double z) => SpecialFunctions.Erfc(-z / Constants.Sqrt2) / 2;

    public static double NormalUpper(double z) => NormalLower(-z);

    /// <summary>The z below which a share of a standard normal lies; the share is above 0 and below 1.</summary>
    public static double NormalQuantile(double share) => -Constants.Sqrt2 * SpecialFunctions.ErfcInv(2 * share);

    public static double ChiSquaredUpper(double x, double degrees) => x <= 0 ? 1 : SpecialFunctions.GammaUpperRegularized(degrees / 2, x / 2);

    public static double FUpper(double f, double degrees1, double degrees2) =>
        f <= 0 ? 1 : double.IsPositiveInfinity(f) ? 0 : SpecialFunctions.BetaRegularized(degrees2 / 2, degrees1 / 2, degrees2 / (degrees2 + degrees1 * f));

    public static double StudentUpper(double t, double degrees)
    {
        var both = StudentTwoSided(t, degrees);
        return t >= 0 ? both / 2 : 1 - both / 2;
    }

    public static double StudentTwoSided(double t, double degrees) =>
        double.IsInfinity(t) ? 0 : SpecialFunctions.BetaRegularized(degrees / 2, 0.5, degrees / (degrees + t * t));

    /// <summary>The t below which a share lies; the share is at least one half and below 1.</summary>
    public static double StudentQuantile(double share, double degrees)
    {
        if (share <= 0.5)
        {
            return share == 0.5 ? 0 : throw new ArgumentOutOfRangeException(nameof(share), share, "Must be at least one half.");
        }
        if (double.IsPositiveInfinity(degrees))
        {
            return NormalQuantile(share);
        }
        // Doubling a bracket keeps the root in reach for one degree of freedom, too.
        var high = 2.0;
        while (StudentUpper(high, degrees) > 1 - share)
        {
            high *= 2;
        }
        return Roots.Between(t => StudentUpper(t, degrees) - (1 - share), 0, high);
    }

    /// <summary>The x in 0 to 1 below which a share of a beta distribution lies.</summary>
    public static double BetaQuantile(double share, double a, double b) =>
        Roots.Between(x => SpecialFunctions.BetaRegularized(a, b, x) - share, 0, 1);

    /// <summary>Chance of x or more right answers in n at a chance of p each.</summary>
    public static double BinomialUpper(int x, int n, double p) =>
        x <= 0 ? 1 : x > n ? 0 : SpecialFunctions.BetaRegularized(x, n - x + 1, p);

    /// <summary>Chance of x or fewer right answers in n at a chance of p each.</summary>
    public static double BinomialLower(int x, int n, double p) =>
        x < 0 ? 0 : x >= n ? 1 : SpecialFunctions.BetaRegularized(n - x, x + 1, 1 - p);

    /// <summary>Chance of exactly x right answers in n at a chance of p each, 0 &lt; p &lt; 1.</summary>
    public static double BinomialPoint(int x, int n, double p) =>
        Math.Exp(SpecialFunctions.BinomialLn(n, x) + x * Math.Log(p) + (n - x) * Math.Log(1 - p));
}
