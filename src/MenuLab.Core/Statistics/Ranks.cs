namespace MenuLab.Core.Statistics;

/// <summary>Ranks within each taster; equal scores share the middle of their places. Kept doubled, so that halves are whole numbers and sums are exact.</summary>
internal static class Ranks
{
    /// <summary>Twice the rank of each value, the lowest first.</summary>
    public static int[] Doubled(IReadOnlyList<double> values)
    {
        var ranks = new int[values.Count];
        for (var i = 0; i < ranks.Length; i++)
        {
            var (below, equal) = (0, 0);
            for (var j = 0; j < ranks.Length; j++)
            {
                below += values[j] < values[i] ? 1 : 0;
                equal += values[j] == values[i] ? 1 : 0;
            }
            ranks[i] = 2 * below + equal + 1;
        }
        return ranks;
    }

    /// <summary>Twice the ranks of each taster's row.</summary>
    public static int[][] DoubledByTaster(double[,] scores) =>
        [.. Enumerable.Range(0, scores.GetLength(0)).Select(t => Doubled(ScoreTables.Row(scores, t)))];

    /// <summary>Sum of g^3 - g over the groups of g equal ranks.</summary>
    public static int Ties(int[] doubled) => doubled.GroupBy(rank => rank).Sum(group => group.Count() * group.Count() * group.Count() - group.Count());

    /// <summary>Sum of each column.</summary>
    public static int[] Sums(int[][] doubled) => [.. Enumerable.Range(0, doubled[0].Length).Select(column => doubled.Sum(row => row[column]))];

    /// <summary>Every different order of some ranks, the lowest first; their chances are equal.</summary>
    public static List<int[]> Arrangements(int[] doubled)
    {
        var current = doubled.Order().ToArray();
        var all = new List<int[]>();
        do
        {
            all.Add((int[])current.Clone());
        }
        while (Next(current));
        return all;
    }

    // The next order in the sense of a dictionary.
    private static bool Next(int[] items)
    {
        var pivot = items.Length - 2;
        while (pivot >= 0 && items[pivot] >= items[pivot + 1])
        {
            pivot--;
        }
        if (pivot < 0)
        {
            return false;
        }
        var other = items.Length - 1;
        while (items[other] <= items[pivot])
        {
            other--;
        }
        (items[pivot], items[other]) = (items[other], items[pivot]);
        Array.Reverse(items, pivot + 1, items.Length - pivot - 1);
        return true;
    }
}
