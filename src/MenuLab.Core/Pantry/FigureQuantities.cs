using MenuLab.Core.Solutions;

namespace MenuLab.Core.Pantry;

/// <summary>The quantities that a figure of an ingredient may state, by their names in seed-data/figures.csv. Per 100 g or 100 mL unless said.</summary>
public static class FigureQuantities
{
    /// <summary>Density at 20 °C, g/mL.</summary>
    public const string Density = "density_g_ml";
    /// <summary>Water, g.</summary>
    public const string Water = "water_g";
    /// <summary>All sugars, g.</summary>
    public const string TotalSugars = "total_sugars_g";
    /// <summary>Carbohydrate by difference as food tables give it, g: sugars, fibre, starch and organic acids.</summary>
    public const string Carbohydrate = "carbohydrate_g";
    /// <summary>Ash, g.</summary>
    public const string Ash = "ash_g";
    /// <summary>Titratable acidity to pH 8.1 as anhydrous citric acid, g.</summary>
    public const string TitratableAcidity = "ta_citric_g";
    /// <summary>pH.</summary>
    public const string Ph = "ph";
    /// <summary>Strong-ion difference, mmol of charge; overrules pH and minerals.</summary>
    public const string Charge = "charge_mmol";
    /// <summary>Volumes of carbon dioxide per volume of drink.</summary>
    public const string CarbonDioxideVolumes = "co2_volumes";
    /// <summary>Carbonate and bicarbonate as dissolved carbon dioxide, mmol.</summary>
    public const string Carbonic = "carbonic_mmol";
    /// <summary>Soluble solids by refractometer or, where computed, 100 less the water, g per 100 g.</summary>
    public const string Brix = "brix";
    /// <summary>The least Brix that the law asks of such a juice; not a figure of this ingredient.</summary>
    public const string BrixMinimum = "brix_minimum";
    /// <summary>Caffeine, mg.</summary>
    public const string Caffeine = "caffeine_mg";
    /// <summary>Quinine as base, mg.</summary>
    public const string Quinine = "quinine_mg";
    /// <summary>Quinine as base, mg/L.</summary>
    public const string QuininePerLitre = "quinine_mg_per_l";
    /// <summary>Sodium, mg.</summary>
    public const string Sodium = "sodium_mg";
    /// <summary>Potassium, mg.</summary>
    public const string Potassium = "potassium_mg";
    /// <summary>Calcium, mg.</summary>
    public const string Calcium = "calcium_mg";
    /// <summary>Magnesium, mg.</summary>
    public const string Magnesium = "magnesium_mg";
    /// <summary>Phosphorus, mg.</summary>
    public const string Phosphorus = "phosphorus_mg";
    /// <summary>Energy as the source states it, kcal; only checked against, never used.</summary>
    public const string Energy = "kcal";
    /// <summary>Juice pressed from the prepared fruit, g per 100 g; says nothing of the composition.</summary>
    public const string JuiceYield = "juice_yield_pct";
    /// <summary>Standard uncertainty of the sugars of a house syrup, g per 100 g.</summary>
    public const string SugarUncertainty = "sugar_u_g";
    /// <summary>Natural variation of the acids between lots, per cent (k = 1).</summary>
    public const string AcidVariation = "acid_cv_pct";

    /// <summary>Sugars that can be told apart.</summary>
    internal static readonly (string Quantity, Component Component)[] Sugars =
    [
        ("sucrose_g", Component.Sucrose), ("glucose_g", Component.Glucose), ("fructose_g", Component.Fructose),
        ("galactose_g", Component.Galactose), ("lactose_g", Component.Lactose), ("maltose_g", Component.Maltose),
    ];

    /// <summary>Acids; ascorbic stands last because vitamin C alone says nothing of how sour a thing is.</summary>
    internal static readonly (string Quantity, Component Component)[] Acids =
    [
        ("citric_g", Component.Citric), ("malic_g", Component.Malic), ("tartaric_g", Component.Tartaric), ("acetic_g", Component.Acetic),
        ("lactic_g", Component.Lactic), ("succinic_g", Component.Succinic), ("phosphoric_g", Component.Phosphoric), ("quinic_g", Component.Quinic),
        ("oxalic_g", Component.Oxalic), ("ascorbic_g", Component.Ascorbic),
    ];

    /// <summary>What is neither sugar nor acid and goes into the vector as it stands, g.</summary>
    internal static readonly (string Quantity, Component Component)[] Plain =
    [
        ("ethanol_g", Component.Ethanol), ("protein_g", Component.Protein), ("fat_g", Component.Fat), ("fibre_g", Component.Fibre),
        ("glycerol_g", Component.Glycerol), ("sorbitol_g", Component.Sorbitol), ("mannitol_g", Component.Mannitol), ("xylitol_g", Component.Xylitol),
        ("erythritol_g", Component.Erythritol), ("other_polyol_g", Component.OtherPolyol),
    ];

    /// <summary>Starch and dextrins, g.</summary>
    internal const string OtherCarbohydrate = "other_carb_g";

    /// <summary>Every name that a figure may have.</summary>
    public static IReadOnlySet<string> All { get; } = new HashSet<string>(
        Sugars.Concat(Acids).Concat(Plain).Select(x => x.Quantity).Concat(
        [
            OtherCarbohydrate, Density, Water, TotalSugars, Carbohydrate, Ash, TitratableAcidity, Ph, Charge, CarbonDioxideVolumes, Carbonic, Brix,
            BrixMinimum, Caffeine, Quinine, QuininePerLitre, Sodium, Potassium, Calcium, Magnesium, Phosphorus, Energy, JuiceYield, SugarUncertainty,
            AcidVariation,
        ]),
        StringComparer.Ordinal);
}
