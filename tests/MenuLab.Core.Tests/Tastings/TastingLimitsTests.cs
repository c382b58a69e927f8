using MenuLab.Core.House;
using MenuLab.Core.Tastings;
using MenuLab.TestKit.Solutions;

namespace MenuLab.Core.Tests.Tastings;

public sealed class TastingLimitsTests
{
    [Theory] // arithmetic of the reference, 9.3
    [InlineData(20, 12, "g_20ml_12pct")]
    [InlineData(20, 20, "g_20ml_20pct")]
    [InlineData(15, 40, "g_15ml_40pct")]
    [InlineData(25, 8, "g_25ml_8pct")]
    public void A_portion_holds_the_ethanol_of_the_reference(double millilitres, double abv, string quantity) =>
        Assert.Equal(Oracle.Rows("oracle-cata-misc.csv", "Statistics").Single(row => row.Text("case") == "alcohol" && row.Text("quantity") == quantity).Number("value"),
            IntakeBudget.EthanolGrams(millilitres, abv), 1e-9);

    [Fact]
    public void The_plan_counts_everything_swallowed_second_tastes_included()
    {
        // Four samples of 20 mL at 20 %, one tasted again, and a first glass of 20 mL that does not count: six pours.
        var intake = IntakeBudget.Of([new(20, 20, 0, Times: 5), new(20, 20, 0)]);
        Assert.Equal(6 * 3.15696, intake.EthanolGrams, 1e-9);
        Assert.True(intake.OverAlcohol);
        Assert.StartsWith("Swallowed in full this tasting holds 18.9 g of alcohol, more than the 10 g allowed.", Assert.Single(IntakeBudget.Cautions(intake, HouseFormat.Plain)), StringComparison.Ordinal);
    }

    [Fact]
    public void A_second_tasting_of_the_day_counts_with_the_first()
    {
        var intake = IntakeBudget.Of([new(25, 8, 0, Times: 5)], earlierGrams: 15);
        Assert.True(intake.EthanolGrams < 10);
        Assert.True(intake.OverAlcohol);
        Assert.Contains("one day", Assert.Single(IntakeBudget.Cautions(intake, HouseFormat.Plain)), StringComparison.Ordinal);
        Assert.Empty(IntakeBudget.Cautions(IntakeBudget.Of([new(25, 8, 0, Times: 5)]), HouseFormat.Plain));
    }

    [Fact]
    public void The_cap_may_be_lowered_but_not_raised_above_twenty_grams()
    {
        Assert.True(IntakeBudget.Of([new(25, 8, 0, Times: 5)], capGrams: 5).OverAlcohol);
        Assert.Throws<ArgumentOutOfRangeException>(() => IntakeBudget.Of([], capGrams: 20.1));
        Assert.Throws<ArgumentOutOfRangeException>(() => IntakeBudget.Of([new(20, 101, 0)]));
        Assert.Throws<ArgumentOutOfRangeException>(() => IntakeBudget.Of([new(20, 10, 0, Times: 0)]));
    }

    [Fact] // EFSA Journal 2015;13(5):4102: 200 mg at once, 400 mg a day
    public void Caffeine_is_cautioned_above_what_is_judged_safe()
    {
        Assert.False(IntakeBudget.Of([new(100, 0, 400, Times: 5)]).OverCaffeine);
        Assert.True(IntakeBudget.Of([new(100, 0, 401, Times: 5)]).OverCaffeine);
        Assert.True(IntakeBudget.Of([new(100, 0, 400)], earlierCaffeine: 370).OverCaffeine);
        Assert.Contains("less in pregnancy", Assert.Single(IntakeBudget.Cautions(IntakeBudget.Of([new(100, 0, 401, Times: 5)]), HouseFormat.Plain)), StringComparison.Ordinal);
    }

    [Theory] // reference, 9.1
    [InlineData(PalateLoad.Light, 6)]
    [InlineData(PalateLoad.SourOrSparkling, 5)]
    [InlineData(PalateLoad.Harsh, 4)]
    [InlineData(PalateLoad.Alcoholic, 5)]
    [InlineData(PalateLoad.Strong, 3)]
    public void A_kind_of_drink_has_its_limit(PalateLoad load, int most)
    {
        Assert.Empty(TastingLimits.Warnings([load], most, 8));
        Assert.Single(TastingLimits.Warnings([load], most + 1, 8));
        Assert.Equal(2, TastingLimits.Warnings([load], most + 1, 9).Count);
    }

    [Fact]
    public void The_strictest_kind_counts()
    {
        Assert.Equal([PalateLoad.Light], TastingLimits.LoadsOf(0.5, sourOrSparkling: false, harsh: false));
        Assert.Equal([PalateLoad.SourOrSparkling, PalateLoad.Harsh, PalateLoad.Strong], TastingLimits.LoadsOf(18, sourOrSparkling: true, harsh: true));
        Assert.Equal([PalateLoad.Alcoholic], TastingLimits.LoadsOf(15, sourOrSparkling: false, harsh: false));
        Assert.Equal("5 samples tire the palate: 4 of this kind are enough for one sitting.", Assert.Single(TastingLimits.Warnings([PalateLoad.Light, PalateLoad.Harsh], 5, 3)));
    }

    [Fact]
    public void Who_is_not_asked_to_taste_alcohol_is_named_in_full()
    {
        Assert.Equal(6, IntakeBudget.NotAsked.Count);
        Assert.Contains(IntakeBudget.NotAsked, line => line.Contains("pregnant", StringComparison.Ordinal));
        Assert.Contains(IntakeBudget.NotAsked, line => line.Contains("recovery", StringComparison.Ordinal));
    }
}
