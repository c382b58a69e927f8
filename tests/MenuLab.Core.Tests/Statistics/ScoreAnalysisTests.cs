using CsCheck;
using MenuLab.Core.House;
using MenuLab.Core.Statistics;
using static MenuLab.Core.Tests.Statistics.StatisticsOracle;

namespace MenuLab.Core.Tests.Statistics;

/// <summary>Means and analyses of variance, held against R 4.2.2 (12 significant digits).</summary>
public sealed class ScoreAnalysisTests
{
    private const string Means = "wine_cellmeans";
    private const double RefPtukey = 1e-6; // R's own accuracy is the limit

    [Fact]
    public void A_complete_table_is_analysed_as_by_R()
    {
        var found = TwoWayAnalysis.Of(Tables.WineMeans());
        Near(Anova(Means, "judge.Mean Sq"), found.TasterMeanSquare);
        Near(Anova(Means, "sample.Mean Sq"), found.SampleMeanSquare);
        Near(Anova(Means, "Residuals.Mean Sq"), found.Samples.ErrorMeanSquare);
        Near(Anova(Means, "F_sample"), found.Samples.Test.F);
        Near(Anova(Means, "p_sample"), found.Samples.Test.ByLuck, 1e-9);
        Near(Anova(Means, "F_judge"), found.Tasters.F);
        Near(Anova(Means, "p_judge"), found.Tasters.ByLuck, 1e-10);
        Assert.Equal((3.0, 24.0), (found.Samples.Test.Degrees, found.Samples.Test.ErrorDegrees));
        Near(Anova(Means, "partial_eta2"), found.Explained);
        Near(Anova(Means, "omega2_partial"), found.ExplainedBeyondLuck);
        for (var s = 0; s < Tables.Wines.Length; s++)
        {
            Near(Anova(Means, "mean_" + Tables.Wines[s]), found.Samples.Means[s]);
        }
        // The closed form meets the iterative fit of the mixed model.
        Near(Anova("wine_cellmeans_lmer", "var_judge"), found.TasterVariance, 1e-4);
        Near(Anova("wine_cellmeans_lmer", "emm_SE_cold.no"), found.SingleMeanError, 1e-6);
        Near(Anova("wine_cellmeans_lmer", "emm_df_cold.no"), found.SingleMeanDegrees, 1e-6);
    }

    [Fact]
    public void Repeats_are_analysed_as_by_R()
    {
        const string group = "wine_replicated";
        var found = RepeatedAnalysis.Of(Tables.Repeats(Rows("data-wine-randall1989.csv"), "judge", "sample", "response", Tables.Wines));
        Near(Anova(group, "sample.Mean Sq"), found.SampleMeanSquare);
        Near(Anova(group, "judge.Mean Sq"), found.TasterMeanSquare);
        Near(Anova(group, "judge:sample.Mean Sq"), found.DisagreementMeanSquare);
        Near(Anova(group, "Residuals.Mean Sq"), found.RepeatMeanSquare);
        Near(Anova(group, "F_sample_mixed"), found.Samples.Test.F);
        Near(Anova(group, "p_sample_mixed"), found.Samples.Test.ByLuck, 1e-9);
        Near(Anova(group, "F_judge_vs_error"), found.Tasters.F);
        Near(Anova(group, "F_inter"), found.Disagreement.F);
        Near(Anova(group, "p_inter"), found.Disagreement.ByLuck, 1e-10);
        Assert.Equal(36, found.Disagreement.ErrorDegrees);
    }

    [Fact]
    public void Three_attributes_of_a_panel_with_repeats_are_analysed_as_by_R()
    {
        foreach (var attribute in new[] { "potato", "rancid", "painty" })
        {
            var found = RepeatedAnalysis.Of(Tables.Repeats(Rows("data-frenchfries-week8.csv"), "subject", "treatment", attribute));
            Near(Panel("ff8_" + attribute, "F_treatment_mixed"), found.Samples.Test.F);
            Near(Panel("ff8_" + attribute, "p_treatment_mixed"), found.Samples.Test.ByLuck, 1e-10);
            Near(Panel("ff8_" + attribute, "subject.F value"), found.Tasters.F);
            Near(Panel("ff8_" + attribute, "subject:treatment.F value"), found.Disagreement.F);
        }
    }

