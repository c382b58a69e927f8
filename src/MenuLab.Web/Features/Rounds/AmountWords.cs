using MenuLab.Core.Drafts;
using MenuLab.Core.Drafts.Rounds;
using MenuLab.Core.House;

namespace MenuLab.Web.Features.Rounds;

/// <summary>Amounts as the cells of a round show them: millilitres bare, since most lines are poured so; every other unit is said.</summary>
public static class AmountWords
{
    /// <summary>"22.5", "¾ fl oz", "4 drops".</summary>
    public static string Of(double amount, Unit unit, HouseFormat format) => unit == Unit.Millilitre ? format.Amount(amount) : RoundWords.WithUnit(amount, unit, format);

    /// <summary>The figure alone: "22.5", "¾", "4".</summary>
    public static string Bare(double amount, Unit unit, HouseFormat format) =>
        unit == Unit.FluidOunce && PourGrid.Fraction(amount) is { Length: > 0 } fraction ? fraction : format.Amount(amount);
}
