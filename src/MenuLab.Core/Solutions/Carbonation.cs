namespace MenuLab.Core.Solutions;

/// <summary>Carbon dioxide in water, wine-like drinks and sodas.</summary>
/// <remarks>
/// One volume is a litre of the gas at 0 °C and 1 atm in a litre of drink. Carbonated liquids must not be shaken in a closed tin nor
/// heated in a closed siphon.
/// </remarks>
public static class Carbonation
{
    /// <summary>Litres that a mole of the gas takes at 0 °C and 1 atm (real gas).</summary>
    public const double LitresPerMole = 22.26;

    /// <summary>Molar mass of CO2, g/mol.</summary>
    public const double GramsPerMole = 44.0095;

    /// <summary>Most ethanol, % vol, for which <see cref="SolubilityFactor"/> stands; solubility rises again in strong spirits.</summary>
    public const double HighestAbvPercent = 15;

    /// <summary>Most dissolved solids, g/L, for which <see cref="SolubilityFactor"/> is given.</summary>
    public const double HighestSolidsGramsPerLitre = 300;

    private const double BarPerAtmosphere = 1.01325;

    // Molar volume behind the Bunsen coefficients of Murray and Riley.
    private const double BunsenLitresPerMole = 22.2605;

    /// <summary>Solubility of carbon dioxide in water.</summary>
    /// <param name="celsius">Temperature, °C.</param>
    /// <returns>mol per kg of water and atm of CO2.</returns>
    /// <remarks>
    /// Source: Plummer and Busenberg 1982. Valid for: 0 to 60 °C, to about 5 bar. Error: 2 % (0.7 % at 5 °C against Murray and Riley 1971,
    /// 3.5 % at 0 °C against the CRC table).
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">Outside 0 to 60 °C, or NaN.</exception>
    public static double Henry(double celsius)
    {
        var t = Guard.InRange(celsius, 0, 60) + 273.15;
        return Math.Pow(10, 108.3865 + 0.01985076 * t - 6919.53 / t - 40.45154 * Math.Log10(t) + 669365 / (t * t));
    }

    /// <summary>Bunsen coefficient of carbon dioxide in water.</summary>
    /// <param name="celsius">Temperature, °C.</param>
    /// <returns>Litres of gas (0 °C, 1 atm) per litre of water and atm.</returns>
    /// <remarks>Source: <see cref="Henry"/> and the density of water. Valid for: 0 to 60 °C. Error: 1.5 % against Murray and Riley 1971.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Outside 0 to 60 °C, or NaN.</exception>
    public static double Bunsen(double celsius) => Henry(celsius) * WaterDensity.KilogramsPerCubicMetre(celsius) / 1000 * BunsenLitresPerMole;

    /// <summary>How much ethanol and dissolved solids lower the solubility.</summary>
    /// <param name="abvPercent">Ethanol, % vol.</param>
    /// <param name="solidsGramsPerLitre">Sugar and other dissolved solids, g/L.</param>
    /// <returns>A factor, 1 in water; NaN above 15 % vol or 300 g/L, where the relation does not hold.</returns>
    /// <remarks>
    /// Source: EU wine method for carbon dioxide, read as a ratio: (1 - 0.0116 A)(1 - 0.00144 S). Valid for: to 15 % vol; the limit of
    /// 300 g/L is ours. Error: 5 %.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">Negative, infinite or NaN.</exception>
    public static double SolubilityFactor(double abvPercent, double solidsGramsPerLitre) =>
        Guard.FiniteNonNegative(abvPercent) > HighestAbvPercent || Guard.FiniteNonNegative(solidsGramsPerLitre) > HighestSolidsGramsPerLitre
            ? double.NaN
            : (1 - 0.0116 * abvPercent) * (1 - 0.00144 * solidsGramsPerLitre);

    /// <summary>Mass of carbon dioxide that a drink takes up per bar.</summary>
    /// <param name="celsius">Temperature, °C.</param>
    /// <param name="abvPercent">Ethanol, % vol.</param>
    /// <param name="solidsGramsPerLitre">Dissolved solids, g/L.</param>
    /// <returns>g/(L bar); NaN where <see cref="SolubilityFactor"/> is.</returns>
    /// <remarks>Source: <see cref="Henry"/> times <see cref="SolubilityFactor"/>, a litre taken as a kilogram of water. Valid for and error: theirs, 5 %.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Outside 0 to 60 °C, or a negative, infinite or NaN figure.</exception>
    public static double GramsPerLitreBar(double celsius, double abvPercent = 0, double solidsGramsPerLitre = 0) =>
        Henry(celsius) * GramsPerMole / BarPerAtmosphere * SolubilityFactor(abvPercent, solidsGramsPerLitre);

