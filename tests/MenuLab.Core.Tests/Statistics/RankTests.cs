using CsCheck;
using MenuLab.Core.Statistics;
using static MenuLab.Core.Tests.Statistics.StatisticsOracle;

namespace MenuLab.Core.Tests.Statistics;

public sealed class RankTests
{
    [Fact] // R friedman.test, and full enumeration
    public void Ratings_with_ties_are_ranked_and_tested_as_by_R()
    {
        const string group = "wine_ratings_friedman";
        var found = Friedman.Of(Tables.WineRatings());
        Near(Anova(group, "Q_ties"), found.Statistic);
        Near(Anova(group, "Q_uncorrected"), found.Uncorrected);
        Near(Anova(group, "p"), found.Approximate, 1e-10);
        Near(Anova(group, "W_kendall"), found.Agreement);
        for (var s = 0; s < 4; s++)
        {
            Near(Anova(group, "ranksum_" + Tables.Wines[s]), found.RankSums[s]);
        }
        Near(Anova(group, "Conover_LSD05"), found.Difference, 1e-10);
        // The oracle took 1.96 for the normal quantile.
        Near(Anova(group, "ISO_LSD05_noties"), found.DifferenceWithoutTies * 1.96 / 1.959963984540054);
        Within(Anova(group, "Nemenyi_HSD05"), found.DifferenceAmongAll, 1e-6);
        Assert.Equal(ChanceSource.Counted, found.Source);
        Near(Cata(group, "p_exact_permutation"), found.ByLuck);
    }

    [Fact]
    public void Three_more_tables_are_tested_as_by_R()
    {
        var means = Friedman.Of(Tables.WineMeans());
        Near(Anova("wine_friedman", "Q"), means.Statistic);
        Near(Anova("wine_friedman", "p"), means.Approximate, 1e-10);

        var macon = Rows("data-macon-ranks.csv");
        var ranks = new double[25, 8];
        for (var s = 0; s < 8; s++)
        {
            for (var t = 0; t < 25; t++)
            {
                ranks[t, s] = macon[s].Number(((char)('a' + t)).ToString());
            }
        }
        var wines = Friedman.Of(ranks);
        Near(Anova("macon_friedman", "Q"), wines.Statistic);
        Near(Anova("macon_friedman", "p"), wines.ByLuck, 1e-10);
        Near(Anova("macon_friedman", "W"), wines.Agreement);
        Near(Anova("macon_friedman", "ranksum_D"), wines.RankSums[3]);
        Assert.Equal(ChanceSource.Approximate, wines.Source);

        var baseball = Rows("data-hollanderwolfe-rounding.csv");
        var times = new double[22, 3];
        for (var t = 0; t < 22; t++)
        {
            (times[t, 0], times[t, 1], times[t, 2]) = (baseball[t].Number("round_out"), baseball[t].Number("narrow"), baseball[t].Number("wide"));
        }
        var rounding = Friedman.Of(times);
        Near(Anova("HW_rounding", "Q"), rounding.Statistic);
        Near(Anova("HW_rounding", "p"), rounding.Approximate, 1e-10);
        Assert.Equal([53, 47, 32], rounding.RankSums);
    }

    [Fact] // ISO 8587:1988, Annex A: 8 assessors, rank sums 17, 31, 32, 23, 17, significant at 5 %; and a teaching handout's totals
    public void Published_rank_sums_give_the_published_statistic()
    {
        // The rows are made up so that they add up to the published sums.
        double[,] annex = { { 2, 4, 5, 3, 1 }, { 2, 3, 5, 4, 1 }, { 2, 3, 5, 4, 1 }, { 3, 5, 4, 1, 2 }, { 2, 3, 4, 1, 5 }, { 1, 3, 4, 5, 2 }, { 1, 5, 2, 3, 4 }, { 4, 5, 3, 2, 1 } };
        var found = Friedman.Of(annex);
        Assert.Equal([17, 31, 32, 23, 17], found.RankSums);
        Near(Cata("iso8587_1988_annexA", "Q"), found.Statistic);
        Near(Cata("iso8587_1988_annexA", "p_chi2"), found.Approximate, 1e-10);
        Near(Cata("iso8587_1988_annexA", "LSD05"), found.DifferenceWithoutTies);
        Assert.True(found.ByLuck < 0.05);

        double[,] colours = { { 1, 2, 3, 4, 6, 5 }, { 1, 2, 3, 4, 5, 6 }, { 1, 2, 3, 4, 5, 6 }, { 1, 2, 3, 4, 5, 6 }, { 1, 2, 3, 4, 5, 6 }, { 1, 2, 3, 4, 5, 6 }, { 1, 2, 3, 4, 5, 6 } };
        var teaching = Friedman.Of(colours);
        Assert.Equal([7, 14, 21, 28, 36, 41], teaching.RankSums);
        Assert.Equal(34.51, teaching.Statistic!.Value, 0.005);
        Near(Cata("teaching_colour_ranking", "Q"), teaching.Statistic);
        Near(Cata("teaching_colour_ranking", "p_chi2"), teaching.Approximate, 1e-10);
        Near(Cata("teaching_colour_ranking", "LSD05"), teaching.DifferenceWithoutTies);
    }

