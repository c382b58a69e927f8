using MenuLab.Core.Pantry;

namespace MenuLab.Data.Tests.Seeding;

// Cases by what the goods are; lists: FDA Q&A ed. 5 (January 2025) for the US nine, Regulation (EU) 1169/2011 Annex II for the EU fourteen.
public class ShippedAllergensTests
{
    [Theory]
    [InlineData("almond", Allergen.TreeNuts, AllergenState.Present)]
    [InlineData("almond_drink", Allergen.TreeNuts, AllergenState.Present)]
    [InlineData("hazelnut", Allergen.TreeNuts, AllergenState.Present)]
    [InlineData("peanut", Allergen.Peanut, AllergenState.Present)]
    [InlineData("peanut", Allergen.TreeNuts, AllergenState.Absent)]
    [InlineData("soy_drink", Allergen.Soy, AllergenState.Present)]
    [InlineData("sesame", Allergen.Sesame, AllergenState.Present)]
    [InlineData("milk_whole", Allergen.Milk, AllergenState.Present)]
    [InlineData("whey_acid", Allergen.Milk, AllergenState.Present)]
    [InlineData("egg_white", Allergen.Egg, AllergenState.Present)]
    [InlineData("aquafaba", Allergen.Egg, AllergenState.Absent)]
    [InlineData("celery_juice", Allergen.Celery, AllergenState.Present)]
    [InlineData("oat_drink", Allergen.Gluten, AllergenState.Present)]
    [InlineData("oat_drink", Allergen.Wheat, AllergenState.Unknown)]
    [InlineData("beer", Allergen.Gluten, AllergenState.Present)]
    [InlineData("beer", Allergen.Wheat, AllergenState.Unknown)]
    [InlineData("malt_syrup", Allergen.Gluten, AllergenState.Present)]
    [InlineData("wine_white", Allergen.Sulphites, AllergenState.Present)]
    [InlineData("wine_white", Allergen.Egg, AllergenState.Unknown)]
    [InlineData("wine_white", Allergen.Milk, AllergenState.Unknown)]
    [InlineData("vermouth_dry", Allergen.Sulphites, AllergenState.Present)]
    [InlineData("wine_dealcoholised", Allergen.Sulphites, AllergenState.Present)]
    [InlineData("lemon_juice_bottled", Allergen.Sulphites, AllergenState.Unknown)]
    [InlineData("verjus", Allergen.Sulphites, AllergenState.Unknown)]
    [InlineData("lemon_juice", Allergen.Sulphites, AllergenState.Absent)]
    [InlineData("bitters_aromatic", Allergen.TreeNuts, AllergenState.Unknown)]
    [InlineData("bitters_aromatic", Allergen.Celery, AllergenState.Unknown)]
    [InlineData("bitters_aromatic", Allergen.Sulphites, AllergenState.Unknown)]
    [InlineData("bitters_aromatic", Allergen.Gluten, AllergenState.Unknown)]
    [InlineData("gelatin", Allergen.Fish, AllergenState.Unknown)]
    [InlineData("olive_green", Allergen.Mustard, AllergenState.Unknown)]
    [InlineData("cocoa_powder", Allergen.Milk, AllergenState.Unknown)]
    [InlineData("coconut_milk", Allergen.TreeNuts, AllergenState.Absent)]
    [InlineData("coconut_milk", Allergen.Sulphites, AllergenState.Unknown)]
    [InlineData("honey", Allergen.Milk, AllergenState.Absent)]
    [InlineData("tonic_water", Allergen.Sulphites, AllergenState.Unknown)]
    public void What_is_known_of_an_allergen(string key, Allergen allergen, AllergenState state) =>
        Assert.Equal(state, Shipped.The(key).Composition.Allergens[allergen]);

    [Fact]
    public void Nuts_are_named_by_species()
    {
        Assert.Equal("almond", Shipped.The("almond_drink").AllergenFacts.Single().Note);
        Assert.Equal("pistachio", Shipped.The("pistachio").AllergenFacts.Single().Note);
    }

    [Fact]
    public void The_US_nine_stand_under_US_law_and_the_rest_under_EU_law_only()
    {
        Allergen[] nine =
            [Allergen.Milk, Allergen.Egg, Allergen.Fish, Allergen.Crustaceans, Allergen.TreeNuts, Allergen.Peanut, Allergen.Wheat, Allergen.Soy, Allergen.Sesame];
        var facts = Shipped.Data.Pantry.All.SelectMany(i => i.AllergenFacts).Where(f => !f.Source.StartsWith("bought", StringComparison.Ordinal)).ToList();
        Assert.True(facts.Count > 70);
        Assert.All(facts, f => Assert.Equal(nine.Contains(f.Allergen) ? "EU US" : "EU", f.Law));
    }

    [Fact]
    public void An_unread_label_opens_a_question_on_every_allergen()
    {
        var open = Shipped.Data.Pantry.All.Where(i => Enum.GetValues<Allergen>().All(a => i.Composition.Allergens[a] == AllergenState.Unknown)).Select(i => i.Key);
        Assert.Equal(
            ["aperitif_bitter_11", "aperitif_bitter_25", "bitters_aromatic", "coffee_cold_brew", "cola", "cranberry_cocktail", "ginger_ale", "ginger_beer",
                "grenadine_syrup", "lemon_lime_soda", "liqueur_orange_40", "na_bitter_aperitif", "na_botanical_distillate", "root_beer", "spirit_40", "tea_herb",
                "tonic_water", "vanilla_extract"],
            open.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Only_whole_and_fresh_egg_is_raw() =>
        Assert.Equal(
            ["egg_white", "egg_whole", "egg_yolk"],
            Shipped.Data.Pantry.All.Where(i => i.Composition.Caveats.HasFlag(CompositionCaveats.RawEgg)).Select(i => i.Key).Order(StringComparer.Ordinal));
}
