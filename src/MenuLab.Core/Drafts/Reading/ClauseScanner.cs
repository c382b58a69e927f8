namespace MenuLab.Core.Drafts.Reading;

/// <summary>
/// Walks a source line once from left to right and sorts what it meets into clauses: longest phrase first, the pantry's
/// names before the bar's words where the name is longer, the bar's words where they tie.
/// </summary>
internal sealed partial class ClauseScanner(Vocabulary vocabulary, string text, List<Token> tokens, int from)
{
    private readonly List<Clause> _clauses = [];
    private readonly bool _isCapitals = !text.Any(char.IsLower);
    private Clause _now = null!;
    private int _brackets;
    private bool _isList;

    public List<Clause> Scan()
    {
        Open(from, Link.First);
        var at = from;
        while (at < tokens.Count)
        {
            at = Step(at);
        }
        Close(tokens.Count);
        return _clauses;
    }

    private int Step(int at)
    {
        var token = tokens[at];
        var name = vocabulary.Longest(tokens, at, tokens.Count);
        var word = LongestWord(at);
        // A name that begins with a figure ("2:1 honey syrup", "20 % saline") is longer than the figure.
        if (name.IsFound && name.End - at > 1 && (!word.IsFound || name.End > word.End) && !(token.IsNumber && IsRatioList(at)) && NameIsMeant(at, name.End))
        {
            return AddName(at, name.End);
        }
        var isPhrase = word.IsFound && !token.IsNumber && word.End - at > 1;
        if (!isPhrase && (token.IsNumber || StartsNumberInWords(at)))
        {
            var end = Figure(at);
            if (end > at)
            {
                return end;
            }
        }
        if (token.Kind == TokenKind.Mark && !word.IsFound)
        {
            return Mark(at);
        }
        if (word.IsFound && (!name.IsFound || word.End >= name.End))
        {
            var end = Apply(word.Values!, at, word.End);
            if (end > at)
            {
                return end;
            }
        }
        if (name.IsFound)
        {
            return AddName(at, name.End);
        }
        return Stranger(at);
    }

    // "30 ml 20 % saline" holds a name that begins with a figure; "45 apple" does not, whatever the pantry calls itself.
    private bool NameIsMeant(int at, int end) => !tokens[at].IsNumber || Enumerable.Range(at, end - at).Any(i => tokens[i].Kind == TokenKind.Word);

    private PhraseTable<Meaning>.Found LongestWord(int at)
    {
        var word = BarWords.Phrases.Longest(tokens, at, tokens.Count);
        var build = vocabulary.LongestBuild(tokens, at, tokens.Count);
        return build.IsFound && build.End > Math.Max(word.End, at) ? build : word;
    }

    private void Open(int at, Link link) => _now = new Clause { From = at, To = at, Link = link, InBrackets = _brackets > 0 };

    private void Close(int end)
    {
        _now.To = end;
        if (end > _now.From)
        {
            _clauses.Add(_now);
        }
    }

    private void Split(int at, int next, Link link)
    {
        Close(at);
        Open(next, link);
    }

    private int AddName(int at, int end)
    {
        SplitBeforeName(at);
        for (var i = at; i < end; i++)
        {
            _now.Name.Add(i);
        }
        return end;
    }

    private int Stranger(int at)
    {
        // A slip may name a unit only where one is due: "3 dahses", but not "tastes" for French cups.
        if (tokens[at].Kind == TokenKind.Word && MendedWord(at) is { } mended && (!mended.All(m => m.Sense == Sense.Unit) || (_now.HasAmount && _now.Unit is null)))
        {
            var end = Apply(mended, at, at + 1);
            if (end > at)
            {
                return end;
            }
        }
        SplitBeforeName(at);
        // "l0", "O5"
        if (at + 1 < tokens.Count && tokens[at].Plain.Length == 1 && tokens[at + 1].IsNumber && !tokens[at + 1].Spaced)
        {
            Trouble(at, "A letter stands where a figure should: write the number with figures only.");
        }
        _now.Name.Add(at);
        _now.HasStrangers = true;
        return at + 1;
    }

    /// <summary>"apple juice 45 lemon juice 20": a name after a name and its amount begins the next line.</summary>
    private void SplitBeforeName(int at)
    {
        if (_now.HasName && _now.HasAmount && _now.Name[0] < AmountToken() && _now.Name[^1] < AmountToken() && _now.OrAt < 0 && _now.Ratio is null)
        {
            Split(at, at, Link.Run);
        }

        int AmountToken() => _now.Amount!.Value.End;
    }

    private void Trouble(int at, string reason)
    {
        if (_now.Trouble.Length == 0)
        {
            _now.Trouble = reason;
            _now.TroubleAt = at;
        }
    }
}
