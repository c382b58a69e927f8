using MenuLab.Core.Drafts;
using MenuLab.Core.House;
using MenuLab.Core.Pantry;
using MenuLab.Core.Tests.Iterations;

namespace MenuLab.Core.Tests.Drafts;

public class UnderstandingTests
{
    private static readonly Ingredient Syrup = HarbourDrink.Pantry.Find("Quince syrup")!;

    [Theory]
    [InlineData(22.5, Unit.Millilitre, 22.5)]
    [InlineData(2, Unit.Dash, 1.8)]
    [InlineData(0.75, Unit.FluidOunce, 22.5)]
    public void A_changed_amount_is_understood_by_the_houses_measures_and_the_ingredients_density(double amount, Unit unit, double millilitres)
    {
        var content = Of(amount, unit, Syrup.Id);
        Assert.Equal(millilitres, content.Understood.Millilitres!.Value, 9);
        Assert.Equal(millilitres * Syrup.Composition.GramsPerMillilitre, content.Understood.Grams!.Value, 9);
        Assert.InRange(content.Understood.GramsUncertainty, 0.1, 3);
    }

    [Fact]
    public void Without_an_ingredient_nothing_is_understood()
    {
        Assert.Equal(Understood.Nothing, Of(10, Unit.Millilitre, null).Understood);
        Assert.Equal(Understood.Nothing, Of(10, Unit.Millilitre, IngredientId.New()).Understood);
    }

    private static LineContent Of(double amount, Unit unit, IngredientId? ingredient) => Understanding.Of(
        new LineContent { Text = "typed", Ingredient = ingredient, Amount = new TypedAmount(amount, null, null, unit) }, HarbourDrink.Pantry, new MeasuresSet { Number = 1, Dash = 0.9 });
}
