using MenuLab.Core.Drafts;
using MenuLab.Core.Drafts.Rounds;
using MenuLab.Core.House;
using MenuLab.Core.Pantry;
using MenuLab.Data.Drafts;
using MenuLab.Data.Drafts.Rounds;
using MenuLab.Data.Pantry;
using MenuLab.TestKit.Databases;
using Microsoft.EntityFrameworkCore;

namespace MenuLab.Data.Tests.Drafts.Rounds;

public abstract class RoundWritingTests(TestDatabase database) : StoreTests(database)
{
    private static readonly DeviceId Page = DeviceId.New();

    [Fact]
    public async Task A_round_comes_back_with_its_lines_pours_cells_and_notes()
    {
        var draft = await Harbour.Mix(Store);
        var verjus = (await Lines(draft))[1];
        var rounds = Harbour.Rounds(Store);
        var wish = new RoundToStart
        {
            Id = RoundId.New(), Draft = draft, Pours = 3, Size = RoundSize.ByWeight(40),
            Cells = [new(PourLetter.A, verjus, 12.5), new(PourLetter.B, verjus, 15), new(PourLetter.C, verjus, 17.5)],
        };
        Assert.True((await rounds.Start(wish, Harbour.Somebody)).IsOk);
        var batch = Guid.CreateVersion7();
        Assert.True((await rounds.AddPour(wish.Id, PourLetter.D, PourLetter.C)).IsOk);
        Assert.True((await rounds.OpenBatch(wish.Id, PourLetter.D, verjus, batch)).IsOk);
        Assert.True((await rounds.Poured(wish.Id, [PourLetter.A, PourLetter.D])).IsOk);
        Assert.True((await rounds.Bottle(wish.Id, PourLetter.D, new DateOnly(2026, 11, 3))).IsOk);
        var cell = await Harbour.Captures(Store).SetCell(EntryId.New(), Page, Harbour.Somebody, new CapturedCell(wish.Id, PourLetter.C, verjus, CellField.Poured, 18, null));
        Assert.Equal(CaptureOutcome.Kept, cell.Outcome);
        var note = new PourNote
        {
            Round = wish.Id, Letter = PourLetter.C, Wishes = [new(TasteAxis.Sour, Wish.More), new(TasteAxis.Finish, Wish.More)], Verdict = Verdict.Maybe, Tasters = [Harbour.Somebody],
            Words = "Åker smoke, thin", Attachments = [AttachmentId.New()], Moment = TasteMoment.Minute5,
        };
        Assert.Equal(CaptureOutcome.Kept, (await Harbour.Captures(Store).Note(EntryId.New(), Page, Harbour.Somebody, note)).Outcome);
        Assert.True((await rounds.End(wish.Id, PourLetter.C, Harbour.Somebody)).IsOk);

        await using var db = Store.Read();
        var sheet = Assert.Single(await db.RoundsOf(draft));
        var round = sheet.Round;
        Assert.Equal((1, 4, RoundSize.ByWeight(40), PourLetter.C, Harbour.Noon), (round.Number, round.FromVersion, round.Size, round.Winner, round.EndedAt));
        Assert.Equal(["30 Åkerholm sea buckthorn purée", "15 Verjus", "22.5 Quince syrup"], round.Lines.Select(l => l.Content.Text));
        Assert.Equal(["Shake.", "Strain."], round.Build.Steps);
        Assert.Equal([PourLetter.A, PourLetter.B, PourLetter.C, PourLetter.D], round.Pours.Select(p => p.Letter));
        Assert.Equal([12.5, 15, 17.5, 17.5], round.Pours.Select(p => round.Specified(p.Letter, round.Line(verjus)!)!.Value));
        Assert.Equal((18, batch), (round.Cell(PourLetter.C, verjus)!.Poured, round.Cell(PourLetter.D, verjus)!.Batch));
        Assert.Equal([Harbour.Noon, null, null, Harbour.Noon], round.Pours.Select(p => p.PouredAt));
        var written = Assert.Single(sheet.Notes);
        Assert.Equal(note.Wishes, written.Note.Wishes);
        Assert.Equal((note.Words, note.Moment, note.Verdict), (written.Note.Words, written.Note.Moment, written.Note.Verdict));
        Assert.Equal((note.Attachments[0], Harbour.Somebody), (written.Note.Attachments[0], Assert.Single(written.Tasters)));
        var bottled = Assert.Single(await db.BottledSince(new DateOnly(2026, 11, 1)));
        Assert.Equal((PourLetter.D, 0), (bottled.Letter, bottled.Tasted.Count));
        Assert.Empty(await db.BottledSince(new DateOnly(2026, 11, 4)));
    }

