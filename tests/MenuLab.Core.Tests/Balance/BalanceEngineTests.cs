using CsCheck;
using MenuLab.Core.Balance;
using MenuLab.Core.Drafts;
using MenuLab.Core.Pantry;
using MenuLab.Core.Quantities;
using MenuLab.Core.Solutions;
using MenuLab.TestKit.Balance;

namespace MenuLab.Core.Tests.Balance;

public class BalanceEngineTests
{
    // docs/science.md, section 2, worked drink (COMPUTED there): 45 mL 40 %, 22.5 mL lime, 22.5 mL 1:1 syrup.
    private static WeighedLine[] WorkedDrink() => [Made.Line(Made.Spirit, 45), Made.Line(Made.WorkedLime, 22.5), Made.Line(Made.Syrup, 22.5)];

    public static TheoryData<string, string> Worked => [.. EngineOracles.All().Select(o => (o.Metric.ToString(), o.Case))];

    [Theory]
    [MemberData(nameof(Worked))]
    public void The_engine_gives_the_figure_of_the_worked_example(string metric, string name)
    {
        var oracle = EngineOracles.All().Single(o => o.Metric.ToString() == metric && o.Case == name);
        Assert.True(Math.Abs(oracle.Actual - oracle.Expected) <= oracle.Tolerance, $"{oracle.Expected} +- {oracle.Tolerance} by {oracle.Source}, the engine gives {oracle.Actual}");
    }

    [Fact]
    public void The_worked_range_of_the_reference_comes_out_to_first_order()
    {
        // Section 14, worked example: 25 mL lemon (57 g/L, u 4.56; 25 g/L sugar), 20 mL 1:1 syrup (614.8 g/L, u 7), 80 mL base
        // without sugar; pours u 1.0, 1.0, 1.5 mL; added water 45 mL, u 8. u: acid 0.0834, sugar 0.490, ratio 0.917, tolerance 1 %.
        // Masses per mL of a liquid of density 1, so that volumes add up as the example takes them.
        var lemon = PerMillilitre(
            [Made.Spread(SpreadSource.Acid, Component.Citric, 0.00456 / 192.124 * 3 / 2.98095, 0.08)],
            (Component.Citric, 0.057 / 192.124 * 3 / 2.98095), (Component.Sucrose, 0.025));
        var syrup = PerMillilitre([Made.Spread(SpreadSource.Sugar, Component.Sucrose, 0.007, 0.01)], (Component.Sucrose, 0.6148));
        var water = PerMillilitre([]);
        WeighedLine[] lines = [Grams(lemon, 25, 1.0), Grams(syrup, 20, 1.0), Grams(water, 80, 1.5), Grams(water, 45, 8)];
        var mixed = BalanceEngine.Of(lines, Made.NoBuild, Detail.Ranges).Mixed;
        Assert.Equal(0.838, mixed[Metric.Acid].Value, 0.001);
        // The example adds volumes up; here diluting the syrup contracts by 0.1 %.
        Assert.Equal(7.601, mixed[Metric.Sugar].Value, 0.01);
        Assert.Equal(9.07, mixed[Metric.SugarAcidRatio].Value, 0.02);
        Assert.Equal(0.0834, U(Metric.Acid), 0.0834 * 0.01);
        Assert.Equal(0.490, U(Metric.Sugar), 0.490 * 0.01);
        Assert.Equal(0.917, U(Metric.SugarAcidRatio), 0.917 * 0.01);

        double U(Metric metric) => (mixed[metric].High - mixed[metric].Low) / 2 / 1.96;
        WeighedLine Grams(Composition c, double millilitres, double u) => new(Made.Id(), c, millilitres, u, Joins.Mixed, Place.In, 22, false);

        // The residual makes the parts' volume exactly 1 mL/g whatever the sugar, also along the spreads.
        static Composition PerMillilitre(IReadOnlyList<Spread> spreads, params ReadOnlySpan<(Component, double)> parts)
        {
            var free = Made.Of(parts);
            var vector = free.PerGram.ToArray();
            vector[(int)Component.Residual] = 1 - 1 / free.GramsPerMillilitre;
            return new Composition(vector, ulong.MaxValue, spreads, default, CompositionCaveats.None);
        }
    }

