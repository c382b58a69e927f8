using System.Text;
using System.Text.Json;
using CsCheck;
using MenuLab.Core.Preps;
using MenuLab.TestKit.Preps;

namespace MenuLab.Core.Tests.Preps;

public class RecipeTextTests
{
    private static readonly RecipeVersion Every = Larder.Recipe(
        [
            new PrepLine(Larder.Spice, 10, SolidKind.Spice, "10 g toasted barley") { GramsUncertainty = 0.5 }, Larder.Line(Larder.Water, 500), Larder.Line(Larder.Sugar, 100),
            Larder.Line(Larder.Water, 50), Larder.Line(Larder.Citric, 2), Larder.Line(Larder.Raspberry, 20),
        ],
        new Combine([0]), new Toast(4, 180) { Remark = "until it smells" }, new Dilute([1]), new Dissolve([2]), new Acidify([4]),
        new Heat(5) { Celsius = 92, GramsPerMinute = 2, Watts = 900, Hob = Hob.Induction, PanCentimetres = 24, Lid = true }, new Combine([3, 5]),
        new Steep(3, 95, SteepStop.Cooling, LeafCut.Fine, true), new Rest(12, 4), new Blend(2), new Strain(StrainerMesh.Filter, false) { WeighedGrams = 600 },
        new Clarify(ClarifiedBy.Agar) { WeighedGrams = 500 }, new Reduce(ReduceTo.Millilitres, 400), new Carbonate(2.5), new Carbonate(null, 2, 4), new Chill(4),
        new Ferment(2, 21), new Press());

    [Fact]
    public void Every_step_comes_back_as_it_was_written()
    {
        var text = RecipeText.Write(Every);
        var read = RecipeText.Read(text);
        Assert.Equal(text, RecipeText.Write(read));
        Assert.Equal(Every.Lines, read.Lines);
        Assert.Equal(Every.Steps.Where(s => s is not AddingStep), read.Steps.Where(s => s is not AddingStep));
        Assert.Equal(Every.Steps.OfType<AddingStep>().SelectMany(s => s.Lines), read.Steps.OfType<AddingStep>().SelectMany(s => s.Lines));
        Assert.Equal(
            typeof(PrepStep).Assembly.GetTypes().Where(t => t.IsSubclassOf(typeof(PrepStep)) && !t.IsAbstract).Select(t => t.Name).Order(StringComparer.Ordinal),
            Every.Steps.Select(s => s.GetType().Name).Distinct().Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_random_recipe_comes_back_and_works_out_the_same() =>
        Larder.Recipes.Sample(recipe =>
        {
            var read = RecipeText.Read(RecipeText.Write(recipe));
            var (one, other) = (Larder.Work(recipe), Larder.Work(read));
            return one.IsOk == other.IsOk && (!one.IsOk || one.Value.Composition.PerGram.SequenceEqual(other.Value.Composition.PerGram));
        }, iter: 50);

    // Format 1 as it was released; this text never changes.
    [Fact]
    public void Format_1_is_read_for_ever()
    {
        const string text = """
            {"format":1,"prep":"000003e8-0000-0000-0000-000000000007","number":2,"name":"Pear syrup","lines":[{"ingredient":"00000001-0000-0000-0000-000000000007","g":500,"solid":"dissolves","text":"500 g sugar","g_uncertainty":0},{"ingredient":"00000002-0000-0000-0000-000000000007","g":500,"solid":"dissolves","text":"","g_uncertainty":0}],"steps":[{"step":"combine","lines":[0,1]},{"step":"reduce","to":"brix","target":60}]}
            """;
        var recipe = RecipeText.Read(Encoding.UTF8.GetBytes(text));
        Assert.Equal(("Pear syrup", 2, 2), (recipe.Name, recipe.Number, recipe.Lines.Count));
        Assert.Equal(new Reduce(ReduceTo.Brix, 60), recipe.Steps[1]);
        Assert.Equal(text, Encoding.UTF8.GetString(RecipeText.Write(recipe)));
    }

    [Theory]
    [InlineData("{\"format\":2}")]
    [InlineData("{}")]
    [InlineData("{\"format\":1,\"prep\":\"000003e8-0000-0000-0000-000000000007\",\"number\":1,\"name\":\"x\",\"lines\":[],\"steps\":[{\"step\":\"distil\"}]}")]
    [InlineData("{\"format\":1,\"prep\":\"000003e8-0000-0000-0000-000000000007\",\"number\":1,\"name\":\"x\",\"lines\":[],\"steps\":[{\"step\":\"chill\",\"c\":4}]}")]
    public void What_is_no_recipe_is_refused(string text) => Assert.Throws<JsonException>(() => RecipeText.Read(Encoding.UTF8.GetBytes(text)));
}
