using MenuLab.Core.Pantry;
using MenuLab.Core.Solutions;

namespace MenuLab.Core.Balance;

/// <summary>What a line must know to count in a metric; a line that lacks a bit is unknown for its share of the volume.</summary>
internal static class Relevance
{
    /// <summary>One mask per metric, in the order of the enum; 0 where any line will do.</summary>
    public static readonly ulong[] Masks = Make();

    private static ulong[] Make()
    {
        var energy = Composition.TotalSugarKnown | Bits(Component.Ethanol, Component.Protein, Component.Fat);
        var masks = new ulong[Metrics.Count];
        Set(Bits(Component.Ethanol), Metric.Abv, Metric.Alcohol);
        Set(Composition.TotalSugarKnown, Metric.Sugar, Metric.Sweetness);
        Set(Composition.SolidsKnown, Metric.Brix);
        Set(Composition.TotalAcidKnown, Metric.Acid);
        Set(Composition.TotalSugarKnown | Composition.TotalAcidKnown, Metric.SugarAcidRatio);
        Set(Composition.TotalAcidKnown | Component.Charge.Bit(), Metric.Ph);
        Set(energy, Metric.EnergyKilojoules, Metric.EnergyKilocalories, Metric.EnergyKilocaloriesUs);
        Set(Bits(Component.Caffeine), Metric.Caffeine);
        Set(Bits(Component.Quinine), Metric.Quinine);
        Set(Bits(Component.Salt), Metric.Salt);
        Set(Bits(Component.Glycerol, Component.Sorbitol, Component.Mannitol, Component.Xylitol, Component.Erythritol, Component.OtherPolyol), Metric.Polyol);
        Set(Bits(Component.Sucrose), Metric.Sucrose);
        Set(Bits(Component.Glucose), Metric.Glucose);
        Set(Bits(Component.Fructose), Metric.Fructose);
        Set(Bits(Component.Galactose), Metric.Galactose);
        Set(Bits(Component.Lactose), Metric.Lactose);
        Set(Bits(Component.Maltose), Metric.Maltose);
        Set(Composition.TotalSugarKnown, Metric.SugarNotToldApart);
        Set(Bits(Component.Citric), Metric.Citric);
        Set(Bits(Component.Malic), Metric.Malic);
        Set(Bits(Component.Tartaric), Metric.Tartaric);
        Set(Bits(Component.Acetic), Metric.Acetic);
        Set(Bits(Component.Lactic), Metric.Lactic);
        Set(Bits(Component.Ascorbic, Component.Succinic, Component.Phosphoric, Component.Quinic, Component.Oxalic), Metric.OtherAcid);
        return masks;

        void Set(ulong mask, params ReadOnlySpan<Metric> metrics)
        {
            foreach (var metric in metrics)
            {
                masks[(int)metric] = mask;
            }
        }
    }

    private static ulong Bits(params ReadOnlySpan<Component> components)
    {
        var mask = 0UL;
        foreach (var component in components)
        {
            mask |= component.Bit();
        }
        return mask;
    }
}
