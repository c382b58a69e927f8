using MenuLab.Core.Pantry;

namespace MenuLab.Data.Pantry;

/// <summary>What a figure may be at most before it is surely a slip of the hand; the checks of Core ask whether figures fit each other.</summary>
public static class FigureLimits
{
    // Nothing that goes into a drink is denser than this, g/mL (baking soda 2.2; MEMORY), so 100 mL of it weigh no more.
    private const double Densest = 3;

    // Lighter than any liquid that is drunk (ethanol 0.789), g/mL.
    private const double Lightest = 0.5;

    // Pure fat has 900 kcal per 100 g (9 kcal/g, Regulation (EU) 1169/2011 Annex XIV).
    private const double MostEnergy = 900;

    // Baking soda has 1190 mmol of charge per 100 g (1 mol in 84.0 g).
    private const double MostCharge = 3000;

    /// <summary>The least and the most that a figure may say.</summary>
    /// <param name="quantity">Name of the quantity, as in seed-data.</param>
    /// <param name="basis">What it is per: "100 g" or "100 mL".</param>
    public static (double Least, double Most) Of(string quantity, string basis)
    {
        var grams = basis == CompositionBuilder.PerVolume ? 100 * Densest : 100;
        return quantity switch
        {
            FigureQuantities.Density => (Lightest, Densest),
            FigureQuantities.Ph => (0, 14),
            FigureQuantities.Brix or FigureQuantities.BrixMinimum => (0, 100),
            FigureQuantities.Charge => (-MostCharge, MostCharge),
            FigureQuantities.Carbonic => (0, MostCharge),
            FigureQuantities.CarbonDioxideVolumes => (0, 10),
            FigureQuantities.Energy => (0, basis == CompositionBuilder.PerVolume ? MostEnergy * Densest : MostEnergy),
            FigureQuantities.QuininePerLitre => (0, grams * 10_000),
            _ when quantity.EndsWith("_mg", StringComparison.Ordinal) => (0, grams * 1000),
            _ when quantity.EndsWith("_pct", StringComparison.Ordinal) => (0, 100),
            _ => (0, grams),
        };
    }
}
