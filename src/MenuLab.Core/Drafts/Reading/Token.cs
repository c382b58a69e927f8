using System.Globalization;
using MenuLab.Core.House;

namespace MenuLab.Core.Drafts.Reading;

internal enum TokenKind
{
    Number,
    Word,
    Mark,
}

/// <summary>A number, a word or a mark of the source line.</summary>
/// <param name="Kind">Which of them.</param>
/// <param name="Start">Where it begins in the line.</param>
/// <param name="End">Where it ends, exclusive.</param>
/// <param name="Plain">Plain form; of a mark one of a few spellings, empty for an ornament.</param>
/// <param name="Spaced">Blank (or nothing) stands before it.</param>
/// <param name="Value">Of a number: the figure; NaN where it is not readable.</param>
/// <param name="Grouped">Of a number with two readings: the grouped one, else NaN.</param>
internal readonly record struct Token(TokenKind Kind, int Start, int End, string Plain, bool Spaced, double Value, double Grouped)
{
    public bool Is(string plain) => Kind != TokenKind.Number && Plain == plain;

    public bool IsNumber => Kind == TokenKind.Number;

    /// <summary>A number that was typed as one character, such as ½.</summary>
    public bool IsVulgar => IsNumber && Plain == Tokenizer.Vulgar;
}

/// <summary>Cuts a source line into tokens, once from left to right.</summary>
internal static class Tokenizer
{
    public const string Vulgar = "vulgar";

    public static List<Token> Cut(string line)
    {
        var tokens = new List<Token>(16);
        var at = 0;
        var spaced = true;
        while (at < line.Length)
        {
            var character = line[at];
            if (char.IsWhiteSpace(character) || char.IsControl(character))
            {
                spaced = true;
                at++;
                continue;
            }
            var start = at;
            if (StartsNumber(line, at, tokens, spaced))
            {
                at = NumberEnd(line, at);
                var number = HouseParse.Number(line[start..at]);
                var grouped = number.Outcome == NumberOutcome.TwoReadings ? number.Grouped : double.NaN;
                tokens.Add(new Token(TokenKind.Number, start, at, PlainText.Of(line.AsSpan(start, at - start)), spaced, number.Value, grouped));
            }
            else if (!double.IsNaN(HouseParse.VulgarFraction(character)))
            {
                at++;
                tokens.Add(new Token(TokenKind.Number, start, at, Vulgar, spaced, HouseParse.VulgarFraction(character), double.NaN));
            }
            else if (IsLetter(line, at, out var length))
            {
                while (at < line.Length && (IsLetter(line, at, out length) || Joins(line, at, out length)))
                {
                    at += length;
                }
                tokens.Add(new Token(TokenKind.Word, start, at, PlainText.Of(line.AsSpan(start, at - start)), spaced, double.NaN, double.NaN));
            }
            else if (Joins(line, at, out length))
            {
                at += length;
                continue;
            }
            else
            {
                at += char.IsSurrogatePair(line, at) ? 2 : 1;
                tokens.Add(MarkAt(character, start, at, spaced));
            }
            spaced = false;
        }
        return tokens;
    }

    private static bool StartsNumber(string line, int at, List<Token> tokens, bool spaced)
    {
        if (char.IsDigit(line[at]))
        {
            return true;
        }
        // ".75" and ",75" begin a number; the last dot of a leader ("honey ......5") and the comma of "lime,5" do not.
        return line[at] is '.' or ',' && at + 1 < line.Length && char.IsDigit(line[at + 1])
            && (spaced || (line[at] == '.' && tokens.Count > 0 && tokens[^1].Kind == TokenKind.Mark && !tokens[^1].Is(".")));
    }

    private static int NumberEnd(string line, int at)
    {
        at++;
        while (at < line.Length
            && (char.IsDigit(line[at]) || (line[at] is '.' or ',' or '\'' or '\u2019' && at + 1 < line.Length && char.IsDigit(line[at + 1]))))
        {
            at++;
        }
        return at;
    }

    private static bool IsLetter(string line, int at, out int length)
    {
        length = char.IsSurrogatePair(line, at) ? 2 : 1;
        return line[at] is not ('º' or 'ª') && char.IsLetter(line, at);
    }

    // Marks that sit on a letter and invisible format characters belong to the word, and to nothing when they stand alone.
    private static bool Joins(string line, int at, out int length)
    {
        length = 1;
        return CharUnicodeInfo.GetUnicodeCategory(line[at])
            is UnicodeCategory.NonSpacingMark or UnicodeCategory.SpacingCombiningMark or UnicodeCategory.EnclosingMark or UnicodeCategory.Format;
    }

    private static Token MarkAt(char character, int start, int end, bool spaced)
    {
        var plain = character switch
        {
            '-' or '\u2010' or '\u2011' or '\u2012' or '\u2013' or '\u2212' => "-",
            '\u2014' or '\u2015' or '_' => "--",
            '\'' or '\u2018' or '\u2019' or '`' or '\u00B4' => "'",
            '/' or '\u2044' or '\u2215' => "/",
            '\u00D7' or '\u2715' or '\u2716' => "x",
            '>' or '\u2192' or '\u27A1' or '\u21D2' or '\u279C' => ">",
            '\u00B0' or '\u02DA' or 'º' => "°",
            '\u2103' => "°c",
            '&' => "and",
            '\uFF0C' or '\u3001' => ",",
            '\uFF1B' or '|' => ";",
            '\uFF1A' => ":",
            '\u2026' => "...",
            '\u2248' => "~",
            '.' or ',' or ';' or ':' or '(' or ')' or '[' or ']' or '%' or '#' or '+' or '*' or '?' or '!' or '~' or '=' or '<' or '@' or '^' or '$' or '"' or '\\'
                => character.ToString(),
            _ => "",
        };
        // A times sign and an ampersand are read as the words that they stand for.
        var kind = plain is "x" or "and" or "°c" ? TokenKind.Word : TokenKind.Mark;
        return new Token(kind, start, end, plain, spaced, double.NaN, double.NaN);
    }

    /// <summary>The plain words, numbers and marks of a phrase, for the tables.</summary>
    public static string[] Words(string phrase) =>
        [.. Cut(phrase).Where(t => !t.Is("'") && !t.Is("-") && !t.Is(".") && !t.Is(",") && !t.Is("(") && !t.Is(")")).Select(t => t.Plain)];
}
