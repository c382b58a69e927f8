using MenuLab.Core.Solutions;

namespace MenuLab.Core.Preps;

/// <summary>A titration with a strong base to pH 8.1, the sample degassed.</summary>
/// <param name="TitrantMillilitres">Titrant used, mL.</param>
/// <param name="Normality">Strength of the titrant, eq/L.</param>
/// <param name="SampleMillilitres">Sample, mL.</param>
public readonly record struct TitrationReading(double TitrantMillilitres, double Normality, double SampleMillilitres)
{
    /// <summary>Acid in the sample, eq/L.</summary>
    /// <remarks>Source: V N / V; AOAC 942.15 for the end point. Valid for: any strength that the burette can read. Error: 2 % for a careful titration.</remarks>
    public double EquivalentsPerLitre => TitrantMillilitres * Normality / SampleMillilitres;

    /// <summary>Titratable acidity stated as an acid.</summary>
    /// <param name="acid">The acid; not carbonic.</param>
    /// <returns>g/L; citric acid is anhydrous.</returns>
    /// <remarks>Source: equivalent masses of <see cref="AcidBase.EquivalentMass"/>. Valid for and error: as <see cref="EquivalentsPerLitre"/>.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Not an acid, or carbonic.</exception>
    public double GramsPerLitre(Component acid) => EquivalentsPerLitre * AcidBase.EquivalentMass(acid);
}
