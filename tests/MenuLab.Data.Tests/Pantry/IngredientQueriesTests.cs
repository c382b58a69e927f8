using MenuLab.Data.Pantry;
using MenuLab.TestKit.Databases;
using Microsoft.EntityFrameworkCore;

namespace MenuLab.Data.Tests.Pantry;

public abstract class IngredientQueriesTests(TestDatabase database) : StoreTests(database)
{
    [Theory]
    [InlineData("åkerholm", "Åkerholm sea buckthorn purée")]
    [InlineData("BUCKTHORN PUREE", "Åkerholm sea buckthorn purée")]
    [InlineData("sanddorn made_up_2", "Verjus")]
    [InlineData("", "Verjus", "Åkerholm sea buckthorn purée", "Quince syrup")]
    [InlineData("%")]
    public async Task An_ingredient_is_found_by_part_of_its_name_or_alias_whatever_its_marks(string text, params string[] names)
    {
        await using var db = Store.Read();
        var found = (await db.FindIngredients(text)).Select(i => i.Name).ToList();
        Assert.Equal(names.Order(StringComparer.Ordinal), found.Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task Names_that_begin_with_the_text_come_first()
    {
        await using var db = Store.Read();
        Assert.Equal("Quince syrup", (await db.FindIngredients("q"))[0].Name);
        Assert.Equal("Verjus", (await db.FindIngredients("ver"))[0].Name);
    }

    [Fact]
    public async Task An_ingredient_comes_back_with_its_figures_and_what_nobody_knows_as_nothing()
    {
        await using var db = Store.Read();
        var verjus = await db.Ingredients.SingleAsync(i => i.Id == Harbour.Verjus.Id);
        Assert.Equal([(null, 0, 2), (3.1, null, null)], verjus.Figures.OrderBy(f => f.Quantity).Select(f => (f.Value, f.Low, f.High)));
    }
}

public sealed class IngredientQueriesTests_on_Sqlite() : IngredientQueriesTests(new SqliteDatabase());

public sealed class IngredientQueriesTests_on_Postgres() : IngredientQueriesTests(new PostgresDatabase());
