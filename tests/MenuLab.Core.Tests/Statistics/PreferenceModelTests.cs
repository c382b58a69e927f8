using CsCheck;
using MenuLab.Core.Statistics;
using static MenuLab.Core.Tests.Statistics.StatisticsOracle;

namespace MenuLab.Core.Tests.Statistics;

/// <summary>Pairs (Bradley and Terry) and best and worst.</summary>
public sealed class PreferenceModelTests
{
    [Fact] // BradleyTerry2 1.1-2; the first journal is the reference there
    public void Strengths_of_the_citations_are_those_of_R()
    {
        string[] journals = ["Biometrika", "Comm Statist", "JASA", "JRSS-B"];
        var wins = Wins("data-bt-citations.csv", "player1", "player2", "win1", "win2", journals);
        var found = BradleyTerry.Of(wins, added: 0)!;
        for (var j = 1; j < 4; j++)
        {
            Near(Panel("bt_citations", "ability_" + journals[j]), found.Strengths[j] - found.Strengths[0], 1e-8);
            Near(Panel("bt_citations", "se_" + journals[j]), found.DifferenceError(j, 0), 1e-6);
        }
        Near(Panel("bt_citations", "deviance"), found.Deviance, 1e-8);
    }

    [Fact]
    public void Strengths_of_a_small_panel_are_those_of_R()
    {
        string[] drinks = ["A", "B", "C", "D"];
        var found = BradleyTerry.Of(Wins("data-bt-synthetic.csv", "i", "j", "wi", "wj", drinks), added: 0)!;
        for (var d = 1; d < 4; d++)
        {
            Near(Panel("bt_synthetic", "ability_" + drinks[d]), found.Strengths[d] - found.Strengths[0], 1e-8);
            Near(Panel("bt_synthetic", "se_" + drinks[d]), found.DifferenceError(d, 0), 1e-6);
        }
        Near(Panel("bt_synthetic", "deviance"), found.Deviance, 1e-8);
        Near(Panel("bt_synthetic", "null_deviance"), found.LevelDeviance, 1e-10);
        Assert.Equal(0.0614249878, found.ByLuck, 1e-9); // chi-squared 7.35421608 on 3 degrees, by its closed form
        // Reference, 6.2: "D would win against B in about 63 of 100 tastings".
        Assert.Equal(0.63, found.Wins(3, 1), 0.005);
    }

    [Theory] // quasi-Newton fit, good to 1e-6
    [InlineData(0.5, "bt_separated_pseudo0.5")]
    [InlineData(1, "bt_separated_pseudo1")]
    public void A_drink_that_never_lost_has_a_strength_when_wins_are_added(double added, string group)
    {
        string[] drinks = ["A", "B", "C", "D"];
        var wins = Wins("data-bt-synthetic-separated.csv", "i", "j", "wi", "wj", drinks);
        Assert.Null(BradleyTerry.Of(wins, added: 0));
        var found = BradleyTerry.Of(wins, added)!;
        for (var d = 0; d < 4; d++)
        {
            Within(Panel(group, "beta_" + drinks[d]), found.Strengths[d], 1e-6);
            Within(Panel(group, "se_" + drinks[d]), found.Errors[d], 1e-6);
        }
    }

    [Fact]
    public void Strengths_add_up_to_zero_and_turn_round_with_the_wins() =>
        Gen.Int[0, 9].Array[9].Where(EachCompared).Sample(counts =>
        {
            var (wins, losses) = (new double[3, 3], new double[3, 3]);
            for (var i = 0; i < 9; i++)
            {
                if (i / 3 != i % 3)
                {
                    wins[i / 3, i % 3] = losses[i % 3, i / 3] = counts[i];
                }
            }
            var (found, turned) = (BradleyTerry.Of(wins)!, BradleyTerry.Of(losses)!);
            return Math.Abs(found.Strengths.Sum()) < 1e-9 && found.Strengths.Zip(turned.Strengths).All(pair => Math.Abs(pair.First + pair.Second) < 1e-7);
        }, iter: 200);

