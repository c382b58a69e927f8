using System.Globalization;
using System.Text;

namespace MenuLab.Core.Drafts.Reading;

/// <summary>
/// Text as the reader compares it: compatibility forms taken apart, marks dropped, lower case. Works a character at a
/// time, because a typed text may hold half a surrogate pair, on which the runtime's own normalisation throws.
/// </summary>
internal static class PlainText
{
    // Filled as characters turn up; two threads that fill the same cell write the same string.
    private static readonly string?[] Folded = new string?[0x2600];

    /// <summary>The plain form of a piece of text.</summary>
    public static string Of(ReadOnlySpan<char> text)
    {
        var plain = new StringBuilder(text.Length);
        for (var i = 0; i < text.Length; i++)
        {
            if (text[i] < 0x80)
            {
                plain.Append(char.ToLowerInvariant(text[i]));
            }
            else if (Rune.DecodeFromUtf16(text[i..], out var rune, out var length) == System.Buffers.OperationStatus.Done)
            {
                plain.Append(Of(rune));
                i += length - 1;
            }
        }
        return plain.ToString();
    }

    private static string Of(Rune rune)
    {
        if (rune.Value >= Folded.Length)
        {
            return Fold(rune);
        }
        return Folded[rune.Value] ??= Fold(rune);
    }

    private static string Fold(Rune rune)
    {
        // Letters of their own right, which no normalisation takes apart.
        switch (rune.Value)
        {
            case 'ß' or 'ẞ': return "ss";
            case 'æ' or 'Æ': return "ae";
            case 'œ' or 'Œ': return "oe";
            case 'ø' or 'Ø': return "o";
            case 'ł' or 'Ł': return "l";
            case 'đ' or 'Đ' or 'ð' or 'Ð': return "d";
            case 'þ' or 'Þ': return "th";
            case 'ı': return "i";
        }
        var category = Rune.GetUnicodeCategory(rune);
        if (category is UnicodeCategory.OtherNotAssigned or UnicodeCategory.PrivateUse or UnicodeCategory.Control or UnicodeCategory.Format)
        {
            return "";
        }
        var plain = new StringBuilder();
        foreach (var part in rune.ToString().Normalize(NormalizationForm.FormKD).EnumerateRunes())
        {
            if (Rune.GetUnicodeCategory(part) is not (UnicodeCategory.NonSpacingMark or UnicodeCategory.EnclosingMark or UnicodeCategory.SpacingCombiningMark))
            {
                plain.Append(Rune.ToLowerInvariant(part));
            }
        }
        return plain.ToString();
    }

    /// <summary>
    /// The singular of an English or Romance word by its ending, good enough to compare two words with; the result need
    /// not be a word.
    /// </summary>
    public static string Singular(string word)
    {
        if (word.Length < 4 || word[^1] != 's')
        {
            return word;
        }
        if (word == "leaves")
        {
            return "leaf";
        }
        if (word.EndsWith("ies", StringComparison.Ordinal) && word.Length > 4)
        {
            return string.Concat(word.AsSpan(0, word.Length - 3), "y");
        }
        if (word.EndsWith("oes", StringComparison.Ordinal) || word.EndsWith("shes", StringComparison.Ordinal) || word.EndsWith("ches", StringComparison.Ordinal)
            || word.EndsWith("xes", StringComparison.Ordinal))
        {
            return word[..^2];
        }
        return word[^2] is 's' or 'u' or 'i' ? word : word[..^1];
    }
}
