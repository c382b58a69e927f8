using MenuLab.Core.Pantry;

namespace MenuLab.Core.Iterations;

/// <summary>One ingredient across several states of a drink.</summary>
/// <param name="Ingredient">Which.</param>
/// <param name="Occurrence">0 for the first line with it, 1 for the second and so on.</param>
/// <param name="Lines">The line in each state, in the order handed in; null where that state has none.</param>
public sealed record AlignedLine(IngredientId Ingredient, int Occurrence, IReadOnlyList<SnapshotLine?> Lines)
{
    /// <summary>What the ingredient was called in the newest state that has it.</summary>
    public string Name => Lines.Last(l => l is not null)!.IngredientName;
}

/// <summary>Lines of several states of a drink, side by side: aligned by ingredient, never by position.</summary>
public static class AlignedLines
{
    /// <summary>Every line of every state exactly once.</summary>
    /// <param name="states">The states, the oldest first.</param>
    /// <returns>
    /// Rows in the order of pouring. Two lines with the same ingredient are told apart by their order. A line that only a
    /// later state has stands below the line that it stands below there.
    /// </returns>
    public static IReadOnlyList<AlignedLine> Of(IReadOnlyList<Snapshot> states)
    {
        var order = new List<(IngredientId Ingredient, int Occurrence)>();
        var found = new Dictionary<(IngredientId, int), SnapshotLine?[]>();
        for (var state = 0; state < states.Count; state++)
        {
            var above = -1;
            var seen = new Dictionary<IngredientId, int>();
            foreach (var line in states[state].Lines)
            {
                var ingredient = line.Line.Ingredient;
                var occurrence = seen.GetValueOrDefault(ingredient);
                seen[ingredient] = occurrence + 1;
                var key = (ingredient, occurrence);
                if (!found.TryGetValue(key, out var row))
                {
                    found[key] = row = new SnapshotLine?[states.Count];
                    order.Insert(above + 1, key);
                }
                row[state] = line;
                above = order.IndexOf(key);
            }
        }
        return [.. order.Select(key => new AlignedLine(key.Ingredient, key.Occurrence, found[key]))];
    }
}
