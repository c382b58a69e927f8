using System.Security.Cryptography;
using MenuLab.Core.Drafts;
using MenuLab.Data.Drafts;
using MenuLab.Data.Opening;
using MenuLab.TestKit.Databases;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace MenuLab.Data.Tests.Opening;

public sealed class SqliteStoreTests : IAsyncDisposable
{
    private readonly SqliteDatabase _database = new();

    private string DatabaseFile => _database.File;

    public ValueTask DisposeAsync() => _database.DisposeAsync();

    [Fact]
    public async Task A_missing_file_is_made_with_its_folder_in_WAL_and_fully_synchronous()
    {
        var file = Path.Combine(_database.Folder, "new", "folder", "house.db");
        await using var store = await SqliteStore.Open(new SqliteStoreOptions { File = file });
        await using var db = store.Read();
        Assert.Equal("wal", await Pragma(db, "journal_mode"));
        Assert.Equal("2", await Pragma(db, "synchronous"));
        Assert.Equal("1", await Pragma(db, "foreign_keys"));
        Assert.Null(store.BackupMade);
    }

    [Fact]
    public async Task A_second_host_is_told_who_has_the_file_and_may_open_it_once_the_first_has_gone()
    {
        var first = await _database.Open();
        await Harbour.Mix(await Harbour.Furnished(first));
        await Refused(StoreTrouble.InUse);
        await first.DisposeAsync();
        await (await _database.Open()).DisposeAsync();
    }

    [Theory]
    [InlineData("This was a shopping list once, and somebody named it house.db.")]
    [InlineData("SQLite format 3\0 and then nothing that belongs there")]
    public async Task A_file_that_is_no_database_is_refused_and_left_as_it_is(string content)
    {
        await File.WriteAllTextAsync(DatabaseFile, content);
        await Refused(StoreTrouble.Damaged);
    }

    [Fact]
    public async Task A_database_with_a_damaged_page_is_refused_and_left_as_it_is()
    {
        await Make();
        var bytes = await File.ReadAllBytesAsync(DatabaseFile);
        RandomNumberGenerator.Fill(bytes.AsSpan(4096 * 6, 4096));
        await File.WriteAllBytesAsync(DatabaseFile, bytes);
        await Refused(StoreTrouble.Damaged);
    }

    [Fact]
    public async Task A_database_of_another_program_is_refused_and_left_as_it_is()
    {
        await Sql("CREATE TABLE stock (what TEXT)");
        await Refused(StoreTrouble.Damaged);
    }

