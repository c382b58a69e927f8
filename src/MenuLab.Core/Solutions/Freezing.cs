namespace MenuLab.Core.Solutions;

/// <summary>The temperature at which the first ice forms in a liquid.</summary>
public static class Freezing
{
    /// <summary>The formula looks no lower than this, °C (200 K); a liquid with no water to freeze gives it too.</summary>
    public const double LowestCelsius = -73.15;

    /// <summary>Most ethanol in ethanol and water, by mass, for which the figure was checked.</summary>
    public const double HighestEthanolMassFraction = 0.30;

    /// <summary>Most sucrose in sucrose and water, by mass, for which the figure was checked.</summary>
    public const double HighestSucroseMassFraction = 0.40;

    // Below 0 °C; fitted to Lange's Handbook Table 5.13.
    internal static readonly Norrish.Solute EthanolInTheCold = new(0, 0.169, -12.506);

    private const double IceKelvin = 273.15;
    private const double GasConstant = 8.314462;
    private const double Fusion = 6009.5 / (GasConstant * IceKelvin);
    private const double HeatCapacity = 38.1 / GasConstant;

    private static readonly double LnActivityAtLowest = -Fusion * Warmth(LowestCelsius) + HeatCapacity * Bend(Warmth(LowestCelsius));

    /// <summary>Freezing point of a liquid.</summary>
    /// <param name="liquid">The mixing state.</param>
    /// <returns>°C; 0 for pure water or an empty liquid, <see cref="LowestCelsius"/> where the formula would go lower or there is no water.</returns>
    /// <remarks>
    /// Source: equilibrium of ice and solution (heat of fusion 6009.5 J/mol, change of heat capacity 38.1 J/(mol K)) with the water activity by
    /// Norrish and Ross. Valid for: to 30 % ethanol by mass and 40 Brix (<see cref="IsWithinRange"/>); beyond, an extrapolation.
    /// Error: ethanol 0.5 °C (Lange, CRC), sugars 0.15 °C.
    /// </remarks>
    public static double PointCelsius(Liquid liquid)
    {
        Span<Norrish.Solute> solutes = stackalloc Norrish.Solute[Norrish.MostSolutes];
        var count = Norrish.List(liquid, EthanolInTheCold, withSalt: true, solutes);
        return PointCelsius(solutes[..count], liquid[Component.Water]);
    }

    /// <summary>Whether a liquid is one of those for which the freezing point was checked.</summary>
    /// <param name="liquid">The mixing state.</param>
    /// <returns>True up to 30 % ethanol in ethanol and water and 40 % sugars in sugars and water, both by mass.</returns>
    /// <remarks>Source: tables of Lange (ethanol) and CRC (sucrose). Valid for: any liquid. Error: none, a limit.</remarks>
    public static bool IsWithinRange(Liquid liquid)
    {
        var water = liquid[Component.Water];
        var ethanol = liquid[Component.Ethanol];
        var sugar = 0.0;
        for (var c = Component.Sucrose; c <= Component.SugarNotToldApart; c++)
        {
            sugar += liquid[c];
        }
        return ethanol <= HighestEthanolMassFraction * (ethanol + water) && sugar <= HighestSucroseMassFraction * (sugar + water);
    }

    /// <summary>Freezing point of solutes in so much water, °C.</summary>
    internal static double PointCelsius(ReadOnlySpan<Norrish.Solute> solutes, double waterGrams)
    {
        if (solutes.IsEmpty)
        {
            return 0;
        }
        var lnActivity = Norrish.LnActivity(solutes, waterGrams / Norrish.WaterGramsPerMole);
        return lnActivity > LnActivityAtLowest ? CelsiusFrom(lnActivity) : LowestCelsius;
    }

    // Solves ln aw = -F y + C (y - ln(1 + y)) for y = T0/T - 1, which is 0 at 0 °C and 0.37 at 200 K. The start is right to
    // second order, so two or three Newton steps reach the last digit.
    private static double CelsiusFrom(double lnActivity)
    {
        var first = -lnActivity / Fusion;
        var y = first + HeatCapacity / (2 * Fusion) * first * first;
        for (var step = 0; step < 6; step++)
        {
            var excess = Fusion * y - HeatCapacity * Bend(y) + lnActivity;
            var change = excess / (Fusion - HeatCapacity * y / (1 + y));
            y -= change;
            if (Math.Abs(change) < 1e-9)
            {
                break;
            }
        }
        return -IceKelvin * y / (1 + y);
    }

    private static double Warmth(double celsius) => IceKelvin / (celsius + IceKelvin) - 1;

    private static double Bend(double y) => y - Math.Log(1 + y);
}
