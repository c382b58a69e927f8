using MenuLab.Core;
using MenuLab.Core.Drafts;
using MenuLab.Core.Drafts.Rounds;
using MenuLab.Core.House;
using MenuLab.Core.Iterations;
using MenuLab.Data.Drafts;
using MenuLab.Data.House;
using MenuLab.Data.Iterations;
using MenuLab.Web.Features.Bench;
using MenuLab.Web.Features.Rounds;
using MenuLab.Web.Tests.Features.House;

namespace MenuLab.Web.Tests.Features.Rounds;

public sealed class RoundDeskTests : IAsyncLifetime
{
    private HouseOnDisk _disk = null!;

    private RoundDesk Desk => new(_disk.Current, _disk.Person, new BenchDesk(_disk.Current, _disk.Person), _disk.Clock);

    public async ValueTask InitializeAsync() => _disk = await HouseOnDisk.OpenAsync();

    public ValueTask DisposeAsync() => _disk.DisposeAsync();

    [Fact]
    public async Task A_line_that_all_pours_share_is_one_figure_and_one_that_differs_has_a_cell_per_pour()
    {
        var (_, round) = await StartAsync();
        var view = await OpenAsync(round);
        Assert.Equal("Low Water, round 1", $"{view.DraftName}, round {view.Number}");
        Assert.Equal(["False", "True", "False"], view.Rows.Select(r => r.Differs.ToString()));
        Assert.Equal("45", view.Rows[0].Shared);
        Assert.Equal(["12.5", "15", "17.5"], view.Rows[1].Cells.Select(c => c.Text));
        Assert.Equal([true, false, true], view.Rows[1].Cells.Select(c => c.IsChanged));
        Assert.Equal(PourLetter.D, view.NextLetter);
        Assert.Equal(["sweet", "acid", "strength", "glass", "cost"], view.Figures.Select(f => f.Key));
        Assert.All(view.Figures, f => Assert.Equal(3, f.Cells.Count));
        // More lemon, more acid.
        var acid = view.Figures[1].Cells.Select(c => double.Parse(c.Value, System.Globalization.CultureInfo.InvariantCulture)).ToList();
        Assert.True(acid[0] < acid[1] && acid[1] < acid[2], string.Join(' ', acid));
    }

    [Fact]
    public async Task What_was_poured_stands_in_its_cell_and_moves_its_figures_alone()
    {
        var (_, round) = await StartAsync();
        var before = await OpenAsync(round);
        var lemon = before.Rows[1].Line;
        await SetAsync(round, PourLetter.B, lemon, CellField.Poured, 22.5);
        await SetAsync(round, PourLetter.A, lemon, CellField.Poured, 12.5);
        var after = await OpenAsync(round);
        Assert.Equal(["12.5", "22.5", ""], after.Rows[1].Cells.Select(c => c.PouredText));
        Assert.Equal([false, true, false], after.Rows[1].Cells.Select(c => c.IsPouredOtherwise));
        Assert.Equal(before.Figures[1].Cells[0], after.Figures[1].Cells[0]);
        Assert.NotEqual(before.Figures[1].Cells[1].Value, after.Figures[1].Cells[1].Value);
        Assert.Equal(before.Figures[1].Cells[2], after.Figures[1].Cells[2]);
    }

    [Fact]
    public async Task A_touch_is_made_with_the_line_that_brings_most_and_by_its_smallest_step()
    {
        var (_, round) = await StartAsync();
        var touches = (await OpenAsync(round)).Pours[1].Touches;
        var sour = Assert.Single(touches, t => t is { Axis: TasteAxis.Sour, Wish: Wish.More });
        Assert.Equal(("Lemon juice, fresh 15 → 17.5 mL", 17.5), (sour.Says, sour.Amount));
        Assert.Matches("^it brings [0-9]+ % of the acid$", sour.Why);
        var sweet = Assert.Single(touches, t => t is { Axis: TasteAxis.Sweet, Wish: Wish.Less });
        Assert.StartsWith("Honey syrup", sweet.Says, StringComparison.Ordinal);
        Assert.EndsWith("22.5 → 20 mL", sweet.Says, StringComparison.Ordinal);
        Assert.DoesNotContain(touches, t => t.Axis is TasteAxis.Finish or TasteAxis.Cold or TasteAxis.Watery);
    }

    [Fact]
    public async Task Half_a_drink_says_what_goes_into_the_glass_and_warns_that_it_dilutes_more()
    {
        var (_, round) = await StartAsync(RoundSize.Half, "Shake 12 s, strain into a coupe");
        var view = await OpenAsync(round);
        Assert.Equal(["6.25", "7.5", "8.75"], view.Rows[1].Cells.Select(c => c.Text));
        Assert.Equal("22.5", view.Rows[0].Shared);
        Assert.Contains("half size", view.Told, StringComparison.Ordinal);
        Assert.Contains("A small trial dilutes more", view.SmallTrial, StringComparison.Ordinal);
        Assert.Equal("", (await OpenAsync((await StartAsync()).Round)).SmallTrial);
    }

