namespace MenuLab.Core.Drafts.Reading;

/// <summary>
/// Walks a source line once from left to right and sorts what it meets into clauses: longest phrase first, the pantry's
/// names before the bar's words where the name is longer, the bar's words where they tie.
/// </summary>
internal sealed class ClauseScanner(Vocabulary vocabulary, string text, List<Token> tokens, int from)
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

    // ---- figures -------------------------------------------------------------------------------------------------

    private bool StartsNumberInWords(int at) =>
        tokens[at].Kind == TokenKind.Word && !(_now.HasName && !_now.HasAmount && !FollowedByUnit(at)) && AmountReader.Read(tokens, at, tokens.Count) is not null;

    private bool FollowedByUnit(int at) =>
        AmountReader.Read(tokens, at, tokens.Count) is { } amount && amount.End < tokens.Count && UnitAt(amount.End, out _) is not null;

    private int Figure(int at)
    {
        if (IsRatioList(at))
        {
            return Ratio(at);
        }
        if ((_brackets > 0 || _now.HasName) && RatioEnd(at) > at + 1)
        {
            // "honey syrup (2:1)", "simple 2:1": the ratio belongs to the name.
            return AddName(at, RatioEnd(at));
        }
        var amount = AmountReader.Read(tokens, at, tokens.Count)!.Value;
        var next = amount.End;
        if (amount.Trouble.Length > 0)
        {
            BeginAmount(at);
            Trouble(at, amount.Trouble);
            _now.Amount ??= amount;
            return next;
        }
        if (next < tokens.Count)
        {
            var behind = LongestWord(next);
            var glued = !tokens[next].Spaced;
            if (tokens[next].Is("%"))
            {
                return Strength(at, amount, next + 1);
            }
            if (behind.IsFound)
            {
                var sense = behind.Values!;
                if (Has(sense, Sense.Celsius) && (tokens[next].Plain[0] == '°' || IsTemperature(at, next, glued)))
                {
                    return Heat(amount.Value, next, behind.End);
                }
                if (Has(sense, Sense.Fahrenheit) && IsTemperature(at, next, glued))
                {
                    return Heat((amount.Value - 32) / 1.8, next, behind.End);
                }
                if (Has(sense, Sense.Minutes))
                {
                    _now.Said.Add(Sense.Minutes);
                    _now.Said.Add(Sense.Step);
                    return behind.End;
                }
                if (Has(sense, Sense.Times))
                {
                    _now.Said.Add(Sense.Times);
                    return behind.End;
                }
                if (Has(sense, Sense.Seconds) && !IsGluedStranger(behind.End, next))
                {
                    _now.Seconds = amount.Value;
                    _now.Said.Add(Sense.Seconds);
                    return behind.End;
                }
                if (Has(sense, Sense.Drinks) && !_now.HasName)
                {
                    BeginAmount(at);
                    _now.Amount = amount;
                    _now.Said.Add(Sense.Drinks);
                    return behind.End;
                }
            }
            if (glued && tokens[next].Kind == TokenKind.Word && tokens[next].Plain.Length <= 2 && !tokens[next].Is("x") && UnitAt(next, out _) is null
                && !(behind.IsFound && behind.Values!.Any(m => m.Sense is Sense.Seconds or Sense.Minutes or Sense.Times or Sense.Ice)))
            {
                BeginAmount(at);
                Trouble(at, "A figure and a letter run together: write the number with figures only.");
            }
            if (tokens[next].Is("x") && next + 1 < tokens.Count && tokens[next + 1].IsNumber)
            {
                return Product(at, amount, next + 1);
            }
            if (tokens[next].Is("x") && !_now.HasName)
            {
                next++;
                if (next < tokens.Count && (tokens[next].Is("x") || UnitAt(next, out _) is not null))
                {
                    Trouble(at, "A number is missing beside the times sign.");
                }
            }
        }
        // "over one big rock", "2 cubes": figures of the build are no amounts.
        if (!_now.HasName && !_now.HasAmount && next < tokens.Count && IsBuild(next))
        {
            return next;
        }
        return Amounted(at, amount, next);
    }

    private bool IsBuild(int at) => LongestWord(at) is { IsFound: true } word && word.Values!.Any(m => m.Sense is Sense.Ice or Sense.Glass);

    private bool IsTemperature(int at, int next, bool glued) =>
        (glued || tokens[next].Plain.Length > 1 || char.IsUpper(text[tokens[next].Start])) && (_now.HasName || (at > 0 && tokens[at - 1].Is("at")) || tokens[next].Plain.Length > 1);

    // "4S ml": an s that a unit follows is a slip of the thumb, no second.
    private bool IsGluedStranger(int end, int next) => !tokens[next].Spaced && tokens[next].Plain.Length == 1 && end < tokens.Count && UnitAt(end, out _) is not null;

    private int Amounted(int at, Amount amount, int next)
    {
        BeginAmount(at);
        if (at > 0 && tokens[at - 1].Is("-") && !tokens[at].Spaced && tokens[at - 1].Spaced && at - 1 == _now.From)
        {
            Trouble(at - 1, "An amount cannot be below nought.");
        }
        var unit = next < tokens.Count ? UnitAt(next, out var end) : null;
        if (unit is not null)
        {
            UnitAt(next, out end);
            // "2 tbsp - 3 tbsp", "15 ml to 20 ml"
            if (end + 1 < tokens.Count && (tokens[end].Is("-") || tokens[end].Is("to") || tokens[end].Is("bis")) && AmountReader.Read(tokens, end + 1, tokens.Count) is { Trouble: "" } upper
                && upper.End < tokens.Count && UnitAt(upper.End, out var upperEnd) == unit && upper.Value > amount.Value)
            {
                amount = new Amount((amount.Value + upper.Value) / 2, amount.Value, upper.Value, amount.IsFraction, double.NaN, "", upper.End);
                end = upperEnd;
            }
            _now.UnitAt = next;
            _now.Unit = unit;
            _now.EitherSpoon |= IsEitherSpoon(next, end);
            next = end;
        }
        else if (next < tokens.Count && !tokens[next].Spaced && tokens[next].Kind == TokenKind.Word && GluedUnit(next) is { } glued)
        {
            // "45mlapple juice": cut the word behind the unit and look again.
            tokens.Insert(next + 1, tokens[next] with { Start = tokens[next].Start + glued.Length, Plain = tokens[next].Plain[glued.Length..], Spaced = false });
            tokens[next] = tokens[next] with { End = tokens[next].Start + glued.Length, Plain = glued };
            _now.Unit = UnitAt(next, out _);
            _now.UnitAt = next;
            next++;
        }
        if (unit is not null && next + 1 < tokens.Count && tokens[next].Is("x") && tokens[next + 1].IsNumber && double.IsNaN(_now.Times))
        {
            // "25 ml x 2"
            _now.Times = tokens[next + 1].Value;
            next += 2;
        }
        if (_now.HasAmount)
        {
            _now.Again = (amount, unit);
        }
        else
        {
            _now.Amount = amount with { End = next };
        }
        return next;
    }

    /// <summary>A second amount in a clause that has its name begins the next one.</summary>
    private void BeginAmount(int at)
    {
        if (_now.HasAmount && _now.HasName)
        {
            Split(at, at, Link.Run);
        }
    }

    private int Product(int at, Amount pieces, int second)
    {
        var each = AmountReader.Read(tokens, second, tokens.Count)!.Value;
        BeginAmount(at);
        _now.Times = pieces.Value;
        if (each.End < tokens.Count && tokens[each.End].Is("x"))
        {
            Trouble(at, "Too many times signs: write the amount once.");
            _now.Amount = each;
            return each.End + 1;
        }
        return Amounted(second, each, each.End);
    }

    private int Strength(int at, Amount amount, int next)
    {
        _now.Strengths.Add(amount.Value);
        SplitBeforeName(at);
        // "% vol", "% abv", "% w/w"
        while (next < tokens.Count && tokens[next].Plain is "vol" or "abv" or "alc")
        {
            next++;
        }
        return next;
    }

    private int Heat(double celsius, int at, int end)
    {
        _now.StartCelsius = celsius;
        _now.StartIsFigure = true;
        _ = at;
        return end;
    }

    /// <summary>"3:2:1" in front of a list, or "2:1" that belongs to no name.</summary>
    private bool IsRatioList(int at)
    {
        if (!tokens[at].IsNumber || at + 2 >= tokens.Count || !tokens[at + 1].Is(":") || !tokens[at + 2].IsNumber || tokens[at + 1].Spaced || tokens[at + 2].Spaced || _now.HasName || _brackets > 0
            || _clauses.Any(c => c.HasName && c.HasAmount))
        {
            return false;
        }
        if (_now.HasAmount && !_now.Says(Sense.Total))
        {
            return false;
        }
        var name = vocabulary.Longest(tokens, at, tokens.Count);
        var ratioEnd = RatioEnd(at);
        return !(name.IsFound && name.End > ratioEnd);
    }

    private int RatioEnd(int at)
    {
        var end = at + 1;
        while (end + 1 < tokens.Count && tokens[end].Is(":") && tokens[end + 1].IsNumber)
        {
            end += 2;
        }
        return end;
    }

    private int Ratio(int at)
    {
        var end = RatioEnd(at);
        _now.Ratio = [.. Enumerable.Range(at, end - at).Where(i => tokens[i].IsNumber).Select(i => tokens[i].Value)];
        _isList = true;
        return end;
    }

    // ---- words ---------------------------------------------------------------------------------------------------

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

    // ---- marks ---------------------------------------------------------------------------------------------------

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
                else if (mark.Plain is "!" && _now.To >= 0)
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
