namespace MenuLab.Core.Drafts.Reading;

/// <summary>
/// Finds the known words within two slips (a letter too many, missing, wrong, or two swapped) of a typed one. Words are
/// stored under each form that results from leaving letters out, so a look-up costs some forty hash probes instead of a
/// walk over the vocabulary. (Symmetric deletion: common practice in spelling correction.)
/// </summary>
internal sealed class Spelling
{
    private const int LongestWord = 24;

    private readonly HashSet<string> _words = new(StringComparer.Ordinal);
    private readonly Dictionary<string, List<string>> _deleted = new(StringComparer.Ordinal);

    /// <summary>A known word and how many slips away it is.</summary>
    public readonly record struct Near(string Word, int Slips);

    public void Add(string word)
    {
        if (word.Length is >= 3 and <= LongestWord)
        {
            _words.Add(word);
        }
    }

    public bool Knows(string word) => _words.Contains(word);

    /// <summary>Builds the index; call once after the last word.</summary>
    public void Seal()
    {
        foreach (var word in _words)
        {
            foreach (var form in Deletions(word))
            {
                if (!_deleted.TryGetValue(form, out var words))
                {
                    _deleted[form] = words = [];
                }
                words.Add(word);
            }
        }
    }

    /// <summary>Known words within <paramref name="slips"/> (at most 2) of the typed one, nearest first.</summary>
    public IReadOnlyList<Near> Find(string typed, int slips)
    {
        if (typed.Length is < 3 or > LongestWord)
        {
            return [];
        }
        var found = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var form in Deletions(typed))
        {
            if (!_deleted.TryGetValue(form, out var words))
            {
                continue;
            }
            foreach (var word in words)
            {
                if (!found.ContainsKey(word) && Math.Abs(word.Length - typed.Length) <= slips)
                {
                    found[word] = Distance(typed, word);
                }
            }
        }
        return [.. found.Where(f => f.Value <= slips).OrderBy(f => f.Value).ThenBy(f => f.Key, StringComparer.Ordinal).Select(f => new Near(f.Key, f.Value))];
    }

    private static HashSet<string> Deletions(string word)
    {
        var forms = new HashSet<string>(StringComparer.Ordinal) { word };
        for (var i = 0; i < word.Length; i++)
        {
            var once = word.Remove(i, 1);
            forms.Add(once);
            for (var j = i; j < once.Length && once.Length > 2; j++)
            {
                forms.Add(once.Remove(j, 1));
            }
        }
        return forms;
    }

    /// <summary>Slips between two words: insertions, deletions, substitutions, and swaps of neighbours, each 1.</summary>
    public static int Distance(string a, string b)
    {
        Span<int> beforeLast = stackalloc int[LongestWord + 2];
        Span<int> last = stackalloc int[LongestWord + 2];
        Span<int> now = stackalloc int[LongestWord + 2];
        for (var j = 0; j <= b.Length; j++)
        {
            last[j] = j;
        }
        for (var i = 1; i <= a.Length; i++)
        {
            now[0] = i;
            for (var j = 1; j <= b.Length; j++)
            {
                now[j] = Math.Min(Math.Min(now[j - 1], last[j]) + 1, last[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1));
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                {
                    now[j] = Math.Min(now[j], beforeLast[j - 2] + 1);
                }
            }
            var spare = beforeLast;
            beforeLast = last;
            last = now;
            now = spare;
        }
        return last[b.Length];
    }
}
