using MenuLab.Core.House;

namespace MenuLab.Core.Drafts.Reading;

/// <summary>A number as it was typed for an amount.</summary>
/// <param name="Value">The figure; the middle of a range.</param>
/// <param name="Low">Lower end of a range, else the figure.</param>
/// <param name="High">Upper end of a range, else the figure.</param>
/// <param name="IsFraction">Typed as a fraction, which nobody does for millilitres.</param>
/// <param name="Grouped">The other reading of "1,500", else NaN.</param>
/// <param name="Trouble">Why it cannot be read, else empty.</param>
/// <param name="End">The token behind it.</param>
internal readonly record struct Amount(double Value, double Low, double High, bool IsFraction, double Grouped, string Trouble, int End)
{
    public bool IsRange => Low < High;

    public bool HasTwoReadings => !double.IsNaN(Grouped);

    public static Amount Of(double value, int end, bool isFraction = false) => new(value, value, value, isFraction, double.NaN, "", end);

    public static Amount Unreadable(string trouble, int end) => new(double.NaN, double.NaN, double.NaN, false, double.NaN, trouble, end);
}

/// <summary>Reads the number at a token: figures, fractions, words, ranges.</summary>
internal static class AmountReader
{
    /// <summary>Above this no drink and no prep of a bar is written, mL or g; such a figure stays as typed.</summary>
    public const double Absurd = 20000;

    private static readonly Dictionary<string, double> Small = Table(
        "one:1 two:2 three:3 four:4 five:5 six:6 seven:7 eight:8 nine:9 ten:10 eleven:11 twelve:12 thirteen:13 fourteen:14 fifteen:15 sixteen:16 seventeen:17 eighteen:18 nineteen:19 "
        + "twenty:20 thirty:30 forty:40 fifty:50 sixty:60 seventy:70 eighty:80 ninety:90 hundred:100 zwei:2 drei:3 vier:4 funf:5 fuenf:5 sechs:6 acht:8 zehn:10 zwolf:12 zwanzig:20 "
        + "deux:2 trois:3 quatre:4 cinq:5 huit:8 dix:10 vingt:20 dos:2 tres:3 cuatro:4 cinco:5 seis:6 ocho:8 diez:10 due:2 tre:3 quattro:4 cinque:5 sei:6 otto:8 dieci:10 "
        + "dois:2 duas:2 quatro:4 oito:8 dez:10 twee:2 drie:3 vijf:5 zes:6 tien:10 dwa:2 dwie:2 trzy:3");

    private static readonly Dictionary<string, double> Portions = Table(
        "half:0.5 quarter:0.25 third:0.333333 halbe:0.5 halber:0.5 halben:0.5 halbes:0.5 viertel:0.25 demi:0.5 demie:0.5 medio:0.5 media:0.5 mezzo:0.5 mezza:0.5 meio:0.5 meia:0.5 halve:0.5 pol:0.5");

    private static readonly HashSet<string> Articles = new(StringComparer.Ordinal)
        { "a", "an", "ein", "eine", "einen", "einer", "eines", "un", "une", "una", "uno", "um", "uma", "een", "et", "en" };

    private static readonly HashSet<string> Until = new(StringComparer.Ordinal) { "-", "to", "bis", "a", "til", "tot", "do" };

    public static bool IsArticle(string plain) => Articles.Contains(plain);

    public static bool IsPortion(string plain) => Portions.ContainsKey(plain);

    /// <summary>Reads a number or a range of them; null where none begins here. Articles alone are not numbers.</summary>
    public static Amount? Read(List<Token> tokens, int at, int to)
    {
        if (One(tokens, at, to) is not { } first)
        {
            return null;
        }
        if (first.Trouble.Length > 0)
        {
            return first;
        }
        var next = first.End;
        if (next + 1 < to && Until.Contains(tokens[next].Plain) && IsRangeMark(tokens, next) && One(tokens, next + 1, to) is { Trouble: "" } second
            && !(tokens[next].Plain == "en"))
        {
            var end = second.End;
            if (end + 1 < to && tokens[end].Is("-") && tokens[end + 1].IsNumber)
            {
                return Amount.Unreadable("Three numbers in a row: write one amount, or a range such as 15-20.", end + 2);
            }
            return second.Value > first.Value
                ? new Amount((first.Value + second.Value) / 2, first.Value, second.Value, first.IsFraction && second.IsFraction, double.NaN, "", end)
                : Amount.Unreadable("The range runs backwards: write the smaller amount first.", end);
        }
        return first;
    }

    // "15-20", "15 - 20", "15 to 20"; but "20 -5" is no range.
    private static bool IsRangeMark(List<Token> tokens, int at) =>
        !tokens[at].Is("-") || tokens[at].Spaced == tokens[at + 1].Spaced;

