namespace MenuLab.Core.Quantities;

/// <summary>A mass; never negative. The default value is zero.</summary>
public readonly record struct Mass
{
    private Mass(double grams) => Grams = grams;

    /// <summary>Mass in g.</summary>
    public double Grams { get; }

    /// <summary>Mass in kg.</summary>
    public double Kilograms => Grams / 1000;

    /// <summary>A mass of so many g.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative, infinite or NaN.</exception>
    public static Mass FromGrams(double grams) => new(Guard.FiniteNonNegative(grams));

    /// <summary>A mass of so many kg.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative, infinite or NaN.</exception>
    public static Mass FromKilograms(double kilograms) => new(Guard.FiniteNonNegative(kilograms) * 1000);

    /// <summary>Sum of two masses.</summary>
    public static Mass operator +(Mass left, Mass right) => new(left.Grams + right.Grams);

    /// <summary>So many times the mass.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative, infinite or NaN factor.</exception>
    public static Mass operator *(double factor, Mass mass) => FromGrams(factor * mass.Grams);
}
