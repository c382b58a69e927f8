using MenuLab.Core.Balance;
using MenuLab.Core.Pantry;
using MenuLab.Core.Quantities;

namespace MenuLab.Core.Tests.Balance;

public class CostingTests
{
    [Fact]
    public void Juice_of_lemons_costs_the_fruit_it_takes()
    {
        // 109 g lemons give 48 g of juice (SR28 09150, 09152: 44 %): a kilo at 3.20 gives 440 g, 25 g of juice costs 0.1818.
        var cost = Costing.Of(Money.Of(3.20m, "EUR"), 1000, 25, 0.44m);
        Assert.Equal(Money.Of(0.18m, "EUR"), cost.Rounded(2));
    }

    [Fact]
    public void A_gross_price_loses_its_tax_and_a_net_one_stays() =>
        Assert.Equal((Money.Of(10m, "EUR"), Money.Of(11.9m, "EUR")), (Costing.Net(Money.Of(11.9m, "EUR"), true, 19), Costing.Net(Money.Of(11.9m, "EUR"), false, 19)));

    [Theory]
    [InlineData(0, 1, 1)]
    [InlineData(1, -1, 1)]
    [InlineData(1, 1, 0)]
    [InlineData(1, 1, 1.2)]
    public void A_pack_of_nothing_a_negative_use_or_an_impossible_yield_is_refused(double pack, double used, double yield) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Costing.Of(Money.Of(1, "EUR"), (decimal)pack, (decimal)used, (decimal)yield));

    [Fact]
    public void Two_currencies_are_never_added() =>
        Assert.Throws<InvalidOperationException>(() => Money.Of(1, "EUR") + Money.Of(1, "GBP"));

    // A bottle of 750 mL at 1.2 g/mL holds 900 g; a crate of 40 fruits that give 48 g of juice each holds 1920 g of juice: arithmetic.
    [Theory]
    [InlineData(9, 750, "ml", 0.01)]
    [InlineData(9, 900, "g", 0.01)]
    [InlineData(19.20, 40, "piece", 0.01)]
    public void A_gram_costs_its_share_of_the_pack_by_volume_weight_or_piece(double price, double amount, string unit, double perGram)
    {
        var cost = Costing.PerGram(Money.Of((decimal)price, "EUR"), amount, unit, Juice(1.2, new PieceWeight("juice_of_one", 48, "made up"), new PieceWeight("piece", 109, "made up")));
        Assert.Equal(perGram, cost!.Value, 1e-9);
    }

    [Fact]
    public void A_piece_is_the_whole_thing_where_nobody_presses_it_and_has_no_price_per_gram_where_nobody_weighed_it()
    {
        Assert.Equal(0.1, Costing.PerGram(Money.Of(2, "EUR"), 10, Costing.Pieces, Juice(1, new PieceWeight("piece", 2, "made up"))));
        Assert.Null(Costing.PerGram(Money.Of(2, "EUR"), 10, Costing.Pieces, Juice(1, new PieceWeight("leaf", 2, "made up"))));
    }

    [Fact]
    public void A_pack_of_nothing_or_in_a_strange_unit_has_no_price_per_gram()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Costing.PerGram(Money.Of(2, "EUR"), 0, Costing.Grams, Juice(1)));
        Assert.Throws<ArgumentOutOfRangeException>(() => Costing.PerGram(Money.Of(2, "EUR"), double.NaN, Costing.Grams, Juice(1)));
        Assert.Throws<ArgumentException>(() => Costing.PerGram(Money.Of(2, "EUR"), 1, "bottle", Juice(1)));
    }

    /// <summary>Sugar water whose residual volume makes it weigh so much a millilitre.</summary>
    private static Ingredient Juice(double gramsPerMillilitre, params PieceWeight[] pieces) => new()
    {
        Id = IngredientId.New(), Key = "juice", Name = "Juice", Kind = IngredientKind.Juice, KeptAtCelsius = 4, Pieces = pieces,
        Composition = CompositionBuilder.Build(
            IngredientKind.Juice, CompositionBuilder.PerMass,
            [
                new IngredientFigure("density_g_ml", gramsPerMillilitre, double.NaN, double.NaN, "made up", FigureStatus.Assumed, "house"),
                new IngredientFigure("total_sugars_g", 10, double.NaN, double.NaN, "made up", FigureStatus.Assumed, "house"),
            ],
            default).Composition,
    };
}
