using MenuLab.Core.Pantry;
using MenuLab.Core.Solutions;
using MenuLab.Data.House;
using MenuLab.Data.Pantry;
using MenuLab.TestKit.Databases;
using Microsoft.EntityFrameworkCore;

namespace MenuLab.Data.Tests.Pantry;

public abstract class PantryWritingTests(TestDatabase database) : StoreTests(database)
{
    private static readonly DateOnly Today = new(2026, 11, 3);

    private PantryWriting Pantry => new(Store.Writer, new Noon());

    [Fact]
    public async Task A_new_ingredient_has_all_allergens_as_open_questions_and_nothing_known_as_zero()
    {
        var id = await Added("Beet-leaf cordial");
        var cordial = await Load(id);
        Assert.All(Enum.GetValues<Allergen>(), a => Assert.Equal(AllergenState.Unknown, cordial.Composition.Allergens[a]));
        Assert.False(cordial.Composition.Knows(Composition.TotalSugarKnown));
        Assert.False(cordial.Composition.Knows(Composition.TotalAcidKnown));
        Assert.Empty(cordial.Figures);
    }

    [Fact]
    public async Task Adding_the_same_one_twice_adds_one_and_a_second_of_that_name_is_a_problem()
    {
        var id = IngredientId.New();
        var wish = new NewIngredient(id, "Gentian-root tea", IngredientKind.TeaOrCoffee, "100 mL", 4);
        await Pantry.Add(wish, Harbour.Somebody);
        Assert.Equal(id, (await Pantry.Add(wish, Harbour.Somebody)).Value);
        var second = await Pantry.Add(wish with { Id = IngredientId.New(), Name = " gentian-root  TEA " }, Harbour.Somebody);
        Assert.Equal("name", Assert.Single(second.Problems).Field);
    }

    [Theory]
    [InlineData("", 4, "name")]
    [InlineData("Quince\nsyrup", 4, "name")]
    [InlineData("Fennel tea", 400, "kept")]
    [InlineData("Fennel tea", double.NaN, "kept")]
    public async Task A_new_ingredient_that_cannot_be_is_told_by_its_field(string name, double kept, string field)
    {
        var added = await Pantry.Add(new NewIngredient(IngredientId.New(), name, IngredientKind.TeaOrCoffee, "100 mL", kept), Harbour.Somebody);
        Assert.Equal(field, Assert.Single(added.Problems).Field);
    }

    [Fact]
    public async Task A_house_figure_counts_before_the_shipped_one_and_taken_away_the_shipped_one_counts_again()
    {
        var (id, shipped) = await Shipped();
        var before = (await Load(id)).Composition;

        var set = await Pantry.SetFigures(id, 0, [Figure("total_sugars_g", 6)], Harbour.Somebody);
        Assert.Equal(6, SugarPer100Grams(await Load(id)), 1e-9);
        Assert.Contains(shipped, (await Load(id)).Figures);

        Assert.True((await Pantry.SetFigures(id, set.Value, [HouseFigure.TakeAway("total_sugars_g")], Harbour.Somebody)).IsOk);
        var after = await Load(id);
        Assert.Equal(before.PerGram, after.Composition.PerGram);
        Assert.Equal([shipped], after.Figures.Where(f => f.Quantity == "total_sugars_g"));
    }

    [Fact]
    public async Task A_house_that_says_nobody_knows_makes_a_shipped_figure_unknown_and_not_zero()
    {
        var (id, _) = await Shipped();
        Assert.True((await Pantry.SetFigures(id, 0, [new HouseFigure("total_sugars_g", null, null, null, "label does not say", FigureStatus.Assumed)], Harbour.Somebody)).IsOk);
        Assert.False((await Load(id)).Composition.Knows(Composition.TotalSugarKnown));
    }

    [Theory]
    [InlineData("total_sugars_g", -1.0, null, null, "less than nothing")]
    [InlineData("total_sugars_g", 101.0, null, null, "between 0 and 100")]
    [InlineData("total_sugars_g", double.PositiveInfinity, null, null, "cannot be")]
    [InlineData("total_sugars_g", double.NaN, null, null, "cannot be")]
    [InlineData("ph", 15.0, null, null, "between 0 and 14")]
    [InlineData("ph", null, 4.0, 3.0, "low end lies above")]
    [InlineData("ph", 5.0, 3.0, 4.0, "outside its own")]
    [InlineData("ph", null, 3.0, null, "At least")]
    [InlineData("sparkle", 1.0, null, null, "no figure called")]
    public async Task A_figure_that_cannot_be_is_refused_with_a_sentence_and_nothing_changes(string quantity, double? value, double? low, double? high, string says)
    {
        var (id, _) = await Shipped();
        var set = await Pantry.SetFigures(id, 0, [Figure("fibre_g", 0.1), new HouseFigure(quantity, value, low, high, "label", FigureStatus.Confirmed)], Harbour.Somebody);
        Assert.Contains(says, Assert.Single(set.Problems).Message, StringComparison.Ordinal);
        Assert.Equal(quantity, set.Problems[0].Field);
        await using var db = Store.Read();
        var row = await db.Ingredients.SingleAsync(i => i.Id == id);
        Assert.Equal(0, row.Version);
        Assert.DoesNotContain(row.Figures, f => f.Quantity == "fibre_g" && f.Origin == "house" && f.Value == 0.1);
    }

