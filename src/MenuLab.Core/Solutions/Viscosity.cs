namespace MenuLab.Core.Solutions;

/// <summary>Dynamic viscosity of water, sugar, ethanol and their mixtures, and an index of body made from it.</summary>
/// <remarks>Pulp, foam and gums are not modelled: a measured flow time says more than a formula there.</remarks>
public static class Viscosity
{
    /// <summary>Highest Brix for which the sucrose formula was checked.</summary>
    public const double HighestBrix = 66;

    /// <summary>Lowest temperature accepted, °C.</summary>
    public const double LowestCelsius = -20;

    /// <summary>Highest temperature accepted, °C.</summary>
    public const double HighestCelsius = 100;

    private const int Columns = 11;

    // Rows: 0, 10, 20, 30 °C. Columns: 0 to 100 % ethanol by mass in steps of 10. mPa s.
    internal static ReadOnlySpan<double> EthanolTable =>
    [
        1.792, 3.311, 5.319, 6.94, 7.14, 6.58, 5.75, 4.762, 3.69, 2.732, 1.773,
        1.308, 2.179, 3.165, 4.05, 4.39, 4.18, 3.77, 3.268, 2.71, 2.101, 1.466,
        1.005, 1.538, 2.183, 2.71, 2.91, 2.87, 2.67, 2.37, 2.008, 1.61, 1.2,
        0.801, 1.16, 1.553, 1.87, 2.02, 2.02, 1.93, 1.767, 1.531, 1.279, 1.003,
    ];

    // ln of each cell over the first of its row, so that no logarithm is taken per call.
    private static readonly double[] LnRatios = MakeLnRatios();

    /// <summary>Viscosity of water.</summary>
    /// <param name="celsius">Temperature, °C.</param>
    /// <returns>mPa s.</returns>
    /// <remarks>Source: IAPWS 2008 correlation at 0.1 MPa (form MEMORY). Valid for: -20 to 100 °C. Error: 0.4 % against handbook values of 0 to 25 °C.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Outside -20 to 100 °C, or NaN.</exception>
    public static double Water(double celsius)
    {
        // One logarithm and four exponentials instead of four powers.
        var ln = Math.Log((Guard.InRange(celsius, LowestCelsius, HighestCelsius) + 273.15) / 300);
        return 1e-3 * (280.68 * Math.Exp(-1.9 * ln) + 511.45 * Math.Exp(-7.7 * ln) + 61.131 * Math.Exp(-19.6 * ln) + 0.45903 * Math.Exp(-40 * ln));
    }

    /// <summary>Viscosity of a sucrose solution.</summary>
    /// <param name="brix">Grams of sucrose in 100 g of solution.</param>
    /// <param name="celsius">Temperature, °C.</param>
    /// <returns>mPa s; exactly that of water at 0 Brix.</returns>
    /// <remarks>
    /// Source: form of Genotelle (in Mathlouthi and Genotelle 1995), constants refitted to the Rubber Handbook table.
    /// Valid for: 0 to 66 Brix and 0 to 30 °C, usable to -5 °C; beyond, an extrapolation. Error: 0.44 % rms, 1.3 % at worst on 30 values.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">Outside 0 to 100 Brix or -20 to 100 °C, or NaN.</exception>
    public static double Sucrose(double brix, double celsius)
    {
        var water = Water(celsius);
        if (Guard.InRange(brix, 0, 100) == 0)
        {
            return water;
        }
        var ln = Math.Log(brix / (1900 - 18 * brix));
        var log10 = 27.076 * Math.Exp(1.0444 * ln) + (20 - celsius) / (91 + celsius) * 51.42 * Math.Exp(1.322 * ln);
        return water * Math.Exp(2.302585092994045684 * log10);
    }

