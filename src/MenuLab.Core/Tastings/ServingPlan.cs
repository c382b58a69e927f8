using MenuLab.Core.Statistics;

namespace MenuLab.Core.Tastings;

/// <summary>In which order each taster gets the samples.</summary>
/// <param name="Samples">How many samples there are, counted from 0.</param>
/// <param name="Orders">The order of each taster.</param>
/// <param name="Balance">How fair the orders are.</param>
public sealed record ServingPlan(int Samples, IReadOnlyList<IReadOnlyList<int>> Orders, OrderBalance Balance)
{
    /// <summary>The most tasters that are planned.</summary>
    public const int MostTasters = 200;

    private const int Restarts = 500;
    private const int MostRowsGoneThrough = 10;
    private const int MostSamplesGoneThrough = 6;

    /// <summary>Plans complete orders: whole Williams squares first, then the rows that leave the counts most even.</summary>
    /// <param name="tasters">How many tasters, 1 to <see cref="MostTasters"/>.</param>
    /// <param name="samples">How many samples, 2 to <see cref="WilliamsSquare.MostSamples"/>.</param>
    /// <param name="draw">Where chance comes from: which sample is which in the square, and which taster gets which row. Places are never shuffled.</param>
    /// <returns>The plan.</returns>
    /// <remarks>
    /// Source: docs/statistics.md, section 1.2. The rest is gone through up to ten rows (up to ten samples, even; up to five, odd), else it is the best of 500 chance selections. Valid for: each
    /// taster tastes every sample once. Error: the rest of a larger square may not be the very best.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A count outside its range.</exception>
    public static ServingPlan Complete(int tasters, int samples, Draw draw)
    {
        Guard.InRange(tasters, 1, MostTasters);
        var rows = WilliamsSquare.Orders(samples);
        var chosen = new List<IReadOnlyList<int>>();
        for (var square = 0; square < tasters / rows.Count; square++)
        {
            chosen.AddRange(rows);
        }
        chosen.AddRange(Remainder(rows, tasters % rows.Count, samples, draw));

        var names = Enumerable.Range(0, samples).ToArray();
        SeededDraws.Shuffle<int>(names, draw);
        var orders = chosen.Select(IReadOnlyList<int> (row) => [.. row.Select(sample => names[sample])]).ToArray();
        SeededDraws.Shuffle<IReadOnlyList<int>>(orders, draw);
        return new ServingPlan(samples, orders, OrderBalance.Of(orders, samples));
    }

    /// <summary>Adds a taster who comes late: the order that leaves the counts most even; nobody else's order changes.</summary>
    /// <param name="draw">Where chance comes from: which of equally good orders.</param>
    /// <returns>The plan with one more taster, the last.</returns>
    /// <remarks>Source: the same measure as for the rest of a square. All orders are gone through up to six samples, else 500 chance ones. Valid for: complete orders. Error: none up to six samples.</remarks>
    /// <exception cref="InvalidOperationException">The plan has incomplete blocks: give the late taster a block of his own.</exception>
    public ServingPlan WithLateTaster(Draw draw)
    {
        if (Orders[0].Count != Samples)
        {
            throw new InvalidOperationException("A late taster can only be added to complete orders.");
        }
        var best = Best(Candidates(Samples, draw), Orders, draw);
        return new ServingPlan(Samples, [.. Orders, best], OrderBalance.Of([.. Orders, best], Samples));
    }

