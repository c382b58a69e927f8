using System.Text;

namespace MenuLab.Core.Statistics;

/// <summary>Letters beside means: two samples share a letter exactly when the panel could not tell them apart.</summary>
public static class Letters
{
    /// <summary>Gives letters.</summary>
    /// <param name="means">Mean of each sample, one sample or more; "a" stands at the highest.</param>
    /// <param name="differ">Whether two samples differ, by their numbers; asked for each pair once, the lower number first.</param>
    /// <returns>Letters of each sample, in alphabetical order: "a", "ab", "b". After "z" come capitals.</returns>
    /// <remarks>Source: docs/statistics.md, section 2.7: insert and absorb (Piepho 2004, MEMORY), then a sweep of letters that are not needed. Valid for: any pattern of pairs. Error: none.</remarks>
    /// <exception cref="ArgumentException">No samples, or a pattern that takes more than 52 letters.</exception>
    public static IReadOnlyList<string> Of(IReadOnlyList<double> means, Func<int, int, bool> differ)
    {
        ScoreTables.CheckFinite(means);
        var apart = new HashSet<(int, int)>();
        var columns = new List<HashSet<int>> { Enumerable.Range(0, means.Count).ToHashSet() };
        for (var one = 0; one < means.Count; one++)
        {
            for (var other = one + 1; other < means.Count; other++)
            {
                if (differ(one, other))
                {
                    apart.Add((one, other));
                    columns = Absorb(Insert(columns, one, other));
                }
            }
        }
        Sweep(columns);
        columns = [.. columns.OrderByDescending(column => column.Max(s => means[s])).ThenByDescending(column => column.Min(s => means[s]))];
        if (columns.Count > 52)
        {
            throw new ArgumentException("The pattern takes more than 52 letters.", nameof(differ));
        }
        return [.. Enumerable.Range(0, means.Count).Select(s => Name(columns, s))];
    }

    private static IEnumerable<HashSet<int>> Insert(List<HashSet<int>> columns, int one, int other)
    {
        foreach (var column in columns)
        {
            if (column.Contains(one) && column.Contains(other))
            {
                yield return [.. column.Where(s => s != one)];
                yield return [.. column.Where(s => s != other)];
            }
            else
            {
                yield return column;
            }
        }
    }

    private static List<HashSet<int>> Absorb(IEnumerable<HashSet<int>> columns)
    {
        var kept = new List<HashSet<int>>();
        foreach (var column in columns)
        {
            if (!kept.Any(column.IsSubsetOf))
            {
                kept.RemoveAll(other => other.IsSubsetOf(column));
                kept.Add(column);
            }
        }
        return kept;
    }

    // A sample may leave a column when all it shares there is shared in another column of its own.
    private static void Sweep(List<HashSet<int>> columns)
    {
        foreach (var column in columns)
        {
            foreach (var sample in column.Order().ToList())
            {
                var others = columns.Where(other => other != column && other.Contains(sample)).ToList();
                if (others.Count > 0 && column.All(partner => partner == sample || others.Any(other => other.Contains(partner))))
                {
                    column.Remove(sample);
                }
            }
        }
        columns.RemoveAll(column => column.Count == 0);
    }

    private static string Name(List<HashSet<int>> columns, int sample)
    {
        var letters = new StringBuilder();
        for (var c = 0; c < columns.Count; c++)
        {
            if (columns[c].Contains(sample))
            {
                letters.Append((char)(c < 26 ? 'a' + c : 'A' + c - 26));
            }
        }
        return letters.ToString();
    }
}
