namespace MenuLab.Core.Drafts.Reading;

/// <summary>
/// Finds the longest phrase of a table that begins at a token. Words are the tokens' plain forms; dots, hyphens and
/// apostrophes inside a phrase do not count, so that "fl. oz." is "fl oz" and "Rote-Bete-Saft" is "Rote Bete Saft".
/// </summary>
internal sealed class PhraseTable<T>(Func<string, string>? fold = null)
{
    private sealed class Node
    {
        public Dictionary<string, Node>? Next;
        public List<T>? Values;
    }

    private readonly Node _root = new();

    /// <summary>A phrase found: its values and the token behind it.</summary>
    public readonly record struct Found(IReadOnlyList<T>? Values, int End)
    {
        public bool IsFound => Values is not null;
    }

    public void Add(string phrase, T value)
    {
        var node = _root;
        foreach (var word in Tokenizer.Words(phrase))
        {
            node.Next ??= new Dictionary<string, Node>(StringComparer.Ordinal);
            var key = Fold(word);
            if (!node.Next.TryGetValue(key, out var next))
            {
                node.Next[key] = next = new Node();
            }
            node = next;
        }
        if (node != _root)
        {
            (node.Values ??= []).Add(value);
        }
    }

    public Found Longest(List<Token> tokens, int from, int to)
    {
        var node = _root;
        var best = default(Found);
        var at = from;
        while (at < to && node.Next is not null && node.Next.TryGetValue(Fold(tokens[at].Plain), out var next))
        {
            node = next;
            at++;
            if (node.Values is not null)
            {
                best = new Found(node.Values, at);
            }
            while (at < to && IsJoiner(tokens, at) && (node.Next is null || !node.Next.ContainsKey(tokens[at].Plain)))
            {
                at++;
            }
        }
        return best;
    }

    private static bool IsJoiner(List<Token> tokens, int at) =>
        !tokens[at].Spaced && (tokens[at].Is(".") || tokens[at].Is("'")
            || (tokens[at].Is("-") && at + 1 < tokens.Count && !tokens[at + 1].Spaced));

    private string Fold(string word) => fold is null ? word : fold(word);
}
