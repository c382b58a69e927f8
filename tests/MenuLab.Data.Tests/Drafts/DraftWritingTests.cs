using MenuLab.Core.Drafts;
using MenuLab.Core.Pantry;
using MenuLab.Core.Quantities;
using MenuLab.Data.Drafts;
using MenuLab.TestKit.Databases;
using Microsoft.EntityFrameworkCore;

namespace MenuLab.Data.Tests.Drafts;

public abstract class DraftWritingTests(TestDatabase database) : StoreTests(database)
{
    [Fact]
    public async Task A_draft_comes_back_as_it_was_worked()
    {
        var id = await Harbour.Mix(Store, "Åkerholm fog");
        var drafts = Harbour.Drafts(Store);
        var page = PageId.New();
        var brief = new Brief { Claim = "below 0.5 % ABV", CostLimit = Money.Of(1.8550m, "EUR"), Due = new DateOnly(2026, 11, 20), Avoid = default(AllergenSet).With(Allergen.Egg, AllergenState.Present) };
        EditAction[] actions =
        [
            new ChangeBrief(BriefFields.Claim | BriefFields.CostLimit | BriefFields.Due | BriefFields.Avoid, brief),
            new ChooseStyle("short_sour"),
            new Stand(Standing.Parked, "waiting for the quinces"),
            new AddLine(LineId.New(), LineContent.KeptAsTyped("5 of Mira's smoke", 5), null),
        ];
        var version = 4;
        foreach (var action in actions)
        {
            Assert.Equal(version + 1, (await drafts.Apply(id, EditId.New(), Harbour.Somebody, page, version, action)).Value.Applied.Version);
            version++;
        }

        await using var db = Store.Read();
        var draft = (await db.OpenDraft(id))!;
        Assert.Equal(("Åkerholm fog", "short_sour", Standing.Parked, "waiting for the quinces", 8), (draft.Name, draft.Style, draft.Standing, draft.StandingReason, draft.Version));
        Assert.Equal(brief, draft.Brief);
        Assert.Equal(["5 of Mira's smoke", "30 Åkerholm sea buckthorn purée", "15 Verjus", "22.5 Quince syrup"], draft.Lines.Select(l => l.Text));
        Assert.Equal(5, draft.UncountedMillilitres);
        Assert.Null(draft.Lines[0].Ingredient);
        Assert.Equal(EditText.Write(new AddLine(default, Harbour.Line(Harbour.Quince, 22.5), null)), EditText.Write(new AddLine(default, draft.Lines[3].Content, null)));
        Assert.Equal(("shaken", "coupe"), (draft.Build.Method, draft.Build.Glass));
        Assert.Equal(["Shake.", "Strain."], draft.Build.Steps);
        Assert.Equal(Harbour.Noon, draft.MadeAt);
        Assert.Equal(Enumerable.Range(1, 8), (await db.EditsOf(id)).Select(e => e.Version));
    }

    [Fact]
    public async Task Two_hundred_edits_by_eight_writers_at_once_are_all_kept_under_consecutive_versions()
    {
        var id = await Harbour.Mix(Store);
        var drafts = Harbour.Drafts(Store);
        var lines = await Lines(id);
        var writers = Enumerable.Range(0, 8).Select(w => Task.Run(async () =>
        {
            var page = PageId.New();
            var versions = new List<int>();
            for (var i = 0; i < 25; i++)
            {
                var content = Harbour.Line(Harbour.Verjus, 1 + i) with { Treatment = $"writer {w} edit {i}" };
                EditAction action = (i % 3) switch
                {
                    0 => new ChangeLine(lines[w % 3], LineFields.Amount, content),
                    1 => new ChangeLine(lines[(w + i) % 3], LineFields.Treatment, content),
                    _ => new AddLine(LineId.New(), content, null),
                };
                versions.Add((await drafts.Apply(id, EditId.New(), Harbour.Somebody, page, 4, action)).Value.Applied.Version);
            }
            return versions;
        }));
        var answered = (await Task.WhenAll(writers)).SelectMany(v => v).Order().ToList();

        Assert.Equal(Enumerable.Range(5, 200), answered);
        await using var db = Store.Read();
        var draft = (await db.OpenDraft(id))!;
        Assert.Equal(204, draft.Version);
        Assert.Equal(Enumerable.Range(1, 204), (await db.EditsOf(id)).Select(e => e.Version));
        Assert.Equal(3 + 8 * 8, draft.Lines.Count);
        Assert.Equal(Enumerable.Range(1, draft.Lines.Count), draft.Lines.Select(l => l.Position));
        // The log played from the start ends where the rows ended.
        var replayed = Draft.Start(id, "Harbour fog", Harbour.Somebody, Harbour.Noon).Value;
        var log = await db.EditsOf(id);
        foreach (var applied in log)
        {
            Assert.True(replayed.Apply(applied.Edit, [.. log.Where(e => e.Version > applied.Edit.Seen && e.Version < applied.Version)], Harbour.Understand).IsOk);
        }
        Assert.Equal(replayed.Lines.Select(l => (l.Id, l.Amount, l.Treatment)), draft.Lines.Select(l => (l.Id, l.Amount, l.Treatment)));
    }

