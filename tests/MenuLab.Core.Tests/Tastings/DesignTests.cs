using System.Globalization;
using CsCheck;
using MenuLab.Core.Statistics;
using MenuLab.Core.Tastings;
using MenuLab.TestKit.Solutions;

namespace MenuLab.Core.Tests.Tastings;

public sealed class DesignTests
{
    [Fact] // reference, 1.1: 847 before the rules between codes
    public void A_code_has_no_pattern_and_no_meaning()
    {
        Assert.Equal(847, SampleCodes.Candidates.Count);
        foreach (var code in new[] { 111, 123, 987, 210, 300, 112, 911, 999, 420 })
        {
            Assert.DoesNotContain(code, SampleCodes.Candidates);
        }
        Assert.All(SampleCodes.Candidates, code => Assert.InRange(code, 100, 999));
    }

    [Fact]
    public void Codes_of_one_tasting_are_different_and_hard_to_mistake() =>
        Gen.Select(Gen.ULong, Gen.Int[1, 60]).Sample((seed, count) =>
        {
            int[] house = [742, 518, 263];
            var codes = SampleCodes.Draw(count, [], house, new SeededDraws(seed).Below).Value;
            return codes.Count == count && codes.Distinct().Count() == count && !codes.Intersect(house).Any()
                && codes.All(SampleCodes.Candidates.Contains)
                && codes.All(one => codes.All(other => one == other || (SampleCodes.DigitsApart(one, other) > 1 && !SampleCodes.SameDigits(one, other))));
        }, iter: 100);

    [Fact]
    public void The_same_seed_draws_the_same_codes_and_used_ones_never_come_back()
    {
        var first = SampleCodes.Draw(24, [], [], new SeededDraws(9).Below).Value;
        Assert.Equal(first, SampleCodes.Draw(24, [], [], new SeededDraws(9).Below).Value);
        Assert.NotEqual(first, SampleCodes.Draw(24, [], [], new SeededDraws(10).Below).Value);
        var more = SampleCodes.Draw(6, [.. first], [], new SeededDraws(9).Below).Value;
        Assert.Empty(first.Intersect(more));
    }

    [Fact]
    public void Many_codes_give_up_the_rules_between_codes_but_never_the_difference()
    {
        var codes = SampleCodes.Draw(847, [], [], new SeededDraws(1).Below).Value;
        Assert.Equal(847, codes.Distinct().Count());
        var refused = SampleCodes.Draw(848, [], [], new SeededDraws(1).Below);
        Assert.Equal("Only 847 codes are left for this tasting. Shorten the list of house numbers or start another tasting.", Assert.Single(refused.Problems).Message);
        // The strict rules hold as far as they go: some 70 to 81 codes (reference, 1.1).
        var strict = 0;
        while (codes.Take(strict).All(one => one == codes[strict] || (SampleCodes.DigitsApart(one, codes[strict]) > 1 && !SampleCodes.SameDigits(one, codes[strict]))))
        {
            strict++;
        }
        Assert.InRange(strict, 65, 85);
    }

    [Fact] // reference, 1.1: within five standard deviations of its share
    public void Every_first_digit_comes_up_as_often_as_it_may()
    {
        var draws = new SeededDraws(20261125);
        var firsts = new int[10];
        for (var i = 0; i < 10_000; i++)
        {
            firsts[SampleCodes.Draw(1, [], [], draws.Below).Value[0] / 100]++;
        }
        for (var digit = 1; digit <= 9; digit++)
        {
            var share = SampleCodes.Candidates.Count(code => code / 100 == digit) / 847.0;
            Assert.Equal(10_000 * share, firsts[digit], 5 * Math.Sqrt(10_000 * share * (1 - share)));
        }
    }

    public static TheoryData<int> Sizes => [2, 3, 4, 5, 6, 7, 8, 9, 10];

    [Theory] // the rows of the table, and equal counts
    [MemberData(nameof(Sizes))]
    public void A_Williams_square_is_that_of_the_table_and_fully_balanced(int samples)
    {
        var rows = Oracle.Rows("williams.csv", "Tastings").Where(row => row.Number("n_samples") == samples).Select(row => row.Text("order")).ToList();
        var orders = WilliamsSquare.Orders(samples);
        Assert.Equal(rows, orders.Select(order => string.Join(' ', order.Select(s => (s + 1).ToString(CultureInfo.InvariantCulture)))));
        var balance = OrderBalance.Of(orders, samples);
        Assert.Equal(Fairness.Full, balance.Fairness);
        Assert.Equal(0, balance.Cost, 1e-9);
        var times = samples % 2 == 0 ? 1 : 2;
        Assert.All(balance.InPlace.Cast<int>(), count => Assert.Equal(times, count));
        Assert.All(Enumerable.Range(0, samples), a => Assert.All(Enumerable.Range(0, samples), b => Assert.Equal(a == b ? 0 : times, balance.After[a, b])));
    }