    [Fact]
    public async Task Parts_that_add_up_to_more_than_the_whole_are_refused_and_nothing_is_kept_of_them()
    {
        var (id, _) = await Shipped();
        var set = await Pantry.SetFigures(id, 0, [Figure("total_sugars_g", 80), Figure("protein_g", 40)], Harbour.Somebody);
        Assert.Contains("more than the whole", Assert.Single(set.Problems).Message, StringComparison.Ordinal);
        await using var db = Store.Read();
        var row = await db.Ingredients.SingleAsync(i => i.Id == id);
        Assert.Equal(0, row.Version);
        Assert.DoesNotContain(row.Figures, f => f.Origin == "house" && f.Quantity == "protein_g");
    }

    [Fact]
    public async Task Whoever_saves_second_is_told_and_loses_nothing_of_the_first()
    {
        var (id, _) = await Shipped();
        Assert.Equal(1, (await Pantry.SetFigures(id, 0, [Figure("total_sugars_g", 6)], Harbour.Somebody)).Value);
        var second = await Pantry.SetFigures(id, 0, [Figure("total_sugars_g", 9)], Harbour.Somebody);
        Assert.Equal(PantryWriting.SomebodyElse, Assert.Single(second.Problems).Field);
        Assert.Equal(6, SugarPer100Grams(await Load(id)), 1e-9);
    }

    [Fact]
    public async Task Of_two_who_save_at_once_one_is_told()
    {
        var (id, _) = await Shipped();
        var saved = await Task.WhenAll(Enumerable.Range(1, 4).Select(i => Pantry.SetFigures(id, 0, [Figure("total_sugars_g", i)], Harbour.Somebody)));
        Assert.Single(saved, s => s.IsOk);
        Assert.All(saved.Where(s => !s.IsOk), s => Assert.Equal(PantryWriting.SomebodyElse, Assert.Single(s.Problems).Field));
    }

    [Fact]
    public async Task A_reading_outranks_the_houses_figure_and_a_correction_outranks_the_reading()
    {
        var (id, _) = await Shipped();
        var version = (await Pantry.SetFigures(id, 0, [Figure("ph", 3.4)], Harbour.Somebody)).Value;
        var first = new NewReading(ReadingId.New(), "ph", 2.8, "", 21, Today, "bottle 2");
        version = (await Pantry.AddReading(id, version, first, Harbour.Somebody)).Value;
        Assert.Equal((2.8, FigureStatus.Measured), Best(await Load(id), "ph"));

        version = (await Pantry.AddReading(id, version, first with { Id = ReadingId.New(), Value = 2.9, Replaces = first.Id }, Harbour.Somebody)).Value;
        Assert.Equal((2.9, FigureStatus.Measured), Best(await Load(id), "ph"));
        await using var db = Store.Read();
        var readings = (await db.OpenSheet(await Load(id), FirstRows.FirstSite))!.Readings;
        Assert.Equal([(2.9, true, false), (2.8, false, true)], readings.Select(r => (r.Value, r.Counts, r.IsCorrected)));
        Assert.Equal(version, (await db.OpenSheet(await Load(id), FirstRows.FirstSite))!.Version);
    }

    [Fact]
    public async Task An_older_reading_that_is_entered_later_does_not_count()
    {
        var (id, _) = await Shipped();
        var version = (await Pantry.AddReading(id, 0, new NewReading(ReadingId.New(), "brix", 7.4, "°Bx", null, Today, ""), Harbour.Somebody)).Value;
        await Pantry.AddReading(id, version, new NewReading(ReadingId.New(), "brix", 6.1, "°Bx", null, Today.AddDays(-30), ""), Harbour.Somebody);
        Assert.Equal((7.4, FigureStatus.Measured), Best(await Load(id), "brix"));
    }

