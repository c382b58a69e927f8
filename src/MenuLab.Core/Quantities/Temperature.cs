namespace MenuLab.Core.Quantities;

/// <summary>A temperature from -40 to 150 °C. It has no default: an unset temperature refuses to be read.</summary>
public readonly record struct Temperature
{
    /// <summary>Lowest temperature accepted, °C.</summary>
    public const double LowestCelsius = -40;

    /// <summary>Highest temperature accepted, °C.</summary>
    public const double HighestCelsius = 150;

    private readonly double? _celsius;

    private Temperature(double celsius) => _celsius = celsius;

    /// <summary>Temperature in °C.</summary>
    /// <exception cref="InvalidOperationException">Never set.</exception>
    public double Celsius => _celsius ?? throw new InvalidOperationException("This temperature was never set.");

    /// <summary>Temperature in °F.</summary>
    /// <exception cref="InvalidOperationException">Never set.</exception>
    public double Fahrenheit => Celsius * 9 / 5 + 32;

    /// <summary>A temperature of so many °C.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside -40 to 150 °C, or NaN.</exception>
    public static Temperature FromCelsius(double celsius) => new(Guard.InRange(celsius, LowestCelsius, HighestCelsius));

    /// <summary>A temperature of so many °F.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside -40 to 302 °F, or NaN.</exception>
    public static Temperature FromFahrenheit(double fahrenheit) => FromCelsius((fahrenheit - 32) * 5 / 9);
}
