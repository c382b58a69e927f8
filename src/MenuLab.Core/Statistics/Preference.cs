using MenuLab.Core.House;

namespace MenuLab.Core.Statistics;

/// <summary>Which of two drinks a panel prefers.</summary>
/// <param name="ForOne">Tasters for the first.</param>
/// <param name="ForOther">Tasters for the second.</param>
/// <param name="Without">Tasters without a preference; told, but not part of the test.</param>
/// <param name="ByLuck">Chance of a split as uneven, either way, by luck alone; 1 where nobody preferred either.</param>
/// <param name="Share">Share of the first among those who preferred one, with its limits; null where nobody did.</param>
public sealed record PreferenceResult(int ForOne, int ForOther, int Without, double ByLuck, Ranged? Share);

/// <summary>Paired preference.</summary>
public static class Preference
{
    /// <summary>Distance from an even split that matters unless somebody says otherwise, as a share.</summary>
    public const double MattersByDefault = 0.10;

    /// <summary>Works out a paired preference.</summary>
    /// <param name="forOne">Tasters for the first, zero or more.</param>
    /// <param name="forOther">Tasters for the second, zero or more.</param>
    /// <param name="without">Tasters without a preference, zero or more.</param>
    /// <returns>The exact test, either way, and the share with its limits.</returns>
    /// <remarks>Source: docs/statistics.md, section 6.1. Valid for: one answer a taster. Error: 1e-10.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A negative count.</exception>
    public static PreferenceResult Of(int forOne, int forOther, int without)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(forOne);
        ArgumentOutOfRangeException.ThrowIfNegative(forOther);
        ArgumentOutOfRangeException.ThrowIfNegative(without);
        var both = forOne + forOther;
        if (both == 0)
        {
            return new PreferenceResult(0, 0, without, 1, null);
        }
        var (low, high) = BinomialTest.Limits(forOne, both);
        return new PreferenceResult(forOne, forOther, without, BinomialTest.EitherWay(forOne, forOther), new Ranged((double)forOne / both, low, high));
    }

    /// <summary>The result in plain words.</summary>
    /// <param name="result">What was found.</param>
    /// <param name="one">Name of the first.</param>
    /// <param name="other">Name of the second.</param>
    /// <param name="format">How the house writes numbers.</param>
    /// <returns>Different, close enough, or too few to say.</returns>
    /// <remarks>Source: docs/statistics.md, sections 0.4 and 6.1: close enough where both limits lie within ten per cent of an even split. Valid for: one question fixed before the tasting, at 5 %. Error: none of its own.</remarks>
    public static Verdict Verdict(PreferenceResult result, string one, string other, HouseFormat format)
    {
        var both = result.ForOne + result.ForOther;
        var (winner, most) = result.ForOne >= result.ForOther ? (one, result.ForOne) : (other, result.ForOther);
        var rest = result.Without == 0 ? "" : $" {result.Without} had no preference.";
        if (result.Share is not { } share || both < Statistics.Verdict.FewestForInference)
        {
            return new Verdict(VerdictKind.ScoresOnly, $"{result.ForOne} preferred {one}, {result.ForOther} preferred {other}.{rest} Too few answers to go beyond counting.");
        }
        var counted = result.ForOne == result.ForOther
            ? $"{result.ForOne} preferred {one} and as many {other}."
            : $"{most} of {both} preferred {winner}.";
        if (result.ByLuck <= 0.05)
        {
            var chance = Statistics.Verdict.Chance(result.ByLuck, format);
            return Math.Abs(share.Value - 0.5) >= MattersByDefault
                ? new Verdict(VerdictKind.Different, $"{counted}{rest} The chance of so uneven a split by luck alone is {chance}.")
                : new Verdict(VerdictKind.DifferentButSmall, $"{counted}{rest} That is more than luck, but close to an even split.");
        }
        if (share.Low > 0.5 - MattersByDefault && share.High < 0.5 + MattersByDefault)
        {
            return new Verdict(VerdictKind.CloseEnough, $"{counted}{rest} The split is close to even.");
        }
        return BinomialTest.FewestRight(both, 0.5, 0.025) is { } needed
            ? new Verdict(VerdictKind.TooFewToSay, $"{counted}{rest} With {both} answers it takes {needed} to rule out luck.")
            : new Verdict(VerdictKind.TooFewToSay, $"{counted}{rest} With {both} answers even all of them could be luck.");
    }
}
