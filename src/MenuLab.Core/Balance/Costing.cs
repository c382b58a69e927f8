using MenuLab.Core.Pantry;
using MenuLab.Core.Quantities;

namespace MenuLab.Core.Balance;

/// <summary>What an ingredient costs per gram or mL that gets used, from what the house pays for a pack.</summary>
public static class Costing
{
    /// <summary>Net price from a price as typed.</summary>
    /// <param name="typed">The price as typed.</param>
    /// <param name="isGross">It includes value-added tax.</param>
    /// <param name="taxPercent">The tax rate, %, 0 and up.</param>
    /// <returns>Net price, not rounded.</returns>
    /// <remarks>Source: arithmetic of a tax on top, net = gross / (1 + rate). Valid for: one rate. Error: none; in decimal.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A negative rate.</exception>
    public static Money Net(Money typed, bool isGross, decimal taxPercent)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(taxPercent);
        return isGross ? Money.Of(typed.Amount / (1 + taxPercent / 100), typed.Currency) : typed;
    }

    /// <summary>Cost of an amount used.</summary>
    /// <param name="packPrice">Net price of a pack.</param>
    /// <param name="packAmount">What is in the pack, in any unit (g, mL, pieces).</param>
    /// <param name="usedAmount">What is used, in the same unit, after trimming or pressing.</param>
    /// <param name="yield">Share of the pack that can be used, above 0 to 1 (a lemon gives 44 % of its mass as juice).</param>
    /// <returns>Net cost, not rounded: rounding happens once, at the end.</returns>
    /// <remarks>Source: cost of sales arithmetic, common practice. Valid for: amounts in one unit. Error: none; in decimal.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A pack of nothing, a negative amount, or a yield outside (0, 1].</exception>
    public static Money Of(Money packPrice, decimal packAmount, decimal usedAmount, decimal yield = 1)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(packAmount);
        ArgumentOutOfRangeException.ThrowIfNegative(usedAmount);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(yield);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(yield, 1);
        return usedAmount / (packAmount * yield) * packPrice;
    }

    /// <summary>A pack counted in millilitres.</summary>
    public const string Millilitres = "ml";

    /// <summary>A pack counted in grams.</summary>
    public const string Grams = "g";

    /// <summary>A pack counted in pieces.</summary>
    public const string Pieces = "piece";

    /// <summary>What one gram of an ingredient costs when it is bought by the pack.</summary>
    /// <param name="netPackPrice">Net price of the pack.</param>
    /// <param name="packAmount">What is in the pack, in <paramref name="packUnit"/>, above 0.</param>
    /// <param name="packUnit"><see cref="Millilitres"/>, <see cref="Grams"/> or <see cref="Pieces"/>.</param>
    /// <param name="ingredient">
    /// The ingredient: its density turns millilitres into grams; pieces weigh what it says of "juice_of_one" (fruit bought for its juice), else
    /// of "piece".
    /// </param>
    /// <returns>Net price per gram, in units of the currency, not rounded; null where a piece's weight is not known.</returns>
    /// <remarks>
    /// Source: cost of sales arithmetic, common practice. Valid for: what is used whole; trimming is not in it, pressing only by the weight of
    /// juice of one fruit. Error: that of the density or of the piece's weight (fruit differs by about 20 %, common practice, no source).
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A pack of nothing.</exception>
    /// <exception cref="ArgumentException">Another unit.</exception>
    public static double? PerGram(Money netPackPrice, double packAmount, string packUnit, Ingredient ingredient)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(Guard.FiniteNonNegative(packAmount));
        double? gramsPerUnit = packUnit switch
        {
            Millilitres => ingredient.Composition.GramsPerMillilitre,
            Grams => 1,
            Pieces => (Piece("juice_of_one") ?? Piece("piece"))?.Grams,
            _ => throw new ArgumentException($"A pack is counted in ml, g or piece, not in \"{packUnit}\".", nameof(packUnit)),
        };
        return (double)netPackPrice.Amount / (packAmount * gramsPerUnit);

        PieceWeight? Piece(string measure) => ingredient.Pieces.FirstOrDefault(p => p.Measure == measure);
    }
}
