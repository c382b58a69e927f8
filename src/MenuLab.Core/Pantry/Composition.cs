using MenuLab.Core.Solutions;

namespace MenuLab.Core.Pantry;

/// <summary>What a spread of an ingredient's composition comes from; one source moves as one.</summary>
public enum SpreadSource
{
    /// <summary>Sugars, all species together.</summary>
    Sugar,
    /// <summary>Acids, all species together.</summary>
    Acid,
    /// <summary>Strong-ion difference, from a pH reading or the minerals.</summary>
    Charge,
    /// <summary>Ethanol.</summary>
    Ethanol,
    /// <summary>Volume per gram.</summary>
    Density,
    /// <summary>Anything else that is bounded.</summary>
    Other,
}

/// <summary>One standard uncertainty of a composition, as the change it makes to the vector per gram of ingredient.</summary>
public sealed class Spread
{
    private readonly double[] _perGram;
    private readonly double[] _forms = new double[LinearForms.Count];

    /// <summary>A spread.</summary>
    /// <param name="source">What it comes from.</param>
    /// <param name="perGram">
    /// Change of each component (its unit, per gram of ingredient) for one standard uncertainty. Mass-neutral: where a
    /// solid rises, water falls by the same grams.
    /// </param>
    /// <param name="relative">The uncertainty relative to the figure itself, e.g. 0.08; 0 where there is no such figure.</param>
    /// <exception cref="ArgumentException">Another length than <see cref="Components.Count"/>.</exception>
    public Spread(SpreadSource source, ReadOnlySpan<double> perGram, double relative)
    {
        if (perGram.Length != Components.Count)
        {
            throw new ArgumentException($"A spread has {Components.Count} parts.", nameof(perGram));
        }
        Source = source;
        Relative = Guard.FiniteNonNegative(relative);
        _perGram = perGram.ToArray();
        LinearForms.Of(_perGram, _forms);
    }

    /// <summary>What it comes from.</summary>
    public SpreadSource Source { get; }

    /// <summary>Relative to the figure itself.</summary>
    public double Relative { get; }

    /// <summary>Change of the vector per gram of ingredient.</summary>
    public ReadOnlySpan<double> PerGram => _perGram;

    /// <summary>Change of the linear forms per gram of ingredient.</summary>
    public ReadOnlySpan<double> Forms => _forms;
}

/// <summary>
/// What an ingredient is made of: immutable, built once per distinct composition. Per gram, so that a line is its mass
/// times this. What nobody knows is zero in the vector and a cleared bit in <see cref="Known"/>.
/// </summary>
public sealed class Composition
{
    /// <summary>Bit in <see cref="Known"/>: the sum of all sugars is known, whether or not its species are.</summary>
    public const ulong TotalSugarKnown = 1UL << 60;

    /// <summary>Bit in <see cref="Known"/>: the titratable acidity is known, whether or not its species are.</summary>
    public const ulong TotalAcidKnown = 1UL << 61;

    /// <summary>Bit in <see cref="Known"/>: the dissolved solids are known.</summary>
    public const ulong SolidsKnown = 1UL << 62;

    private readonly double[] _perGram;
    private readonly double[] _forms = new double[LinearForms.Count];
    private readonly Spread[] _spreads;

    /// <summary>A composition.</summary>
    /// <param name="perGram">The vector of one gram; the masses of its parts add up to 1 g within 1e-9.</param>
    /// <param name="known">One bit per component whose figure (or bound) somebody knows.</param>
    /// <param name="spreads">Standard uncertainties.</param>
    /// <param name="allergens">Allergens.</param>
    /// <param name="caveats">What was assumed in building it.</param>
    /// <param name="sugarAcidCorrelation">Correlation of the sugar and the acid spread, -1 to 1 (fruit of one lot: -0.3).</param>
    /// <exception cref="ArgumentException">Wrong length, or the mass does not add up to 1 g.</exception>
    public Composition(
        ReadOnlySpan<double> perGram, ulong known, IReadOnlyList<Spread> spreads, AllergenSet allergens, CompositionCaveats caveats, double sugarAcidCorrelation = 0)
    {
        var grams = new Liquid(perGram).Grams;
        if (!(Math.Abs(grams - 1) <= 1e-9))
        {
            throw new ArgumentException($"One gram of an ingredient has a mass of 1 g, not {grams}.", nameof(perGram));
        }
        _perGram = perGram.ToArray();
        Known = known;
        _spreads = [.. spreads];
        Allergens = allergens;
        Caveats = caveats;
        SugarAcidCorrelation = Guard.InRange(sugarAcidCorrelation, -1, 1);
        LinearForms.Of(_perGram, _forms);
        GramsPerMillilitre = 1 / Density.Millilitres(new Liquid(_perGram));
    }

    /// <summary>The vector of one gram.</summary>
    public ReadOnlySpan<double> PerGram => _perGram;

    /// <summary>Its linear forms.</summary>
    public ReadOnlySpan<double> Forms => _forms;

    /// <summary>One bit per component whose figure or bound somebody knows, and the three bits for sums above.</summary>
    public ulong Known { get; }

    /// <summary>Density at 20 °C, g/mL; by the mixing model plus the residual, so it is the stated density where there is one.</summary>
    public double GramsPerMillilitre { get; }

    /// <summary>Standard uncertainties.</summary>
    public ReadOnlySpan<Spread> Spreads => _spreads;

    /// <summary>Correlation of the sugar and the acid spread.</summary>
    public double SugarAcidCorrelation { get; }

    /// <summary>Allergens.</summary>
    public AllergenSet Allergens { get; }

    /// <summary>What was assumed in building it.</summary>
    public CompositionCaveats Caveats { get; }

    /// <summary>All of the given components are known or bounded.</summary>
    public bool Knows(ulong components) => (Known & components) == components;
}

/// <summary>What was assumed where nobody had measured.</summary>
[Flags]
public enum CompositionCaveats
{
    /// <summary>Nothing.</summary>
    None = 0,
    /// <summary>No stated density: the model's own, with 0.5 % standard uncertainty.</summary>
    DensityEstimated = 1,
    /// <summary>The acids' profile is that of the kind.</summary>
    AcidProfileAssumed = 2,
    /// <summary>The total acidity is the kind's default.</summary>
    AcidityAssumed = 4,
    /// <summary>The strong-ion difference comes from minerals or a default, not from a pH reading of this ingredient.</summary>
    ChargeAssumed = 8,
    /// <summary>The pH cannot be computed from what is known (an anion is missing from the record).</summary>
    PhNotComputable = 16,
    /// <summary>Carbonated.</summary>
    Carbonated = 32,
    /// <summary>Contains raw egg.</summary>
    RawEgg = 64,
    /// <summary>The figures of the record add up to more than 100.5 g per 100 g; water gave way.</summary>
    MassOverstated = 128,
}
