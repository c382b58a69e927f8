using CsCheck;
using MenuLab.Core.House;
using MenuLab.Core.Statistics;
using MenuLab.TestKit.Solutions;
using static MenuLab.Core.Tests.Statistics.StatisticsOracle;

namespace MenuLab.Core.Tests.Statistics;

public sealed class DiscriminationTests
{
    private static readonly Gen<(int Judgements, int Right)> Counts = Gen.Int[1, 100].SelectMany(n => Gen.Int[0, n], (n, x) => (n, x));

    [Fact] // exact binomial, beta quantiles and quadrature, printed to ten decimals
    public void Fifty_outcomes_are_those_of_the_table()
    {
        var rows = Rows("discrimination-outcomes.csv");
        Assert.Equal(50, rows.Count);
        foreach (var row in rows)
        {
            var method = Method(row.Text("method"));
            var (n, x) = ((int)row.Number("n"), (int)row.Number("x"));
            var found = DiscriminationTest.Of(method, x, n);
            var about = $"{method} {x} of {n}";
            Within(row.Number("p_exact_upper"), found.ByLuck, 6e-11, about);
            Within(row.Number("p_mid"), BinomialTest.ByLuckHalfCounted(x, n, method.Guess()), 6e-11, about);
            Check(row, "pc", found.RightShare, "pc", "pc_lo95_clopper", "pc_hi95_clopper", 6e-11);
            Check(row, "pd", found.CanTell, "pd", "pd_lo95", "pd_hi95", 6e-11);
            Within(row.Number("se_pd"), found.CanTellError, 6e-11, about);
            Check(row, "d'", found.DPrime, "dprime", "dprime_lo95", "dprime_hi95", 1e-9);
            if (row.Text("se_dprime") == "nan")
            {
                Assert.Null(found.DPrimeError);
            }
            else
            {
                Within(row.Number("se_dprime"), found.DPrimeError, 1e-9, about);
            }
        }
    }

    [Fact] // quadrature, 12 decimals; the decision rules simulated agree within 4e-4
    public void The_share_right_follows_the_size_of_the_difference_as_in_the_table()
    {
        var rows = Rows("psychometric.csv");
        Assert.Equal(255, rows.Count);
        foreach (var row in rows)
        {
            var method = Method(row.Text("method"));
            var d = row.Number("dprime");
            var right = Psychometric.Right(method, d);
            var slope = Psychometric.Slope(method, d);
            Within(row.Number("pc"), right, 1e-11, $"{method} {d}");
            Within(row.Number("dpc_ddprime"), slope, 1e-11, $"{method} {d}");
            if (row.Has("B"))
            {
                Near(row.Number("B"), right * (1 - right) / (slope * slope), 1e-7, $"{method} {d}");
            }
        }
    }

    [Fact]
    public void A_share_gives_back_the_difference_it_came_from() =>
        Gen.Select(Gen.Enum<DiscriminationMethod>(), Gen.Double[0.2, 5]).Sample((method, d) =>
            Math.Abs(Psychometric.DPrime(method, Psychometric.Right(method, d)) - d) < 1e-8, iter: 100);

    [Fact] // FAO document V7180E, Appendix A
    public void The_fewest_right_of_a_triangle_are_those_of_the_FAO_table()
    {
        var rows = Rows("min-correct-fao-triangle.csv");
        Assert.Equal(44, rows.Count);
        foreach (var row in rows)
        {
            foreach (var level in new[] { "0.1", "0.05", "0.01", "0.001" })
            {
                var printed = row.Text("alpha_" + level);
                int? expected = printed == "-" ? null : (int)row.Number("alpha_" + level);
                Assert.Equal(expected, BinomialTest.FewestRight((int)row.Number("n"), 1.0 / 3, double.Parse(level, System.Globalization.CultureInfo.InvariantCulture)));
            }
        }
    }

