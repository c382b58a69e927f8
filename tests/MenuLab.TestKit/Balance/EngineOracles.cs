using MenuLab.Core.Balance;
using MenuLab.Core.Drafts;
using MenuLab.Core.Solutions;

namespace MenuLab.TestKit.Balance;

/// <summary>One figure of the engine against a worked example.</summary>
/// <param name="Metric">Which metric.</param>
/// <param name="Case">What was mixed.</param>
/// <param name="Expected">The published or worked figure.</param>
/// <param name="Tolerance">How far the figure may be off.</param>
/// <param name="Actual">What the engine gives.</param>
/// <param name="Source">Where the figure comes from.</param>
public sealed record EngineOracle(Metric Metric, string Case, double Expected, double Tolerance, double Actual, string Source);

/// <summary>Worked drinks of docs/science.md and of public guidance, through the whole engine.</summary>
public static class EngineOracles
{
    /// <summary>All of them, computed now.</summary>
    public static IReadOnlyList<EngineOracle> All() => [.. WorkedDrink(), .. Lemon(), .. Shaken(), .. Strengths()];

    // Section 2's worked drink is COMPUTED there with the lime's volume from the model; here its stated density is honoured, 0.1 mL apart.
    private static IEnumerable<EngineOracle> WorkedDrink()
    {
        const string Source = "docs/science.md, section 2 (COMPUTED)";
        WeighedLine[] drink = [Made.Line(Made.Spirit, 45), Made.Line(Made.WorkedLime, 22.5), Made.Line(Made.Syrup, 22.5)];
        var before = BalanceEngine.Of(drink, Made.NoBuild, Detail.Figures).Mixed;
        var after = BalanceEngine.Of([.. drink, Made.Line(Made.Water, 45 / 0.998203)], Made.NoBuild, Detail.Figures).Mixed;
        foreach (var (name, set, volume, abv, sugar, acid) in new[] { ("before ice", before, 89.95, 20.01, 15.90, 1.501), ("with 45 g melt water", after, 135.15, 13.32, 10.58, 0.999) })
        {
            yield return Of(Metric.Volume, name, volume, 0.15, set, Source);
            yield return Of(Metric.Abv, name, abv, 0.04, set, Source);
            yield return Of(Metric.Sugar, name, sugar, 0.03, set, Source);
            yield return Of(Metric.Acid, name, acid, 0.012, set, Source);
            yield return Of(Metric.SugarAcidRatio, name, sugar / acid, 0.15, set, Source);
        }
    }

    // Section 5, mixture checks (COMPUTED there, activities by Davies).
    private static IEnumerable<EngineOracle> Lemon()
    {
        foreach (var (lemon, water, ph, acid) in new[] { (25.0, 100.0, 2.497, 1.140), (25, 225, 2.589, 0.570), (25, 125, 2.520, 0.950), (5, 195, 2.828, 0.143) })
        {
            var set = BalanceEngine.Of([Made.Line(Made.TableLemon, lemon), Made.Line(Made.Water, water)], Made.NoBuild, Detail.Figures).Mixed;
            yield return Of(Metric.Ph, $"lemon {lemon} in {lemon + water} mL", ph, 0.002, set, "docs/science.md, section 5 (COMPUTED)");
            yield return Of(Metric.Acid, $"lemon {lemon} in {lemon + water} mL", acid, 0.002, set, "docs/science.md, section 5 (COMPUTED)");
        }
    }

    // Section 7, regression case B: 103.710 g water, 9.900 g sucrose, 200 g ice.
    private static IEnumerable<EngineOracle> Shaken()
    {
        const string Source = "docs/science.md, section 7, case B (COMPUTED)";
        var drink = Made.Of((Component.Sucrose, 9.9 / 113.61));
        var method = Made.Shaken with { IceGramsPer100Millilitres = 200 / (113.61 / drink.GramsPerMillilitre) * 100 };
        var line = new WeighedLine(Made.Id(), drink, 113.61, 0, Joins.Mixed, Place.In, 22, false);
        var served = BalanceEngine.Of([line], new BuildModel(method, Made.Cubes, null, null), Detail.Figures).Served!;
        yield return Of(Metric.Dilution, "shaken without alcohol", 33.9, 0.2, served, Source);
        yield return Of(Metric.FinalTemperature, "shaken without alcohol", -0.09, 0.05, served, Source);
        yield return Of(Metric.Volume, "shaken without alcohol", 147.29, 0.1, served, Source);
        yield return Of(Metric.Brix, "shaken without alcohol", 100 * 9.9 / (113.61 + 0.339 * 113.61 / drink.GramsPerMillilitre * 0.9982), 0.02, served, Source + ", by hand");
    }

    // 45 mL at 40 % hold 14.2 g of alcohol, one US standard drink (MEMORY for the definition); 12 g sugar is 48 kcal by the EU factors.
    private static IEnumerable<EngineOracle> Strengths()
    {
        var spirit = BalanceEngine.Of([Made.Line(Made.Spirit, 45)], Made.NoBuild, Detail.Figures).Mixed;
        yield return Of(Metric.Alcohol, "45 mL at 40 %", 14.21, 0.01, spirit, "docs/science.md, section 9");
        yield return Of(Metric.Abv, "45 mL at 40 %", 40, 0.001, spirit, "OIML R 22");
        yield return Of(Metric.EnergyKilocalories, "45 mL at 40 %", 14.21 * 7, 0.1, spirit, "Reg. (EU) 1169/2011 Annex XIV: alcohol 7 kcal/g");
        yield return Of(Metric.EnergyKilojoules, "45 mL at 40 %", 14.21 * 29, 0.4, spirit, "Reg. (EU) 1169/2011 Annex XIV: alcohol 29 kJ/g");
        var syrup = BalanceEngine.Of([Made.Line(Made.Syrup, 24 / Made.Syrup.GramsPerMillilitre)], Made.NoBuild, Detail.Figures).Mixed;
        yield return Of(Metric.EnergyKilocalories, "24 g of 1:1 syrup", 48, 0.01, syrup, "Reg. (EU) 1169/2011 Annex XIV: carbohydrate 4 kcal/g");
        yield return Of(Metric.Sugar, "1:1 syrup", 61.48, 0.02, syrup, "sucrose tables (CRC-type): 614.8 g/L at 50 Bx");
        yield return Of(Metric.Brix, "1:1 syrup", 50, 0.001, syrup, "1:1 by mass");
    }

    private static EngineOracle Of(Metric metric, string name, double expected, double tolerance, MetricSet set, string source) =>
        new(metric, name, expected, tolerance, set[metric].Value, source);
}
