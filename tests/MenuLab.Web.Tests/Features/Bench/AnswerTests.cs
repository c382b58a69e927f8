using MenuLab.Core.Drafts;
using MenuLab.Core.Drafts.Reading;
using MenuLab.Core.House;
using MenuLab.Core.Pantry;
using MenuLab.Core.Safety;
using MenuLab.Data.Seeding;
using MenuLab.Web.Features.Bench;

namespace MenuLab.Web.Tests.Features.Bench;

/// <summary>An answer rewrites the typed line; read again, it must say what the answer said and ask nothing.</summary>
public class AnswerTests
{
    private static readonly SeedData Shipped = SeedData.Load(SeedData.DefaultFolder);
    private static readonly PastedDrink Pasted = new(
        new HouseStock(Shipped.Pantry, Shipped.Catalogue, Shipped.Measures) { Rules = SiteRules.Of(Shipped.Rules, "EU", HouseFormat.Plain) }, new DrinkReader(Vocabulary.Of(Shipped.Pantry, Shipped.Catalogue), Shipped.Measures), HouseFormat.Plain, new PourGrid());

    [Fact]
    public void Every_shipped_ingredient_can_be_written_so_that_it_reads_as_itself()
    {
        var answers = new AnswerWording(new DrinkReader(Vocabulary.Of(Shipped.Pantry, Shipped.Catalogue), Shipped.Measures), Shipped.Pantry);

        var without = Shipped.Pantry.All.Where(ingredient => answers.Of(Grams(ingredient)) is null).Select(ingredient => ingredient.Name);

        Assert.Empty(without);
    }

    [Theory]
    [InlineData("1,500 ml lemon juice")]
    [InlineData("15 coconut")]
    [InlineData("20 vinegar")]
    [InlineData("2 cherries")]
    [InlineData("10 sugar")]
    [InlineData("10 bitters")]
    [InlineData("10 mint")]
    [InlineData("10 pepper")]
    [InlineData("1 lemon juice")]
    [InlineData("20 honey, 15 passion fruit juice, 10 vinegar")]
    public void Every_answer_to_a_question_settles_it(string typed)
    {
        var text = "Test\n" + typed;
        var drink = Pasted.Read(text, Unit.Millilitre);
        var answers = Answers(drink);
        Assert.NotEmpty(answers);

        foreach (var (asked, answer) in answers)
        {
            var again = Pasted.Read(PlainLine.Put(text, asked, answer), Unit.Millilitre);
            Assert.Equal(drink.NotCounted - 1, again.NotCounted);
            Assert.Equal(drink.Read.Count() + 1, again.Read.Count());
        }
    }

    [Fact]
    public void What_the_pantry_lacks_is_offered_as_new_and_has_no_button()
    {
        var asked = Assert.IsType<AskedRow>(Assert.Single(Pasted.Read("30 ml mystery cordial", Unit.Millilitre).Rows));
        Assert.Null(Assert.Single(asked.Answers).Wording);
    }

    [Fact]
    public void Parts_are_settled_by_a_total_that_comes_as_a_line_of_its_own()
    {
        const string Text = "2 parts black tea\n1 part lemon juice";
        var (asked, answer) = Answers(Pasted.Read(Text, Unit.Millilitre)).First(a => a.Answer.Label == "90 mL in all");

        var text = PlainLine.Put(Text, asked, answer);

        Assert.Equal(Text + "\ntotal 90 ml", text);
        var again = Pasted.Read(text, Unit.Millilitre);
        Assert.Equal(["60", "30"], again.Read.Select(line => line.Amount));
        Assert.Equal(0, again.NotCounted);
    }

    private static List<(AskedRow Asked, Answer Answer)> Answers(TypedDrink drink) =>
        [.. from asked in drink.Rows.OfType<AskedRow>() from answer in asked.Answers where answer.Wording is not null select (asked, answer)];

    private static DraftLine Grams(Ingredient ingredient) => new()
    {
        Text = "",
        Ingredient = ingredient.Id,
        Amount = 30,
        Unit = Unit.Gram,
        Millilitres = double.NaN,
        Grams = 30,
        StartCelsius = ingredient.KeptAtCelsius,
    };
}