    [Fact]
    public void The_order_of_lines_does_not_matter_to_the_last_bit()
    {
        Cases.Sample(lines =>
        {
            var there = BalanceEngine.Of(lines, Made.Shake, Detail.Ranges);
            Array.Reverse(lines);
            var back = BalanceEngine.Of(lines, Made.Shake, Detail.Ranges);
            return Metrics.All.All(m => there.Served![m.Metric].Equals(back.Served![m.Metric]) && there.Mixed[m.Metric].Equals(back.Mixed[m.Metric]));
        });
    }

    [Fact]
    public void Mass_is_conserved_and_melt_water_comes_on_top()
    {
        Cases.Sample(lines =>
        {
            var balance = BalanceEngine.Of(lines, Made.Shake, Detail.Figures);
            var sum = lines.Sum(l => l.Grams);
            var tin = lines.Where(l => l.Joins == Joins.Mixed).ToArray();
            var tinVolume = tin.Length == 0 ? 0 : BalanceEngine.Of(tin, Made.NoBuild, Detail.Figures).Mixed[Metric.Volume].Value;
            var melt = balance.Served![Metric.Dilution].Value / 100 * tinVolume * 0.9982;
            return Near(balance.Mixed[Metric.Mass].Value, sum, 1e-12) && Near(balance.Served[Metric.Mass].Value, sum + melt, 1e-9);
        });
    }

    [Fact]
    public void Scaling_a_drink_scales_totals_and_leaves_concentrations_alone()
    {
        Gen.Select(Cases, Gen.Double[0.2, 5]).Sample((lines, factor) =>
        {
            var one = BalanceEngine.Of(lines, Made.NoBuild, Detail.Figures).Mixed;
            var scaled = BalanceEngine.Of([.. lines.Select(l => l with { Grams = l.Grams * factor })], Made.NoBuild, Detail.Figures).Mixed;
            return Near(scaled[Metric.Volume].Value, one[Metric.Volume].Value * factor, 1e-10)
                && Near(scaled[Metric.EnergyKilocalories].Value, one[Metric.EnergyKilocalories].Value * factor, 1e-10)
                && Near(scaled[Metric.Abv].Value, one[Metric.Abv].Value, 1e-10)
                && Near(scaled[Metric.Sugar].Value, one[Metric.Sugar].Value, 1e-10)
                && Near(scaled[Metric.Ph].Value, one[Metric.Ph].Value, 1e-8);
        });
    }

    [Fact]
    public void Mixing_a_drink_with_itself_changes_nothing()
    {
        Cases.Sample(lines =>
        {
            var one = BalanceEngine.Of(lines, Made.NoBuild, Detail.Figures).Mixed;
            var twice = BalanceEngine.Of([.. lines, .. lines], Made.NoBuild, Detail.Figures).Mixed;
            return Near(twice[Metric.Abv].Value, one[Metric.Abv].Value, 1e-10) && Near(twice[Metric.Ph].Value, one[Metric.Ph].Value, 1e-6)
                && Near(twice[Metric.Brix].Value, one[Metric.Brix].Value, 1e-10);
        });
    }

    [Fact]
    public void More_acid_never_raises_the_ph()
    {
        var acid = Made.Of((Component.Citric, 0.05 / 192.124));
        Gen.Select(Cases, Gen.Double[0, 30], Gen.Double[0.5, 30]).Sample((lines, some, more) =>
        {
            var less = BalanceEngine.Of([.. lines, Made.Line(acid, some)], Made.NoBuild, Detail.Figures).Mixed[Metric.Ph].Value;
            var with = BalanceEngine.Of([.. lines, Made.Line(acid, some + more)], Made.NoBuild, Detail.Figures).Mixed[Metric.Ph].Value;
            // The acid solution itself is at pH 2.0: a drink below that is diluted by it.
            return less < 2.1 || with <= less + 1e-9;
        });
    }

