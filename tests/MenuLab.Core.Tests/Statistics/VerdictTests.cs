using CsCheck;
using MenuLab.Core.House;
using MenuLab.Core.Statistics;
using static MenuLab.Core.Tests.Statistics.StatisticsOracle;

namespace MenuLab.Core.Tests.Statistics;

public sealed class VerdictTests
{
    [Theory] // the table of the reference, 0.4
    [InlineData(1.4, 0.5, 2.3, 8, VerdictKind.Different, "A was liked more than B: 1.4 points (95 % range 0.5 to 2.3), 8 tasters.")]
    [InlineData(-1.4, -2.3, -0.5, 8, VerdictKind.Different, "B was liked more than A: 1.4 points (95 % range 0.5 to 2.3), 8 tasters.")]
    [InlineData(0.5, 0.1, 0.9, 8, VerdictKind.DifferentButSmall, "A and B differ by 0.5 points (95 % range 0.1 to 0.9), less than the 0.75 that matter to you.")]
    [InlineData(0.1, -0.5, 0.7, 8, VerdictKind.CloseEnough, "Any difference between A and B is smaller than 0.75 points (95 % range −0.5 to 0.7), 8 tasters.")]
    [InlineData(0.6, -0.5, 1.7, 8, VerdictKind.TooFewToSay, "Too few tasters to say: A came out 0.6 points above B, but it could be −0.5 to 1.7. To settle 0.75 points you need about 30 tasters.")]
    [InlineData(3, 2, 4, 3, VerdictKind.ScoresOnly, "3 tasters: too few to go beyond the scores.")]
    public void Two_means_are_judged_by_their_limits_and_what_matters(double estimate, double low, double high, int tasters, VerdictKind kind, string sentence) =>
        Assert.Equal(new Verdict(kind, sentence), Verdict.OnMeans("A", "B", "liked", new Ranged(estimate, low, high), 0.75, tasters, 30, HouseFormat.Plain));

    [Fact]
    public void A_wide_range_about_zero_is_never_close_enough() =>
        Gen.Select(Gen.Double[0.01, 5], Gen.Double[0.1, 2], Gen.Int[4, 12]).Sample((beyond, matters, tasters) =>
            Verdict.KindOf(new Ranged(0, -matters - beyond, matters + beyond), matters, tasters) == VerdictKind.TooFewToSay
            && Verdict.KindOf(new Ranged(0, -matters - beyond, matters / 2), matters, tasters) == VerdictKind.TooFewToSay);

    [Theory] // R: mdd80_4samples_mse1
    [InlineData(4)]
    [InlineData(6)]
    [InlineData(8)]
    [InlineData(10)]
    [InlineData(12)]
    public void The_difference_that_a_panel_finds_is_that_of_R(int tasters) =>
        Near(Link("mdd80_4samples_mse1", $"J{tasters}"), Verdict.Detectable(1, 4, tasters), 1e-10);

    [Fact]
    public void The_tasters_needed_are_the_fewest_that_find_what_matters()
    {
        var needed = Verdict.TastersNeeded(1, 4, 0.75)!.Value;
        Assert.True(Verdict.Detectable(1, 4, needed) <= 0.75);
        Assert.True(Verdict.Detectable(1, 4, needed - 1) > 0.75);
        Assert.Null(Verdict.TastersNeeded(1e6, 4, 0.75));
    }

    [Fact]
    public void Nothing_that_matters_is_no_measure()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Verdict.KindOf(new Ranged(0, -1, 1), 0, 8));
        Assert.Throws<ArgumentOutOfRangeException>(() => Verdict.KindOf(new Ranged(0, -1, 1), 1, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => Verdict.TastersNeeded(1, 4, double.NaN));
    }
}