    [Fact] // full enumeration in Python
    public void Counted_chances_and_critical_values_are_those_of_full_enumeration()
    {
        var rows = Rows("friedman-exact-critical.csv");
        Assert.Equal(102, rows.Count);
        foreach (var row in rows)
        {
            var (samples, tasters) = ((int)row.Number("p_samples"), (int)row.Number("j_tasters"));
            var ranks = Untied(tasters, samples);
            var level = row.Number("alpha");
            var about = $"{samples} samples, {tasters} tasters, {level}";
            if (!row.Has("sumsq_ranks_crit"))
            {
                // Even tasters of one mind would not do.
                var most = Enumerable.Range(1, samples).Sum(rank => 4L * tasters * tasters * rank * rank);
                Assert.True(Rearranged.Counted(ranks, most) > level, about);
                continue;
            }
            var squares = (long)row.Number("sumsq_ranks_crit");
            var chance = Rearranged.Counted(ranks, 4 * squares)!.Value;
            Within(row.Number("P_exact"), chance, 6e-11, about);
            Near(row.Number("Q_crit"), 12.0 * squares / (tasters * samples * (samples + 1)) - 3.0 * tasters * (samples + 1), 1e-9, about);
            if (samples * tasters > 30)
            {
                // Going down step by step would take the test too long.
                continue;
            }
            var below = squares;
            double next;
            do
            {
                next = Rearranged.Counted(ranks, 4 * --below)!.Value;
            }
            while (next - chance < 1e-12);
            Assert.True(next > level, about);
        }
    }

    [Fact] // a published one-page table; its one misprint is marked
    public void Published_critical_values_agree_but_for_the_known_misprint()
    {
        var rows = Rows("friedman-published-table.csv");
        Assert.Equal(68, rows.Count);
        var exact = Rows("friedman-exact-critical.csv").ToDictionary(row => (row.Number("p_samples"), row.Number("j_tasters"), row.Number("alpha")));
        foreach (var row in rows.Where(row => row.Text("agree") == "1"))
        {
            var counted = exact[(row.Number("p_samples"), row.Number("j_tasters"), row.Number("alpha"))];
            // Two cells are empty in both: not even one mind would do.
            Assert.Equal(row.Has("published"), counted.Has("Q_crit"));
            if (row.Has("published"))
            {
                Within(row.Number("published"), counted.Number("Q_crit"), 0.005);
            }
        }
        var misprint = Assert.Single(rows, row => row.Text("agree") == "0");
        Assert.Equal((5.0, 8.0, 0.01), (misprint.Number("p_samples"), misprint.Number("j_tasters"), misprint.Number("alpha")));
        Assert.Equal((13.2, 12.3), (misprint.Number("published"), exact[(5, 8, 0.01)].Number("Q_crit")));
    }

    [Fact]
    public void Drawn_chances_lie_within_four_standard_errors_of_counted_ones()
    {
        var ranks = Untied(8, 4);
        foreach (var squares in new[] { 1700L, 1730, 1760, 1800 })
        {
            var counted = Rearranged.Counted(ranks, 4 * squares)!.Value;
            var drawn = Rearranged.Drawn(ranks, 4 * squares);
            Assert.InRange(drawn, counted - 4 * Math.Sqrt(counted * (1 - counted) / Rearranged.Draws) - 1e-4, counted + 4 * Math.Sqrt(counted * (1 - counted) / Rearranged.Draws) + 1e-4);
        }
    }

