using MenuLab.Core.House;
using MenuLab.Core.Statistics;
using static MenuLab.Core.Tests.Statistics.StatisticsOracle;

namespace MenuLab.Core.Tests.Statistics;

/// <summary>How steady a panel was, and what the order of serving did.</summary>
public sealed class PanelTests
{
    [Fact] // psych 2.2.9 on Shrout and Fleiss 1979; the published figures are .17 .29 .71 .44 .62 .91 (MEMORY)
    public void All_six_intraclass_correlations_are_those_of_R()
    {
        var rows = Rows("data-shroutfleiss1979.csv");
        var scores = new double[4, 6];
        for (var s = 0; s < 6; s++)
        {
            for (var t = 0; t < 4; t++)
            {
                scores[t, s] = rows[s].Number($"J{t + 1}");
            }
        }
        var found = IntraclassCorrelation.Of(scores)!;
        Check("ICC1", found.SingleOneWay, 0.17);
        Check("ICC2", found.Single, 0.29);
        Check("ICC3", found.SingleOrder, 0.71);
        Check("ICC1k", found.MeanOneWay, 0.44);
        Check("ICC2k", found.Mean, 0.62);
        Check("ICC3k", found.MeanOrder, 0.91);

        static void Check(string form, Intraclass intraclass, double published)
        {
            Near(Panel("shroutfleiss", form + ".icc"), intraclass.Value.Value);
            Near(Panel("shroutfleiss", form + ".F"), intraclass.F);
            Near(Panel("shroutfleiss", form + ".lo95"), intraclass.Value.Low, 1e-9);
            Near(Panel("shroutfleiss", form + ".hi95"), intraclass.Value.High, 1e-9);
            Assert.Equal(published, intraclass.Value.Value, 0.005);
        }
    }

    [Fact]
    public void Scores_without_any_spread_have_no_intraclass_correlation() =>
        Assert.Null(IntraclassCorrelation.Of(new double[,] { { 5, 5, 5 }, { 5, 5, 5 } }));

    [Theory] // R 4.2.2 on the french-fries panel; NaN and NA stand for "cannot be computed"
    [InlineData("potato")]
    [InlineData("rancid")]
    [InlineData("painty")]
    public void Every_taster_has_the_figures_of_R(string attribute)
    {
        var rows = Rows("data-frenchfries-week8.csv");
        var tasters = rows.Select(row => row.Text("subject")).Distinct().ToList();
        var scores = Tables.Repeats(rows, "subject", "treatment", attribute);
        var found = TasterPerformance.Of(scores);
        Assert.Equal(10, found.Count);
        foreach (var taster in found)
        {
            var group = $"ff8_{attribute}_taster{tasters[taster.Taster]}";
            Same(group, "F", taster.Telling.F, 1e-9);
            Same(group, "p", taster.Telling.ByLuck, 1e-9);
            Same(group, "r_with_rest", taster.WithTheRest, 1e-9);
            Within(Panel(group, "rmse_rep"), taster.RepeatError, 1e-10);
            Within(Panel(group, "mean"), taster.Mean, 1e-10);
            Within(Panel(group, "sd_samples"), taster.Spread, 1e-10);
            Assert.Equal(taster.Spread > 0 || taster.RepeatError > 0, taster.UsedTheScale);
        }
        var means = new double[10, 3];
        for (var t = 0; t < 10; t++)
        {
            for (var s = 0; s < 3; s++)
            {
                means[t, s] = (scores[t, s, 0] + scores[t, s, 1]) / 2;
            }
        }
        var friedman = Friedman.Of(means);
        Near(Panel("ff8_" + attribute, "kendallW_ties"), friedman.Agreement);
        Near(Panel("ff8_" + attribute, "friedman_Q"), friedman.Statistic);
    }

