namespace MenuLab.Core.Statistics;

/// <summary>The mean of one drink's scores.</summary>
/// <param name="Count">How many scores.</param>
/// <param name="Mean">Points of the scale.</param>
/// <param name="StandardDeviation">Points; null for one score.</param>
/// <param name="Range">The mean with its 95 % limits; null for one score.</param>
public sealed record MeanInterval(int Count, double Mean, double? StandardDeviation, Ranged? Range)
{
    /// <summary>Works out mean and limits.</summary>
    /// <param name="scores">One score a taster; one score or more.</param>
    /// <returns>Mean, standard deviation and the 95 % limits of the mean. The limits are not cut at the ends of the scale.</returns>
    /// <remarks>
    /// Source: docs/statistics.md, section 2.2: mean -+ t(.975) s/sqrt(n). Valid for: one drink by itself; the limits hold the tasters' different
    /// levels, so two drinks must not be compared by whether they overlap. Error: rounding.
    /// </remarks>
    /// <exception cref="ArgumentException">No scores, or one that is not finite.</exception>
    public static MeanInterval Of(IReadOnlyList<double> scores)
    {
        ScoreTables.CheckFinite(scores);
        var mean = scores.Average();
        if (scores.Count == 1)
        {
            return new MeanInterval(1, mean, null, null);
        }
        var deviation = Math.Sqrt(Moments.Variance(scores));
        var half = Distributions.StudentQuantile(0.975, scores.Count - 1) * deviation / Math.Sqrt(scores.Count);
        return new MeanInterval(scores.Count, mean, deviation, new Ranged(mean, mean - half, mean + half));
    }
}
