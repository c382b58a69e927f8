using MenuLab.Core.Balance;
using MenuLab.Core.Drafts;
using MenuLab.Core.Iterations;
using MenuLab.Data.Drafts;
using MenuLab.Data.Iterations;
using MenuLab.Data.Pantry;
using MenuLab.TestKit.Databases;
using Microsoft.EntityFrameworkCore;

namespace MenuLab.Data.Tests.Schemas;

/// <summary>A small filled database of each released schema: made once by the version that released it, opened by every later one.</summary>
public class ReleasedSchemaTests
{
    [Theory]
    [InlineData("schema-1.db")]
    [InlineData("schema-2.db")]
    public async Task The_database_of_a_released_schema_opens_and_holds_what_was_put_into_it(string fixture)
    {
        await using var database = new SqliteDatabase();
        File.Copy(Path.Combine(AppContext.BaseDirectory, "Schemas", fixture), database.File);
        await using var store = await database.Open();
        await using var db = store.Read();

        var listing = Assert.Single(await db.ListDrafts());
        Assert.Equal(("Harbour fog № 2", "short_sour", Standing.InTheWorks, 2), (listing.Name, listing.Style, listing.Standing, listing.Iterations));
        var draft = (await db.OpenDraft(listing.Id))!;
        Assert.Equal(["30 Åkerholm sea buckthorn purée", "15 Verjus", "22.5 Quince syrup", "5 of Mira's smoke"], draft.Lines.Select(l => l.Text));
        Assert.Equal("below 0.5 % ABV", draft.Brief.Claim);
        Assert.Equal(["Shake.", "Strain."], draft.Build.Steps);
        Assert.NotEmpty(await db.EditsOf(listing.Id));

        var history = await db.HistoryOf(listing.Id);
        Assert.Equal(["softer acid", "a name and a style"], history.Select(i => i.Reason));
        var loaded = (await db.LoadIteration(history[0].Id))!;
        // Written down when the fixture was made: the inputs' hash under engine 1.
        Assert.Equal("16e78fc91569070977e8ba7ece8f5e4beab94ee9c08e8ac593f945714cc6e8b0", loaded.Iteration.Hash.Hex);
        Assert.Equal(loaded.Iteration.Hash, Iteration.HashOf(loaded.Body.Inputs(), loaded.Iteration.Stamp.Engine));
        Assert.Equal(loaded.Iteration.Figures.Ph, loaded.Body.Balance().Served![Metric.Ph].Value);
        var compositions = await db.LoadCompositions(loaded.Lines.Select(l => l.Composition));
        Assert.Equal(3, compositions.Count);
        Assert.NotNull(loaded.Body.Snapshot().Recompute(h => compositions[h], (await db.Sets.SingleAsync()).Measures()).Served);

        Assert.Equal("Verjus", Assert.Single(await db.FindIngredients("verjus")).Name);
        Assert.Equal(1, await db.Readings.CountAsync());
        Assert.Equal(1, await db.Prices.CountAsync());
        Assert.Equal(1, await db.Record.CountAsync());
    }
}
