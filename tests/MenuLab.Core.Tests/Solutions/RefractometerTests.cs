using MenuLab.Core.Solutions;
using MenuLab.TestKit.Solutions;

namespace MenuLab.Core.Tests.Solutions;

public sealed class RefractometerTests
{
    [Theory] // 21 CFR 146.132, as worked in docs/science.md, section 1
    [InlineData(5, 0.967)]
    [InlineData(1.2, 0.243)]
    [InlineData(0, 0)]
    public void The_acid_correction_is_that_of_the_regulation(double citric, double brix) =>
        Assert.Equal(brix, Refractometer.AcidCorrection(citric), 0.00051);

    [Fact]
    public void A_plain_syrup_reads_its_sugar() =>
        Assert.Equal(50, Refractometer.ExpectedReading(new Liquid(State.Simple(50, 0, 50))), 1e-12);

    [Fact]
    public void A_lemon_juice_reads_less_than_its_soluble_solids_by_the_correction()
    {
        // 2.5 g sugar and 4.7 g citric in 100 g, no minerals.
        var juice = State.Of((Component.Water, 92.8), (Component.Sucrose, 2.5), (Component.Citric, State.Moles(Component.Citric, 4.7)));
        Assert.Equal(7.2, Refractometer.SolubleSolidsPercent(new Liquid(juice)), 1e-9);
        // 2.98 of citric's 3 protons are titrated at 8.1.
        Assert.Equal(7.2 - Refractometer.AcidCorrection(4.7), Refractometer.ExpectedReading(new Liquid(juice)), 0.01);
    }

    [Fact] // worked shrub of section 12, cold process: 38.73 % soluble solids without acetic acid, reading about 39.7
    public void The_worked_shrub_has_the_solids_and_the_reading_of_the_reference()
    {
        // Raspberry juice 225 g with 19.13 g solids (11.70 sugars, 4.05 acid), 300 g sugar, vinegar 302.1 g (15.00 acetic, 1.2 extract).
        var shrub = State.Of(
            (Component.Sucrose, 311.70), (Component.Citric, State.Moles(Component.Citric, 4.05)), (Component.OtherSolids, 19.13 - 11.70 - 4.05 + 1.2),
            (Component.Acetic, State.Moles(Component.Acetic, 15)), (Component.Water, 205.88 + 285.9));
        Assert.Equal(827.1, new Liquid(shrub).Grams, 0.1);
        Assert.Equal(38.73, Refractometer.SolubleSolidsPercent(new Liquid(shrub)), 0.02);
        Assert.Equal(39.7, Refractometer.ExpectedReading(new Liquid(shrub)), 0.3);
    }

    [Fact]
    public void A_reading_above_one_percent_ethanol_means_nothing()
    {
        var one = State.Simple(89, 1, 10);
        var more = State.Simple(88.9, 1.1, 10);
        Assert.True(Refractometer.IsReadable(new Liquid(one)));
        Assert.False(Refractometer.IsReadable(new Liquid(more)));
        Assert.True(double.IsNaN(Refractometer.ExpectedReading(new Liquid(more))));
        Assert.Equal(10, Refractometer.SolubleSolidsPercent(new Liquid(more)), 1e-12);
    }

    [Fact]
    public void An_empty_liquid_has_no_reading()
    {
        Assert.True(double.IsNaN(Refractometer.ExpectedReading(new Liquid(new double[Components.Count]))));
        Assert.True(double.IsNaN(Refractometer.SolubleSolidsPercent(new Liquid(new double[Components.Count]))));
    }

    [Fact]
    public void Figures_no_juice_can_have_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Refractometer.AcidCorrection(-0.1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Refractometer.BrixAcidRatio(10, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => Refractometer.BrixAcidRatio(double.NaN, 1));
    }
}
