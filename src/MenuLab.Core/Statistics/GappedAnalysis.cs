namespace MenuLab.Core.Statistics;

/// <summary>Analysis of scores with gaps: some tasters did not score some samples, by accident or by an incomplete design.</summary>
public static class GappedAnalysis
{
    /// <summary>Works out scores with gaps; tasters (or taster and session) and samples are both meant.</summary>
    /// <param name="scores">One score a taster and sample; both counted from 0 without gaps.</param>
    /// <returns>Adjusted means, as if every taster had scored every sample; null where the scores do not connect the samples or leave no error.</returns>
    /// <remarks>
    /// Source: docs/statistics.md, sections 1.3 and 2.4b: least squares on taster and sample. Tasters with one score add nothing and are left
    /// out. In a balanced incomplete block this is the intra-block analysis. Valid for: gaps that have nothing to do with the scores. Error: rounding.
    /// </remarks>
    /// <exception cref="ArgumentException">No scores, gaps in the numbering, a cell twice, or a score that is not finite.</exception>
    public static SampleMeans? Of(IReadOnlyList<Score> scores)
    {
        var (_, samples) = ScoreTables.Check(scores);
        var usable = scores.GroupBy(score => score.Taster).Where(own => own.Count() > 1).ToList();
        var rows = usable.SelectMany((own, place) => own.Select(score => score with { Taster = place })).ToList();
        var tasters = usable.Count;
        if (rows.Count == 0)
        {
            return null;
        }
        var values = rows.Select(score => score.Value).ToArray();
        var tasterColumns = LeastSquares.Indicators([.. rows.Select(score => score.Taster)], tasters);
        var sampleColumns = LeastSquares.Indicators([.. rows.Select(score => score.Sample)], samples);
        var fit = new LeastSquares([.. tasterColumns, .. sampleColumns], values);
        if (fit.Rank < tasters + samples - 1 || fit.Degrees < 1)
        {
            return null;
        }
        var without = new LeastSquares(tasterColumns, values);
        var error = fit.ResidualSumOfSquares;
        var effect = TwoWayAnalysis.Sums.Rounded(without.ResidualSumOfSquares - error, fit.SumOfSquares);
        var meanSquare = error / fit.Degrees;

        var level = Enumerable.Range(0, tasters).Average(t => fit.Coefficients[t]);
        var errors = new double[samples, samples];
        for (var a = 0; a < samples; a++)
        {
            for (var b = 0; b < a; b++)
            {
                var contrast = new double[tasters + samples];
                contrast[tasters + a] = 1;
                contrast[tasters + b] = -1;
                errors[a, b] = errors[b, a] = Math.Sqrt(meanSquare * fit.Variance(contrast));
            }
        }
        return new SampleMeans(
            [.. Enumerable.Range(0, samples).Select(s => level + fit.Coefficients[tasters + s])], errors,
            FTest.Of(effect / (samples - 1), samples - 1, meanSquare, fit.Degrees), meanSquare);
    }
}
