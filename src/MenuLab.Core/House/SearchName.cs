using System.Globalization;
using System.Text;

namespace MenuLab.Core.House;

/// <summary>
/// The form of a name by which databases search and order: the same on every database, whatever its collations
/// (architecture 1.22).
/// </summary>
public static class SearchName
{
    /// <summary>Compatibility decomposition without marks, upper case, runs of blanks as one.</summary>
    /// <param name="name">Any text.</param>
    /// <returns>"Purée  d’Åkerbär" as "PUREE D’AKERBAR"; empty for blank text.</returns>
    /// <remarks>Source: Unicode Standard Annex 15, form KD. Letters without a decomposition (ø, ł, ß) stay as they are.</remarks>
    public static string Of(string name)
    {
        var found = new StringBuilder(name.Length);
        foreach (var character in name.Normalize(NormalizationForm.FormKD))
        {
            if (CharUnicodeInfo.GetUnicodeCategory(character) is UnicodeCategory.NonSpacingMark or UnicodeCategory.EnclosingMark)
            {
                continue;
            }
            if (!char.IsWhiteSpace(character))
            {
                found.Append(char.ToUpperInvariant(character));
            }
            else if (found.Length > 0 && found[^1] != ' ')
            {
                found.Append(' ');
            }
        }
        return found.ToString().TrimEnd(' ');
    }
}
