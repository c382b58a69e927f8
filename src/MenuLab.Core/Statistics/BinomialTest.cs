namespace MenuLab.Core.Statistics;

/// <summary>Right answers against guessing, exactly: the binomial distribution behind every forced choice.</summary>
/// <remarks>Source: docs/statistics.md, sections 4.2 and 4.3. Valid for: independent judgements, 1 to <see cref="MostJudgements"/>. Error: rounding, 1e-10.</remarks>
public static class BinomialTest
{
    /// <summary>The most judgements that are taken.</summary>
    public const int MostJudgements = 10_000;

    /// <summary>Chance of so many right answers or more by guessing alone.</summary>
    /// <param name="right">Right answers, 0 to <paramref name="judgements"/>.</param>
    /// <param name="judgements">All answers, 1 to <see cref="MostJudgements"/>.</param>
    /// <param name="guess">Share right by guessing, above 0 and below 1.</param>
    /// <returns>0 to 1.</returns>
    /// <remarks>Source, valid range and error: see the class.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its range.</exception>
    public static double ByLuck(int right, int judgements, double guess)
    {
        Check(judgements, guess);
        Guard.InRange(right, 0, judgements);
        return Distributions.BinomialUpper(right, judgements, guess);
    }

    /// <summary>Like <see cref="ByLuck"/>, but only half of the outcome itself counts: less strict, for show only.</summary>
    /// <param name="right">Right answers, 0 to <paramref name="judgements"/>.</param>
    /// <param name="judgements">All answers, 1 to <see cref="MostJudgements"/>.</param>
    /// <param name="guess">Share right by guessing, above 0 and below 1.</param>
    /// <returns>0 to 1.</returns>
    /// <remarks>Source, valid range and error: see the class.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its range.</exception>
    public static double ByLuckHalfCounted(int right, int judgements, double guess) =>
        ByLuck(right, judgements, guess) - Distributions.BinomialPoint(right, judgements, guess) / 2;

    /// <summary>Chance of a split as uneven as this one, either way, when both answers are equally likely.</summary>
    /// <param name="forOne">Answers for one side, zero or more.</param>
    /// <param name="forOther">Answers for the other side, zero or more; not both zero.</param>
    /// <returns>0 to 1: the smaller tail doubled, 1 at most.</returns>
    /// <remarks>Source, valid range and error: see the class. For preferences and for comparisons without a direction.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A negative count, or no answers at all.</exception>
    public static double EitherWay(int forOne, int forOther)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(forOne);
        ArgumentOutOfRangeException.ThrowIfNegative(forOther);
        return Math.Min(1, 2 * ByLuck(Math.Max(forOne, forOther), forOne + forOther, 0.5));
    }

    /// <summary>The fewest right answers that guessing gives no more often than <paramref name="level"/>.</summary>
    /// <param name="judgements">All answers, 1 to <see cref="MostJudgements"/>.</param>
    /// <param name="guess">Share right by guessing, above 0 and below 1.</param>
    /// <param name="level">The chance that is accepted, above 0 and below 1; for either direction hand in half of it.</param>
    /// <returns>The count; null where even all right would not do.</returns>
    /// <remarks>Source, valid range and error: see the class. The triangle equals the table in FAO document V7180E, Appendix A, in every cell.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its range.</exception>
    public static int? FewestRight(int judgements, double guess, double level)
    {
        Check(judgements, guess);
        CheckShare(level, nameof(level));
        // Fewer than guessing gives come up more than half of the time.
        return FewestRight(judgements, guess, level, level <= 0.5 ? (int)(judgements * guess) : 0);
    }

    /// <summary>Limits of the true share of right answers, 95 % for the usual level.</summary>
    /// <param name="right">Right answers, 0 to <paramref name="judgements"/>.</param>
    /// <param name="judgements">All answers, 1 to <see cref="MostJudgements"/>.</param>
    /// <param name="outside">Chance left outside on both sides together, above 0 and below 1.</param>
    /// <returns>Low and high, 0 to 1.</returns>
    /// <remarks>Source: Clopper and Pearson through beta quantiles (docs/statistics.md, section 4.5). Valid for: independent judgements. Error: 1e-10; the limits hold at least the level, often more.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its range.</exception>
    public static (double Low, double High) Limits(int right, int judgements, double outside = 0.05)
    {
        Check(judgements, 0.5);
        Guard.InRange(right, 0, judgements);
        CheckShare(outside, nameof(outside));
        return (right == 0 ? 0 : Distributions.BetaQuantile(outside / 2, right, judgements - right + 1),
            right == judgements ? 1 : Distributions.BetaQuantile(1 - outside / 2, right + 1, judgements - right));
    }

    // The count never falls when a judgement is added, so a search over panel sizes goes on from the last answer.
    internal static int? FewestRight(int judgements, double guess, double level, int from)
    {
        for (var right = Math.Max(0, from); right <= judgements; right++)
        {
            if (Distributions.BinomialUpper(right, judgements, guess) <= level)
            {
                return right;
            }
        }
        return null;
    }

    internal static void Check(int judgements, double guess)
    {
        Guard.InRange(judgements, 1, MostJudgements);
        CheckShare(guess, nameof(guess));
    }

    internal static void CheckShare(double share, string name)
    {
        if (!(share > 0 && share < 1))
        {
            throw new ArgumentOutOfRangeException(name, share, "Must be above 0 and below 1.");
        }
    }
}
