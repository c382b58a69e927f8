using MenuLab.Core.Drafts;
using MenuLab.Data.Drafts;
using MenuLab.Data.Writing;
using MenuLab.TestKit.Databases;
using Microsoft.EntityFrameworkCore;

namespace MenuLab.Data.Tests.Writing;

public class SqliteWriterTests() : StoreTests(new SqliteDatabase())
{
    [Fact]
    public async Task What_waits_is_committed_together()
    {
        var writer = (SqliteWriter)Store.Writer;
        var before = writer.Commits;
        using var gate = new ManualResetEventSlim();
        var first = Task.Run(() => writer.Write(db => Task.FromResult(gate.Wait(TimeSpan.FromSeconds(30)))));
        // While the first unit holds the writer, a hundred others queue up behind it.
        await Task.Delay(200);
        var others = Enumerable.Range(0, 100).Select(i => Harbour.Drafts(Store).Start(DraftId.New(), $"draft {i}", Harbour.Somebody)).ToList();
        gate.Set();
        Assert.True(await first);
        Assert.All(await Task.WhenAll(others), r => Assert.True(r.IsOk));
        Assert.InRange(writer.Commits - before, 2, 4);
        await using var db = Store.Read();
        Assert.Equal(100, (await db.ListDrafts()).Count);
    }

    [Fact]
    public async Task A_unit_that_fails_is_told_and_takes_no_other_of_its_group_along()
    {
        using var gate = new ManualResetEventSlim();
        var first = Task.Run(() => Store.Writer.Write(db => Task.FromResult(gate.Wait(TimeSpan.FromSeconds(30)))));
        await Task.Delay(200);
        var drafts = Harbour.Drafts(Store);
        var before = drafts.Start(DraftId.New(), "before", Harbour.Somebody);
        var failing = Store.Writer.Write<int>(async db =>
        {
            await db.Database.ExecuteSqlRawAsync("UPDATE drafts SET name = 'spoilt'");
            throw new InvalidOperationException("on purpose");
        });
        var refused = Store.Writer.Write(db => db.Database.ExecuteSqlRawAsync("DELETE FROM sets"));
        var after = drafts.Start(DraftId.New(), "after", Harbour.Somebody);
        gate.Set();
        await first;

        Assert.True((await before).IsOk && (await after).IsOk);
        Assert.Equal("on purpose", (await Assert.ThrowsAsync<InvalidOperationException>(() => failing)).Message);
        await Assert.ThrowsAnyAsync<Exception>(() => refused);
        await using var db = Store.Read();
        Assert.Equal(["after", "before"], (await db.ListDrafts()).Select(d => d.Name).Order());
    }

    [Fact]
    public async Task A_caller_who_gives_up_is_let_go_and_what_it_sent_is_still_written_whole()
    {
        using var gate = new ManualResetEventSlim();
        var first = Task.Run(() => Store.Writer.Write(db => Task.FromResult(gate.Wait(TimeSpan.FromSeconds(30)))));
        await Task.Delay(200);
        using var enough = new CancellationTokenSource();
        var given = Harbour.Drafts(Store).Start(DraftId.New(), "given up", Harbour.Somebody, enough.Token);
        await enough.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => given);
        gate.Set();
        await first;
        Assert.True((await Harbour.Drafts(Store).Start(DraftId.New(), "next", Harbour.Somebody)).IsOk);
        await using var db = Store.Read();
        Assert.Equal(2, (await db.ListDrafts()).Count);
    }

    [Fact]
    public async Task A_closed_database_takes_no_more_and_has_written_all_that_it_took()
    {
        await using var database = new SqliteDatabase();
        var store = await Harbour.Furnished(await database.Open());
        var drafts = Harbour.Drafts(store);
        var sent = Enumerable.Range(0, 50).Select(i => drafts.Start(DraftId.New(), $"draft {i}", Harbour.Somebody)).ToList();
        await store.DisposeAsync();
        Assert.All(await Task.WhenAll(sent), r => Assert.True(r.IsOk));
        await Assert.ThrowsAsync<ObjectDisposedException>(() => drafts.Start(DraftId.New(), "late", Harbour.Somebody));
        await using var again = await database.Open();
        await using var db = again.Read();
        Assert.Equal(50, (await db.ListDrafts()).Count);
    }
}