    /// <summary>Volumes of carbon dioxide at rest under a pressure.</summary>
    /// <param name="gaugeBar">Pressure of CO2 above the atmosphere's, bar.</param>
    /// <param name="celsius">Temperature, °C.</param>
    /// <param name="abvPercent">Ethanol, % vol.</param>
    /// <param name="solidsGramsPerLitre">Dissolved solids, g/L.</param>
    /// <returns>Litres of gas (0 °C, 1 atm) per litre; NaN where <see cref="SolubilityFactor"/> is.</returns>
    /// <remarks>
    /// Source: <see cref="Henry"/>, pure CO2 above the drink, atmosphere of 1.01325 bar, a litre taken as a kilogram of water.
    /// Valid for: 0 to 60 °C, to 4 bar gauge. Error: 2 % in water, 5 % in drinks.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">Outside 0 to 60 °C, or a negative, infinite or NaN figure.</exception>
    public static double Volumes(double gaugeBar, double celsius, double abvPercent = 0, double solidsGramsPerLitre = 0) =>
        VolumesPerAtmosphere(celsius, abvPercent, solidsGramsPerLitre) * (Guard.FiniteNonNegative(gaugeBar) + BarPerAtmosphere) / BarPerAtmosphere;

    /// <summary>Pressure that holds so many volumes.</summary>
    /// <param name="volumes">Litres of gas (0 °C, 1 atm) per litre.</param>
    /// <param name="celsius">Temperature, °C.</param>
    /// <param name="abvPercent">Ethanol, % vol.</param>
    /// <param name="solidsGramsPerLitre">Dissolved solids, g/L.</param>
    /// <returns>bar above the atmosphere's; negative where less than the atmosphere's pressure would do; NaN where <see cref="SolubilityFactor"/> is.</returns>
    /// <remarks>Source, range and error: the inverse of <see cref="Volumes"/>.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Outside 0 to 60 °C, or a negative, infinite or NaN figure.</exception>
    public static double GaugeBar(double volumes, double celsius, double abvPercent = 0, double solidsGramsPerLitre = 0) =>
        (Guard.FiniteNonNegative(volumes) / VolumesPerAtmosphere(celsius, abvPercent, solidsGramsPerLitre) - 1) * BarPerAtmosphere;

    /// <summary>Volumes of a liquid that holds so much dissolved carbon dioxide.</summary>
    /// <param name="moles">Carbonic component, mol.</param>
    /// <param name="millilitres">Volume of the liquid, mL, above 0.</param>
    /// <returns>Litres of gas (0 °C, 1 atm) per litre.</returns>
    /// <remarks>Source: molar volume of the real gas, 22.26 L/mol (one volume is 1.977 g/L). Valid for: any level. Error: 0.1 %.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Negative, infinite or NaN, or no volume.</exception>
    public static double VolumesFromMoles(double moles, double millilitres) =>
        Guard.FiniteNonNegative(millilitres) > 0
            ? Guard.FiniteNonNegative(moles) * LitresPerMole * 1000 / millilitres
            : throw new ArgumentOutOfRangeException(nameof(millilitres), millilitres, "Must be above zero.");

    /// <summary>Dissolved carbon dioxide of a liquid of so many volumes.</summary>
    /// <param name="volumes">Litres of gas (0 °C, 1 atm) per litre.</param>
    /// <param name="millilitres">Volume of the liquid, mL.</param>
    /// <returns>Carbonic component, mol.</returns>
    /// <remarks>Source, range and error: the inverse of <see cref="VolumesFromMoles"/>.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Negative, infinite or NaN.</exception>
    public static double MolesFromVolumes(double volumes, double millilitres) =>
        Guard.FiniteNonNegative(volumes) * Guard.FiniteNonNegative(millilitres) / (1000 * LitresPerMole);

    private static double VolumesPerAtmosphere(double celsius, double abvPercent, double solidsGramsPerLitre) =>
        Henry(celsius) * LitresPerMole * SolubilityFactor(abvPercent, solidsGramsPerLitre);
}
