using System.Net.Sockets;
using MenuLab.Data.Writing;
using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace MenuLab.Data.Opening;

/// <summary>The database on a PostgreSQL server; several hosts may open it at once. Its backups are the server's own.</summary>
public sealed class PostgresStore : Store
{
    private readonly NpgsqlDataSource _source;
    private readonly DbContextOptions<PostgresDbContext> _reading;

    private PostgresStore(NpgsqlDataSource source)
    {
        _source = source;
        _reading = Options(source).UseQueryTrackingBehavior(QueryTrackingBehavior.NoTracking).Options;
        var writing = Options(source).Options;
        Writer = new PostgresWriter(() => new PostgresDbContext(writing));
    }

    /// <inheritdoc/>
    public override IWriter Writer { get; }

    /// <inheritdoc/>
    public override MenuLabDbContext Read() => new PostgresDbContext(_reading);

    /// <summary>Opens a database on a server and migrates it where it is older.</summary>
    /// <exception cref="StoreException">It cannot be used; nothing was overwritten.</exception>
    public static async Task<PostgresStore> Open(string connectionString, TimeSpan? longestMigration = null)
    {
        var source = NpgsqlDataSource.Create(connectionString);
        var where = $"The database {new NpgsqlConnectionStringBuilder(connectionString).Database}";
        try
        {
            await using var db = new PostgresDbContext(Options(source).Options);
            await RefuseNewer(db, where);
            if ((await db.Database.GetPendingMigrationsAsync()).Any())
            {
                await Migrate(db, longestMigration ?? TimeSpan.FromMinutes(5), where);
            }
            await CheckFrozen(db, where);
            return new PostgresStore(source);
        }
        catch (Exception e)
        {
            await source.DisposeAsync();
            throw e is NpgsqlException { InnerException: SocketException } unreachable
                ? new StoreException(StoreTrouble.Unreachable, $"{where} cannot be reached: {unreachable.Message}", e)
                : e is StoreException ? e : new InvalidOperationException($"{where} cannot be opened: {e.Message}", e);
        }
    }

    /// <inheritdoc/>
    public override ValueTask DisposeAsync() => _source.DisposeAsync();

    private static DbContextOptionsBuilder<PostgresDbContext> Options(NpgsqlDataSource source) => new DbContextOptionsBuilder<PostgresDbContext>().UseNpgsql(source);
}
