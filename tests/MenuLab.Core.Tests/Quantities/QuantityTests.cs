using CsCheck;
using MenuLab.Core.Quantities;

namespace MenuLab.Core.Tests.Quantities;

public sealed class QuantityTests
{
    [Fact]
    public void Units_come_back_as_they_went_in() =>
        Gen.Double[0, 1e6].Sample(x =>
            Volume.FromMillilitres(x).Millilitres == x
            && Close(Volume.FromLitres(x).Litres, x) && Close(Volume.FromLitres(x).Millilitres, 1000 * x)
            && Mass.FromGrams(x).Grams == x
            && Close(Mass.FromKilograms(x).Kilograms, x) && Close(Mass.FromKilograms(x).Grams, 1000 * x), iter: 1000);

    [Fact]
    public void Shares_come_back_as_they_went_in() =>
        Gen.Double[0, 1].Sample(x =>
            MassFraction.FromRatio(x).Ratio == x
            && Close(MassFraction.FromGramsPer100Grams(100 * x).Ratio, x) && Close(MassFraction.FromRatio(x).GramsPer100Grams, 100 * x)
            && AmountFraction.FromRatio(x).Ratio == x, iter: 1000);

    [Fact]
    public void Temperatures_come_back_as_they_went_in() =>
        Gen.Double[Temperature.LowestCelsius, Temperature.HighestCelsius].Sample(x =>
            Temperature.FromCelsius(x).Celsius == x
            && Math.Abs(Temperature.FromFahrenheit(Temperature.FromCelsius(x * 0.99).Fahrenheit).Celsius - x * 0.99) < 1e-12, iter: 1000);

    [Theory] // fixed points of the scales
    [InlineData(0, 32)]
    [InlineData(100, 212)]
    [InlineData(-40, -40)]
    public void Fahrenheit_meets_celsius_at_the_fixed_points(double celsius, double fahrenheit)
    {
        Assert.Equal(fahrenheit, Temperature.FromCelsius(celsius).Fahrenheit, 1e-12);
        Assert.Equal(celsius, Temperature.FromFahrenheit(fahrenheit).Celsius, 1e-12);
    }

