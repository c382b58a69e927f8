using MenuLab.Core.House;

namespace MenuLab.Core.Statistics;

/// <summary>Can one drink stand in for another? That is shown by how few answers are right, not by a failure to show a difference.</summary>
/// <param name="Right">Right answers.</param>
/// <param name="Judgements">All answers.</param>
/// <param name="MostRight">Right answers up to which the drinks count as alike; null where none would do.</param>
/// <param name="Reachable">The limit is at least what guessing gives; otherwise only worse luck than guessing would pass and no claim is made.</param>
/// <param name="CanTellAtMost">Upper limit of the share of tasters who can tell, 0 to 1.</param>
public sealed record LikenessResult(int Right, int Judgements, int? MostRight, bool Reachable, double CanTellAtMost)
{
    /// <summary>The drinks count as alike.</summary>
    public bool Alike => Reachable && Right <= MostRight;
}

/// <summary>The test of likeness.</summary>
/// <remarks>
/// Source: docs/statistics.md, section 4.7. Valid for: one judgement a taster; several by one taster are not independent here
/// (AS 2542.2.4, 6.2). Error: rounding only.
/// </remarks>
public static class Likeness
{
    /// <summary>Right answers up to which two drinks count as alike.</summary>
    /// <param name="judgements">All answers, 1 to <see cref="BinomialTest.MostJudgements"/>.</param>
    /// <param name="guess">Share right by guessing, above 0 and below 1.</param>
    /// <param name="canTell">The largest share of tasters who may be able to tell, above 0 and below 1.</param>
    /// <param name="risk">The chance of calling them alike when more can tell, above 0 and below 1.</param>
    /// <returns>The count; null where not even no right answer would do.</returns>
    /// <remarks>Source, valid range and error: see the class.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its range.</exception>
    public static int? MostRight(int judgements, double guess, double canTell, double risk)
    {
        BinomialTest.Check(judgements, guess);
        BinomialTest.CheckShare(canTell, nameof(canTell));
        BinomialTest.CheckShare(risk, nameof(risk));
        var right = guess + canTell * (1 - guess);
        int? most = null;
        for (var x = 0; x <= judgements && Distributions.BinomialLower(x, judgements, right) <= risk; x++)
        {
            most = x;
        }
        return most;
    }

    /// <summary>Works out a test of likeness.</summary>
    /// <param name="method">How it was asked.</param>
    /// <param name="right">Right answers, 0 to <paramref name="judgements"/>.</param>
    /// <param name="judgements">All answers, 1 to <see cref="BinomialTest.MostJudgements"/>.</param>
    /// <param name="canTell">The largest share of tasters who may be able to tell, above 0 and below 1.</param>
    /// <param name="risk">The chance of calling them alike when more can tell, above 0 and below 1.</param>
    /// <returns>The limit, whether it can be reached, and the upper limit of the share who can tell.</returns>
    /// <remarks>Source, valid range and error: see the class; the upper limit is one-sided, Clopper and Pearson.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its range.</exception>
    public static LikenessResult Of(DiscriminationMethod method, int right, int judgements, double canTell, double risk)
    {
        var guess = method.Guess();
        var most = MostRight(judgements, guess, canTell, risk);
        Guard.InRange(right, 0, judgements);
        var high = right == judgements ? 1 : Distributions.BetaQuantile(1 - risk, right + 1, judgements - right);
        // A third of twelve is four, not 3.9999: compare whole answers.
        var reachable = most is { } count && count >= judgements * guess - 1e-9;
        return new LikenessResult(right, judgements, most, reachable, DiscriminationTest.CanTell(high, guess));
    }

    /// <summary>The result in plain words.</summary>
    /// <param name="result">What was found.</param>
    /// <param name="canTell">The largest share of tasters who may be able to tell, above 0 and below 1.</param>
    /// <param name="format">How the house writes numbers.</param>
    /// <returns>Close enough, or too few to say; refused where the panel cannot show it.</returns>
    /// <remarks>Source: docs/statistics.md, section 4.7. Valid for: one test fixed before the tasting. Error: none of its own.</remarks>
    public static Verdict Verdict(LikenessResult result, double canTell, HouseFormat format)
    {
        if (!result.Reachable)
        {
            return new Verdict(VerdictKind.TooFewToSay, $"{result.Judgements} answers cannot show likeness this strictly. More tasters, or a comparison of one named property, can.");
        }
        var counted = $"{result.Right} of {result.Judgements} answers were right; up to {result.MostRight} count as close enough.";
        return result.Alike
            ? new Verdict(VerdictKind.CloseEnough, $"{counted} At most {format.Percent(100 * result.CanTellAtMost)} of tasters can tell, and you allow {format.Percent(100 * canTell)}.")
            : new Verdict(VerdictKind.TooFewToSay, $"{counted} Up to {format.Percent(100 * result.CanTellAtMost)} of tasters may be able to tell: not shown to be close enough.");
    }
}
