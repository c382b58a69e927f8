namespace MenuLab.Core.Quantities;

/// <summary>A pH (activity scale) from -1 to 14. It has no default: an unset pH refuses to be read.</summary>
public readonly record struct Ph
{
    private readonly double? _value;

    private Ph(double value) => _value = value;

    /// <summary>The pH.</summary>
    /// <exception cref="InvalidOperationException">Never set.</exception>
    public double Value => _value ?? throw new InvalidOperationException("This pH was never set.");

    /// <summary>A pH of so much.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside -1 to 14, or NaN.</exception>
    public static Ph From(double value) => new(Guard.InRange(value, -1, 14));
}
