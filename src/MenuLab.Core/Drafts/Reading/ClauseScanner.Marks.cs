namespace MenuLab.Core.Drafts.Reading;

/// <content>Marks: what parts clauses and what only stands between.</content>
internal sealed partial class ClauseScanner
{
    private int Mark(int at)
    {
        var mark = tokens[at];
        var next = at + 1 < tokens.Count ? tokens[at + 1] : default;
        switch (mark.Plain)
        {
            case "(" or "[":
                Close(at);
                _brackets++;
                Open(at + 1, Link.Soft);
                return at + 1;
            case ")" or "]":
                Close(at);
                _brackets = Math.Max(0, _brackets - 1);
                Open(at + 1, Link.Soft);
                return at + 1;
            case "," or "...":
                Split(at, at + 1, Link.Soft);
                return at + 1;
            case ";" or "+":
                Split(at, at + 1, Link.Hard);
                return at + 1;
            case "/":
                if (at > 0 && tokens[at - 1].Is("w") && !mark.Spaced)
                {
                    return at + 1;
                }
                if (at > 0 && tokens[at - 1].Is("?"))
                {
                    Trouble(at - 1, "A figure of the fraction is missing.");
                    return at + 1;
                }
                Split(at, at + 1, Link.Slash);
                return at + 1;
            case ":":
                return Colon(at);
            case ".":
                if (IsLeader(at))
                {
                    return at + 1;
                }
                if (EndsSentence(at))
                {
                    Split(at, at + 1, Link.Soft);
                }
                return at + 1;
            case "-" or "--":
                if (mark.Plain == "--" || mark.Spaced == next.Spaced && mark.Spaced)
                {
                    if (!IsNegative(at))
                    {
                        Split(at, at + 1, Link.Soft);
                    }
                }
                return at + 1;
            case "#" or "~" or "*" or "!" or "'" or "\"" or "°" or "":
                if (mark.Plain is "" && _now.HasName)
                {
                    Split(at, at + 1, Link.Soft);
                }
                else if (mark.Plain == "!")
                {
                    Split(at, at + 1, Link.Soft);
                }
                else if (mark.Plain == "~")
                {
                    _now.Said.Add(Sense.About);
                }
                return at + 1;
            case "?":
                if (at + 1 == tokens.Count || next.Is(",") || next.Is(";"))
                {
                    _now.IsDoubtful = true;
                }
                else if (next.Is("/"))
                {
                    Trouble(at, "A figure of the fraction is missing.");
                }
                else
                {
                    _now.HasStrangers = true;
                }
                return at + 1;
            default:
                // Marks that no amount and no name is written with.
                if (_now.HasName || _now.HasAmount || (at + 1 < tokens.Count && tokens[at + 1].IsNumber))
                {
                    Trouble(at, $"“{text[mark.Start..mark.End]}” was not understood.");
                }
                return at + 1;
        }
    }

    private bool IsNegative(int at) => at == _now.From && at + 1 < tokens.Count && tokens[at + 1].IsNumber && !tokens[at + 1].Spaced;

    private bool IsLeader(int at) => at > 0 && tokens[at - 1].Is(".") || (at + 1 < tokens.Count && tokens[at + 1].Is("."));

    /// <summary>A stop before a blank or the end parts two clauses, unless it shortens the word before it.</summary>
    private bool EndsSentence(int at)
    {
        if (at + 1 < tokens.Count && !tokens[at + 1].Spaced)
        {
            return false;
        }
        if (at == 0 || tokens[at].Spaced || tokens[at - 1].Kind != TokenKind.Word)
        {
            return true;
        }
        var before = tokens[at - 1].Plain;
        return !(before.Length == 1 || before is "no" or "nr" or "approx" or "ca" or "fl" or "oz" or "tsp" or "tbsp" or "env" or "ml" or "cl" or "gar" or "garn" or "st")
            || at + 1 == tokens.Count;
    }

    private int Colon(int at)
    {
        if (_now.Unit == Unit.Gram && !_now.HasAmount && !_now.HasName && _now.UnitAt == _now.From && at == _now.From + 1)
        {
            // "G: lemon zest"
            _now.Unit = null;
            _now.UnitAt = -1;
            _now.Said.Add(Sense.Garnish);
        }
        // A label says what follows; its words have been applied and the clause goes on.
        if (!_now.HasName && !_now.HasAmount && _now.Ratio is null && (_now.SaysPlace || _now.Says(Sense.Label) || (_now.HasBuild && at == _now.From + 1)))
        {
            if (_now.HasBuild && at == _now.From + 1)
            {
                // "Ice: cubes", "Strain: strain": the word was the label, not an order.
                _now.Build.Clear();
                _now.Said.Add(Sense.Label);
            }
            _now.Said.Add(Sense.Label);
            return at + 1;
        }
        Split(at, at + 1, Link.Colon);
        return at + 1;
    }
}