    [Fact]
    public async Task Rounds_are_numbered_within_their_draft_and_starting_twice_starts_once()
    {
        var (one, other) = (await Harbour.Mix(Store), await Harbour.Mix(Store, "Pier"));
        var rounds = Harbour.Rounds(Store);
        var first = new RoundToStart { Id = RoundId.New(), Draft = one };
        Assert.Equal(1, (await rounds.Start(first, Harbour.Somebody)).Value.Number);
        Assert.Equal(1, (await rounds.Start(first, Harbour.Somebody)).Value.Number);
        Assert.Equal(1, (await rounds.Start(new RoundToStart { Id = RoundId.New(), Draft = other }, Harbour.Somebody)).Value.Number);
        Assert.Equal("round", Assert.Single((await rounds.Start(first with { Draft = other }, Harbour.Somebody)).Problems).Field);
        var numbers = await Task.WhenAll(Enumerable.Range(0, 8).Select(_ => Task.Run(async () => (await rounds.Start(new RoundToStart { Id = RoundId.New(), Draft = one }, Harbour.Somebody)).Value.Number)));
        Assert.Equal(Enumerable.Range(2, 8), numbers.Order());
    }

    [Fact]
    public async Task The_next_round_shares_what_was_tasted_of_the_winner_and_the_ladder_says_why()
    {
        var draft = await Harbour.Mix(Store);
        var (verjus, quince) = ((await Lines(draft))[1], (await Lines(draft))[2]);
        var rounds = Harbour.Rounds(Store);
        var captures = Harbour.Captures(Store);
        var first = (await rounds.Start(new RoundToStart { Id = RoundId.New(), Draft = draft, Pours = 2, Cells = [new(PourLetter.B, verjus, 17.5)] }, Harbour.Somebody)).Value;
        await captures.SetCell(EntryId.New(), Page, Harbour.Somebody, new CapturedCell(first.Id, PourLetter.B, verjus, CellField.Poured, 18, null));
        await captures.Note(EntryId.New(), Page, Harbour.Somebody, new PourNote { Round = first.Id, Letter = PourLetter.B, Wishes = [new(TasteAxis.Sour, Wish.More)] });
        await rounds.End(first.Id, PourLetter.B, Harbour.Somebody);
        var next = await rounds.Start(
            new RoundToStart { Id = RoundId.New(), Draft = draft, Pours = 2, FromRound = first.Id, FromPour = PourLetter.B, Cells = [new(PourLetter.B, quince, 20)] }, Harbour.Somebody);

        await using var db = Store.Read();
        var round = (await db.OpenRound(next.Value.Id))!;
        Assert.Equal((2, first.Id, PourLetter.B), (round.Number, round.FromRound, round.FromPour));
        Assert.Equal(18, round.Line(verjus)!.Content.Amount.Value);
        var ladder = await db.LadderOf(draft, id => Harbour.Pantry.Find(id)!.Name, HouseFormat.Plain);
        Assert.Equal(["B: Verjus 15 → 18 mL; more sour wanted", ""], ladder.Select(r => r.Reason));
        Assert.Equal([2, null], ladder.Select(r => r.Next));
        Assert.Equal("informal, 1 taste", ladder[0].Tally!.InWords);
    }

