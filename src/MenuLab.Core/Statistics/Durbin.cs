namespace MenuLab.Core.Statistics;

/// <summary>What ranks within incomplete blocks say.</summary>
/// <param name="RankSums">Sum of each sample's ranks.</param>
/// <param name="Statistic">Durbin's statistic; null where every block gave one score to everything.</param>
/// <param name="ByLuck">Chance of rank sums as far apart by luck alone (chi-squared); null where there is no statistic.</param>
public sealed record DurbinResult(IReadOnlyList<double> RankSums, double? Statistic, double? ByLuck);

/// <summary>The rank test of a balanced incomplete block design.</summary>
public static class Durbin
{
    /// <summary>Ranks within each block and tests whether the samples differ.</summary>
    /// <param name="scores">One score a block (taster and session) and sample, both counted from 0; blocks of one size, every sample equally often.</param>
    /// <returns>Rank sums and test.</returns>
    /// <remarks>Source: docs/statistics.md, section 1.3, the form that allows ties. Valid for: balanced incomplete blocks. Error: the chi-squared distribution is rough for few blocks.</remarks>
    /// <exception cref="ArgumentException">Blocks of different size, samples not equally often, or a score that is not finite.</exception>
    public static DurbinResult Of(IReadOnlyList<Score> scores)
    {
        var (blocks, samples) = ScoreTables.Check(scores);
        var byBlock = scores.GroupBy(score => score.Taster).ToList();
        var (size, times) = (scores.Count / blocks, scores.Count / samples);
        if (byBlock.Any(block => block.Count() != size) || scores.GroupBy(score => score.Sample).Any(sample => sample.Count() != times))
        {
            throw new ArgumentException("Blocks must have one size and every sample must come equally often.", nameof(scores));
        }
        var sums = new double[samples];
        var squares = 0.0;
        foreach (var block in byBlock)
        {
            var own = block.ToList();
            var ranks = Ranks.Doubled([.. own.Select(score => score.Value)]);
            for (var i = 0; i < own.Count; i++)
            {
                sums[own[i].Sample] += ranks[i] / 2.0;
                squares += ranks[i] * ranks[i] / 4.0;
            }
        }
        var middle = blocks * size * (size + 1.0) * (size + 1.0) / 4;
        if (squares - middle <= 0)
        {
            return new DurbinResult(sums, null, null);
        }
        var statistic = (samples - 1) * (sums.Sum(sum => sum * sum) - times * middle) / (squares - middle);
        return new DurbinResult(sums, statistic, Distributions.ChiSquaredUpper(statistic, samples - 1));
    }
}
