using System.Reflection;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Diagnostics;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;
using Microsoft.EntityFrameworkCore.Migrations.Internal;

namespace MenuLab.Data.Tests.Opening;

/// <summary>A migration that comes after all that there are, so that today's databases can be tried as old ones.</summary>
[Migration(Name)]
public sealed class Future : Migration
{
    private const string Name = "29980101000000_Future";

    public static void AddTo(DbContextOptionsBuilder options) => options.ReplaceService<IMigrationsAssembly, WithFuture>();

    protected override void Up(MigrationBuilder migrationBuilder) => migrationBuilder.Sql("CREATE TABLE future (what TEXT)");

    // The list of migrations has no public way in.
#pragma warning disable EF1001
    private sealed class WithFuture(
        ICurrentDbContext context, IDbContextOptions options, IMigrationsIdGenerator ids, IDiagnosticsLogger<DbLoggerCategory.Migrations> logger)
        : MigrationsAssembly(context, options, ids, logger)
    {
        public override IReadOnlyDictionary<string, TypeInfo> Migrations => new SortedDictionary<string, TypeInfo>(base.Migrations.ToDictionary(m => m.Key, m => m.Value), StringComparer.Ordinal)
        {
            [Name] = typeof(Future).GetTypeInfo(),
        };
    }
#pragma warning restore EF1001
}