    [Fact]
    public async Task A_round_of_another_draft_a_missing_round_and_a_foreign_iteration_are_problems()
    {
        var draft = await Harbour.Mix(Store);
        var other = await Harbour.Mix(Store, "Pier");
        var rounds = Harbour.Rounds(Store);
        var round = (await rounds.Start(new RoundToStart { Id = RoundId.New(), Draft = draft }, Harbour.Somebody)).Value;
        Assert.False((await rounds.Start(new RoundToStart { Id = RoundId.New(), Draft = other, FromRound = round.Id, FromPour = PourLetter.A }, Harbour.Somebody)).IsOk);
        Assert.False((await rounds.Start(new RoundToStart { Id = RoundId.New(), Draft = DraftId.New() }, Harbour.Somebody)).IsOk);
        Assert.False((await rounds.End(RoundId.New(), null, Harbour.Somebody)).IsOk);
        Assert.False((await rounds.End(round.Id, PourLetter.D, Harbour.Somebody)).IsOk);
        Assert.False((await rounds.Became(round.Id, 1)).IsOk);
        Assert.True((await Harbour.Iterations(Store).Save(await Harbour.ToSave(Store, draft))).IsOk);
        Assert.Equal(1, (await rounds.Became(round.Id, 1)).Value.Iteration);
    }

    [Fact]
    public async Task A_photo_is_kept_once_and_one_that_is_too_large_or_could_run_is_refused()
    {
        var rounds = Harbour.Rounds(Store);
        var id = AttachmentId.New();
        Assert.True((await rounds.Attach(id, "image/jpeg", [1, 2, 3], Harbour.Somebody)).IsOk);
        Assert.True((await rounds.Attach(id, "image/jpeg", [9], Harbour.Somebody)).IsOk);
        Assert.Equal("media_type", Assert.Single((await rounds.Attach(AttachmentId.New(), "image/svg+xml", [1], Harbour.Somebody)).Problems).Field);
        Assert.Equal("bytes", Assert.Single((await rounds.Attach(AttachmentId.New(), "audio/webm;codecs=opus", new byte[Attachment.MostBytes + 1], Harbour.Somebody)).Problems).Field);
        await using var db = Store.Read();
        Assert.Equal([1, 2, 3], (await db.OpenAttachment(id))!.Bytes);
        Assert.Equal(1, await db.Attachments.CountAsync());
    }

    [Fact]
    public async Task A_parked_draft_names_what_the_house_keeps_for_it_alone()
    {
        var own = new[] { "Fennel syrup", "Beet leaf tea" }.Select(name => (Id: IngredientId.New(), Name: name)).ToList();
        await Store.Writer.Write(async db =>
        {
            foreach (var (id, name) in own)
            {
                db.Add(new IngredientRow { Id = id, Name = name, SearchName = SearchName.Of(name), Kind = IngredientKind.SugarOrSyrup, Basis = "100 g", KeptAtCelsius = 4, IsCarbonated = false, HasRawEgg = false });
            }
            return await db.SaveChangesAsync();
        });
        var parked = await Harbour.Mix(Store);
        var working = await Harbour.Mix(Store, "Pier");
        var drafts = Harbour.Drafts(Store);
        await Add(parked, 4, own[0].Id);
        await Add(parked, 5, own[1].Id);
        await Add(working, 4, own[1].Id);
        Assert.True((await drafts.Apply(parked, EditId.New(), Harbour.Somebody, PageId.New(), 6, new Stand(Standing.Parked, "no fennel"))).IsOk);

        await using (var db = Store.Read())
        {
            Assert.Equal([new ServesNothing(own[0].Id, "Fennel syrup")], await db.ServesNothingWithout(parked));
        }
        Assert.True((await drafts.Apply(working, EditId.New(), Harbour.Somebody, PageId.New(), 5, new Stand(Standing.Dropped, "too close"))).IsOk);
        await using (var db = Store.Read())
        {
            Assert.Equal(["Beet leaf tea", "Fennel syrup"], (await db.ServesNothingWithout(parked)).Select(s => s.Name));
        }

        async Task Add(DraftId draft, int seen, IngredientId id) => Assert.True((await drafts.Apply(
            draft, EditId.New(), Harbour.Somebody, PageId.New(), seen, new AddLine(LineId.New(), Harbour.Line(Harbour.Quince, 7.5) with { Ingredient = id }, null))).IsOk);
    }

    private async Task<List<LineId>> Lines(DraftId draft)
    {
        await using var db = Store.Read();
        return [.. (await db.OpenDraft(draft))!.Lines.Select(l => l.Id)];
    }
}

public sealed class RoundWritingTests_on_Sqlite() : RoundWritingTests(new SqliteDatabase());

public sealed class RoundWritingTests_on_Postgres() : RoundWritingTests(new PostgresDatabase());
