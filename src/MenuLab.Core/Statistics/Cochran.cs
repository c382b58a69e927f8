namespace MenuLab.Core.Statistics;

/// <summary>Two samples compared by who ticked a word for one and not for the other.</summary>
/// <param name="One">Number of the first sample.</param>
/// <param name="Other">Number of the second sample.</param>
/// <param name="OnlyOne">Tasters who ticked the first only.</param>
/// <param name="OnlyOther">Tasters who ticked the second only.</param>
/// <param name="ByLuck">Chance of so uneven a split by luck, exact, either way.</param>
/// <param name="ByLuckAmongAll">The same, made stricter for all pairs together (Holm).</param>
public sealed record TickedPair(int One, int Other, int OnlyOne, int OnlyOther, double ByLuck, double ByLuckAmongAll);

/// <summary>Whether a word was ticked for some samples more than for others.</summary>
/// <param name="Ticks">Ticks of each sample.</param>
/// <param name="Statistic">Cochran's Q; null where every taster ticked all or none.</param>
/// <param name="ByLuck">Chance of ticks as uneven by luck alone, 0 to 1; null where there is no statistic.</param>
/// <param name="Source">Where that chance comes from.</param>
/// <param name="Approximate">The chance by the chi-squared distribution; null where there is no statistic.</param>
/// <param name="Pairs">Every pair of samples.</param>
public sealed record CochranResult(
    IReadOnlyList<int> Ticks, double? Statistic, double? ByLuck, ChanceSource Source, double? Approximate, IReadOnlyList<TickedPair> Pairs);

/// <summary>Words that tasters tick when they apply.</summary>
public static class Cochran
{
    /// <summary>Tests one word.</summary>
    /// <param name="ticks">Tasters in rows, samples in columns; true where the word was ticked; two of each at least, eight samples at most.</param>
    /// <returns>Ticks, test and pairs.</returns>
    /// <remarks>
    /// Source: docs/statistics.md, section 5.1: Cochran's Q, its chance counted over every arrangement within tasters; where that takes more than two
    /// million steps, drawn for up to <see cref="Friedman.MostTastersDrawn"/> tasters and chi-squared beyond. Pairs: McNemar's exact test. Valid for: one answer a taster,
    /// sample and word. Error: counted 1e-12, drawn 0.0015 at 5 %.
    /// </remarks>
    /// <exception cref="ArgumentException">Fewer than two tasters or samples, or more than eight samples.</exception>
    public static CochranResult Of(bool[,] ticks)
    {
        var (tasters, samples) = (ticks.GetLength(0), ticks.GetLength(1));
        if (tasters < 2 || samples is < 2 or > 8)
        {
            throw new ArgumentException("Needs two tasters, two samples at least and eight at most.", nameof(ticks));
        }
        var rows = Enumerable.Range(0, tasters).Select(t => Enumerable.Range(0, samples).Select(s => ticks[t, s] ? 1 : 0).ToArray()).ToArray();
        var columns = Ranks.Sums(rows);
        long all = columns.Sum();
        var squares = columns.Sum(column => (long)column * column);
        var rowSquares = rows.Sum(row => (long)row.Sum() * row.Sum());
        var below = samples * all - rowSquares;
        var pairs = Pairs(rows, samples);
        if (below == 0)
        {
            return new CochranResult(columns, null, null, ChanceSource.Counted, null, pairs);
        }
        var q = (samples - 1.0) * (samples * squares - all * all) / below;
        var approximate = Distributions.ChiSquaredUpper(q, samples - 1);
        var (chance, source) = Rearranged.Counted(rows, squares) is { } counted ? (counted, ChanceSource.Counted)
            : tasters <= Friedman.MostTastersDrawn ? (Rearranged.Drawn(rows, squares), ChanceSource.Drawn)
            : (approximate, ChanceSource.Approximate);
        return new CochranResult(columns, q, chance, source, approximate, pairs);
    }

    private static List<TickedPair> Pairs(int[][] rows, int samples)
    {
        var pairs = new List<TickedPair>();
        for (var one = 0; one < samples; one++)
        {
            for (var other = one + 1; other < samples; other++)
            {
                var (b, c) = (rows.Count(row => row[one] > row[other]), rows.Count(row => row[other] > row[one]));
                pairs.Add(new TickedPair(one, other, b, c, b + c == 0 ? 1 : BinomialTest.EitherWay(b, c), 0));
            }
        }
        var adjusted = Holm.Adjust([.. pairs.Select(pair => pair.ByLuck)]);
        return [.. pairs.Select((pair, place) => pair with { ByLuckAmongAll = adjusted[place] })];
    }
}
