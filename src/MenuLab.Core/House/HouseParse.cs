using System.Globalization;

namespace MenuLab.Core.House;

/// <summary>What became of a number as typed.</summary>
public enum NumberOutcome
{
    /// <summary>Read: <see cref="ParsedNumber.Value"/> holds it.</summary>
    Read,
    /// <summary>Two readings ("1,500"): decimal or grouped. Ask back.</summary>
    TwoReadings,
    /// <summary>Not a number.</summary>
    NotANumber,
}

/// <summary>A number as typed and as understood.</summary>
/// <param name="Outcome">What became of it.</param>
/// <param name="Value">The figure; with two readings the decimal one; NaN where it is no number.</param>
/// <param name="Grouped">With two readings the grouped one, else NaN.</param>
/// <param name="Echo">What was understood, with a point as the separator, or one sentence on how to write it.</param>
public readonly record struct ParsedNumber(NumberOutcome Outcome, double Value, double Grouped, string Echo)
{
    /// <summary>One reading.</summary>
    public bool IsRead => Outcome == NumberOutcome.Read;
}

/// <summary>
/// The one place where typed numbers become figures. Comma or point is the decimal separator, whatever the machine's
/// culture; grouping is refused and asked back, since "1,500 mL" is 1.5 in one house and 1500 in another.
/// </summary>
public static class HouseParse
{
    /// <summary>Longest text that is looked at; no figure of a bar is longer.</summary>
    public const int MaxLength = 24;

    /// <summary>Reads a number: "22.5", "22,5", ".75", "3/4", "1 1/2", "1-1/2", "½", "1½", with or without a minus.</summary>
    /// <param name="text">As typed; blanks around it do not count. Digits of any script are taken.</param>
    /// <returns>The figure, two readings, or none; never throws.</returns>
    public static ParsedNumber Number(string? text)
    {
        var typed = (text ?? "").AsSpan().Trim();
        if (typed.IsEmpty || typed.Length > MaxLength)
        {
            return NotANumber();
        }
        var negative = typed[0] is '-' or '\u2212';
        var parsed = Unsigned(negative ? typed[1..].TrimStart() : typed);
        return negative && parsed.Outcome != NumberOutcome.NotANumber
            ? parsed with { Value = -parsed.Value, Grouped = -parsed.Grouped, Echo = parsed.IsRead ? Echo(-parsed.Value) : parsed.Echo }
            : parsed;
    }

    /// <summary>A fraction as bars write it: the lower figure is 2 to 64 and the upper one smaller.</summary>
    /// <returns>The figure, or NaN where it is no such fraction.</returns>
    public static double Fraction(double upper, double lower) =>
        upper >= 1 && lower is >= 2 and <= 64 && upper < lower && upper == Math.Floor(upper) && lower == Math.Floor(lower) ? upper / lower : double.NaN;

    /// <summary>The figure of one character such as ½ or ⅔, or NaN.</summary>
    public static double VulgarFraction(char character)
    {
        var value = char.GetNumericValue(character);
        return CharUnicodeInfo.GetUnicodeCategory(character) == UnicodeCategory.OtherNumber && value is > 0 and < 1 ? value : double.NaN;
    }

    /// <summary>A figure as it is echoed: shortest form, a point as separator, no grouping.</summary>
    public static string Echo(double value) => Math.Round(value, 4).ToString("0.####", CultureInfo.InvariantCulture);

    private static ParsedNumber Unsigned(ReadOnlySpan<char> typed)
    {
        if (typed.IsEmpty)
        {
            return NotANumber();
        }
        var last = VulgarFraction(typed[^1]);
        if (!double.IsNaN(last))
        {
            return Mixed(typed[..^1].TrimEnd(), last);
        }
        var slash = typed.IndexOfAny('/', '\u2044');
        if (slash < 0)
        {
            return Decimal(typed);
        }
        var upperFrom = typed[..slash].TrimEnd().LastIndexOfAny(' ', '-') + 1;
        var upper = Decimal(typed[upperFrom..slash].Trim());
        var lower = Decimal(typed[(slash + 1)..].Trim());
        var fraction = upper.IsRead && lower.IsRead ? Fraction(upper.Value, lower.Value) : double.NaN;
        return double.IsNaN(fraction) ? NotANumber() : Mixed(upperFrom == 0 ? [] : typed[..(upperFrom - 1)].TrimEnd(), fraction);
    }

    private static ParsedNumber Mixed(ReadOnlySpan<char> whole, double fraction)
    {
        if (whole.IsEmpty)
        {
            return Read(fraction);
        }
        var parsed = Decimal(whole);
        return parsed.IsRead && parsed.Value == Math.Floor(parsed.Value) ? Read(parsed.Value + fraction) : NotANumber();
    }

    private static ParsedNumber Decimal(ReadOnlySpan<char> typed)
    {
        var separators = 0;
        var before = 0;
        var after = 0;
        var separator = '\0';
        var value = 0.0;
        var digits = 0.0;
        var scale = 1.0;
        foreach (var character in typed)
        {
            if (character is '.' or ',' or '\'' or '\u2019')
            {
                separators++;
                separator = character;
                continue;
            }
            if (!char.IsDigit(character))
            {
                return NotANumber();
            }
            var digit = char.GetNumericValue(character);
            digits = digits * 10 + digit;
            if (separators == 0)
            {
                value = value * 10 + digit;
                before++;
            }
            else
            {
                scale *= 10;
                after++;
            }
        }
        if (separators == 0)
        {
            return before > 0 ? Read(value) : NotANumber();
        }
        if (separators > 1 || after == 0)
        {
            return NotANumber();
        }
        // One division of whole numbers rounds once, so 0.3 is the double that 0.3 is.
        var asDecimal = digits / scale;
        return LooksGrouped(separator, value, before, after, asDecimal)
            ? new ParsedNumber(
                NumberOutcome.TwoReadings, asDecimal, digits,
                $"This may be {Echo(asDecimal)} or {Echo(digits)}: write it as {Echo(asDecimal)} with fewer digits, or as {Echo(digits)} without a separator.")
            : Read(asDecimal);
    }

    // Three digits behind the separator are how thousands are grouped. Behind a point they are also how an eighth or a
    // third is written, and nobody groups with a nought in front.
    private static bool LooksGrouped(char separator, double whole, int before, int after, double asDecimal)
    {
        if (separator is '\'' or '\u2019')
        {
            return true;
        }
        if (after != 3 || before is 0 or > 3 || whole == 0)
        {
            return false;
        }
        if (separator == ',')
        {
            return true;
        }
        var thousandths = Math.Round((asDecimal - Math.Floor(asDecimal)) * 1000);
        return thousandths is not (125 or 375 or 625 or 875 or 333 or 666 or 667);
    }

    private static ParsedNumber Read(double value) => new(NumberOutcome.Read, value, double.NaN, Echo(value));

    private static ParsedNumber NotANumber() =>
        new(NumberOutcome.NotANumber, double.NaN, double.NaN, "Write a number such as 22.5, 22,5, 3/4 or 1 1/2, without grouping.");
}
