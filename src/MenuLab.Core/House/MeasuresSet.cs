namespace MenuLab.Core.House;

/// <summary>
/// What the house's measures hold, in mL unless said; immutable and numbered. Saved iterations keep
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

    /// <summary>Standard uncertainty of a bar spoon.</summary>
    public double BarSpoonUncertainty { get; init; } = 0.7;

    /// <summary>Dash.</summary>
    public double Dash { get; init; } = 0.8;

    /// <summary>Standard uncertainty of a dash.</summary>
    public double DashUncertainty { get; init; } = 0.25;

    /// <summary>What a dash counts in claims about alcohol and in allergen checks: the largest convention in print, until ten dashes were weighed.</summary>
    public double ClaimDash { get; init; } = 0.924;

    /// <summary>Drop.</summary>
    public double Drop { get; init; } = 0.05;

    /// <summary>Standard uncertainty of a drop.</summary>
    public double DropUncertainty { get; init; } = 0.015;

    /// <summary>One press of an atomiser.</summary>
    public double Mist { get; init; } = 0.15;

    /// <summary>Standard uncertainty of <see cref="Mist"/>.</summary>
    public double MistUncertainty { get; init; } = 0.05;

    /// <summary>Cup.</summary>
    public double Cup { get; init; } = 240;

    /// <summary>Splash.</summary>
    public double Splash { get; init; } = 7.5;

    /// <summary>Standard uncertainty of <see cref="Splash"/>.</summary>
    public double SplashUncertainty { get; init; } = 3;

    /// <summary>Float.</summary>
    public double Float { get; init; } = 15;

    /// <summary>Standard uncertainty of <see cref="Float"/>.</summary>
    public double FloatUncertainty { get; init; } = 3;

    /// <summary>What stays in the glass of a rinse that is poured away.</summary>
    public double RinseKept { get; init; } = 1;

    /// <summary>Standard uncertainty of <see cref="RinseKept"/>.</summary>
    public double RinseKeptUncertainty { get; init; } = 0.5;

    /// <summary>Pinch, g.</summary>
    public double PinchGrams { get; init; } = 0.3;

    /// <summary>Standard uncertainty of a pinch, g.</summary>
    public double PinchGramsUncertainty { get; init; } = 0.15;

    /// <summary>Avoirdupois ounce, g.</summary>
    public double WeightOunceGrams { get; init; } = 28.349523125;
}
