using System.Globalization;
using CsCheck;
using MenuLab.Core.House;

namespace MenuLab.Core.Tests.House;

/// <summary>The pairs are common practice, no source: what jiggers marked in both units carry side by side.</summary>
public class PourGridTests
{
    private static readonly PourGrid Trade = new();

    [Theory]
    [InlineData(7.5, "¼")]
    [InlineData(10, "⅓")]
    [InlineData(15, "½")]
    [InlineData(20, "⅔")]
    [InlineData(22.5, "¾")]
    [InlineData(30, "1")]
    [InlineData(45, "1 ½")]
    [InlineData(50, "1 ⅔")]
    [InlineData(60, "2")]
    [InlineData(3.75, "⅛")]
    [InlineData(26.25, "⅞")]
    public void Millilitres_on_the_grid_have_their_ounce(double millilitres, string ounces)
    {
        var poured = Trade.FromMillilitres(millilitres);
        Assert.Equal(ounces, poured.FluidOunces);
        Assert.Equal(millilitres.ToString(CultureInfo.InvariantCulture), poured.Millilitres);
    }

    [Theory]
    [InlineData(25)]
    [InlineData(5)]
    [InlineData(12.5)]
    [InlineData(22)]
    [InlineData(95)]
    public void Millilitres_without_an_honest_fraction_leave_the_ounce_out(double millilitres)
    {
        var poured = Trade.FromMillilitres(millilitres);
        Assert.Equal(millilitres.ToString(CultureInfo.InvariantCulture), poured.Millilitres);
        Assert.Equal("", poured.FluidOunces);
    }

    [Theory]
    [InlineData(0.75, "22.5", "¾")]
    [InlineData(0.25, "7.5", "¼")]
    [InlineData(1.5, "45", "1 ½")]
    [InlineData(2, "60", "2")]
    [InlineData(0.67, "20", "⅔")]
    [InlineData(0.33, "10", "⅓")]
    [InlineData(0.68, "20", "⅔")]
    [InlineData(1.333, "40", "1 ⅓")]
    public void Ounces_print_as_a_fraction_and_on_the_grid(double ounces, string millilitres, string fraction) =>
        Assert.Equal(new PouredAmount(millilitres, fraction), Trade.FromFluidOunces(ounces));

    [Theory]
    [InlineData(0.125, "⅛")]       // 3.75 mL: no jigger of steps of 2.5 mL shows it
    [InlineData(0.3, "0.3")]       // no fraction is near; it stands as typed
    public void Ounces_off_the_grid_leave_the_millilitres_out(double ounces, string printed) =>
        Assert.Equal(new PouredAmount("", printed), Trade.FromFluidOunces(ounces));

    [Theory]
    [InlineData(22.18, "22.5", "¾")]
    [InlineData(44.36, "45", "1 ½")]
    [InlineData(29.57, "30", "1")]
    [InlineData(59.15, "60", "2")]
    public void What_somebody_converted_by_the_US_ounce_prints_as_the_trade_pours_it(double millilitres, string printed, string ounces) =>
        Assert.Equal(new PouredAmount(printed, ounces), Trade.FromMillilitres(millilitres));

    [Fact]
    public void A_house_that_computes_with_the_US_ounce_prints_the_same_as_one_with_the_ounce_of_the_trade()
    {
        var house = new PourGrid(ounceMillilitres: 29.5735);
        Assert.Equal(new PouredAmount("22.5", "¾"), house.FromFluidOunces(0.75));
        Assert.Equal(new PouredAmount("60", "2"), house.FromMillilitres(60));
    }

    [Fact]
    public void A_house_with_an_ounce_of_25_mL_prints_its_own() =>
        Assert.Equal(new PouredAmount("25", "1"), new PourGrid(ounceMillilitres: 25).FromMillilitres(25));

    [Fact]
    public void A_step_of_5_mL_does_not_show_a_quarter_ounce_in_millilitres() =>
        Assert.Equal(new PouredAmount("", "¼"), new PourGrid(stepMillilitres: 5).FromFluidOunces(0.25));

    [Fact]
    public void Both_figures_of_any_typed_millilitres_mean_the_same_pour() =>
        Gen.Int[1, 2000].Select(tenths => tenths / 10.0).Sample(millilitres =>
        {
            var poured = Trade.FromMillilitres(millilitres);
            var back = poured.FluidOunces == "" ? millilitres : 30 * Parse(poured.FluidOunces);
            return Math.Abs(double.Parse(poured.Millilitres, CultureInfo.InvariantCulture) - millilitres) < 1e-9 && Math.Abs(back - millilitres) < 1e-4;
        });

    [Fact]
    public void Both_figures_of_any_typed_ounces_mean_the_same_pour() =>
        Gen.Int[1, 48].Select(eighths => eighths / 8.0).Sample(ounces =>
        {
            var poured = Trade.FromFluidOunces(ounces);
            return Math.Abs(Parse(poured.FluidOunces) - ounces) < 1e-9
                && (poured.Millilitres == "" || Math.Abs(double.Parse(poured.Millilitres, CultureInfo.InvariantCulture) - 30 * ounces) < 1e-9);
        });

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(-1)]
    [InlineData(double.PositiveInfinity)]
    public void An_amount_that_is_none_is_the_callers_mistake(double amount)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Trade.FromMillilitres(amount));
        Assert.Throws<ArgumentOutOfRangeException>(() => Trade.FromFluidOunces(amount));
        Assert.Throws<ArgumentOutOfRangeException>(() => PourGrid.Fraction(amount));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-2.5)]
    [InlineData(double.NaN)]
    public void A_grid_without_a_step_is_the_callers_mistake(double step) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new PourGrid(step));

    private static double Parse(string fraction) => fraction.Split(' ').Sum(part => part switch
    {
        "⅛" => 0.125, "¼" => 0.25, "⅓" => 1 / 3.0, "⅜" => 0.375, "½" => 0.5, "⅝" => 0.625, "⅔" => 2 / 3.0, "¾" => 0.75, "⅞" => 0.875,
        _ => double.Parse(part, CultureInfo.InvariantCulture),
    });
}
