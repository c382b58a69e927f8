namespace MenuLab.Core.Quantities;

/// <summary>A liquid volume at 20 °C; never negative. The default value is zero.</summary>
public readonly record struct Volume
{
    private Volume(double millilitres) => Millilitres = millilitres;

    /// <summary>Volume in mL.</summary>
    public double Millilitres { get; }

    /// <summary>Volume in L.</summary>
    public double Litres => Millilitres / 1000;

    /// <summary>A volume of so many mL.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative, infinite or NaN.</exception>
    public static Volume FromMillilitres(double millilitres) => new(Guard.FiniteNonNegative(millilitres));

    /// <summary>A volume of so many L.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative, infinite or NaN.</exception>
    public static Volume FromLitres(double litres) => new(Guard.FiniteNonNegative(litres) * 1000);

    /// <summary>Sum of two volumes (as poured side by side; mixing may contract, see the solutions).</summary>
    public static Volume operator +(Volume left, Volume right) => new(left.Millilitres + right.Millilitres);

    /// <summary>So many times the volume.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative, infinite or NaN factor.</exception>
    public static Volume operator *(double factor, Volume volume) => FromMillilitres(factor * volume.Millilitres);
}
