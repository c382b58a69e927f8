namespace MenuLab.Core.Drafts.Reading;

/// <content>Words of the bar: what each does to the clause.</content>
internal sealed partial class ClauseScanner
{
    /// <summary>The unit that begins at a token. A lone t is a teaspoon, a lone T a tablespoon.</summary>
    private Unit? UnitAt(int at, out int end)
    {
        var found = BarWords.Phrases.Longest(tokens, at, tokens.Count);
        end = found.End;
        if (!found.IsFound || found.Values!.FirstOrDefault(m => m.Sense == Sense.Unit) is not { Sense: Sense.Unit } meaning || meaning.Unit == Unit.None)
        {
            return tokens[at].Kind == TokenKind.Word && !found.IsFound && MendedWord(at)?.FirstOrDefault(m => m.Sense == Sense.Unit) is { Sense: Sense.Unit, Unit: not Unit.None } mended
                ? Ended(at + 1, mended.Unit, out end)
                : null;
        }
        var name = vocabulary.Longest(tokens, at, tokens.Count);
        if (name.IsFound && name.End > found.End)
        {
            return null;
        }
        if (meaning.Unit == Unit.Teaspoon && tokens[at].End - tokens[at].Start == 1 && text[tokens[at].Start] == 'T')
        {
            return Unit.Tablespoon;
        }
        return meaning.Unit;
    }

    private static Unit Ended(int at, Unit unit, out int end)
    {
        end = at;
        return unit;
    }

    private bool IsEitherSpoon(int at, int end) => _isCapitals && end == at + 1 && tokens[at].Plain == "t";

    private string? GluedUnit(int at)
    {
        var plain = tokens[at].Plain;
        // The plain form must be as long as the typed one, or the cut would fall in the wrong place.
        if (plain.Length != tokens[at].End - tokens[at].Start)
        {
            return null;
        }
        foreach (var unit in (string[])["ml", "cl", "oz", "g", "l"])
        {
            if (plain.Length > unit.Length + 2 && plain.StartsWith(unit, StringComparison.Ordinal) && vocabulary.KnowsWord(plain[unit.Length..]) && !vocabulary.KnowsWord(plain))
            {
                return unit;
            }
        }
        return null;
    }

    /// <summary>The meanings of a word of the bar with one slip in it; none for a word that any name holds.</summary>
    private IReadOnlyList<Meaning>? MendedWord(int at)
    {
        var plain = tokens[at].Plain;
        if (plain.Length is < 4 or > 14 || vocabulary.KnowsWord(plain) || BarWords.Spelled.ContainsKey(plain))
        {
            return null;
        }
        var near = BarWords.Words.Find(plain, 1);
        // A short word must hold the same letters: "fnie" is "fine", but "spice" is not "slice".
        if (near.Count == 0 || (plain.Length <= 5 && !SameLetters(plain, near[0].Word)) || plain[0] != near[0].Word[0])
        {
            return null;
        }
        var mended = new List<Token>(tokens.Skip(at).Take(5)) { [0] = tokens[at] with { Plain = near[0].Word } };
        for (var i = 1; i < mended.Count && mended[i].Kind == TokenKind.Word; i++)
        {
            if (mended[i].Plain.Length >= 4 && BarWords.Words.Find(mended[i].Plain, 1) is { Count: > 0 } also && SameLetters(mended[i].Plain, also[0].Word))
            {
                mended[i] = mended[i] with { Plain = also[0].Word };
            }
        }
        var found = BarWords.Phrases.Longest(mended, 0, mended.Count);
        if (!found.IsFound)
        {
            return null;
        }
        for (var i = 0; i < found.End; i++)
        {
            tokens[at + i] = mended[i];
        }
        return found.End == 1 ? found.Values : BarWords.Phrases.Longest(tokens, at, tokens.Count).Values;
    }

    private static bool SameLetters(string a, string b) => a.Length == b.Length && a.Order().SequenceEqual(b.Order());

    private static bool Has(IReadOnlyList<Meaning> meanings, Sense sense) => meanings.Any(m => m.Sense == sense);

