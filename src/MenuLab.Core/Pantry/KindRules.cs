using MenuLab.Core.Solutions;

namespace MenuLab.Core.Pantry;

/// <summary>A bound that the kind of an ingredient gives where no figure stands: nothing, or at most so much.</summary>
/// <param name="Component">What it bounds; <see cref="Component.SugarNotToldApart"/> stands for all sugars.</param>
/// <param name="HighGrams">At most, g per 100 g (mg for traces); 0 where there cannot be any.</param>
public readonly record struct KindBound(Component Component, double HighGrams);

/// <summary>
/// What the kind of an ingredient says where nobody has measured. All of it is assumed (common practice, no source): a figure of the ingredient
/// always comes first. A component that stands in no list is an open question for that kind, and stays unknown.
/// </summary>
public sealed record KindRules
{
    /// <summary>Bounds from nothing to a little: the best guess is nothing, the range reaches up to the bound.</summary>
    public required IReadOnlyList<KindBound> Bounds { get; init; }

    /// <summary>Acid that a total acidity is taken to be where no acid is named: shares by moles.</summary>
    public required IReadOnlyList<(Component Acid, double Share)> AcidProfile { get; init; }

    /// <summary>At most so much acid where nothing is said of it, g per 100 g as the first of the profile; NaN where it is an open question.</summary>
    public required double AcidHighGrams { get; init; }

    /// <summary>Standard uncertainty of the sugars between lots, relative.</summary>
    public required double SugarVariation { get; init; }

    /// <summary>Standard uncertainty of the acids between lots, relative.</summary>
    public required double AcidVariation { get; init; }

    /// <summary>Correlation of sugars and acids of one lot.</summary>
    public double SugarAcidCorrelation { get; init; }

    /// <summary>Of the soluble solids that are not acid, the share that is sugar: least and most. NaN where nothing can be said.</summary>
    public (double Low, double High) SugarShareOfSolids { get; init; } = (double.NaN, double.NaN);

    /// <summary>Minerals other than salt stand as bicarbonate (waters).</summary>
    public bool MineralsAreBicarbonate { get; init; }

    /// <summary>Without acids of its own the minerals are taken as balanced: the strong-ion difference is nothing.</summary>
    public bool ChargeIsNothing { get; init; }

    /// <summary>Strong-ion difference where neither pH nor minerals are known, mol/L; NaN where nothing can be said.</summary>
    public double ChargePerLitre { get; init; } = double.NaN;

    /// <summary>Protein and phosphate buffers, which the model lacks, rule its pH.</summary>
    public bool ProteinBuffers { get; init; }

    /// <summary>The rules of a kind.</summary>
    public static KindRules Of(IngredientKind kind) => Table[(int)kind];

    // No bark, bean or leaf with these in it.
    private static readonly KindBound[] NoTraces = [new(Component.Caffeine, 0), new(Component.Quinine, 0)];

    // A polyol is in a thing because somebody put it there and says so.
    private static readonly KindBound[] NoPolyols =
    [
        new(Component.Glycerol, 0), new(Component.Sorbitol, 0), new(Component.Mannitol, 0), new(Component.Xylitol, 0), new(Component.Erythritol, 0),
        new(Component.OtherPolyol, 0),
    ];

    private static readonly KindBound[] NotBitter = [new(Component.Bitter, 0), new(Component.Tannin, 0)];

    // Fresh juice starts to ferment; 0.1 g is 0.13 % vol.
    private static KindBound[] Mass(
        double ethanol, double protein, double fat, double fibre, double carbohydrate, double salt, double solids) =>
    [
        new(Component.Ethanol, ethanol), new(Component.Protein, protein), new(Component.Fat, fat), new(Component.Fibre, fibre),
        new(Component.OtherCarbohydrate, carbohydrate), new(Component.Salt, salt), new(Component.OtherSolids, solids),
    ];

    // Sorbitol is natural in stone and pome fruit.
    private static readonly KindBound[] FruitPolyols =
    [
        new(Component.Glycerol, 0), new(Component.Sorbitol, 1), new(Component.Mannitol, 0), new(Component.Xylitol, 0), new(Component.Erythritol, 0),
        new(Component.OtherPolyol, 0),
    ];

