using System.Globalization;

namespace MenuLab.Core.Proposals;

/// <summary>Makes a salt solution by mass.</summary>
public static class Saline
{
    /// <summary>Field of a strength that cannot be made.</summary>
    public const string Strength = "StrengthPercent";

    // Saturated at 20 °C: 26.4 g per 100 g (CRC-type solubility tables, MEMORY).
    private const double SaturatedPercent = 26.4;

    /// <summary>Salt and water for so much saline.</summary>
    /// <param name="percentByMass">g of salt per 100 g of saline, above 0 to 26.4.</param>
    /// <param name="grams">Saline wanted, g, above 0.</param>
    /// <param name="salt">The salt.</param>
    /// <param name="water">The water.</param>
    /// <returns>The amounts, water first, or a problem.</returns>
    /// <remarks>Source: mass balance; saturation 26.4 % at 20 °C (MEMORY). Valid for: table salt. Error: none beyond the scale's.</remarks>
    public static Result<Adjustment> Make(double percentByMass, double grams, Additive salt, Additive water)
    {
        if (!(percentByMass > 0 && percentByMass <= SaturatedPercent))
        {
            return Amounts.Refused(
                Strength, string.Create(CultureInfo.InvariantCulture, $"A saline of {percentByMass} % is not possible: salt dissolves up to {SaturatedPercent} g in 100 g. Give a strength above 0 and at most that."));
        }
        return grams > 0 && double.IsFinite(grams)
            ? Result.Ok(new Adjustment("dissolve", water.Of(grams * (1 - percentByMass / 100)), [salt.Of(grams * percentByMass / 100)], []))
            : Amounts.Refused("Grams", "Say how much is wanted, above 0 g.");
    }
}