    [Fact]
    public void Pairs_are_compared_as_by_R()
    {
        var pairs = PairComparisons.Of(TwoWayAnalysis.Of(Tables.WineMeans()).Samples);
        Assert.Equal(6, pairs.Count);
        foreach (var pair in pairs)
        {
            // R names the later sample first.
            var name = $"{Tables.Wines[pair.Other]}-{Tables.Wines[pair.One]}";
            Near(Anova("wine_cellmeans_tukey", name + ".diff"), -pair.Alone.Value);
            Within(Anova("wine_cellmeans_tukey", name + ".padj"), pair.ByLuckAmongAll, RefPtukey);
            // R's quantile is 7e-7 off here.
            Within(Anova("wine_cellmeans_tukey", name + ".lwr"), -pair.AmongAll.High, RefPtukey);
            Within(Anova("wine_cellmeans_tukey", name + ".upr"), -pair.AmongAll.Low, RefPtukey);
            Near(Anova("wine_cellmeans_lsd", name + ".p"), pair.ByLuckAlone, 1e-9);
            Near(Anova(Means, "LSD05"), pair.Alone.High - pair.Alone.Value, 1e-10);
            // Reference, 2.6: the accurate studentized range gives 12.0187177639.
            Within(12.0187177639, pair.AmongAll.High - pair.AmongAll.Value, 1e-8);
        }
    }

    [Fact]
    public void Missing_cells_are_analysed_as_by_R()
    {
        const string group = "wine_missing2_ols";
        var found = GappedAnalysis.Of(WithTwoGaps())!;
        Near(Anova(group, "F_sample"), found.Test.F);
        Near(Anova(group, "p_sample"), found.Test.ByLuck, 1e-9);
        Near(Anova(group, "df_resid"), found.Test.ErrorDegrees);
        Near(Anova(group, "MSE"), found.ErrorMeanSquare);
        for (var s = 0; s < 4; s++)
        {
            Near(Anova(group, "adjmean_" + Tables.Wines[s]), found.Means[s]);
        }
        foreach (var pair in PairComparisons.Of(found))
        {
            var name = $"{Tables.Wines[pair.One]} - {Tables.Wines[pair.Other]}";
            Near(Anova(group, name + ".est"), pair.Alone.Value);
            Near(Anova(group, name + ".SE"), pair.Error);
            Within(Anova(group, name + ".p_tukey"), pair.ByLuckAmongAll, RefPtukey);
        }
    }

    [Fact] // lme4 1.1-31 and lmerTest 3.1-3, an iterative fit: relative 1e-4
    public void The_mixed_model_with_missing_cells_is_that_of_R()
    {
        const string group = "wine_missing2_lmer";
        const double fit = 1e-4;
        var found = MixedAnalysis.Of(WithTwoGaps())!;
        Near(Anova(group, "F"), found.Samples.Test.F, fit);
        Near(Anova(group, "DenDF"), found.Samples.Test.ErrorDegrees, fit);
        // The chance falls steeply with the degrees of freedom, which are known to 1e-4: seen 1.8e-4.
        Near(Anova(group, "p"), found.Samples.Test.ByLuck, 5e-4);
        Near(Anova(group, "var_judge"), found.TasterVariance, fit);
        Near(Anova(group, "var_Residual"), found.ErrorVariance, fit);
        for (var s = 0; s < 4; s++)
        {
            Near(Anova(group, "adjmean_" + Tables.Wines[s]), found.Samples.Means[s], 1e-6);
        }
    }

    [Fact]
    public void The_mixed_model_of_a_complete_table_is_the_closed_form()
    {
        var table = Tables.WineMeans();
        var scores = new List<Score>();
        for (var t = 0; t < 9; t++)
        {
            for (var s = 0; s < 4; s++)
            {
                scores.Add(new Score(t, s, table[t, s]));
            }
        }
        var (mixed, closed) = (MixedAnalysis.Of(scores)!, TwoWayAnalysis.Of(table));
        Near(closed.Samples.Test.F!.Value, mixed.Samples.Test.F, 1e-6);
        Near(closed.Samples.Test.ErrorDegrees, mixed.Samples.Test.ErrorDegrees, 1e-4);
        Near(closed.TasterVariance, mixed.TasterVariance, 1e-5);
        Near(Anova("wine_cellmeans_lmer", "var_Residual"), mixed.ErrorVariance, 1e-4);
    }

