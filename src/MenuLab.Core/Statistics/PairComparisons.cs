namespace MenuLab.Core.Statistics;

/// <summary>Two samples compared.</summary>
/// <param name="One">Number of the first sample.</param>
/// <param name="Other">Number of the second sample.</param>
/// <param name="Alone">First minus second with 95 % limits, for a pair named before the tasting.</param>
/// <param name="AmongAll">First minus second with limits that hold for all pairs together at 95 %.</param>
/// <param name="Error">Standard error of the difference, points.</param>
/// <param name="ByLuckAlone">Chance by luck, for a pair named before the tasting (Fisher).</param>
/// <param name="ByLuckAmongAll">Chance by luck that any pair differs so much (Tukey and Kramer).</param>
public sealed record PairComparison(int One, int Other, Ranged Alone, Ranged AmongAll, double Error, double ByLuckAlone, double ByLuckAmongAll);

/// <summary>Which samples differ from which.</summary>
public static class PairComparisons
{
    /// <summary>Compares every pair.</summary>
    /// <param name="samples">Means and standard errors of an analysis.</param>
    /// <returns>All pairs, the first number below the second.</returns>
    /// <remarks>
    /// Source: docs/statistics.md, section 2.6: Student's t for a pair named before, Tukey and Kramer's studentized range among all. Valid for: two
    /// degrees of freedom and up. Error: 1e-10 in the chances, 1e-7 in the limits.
    /// </remarks>
    /// <exception cref="ArgumentException">Fewer than two degrees of freedom, or more than <see cref="StudentizedRange.MostMeans"/> samples.</exception>
    public static IReadOnlyList<PairComparison> Of(SampleMeans samples)
    {
        var (count, degrees) = (samples.Means.Count, samples.Test.ErrorDegrees);
        if (degrees < StudentizedRange.LeastDegrees || count > StudentizedRange.MostMeans)
        {
            throw new ArgumentException("Needs two degrees of freedom at least and a hundred samples at most.", nameof(samples));
        }
        var alone = Distributions.StudentQuantile(0.975, degrees);
        // Standard errors of differences are sqrt 2 times those of means, in which the range is counted.
        var among = StudentizedRange.Quantile(0.95, count, degrees) / Math.Sqrt(2);
        var pairs = new List<PairComparison>();
        for (var one = 0; one < count; one++)
        {
            for (var other = one + 1; other < count; other++)
            {
                var (difference, error) = (samples.Means[one] - samples.Means[other], samples.DifferenceErrors[one, other]);
                var t = error == 0 ? difference == 0 ? 0 : double.PositiveInfinity : Math.Abs(difference) / error;
                pairs.Add(new PairComparison(one, other,
                    new Ranged(difference, difference - alone * error, difference + alone * error),
                    new Ranged(difference, difference - among * error, difference + among * error),
                    error, Distributions.StudentTwoSided(t, degrees), Math.Max(0, 1 - StudentizedRange.Lower(t * Math.Sqrt(2), count, degrees))));
            }
        }
        return pairs;
    }
}
