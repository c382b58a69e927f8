using MenuLab.Core.Quantities;

namespace MenuLab.Core.Safety;

/// <summary>A figure that a rule compares: value, range, and whether part of it is unknown.</summary>
/// <param name="Value">Best figure; NaN where nothing is known.</param>
/// <param name="Low">Lower end of its range.</param>
/// <param name="High">Upper end of its range.</param>
/// <param name="IsUnknown">Something that nobody knows could move it.</param>
/// <param name="Lines">Places of the lines it comes from.</param>
public readonly record struct SafetyFigure(double Value, double Low, double High, bool IsUnknown, IReadOnlyList<int> Lines)
{
    /// <summary>A figure as read or stated.</summary>
    public static SafetyFigure Exactly(double value) => double.IsNaN(value) ? Unknown([]) : new(value, value, value, false, []);

    /// <summary>A figure between two bounds; the value is the upper one where the rules guard against too much.</summary>
    /// <param name="low">Lower end.</param>
    /// <param name="high">Upper end; taken for the value.</param>
    public static SafetyFigure UpTo(double low, double high) => new(high, low, high, double.IsNaN(high), []);

    /// <summary>Relevant, and not known.</summary>
    public static SafetyFigure Unknown(IReadOnlyList<int> lines) => new(double.NaN, double.NaN, double.NaN, true, lines);

    /// <summary>A computed figure, times a factor.</summary>
    /// <param name="estimate">The figure; any unknown share makes it unknown.</param>
    /// <param name="factor">Zero or more.</param>
    /// <param name="lines">Places of the lines it comes from.</param>
    public static SafetyFigure Of(Estimate estimate, double factor, IReadOnlyList<int> lines) =>
        new(estimate.Value * factor, estimate.Low * factor, estimate.High * factor, double.IsNaN(estimate.Value) || estimate.UnknownPercent > 0, lines);
}

/// <summary>A flag's state with the lines that bring it.</summary>
/// <param name="State">Yes, no, or null where nobody knows.</param>
/// <param name="Lines">Places of the lines.</param>
public readonly record struct SafetyFlag(bool? State, IReadOnlyList<int> Lines);

/// <summary>
/// What is known of a drink, a prep or a room when rules are put to it. A quantity or flag that is not in here was not asked: no rule is raised on it.
/// One that is in here and not known raises its rule: unknown never passes.
/// </summary>
public sealed class SafetyFacts
{
    private readonly Dictionary<string, SafetyFigure> _figures;
    private readonly Dictionary<string, SafetyFlag> _flags;

    private SafetyFacts(Dictionary<string, SafetyFigure> figures, Dictionary<string, SafetyFlag> flags) => (_figures, _flags) = (figures, flags);

    /// <summary>Nothing was asked.</summary>
    public static SafetyFacts None { get; } = new([], []);

    /// <summary>The same facts with a figure.</summary>
    /// <param name="quantity">One of <see cref="SafetyQuantities"/>, in its unit.</param>
    /// <param name="value">The figure; NaN for relevant and not known.</param>
    /// <exception cref="ArgumentException">There is no such quantity.</exception>
    public SafetyFacts With(string quantity, double value) => With(quantity, SafetyFigure.Exactly(value));

    /// <summary>The same facts with a figure and its range.</summary>
    /// <exception cref="ArgumentException">There is no such quantity.</exception>
    public SafetyFacts With(string quantity, SafetyFigure figure) =>
        SafetyQuantities.Unit(quantity) is null
            ? throw new ArgumentException($"There is no quantity called {quantity}.", nameof(quantity))
            : new SafetyFacts(new(_figures, StringComparer.Ordinal) { [quantity] = figure with { Lines = figure.Lines ?? [] } }, _flags);

    /// <summary>The same facts with a flag.</summary>
    /// <param name="flag">snake_case, e.g. "raw_egg".</param>
    /// <param name="state">Yes, no, or null for relevant and not known.</param>
    public SafetyFacts With(string flag, bool? state) => With(flag, new SafetyFlag(state, []));

    /// <summary>The same facts with a flag and the lines that bring it.</summary>
    public SafetyFacts With(string flag, SafetyFlag state) => new(_figures, new(_flags, StringComparer.Ordinal) { [flag] = state });

    /// <summary>A figure; null where it was not asked.</summary>
    public SafetyFigure? Figure(string quantity) => _figures.TryGetValue(quantity, out var figure) ? figure : null;

    /// <summary>A flag; null where it was not asked.</summary>
    public SafetyFlag? Flag(string flag) => _flags.TryGetValue(flag, out var state) ? state : null;
}