    // Glycerol is natural in what was fermented: 5 to 10 g/L in wine.
    private static readonly KindBound[] WinePolyols =
    [
        new(Component.Glycerol, 1), new(Component.Sorbitol, 0), new(Component.Mannitol, 0), new(Component.Xylitol, 0), new(Component.Erythritol, 0),
        new(Component.OtherPolyol, 0),
    ];

    private static readonly KindRules[] Table = MakeTable();

    private static KindRules[] MakeTable()
    {
        var table = new KindRules[Enum.GetValues<IngredientKind>().Length];

        table[(int)IngredientKind.CitrusJuice] = new()
        {
            Bounds = [.. Mass(0.1, 1, 0.5, 1, 2, 0.05, 1), .. NoTraces, .. NoPolyols],
            AcidProfile = [(Component.Citric, 0.95), (Component.Malic, 0.05)],
            AcidHighGrams = double.NaN,
            SugarVariation = 0.08,
            AcidVariation = 0.12,
            // Inferred from typical pH and acidity: lime 44.7, lemon 48.4 meq/L.
            ChargePerLitre = 0.045,
            SugarAcidCorrelation = -0.3,
            SugarShareOfSolids = (0.75, 1),
        };
        table[(int)IngredientKind.Juice] = new()
        {
            Bounds = [.. Mass(0.1, 1, 0.5, 1, 3, 0.2, 1), .. NoTraces, .. FruitPolyols],
            AcidProfile = [(Component.Citric, 0.5), (Component.Malic, 0.5)],
            AcidHighGrams = double.NaN,
            SugarVariation = 0.08,
            AcidVariation = 0.15,
            SugarAcidCorrelation = -0.3,
            SugarShareOfSolids = (0.75, 1),
        };
        table[(int)IngredientKind.Produce] = new()
        {
            Bounds = [.. Mass(0.1, 3, 1, 5, 5, 0.2, 2), .. NoTraces, .. FruitPolyols],
            AcidProfile = [(Component.Citric, 0.5), (Component.Malic, 0.5)],
            AcidHighGrams = double.NaN,
            SugarVariation = 0.10,
            AcidVariation = 0.20,
            SugarAcidCorrelation = -0.3,
            SugarShareOfSolids = (0.6, 1),
        };
        table[(int)IngredientKind.HerbOrSpice] = new()
        {
            Bounds = [.. Mass(0.1, 5, 5, 10, 10, 0.5, 5), .. NoTraces, .. NoPolyols, new(Component.SugarNotToldApart, 5)],
            AcidProfile = [(Component.Citric, 1)],
            AcidHighGrams = 1,
            SugarVariation = 0.20,
            AcidVariation = 0.30,
            SugarShareOfSolids = (0, 1),
            ChargeIsNothing = true,
        };
        table[(int)IngredientKind.SugarOrSyrup] = new()
        {
            Bounds = [.. Mass(0.1, 0.5, 0.5, 0.5, 5, 0.2, 1), .. NoTraces, .. NoPolyols, .. NotBitter],
            AcidProfile = [(Component.Citric, 1)],
            AcidHighGrams = 0.3,
            SugarVariation = 0.015,
            AcidVariation = 0.20,
            SugarShareOfSolids = (0.75, 1),
            ChargeIsNothing = true,
        };
        table[(int)IngredientKind.Vinegar] = new()
        {
            Bounds = [.. Mass(0.5, 0.3, 0.1, 0.1, 1, 0.1, 1), .. NoTraces, .. WinePolyols, new(Component.SugarNotToldApart, 1)],
            AcidProfile = [(Component.Acetic, 1)],
            AcidHighGrams = double.NaN,
            SugarVariation = 0.20,
            AcidVariation = 0.05,
            // Inferred from a pH of 2.5 at 5 % acetic acid.
            ChargePerLitre = 0.0016,
        };
        table[(int)IngredientKind.Dairy] = new()
        {
            Bounds = [.. Mass(0.1, 4, 4, 1, 2, 0.2, 1), .. NoTraces, .. NoPolyols, .. NotBitter],
            AcidProfile = [(Component.Lactic, 1)],
            AcidHighGrams = 0.2,
            SugarVariation = 0.05,
            AcidVariation = 0.15,
            SugarShareOfSolids = (0, 1),
            ChargeIsNothing = true,
            ProteinBuffers = true,
        };
        table[(int)IngredientKind.EggOrFoamer] = new()
        {
            Bounds = [.. Mass(0, 5, 1, 1, 3, 0.5, 1), .. NoTraces, .. NoPolyols, .. NotBitter, new(Component.SugarNotToldApart, 1)],
            AcidProfile = [(Component.Lactic, 1)],
            AcidHighGrams = 0.1,
            SugarVariation = 0.10,
            AcidVariation = 0.30,
            ChargeIsNothing = true,
            ProteinBuffers = true,
        };
        table[(int)IngredientKind.TeaOrCoffee] = new()
        {
            Bounds = [.. Mass(0.1, 0.3, 0.1, 0.1, 0.5, 0.05, 0.5), new(Component.Quinine, 0), .. NoPolyols, new(Component.SugarNotToldApart, 0.1)],
            AcidProfile = [(Component.Citric, 0.5), (Component.Malic, 0.5)],
            AcidHighGrams = 0.1,
            SugarVariation = 0.20,
            AcidVariation = 0.30,
            ChargeIsNothing = true,
        };
        table[(int)IngredientKind.Carbonated] = new()
        {
            Bounds = [.. Mass(0.1, 0.1, 0.1, 0.1, 0.5, 0.1, 0.3), .. NoPolyols],
            AcidProfile = [(Component.Citric, 1)],
            AcidHighGrams = double.NaN,
            SugarVariation = 0.05,
            AcidVariation = 0.10,
            MineralsAreBicarbonate = true,
        };
        table[(int)IngredientKind.Water] = new()
        {
            Bounds = [.. Mass(0, 0, 0, 0, 0, 0.1, 0.2), .. NoTraces, .. NoPolyols, .. NotBitter, new(Component.SugarNotToldApart, 0)],
            AcidProfile = [(Component.Citric, 1)],
            AcidHighGrams = 0,
            SugarVariation = 0,
            AcidVariation = 0,
            MineralsAreBicarbonate = true,
        };
        table[(int)IngredientKind.NutOrSeed] = new()
        {
            Bounds = [.. Mass(0, 30, 70, 15, 20, 0.2, 4), .. NoTraces, .. NoPolyols],
            AcidProfile = [(Component.Citric, 1)],
            AcidHighGrams = 0.5,
            SugarVariation = 0.10,
            AcidVariation = 0.30,
            SugarShareOfSolids = (0, 1),
            ChargeIsNothing = true,
        };
        table[(int)IngredientKind.AcidSaltOrGum] = new()
        {
            Bounds = [.. Mass(0, 0.5, 0.5, 0.5, 0.5, 0.1, 2), .. NoTraces, .. NoPolyols, .. NotBitter, new(Component.SugarNotToldApart, 0)],
            AcidProfile = [(Component.Citric, 1)],
            AcidHighGrams = 0,
            SugarVariation = 0.01,
            AcidVariation = 0.005,
            ChargeIsNothing = true,
        };
        // Ethanol, sugar, acid and the traces of a bottle are open questions until somebody reads it.
        table[(int)IngredientKind.Alcohol] = new()
        {
            Bounds = [new(Component.Protein, 0.5), new(Component.Fat, 0.1), new(Component.Fibre, 0.1), new(Component.OtherCarbohydrate, 2),
                new(Component.Salt, 0.1), new(Component.OtherSolids, 2), .. WinePolyols],
            AcidProfile = [(Component.Tartaric, 0.6), (Component.Malic, 0.2), (Component.Lactic, 0.2)],
            AcidHighGrams = double.NaN,
            SugarVariation = 0.10,
            AcidVariation = 0.15,
            ChargeIsNothing = true,
        };
        return table;
    }
}