    [Fact]
    public void Shares_of_the_sugar_add_up_to_one()
    {
        Cases.Sample(lines =>
        {
            var balance = BalanceEngine.Of(lines, Made.Shake, Detail.RangesAndShares);
            var sum = Enumerable.Range(0, lines.Length).Sum(i => (double)balance.Share(i, Metric.Sugar));
            return balance.Mixed[Metric.Sugar].Value == 0 || Near(sum, 1, 1e-5);
        });
    }

    [Fact]
    public void Only_what_is_mixed_is_diluted()
    {
        var soda = Made.Line(Made.Water, 100, Joins.OnTop, celsius: 4);
        var sour = Made.Line(Made.Syrup, 60);
        var alone = BalanceEngine.Of([sour], Made.Shake, Detail.Figures).Served!;
        var topped = BalanceEngine.Of([sour, soda], Made.Shake, Detail.Figures).Served!;
        Assert.Equal(alone[Metric.Dilution].Value, topped[Metric.Dilution].Value, 1e-12);
        Assert.Equal(alone[Metric.Mass].Value + soda.Grams, topped[Metric.Mass].Value, 1e-9);
    }

    [Fact]
    public void A_top_fills_to_the_wash_line_over_the_ice()
    {
        var build = new BuildModel(Made.Shaken, Made.Cubes, Made.Highball, Made.Cubes);
        var balance = BalanceEngine.Of([Made.Line(Made.Syrup, 30), Made.TopUp(Made.Water)], build, Detail.Ranges);
        Assert.Equal(100, balance.Served![Metric.GlassFill].Value, 1e-3);
        Assert.True(balance.TopUpGrams > 50);
        // The top answers to whatever varies, so the volume in the glass has no spread of its own.
        Assert.Equal(balance.Served[Metric.Volume].Low, balance.Served[Metric.Volume].High, 1e-9);
        Assert.Equal(30, balance.Mixed[Metric.Volume].Value, 1e-9);
    }

    [Fact]
    public void Without_a_method_there_is_no_served_state_and_the_reason_is_said()
    {
        var balance = BalanceEngine.Of(WorkedDrink(), Made.NoBuild, Detail.Figures);
        Assert.Null(balance.Served);
        Assert.Contains("no method", balance.ServedMissingBecause, StringComparison.Ordinal);
    }

    [Fact]
    public void A_line_that_does_not_know_its_acid_is_unknown_for_its_share_of_the_volume()
    {
        var mystery = Made.Of(Made.AllBut(Composition.TotalAcidKnown), [], (Component.Sucrose, 0.1));
        var mixed = BalanceEngine.Of([Made.Line(mystery, 25), Made.Line(Made.Water, 75)], Made.NoBuild, Detail.Figures).Mixed;
        Assert.Equal(25, mixed[Metric.Acid].UnknownPercent, 0.01);
        Assert.Equal(25, mixed[Metric.Ph].UnknownPercent, 0.01);
        Assert.Equal(0, mixed[Metric.Sugar].UnknownPercent);
        Assert.Equal(Certainty.AtLeast, mixed[Metric.Acid].Certainty);
    }

    [Fact]
    public void Lines_kept_as_typed_count_as_unknown_in_every_metric()
    {
        var mixed = BalanceEngine.Of([Made.Line(Made.Water, 75)], Made.NoBuild, Detail.Figures, uncountedMillilitres: 25).Mixed;
        Assert.Equal(25, mixed[Metric.Volume].UnknownPercent, 1e-4);
        Assert.Equal(25, mixed[Metric.Sugar].UnknownPercent, 1e-4);
    }

    [Fact]
    public void An_unpriced_line_makes_the_cost_at_least()
    {
        var priced = Made.Line(Made.Syrup, 20) with { Cost = new LineCost(25, 0.01) };
        var both = BalanceEngine.Of([priced, Made.Line(Made.Water, 20)], Made.NoBuild, Detail.Figures).Mixed[Metric.Cost];
        Assert.Equal(0.25, both.Value, 1e-12);
        Assert.Equal(50, both.UnknownPercent, 1e-6);
        Assert.True(double.IsNaN(BalanceEngine.Of([Made.Line(Made.Water, 20)], Made.NoBuild, Detail.Figures).Mixed[Metric.Cost].Value));
    }

