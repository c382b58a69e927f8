using System.Text.Json;
using System.Text.Json.Serialization;
using MenuLab.Core.House;

namespace MenuLab.Core.Drafts.Rounds;

/// <summary>
/// What devices capture, as UTF-8 JSON: snake_case, ids as text, an enum as a snake_case word, absent = not said. The form may
/// grow by new properties; a property is never given another meaning, since a device may keep what it captured for days.
/// </summary>
public static class CaptureText
{
    /// <summary>Most bytes that one entry may take.</summary>
    public const int MostBytes = 16 * 1024;

    /// <summary>An entry as JSON: {"id", "device", "counter", "by", "at", "what": {"kind": …}}.</summary>
    public static byte[] Write(CaptureEntry entry) => JsonSerializer.SerializeToUtf8Bytes(entry, CaptureJson.Default.CaptureEntry);

    /// <summary>An entry from JSON.</summary>
    /// <exception cref="JsonException">It is no entry that this version knows.</exception>
    public static CaptureEntry Read(ReadOnlySpan<byte> json)
    {
        var entry = json.Length <= MostBytes ? JsonSerializer.Deserialize(json, CaptureJson.Default.CaptureEntry) : throw new JsonException($"An entry has at most {MostBytes} bytes.");
        return entry ?? throw new JsonException("An entry is an object.");
    }

    /// <summary>What was captured as JSON.</summary>
    public static byte[] WriteWhat(Captured what) => JsonSerializer.SerializeToUtf8Bytes(what, CaptureJson.Default.Captured);

    /// <summary>What was captured from JSON.</summary>
    /// <exception cref="JsonException">It is nothing that this version knows.</exception>
    public static Captured ReadWhat(ReadOnlySpan<byte> json) =>
        JsonSerializer.Deserialize(json, CaptureJson.Default.Captured) ?? throw new JsonException("An entry says what was captured.");

    /// <summary>A note as JSON.</summary>
    public static byte[] WriteNote(PourNote note) => JsonSerializer.SerializeToUtf8Bytes(note, CaptureJson.Default.PourNote);

    /// <summary>A note from JSON.</summary>
    /// <exception cref="JsonException">It is no note.</exception>
    public static PourNote ReadNote(ReadOnlySpan<byte> json) => JsonSerializer.Deserialize(json, CaptureJson.Default.PourNote) ?? throw new JsonException("A note is an object.");

    /// <summary>What an entry met, as JSON.</summary>
    public static byte[] WriteMet(IReadOnlyList<Met> met) => JsonSerializer.SerializeToUtf8Bytes(met, CaptureJson.Default.IReadOnlyListMet);

    /// <summary>What an entry met, from JSON.</summary>
    /// <exception cref="JsonException">It is no such list.</exception>
    public static IReadOnlyList<Met> ReadMet(ReadOnlySpan<byte> json) => JsonSerializer.Deserialize(json, CaptureJson.Default.IReadOnlyListMet) ?? [];

    /// <summary>An answer as JSON, for the device.</summary>
    public static byte[] WriteAnswers(IReadOnlyList<CaptureAnswer> answers) => JsonSerializer.SerializeToUtf8Bytes(answers, CaptureJson.Default.IReadOnlyListCaptureAnswer);
}

[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.SnakeCaseLower, DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull, RespectNullableAnnotations = true,
    RespectRequiredConstructorParameters = true,
    Converters =
    [
        typeof(IngredientIdAsText), typeof(LineIdAsText), typeof(DraftIdAsText), typeof(PersonIdAsText), typeof(SiteIdAsText), typeof(RoundIdAsText), typeof(EntryIdAsText),
        typeof(DeviceIdAsText), typeof(AttachmentIdAsText), typeof(WordOf<PourLetter>), typeof(WordOf<CellField>), typeof(WordOf<TasteAxis>), typeof(WordOf<Wish>),
        typeof(WordOf<Verdict>), typeof(WordOf<TasteMoment>), typeof(WordOf<Unit>), typeof(WordOf<CaptureOutcome>),
    ])]
[JsonSerializable(typeof(CaptureEntry))]
[JsonSerializable(typeof(PourNote))]
[JsonSerializable(typeof(IReadOnlyList<Met>))]
[JsonSerializable(typeof(IReadOnlyList<CaptureAnswer>))]
internal sealed partial class CaptureJson : JsonSerializerContext;

internal abstract class IdAsText<T>(Func<Guid, T> make, Func<T, Guid> value) : JsonConverter<T>
{
    public override T Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => make(reader.GetGuid());

    public override void Write(Utf8JsonWriter writer, T id, JsonSerializerOptions options) => writer.WriteStringValue(value(id));
}

internal sealed class DraftIdAsText() : IdAsText<DraftId>(g => new DraftId(g), i => i.Value);

internal sealed class PersonIdAsText() : IdAsText<PersonId>(g => new PersonId(g), i => i.Value);

internal sealed class SiteIdAsText() : IdAsText<SiteId>(g => new SiteId(g), i => i.Value);

internal sealed class RoundIdAsText() : IdAsText<RoundId>(g => new RoundId(g), i => i.Value);

internal sealed class EntryIdAsText() : IdAsText<EntryId>(g => new EntryId(g), i => i.Value);

internal sealed class DeviceIdAsText() : IdAsText<DeviceId>(g => new DeviceId(g), i => i.Value);

internal sealed class AttachmentIdAsText() : IdAsText<AttachmentId>(g => new AttachmentId(g), i => i.Value);
