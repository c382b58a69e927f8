using System.Text.Json;
using System.Text.Json.Serialization;

namespace MenuLab.Core.Drafts.Rounds;

/// <summary>What the pours of a round share, frozen when it started: UTF-8 JSON that begins with its format, snake_case, absent = not set.</summary>
internal static class RoundText
{
    private const int Newest = 1;

    public static byte[] Write(IReadOnlyList<PlacedLine> lines, Build build) =>
        JsonSerializer.SerializeToUtf8Bytes(new RoundContent(Newest, lines, build), RoundJson.Default.RoundContent);

    /// <exception cref="JsonException">It is no content of a round, or in a format that only a newer version knows.</exception>
    public static RoundContent Read(ReadOnlySpan<byte> text)
    {
        var content = JsonSerializer.Deserialize(text, RoundJson.Default.RoundContent);
        return content is { Format: Newest } ? content : throw new JsonException($"A round is an object in format {Newest}.");
    }
}

internal sealed record RoundContent(int Format, IReadOnlyList<PlacedLine> Lines, Build Build);

[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.SnakeCaseLower, UseStringEnumConverter = true, DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
    Converters = [typeof(IngredientIdAsText), typeof(LineIdAsText)])]
[JsonSerializable(typeof(RoundContent))]
internal sealed partial class RoundJson : JsonSerializerContext;
