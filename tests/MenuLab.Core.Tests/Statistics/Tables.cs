using CsCheck;
using MenuLab.Core.Statistics;
using MenuLab.TestKit.Solutions;

namespace MenuLab.Core.Tests.Statistics;

/// <summary>The data sets as tables; names in the order of <c>names</c>.</summary>
internal static class Tables
{
    public static readonly string[] Wines = ["cold.no", "warm.no", "cold.yes", "warm.yes"];

    /// <summary>Rows and columns by two columns of a file; the first value of each cell.</summary>
    public static double[,] Of(IReadOnlyList<OracleRow> rows, string taster, string sample, string value, IReadOnlyList<string>? samples = null)
    {
        var tasters = rows.Select(row => row.Text(taster)).Distinct().ToList();
        samples ??= [.. rows.Select(row => row.Text(sample)).Distinct()];
        var table = new double[tasters.Count, samples.Count];
        for (var t = 0; t < tasters.Count; t++)
        {
            for (var s = 0; s < samples.Count; s++)
            {
                table[t, s] = rows.First(row => row.Text(taster) == tasters[t] && row.Text(sample) == samples[s]).Number(value);
            }
        }
        return table;
    }

    public static double[,] WineMeans() => Of(StatisticsOracle.Rows("data-wine-cellmeans.csv"), "judge", "sample", "response", Wines);

    public static double[,] WineRatings() => Of(StatisticsOracle.Rows("data-wine-ratings-ties.csv"), "judge", "sample", "rating2", Wines);

    /// <summary>Tasters by samples by repeats; repeats in the order of the file.</summary>
    public static double[,,] Repeats(IReadOnlyList<OracleRow> rows, string taster, string sample, string value, IReadOnlyList<string>? samples = null)
    {
        var tasters = rows.Select(row => row.Text(taster)).Distinct().ToList();
        samples ??= [.. rows.Select(row => row.Text(sample)).Distinct()];
        double[,,]? table = null;
        for (var t = 0; t < tasters.Count; t++)
        {
            for (var s = 0; s < samples.Count; s++)
            {
                var cell = rows.Where(row => row.Text(taster) == tasters[t] && row.Text(sample) == samples[s]).ToList();
                table ??= new double[tasters.Count, samples.Count, cell.Count];
                for (var r = 0; r < cell.Count; r++)
                {
                    table[t, s, r] = cell[r].Number(value);
                }
            }
        }
        return table!;
    }

    /// <summary>Random scores on the nine-point scale, ties likely.</summary>
    public static readonly Gen<double[,]> NinePoints =
        Gen.Select(Gen.Int[2, 8], Gen.Int[2, 5], Gen.UInt, (tasters, samples, seed) =>
        {
            var draws = new SeededDraws(seed);
            var table = new double[tasters, samples];
            for (var t = 0; t < tasters; t++)
            {
                for (var s = 0; s < samples; s++)
                {
                    table[t, s] = 1 + draws.Below(9);
                }
            }
            return table;
        });
}
