namespace MenuLab.Core.Statistics;

/// <summary>Means, variances and correlations of lists.</summary>
internal static class Moments
{
    /// <summary>Variance with n - 1; zero for equal values, of which there are two at least.</summary>
    public static double Variance(IReadOnlyList<double> values)
    {
        var mean = values.Average();
        return values.Sum(value => (value - mean) * (value - mean)) / (values.Count - 1);
    }

    /// <summary>Pearson's correlation; null where either list is constant.</summary>
    public static double? Correlation(IReadOnlyList<double> left, IReadOnlyList<double> right)
    {
        var (meanLeft, meanRight) = (left.Average(), right.Average());
        var (squaresLeft, squaresRight, products) = (0.0, 0.0, 0.0);
        for (var i = 0; i < left.Count; i++)
        {
            var (l, r) = (left[i] - meanLeft, right[i] - meanRight);
            squaresLeft += l * l;
            squaresRight += r * r;
            products += l * r;
        }
        // Equal scores may differ from their own mean by a rounding.
        return IsNothing(squaresLeft, left) || IsNothing(squaresRight, right) ? null : products / Math.Sqrt(squaresLeft * squaresRight);
    }

    /// <summary>A sum of squares that is rounding only, beside the values it came from.</summary>
    public static bool IsNothing(double squares, IEnumerable<double> values) => squares <= 1e-24 * values.Sum(value => value * value);
}
