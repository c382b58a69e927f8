using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using MenuLab.Core.Balance;
using MenuLab.Core.Drafts;
using MenuLab.Core.House;
using MenuLab.Core.Iterations;
using MenuLab.Core.Pantry;
using MenuLab.Core.Solutions;
using MenuLab.TestKit.Balance;

namespace MenuLab.Core.Tests.Iterations;

public class IterationTests
{
    // sha256sum of "engine 1", a line feed and the file; written down, not computed here.
    private const string FixtureHash = "5e71f19918f0a18f56cd08089264bb7fbc88fda36fdef38a458300f6e70084c5";

    [Fact]
    public void The_fixture_of_format_1_keeps_its_hash_and_reads_back_to_the_same_text()
    {
        var fixture = Fixture("snapshot-format-1.json");
        Assert.Equal(FixtureHash, Iteration.HashOf(fixture, 1).Hex);
        Assert.Equal(Encoding.UTF8.GetString(fixture), Encoding.UTF8.GetString(SnapshotText.Write(SnapshotText.Read(fixture))));
    }

    [Fact]
    public void The_fixture_of_format_1_says_what_was_typed_and_what_was_understood()
    {
        var snapshot = SnapshotText.Read(Fixture("snapshot-format-1.json"));
        Assert.Equal("Harbour fog № 2", snapshot.Name);
        Assert.Equal(["45 toasted barley spirit", "¾ oz quince", "15-20 verjus", "top soda"], snapshot.Lines.Select(l => l.Line.Text));
        Assert.Equal(["5 of Mira's smoke"], snapshot.KeptAsTyped);
        Assert.Equal(5, snapshot.UncountedMillilitres);
        var verjus = snapshot.Lines[2];
        Assert.Equal((15, 17.5, 20, "fine-strained"), (verjus.Line.AmountLow, verjus.Line.Amount, verjus.Line.AmountHigh, verjus.Line.Treatment));
        Assert.Null(verjus.PricePerGram);
        Assert.True(double.IsNaN(snapshot.Lines[3].Line.Grams) && snapshot.Lines[3].Line.IsTopUp);
        Assert.Equal(["An ounce is 30 mL in this house."], snapshot.Lines[1].Line.Assumptions);
        Assert.Equal(Made.Shaken, snapshot.Models.Method);
        Assert.Equal(Made.Highball, snapshot.Models.Glass);
        Assert.Equal(1, snapshot.Measures);
    }

    [Fact]
    public void The_balance_stored_with_format_1_is_computed_again_from_it_within_1e_9()
    {
        var snapshot = SnapshotText.Read(Fixture("snapshot-format-1.json"));
        var stored = BalanceText.Read(Fixture("balance-format-1.json"));
        AssertSame(stored, snapshot.Recompute(Find, HarbourDrink.Measures), relative: 1e-9);
    }

    [Fact]
    public void A_saved_iteration_gives_its_snapshot_back_and_recomputing_it_gives_the_stored_balance()
    {
        var saved = Save();
        Assert.Equal(SnapshotText.Write(HarbourDrink.Snapshot()), SnapshotText.Write(saved.Body.Snapshot()));
        AssertSame(saved.Body.Balance(), saved.Body.Snapshot().Recompute(HarbourDrink.Find, HarbourDrink.Measures), relative: 1e-9);
        Assert.Equal(saved.Iteration.Hash, Iteration.HashOf(saved.Body.Inputs(), saved.Iteration.Stamp.Engine));
    }

    [Fact]
    public void A_balance_reads_back_to_the_last_bit_shares_and_unknowns_included()
    {
        var balance = HarbourDrink.Balance();
        Assert.NotNull(balance.Served);
        Assert.Equal(AllergenState.Unknown, balance.Allergens[Allergen.Sulphites]);
        AssertSame(balance, BalanceText.Read(BalanceText.Write(balance)), relative: 0);
    }

    [Fact]
    public void A_drink_without_a_method_keeps_why_it_has_no_served_figures()
    {
        var snapshot = HarbourDrink.Snapshot() with { Models = Made.NoBuild };
        var again = BalanceText.Read(BalanceText.Write(snapshot.Recompute(HarbourDrink.Find, HarbourDrink.Measures)));
        Assert.Null(again.Served);
        Assert.Equal("The text names no method, so ice and dilution are not known.", again.ServedMissingBecause);
    }