    [Theory]
    [InlineData(-0.001)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(double.NegativeInfinity)]
    public void Negative_infinite_and_missing_amounts_are_refused(double amount)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Volume.FromMillilitres(amount));
        Assert.Throws<ArgumentOutOfRangeException>(() => Volume.FromLitres(amount));
        Assert.Throws<ArgumentOutOfRangeException>(() => Mass.FromGrams(amount));
        Assert.Throws<ArgumentOutOfRangeException>(() => Mass.FromKilograms(amount));
        Assert.Throws<ArgumentOutOfRangeException>(() => MassFraction.FromRatio(amount));
        Assert.Throws<ArgumentOutOfRangeException>(() => MassFraction.FromGramsPer100Grams(amount));
        Assert.Throws<ArgumentOutOfRangeException>(() => AmountFraction.FromRatio(amount));
        Assert.Throws<ArgumentOutOfRangeException>(() => amount * Volume.FromMillilitres(1));
        Assert.Throws<ArgumentOutOfRangeException>(() => amount * Mass.FromGrams(1));
    }

    [Fact]
    public void A_finite_amount_that_overflows_on_conversion_is_not_let_through_as_infinity()
    {
        Assert.True(double.IsFinite(Mass.FromKilograms(1e300).Grams));
        Assert.True(double.IsFinite(Volume.FromLitres(1e300).Millilitres));
    }

    [Theory]
    [InlineData(1.0001)]
    [InlineData(2)]
    public void A_share_above_the_whole_is_refused(double share)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => MassFraction.FromRatio(share));
        Assert.Throws<ArgumentOutOfRangeException>(() => MassFraction.FromGramsPer100Grams(100 * share));
        Assert.Throws<ArgumentOutOfRangeException>(() => AmountFraction.FromRatio(share));
    }

    [Theory]
    [InlineData(-40.1)]
    [InlineData(150.1)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void A_temperature_no_bar_has_is_refused(double celsius)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Temperature.FromCelsius(celsius));
        Assert.Throws<ArgumentOutOfRangeException>(() => Temperature.FromFahrenheit(celsius * 9 / 5 + 32));
    }

    [Theory]
    [InlineData(-1.01)]
    [InlineData(14.01)]
    [InlineData(double.NaN)]
    public void A_ph_off_the_scale_is_refused(double ph) => Assert.Throws<ArgumentOutOfRangeException>(() => Ph.From(ph));

    [Fact]
    public void A_ph_comes_back_as_it_went_in() => Gen.Double[-1, 14].Sample(x => Ph.From(x).Value == x);

    [Fact]
    public void The_default_of_an_amount_or_a_share_is_zero()
    {
        Assert.Equal(0, default(Volume).Millilitres);
        Assert.Equal(Volume.FromMillilitres(0), default);
        Assert.Equal(0, default(Mass).Grams);
        Assert.Equal(Mass.FromGrams(0), default);
        Assert.Equal(0, default(MassFraction).Ratio);
        Assert.Equal(MassFraction.FromRatio(0), default);
        Assert.Equal(0, default(AmountFraction).Ratio);
        Assert.Equal(AmountFraction.FromRatio(0), default);
    }

    [Fact]
    public void An_unset_temperature_ph_or_money_refuses_to_be_read()
    {
        Assert.Throws<InvalidOperationException>(() => default(Temperature).Celsius);
        Assert.Throws<InvalidOperationException>(() => default(Temperature).Fahrenheit);
        Assert.Throws<InvalidOperationException>(() => default(Ph).Value);
        Assert.Throws<InvalidOperationException>(() => default(Money).Currency);
    }

    [Fact]
    public void Amounts_add_and_scale()
    {
        Assert.Equal(Volume.FromMillilitres(67.5), Volume.FromMillilitres(45) + Volume.FromMillilitres(22.5));
        Assert.Equal(Volume.FromMillilitres(45), 2 * Volume.FromMillilitres(22.5));
        Assert.Equal(Mass.FromGrams(30), Mass.FromGrams(10) + Mass.FromGrams(20));
        Assert.Equal(Mass.FromGrams(30), 1.5 * Mass.FromGrams(20));
        Assert.Equal(5, (MassFraction.FromGramsPer100Grams(25) * Mass.FromGrams(20)).Grams, 1e-12);
    }

    [Fact]
    public void Money_adds_in_one_currency_only_and_rounds_halves_away_from_zero()
    {
        Assert.Equal(Money.Of(3.5m, "EUR"), Money.Of(1.25m, "EUR") + Money.Of(2.25m, "EUR"));
        Assert.Throws<InvalidOperationException>(() => Money.Of(1, "EUR") + Money.Of(1, "USD"));
        Assert.Throws<InvalidOperationException>(() => Money.Of(1, "EUR") + default(Money));
        Assert.Equal(0.13m, Money.Of(0.125m, "EUR").Rounded(2).Amount);
        Assert.Equal(-0.13m, Money.Of(-0.125m, "EUR").Rounded(2).Amount);
        Assert.Equal(Money.Of(0.375m, "EUR"), 1.5m * Money.Of(0.25m, "EUR"));
    }

    [Theory]
    [InlineData("")]
    [InlineData("eur")]
    [InlineData("EURO")]
    [InlineData("E1R")]
    [InlineData("ÄÖÜ")]
    public void A_currency_is_three_capital_letters(string code) => Assert.Throws<ArgumentException>(() => Money.Of(1, code));

    [Theory] // unknown above 50 %, at least above 5 %
    [InlineData(3, 0, Certainty.Plain)]
    [InlineData(3, 5, Certainty.Plain)]
    [InlineData(3, 5.01, Certainty.AtLeast)]
    [InlineData(3, 50, Certainty.AtLeast)]
    [InlineData(3, 50.01, Certainty.Unknown)]
    [InlineData(double.NaN, 0, Certainty.Unknown)]
    public void A_figure_says_how_much_of_it_is_known(double value, double unknownPercent, Certainty certainty) =>
        Assert.Equal(certainty, new Estimate(value, value, value, "g", unknownPercent).Certainty);

    private static bool Close(double a, double b) => Math.Abs(a - b) <= 1e-12 * Math.Max(1, Math.Abs(b));
}