    [Fact]
    public async Task A_titration_is_per_volume_and_becomes_a_figure_per_mass_by_the_density_that_was_read()
    {
        var (id, _) = await Shipped();
        var version = (await Pantry.AddReading(id, 0, new NewReading(ReadingId.New(), "titration", 25.2, "g/L", 20, Today, ""), Harbour.Somebody)).Value;
        await Pantry.AddReading(id, version, new NewReading(ReadingId.New(), "density", 1.05, "g/mL", 20, Today, ""), Harbour.Somebody);
        Assert.Equal(2.52 / 1.05, Best(await Load(id), "ta_citric_g").Value, 1e-9);
        Assert.Equal(1.05, (await Load(id)).Composition.GramsPerMillilitre, 1e-9);
    }

    [Theory]
    [InlineData("ph", 14.5, "", "value")]
    [InlineData("brix", -1.0, "°Bx", "value")]
    [InlineData("density", double.NaN, "g/mL", "value")]
    [InlineData("brix", 5.0, "g/L", "reading")]
    [InlineData("taste", 5.0, "", "reading")]
    public async Task A_reading_that_cannot_be_is_refused(string kind, double value, string unit, string field)
    {
        var (id, _) = await Shipped();
        var added = await Pantry.AddReading(id, 0, new NewReading(ReadingId.New(), kind, value, unit, null, Today, ""), Harbour.Somebody);
        Assert.Equal(field, Assert.Single(added.Problems).Field);
    }

    [Fact]
    public async Task A_reading_that_is_sent_again_is_there_once()
    {
        var (id, _) = await Shipped();
        var reading = new NewReading(ReadingId.New(), "ph", 2.8, "", null, Today, "");
        var first = await Pantry.AddReading(id, 0, reading, Harbour.Somebody);
        Assert.Equal(first.Value, (await Pantry.AddReading(id, 0, reading, Harbour.Somebody)).Value);
        await using var db = Store.Read();
        Assert.Equal(1, await db.Readings.CountAsync(r => r.Ingredient == id));
    }

    [Fact]
    public async Task That_an_allergen_is_absent_needs_somebody_who_read_the_label_and_the_record_keeps_who()
    {
        var id = await Added("Toasted barley cordial");
        var unsaid = await Pantry.SetAllergens(id, 1, [new AllergenWord(Allergen.Milk, AllergenState.Absent, " ", "")], Harbour.Somebody);
        Assert.Equal("allergens", Assert.Single(unsaid.Problems).Field);

        var said = await Pantry.SetAllergens(
            id, 1, [new AllergenWord(Allergen.Milk, AllergenState.Absent, "read the label", ""), new AllergenWord(Allergen.Gluten, AllergenState.Present, "", "barley")], Harbour.Somebody);
        var cordial = await Load(id);
        Assert.Equal(AllergenState.Absent, cordial.Composition.Allergens[Allergen.Milk]);
        Assert.Equal(AllergenState.Present, cordial.Composition.Allergens[Allergen.Gluten]);
        Assert.Equal("barley", cordial.AllergenFacts.Single(f => f.Allergen == Allergen.Gluten).Note);
        await using var db = Store.Read();
        var sheet = (await db.OpenSheet(cordial, FirstRows.FirstSite))!;
        Assert.Equal(said.Value, sheet.Version);
        Assert.Contains(new AllergenSaid("Milk", "Absent", "read the label", Harbour.Somebody, Harbour.Noon), sheet.AllergensSaid);
    }

    [Fact]
    public async Task Name_roles_and_other_ways_to_write_it_change_and_the_search_finds_it_by_them()
    {
        var id = await Added("Saline");
        var card = new IngredientCard("Smoked saline", IngredientKind.AcidSaltOrGum, 22, "from smoked salt", ["salt", "body"], ["smoky brine", "Räuchersalzlake"], HasRawEgg: false);
        Assert.True((await Pantry.Describe(id, 1, card, Harbour.Somebody)).IsOk);
        await using var db = Store.Read();
        Assert.Equal("Smoked saline", Assert.Single(await db.FindIngredients("rauchersalz")).Name);
        Assert.Equal(["body", "salt"], (await db.RolesOfAll())[id]);
        Assert.Equal(22, (await Load(id)).KeptAtCelsius);

        var refused = await Pantry.Describe(id, 2, card with { Roles = ["glitter"], Name = "" }, Harbour.Somebody);
        Assert.Equal(["name", "roles"], refused.Problems.Select(p => p.Field));
    }

