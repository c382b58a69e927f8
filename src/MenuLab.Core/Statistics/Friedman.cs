namespace MenuLab.Core.Statistics;

/// <summary>Where a chance comes from.</summary>
public enum ChanceSource
{
    /// <summary>Every arrangement was counted.</summary>
    Counted,
    /// <summary>Arrangements were drawn at random, from a fixed seed.</summary>
    Drawn,
    /// <summary>A limiting distribution; for large panels.</summary>
    Approximate,
}

/// <summary>What ranks within tasters say.</summary>
/// <param name="RankSums">Sum of each sample's ranks; the highest score has the highest rank.</param>
/// <param name="Statistic">Friedman's statistic, corrected for ties; null where every taster gave one score to everything.</param>
/// <param name="Uncorrected">The same without the correction.</param>
/// <param name="ByLuck">Chance of rank sums as far apart by luck alone, 0 to 1; null where there is no statistic.</param>
/// <param name="Source">Where that chance comes from.</param>
/// <param name="Approximate">The chance by the chi-squared distribution, for comparison with other programs; null where there is no statistic.</param>
/// <param name="Agreement">Kendall's W: how far tasters agree on the order, 0 to 1; null where there is no statistic.</param>
/// <param name="Difference">Rank sums further apart than this differ, for a pair named before the tasting, at 5 % (Conover, ties allowed); null where there is no statistic.</param>
/// <param name="DifferenceWithoutTies">The same by the formula of ISO 8587, which knows no ties.</param>
/// <param name="DifferenceAmongAll">Rank sums further apart than this differ among all pairs together, at 5 % (Nemenyi).</param>
public sealed record FriedmanResult(
    IReadOnlyList<double> RankSums, double? Statistic, double Uncorrected, double? ByLuck, ChanceSource Source, double? Approximate,
    double? Agreement, double? Difference, double DifferenceWithoutTies, double DifferenceAmongAll);

/// <summary>The rank test of a complete table.</summary>
public static class Friedman
{
    /// <summary>Above this many tasters the chi-squared distribution serves where counting would take too long.</summary>
    public const int MostTastersDrawn = 12;

    private const int MostSamplesCounted = 6;

    /// <summary>Ranks each taster's scores and tests whether the samples differ.</summary>
    /// <param name="scores">Tasters in rows, samples in columns; two of each at least. Scores, or ranks with the best highest.</param>
    /// <returns>Rank sums, test, agreement, and how far apart rank sums must lie.</returns>
    /// <remarks>
    /// Source: docs/statistics.md, section 2.8. The chance is counted over every arrangement of each taster's own ranks, ties included, up to
    /// six samples and two million steps of counting (6 x 5, 5 x 10, 4 x 12 and more); small panels beyond that are drawn (standard
    /// error 0.0015 at 5 %), large ones take chi-squared. Valid for: complete tables. Error: counted 1e-12, drawn as said.
    /// </remarks>
    /// <exception cref="ArgumentException">Fewer than two tasters or samples, or a score that is not finite.</exception>
    public static FriedmanResult Of(double[,] scores)
    {
        ScoreTables.Check(scores);
        var ranks = Ranks.DoubledByTaster(scores);
        var (tasters, samples) = (scores.GetLength(0), scores.GetLength(1));
        var doubledSums = Ranks.Sums(ranks);
        var sums = Array.ConvertAll(doubledSums, sum => sum / 2.0);
        var squares = sums.Sum(sum => sum * sum);
        var uncorrected = 12 * squares / (tasters * samples * (samples + 1.0)) - 3 * tasters * (samples + 1.0);
        var ties = ranks.Sum(Ranks.Ties);
        var correction = 1 - ties / (tasters * samples * (samples * samples - 1.0));
        var withoutTies = 1.959963984540054 * Math.Sqrt(tasters * samples * (samples + 1) / 6.0);
        var amongAll = StudentizedRange.Quantile(0.95, samples, double.PositiveInfinity) * Math.Sqrt(tasters * samples * (samples + 1) / 12.0);
        if (correction <= 0)
        {
            return new FriedmanResult(sums, null, uncorrected, null, ChanceSource.Counted, null, null, null, withoutTies, amongAll);
        }
        var statistic = Math.Max(0, uncorrected / correction);
        var degrees = (tasters - 1) * (samples - 1);
        var ownSquares = ranks.Sum(row => row.Sum(rank => rank * rank / 4.0));
        var difference = Distributions.StudentQuantile(0.975, degrees) * Math.Sqrt(Math.Max(0, 2 * (tasters * ownSquares - squares)) / degrees);
        var approximate = Distributions.ChiSquaredUpper(statistic, samples - 1);
        var (byLuck, source) = Chance(ranks, doubledSums.Sum(sum => (long)sum * sum), approximate);
        return new FriedmanResult(sums, statistic, uncorrected, byLuck, source, approximate,
            statistic / (tasters * (samples - 1)), difference, withoutTies, amongAll);
    }

    private static (double Chance, ChanceSource Source) Chance(int[][] ranks, long observed, double approximate)
    {
        var (tasters, samples) = (ranks.Length, ranks[0].Length);
        if (samples <= MostSamplesCounted && Steps(tasters, samples) <= Rearranged.MostSteps && Rearranged.Counted(ranks, observed) is { } counted)
        {
            return (counted, ChanceSource.Counted);
        }
        return tasters <= MostTastersDrawn ? (Rearranged.Drawn(ranks, observed), ChanceSource.Drawn) : (approximate, ChanceSource.Approximate);
    }

    // After n tasters there are about p^(p-2) n^(p-1) / p! sorted rank sums (volume of the permutohedron), each met by p! arrangements.
    private static double Steps(int tasters, int samples) =>
        Math.Pow(samples, samples - 2) * Enumerable.Range(1, tasters - 1).Sum(n => Math.Pow(n, samples - 1));
}