    [Fact]
    public void A_taster_is_told_alone_and_without_blame()
    {
        var panel = TasterPerformance.Of(Tables.Repeats(Rows("data-frenchfries-week8.csv"), "subject", "treatment", "rancid"));
        string Told(TasterFigures own) => TasterPerformance.Sentence(own, panel, "rancidness", 3, HouseFormat.Plain);
        // Tasters 3, 31 and 52 of the data set; luck reaches 0.988 with three samples, and 31 goes with the rest at 0.998.
        Assert.Equal("You gave every sample the same score for rancidness: the scale was not used.", Told(panel[0]));
        Assert.EndsWith("You order rancidness as the others do.", Told(panel[4]), StringComparison.Ordinal);
        Assert.EndsWith("You order rancidness differently from the others: worth a short calibration with three reference glasses.", Told(panel[6]), StringComparison.Ordinal);
        Assert.EndsWith("Too few samples to say how your order compares.", Told(panel[1]), StringComparison.Ordinal);
    }

    [Theory] // R: one-sided 5 % limits of a correlation
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(6)]
    [InlineData(7)]
    [InlineData(8)]
    public void The_correlation_that_luck_exceeds_is_that_of_R(int samples) =>
        Near(Link("rcrit_onesided05", $"n{samples}"), TasterPerformance.CorrelationByLuck(samples), 1e-10);

    [Fact]
    public void Pooling_one_tasting_gives_back_its_correlation_and_two_lie_between()
    {
        Assert.Equal(0.6, TasterPerformance.Pooled([(0.6, 5)]), 1e-12);
        Assert.InRange(TasterPerformance.Pooled([(0.2, 4), (0.8, 6)]), 0.2, 0.8);
    }

    [Theory]
    [InlineData(0.04, "the tasters hardly agree on the order")]
    [InlineData(0.45, "the tasters agree on the order in part")]
    [InlineData(0.73, "the tasters agree on the order")]
    public void Agreement_is_said_in_words(double w, string words) => Assert.Equal(words, TasterPerformance.AgreementInWords(w));

    [Fact] // by hand: four different scores in the very order of the rest; one order in 24 does as well
    public void Going_exactly_with_the_rest_is_reached_by_one_order_in_twenty_four()
    {
        var found = AnswersByLuck.Of([new([2, 4, 6, 8], [3, 4, 5, 7], [], null, null)], new SeededDraws(1));
        Assert.Equal(1.0 / 24, found.ByLuck!.Value, 1e-12);
        Assert.False(found.Flagged);
    }

    [Fact]
    public void Two_signs_on_enough_answers_are_a_flag_and_one_tasting_never_is()
    {
        TasterSession odd = new([8, 2, 7, 1], [3, 6, 4, 7], [4, 0, 5], 2, 1);
        var one = AnswersByLuck.Of([odd], new SeededDraws(1));
        Assert.True(one.NotWithTheRest && one.Unsteady && one.FarApart);
        Assert.False(one.Flagged);
        Assert.True(AnswersByLuck.Of([odd, odd], new SeededDraws(1)).Flagged);
        TasterSession steady = odd with { RepeatError = 1, Gaps = [1, 0] };
        Assert.False(AnswersByLuck.Of([steady, steady], new SeededDraws(1)).Flagged);
    }

    [Fact]
    public void Answers_without_spread_cannot_be_shuffled() =>
        Assert.Null(AnswersByLuck.Of([new([5, 5, 5], [3, 4, 5], [], null, null)], new SeededDraws(1)).ByLuck);

    [Fact] // R 4.2.2 on synthetic answers with a true trend of -0.35 and a true carry-over that eight tasters miss
    public void The_effect_of_the_order_is_that_of_R()
    {
        var found = ServingOrder.Of(Served());
        Near(Link("williams4_pos", "F_position"), found.Position!.Value.F, 1e-10);
        Near(Link("williams4_pos", "p_position"), found.Position!.Value.ByLuck, 1e-10);
        Near(Link("williams4_pos", "F_sample"), found.Samples!.Value.F, 1e-10);
        Near(Link("williams4_pos", "p_sample"), found.Samples!.Value.ByLuck, 1e-10);
        Assert.Equal((3.0, 18.0), (found.Position.Value.Degrees, found.Position.Value.ErrorDegrees));
        Near(Link("williams4_pos", "MSE"), found.MeanSquare, 1e-10);
        Near(Link("williams4_carry", "F_carryover"), found.CarryOver!.Value.F, 1e-9);
        Near(Link("williams4_carry", "p"), found.CarryOver!.Value.ByLuck, 1e-9);
        Assert.Equal((3.0, 15.0), (found.CarryOver.Value.Degrees, found.CarryOver.Value.ErrorDegrees));
        Near(Link("williams4_trend", "slope"), found.Trend!.Value.Value, 1e-10);
        Near(Link("williams4_trend", "se"), found.Trend!.Value.Error, 1e-10);
        Near(Link("williams4_trend", "p"), found.Trend!.Value.ByLuck, 1e-10);
    }

    [Fact]
    public void A_trend_is_told_only_when_it_is_half_of_what_matters()
    {
        var found = ServingOrder.Of(Served());
        Assert.StartsWith("Later samples scored lower, by about 0.4 points", ServingOrder.Sentence(found, 0.7, HouseFormat.Plain), StringComparison.Ordinal);
        Assert.Null(ServingOrder.Sentence(found, 0.75, HouseFormat.Plain));
    }

    [Fact]
    public void One_order_for_everybody_cannot_tell_places_from_samples()
    {
        List<ServedScore> scores = [];
        for (var t = 0; t < 4; t++)
        {
            for (var place = 0; place < 3; place++)
            {
                scores.Add(new(t, place, place, 5 + (t * 7 + place * 5) % 4));
            }
        }
        var found = ServingOrder.Of(scores);
        Assert.Null(found.Position);
        Assert.Null(found.Samples);
        Assert.Null(found.Trend);
    }

    [Fact]
    public void Scores_that_samples_and_tasters_explain_in_full_show_no_effect_of_the_order()
    {
        var orders = MenuLab.Core.Tastings.WilliamsSquare.Orders(4);
        var found = ServingOrder.Of([.. Enumerable.Range(0, 32).Select(i => new ServedScore(i / 4, i % 4, orders[i / 4 % 4][i % 4], 5.3 + i / 4 * 0.1 + orders[i / 4 % 4][i % 4] * 0.7))]);
        Assert.Null(found.Position!.Value.F);
        Assert.Null(found.CarryOver!.Value.F);
        Assert.Null(found.Trend);
        Assert.Equal(double.PositiveInfinity, found.Samples!.Value.F);
    }

    [Fact]
    public void An_order_that_leaves_nothing_over_has_no_mean_square() =>
        Assert.Null(ServingOrder.Of([new(0, 0, 0, 5), new(0, 1, 1, 6)]).MeanSquare);

    private static List<ServedScore> Served() =>
        [.. Rows("data-williams4-synthetic-seed20240612.csv").Select(row =>
            new ServedScore((int)row.Number("taster") - 1, (int)row.Number("position") - 1, (int)row.Number("sample") - 1, row.Number("liking")))];

    private static void Same(string group, string quantity, double? actual, double relative)
    {
        var expected = OfPanel(group, quantity);
        if (double.IsNaN(expected))
        {
            Assert.Null(actual);
        }
        else
        {
            Near(expected, actual, relative, $"{group} {quantity}");
        }
    }

    private static double OfPanel(string group, string quantity)
    {
        var text = Rows("oracle-panel.csv").Single(row => row.Text("case") == group && row.Text("quantity") == quantity).Text("value");
        return text is "NA" or "NaN" ? double.NaN : double.Parse(text, System.Globalization.CultureInfo.InvariantCulture);
    }
}