    /// <summary>Plans incomplete blocks, each taster a block; its order keeps places and neighbours as even as the blocks allow.</summary>
    /// <param name="design">The blocks.</param>
    /// <param name="tasters">How many tasters (or tasters and sessions), 1 to <see cref="MostTasters"/>; a multiple of the blocks keeps the balance.</param>
    /// <param name="draw">Where chance comes from.</param>
    /// <returns>The plan.</returns>
    /// <remarks>
    /// Source: docs/statistics.md, section 1.3: where a block comes as often as its own Williams square has rows, that square (Patterson 1951), else the
    /// most even order one after another. Valid for: blocks of up to six samples. Error: one after another is not always the very best.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A count outside its range.</exception>
    public static ServingPlan Blocks(IncompleteBlocks design, int tasters, Draw draw)
    {
        Guard.InRange(tasters, 1, MostTasters);
        var names = Enumerable.Range(0, design.Samples).ToArray();
        SeededDraws.Shuffle<int>(names, draw);
        var times = tasters / design.Blocks.Count;
        var square = WilliamsSquare.Orders(design.BlockSize);
        var orders = new List<IReadOnlyList<int>>();
        if (times > 0 && times % square.Count == 0 && tasters % design.Blocks.Count == 0)
        {
            foreach (var block in design.Blocks)
            {
                for (var time = 0; time < times; time++)
                {
                    orders.Add([.. square[time % square.Count].Select(place => names[block[place]])]);
                }
            }
        }
        else
        {
            var sequence = Enumerable.Range(0, design.Blocks.Count).ToArray();
            for (var taster = 0; taster < tasters; taster++)
            {
                if (taster % sequence.Length == 0)
                {
                    SeededDraws.Shuffle<int>(sequence, draw);
                }
                var block = design.Blocks[sequence[taster % sequence.Length]];
                orders.Add(Best(Candidates(design.BlockSize, draw).Select(IReadOnlyList<int> (order) => [.. order.Select(place => names[block[place]])]), orders, draw, design.Samples));
            }
        }
        var shuffled = orders.ToArray();
        SeededDraws.Shuffle<IReadOnlyList<int>>(shuffled, draw);
        return new ServingPlan(design.Samples, shuffled, OrderBalance.Of(shuffled, design.Samples));
    }

    private IReadOnlyList<int> Best(IEnumerable<IReadOnlyList<int>> candidates, IReadOnlyList<IReadOnlyList<int>> before, Draw draw) => Best(candidates, before, draw, Samples);

    // Ties are broken by chance, so that no order is favoured.
    private static IReadOnlyList<int> Best(IEnumerable<IReadOnlyList<int>> candidates, IReadOnlyList<IReadOnlyList<int>> before, Draw draw, int samples)
    {
        var best = new List<IReadOnlyList<int>>();
        var least = double.PositiveInfinity;
        var counts = before.Count == 0 ? null : OrderBalance.Of(before, samples);
        foreach (var candidate in candidates)
        {
            // One more order adds 2 count + 1 to the squares of each cell it falls into; the rest is the same for all.
            var cost = 0.0;
            for (var place = 0; place < candidate.Count; place++)
            {
                cost += counts?.InPlace[candidate[place], place] ?? 0;
                cost += place == 0 ? 0 : counts?.After[candidate[place - 1], candidate[place]] ?? 0;
            }
            if (cost < least)
            {
                best.Clear();
                least = cost;
            }
            if (cost == least)
            {
                best.Add(candidate);
            }
        }
        return best[draw(best.Count)];
    }

    private static IEnumerable<IReadOnlyList<int>> Candidates(int samples, Draw draw)
    {
        if (samples <= MostSamplesGoneThrough)
        {
            return Ranks.Arrangements([.. Enumerable.Range(0, samples)]);
        }
        return Enumerable.Range(0, Restarts).Select(IReadOnlyList<int> (_) =>
        {
            var order = Enumerable.Range(0, samples).ToArray();
            SeededDraws.Shuffle<int>(order, draw);
            return order;
        });
    }

    private static List<IReadOnlyList<int>> Remainder(IReadOnlyList<IReadOnlyList<int>> rows, int count, int samples, Draw draw)
    {
        if (count == 0)
        {
            return [];
        }
        var selections = rows.Count <= MostRowsGoneThrough
            ? Enumerable.Range(0, 1 << rows.Count).Where(set => int.PopCount(set) == count).Select(set => Enumerable.Range(0, rows.Count).Where(row => (set & (1 << row)) != 0).ToArray())
            : Enumerable.Range(0, Restarts).Select(_ =>
            {
                var order = Enumerable.Range(0, rows.Count).ToArray();
                SeededDraws.Shuffle<int>(order, draw);
                return order[..count];
            });
        var best = selections.Select(selection => selection.Select(row => rows[row]).ToList())
            .GroupBy(selection => Math.Round(OrderBalance.Of(selection, samples).Cost, 9)).MinBy(group => group.Key)!.ToList();
        return best[draw(best.Count)];
    }
}
