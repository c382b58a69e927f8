namespace MenuLab.Core.Solutions;

/// <summary>Activity of the water in a liquid near room temperature.</summary>
/// <remarks>An indicator for formulation. It is no safety determination: those follow local codes and a licensed process authority.</remarks>
public static class WaterActivity
{
    // Lowering per mol of sodium chloride in a kilogram of water, MEMORY.
    private const double SaltLowering = 0.033;

    // Raoult at room temperature: the true activity is 0.00 to 0.01 higher.
    private static readonly Norrish.Solute EthanolAtRoomTemperature = new(0, 0, 0);

    /// <summary>Water activity of a liquid at 20 to 25 °C.</summary>
    /// <param name="liquid">The mixing state.</param>
    /// <returns>0 to 1; 1 for pure water, NaN without water.</returns>
    /// <remarks>
    /// Source: Norrish per solute and Ross product (form: Baeza et al. 2010; constants: PMC2836749 Table 3 for polyols, MEMORY for sugars and
    /// acids); table salt as 1 - 0.033 m, MEMORY. Protein, dextrins, fibre and other solids are left out, so the true figure is a little lower.
    /// Valid for: to 67 Brix, 25 % ethanol by mass, 2 mol/kg of salt. Error: 0.002 for sucrose to 60 Brix, 0.01 in mixtures.
    /// </remarks>
    public static double Of(Liquid liquid)
    {
        var water = liquid[Component.Water];
        if (!(water > 0))
        {
            return double.NaN;
        }
        Span<Norrish.Solute> solutes = stackalloc Norrish.Solute[Norrish.MostSolutes];
        var count = Norrish.List(liquid, EthanolAtRoomTemperature, withSalt: false, solutes);
        var saltMolality = liquid[Component.Salt] / Norrish.SaltGramsPerMole / water * 1000;
        return Math.Exp(Norrish.LnActivity(solutes[..count], water / Norrish.WaterGramsPerMole)) * Math.Max(0, 1 - SaltLowering * saltMolality);
    }

    /// <summary>Water activity of a sucrose solution.</summary>
    /// <param name="molality">mol of sucrose per kg of water.</param>
    /// <returns>0 to 1.</returns>
    /// <remarks>Source: Norrish, K = -6.47 (MEMORY). Valid for: to 6 mol/kg (67 Brix). Error: 0.001 against osmotic coefficients of Robinson and Stokes (MEMORY).</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Negative, infinite or NaN.</exception>
    public static double OfSucrose(double molality)
    {
        var moles = Guard.FiniteNonNegative(molality);
        return Math.Exp(Norrish.LnActivity([new Norrish.Solute(moles, -6.47, 0)], 1000 / Norrish.WaterGramsPerMole));
    }
}
