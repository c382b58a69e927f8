using MenuLab.Core.Drafts;
using MenuLab.Core.House;
using MenuLab.Core.Pantry;
using MenuLab.Web.Features.Bench;

namespace MenuLab.Web.Tests.Features.Bench;

public class LineWordsTests
{
    private static LineWords Words(Unit first) => new(HouseFormat.Plain, new PourGrid(), first);

    [Theory]
    [InlineData(Unit.Millilitre, 22.5, 22.5, 25, "22.5", "¾ fl oz")]
    [InlineData(Unit.FluidOunce, 0.75, 22.5, 25, "22.5", "¾ fl oz")]
    [InlineData(Unit.Drop, 4, 0.2, 0.2, "0.2", "4 drops")]
    [InlineData(Unit.Dash, 1, 0.8, 0.8, "0.8", "1 dash")]
    [InlineData(Unit.Centilitre, 2, 20, 21, "20", "2 cl")]
    [InlineData(Unit.Leaf, 1, double.NaN, 0.5, "1", "leaf")]
    [InlineData(Unit.Sprig, 2, double.NaN, 2, "2", "sprigs")]
    [InlineData(Unit.Sprig, double.NaN, 1.36, 0.7, "", "sprig")]
    [InlineData(Unit.Pinch, 1, double.NaN, 0.3, "0.3 g", "1 pinch")]
    [InlineData(Unit.Gram, 5, double.NaN, 5, "5 g", "")]
    [InlineData(Unit.Top, double.NaN, double.NaN, double.NaN, "top", "to the wash line")]
    [InlineData(Unit.None, double.NaN, double.NaN, double.NaN, "", "")]
    public void An_amount_stands_in_millilitres_and_as_typed(Unit unit, double amount, double millilitres, double grams, string first, string other)
    {
        var line = Line(unit, amount, millilitres, grams);
        Assert.Equal(first, Words(Unit.Millilitre).Amount(line));
        Assert.Equal(other, Words(Unit.Millilitre).Other(line));
    }

    [Fact]
    public void In_an_ounce_house_the_ounces_stand_first()
    {
        var line = Line(Unit.FluidOunce, 1.5, 45, 46);
        Assert.Equal("1 ½", Words(Unit.FluidOunce).Amount(line));
        Assert.Equal("45 mL", Words(Unit.FluidOunce).Other(line));
    }

    [Fact]
    public void A_typed_range_stays_a_range() =>
        Assert.Equal("1–2 dashes", Words(Unit.Millilitre).Other(Line(Unit.Dash, 1.5, 1.2, 1.2) with { AmountLow = 1, AmountHigh = 2 }));

    private static DraftLine Line(Unit unit, double amount, double millilitres, double grams) => new()
    {
        Text = "as typed",
        Ingredient = new IngredientId(Guid.Empty),
        Unit = unit,
        Amount = amount,
        Millilitres = millilitres,
        Grams = grams,
        StartCelsius = 4,
    };
}
