using MenuLab.Core.House;

namespace MenuLab.Core.Statistics;

/// <summary>How steady one taster is, for that taster's own eyes. Null means "cannot be computed", never zero.</summary>
/// <param name="Taster">The taster, counted from 0.</param>
/// <param name="Mean">Mean of all scores, points.</param>
/// <param name="Spread">Standard deviation of the sample means, points: how much of the scale was used.</param>
/// <param name="UsedTheScale">Not everything got one score.</param>
/// <param name="RepeatError">Standard deviation of one score about the mean of its repeats, points.</param>
/// <param name="MeanGap">Mean distance of the repeats' highest from their lowest, points.</param>
/// <param name="Telling">Whether the samples differ for this taster, measured by the repeats; below a chance of 0.30 is useful.</param>
/// <param name="WithTheRest">Correlation of the sample means with those of all others, -1 to 1.</param>
public sealed record TasterFigures(
    int Taster, double Mean, double Spread, bool UsedTheScale, double RepeatError, double MeanGap, FTest Telling, double? WithTheRest);

/// <summary>How steady a panel was.</summary>
public static class TasterPerformance
{
    /// <summary>A taster tells samples apart usefully below this chance by luck: lenient, for two repeats tell little. Our choice.</summary>
    public const double UsefulBelow = 0.30;

    /// <summary>Works out every taster of a table with repeats.</summary>
    /// <param name="scores">Tasters, samples and repeats; two of each at least; points of the scale.</param>
    /// <returns>Figures of each taster.</returns>
    /// <remarks>Source: docs/statistics.md, section 7: analysis of variance within each taster; correlation with the mean of the others. Valid for: one property. Error: rounding.</remarks>
    /// <exception cref="ArgumentException">Fewer than two of anything, or a score that is not finite.</exception>
    public static IReadOnlyList<TasterFigures> Of(double[,,] scores)
    {
        var (tasters, samples, repeats) = (scores.GetLength(0), scores.GetLength(1), scores.GetLength(2));
        if (tasters < 2 || samples < 2 || repeats < 2)
        {
            throw new ArgumentException("Needs two tasters, samples and repeats at least.", nameof(scores));
        }
        ScoreTables.CheckFinite([.. scores.Cast<double>()]);
        var means = new double[tasters, samples];
        for (var t = 0; t < tasters; t++)
        {
            for (var s = 0; s < samples; s++)
            {
                means[t, s] = Enumerable.Range(0, repeats).Average(r => scores[t, s, r]);
            }
        }
        return [.. Enumerable.Range(0, tasters).Select(t => One(scores, means, t))];
    }

    private static TasterFigures One(double[,,] scores, double[,] means, int taster)
    {
        var (tasters, samples, repeats) = (scores.GetLength(0), scores.GetLength(1), scores.GetLength(2));
        var own = ScoreTables.Row(means, taster);
        var mean = own.Average();
        var (within, squares, gaps) = (0.0, 0.0, 0.0);
        for (var s = 0; s < samples; s++)
        {
            var cell = Enumerable.Range(0, repeats).Select(r => scores[taster, s, r]).ToArray();
            within += cell.Sum(score => (score - own[s]) * (score - own[s]));
            squares += cell.Sum(score => score * score);
            gaps += cell.Max() - cell.Min();
        }
        var withinMean = TwoWayAnalysis.Sums.Rounded(within, squares) / (samples * (repeats - 1));
        var betweenMean = TwoWayAnalysis.Sums.Rounded(repeats * own.Sum(m => (m - mean) * (m - mean)), squares) / (samples - 1);
        var rest = Enumerable.Range(0, samples).Select(s => Enumerable.Range(0, tasters).Where(t => t != taster).Average(t => means[t, s])).ToArray();
        return new TasterFigures(taster, mean, Math.Sqrt(Moments.Variance(own)), withinMean > 0 || betweenMean > 0, Math.Sqrt(withinMean), gaps / samples,
            FTest.Of(betweenMean, samples - 1, withinMean, samples * (repeats - 1)), Moments.Correlation(own, rest));
    }

