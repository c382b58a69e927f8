using MenuLab.Core.Drafts;
using MenuLab.Core.Drafts.Reading;

namespace MenuLab.TestKit.Reading;

/// <summary>What became of fuzzed lines.</summary>
/// <param name="LinesFuzzed">Source lines that were not blank.</param>
/// <param name="LinesLost">Of them those of which a character stands in no piece of the account.</param>
/// <param name="LinesThrown">Of them those on which the reader threw.</param>
/// <param name="FirstFault">The first such text, escaped, with the seed; empty where there is none.</param>
public sealed record FuzzCount(long LinesFuzzed, long LinesLost, long LinesThrown, string FirstFault);

/// <summary>
/// Throws mutated and random text at a reader: lines of the sheet with characters dropped, doubled, swapped and replaced,
/// lines cut and run together, and plain noise (lone surrogates, NULs, right-to-left, emoji, long lines).
/// </summary>
public static class ReaderFuzz
{
    private const int LinesPerDrink = 4;

    private static readonly string[] Shards =
    [
        "\0", "\uD83D", "\uDC4D", "\u202E", "\u200D", "\uFEFF", "🍋", "٤٥", "½", "⅔", "1/0", "1/2/3", "--", "->", ">", "((", "))", ":", "::", "3:2:1", "%", "°", "°C", "x", "×", "x40", "#", "&", "+", ";",
        "，", "ml", "oz", "T", "t", "d", "l", "to", "or", "and", "with", "equal parts", "total", "makes", "top", "rim", "rinse", "garnish:", "shake", "no", "as 4 but", "swap", "double", "ß", "ﬁ", "Ⅷ", "①",
        "é", "e\u0301", "\u0301\u0301\u0301", "𝟚", "１２", "1e9", "NaN", "Infinity", "-5", "99999999999999999999999", "0.0000001", "1,500", "1.500", "'", "’", "\"", "\\", "/", "///", "...", "…", "\t", "\u00A0", "\u0085",
    ];

    /// <summary>Runs at least this many lines; the same seed gives the same lines.</summary>
    public static FuzzCount Run(DrinkReader reader, int lines, ulong seed)
    {
        var random = new SplitMix(seed);
        var sheet = Seeds(reader);
        long fuzzed = 0, lost = 0, thrown = 0;
        var fault = "";
        while (fuzzed < lines)
        {
            var text = string.Join('\n', Enumerable.Range(0, 1 + random.Below(LinesPerDrink)).Select(_ => Line(random, sheet)));
            var settings = new ReadSettings
            {
                BareNumber = random.Below(2) == 0 ? Unit.Millilitre : Unit.FluidOunce,
                PartsTotalMillilitres = random.Below(2) == 0 ? null : 90,
            };
            var typed = Split(text);
            var count = typed.Count(static l => !string.IsNullOrWhiteSpace(l));
            fuzzed += count;
            var how = random.Below(8);
            try
            {
                IReadOnlyList<SourceLine> account = how switch
                {
                    0 => reader.Edit(reader.Read(Line(random, sheet), settings), text, settings).Account,
                    1 => [.. reader.ReadSheet(text, settings).SelectMany(d => d.Account)],
                    _ => Whole(reader.Read(text, settings)).Account,
                };
                var missing = Enumerable.Range(0, typed.Length).Count(i => !IsCovered(typed[i], [.. account.Where(a => a.Line == i + 1)]));
                lost += missing;
                fault = missing > 0 && fault.Length == 0 ? $"lost, seed {seed}, way {how}: {Escape(text)}" : fault;
            }
#pragma warning disable CA1031 // Whatever is thrown is what the fuzzer looks for.
            catch (Exception e)
#pragma warning restore CA1031
            {
                thrown += count;
                fault = fault.Length == 0 ? $"{e.GetType().Name}, seed {seed}, way {how}: {Escape(text)} {e.StackTrace}" : fault;
            }
        }
        return new FuzzCount(fuzzed, lost, thrown, fault);
    }

    // Every line, question and unread line must be usable by those who show it.
    private static ReadDrink Whole(ReadDrink drink)
    {
        foreach (var line in drink.Lines)
        {
            if (line.Text.Length == 0 || line.Millilitres < 0 || line.Grams < 0 || double.IsInfinity(line.Grams) || !(line.GramsUncertainty >= 0) || double.IsNaN(line.StartCelsius))
            {
                throw new InvalidDataException($"A line that is none: {line}");
            }
        }
        if (drink.Questions.Any(q => q.Text.Length == 0 || q.Candidates.Count == 0 || q.Asks.Length == 0) || drink.Unread.Any(u => u.Reason.Length == 0 || u.Column < 1))
        {
            throw new InvalidDataException("A question without candidates, or an unread line without a reason.");
        }
        return drink;
    }

