namespace MenuLab.Core.Quantities;

/// <summary>The share of a species among the acids (or any other set) by moles, 0 to 1. The default value is zero.</summary>
public readonly record struct AmountFraction
{
    private AmountFraction(double ratio) => Ratio = ratio;

    /// <summary>Moles of the species per mole of the set, 0 to 1.</summary>
    public double Ratio { get; }

    /// <summary>A share of so many moles per mole.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside 0 to 1, or NaN.</exception>
    public static AmountFraction FromRatio(double ratio) => new(Guard.InRange(ratio, 0, 1));
}
