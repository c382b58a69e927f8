using System.Text.Json;
using System.Text.Json.Serialization;
using MenuLab.Core.Pantry;
using MenuLab.Core.Solutions;

namespace MenuLab.Core.Iterations;

/// <summary>
/// The canonical text of a composition, by whose hash it is stored once (architecture 1.5): UTF-8 JSON, snake_case, keys
/// in a fixed order, numbers in shortest round-trip form, absent = zero or unknown.
/// </summary>
public static class CompositionText
{
    private const int Newest = 1;

    // The sums that a composition may know without knowing their species.
    private static readonly (string Name, ulong Bit)[] Sums =
        [("total_sugar", Composition.TotalSugarKnown), ("total_acid", Composition.TotalAcidKnown), ("solids", Composition.SolidsKnown)];

    private static readonly string[] Keys = [.. Enum.GetNames<Component>().Select(JsonNamingPolicy.SnakeCaseLower.ConvertName)];

    /// <summary>The canonical text.</summary>
    public static byte[] Write(Composition composition) =>
        JsonSerializer.SerializeToUtf8Bytes(
            new CompositionDocument
            {
                Format = Newest,
                PerGram = Parts(composition.PerGram),
                Known = [.. Known(composition.Known)],
                Spreads = [.. composition.Spreads.ToArray().Select(s => new SpreadDocument { Source = s.Source, PerGram = Parts(s.PerGram), Relative = s.Relative })],
                Allergens = AllergenText.Names(composition.Allergens.Present),
                AllergensUnknown = AllergenText.Names(composition.Allergens.Unknown),
                Caveats = [.. Enum.GetValues<CompositionCaveats>().Where(c => c != 0 && composition.Caveats.HasFlag(c))],
                SugarAcidCorrelation = composition.SugarAcidCorrelation,
            },
            IterationJson.Default.CompositionDocument);

    /// <summary>The composition of a text; equal to the one that was written, to the last bit.</summary>
    /// <exception cref="JsonException">It is no composition in a format that this version knows.</exception>
    public static Composition Read(ReadOnlySpan<byte> text)
    {
        var document = JsonSerializer.Deserialize(text, IterationJson.Default.CompositionDocument);
        if (document is not { Format: Newest })
        {
            throw new JsonException($"This composition is in format {document?.Format}; this version knows 1 to {Newest}.");
        }
        return new Composition(
            Vector(document.PerGram),
            document.Known.Aggregate(0UL, (known, name) => known | BitOf(name)),
            [.. document.Spreads.Select(s => new Spread(s.Source, Vector(s.PerGram), s.Relative))],
            new AllergenSet(AllergenText.Bits(document.Allergens), AllergenText.Bits(document.AllergensUnknown)),
            document.Caveats.Aggregate(CompositionCaveats.None, (all, one) => all | one),
            document.SugarAcidCorrelation);
    }

    /// <summary>The hash of a composition's canonical text.</summary>
    public static ContentHash Hash(Composition composition) => ContentHash.Of(Write(composition));

    private static SortedDictionary<string, double> Parts(ReadOnlySpan<double> vector)
    {
        var parts = new SortedDictionary<string, double>(StringComparer.Ordinal);
        for (var i = 0; i < vector.Length; i++)
        {
            if (vector[i] != 0)
            {
                parts[Keys[i]] = vector[i];
            }
        }
        return parts;
    }

    private static double[] Vector(SortedDictionary<string, double> parts)
    {
        var vector = new double[Components.Count];
        foreach (var (key, value) in parts)
        {
            vector[Place(key)] = value;
        }
        return vector;
    }

    private static IEnumerable<string> Known(ulong known) =>
        Keys.Where((_, i) => (known >> i & 1) != 0).Concat(Sums.Where(s => (known & s.Bit) != 0).Select(s => s.Name)).Order(StringComparer.Ordinal);

    private static ulong BitOf(string name) => Sums.FirstOrDefault(s => s.Name == name).Bit is not 0 and var bit ? bit : 1UL << Place(name);

    private static int Place(string key) =>
        Array.IndexOf(Keys, key) is >= 0 and var place ? place : throw new JsonException($"This version knows no component \"{key}\".");
}

/// <summary>Allergens by name, so that a new one in the middle of the list moves none of the old ones.</summary>
internal static class AllergenText
{
    public static Allergen[] Names(uint bits) => [.. Enum.GetValues<Allergen>().Where(a => (bits >> (int)a & 1) != 0)];

    public static uint Bits(IEnumerable<Allergen> allergens) => allergens.Aggregate(0u, (bits, a) => bits | 1u << (int)a);
}

internal sealed record CompositionDocument
{
    public required int Format { get; init; }

    public required SortedDictionary<string, double> PerGram { get; init; }

    public required string[] Known { get; init; }

    public required SpreadDocument[] Spreads { get; init; }

    public required Allergen[] Allergens { get; init; }

    public required Allergen[] AllergensUnknown { get; init; }

    public required CompositionCaveats[] Caveats { get; init; }

    public double SugarAcidCorrelation { get; init; }
}

internal sealed record SpreadDocument
{
    public required SpreadSource Source { get; init; }

    public required SortedDictionary<string, double> PerGram { get; init; }

    public double Relative { get; init; }
}

[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.SnakeCaseLower, DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull, Converters = [
    typeof(SnakeCaseEnum<SpreadSource>), typeof(SnakeCaseEnum<Allergen>), typeof(SnakeCaseEnum<CompositionCaveats>), typeof(SnakeCaseEnum<Drafts.Unit>),
    typeof(SnakeCaseEnum<Drafts.Place>), typeof(SnakeCaseEnum<Drafts.Joins>)])]
[JsonSerializable(typeof(CompositionDocument))]
[JsonSerializable(typeof(SnapshotFormat1))]
[JsonSerializable(typeof(BalanceDocument))]
internal sealed partial class IterationJson : JsonSerializerContext;

/// <summary>Enum members as snake_case words; numbers are refused, since a place in an enum is no name.</summary>
internal sealed class SnakeCaseEnum<T>() : JsonStringEnumConverter<T>(JsonNamingPolicy.SnakeCaseLower, allowIntegerValues: false)
    where T : struct, Enum;
