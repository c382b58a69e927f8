using MenuLab.Core.Drafts;
using MenuLab.Core.House;
using MenuLab.Data.Drafts;
using MenuLab.TestKit.Databases;
using Microsoft.EntityFrameworkCore;

namespace MenuLab.Data.Tests.Drafts;

public abstract class DraftListTests(TestDatabase database) : StoreTests(database)
{
    [Fact]
    public async Task A_listing_says_what_it_is_for_who_changed_it_and_what_the_last_iteration_came_to()
    {
        var id = await Harbour.Mix(Store, "Fog");
        var mira = PersonId.New();
        await Store.Writer.Write(async db =>
        {
            db.Add(Person.Of(mira, "Mira", "M", PersonKind.Staff).Value);
            return await db.SaveChangesAsync();
        });
        Assert.True((await Harbour.Iterations(Store).Save(await Harbour.ToSave(Store, id))).IsOk);
        var change = new ChangeLine((await Draft(id)).Lines[0].Id, LineFields.Amount, Harbour.Line(Harbour.Buckthorn, 20));
        Assert.True((await Harbour.Drafts(Store).Apply(id, EditId.New(), Harbour.Somebody, PageId.New(), 4, change)).IsOk);
        Assert.True((await Harbour.Iterations(Store).Save(await Harbour.ToSave(Store, id))).IsOk);
        var brief = new Brief { Slot = "first of the evening", Due = new DateOnly(2026, 11, 20) };
        Assert.True((await Harbour.Drafts(Store).Apply(id, EditId.New(), mira, PageId.New(), 5, new ChangeBrief(BriefFields.Slot | BriefFields.Due, brief))).IsOk);
        Assert.True((await Harbour.Drafts(Store).Apply(id, EditId.New(), mira, PageId.New(), 6, new Stand(Standing.Parked, "no quinces yet"))).IsOk);

        await using var db = Store.Read();
        var listed = Assert.Single(await db.ListDrafts());
        var last = await db.Iterations.SingleAsync(i => i.Number == 2);
        Assert.Equal((2, mira, 7, "no quinces yet", brief), (listed.Iterations, listed.ChangedBy, listed.Version, listed.StandingReason, listed.Brief));
        Assert.Equal(last.Figures, listed.LastFigures);
        Assert.NotNull(listed.LastFigures!.Sugar);
        Assert.NotEqual((await db.Iterations.SingleAsync(i => i.Number == 1)).Figures.Sugar, listed.LastFigures.Sugar);
    }

    [Fact]
    public async Task Without_an_iteration_there_are_no_figures_and_whoever_started_it_changed_it_last()
    {
        var id = DraftId.New();
        Assert.True((await Harbour.Drafts(Store).Start(id, "Bare", Harbour.Somebody)).IsOk);
        await using var db = Store.Read();
        var listed = Assert.Single(await db.ListDrafts());
        Assert.Equal((id, 0, null, Harbour.Somebody), (listed.Id, listed.Iterations, listed.LastFigures, listed.ChangedBy));
    }

    [Fact]
    public async Task Drafts_are_started_with_their_lines_all_or_none_and_once_only()
    {
        var (fog, pier) = (DraftId.New(), DraftId.New());
        DraftToStart Lines(DraftId id, string name) => new(
            id, name,
            [
                new AddLine(LineId.New(), Harbour.Line(Harbour.Verjus, 15), null),
                new ChangeBuild(BuildFields.Method | BuildFields.Steps, new Build { Method = "shaken", Steps = ["Shake."] }),
                new ChooseStyle("short_sour"),
            ]);
        var starting = new DraftStarting(Store.Writer, TimeProvider.System);

        var refused = await starting.Start([Lines(fog, "Fog"), Lines(pier, new string('x', 81))], Harbour.Somebody, PageId.New());
        Assert.Equal("Name", Assert.Single(refused.Problems).Field);
        await using (var db = Store.Read())
        {
            Assert.Equal((0, 0), (await db.Drafts.CountAsync(), await db.Edits.CountAsync()));
        }

        for (var i = 0; i < 2; i++)
        {
            Assert.Equal([fog, pier], (await starting.Start([Lines(fog, "Fog"), Lines(pier, "Pier")], Harbour.Somebody, PageId.New())).Value);
        }
        var draft = await Draft(fog);
        Assert.Equal(("Fog", 3, "short_sour", "shaken"), (draft.Name, draft.Version, draft.Style, draft.Build.Method));
        Assert.Equal(15, Assert.Single(draft.DraftLines).Millilitres);
        await using (var db = Store.Read())
        {
            Assert.Equal((2, 6), (await db.Drafts.CountAsync(), await db.Edits.CountAsync()));
            Assert.Equal([1, 2, 3], (await db.EditsOf(pier)).Select(e => e.Version));
        }
        // The edits can be taken back, and the draft goes on from the version they left.
        Assert.Equal(4, (await Harbour.Drafts(Store).Apply(fog, EditId.New(), Harbour.Somebody, PageId.New(), 3, new Rename("Sea fog"))).Value.Applied.Version);
    }

    private async Task<Draft> Draft(DraftId id)
    {
        await using var db = Store.Read();
        return (await db.OpenDraft(id))!;
    }
}

public sealed class DraftListTests_on_Sqlite() : DraftListTests(new SqliteDatabase());

public sealed class DraftListTests_on_Postgres() : DraftListTests(new PostgresDatabase());