    [Fact]
    public void Where_scores_and_ranks_disagree_the_weaker_is_told()
    {
        // One taster's wild scores hide from the analysis of scores what every order shows.
        double[,] wild = { { 1, 2, 3 }, { 2, 3, 4 }, { 3, 4, 5 }, { 4, 5, 6 }, { 5, 6, 7 }, { 6, 7, 8 }, { 900, 100, 500 } };
        var found = ScoreComparison.Of(wild);
        Assert.True(found.Disagree);
        Assert.Equal(found.Scores.Samples.Test.ByLuck, found.ByLuck);
        Assert.Equal(["a", "a", "a"], found.Letters!);
        var wine = ScoreComparison.Of(Tables.WineMeans());
        Assert.False(wine.Disagree);
        Assert.Equal(["c", "b", "bc", "a"], wine.Letters!);
        Assert.Equal(new Verdict(VerdictKind.Different, "cold.yes was rated more than cold.no: 9.5 points (95 % range 0.5 to 18.5), 9 tasters."),
            ScoreComparison.OnPair(wine, 0, 2, Tables.Wines, "rated", 5, 9, HouseFormat.Plain));
    }

    [Fact]
    public void Five_tasters_get_ranges_but_no_letters_and_three_get_scores_only()
    {
        static double[,] First(int tasters)
        {
            var table = new double[tasters, 4];
            for (var t = 0; t < tasters; t++)
            {
                for (var s = 0; s < 4; s++)
                {
                    table[t, s] = Tables.WineMeans()[t, s];
                }
            }
            return table;
        }
        Assert.Null(ScoreComparison.Of(First(5)).Letters);
        Assert.Equal(6, ScoreComparison.Of(First(5)).Pairs.Count);
        var three = ScoreComparison.Of(First(3));
        Assert.Empty(three.Pairs);
        Assert.Equal(VerdictKind.ScoresOnly, ScoreComparison.OnPair(three, 0, 3, Tables.Wines, "rated", 10, 3, HouseFormat.Plain).Kind);
    }

    [Fact]
    public void A_quarter_of_the_samples_may_be_metrics_and_twins_cannot_be_told_apart()
    {
        Assert.Equal(2, SeveralMetrics.Most(11));
        Assert.True(SeveralMetrics.CannotBeSeparated([1, 2, 3, 4], [2, 4, 6, 8.5]));
        Assert.False(SeveralMetrics.CannotBeSeparated([1, 2, 3, 4], [4, 1, 3, 2]));
        Assert.True(SeveralMetrics.CannotBeSeparated([1, 2, 3], [5, 5, 5]));
    }

    [Fact]
    public void Incomplete_blocks_are_analysed_as_by_R()
    {
        string[] detergents = ["A", "B", "C", "D", "E"];
        var found = GappedAnalysis.Of(Detergents())!;
        Near(Link("bib_detergent", "F_detergent_adj"), found.Test.F);
        Near(Link("bib_detergent", "p"), found.Test.ByLuck, 1e-10);
        Near(Link("bib_detergent", "df_res"), found.Test.ErrorDegrees);
        Near(Link("bib_detergent", "MSE"), found.ErrorMeanSquare);
        for (var s = 0; s < 5; s++)
        {
            Near(Link("bib_detergent", "adjmean_" + detergents[s]), found.Means[s]);
        }
        foreach (var pair in PairComparisons.Of(found))
        {
            Near(Link("bib_detergent", "SE_pair"), pair.Error);
            Within(Link("bib_detergent", $"p_tukey_{detergents[pair.One]} - {detergents[pair.Other]}"), pair.ByLuckAmongAll, RefPtukey);
        }
    }

    [Fact]
    public void Ranks_in_incomplete_blocks_are_tested_as_by_R()
    {
        var found = Durbin.Of(Detergents());
        Assert.Equal([12, 8, 18, 15, 7], found.RankSums);
        Near(Link("bib_detergent_durbin", "D_ties"), found.Statistic);
        Near(Link("bib_detergent_durbin", "p_chi2"), found.ByLuck, 1e-10);
    }

