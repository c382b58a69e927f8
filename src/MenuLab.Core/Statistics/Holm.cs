namespace MenuLab.Core.Statistics;

/// <summary>Chances made stricter when several questions are asked of one tasting.</summary>
public static class Holm
{
    /// <summary>Adjusts chances so that any false alarm among them stays within the level.</summary>
    /// <param name="chances">Chances by luck, each 0 to 1.</param>
    /// <returns>Adjusted chances in the same order, each at least as large, 1 at most.</returns>
    /// <remarks>Source: docs/statistics.md, section 0.4: the k-th smallest times (m - k + 1), never below one before it (Holm 1979). Valid for: any dependence. Error: none.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A chance outside 0 to 1, or NaN.</exception>
    public static IReadOnlyList<double> Adjust(IReadOnlyList<double> chances)
    {
        var adjusted = new double[chances.Count];
        var highest = 0.0;
        foreach (var chance in chances)
        {
            Guard.InRange(chance, 0, 1);
        }
        var order = Enumerable.Range(0, chances.Count).OrderBy(i => chances[i]).ToArray();
        for (var place = 0; place < order.Length; place++)
        {
            highest = Math.Max(highest, Math.Min(1, (order.Length - place) * chances[order[place]]));
            adjusted[order[place]] = highest;
        }
        return adjusted;
    }
}
