using MenuLab.Core.Pantry;
using MenuLab.Core.Quantities;

namespace MenuLab.Core.Balance;

/// <summary>Remarks on one metric's validity.</summary>
[Flags]
public enum MetricCaveats : byte
{
    /// <summary>None.</summary>
    None = 0,
    /// <summary>Outside the range for which the model is stated.</summary>
    OutsideRange = 1,
    /// <summary>The strong-ion difference was assumed for some acid line.</summary>
    ChargeAssumed = 2,
    /// <summary>The solver did not converge; the figure is its last.</summary>
    NotConverged = 4,
    /// <summary>Some line's density is the model's own.</summary>
    DensityEstimated = 8,
}

/// <summary>All metrics of one state of a drink: two arrays, not forty objects.</summary>
public sealed class MetricSet
{
    private readonly double[] _figures;
    private readonly float[] _unknown;
    private readonly MetricCaveats[] _caveats;

    /// <param name="figures">Value, low and high of each metric.</param>
    /// <param name="unknown">Unknown share of each, %.</param>
    /// <param name="caveats">Remarks on each.</param>
    /// <param name="leavesOut">Some of the drink's volume is not in these figures at all (lines kept as typed).</param>
    internal MetricSet(double[] figures, float[] unknown, MetricCaveats[] caveats, bool leavesOut)
    {
        LeavesOut = leavesOut;
        _figures = figures;
        _unknown = unknown;
        _caveats = caveats;
    }

    /// <summary>Some of the drink's volume is not in these figures at all; a stored balance keeps it.</summary>
    internal bool LeavesOut { get; }

    /// <summary>The estimate of one metric; its value is NaN where the metric does not apply or nothing is known.</summary>
    public Estimate this[Metric metric]
    {
        get
        {
            var i = 3 * (int)metric;
            var info = Metrics.Info(metric);
            return new Estimate(_figures[i], _figures[i + 1], _figures[i + 2], info.Unit, _unknown[(int)metric])
            {
                EitherWay = info.Growth == Growth.EitherWay || (info.Growth == Growth.WithWhatIsInIt && LeavesOut),
            };
        }
    }

    /// <summary>Remarks on one metric.</summary>
    public MetricCaveats Caveats(Metric metric) => _caveats[(int)metric];
}

/// <summary>The computed balance of a drink.</summary>
public sealed class DrinkBalance
{
    internal DrinkBalance(MetricSet mixed, MetricSet? served, string servedMissingBecause, float[] shares, int lines, AllergenSet allergens, double topUpGrams)
    {
        Mixed = mixed;
        Served = served;
        ServedMissingBecause = servedMissingBecause;
        _shares = shares;
        Lines = lines;
        Allergens = allergens;
        TopUpGrams = topUpGrams;
    }

    private readonly float[] _shares;

    /// <summary>Every line that stays in the liquid, tops with a stated amount included, before any ice melts.</summary>
    public MetricSet Mixed { get; }

    /// <summary>After method and ice, with tops to the wash line; null where it cannot be told.</summary>
    public MetricSet? Served { get; }

    /// <summary>Why there is no served state; empty where there is one.</summary>
    public string ServedMissingBecause { get; }

    /// <summary>How many lines went in.</summary>
    public int Lines { get; }

    /// <summary>Allergens of all lines, whatever their place.</summary>
    public AllergenSet Allergens { get; }

    /// <summary>Mass that each top to the wash line came to, g, shared equally where there are several; NaN where none was solved.</summary>
    public double TopUpGrams { get; }

    /// <summary>
    /// The share of a line (by its place in the span handed in) in a metric's amount, 0 to 1; for sugar per 100 mL the
    /// share of the sugar. NaN where shares were not asked for or mean nothing (pH, temperature, ratio).
    /// </summary>
    public double Share(int line, Metric metric) => _shares.Length == 0 ? double.NaN : _shares[line * Metrics.Count + (int)metric];
}