    [Fact]
    public void The_fewest_right_are_those_of_the_exact_table()
    {
        var rows = Rows("min-correct.csv");
        Assert.Equal(294, rows.Count);
        foreach (var row in rows)
        {
            var guess = row.Text("family").StartsWith("triangle", StringComparison.Ordinal) ? 1.0 / 3 : 0.5;
            foreach (var level in new[] { "0.2", "0.1", "0.05", "0.01", "0.001" })
            {
                var column = "alpha_" + level;
                int? expected = row.Has(column) ? (int)row.Number(column) : null;
                var one = double.Parse(level, System.Globalization.CultureInfo.InvariantCulture) / row.Number("sided");
                Assert.Equal(expected, BinomialTest.FewestRight((int)row.Number("n"), guess, one));
            }
        }
    }

    [Fact]
    public void The_most_right_for_likeness_are_those_of_the_exact_table()
    {
        var rows = Rows("similarity-max-correct.csv");
        Assert.Equal(1464, rows.Count);
        foreach (var row in rows)
        {
            var method = row.Text("family").StartsWith("triangle", StringComparison.Ordinal) ? DiscriminationMethod.Triangle : DiscriminationMethod.DuoTrio;
            var n = (int)row.Number("n");
            int? expected = row.Has("max_correct") ? (int)row.Number("max_correct") : null;
            var found = Likeness.Of(method, 0, n, row.Number("pd"), row.Number("beta"));
            Assert.Equal(expected, found.MostRight);
            Assert.Equal(row.Text("max_at_least_chance") == "1", found.Reachable);
        }
    }

    [Fact]
    public void The_judgements_for_a_share_who_can_tell_are_those_of_the_table()
    {
        var rows = Rows("required-n-pd.csv");
        Assert.Equal(96, rows.Count);
        foreach (var row in rows)
        {
            var guess = row.Text("family").EndsWith('3') ? 1.0 / 3 : 0.5;
            var right = guess + row.Number("pd") * (1 - guess);
            var found = PanelSize.Required(guess, right, 1 - row.Number("beta"), row.Number("alpha"));
            Assert.Equal(new Judgements((int)row.Number("n_first"), (int)row.Number("n_stable")), found);
        }
    }

    [Fact]
    public void The_judgements_and_the_power_for_a_size_of_difference_are_those_of_the_table()
    {
        var rows = Rows("required-n-dprime.csv");
        Assert.Equal(35, rows.Count);
        foreach (var row in rows)
        {
            var method = Method(row.Text("method"));
            var d = row.Number("dprime");
            var right = Psychometric.Right(method, d);
            foreach (var beta in new[] { "20", "10" })
            {
                var found = PanelSize.Required(method.Guess(), right, 1 - double.Parse(beta, System.Globalization.CultureInfo.InvariantCulture) / 100);
                if (row.Has("n_first_b" + beta))
                {
                    Assert.Equal(new Judgements((int)row.Number("n_first_b" + beta), (int)row.Number("n_stable_b" + beta)), found);
                }
                else
                {
                    // One cell is empty: the table was not carried on past 841.
                    Assert.True(found!.Value.Stable > 841);
                }
            }
            foreach (var n in new[] { 6, 8, 10, 12, 18, 24, 36 })
            {
                Within(row.Number($"power_n{n}"), DiscriminationTest.Power(method, n, d), 6e-9, $"{method} {d} n {n}");
            }
        }
    }

    [Fact] // at a level of one half a single right answer of three choices will do, and so will every larger panel's count
    public void One_judgement_may_be_enough_from_the_first_on() =>
        Assert.Equal(new Judgements(1, 1), PanelSize.Required(1.0 / 3, 0.9, 0.8, 0.5));

    [Fact]
    public void The_fewest_right_are_the_fewest_at_any_level() =>
        Gen.Select(Gen.Int[1, 40], Gen.Double[0.05, 0.95], Gen.Double[0.01, 0.99]).Sample((n, guess, level) =>
            BinomialTest.FewestRight(n, guess, level) is { } fewest
                ? BinomialTest.ByLuck(fewest, n, guess) <= level && (fewest == 0 || BinomialTest.ByLuck(fewest - 1, n, guess) > level)
                : BinomialTest.ByLuck(n, n, guess) > level);

    [Fact]
    public void Luck_never_gets_likelier_when_one_more_answer_is_right() =>
        Counts.Where(c => c.Right < c.Judgements).Sample(c =>
            BinomialTest.ByLuck(c.Right + 1, c.Judgements, 1.0 / 3) <= BinomialTest.ByLuck(c.Right, c.Judgements, 1.0 / 3));