    [Fact]
    public void The_mean_and_its_limits_are_those_of_R()
    {
        var table = Tables.WineMeans();
        for (var s = 0; s < 4; s++)
        {
            var found = MeanInterval.Of([.. Enumerable.Range(0, 9).Select(t => table[t, s])]);
            Near(Anova("wine_simple_ci", Tables.Wines[s] + ".mean"), found.Mean);
            Near(Anova("wine_simple_ci", Tables.Wines[s] + ".sd"), found.StandardDeviation);
            Near(Anova("wine_simple_ci", Tables.Wines[s] + ".lo"), found.Range!.Value.Low, 1e-10);
            Near(Anova("wine_simple_ci", Tables.Wines[s] + ".hi"), found.Range!.Value.High, 1e-10);
        }
        var liking = MeanInterval.Of([7, 6, 8, 5, 7, 7, 6, 9]);
        Assert.Equal(6.875, liking.Mean);
        Near(Cata("hedonic_ci_7 6 8 5 7 7 6 9", "lo95"), liking.Range!.Value.Low, 1e-10);
        Near(Cata("hedonic_ci_7 6 8 5 7 7 6 9", "hi95"), liking.Range!.Value.High, 1e-10);
        Assert.Null(MeanInterval.Of([7]).Range);
    }

    [Fact] // multcompView on the same data, relabelled so that a is the highest
    public void Letters_are_those_of_R()
    {
        var samples = TwoWayAnalysis.Of(Tables.WineMeans()).Samples;
        var pairs = PairComparisons.Of(samples).ToDictionary(pair => (pair.One, pair.Other));
        // cold.no, warm.no, cold.yes, warm.yes
        Assert.Equal(["c", "b", "bc", "a"], Letters.Of(samples.Means, (a, b) => pairs[(a, b)].ByLuckAmongAll < 0.05));
        Assert.Equal(["d", "b", "c", "a"], Letters.Of(samples.Means, (a, b) => pairs[(a, b)].ByLuckAlone < 0.05));
    }

    [Fact]
    public void Two_samples_share_a_letter_exactly_when_they_do_not_differ() =>
        Gen.Select(Gen.Int[1, 8], Gen.UInt).Sample((count, seed) =>
        {
            var draws = new SeededDraws(seed);
            var means = Enumerable.Range(0, count).Select(_ => (double)draws.Below(100)).ToArray();
            var apart = new bool[count, count];
            for (var a = 0; a < count; a++)
            {
                for (var b = a + 1; b < count; b++)
                {
                    apart[a, b] = draws.Below(2) == 0;
                }
            }
            var letters = Letters.Of(means, (a, b) => apart[a, b]);
            for (var a = 0; a < count; a++)
            {
                for (var b = a + 1; b < count; b++)
                {
                    if (letters[a].Intersect(letters[b]).Any() == apart[a, b])
                    {
                        return false;
                    }
                }
            }
            return letters.All(own => own.Length > 0);
        }, iter: 500);

    [Fact] // statsmodels test suite data, McNemar chances adjusted (reference, 5.1)
    public void Holms_adjustment_is_that_of_the_reference() =>
        Assert.Equal([1, 1, 0.15625, 1, 0.15625, 0.046875], Holm.Adjust([1, 0.625, 0.03125, 1, 0.0390625, 0.0078125]));

    [Fact]
    public void Adding_a_tasters_level_to_all_his_scores_changes_no_difference() =>
        Gen.Select(Tables.NinePoints, Gen.Double[-5, 5]).Sample((table, level) =>
        {
            var shifted = (double[,])table.Clone();
            for (var s = 0; s < table.GetLength(1); s++)
            {
                shifted[0, s] += level;
            }
            var (before, after) = (TwoWayAnalysis.Of(table).Samples, TwoWayAnalysis.Of(shifted).Samples);
            return Math.Abs(before.ErrorMeanSquare - after.ErrorMeanSquare) < 1e-9
                && Math.Abs(before.Means[0] - before.Means[1] - (after.Means[0] - after.Means[1])) < 1e-9;
        });