    [Fact]
    public void The_hash_covers_every_input_and_the_engine_and_no_computed_figure()
    {
        var snapshot = HarbourDrink.Snapshot();
        var hash = Hash(snapshot, 1);
        Assert.Equal(hash, Hash(HarbourDrink.Snapshot(), 1));
        Snapshot[] others =
        [
            snapshot with { Name = "Harbour fog" },
            snapshot with { Style = null },
            snapshot with { Measures = 2 },
            snapshot with { UncountedMillilitres = 6 },
            snapshot with { KeptAsTyped = [] },
            snapshot with { Currency = "NOK" },
            snapshot with { Build = snapshot.Build with { Steps = ["Shake."] } },
            snapshot with { Models = snapshot.Models with { Glass = snapshot.Models.Glass! with { WashLineMillilitres = 301 } } },
            snapshot with { Lines = [.. snapshot.Lines.Reverse()] },
            WithFirst(l => l with { PricePerGram = null }),
            WithFirst(l => l with { IngredientName = "Spirit" }),
            WithFirst(l => l with { Composition = snapshot.Lines[1].Composition }),
            WithFirst(l => l with { Line = l.Line with { Grams = Math.BitIncrement(l.Line.Grams) } }),
        ];
        Assert.Equal(others.Length + 2, others.Select(o => Hash(o, 1)).Append(hash).Append(Hash(snapshot, 2)).Distinct().Count());

        Snapshot WithFirst(Func<SnapshotLine, SnapshotLine> change) => snapshot with { Lines = [change(snapshot.Lines[0]), .. snapshot.Lines.Skip(1)] };

        static ContentHash Hash(Snapshot of, int engine) => Iteration.HashOf(SnapshotText.Write(of), engine);
    }

    [Fact]
    public void The_text_begins_with_its_format_and_a_newer_one_is_refused_by_name()
    {
        Assert.StartsWith("{\"format\":1,", Encoding.UTF8.GetString(SnapshotText.Write(HarbourDrink.Snapshot())), StringComparison.Ordinal);
        var newer = Assert.Throws<JsonException>(() => SnapshotText.Read("{\"format\":2,\"name\":\"x\"}"u8));
        Assert.Contains("format 2", newer.Message, StringComparison.Ordinal);
        Assert.Throws<JsonException>(() => SnapshotText.Read("{\"name\":\"x\",\"format\":1}"u8));
        Assert.Throws<JsonException>(() => SnapshotText.Read("[]"u8));
    }

    [Fact]
    public void A_balance_with_a_metric_that_this_version_lacks_is_read_and_a_missing_metric_is_unknown()
    {
        var balance = BalanceText.Read(
            """{"format":1,"lines":1,"mixed":{"abv_percent":[10,9,11,0,0],"haze":[1,1,1,0,0]},"served_missing_because":"","allergens":[],"allergens_unknown":[]}"""u8);
        Assert.Equal((10, 9, 11), (balance.Mixed[Metric.Abv].Value, balance.Mixed[Metric.Abv].Low, balance.Mixed[Metric.Abv].High));
        Assert.Equal(Core.Quantities.Certainty.Unknown, balance.Mixed[Metric.Sugar].Certainty);
        Assert.True(double.IsNaN(balance.Share(0, Metric.Abv)));
    }

    [Fact]
    public void A_reason_is_one_line_of_500_characters_at_most_and_may_be_missing()
    {
        Assert.True(Try("").IsOk);
        Assert.True(Try(new string('r', 500)).IsOk);
        Assert.Equal("Reason", Assert.Single(Try(new string('r', 501)).Problems).Field);
        Assert.False(Try("less\nacid").IsOk);
    }

    [Fact]
    public void The_figures_of_lists_are_those_of_the_drink_as_served()
    {
        var saved = Save();
        var served = saved.Body.Balance().Served!;
        Assert.Equal(served[Metric.Abv].Value, saved.Iteration.Figures.Abv);
        Assert.Equal(served[Metric.Ph].Value, saved.Iteration.Figures.Ph);
        Assert.Equal(served[Metric.Volume].Value, saved.Iteration.Figures.Volume);
        Assert.InRange(saved.Iteration.Figures.Unknown!.Value, 0.1, 10);
    }

    [Fact]
    public void A_composition_reads_back_to_the_last_bit_and_under_the_same_hash()
    {
        foreach (var composition in HarbourDrink.Pantry.All.Select(i => i.Composition).Append(Made.TableLemon).Append(Made.WorkedLime))
        {
            var again = CompositionText.Read(CompositionText.Write(composition));
            Assert.Equal(composition.PerGram, again.PerGram);
            Assert.Equal(composition.Known, again.Known);
            Assert.Equal(composition.GramsPerMillilitre, again.GramsPerMillilitre);
            Assert.Equal((composition.Allergens, composition.Caveats, composition.SugarAcidCorrelation), (again.Allergens, again.Caveats, again.SugarAcidCorrelation));
            Assert.Equal(composition.Spreads.Length, again.Spreads.Length);
            for (var i = 0; i < composition.Spreads.Length; i++)
            {
                Assert.Equal(composition.Spreads[i].PerGram, again.Spreads[i].PerGram);
                Assert.Equal((composition.Spreads[i].Source, composition.Spreads[i].Relative), (again.Spreads[i].Source, again.Spreads[i].Relative));
            }
            Assert.Equal(CompositionText.Hash(composition), CompositionText.Hash(again));
        }
    }

