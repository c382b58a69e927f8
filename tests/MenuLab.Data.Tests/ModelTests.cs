using MenuLab.Core.Pantry;
using MenuLab.Data.Pantry;
using MenuLab.TestKit.Databases;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Metadata;

namespace MenuLab.Data.Tests;

public abstract class ModelTests(TestDatabase database) : StoreTests(database)
{
    [Fact]
    public async Task The_migrations_say_what_the_model_says()
    {
        await using var db = Store.Read();
        Assert.False(db.Database.HasPendingModelChanges());
    }

    [Fact]
    public async Task The_model_that_is_compiled_for_a_quick_start_is_the_one_that_the_code_describes()
    {
        await using var db = Store.Read();
        var described = Say(db.GetService<IDesignTimeModel>().Model);
        Assert.NotEmpty(described);
        Assert.Equal(described, Say(db.Model));

        static List<string> Say(IModel model) =>
        [
            .. model.GetEntityTypes().SelectMany(e =>
                e.GetProperties().Concat(e.GetComplexProperties().SelectMany(c => c.ComplexType.GetProperties()))
                    .Select(p => $"{e.GetTableName()}.{p.GetColumnName()} {p.GetColumnType()} {p.ClrType} {p.IsNullable} {p.GetMaxLength()} {p.IsConcurrencyToken} {p.ValueGenerated} {p.GetTypeMapping().Converter?.GetType()}")
                    .Concat(e.GetKeys().Select(k => $"{e.GetTableName()} key {k.GetName()}"))
                    .Concat(e.GetForeignKeys().Select(f => $"{e.GetTableName()} to {f.PrincipalEntityType.GetTableName()} {f.GetConstraintName()} {f.DeleteBehavior}"))
                    .Concat(e.GetIndexes().Select(i => $"{e.GetTableName()} index {i.GetDatabaseName()} {i.IsUnique}")))
                .Order(StringComparer.Ordinal),
        ];
    }

    [Fact]
    public async Task Ids_come_back_and_are_ordered_as_they_were_made()
    {
        var ids = Enumerable.Range(0, 50).Select(_ => IngredientId.New()).ToList();
        await Store.Writer.Write(async db =>
        {
            foreach (var id in Enumerable.Reverse(ids))
            {
                db.Add(new IngredientRow { Id = id, Name = "x", SearchName = "NEW", Kind = IngredientKind.Water, Basis = "100 g", KeptAtCelsius = 4, IsCarbonated = false, HasRawEgg = false });
            }
            return await db.SaveChangesAsync();
        });
        await using var db = Store.Read();
        Assert.Equal(ids.Order(), await db.Ingredients.Where(i => i.SearchName == "NEW").OrderBy(i => i.Id).Select(i => i.Id).ToListAsync());
    }

    [Fact]
    public async Task All_names_are_snake_case_and_no_table_holds_a_type_of_one_database_alone()
    {
        await using var db = Store.Read();
        string[] types = ["INTEGER", "REAL", "TEXT", "BLOB", "bigint", "integer", "double precision", "text", "bytea", "uuid", "boolean"];
        foreach (var property in db.Model.GetEntityTypes().SelectMany(e => e.GetProperties().Concat(e.GetComplexProperties().SelectMany(c => c.ComplexType.GetProperties()))))
        {
            Assert.Matches("^[a-z][a-z0-9]*(_[a-z0-9]+)*$", property.GetColumnName());
            var type = property.GetColumnType();
            Assert.True(types.Contains(type) || type.StartsWith("character varying(", StringComparison.Ordinal), $"{property.GetColumnName()} is {type}.");
        }
    }

    [Fact]
    public async Task A_person_in_use_is_never_deleted()
    {
        await Harbour.Mix(Store);
        await Assert.ThrowsAnyAsync<Exception>(() => Store.Writer.Write(db => db.People.ExecuteDeleteAsync()));
        await using var db = Store.Read();
        Assert.Equal(1, await db.People.CountAsync());
    }
}

public sealed class ModelTests_on_Sqlite() : ModelTests(new SqliteDatabase());

public sealed class ModelTests_on_Postgres() : ModelTests(new PostgresDatabase());
