namespace MenuLab.Core.Statistics;

/// <summary>One tasting of one taster beside the rest of the panel.</summary>
/// <param name="Own">The taster's scores, one a sample, two at least.</param>
/// <param name="Rest">The mean of all other tasters, in the same order.</param>
/// <param name="Gaps">Distance of the two scores of each hidden duplicate, points of a nine-point scale; may be empty.</param>
/// <param name="RepeatError">The taster's repeat error; null without repeats.</param>
/// <param name="PanelRepeatError">The middle repeat error of the panel; null without repeats.</param>
public sealed record TasterSession(IReadOnlyList<double> Own, IReadOnlyList<double> Rest, IReadOnlyList<double> Gaps, double? RepeatError, double? PanelRepeatError);

/// <summary>Whether a taster may have answered without tasting. A flag leads to a conversation; nobody is taken out after a result was seen.</summary>
/// <param name="ByLuck">Chance that shuffled answers go with the rest of the panel as well; null where it cannot be computed.</param>
/// <param name="Enough">There are two tastings and eight answers at least; otherwise no flag is given.</param>
/// <param name="NotWithTheRest">That chance is above one half.</param>
/// <param name="Unsteady">The repeat error is more than one and a half times that of the panel.</param>
/// <param name="FarApart">Half of the hidden duplicates or more are three points apart or more.</param>
public sealed record LuckFlags(double? ByLuck, bool Enough, bool NotWithTheRest, bool Unsteady, bool FarApart)
{
    /// <summary>Two of the three signs hold, on enough answers.</summary>
    public bool Flagged => Enough && (NotWithTheRest ? 1 : 0) + (Unsteady ? 1 : 0) + (FarApart ? 1 : 0) >= 2;
}

/// <summary>Looks for answers given by luck.</summary>
public static class AnswersByLuck
{
    /// <summary>Shuffles where going through every order would take too long.</summary>
    public const int Shuffles = 5000;

    /// <summary>Answers faster than this many seconds a sample are worth a look. Our choice.</summary>
    public const double FastestSeconds = 5;

    private const int MostOrders = 5040;

    /// <summary>Looks at one taster over several tastings.</summary>
    /// <param name="sessions">The taster's tastings, one or more.</param>
    /// <param name="draws">Random numbers for shuffling.</param>
    /// <returns>The chance and the signs.</returns>
    /// <remarks>
    /// Source: docs/statistics.md, section 7; the thresholds are ours. The statistic is the sum of standardised score times the mean of the others; one
    /// tasting of up to seven samples is gone through in every order, else 5,000 shuffles within tastings. With eight tasters and a 5 % rule a false
    /// flag comes up in a third of tastings. Valid for: one property. Error: 0.007 when shuffled.
    /// </remarks>
    /// <exception cref="ArgumentException">No tastings, lists of different length, fewer than two samples, or a score that is not finite.</exception>
    public static LuckFlags Of(IReadOnlyList<TasterSession> sessions, SeededDraws draws)
    {
        if (sessions.Count == 0 || sessions.Any(s => s.Own.Count < 2 || s.Own.Count != s.Rest.Count))
        {
            throw new ArgumentException("Needs one tasting at least, and as many scores of the rest as of the taster.", nameof(sessions));
        }
        foreach (var session in sessions)
        {
            ScoreTables.CheckFinite(session.Own);
            ScoreTables.CheckFinite(session.Rest);
        }
        var byLuck = ByLuck(sessions, draws);
        var gaps = sessions.SelectMany(s => s.Gaps).ToList();
        var repeats = sessions.Where(s => s.RepeatError is not null && s.PanelRepeatError is not null).ToList();
        return new LuckFlags(byLuck, sessions.Count >= 2 && sessions.Sum(s => s.Own.Count) >= 8, byLuck > 0.5,
            repeats.Count > 0 && repeats.Average(s => s.RepeatError!.Value) > 1.5 * repeats.Average(s => s.PanelRepeatError!.Value),
            gaps.Count > 0 && 2 * gaps.Count(gap => Math.Abs(gap) >= 3) >= gaps.Count);
    }

    private static double? ByLuck(IReadOnlyList<TasterSession> sessions, SeededDraws draws)
    {
        var usable = sessions.Select(s => (Own: Standardised(s.Own), Others: s.Rest)).Where(s => s.Own is not null && Standardised(s.Others) is not null).ToList();
        if (usable.Count == 0)
        {
            return null;
        }
        var observed = usable.Sum(s => Dot(s.Own!, s.Others)) - 1e-9;
        if (usable is [var only] && Factorial(only.Own!.Length) <= MostOrders)
        {
            // Equal scores change places, too, so that every order has the same chance.
            var orders = Ranks.Arrangements([.. Enumerable.Range(0, only.Own.Length)]);
            return orders.Count(order => Dot(only.Own, order, only.Others) >= observed) / (double)orders.Count;
        }
        var reached = 0;
        for (var i = 0; i < Shuffles; i++)
        {
            var sum = 0.0;
            foreach (var (own, rest) in usable)
            {
                draws.Shuffle<double>(own);
                sum += Dot(own!, rest);
            }
            reached += sum >= observed ? 1 : 0;
        }
        return (reached + 1.0) / (Shuffles + 1.0);
    }

    // Null where everything got one score.
    private static double[]? Standardised(IReadOnlyList<double> scores)
    {
        var (mean, variance) = (scores.Average(), Moments.Variance(scores));
        return Moments.IsNothing(variance, scores) ? null : [.. scores.Select(score => (score - mean) / Math.Sqrt(variance))];
    }

    private static double Dot(double[] left, IReadOnlyList<double> right)
    {
        var sum = 0.0;
        for (var i = 0; i < left.Length; i++)
        {
            sum += left[i] * right[i];
        }
        return sum;
    }

    private static double Dot(double[] left, int[] order, IReadOnlyList<double> right)
    {
        var sum = 0.0;
        for (var i = 0; i < left.Length; i++)
        {
            sum += left[order[i]] * right[i];
        }
        return sum;
    }

    private static int Factorial(int n) => n > 12 ? int.MaxValue : Enumerable.Range(1, n).Aggregate(1, (product, i) => product * i);
}
