using System.Globalization;
using MenuLab.Core.Quantities;

namespace MenuLab.Core.House;

/// <summary>Which mark stands before the decimals.</summary>
public enum NumberPattern
{
    /// <summary>22.5.</summary>
    Point,
    /// <summary>22,5.</summary>
    Comma,
}

/// <summary>How a day is written. The month always has letters or stands in ISO order, so that no day is read as a month.</summary>
public enum DatePattern
{
    /// <summary>14 Oct 2026.</summary>
    DayMonthYear,
    /// <summary>Oct 14, 2026.</summary>
    MonthDayYear,
    /// <summary>2026-10-14 (ISO 8601).</summary>
    YearMonthDay,
}

/// <summary>
/// The one place where figures become text, as the house writes them; never as the machine's culture would. No grouping. The
/// minus is the typographic one (U+2212), a range has an en dash, or the word "to" where it begins below zero.
/// </summary>
/// <param name="Numbers">The decimal mark.</param>
/// <param name="Dates">How a day is written.</param>
/// <param name="Temperatures">The temperature scale.</param>
public sealed record HouseFormat(
    NumberPattern Numbers = NumberPattern.Point, DatePattern Dates = DatePattern.DayMonthYear, TemperatureScale Temperatures = TemperatureScale.Celsius)
{
    /// <summary>A decimal point and day before month: the command line, and a house that has not chosen.</summary>
    public static HouseFormat Plain { get; } = new();

    /// <summary>What stands where a figure is not known; never a zero, never nothing.</summary>
    public const string Unknown = "unknown";

    // 95 % interval of a normal distribution: low and high lie 1.96 standard uncertainties from the value.
    private const double UncertaintiesInInterval = 2 * 1.96;

    // What Math.Round takes.
    private const int MostDecimals = 15;

    /// <summary>How many decimals a figure deserves.</summary>
    /// <param name="estimate">The figure with its range.</param>
    /// <param name="most">Decimals at most, 0 and up.</param>
    /// <returns>Decimals, 0 to <paramref name="most"/>: no finer than the first significant digit of the standard uncertainty.</returns>
    /// <remarks>
    /// Source: JCGM 100:2008 (GUM), 7.2.6: a result is rounded to be consistent with its uncertainty; one digit of it
    /// instead of the two allowed is our choice, for reading at arm's length. The standard uncertainty is taken as the
    /// interval over 3.92, so an interval cut at what is possible gives at most one decimal too many.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">Negative <paramref name="most"/>.</exception>
    public static int Decimals(Estimate estimate, int most)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(most);
        var uncertainty = (estimate.High - estimate.Low) / UncertaintiesInInterval;
        if (estimate is { Value: 0, Low: 0, High: 0 })
        {
            return 0;   // exactly nothing: "0", not "0.000"
        }
        return uncertainty > 0 ? (int)Math.Clamp(Math.Ceiling(-Math.Log10(uncertainty)), 0, most) : most;
    }

    /// <summary>A number with so many decimals, halves away from zero; "unknown" for NaN.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative <paramref name="decimals"/>.</exception>
    public string Number(double value, int decimals)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(decimals);
        if (double.IsNaN(value))
        {
            return Unknown;
        }
        // "F2" alone takes 0.125 down to 0.12.
        var rounded = decimals <= MostDecimals ? Math.Round(value, decimals, MidpointRounding.AwayFromZero) : value;
        var text = rounded.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        text = Numbers == NumberPattern.Comma ? text.Replace('.', ',') : text;
        // A rounded "-0.0" is nothing but zero.
        return !text.StartsWith('-') ? text : text.AsSpan(1).IndexOfAnyExcept('0', '.', ',') < 0 ? text[1..] : "\u2212" + text[1..];
    }

    /// <summary>The value of an estimate without its unit: "11.2", "at least 0.41", "so far 3.1" or "unknown".</summary>
    /// <param name="estimate">The figure.</param>
    /// <param name="most">Decimals at most; fewer where the range is wide (<see cref="Decimals"/>).</param>
    public string Value(Estimate estimate, int most) => estimate.Certainty switch
    {
        Certainty.Unknown => Unknown,
        Certainty.AtLeast => "at least " + Number(estimate.Value, Decimals(estimate, most)),
        Certainty.SoFar => "so far " + Number(estimate.Value, Decimals(estimate, most)),
        _ => Number(estimate.Value, Decimals(estimate, most)),
    };

    /// <summary>The range of an estimate without its unit: "10.4–12.0"; one number where both ends print alike; empty unless plainly known.</summary>
    /// <param name="estimate">The figure.</param>
    /// <param name="most">Decimals at most, as for <see cref="Value"/>.</param>
    public string Likely(Estimate estimate, int most)
    {
        if (estimate.Certainty != Certainty.Plain || double.IsNaN(estimate.Low) || double.IsNaN(estimate.High))
        {
            return "";
        }
        var decimals = Decimals(estimate, most);
        var (low, high) = (Number(estimate.Low, decimals), Number(estimate.High, decimals));
        return low == high ? low
            : estimate.Low < 0 ? $"{low} to {high}"   // "−3–1" would be read as a sum
            : $"{low}\u2013{high}";
    }

    /// <summary>Why an estimate is not plainly known: "unknown for 13 % of the volume"; empty where it is.</summary>
    public string Missing(Estimate estimate) => estimate.Certainty switch
    {
        Certainty.Plain => "",
        _ when estimate.UnknownPercent > 0 => $"unknown for {Percent(estimate.UnknownPercent)} of the volume",
        _ => "",
    };

    /// <summary>An estimate in one line of text: "11.2 g/100 mL, likely 10.4–12.0".</summary>
    /// <param name="estimate">The figure.</param>
    /// <param name="most">Decimals at most.</param>
    public string Sentence(Estimate estimate, int most)
    {
        var value = Value(estimate, most);
        var text = estimate.Certainty == Certainty.Unknown || estimate.Unit.Length == 0 ? value : $"{value} {estimate.Unit}";
        var likely = Likely(estimate, most);
        var missing = Missing(estimate);
        return text + (likely.Length > 0 ? $", likely {likely}" : "") + (missing.Length > 0 ? $", {missing}" : "");
    }

    /// <summary>An amount as somebody pours it, without its unit: at most two decimals and no zeros at the end ("22.5", "45", "0.8"); below 0.1 one significant digit.</summary>
    public string Amount(double amount)
    {
        if (double.IsNaN(amount))
        {
            return Unknown;
        }
        var decimals = Math.Abs(amount) is > 0 and < 0.095 ? (int)Math.Ceiling(-Math.Log10(Math.Abs(amount))) : 2;
        var text = Number(amount, Math.Min(decimals, 6));
        return text.AsSpan().ContainsAny('.', ',') ? text.TrimEnd('0').TrimEnd('.', ',') : text;
    }

    /// <summary>A share or another percentage in whole per cent, with its sign: "67 %"; "below 1 %" where it would round to nothing and is not.</summary>
    /// <param name="percent">0 to 100.</param>
    public string Percent(double percent) =>
        percent is > 0 and < 0.5 ? "below 1 %" : Number(percent, 0) + " %";

    /// <summary>A temperature in whole degrees: "4°", "−18°"; "39 °F" where the house reads Fahrenheit.</summary>
    /// <param name="celsius">°C; NaN is "unknown".</param>
    public string Degrees(double celsius) =>
        double.IsNaN(celsius) ? Unknown
        : Temperatures == TemperatureScale.Fahrenheit ? Number(celsius * 9 / 5 + 32, 0) + " °F"
        : Number(celsius, 0) + "°";

    /// <summary>Money with two decimals: "€0.91", "0.91 SEK".</summary>
    /// <param name="amount">Amount in the currency's unit; NaN is "unknown".</param>
    /// <param name="currency">ISO 4217 code.</param>
    public string Money(double amount, string currency) =>
        double.IsNaN(amount) ? Unknown
        : Sign(currency) is { } sign ? sign + Number(amount, MoneyDecimals)
        : $"{Number(amount, MoneyDecimals)} {currency}";

    /// <summary>The same of an exact amount.</summary>
    public string Money(Money money) => Money((double)money.Amount, money.Currency);

    /// <summary>A day: "14 Oct 2026".</summary>
    public string Day(DateOnly day) => day.ToString(
        Dates switch { DatePattern.DayMonthYear => "d MMM yyyy", DatePattern.MonthDayYear => "MMM d, yyyy", _ => "yyyy-MM-dd" }, CultureInfo.InvariantCulture);

    /// <summary>A time of day: "14:02".</summary>
    public static string Time(TimeOnly time) => time.ToString("HH:mm", CultureInfo.InvariantCulture);

    private const int MoneyDecimals = 2;

    // The signs that stand before the figure wherever English is written; every other currency is told by its code.
    private static string? Sign(string currency) => currency switch { "EUR" => "€", "GBP" => "£", "USD" => "$", _ => null };
}