    [Fact]
    public void Limits_from_drawing_tasters_hold_the_strength_and_small_panels_get_none()
    {
        var choices = new List<PairChoice>();
        for (var t = 0; t < 8; t++)
        {
            choices.Add(new(t, t < 6 ? 1 : 0, t < 6 ? 0 : 1));
            choices.Add(new(t, t < 7 ? 2 : 0, t < 7 ? 0 : 2));
            choices.Add(new(t, t < 4 ? 2 : 1, t < 4 ? 1 : 2));
        }
        var ranges = BradleyTerry.Ranges(choices, 3, new SeededDraws(5))!;
        Assert.All(ranges, range => Assert.True(range.Low <= range.Value && range.Value <= range.High && range.Low < range.High));
        Assert.True(ranges[0].High < ranges[2].Low + 1 && ranges[0].Value < ranges[1].Value);
        Assert.Null(BradleyTerry.Ranges([.. choices.Where(c => c.Taster < 5)], 3, new SeededDraws(5)));
    }

    [Fact] // SciPy BFGS, no ridge; compare to 1e-5
    public void Best_and_worst_have_the_scores_and_utilities_of_the_reference()
    {
        var answers = Rows("data-bestworst-synthetic-seed20240614.csv").Select(row => new BestWorstAnswer(
            [.. row.Text("set").Split(' ').Select(d => int.Parse(d, System.Globalization.CultureInfo.InvariantCulture) - 1)], (int)row.Number("best") - 1, (int)row.Number("worst") - 1)).ToList();
        Assert.Equal(50, answers.Count);
        var found = BestWorst.Of(answers, 5, drawn: 0);
        for (var d = 0; d < 5; d++)
        {
            Assert.Equal(Cata("bestworst", $"best_{d + 1}"), found.Best[d]);
            Assert.Equal(Cata("bestworst", $"worst_{d + 1}"), found.Worst[d]);
            Near(Cata("bestworst", $"BW_std_{d + 1}"), found.Scores[d]);
            Within(Cata("bestworst", $"mle_seq_{d + 1}"), found.Utilities![d], 1e-5);
        }
        Near(Cata("bestworst", "negloglik"), -found.LogLikelihood!.Value, 1e-9);
        var drawn = BestWorst.Of(answers, 5);
        Assert.True(drawn.Utilities!.Max() < found.Utilities!.Max());
    }

    [Fact]
    public void A_drink_that_is_always_best_needs_drawing_back()
    {
        List<BestWorstAnswer> answers = [new([0, 1, 2], 0, 2), new([0, 1, 2], 0, 1), new([0, 1, 2], 0, 2)];
        Assert.Null(BestWorst.Of(answers, 3, drawn: 0).Utilities);
        Assert.NotNull(BestWorst.Of(answers, 3).Utilities);
        Assert.Equal(1, BestWorst.Of(answers, 3).Scores[0]);
    }

    [Fact]
    public void A_drink_that_was_never_shown_is_unknown_and_not_average()
    {
        var found = BestWorst.Of([new([0, 1, 2], 0, 2), new([0, 1, 2], 1, 0)], 4);
        Assert.Null(found.Scores[3]);
        Assert.Null(found.Utilities);
    }

    [Fact]
    public void What_is_no_comparison_is_refused()
    {
        Assert.Throws<ArgumentException>(() => BradleyTerry.Of(new double[,] { { 1, 2 }, { 2, 0 } }));
        Assert.Throws<ArgumentOutOfRangeException>(() => BradleyTerry.Of(new double[,] { { 0, -2 }, { 2, 0 } }));
        Assert.Throws<ArgumentException>(() => BradleyTerry.Of(new double[,] { { 0, 2, 0 }, { 1, 0, 0 }, { 0, 0, 0 } }));
        Assert.Throws<ArgumentException>(() => BradleyTerry.Ranges([.. Enumerable.Range(0, 8).Select(t => new PairChoice(t, 0, 1))], 3, new SeededDraws(1)));
        Assert.Throws<ArgumentException>(() => BestWorst.Of([new([0, 1], 0, 0)], 2));
        Assert.Throws<ArgumentException>(() => BestWorst.Of([new([0, 1], 0, 2)], 3));
    }

    // Three drinks: the cell of the row's wins against the column is number 3 row + column.
    private static bool EachCompared(int[] counts) =>
        Enumerable.Range(0, 3).All(drink => Enumerable.Range(0, 9).Any(i => i / 3 != i % 3 && (i / 3 == drink || i % 3 == drink) && counts[i] > 0));

    private static double[,] Wins(string file, string one, string other, string winsOne, string winsOther, string[] names)
    {
        var wins = new double[names.Length, names.Length];
        foreach (var row in Rows(file))
        {
            var (i, j) = (Array.IndexOf(names, row.Text(one)), Array.IndexOf(names, row.Text(other)));
            (wins[i, j], wins[j, i]) = (row.Number(winsOne), row.Number(winsOther));
        }
        return wins;
    }
}
