using MenuLab.Core.Statistics;

namespace MenuLab.Core.Tastings;

/// <summary>The glasses of a forced choice and their orders. Two drinks, 0 and 1.</summary>
public static class SetOrders
{
    /// <summary>Every order of a set.</summary>
    /// <param name="method">The method. With three glasses and a named property drink 0 must be the weaker: it stands there twice. In a duo-trio the first glass is the known reference.</param>
    /// <returns>Orders of drinks, first glass first.</returns>
    /// <remarks>Source: docs/statistics.md, section 4.1. Valid for: two drinks. Error: none.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">No such method.</exception>
    public static IReadOnlyList<IReadOnlyList<int>> All(DiscriminationMethod method) => method switch
    {
        DiscriminationMethod.Triangle => [[0, 0, 1], [0, 1, 0], [1, 0, 0], [1, 1, 0], [1, 0, 1], [0, 1, 1]],
        DiscriminationMethod.DuoTrio => [[0, 0, 1], [0, 1, 0], [1, 1, 0], [1, 0, 1]],
        DiscriminationMethod.PairedComparison => [[0, 1], [1, 0]],
        DiscriminationMethod.ThreeGlasses => [[0, 0, 1], [0, 1, 0], [1, 0, 0]],
        DiscriminationMethod.Tetrad => [[0, 0, 1, 1], [0, 1, 0, 1], [0, 1, 1, 0], [1, 1, 0, 0], [1, 0, 1, 0], [1, 0, 0, 1]],
        _ => throw new ArgumentOutOfRangeException(nameof(method), method, "No such method."),
    };

    /// <summary>Plans sets for a panel: all orders in turn, over all rounds as even as can be.</summary>
    /// <param name="method">The method.</param>
    /// <param name="tasters">How many tasters, 1 to <see cref="ServingPlan.MostTasters"/>.</param>
    /// <param name="rounds">How many sets each taster gets, 1 to 10.</param>
    /// <param name="draw">Where chance comes from.</param>
    /// <returns>By round and taster the order of the glasses.</returns>
    /// <remarks>Source: docs/statistics.md, sections 4.1 and 4.4: cycle through the orders, the rest by chance. Valid for: the same rounds for everybody. Error: none.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A count outside its range.</exception>
    public static IReadOnlyList<IReadOnlyList<IReadOnlyList<int>>> Rounds(DiscriminationMethod method, int tasters, int rounds, Draw draw)
    {
        Guard.InRange(tasters, 1, ServingPlan.MostTasters);
        Guard.InRange(rounds, 1, 10);
        var orders = All(method).ToArray();
        SeededDraws.Shuffle<IReadOnlyList<int>>(orders, draw);
        var seats = Enumerable.Range(0, tasters).ToArray();
        SeededDraws.Shuffle<int>(seats, draw);
        // Going on where the last round ended evens the sum; where a round is even by itself, one step on gives everybody another order.
        var step = tasters % orders.Length == 0 ? 1 : tasters % orders.Length;
        return [.. Enumerable.Range(0, rounds).Select(IReadOnlyList<IReadOnlyList<int>> (round) =>
            [.. Enumerable.Range(0, tasters).Select(taster => orders[(seats[taster] + round * step) % orders.Length])])];
    }
}
