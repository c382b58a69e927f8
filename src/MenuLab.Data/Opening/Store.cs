using MenuLab.Data.Writing;
using Microsoft.EntityFrameworkCore;

namespace MenuLab.Data.Opening;

/// <summary>An open database: contexts to read with, and the one way to write.</summary>
public abstract class Store : IAsyncDisposable
{
    /// <summary>All writes go through it.</summary>
    public abstract IWriter Writer { get; }

    /// <summary>The file of the copy that was made before migrating; null when nothing was migrated, or where the server's own backups serve.</summary>
    public string? BackupMade { get; private protected init; }

    /// <summary>A context to read with, for one operation; it tracks nothing.</summary>
    public abstract MenuLabDbContext Read();

    /// <inheritdoc/>
    public abstract ValueTask DisposeAsync();

    /// <summary>Refuses a database with a migration that this version does not know.</summary>
    private protected static async Task RefuseNewer(MenuLabDbContext db, string where)
    {
        var known = db.Database.GetMigrations().ToHashSet(StringComparer.Ordinal);
        var strange = (await db.Database.GetAppliedMigrationsAsync()).FirstOrDefault(m => !known.Contains(m));
        if (strange is not null)
        {
            throw new StoreException(
                StoreTrouble.Newer, $"{where} was made by a newer version of MenuLab (it has \"{strange}\"). Start that version, or restore a backup from before it. Nothing was changed.");
        }
    }

    /// <summary>Migrates within a time, since a lock that a killed migration left is waited for without end.</summary>
    private protected static async Task Migrate(MenuLabDbContext db, TimeSpan longest, string where)
    {
        using var enough = new CancellationTokenSource(longest);
        try
        {
            await db.Database.MigrateAsync(enough.Token);
        }
        catch (Exception e) when (enough.IsCancellationRequested)
        {
            throw new StoreException(
                StoreTrouble.MigrationStuck,
                $"{where} was not migrated within {longest.TotalSeconds:0} s. If an earlier start was cut off, stop every host, run DELETE FROM \"__EFMigrationsLock\" on it, and start again.", e);
        }
    }

    /// <summary>Refuses to run when a table that must be frozen is not.</summary>
    private protected static async Task CheckFrozen(MenuLabDbContext db, string where)
    {
        var there = (await db.Triggers()).ToHashSet(StringComparer.Ordinal);
        var lacking = db.FrozenTables.SelectMany(db.TriggersOf).Where(t => !there.Contains(t)).ToList();
        if (lacking.Count > 0)
        {
            throw new StoreException(
                StoreTrouble.NotFrozen,
                $"{where} lacks the triggers that keep saved work from being changed ({string.Join(", ", lacking)}). Restore a backup, or have them made again before anything is saved.");
        }
    }
}
