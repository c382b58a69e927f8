namespace MenuLab.Core.Statistics;

/// <summary>Several judgements by each taster.</summary>
/// <param name="Right">Right answers, all tasters together.</param>
/// <param name="Judgements">All answers.</param>
/// <param name="ByLuck">Chance of so many right, or more, by guessing alone: valid although answers of one taster belong together.</param>
/// <param name="RightShare">Share of right answers, 0 to 1.</param>
/// <param name="RightShareError">Its standard error, from how tasters differ; null for one taster.</param>
/// <param name="SomebodyAllRightByLuck">Chance that at least one taster has everything right by guessing alone.</param>
public sealed record RepeatedResult(int Right, int Judgements, double ByLuck, double RightShare, double? RightShareError, double SomebodyAllRightByLuck);

/// <summary>Forced choices that each taster made several times.</summary>
public static class RepeatedJudgements
{
    /// <summary>Works out repeated judgements.</summary>
    /// <param name="rightByTaster">Right answers of each taster, 0 to <paramref name="rounds"/>; one taster or more.</param>
    /// <param name="rounds">Judgements of each taster, 1 or more.</param>
    /// <param name="guess">Share right by guessing, above 0 and below 1.</param>
    /// <returns>The pooled test and what tasters' differences say about its precision.</returns>
    /// <remarks>
    /// Source: docs/statistics.md, section 4.4 (AS 2542.2.4, 6.2): without a difference all answers are independent guesses, so the pooled
    /// test of difference holds; a claim of likeness or limits do not. Valid for: the same rounds for each taster. Error: 1e-10.
    /// </remarks>
    /// <exception cref="ArgumentException">No tasters.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A count outside its range.</exception>
    public static RepeatedResult Of(IReadOnlyList<int> rightByTaster, int rounds, double guess)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(rounds, 1);
        if (rightByTaster.Count == 0)
        {
            throw new ArgumentException("Name at least one taster.", nameof(rightByTaster));
        }
        foreach (var count in rightByTaster)
        {
            Guard.InRange(count, 0, rounds);
        }
        var tasters = rightByTaster.Count;
        var right = rightByTaster.Sum();
        var share = (double)right / (tasters * rounds);
        double? error = tasters < 2 ? null
            : Math.Sqrt(rightByTaster.Sum(count => Math.Pow((double)count / rounds - share, 2)) / (tasters - 1) / tasters);
        return new RepeatedResult(right, tasters * rounds, BinomialTest.ByLuck(right, tasters * rounds, guess), share, error,
            1 - Math.Pow(1 - Math.Pow(guess, rounds), tasters));
    }
}