    [Fact]
    public void The_limits_hold_the_share_that_was_seen() =>
        Counts.Sample(c =>
        {
            var (low, high) = BinomialTest.Limits(c.Right, c.Judgements);
            var share = (double)c.Right / c.Judgements;
            return low <= share && share <= high && low >= 0 && high <= 1;
        });

    [Fact]
    public void A_likeness_that_holds_bounds_the_share_who_can_tell() =>
        Counts.Where(c => c.Judgements >= 6).Sample(c =>
        {
            var found = Likeness.Of(DiscriminationMethod.Triangle, c.Right, c.Judgements, 0.4, 0.1);
            return (c.Right <= found.MostRight) == (found.CanTellAtMost <= 0.4 + 1e-12);
        });

    [Fact] // reference, 4.4: by luck one in eight has three of three in about a quarter of tastings
    public void Three_of_three_by_one_taster_of_eight_is_often_luck()
    {
        var found = RepeatedJudgements.Of([3, 1, 0, 2, 1, 1, 0, 2], 3, 1.0 / 3);
        Assert.Equal(0.26060, found.SomebodyAllRightByLuck, 5e-6);
        Assert.Equal(10, found.Right);
        Assert.Equal(24, found.Judgements);
        Assert.Equal(BinomialTest.ByLuck(10, 24, 1.0 / 3), found.ByLuck);
        // Shares 1, 1/3, 0, 2/3, 1/3, 1/3, 0, 2/3: variance 5/42 by hand, over eight tasters.
        Assert.Equal(Math.Sqrt(5.0 / 42 / 8), found.RightShareError!.Value, 1e-12);
        Assert.Null(RepeatedJudgements.Of([2], 3, 0.5).RightShareError);
    }

    [Fact]
    public void A_preference_counts_both_ways_and_leaves_out_who_has_none()
    {
        var found = Preference.Of(10, 2, 3);
        Assert.Equal(2 * (1 + 12 + 66) / 4096.0, found.ByLuck, 1e-12);
        Assert.Equal(found.ByLuck, Preference.Of(2, 10, 0).ByLuck);
        Assert.Equal(1, Preference.Of(5, 5, 0).ByLuck);
        Assert.Null(Preference.Of(0, 0, 4).Share);
    }

    [Theory]
    [InlineData(9, 3, 0, VerdictKind.TooFewToSay, "9 of 12 preferred B. With 12 answers it takes 10 to rule out luck.")]
    [InlineData(10, 2, 1, VerdictKind.Different, "10 of 12 preferred B. 1 had no preference. The chance of so uneven a split by luck alone is 4 %.")]
    [InlineData(2, 1, 0, VerdictKind.ScoresOnly, "2 preferred B, 1 preferred A. Too few answers to go beyond counting.")]
    [InlineData(3, 2, 0, VerdictKind.TooFewToSay, "3 of 5 preferred B. With 5 answers even all of them could be luck.")]
    public void A_preference_is_told_in_plain_words(int forB, int forA, int without, VerdictKind kind, string sentence) =>
        Assert.Equal(new Verdict(kind, sentence), Preference.Verdict(Preference.Of(forB, forA, without), "B", "A", HouseFormat.Plain));

    [Fact] // reference, 4.8
    public void A_difference_that_was_told_apart_is_said_with_its_size()
    {
        var verdict = DiscriminationTest.Verdict(DiscriminationTest.Of(DiscriminationMethod.Triangle, 9, 12), HouseFormat.Plain);
        Assert.Equal(VerdictKind.Different, verdict.Kind);
        Assert.Equal("9 of 12 answers were right; guessing gives 4. The chance of that by guessing alone is 0.4 %. About 6 in 10 tasters (1 to 9 in 10) can really tell.", verdict.Sentence);
    }

    [Fact] // reference, 4.8: "with 12 tasters even a noticeable difference would be missed about 4 times in 5"
    public void What_was_not_told_apart_is_never_called_the_same()
    {
        var verdict = DiscriminationTest.Verdict(DiscriminationTest.Of(DiscriminationMethod.Triangle, 5, 12), HouseFormat.Plain);
        Assert.Equal(VerdictKind.TooFewToSay, verdict.Kind);
        Assert.Equal("5 of 12 answers were right; guessing gives 4. With 12 answers a difference that tasters notice side by side would be missed about 8 times in 10. Too few answers to say that they are the same.", verdict.Sentence);
    }