    [Fact]
    public async Task An_edit_that_arrives_again_is_applied_once_and_answered_the_same_even_if_it_claims_to_have_seen_more()
    {
        var id = await Harbour.Mix(Store);
        var drafts = Harbour.Drafts(Store);
        var lines = await Lines(id);
        await drafts.Apply(id, EditId.New(), Harbour.Somebody, PageId.New(), 4, new ChangeLine(lines[0], LineFields.Amount, Harbour.Line(Harbour.Buckthorn, 20)));
        var (edit, page) = (EditId.New(), PageId.New());
        var action = new ChangeLine(lines[0], LineFields.Amount, Harbour.Line(Harbour.Buckthorn, 25));
        var first = (await drafts.Apply(id, edit, Harbour.Somebody, page, 4, action)).Value;
        await drafts.Apply(id, EditId.New(), Harbour.Somebody, page, 6, new ChangeLine(lines[0], LineFields.Amount, Harbour.Line(Harbour.Buckthorn, 35)));

        foreach (var seen in new[] { 4, 7 })
        {
            var again = (await drafts.Apply(id, edit, Harbour.Somebody, page, seen, action)).Value;
            Assert.Equal(first.Applied.Version, again.Applied.Version);
            Assert.Equal(5, Assert.Single(again.Collisions).Theirs.Version);
        }
        await using var db = Store.Read();
        var draft = (await db.OpenDraft(id))!;
        Assert.Equal((7, 35), (draft.Version, draft.Lines[0].Amount));
    }

    [Fact]
    public async Task A_refused_edit_leaves_nothing_behind()
    {
        var id = await Harbour.Mix(Store);
        var result = await Harbour.Drafts(Store).Apply(id, EditId.New(), Harbour.Somebody, PageId.New(), 4, new RemoveLine(LineId.New()));
        Assert.Equal("line", Assert.Single(result.Problems).Field);
        await using var db = Store.Read();
        Assert.Equal((4, 4), ((await db.OpenDraft(id))!.Version, await db.Edits.CountAsync()));
    }

    [Fact]
    public async Task Starting_a_draft_twice_starts_it_once_and_a_missing_draft_is_a_problem()
    {
        var id = DraftId.New();
        var drafts = Harbour.Drafts(Store);
        Assert.True((await drafts.Start(id, "Fog", Harbour.Somebody)).IsOk);
        Assert.Equal("Fog", (await drafts.Start(id, "Fog again", Harbour.Somebody)).Value.Name);
        Assert.Equal("Name", Assert.Single((await drafts.Start(DraftId.New(), " ", Harbour.Somebody)).Problems).Field);
        Assert.Equal("draft", Assert.Single((await drafts.Apply(DraftId.New(), EditId.New(), Harbour.Somebody, PageId.New(), 0, new Rename("x"))).Problems).Field);
    }

    [Fact]
    public async Task An_ingredient_archived_while_in_use_stays_in_the_draft_and_leaves_the_search()
    {
        var id = await Harbour.Mix(Store);
        await Store.Writer.Write(async db =>
        {
            var verjus = await db.Ingredients.AsTracking().SingleAsync(i => i.Id == Harbour.Verjus.Id);
            (verjus.ArchivedAt, verjus.ArchivedBy) = (Harbour.Noon, Harbour.Somebody);
            return await db.SaveChangesAsync();
        });
        await using var db = Store.Read();
        Assert.Contains((await db.OpenDraft(id))!.DraftLines, l => l.Ingredient == Harbour.Verjus.Id);
        Assert.True((await Harbour.Iterations(Store).Save(await Harbour.ToSave(Store, id))).IsOk);
        await Assert.ThrowsAnyAsync<Exception>(() => Store.Writer.Write(d => d.Ingredients.Where(i => i.Id == Harbour.Verjus.Id).ExecuteDeleteAsync()));
    }

    [Fact]
    public async Task Drafts_are_listed_by_standing_and_found_by_name_without_marks()
    {
        var fog = await Harbour.Mix(Store, "Åkerholm fog");
        var pier = await Harbour.Mix(Store, "Pier");
        await Harbour.Drafts(Store).Apply(pier, EditId.New(), Harbour.Somebody, PageId.New(), 4, new Stand(Standing.Dropped, "too close"));
        Assert.True((await Harbour.Iterations(Store).Save(await Harbour.ToSave(Store, fog))).IsOk);
        await using var db = Store.Read();
        var listed = Assert.Single(await db.ListDrafts(named: "akerHOLM"));
        Assert.Equal((fog, "Åkerholm fog", null, Standing.InTheWorks, Harbour.Noon, 1), (listed.Id, listed.Name, listed.Style, listed.Standing, listed.ChangedAt, listed.Iterations));
        Assert.Equal(pier, Assert.Single(await db.ListDrafts(Standing.Dropped)).Id);
        Assert.Equal(2, (await db.ListDrafts()).Count);
    }

    private async Task<LineId[]> Lines(DraftId id)
    {
        await using var db = Store.Read();
        return [.. (await db.OpenDraft(id))!.Lines.Select(l => l.Id)];
    }
}

public sealed class DraftWritingTests_on_Sqlite() : DraftWritingTests(new SqliteDatabase());

public sealed class DraftWritingTests_on_Postgres() : DraftWritingTests(new PostgresDatabase());