    [Fact]
    public void A_range_widens_with_uncertainty_and_never_turns_over()
    {
        var (lastLow, lastHigh) = (10.0, 10.0);
        for (var u = 0.0; u < 30; u += 0.01)
        {
            var (low, high) = Ranges.Interval(10, u, canBeNegative: false);
            Assert.True(low <= lastLow && high >= lastHigh && low >= 0, $"u {u}: {low} to {high}");
            (lastLow, lastHigh) = (low, high);
        }
    }

    [Fact]
    public void An_empty_drink_is_told_and_throws_nothing()
    {
        var balance = BalanceEngine.Of([], Made.Shake, Detail.RangesAndShares);
        Assert.Null(balance.Served);
        Assert.Equal(0, balance.Mixed[Metric.Volume].Value);
    }

    [Fact]
    public void Ranges_agree_with_solving_everything_again_for_each_source()
    {
        // The gradient's shortcuts (implicit melt, implicit pH) against brute force: every line moved by its uncertainty.
        Cases.Sample(lines =>
        {
            var ranges = BalanceEngine.Of(lines, Steady, Detail.Ranges).Served!;
            foreach (var metric in new[] { Metric.Volume, Metric.Abv, Metric.Sugar, Metric.Acid, Metric.Brix, Metric.Dilution, Metric.EnergyKilojoules })
            {
                var value = ranges[metric].Value;
                var square = 0.0;
                for (var i = 0; i < lines.Length; i++)
                {
                    var up = Moved(lines, i, +0.1)[metric].Value;
                    var down = Moved(lines, i, -0.1)[metric].Value;
                    square += Math.Pow((up - down) / 0.2, 2);
                }
                var u = Math.Sqrt(square);
                if (value < 1e-6 || u > 0.15 * value)
                {
                    continue;
                }
                var got = (ranges[metric].High - value) / 1.96;
                // Mixtures with sugar and ethanol carry 0.15 % of volume besides: not part of the brute force.
                var slack = 0.05 * u + 0.002 * value;
                if (Math.Abs(got - u) > slack)
                {
                    throw new InvalidOperationException($"{metric}: gradient {got}, brute force {u}, value {value}");
                }
            }
            return true;
        }, iter: 200);

        static MetricSet Moved(WeighedLine[] lines, int i, double times)
        {
            var moved = lines.ToArray();
            moved[i] = moved[i] with { Grams = moved[i].Grams + times * moved[i].GramsUncertainty };
            // The amount of ice is what it is, whatever the pour: the same grams as in the middle case.
            var volume = TinVolume(lines);
            var method = Steady.Method! with { IceGramsPer100Millilitres = Steady.Method.IceGramsPer100Millilitres * volume / TinVolume(moved) };
            return BalanceEngine.Of(moved, Steady with { Method = method }, Detail.Figures).Served!;
        }

        static double TinVolume(WeighedLine[] lines) =>
            BalanceEngine.Of([.. lines.Where(l => l.Joins == Joins.Mixed)], Made.NoBuild, Detail.Figures).Mixed[Metric.Volume].Value;
    }

    // No uncertainty of the dilution model itself, so that only the lines' amounts count.
    private static readonly BuildModel Steady = new(Made.Shaken with { DilutionUncertainty = 0 }, Made.Cubes, null, null);

    private static bool Near(double left, double right, double relative) => Math.Abs(left - right) <= relative * Math.Max(1, Math.Abs(right));

    /// <summary>Random drinks of 1 to 6 lines from five liquids, at least one of them mixed.</summary>
    private static readonly Gen<WeighedLine[]> Cases =
        Gen.Select(Gen.Int[0, 4], Gen.Double[5, 90], Gen.Bool, Gen.Double[2, 25], Gen.Double[0.5, 2])
            .Select((which, millilitres, later, celsius, u) => Made.Line(
                which switch { 0 => Made.Spirit, 1 => Made.Syrup, 2 => Made.TableLemon, 3 => Made.WorkedLime, _ => Made.Water },
                millilitres, later ? Joins.InTheGlass : Joins.Mixed, celsius, u))
            .Array[1, 6]
            .Select(lines => lines.Any(l => l.Joins == Joins.Mixed) ? lines : [lines[0] with { Joins = Joins.Mixed }, .. lines[1..]]);
}
