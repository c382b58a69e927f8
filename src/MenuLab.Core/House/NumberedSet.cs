using System.Text.Json;
using System.Text.Json.Serialization;

namespace MenuLab.Core.House;

/// <summary>What a set holds.</summary>
public enum SetKind
{
    /// <summary>What the house's measures hold.</summary>
    Measures,
    /// <summary>Factors between amounts and what is tasted.</summary>
    Perception,
    /// <summary>Usual ranges by style.</summary>
    Bands,
    /// <summary>Methods, ices and glasses.</summary>
    Ice,
    /// <summary>Safety and claim rules.</summary>
    Rules,
}

/// <summary>A set of constants: immutable and numbered within its kind, so that a saved iteration can say which it used (architecture 1.8).</summary>
public sealed class NumberedSet
{
    private NumberedSet(SetKind kind, int number, byte[] body, PersonId? madeBy, DateTimeOffset at)
    {
        Kind = kind;
        Number = number;
        _body = body;
        MadeBy = madeBy;
        At = at;
    }

    private readonly byte[] _body;

    /// <summary>What it holds.</summary>
    public SetKind Kind { get; private set; }

    /// <summary>Its number, from 1; 1 is the shipped one.</summary>
    public int Number { get; private set; }

    /// <summary>Its content, UTF-8 JSON.</summary>
    public ReadOnlyMemory<byte> Body => _body;

    /// <summary>Who made it; null for a shipped one.</summary>
    public PersonId? MadeBy { get; private set; }

    /// <summary>When.</summary>
    public DateTimeOffset At { get; private set; }

    /// <summary>A measures set as a row.</summary>
    public static NumberedSet Of(MeasuresSet measures, PersonId? madeBy, DateTimeOffset at) =>
        new(SetKind.Measures, measures.Number, JsonSerializer.SerializeToUtf8Bytes(measures, MeasuresJson.Default.MeasuresSet), madeBy, at);

    /// <summary>The measures that this set holds.</summary>
    /// <exception cref="InvalidOperationException">It holds something else.</exception>
    public MeasuresSet Measures() =>
        Kind == SetKind.Measures
            ? JsonSerializer.Deserialize(_body, MeasuresJson.Default.MeasuresSet)!
            : throw new InvalidOperationException($"This set holds {Kind}, not measures.");
}

[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.SnakeCaseLower)]
[JsonSerializable(typeof(MeasuresSet))]
internal sealed partial class MeasuresJson : JsonSerializerContext;
