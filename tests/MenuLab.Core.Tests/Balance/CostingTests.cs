using MenuLab.Core.Balance;
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
}
