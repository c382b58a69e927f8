namespace MenuLab.Core.Statistics;

/// <summary>Limits from resampling.</summary>
internal static class Percentiles
{
    /// <summary>The middle 95 % of drawn figures beside the figure itself; a straight line between neighbours.</summary>
    public static Ranged Middle95(double value, List<double> drawn)
    {
        drawn.Sort();
        return new Ranged(value, At(drawn, 0.025), At(drawn, 0.975));
    }

    private static double At(List<double> sorted, double share)
    {
        var place = share * (sorted.Count - 1);
        var below = (int)place;
        return below + 1 < sorted.Count ? sorted[below] + (place - below) * (sorted[below + 1] - sorted[below]) : sorted[below];
    }
}