    [Fact]
    public void Whole_squares_make_a_full_balance_and_any_panel_stays_close() =>
        Gen.Select(Gen.Int[1, 14], Gen.Int[2, 6], Gen.ULong).Sample((tasters, samples, seed) =>
        {
            var plan = ServingPlan.Complete(tasters, samples, new SeededDraws(seed).Below);
            var whole = tasters % WilliamsSquare.Orders(samples).Count == 0;
            var cells = plan.Balance.InPlace.Cast<int>().ToList();
            return plan.Orders.Count == tasters
                && plan.Orders.All(order => order.Order().SequenceEqual(Enumerable.Range(0, samples)))
                && (!whole || plan.Balance.Fairness == Fairness.Full)
                && cells.Max() - cells.Min() <= 2;
        }, iter: 60);

    [Fact]
    public void A_plan_names_its_balance()
    {
        Assert.Equal("Order balance: full.", ServingPlan.Complete(8, 4, new SeededDraws(1).Below).Balance.InWords);
        Assert.Equal("Order balance: nearly full.", ServingPlan.Complete(6, 4, new SeededDraws(1).Below).Balance.InWords);
        Assert.Equal("Order balance: partial.", OrderBalance.Of([[0, 1, 2], [0, 1, 2]], 3).InWords);
    }

    [Fact]
    public void The_same_seed_makes_the_same_plan()
    {
        Assert.Equal(ServingPlan.Complete(7, 5, new SeededDraws(4).Below).Orders, ServingPlan.Complete(7, 5, new SeededDraws(4).Below).Orders);
        Assert.NotEqual(ServingPlan.Complete(7, 5, new SeededDraws(4).Below).Orders, ServingPlan.Complete(7, 5, new SeededDraws(5).Below).Orders);
    }

    [Fact] // three tasters of a square of four: the fourth brings the missing row
    public void A_late_taster_gets_the_order_that_is_missing()
    {
        var plan = ServingPlan.Complete(3, 4, new SeededDraws(2).Below);
        var later = plan.WithLateTaster(new SeededDraws(3).Below);
        Assert.Equal(plan.Orders, later.Orders.Take(3));
        Assert.Equal(Fairness.Full, later.Balance.Fairness);
    }

    [Fact] // no order of all 24 would have left a better balance
    public void No_other_order_would_have_been_fairer_for_a_late_taster() =>
        Gen.Select(Gen.Int[1, 9], Gen.ULong).Sample((tasters, seed) =>
        {
            var plan = ServingPlan.Complete(tasters, 4, new SeededDraws(seed).Below);
            var later = plan.WithLateTaster(new SeededDraws(seed).Below);
            return Ranks.Arrangements([0, 1, 2, 3]).All(order => OrderBalance.Of([.. plan.Orders, order], 4).Cost >= later.Balance.Cost - 1e-9);
        }, iter: 30);

    public static TheoryData<string> Designs => [.. Oracle.Rows("bibd.csv", "Tastings").Select(row => row.Text("design")).Distinct()];

    [Theory]
    [MemberData(nameof(Designs))]
    public void Incomplete_blocks_are_those_of_the_table_and_balanced(string design)
    {
        var rows = Oracle.Rows("bibd.csv", "Tastings").Where(row => row.Text("design") == design).ToList();
        var (t, k) = ((int)rows[0].Number("t"), (int)rows[0].Number("k"));
        var found = IncompleteBlocks.For(t, k).Value;
        Assert.Equal(rows[0].Number("b"), found.Blocks.Count);
        Assert.Equal(rows[0].Number("r"), found.TimesEach);
        Assert.Equal(rows[0].Number("lambda"), found.TimesTogether);
        Assert.Equal(rows[0].Number("efficiency"), found.Efficiency, 5e-7);
        for (var a = 0; a < t; a++)
        {
            Assert.Equal(found.TimesEach, found.Blocks.Count(block => block.Contains(a)));
            for (var b = 0; b < a; b++)
            {
                Assert.Equal(found.TimesTogether, found.Blocks.Count(block => block.Contains(a) && block.Contains(b)));
            }
        }
        // The same blocks, where the table was not given other names: the planes of three by three and the shifts agree as sets.
        var ours = found.Blocks.Select(block => string.Join(' ', block.Select(s => s + 1))).Order(StringComparer.Ordinal);
        Assert.Equal(rows.Select(row => row.Text("samples")).Order(StringComparer.Ordinal), ours);
    }

