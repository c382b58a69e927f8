namespace MenuLab.Core.Pantry;

/// <summary>A figure as the builder takes it: the value, or the middle of its bounds, with a standard uncertainty where bounds tell one.</summary>
internal readonly record struct Stated(string Quantity, double Value, double Uncertainty, bool HasOwnValue, FigureStatus Status)
{
    /// <summary>Bounds are taken as a 95 % interval.</summary>
    public const double BoundsInUncertainties = 3.92;

    /// <summary>The same figure in another unit.</summary>
    public Stated Times(double factor) => this with { Value = Value * factor, Uncertainty = Uncertainty * factor };
}

/// <summary>The figures of one ingredient, one per quantity: a reading outranks the house's own figure, and that the shipped one.</summary>
internal sealed class FigureTable
{
    private readonly Dictionary<string, IngredientFigure> _best = new(StringComparer.Ordinal);

    /// <exception cref="ArgumentException">A quantity that nobody knows, or a figure that is not finite, negative, or outside its own bounds.</exception>
    public FigureTable(IReadOnlyList<IngredientFigure> figures)
    {
        foreach (var figure in figures)
        {
            Check(figure);
            if (!_best.TryGetValue(figure.Quantity, out var seen) || Rank(figure) >= Rank(seen))
            {
                _best[figure.Quantity] = figure;
            }
        }
    }

    /// <summary>The figure of a quantity, or null where neither a value nor an upper bound is known.</summary>
    public Stated? Find(string quantity)
    {
        if (!_best.TryGetValue(quantity, out var figure))
        {
            return null;
        }
        var low = double.IsNaN(figure.Low) ? double.NaN : figure.Low;
        var bounded = !double.IsNaN(low) && !double.IsNaN(figure.High);
        if (!double.IsNaN(figure.Value))
        {
            return new Stated(quantity, figure.Value, bounded ? (figure.High - low) / Stated.BoundsInUncertainties : double.NaN, true, figure.Status);
        }
        if (double.IsNaN(figure.High))
        {
            // "At least" alone says too little to put a figure in.
            return null;
        }
        low = double.IsNaN(low) ? 0 : low;
        return new Stated(quantity, (low + figure.High) / 2, (figure.High - low) / Stated.BoundsInUncertainties, false, figure.Status);
    }

    /// <summary>The value of a quantity, or NaN.</summary>
    public double Value(string quantity) => Find(quantity)?.Value ?? double.NaN;

    private static int Rank(IngredientFigure figure) =>
        figure.Status == FigureStatus.Measured ? 2 : figure.Origin.StartsWith("shipped", StringComparison.Ordinal) ? 0 : 1;

    private static void Check(IngredientFigure figure)
    {
        if (!FigureQuantities.All.Contains(figure.Quantity))
        {
            throw new ArgumentException($"Nobody knows a quantity called {figure.Quantity}.", nameof(figure));
        }
        // Only a strong-ion difference may be negative.
        var least = figure.Quantity == FigureQuantities.Charge ? double.NegativeInfinity : 0;
        foreach (var number in (ReadOnlySpan<double>)[figure.Value, figure.Low, figure.High])
        {
            if (double.IsInfinity(number) || number < least)
            {
                throw new ArgumentException($"{figure.Quantity} cannot be {number}.", nameof(figure));
            }
        }
        if (figure.Low > figure.High || figure.Value < figure.Low || figure.Value > figure.High)
        {
            throw new ArgumentException($"{figure.Quantity} lies outside its own bounds.", nameof(figure));
        }
    }
}