    private int Apply(IReadOnlyList<Meaning> meanings, int at, int end)
    {
        // After a mended phrase of several words the end is not that of the typed word.
        var again = BarWords.Phrases.Longest(tokens, at, tokens.Count);
        end = Math.Max(end, again.IsFound ? again.End : end);
        var meaning = Choose(meanings, at, end);
        switch (meaning.Sense)
        {
            case Sense.Unit:
                return ApplyUnit(meaning.Unit, at, end);
            case Sense.NoIce when meaning.Key == "label" && !_now.Says(Sense.Label):
                // "Ice: none"; elsewhere "none" is a word like any other.
                return at;
            case Sense.Method or Sense.Ice or Sense.Glass or Sense.Strain or Sense.Up or Sense.NoIce:
                _now.Build.Add(new BuildWord(meaning, at, end, _now.Says(Sense.Over) && IsJustBefore(at, Sense.Over)));
                return end;
            case Sense.And:
                return Joint(at, end, meaning.Sense);
            case Sense.With:
                return Joint(at, end, meaning.Sense);
            case Sense.Or:
                if (_now.HasName)
                {
                    _now.OrAt = at;
                }
                return end;
            case Sense.Treatment:
                _now.Treatments.Add(text[tokens[at].Start..tokens[end - 1].End]);
                _now.TreatmentTokens.AddRange(Enumerable.Range(at, end - at));
                return end;
            case Sense.JuiceOf when AmountReader.Read(tokens, Behind(end), tokens.Count) is null:
                return at;
            case Sense.Count when end >= tokens.Count || !tokens[end].IsNumber:
                return _now.HasName || end >= tokens.Count ? at : end;
            case Sense.Start when LongestWord(end) is { IsFound: true } glass && Has(glass.Values!, Sense.Glass):
                // A chilled coupe: the glass is cold, not the line.
                return end;
            case Sense.Scant or Sense.Fat when !IsOfAnAmount(at, end):
                // "Light agave" is an agave, "scant 3/4 oz" an amount.
                return at;
            case Sense.Start:
                _now.TreatmentTokens.AddRange(Enumerable.Range(at, end - at));
                _now.StartCelsius = meaning.Figure;
                _now.Treatments.Add(text[tokens[at].Start..tokens[end - 1].End]);
                return end;
            case Sense.EqualParts:
                _now.Said.Add(meaning.Sense);
                _isList = true;
                return end;
            case Sense.Seconds or Sense.Celsius or Sense.Fahrenheit or Sense.Minutes or Sense.Times or Sense.Drinks:
                // Only behind a number; alone they are words like any other.
                return meaning.Sense is Sense.Drinks or Sense.Times ? Said(meaning.Sense, end) : at;
            default:
                return Said(meaning.Sense, end);
        }
    }

    private int Said(Sense sense, int end)
    {
        _now.Said.Add(sense);
        return end;
    }

    private Meaning Choose(IReadOnlyList<Meaning> meanings, int at, int end)
    {
        // "2 ds" are dashes, "ds, coupe" is a dry shake; "cubes" beside sugar count, beside a shaker cool.
        var unitFirst = _now.HasAmount && _now.Unit is null && !_now.HasBuild;
        var nextIsName = end < tokens.Count && (vocabulary.Longest(tokens, end, tokens.Count).IsFound || (tokens[end].Is("of") && end + 1 < tokens.Count && vocabulary.Longest(tokens, end + 1, tokens.Count).IsFound));
        if (Has(meanings, Sense.Unit) && (unitFirst || (!_now.HasBuild && (nextIsName || _now.HasName))))
        {
            return meanings.First(m => m.Sense == Sense.Unit);
        }
        if (Has(meanings, Sense.Makes))
        {
            // "Pour 2 verres" yields, "pour everything" does not; "for 12 seconds" says nothing.
            var yields = AmountReader.Read(tokens, Behind(end), tokens.Count) is { } amount && !_now.HasBuild
                && (amount.End >= tokens.Count || LongestWord(amount.End) is not { IsFound: true } behind || !behind.Values!.Any(m => m.Sense is Sense.Seconds or Sense.Minutes));
            return yields ? meanings.First(m => m.Sense == Sense.Makes) : meanings.FirstOrDefault(m => m.Sense != Sense.Makes, new Meaning(Sense.Filler));
        }
        if (meanings.Count == 1)
        {
            return meanings[0];
        }
        if (Has(meanings, Sense.Vague))
        {
            // "1 bottle white wine" measures, "strain, bottle" orders.
            return meanings.First(m => m.Sense == (_now.HasAmount || !Has(meanings, Sense.Step) ? Sense.Vague : Sense.Step));
        }
        return meanings.FirstOrDefault(m => m.Sense != Sense.Unit, meanings[0]);
    }