    [Fact]
    public async Task The_jug_and_the_glasses_come_to_the_same_grams_within_a_tenth()
    {
        var (_, round) = await StartAsync();
        var mix = (await OpenAsync(round)).Mix;
        Assert.Equal(2, mix.Jug.Count);
        var jug = mix.Jug.Sum(p => Grams(p.Grams));
        var glasses = mix.Glasses.Sum(g => Grams(g.FromJug!.Grams));
        Assert.InRange(glasses * 1.05 - jug, -0.2, 0.2);   // the printed figures are rounded to a tenth, three and two of them
        Assert.All(mix.Glasses, g => Assert.Equal("Lemon juice, fresh", Assert.Single(g.Own).Name));
    }

    [Fact]
    public async Task The_winner_becomes_an_iteration_with_its_reason_once_and_the_ladder_tells_both()
    {
        var (draft, round) = await StartAsync();
        await NoteAsync(round, PourLetter.C, new AxisWish(TasteAxis.Sour, Wish.Right), Verdict.Yes);
        Assert.True((await Desk.EndAsync(round, PourLetter.C)).IsOk);
        var view = await OpenAsync(round);
        Assert.Equal("C: Lemon juice, fresh 15 → 17.5 mL; sour right", view.Reason);
        Assert.False(view.BenchIsOther);

        var id = IterationId.New();
        var saved = await Desk.ToIterationAsync(round, PourLetter.C, id);
        Assert.True(saved.IsOk, Problems(saved));
        Assert.Equal($"/drafts/{draft.Value}/iterations/1", saved.Value.Go);
        Assert.Equal(saved.Value.Go, (await Desk.ToIterationAsync(round, PourLetter.C, IterationId.New())).Value.Go);
        await using var db = _disk.House.Read();
        var iteration = Assert.Single(await db.HistoryOf(draft));
        Assert.Equal(view.Reason, iteration.Reason);
        Assert.Equal(17.5, (await db.OpenDraft(draft))!.Lines[1].Amount);

        var rung = Assert.Single(await Desk.RungsAsync(draft));
        Assert.Equal(("Round 1", "C won", view.Reason, "informal, 1 taste", 1), (rung.Name, rung.Outcome, rung.Reason, rung.Tally, rung.Iteration));
    }

    [Fact]
    public async Task The_next_round_shares_the_lines_of_the_pour_it_goes_on_from_and_starting_twice_starts_it_once()
    {
        var (draft, round) = await StartAsync();
        var next = RoundId.New();
        Assert.Equal($"/rounds/{next.Value}", (await Desk.GoOnAsync(round, PourLetter.C, next)).Value.Go);
        await Desk.GoOnAsync(round, PourLetter.C, next);
        var view = await OpenAsync(next);
        Assert.Equal((2, "17.5", false), (view.Number, view.Rows[1].Shared, view.Rows[1].Differs));
        Assert.Contains("from C of round 1", view.Told, StringComparison.Ordinal);
        Assert.Equal(["Round 2", "Round 1"], (await Desk.RungsAsync(draft)).Select(r => r.Name));
        Assert.Equal("went on", (await Desk.RungsAsync(draft))[1].Outcome);
    }

    [Fact]
    public async Task A_round_that_none_wins_ends_and_says_so()
    {
        var (draft, round) = await StartAsync();
        Assert.True((await Desk.EndAsync(round, null)).IsOk);
        Assert.True((await OpenAsync(round)).IsEnded);
        Assert.Equal("none won", Assert.Single(await Desk.RungsAsync(draft)).Outcome);
    }

    [Fact]
    public async Task Whoever_changed_the_bench_meanwhile_is_warned_before_a_winner_replaces_it()
    {
        var (draft, round) = await StartAsync();
        var bench = new BenchSession(new BenchDesk(_disk.Current, _disk.Person), draft);
        await bench.OpenAsync();
        Assert.True(await bench.EnterAsync(Guid.CreateVersion7(), "5 ml verjus"));
        Assert.True((await OpenAsync(round)).BenchIsOther);
    }

