using MenuLab.Core.Drafts;
using MenuLab.Data.Conversions;
using MenuLab.Data.Freezing;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;

namespace MenuLab.Data;

/// <summary>The database in one SQLite file.</summary>
public sealed class SqliteDbContext(DbContextOptions<SqliteDbContext> options) : MenuLabDbContext(options)
{
    private protected override Type IdConverter => typeof(IdAsBytes<>);

    // One writer and one host: nobody else can change the draft within this transaction.
    public override Task Hold(DraftId draft) => Task.CompletedTask;

    public override Task HoldCaptures() => Task.CompletedTask;

    internal override async Task<IReadOnlyList<string>> Triggers() =>
        await Database.SqlQueryRaw<string>("SELECT name AS \"Value\" FROM sqlite_master WHERE type = 'trigger'").ToListAsync();

    internal override IEnumerable<string> TriggersOf(FrozenTable table) => FreezeMigration.SqliteTriggers.Select(t => $"frozen_{table.Table}_{t}");

    protected override void ConfigureConventions(ModelConfigurationBuilder configurationBuilder)
    {
        base.ConfigureConventions(configurationBuilder);
        configurationBuilder.Properties<Guid>().HaveConversion<GuidBytes>();
    }
}

// For dotnet ef, which makes migrations from the model alone.
internal sealed class SqliteAtDesignTime : IDesignTimeDbContextFactory<SqliteDbContext>
{
    public SqliteDbContext CreateDbContext(string[] args) => new(new DbContextOptionsBuilder<SqliteDbContext>().UseSqlite("Data Source=:memory:").Options);
}
