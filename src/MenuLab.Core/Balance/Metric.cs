namespace MenuLab.Core.Balance;

/// <summary>The computed metrics, one list for columns, JSON keys and labels (see <see cref="Metrics"/>).</summary>
public enum Metric
{
    /// <summary>Volume at 20 °C.</summary>
    Volume,
    /// <summary>Mass.</summary>
    Mass,
    /// <summary>Strength.</summary>
    Abv,
    /// <summary>Pure alcohol.</summary>
    Alcohol,
    /// <summary>All sugars.</summary>
    Sugar,
    /// <summary>Sweetness as sucrose.</summary>
    Sweetness,
    /// <summary>Soluble solids by mass.</summary>
    Brix,
    /// <summary>Titratable acidity as anhydrous citric acid.</summary>
    Acid,
    /// <summary>Sugar to acid.</summary>
    SugarAcidRatio,
    /// <summary>pH.</summary>
    Ph,
    /// <summary>Energy by EU factors, kJ.</summary>
    EnergyKilojoules,
    /// <summary>Energy by EU factors, kcal.</summary>
    EnergyKilocalories,
    /// <summary>Energy by US factors, kcal.</summary>
    EnergyKilocaloriesUs,
    /// <summary>Caffeine.</summary>
    Caffeine,
    /// <summary>Quinine per kg, as the limits are stated.</summary>
    Quinine,
    /// <summary>Salt as sodium chloride.</summary>
    Salt,
    /// <summary>Polyols.</summary>
    Polyol,
    /// <summary>Sucrose.</summary>
    Sucrose,
    /// <summary>Glucose.</summary>
    Glucose,
    /// <summary>Fructose.</summary>
    Fructose,
    /// <summary>Galactose.</summary>
    Galactose,
    /// <summary>Lactose.</summary>
    Lactose,
    /// <summary>Maltose.</summary>
    Maltose,
    /// <summary>Sugars that sources do not tell apart.</summary>
    SugarNotToldApart,
    /// <summary>Citric acid.</summary>
    Citric,
    /// <summary>Malic acid.</summary>
    Malic,
    /// <summary>Tartaric acid.</summary>
    Tartaric,
    /// <summary>Acetic acid.</summary>
    Acetic,
    /// <summary>Lactic acid.</summary>
    Lactic,
    /// <summary>All other acids but carbonic.</summary>
    OtherAcid,
    /// <summary>Water that the ice added, on the volume before.</summary>
    Dilution,
    /// <summary>Temperature when served.</summary>
    FinalTemperature,
    /// <summary>Volume with ice against the wash line.</summary>
    GlassFill,
    /// <summary>Net cost of what is used.</summary>
    Cost,
}
