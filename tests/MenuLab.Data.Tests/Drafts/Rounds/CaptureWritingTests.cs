using MenuLab.Core.Drafts;
using MenuLab.Core.Drafts.Rounds;
using MenuLab.Core.House;
using MenuLab.Core.Pantry;
using MenuLab.Data.Drafts;
using MenuLab.Data.Drafts.Rounds;
using MenuLab.Data.House;
using MenuLab.Data.Pantry;
using MenuLab.TestKit.Databases;
using Microsoft.EntityFrameworkCore;

namespace MenuLab.Data.Tests.Drafts.Rounds;

public abstract class CaptureWritingTests(TestDatabase database) : StoreTests(database)
{
    private static readonly DateOnly Today = new(2026, 11, 3);
    private readonly DeviceId _phone = DeviceId.New();
    private readonly DeviceId _tablet = DeviceId.New();
    private readonly PersonId _other = PersonId.New();

    [Fact]
    public async Task Forty_entries_of_two_devices_that_were_cut_off_arrive_once_in_order_with_their_authors_however_often_they_are_sent()
    {
        var (draft, round, lines) = await Started();
        var phone = Twenty(_phone, Harbour.Somebody, 0);
        var tablet = Twenty(_tablet, _other, 1);
        var captures = Harbour.Captures(Store);

        // Both come back at once, and each sends everything three times, in pieces that overlap.
        var answers = await Task.WhenAll(new[] { phone, tablet }.Select(outbox => Task.Run(async () =>
        {
            var all = new List<CaptureAnswer>(await captures.Capture([.. outbox.Take(12)]));
            all.AddRange(await captures.Capture([.. outbox.Skip(5)]));
            all.AddRange(await captures.Capture([.. Enumerable.Reverse(outbox)]));
            return all;
        })));

        Assert.All(answers, all => Assert.Equal((20, 27), (all.Count(a => !a.IsDoubled), all.Count(a => a.IsDoubled))));
        await using var db = Store.Read();
        var kept = (await db.CapturedSince(Harbour.Noon)).Reverse().ToList();
        Assert.Equal(Enumerable.Range(1, 40).Select(i => (long)i), kept.Select(k => k.Answer.Order));
        Assert.All(kept, k => Assert.NotEqual(CaptureOutcome.Refused, k.Answer.Outcome));
        foreach (var (outbox, device) in new[] { (phone, _phone), (tablet, _tablet) })
        {
            var own = kept.Where(k => k.Entry.Device == device).ToList();
            Assert.Equal(outbox.Select(e => (e.Id, e.Counter, e.By)), own.Select(k => (k.Entry.Id, k.Entry.Counter, k.Entry.By)));
            Assert.Equal(outbox.Select(e => Convert.ToHexString(CaptureText.WriteWhat(e.What))), own.Select(k => Convert.ToHexString(CaptureText.WriteWhat(k.Entry.What))));
        }
        var sheet = Assert.Single(await db.RoundsOf(draft));
        Assert.Equal(10, sheet.Notes.Count);
        Assert.Equal(3 + 10, (await db.OpenDraft(draft))!.Lines.Count);
        // Of the cells that both set, the last to arrive stands and the other one is told in an open collision.
        var cells = kept.Where(k => k.Entry.What is CapturedCell).ToList();
        Assert.Equal(((CapturedCell)cells[^1].Entry.What).Amount, sheet.Round.Cell(PourLetter.B, lines[1])!.Poured);
        Assert.NotEmpty(await db.OpenCollisions(draft));

        List<CaptureEntry> Twenty(DeviceId device, PersonId by, int shift) =>
        [
            .. Enumerable.Range(1, 20).Select(i => new CaptureEntry(EntryId.New(), device, i, by, Harbour.Noon.AddMinutes(i), ((i - 1) % 4) switch
            {
                0 => new CapturedLine(draft, LineId.New(), $"{i} Verjus", 4),
                1 => new CapturedNote(new PourNote { Round = round, Letter = PourLetter.A, Words = $"device {shift} note {i}" }),
                2 => new CapturedCell(round, PourLetter.B, lines[1], CellField.Poured, 10 + i + shift / 2.0, i == 3 ? null : 10 + i - 4 + shift / 2.0),
                _ => new CapturedReading("temperature", i, "°C", Today, Thing: $"Fridge {shift}"),
            })),
        ];
    }

