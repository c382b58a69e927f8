namespace MenuLab.Core.Drafts;

/// <summary>How a drink is made, as read or chosen. Keys name rows of seed-data; null is "not said".</summary>
public sealed record Build
{
    /// <summary>Key of the method, e.g. "shaken", "stirred", "built"; null where the text names none.</summary>
    public string? Method { get; init; }

    /// <summary>Seconds of the method, where said.</summary>
    public double? Seconds { get; init; }

    /// <summary>Key of the ice, e.g. "cubes", "crushed", "none"; the method's own where not said.</summary>
    public string? Ice { get; init; }

    /// <summary>Key of the glass, e.g. "coupe".</summary>
    public string? Glass { get; init; }

    /// <summary>"strained", "fine_strained", "open_pour", "unstrained"; null where not said.</summary>
    public string? Strain { get; init; }

    /// <summary>Key of the ice in the served glass ("none" for a drink served up); the glass's and method's usual where not said.</summary>
    public string? ServedOn { get; init; }

    /// <summary>Steps in order, as written.</summary>
    public IReadOnlyList<string> Steps { get; init; } = [];
}

/// <summary>An ice as it comes out of the well, from seed-data/ice.csv.</summary>
/// <param name="Key">Stable key, e.g. "cubes".</param>
/// <param name="Name">Name as shown.</param>
/// <param name="Celsius">Temperature, °C.</param>
/// <param name="SurfaceWaterFraction">Share of its mass that is water on the surface, 0 to 1.</param>
/// <param name="ServedGrams">Grams that a served glass usually holds per 100 mL of brim volume.</param>
/// <param name="Source">Where the figures come from.</param>
public sealed record IceForm(string Key, string Name, double Celsius, double SurfaceWaterFraction, double ServedGrams, string Source);

/// <summary>A glass, from seed-data/glasses.csv.</summary>
/// <param name="Key">Stable key, e.g. "coupe".</param>
/// <param name="Name">Name as shown.</param>
/// <param name="BrimMillilitres">Volume to the brim.</param>
/// <param name="WashLineMillilitres">Volume to the wash line: as full as it is served.</param>
/// <param name="Ice">Key of the ice that usually stands in it, or "none".</param>
/// <param name="Source">Where the figures come from.</param>
public sealed record Glass(string Key, string Name, double BrimMillilitres, double WashLineMillilitres, string Ice, string Source);

/// <summary>What a method does to what is in the tin or glass, from seed-data/methods.csv (docs/science.md, section 7).</summary>
public sealed record MethodModel
{
    /// <summary>Stable key, e.g. "shaken".</summary>
    public required string Key { get; init; }

    /// <summary>Name as shown.</summary>
    public required string Name { get; init; }

    /// <summary>Key of the usual ice, or "none".</summary>
    public required string Ice { get; init; }

    /// <summary>Grams of ice per 100 mL of liquid that takes part.</summary>
    public double IceGramsPer100Millilitres { get; init; }

    /// <summary>Heat capacity of the vessel's part that is cooled, J/K.</summary>
    public double VesselJoulesPerKelvin { get; init; }

    /// <summary>Temperature at which the vessel starts, °C.</summary>
    public double VesselCelsius { get; init; } = 22;

    /// <summary>Heat from hands and air, J; may be negative where heat is lost (hot drinks).</summary>
    public double AmbientJoules { get; init; }

    /// <summary>How far above its freezing point the liquid stops, K.</summary>
    public double ApproachKelvin { get; init; }

    /// <summary>The final temperature cannot lie above the start (stirring).</summary>
    public bool CapAtStart { get; init; }

    /// <summary>All the ice stays in the drink (blended).</summary>
    public bool IceStaysIn { get; init; }

    /// <summary>The ice of the method is the ice of the served glass (built, swizzled).</summary>
    public bool InTheGlass { get; init; }

    /// <summary>No model worth the name: the dilution is to be weighed, and only the mixed figures are shown.</summary>
    public bool WeighIt { get; init; }

    /// <summary>Standard uncertainty of the added water, as a share of the liquid's volume before.</summary>
    public double DilutionUncertainty { get; init; }

    /// <summary>Where the model comes from and how far it can be trusted.</summary>
    public required string Source { get; init; }
}
