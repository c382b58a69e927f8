using System.Text.Json;
using System.Text.Json.Serialization;

namespace MenuLab.Core;

/// <summary>A member of an enum as a snake_case word; a number is no word.</summary>
internal sealed class WordOf<T>() : JsonStringEnumConverter<T>(JsonNamingPolicy.SnakeCaseLower, allowIntegerValues: false)
    where T : struct, Enum;