    /// <summary>Each character that is no blank lies in a piece of the account at its column.</summary>
    private static bool IsCovered(string line, IReadOnlyList<SourceLine> pieces)
    {
        var covered = new bool[line.Length];
        foreach (var piece in pieces)
        {
            var start = piece.Column - 1;
            if (start < 0 || start + piece.Text.Length > line.Length || string.CompareOrdinal(line, start, piece.Text, 0, piece.Text.Length) != 0)
            {
                return false;
            }
            Array.Fill(covered, true, start, piece.Text.Length);
        }
        return !line.Where((c, i) => !covered[i] && !char.IsWhiteSpace(c)).Any();
    }

    private static string[] Split(string text) => text.Replace("\r\n", "\n", StringComparison.Ordinal).Split('\n', '\r', '\u2028', '\u2029', '\u0085', '\v', '\f');

    private static string[] Seeds(DrinkReader reader)
    {
        string[] patterns =
        [
            "45 ml {0}", "{0} 20", "1 1/2 oz {0}", "3/4 {0}, fresh", "2 dashes {0}", "top with {0}", "garnish: {0} twist", "rim: {0}", "rinse the glass with {0}", "20-25 ml {0} or {1}", "2 slices {0}, muddled",
            "equal parts {0}, {1} to 90 ml", "2:1 {0}, {1}", "{0} / {1} / 10 honey, shake 12 s, fine strain, coupe", "Shake 45 ml of {0} with 20 ml {1} and strain over one big rock.", "juice of 1 {0}", "as 4 but {0} 20 > 22.5, no {1}",
            "+ 5 ml {0}", "swap {0} for {1}", "stir 30 sec, up", "makes 2 drinks", "{0} from the freezer at 60 C", "scant 1 oz {0} (30 ml)", "x40 {0}", "1. {0} ........ 7,5",
        ];
        return [.. reader.Vocabulary.Pantry.All.SelectMany((i, n) => i.Aliases.Append(i.Name).Select((a, k) => string.Format(
            System.Globalization.CultureInfo.InvariantCulture, patterns[(n * 7 + k) % patterns.Length], a, reader.Vocabulary.Pantry.All[(n + k) % reader.Vocabulary.Pantry.All.Count].Name)))];
    }

    private static string Line(SplitMix random, string[] sheet)
    {
        if (random.Below(20) == 0)
        {
            return Noise(random, random.Below(200) == 0 ? 10_000 : 40);
        }
        var line = sheet[random.Below(sheet.Length)];
        for (var mutations = random.Below(6); mutations > 0; mutations--)
        {
            line = Mutate(random, line, sheet);
        }
        return line;
    }

    private static string Mutate(SplitMix random, string line, string[] sheet)
    {
        var at = random.Below(line.Length + 1);
        switch (random.Below(7))
        {
            case 0:
                return line.Length == 0 ? line : line.Remove(Math.Min(at, line.Length - 1), 1);
            case 1:
                return line.Insert(at, Shards[random.Below(Shards.Length)]);
            case 2:
                return line.Insert(at, ((char)random.Below(0x10000)).ToString());
            case 3:
                return line[..at];
            case 4:
                return line[at..] + " " + line[..at];
            case 5:
                return line.Length > 4000 ? line : line + (random.Below(2) == 0 ? ", " : " ") + sheet[random.Below(sheet.Length)];
            default:
                if (line.Length < 2 || at >= line.Length - 1)
                {
                    return line;
                }
                return string.Concat(line.AsSpan(0, at), line.AsSpan(at + 1, 1), line.AsSpan(at, 1), line.AsSpan(at + 2));
        }
    }

    private static string Noise(SplitMix random, int longest) => string.Concat(Enumerable.Range(0, random.Below(longest))
        .Select(_ => random.Below(3) switch { 0 => Shards[random.Below(Shards.Length)], 1 => ((char)(32 + random.Below(95))).ToString(), _ => ((char)random.Below(0x10000)).ToString() }));

    private static string Escape(string text) => string.Concat(text.Select(c => c is >= ' ' and < '\u007f' ? c.ToString() : $"\\u{(int)c:X4}"));

    /// <summary>SplitMix64 (Steele, Lea, Flood 2014): the same numbers for a seed on every runtime.</summary>
    private sealed class SplitMix(ulong state)
    {
        private ulong _state = state;

        public int Below(int limit)
        {
            _state += 0x9E3779B97F4A7C15;
            var z = _state;
            z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
            z ^= z >> 31;
            return (int)(z % (ulong)limit);
        }
    }
}