    [Fact]
    public async Task Two_devices_that_set_one_cell_are_both_told_the_later_stands_and_an_answer_closes_it()
    {
        var (draft, round, lines) = await Started();
        var captures = Harbour.Captures(Store);
        var mine = Entry(_phone, 1, Harbour.Somebody, new CapturedCell(round, PourLetter.B, lines[1], CellField.Specified, 17.5, null));
        var theirs = Entry(_tablet, 1, _other, new CapturedCell(round, PourLetter.B, lines[1], CellField.Specified, 20, null));
        var elsewhere = Entry(_tablet, 2, _other, new CapturedCell(round, PourLetter.B, lines[1], CellField.Poured, 19, null));
        Assert.Equal(CaptureOutcome.Kept, Assert.Single(await captures.Capture([mine])).Outcome);
        var collided = await captures.Capture([theirs, elsewhere]);
        Assert.Equal([CaptureOutcome.Collided, CaptureOutcome.Kept], collided.Select(a => a.Outcome));
        Assert.Equal(new Met(Harbour.Somebody, "specified", 17.5, 20, "", mine.Id), Assert.Single(collided[0].Met));
        // The answer is the same when its first way back was cut off.
        var again = Assert.Single(await captures.Capture([theirs]));
        Assert.True(again.IsDoubled);
        Assert.Equal(collided[0].Met, again.Met);

        // The author of the second saw both: taking the first value back collides with nothing.
        var taken = await captures.Capture(
        [
            Entry(_tablet, 3, _other, new CapturedCell(round, PourLetter.B, lines[1], CellField.Specified, 17.5, 20)), Entry(_tablet, 4, _other, new CapturedAnswer(theirs.Id)),
        ]);
        Assert.Equal([CaptureOutcome.Kept, CaptureOutcome.Kept], taken.Select(a => a.Outcome));
        await using var db = Store.Read();
        Assert.Empty(await db.OpenCollisions(draft));
        Assert.Equal((17.5, 19), ((await db.OpenRound(round))!.Cell(PourLetter.B, lines[1])!.Specified, (await db.OpenRound(round))!.Cell(PourLetter.B, lines[1])!.Poured));
    }

    [Fact]
    public async Task A_value_that_was_seen_or_is_the_same_or_is_ones_own_collides_with_nothing()
    {
        var (draft, round, lines) = await Started();
        var captures = Harbour.Captures(Store);
        CaptureEntry Set(DeviceId device, long counter, double? amount, double? seen) => Entry(device, counter, Harbour.Somebody, new CapturedCell(round, PourLetter.A, lines[0], CellField.Poured, amount, seen));
        var answers = await captures.Capture([Set(_phone, 1, 28, null), Set(_phone, 2, 29, null)]);
        Assert.All(answers, a => Assert.Equal(CaptureOutcome.Kept, a.Outcome));
        answers = await captures.Capture([Set(_tablet, 1, 31, 29), Set(_tablet, 2, 31, null)]);
        Assert.All(answers, a => Assert.Equal(CaptureOutcome.Kept, a.Outcome));
        Assert.Equal(CaptureOutcome.Kept, Assert.Single(await captures.Capture([Set(_phone, 3, 31, 29)])).Outcome);
        await using var db = Store.Read();
        Assert.Empty(await db.OpenCollisions(draft));
    }