    private int ApplyUnit(Unit unit, int at, int end)
    {
        var isCube = unit == Unit.Cube;
        if (isCube && (_now.Unit is not null || (!_now.HasName && !_now.HasAmount)))
        {
            _now.Build.Add(new BuildWord(new Meaning(Sense.Ice, "cubes"), at, end, IsJustBefore(at, Sense.Over)));
            return end;
        }
        if (_now.Unit is null)
        {
            var chosen = UnitAt(at, out _) ?? unit;
            _now.Unit = chosen;
            _now.UnitAt = at;
            _now.EitherSpoon |= IsEitherSpoon(at, end);
            if (_now.HasAmount)
            {
                _now.Amount = _now.Amount!.Value with { End = Math.Max(_now.Amount.Value.End, _now.HasName ? _now.Amount.Value.End : end) };
            }
            return end;
        }
        // A second unit word: "3 slices of lemon peel". It belongs to the name, for the match to judge.
        return at;
    }

    private bool IsOfAnAmount(int at, int end) =>
        tokens[at].Plain is "scant" or "fat" or "knapp" or "knappe" || AmountReader.Read(tokens, Behind(end), tokens.Count) is not null || (end < tokens.Count && UnitAt(end, out _) is not null);

    /// <summary>The token behind a phrase, past small words: "makes about 0.8 L", "batch of x40", "jus d'un".</summary>
    private int Behind(int end)
    {
        for (var steps = 0; steps < 3 && end < tokens.Count && !tokens[end].IsNumber; steps++)
        {
            var small = BarWords.Phrases.Longest(tokens, end, end + 1);
            var isSmall = small.IsFound && small.Values!.Any(m => m.Sense is Sense.About or Sense.Count or Sense.Filler) && !AmountReader.IsArticle(tokens[end].Plain);
            if (!isSmall && !tokens[end].Is("'") && !tokens[end].Is(".") && !tokens[end].Is(":") && !tokens[end].Is("~"))
            {
                break;
            }
            end++;
        }
        return end;
    }

    private bool IsJustBefore(int at, Sense sense)
    {
        // Looks back over small words: "over one big rock", "over a block".
        for (var i = at - 1; i >= _now.From && i >= at - 4; i--)
        {
            var word = BarWords.Phrases.Longest(tokens, i, at);
            if (word.IsFound && Has(word.Values!, sense))
            {
                return true;
            }
        }
        return false;
    }

    /// <summary>"And" and "with" part two lines where an amount follows, or in a list of equal parts; else they join.</summary>
    private int Joint(int at, int end, Sense sense)
    {
        _now.Said.Add(sense);
        if (end >= tokens.Count)
        {
            return end;
        }
        var amountFollows = tokens[end].IsNumber || (AmountReader.Read(tokens, end, tokens.Count) is not null);
        var article = end + 1 < tokens.Count && AmountReader.IsArticle(tokens[end].Plain) && (sense == Sense.And || UnitAt(end + 1, out _) is not null);
        if ((_now.HasName && (_now.HasAmount || _now.Unit is not null) && (amountFollows || article)) || (_isList && _now.HasName && sense == Sense.And))
        {
            Split(at, end, Link.Run);
        }
        return end;
    }
}
