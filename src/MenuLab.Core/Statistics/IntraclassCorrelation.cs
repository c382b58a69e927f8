namespace MenuLab.Core.Statistics;

/// <summary>One intraclass correlation.</summary>
/// <param name="Value">The correlation with its 95 % limits; 1 at most, below zero where tasters agree less than by luck.</param>
/// <param name="F">The ratio of mean squares behind it.</param>
public readonly record struct Intraclass(Ranged Value, double F);

/// <summary>How far tasters' scores could stand in for one another, in the six usual forms.</summary>
/// <param name="SingleOneWay">One score, other tasters for each sample (1,1).</param>
/// <param name="Single">One score of a taster like these: would single scores be interchangeable? (2,1).</param>
/// <param name="SingleOrder">One score, levels of tasters aside: would single orders be? (3,1).</param>
/// <param name="MeanOneWay">The mean of so many scores, other tasters for each sample (1,k).</param>
/// <param name="Mean">The panel's mean (2,k).</param>
/// <param name="MeanOrder">The panel's mean, levels of tasters aside (3,k).</param>
public sealed record IntraclassResult(Intraclass SingleOneWay, Intraclass Single, Intraclass SingleOrder, Intraclass MeanOneWay, Intraclass Mean, Intraclass MeanOrder);

/// <summary>Intraclass correlations of a complete table.</summary>
public static class IntraclassCorrelation
{
    /// <summary>Works out all six forms.</summary>
    /// <param name="scores">Tasters in rows, samples in columns; two of each at least; points of the scale.</param>
    /// <returns>The six forms; null where samples or residuals do not vary, so that nothing can be compared.</returns>
    /// <remarks>Source: docs/statistics.md, section 7; Shrout and Fleiss 1979, limits included. Valid for: complete tables. Error: rounding.</remarks>
    /// <exception cref="ArgumentException">Fewer than two tasters or samples, or a score that is not finite.</exception>
    public static IntraclassResult? Of(double[,] scores)
    {
        ScoreTables.Check(scores);
        var (k, n) = (scores.GetLength(0), scores.GetLength(1));
        var sums = TwoWayAnalysis.Sums.Of(scores);
        var between = sums.Samples / (n - 1);
        var tasters = sums.Tasters / (k - 1);
        var error = sums.Error / ((n - 1) * (k - 1));
        var within = (sums.Tasters + sums.Error) / (n * (k - 1.0));
        if (error == 0 || between == 0)
        {
            return null;
        }
        var oneWay = OneOf(between / within, n - 1, n * (k - 1.0), k);
        var order = OneOf(between / error, n - 1, (n - 1.0) * (k - 1), k);

        var single = (between - error) / (between + (k - 1) * error + k * (tasters - error) / n);
        var ratio = tasters / error;
        var middle = n * (1 + (k - 1) * single) - k * single;
        var top = k * single * ratio + middle;
        var degrees = (k - 1) * (n - 1.0) * top * top / ((n - 1) * k * k * single * single * ratio * ratio + middle * middle);
        var (upper, lower) = (FQuantile(0.975, n - 1, degrees), FQuantile(0.975, degrees, n - 1));
        var rest = k * tasters + (k * n - k - n) * error;
        var low = n * (between - upper * error) / (upper * rest + n * between);
        var high = n * (lower * between - error) / (rest + n * lower * between);
        return new IntraclassResult(oneWay.One, new Intraclass(new Ranged(single, low, high), between / error), order.One,
            oneWay.All, new Intraclass(new Ranged(Many(single, k), Many(low, k), Many(high, k)), between / error), order.All);
    }

    // Forms with one error: everything follows from F and its limits.
    private static (Intraclass One, Intraclass All) OneOf(double f, double degrees1, double degrees2, int k)
    {
        var (low, high) = (f / FQuantile(0.975, degrees1, degrees2), f * FQuantile(0.975, degrees2, degrees1));
        return (new Intraclass(new Ranged((f - 1) / (f + k - 1), (low - 1) / (low + k - 1), (high - 1) / (high + k - 1)), f),
            new Intraclass(new Ranged(1 - 1 / f, 1 - 1 / low, 1 - 1 / high), f));
    }

    // Spearman and Brown: from one score to the mean of k.
    private static double Many(double single, int k) => k * single / (1 + (k - 1) * single);

    private static double FQuantile(double share, double degrees1, double degrees2)
    {
        var x = Distributions.BetaQuantile(share, degrees1 / 2, degrees2 / 2);
        return degrees2 * x / (degrees1 * (1 - x));
    }
}
