using MenuLab.Core.Balance;
using MenuLab.Core.Drafts;
using MenuLab.Core.Pantry;
using MenuLab.Core.Solutions;
using MenuLab.TestKit.Balance;

namespace MenuLab.Core.Tests.Balance;

/// <summary>First-order ranges against Monte Carlo (docs/science.md, section 14): every input drawn, everything solved again.</summary>
public class MonteCarloTests
{
    [Fact]
    public void Ranges_of_a_shaken_drink_agree_with_Monte_Carlo_within_3_percent()
    {
        var drink = new Drawn[]
        {
            new(0.045, 25, 1.0, [(SpreadSource.Acid, Component.Citric, 0.05 / 192.124, 0.08), (SpreadSource.Sugar, Component.Sucrose, 0.025, 0.06)]),
            new(0, 20, 1.0, [(SpreadSource.Sugar, Component.Sucrose, 0.5, 0.01)]),
            new(0, 60, 1.5, []),
        };
        // Section 14 asks 3 % of the uncertainty; the ends are given 5 % of the figure, since the ratio's own distribution leans.
        Compare(drink, Metrics, logNormal: false, ofUncertainty: 0.03, ofEnds: 0.05);
    }

    [Fact]
    public void Ranges_of_wide_inputs_have_their_ends_within_10_percent_of_the_figure()
    {
        // A free pour (15 %) and orange acid (22 %).
        var drink = new Drawn[]
        {
            new(0, 45, 6.75, [(SpreadSource.Acid, Component.Citric, 0.009 / 192.124, 0.22), (SpreadSource.Sugar, Component.Sucrose, 0.08, 0.08)]),
            new(0, 15, 2.25, [(SpreadSource.Sugar, Component.Sucrose, 0.5, 0.01)]),
            new(0, 45, 6.75, []),
        };
        // Normal draws, cut at zero. The ratio is left out: with 22 % acid below the line a normal input gives it a tail that no
        // first-order range has (high end seen: 1.83 times the figure, the range says 1.52).
        Compare(drink, [.. Metrics.Where(m => m != Metric.SugarAcidRatio)], logNormal: false, ofUncertainty: double.NaN, ofEnds: 0.10);
        // Drawn log-normally, as a mass or an acidity that cannot be negative would be, the ratio's ends hold as well.
        Compare(drink, Metrics, logNormal: true, ofUncertainty: double.NaN, ofEnds: 0.10);
    }

    private static readonly Metric[] Metrics = [Metric.Sugar, Metric.Acid, Metric.SugarAcidRatio, Metric.Volume, Metric.Brix];

    private sealed record Drawn(double Charge, double Millilitres, double U, (SpreadSource Source, Component Component, double PerGram, double Relative)[] Parts);

    private static void Compare(Drawn[] drink, Metric[] metrics, bool logNormal, double ofUncertainty, double ofEnds)
    {
        var engine = BalanceEngine.Of([.. drink.Select(d => Line(d, d.Millilitres, [.. d.Parts.Select(p => p.PerGram)], withSpreads: true))], Steady, Detail.Ranges).Served!;
        var random = new Random(20240611);
        const int Draws = 20_000;
        var seen = metrics.ToDictionary(m => m, _ => new double[Draws]);
        // The ice in the tin is the same whatever is poured.
        var ice = Steady.Method!.IceGramsPer100Millilitres * TinVolume([.. drink.Select(d => Line(d, d.Millilitres, [.. d.Parts.Select(p => p.PerGram)], false))]);
        for (var i = 0; i < Draws; i++)
        {
            var lines = drink.Select(d => Line(
                d, Draw(d.Millilitres, d.U), [.. d.Parts.Select(p => Draw(p.PerGram, p.PerGram * p.Relative))], false)).ToArray();
            var method = Steady.Method with { IceGramsPer100Millilitres = ice / TinVolume(lines) };
            var served = BalanceEngine.Of(lines, Steady with { Method = method }, Detail.Figures).Served!;
            foreach (var metric in metrics)
            {
                seen[metric][i] = served[metric].Value;
            }
        }

        double Draw(double mean, double u)
        {
            if (!logNormal)
            {
                return Math.Max(0, Normal(random, mean, u));
            }
            var square = Math.Log(1 + u * u / (mean * mean));
            return Math.Exp(Normal(random, Math.Log(mean) - square / 2, Math.Sqrt(square)));
        }

        foreach (var metric in metrics)
        {
            var sorted = seen[metric].Order().ToArray();
            var estimate = engine[metric];
            if (!double.IsNaN(ofUncertainty))
            {
                var mean = sorted.Average();
                var u = Math.Sqrt(sorted.Sum(x => (x - mean) * (x - mean)) / (Draws - 1));
                var got = (estimate.High - estimate.Low) / 2 / 1.96;
                // 20,000 draws know a standard deviation to 0.5 %.
                Assert.True(Math.Abs(got - u) <= (ofUncertainty + 0.005) * u, $"{metric}: first order {got}, Monte Carlo {u}");
            }
            // The low end against the figure, the high end against itself: in both cases the larger number.
            var (low, high) = (sorted[(int)(0.025 * Draws)], sorted[(int)(0.975 * Draws)]);
            Assert.True(Math.Abs(estimate.Low - low) <= ofEnds * estimate.Value, $"{metric} low: {estimate.Low}, Monte Carlo {low}");
            Assert.True(Math.Abs(estimate.High - high) <= ofEnds * high, $"{metric} high: {estimate.High}, Monte Carlo {high}");
        }
    }

    private static readonly BuildModel Steady = new(Made.Shaken with { DilutionUncertainty = 0 }, Made.Cubes, null, null);

    private static double TinVolume(WeighedLine[] lines) => BalanceEngine.Of(lines, Made.NoBuild, Detail.Figures).Mixed[Metric.Volume].Value;

    // A jigger is poured by volume, so the grams follow the composition that was drawn.
    private static WeighedLine Line(Drawn drawn, double millilitres, double[] parts, bool withSpreads)
    {
        var composition = Made.Of(
            Made.AllBut(0),
            withSpreads ? [.. drawn.Parts.Select(p => Made.Spread(p.Source, p.Component, p.PerGram * p.Relative, p.Relative))] : [],
            [.. drawn.Parts.Select((p, i) => (p.Component, parts[i])), (Component.Charge, drawn.Charge / 1000)]);
        var reference = Made.Of(Made.AllBut(0), [], [.. drawn.Parts.Select(p => (p.Component, p.PerGram)), (Component.Charge, drawn.Charge / 1000)]);
        // By mass at the reference density: the drawn composition changes what is in the pour, not how much is poured.
        return new WeighedLine(Made.Id(), composition, millilitres * reference.GramsPerMillilitre, drawn.U * reference.GramsPerMillilitre, Joins.Mixed, Place.In, 22, false);
    }

    private static double Normal(Random random, double mean, double u) =>
        mean + u * Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