    [Fact]
    public void The_fixture_of_compositions_has_the_hashes_that_the_snapshot_names_and_writes_back_to_the_same_text()
    {
        var named = SnapshotText.Read(Fixture("snapshot-format-1.json")).Lines.Select(l => l.Composition.Hex).Order();
        Assert.Equal(named, Compositions().Select(c => ContentHash.Of(c).Hex).Order());
        Assert.All(Compositions(), c => Assert.Equal(Encoding.UTF8.GetString(c), Encoding.UTF8.GetString(CompositionText.Write(CompositionText.Read(c)))));
    }

    [Fact]
    public void A_component_known_to_be_none_and_one_that_nobody_knows_have_different_hashes()
    {
        var known = Made.Of(Made.AllBut(0), [], (Component.Sucrose, 0.5));
        var unknown = Made.Of(Made.AllBut(Component.Citric.Bit()), [], (Component.Sucrose, 0.5));
        Assert.NotEqual(CompositionText.Hash(known), CompositionText.Hash(unknown));
    }

    [Fact]
    public void A_composition_of_a_newer_version_is_refused_with_the_name_of_what_is_new()
    {
        var newer = Encoding.UTF8.GetString(CompositionText.Write(Made.Syrup)).Replace("\"sucrose\"", "\"allulose\"", StringComparison.Ordinal);
        Assert.Contains("allulose", Assert.Throws<JsonException>(() => CompositionText.Read(Encoding.UTF8.GetBytes(newer))).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Packing_keeps_every_byte_and_says_how_in_the_first()
    {
        byte[][] contents = [[], [7], Encoding.UTF8.GetBytes(new string('a', 100_000)), RandomNumberGenerator.GetBytes(5000), BalanceText.Write(HarbourDrink.Balance())];
        Assert.All(contents, c => Assert.Equal(c, Packed.Unpack(Packed.Pack(c))));
        Assert.Equal([1, 0, 0], [Packed.Pack(contents[2])[0], Packed.Pack(contents[3])[0], Packed.Pack(contents[0])[0]]);
        Assert.Throws<InvalidDataException>(() => Packed.Unpack([]));
        Assert.Throws<InvalidDataException>(() => Packed.Unpack([9, 1, 2]));
        Assert.Throws<InvalidDataException>(() => Packed.Unpack([.. Packed.Pack(contents[4]).Take(40)]));
    }

    [Fact]
    public void A_hash_that_was_never_set_refuses_to_be_read()
    {
        Assert.Throws<InvalidOperationException>(() => default(ContentHash).Hex);
        Assert.Throws<FormatException>(() => ContentHash.FromHex("12"));
    }

    private static SavedIteration Save() => Try("softer acid").Value;

    private static Result<SavedIteration> Try(string reason) =>
        Iteration.Save(IterationId.New(), new DraftId(Guid.Empty), 1, null, reason, PersonId.New(), HarbourDrink.Noon, 7, HarbourDrink.Snapshot(), HarbourDrink.Balance(), HarbourDrink.Stamp);

    private static byte[][] Compositions() => [.. File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "Iterations", "compositions-format-1.txt")).Select(Encoding.UTF8.GetBytes)];

    private static Composition Find(ContentHash hash) => CompositionText.Read(Compositions().Single(c => ContentHash.Of(c) == hash));

    private static byte[] Fixture(string name) => Encoding.UTF8.GetBytes(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Iterations", name)).TrimEnd('\n'));

    private static void AssertSame(DrinkBalance expected, DrinkBalance actual, double relative)
    {
        Assert.Equal(expected.Lines, actual.Lines);
        Assert.Equal(expected.Allergens, actual.Allergens);
        Assert.Equal(expected.ServedMissingBecause, actual.ServedMissingBecause);
        AssertClose(expected.TopUpGrams, actual.TopUpGrams, relative, "top-up");
        foreach (var metric in Metrics.All)
        {
            foreach (var (name, left, right) in new[] { ("mixed", expected.Mixed, actual.Mixed), ("served", expected.Served!, actual.Served!) })
            {
                var (a, b) = (left[metric.Metric], right[metric.Metric]);
                AssertClose(a.Value, b.Value, relative, $"{name} {metric.Key}");
                AssertClose(a.Low, b.Low, relative, $"{name} {metric.Key} low");
                AssertClose(a.High, b.High, relative, $"{name} {metric.Key} high");
                AssertClose(a.UnknownPercent, b.UnknownPercent, relative, $"{name} {metric.Key} unknown");
                Assert.Equal((a.Unit, a.Certainty), (b.Unit, b.Certainty));
                Assert.Equal(left.Caveats(metric.Metric), right.Caveats(metric.Metric));
            }
            for (var line = 0; line < expected.Lines; line++)
            {
                AssertClose(expected.Share(line, metric.Metric), actual.Share(line, metric.Metric), relative, $"share {line} of {metric.Key}");
            }
        }
    }

    private static void AssertClose(double expected, double actual, double relative, string what) =>
        Assert.True(
            double.IsNaN(expected) ? double.IsNaN(actual) : Math.Abs(actual - expected) <= relative * Math.Max(1, Math.Abs(expected)), $"{what}: {expected:R} became {actual:R}.");
}
