using MenuLab.Core.Exchange;

namespace MenuLab.Core.Tests.Exchange;

public class RecipeDocumentTests
{
    [Fact]
    public void A_recipe_gives_its_name_lines_steps_and_yield()
    {
        const string Json = """
            {"@context": "https://schema.org", "@type": "Recipe", "name": "Quay Lamp", "recipeYield": "1 drink",
             "recipeIngredient": ["45 ml apple juice", "20 ml lemon juice"],
             "recipeInstructions": [{"@type": "HowToStep", "text": "Shake 12 s with cubes"}, {"@type": "HowToSection", "itemListElement": [{"@type": "HowToStep", "text": "Fine strain into a coupe"}]}]}
            """;
        Assert.Null(RecipeDocument.Read(Json, out var drinks));
        var drink = Assert.Single(drinks);
        Assert.Equal("Quay Lamp", drink.Name);
        Assert.Equal("45 ml apple juice\n20 ml lemon juice\nShake 12 s with cubes\nFine strain into a coupe\nyield 1 drink", drink.Text);
    }

    [Fact]
    public void A_graph_and_an_array_of_types_are_looked_through()
    {
        const string Json = """[{"@graph": [{"@type": "WebPage"}, {"@type": ["Thing", "Recipe"], "name": "A", "recipeIngredient": "1 oz x", "recipeYield": 2}]}]""";
        Assert.Null(RecipeDocument.Read(Json, out var drinks));
        Assert.Equal("1 oz x\nyield 2", Assert.Single(drinks).Text);
    }

    [Theory]
    [InlineData("{\"@type\": \"Recipe\",\n \"name\": \"cut off", 2, 18)]
    [InlineData("[", 1, 2)]
    public void Truncated_JSON_says_where_it_breaks_off(string json, int line, int column)
    {
        var problem = RecipeDocument.Read(json, out var drinks)!;
        Assert.Empty(drinks);
        Assert.Equal((line, column), (problem.Line, problem.Column));
    }

    [Fact]
    public void JSON_without_a_recipe_is_told() => Assert.NotNull(RecipeDocument.Read("{\"a\": 1}", out _));
}
