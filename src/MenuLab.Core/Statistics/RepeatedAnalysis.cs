namespace MenuLab.Core.Statistics;

/// <summary>Analysis of variance of a complete table in which each taster scored each sample several times.</summary>
/// <param name="Samples">Means of the samples and the test of their differences, measured by how tasters disagree.</param>
/// <param name="Tasters">Whether tasters use different levels of the scale, measured by their repeats.</param>
/// <param name="Disagreement">Whether tasters order the samples differently, measured by their repeats.</param>
/// <param name="SampleMeanSquare">Mean square between samples, points squared.</param>
/// <param name="TasterMeanSquare">Mean square between tasters, points squared.</param>
/// <param name="DisagreementMeanSquare">Mean square of taster by sample, points squared.</param>
/// <param name="RepeatMeanSquare">Mean square between repeats, points squared.</param>
public sealed record RepeatedAnalysisResult(
    SampleMeans Samples, FTest Tasters, FTest Disagreement, double SampleMeanSquare, double TasterMeanSquare, double DisagreementMeanSquare, double RepeatMeanSquare);

/// <summary>The two-way analysis with repeats.</summary>
public static class RepeatedAnalysis
{
    /// <summary>Works out a complete table with repeats.</summary>
    /// <param name="scores">Tasters, samples and repeats, two of each at least; points of the scale.</param>
    /// <returns>Means and tests.</returns>
    /// <remarks>
    /// Source: docs/statistics.md, section 2.5: samples are measured by taster by sample, for the same few people stand behind all repeats; the
    /// two mean squares are never pooled. Valid for: the same repeats everywhere. Error: rounding.
    /// </remarks>
    /// <exception cref="ArgumentException">Fewer than two of anything, or a score that is not finite.</exception>
    public static RepeatedAnalysisResult Of(double[,,] scores)
    {
        var (tasters, samples, repeats) = (scores.GetLength(0), scores.GetLength(1), scores.GetLength(2));
        if (repeats < 2)
        {
            throw new ArgumentException("Needs two repeats at least.", nameof(scores));
        }
        var cells = new double[tasters, samples];
        for (var t = 0; t < tasters; t++)
        {
            for (var s = 0; s < samples; s++)
            {
                cells[t, s] = Enumerable.Range(0, repeats).Average(r => scores[t, s, r]);
            }
        }
        ScoreTables.Check(cells);
        var (within, squares) = (0.0, 0.0);
        for (var t = 0; t < tasters; t++)
        {
            for (var s = 0; s < samples; s++)
            {
                for (var r = 0; r < repeats; r++)
                {
                    within += (scores[t, s, r] - cells[t, s]) * (scores[t, s, r] - cells[t, s]);
                    squares += scores[t, s, r] * scores[t, s, r];
                }
            }
        }
        var sums = TwoWayAnalysis.Sums.Of(cells);
        var (disagreementDegrees, repeatDegrees) = ((tasters - 1) * (samples - 1), tasters * samples * (repeats - 1));
        var sampleMean = repeats * sums.Samples / (samples - 1);
        var tasterMean = repeats * sums.Tasters / (tasters - 1);
        var disagreement = repeats * sums.Error / disagreementDegrees;
        var repeat = TwoWayAnalysis.Sums.Rounded(within, squares) / repeatDegrees;
        return new RepeatedAnalysisResult(
            new SampleMeans(sums.SampleMeans, TwoWayAnalysis.Even(samples, Math.Sqrt(2 * disagreement / (tasters * repeats))),
                FTest.Of(sampleMean, samples - 1, disagreement, disagreementDegrees), disagreement),
            FTest.Of(tasterMean, tasters - 1, repeat, repeatDegrees), FTest.Of(disagreement, disagreementDegrees, repeat, repeatDegrees),
            sampleMean, tasterMean, disagreement, repeat);
    }
}
