using MenuLab.Core.Pantry;
using MenuLab.Data.Pantry;

namespace MenuLab.Web.Features.Pantry;

/// <summary>What a figure rests on; each has a mark of its own shape.</summary>
public enum Origin
{
    /// <summary>Read on the bench here.</summary>
    MeasuredHere,
    /// <summary>From a label.</summary>
    Label,
    /// <summary>From a table or a paper.</summary>
    Table,
    /// <summary>Worked out from other figures of it.</summary>
    WorkedOut,
    /// <summary>Typical, without a source.</summary>
    Typical,
    /// <summary>Nobody knows.</summary>
    Unknown,
}

/// <summary>Words for origins, and how a figure's own is told.</summary>
public static class Origins
{
    /// <summary>How the source of a figure from a label begins.</summary>
    public const string Label = "label";

    /// <summary>All of them, as the key under a table lists them.</summary>
    public static IReadOnlyList<Origin> All { get; } = Enum.GetValues<Origin>();

    /// <summary>In words.</summary>
    public static string Words(Origin origin) => origin switch
    {
        Origin.MeasuredHere => "measured here",
        Origin.Label => "from the label",
        Origin.Table => "table or paper",
        Origin.WorkedOut => "worked out",
        Origin.Typical => "typical, no source",
        _ => "unknown",
    };

    /// <summary>What a figure rests on; null is unknown.</summary>
    public static Origin Of(IngredientFigure? figure) => figure switch
    {
        null => Origin.Unknown,
        { Value: double.NaN, High: double.NaN } => Origin.Unknown,
        { Status: FigureStatus.Measured } => Origin.MeasuredHere,
        { Status: FigureStatus.Computed } => Origin.WorkedOut,
        { Status: FigureStatus.Memory or FigureStatus.Assumed } => Origin.Typical,
        _ => figure.Source.StartsWith(Label, StringComparison.OrdinalIgnoreCase) ? Origin.Label : Origin.Table,
    };

    /// <summary>The figure of a quantity that counts, by the order of trust of <see cref="CompositionBuilder"/>: a reading, the house's, the shipped one.</summary>
    public static IngredientFigure? Counting(this IReadOnlyList<IngredientFigure> figures, string quantity) => figures
        .Where(f => f.Quantity == quantity)
        .MaxBy(f => f.Status == FigureStatus.Measured ? 2 : f.Origin == PantryWriting.House ? 1 : 0);
}