    [Fact] // reference, 4.7: 12 judgements, risk 5 %, 40 % who can tell: 3 is below the 4 of guessing
    public void A_panel_that_cannot_show_likeness_is_told_so()
    {
        var small = Likeness.Of(DiscriminationMethod.Triangle, 2, 12, 0.4, 0.05);
        Assert.Equal(3, small.MostRight);
        Assert.False(small.Alike);
        Assert.Equal(VerdictKind.TooFewToSay, Likeness.Verdict(small, 0.4, HouseFormat.Plain).Kind);

        var large = Likeness.Of(DiscriminationMethod.Triangle, 12, 36, 0.3, 0.05);
        Assert.True(large.Alike);
        Assert.Equal(VerdictKind.CloseEnough, Likeness.Verdict(large, 0.3, HouseFormat.Plain).Kind);
        Assert.Equal(VerdictKind.TooFewToSay, Likeness.Verdict(Likeness.Of(DiscriminationMethod.Triangle, 14, 36, 0.3, 0.05), 0.3, HouseFormat.Plain).Kind);
    }

    [Fact]
    public void A_blunt_method_with_few_judgements_draws_a_warning()
    {
        Assert.NotNull(DiscriminationMethods.Warning(DiscriminationMethod.Triangle, 23));
        Assert.NotNull(DiscriminationMethods.Warning(DiscriminationMethod.DuoTrio, 12));
        Assert.Null(DiscriminationMethods.Warning(DiscriminationMethod.Triangle, 24));
        Assert.Null(DiscriminationMethods.Warning(DiscriminationMethod.Tetrad, 8));
        Assert.Equal(DiscriminationMethod.Tetrad, DiscriminationMethods.ForSmallPanel(propertyKnown: false));
        Assert.Equal(DiscriminationMethod.PairedComparison, DiscriminationMethods.ForSmallPanel(propertyKnown: true));
    }

    [Fact]
    public void What_lies_outside_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => DiscriminationTest.Of(DiscriminationMethod.Triangle, 5, 4));
        Assert.Throws<ArgumentOutOfRangeException>(() => DiscriminationTest.Of(DiscriminationMethod.Triangle, -1, 4));
        Assert.Throws<ArgumentOutOfRangeException>(() => DiscriminationTest.Of(DiscriminationMethod.Triangle, 0, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => BinomialTest.FewestRight(10, 0, 0.05));
        Assert.Throws<ArgumentOutOfRangeException>(() => BinomialTest.FewestRight(10, 0.5, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => PanelSize.Required(0.5, 0.5, 0.8));
        Assert.Throws<ArgumentOutOfRangeException>(() => Psychometric.Right(DiscriminationMethod.Tetrad, double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => Likeness.MostRight(10, 0.5, 0, 0.05));
        Assert.Throws<ArgumentException>(() => RepeatedJudgements.Of([], 3, 0.5));
        Assert.Throws<ArgumentOutOfRangeException>(() => Preference.Of(-1, 3, 0));
    }

    private static void Check(OracleRow row, string about, Ranged found, string value, string low, string high, double tolerance)
    {
        Within(Number(row, value), found.Value, tolerance, about);
        Within(Number(row, low), found.Low, tolerance, about);
        Within(Number(row, high), found.High, tolerance, about);
    }

    private static double Number(OracleRow row, string column) => row.Text(column) == "inf" ? double.PositiveInfinity : row.Number(column);

    private static DiscriminationMethod Method(string name) => name switch
    {
        "triangle" => DiscriminationMethod.Triangle,
        "tetrad" => DiscriminationMethod.Tetrad,
        "3afc" => DiscriminationMethod.ThreeGlasses,
        "2afc" => DiscriminationMethod.PairedComparison,
        "duotrio" => DiscriminationMethod.DuoTrio,
        _ => throw new ArgumentException(name, nameof(name)),
    };
}
