namespace MenuLab.Core.Statistics;

/// <summary>Analysis of variance of a complete table: every taster scored every sample once. Tasters are a chance selection, samples are meant.</summary>
/// <param name="Samples">Means of the samples and the test of their differences.</param>
/// <param name="Tasters">Whether tasters use different levels of the scale.</param>
/// <param name="TasterMeanSquare">Mean square between tasters, points squared.</param>
/// <param name="SampleMeanSquare">Mean square between samples, points squared.</param>
/// <param name="TasterVariance">Variance between tasters' levels, zero or more, points squared.</param>
/// <param name="SingleMeanError">Standard error of one mean for tasters like these, points.</param>
/// <param name="SingleMeanDegrees">Its degrees of freedom (Satterthwaite); null where nothing varies.</param>
/// <param name="Explained">Share of the variation within tasters that the samples make up (partial eta squared), 0 to 1; null where nothing varies.</param>
/// <param name="ExplainedBeyondLuck">The same, corrected for luck (partial omega squared); may be below zero; null where there is no F or no error.</param>
public sealed record TwoWayResult(
    SampleMeans Samples, FTest Tasters, double TasterMeanSquare, double SampleMeanSquare, double TasterVariance,
    double SingleMeanError, double? SingleMeanDegrees, double? Explained, double? ExplainedBeyondLuck);

/// <summary>The two-way analysis without repeats.</summary>
public static class TwoWayAnalysis
{
    /// <summary>Works out a complete table.</summary>
    /// <param name="scores">Tasters in rows, samples in columns; two of each at least; points of the scale.</param>
    /// <returns>Means, test, variances and sizes of effect.</returns>
    /// <remarks>
    /// Source: docs/statistics.md, section 2.4. The error is the taster-by-sample residual, right whether tasters are a chance selection or
    /// not. Valid for: scores whose residuals are about normal; ranks and at most six tasters: see <see cref="Friedman"/>. Error: rounding.
    /// </remarks>
    /// <exception cref="ArgumentException">Fewer than two tasters or samples, or a score that is not finite.</exception>
    public static TwoWayResult Of(double[,] scores)
    {
        ScoreTables.Check(scores);
        var (tasters, samples) = (scores.GetLength(0), scores.GetLength(1));
        var sums = Sums.Of(scores);
        var errorDegrees = (tasters - 1) * (samples - 1);
        var (tasterMean, sampleMean, errorMean) = (sums.Tasters / (tasters - 1), sums.Samples / (samples - 1), sums.Error / errorDegrees);
        var test = FTest.Of(sampleMean, samples - 1, errorMean, errorDegrees);
        var between = Math.Max(0, (tasterMean - errorMean) / samples);
        var rest = (samples - 1) * errorMean / samples;
        // Satterthwaite: the variance of one mean mixes two mean squares.
        var mixed = tasterMean * tasterMean / (samples * samples) / (tasters - 1) + rest * rest / errorDegrees;
        var beyond = (samples - 1) * (test.F - 1);
        return new TwoWayResult(
            new SampleMeans(sums.SampleMeans, Even(samples, Math.Sqrt(2 * errorMean / tasters)), test, errorMean),
            FTest.Of(tasterMean, tasters - 1, errorMean, errorDegrees), tasterMean, sampleMean, between,
            Math.Sqrt((between + errorMean) / tasters),
            // Where tasters' levels do not vary the error stands alone.
            mixed == 0 ? null : between == 0 ? errorDegrees : (between + errorMean) * (between + errorMean) / mixed,
            sums.Samples + sums.Error == 0 ? null : sums.Samples / (sums.Samples + sums.Error),
            test.F is null or double.PositiveInfinity ? null : beyond / (beyond + tasters * samples));
    }

    /// <summary>Share of tasters who scored one sample above another; a tie counts half.</summary>
    /// <param name="scores">Tasters in rows, samples in columns.</param>
    /// <param name="one">Column of the first sample.</param>
    /// <param name="other">Column of the second sample.</param>
    /// <returns>0 to 1.</returns>
    /// <remarks>Source: docs/statistics.md, section 2.4. Valid for: any scores. Error: none.</remarks>
    /// <exception cref="ArgumentException">Fewer than two tasters or samples, or a score that is not finite.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A column that is not there.</exception>
    public static double ShareAbove(double[,] scores, int one, int other)
    {
        ScoreTables.Check(scores);
        Guard.InRange(one, 0, scores.GetLength(1) - 1);
        Guard.InRange(other, 0, scores.GetLength(1) - 1);
        var tasters = scores.GetLength(0);
        return Enumerable.Range(0, tasters).Average(t => (1 + Math.Sign(scores[t, one] - scores[t, other])) / 2.0);
    }

    /// <summary>The same standard error for every pair.</summary>
    internal static double[,] Even(int samples, double error)
    {
        var errors = new double[samples, samples];
        for (var a = 0; a < samples; a++)
        {
            for (var b = 0; b < samples; b++)
            {
                errors[a, b] = a == b ? 0 : error;
            }
        }
        return errors;
    }

    /// <summary>Sums of squares of a complete table.</summary>
    internal readonly record struct Sums(double[] SampleMeans, double Tasters, double Samples, double Error)
    {
        public static Sums Of(double[,] scores)
        {
            var (tasters, samples) = (scores.GetLength(0), scores.GetLength(1));
            var tasterMeans = Enumerable.Range(0, tasters).Select(t => ScoreTables.Row(scores, t).Average()).ToArray();
            var sampleMeans = Enumerable.Range(0, samples).Select(s => ScoreTables.Column(scores, s).Average()).ToArray();
            var mean = tasterMeans.Average();
            var (error, squares) = (0.0, 0.0);
            for (var t = 0; t < tasters; t++)
            {
                for (var s = 0; s < samples; s++)
                {
                    var residual = scores[t, s] - tasterMeans[t] - sampleMeans[s] + mean;
                    error += residual * residual;
                    squares += scores[t, s] * scores[t, s];
                }
            }
            return new Sums(sampleMeans,
                Rounded(samples * tasterMeans.Sum(m => (m - mean) * (m - mean)), squares),
                Rounded(tasters * sampleMeans.Sum(m => (m - mean) * (m - mean)), squares),
                Rounded(error, squares));
        }

        // What is left of scores that do not vary is rounding, and a ratio of two roundings says nothing.
        internal static double Rounded(double sum, double squares) => sum <= 1e-24 * squares ? 0 : sum;
    }
}
