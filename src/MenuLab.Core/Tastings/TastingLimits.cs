using System.Globalization;

namespace MenuLab.Core.Tastings;

/// <summary>What kind of drink tires the palate how fast.</summary>
public enum PalateLoad
{
    /// <summary>At most 0.5 % vol, not bitter.</summary>
    Light,
    /// <summary>Sour or sparkling.</summary>
    SourOrSparkling,
    /// <summary>Bitter, drying, smoky or hot.</summary>
    Harsh,
    /// <summary>Above 0.5 and up to 15 % vol.</summary>
    Alcoholic,
    /// <summary>Above 15 % vol.</summary>
    Strong,
}

/// <summary>How many samples in a sitting, and how far apart.</summary>
/// <param name="Load">The kind of drink.</param>
/// <param name="MostSamples">Samples scored in one sitting.</param>
/// <param name="ShortestPauseSeconds">Shortest pause between samples, s.</param>
/// <param name="LongestPauseSeconds">Longest pause worth waiting, s.</param>
/// <param name="Note">What else to see to.</param>
public sealed record SittingLimit(PalateLoad Load, int MostSamples, int ShortestPauseSeconds, int LongestPauseSeconds, string Note);

/// <summary>Limits of one sitting. All are defaults of ours from practice (MEMORY); a house may set others.</summary>
public static class TastingLimits
{
    /// <summary>Sittings of one taster a day.</summary>
    public const int MostSittingsADay = 2;

    /// <summary>Hours since a meal, coffee or tobacco.</summary>
    public const int HoursSinceMeal = 1;

    /// <summary>Properties scored for one sample.</summary>
    public const int MostPropertiesASample = 8;

    /// <summary>Sets of three glasses in one sitting; of four glasses too, but one is better.</summary>
    public const int MostForcedChoices = 2;

    /// <summary>Minutes between two sets of a forced choice, at least.</summary>
    public const int MinutesBetweenSets = 3;

    /// <summary>Portion of a still drink, mL: two or three sips.</summary>
    public const int SmallestPortionMillilitres = 15;

    /// <summary>Largest portion of a still drink, mL.</summary>
    public const int LargestPortionMillilitres = 25;

    /// <summary>Portion of a sparkling drink, mL.</summary>
    public const int SparklingPortionMillilitres = 30;

    /// <summary>All limits, the lightest first.</summary>
    /// <remarks>Source: docs/statistics.md, section 9.1; common practice, no source. Valid for: a sitting with water and plain crackers. Error: unknown.</remarks>
    public static IReadOnlyList<SittingLimit> All { get; } =
    [
        new(PalateLoad.Light, 6, 45, 60, "Eight in two flights."),
        new(PalateLoad.SourOrSparkling, 5, 60, 60, "Mind the teeth: a straw or small sips."),
        new(PalateLoad.Harsh, 4, 120, 120, "Bitterness and dryness build up: from low to high where the order cannot be balanced."),
        new(PalateLoad.Alcoholic, 5, 60, 90, "A cup to spit into."),
        new(PalateLoad.Strong, 3, 120, 120, "A cup to spit into; dilute only where the question allows it."),
    ];

    /// <summary>The limit for a kind of drink.</summary>
    /// <param name="load">The kind.</param>
    /// <remarks>Source, valid range and error: see <see cref="All"/>.</remarks>
    public static SittingLimit Of(PalateLoad load) => All.Single(limit => limit.Load == load);

    /// <summary>Every kind that a drink belongs to.</summary>
    /// <param name="abvPercent">Strength, % vol, 0 to 100.</param>
    /// <param name="sourOrSparkling">It is sour or sparkling.</param>
    /// <param name="harsh">It is bitter, drying, smoky or hot.</param>
    /// <returns>One kind at least.</returns>
    /// <remarks>Source: docs/statistics.md, section 9.1. Valid for: one drink. Error: none.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A strength outside 0 to 100.</exception>
    public static IReadOnlyList<PalateLoad> LoadsOf(double abvPercent, bool sourOrSparkling, bool harsh)
    {
        Guard.InRange(abvPercent, 0, 100);
        var loads = new List<PalateLoad>();
        if (sourOrSparkling)
        {
            loads.Add(PalateLoad.SourOrSparkling);
        }
        if (harsh)
        {
            loads.Add(PalateLoad.Harsh);
        }
        if (abvPercent > 0.5)
        {
            loads.Add(abvPercent > 15 ? PalateLoad.Strong : PalateLoad.Alcoholic);
        }
        return loads.Count > 0 ? loads : [PalateLoad.Light];
    }

    /// <summary>What is too much for one sitting; empty where nothing is.</summary>
    /// <param name="loads">The kinds of all samples together, one at least.</param>
    /// <param name="samples">Samples each taster scores, 1 or more.</param>
    /// <param name="propertiesASample">Properties scored for each, zero or more.</param>
    /// <returns>Sentences for the lead; they warn and do not forbid.</returns>
    /// <remarks>Source: docs/statistics.md, section 9.1: the strictest kind counts. Valid for: one sitting. Error: the limits are practice.</remarks>
    /// <exception cref="ArgumentException">No kinds.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A count outside its range.</exception>
    public static IReadOnlyList<string> Warnings(IReadOnlyCollection<PalateLoad> loads, int samples, int propertiesASample)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(samples, 1);
        ArgumentOutOfRangeException.ThrowIfNegative(propertiesASample);
        if (loads.Count == 0)
        {
            throw new ArgumentException("Name one kind at least.", nameof(loads));
        }
        var strictest = loads.Distinct().Select(Of).MinBy(limit => limit.MostSamples)!;
        var warnings = new List<string>();
        if (samples > strictest.MostSamples)
        {
            warnings.Add(string.Create(CultureInfo.InvariantCulture, $"{samples} samples tire the palate: {strictest.MostSamples} of this kind are enough for one sitting."));
        }
        if (propertiesASample > MostPropertiesASample)
        {
            warnings.Add(string.Create(CultureInfo.InvariantCulture, $"{propertiesASample} questions a sample are too many: ask {MostPropertiesASample} at most."));
        }
        return warnings;
    }
}
