using MenuLab.Core.Balance;

namespace MenuLab.Web.Features.Bench;

/// <summary>A bartender's word before a chemist's, and how the plain rules are drawn.</summary>
public static class FigureWords
{
    /// <summary>The figures that stand large, in their order, which never changes.</summary>
    public static IReadOnlyList<Metric> Large { get; } =
        [Metric.Sugar, Metric.Acid, Metric.SugarAcidRatio, Metric.Abv, Metric.GlassFill, Metric.Cost];

    /// <summary>The figures that the folded line tells.</summary>
    public static IReadOnlyList<Metric> Told { get; } = [Metric.Ph, Metric.Dilution, Metric.Volume];

    /// <summary>The word for a metric on the bench.</summary>
    public static string Of(Metric metric) => metric switch
    {
        Metric.Sugar => "Sweet",
        Metric.Acid => "Acid",
        Metric.SugarAcidRatio => "Ratio",
        _ => Metrics.Info(metric).Name,
    };

    /// <summary>What the word means, where it is not the metric's own name; empty elsewhere.</summary>
    public static string Meaning(Metric metric) => metric switch
    {
        Metric.Sugar => "all sugars",
        Metric.Acid => "as citric",
        Metric.SugarAcidRatio => "sugar to acid",
        Metric.GlassFill => "the upright is the wash line",
        _ => "",
    };

    /// <summary>
    /// Where the plain rule of a metric ends; NaN for none. It only says how far the drawing reaches (wide enough for
    /// nearly every mixed drink), nothing about what is usual.
    /// </summary>
    public static double RuleEnd(Metric metric) => metric switch
    {
        Metric.Sugar => 20,
        Metric.Acid => 2,
        Metric.SugarAcidRatio => 30,
        Metric.Abv => 40,
        Metric.GlassFill => 120,
        _ => double.NaN,
    };

    /// <summary>A line on the rule that is not to be passed: the wash line; NaN for none.</summary>
    public static double Upright(Metric metric) => metric == Metric.GlassFill ? 100 : double.NaN;
}
