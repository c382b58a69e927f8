namespace MenuLab.Core.Quantities;

/// <summary>The share of a component in a mass, 0 to 1. The default value is zero.</summary>
public readonly record struct MassFraction
{
    private MassFraction(double ratio) => Ratio = ratio;

    /// <summary>Grams of the component per gram of the whole, 0 to 1.</summary>
    public double Ratio { get; }

    /// <summary>Grams of the component per 100 g of the whole, 0 to 100.</summary>
    public double GramsPer100Grams => Ratio * 100;

    /// <summary>A share of so many grams per gram.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside 0 to 1, or NaN.</exception>
    public static MassFraction FromRatio(double ratio) => new(Guard.InRange(ratio, 0, 1));

    /// <summary>A share of so many grams per 100 g.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside 0 to 100, or NaN.</exception>
    public static MassFraction FromGramsPer100Grams(double grams) => new(Guard.InRange(grams, 0, 100) / 100);

    /// <summary>The mass of the component in a mass of the whole.</summary>
    public static Mass operator *(MassFraction fraction, Mass whole) => Mass.FromGrams(fraction.Ratio * whole.Grams);
}