    /// <summary>Viscosity of ethanol and water.</summary>
    /// <param name="massPercent">Grams of ethanol in 100 g of mixture.</param>
    /// <param name="celsius">Temperature, °C.</param>
    /// <returns>mPa s.</returns>
    /// <remarks>
    /// Source: Bingham and Jackson compilation, ln of the ratio to water interpolated by mass and temperature, times <see cref="Water"/>.
    /// Valid for: 0 to 100 %, 0 to 30 °C; below and above, the ratio of the nearest row. Error: 0.5 % at the cells, 2 % between them.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">Outside 0 to 100 % or -20 to 100 °C, or NaN.</exception>
    public static double EthanolWater(double massPercent, double celsius) => Water(celsius) * EthanolRatio(massPercent, celsius);

    /// <summary>Viscosity of sucrose, ethanol and water together.</summary>
    /// <param name="sucroseGrams">Sucrose, g.</param>
    /// <param name="ethanolGrams">Ethanol, g.</param>
    /// <param name="waterGrams">Water, g.</param>
    /// <param name="celsius">Temperature, °C.</param>
    /// <returns>mPa s; NaN where there is neither water nor sugar nor ethanol.</returns>
    /// <remarks>
    /// Source: product of the sucrose solution at its sugar : water ratio and the rise that ethanol gives at its ethanol : water ratio; ESTIMATE.
    /// Valid for: drinks of 0 to 30 °C. Error: 20 %; with one of the two alone, that of the one.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A negative, infinite or NaN mass, or outside -20 to 100 °C.</exception>
    public static double Mixed(double sucroseGrams, double ethanolGrams, double waterGrams, double celsius)
    {
        var syrup = Guard.FiniteNonNegative(sucroseGrams) + Guard.FiniteNonNegative(waterGrams);
        var solvent = Guard.FiniteNonNegative(ethanolGrams) + waterGrams;
        if (syrup + solvent == 0)
        {
            return double.NaN;
        }
        // The divisor is the table's own water, so that a drink without ethanol keeps the sucrose figure exactly.
        var brix = syrup > 0 ? 100 * sucroseGrams / syrup : 0;
        var strength = solvent > 0 ? 100 * ethanolGrams / solvent : 0;
        return Sucrose(brix, celsius) * EthanolRatio(strength, celsius);
    }

    /// <summary>Viscosity of a liquid.</summary>
    /// <param name="liquid">The mixing state.</param>
    /// <param name="celsius">Temperature, °C.</param>
    /// <returns>mPa s; NaN for an empty liquid. Pulp, gums and foam are not in it.</returns>
    /// <remarks>
    /// Source: <see cref="Mixed"/> with all soluble solids as sucrose; the share of other sugars thins by up to 10 % above 30 Brix (MEMORY; none
    /// below 15, straight between); fat droplets by Krieger and Dougherty, protein by exp(3.5 c/(1 - 1.4 c)) (ESTIMATE).
    /// Valid for: drinks without pulp and gums, 0 to 30 °C; fat to 0.5 and protein to 0.5 g/mL, held there. Error: 20 %, more with egg white.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">Outside -20 to 100 °C, or NaN.</exception>
    public static double MilliPascalSeconds(Liquid liquid, double celsius)
    {
        double solids = 0, otherSugars = 0;
        for (var c = Component.Sucrose; c <= Component.OtherSolids; c++)
        {
            if (LinearForms.IsSolubleSolid(c))
            {
                solids += liquid[c] * Components.GramsPerUnit(c);
            }
        }
        for (var c = Component.Glucose; c <= Component.Maltose; c++)
        {
            otherSugars += liquid[c];
        }
        var water = liquid[Component.Water];
        var viscosity = Mixed(solids, liquid[Component.Ethanol], water, celsius);
        if (otherSugars > 0)
        {
            var brix = 100 * solids / (solids + water);
            viscosity *= 1 - 0.1 * (otherSugars / solids) * Math.Clamp((brix - 15) / 15, 0, 1);
        }
        if (liquid[Component.Fat] > 0 || liquid[Component.Protein] > 0)
        {
            var volume = Density.Millilitres(liquid);
            var fat = liquid[Component.Fat] * Density.ApparentMillilitresPerUnit(Component.Fat) / volume;
            viscosity *= FatFactor(Math.Min(fat, 0.5)) * ProteinFactor(Math.Min(liquid[Component.Protein] / volume, 0.5));
        }
        return viscosity;
    }

