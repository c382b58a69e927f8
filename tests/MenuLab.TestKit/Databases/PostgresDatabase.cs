using MenuLab.Data.Opening;
using Npgsql;

namespace MenuLab.TestKit.Databases;

/// <summary>A database on this run's own PostgreSQL server, made from one template that was migrated once.</summary>
public sealed class PostgresDatabase : TestDatabase
{
    private static readonly Lazy<Task> Template = new(MakeTemplate);
    private readonly string _name = $"t{Guid.NewGuid():N}";
    private bool _made;

    /// <inheritdoc/>
    public override string? Missing => PostgresServer.Missing;

    /// <inheritdoc/>
    public override async Task<Store> Open()
    {
        if (!_made)
        {
            await Template.Value;
            await Run($"CREATE DATABASE {_name} TEMPLATE {TemplateName}");
            _made = true;
        }
        return await PostgresStore.Open(ConnectionString);
    }

    /// <summary>Where it is.</summary>
    public string ConnectionString => ConnectionTo(_name);

    /// <inheritdoc/>
    public override async ValueTask DisposeAsync()
    {
        if (_made)
        {
            await Run($"DROP DATABASE {_name} WITH (FORCE)");
        }
    }

    private const string TemplateName = "menulab_template";

    private static string ConnectionTo(string database) =>
        new NpgsqlConnectionStringBuilder(PostgresServer.Running.ConnectionString) { Database = database, Timeout = 15 }.ToString();

    private static async Task MakeTemplate()
    {
        await Run($"CREATE DATABASE {TemplateName}");
        await (await PostgresStore.Open(ConnectionTo(TemplateName))).DisposeAsync();
    }

    private static async Task Run(string sql)
    {
        await using var connection = new NpgsqlConnection(new NpgsqlConnectionStringBuilder(ConnectionTo("postgres")) { Pooling = false }.ToString());
        await connection.OpenAsync();
        await using var command = new NpgsqlCommand(sql, connection);
        await command.ExecuteNonQueryAsync();
    }
}
