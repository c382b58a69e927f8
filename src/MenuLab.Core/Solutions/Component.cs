namespace MenuLab.Core.Solutions;

/// <summary>
/// The places of the mixing state vector. Every one is extensive and additive on mixing. The unit of each stands in
/// its comment: grams unless said; acids and charge in mol; traces in mg; the volume residual in mL.
/// </summary>
public enum Component
{
    /// <summary>Water, g.</summary>
    Water,
    /// <summary>Ethanol, g.</summary>
    Ethanol,
    /// <summary>Sucrose, g.</summary>
    Sucrose,
    /// <summary>Glucose, g.</summary>
    Glucose,
    /// <summary>Fructose, g.</summary>
    Fructose,
    /// <summary>Galactose, g.</summary>
    Galactose,
    /// <summary>Lactose, g.</summary>
    Lactose,
    /// <summary>Maltose, g.</summary>
    Maltose,
    /// <summary>Sugars that the source does not tell apart, g; computed like sucrose.</summary>
    SugarNotToldApart,
    /// <summary>Glycerol, g.</summary>
    Glycerol,
    /// <summary>Sorbitol, g.</summary>
    Sorbitol,
    /// <summary>Mannitol, g.</summary>
    Mannitol,
    /// <summary>Xylitol, g.</summary>
    Xylitol,
    /// <summary>Erythritol, g.</summary>
    Erythritol,
    /// <summary>Maltitol, isomalt, lactitol and polyols not told apart, g.</summary>
    OtherPolyol,
    /// <summary>Starch, dextrins and other carbohydrate that is neither sugar nor fibre, g.</summary>
    OtherCarbohydrate,
    /// <summary>Citric acid, free and bound, mol.</summary>
    Citric,
    /// <summary>Malic acid, free and bound, mol.</summary>
    Malic,
    /// <summary>Tartaric acid, free and bound, mol.</summary>
    Tartaric,
    /// <summary>Acetic acid, free and bound, mol.</summary>
    Acetic,
    /// <summary>Lactic acid, free and bound, mol.</summary>
    Lactic,
    /// <summary>Ascorbic acid, free and bound, mol.</summary>
    Ascorbic,
    /// <summary>Succinic acid, free and bound, mol.</summary>
    Succinic,
    /// <summary>Phosphoric acid, free and bound, mol.</summary>
    Phosphoric,
    /// <summary>Quinic acid, free and bound, mol.</summary>
    Quinic,
    /// <summary>Oxalic acid, free and bound, mol.</summary>
    Oxalic,
    /// <summary>Dissolved carbon dioxide and its ions, mol.</summary>
    Carbonic,
    /// <summary>Strong-ion difference: strong cations minus strong anions, mol of charge; may be negative.</summary>
    Charge,
    /// <summary>Protein, g.</summary>
    Protein,
    /// <summary>Fat, g.</summary>
    Fat,
    /// <summary>Fibre, gums and pectin, g.</summary>
    Fibre,
    /// <summary>Table salt as sodium chloride, g; its charges balance each other.</summary>
    Salt,
    /// <summary>All other solids (ash, what no column names), g.</summary>
    OtherSolids,
    /// <summary>Caffeine, mg; its mass is neglected.</summary>
    Caffeine,
    /// <summary>Quinine as base, mg, for the legal limits; its mass is neglected.</summary>
    Quinine,
    /// <summary>Bitterness of everything but caffeine and quinine, mg of quinine hydrochloride equivalents.</summary>
    Bitter,
    /// <summary>Tannin, mg of gallic-acid equivalents; already within other solids.</summary>
    Tannin,
    /// <summary>Volume by stated density minus volume by the mixing model, mL (docs/science.md, section 2); may be negative.</summary>
    Residual,
}

/// <summary>Sets of components and their molar masses.</summary>
public static class Components
{
    /// <summary>How many components there are.</summary>
    public const int Count = (int)Component.Residual + 1;

    /// <summary>The first of the acids, which stand together (carbonic last among them).</summary>
    public const Component FirstAcid = Component.Citric;

    /// <summary>The last of the acids: carbonic, which counts for the pH but not for the titratable acidity.</summary>
    public const Component LastAcid = Component.Carbonic;

    /// <summary>How many acids there are, carbonic among them.</summary>
    public const int AcidCount = LastAcid - FirstAcid + 1;

    /// <summary>The bit of a component in a known-mask.</summary>
    public static ulong Bit(this Component component) => 1UL << (int)component;

    /// <summary>The component is one of the acids (in mol).</summary>
    public static bool IsAcid(this Component component) => component is >= FirstAcid and <= LastAcid;

    /// <summary>Grams of mass that one unit of the component brings: 1 for grams, the molar mass for acids, 0 for charge, traces and the residual.</summary>
    public static double GramsPerUnit(Component component) => Mass[(int)component];

    // Molar masses in g/mol from the abridged standard atomic weights (IUPAC): C 12.011, H 1.008, O 15.999, P 30.974.
    // Carbonic counts as the CO2 that was dissolved (44.0095).
    private static readonly double[] Mass = MakeMass();

    private static double[] MakeMass()
    {
        var mass = new double[Count];
        Array.Fill(mass, 1.0);
        mass[(int)Component.Citric] = 192.124;
        mass[(int)Component.Malic] = 134.087;
        mass[(int)Component.Tartaric] = 150.087;
        mass[(int)Component.Acetic] = 60.052;
        mass[(int)Component.Lactic] = 90.078;
        mass[(int)Component.Ascorbic] = 176.124;
        mass[(int)Component.Succinic] = 118.088;
        mass[(int)Component.Phosphoric] = 97.994;
        mass[(int)Component.Quinic] = 192.167;
        mass[(int)Component.Oxalic] = 90.034;
        mass[(int)Component.Carbonic] = 44.0095;
        mass[(int)Component.Charge] = 0;
        mass[(int)Component.Caffeine] = 0;
        mass[(int)Component.Quinine] = 0;
        mass[(int)Component.Bitter] = 0;
        mass[(int)Component.Tannin] = 0;
        mass[(int)Component.Residual] = 0;
        return mass;
    }
}
