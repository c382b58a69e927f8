using MenuLab.Core.Drafts;
using MenuLab.Data.Conversions;
using MenuLab.Data.Freezing;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;

namespace MenuLab.Data;

/// <summary>The database on a PostgreSQL server, for houses with several machines.</summary>
public sealed class PostgresDbContext(DbContextOptions<PostgresDbContext> options) : MenuLabDbContext(options)
{
    private protected override Type IdConverter => typeof(IdAsGuid<>);

    // By itself, and before the draft is read: rows joined to a locked one are as old as the statement.
    public override Task Hold(DraftId draft) => Database.ExecuteSqlAsync($"SELECT 1 FROM drafts WHERE id = {draft.Value} FOR UPDATE");

    // No row stands for the order of arrival, so a number of the database's own does; it is let go with the transaction.
    public override Task HoldCaptures() => Database.ExecuteSqlAsync($"SELECT pg_advisory_xact_lock({CapturesLock})");

    private const long CapturesLock = 0x4361_7074;

    internal override async Task<IReadOnlyList<string>> Triggers() =>
        await Database.SqlQueryRaw<string>("SELECT tgname::text AS \"Value\" FROM pg_trigger WHERE NOT tgisinternal AND tgenabled = 'O'").ToListAsync();

    internal override IEnumerable<string> TriggersOf(FrozenTable table) => FreezeMigration.PostgresTriggers.Select(t => $"frozen_{table.Table}_{t}");
}

internal sealed class PostgresAtDesignTime : IDesignTimeDbContextFactory<PostgresDbContext>
{
    public PostgresDbContext CreateDbContext(string[] args) => new(new DbContextOptionsBuilder<PostgresDbContext>().UseNpgsql("Host=nowhere").Options);
}
