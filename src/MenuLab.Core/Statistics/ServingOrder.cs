using MenuLab.Core.House;

namespace MenuLab.Core.Statistics;

/// <summary>One score and when it was given.</summary>
/// <param name="Taster">The taster, counted from 0 without gaps.</param>
/// <param name="Position">The place in the taster's order, counted from 0 without gaps.</param>
/// <param name="Sample">The sample, counted from 0 without gaps.</param>
/// <param name="Value">Points of the scale.</param>
public readonly record struct ServedScore(int Taster, int Position, int Sample, double Value);

/// <summary>What the order of serving did.</summary>
/// <param name="Position">Whether scores depend on the place in the order; null where the design cannot tell.</param>
/// <param name="Samples">Whether the samples differ, places taken out; null where the design cannot tell.</param>
/// <param name="CarryOver">Whether scores depend on the sample before; null where the design cannot tell.</param>
/// <param name="Trend">Points from one place to the next; null where the design cannot tell.</param>
/// <param name="MeanSquare">Residual mean square with places and samples taken out, points squared; null where the design leaves none.</param>
public sealed record ServingOrderResult(FTest? Position, FTest? Samples, FTest? CarryOver, Coefficient? Trend, double? MeanSquare);

/// <summary>Whether later samples were scored differently, and whether a sample coloured the next.</summary>
public static class ServingOrder
{
    /// <summary>Works out the effect of the order.</summary>
    /// <param name="scores">Every score with its place.</param>
    /// <returns>The effects; those that the design cannot tell from others are null.</returns>
    /// <remarks>
    /// Source: docs/statistics.md, section 1.4: least squares with tasters meant. A panel of eight misses most carry-over: balance and rinse
    /// rather than rely on the test. Valid for: one session a taster. Error: rounding.
    /// </remarks>
    /// <exception cref="ArgumentException">No scores, a negative number, a place twice, or a score that is not finite.</exception>
    public static ServingOrderResult Of(IReadOnlyList<ServedScore> scores)
    {
        ScoreTables.CheckFinite([.. scores.Select(score => score.Value)]);
        if (scores.Any(s => s.Taster < 0 || s.Position < 0 || s.Sample < 0) || scores.DistinctBy(s => (s.Taster, s.Position)).Count() != scores.Count)
        {
            throw new ArgumentException("Tasters, places and samples are counted from 0, and a taster has one sample a place.", nameof(scores));
        }
        var before = scores.ToDictionary(s => (s.Taster, s.Position), s => s.Sample);
        var values = scores.Select(s => s.Value).ToArray();
        var tasters = Columns(scores, s => s.Taster);
        var positions = Columns(scores, s => s.Position);
        var samples = Columns(scores, s => s.Sample);
        // The level "none before" is the first place itself, so it has no column.
        var previous = Enumerable.Range(0, samples.Count)
            .Select(sample => scores.Select(s => before.TryGetValue((s.Taster, s.Position - 1), out var last) && last == sample ? 1.0 : 0).ToArray()).ToList();
        double[] place = [.. scores.Select(s => (double)s.Position)];

        var full = new LeastSquares([.. tasters, .. positions, .. samples], values);
        var carried = new LeastSquares([.. tasters, .. positions, .. samples, .. previous], values);
        List<double[]> linear = [.. tasters, .. samples, place];
        return new ServingOrderResult(
            Compared(full, new LeastSquares([.. tasters, .. samples], values)),
            Compared(full, new LeastSquares([.. tasters, .. positions], values)),
            Compared(carried, full),
            Coefficient.Of(new LeastSquares(linear, values), linear.Count - 1),
            full.Degrees > 0 ? full.MeanSquare : null);
    }

    /// <summary>What the lead is told; null where the order did nothing worth telling.</summary>
    /// <param name="result">What was found.</param>
    /// <param name="matters">The smallest difference worth acting on, above zero, in points.</param>
    /// <param name="format">How the house writes numbers.</param>
    /// <remarks>Source: docs/statistics.md, section 1.4: told below a chance of 5 % and from half of what matters. Valid for: balanced orders. Error: none of its own.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Nothing matters.</exception>
    public static string? Sentence(ServingOrderResult result, double matters, HouseFormat format)
    {
        if (!(matters > 0))
        {
            throw new ArgumentOutOfRangeException(nameof(matters), matters, "Must be above zero.");
        }
        if (result.Trend is not { ByLuck: < 0.05 } trend || Math.Abs(trend.Value) < matters / 2)
        {
            return null;
        }
        var size = format.Number(Math.Abs(trend.Value), 1);
        return trend.Value < 0
            ? $"Later samples scored lower, by about {size} points from one to the next. Where the order was balanced the comparison is fair, but plan fewer samples next time."
            : $"Later samples scored higher, by about {size} points from one to the next. Where the order was balanced the comparison is fair, but serve a first glass that does not count next time.";
    }

    private static FTest? Compared(LeastSquares large, LeastSquares small)
    {
        var degrees = large.Rank - small.Rank;
        var effect = TwoWayAnalysis.Sums.Rounded(small.ResidualSumOfSquares - large.ResidualSumOfSquares, large.SumOfSquares);
        return degrees < 1 || large.Degrees < 1 ? null
            : FTest.Of(effect / degrees, degrees, large.MeanSquare, large.Degrees);
    }

    private static List<double[]> Columns(IReadOnlyList<ServedScore> scores, Func<ServedScore, int> level) =>
        LeastSquares.Indicators([.. scores.Select(level)], scores.Max(level) + 1);
}
