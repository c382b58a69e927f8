using MenuLab.Core.House;
using MenuLab.Core.Statistics;
using static MenuLab.Core.Tests.Statistics.StatisticsOracle;

namespace MenuLab.Core.Tests.Statistics;

public sealed class JustRightTests
{
    private static List<JustRightAnswer> Answers(string column) =>
        [.. Rows("data-jar-synthetic-seed20240611.csv").Select(row => new JustRightAnswer((int)row.Number("taster") - 1, (int)row.Number(column), row.Number("liking")))];

    [Theory] // R 4.2.2: t.test and the formulas of the reference, 3
    [InlineData("sweet_jar", "jar_sweet")]
    [InlineData("acid_jar", "jar_acid")]
    public void Drops_and_tests_are_those_of_R(string column, string group)
    {
        var found = JustRight.Of(Answers(column));
        Check(found.TooLittle, group + "_low");
        Check(found.TooMuch, group + "_high");
        Near(Panel(group, "overall_penalty"), found.OverallDrop);
        Near(Panel(group + "_low", "n_jar"), found.RightCount);
        Near(Panel(group + "_low", "mean_jar"), found.RightMean);

        static void Check(JustRightSide side, string name)
        {
            Near(Panel(name, "n"), side.Count);
            Near(Panel(name, "pct"), 100 * side.Share);
            Near(Panel(name, "mean"), side.Mean);
            Near(Panel(name, "drop"), side.Drop);
            Near(Panel(name, "weighted_penalty"), side.Weighted);
            Near(Panel(name, "welch_t"), side.T);
            Near(Panel(name, "welch_df"), side.Degrees);
            Near(Panel(name, "welch_p_two"), side.ByLuck, 1e-10);
            Near(Panel(name, "welch_lo"), side.Limits!.Value.Low, 1e-10);
            Near(Panel(name, "welch_hi"), side.Limits!.Value.High, 1e-10);
            Near(Panel(name, "hedges_g"), side.EffectSize);
        }
    }

    [Fact] // R: lm(liking ~ lo + hi + al + ah + factor(taster))
    public void Properties_worked_out_together_are_those_of_R()
    {
        var rows = Rows("data-jar-synthetic-seed20240611.csv");
        var found = JustRight.Together([.. rows.Select(row => (int)row.Number("taster") - 1)],
            [[.. rows.Select(row => (int)row.Number("sweet_jar"))], [.. rows.Select(row => (int)row.Number("acid_jar"))]], [.. rows.Select(row => row.Number("liking"))]);
        Check("lo", found[0].TooLittle);
        Check("hi", found[0].TooMuch);
        Check("al", found[1].TooLittle);
        Check("ah", found[1].TooMuch);

        static void Check(string name, Coefficient? coefficient)
        {
            Near(Panel("jar_multi_ols_tasterfixed", name + ".coef"), coefficient!.Value.Value, 1e-10);
            Near(Panel("jar_multi_ols_tasterfixed", name + ".se"), coefficient.Value.Error, 1e-10);
            Near(Panel("jar_multi_ols_tasterfixed", name + ".p"), coefficient.Value.ByLuck, 1e-10);
        }
    }

    [Fact] // R, 10,000 draws of tasters: about 1.07 to 2.12; twelve seeds of ours moved the limits by 0.03 at most
    public void Drawing_tasters_again_gives_the_limits_of_R_within_what_a_seed_changes()
    {
        var drop = JustRight.DropByTasters(Answers("sweet_jar"), tooMuch: true, new SeededDraws(20240611))!.Value;
        Near(Panel("jar_sweet_high", "drop"), drop.Value);
        Assert.Equal(Cata("jar_sweet_high", "cluster_bootstrap_lo95_approx"), drop.Low, 0.05);
        Assert.Equal(Cata("jar_sweet_high", "cluster_bootstrap_hi95_approx"), drop.High, 0.05);
        Assert.Equal(drop, JustRight.DropByTasters(Answers("sweet_jar"), tooMuch: true, new SeededDraws(20240611)));
        Assert.Null(JustRight.DropByTasters([new(0, 3, 7), new(1, 5, 3)], tooMuch: true, new SeededDraws(1)));
    }