    [Fact]
    public async Task The_clock_starts_once_and_tells_when_a_pour_is_tasted_again()
    {
        var (_, round) = await StartAsync();
        Assert.Null((await OpenAsync(round)).Pours[0].PouredAt);
        Assert.True((await Desk.PouredAsync(round)).IsOk);
        var at = _disk.Clock.Now;
        _disk.Clock.Now = at.AddMinutes(6);
        Assert.True((await Desk.PouredAsync(round)).IsOk);
        var pour = (await OpenAsync(round)).Pours[0];
        Assert.Equal(at, pour.PouredAt);
        Assert.Equal([TasteState.Missed, TasteState.Due, TasteState.Later], pour.Tastes.Select(t => t.State));
        await NoteAsync(round, PourLetter.A, new AxisWish(TasteAxis.Watery, Wish.Less), Verdict.Maybe, TasteMoment.Minute5);
        var tasted = (await OpenAsync(round)).Pours[0];
        Assert.Equal(TasteState.Tasted, tasted.Tastes[1].State);
        Assert.Equal([new VerdictCount(TasteMoment.Minute5, 0, 1, 0)], tasted.Plot.Marks);
        Assert.Equal(["5 min: too watery"], tasted.Plot.Wanted);
    }

    [Fact]
    public async Task A_bottle_is_listed_on_the_day_it_is_due_until_it_was_tasted()
    {
        var (_, round) = await StartAsync();
        Assert.True((await Desk.BottleAsync(round, PourLetter.B)).IsOk);
        Assert.Contains("day 0", Assert.Single(await _disk.Drafts.DueTastesAsync()).Says, StringComparison.Ordinal);
        await NoteAsync(round, PourLetter.B, new AxisWish(TasteAxis.Sour, Wish.Right), Verdict.Yes, TasteMoment.Day0);
        Assert.Empty(await _disk.Drafts.DueTastesAsync());
        _disk.Clock.Now = _disk.Clock.Now.AddDays(1);
        Assert.Contains("Low Water, round 1, B: day 1 in the bottle", Assert.Single(await _disk.Drafts.DueTastesAsync()).Says, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Whoever_sits_at_this_machine_is_a_face_only_where_the_house_names_nobody()
    {
        var (_, round) = await StartAsync();
        Assert.Equal(["me"], (await OpenAsync(round)).Faces.Select(f => f.Initials));
        await _disk.House.Writer.Write(async db =>
        {
            db.Add(Person.Of(PersonId.New(), "Maren", "", PersonKind.Staff).Value);
            db.Add(Person.Of(PersonId.New(), "Joss", "JO", PersonKind.Staff).Value);
            return await db.SaveChangesAsync();
        });
        Assert.Equal(["JO", "Ma"], (await OpenAsync(round)).Faces.Select(f => f.Initials));
    }

    private async Task<RoundView> OpenAsync(RoundId id) => (await Desk.OpenAsync(id))!;

    /// <summary>Three across on the lemon juice: 12.5 / 15 / 17.5.</summary>
    private async Task<(DraftId Draft, RoundId Round)> StartAsync(RoundSize size = default, string? build = null)
    {
        var draft = DraftId.New();
        await _disk.House.Drafts.Start(draft, "Low Water", FirstRows.AtThisMachine);
        var bench = new BenchSession(new BenchDesk(_disk.Current, _disk.Person), draft);
        await bench.OpenAsync();
        foreach (var line in new[] { "45 ml black tea, brewed", "15 ml lemon juice", "22.5 ml honey syrup", build }.OfType<string>())
        {
            Assert.True(await bench.EnterAsync(Guid.CreateVersion7(), line), line);
        }
        var lemon = bench.View!.Lines[1];
        var cells = Across.Of(new PlacedLine(lemon.Id, lemon.Content), 15, 2.5, 3, Desk.Steps).Value;
        var round = RoundId.New();
        var started = await Desk.StartAsync(new RoundToStart { Id = round, Draft = draft, Size = size, Cells = cells });
        Assert.True(started.IsOk, Problems(started));
        return (draft, round);
    }

    private async Task SetAsync(RoundId round, PourLetter letter, LineId line, CellField field, double amount) =>
        Assert.Equal(CaptureOutcome.Kept, (await _disk.House.Captures.SetCell(EntryId.New(), DeviceId.New(), FirstRows.AtThisMachine, new CapturedCell(round, letter, line, field, amount, null))).Outcome);

    private async Task NoteAsync(RoundId round, PourLetter letter, AxisWish wish, Verdict verdict, TasteMoment? moment = null) =>
        Assert.Equal(
            CaptureOutcome.Kept,
            (await _disk.House.Captures.Note(EntryId.New(), DeviceId.New(), FirstRows.AtThisMachine, new PourNote { Round = round, Letter = letter, Wishes = [wish], Verdict = verdict, Moment = moment })).Outcome);

    private static double Grams(string text) => double.Parse(text.Replace(" g", "", StringComparison.Ordinal), System.Globalization.CultureInfo.InvariantCulture);

    private static string Problems<T>(Result<T> result) => string.Join(' ', result.Problems.Select(p => p.Message));
}