    [Fact]
    public void A_small_panel_with_many_samples_is_drawn_and_says_so()
    {
        var table = new double[12, 6];
        var draws = new SeededDraws(3);
        for (var t = 0; t < 12; t++)
        {
            for (var s = 0; s < 6; s++)
            {
                table[t, s] = draws.Below(9) + s / 3;
            }
        }
        var found = Friedman.Of(table);
        Assert.Equal(ChanceSource.Drawn, found.Source);
        Assert.Equal(found.ByLuck, Friedman.Of(table).ByLuck);
        Assert.InRange(found.ByLuck!.Value, found.Approximate!.Value / 3, found.Approximate.Value * 3);
    }

    [Fact]
    public void Any_rising_change_of_the_scale_leaves_ranks_and_chance_alone() =>
        Tables.NinePoints.Sample(table =>
        {
            var bent = (double[,])table.Clone();
            for (var t = 0; t < table.GetLength(0); t++)
            {
                for (var s = 0; s < table.GetLength(1); s++)
                {
                    bent[t, s] = Math.Exp(table[t, s]) + t;
                }
            }
            var (before, after) = (Friedman.Of(table), Friedman.Of(bent));
            return before.RankSums.SequenceEqual(after.RankSums) && before.ByLuck == after.ByLuck;
        }, iter: 25);

    [Fact] // coin manual, cotton strength, 3 blocks by 5: L 158, z 2.656
    public void A_foretold_order_is_tested_as_by_R()
    {
        string[] foretold = ["144", "108", "72", "54", "36"];
        var found = Page.Of(Tables.Of(Rows("data-hollanderwolfe-cotton.csv"), "block", "potash", "strength", foretold));
        Near(Anova("HW_cotton_page", "L"), found.L);
        Near(Anova("HW_cotton_page", "z_one_sided"), found.Z);
        Near(Anova("HW_cotton_page", "p_one_sided_normal"), found.Approximate, 1e-10);
    }

    [Fact] // full convolution; the same integers as Page 1963 (MEMORY)
    public void Critical_values_of_L_are_those_of_the_table()
    {
        var rows = Rows("page-exact-critical.csv");
        Assert.Equal(342, rows.Count);
        foreach (var group in rows.GroupBy(row => ((int)row.Number("p_samples"), (int)row.Number("j_tasters"))))
        {
            var (samples, tasters) = group.Key;
            var chances = Page.Distribution(Untied(tasters, samples));
            // Tail[L] is the chance of L or more; the distribution counts in halves.
            double Tail(int l) => chances.Skip(2 * l).Sum();
            foreach (var row in group)
            {
                var level = row.Number("alpha");
                if (row.Has("L_crit"))
                {
                    var critical = (int)row.Number("L_crit");
                    Within(row.Number("P_exact"), Tail(critical), 6e-11, $"{group.Key} {level}");
                    Assert.True(Tail(critical) <= level);
                    Assert.True(Tail(critical - 1) > level);
                }
                else
                {
                    Assert.True(Tail((chances.Length - 1) / 2) > level);
                }
            }
        }
    }

    [Fact]
    public void Turning_the_foretold_order_round_turns_the_sign() =>
        Tables.NinePoints.Sample(table =>
        {
            var turned = (double[,])table.Clone();
            var last = table.GetLength(1) - 1;
            for (var t = 0; t < table.GetLength(0); t++)
            {
                for (var s = 0; s <= last; s++)
                {
                    turned[t, s] = table[t, last - s];
                }
            }
            var (found, back) = (Page.Of(table), Page.Of(turned));
            return found.Z is null ? back.Z is null : Math.Abs(found.Z.Value + back.Z!.Value) < 1e-9;
        });

    [Fact]
    public void What_cannot_be_ranked_is_refused()
    {
        Assert.Throws<ArgumentException>(() => Friedman.Of(new double[1, 4]));
        Assert.Throws<ArgumentException>(() => Friedman.Of(new[,] { { 1, double.PositiveInfinity }, { 1, 2 } }));
        Assert.Throws<ArgumentException>(() => Page.Of(new double[3, 11]));
        Assert.Throws<ArgumentException>(() => Durbin.Of([new(0, 0, 1), new(0, 1, 2), new(1, 1, 3), new(1, 2, 3), new(2, 1, 3), new(2, 2, 3)]));
    }

    private static int[][] Untied(int tasters, int samples) =>
        [.. Enumerable.Range(0, tasters).Select(_ => Enumerable.Range(1, samples).Select(rank => 2 * rank).ToArray())];
}
