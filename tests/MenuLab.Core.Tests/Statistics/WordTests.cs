using CsCheck;
using MenuLab.Core.Statistics;
using static MenuLab.Core.Tests.Statistics.StatisticsOracle;

namespace MenuLab.Core.Tests.Statistics;

/// <summary>Ticked words, the map of words, and free comments.</summary>
public sealed class WordTests
{
    [Theory] // statsmodels 0.13.5 test suite (Conover p. 253; SAS), exact chances by full enumeration
    [InlineData("data-cochran-conover-p253.csv", "cochran_conover_p253", 3)]
    [InlineData("data-cochran-k4-n12.csv", "cochran_k4_n12", 4)]
    [InlineData("data-cochran-sas-drugs.csv", "cochran_sas_drugs", 3)]
    public void Ticks_are_tested_as_in_the_published_examples(string file, string group, int samples)
    {
        var found = Cochran.Of(Ticks(file, samples));
        Near(Cata(group, "Q"), found.Statistic);
        Near(Cata(group, "p_chi2"), found.Approximate, 1e-10);
        Near(Cata(group, "p_exact_permutation"), found.ByLuck, 1e-10);
        Assert.Equal(ChanceSource.Counted, found.Source);
        for (var s = 0; s < samples; s++)
        {
            Assert.Equal(Cata(group, $"col{s + 1}_total"), found.Ticks[s]);
        }
    }

    [Fact]
    public void Pairs_of_ticked_samples_have_the_exact_chances_of_the_reference()
    {
        foreach (var pair in Cochran.Of(Ticks("data-cochran-k4-n12.csv", 4)).Pairs)
        {
            var name = $"c{pair.One + 1}_vs_c{pair.Other + 1}";
            Near(Cata("cochran_k4_n12_mcnemar", name + ".p"), pair.ByLuck);
            Near(Cata("cochran_k4_n12_mcnemar", name + ".p_holm"), pair.ByLuckAmongAll);
        }
    }

    [Fact]
    public void Tasters_who_tick_all_or_nothing_change_no_statistic() =>
        Gen.Select(Gen.Bool.Array[4].Array[2, 8], Gen.Bool).Sample((rows, all) =>
        {
            var (before, after) = (Cochran.Of(Table(rows)), Cochran.Of(Table([.. rows, [all, all, all, all]])));
            return before.Statistic is null ? after.Statistic is null
                : Math.Abs(before.Statistic.Value - after.Statistic!.Value) < 1e-9 && Math.Abs(before.ByLuck!.Value - after.ByLuck!.Value) < 1e-9;
        });

    [Fact]
    public void A_word_that_everybody_ticks_everywhere_says_nothing() =>
        Assert.Null(Cochran.Of(new[,] { { true, true }, { true, true } }).ByLuck);

    [Fact] // FactoMineR 2.7; signs are free
    public void The_map_of_words_is_that_of_R()
    {
        string[] words = ["excellent", "good", "mediocre", "boring"];
        var rows = Rows("data-bordeaux.csv");
        var counts = new int[5, 4];
        for (var s = 0; s < 5; s++)
        {
            for (var w = 0; w < 4; w++)
            {
                counts[s, w] = (int)rows[s].Number(words[w]);
            }
        }
        var map = CorrespondenceMap.Of(counts);
        Assert.Equal(3, map.Inertias.Count);
        for (var k = 0; k < 3; k++)
        {
            Near(Panel("ca_bordeaux", $"eig{k + 1}"), map.Inertias[k], 1e-10);
        }
        for (var k = 0; k < 2; k++)
        {
            for (var s = 0; s < 5; s++)
            {
                Near(Math.Abs(Panel("ca_bordeaux", $"row_{rows[s].Text("wine")}_dim{k + 1}")), Math.Abs(map.Samples[s, k]), 1e-9);
            }
            for (var w = 0; w < 4; w++)
            {
                Near(Math.Abs(Panel("ca_bordeaux", $"col_{words[w]}_dim{k + 1}")), Math.Abs(map.Words[w, k]), 1e-9);
            }
            // The same signs within an axis as R's, all turned or none.
            var turned = Enumerable.Range(0, 5).Select(s => Math.Sign(Panel("ca_bordeaux", $"row_{rows[s].Text("wine")}_dim{k + 1}") * map.Samples[s, k]))
                .Concat(Enumerable.Range(0, 4).Select(w => Math.Sign(Panel("ca_bordeaux", $"col_{words[w]}_dim{k + 1}") * map.Words[w, k])));
            Assert.Single(turned.Distinct());
            // Our rule: the sample furthest out lies on the positive side.
            Assert.True(Enumerable.Range(0, 5).Select(s => map.Samples[s, k]).MaxBy(Math.Abs) > 0);
        }
        for (var s = 0; s < 5; s++)
        {
            Near(Panel("ca_bordeaux", $"row_contrib1_{rows[s].Text("wine")}"), map.SampleContributions[s, 0], 1e-9);
        }
        // The whole inertia times the mentions is the chi-squared of the table.
        Near(Panel("ca_bordeaux", "chisq"), map.Inertias.Sum() * counts.Cast<int>().Sum(), 1e-10);
    }

