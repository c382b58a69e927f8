namespace MenuLab.Core.Solutions;

/// <summary>Soluble solids and what a refractometer would show.</summary>
public static class Refractometer
{
    /// <summary>Most ethanol, % by mass, at which a Brix reading still means something.</summary>
    public const double HighestEthanolPercent = 1;

    // A gram of acetic acid in 100 g bends light about as much as 0.48 g of sucrose (CRC concentrative properties at 10 %, MEMORY).
    private const double AceticAsSucrose = 0.48;

    /// <summary>Soluble solids of a liquid.</summary>
    /// <param name="liquid">The mixing state.</param>
    /// <returns>g per 100 g: sugars, polyols, other carbohydrate, acids but acetic and carbonic, salt and other solids; NaN for an empty liquid.</returns>
    /// <remarks>Source: sum by mass. Valid for: any liquid. Error: of its composition, 0.3 where solids were measured.</remarks>
    public static double SolubleSolidsPercent(Liquid liquid)
    {
        var solids = 0.0;
        for (var c = Component.Sucrose; c <= Component.OtherSolids; c++)
        {
            if (LinearForms.IsSolubleSolid(c))
            {
                solids += liquid[c] * Components.GramsPerUnit(c);
            }
        }
        return 100 * solids / liquid.Grams;
    }

    /// <summary>What must be added to a Brix reading of an acid juice to give its soluble solids.</summary>
    /// <param name="citricPercent">Titratable acidity as anhydrous citric acid, g per 100 g.</param>
    /// <returns>Brix; 0 without acid.</returns>
    /// <remarks>
    /// Source: 21 CFR 146.132 (grapefruit juice): 0.012 + 0.193 x - 0.0004 x². Valid for: citrus juices to about 5 %, used beyond up to
    /// pure acid. Error: 0.05 Brix in citrus, unknown elsewhere.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">Outside 0 to 100 %, or NaN.</exception>
    public static double AcidCorrection(double citricPercent)
    {
        var x = Guard.InRange(citricPercent, 0, 100);
        return x == 0 ? 0 : 0.012 + 0.193 * x - 0.0004 * x * x;
    }

    /// <summary>Whether a Brix reading of a liquid means anything.</summary>
    /// <param name="liquid">The mixing state.</param>
    /// <returns>False above 1 % ethanol by mass, which bends light too, and for an empty liquid.</returns>
    /// <remarks>Source: instrument practice (about 1 %). Valid for: any liquid. Error: a limit; 1 % of ethanol reads about 0.5 Brix too much.</remarks>
    public static bool IsReadable(Liquid liquid) => liquid.Grams > 0 && 100 * liquid[Component.Ethanol] <= HighestEthanolPercent * liquid.Grams;

    /// <summary>What a refractometer should show for a liquid at 20 °C.</summary>
    /// <param name="liquid">The mixing state.</param>
    /// <returns>Brix; NaN where the reading would mean nothing (<see cref="IsReadable"/>).</returns>
    /// <remarks>
    /// Source: soluble solids less <see cref="AcidCorrection"/> of the free acid, acetic acid as 0.48 of its mass (MEMORY).
    /// Valid for: juices, cordials, syrups and shrubs without pulp. Error: 0.3 Brix by the instrument, 0.5 by the composition.
    /// </remarks>
    public static double ExpectedReading(Liquid liquid)
    {
        if (!IsReadable(liquid))
        {
            return double.NaN;
        }
        // Free acid: what a titration would count, acetic aside since it does not count among the solids either.
        var equivalents = -liquid[Component.Charge];
        for (var acid = Components.FirstAcid; acid <= Components.LastAcid; acid++)
        {
            if (acid != Component.Acetic)
            {
                equivalents += liquid[acid] * AcidBase.ChargeAtEndPoint[acid - Components.FirstAcid];
            }
        }
        var citricPercent = 100 * Math.Max(0, equivalents) * AcidBase.EquivalentMass(Component.Citric) / liquid.Grams;
        var acetic = 100 * liquid[Component.Acetic] * Components.GramsPerUnit(Component.Acetic) / liquid.Grams;
        return SolubleSolidsPercent(liquid) - AcidCorrection(Math.Min(citricPercent, 100)) + AceticAsSucrose * acetic;
    }

    /// <summary>Ratio of soluble solids to acid by which juice is graded; not a drink's sugar : acid.</summary>
    /// <param name="brix">Soluble solids, g per 100 g.</param>
    /// <param name="citricPercent">Titratable acidity as anhydrous citric acid, g per 100 g, above 0.</param>
    /// <returns>A ratio without unit.</returns>
    /// <remarks>Source: 7 CFR 51.1178. Valid for: citrus juices. Error: of both readings, 2 to 5 %.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Negative, infinite or NaN, or no acid.</exception>
    public static double BrixAcidRatio(double brix, double citricPercent) =>
        Guard.FiniteNonNegative(citricPercent) > 0
            ? Guard.FiniteNonNegative(brix) / citricPercent
            : throw new ArgumentOutOfRangeException(nameof(citricPercent), citricPercent, "Must be above zero.");
}