    private static Amount? One(List<Token> tokens, int at, int to)
    {
        if (at >= to)
        {
            return null;
        }
        if (tokens[at].IsNumber)
        {
            return Figures(tokens, at, to);
        }
        return tokens[at].Kind == TokenKind.Word ? InWords(tokens, at, to) : null;
    }

    private static Amount Figures(List<Token> tokens, int at, int to)
    {
        var token = tokens[at];
        if (double.IsNaN(token.Value))
        {
            return Amount.Unreadable("This is no number: write it as 22.5, 22,5, 3/4 or 1 1/2.", at + 1);
        }
        if (token.IsVulgar)
        {
            return Amount.Of(token.Value, at + 1, isFraction: true);
        }
        if (!double.IsNaN(token.Grouped))
        {
            return new Amount(token.Value, token.Value, token.Value, false, token.Grouped, "", at + 1);
        }
        if (IsSlash(tokens, at + 1, to) && tokens[at + 2].IsNumber)
        {
            var fraction = HouseParse.Fraction(token.Value, tokens[at + 2].Value);
            if (!double.IsNaN(fraction))
            {
                return Amount.Of(fraction, at + 3, isFraction: true);
            }
            // "lj 20/15 date syrup": the slash parts two lines.
            return token.Value >= tokens[at + 2].Value && tokens[at + 2].Value > 1
                ? Amount.Of(token.Value, at + 1)
                : Amount.Unreadable("This is no fraction that an amount is written in.", at + 3);
        }
        var whole = token.Value == Math.Floor(token.Value);
        // "1 1/2", "1-1/2", "1½", "1 ½"
        var next = at + 1;
        if (whole && next < to && tokens[next].Is("-") && !tokens[next].Spaced && next + 1 < to && !tokens[next + 1].Spaced)
        {
            next++;
        }
        if (whole && next < to && tokens[next].IsVulgar)
        {
            return Amount.Of(token.Value + tokens[next].Value, next + 1, isFraction: true);
        }
        if (whole && next < to && tokens[next].IsNumber && IsSlash(tokens, next + 1, to) && tokens[next + 2].IsNumber)
        {
            var fraction = HouseParse.Fraction(tokens[next].Value, tokens[next + 2].Value);
            if (!double.IsNaN(fraction))
            {
                return Amount.Of(token.Value + fraction, next + 3, isFraction: true);
            }
        }
        // "1 500": thousands by a blank.
        if (next == at + 1 && next < to && tokens[next].IsNumber && whole && tokens[next].End - tokens[next].Start == 3 && tokens[next].Plain.All(char.IsDigit))
        {
            return Amount.Unreadable("Two numbers in a row: write thousands without a blank.", next + 1);
        }
        return Amount.Of(token.Value, at + 1);
    }

    private static bool IsSlash(List<Token> tokens, int at, int to) =>
        at + 1 < to && tokens[at].Is("/") && !tokens[at].Spaced && !tokens[at + 1].Spaced;

    private static Amount? InWords(List<Token> tokens, int at, int to)
    {
        var plain = tokens[at].Plain;
        // "half an ounce", "a half", "einer halben": the portion counts, the article beside it does not.
        if (Articles.Contains(plain) && at + 1 < to && Portions.TryGetValue(tokens[at + 1].Plain, out var portion))
        {
            return Amount.Of(portion, at + 2, isFraction: true);
        }
        if (Portions.TryGetValue(plain, out portion))
        {
            var end = at + 1;
            if (end < to && (Articles.Contains(tokens[end].Plain) || tokens[end].Is("of")))
            {
                end++;
            }
            return Amount.Of(portion, end, isFraction: true);
        }
        if (!Small.TryGetValue(plain, out var value))
        {
            return null;
        }
        var next = at + 1;
        if (value is >= 20 and < 100 && next < to)
        {
            if (tokens[next].Is("-") && next + 1 < to && Small.ContainsKey(tokens[next + 1].Plain))
            {
                next++;
            }
            if (next < to && Small.TryGetValue(tokens[next].Plain, out var ones) && ones < 10)
            {
                value += ones;
                next++;
            }
        }
        // "one and a half"
        if (next + 1 < to && tokens[next].Is("and"))
        {
            var part = next + 1;
            if (part < to && Articles.Contains(tokens[part].Plain))
            {
                part++;
            }
            if (part < to && Portions.TryGetValue(tokens[part].Plain, out portion))
            {
                return Amount.Of(value + portion, part + 1, isFraction: true);
            }
        }
        return Amount.Of(value, next);
    }

    private static Dictionary<string, double> Table(string rows) => rows.Split(' ').Select(row => row.Split(':'))
        .ToDictionary(row => row[0], row => double.Parse(row[1], System.Globalization.CultureInfo.InvariantCulture), StringComparer.Ordinal);
}
