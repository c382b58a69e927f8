namespace MenuLab.Core.Quantities;

/// <summary>
/// A computed figure with its range: value, low and high in a stated unit. Low and high are the 95 % interval
/// (value -+ 1.96 standard uncertainties), cut at what is possible.
/// </summary>
/// <param name="Value">Best figure; NaN where the metric does not apply or nothing is known.</param>
/// <param name="Low">Lower end of the 95 % interval.</param>
/// <param name="High">Upper end of the 95 % interval.</param>
/// <param name="Unit">Unit as printed, e.g. "g/100 mL".</param>
/// <param name="UnknownPercent">Share of the drink's volume, 0 to 100, whose part in this figure nobody knows.</param>
public readonly record struct Estimate(double Value, double Low, double High, string Unit, double UnknownPercent)
{
    /// <summary>Above this share of the volume a figure reads "at least".</summary>
    public const double AtLeastAbovePercent = 5;

    /// <summary>Above this share of the volume a figure reads "unknown".</summary>
    public const double UnknownAbovePercent = 50;

    /// <summary>What is unknown could move the figure either way (a pH, a ratio, a share of a volume that is not all there yet), so it is no lower bound.</summary>
    public bool EitherWay { get; init; }

    /// <summary>How much of the figure is known: the one place that decides.</summary>
    public Certainty Certainty =>
        double.IsNaN(Value) || UnknownPercent > UnknownAbovePercent ? Certainty.Unknown
        : UnknownPercent > AtLeastAbovePercent ? EitherWay ? Certainty.SoFar : Certainty.AtLeast
        : Certainty.Plain;
}

/// <summary>How a figure is to be read, given the share that nobody knows.</summary>
public enum Certainty
{
    /// <summary>Known, but for at most 5 % of the volume.</summary>
    Plain,

    /// <summary>5 to 50 % of the volume is unknown: the figure is a lower bound.</summary>
    AtLeast,

    /// <summary>5 to 50 % of the volume is unknown and could move the figure either way: it is the figure of what is known.</summary>
    SoFar,

    /// <summary>More than half is unknown, or all of it.</summary>
    Unknown,
}
