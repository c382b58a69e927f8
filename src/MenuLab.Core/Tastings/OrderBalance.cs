namespace MenuLab.Core.Tastings;

/// <summary>How fair a set of orders is.</summary>
public enum Fairness
{
    /// <summary>Every sample equally often in each place and after each other.</summary>
    Full,
    /// <summary>Nowhere more than one apart.</summary>
    Nearly,
    /// <summary>Somewhere two or more apart.</summary>
    Partial,
}

/// <summary>How often samples come in each place and straight after one another.</summary>
/// <param name="InPlace">How often each sample (row) comes in each place (column).</param>
/// <param name="After">How often the column's sample comes straight after the row's.</param>
/// <param name="Cost">Sum of squared distances from even counts; 0 for a full balance.</param>
/// <param name="Fairness">How fair that is.</param>
public sealed record OrderBalance(int[,] InPlace, int[,] After, double Cost, Fairness Fairness)
{
    /// <summary>Counts orders.</summary>
    /// <param name="orders">Orders of samples counted from 0; one order or more; in incomplete blocks shorter than there are samples.</param>
    /// <param name="samples">How many samples, 2 or more.</param>
    /// <returns>Counts and fairness.</returns>
    /// <remarks>Source: docs/statistics.md, section 1.2. Valid for: orders of one length. Error: none.</remarks>
    /// <exception cref="ArgumentException">No orders, orders of different length, or a sample that is not there or comes twice.</exception>
    public static OrderBalance Of(IReadOnlyList<IReadOnlyList<int>> orders, int samples)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(samples, 2);
        if (orders.Count == 0 || orders.Any(order => order.Count != orders[0].Count || order.Distinct().Count() != order.Count || order.Any(s => s < 0 || s >= samples)))
        {
            throw new ArgumentException("Orders must have one length and name each sample once at most.", nameof(orders));
        }
        var places = orders[0].Count;
        var (inPlace, after) = (new int[samples, places], new int[samples, samples]);
        foreach (var order in orders)
        {
            for (var place = 0; place < places; place++)
            {
                inPlace[order[place], place]++;
                if (place > 0)
                {
                    after[order[place - 1], order[place]]++;
                }
            }
        }
        var even = (double)orders.Count / samples;
        var evenAfter = orders.Count * (places - 1.0) / (samples * (samples - 1));
        var pairs = Enumerable.Range(0, samples).SelectMany(a => Enumerable.Range(0, samples).Where(b => b != a).Select(b => after[a, b])).ToList();
        var cells = inPlace.Cast<int>().ToList();
        var cost = cells.Sum(count => (count - even) * (count - even)) + pairs.Sum(count => (count - evenAfter) * (count - evenAfter));
        var spread = Math.Max(cells.Max() - cells.Min(), pairs.Max() - pairs.Min());
        return new OrderBalance(inPlace, after, cost, spread == 0 ? Fairness.Full : spread == 1 ? Fairness.Nearly : Fairness.Partial);
    }

    /// <summary>The fairness in words, for the lead.</summary>
    public string InWords => Fairness switch
    {
        Fairness.Full => "Order balance: full.",
        Fairness.Nearly => "Order balance: nearly full.",
        _ => "Order balance: partial.",
    };
}
