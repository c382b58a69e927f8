namespace MenuLab.Data.Tests.Seeding;

public class ShippedNamesTests
{
    private static IEnumerable<string> Meant(string alias) => Shipped.Data.Pantry.All
        .Where(i => i.Aliases.Contains(alias, StringComparer.OrdinalIgnoreCase)).Select(i => i.Key).Order(StringComparer.Ordinal);

    [Fact]
    public void No_alias_is_empty_padded_or_twice_in_one_ingredient()
    {
        foreach (var ingredient in Shipped.Data.Pantry.All)
        {
            Assert.True(ingredient.Aliases.Count > 0, ingredient.Key);
            Assert.All(ingredient.Aliases, a => Assert.True(a.Length > 0 && a == a.Trim(), a));
            Assert.Equal(ingredient.Aliases.Count, ingredient.Aliases.Distinct(StringComparer.OrdinalIgnoreCase).Count());
        }
    }

    [Theory]
    [InlineData("lj", "lemon_juice lime_juice")]
    [InlineData("gf", "grapefruit_juice_pink grapefruit_juice_white")]
    [InlineData("grapefruit juice", "grapefruit_juice_pink grapefruit_juice_white")]
    [InlineData("bitters", "bitters_aromatic")]
    [InlineData("oj", "orange_juice")]
    [InlineData("simple", "syrup_1to1_mass syrup_1to1_volume")]
    [InlineData("simple syrup", "syrup_1to1_mass syrup_1to1_volume")]
    [InlineData("ss", "syrup_1to1_mass syrup_1to1_volume")]
    [InlineData("rich simple", "syrup_2to1_mass syrup_2to1_volume")]
    [InlineData("citric acid", "acid_citric_anhydrous acid_citric_monohydrate")]
    [InlineData("vinegar", "vinegar_balsamic vinegar_cider vinegar_distilled vinegar_red_wine vinegar_rice vinegar_white_wine")]
    [InlineData("vermouth", "vermouth_dry vermouth_sweet")]
    [InlineData("gin", "spirit_40")]
    [InlineData("soda", "soda_water")]
    [InlineData("ew", "egg_white")]
    [InlineData("Zitronensaft", "lemon_juice")]
    [InlineData("jus de citron vert", "lime_juice")]
    [InlineData("zumo de naranja", "orange_juice")]
    [InlineData("acqua tonica", "tonic_water")]
    [InlineData("água com gás", "soda_water")]
    [InlineData("limón", "lemon_fruit lemon_juice lime_fruit lime_juice")]
    public void An_alias_stands_for_what_it_honestly_may_mean(string alias, string keys) => Assert.Equal(keys, string.Join(' ', Meant(alias)));

    [Fact]
    public void What_an_alias_takes_for_granted_is_said()
    {
        Assert.Equal("taken as 1:1 by mass, 50 Bx", Shipped.The("syrup_1to1_mass").AliasAssumptions["Simple Syrup"]);
        Assert.Contains("40 % vol", Shipped.The("spirit_40").AliasAssumptions["gin"], StringComparison.Ordinal);
        Assert.Empty(Shipped.The("lemon_juice").AliasAssumptions);
        Assert.All(Shipped.Data.Pantry.All, i => Assert.All(i.AliasAssumptions.Keys, a => Assert.Contains(a, i.Aliases, StringComparer.OrdinalIgnoreCase)));
    }

    // USDA SR28 portion weights.
    [Theory]
    [InlineData("lemon_juice", "juice_of_one", 48)]
    [InlineData("lime_juice", "juice_of_one", 44)]
    [InlineData("orange_juice", "juice_of_one", 86)]
    [InlineData("grapefruit_juice_white", "juice_of_one", 196)]
    [InlineData("lemon_juice", "wedge", 5.9)]
    [InlineData("mint_pepper", "leaf", 0.05)]
    [InlineData("mint_spear", "leaf", 0.15)]
    [InlineData("basil", "leaf", 0.5)]
    [InlineData("sugar_white", "cube", 2.3)]
    [InlineData("egg_white", "piece", 33)]
    [InlineData("egg_yolk", "piece", 17)]
    [InlineData("ginger_root", "slice", 2.2)]
    [InlineData("almond", "piece", 1.2)]
    [InlineData("pistachio", "piece", 0.7)]
    public void Pieces_weigh_what_the_table_says(string key, string measure, double grams) =>
        Assert.Equal(grams, Shipped.The(key).Pieces.Single(p => p.Measure == measure).Grams);

    [Fact]
    public void Pieces_are_told_by_known_measures_and_have_a_source()
    {
        string[] measures = ["piece", "leaf", "sprig", "slice", "wedge", "peel", "pinch", "cube", "juice_of_one"];
        var pieces = Shipped.Data.Pantry.All.SelectMany(i => i.Pieces).ToList();
        Assert.Equal(126, pieces.Count);
        Assert.All(pieces, p => Assert.True(measures.Contains(p.Measure) && p.Grams > 0 && p.Source.Length > 5));
    }
}
