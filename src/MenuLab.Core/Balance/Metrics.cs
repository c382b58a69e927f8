namespace MenuLab.Core.Balance;

/// <summary>Key, unit and digits of a metric.</summary>
/// <param name="Metric">Which.</param>
/// <param name="Key">Stable snake_case key, as in JSON and column names.</param>
/// <param name="Name">Plain name as shown.</param>
/// <param name="Unit">Unit as printed; empty for a pure number.</param>
/// <param name="Digits">Decimals printed.</param>
/// <param name="Growth">What an unknown part can do to it.</param>
public sealed record MetricInfo(Metric Metric, string Key, string Name, string Unit, int Digits, Growth Growth = Growth.WithWhatIsInIt);

/// <summary>What a part that nobody knows can do to a metric.</summary>
public enum Growth
{
    /// <summary>Only add to it, whatever it is (an amount in the whole drink).</summary>
    WithWhatComes,
    /// <summary>Only add to it where its volume is counted (a concentration).</summary>
    WithWhatIsInIt,
    /// <summary>Move it either way.</summary>
    EitherWay,
}

/// <summary>The one list of metrics.</summary>
public static class Metrics
{
    /// <summary>How many there are.</summary>
    public const int Count = (int)Metric.Cost + 1;

    /// <summary>All metrics, in the order of the enum.</summary>
    public static IReadOnlyList<MetricInfo> All { get; } =
    [
        new(Metric.Volume, "volume_ml", "Volume", "mL", 1, Growth.WithWhatComes),
        new(Metric.Mass, "mass_g", "Mass", "g", 1, Growth.WithWhatComes),
        new(Metric.Abv, "abv_percent", "Strength", "% vol", 2),
        new(Metric.Alcohol, "alcohol_g", "Alcohol", "g", 2, Growth.WithWhatComes),
        new(Metric.Sugar, "sugar_g_per_100ml", "Sugar", "g/100 mL", 2),
        new(Metric.Sweetness, "sweetness_g_per_100ml", "Sweetness as sucrose", "g/100 mL", 2),
        new(Metric.Brix, "brix", "Brix", "°Bx", 1),
        new(Metric.Acid, "acid_citric_g_per_100ml", "Acid as citric", "g/100 mL", 3),
        new(Metric.SugarAcidRatio, "sugar_acid_ratio", "Sugar to acid", "to 1", 1, Growth.EitherWay),
        new(Metric.Ph, "ph", "pH", "", 2, Growth.EitherWay),
        new(Metric.EnergyKilojoules, "energy_kj", "Energy", "kJ", 0, Growth.WithWhatComes),
        new(Metric.EnergyKilocalories, "energy_kcal", "Energy", "kcal", 0, Growth.WithWhatComes),
        new(Metric.EnergyKilocaloriesUs, "energy_kcal_us", "Energy by US factors", "kcal", 0, Growth.WithWhatComes),
        new(Metric.Caffeine, "caffeine_mg", "Caffeine", "mg", 1, Growth.WithWhatComes),
        new(Metric.Quinine, "quinine_mg_per_kg", "Quinine", "mg/kg", 1),
        new(Metric.Salt, "salt_g_per_100ml", "Salt", "g/100 mL", 3),
        new(Metric.Polyol, "polyol_g_per_100ml", "Polyols", "g/100 mL", 2),
        new(Metric.Sucrose, "sucrose_g_per_100ml", "Sucrose", "g/100 mL", 2),
        new(Metric.Glucose, "glucose_g_per_100ml", "Glucose", "g/100 mL", 2),
        new(Metric.Fructose, "fructose_g_per_100ml", "Fructose", "g/100 mL", 2),
        new(Metric.Galactose, "galactose_g_per_100ml", "Galactose", "g/100 mL", 2),
        new(Metric.Lactose, "lactose_g_per_100ml", "Lactose", "g/100 mL", 2),
        new(Metric.Maltose, "maltose_g_per_100ml", "Maltose", "g/100 mL", 2),
        new(Metric.SugarNotToldApart, "sugar_not_told_apart_g_per_100ml", "Sugars not told apart", "g/100 mL", 2),
        new(Metric.Citric, "citric_g_per_100ml", "Citric acid", "g/100 mL", 3),
        new(Metric.Malic, "malic_g_per_100ml", "Malic acid", "g/100 mL", 3),
        new(Metric.Tartaric, "tartaric_g_per_100ml", "Tartaric acid", "g/100 mL", 3),
        new(Metric.Acetic, "acetic_g_per_100ml", "Acetic acid", "g/100 mL", 3),
        new(Metric.Lactic, "lactic_g_per_100ml", "Lactic acid", "g/100 mL", 3),
        new(Metric.OtherAcid, "other_acid_g_per_100ml", "Other acids", "g/100 mL", 3),
        new(Metric.Dilution, "dilution_percent", "Dilution", "%", 0, Growth.EitherWay),
        new(Metric.FinalTemperature, "final_temp_c", "Temperature", "°C", 1, Growth.EitherWay),
        new(Metric.GlassFill, "glass_fill_percent", "Glass fill", "% of the wash line", 0, Growth.WithWhatComes),
        new(Metric.Cost, "cost", "Cost", "", 2, Growth.WithWhatComes),
    ];

    /// <summary>What is known of one metric.</summary>
    public static MetricInfo Info(Metric metric) => All[(int)metric];
}
