namespace MenuLab.Core.Solutions;

/// <summary>
/// Activity of water: ln aw = sum over solutes of ln(1 - x) + a x^2 + b x^3, x the mole fraction of that solute alone in all the
/// water (Norrish for each solute, Ross for the product). Shared by the freezing point, the ice and the water activity.
/// </summary>
/// <remarks>
/// Constants: polyols from PMC2836749 Table 3; sugars and acids MEMORY; ethanol below 0 °C fitted to Lange's Handbook Table 5.13.
/// Galactose counts like glucose, lactose and other polyols like maltose (their size); acids without a constant and carbon dioxide are ideal;
/// table salt counts two particles. Dextrins, protein, fat, fibre and other solids are left out: too large or unknown.
/// </remarks>
internal static class Norrish
{
    public const double WaterGramsPerMole = 18.0153;
    public const double EthanolGramsPerMole = 46.068;
    public const double SaltGramsPerMole = 58.443;

    /// <summary>The most solutes that a liquid can hold.</summary>
    public const int MostSolutes = Components.Count;

    private static readonly double[] MolesPerUnit = new double[Components.Count];
    private static readonly double[] Square = new double[Components.Count];

    static Norrish()
    {
        Set(Component.Sucrose, 1 / 342.297, -6.47);
        Set(Component.Glucose, 1 / 180.156, -2.25);
        Set(Component.Fructose, 1 / 180.156, -2.25);
        Set(Component.Galactose, 1 / 180.156, -2.25);
        Set(Component.Lactose, 1 / 342.297, -4.54);
        Set(Component.Maltose, 1 / 342.297, -4.54);
        Set(Component.Glycerol, 1 / 92.09, -1.16);
        Set(Component.Sorbitol, 1 / 182.17, -1.65);
        Set(Component.Mannitol, 1 / 182.17, -0.906);
        Set(Component.Xylitol, 1 / 152.15, -1.66);
        Set(Component.Erythritol, 1 / 122.12, -1.34);
        Set(Component.OtherPolyol, 1 / 344.31, -4.54);
        for (var acid = Components.FirstAcid; acid <= Components.LastAcid; acid++)
        {
            Set(acid, 1, 0);
        }
        Set(Component.Citric, 1, -6.17);
        Set(Component.Tartaric, 1, -4.68);
        Set(Component.Malic, 1, -1.82);
        Set(Component.Lactic, 1, 1.59);
        Set(Component.Salt, 2 / SaltGramsPerMole, 0);

        static void Set(Component component, double molesPerUnit, double square)
        {
            MolesPerUnit[(int)component] = molesPerUnit;
            Square[(int)component] = square;
        }
    }

    /// <summary>One solute: moles of particles and its two constants.</summary>
    public readonly record struct Solute(double Moles, double Square, double Cube);

    /// <summary>Lists what is dissolved in a liquid.</summary>
    /// <param name="liquid">The mixing state.</param>
    /// <param name="ethanol">Constants for ethanol, which depend on the temperature; its moles are filled in.</param>
    /// <param name="withSalt">Table salt counts as two ideal particles.</param>
    /// <param name="solutes">Receives them; <see cref="MostSolutes"/> long.</param>
    /// <returns>How many there are.</returns>
    public static int List(Liquid liquid, Solute ethanol, bool withSalt, Span<Solute> solutes)
    {
        var count = 0;
        if (liquid[Component.Ethanol] > 0)
        {
            solutes[count++] = ethanol with { Moles = liquid[Component.Ethanol] / EthanolGramsPerMole };
        }
        var parts = liquid.Parts;
        for (var c = (int)Component.Sucrose; c <= (int)Component.Salt; c++)
        {
            // Sugars not told apart are one solute with sucrose, as in the density.
            var amount = c == (int)Component.Sucrose ? parts[c] + liquid[Component.SugarNotToldApart] : parts[c];
            var moles = amount * MolesPerUnit[c];
            if (moles > 0 && (withSalt || c != (int)Component.Salt))
            {
                solutes[count++] = new Solute(moles, Square[c], 0);
            }
        }
        return count;
    }

    /// <summary>ln of the water activity of solutes in so many moles of water; minus infinity without water.</summary>
    public static double LnActivity(ReadOnlySpan<Solute> solutes, double waterMoles)
    {
        // One logarithm of the product instead of one per solute.
        var product = 1.0;
        var sum = 0.0;
        foreach (ref readonly var solute in solutes)
        {
            var share = 1 / (solute.Moles + waterMoles);
            var x = solute.Moles * share;
            product *= waterMoles * share;
            sum += x * x * (solute.Square + x * solute.Cube);
        }
        return Math.Log(product) + sum;
    }
}
