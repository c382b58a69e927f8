using MenuLab.Core.Solutions;

namespace MenuLab.Core.Preps;

/// <summary>What the temperature of a boiling syrup tells of its Brix.</summary>
public static class SyrupBoiling
{
    /// <summary>Boiling point of water at 101.325 kPa, K.</summary>
    private const double WaterKelvin = 373.15;

    private const double StandardKilopascals = 101.325;
    private const double KelvinPerKilopascal = 0.28;
    private const double JoulesPerMole = 40_660;
    private const double GasConstant = 8.314462;
    private const double SucroseGramsPerMole = 342.297;

    /// <summary>Boiling temperature of a sucrose syrup.</summary>
    /// <param name="brix">g of sucrose per 100 g.</param>
    /// <param name="kilopascals">Air pressure, kPa.</param>
    /// <returns>°C.</returns>
    /// <remarks>
    /// Source: 1/T = 1/T0 + R/40660 ln aw with aw by <see cref="WaterActivity.OfSucrose"/>. Valid for: 0 to 80 Brix. Error: 0.7 °C against
    /// confectionery tables (MEMORY: 50 Brix 102, 60 103, 70 106, 75 108, 80 111 to 112).
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">Outside 0 to 80 Brix or 60 to 110 kPa, or NaN.</exception>
    public static double Celsius(double brix, double kilopascals = StandardKilopascals)
    {
        Guard.InRange(brix, 0, 80);
        var water = WaterKelvin - KelvinPerKilopascal * (StandardKilopascals - Guard.InRange(kilopascals, 60, 110));
        var molality = 1000 * brix / (100 - brix) / SucroseGramsPerMole;
        return 1 / (1 / water + GasConstant / JoulesPerMole * Math.Log(WaterActivity.OfSucrose(molality))) - 273.15;
    }

    /// <summary>Brix of a syrup that boils at a temperature.</summary>
    /// <param name="celsius">Temperature at the boil, °C.</param>
    /// <param name="kilopascals">Air pressure, kPa.</param>
    /// <returns>g of sucrose per 100 g; 0 at and below the boiling point of water.</returns>
    /// <remarks>Source, range and error: the inverse of <see cref="Celsius"/>; 0.7 °C is 2 to 6 Brix, so a refractometer is better below 70.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Above the boiling point of 80 Brix, outside 60 to 110 kPa, or NaN.</exception>
    public static double Brix(double celsius, double kilopascals = StandardKilopascals)
    {
        Guard.InRange(celsius, 0, Celsius(80, kilopascals));
        return celsius <= Celsius(0, kilopascals) ? 0 : Crossing.Of(brix => Celsius(brix, kilopascals) - celsius, 0, 80);
    }
}