    [Fact]
    public void The_clouds_of_a_map_lie_about_its_samples_and_the_same_seed_gives_the_same_clouds()
    {
        var draws = new SeededDraws(7);
        var mentions = new bool[10, 3, 4];
        var counts = new int[3, 4];
        for (var t = 0; t < 10; t++)
        {
            for (var s = 0; s < 3; s++)
            {
                for (var w = 0; w < 4; w++)
                {
                    mentions[t, s, w] = draws.Below(10) < (s == w ? 9 : 3);
                    counts[s, w] += mentions[t, s, w] ? 1 : 0;
                }
            }
        }
        var map = CorrespondenceMap.Of(counts);
        var clouds = CorrespondenceMap.Clouds(map, mentions, new SeededDraws(1));
        Assert.Equal(clouds, CorrespondenceMap.Clouds(map, mentions, new SeededDraws(1)));
        for (var s = 0; s < 3; s++)
        {
            var cloud = clouds[s]!.Value;
            Assert.InRange(cloud.X, map.Samples[s, 0] - 2 * Math.Sqrt(cloud.XX), map.Samples[s, 0] + 2 * Math.Sqrt(cloud.XX));
            Assert.True(cloud.XX > 0 && cloud.YY > 0 && cloud.XY * cloud.XY <= cloud.XX * cloud.YY);
        }
    }

    [Fact]
    public void Few_tasters_samples_or_mentions_make_no_map()
    {
        var enough = new[,] { { 10, 5 }, { 5, 10 }, { 8, 8 } };
        Assert.Null(CorrespondenceMap.WhyNot(6, enough));
        Assert.NotNull(CorrespondenceMap.WhyNot(5, enough));
        Assert.NotNull(CorrespondenceMap.WhyNot(6, new[,] { { 20, 5 }, { 5, 20 } }));
        Assert.NotNull(CorrespondenceMap.WhyNot(6, new[,] { { 5, 5 }, { 5, 10 }, { 8, 6 } }));
        Assert.Throws<ArgumentException>(() => CorrespondenceMap.Of(new[,] { { 1, 0 }, { 2, 0 } }));
    }

    private static readonly Dictionary<string, string> House = new()
    {
        ["bitter"] = "bitter", ["sour"] = "sour", ["acid"] = "sour", ["smoky"] = "smoky", ["toasted"] = "toasted", ["sweet"] = "sweet", ["fennel"] = "anise", ["liquorice"] = "anise",
    };

    [Theory]
    [InlineData("Bitter, smoky", "bitter smoky", "")]
    [InlineData("bitterness and SMOKE", "bitter smoky", "")]
    [InlineData("not bitter but sour", "sour", "")]
    [InlineData("no bitterness, very sour", "sour", "")]
    [InlineData("Too sweet!", "sweet", "sweet+")]
    [InlineData("not sweet enough", "", "sweet-")]
    [InlineData("not enough bitterness", "", "bitter-")]
    [InlineData("too little acid", "", "sour-")]
    [InlineData("much too little sweetness, a little too bitter", "bitter", "bitter+ sweet-")]
    [InlineData("liquorise and fennel", "anise", "")]
    [InlineData("far too much acid", "sour", "sour+")]
    public void A_comment_is_read_as_people_mean_it(string text, string mentioned, string hinted)
    {
        var found = CommentWords.Count([new(0, 1, text)], House);
        Assert.Equal(mentioned, string.Join(' ', found.Mentions.Select(m => m.Descriptor).Order(StringComparer.Ordinal)));
        Assert.Equal(hinted, string.Join(' ', found.Hints.Select(h => h.Descriptor + (h.TooMuch ? "+" : "-")).Order(StringComparer.Ordinal)));
        Assert.All(found.Mentions, mention => Assert.Equal((0, 1), (mention.Taster, mention.Sample)));
    }

    [Fact]
    public void A_taster_counts_once_a_sample_and_descriptor_and_what_is_on_no_list_stays_visible()
    {
        var found = CommentWords.Count([new(0, 0, "sour, very sour, acid. Waxy"), new(1, 0, "waxy and nutty"), new(0, 1, "sour")], House);
        Assert.Equal([new Mention(0, 0, "sour"), new Mention(0, 1, "sour")], found.Mentions);
        Assert.Equal(["WAXY", "NUTTY"], found.Unmatched);
    }

    [Fact]
    public void A_descriptor_is_reported_from_three_tasters_or_three_in_ten()
    {
        List<Mention> mentions = [new(0, 0, "sour"), new(1, 0, "sour"), new(2, 1, "sour"), new(0, 0, "sweet"), new(0, 1, "sweet"), new(0, 2, "sweet"), new(0, 0, "smoky"), new(1, 0, "smoky")];
        Assert.Equal(["sour"], CommentWords.Reported(mentions, 12));
        Assert.Equal(["sour", "smoky"], CommentWords.Reported(mentions, 6));
    }

    private static bool[,] Ticks(string file, int samples) =>
        Table([.. Rows(file).Select(row => Enumerable.Range(1, samples).Select(s => row.Text("c" + s) == "1").ToArray())]);

    private static bool[,] Table(bool[][] rows)
    {
        var table = new bool[rows.Length, rows[0].Length];
        for (var t = 0; t < rows.Length; t++)
        {
            for (var s = 0; s < rows[0].Length; s++)
            {
                table[t, s] = rows[t][s];
            }
        }
        return table;
    }
}
