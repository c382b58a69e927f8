using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using MenuLab.Core;
using MenuLab.Print.Fonts;

namespace MenuLab.Print;

/// <summary>
/// Makes a text one that the faces can set: composed letters, single spaces, and what the face lacks written another way
/// (⅔ as 2/3). What cannot be written at all is a problem that names the character; nothing prints as a box or a gap.
/// </summary>
internal sealed partial class Spelling
{
    public const char KeptSpace = '\u00A0';

    private readonly List<Problem> _problems = [];

    public IReadOnlyList<Problem> Problems => _problems;

    /// <summary>The text as it can be set. Problems are collected, so that a person sees all of them at once.</summary>
    /// <param name="text">Any text.</param>
    /// <param name="field">Where it stands on the card, for the message.</param>
    public string Set(string text, string field)
    {
        var spelled = new StringBuilder(text.Length);
        foreach (var character in Spaces().Replace(text.Normalize(NormalizationForm.FormC), " ").Trim().EnumerateRunes())
        {
            if (Rune.GetUnicodeCategory(character) is UnicodeCategory.Format or UnicodeCategory.Control)
            {
                continue;       // joiners, direction marks, soft hyphens: nothing to see
            }
            // A mark that would not compose with its letter would land beside it: there is no shaping here.
            if (Rune.GetUnicodeCategory(character) is UnicodeCategory.NonSpacingMark or UnicodeCategory.EnclosingMark or UnicodeCategory.SpacingCombiningMark)
            {
                Missing(character, text, field);
            }
            else if (HasEverywhere(character))
            {
                spelled.Append(character);
            }
            else
            {
                Append(spelled, character, text, field);
            }
        }
        return KeepUnits(spelled.ToString());
    }

    /// <summary>A figure never parts from its unit at the end of a line.</summary>
    internal static string KeepUnits(string text) =>
        UnitOfTwoWords().Replace(FigureAndUnit().Replace(SignAndFigure().Replace(text, $"{KeptSpace}"), $"{KeptSpace}"), $"$1{KeptSpace}$2");

    private void Append(StringBuilder spelled, Rune character, string text, string field)
    {
        var otherWay = character.ToString().Normalize(NormalizationForm.FormKD).Normalize(NormalizationForm.FormC).Replace('\u2044', '/');
        if (otherWay == character.ToString() || !otherWay.EnumerateRunes().All(HasEverywhere))
        {
            Missing(character, text, field);
            return;
        }
        if (otherWay.Contains('/') && spelled.Length > 0 && char.IsDigit(spelled[^1]))
        {
            spelled.Append(KeptSpace);      // "1⅔" is 1 2/3, not 12/3
        }
        spelled.Append(otherWay);
    }

    private void Missing(Rune character, string text, string field) => _problems.Add(new Problem(
        field, string.Create(CultureInfo.InvariantCulture, $"The character \"{character}\" (U+{character.Value:X4}) in \"{text}\" cannot be printed; write it another way.")));

    private static bool HasEverywhere(Rune character) =>
        Inter.File(Face.Regular).Has(character) && Inter.File(Face.SemiBold).Has(character) && Inter.File(Face.Bold).Has(character);

    [GeneratedRegex(@"\s+")]
    private static partial Regex Spaces();

    [GeneratedRegex(@"(?<=[\d½¼¾⅓⅛⅜⅝⅞]) (?=(?:mL|cL|L|fl oz|oz|g|kg|s|min|h|dash|dashes|drop|drops|tsp|tbsp|kcal|kJ|lb|°C|%|pieces?|lea(?:f|ves)|sprigs?|slices?|wedges?|peels?|pinch(?:es)?|cubes?|cups?|sprays?|splash(?:es)?|parts?|bar spoons?|½|¼|¾|⅓|\d/\d)(?![\p{L}\d]))")]
    private static partial Regex FigureAndUnit();

    [GeneratedRegex(@"(?<=[≤≥≈<>]) (?=\d)")]
    private static partial Regex SignAndFigure();

    [GeneratedRegex(@"\b(fl|bar) (oz|spoons?)\b")]
    private static partial Regex UnitOfTwoWords();
}