    [Fact]
    public void A_table_without_gaps_comes_out_the_same_either_way() =>
        Tables.NinePoints.Sample(table =>
        {
            var scores = new List<Score>();
            for (var t = 0; t < table.GetLength(0); t++)
            {
                for (var s = 0; s < table.GetLength(1); s++)
                {
                    scores.Add(new Score(t, s, table[t, s]));
                }
            }
            var (complete, gapped) = (TwoWayAnalysis.Of(table).Samples, GappedAnalysis.Of(scores)!);
            return Math.Abs(complete.ErrorMeanSquare - gapped.ErrorMeanSquare) < 1e-9
                && complete.Means.Zip(gapped.Means).All(pair => Math.Abs(pair.First - pair.Second) < 1e-9)
                && Math.Abs(complete.DifferenceErrors[0, 1] - gapped.DifferenceErrors[0, 1]) < 1e-7;
        });

    [Fact] // all tasters have one level, so the variance of a mean is the error's and cannot have more degrees than it
    public void Without_levels_of_tasters_a_mean_has_the_degrees_of_the_error()
    {
        var found = TwoWayAnalysis.Of(new double[,] { { 1, 5, 6 }, { 5, 3, 4 }, { 6, 4, 2 }, { 4, 2, 6 } });
        Assert.Equal(0, found.TasterVariance);
        Assert.Equal(6, found.SingleMeanDegrees);
        Assert.Equal(Math.Sqrt(found.Samples.ErrorMeanSquare / 4), found.SingleMeanError, 1e-12);
    }

    [Fact]
    public void Scores_that_do_not_vary_give_no_test_instead_of_a_figure()
    {
        var found = TwoWayAnalysis.Of(new double[,] { { 0.1, 0.1, 0.1 }, { 0.3, 0.3, 0.3 }, { 0.7, 0.7, 0.7 } });
        Assert.Null(found.Samples.Test.F);
        Assert.Null(found.Samples.Test.ByLuck);
        Assert.Null(found.Explained);
        Assert.Null(Friedman.Of(new double[,] { { 5, 5 }, { 5, 5 } }).Statistic);
    }

    [Fact]
    public void Samples_that_no_taster_connects_cannot_be_compared() =>
        Assert.Null(GappedAnalysis.Of([new(0, 0, 5), new(0, 1, 6), new(1, 2, 5), new(1, 3, 7)]));

    [Fact]
    public void What_cannot_be_analysed_is_refused()
    {
        Assert.Throws<ArgumentException>(() => TwoWayAnalysis.Of(new double[1, 3]));
        Assert.Throws<ArgumentException>(() => TwoWayAnalysis.Of(new[,] { { 1, double.NaN }, { 2, 3 } }));
        Assert.Throws<ArgumentException>(() => RepeatedAnalysis.Of(new double[3, 3, 1]));
        Assert.Throws<ArgumentException>(() => GappedAnalysis.Of([new(0, 0, 5), new(0, 0, 6), new(0, 1, 6)]));
        Assert.Throws<ArgumentException>(() => GappedAnalysis.Of([new(0, 0, 5), new(0, 2, 6)]));
        Assert.Throws<ArgumentException>(() => MeanInterval.Of([]));
        Assert.Throws<ArgumentOutOfRangeException>(() => Holm.Adjust([1.2]));
    }

    /// <summary>Without judge 1 on cold.no and judge 5 on warm.yes.</summary>
    internal static List<Score> WithTwoGaps()
    {
        var table = Tables.WineMeans();
        var scores = new List<Score>();
        for (var t = 0; t < 9; t++)
        {
            for (var s = 0; s < 4; s++)
            {
                if ((t, s) is not ((0, 0) or (4, 3)))
                {
                    scores.Add(new Score(t, s, table[t, s]));
                }
            }
        }
        return scores;
    }

    private static List<Score> Detergents() =>
        [.. Rows("data-detergent-scheffe1959.csv").Select(row =>
            new Score(int.Parse(row.Text("block")[2..], System.Globalization.CultureInfo.InvariantCulture) - 1, row.Text("detergent")[0] - 'A', row.Number("plates")))];
}
