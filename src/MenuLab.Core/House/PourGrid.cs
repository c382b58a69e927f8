using System.Globalization;

namespace MenuLab.Core.House;

/// <summary>An amount of liquid as it is printed. A unit in which it cannot be said honestly is empty.</summary>
/// <param name="Millilitres">Figure in mL, e.g. "22.5"; empty where it does not lie on the house's grid.</param>
/// <param name="FluidOunces">Figure in trade ounces, e.g. "1 ½"; empty where no fraction that a jigger carries fits.</param>
public readonly record struct PouredAmount(string Millilitres, string FluidOunces);

/// <summary>
/// How the house pours: amounts in both units as a jigger shows them. The unit that was typed stands; the other one is
/// computed from it and printed only where it falls on the grid. Nothing is printed that nobody could pour.
/// </summary>
/// <remarks>
/// Source: common practice, no source: jiggers are marked in steps of 2.5 mL, and 22.5 mL is sold as ¾ oz, which makes the
/// ounce of the trade 30 mL. Valid for: amounts that are poured by jigger; dashes, drops and grams are not its concern.
/// Error: none on the grid; 1.44 % where an ounce of 29.5735 mL was meant, less than a jigger's own.
/// </remarks>
public sealed record PourGrid
{
    /// <summary>The ounce of the trade, mL.</summary>
    public const double TradeOunceMillilitres = 30;

    private const double UsOunceMillilitres = 29.5735;

    // The US ounce lies 1.44 % below the trade's: a house that computes with it pours with the same jiggers.
    private const double SameOunce = 0.015;

    // 22.18 mL is ¾ of a US ounce, converted by somebody: two decimals leave no more than this.
    private const double ConvertedSlackOunces = 0.005;

    // Typed decimals such as 0.67 or 0.33 oz mean a fraction; 0.015 oz is less than half a millilitre.
    private const double DecimalSlackOunces = 0.015;

    private static readonly (double Value, string Sign)[] Fractions =
    [
        (0, ""), (1 / 8.0, "⅛"), (1 / 4.0, "¼"), (1 / 3.0, "⅓"), (3 / 8.0, "⅜"), (1 / 2.0, "½"),
        (5 / 8.0, "⅝"), (2 / 3.0, "⅔"), (3 / 4.0, "¾"), (7 / 8.0, "⅞"),
    ];

    /// <summary>A grid.</summary>
    /// <param name="stepMillilitres">What the house's jiggers step by, mL; above 0.</param>
    /// <param name="ounceMillilitres">What the house's ounce holds, mL; above 0. Within 1.5 % of 30 it prints as the trade's 30.</param>
    /// <exception cref="ArgumentOutOfRangeException">Zero, negative, infinite or NaN.</exception>
    public PourGrid(double stepMillilitres = 2.5, double ounceMillilitres = TradeOunceMillilitres)
    {
        StepMillilitres = Guard.InRange(stepMillilitres, double.Epsilon, double.MaxValue);
        var ounce = Guard.InRange(ounceMillilitres, double.Epsilon, double.MaxValue);
        OunceMillilitres = Math.Abs(ounce / TradeOunceMillilitres - 1) <= SameOunce ? TradeOunceMillilitres : ounce;
    }

    /// <summary>What the house's jiggers step by, mL.</summary>
    public double StepMillilitres { get; }

    /// <summary>The ounce that amounts are printed with, mL.</summary>
    public double OunceMillilitres { get; }

    /// <summary>An amount that was typed in mL. What was typed with one decimal at most stands as it is.</summary>
    /// <param name="millilitres">mL, zero or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">Negative, infinite or NaN.</exception>
    public PouredAmount FromMillilitres(double millilitres)
    {
        var poured = Settle(Guard.FiniteNonNegative(millilitres));
        return new PouredAmount(Figure(poured), Fraction(poured / OunceMillilitres, slack: 1e-6));
    }

    /// <summary>An amount that was typed in ounces. Without a fraction that fits, the ounces stand as typed.</summary>
    /// <param name="ounces">Fluid ounces, zero or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">Negative, infinite or NaN.</exception>
    public PouredAmount FromFluidOunces(double ounces)
    {
        Guard.FiniteNonNegative(ounces);
        var (value, fraction) = NearestFraction(ounces);
        var fits = Math.Abs(value - ounces) <= DecimalSlackOunces;
        var millilitres = (fits ? value : ounces) * OunceMillilitres;
        return new PouredAmount(IsMultiple(millilitres, StepMillilitres) ? Figure(millilitres) : "", fits ? fraction : Figure(ounces));
    }

    /// <summary>A count or a number of ounces in whole and fraction, e.g. "1 ½"; empty where no eighth or third fits within the slack.</summary>
    /// <param name="value">Zero or more.</param>
    /// <param name="slack">How far it may lie from the fraction.</param>
    /// <exception cref="ArgumentOutOfRangeException">Negative, infinite or NaN value.</exception>
    public static string Fraction(double value, double slack = DecimalSlackOunces)
    {
        var (nearest, text) = NearestFraction(Guard.FiniteNonNegative(value));
        return Math.Abs(nearest - value) <= slack ? text : "";
    }

    private double Settle(double millilitres)
    {
        if (IsMultiple(millilitres, 0.1) || IsMultiple(millilitres, OunceMillilitres / 8))
        {
            return millilitres;
        }
        var converted = NearestFraction(millilitres / UsOunceMillilitres).Value;
        return Math.Abs(millilitres / UsOunceMillilitres - converted) <= ConvertedSlackOunces ? converted * TradeOunceMillilitres
            : millilitres >= 1 ? Math.Round(millilitres, 1, MidpointRounding.AwayFromZero)
            : Math.Round(millilitres, 2, MidpointRounding.AwayFromZero);
    }

    private static bool IsMultiple(double value, double of) => Math.Abs(value / of - Math.Round(value / of)) < 1e-6;

    private static (double Value, string Text) NearestFraction(double value)
    {
        var whole = Math.Floor(value);
        var best = (Value: whole + 1, Text: Figure(whole + 1));
        foreach (var (part, sign) in Fractions)
        {
            if (Math.Abs(whole + part - value) < Math.Abs(best.Value - value))
            {
                best = (whole + part, whole == 0 && part > 0 ? sign : part > 0 ? $"{Figure(whole)} {sign}" : Figure(whole));
            }
        }
        return best;
    }

    private static string Figure(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);
}
