using System.Globalization;
using MenuLab.Core.House;

namespace MenuLab.Core.Statistics;

/// <summary>What a comparison comes to.</summary>
public enum VerdictKind
{
    /// <summary>So few tasters that scores are shown and nothing is concluded.</summary>
    ScoresOnly,
    /// <summary>The panel was too small to settle it; this is not "the same".</summary>
    TooFewToSay,
    /// <summary>Any difference is smaller than what matters.</summary>
    CloseEnough,
    /// <summary>There is a difference, smaller than what matters.</summary>
    DifferentButSmall,
    /// <summary>There is a difference that matters.</summary>
    Different,
}

/// <summary>A conclusion and its sentence, size included. A chance alone never makes "no difference".</summary>
/// <param name="Kind">What it comes to.</param>
/// <param name="Sentence">The conclusion in plain words.</param>
public sealed record Verdict(VerdictKind Kind, string Sentence)
{
    /// <summary>Below this many tasters only scores are shown. Our choice.</summary>
    public const int FewestForInference = 4;

    /// <summary>Below this many tasters no letters are given; ranges are. Our choice.</summary>
    public const int FewestForLetters = 6;

    /// <summary>What a verdict is, from an estimate and its limits.</summary>
    /// <param name="difference">The difference with its 95 % limits, low at most high.</param>
    /// <param name="matters">The smallest difference worth acting on, above zero, in the same unit.</param>
    /// <param name="tasters">How many tasters, 1 or more.</param>
    /// <remarks>Source: docs/statistics.md, section 0.4; the fixed order of its table. Valid for: any difference with limits. Error: none of its own.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its range.</exception>
    public static VerdictKind KindOf(Ranged difference, double matters, int tasters)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(tasters, 1);
        if (!(matters > 0 && double.IsFinite(matters)))
        {
            throw new ArgumentOutOfRangeException(nameof(matters), matters, "Must be a finite number above zero.");
        }
        if (tasters < FewestForInference)
        {
            return VerdictKind.ScoresOnly;
        }
        if (difference.Low > 0 || difference.High < 0)
        {
            return Math.Abs(difference.Value) >= matters ? VerdictKind.Different : VerdictKind.DifferentButSmall;
        }
        return -matters < difference.Low && difference.High < matters ? VerdictKind.CloseEnough : VerdictKind.TooFewToSay;
    }

    /// <summary>The verdict on two means, in plain words.</summary>
    /// <param name="one">Name of the first.</param>
    /// <param name="other">Name of the second.</param>
    /// <param name="more">What was asked, as a participle: "liked", "rated".</param>
    /// <param name="difference">First minus second, with its 95 % limits, in points of the scale.</param>
    /// <param name="matters">The smallest difference worth acting on, above zero, in points.</param>
    /// <param name="tasters">How many tasters, 1 or more.</param>
    /// <param name="needed">Tasters it would take to settle it; null where that is not known or too many to ask.</param>
    /// <param name="format">How the house writes numbers.</param>
    /// <remarks>Source: docs/statistics.md, section 0.4; one decimal at most. Valid for: any difference with limits. Error: none of its own.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its range.</exception>
    public static Verdict OnMeans(string one, string other, string more, Ranged difference, double matters, int tasters, int? needed, HouseFormat format)
    {
        var kind = KindOf(difference, matters, tasters);
        var (winner, loser, size) = difference.Value >= 0 ? (one, other, difference) : (other, one, new Ranged(-difference.Value, -difference.High, -difference.Low));
        var range = $"{format.Number(size.Low, 1)} to {format.Number(size.High, 1)}";
        var points = format.Number(size.Value, 1);
        var allowed = format.Amount(matters);
        return new Verdict(kind, kind switch
        {
            VerdictKind.ScoresOnly => $"{People(tasters)}: too few to go beyond the scores.",
            VerdictKind.Different => $"{winner} was {more} more than {loser}: {points} points (95 % range {range}), {People(tasters)}.",
            VerdictKind.DifferentButSmall => $"{one} and {other} differ by {points} points (95 % range {range}), less than the {allowed} that matter to you.",
            VerdictKind.CloseEnough => $"Any difference between {one} and {other} is smaller than {allowed} points (95 % range {range}), {People(tasters)}.",
            _ => $"Too few tasters to say: {winner} came out {points} points above {loser}, but it could be {range}." +
                (needed is { } count ? $" To settle {allowed} points you need about {People(count)}." : ""),
        });
    }

    /// <summary>The fewest tasters that settle a difference of a given size.</summary>
    /// <param name="meanSquare">Residual mean square of a panel like this one, zero or more, in points squared.</param>
    /// <param name="samples">Samples each taster scores, 2 or more.</param>
    /// <param name="matters">The smallest difference worth acting on, above zero, in points.</param>
    /// <returns>2 to 1000; null for more than that.</returns>
    /// <remarks>Source: docs/statistics.md, section 0.4: <see cref="Detectable"/> at most what matters. Valid for: complete two-way tables. Error: that of the mean square.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its range.</exception>
    public static int? TastersNeeded(double meanSquare, int samples, double matters)
    {
        if (!(matters > 0))
        {
            throw new ArgumentOutOfRangeException(nameof(matters), matters, "Must be above zero.");
        }
        for (var tasters = 2; tasters <= 1000; tasters++)
        {
            if (Detectable(meanSquare, samples, tasters) <= matters)
            {
                return tasters;
            }
        }
        return null;
    }

    /// <summary>The difference of two means that a panel finds four times in five.</summary>
    /// <param name="meanSquare">Residual mean square, zero or more, in points squared.</param>
    /// <param name="samples">Samples each taster scores, 2 or more.</param>
    /// <param name="tasters">Tasters, 2 or more.</param>
    /// <returns>Points of the scale.</returns>
    /// <remarks>Source: docs/statistics.md, section 0.4: (t(.975) + t(.80)) sqrt(2 MSE/J), (J - 1)(p - 1) degrees of freedom. Valid for: complete two-way tables. Error: an approximation of the non-central t, some per cent for four tasters.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its range.</exception>
    public static double Detectable(double meanSquare, int samples, int tasters)
    {
        Guard.FiniteNonNegative(meanSquare);
        ArgumentOutOfRangeException.ThrowIfLessThan(samples, 2);
        ArgumentOutOfRangeException.ThrowIfLessThan(tasters, 2);
        var degrees = (tasters - 1) * (samples - 1);
        return (Distributions.StudentQuantile(0.975, degrees) + Distributions.StudentQuantile(0.80, degrees)) * Math.Sqrt(2 * meanSquare / tasters);
    }

    /// <summary>A chance as people read it: "4 %", "0.4 %", "below 0.1 %".</summary>
    internal static string Chance(double chance, HouseFormat format) =>
        chance < 0.001 ? $"below {format.Number(0.1, 1)} %"
        : chance < 0.01 ? $"{format.Number(100 * chance, 1)} %"
        : $"{format.Number(100 * chance, 0)} %";

    internal static string People(int tasters) => tasters == 1 ? "1 taster" : tasters.ToString(CultureInfo.InvariantCulture) + " tasters";
}

/// <summary>The smallest difference worth acting on, unless a house says otherwise. Choices of ours, not facts.</summary>
public static class SmallestDifference
{
    /// <summary>Points of the nine-point liking scale.</summary>
    public const double NinePoints = 0.75;

    /// <summary>Points of a line from 0 to 100.</summary>
    public const double HundredPoints = 10;

    /// <summary>Points of a scale from 0 to 10.</summary>
    public const double TenPoints = 1;

    /// <summary>Size of a difference, d'.</summary>
    public const double DPrime = 1;

    /// <summary>Share of tasters who can tell.</summary>
    public const double CanTell = 0.30;
}
