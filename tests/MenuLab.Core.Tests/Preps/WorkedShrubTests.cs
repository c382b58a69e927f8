using MenuLab.Core.Preps;
using MenuLab.Core.Solutions;
using MenuLab.TestKit.Balance;
using MenuLab.TestKit.Preps;

namespace MenuLab.Core.Tests.Preps;

// The worked shrub of docs/science.md, section 12 (COMPUTED there by hand with rounder volumes): 300 g raspberries, 300 g sugar, 300 mL vinegar.
public class WorkedShrubTests
{
    // 225 g of juice: 11.70 g sugar, 4.05 g acid as citric, 19.13 g solids in all; the fruit is nine parts juice and one part fibre.
    private static readonly Core.Pantry.Composition Fruit = Made.Of(
        (Component.SugarNotToldApart, 0.9 * 11.70 / 225), (Component.Citric, 0.9 * 4.05 / 225 / 192.124), (Component.OtherSolids, 0.9 * 3.38 / 225), (Component.Fibre, 0.1));

    private static readonly Core.Pantry.Composition Sugar = Made.Of((Component.Sucrose, 1));

    private static readonly Core.Pantry.Composition Vinegar = Made.Of((Component.Acetic, 15.0 / 302.1 / 60.052), (Component.OtherSolids, 1.2 / 302.1));

    private static PrepOutcome Shrub(params IReadOnlyList<PrepStep> more)
    {
        var recipe = Larder.Recipe(
            [new PrepLine(Larder.Raspberry, 300, SolidKind.Fruit), new PrepLine(Larder.Sugar, 300), new PrepLine(Larder.Vinegar, 302.1)],
            [new Combine([0]), new Press(0.75), new Combine([1, 2]), .. more]);
        return PrepProcess.Work(recipe, id => id == Larder.Raspberry ? Fruit : id == Larder.Sugar ? Sugar : Vinegar).Value;
    }

    private static double Figure(PrepOutcome outcome, PrepFigure figure) => PrepFigures.Of(outcome.Composition, figure).Value;

    [Fact]
    public void The_cold_shrub_comes_out_as_worked_by_hand()
    {
        var shrub = Shrub();
        Assert.Equal(827.1, shrub.Grams.Value, 0.05);
        // 703.9 mL without the volume of the vinegar's 1.2 g of extract, 704.6 with it.
        Assert.Equal(704.6, shrub.Millilitres.Value, 1.0);
        Assert.Equal(1.175, shrub.Composition.GramsPerMillilitre, 0.002);
        Assert.Equal(311.7, Larder.Component(shrub, Component.Sucrose) + Larder.Component(shrub, Component.SugarNotToldApart), 0.01);
        Assert.Equal(44.28, Figure(shrub, PrepFigure.Sugar), 0.1);
        Assert.Equal(2.13, Figure(shrub, PrepFigure.Acetic), 0.01);
        // Its volume by hand is 0.2 % smaller: 0.62 mL/g for sugar at all strengths.
        Assert.Equal(2.85, Figure(shrub, PrepFigure.Acid), 0.015);
        Assert.Equal(38.73, Refractometer.SolubleSolidsPercent(new Liquid(shrub.Composition.PerGram)), 0.02);
        Assert.Equal(39.7, Figure(shrub, PrepFigure.Brix), 0.3);
        Assert.Equal(15.5, Figure(shrub, PrepFigure.Sugar) / Figure(shrub, PrepFigure.Acid), 0.1);
    }

    [Fact]
    public void Boiling_off_90_g_of_water_takes_2_g_of_acetic_acid_along()
    {
        // By Rayleigh with K = 0.7: 401.8/491.8 of the water leaves 86.8 % of the acid, so 91.98 g go in all.
        var shrub = Shrub(new Heat(10) { WeighedGrams = 827.1 - 90 - 1.98 });
        Assert.Equal(13.02, 60.052 * Larder.Component(shrub, Component.Acetic), 0.01);
        Assert.Equal(612.0, shrub.Millilitres.Value, 1.5);
        Assert.Equal(2.13, Figure(shrub, PrepFigure.Acetic), 0.01);
        Assert.Equal(2.93, Figure(shrub, PrepFigure.Acid), 0.015);
        Assert.Equal(50.93, Figure(shrub, PrepFigure.Sugar), 0.12);
        Assert.Equal(91.98, shrub.Ledger[^1].EvaporatedGrams, 0.01);
    }

    [Fact]
    public void One_part_with_four_of_soda_is_as_sweet_and_sour_as_worked()
    {
        var shrub = Shrub();
        var part = shrub.Composition.GramsPerMillilitre;
        var long5 = Mixture.Of([new Portion(Larder.Id(90), shrub.Composition, part), new Portion(Larder.Water, Larder.Of(Larder.Water), 4 * 0.9982)]);
        Assert.Equal(8.9, PrepFigures.Of(long5, PrepFigure.Sugar).Value, 0.05);
        Assert.Equal(0.57, PrepFigures.Of(long5, PrepFigure.Acid).Value, 0.01);
    }

    [Fact]
    public void Steeping_takes_more_juice_than_pressing_and_its_range_is_that_of_the_juice()
    {
        var recipe = Larder.Recipe(
            [new PrepLine(Larder.Raspberry, 300, SolidKind.Fruit), new PrepLine(Larder.Sugar, 300), new PrepLine(Larder.Vinegar, 302.1)],
            new Combine([0, 1, 2]), new Rest(48, 4), new Strain());
        var steeped = PrepProcess.Work(recipe, id => id == Larder.Raspberry ? Fruit : id == Larder.Sugar ? Sugar : Vinegar).Value;
        // By hand as above with 240 g of juice: 312.48 g of sugar in 505.5/0.9982 + 320.4 x 0.621 + 15 x 0.87 + 0.7 = 719.1 mL; pressing gave 44.28.
        var sugar = PrepFigures.Of(steeped.Composition, PrepFigure.Sugar);
        Assert.Equal(43.45, sugar.Value, 0.1);
        // Juice of 0.75 to 0.85: 15 g more or less of it, 0.8 g of sugar in 15 mL.
        Assert.InRange(sugar.High - sugar.Value, 0.7, 0.85);
        Assert.True(steeped.Grams.High - steeped.Grams.Low > 10);
    }
}
