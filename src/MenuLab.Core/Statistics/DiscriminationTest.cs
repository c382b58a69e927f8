using MenuLab.Core.House;

namespace MenuLab.Core.Statistics;

/// <summary>A figure with its 95 % limits.</summary>
/// <param name="Value">The figure.</param>
/// <param name="Low">The lower limit.</param>
/// <param name="High">The upper limit.</param>
public readonly record struct Ranged(double Value, double Low, double High);

/// <summary>What a forced choice showed.</summary>
/// <param name="Method">How it was asked.</param>
/// <param name="Right">Right answers.</param>
/// <param name="Judgements">All answers.</param>
/// <param name="ByLuck">Chance of so many right, or more, by guessing alone, 0 to 1.</param>
/// <param name="RightShare">Share of right answers with its limits, 0 to 1.</param>
/// <param name="CanTell">Share of tasters who really perceive the difference, with its limits, 0 to 1.</param>
/// <param name="CanTellError">Standard error of that share.</param>
/// <param name="DPrime">Size of the difference d' with its limits; infinite where everything was right: then only the lower limit speaks.</param>
/// <param name="DPrimeError">Standard error of d'; null at d' = 0 and where everything was right, where only the limits speak.</param>
public sealed record DiscriminationResult(
    DiscriminationMethod Method, int Right, int Judgements, double ByLuck, Ranged RightShare, Ranged CanTell, double CanTellError, Ranged DPrime, double? DPrimeError);

/// <summary>Can the panel tell two drinks apart?</summary>
public static class DiscriminationTest
{
    /// <summary>The size of a difference that tasters notice side by side, d': what a test with few judgements is measured by.</summary>
    public const double Noticeable = 1.5;

    /// <summary>Works out a forced choice.</summary>
    /// <param name="method">How it was asked.</param>
    /// <param name="right">Right answers, 0 to <paramref name="judgements"/>.</param>
    /// <param name="judgements">All answers, 1 to <see cref="BinomialTest.MostJudgements"/>.</param>
    /// <returns>The chance by luck, the share who can tell, and the size of the difference.</returns>
    /// <remarks>
    /// Source: docs/statistics.md, sections 4.2 to 4.5: exact binomial; share who can tell (right - guess)/(1 - guess), zero at least; limits of
    /// Clopper and Pearson carried through. Standard error of d' = sqrt(share (1 - share)/judgements)/slope. Valid for: independent judgements; with
    /// several judgements a taster the chance by luck holds, the limits do not (see <see cref="RepeatedJudgements"/>). Error: 1e-9.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A count outside its range.</exception>
    public static DiscriminationResult Of(DiscriminationMethod method, int right, int judgements)
    {
        var guess = method.Guess();
        var byLuck = BinomialTest.ByLuck(right, judgements, guess);
        var (low, high) = BinomialTest.Limits(right, judgements);
        var share = (double)right / judgements;
        var dPrime = Psychometric.DPrime(method, share);
        var spread = Math.Sqrt(share * (1 - share) / judgements);
        double? error = dPrime > 0 && right < judgements ? spread / Psychometric.Slope(method, dPrime) : null;
        return new DiscriminationResult(method, right, judgements, byLuck, new Ranged(share, low, high),
            new Ranged(CanTell(share, guess), CanTell(low, guess), CanTell(high, guess)), spread / (1 - guess),
            new Ranged(dPrime, Psychometric.DPrime(method, low), Psychometric.DPrime(method, high)), error);
    }

    /// <summary>Share of tasters who can tell, from the share of right answers.</summary>
    /// <param name="rightShare">Share of right answers, 0 to 1.</param>
    /// <param name="guess">Share right by guessing, above 0 and below 1.</param>
    /// <returns>0 to 1.</returns>
    /// <remarks>Source: docs/statistics.md, section 4.5: who cannot tell guesses. Valid for: any forced choice. Error: that of the model.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A share outside its range.</exception>
    public static double CanTell(double rightShare, double guess)
    {
        BinomialTest.CheckShare(guess, nameof(guess));
        return Math.Max(0, (Guard.InRange(rightShare, 0, 1) - guess) / (1 - guess));
    }

    /// <summary>Chance that a test shows a difference of a given size.</summary>
    /// <param name="method">How it is asked.</param>
    /// <param name="judgements">All answers, 1 to <see cref="BinomialTest.MostJudgements"/>.</param>
    /// <param name="dPrime">The true difference, 0 to <see cref="Psychometric.MostDPrime"/>.</param>
    /// <param name="level">The chance by luck that is accepted.</param>
    /// <returns>0 to 1.</returns>
    /// <remarks>Source: docs/statistics.md, section 4.6. Valid for: independent judgements. Error: 1e-8.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its range.</exception>
    public static double Power(DiscriminationMethod method, int judgements, double dPrime, double level = 0.05) =>
        PanelSize.Power(judgements, method.Guess(), Psychometric.Right(method, dPrime), level);

    /// <summary>The size of a difference in words.</summary>
    /// <param name="dPrime">Zero or more; may be infinite.</param>
    /// <remarks>Source: docs/statistics.md, section 4.5; the steps are ours. Valid for: any method. Error: words, no figure.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Negative or NaN.</exception>
    public static string InWords(double dPrime) => dPrime switch
    {
        >= 0 and < 0.5 => "hardly any difference",
        >= 0.5 and < 1 => "a faint difference",
        >= 1 and <= 2 => "a difference to notice side by side",
        > 2 => "an obvious difference",
        _ => throw new ArgumentOutOfRangeException(nameof(dPrime), dPrime, "Must be zero or more."),
    };

    /// <summary>The result in plain words, with its size; never "no difference" for want of tasters.</summary>
    /// <param name="result">What was found.</param>
    /// <param name="format">How the house writes numbers.</param>
    /// <returns>Different, or too few to say.</returns>
    /// <remarks>Source: docs/statistics.md, section 4.8. Valid for: one test fixed before the tasting, at 5 %. Error: none of its own.</remarks>
    public static Verdict Verdict(DiscriminationResult result, HouseFormat format)
    {
        var guessed = format.Number(result.Judgements * result.Method.Guess(), 0);
        var counted = $"{result.Right} of {result.Judgements} answers were right; guessing gives {guessed}.";
        if (result.Judgements < Statistics.Verdict.FewestForInference)
        {
            return new Verdict(VerdictKind.ScoresOnly, $"{counted} Too few answers to go beyond counting.");
        }
        if (result.ByLuck <= 0.05)
        {
            return new Verdict(VerdictKind.Different,
                $"{counted} The chance of that by guessing alone is {Statistics.Verdict.Chance(result.ByLuck, format)}. " +
                $"About {Tenths(result.CanTell.Value, format)} in 10 tasters ({Tenths(result.CanTell.Low, format)} to {Tenths(result.CanTell.High, format)} in 10) can really tell.");
        }
        var missed = 1 - Power(result.Method, result.Judgements, Noticeable);
        return new Verdict(VerdictKind.TooFewToSay,
            $"{counted} With {result.Judgements} answers a difference that tasters notice side by side would be missed about {Tenths(missed, format)} times in 10. " +
            "Too few answers to say that they are the same.");
    }

    private static string Tenths(double share, HouseFormat format) => format.Number(share * 10, 0);
}
