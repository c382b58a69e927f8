namespace MenuLab.Core.Tastings;

/// <summary>Orders of serving in which every sample comes equally often in each place and equally often straight after every other.</summary>
public static class WilliamsSquare
{
    /// <summary>The most samples that are taken.</summary>
    public const int MostSamples = 20;

    /// <summary>The orders.</summary>
    /// <param name="samples">How many samples, 2 to <see cref="MostSamples"/>.</param>
    /// <returns>As many orders as samples, or twice as many for an odd number; samples counted from 0.</returns>
    /// <remarks>Source: docs/statistics.md, section 1.2; Williams 1949: a zigzag from both ends, then all its shifts; odd numbers also mirrored. Valid for: complete orders. Error: none.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Too few or too many samples.</exception>
    public static IReadOnlyList<IReadOnlyList<int>> Orders(int samples)
    {
        Guard.InRange(samples, 2, MostSamples);
        // 0, 1, p - 1, 2, p - 2, 3, ...
        var zigzag = Enumerable.Range(0, samples).Select(place => place % 2 == 1 ? (place + 1) / 2 : (samples - place / 2) % samples).ToArray();
        var orders = Enumerable.Range(0, samples).Select(shift => zigzag.Select(sample => (sample + shift) % samples).ToArray()).ToList();
        if (samples % 2 == 1)
        {
            orders.AddRange(orders.ConvertAll(order => order.Reverse().ToArray()));
        }
        return orders;
    }
}