    [Fact]
    public async Task Archiving_one_that_a_draft_holds_says_so_and_the_draft_keeps_it_while_no_search_finds_it()
    {
        var draft = await Harbour.Mix(Store);
        var archived = await Pantry.Archive(Harbour.Verjus.Id, 0, Harbour.Somebody);
        Assert.Equal(["Harbour fog"], archived.Value.Drafts);
        await using (var db = Store.Read())
        {
            Assert.Empty(await db.FindIngredients("verjus"));
            Assert.Contains((await Data.Drafts.DraftQueries.OpenDraft(db, draft))!.Lines, l => l.Ingredient == Harbour.Verjus.Id);
            Assert.Equal("Harbour fog", Assert.Single(await db.DraftsWith(Harbour.Verjus.Id)).Name);
        }
        Assert.True((await Pantry.Restore(Harbour.Verjus.Id, archived.Value.Version, Harbour.Somebody)).IsOk);
        await using var after = Store.Read();
        Assert.Single(await after.FindIngredients("verjus"));
    }

    [Fact]
    public async Task One_is_not_restored_beside_another_of_its_name()
    {
        var id = await Added("Pear-skin vinegar");
        var version = (await Pantry.Archive(id, 1, Harbour.Somebody)).Value.Version;
        await Added("Pear-skin vinegar");
        Assert.Equal("name", Assert.Single((await Pantry.Restore(id, version, Harbour.Somebody)).Problems).Field);
    }

    [Fact]
    public async Task On_hand_is_said_and_taken_back_any_number_of_times()
    {
        foreach (var (said, expected) in new[] { (true, 1), (true, 1), (false, 0), (false, 0), (true, 1) })
        {
            Assert.True((await Pantry.SetOnHand(Harbour.Quince.Id, FirstRows.FirstSite, said, Harbour.Somebody)).IsOk);
            await using var db = Store.Read();
            Assert.Equal(expected, await db.OnHand.CountAsync(o => o.Ingredient == Harbour.Quince.Id));
        }
        Assert.False((await Pantry.SetOnHand(IngredientId.New(), FirstRows.FirstSite, true, Harbour.Somebody)).IsOk);
    }

    [Fact]
    public async Task An_ingredient_that_is_not_there_is_a_problem_and_no_crash() =>
        Assert.Equal("ingredient", Assert.Single((await Pantry.SetFigures(IngredientId.New(), 0, [], Harbour.Somebody)).Problems).Field);

    private static HouseFigure Figure(string quantity, double value) => new(quantity, value, null, null, "label", FigureStatus.Confirmed);

    private static double SugarPer100Grams(Ingredient ingredient)
    {
        var sugar = 0.0;
        for (var c = Component.Sucrose; c <= Component.SugarNotToldApart; c++)
        {
            sugar += ingredient.Composition.PerGram[(int)c];
        }
        return 100 * sugar;
    }

    private static (double Value, FigureStatus Status) Best(Ingredient ingredient, string quantity) =>
        ingredient.Figures.Where(f => f.Quantity == quantity).OrderByDescending(f => f.Status == FigureStatus.Measured).Select(f => (f.Value, f.Status)).First();

    private async Task<IngredientId> Added(string name)
    {
        var id = IngredientId.New();
        return (await Pantry.Add(new NewIngredient(id, name, IngredientKind.Juice, "100 g", 4), Harbour.Somebody)).Value;
    }

    private async Task<(IngredientId Id, IngredientFigure Shipped)> Shipped()
    {
        var id = IngredientId.New();
        await Store.Writer.Write(async db =>
        {
            var row = new IngredientRow { Id = id, Key = "lantern_pear", Name = "Lantern pear juice", SearchName = "LANTERN PEAR JUICE", Kind = IngredientKind.Juice, Basis = "100 g", KeptAtCelsius = 4, IsCarbonated = false, HasRawEgg = false };
            row.Figures.Add(new FigureRow { Quantity = "total_sugars_g", Value = 9, Source = "made up", Status = FigureStatus.Confirmed, Origin = "shipped 1" });
            row.Figures.Add(new FigureRow { Quantity = "ta_citric_g", Value = 0.4, Source = "made up", Status = FigureStatus.Confirmed, Origin = "shipped 1" });
            db.Add(row);
            await db.SaveChangesAsync();
            db.Add(new IngredientNowRow { Ingredient = id, Composition = (await db.KeepCompositions([PantryReading.Compose(row)]))[0] });
            return await db.SaveChangesAsync();
        });
        return (id, (await Load(id)).Figures.Single(f => f.Quantity == "total_sugars_g"));
    }

    private async Task<Ingredient> Load(IngredientId id)
    {
        await using var db = Store.Read();
        return (await db.LoadPantry()).Find(id)!;
    }

    private sealed class Noon : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => Harbour.Noon;
    }
}

public sealed class PantryWritingTests_on_Sqlite() : PantryWritingTests(new SqliteDatabase());

public sealed class PantryWritingTests_on_Postgres() : PantryWritingTests(new PostgresDatabase());
