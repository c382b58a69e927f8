using System.Runtime.InteropServices;

namespace MenuLab.Core.Statistics;

/// <summary>
/// What luck does to column sums when each taster's own answers are put into random order: counted over every arrangement, or drawn. Ranks and
/// ticks alike.
/// </summary>
/// <remarks>Source: docs/statistics.md, sections 2.8 and 5.1. Valid for: two rows at least. Error: counted 1e-12; drawn sqrt(p (1 - p)/<see cref="Draws"/>).</remarks>
internal static class Rearranged
{
    /// <summary>The most arrangements that are gone through.</summary>
    public const int MostSteps = 2_000_000;

    /// <summary>How many tables are drawn where counting would take too long.</summary>
    public const int Draws = 20_000;

    // Any fixed number: the same table gives the same answer.
    private const ulong Seed = 20261125;

    /// <summary>Share of all arrangements whose sum of squared column sums is at least the one observed; null where that takes too many steps.</summary>
    /// <remarks>
    /// Row by row. Column sums are kept sorted: each row's order is equally likely, so the names of the columns do not matter, and thousands of
    /// states stand for millions of tables.
    /// </remarks>
    public static double? Counted(int[][] rows, long observed)
    {
        var columns = rows[0].Length;
        var bits = 64 / columns;
        if (bits < 63 && rows.Sum(row => (long)row.Max()) >= 1L << bits)
        {
            return null;
        }
        // Rows with few arrangements first keep the states few.
        var byRow = rows.Select(Ranks.Arrangements).OrderBy(all => all.Count).ToList();
        var states = new Dictionary<ulong, double> { [Key(byRow[0][0], bits)] = 1 };
        var steps = 0L;
        Span<int> sums = stackalloc int[columns];
        foreach (var arrangements in byRow.Skip(1).SkipLast(1))
        {
            steps += (long)states.Count * arrangements.Count;
            if (steps > MostSteps)
            {
                return null;
            }
            var next = new Dictionary<ulong, double>(4 * states.Count);
            foreach (var (key, chance) in states)
            {
                var share = chance / arrangements.Count;
                foreach (var arrangement in arrangements)
                {
                    for (var c = 0; c < columns; c++)
                    {
                        sums[c] = Sum(key, c, bits) + arrangement[c];
                    }
                    Sort(sums);
                    CollectionsMarshal.GetValueRefOrAddDefault(next, Key(sums, bits), out _) += share;
                }
            }
            states = next;
        }
        // The states after the last row need not be told apart.
        var reached = 0.0;
        foreach (var (key, chance) in states)
        {
            var hits = 0;
            foreach (var arrangement in byRow[^1])
            {
                var squares = 0L;
                for (var c = 0; c < columns; c++)
                {
                    long sum = Sum(key, c, bits) + arrangement[c];
                    squares += sum * sum;
                }
                hits += squares >= observed ? 1 : 0;
            }
            reached += chance * hits / byRow[^1].Count;
        }
        return Math.Min(1, reached);
    }

    /// <summary>The same share among tables that are drawn; never zero, since the observed table is one that luck may give.</summary>
    public static double Drawn(int[][] rows, long observed)
    {
        var draws = new SeededDraws(Seed);
        var shuffled = rows.Select(row => (int[])row.Clone()).ToArray();
        var sums = new long[rows[0].Length];
        var hits = 0;
        for (var d = 0; d < Draws; d++)
        {
            Array.Clear(sums);
            foreach (var row in shuffled)
            {
                draws.Shuffle<int>(row);
                for (var c = 0; c < sums.Length; c++)
                {
                    sums[c] += row[c];
                }
            }
            var squares = 0L;
            foreach (var sum in sums)
            {
                squares += sum * sum;
            }
            hits += squares >= observed ? 1 : 0;
        }
        return (hits + 1.0) / (Draws + 1.0);
    }

    private static int Sum(ulong key, int column, int bits) => (int)((key >> (column * bits)) & ((1UL << bits) - 1));

    private static ulong Key(ReadOnlySpan<int> sums, int bits)
    {
        var key = 0UL;
        for (var c = 0; c < sums.Length; c++)
        {
            key |= (ulong)sums[c] << (c * bits);
        }
        return key;
    }

    // A handful of numbers: insertion beats the library's sort.
    private static void Sort(Span<int> sums)
    {
        for (var i = 1; i < sums.Length; i++)
        {
            var sum = sums[i];
            var j = i;
            for (; j > 0 && sums[j - 1] > sum; j--)
            {
                sums[j] = sums[j - 1];
            }
            sums[j] = sum;
        }
    }
}
