using CsCheck;
using MenuLab.Core.Drafts;
using MenuLab.Core.Drafts.Rounds;
using MenuLab.Core.House;

namespace MenuLab.Core.Tests.Drafts.Rounds;

/// <summary>A touch, and three across. The steps are common practice, no source.</summary>
public class PourStepTests
{
    private static readonly Unit[] Units = [Unit.Millilitre, Unit.FluidOunce, Unit.Gram, Unit.Dash];

    private static readonly PourStep Usual = new(new PourGrid());

    [Theory]
    [InlineData(15, Unit.Millilitre, 17.5, 12.5)]
    [InlineData(18, Unit.Millilitre, 20.0, 15.0)]
    [InlineData(1, Unit.Millilitre, 2.5, 0.0)]
    [InlineData(0, Unit.Millilitre, 2.5, null)]
    [InlineData(2.25, Unit.Centilitre, 2.5, 2.0)]
    [InlineData(0.75, Unit.FluidOunce, 0.875, 0.625)]
    [InlineData(2, Unit.Dash, 3.0, 1.0)]
    [InlineData(1, Unit.BarSpoon, 1.5, 0.5)]
    [InlineData(4, Unit.Gram, 4.5, 3.5)]
    [InlineData(20, Unit.Gram, 21.0, 19.0)]
    [InlineData(3, Unit.Leaf, 4.0, 2.0)]
    [InlineData(5, Unit.Top, null, null)]
    public void A_touch_is_the_next_amount_that_can_be_poured(double amount, Unit unit, double? more, double? less)
    {
        Assert.Equal(more, Usual.More(amount, unit));
        Assert.Equal(less, Usual.Less(amount, unit));
    }

    [Theory]
    [InlineData(2.5, 0.125)]
    [InlineData(5, 0.25)]
    [InlineData(0.5, 0.125)]
    [InlineData(30, 1)]
    public void Ounces_step_by_the_eighths_that_the_houses_jigger_can_show(double stepMillilitres, double ounces) =>
        Assert.Equal(ounces, new PourStep(new PourGrid(stepMillilitres)).Of(Unit.FluidOunce, 1));

    [Fact]
    public void A_touch_always_moves_by_at_least_half_a_step_and_ends_on_the_grid() =>
        Gen.Select(Gen.Double[0, 400], Gen.Double[0.5, 30]).Sample((amount, step) =>
        {
            var steps = new PourStep(new PourGrid(step));
            var more = steps.More(amount, Unit.Millilitre)!.Value;
            Assert.True(more - amount >= step / 2 - 1e-6);
            Assert.True(Math.Abs(more / step - Math.Round(more / step)) < 1e-6);
            Assert.True(steps.Less(amount, Unit.Millilitre) is not { } less || (less >= 0 && less < amount));
        });

    [Fact]
    public void Three_across_puts_the_amount_in_the_middle_and_its_neighbours_on_the_grid()
    {
        Assert.Equal([15, 17.5, 20], Amounts(17.5, 2.5, 3));
        Assert.Equal([15, 18, 20], Amounts(18, 2.5, 3));
        Assert.Equal([17.5, 20], Amounts(17.5, 2.5, 2));
        Assert.Equal([12.5, 15, 17.5, 20], Amounts(15, 2.5, 4));
        Assert.Equal([0, 5, 10, 15, 20, 25], Amounts(10, 5, 6));
        // Finer than any jigger: whoever asks for it weighs.
        Assert.Equal([17, 18, 19], Amounts(18, 1, 3));
    }

    [Fact]
    public void What_cannot_be_spread_is_a_problem()
    {
        var line = new PlacedLine(LineId.New(), Trial.Line(Trial.Verjus, 15));
        Assert.Equal("step", Assert.Single(Across.Of(line, 2.5, 5, 3, Usual).Problems).Field);
        Assert.Equal("step", Assert.Single(Across.Of(line, 15, 0, 3, Usual).Problems).Field);
        Assert.Equal("pours", Assert.Single(Across.Of(line, 15, 1, 7, Usual).Problems).Field);
        Assert.Equal("amount", Assert.Single(Across.Of(line, double.NaN, 1, 3, Usual).Problems).Field);
        Assert.Equal("line", Assert.Single(Across.Of(new PlacedLine(LineId.New(), Trial.Top), 15, 1, 3, Usual).Problems).Field);
    }

    [Fact]
    public void A_spread_rises_from_pour_to_pour_and_no_two_pours_get_the_same() =>
        Gen.Select(Gen.Double[0, 60], Gen.Double[0.1, 20], Gen.Int[2, 6], Gen.Int[0, 3].Select(i => Units[i])).Sample((middle, step, count, unit) =>
        {
            var spread = Across.Of(new PlacedLine(LineId.New(), Trial.Line(Trial.Verjus, 15, unit)), middle, step, count, Usual);
            if (!spread.IsOk)
            {
                Assert.True(middle < (count - 1) / 2 * step);
                return;
            }
            var amounts = spread.Value.Select(c => c.Amount).ToList();
            Assert.Equal(count, amounts.Distinct().Count());
            Assert.Equal(amounts.Order(), amounts);
            Assert.All(amounts, a => Assert.True(a >= 0));
        });

    private static IEnumerable<double> Amounts(double middle, double step, int count) =>
        Across.Of(new PlacedLine(LineId.New(), Trial.Line(Trial.Verjus, 15)), middle, step, count, Usual).Value.Select(c => c.Amount);
}
