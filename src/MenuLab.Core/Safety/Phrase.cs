using System.Text.RegularExpressions;
using MenuLab.Core.House;

namespace MenuLab.Core.Safety;

/// <summary>A few words that are looked for, whole words only, in an ingredient's name or a step. A plural in s or es counts too.</summary>
/// <param name="Text">The words as written.</param>
/// <param name="IsAQuestion">The words only put it into question: "elderberry" may be raw or cooked.</param>
/// <remarks>English only; marks and case do not count. A name in other words is not found: the allergens and cautions of an ingredient stay a person's to confirm.</remarks>
public sealed partial record Phrase(string Text, bool IsAQuestion)
{
    private readonly string[] _words = Split(Text);

    /// <summary>The phrase stands in a text.</summary>
    public bool IsIn(string text) => IsIn(Split(text));

    internal bool IsIn(string[] words)
    {
        for (var start = 0; start + _words.Length <= words.Length; start++)
        {
            var all = true;
            for (var w = 0; w < _words.Length && all; w++)
            {
                all = IsSameWord(words[start + w], _words[w]);
            }
            if (all)
            {
                return true;
            }
        }
        return false;
    }

    /// <summary>The words of a text, in capitals without marks.</summary>
    internal static string[] Split(string text) => [.. Word().Matches(SearchName.Of(text).Replace("'", "", StringComparison.Ordinal).Replace("\u2019", "", StringComparison.Ordinal)).Select(m => m.Value)];

    /// <summary>Reads phrases with | between; a question mark behind one marks a question.</summary>
    internal static IReadOnlyList<Phrase> ReadAll(string cell) =>
        [.. cell.Split('|', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).Select(p => new Phrase(p.TrimEnd('?'), p.EndsWith('?')))];

    private static bool IsSameWord(string found, string wanted) =>
        found.StartsWith(wanted, StringComparison.Ordinal) && found.AsSpan(wanted.Length) is "" or "S" or "ES"
        || wanted.EndsWith('Y') && found.Length == wanted.Length + 2 && found.EndsWith("IES", StringComparison.Ordinal) && found.AsSpan(0, wanted.Length - 1).SequenceEqual(wanted.AsSpan(0, wanted.Length - 1));

    [GeneratedRegex("[\\p{L}\\p{Nd}]+", RegexOptions.CultureInvariant)]
    private static partial Regex Word();
}
