using System.Data.Common;
using System.Globalization;
using MenuLab.Data.Writing;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace MenuLab.Data.Opening;

/// <summary>How a SQLite file is opened.</summary>
public sealed record SqliteStoreOptions
{
    /// <summary>The file; it and its folder are made when missing.</summary>
    public required string File { get; init; }

    /// <summary>Names backups.</summary>
    public TimeProvider Time { get; init; } = TimeProvider.System;

    /// <summary>How long migrating may take.</summary>
    public TimeSpan LongestMigration { get; init; } = TimeSpan.FromMinutes(5);

    /// <summary>How long to wait for another program that holds the file.</summary>
    public TimeSpan LongestWait { get; init; } = TimeSpan.FromSeconds(5);

    /// <summary>Pages at which the file counts as full, as a disk would be; null for the disk's own limit. For tests.</summary>
    internal int? MostPages { get; init; }

    /// <summary>Changes how contexts are made. For tests, which add a migration of the future.</summary>
    internal Action<DbContextOptionsBuilder>? Change { get; init; }
}

/// <summary>The database in one SQLite file, held by this host alone.</summary>
public sealed class SqliteStore : Store
{
    // EROFS, the same number on Linux and macOS; Windows says "access denied" instead.
    private const int ReadOnlyDisk = 30;

    private readonly FileStream _hold;
    private readonly SqliteWriter _writer;
    private readonly DbContextOptions<SqliteDbContext> _reading;

    private SqliteStore(FileStream hold, SqliteWriter writer, DbContextOptions<SqliteDbContext> reading)
    {
        _hold = hold;
        _writer = writer;
        _reading = reading;
    }

    /// <inheritdoc/>
    public override IWriter Writer => _writer;

    /// <inheritdoc/>
    public override MenuLabDbContext Read() => new SqliteDbContext(_reading);

    /// <summary>Opens a file: checks it, backs it up and migrates it where it is older, and keeps other hosts out.</summary>
    /// <exception cref="StoreException">It cannot be used; nothing was overwritten.</exception>
    public static async Task<SqliteStore> Open(SqliteStoreOptions options)
    {
        var file = Path.GetFullPath(options.File);
        var hold = Hold(file);
        try
        {
            CheckWritable(file);
            var reading = ContextOptions(Connection(file, options, SqliteOpenMode.ReadWriteCreate), options).UseQueryTrackingBehavior(QueryTrackingBehavior.NoTracking).Options;
            var backup = await Prepare(file, options, reading);
            var writer = new SqliteWriter(Connection(file, options, SqliteOpenMode.ReadWrite), connection => new SqliteDbContext(ContextOptions(connection).Options), options);
            return new SqliteStore(hold, writer, reading) { BackupMade = backup };
        }
        catch (Exception e)
        {
            SqliteConnection.ClearAllPools();
            await hold.DisposeAsync();
            if (e is SqliteException sqlite && Translate(sqlite, file) is { } clear)
            {
                throw clear;
            }
            throw;
        }
    }

    /// <inheritdoc/>
    public override async ValueTask DisposeAsync()
    {
        await _writer.DisposeAsync();
        await using (var db = Read())
        {
            SqliteConnection.ClearPool((SqliteConnection)db.Database.GetDbConnection());
        }
        await _hold.DisposeAsync();
    }

    /// <summary>What a person can do about an error of SQLite; null where it is a mistake of ours.</summary>
    internal static StoreException? Translate(SqliteException e, string file) => e.SqliteErrorCode switch
    {
        SQLitePCL.raw.SQLITE_FULL => new StoreException(StoreTrouble.DiskFull, $"The disk of {file} is full. Nothing of this change was saved; make room and try again.", e),
        SQLitePCL.raw.SQLITE_READONLY or SQLitePCL.raw.SQLITE_CANTOPEN or SQLitePCL.raw.SQLITE_PERM =>
            new StoreException(StoreTrouble.ReadOnly, ReadOnlyMessage(file), e),
        // A disk that is full to the last byte cannot grow the file's index either, and that is an error of its own.
        SQLitePCL.raw.SQLITE_IOERR => new StoreException(
            StoreTrouble.DiskFault, $"The disk of {file} could not be written or read ({e.Message}); it may be full, or failing. Nothing of this change was saved; look at the disk and try again.", e),
        SQLitePCL.raw.SQLITE_NOTADB or SQLitePCL.raw.SQLITE_CORRUPT => Damaged(file, e.Message, e),
        SQLitePCL.raw.SQLITE_BUSY or SQLitePCL.raw.SQLITE_LOCKED =>
            new StoreException(StoreTrouble.Busy, $"Another program holds {file}. Nothing of this change was saved; close it and try again.", e),
        _ => null,
    };

