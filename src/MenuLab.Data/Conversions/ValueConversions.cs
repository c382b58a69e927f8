using System.Globalization;
using System.Text.Json;
using MenuLab.Core.Drafts;
using MenuLab.Core.Iterations;
using Microsoft.EntityFrameworkCore.ChangeTracking;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;

namespace MenuLab.Data.Conversions;

/// <summary>An instant as UTC ticks: it sorts and compares the same on both databases (SQLite has no such type).</summary>
internal sealed class UtcTicks() : ValueConverter<DateTimeOffset, long>(i => i.UtcTicks, t => new DateTimeOffset(t, TimeSpan.Zero));

/// <summary>A calendar day as ISO text.</summary>
internal sealed class IsoDay() : ValueConverter<DateOnly, string>(
    d => d.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture), t => DateOnly.ParseExact(t, "yyyy-MM-dd", CultureInfo.InvariantCulture));

/// <summary>A time of day as ISO text.</summary>
internal sealed class IsoTime() : ValueConverter<TimeOnly, string>(
    d => d.ToString("HH:mm", CultureInfo.InvariantCulture), t => TimeOnly.ParseExact(t, "HH:mm", CultureInfo.InvariantCulture));

/// <summary>A hash as its 32 bytes.</summary>
internal sealed class HashAsBytes() : ValueConverter<ContentHash, byte[]>(h => h.ToBytes(), b => ContentHash.FromBytes(b));

/// <summary>A member of an enum as a snake_case word.</summary>
internal sealed class EnumAsText<T>() : ValueConverter<T, string>(v => EnumText<T>.Write(v), t => EnumText<T>.Read(t))
    where T : struct, Enum;

internal static class EnumText<T>
    where T : struct, Enum
{
    private static readonly Dictionary<T, string> Words = Enum.GetValues<T>().ToDictionary(v => v, v => JsonNamingPolicy.SnakeCaseLower.ConvertName(v.ToString()));
    private static readonly Dictionary<string, T> Members = Words.ToDictionary(w => w.Value, w => w.Key, StringComparer.Ordinal);

    public static int Longest { get; } = Words.Values.Max(w => w.Length);

    public static string Write(T value) => Words[value];

    public static T Read(string word) =>
        Members.TryGetValue(word, out var value) ? value : throw new InvalidDataException($"This version knows no {typeof(T).Name} \"{word}\".");
}

/// <summary>A brief as JSON: it is read whole.</summary>
internal sealed class BriefAsJson() : ValueConverter<Brief, byte[]>(b => EditText.WriteBrief(b), j => EditText.ReadBrief(j));

/// <summary>Sentences, one a line.</summary>
internal sealed class OneALine() : ValueConverter<IReadOnlyList<string>, string>(l => string.Join('\n', l), t => Split(t))
{
    private static string[] Split(string text) => text.Length == 0 ? [] : text.Split('\n');

    /// <summary>Equal when they read the same.</summary>
    public static ValueComparer<IReadOnlyList<string>> Comparer { get; } = new(
        (left, right) => left!.SequenceEqual(right!),
        lines => lines.Aggregate(0, (hash, line) => HashCode.Combine(hash, line.GetHashCode(StringComparison.Ordinal))),
        lines => lines);
}