    [Fact]
    public void The_table_and_the_sizes_on_offer_are_the_same() =>
        Assert.Equal(Oracle.Rows("bibd.csv", "Tastings").Select(row => ((int)row.Number("t"), (int)row.Number("k"))).Distinct().Order(), IncompleteBlocks.Sizes.Order());

    [Fact]
    public void A_size_without_a_design_is_a_problem() => Assert.False(IncompleteBlocks.For(10, 3).IsOk);

    [Fact]
    public void Blocks_are_served_in_fair_orders()
    {
        var plan = ServingPlan.Blocks(IncompleteBlocks.For(5, 3).Value, 10, new SeededDraws(1).Below);
        Assert.Equal(10, plan.Orders.Count);
        Assert.All(Enumerable.Range(0, 5), sample => Assert.Equal(6, plan.Orders.Count(order => order.Contains(sample))));
        Assert.All(plan.Balance.InPlace.Cast<int>(), count => Assert.InRange(count, 1, 3));
        // Six tasters a block of three have the block's own square.
        var squares = ServingPlan.Blocks(IncompleteBlocks.For(4, 3).Value, 24, new SeededDraws(1).Below);
        Assert.Equal(Fairness.Full, squares.Balance.Fairness);
        Assert.Throws<InvalidOperationException>(() => plan.WithLateTaster(new SeededDraws(1).Below));
    }

    [Fact]
    public void Sets_of_a_forced_choice_are_spread_evenly_over_tasters_and_rounds() =>
        Gen.Select(Gen.Enum<DiscriminationMethod>(), Gen.Int[1, 13], Gen.Int[1, 4], Gen.ULong).Sample((method, tasters, rounds, seed) =>
        {
            var all = SetOrders.All(method).Select(order => string.Join("", order)).ToList();
            var plan = SetOrders.Rounds(method, tasters, rounds, new SeededDraws(seed).Below);
            bool Even(IEnumerable<string> served)
            {
                var counts = all.ConvertAll(order => served.Count(s => s == order));
                return counts.Max() - counts.Min() <= 1;
            }
            return plan.Count == rounds && plan.All(round => round.Count == tasters && Even([.. round.Select(order => string.Join("", order))]))
                && Even([.. plan.SelectMany(round => round.Select(order => string.Join("", order)))]);
        }, iter: 300);

    [Fact] // 12 tasters and 6 orders: in the second round everybody has another order
    public void A_second_round_brings_another_order()
    {
        var plan = SetOrders.Rounds(DiscriminationMethod.Triangle, 12, 3, new SeededDraws(1).Below);
        Assert.All(Enumerable.Range(0, 12), taster => Assert.Equal(3, plan.Select(round => string.Join("", round[taster])).Distinct().Count()));
    }

    [Fact]
    public void Sets_hold_the_glasses_of_their_method()
    {
        Assert.Equal(6, SetOrders.All(DiscriminationMethod.Triangle).Count);
        Assert.All(SetOrders.All(DiscriminationMethod.Triangle), order => Assert.InRange(order.Sum(), 1, 2));
        Assert.All(SetOrders.All(DiscriminationMethod.Tetrad), order => Assert.Equal(2, order.Sum()));
        Assert.Equal(6, SetOrders.All(DiscriminationMethod.Tetrad).Select(order => string.Join("", order)).Distinct().Count());
        // Only the weaker twice.
        Assert.All(SetOrders.All(DiscriminationMethod.ThreeGlasses), order => Assert.Equal(1, order.Sum()));
        // After the reference one of each.
        Assert.All(SetOrders.All(DiscriminationMethod.DuoTrio), order => Assert.Equal(1, order[1] + order[2]));
    }

    [Fact]
    public void What_cannot_be_planned_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => WilliamsSquare.Orders(1));
        Assert.Throws<ArgumentOutOfRangeException>(() => ServingPlan.Complete(0, 4, new SeededDraws(1).Below));
        Assert.Throws<ArgumentOutOfRangeException>(() => SampleCodes.Draw(0, [], [], new SeededDraws(1).Below));
        Assert.Throws<ArgumentException>(() => OrderBalance.Of([[0, 0]], 2));
        Assert.Throws<ArgumentException>(() => OrderBalance.Of([], 2));
    }
}
