using System.Text.Json;

namespace MenuLab.Core.Iterations;

/// <summary>
/// Snapshots as text (architecture 1.7): UTF-8 JSON that begins with its format, snake_case, keys in a fixed order,
/// numbers in shortest round-trip form, absent = unknown. Every format ever released is read for ever, each by a reader
/// of its own that lifts it to the newest shape; what is stored is never rewritten.
/// </summary>
public static class SnapshotText
{
    /// <summary>The format that is written today.</summary>
    public const int Newest = 1;

    /// <summary>The canonical text of a snapshot.</summary>
    public static byte[] Write(Snapshot snapshot) => JsonSerializer.SerializeToUtf8Bytes(SnapshotFormat1.Of(snapshot), IterationJson.Default.SnapshotFormat1);

    /// <summary>The snapshot of a text in any format that was ever released.</summary>
    /// <exception cref="JsonException">It is no snapshot, or in a format that only a newer version knows.</exception>
    public static Snapshot Read(ReadOnlySpan<byte> text)
    {
        var format = FormatOf(text);
        return format switch
        {
            1 => (JsonSerializer.Deserialize(text, IterationJson.Default.SnapshotFormat1) ?? throw new JsonException("A snapshot is an object.")).Lift(),
            _ => throw new JsonException($"This snapshot is in format {format}; this version knows 1 to {Newest}."),
        };
    }

    private static int FormatOf(ReadOnlySpan<byte> text)
    {
        var reader = new Utf8JsonReader(text);
        return reader.Read() && reader.TokenType == JsonTokenType.StartObject
            && reader.Read() && reader.TokenType == JsonTokenType.PropertyName && reader.ValueTextEquals("format")
            && reader.Read() && reader.TryGetInt32(out var format)
            ? format
            : throw new JsonException("A snapshot begins with its format.");
    }
}
