namespace MenuLab.Core.House;

/// <summary>
/// What the house's measures hold, in mL unless said; immutable and numbered (architecture 1.4). Saved iterations keep
/// the number that they were read with. Sources stand in seed-data/measures.csv.
/// </summary>
public sealed record MeasuresSet
{
    /// <summary>Number of the set; 1 is the shipped one.</summary>
    public required int Number { get; init; }

    /// <summary>The ounce that bartenders pour: 30 mL as traded, 29.5735 mL by US definition.</summary>
    public double FluidOunce { get; init; } = 30;

    /// <summary>Teaspoon.</summary>
    public double Teaspoon { get; init; } = 5;

    /// <summary>Tablespoon.</summary>
    public double Tablespoon { get; init; } = 15;

    /// <summary>Bar spoon.</summary>
    public double BarSpoon { get; init; } = 5;

    /// <summary>Dash.</summary>
    public double Dash { get; init; } = 0.8;

    /// <summary>Standard uncertainty of a dash.</summary>
    public double DashUncertainty { get; init; } = 0.25;

    /// <summary>Drop.</summary>
    public double Drop { get; init; } = 0.05;

    /// <summary>One press of an atomiser.</summary>
    public double Mist { get; init; } = 0.15;

    /// <summary>Cup.</summary>
    public double Cup { get; init; } = 240;

    /// <summary>Splash.</summary>
    public double Splash { get; init; } = 7.5;

    /// <summary>Float.</summary>
    public double Float { get; init; } = 15;

    /// <summary>What stays in the glass of a rinse that is poured away.</summary>
    public double RinseKept { get; init; } = 1;

    /// <summary>Pinch, g.</summary>
    public double PinchGrams { get; init; } = 0.3;

    /// <summary>Avoirdupois ounce, g.</summary>
    public double WeightOunceGrams { get; init; } = 28.349523125;
}