    /// <summary>What one taster is told, alone: never a ranking.</summary>
    /// <param name="own">The taster's figures.</param>
    /// <param name="panel">Figures of the whole panel.</param>
    /// <param name="property">What was asked about: "sweetness".</param>
    /// <param name="samples">How many samples, 3 or more.</param>
    /// <param name="format">How the house writes numbers.</param>
    /// <remarks>Source: docs/statistics.md, section 7. Valid for: one property. Error: none of its own.</remarks>
    /// <exception cref="ArgumentException">No panel.</exception>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than three samples.</exception>
    public static string Sentence(TasterFigures own, IReadOnlyList<TasterFigures> panel, string property, int samples, HouseFormat format)
    {
        var byLuck = CorrelationByLuck(samples);
        if (panel.Count == 0)
        {
            throw new ArgumentException("Needs the panel's figures.", nameof(panel));
        }
        if (!own.UsedTheScale)
        {
            return $"You gave every sample the same score for {property}: the scale was not used.";
        }
        var gap = $"Your hidden duplicates were {format.Number(own.MeanGap, 1)} points apart on average for {property} (panel: {format.Number(panel.Average(taster => taster.MeanGap), 1)}).";
        return own.WithTheRest switch
        {
            { } with when with >= byLuck => $"{gap} You order {property} as the others do.",
            < 0 => $"{gap} You order {property} differently from the others: worth a short calibration with three reference glasses.",
            _ => $"{gap} Too few samples to say how your order compares.",
        };
    }

    /// <summary>The correlation that luck exceeds one time in twenty.</summary>
    /// <param name="samples">How many samples, 3 or more.</param>
    /// <returns>0 to 1.</returns>
    /// <remarks>Source: docs/statistics.md, section 7: t of a correlation, one-sided. Valid for: independent samples; with four or fewer it takes 0.9, so pool tastings. Error: 1e-10.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than three samples.</exception>
    public static double CorrelationByLuck(int samples)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(samples, 3);
        var t = Distributions.StudentQuantile(0.95, samples - 2);
        return t / Math.Sqrt(t * t + samples - 2);
    }

    /// <summary>Correlations of several tastings as one.</summary>
    /// <param name="correlations">Correlation and number of samples of each tasting; below 1 in size, four samples at least.</param>
    /// <returns>The pooled correlation, -1 to 1.</returns>
    /// <remarks>Source: docs/statistics.md, section 7: Fisher's z, weighted by samples less three (MEMORY). Valid for: one taster and property. Error: that of few samples.</remarks>
    /// <exception cref="ArgumentException">No tastings.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A correlation of 1 or more in size, or fewer than four samples.</exception>
    public static double Pooled(IReadOnlyList<(double Correlation, int Samples)> correlations)
    {
        if (correlations.Count == 0)
        {
            throw new ArgumentException("Needs one tasting at least.", nameof(correlations));
        }
        var (sum, weights) = (0.0, 0.0);
        foreach (var (correlation, samples) in correlations)
        {
            ArgumentOutOfRangeException.ThrowIfLessThan(samples, 4);
            if (!(Math.Abs(correlation) < 1))
            {
                throw new ArgumentOutOfRangeException(nameof(correlations), correlation, "Must be below 1 in size.");
            }
            sum += (samples - 3) * Math.Atanh(correlation);
            weights += samples - 3;
        }
        return Math.Tanh(sum / weights);
    }

    /// <summary>How far tasters agree on an order, in words.</summary>
    /// <param name="agreement">Kendall's W, 0 to 1.</param>
    /// <remarks>Source: docs/statistics.md, section 7; the steps are ours. Valid for: any panel. Error: words, no figure.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Outside 0 to 1, or NaN.</exception>
    public static string AgreementInWords(double agreement) => Guard.InRange(agreement, 0, 1) switch
    {
        < 0.3 => "the tasters hardly agree on the order",
        <= 0.6 => "the tasters agree on the order in part",
        _ => "the tasters agree on the order",
    };
}
