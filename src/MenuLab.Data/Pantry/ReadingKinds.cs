using MenuLab.Core.Pantry;

namespace MenuLab.Data.Pantry;

/// <summary>What can be read on the bench, and which figure it makes.</summary>
/// <param name="Key">The kind, as stored.</param>
/// <param name="Quantity">The figure that it makes.</param>
/// <param name="Units">Units that it may be read in; the first is the usual one.</param>
/// <param name="Least">Least that can be read, in the first unit.</param>
/// <param name="Most">Most that can be read, in the first unit.</param>
public sealed record ReadingKind(string Key, string Quantity, IReadOnlyList<string> Units, double Least, double Most)
{
    /// <summary>How many of a unit make one of the first.</summary>
    public static double PerFirstUnit(string unit) => unit == ReadingKinds.GramsPerLitre ? 10 : 1;
}

/// <summary>The kinds of readings.</summary>
public static class ReadingKinds
{
    /// <summary>g/100 mL.</summary>
    public const string GramsPer100Millilitres = "g/100 mL";

    /// <summary>g/L.</summary>
    public const string GramsPerLitre = "g/L";

    /// <summary>Density at the temperature read, g/mL.</summary>
    public static ReadingKind Density { get; } = new("density", FigureQuantities.Density, ["g/mL"], 0.5, 3);

    /// <summary>Soluble solids by refractometer, °Bx.</summary>
    public static ReadingKind Brix { get; } = new("brix", FigureQuantities.Brix, ["°Bx"], 0, 95);

    /// <summary>pH.</summary>
    public static ReadingKind Ph { get; } = new("ph", FigureQuantities.Ph, [""], 0, 14);

    /// <summary>Titratable acidity to pH 8.1, as anhydrous citric acid.</summary>
    public static ReadingKind Titration { get; } = new("titration", FigureQuantities.TitratableAcidity, [GramsPer100Millilitres, GramsPerLitre], 0, 100);

    /// <summary>All of them.</summary>
    public static IReadOnlyList<ReadingKind> All { get; } = [Brix, Ph, Titration, Density];

    /// <summary>A kind by its key; null where there is none.</summary>
    public static ReadingKind? Find(string key) => All.FirstOrDefault(k => k.Key == key);

    /// <summary>The readings that count: of each kind the latest that no other corrects, by day, on one day the one entered last.</summary>
    internal static IEnumerable<ReadingRow> ThatCount(IReadOnlyCollection<ReadingRow> readings)
    {
        var corrected = readings.Select(r => r.Replaces).OfType<ReadingId>().ToHashSet();
        return readings.Where(r => !corrected.Contains(r.Id)).GroupBy(r => r.Kind).Select(g => g.OrderBy(r => r.Day).ThenBy(r => r.Id.Value).Last());
    }

    /// <summary>The figure of a reading, per 100 of the ingredient's basis.</summary>
    /// <param name="reading">The reading.</param>
    /// <param name="basis">"100 g" or "100 mL".</param>
    /// <param name="gramsPerMillilitre">Density of the ingredient: a titration is per volume, its figures may be per mass.</param>
    internal static double FigureOf(ReadingRow reading, string basis, double gramsPerMillilitre)
    {
        var value = reading.Value / ReadingKind.PerFirstUnit(reading.Unit);
        return reading.Kind == Titration.Key && basis == CompositionBuilder.PerMass ? value / gramsPerMillilitre : value;
    }
}
