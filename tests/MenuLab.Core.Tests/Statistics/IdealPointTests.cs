using CsCheck;
using MenuLab.Core.House;
using MenuLab.Core.Statistics;
using static MenuLab.Core.Tests.Statistics.StatisticsOracle;

namespace MenuLab.Core.Tests.Statistics;

public sealed class IdealPointTests
{
    // The oracle counts sugar from 8 g/100 mL.
    private const double Centre = 8;

    [Fact] // R 4.2.2: lm(liking ~ taster + x + I(x^2))
    public void The_parabola_and_its_optimum_are_those_of_R()
    {
        var found = IdealPoint.Of(Sugar());
        Assert.Equal(Centre, found.Centre);
        Near(Link("ideal_ols", "b1"), found.Slope, 1e-10);
        Near(Link("ideal_ols", "b2"), found.Bend, 1e-10);
        Near(Link("ideal_ols", "se_b1"), Math.Sqrt(found.SlopeVariance), 1e-10);
        Near(Link("ideal_ols", "se_b2"), Math.Sqrt(found.BendVariance), 1e-10);
        Within(0, found.Covariance, 1e-12);
        Near(Link("ideal_ols", "df"), found.Degrees);
        Near(Link("ideal_ols", "sigma"), Math.Sqrt(found.MeanSquare), 1e-10);
        Near(Link("ideal_ols", "p_b2"), found.BendByLuck, 1e-9);
        Near(Link("ideal_ols", "optimum"), found.Optimum, 1e-10);
        Near(Link("ideal_ols", "se_delta"), found.DeltaError, 1e-10);
        Near(Link("ideal_ols", "fieller_lo95"), found.Fieller!.Value.Low, 1e-10);
        Near(Link("ideal_ols", "fieller_hi95"), found.Fieller!.Value.High, 1e-10);
        Near(Link("ideal_ols", "fieller_g"), found.FiellerG, 1e-10);
        Near(Link("ideal_ols", "PRESS"), found.Press, 1e-10);
        Near(Link("ideal_ols", "PRESS_null"), found.PressOfTasters, 1e-10);
        Near(Link("ideal_ols", "PRESS_linear"), found.PressOfLine, 1e-10);
        Near(Link("ideal_ols", "Q2"), found.Foretold, 1e-10);
        Near(Link("ideal_lo_taster", "jackknife_se"), found.TasterError, 1e-10);
        foreach (var (level, optimum) in found.WithoutLevel)
        {
            Near(Link("ideal_lo_sample", string.Create(System.Globalization.CultureInfo.InvariantCulture, $"optimum_without_{level:0}")), optimum, 1e-10);
        }
    }

    [Fact] // the mixed model of lme4 has the same slope and bend in balanced data
    public void The_mixed_model_of_R_has_the_same_parabola()
    {
        var found = IdealPoint.Of(Sugar());
        Near(Link("ideal_lmer", "b1"), found.Slope, 1e-9);
        Near(Link("ideal_lmer", "b2"), found.Bend, 1e-9);
    }

    [Fact]
    public void Amounts_on_one_side_give_uneven_limits_as_in_R()
    {
        var found = IdealPoint.Of([.. Sugar().Where(a => a.Amount < 12)], Centre);
        Near(Link("ideal_asym_ols", "b1"), found.Slope, 1e-10);
        Near(Link("ideal_asym_ols", "b2"), found.Bend, 1e-10);
        Near(Link("ideal_asym_ols", "cov_b1b2"), found.Covariance, 1e-9);
        Near(Link("ideal_asym_ols", "optimum"), found.Optimum, 1e-10);
        Near(Link("ideal_asym_ols", "se_delta"), found.DeltaError, 1e-10);
        Near(Link("ideal_asym_ols", "fieller_lo95"), found.Fieller!.Value.Low, 1e-10);
        Near(Link("ideal_asym_ols", "fieller_hi95"), found.Fieller!.Value.High, 1e-10);
        Near(Link("ideal_asym_ols", "fieller_g"), found.FiellerG, 1e-10);
        // Where the amount is counted from changes nothing but the slope.
        var shifted = IdealPoint.Of([.. Sugar().Where(a => a.Amount < 12)]);
        Assert.Equal(7, shifted.Centre);
        Near(found.Optimum!.Value, shifted.Optimum, 1e-9);
        Near(found.Fieller!.Value.High, shifted.Fieller!.Value.High, 1e-9);
    }

    [Fact]
    public void Three_tasters_and_three_amounts_have_an_optimum_that_is_not_shown()
    {
        var found = IdealPoint.Of([.. Sugar().Where(a => a.Taster < 3 && a.Amount is 4 or 8 or 12).Where(a => a.Taster < 3)], Centre);
        Near(Link("ideal_3x3", "optimum"), found.Optimum, 1e-10);
        Near(Link("ideal_3x3", "fieller_g"), found.FiellerG, 1e-10);
        Near(Link("ideal_3x3", "df"), found.Degrees);
        Near(Link("ideal_3x3", "p_b2"), found.BendByLuck, 1e-9);
        Assert.Equal(IdealKind.TooFew, found.Kind);
        Assert.Equal("Too few tasters or amounts to say which amount is liked best (3 tasters).", IdealPoint.Sentence(found, "g/100 mL sugar", 1, HouseFormat.Plain));
    }

