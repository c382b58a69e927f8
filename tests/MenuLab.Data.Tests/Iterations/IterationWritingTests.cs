using MenuLab.Core.Balance;
using MenuLab.Core.Drafts;
using MenuLab.Core.Iterations;
using MenuLab.Data.Iterations;
using MenuLab.TestKit.Databases;
using Microsoft.EntityFrameworkCore;

namespace MenuLab.Data.Tests.Iterations;

public abstract class IterationWritingTests(TestDatabase database) : StoreTests(database)
{
    [Fact]
    public async Task An_iteration_comes_back_whole_and_computes_to_what_was_stored()
    {
        var draft = await Harbour.Mix(Store);
        var save = await Harbour.ToSave(Store, draft);
        var saved = (await Harbour.Iterations(Store).Save(save)).Value;

        await using var db = Store.Read();
        var loaded = (await db.LoadIteration(saved.Id))!;
        Assert.Equal((1, "softer acid", 4, Harbour.Noon), (loaded.Iteration.Number, loaded.Iteration.Reason, loaded.Iteration.DraftVersion, loaded.Iteration.At));
        Assert.Equal(save.Stamp, loaded.Iteration.Stamp);
        Assert.Equal(IterationFigures.Of(save.Balance), loaded.Iteration.Figures);
        Assert.Equal(loaded.Iteration.Hash, Iteration.HashOf(loaded.Body.Inputs(), loaded.Iteration.Stamp.Engine));
        Assert.Equal([Harbour.Buckthorn.Id, Harbour.Verjus.Id, Harbour.Quince.Id], loaded.Lines.Select(l => l.Ingredient));

        var snapshot = loaded.Body.Snapshot();
        var compositions = await db.LoadCompositions(snapshot.Lines.Select(l => l.Composition));
        var again = snapshot.Recompute(h => compositions[h], Harbour.Measures);
        var stored = loaded.Body.Balance();
        foreach (var metric in Metrics.All)
        {
            var (expected, actual) = (stored.Served![metric.Metric], again.Served![metric.Metric]);
            Assert.True(
                double.IsNaN(expected.Value) ? double.IsNaN(actual.Value) : Math.Abs(expected.Value - actual.Value) <= 1e-9 * Math.Max(1, Math.Abs(expected.Value)), metric.Key);
        }
    }

    [Fact]
    public async Task Iterations_are_numbered_follow_each_other_and_share_their_compositions()
    {
        var draft = await Harbour.Mix(Store);
        var iterations = Harbour.Iterations(Store);
        var first = (await iterations.Save(await Harbour.ToSave(Store, draft))).Value;
        await Harbour.Drafts(Store).Apply(draft, EditId.New(), Harbour.Somebody, PageId.New(), 4, new Rename("Pier fog"));
        var second = (await iterations.Save(await Harbour.ToSave(Store, draft))).Value;
        var fromFirst = (await iterations.Save(await Harbour.ToSave(Store, draft) with { Parent = first.Id })).Value;

        await using var db = Store.Read();
        var history = await db.HistoryOf(draft);
        Assert.Equal([1, 2, 3], history.Select(i => i.Number));
        Assert.Equal([null, first.Id, first.Id], history.Select(i => i.Parent));
        Assert.NotEqual(first.Hash, second.Hash);
        Assert.Equal(second.Hash, fromFirst.Hash);
        Assert.Equal(3, await db.Compositions.CountAsync());
    }

    [Fact]
    public async Task Saving_twice_saves_once_and_saving_an_older_working_copy_is_a_problem()
    {
        var draft = await Harbour.Mix(Store);
        var iterations = Harbour.Iterations(Store);
        var save = await Harbour.ToSave(Store, draft);
        Assert.Equal((await iterations.Save(save)).Value.Id, (await iterations.Save(save)).Value.Id);
        await Harbour.Drafts(Store).Apply(draft, EditId.New(), Harbour.Somebody, PageId.New(), 4, new Rename("Pier fog"));
        Assert.Equal("draft", Assert.Single((await iterations.Save(save with { Id = IterationId.New() })).Problems).Field);
        Assert.Equal("parent", Assert.Single((await iterations.Save(await Harbour.ToSave(Store, draft) with { Parent = IterationId.New() })).Problems).Field);
        await using var db = Store.Read();
        Assert.Single(await db.HistoryOf(draft));
    }

    [Fact]
    public async Task Eight_pages_that_save_at_once_get_eight_numbers()
    {
        var draft = await Harbour.Mix(Store);
        var iterations = Harbour.Iterations(Store);
        var saves = await Task.WhenAll(Enumerable.Range(0, 8).Select(_ => Harbour.ToSave(Store, draft)));
        var saved = await Task.WhenAll(saves.Select(s => Task.Run(() => iterations.Save(s))));
        Assert.Equal(Enumerable.Range(1, 8), saved.Select(s => s.Value.Number).Order());
    }
}

public sealed class IterationWritingTests_on_Sqlite() : IterationWritingTests(new SqliteDatabase());

public sealed class IterationWritingTests_on_Postgres() : IterationWritingTests(new PostgresDatabase());