    // A lock of the operating system on a file beside the database: it goes when the process goes, however it ends.
    private static FileStream Hold(string file)
    {
        try
        {
            Directory.CreateDirectory(Path.GetDirectoryName(file)!);
            return new FileStream(file + ".lock", FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
        }
        catch (UnauthorizedAccessException e)
        {
            throw new StoreException(StoreTrouble.ReadOnly, ReadOnlyMessage(file), e);
        }
        catch (IOException e) when (File.Exists(file + ".lock") && e.HResult != ReadOnlyDisk)
        {
            throw new StoreException(
                StoreTrouble.InUse, $"Another MenuLab has {file} open. One file serves one host: stop the other, or move the house to PostgreSQL.", e);
        }
        catch (IOException e)
        {
            throw new StoreException(StoreTrouble.ReadOnly, ReadOnlyMessage(file), e);
        }
    }

    private static void CheckWritable(string file)
    {
        if (!File.Exists(file))
        {
            return;
        }
        try
        {
            // The mode as well, since the superuser may write whatever it says.
            if (File.GetAttributes(file).HasFlag(FileAttributes.ReadOnly))
            {
                throw new StoreException(StoreTrouble.ReadOnly, ReadOnlyMessage(file));
            }
            using var open = new FileStream(file, FileMode.Open, FileAccess.ReadWrite, FileShare.ReadWrite);
        }
        catch (UnauthorizedAccessException e)
        {
            throw new StoreException(StoreTrouble.ReadOnly, ReadOnlyMessage(file), e);
        }
    }

    private static async Task<string?> Prepare(string file, SqliteStoreOptions options, DbContextOptions<SqliteDbContext> reading)
    {
        await using var db = new SqliteDbContext(reading);
        await db.Database.OpenConnectionAsync();
        var isNew = await db.Database.SqlQueryRaw<int>("SELECT count(*) AS \"Value\" FROM sqlite_master").SingleAsync() == 0;
        if (!isNew)
        {
            var found = await db.Database.SqlQueryRaw<string>("SELECT quick_check AS \"Value\" FROM pragma_quick_check").ToListAsync();
            if (found is not ["ok"])
            {
                throw Damaged(file, found.FirstOrDefault() ?? "the check says nothing", null);
            }
            await RefuseNewer(db, file);
            await RefuseStranger(db, file);
        }
        string? backup = null;
        if ((await db.Database.GetPendingMigrationsAsync()).Any())
        {
            backup = isNew ? null : await BackUp(db, file, options.Time);
            await Migrate(db, options.LongestMigration, file);
        }
        await db.Database.ExecuteSqlRawAsync("PRAGMA journal_mode=WAL");
        await CheckFrozen(db, file);
        return backup;
    }

    private static async Task RefuseStranger(SqliteDbContext db, string file)
    {
        if (!(await db.Database.GetAppliedMigrationsAsync()).Any())
        {
            throw new StoreException(StoreTrouble.Damaged, $"{file} is a database, but not one of MenuLab. Name another file. Nothing was changed.");
        }
    }

    // Written beside, checked, then named: what carries the name of a backup is one.
    private static async Task<string> BackUp(SqliteDbContext db, string file, TimeProvider time)
    {
        var folder = Path.Combine(Path.GetDirectoryName(file)!, "backups");
        Directory.CreateDirectory(folder);
        var last = (await db.Database.GetAppliedMigrationsAsync()).Last();
        var stamp = time.GetUtcNow().ToString("yyyyMMdd'T'HHmmssfff'Z'", CultureInfo.InvariantCulture);
        var backup = Path.Combine(folder, $"{Path.GetFileNameWithoutExtension(file)}-{stamp}-{last}.db");
        var unchecked_ = backup + ".unfinished";
        File.Delete(unchecked_);
        await db.Database.ExecuteSqlAsync($"VACUUM INTO {unchecked_}");
        await using (var copy = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = unchecked_, Mode = SqliteOpenMode.ReadOnly, Pooling = false }.ToString()))
        {
            await copy.OpenAsync();
            await using var command = copy.CreateCommand();
            command.CommandText = "PRAGMA integrity_check";
            if (await command.ExecuteScalarAsync() is not "ok")
            {
                throw Damaged(file, "its backup does not pass the check", null);
            }
        }
        File.Move(unchecked_, backup);
        return backup;
    }

    private static SqliteConnection Connection(string file, SqliteStoreOptions options, SqliteOpenMode mode) => new(new SqliteConnectionStringBuilder
    {
        DataSource = file, Mode = mode, ForeignKeys = true, DefaultTimeout = (int)Math.Ceiling(options.LongestWait.TotalSeconds),
    }.ToString());

    private static DbContextOptionsBuilder<SqliteDbContext> ContextOptions(SqliteConnection connection, SqliteStoreOptions options)
    {
        // By connection string: a connection is never shared between contexts that read at once.
        using (connection)
        {
            var builder = new DbContextOptionsBuilder<SqliteDbContext>().UseSqlite(connection.ConnectionString).AddInterceptors(new Pragmas(options.MostPages));
            options.Change?.Invoke(builder);
            return builder;
        }
    }

    private static DbContextOptionsBuilder<SqliteDbContext> ContextOptions(DbConnection connection) => new DbContextOptionsBuilder<SqliteDbContext>().UseSqlite(connection);

    private static string ReadOnlyMessage(string file) =>
        $"{file} cannot be written. The file and its folder must belong to the account that runs MenuLab, on a disk that is not read-only. Nothing was changed.";

    private static StoreException Damaged(string file, string what, Exception? inner) =>
        new(StoreTrouble.Damaged, $"{file} is damaged or no database ({what}). Keep it, and restore the newest backup beside it. Nothing was changed.", inner);

    /// <summary>What a connection is told when it opens; SQLite remembers none of it in the file.</summary>
    internal static string PragmasOf(int? mostPages) =>
        "PRAGMA synchronous=FULL;" + (mostPages is { } pages ? string.Create(CultureInfo.InvariantCulture, $"PRAGMA max_page_count={pages};") : "");

    private sealed class Pragmas(int? mostPages) : DbConnectionInterceptor
    {
        public override void ConnectionOpened(DbConnection connection, ConnectionEndEventData eventData)
        {
            using var command = connection.CreateCommand();
            command.CommandText = PragmasOf(mostPages);
            command.ExecuteNonQuery();
        }

        public override Task ConnectionOpenedAsync(DbConnection connection, ConnectionEndEventData eventData, CancellationToken cancellationToken = default)
        {
            ConnectionOpened(connection, eventData);
            return Task.CompletedTask;
        }
    }
}
