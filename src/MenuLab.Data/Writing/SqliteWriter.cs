using System.Threading.Channels;
using MenuLab.Data.Opening;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace MenuLab.Data.Writing;

/// <summary>
/// The one writer of a SQLite file: takes what waits in a bounded queue, runs it in one transaction, each unit behind a
/// savepoint of its own, and answers all of them when that transaction is on the disk (group commit, architecture 1.13).
/// </summary>
internal sealed class SqliteWriter : IWriter, IAsyncDisposable
{
    // A caller waits when this many are waiting already, so that memory stays bounded under a burst.
    private const int LongestQueue = 1024;

    // Long enough to share one wait for the disk, short enough that the first of a group is answered soon.
    private const int LargestGroup = 128;

    private readonly Channel<Work> _queue = Channel.CreateBounded<Work>(new BoundedChannelOptions(LongestQueue) { SingleReader = true });
    private readonly SqliteConnection _connection;
    private readonly Func<SqliteConnection, MenuLabDbContext> _context;
    private readonly SqliteStoreOptions _options;
    private readonly Task _loop;

    public SqliteWriter(SqliteConnection connection, Func<SqliteConnection, MenuLabDbContext> context, SqliteStoreOptions options)
    {
        _connection = connection;
        _context = context;
        _options = options;
        _connection.Open();
        using (var command = _connection.CreateCommand())
        {
            command.CommandText = SqliteStore.PragmasOf(options.MostPages);
            command.ExecuteNonQuery();
        }
        // A thread of its own: SQLite blocks while it waits for the disk.
        _loop = Task.Factory.StartNew(Run, CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default).Unwrap();
    }

    /// <summary>How many transactions were committed; for tests and measurements.</summary>
    internal int Commits { get; private set; }

    public async Task<T> Write<T>(Func<MenuLabDbContext, Task<T>> unit, CancellationToken cancellation = default)
    {
        var work = new Work<T>(unit);
        try
        {
            await _queue.Writer.WriteAsync(work, cancellation);
        }
        catch (ChannelClosedException e)
        {
            throw new ObjectDisposedException("The database is closed.", e);
        }
        return await work.Answer.WaitAsync(cancellation);
    }

    public async ValueTask DisposeAsync()
    {
        // What waits is still written.
        _queue.Writer.TryComplete();
        await _loop;
        await _connection.DisposeAsync();
        SqliteConnection.ClearPool(_connection);
    }

    private async Task Run()
    {
        var group = new List<Work>(LargestGroup);
        while (await _queue.Reader.WaitToReadAsync())
        {
            group.Clear();
            while (group.Count < LargestGroup && _queue.Reader.TryRead(out var work))
            {
                group.Add(work);
            }
            try
            {
                await Commit(group);
            }
            catch (Exception e)
            {
                // The whole group failed together: nobody is told that anything was saved.
                var told = e is SqliteException sqlite && SqliteStore.Translate(sqlite, _connection.DataSource) is { } clear ? clear : e;
                group.ForEach(w => w.Fail(told));
            }
        }
    }

    private async Task Commit(List<Work> group)
    {
        // Not deferred: it takes the write lock at once, so no unit can fail half-way for another's sake.
        await using var transaction = _connection.BeginTransaction(deferred: false);
        foreach (var work in group)
        {
            transaction.Save("unit");
            await using var db = _context(_connection);
            db.Database.AutoSavepointsEnabled = false;
            await db.Database.UseTransactionAsync(transaction);
            try
            {
                await work.Do(db);
                transaction.Release("unit");
            }
            catch (Exception e) when (!EndsTheGroup(e))
            {
                transaction.Rollback("unit");
                work.Fail(e);
            }
        }
        await transaction.CommitAsync();
        Commits++;
        group.ForEach(w => w.Succeed());
    }

    // After these SQLite may have ended the transaction by itself: all of it is gone, whoever it belonged to.
    private static bool EndsTheGroup(Exception e) =>
        (e as SqliteException ?? e.InnerException as SqliteException)?.SqliteErrorCode
            is SQLitePCL.raw.SQLITE_FULL or SQLitePCL.raw.SQLITE_IOERR or SQLitePCL.raw.SQLITE_NOMEM or SQLitePCL.raw.SQLITE_BUSY or SQLitePCL.raw.SQLITE_CORRUPT
                or SQLitePCL.raw.SQLITE_READONLY;

    private abstract class Work
    {
        public abstract Task Do(MenuLabDbContext db);

        public abstract void Succeed();

        public abstract void Fail(Exception e);
    }

    private sealed class Work<T>(Func<MenuLabDbContext, Task<T>> unit) : Work
    {
        // Continuations run elsewhere, or a caller would hold up the writer.
        private readonly TaskCompletionSource<T> _answer = new(TaskCreationOptions.RunContinuationsAsynchronously);
        private T? _result;

        public Task<T> Answer => _answer.Task;

        public override async Task Do(MenuLabDbContext db) => _result = await unit(db);

        public override void Succeed() => _answer.TrySetResult(_result!);

        public override void Fail(Exception e) => _answer.TrySetException(e is DbUpdateException { InnerException: SqliteException inner } ? Told(e, inner) : e);

        private static Exception Told(Exception e, SqliteException inner) => SqliteStore.Translate(inner, "the database") ?? e;
    }
}
