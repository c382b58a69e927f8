using System.Text.Json;
using System.Text.Json.Serialization;
using MenuLab.Core.Pantry;
using MenuLab.Core.Quantities;

namespace MenuLab.Core.Drafts;

/// <summary>
/// Edits and briefs as UTF-8 JSON, snake_case, absent = not set. Edits live only until the draft's next iteration, so the
/// form may grow by new properties; a property is never given another meaning.
/// </summary>
public static class EditText
{
    /// <summary>An action as JSON.</summary>
    public static byte[] Write(EditAction action) => JsonSerializer.SerializeToUtf8Bytes(action, EditJson.Default.EditAction);

    /// <summary>An action from JSON.</summary>
    /// <exception cref="JsonException">It is no action that this version knows.</exception>
    public static EditAction Read(ReadOnlySpan<byte> json) =>
        JsonSerializer.Deserialize(json, EditJson.Default.EditAction) ?? throw new JsonException("An edit does something.");

    /// <summary>A brief as JSON.</summary>
    public static byte[] WriteBrief(Brief brief) => JsonSerializer.SerializeToUtf8Bytes(brief, EditJson.Default.Brief);

    /// <summary>A brief from JSON.</summary>
    /// <exception cref="JsonException">It is no brief.</exception>
    public static Brief ReadBrief(ReadOnlySpan<byte> json) =>
        JsonSerializer.Deserialize(json, EditJson.Default.Brief) ?? throw new JsonException("A brief is an object.");
}

[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.SnakeCaseLower, UseStringEnumConverter = true, DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
    Converters = [typeof(IngredientIdAsText), typeof(LineIdAsText), typeof(MoneyAsText)])]
[JsonSerializable(typeof(EditAction))]
[JsonSerializable(typeof(Brief))]
internal sealed partial class EditJson : JsonSerializerContext;

internal sealed class IngredientIdAsText : JsonConverter<IngredientId>
{
    public override IngredientId Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => new(reader.GetGuid());

    public override void Write(Utf8JsonWriter writer, IngredientId value, JsonSerializerOptions options) => writer.WriteStringValue(value.Value);
}

internal sealed class LineIdAsText : JsonConverter<LineId>
{
    public override LineId Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => new(reader.GetGuid());

    public override void Write(Utf8JsonWriter writer, LineId value, JsonSerializerOptions options) => writer.WriteStringValue(value.Value);
}

/// <summary>Money as "EUR 3.5": exact, and never without its currency.</summary>
internal sealed class MoneyAsText : JsonConverter<Money>
{
    public override Money Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        var text = reader.GetString() ?? "";
        return text.Length > 4 && decimal.TryParse(text.AsSpan(4), System.Globalization.NumberStyles.Number, System.Globalization.CultureInfo.InvariantCulture, out var amount)
            ? Money.Of(amount, text[..3])
            : throw new JsonException($"\"{text}\" is not an amount of money.");
    }

    public override void Write(Utf8JsonWriter writer, Money value, JsonSerializerOptions options) =>
        writer.WriteStringValue(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{value.Currency} {value.Amount}"));
}