    /// <summary>How many times thicker fat droplets make a liquid.</summary>
    /// <param name="volumeFraction">Fat by volume, 0 to 0.6.</param>
    /// <returns>A factor, 1 without fat.</returns>
    /// <remarks>Source: Krieger and Dougherty with closest packing 0.64, ESTIMATE. Valid for: coconut milk, cream. Error: unknown, 20 % or more.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Outside 0 to 0.6, or NaN.</exception>
    public static double FatFactor(double volumeFraction) => Math.Pow(1 - Guard.InRange(volumeFraction, 0, 0.6) / 0.64, -1.6);

    /// <summary>How many times thicker soluble protein makes a liquid.</summary>
    /// <param name="gramsPerMillilitre">Protein, g/mL, 0 to 0.6.</param>
    /// <returns>A factor, 1 without protein.</returns>
    /// <remarks>
    /// Source: exp(3.5 c/(1 - 1.4 c)), ESTIMATE. Valid for: aquafaba, whey; real egg white is several times thicker and thins when stirred.
    /// Error: unknown.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">Outside 0 to 0.6 g/mL, or NaN.</exception>
    public static double ProteinFactor(double gramsPerMillilitre)
    {
        var c = Guard.InRange(gramsPerMillilitre, 0, 0.6);
        return Math.Exp(3.5 * c / (1 - 1.4 * c));
    }

    /// <summary>An index of body from viscosity, solids and fat.</summary>
    /// <param name="viscosity">Viscosity as served, mPa s.</param>
    /// <param name="celsius">Temperature as served, °C.</param>
    /// <param name="solidsGramsPer100Millilitres">Dissolved and suspended solids, g/100 mL.</param>
    /// <param name="fatGramsPer100Millilitres">Fat, g/100 mL.</param>
    /// <returns>Index without a unit: 0 for water, about 3 for an 8 Brix drink at 5 °C, about 37 for a 60 Brix syrup at 20 °C.</returns>
    /// <remarks>Source: our own proposal, ESTIMATE, to be calibrated on a panel. Valid for: comparing drinks of one house. Error: unknown.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A negative, infinite or NaN figure, no viscosity, or outside -20 to 100 °C.</exception>
    public static double BodyIndex(double viscosity, double celsius, double solidsGramsPer100Millilitres, double fatGramsPer100Millilitres) =>
        viscosity > 0
            ? 10 * Math.Log10(Guard.FiniteNonNegative(viscosity) / Water(celsius))
              + 0.25 * Guard.FiniteNonNegative(solidsGramsPer100Millilitres)
              + 0.8 * Guard.FiniteNonNegative(fatGramsPer100Millilitres)
            : throw new ArgumentOutOfRangeException(nameof(viscosity), viscosity, "Must be above zero.");

    // Viscosity of ethanol and water over that of water, at the nearest temperature of the table.
    private static double EthanolRatio(double massPercent, double celsius)
    {
        var mass = Guard.InRange(massPercent, 0, 100) / 10;
        if (mass == 0)
        {
            return 1;
        }
        var column = Math.Min((int)mass, Columns - 2);
        var right = mass - column;
        var temperature = Math.Clamp(celsius / 10, 0, 3);
        var row = Math.Min((int)temperature, 2);
        var down = temperature - row;
        var upper = Between(row);
        return Math.Exp(upper + down * (Between(row + 1) - upper));

        double Between(int r) => LnRatios[r * Columns + column] * (1 - right) + LnRatios[r * Columns + column + 1] * right;
    }

    private static double[] MakeLnRatios()
    {
        var ratios = new double[EthanolTable.Length];
        for (var i = 0; i < ratios.Length; i++)
        {
            ratios[i] = Math.Log(EthanolTable[i] / EthanolTable[i / Columns * Columns]);
        }
        return ratios;
    }
}
