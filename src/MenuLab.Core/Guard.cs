namespace MenuLab.Core;

/// <summary>Checks on figures that a caller hands in; a failed check is the caller's mistake, not the user's.</summary>
internal static class Guard
{
    /// <summary>Returns the figure when it is finite and not negative.</summary>
    public static double FiniteNonNegative(double value, [System.Runtime.CompilerServices.CallerArgumentExpression(nameof(value))] string? name = null) =>
        double.IsFinite(value) && value >= 0 ? value : throw new ArgumentOutOfRangeException(name, value, "Must be a finite number, zero or more.");

    /// <summary>Returns the figure when it is finite.</summary>
    public static double Finite(double value, [System.Runtime.CompilerServices.CallerArgumentExpression(nameof(value))] string? name = null) =>
        double.IsFinite(value) ? value : throw new ArgumentOutOfRangeException(name, value, "Must be a finite number.");

    /// <summary>Returns the figure when it lies in the closed range.</summary>
    public static double InRange(double value, double low, double high, [System.Runtime.CompilerServices.CallerArgumentExpression(nameof(value))] string? name = null) =>
        value >= low && value <= high ? value : throw new ArgumentOutOfRangeException(name, value, $"Must lie between {low} and {high}.");
}
