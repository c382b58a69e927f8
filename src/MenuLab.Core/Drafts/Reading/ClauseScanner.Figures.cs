namespace MenuLab.Core.Drafts.Reading;

/// <content>Numbers: amounts, times, temperatures, strengths, ratios.</content>
internal sealed partial class ClauseScanner
{
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
                    return Heat(amount.Value, behind.End);
                }
                if (Has(sense, Sense.Fahrenheit) && (tokens[next].Plain[0] == '°' || IsTemperature(at, next, glued)))
                {
                    return Heat((amount.Value - 32) / 1.8, behind.End);
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

    private int Heat(double celsius, int end)
    {
        _now.StartCelsius = celsius;
        _now.StartIsFigure = true;
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
}