    [Fact]
    public async Task A_database_of_a_newer_version_is_refused_by_the_name_of_what_is_new()
    {
        await Make();
        await Sql("INSERT INTO __EFMigrationsHistory VALUES ('29990101000000_Tastings', '99.0')");
        Assert.Contains("29990101000000_Tastings", (await Refused(StoreTrouble.Newer)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_read_only_file_is_refused_even_to_the_superuser()
    {
        await Make();
        File.SetAttributes(DatabaseFile, FileAttributes.ReadOnly);
        await Refused(StoreTrouble.ReadOnly);
        File.SetAttributes(DatabaseFile, FileAttributes.Normal);
    }

    [Fact]
    public async Task A_folder_that_cannot_be_made_is_told()
    {
        await File.WriteAllTextAsync(Path.Combine(_database.Folder, "taken"), "a file, not a folder");
        var e = await Assert.ThrowsAsync<StoreException>(() => SqliteStore.Open(new SqliteStoreOptions { File = Path.Combine(_database.Folder, "taken", "house.db") }));
        Assert.Equal(StoreTrouble.ReadOnly, e.Trouble);
    }

    [Fact]
    public async Task A_database_whose_saved_work_is_not_frozen_is_refused()
    {
        await Make();
        await Sql("DROP TRIGGER frozen_iterations_insert");
        Assert.Contains("frozen_iterations_insert", (await Refused(StoreTrouble.NotFrozen)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_migration_that_was_cut_off_is_told_with_the_way_out_instead_of_waiting_for_ever()
    {
        await Make();
        // Nothing is pending: the row that a killed migration left is not even asked for.
        await Sql("CREATE TABLE IF NOT EXISTS __EFMigrationsLock (Id INTEGER PRIMARY KEY, Timestamp TEXT NOT NULL); INSERT INTO __EFMigrationsLock VALUES (1, '2026-11-03')");
        await (await _database.Open()).DisposeAsync();

        var options = new SqliteStoreOptions { File = DatabaseFile, Change = Future.AddTo, LongestMigration = TimeSpan.FromSeconds(2) };
        var e = await Assert.ThrowsAsync<StoreException>(() => SqliteStore.Open(options));
        Assert.Equal(StoreTrouble.MigrationStuck, e.Trouble);
        Assert.Contains("__EFMigrationsLock", e.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_older_database_is_backed_up_before_it_is_migrated()
    {
        await Make();
        await using var store = await SqliteStore.Open(new SqliteStoreOptions { File = DatabaseFile, Change = Future.AddTo, Time = new Clock() });

        await using var db = store.Read();
        Assert.Equal(1, await db.Drafts.CountAsync());
        Assert.Equal(1, await db.Database.SqlQueryRaw<int>("SELECT count(*) AS \"Value\" FROM sqlite_master WHERE name = 'future'").SingleAsync());
        Assert.Equal([store.BackupMade!], Directory.GetFiles(Path.Combine(_database.Folder, "backups")));
        Assert.StartsWith("house-20261103T120000000Z-", Path.GetFileName(store.BackupMade), StringComparison.Ordinal);

        // The backup is the database as it was: this version opens it and finds the draft.
        await using var older = await SqliteStore.Open(new SqliteStoreOptions { File = store.BackupMade! });
        await using var before = older.Read();
        Assert.Equal(1, await before.Drafts.CountAsync());
        Assert.Equal(0, await before.Database.SqlQueryRaw<int>("SELECT count(*) AS \"Value\" FROM sqlite_master WHERE name = 'future'").SingleAsync());
    }

    [Fact]
    public async Task A_database_that_needs_no_migration_is_not_backed_up()
    {
        await Make();
        await using var store = await _database.Open();
        Assert.Null(store.BackupMade);
        Assert.False(Directory.Exists(Path.Combine(_database.Folder, "backups")));
    }

    [Fact]
    public async Task A_full_disk_is_told_to_whoever_saves_and_what_was_saved_before_stays()
    {
        DraftId kept;
        await using (var store = await _database.Open())
        {
            kept = await Harbour.Mix(await Harbour.Furnished(store));
        }
        var pages = (int)(new FileInfo(DatabaseFile).Length / 4096);
        await using var full = await SqliteStore.Open(new SqliteStoreOptions { File = DatabaseFile, MostPages = pages });
        var drafts = Harbour.Drafts(full);
        var saved = 0;
        StoreException? told = null;
        for (var i = 0; i < 500 && told is null; i++)
        {
            try
            {
                saved += (await drafts.Start(DraftId.New(), $"{i} {new string('q', 70)}", Harbour.Somebody)).IsOk ? 1 : 0;
            }
            catch (StoreException e)
            {
                told = e;
            }
        }
        Assert.Equal(StoreTrouble.DiskFull, told!.Trouble);
        await using var db = full.Read();
        Assert.Equal(1 + saved, (await db.ListDrafts()).Count);
        Assert.Equal(3, (await db.OpenDraft(kept))!.Lines.Count);
        Assert.Equal("ok", await Pragma(db, "integrity_check"));

        // And with room again, writing goes on.
        await full.DisposeAsync();
        await using var roomy = await _database.Open();
        Assert.True((await Harbour.Drafts(roomy).Start(DraftId.New(), "with room", Harbour.Somebody)).IsOk);
    }

    [Fact]
    public async Task A_file_held_by_another_program_is_told_after_the_wait_and_nothing_is_lost()
    {
        await using var store = await SqliteStore.Open(new SqliteStoreOptions { File = DatabaseFile, LongestWait = TimeSpan.FromSeconds(1) });
        await Harbour.Furnished(store);
        await using var other = new SqliteConnection($"Data Source={DatabaseFile};Pooling=False");
        await other.OpenAsync();
        await using (var transaction = other.BeginTransaction(deferred: false))
        {
            var e = await Assert.ThrowsAsync<StoreException>(() => Harbour.Drafts(store).Start(DraftId.New(), "Fog", Harbour.Somebody));
            Assert.Equal(StoreTrouble.Busy, e.Trouble);
        }
        Assert.True((await Harbour.Drafts(store).Start(DraftId.New(), "Fog", Harbour.Somebody)).IsOk);
    }

    [Fact]
    public async Task An_unreachable_server_is_told()
    {
        var e = await Assert.ThrowsAsync<StoreException>(() => PostgresStore.Open("Host=127.0.0.1;Port=1;Database=house;Username=x;Timeout=2"));
        Assert.Equal(StoreTrouble.Unreachable, e.Trouble);
    }

    private async Task<StoreException> Refused(StoreTrouble trouble)
    {
        var before = await Hash();
        var e = await Assert.ThrowsAsync<StoreException>(() => SqliteStore.Open(new SqliteStoreOptions { File = DatabaseFile }));
        Assert.Equal(trouble, e.Trouble);
        Assert.Contains(DatabaseFile, e.Message, StringComparison.Ordinal);
        Assert.Equal(before, await Hash());
        return e;
    }

    private async Task<string> Hash()
    {
        await using var file = new FileStream(DatabaseFile, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
        return Convert.ToHexString(await SHA256.HashDataAsync(file));
    }

    private async Task Make()
    {
        await using var store = await _database.Open();
        await Harbour.Mix(await Harbour.Furnished(store));
    }

    private async Task Sql(string sql)
    {
        await using var connection = new SqliteConnection($"Data Source={DatabaseFile};Pooling=False");
        await connection.OpenAsync();
        await using var command = connection.CreateCommand();
        command.CommandText = sql;
        await command.ExecuteNonQueryAsync();
    }

    private static async Task<string?> Pragma(MenuLabDbContext db, string name)
    {
        await db.Database.OpenConnectionAsync();
        await using var command = db.Database.GetDbConnection().CreateCommand();
        command.CommandText = $"PRAGMA {name}";
        return Convert.ToString(await command.ExecuteScalarAsync(), System.Globalization.CultureInfo.InvariantCulture);
    }

    private sealed class Clock : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => Harbour.Noon;
    }
}