    // Eight tasters: so many said too little, just right, too much, with these likings.
    private static JustRightResult Panel8(int little, double littleLiking, int right, double rightLiking, int much, double muchLiking)
    {
        var answers = new List<JustRightAnswer>();
        void Add(int count, int rating, double liking)
        {
            for (var i = 0; i < count; i++)
            {
                answers.Add(new(answers.Count, rating, liking));
            }
        }
        Add(little, 2, littleLiking);
        Add(right, 3, rightLiking);
        Add(much, 4, muchLiking);
        return JustRight.Of(answers);
    }

    [Theory] // the decision rule of the reference, 3, for 6 to 12 tasters
    [InlineData(0, 0, 5, 7, 3, 5.5, CallOut.TooMuch)]
    [InlineData(3, 6, 5, 7, 0, 0, CallOut.TooLittle)]
    [InlineData(0, 0, 5, 7, 3, 6.2, CallOut.CountsOnly)] // between 0.5 and 1.0
    [InlineData(0, 0, 5, 7, 3, 6.8, CallOut.Forgiven)]
    [InlineData(0, 0, 6, 7, 2, 4, CallOut.CountsOnly)] // a quarter, but two people
    [InlineData(0, 0, 7, 7, 1, 3, CallOut.FewMindStrongly)]
    [InlineData(3, 5, 2, 7, 3, 5, CallOut.ChangeFirst)]
    [InlineData(2, 5, 3, 7, 3, 5, CallOut.Split)]
    public void A_side_is_called_out_by_the_rule_of_small_panels(int little, double littleLiking, int right, double rightLiking, int much, double muchLiking, CallOut expected) =>
        Assert.Equal(expected, JustRight.Called(Panel8(little, littleLiking, right, rightLiking, much, muchLiking)));

    [Fact] // three times 5.4 has a mean that is a rounding off 5.4
    public void Likings_that_do_not_vary_have_no_limits_and_no_chance()
    {
        var side = Panel8(0, 0, 4, 7, 3, 5.4).TooMuch;
        Assert.Equal(1.6, side.Drop!.Value, 1e-12);
        Assert.Null(side.Limits);
        Assert.Null(side.ByLuck);
        Assert.Null(side.EffectSize);
    }

    [Fact]
    public void Five_tasters_call_nothing_out()
    {
        var found = JustRight.Of([new(0, 3, 8), new(1, 3, 8), new(2, 3, 8), new(3, 5, 2), new(4, 5, 2)]);
        Assert.Equal(CallOut.CountsOnly, JustRight.Called(found));
        Assert.Equal("Of 5 answers 0 said not sweet enough, 3 just right, 2 too sweet.", JustRight.Sentence("sweet", found, null, HouseFormat.Plain));
    }

    [Fact] // reference, 3
    public void What_is_called_out_is_said_with_its_cost()
    {
        var found = JustRight.Of(Answers("sweet_jar"));
        // Both sides reach a fifth in the pooled data, so one sample of it is asked.
        Assert.Equal(CallOut.Split, JustRight.Called(found));
        var one = Panel8(0, 0, 4, 7, 4, 5.4);
        Assert.Equal("50 % of the answers said too sweet; those tasters liked it 1.6 points less (range 0.9 to 2.4).",
            JustRight.Sentence("sweet", one, new Ranged(1.6, 0.86, 2.44), HouseFormat.Plain));
    }

    [Fact]
    public void What_is_no_answer_is_refused()
    {
        Assert.Throws<ArgumentException>(() => JustRight.Of([]));
        Assert.Throws<ArgumentException>(() => JustRight.Of([new(0, 6, 5)]));
        Assert.Throws<ArgumentException>(() => JustRight.Of([new(0, 3, double.NaN)]));
        Assert.Throws<ArgumentException>(() => JustRight.Together([0], [[1, 2]], [5]));
    }
}
