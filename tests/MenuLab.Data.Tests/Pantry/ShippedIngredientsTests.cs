using MenuLab.Core.Iterations;
using MenuLab.Core.Pantry;
using MenuLab.Data.Iterations;
using MenuLab.Data.Pantry;
using MenuLab.Data.Seeding;
using MenuLab.TestKit.Databases;
using Microsoft.EntityFrameworkCore;

namespace MenuLab.Data.Tests.Pantry;

public abstract class ShippedIngredientsTests(TestDatabase database) : StoreTests(database)
{
    private static readonly PantryList Shipped = SeedData.Load(SeedData.DefaultFolder).Pantry;

    [Fact]
    public async Task All_shipped_ingredients_come_back_from_the_database_with_the_very_same_composition()
    {
        var taken = await ShippedIngredients.TakeIn(Store.Writer, Shipped, 1, Harbour.Noon);
        Assert.Equal(Shipped.All.Count, taken.Added);
        await using var db = Store.Read();
        var pantry = await db.LoadPantry();
        Assert.Equal(Shipped.All.Count + Harbour.Pantry.All.Count, pantry.All.Count);
        foreach (var expected in Shipped.All)
        {
            var actual = pantry.Find(expected.Id)!;
            Assert.Equal((expected.Key, expected.Name, expected.Kind, expected.Basis, expected.KeptAtCelsius, expected.Note), (actual.Key, actual.Name, actual.Kind, actual.Basis, actual.KeptAtCelsius, actual.Note));
            Assert.Equal(CompositionText.Hash(expected.Composition), CompositionText.Hash(actual.Composition));
            Assert.Equal(expected.Aliases, actual.Aliases);
            Assert.Equal(expected.AliasAssumptions.OrderBy(a => a.Key), actual.AliasAssumptions.OrderBy(a => a.Key));
            Assert.Equal(expected.AllergenFacts.OrderBy(a => a.Allergen), actual.AllergenFacts);
            Assert.Equal(expected.Pieces.OrderBy(p => p.Measure, StringComparer.Ordinal), actual.Pieces);
            Assert.Equal(expected.Figures.OrderBy(f => f.Quantity, StringComparer.Ordinal), actual.Figures);
        }
    }

    [Fact]
    public async Task Taking_an_edition_in_twice_changes_nothing()
    {
        await ShippedIngredients.TakeIn(Store.Writer, Shipped, 1, Harbour.Noon);
        Assert.Equal(EditionTaken.Nothing, await ShippedIngredients.TakeIn(Store.Writer, Shipped, 1, Harbour.Noon));
    }

    [Fact]
    public async Task A_new_edition_moves_untouched_figures_keeps_the_houses_and_lists_what_differs_and_no_iteration_notices()
    {
        await ShippedIngredients.TakeIn(Store.Writer, new PantryList(Shipped.All.Concat(Harbour.Pantry.All)), 1, Harbour.Noon);
        var lemon = Shipped.Find("lemon_juice")!;
        var lime = Shipped.Find("lime_juice")!;
        await Store.Writer.Write(async db =>
        {
            var row = await db.Ingredients.AsTracking().AsSplitQuery().SingleAsync(i => i.Id == lime.Id);
            row.Figures.Add(new FigureRow { Quantity = lime.Figures[0].Quantity, Value = lime.Figures[0].Value * 1.01, Source = "ours", Status = FigureStatus.Assumed, Origin = "house" });
            return await db.SaveChangesAsync();
        });
        var draft = await Harbour.Mix(Store);
        var saved = (await Harbour.Iterations(Store).Save(await Harbour.ToSave(Store, draft))).Value;
        byte[] inputs;
        await using (var db = Store.Read())
        {
            inputs = (await db.LoadIteration(saved.Id))!.Body.Inputs();
        }

        // Edition 2: another first figure for both juices, and without verjus, which a draft holds, and a juice that none does.
        var dropped = Shipped.All.First(i => i.Kind == IngredientKind.Vinegar);
        var edition2 = new PantryList(Shipped.All.Where(i => i.Id != dropped.Id).Select(i => Moved(i, i.Id == lemon.Id || i.Id == lime.Id ? 1.02 : 1)).Append(Harbour.Quince).Append(Harbour.Buckthorn));
        var taken = await ShippedIngredients.TakeIn(Store.Writer, edition2, 2, Harbour.Noon);

        Assert.Equal(new FigureToDecide(lime.Name, lime.Figures[0].Quantity, lime.Figures[0].Value, lime.Figures[0].Value * 1.02), Assert.Single(taken.ToDecide, d => d.Ingredient == lime.Name));
        Assert.Equal(1, taken.Archived);
        await using var after = Store.Read();
        Assert.NotNull((await after.Ingredients.SingleAsync(i => i.Id == dropped.Id)).ArchivedAt);
        Assert.Null((await after.Ingredients.SingleAsync(i => i.Id == Harbour.Verjus.Id)).ArchivedAt);
        var pantry = await after.LoadPantry();
        Assert.Equal(lemon.Figures[0].Value * 1.02, pantry.Find(lemon.Id)!.Figures.Single(f => f.Quantity == lemon.Figures[0].Quantity).Value);
        Assert.Equal(["house", "shipped 2"], pantry.Find(lime.Id)!.Figures.Where(f => f.Quantity == lime.Figures[0].Quantity).Select(f => f.Origin));
        Assert.NotEqual(CompositionText.Hash(lemon.Composition), CompositionText.Hash(pantry.Find(lemon.Id)!.Composition));
        Assert.Equal(inputs, (await after.LoadIteration(saved.Id))!.Body.Inputs());
        Assert.NotEmpty(await after.LoadCompositions([CompositionText.Hash(lemon.Composition)]));
    }

    private static Ingredient Moved(Ingredient from, double firstFigure) => new()
    {
        Id = from.Id, Key = from.Key, Name = from.Name, Kind = from.Kind, Basis = from.Basis, KeptAtCelsius = from.KeptAtCelsius, Aliases = from.Aliases,
        AliasAssumptions = from.AliasAssumptions, AllergenFacts = from.AllergenFacts, Pieces = from.Pieces, Note = from.Note, Composition = from.Composition,
        Figures = [.. from.Figures.Select((f, i) => f with { Value = i == 0 ? f.Value * firstFigure : f.Value, Origin = "shipped 2" })],
    };
}

public sealed class ShippedIngredientsTests_on_Sqlite() : ShippedIngredientsTests(new SqliteDatabase());

public sealed class ShippedIngredientsTests_on_Postgres() : ShippedIngredientsTests(new PostgresDatabase());
