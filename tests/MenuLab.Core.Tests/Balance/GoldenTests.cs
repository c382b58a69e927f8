using System.Globalization;
using MenuLab.Core.Balance;
using MenuLab.TestKit.Balance;

namespace MenuLab.Core.Tests.Balance;

/// <summary>
/// Figures that the engine gave when its version was last raised. One that moves means: raise
/// <see cref="BalanceEngine.Version"/> in the same commit and write the new figures here.
/// </summary>
public class GoldenTests
{
    private const int VersionOfTheseFigures = 1;

    // metric, mixed, served; computed by engine version 1 (a regression guard, not evidence).
    private static readonly (Metric Metric, string Mixed, string Served)[] Golden =
    [
        (Metric.Volume, "89.8394", "135.971"),
        (Metric.Abv, "20.0358", "13.2381"),
        (Metric.Sugar, "15.9166", "10.5165"),
        (Metric.Acid, "1.49296", "0.986438"),
        (Metric.Ph, "2.13924", "2.23403"),
        (Metric.Dilution, "NaN", "51.2145"),
        (Metric.FinalTemperature, "22", "-5.74356"),
    ];

    [Fact]
    public void No_figure_moves_without_a_new_engine_version()
    {
        var lines = new[] { Made.Line(Made.Spirit, 45), Made.Line(Made.WorkedLime, 22.5), Made.Line(Made.Syrup, 22.5) };
        var balance = BalanceEngine.Of(lines, Made.Shake, Detail.Figures);
        Assert.Equal(VersionOfTheseFigures, BalanceEngine.Version);
        var got = Golden.Select(g => (g.Metric, Text(balance.Mixed[g.Metric].Value), Text(balance.Served![g.Metric].Value))).ToArray();
        Assert.Equal(Golden, got);
    }

    private static string Text(double value) => value.ToString("G6", CultureInfo.InvariantCulture);
}