    [Fact]
    public async Task A_typed_line_is_read_added_below_the_last_and_a_retyped_one_that_somebody_changed_is_told()
    {
        var (draft, _, lines) = await Started();
        var captures = Harbour.Captures(Store);
        var half = LineId.New();
        Assert.Equal(CaptureOutcome.Kept, Assert.Single(await captures.Capture([Entry(_phone, 1, Harbour.Somebody, new CapturedLine(draft, half, "2 dashes of smoke salt fr", 4))])).Outcome);
        await Harbour.Drafts(Store).Apply(draft, EditId.New(), _other, PageId.New(), 5, new ChangeLine(lines[1], LineFields.Amount, Harbour.Line(Harbour.Verjus, 20)));
        var retyped = Assert.Single(await captures.Capture([Entry(_phone, 2, Harbour.Somebody, new CapturedLine(draft, lines[1], "25 Verjus", 5))]));
        Assert.Equal(CaptureOutcome.Collided, retyped.Outcome);
        Assert.Equal((_other, "amount", 20, 25), (retyped.Met[0].By, retyped.Met[0].Field, retyped.Met[0].Theirs, retyped.Met[0].Mine));

        await using var db = Store.Read();
        var there = (await db.OpenDraft(draft))!;
        Assert.Equal(("2 dashes of smoke salt fr", null), (there.Lines[^1].Text, there.Lines[^1].Ingredient));
        Assert.Equal((25, Harbour.Verjus.Id), (there.Lines[1].Amount, there.Lines[1].Ingredient));
        // Saved by the bench itself before its network went: the outbox has nothing to add.
        Assert.Equal(CaptureOutcome.Kept, Assert.Single(await captures.Capture([Entry(_phone, 3, Harbour.Somebody, new CapturedLine(draft, half, "2 dashes of smoke salt fr", 4))])).Outcome);
        Assert.Equal(there.Version, (await db.OpenDraft(draft))!.Version);
    }

    [Fact]
    public async Task A_reading_counts_in_the_pantry_and_another_of_the_same_day_is_told_to_whoever_did_not_see_it()
    {
        await Started();
        var captures = Harbour.Captures(Store);
        CapturedReading Ph(double value, EntryId? seen = null) => new("ph", value, "", Today, Harbour.Verjus.Id, Celsius: 20, Seen: seen);
        var first = Entry(_phone, 1, Harbour.Somebody, Ph(3.2));
        var second = Entry(_tablet, 1, _other, Ph(3.4));
        Assert.Equal(CaptureOutcome.Kept, Assert.Single(await captures.Capture([first])).Outcome);
        var collided = Assert.Single(await captures.Capture([second]));
        Assert.Equal(new Met(Harbour.Somebody, "ph", 3.2, 3.4, "", first.Id), Assert.Single(collided.Met));
        Assert.Equal(CaptureOutcome.Kept, Assert.Single(await captures.Capture([Entry(_phone, 2, Harbour.Somebody, Ph(3.3, second.Id))])).Outcome);
        // Of a batch, which is not the house's standard, and of a fridge: kept, and the pantry stays as it is.
        Assert.All(
            await captures.Capture(
            [
                Entry(_phone, 3, Harbour.Somebody, Ph(4.1) with { Batch = Guid.CreateVersion7() }),
                Entry(_phone, 4, Harbour.Somebody, new CapturedReading("temperature", 4, "°C", Today, Thing: "Fridge 2")),
            ]),
            a => Assert.Equal(CaptureOutcome.Kept, a.Outcome));
        var absurd = Assert.Single(await captures.Capture([Entry(_phone, 5, Harbour.Somebody, Ph(31))]));
        Assert.Equal((CaptureOutcome.Refused, "value"), (absurd.Outcome, absurd.Problems[0].Field));

        await using var db = Store.Read();
        Assert.Equal([3.2, 3.4, 3.3], (await db.Readings.Where(r => r.Kind == "ph").ToListAsync()).OrderBy(r => r.Id == new ReadingId(first.Id.Value) ? 0 : r.Id == new ReadingId(second.Id.Value) ? 1 : 2).Select(r => r.Value));
        Assert.Equal(6, (await db.CapturedSince(Harbour.Noon)).Count);
    }

    [Fact]
    public async Task What_ran_out_is_not_on_hand_and_whoever_said_otherwise_later_is_named()
    {
        await Started();
        var captures = Harbour.Captures(Store);
        var pantry = new PantryWriting(Store.Writer, TimeProvider.System);
        await pantry.SetOnHand(Harbour.Verjus.Id, FirstRows.FirstSite, true, _other);
        await pantry.SetOnHand(Harbour.Quince.Id, FirstRows.FirstSite, true, Harbour.Somebody);
        var answers = await captures.Capture(
        [
            Entry(_phone, 1, Harbour.Somebody, new CapturedOutOfStock(Harbour.Verjus.Id, FirstRows.FirstSite)),
            Entry(_phone, 2, Harbour.Somebody, new CapturedOutOfStock(Harbour.Quince.Id, FirstRows.FirstSite)),
            Entry(_phone, 3, Harbour.Somebody, new CapturedOutOfStock(Harbour.Quince.Id, FirstRows.FirstSite)),
            Entry(_phone, 4, Harbour.Somebody, new CapturedBatch(Harbour.Quince.Id, Guid.CreateVersion7(), 1.2, Unit.Litre, Today)),
            Entry(_phone, 5, Harbour.Somebody, new CapturedPouredAway(Harbour.Quince.Id, null, null, Unit.None, "cloudy")),
        ]);
        Assert.Equal([CaptureOutcome.Collided, CaptureOutcome.Kept, CaptureOutcome.Kept, CaptureOutcome.Kept, CaptureOutcome.Kept], answers.Select(a => a.Outcome));
        Assert.Equal(_other, answers[0].Met[0].By);
        await using var db = Store.Read();
        Assert.Empty(await db.OnHand.ToListAsync());
    }

