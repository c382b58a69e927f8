namespace MenuLab.Core.Statistics;

/// <summary>Whether scores rise in an order that was foretold.</summary>
/// <param name="L">Sum of rank sums times their place in the foretold order.</param>
/// <param name="Z">L in standard deviations from what luck gives; null where nothing varies.</param>
/// <param name="ByLuck">Chance of so large an L by luck alone, counted over every arrangement; null where nothing varies.</param>
/// <param name="Approximate">The same by the normal distribution; null where nothing varies.</param>
public sealed record PageResult(double L, double? Z, double? ByLuck, double? Approximate);

/// <summary>Page's test of an order fixed in advance.</summary>
public static class Page
{
    /// <summary>The most samples whose arrangements are counted.</summary>
    public const int MostSamples = 10;

    /// <summary>Works out the test.</summary>
    /// <param name="scores">Tasters in rows, samples in columns in the foretold order, the highest last; two of each at least.</param>
    /// <returns>L with its chance, one-sided.</returns>
    /// <remarks>
    /// Source: docs/statistics.md, section 2.9: distribution of one taster's part by assigning ranks place by place, then summed over tasters; ties
    /// as they are. Valid for: an order fixed before tasting, up to <see cref="MostSamples"/> samples. Error: 1e-12.
    /// </remarks>
    /// <exception cref="ArgumentException">Fewer than two tasters or samples, too many samples, or a score that is not finite.</exception>
    public static PageResult Of(double[,] scores)
    {
        ScoreTables.Check(scores);
        var samples = scores.GetLength(1);
        if (samples > MostSamples)
        {
            throw new ArgumentException($"Takes {MostSamples} samples at most.", nameof(scores));
        }
        var ranks = Ranks.DoubledByTaster(scores);
        var observed = Ranks.Sums(ranks).Select((sum, place) => sum * (place + 1)).Sum();

        // Mean and variance of one taster's part: places 1 to p meet his ranks in random order.
        var places = samples * (samples * samples - 1.0) / 12;
        var variance = ranks.Sum(row => places * row.Sum(rank => Math.Pow(rank / 2.0 - (samples + 1) / 2.0, 2)) / (samples - 1));
        if (variance == 0)
        {
            return new PageResult(observed / 2.0, null, null, null);
        }
        var mean = ranks.Length * samples * (samples + 1.0) * (samples + 1.0) / 4;
        var z = (observed / 2.0 - mean) / Math.Sqrt(variance);

        return new PageResult(observed / 2.0, z, Math.Min(1, Distribution(ranks).Skip(observed).Sum()), Distributions.NormalUpper(z));
    }

    /// <summary>Chances of each doubled L, from 0 up.</summary>
    internal static double[] Distribution(int[][] ranks)
    {
        var total = new double[] { 1 };
        var known = new Dictionary<string, double[]>();
        foreach (var row in ranks)
        {
            var key = string.Join(' ', row.Order());
            if (!known.TryGetValue(key, out var own))
            {
                known[key] = own = OneTaster([.. row.Order()]);
            }
            total = Convolve(total, own);
        }
        return total;
    }

    /// <summary>Chances of each doubled sum of place times rank. Ranks used so far are the bits of a number; the place is how many they are.</summary>
    private static double[] OneTaster(int[] ranks)
    {
        var most = ranks.Select((rank, place) => rank * (place + 1)).Sum();
        var used = new double[1 << ranks.Length][];
        used[0] = new double[most + 1];
        used[0][0] = 1;
        for (var set = 0; set < used.Length - 1; set++)
        {
            var place = int.PopCount(set) + 1;
            for (var r = 0; r < ranks.Length; r++)
            {
                if ((set & (1 << r)) != 0)
                {
                    continue;
                }
                var next = used[set | (1 << r)] ??= new double[most + 1];
                var step = place * ranks[r];
                for (var sum = 0; sum + step <= most; sum++)
                {
                    next[sum + step] += used[set][sum] / (ranks.Length - place + 1);
                }
            }
        }
        return used[^1];
    }

    private static double[] Convolve(double[] left, double[] right)
    {
        var sum = new double[left.Length + right.Length - 1];
        for (var i = 0; i < left.Length; i++)
        {
            if (left[i] == 0)
            {
                continue;
            }
            for (var j = 0; j < right.Length; j++)
            {
                sum[i + j] += left[i] * right[j];
            }
        }
        return sum;
    }
}
