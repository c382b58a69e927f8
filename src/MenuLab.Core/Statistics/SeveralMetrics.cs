namespace MenuLab.Core.Statistics;

/// <summary>How many metrics may be linked to liking at once. The samples are the units, however many tasters there were.</summary>
public static class SeveralMetrics
{
    /// <summary>Two metrics that go together more closely than this cannot be told apart. Our choice.</summary>
    public const double CannotBeSeparatedFrom = 0.8;

    /// <summary>The most metrics for so many different samples.</summary>
    /// <param name="samples">Different samples over all tastings, zero or more.</param>
    /// <returns>A quarter of them, rounded down.</returns>
    /// <remarks>Source: docs/statistics.md, section 8.3; a choice of ours well below the p - 2 that could be fitted. Valid for: samples that differ. Error: none.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A negative count.</exception>
    public static int Most(int samples)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(samples);
        return samples / 4;
    }

    /// <summary>Whether two metrics went together too closely to be told apart in these samples.</summary>
    /// <param name="one">The first metric of each sample; three samples at least.</param>
    /// <param name="other">The second metric of the same samples.</param>
    /// <returns>True also where either did not vary: then nothing can be told of it.</returns>
    /// <remarks>Source: docs/statistics.md, section 8.3. Valid for: one value a sample, never one an answer. Error: none.</remarks>
    /// <exception cref="ArgumentException">Lists of different length, fewer than three, or a value that is not finite.</exception>
    public static bool CannotBeSeparated(IReadOnlyList<double> one, IReadOnlyList<double> other)
    {
        ScoreTables.CheckFinite(one);
        ScoreTables.CheckFinite(other);
        if (one.Count != other.Count || one.Count < 3)
        {
            throw new ArgumentException("Needs three samples at least, and both metrics of each.", nameof(other));
        }
        return Moments.Correlation(one, other) is not { } correlation || Math.Abs(correlation) > CannotBeSeparatedFrom;
    }
}