    [Fact]
    public async Task What_cannot_be_applied_is_kept_with_its_problem_and_does_not_hold_up_what_follows()
    {
        var (draft, round, lines) = await Started();
        var answers = await Harbour.Captures(Store).Capture(
        [
            Entry(_phone, 1, Harbour.Somebody, new CapturedNote(new PourNote { Round = RoundId.New(), Letter = PourLetter.A, Words = "gone" })),
            Entry(_phone, 2, Harbour.Somebody, new CapturedCell(round, PourLetter.F, lines[0], CellField.Poured, 10, null)),
            Entry(_phone, 3, Harbour.Somebody, new CapturedLine(DraftId.New(), LineId.New(), "20 Verjus", null)),
            Entry(_phone, 4, Harbour.Somebody, new CapturedPouredAway(IngredientId.New(), null, 1, Unit.Litre, "")),
            Entry(_phone, 5, Harbour.Somebody, new CapturedAnswer(EntryId.New())),
            Entry(_phone, 6, Harbour.Somebody, new CapturedNote(new PourNote { Round = round, Letter = PourLetter.A, Verdict = Verdict.No, Replaces = EntryId.New() })),
            Entry(_phone, 7, Harbour.Somebody, new CapturedNote(new PourNote { Round = round, Letter = PourLetter.A })),
            Entry(_phone, 8, PersonId.New(), new CapturedNote(new PourNote { Round = round, Letter = PourLetter.A, Verdict = Verdict.No })),
            Entry(_phone, 9, Harbour.Somebody, new CapturedNote(new PourNote { Round = round, Letter = PourLetter.A, Verdict = Verdict.No })),
        ]);
        Assert.Equal(Enumerable.Repeat(CaptureOutcome.Refused, 8).Append(CaptureOutcome.Kept), answers.Select(a => a.Outcome));
        Assert.All(answers.Take(8), a => Assert.NotEmpty(a.Problems));
        // A note that says nothing and an author whom nobody knows cannot be kept: order 0 tells the device so.
        Assert.Equal([1, 2, 3, 4, 5, 6, 0, 0, 7], answers.Select(a => a.Order));
        await using var db = Store.Read();
        Assert.Equal(6, (await db.CapturedSince(Harbour.Noon)).Count(l => l.Answer is { Outcome: CaptureOutcome.Refused, Problems.Count: 1 }));
        Assert.Equal(1, await db.PourNotes.CountAsync());
        Assert.Equal(4, (await db.OpenDraft(draft))!.Version);
    }

    private static CaptureEntry Entry(DeviceId device, long counter, PersonId by, Captured what) => new(EntryId.New(), device, counter, by, Harbour.Noon.AddMinutes(counter), what);

    private async Task<(DraftId Draft, RoundId Round, List<LineId> Lines)> Started()
    {
        await Store.Writer.Write(async db =>
        {
            db.Add(Person.Of(_other, "Joss", "JO", PersonKind.Staff).Value);
            return await db.SaveChangesAsync();
        });
        var draft = await Harbour.Mix(Store);
        var round = (await Harbour.Rounds(Store).Start(new RoundToStart { Id = RoundId.New(), Draft = draft }, Harbour.Somebody)).Value;
        return (draft, round.Id, [.. round.Lines.Select(l => l.Line)]);
    }
}

public sealed class CaptureWritingTests_on_Sqlite() : CaptureWritingTests(new SqliteDatabase());

public sealed class CaptureWritingTests_on_Postgres() : CaptureWritingTests(new PostgresDatabase());
