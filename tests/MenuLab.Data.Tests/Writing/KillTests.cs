using System.Diagnostics;
using System.Globalization;
using MenuLab.Core.Drafts;
using MenuLab.Data.Drafts;
using MenuLab.Data.Opening;
using MenuLab.TestKit.Databases;
using Microsoft.EntityFrameworkCore;

namespace MenuLab.Data.Tests.Writing;

public sealed class KillTests : IAsyncDisposable
{
    internal const string WriteUntilKilled = "--write-until-killed";
    private const int Writers = 8;
    private readonly SqliteDatabase _database = new();

    public ValueTask DisposeAsync() => _database.DisposeAsync();

    [Theory]
    [InlineData(40)]
    [InlineData(400)]
    public async Task Every_edit_that_was_acknowledged_is_there_after_the_host_was_killed(int acknowledgedBefore)
    {
        DraftId draft;
        await using (var store = await _database.Open())
        {
            draft = await Harbour.Mix(await Harbour.Furnished(store));
        }

        var acknowledged = new List<EditId>();
        var start = new ProcessStartInfo(Environment.ProcessPath!, [WriteUntilKilled, _database.File]) { RedirectStandardOutput = true };
        using (var child = Process.Start(start)!)
        {
            while (acknowledged.Count < acknowledgedBefore && await child.StandardOutput.ReadLineAsync() is { } line)
            {
                acknowledged.Add(new EditId(Guid.Parse(line, CultureInfo.InvariantCulture)));
            }
            child.Kill();
            // What it had said before it died counts too; the last line may be cut off.
            while (await child.StandardOutput.ReadLineAsync() is { Length: 36 } line)
            {
                acknowledged.Add(new EditId(Guid.Parse(line, CultureInfo.InvariantCulture)));
            }
            await child.WaitForExitAsync();
        }

        Assert.True(acknowledged.Count >= acknowledgedBefore, $"Only {acknowledged.Count} edits were acknowledged.");
        await using var again = await _database.Open();
        await using var db = again.Read();
        var log = await db.EditsOf(draft);
        Assert.Empty(acknowledged.Except(log.Select(e => e.Edit.Id)));
        Assert.Equal(Enumerable.Range(1, log.Count), log.Select(e => e.Version));
        Assert.Equal(log.Count, (await db.OpenDraft(draft))!.Version);
        Assert.Equal(0, await db.Database.SqlQueryRaw<int>("SELECT count(*) AS \"Value\" FROM pragma_foreign_key_check").SingleAsync());
    }

    /// <summary>The process that is killed: edits from eight pages at once, each told on a line of its own when it is durable.</summary>
    internal static async Task<int> Write(string file)
    {
        await using var store = await SqliteStore.Open(new SqliteStoreOptions { File = file });
        DraftId draft;
        await using (var db = store.Read())
        {
            draft = (await db.ListDrafts())[0].Id;
        }
        var drafts = Harbour.Drafts(store);
        await Task.WhenAll(Enumerable.Range(0, Writers).Select(w => Task.Run(async () =>
        {
            var page = PageId.New();
            var seen = 4;
            for (var i = 0; ; i++)
            {
                var id = EditId.New();
                var edit = await drafts.Apply(draft, id, Harbour.Somebody, page, seen, new Rename($"{w} {i}"));
                seen = edit.Value.Applied.Version;
                lock (drafts)
                {
                    Console.WriteLine(id.Value);
                }
            }
        })));
        return 0;
    }
}