    [Fact] // reference, 8.1: 8.0, from 7.2 to 8.8, at most about 0.1 point lost
    public void A_clear_optimum_is_said_with_its_range_and_what_missing_it_costs()
    {
        var found = IdealPoint.Of(Sugar());
        Assert.Equal(IdealKind.Found, found.Kind);
        Assert.Equal("Your panel's optimum is 8.0 g/100 mL sugar, likely 7.2 to 8.8 (8 tasters). Between 7.2 and 8.8 you lose at most about 0.1 points.",
            IdealPoint.Sentence(found, "g/100 mL sugar", 1, HouseFormat.Plain));
    }

    [Fact]
    public void Liking_that_still_rises_asks_for_more()
    {
        List<LikedAmount> answers = [];
        for (var t = 0; t < 8; t++)
        {
            foreach (var amount in new[] { 4.0, 6, 8, 10 })
            {
                answers.Add(new(t, amount, amount / 2 - 0.02 * amount * amount + (t * 3 + (int)amount) % 3 * 0.1));
            }
        }
        Assert.Equal(IdealKind.BeyondTheEdge, IdealPoint.Of(answers).Kind);
    }

    [Fact] // a hill put in comes out, whatever the tasters' levels
    public void An_optimum_without_noise_is_found_where_it_was_put() =>
        Gen.Select(Gen.Double[5, 11], Gen.Double[-0.5, -0.05], Gen.Double[0, 3].Array[6]).Sample((optimum, bend, levels) =>
        {
            List<LikedAmount> answers = [];
            for (var t = 0; t < 6; t++)
            {
                foreach (var amount in new[] { 4.0, 6, 8, 10, 12 })
                {
                    answers.Add(new(t, amount, levels[t] + bend * (amount - optimum) * (amount - optimum) + (t % 2 == 0 ? 1e-6 : -1e-6) * (amount % 4 == 0 ? 1 : -1)));
                }
            }
            return Math.Abs(IdealPoint.Of(answers).Optimum!.Value - optimum) < 1e-3;
        }, iter: 100);

    [Theory] // R with mvtnorm
    [InlineData("ideal_bayes", 13)]
    [InlineData("ideal_asym_bayes", 12)]
    public void Belief_and_answers_come_together_as_in_R(string group, double below)
    {
        var found = IdealPointShrunk.Of([.. Sugar().Where(a => a.Amount < below)], ParabolaBelief.Sugar, Centre);
        Near(Link(group, "post_b1"), found.Slope, 1e-10);
        Near(Link(group, "post_b2"), found.Bend, 1e-10);
        Near(Link(group, "post_sd_b1"), found.SlopeSpread, 1e-10);
        Near(Link(group, "post_sd_b2"), found.BendSpread, 1e-10);
        Within(Link(group, "post_cov"), found.Covariance, 1e-12);
        Near(Link(group, "P_concave"), found.Hill, 1e-11);
        foreach (var (quantity, chance) in new[] { ("0.025", 0.025), ("0.05", 0.05), ("0.5", 0.5), ("0.95", 0.95), ("0.975", 0.975) })
        {
            // The oracle's own solver stopped at about 1e-7.
            Near(Link(group, "optimum_q" + quantity), found.OptimumBelow(chance), 1e-6);
        }
        Assert.Equal(found.OptimumBelow(0.5), found.Optimum!.Value.Value);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(5)]
    [InlineData(20)]
    public void Ridge_fits_are_those_of_R(double penalty)
    {
        var full = IdealPointShrunk.Ridge(Sugar(), penalty, Centre);
        Near(Link("ideal_ridge", $"lambda{penalty}_optimum"), full.Optimum, 1e-9);
        Near(Link("ideal_ridge", $"lambda{penalty}_PRESS"), full.Press, 1e-10);
        var asymmetric = IdealPointShrunk.Ridge([.. Sugar().Where(a => a.Amount < 12)], penalty, Centre);
        Near(Link("ideal_asym_ridge", $"lambda{penalty}_b1"), asymmetric.Slope, 1e-9);
        Near(Link("ideal_asym_ridge", $"lambda{penalty}_b2"), asymmetric.Bend, 1e-10);
        Near(Link("ideal_asym_ridge", $"lambda{penalty}_optimum"), asymmetric.Optimum, 1e-9);
        Near(Link("ideal_asym_ridge", $"lambda{penalty}_PRESS"), asymmetric.Press, 1e-10);
    }

    [Fact] // such an answer has no residual of its own: errors foretold without it would be 0/0, and a figure that is not one passes no test
    public void A_taster_with_one_answer_changes_nothing()
    {
        var (with, without) = (IdealPoint.Of([.. Sugar(), new(8, 6, 9)]), IdealPoint.Of(Sugar()));
        Assert.Equal(without with { WithoutLevel = with.WithoutLevel }, with);
        Assert.Equal(without.WithoutLevel, with.WithoutLevel);
    }

    [Fact]
    public void What_cannot_bend_is_refused()
    {
        Assert.Throws<ArgumentException>(() => IdealPoint.Of([new(0, 4, 5), new(0, 6, 7), new(1, 4, 5), new(1, 6, 7)]));
        Assert.Throws<ArgumentException>(() => IdealPoint.Of([new(0, 4, 5), new(0, 6, 7), new(0, 8, 5)]));
        Assert.Throws<ArgumentOutOfRangeException>(() => IdealPointShrunk.Of(Sugar(), new ParabolaBelief(0, 0, 0, 1)));
    }

    private static List<LikedAmount> Sugar() =>
        [.. Rows("data-ideal-synthetic-seed20240613.csv").Select(row => new LikedAmount((int)row.Number("taster") - 1, row.Number("sugar"), row.Number("liking")))];
}
