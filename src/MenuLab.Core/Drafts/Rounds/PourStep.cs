using MenuLab.Core.House;

namespace MenuLab.Core.Drafts.Rounds;

/// <summary>
/// The smallest step of a line that a person can pour: what "a touch" means.
/// </summary>
/// <remarks>
/// Source: common practice, no source: jiggers step by the house's own millilitres and by eighths of an ounce, dashes and
/// pieces by one, spoons by a half, a scale by half a gram below 10 g and by a gram above. Valid for: amounts that are poured by hand. Error: none.
/// </remarks>
/// <param name="grid">How the house pours.</param>
public sealed class PourStep(PourGrid grid)
{
    // A jigger's finest mark in ounces.
    private const double EighthsOfAnOunce = 8;

    private const double Rounding = 1e-9;

    /// <summary>The step of a unit, in that unit; null where nothing is poured by it (to the wash line, no amount).</summary>
    /// <param name="unit">The unit.</param>
    /// <param name="amount">The amount, in the unit: a scale is read more finely for less.</param>
    public double? Of(Unit unit, double amount) => unit switch
    {
        Unit.Millilitre => grid.StepMillilitres,
        Unit.Centilitre => grid.StepMillilitres / 10,
        Unit.Litre => grid.StepMillilitres / 1000,
        Unit.FluidOunce => Math.Ceiling(grid.StepMillilitres / grid.OunceMillilitres * EighthsOfAnOunce - Rounding) / EighthsOfAnOunce,
        Unit.Gram => GramStep(amount),
        Unit.Kilogram => GramStep(amount * 1000) / 1000,
        Unit.WeightOunce or Unit.Pound => 0.05,
        Unit.Teaspoon or Unit.Tablespoon or Unit.BarSpoon or Unit.Cup or Unit.Splash or Unit.Float => 0.5,
        Unit.Part => 0.25,
        Unit.Dash or Unit.Drop or Unit.Mist or Unit.Piece or Unit.Leaf or Unit.Sprig or Unit.Slice or Unit.Wedge or Unit.Peel or Unit.Pinch or Unit.Cube => 1,
        _ => null,
    };

    /// <summary>A touch more: the next amount on the grid that is at least half a step above.</summary>
    /// <param name="amount">Amount in the unit, zero or more.</param>
    /// <param name="unit">The unit.</param>
    /// <returns>The amount, or null where there is no step.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Negative, infinite or NaN amount.</exception>
    public double? More(double amount, Unit unit) => Of(unit, Guard.FiniteNonNegative(amount)) is { } step ? Snap(amount + step, step) : null;

    /// <summary>A touch less: the amount on the grid that is at least half a step below, and not below zero.</summary>
    /// <param name="amount">Amount in the unit, zero or more.</param>
    /// <param name="unit">The unit.</param>
    /// <returns>The amount, or null where there is no step or nothing left to take away.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Negative, infinite or NaN amount.</exception>
    public double? Less(double amount, Unit unit) =>
        Of(unit, Guard.FiniteNonNegative(amount)) is { } step && amount > 0 ? Math.Max(0, Snap(amount - step, step)) : null;

    private static double GramStep(double grams) => grams < 10 ? 0.5 : 1;

    /// <summary>The amount on a grid that lies nearest.</summary>
    // 17.5 and not 17.499999999999996: figures go through text and back.
    internal static double Snap(double amount, double step) => Math.Round(Math.Round(amount / step, MidpointRounding.AwayFromZero) * step, 9);
}
