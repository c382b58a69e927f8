using MenuLab.Core.Balance;
using MenuLab.Core.House;
using MenuLab.Core.Quantities;

namespace MenuLab.Core.Iterations;

/// <summary>A metric before and after a change.</summary>
/// <param name="Info">Which.</param>
/// <param name="Before">Before.</param>
/// <param name="After">After.</param>
public sealed record MetricChange(MetricInfo Info, Estimate Before, Estimate After)
{
    /// <summary>How well the difference is known: no better than the worse of the two figures.</summary>
    public Certainty Certainty => Before.Certainty == Certainty.Unknown || After.Certainty == Certainty.Unknown ? Certainty.Unknown
        : Before.Certainty == Certainty.Plain && After.Certainty == Certainty.Plain ? Certainty.Plain
        : Certainty.SoFar;

    /// <summary>Decimals that the figures are printed with at least, where more than two stand side by side.</summary>
    public int LeastDecimals { get; init; }

    /// <summary>Decimals of both figures side by side: as many as the finer of them deserves.</summary>
    public int Decimals => Math.Max(LeastDecimals, Math.Max(HouseFormat.Decimals(Before, Info.Digits), HouseFormat.Decimals(After, Info.Digits)));

    /// <summary>
    /// After less before, of the figures as they are printed side by side, so that the three agree on paper; NaN where
    /// either is unknown. Where a part is unknown it is the difference of what is known.
    /// </summary>
    public double Difference => Certainty == Certainty.Unknown ? double.NaN : Printed(After) - Printed(Before);

    /// <summary>The printed figures differ; false where either is unknown.</summary>
    public bool IsBeyondRounding => Math.Abs(Difference) > 0.5 * Math.Pow(10, -Decimals);

    /// <summary>The difference as printed: "+0.06", "−2.6", "=" where the printed figures are equal, "unknown" where it is not known.</summary>
    /// <param name="format">How the house writes figures.</param>
    public string InWords(HouseFormat format) => Certainty switch
    {
        Certainty.Unknown => HouseFormat.Unknown,
        _ when !IsBeyondRounding => "=",
        Certainty.Plain => Signed(format),
        _ => "so far " + Signed(format),
    };

    private string Signed(HouseFormat format) => (Difference > 0 ? "+" : "") + format.Number(Difference, Decimals);

    private double Printed(Estimate estimate) => Math.Round(estimate.Value, Decimals, MidpointRounding.AwayFromZero);
}

/// <summary>What a change did to every metric.</summary>
public sealed class FigureChanges
{
    private FigureChanges(bool isServed, IReadOnlyList<MetricChange> all)
    {
        IsServed = isServed;
        All = all;
    }

    /// <summary>The figures are those of the drink as served; else, where one of the two has none, those before ice of both.</summary>
    public bool IsServed { get; }

    /// <summary>All metrics, in the order of the enum.</summary>
    public IReadOnlyList<MetricChange> All { get; }

    /// <summary>One metric.</summary>
    public MetricChange this[Metric metric] => All[(int)metric];

    /// <summary>The changes from one balance to another.</summary>
    public static FigureChanges Between(DrinkBalance before, DrinkBalance after)
    {
        // Like is compared with like: a drink before ice is never held against a served one.
        var isServed = before.Served is not null && after.Served is not null;
        var (b, a) = isServed ? (before.Served!, after.Served!) : (before.Mixed, after.Mixed);
        return new FigureChanges(isServed, [.. Metrics.All.Select(m => new MetricChange(m, b[m.Metric], a[m.Metric]))]);
    }
}
