using MenuLab.Core.House;
using MenuLab.Core.Pantry;

namespace MenuLab.Core.Drafts.Reading;

/// <summary>
/// Reads edits against lines that are there. Each piece between commas does one thing: changes, removes, swaps, scales,
/// adds, or speaks of the build. A piece that fits no line, or more than one, is asked and changes nothing.
/// </summary>
internal sealed class EditReader
{
    private static readonly HashSet<string> Removes = Set("no without drop remove minus lose skip omit ohne sans sin senza sem zonder uden bez delete cut");
    private static readonly HashSet<string> Adds = Set("add plus with mit also avec con");
    private static readonly HashSet<string> Parts = Set("but however aber mais pero ma mas");
    private static readonly HashSet<string> Small = Set("the a an of by amount its all");

    private readonly Vocabulary _vocabulary;
    private readonly MeasuresSet _measures;
    private readonly ReadSettings _settings;
    private readonly ReadDrink _before;
    private readonly DrinkInReading _added;
    private readonly List<DraftLine> _lines;
    private readonly List<LineQuestion> _questions = [];
    private readonly List<UnreadLine> _unread = [];
    private readonly List<SourceLine> _account = [];

    public EditReader(Vocabulary vocabulary, MeasuresSet measures, ReadSettings settings, ReadDrink before)
    {
        _vocabulary = vocabulary;
        _measures = measures;
        _settings = settings;
        _before = before;
        _lines = [.. before.Lines];
        _added = new DrinkInReading(vocabulary, measures, settings);
        _added.ContinueFrom(before.Build);
    }

    /// <summary>One piece of an edit: a stretch of tokens.</summary>
    private readonly record struct Piece(int Number, string Text, List<Token> Tokens, int From, int To)
    {
        public string Typed => From < To ? Text[Tokens[From].Start..Tokens[To - 1].End] : "";

        public int Column => From < Tokens.Count ? Tokens[From].Start + 1 : 1;
    }

    public void Keep(int number, string text, string reason)
    {
        _unread.Add(new UnreadLine(text.Trim(), number, 1, reason));
        Account(number, text, 0, text.Length, ReadAs.Unread);
    }

    private void Account(int number, string text, int from, int to, ReadAs what)
    {
        var piece = text[from..to];
        if (piece.Trim() is { Length: > 0 } trimmed)
        {
            _account.Add(new SourceLine(number, from + piece.IndexOf(trimmed[0], StringComparison.Ordinal) + 1, trimmed, what));
        }
    }

    public void Add(int number, string text)
    {
        var tokens = Tokenizer.Cut(text);
        var from = Opening(tokens);
        var pieces = new List<(int From, int To)>();
        var start = from;
        for (var at = from; at <= tokens.Count; at++)
        {
            if (at < tokens.Count && !IsBreak(tokens, at))
            {
                continue;
            }
            pieces.Add((start, at));
            start = at + 1;
            if (at < tokens.Count && tokens[at].Is("+"))
            {
                start = at;
            }
        }
        var begun = 0;
        for (var i = 0; i < pieces.Count; i++)
        {
            var piece = new Piece(number, text, tokens, pieces[i].From, pieces[i].To);
            var what = piece.From < piece.To ? Read(piece) : ReadAs.Edit;
            var end = i + 1 < pieces.Count && pieces[i + 1].From < tokens.Count ? Math.Max(begun, tokens[pieces[i + 1].From].Start) : text.Length;
            Account(number, text, begun, end, what);
            begun = end;
        }
    }

    public ReadDrink Done()
    {
        var added = _added.Done();
        return _before with
        {
            Lines = [.. _lines, .. added.Lines],
            Questions = [.. _before.Questions, .. _questions, .. added.Questions],
            Unread = [.. _before.Unread, .. _unread, .. added.Unread],
            Build = added.Build,
            Yield = added.Yield ?? _before.Yield,
            Notes = [.. _before.Notes, .. added.Notes],
            Account = _account,
        };
    }

    // "as 4 but", "same as 4,", "same but": which iteration it starts from is for the caller to know.
    private static int Opening(List<Token> tokens)
    {
        var at = Bullets.Skip(tokens);
        if (at < tokens.Count && tokens[at].Plain is "same" or "like" or "from" or "wie" or "comme" or "como" or "come")
        {
            at++;
        }
        if (at < tokens.Count && tokens[at].Is("as"))
        {
            at++;
        }
        if (at > 0 && at < tokens.Count && tokens[at].IsNumber && (at + 1 >= tokens.Count || Parts.Contains(tokens[at + 1].Plain) || Adds.Contains(tokens[at + 1].Plain) || tokens[at + 1].Plain is "," or ":"
            || Removes.Contains(tokens[at + 1].Plain)))
        {
            at++;
        }
        while (at < tokens.Count && (Parts.Contains(tokens[at].Plain) || tokens[at].Plain is "," or ":"))
        {
            at++;
        }
        return at;
    }

    private static bool IsBreak(List<Token> tokens, int at)
    {
        var token = tokens[at];
        if (token.Is(",") || token.Is(";") || (token.Is(".") && (at + 1 == tokens.Count || (tokens[at + 1].Spaced && at > 0 && tokens[at - 1].End - tokens[at - 1].Start > 1))) || Parts.Contains(token.Plain))
        {
            return true;
        }
        if (token.Is("+") && token.Spaced && at + 1 < tokens.Count && tokens[at + 1].Spaced && at > 0)
        {
            return true;
        }
        return token.Is("and") && at + 1 < tokens.Count && (Removes.Contains(tokens[at + 1].Plain) || Adds.Contains(tokens[at + 1].Plain) || tokens[at + 1].Plain is "swap" or "double" or "halve" or "replace");
    }

    private ReadAs Read(Piece piece)
    {
        var tokens = piece.Tokens;
        var first = tokens[piece.From].Plain;
        if (Removes.Contains(first) && !IsBuild(piece))
        {
            return Remove(piece, piece.From + 1);
        }
        if (Adds.Contains(first) || tokens[piece.From].Is("+"))
        {
            return Hand(piece, piece.From + 1);
        }
        if (first is "swap" or "replace" or "change" && Between(piece, "for", "with", "to", "by") is { } middle)
        {
            return Swap(piece, (piece.From + 1, middle), (middle + 1, piece.To));
        }
        if (Instead(piece) is { } instead)
        {
            return Swap(piece, (instead.End, piece.To), (piece.From, instead.At));
        }
        if (first is "double" or "twice" or "halve" or "half" or "triple" && !tokens[Math.Min(piece.From + 1, tokens.Count - 1)].IsNumber)
        {
            return Scale(piece, first is "double" or "twice" ? 2 : first == "triple" ? 3 : 0.5, piece.From + 1);
        }
        return Change(piece) ?? (IsBuild(piece) || HasAmountAndName(piece) ? Hand(piece, piece.From) : Unclear(piece));
    }

    // ---- changes of an amount ------------------------------------------------------------------------------------

    /// <summary>"lemon 20 > 22.5", "malt up to 1/2", "verjus +2.5", "honey down 3", "lemon 22.5".</summary>
    private ReadAs? Change(Piece piece)
    {
        var tokens = piece.Tokens;
        var at = piece.From;
        while (at < piece.To && !tokens[at].IsNumber && !IsSign(tokens, at, piece) && tokens[at].Plain is not ("up" or "down" or "to" or ">"))
        {
            at++;
        }
        var name = (piece.From, at);
        if (at == piece.From)
        {
            // "22.5 lemon": the amount in front.
            return Leading(piece);
        }
        if (at == piece.To)
        {
            return null;
        }
        var sign = 0;
        var isTo = false;
        double? from = null;
        Unit? unit = null;
        Amount? to = null;
        for (; at < piece.To;)
        {
            var plain = tokens[at].Plain;
            if (plain is "up" or "down" && !tokens[at].IsNumber)
            {
                sign = plain == "up" ? 1 : -1;
                at++;
            }
            else if (IsArrow(tokens, at, piece, out var behind))
            {
                (from, to, isTo) = (to?.Value, null, true);
                at = behind;
            }
            else if (plain is "to" && !tokens[at].IsNumber)
            {
                (from, to, isTo) = (to?.Value ?? from, null, true);
                at++;
            }
            else if (plain is "by" or "from" && !tokens[at].IsNumber)
            {
                at++;
            }
            else if (tokens[at].Is("+") || tokens[at].Is("-"))
            {
                sign = tokens[at].Is("+") ? 1 : -1;
                at++;
            }
            else if (to is null && AmountReader.Read(tokens, at, piece.To) is { Trouble: "", HasTwoReadings: false } amount)
            {
                // "3/4 to 1" reads as a range; here it says from what to what.
                (from, to, isTo) = amount.IsRange ? (amount.Low, Amount.Of(amount.High, amount.End), true) : (from, amount, isTo);
                at = amount.End;
            }
            else if (to is not null && BarWords.Phrases.Longest(tokens, at, piece.To) is { IsFound: true } word && word.Values!.FirstOrDefault(m => m.Sense == Sense.Unit) is { Sense: Sense.Unit } meaning)
            {
                unit = meaning.Unit;
                at = word.End;
            }
            else
            {
                return null;
            }
        }
        var meant = Lines(piece, name);
        if (to is not { } target || (meant.Count == 0 && IsBuild(piece)))
        {
            return null;
        }
        return meant switch
        {
            [] => NotThere(piece, name, target.Value, unit),
            [var only] => Apply(piece, only, from, sign, isTo, target.Value, unit),
            var several => Ask(piece, "Which of these lines is meant?", several.Select(i => Changed(i, New(i, sign, isTo, target.Value), unit, piece.Typed))),
        };
    }

    private double New(int line, int sign, bool isTo, double figure) => isTo || sign == 0 ? figure : _lines[line].Amount + sign * figure;

    private ReadAs Apply(Piece piece, int line, double? from, int sign, bool isTo, double figure, Unit? unit)
    {
        var next = New(line, sign, isTo, figure);
        if (!(next > 0) || next > AmountReader.Absurd)
        {
            return Fail(piece, "That would leave nothing, or far too much: write \"no\" and the name to take it out.");
        }
        if (from is { } stated && Math.Abs(stated - _lines[line].Amount) > 1e-3)
        {
            return Ask(piece, $"The line says {HouseParse.Echo(_lines[line].Amount)}, not {HouseParse.Echo(stated)}: change it all the same?", [Changed(line, next, unit, piece.Typed)]);
        }
        _lines[line] = Changed(line, next, unit, piece.Typed);
        return ReadAs.Edit;
    }

    private ReadAs? Leading(Piece piece)
    {
        if (AmountReader.Read(piece.Tokens, piece.From, piece.To) is not { Trouble: "", HasTwoReadings: false, IsRange: false } amount)
        {
            return null;
        }
        var at = amount.End;
        Unit? unit = null;
        if (at < piece.To && BarWords.Phrases.Longest(piece.Tokens, at, piece.To) is { IsFound: true } word && word.Values!.FirstOrDefault(m => m.Sense == Sense.Unit) is { Sense: Sense.Unit } meaning)
        {
            unit = meaning.Unit;
            at = word.End;
        }
        return at < piece.To && Lines(piece, (at, piece.To)) is [var only] ? Apply(piece, only, null, 0, true, amount.Value, unit) : null;
    }

    private static bool IsSign(List<Token> tokens, int at, Piece piece) =>
        (tokens[at].Is("+") || tokens[at].Is("-")) && at + 1 < piece.To && tokens[at + 1].IsNumber;

    private static bool IsArrow(List<Token> tokens, int at, Piece piece, out int behind)
    {
        behind = at;
        while (behind < piece.To && (tokens[behind].Is("-") || tokens[behind].Is("=") || tokens[behind].Is("--")))
        {
            behind++;
        }
        if (behind < piece.To && tokens[behind].Is(">"))
        {
            behind++;
            return true;
        }
        behind = at;
        return false;
    }

    private DraftLine Changed(int line, double amount, Unit? unit, string typed)
    {
        var old = _lines[line];
        var spec = SpecOf(old, typed) with { Amount = amount, Low = amount, High = amount, Unit = unit ?? (old.Unit == Unit.None ? _settings.BareNumber : old.Unit) };
        if (old.Unit == Unit.Part && old.Amount > 0)
        {
            spec = spec with { PartMillilitres = old.Millilitres / old.Amount };
        }
        return LineMaker.Make(_vocabulary.Pantry.Find(old.Ingredient)!, spec, _measures);
    }

    private static LineSpec SpecOf(DraftLine line, string typed) => new()
    {
        Text = typed, Amount = line.Amount, Low = line.AmountLow, High = line.AmountHigh, Unit = line.Unit, Place = line.Place, Joins = line.Joins, Treatment = line.Treatment,
        StartCelsius = line.StartCelsius,
    };

    // ---- the other edits -----------------------------------------------------------------------------------------

    private ReadAs Remove(Piece piece, int from)
    {
        switch (Lines(piece, (from, piece.To)))
        {
            case []:
                return Fail(piece, "Nothing in the drink is called so.");
            case [var only]:
                _lines.RemoveAt(only);
                return ReadAs.Edit;
            case var several:
                return Ask(piece, "Which of these lines comes out?", several.Select(i => _lines[i]));
        }
    }

    private ReadAs Scale(Piece piece, double factor, int from)
    {
        switch (Lines(piece, (from, piece.To)))
        {
            case []:
                return Fail(piece, "Nothing in the drink is called so.");
            case [var only] when double.IsNaN(_lines[only].Amount):
                return Fail(piece, "That line has no amount to change.");
            case [var only]:
                _lines[only] = Changed(only, _lines[only].Amount * factor, null, piece.Typed);
                return ReadAs.Edit;
            case var several:
                return Ask(piece, "Which of these lines is meant?", several.Select(i => Changed(i, _lines[i].Amount * factor, null, piece.Typed)));
        }
    }

    private ReadAs Swap(Piece piece, (int From, int To) old, (int From, int To) next)
    {
        if (Lines(piece, old) is not [var line])
        {
            return Fail(piece, "Which line is swapped is not clear: write its name as it stands in the drink.");
        }
        var match = _vocabulary.Find(Words(piece, next));
        var was = _lines[line];
        // The amount stays, so a solid is not put in the place of a liquid.
        var fitting = match.Aliases.Where(a => LineMaker.IsSolid(a.Ingredient) == LineMaker.IsSolid(_vocabulary.Pantry.Find(was.Ingredient)!)).ToList();
        var lines = fitting.Select(a => LineMaker.Make(a.Ingredient, SpecOf(was, piece.Typed) with { StartCelsius = double.NaN }, _measures)).ToList();
        if (match.IsFound && lines.Count == 1)
        {
            _lines[line] = lines[0];
            return ReadAs.Edit;
        }
        var named = string.Join(' ', Words(piece, next));
        return Ask(piece, $"“{named}” is not clear: which one goes in?", lines, named);
    }

    private ReadAs NotThere(Piece piece, (int From, int To) name, double amount, Unit? unit)
    {
        var match = _vocabulary.Find(Words(piece, name));
        var liquids = match.Aliases.Where(a => !LineMaker.IsSolid(a.Ingredient)).ToList();
        var spec = new LineSpec { Text = piece.Typed, Amount = amount, Low = amount, High = amount, Unit = unit ?? _settings.BareNumber };
        return match.Aliases.Count == 0
            ? Fail(piece, "Nothing in the drink is called so.")
            : Ask(piece, "It is not in the drink: add it?", (liquids.Count > 0 ? liquids : match.Aliases).Select(a => LineMaker.Make(a.Ingredient, spec, _measures)));
    }

    /// <summary>"A touch less maple": which way is said, how far is not.</summary>
    private ReadAs Unclear(Piece piece)
    {
        var more = Between(piece, "more") is not null || Between(piece, "touch") is not null && Between(piece, "less") is null;
        var name = Enumerable.Range(piece.From, piece.To - piece.From)
            .FirstOrDefault(i => Lines(piece, (i, piece.To)).Count > 0 && !Small.Contains(piece.Tokens[i].Plain), -1);
        if (name < 0 || (!more && Between(piece, "less") is null))
        {
            return Fail(piece, "This edit was not understood: write it as \"lemon 20 > 22.5\", \"no salt\" or \"+ 2 dashes bitters\".");
        }
        var factor = more ? 1.1 : 0.9;
        return Ask(piece, "How much?", Lines(piece, (name, piece.To)).Where(i => _lines[i].Amount > 0).Select(i => Changed(i, Math.Round(_lines[i].Amount * factor, 2), null, piece.Typed)));
    }

    /// <summary>Hands a piece to the ordinary reading: a line to add, or words of the build.</summary>
    private ReadAs Hand(Piece piece, int from)
    {
        if (from >= piece.To)
        {
            return Fail(piece, "What is added? Write it behind the word.");
        }
        // Blanks in front keep the columns right.
        var start = piece.Tokens[from].Start;
        _added.Add(piece.Number, new string(' ', start) + piece.Text[start..piece.Tokens[piece.To - 1].End]);
        return ReadAs.Edit;
    }

    private ReadAs Ask(Piece piece, string asks, IEnumerable<DraftLine> candidates, string? asNew = null)
    {
        List<Candidate> labelled = [.. candidates.Select(c => new Candidate($"{_vocabulary.Pantry.Find(c.Ingredient)!.Name}, {HouseParse.Echo(c.Amount)} {UnitNames.Of(c.Unit)}", c))];
        if (asNew is { Length: > 0 })
        {
            labelled.Add(new Candidate($"as new: {asNew}", null));
        }
        _questions.Add(new LineQuestion { Text = piece.Typed, Line = piece.Number, Column = piece.Column, Asks = asks, Candidates = labelled });
        return ReadAs.Question;
    }

    private ReadAs Fail(Piece piece, string reason)
    {
        _unread.Add(new UnreadLine(piece.Typed, piece.Number, piece.Column, reason));
        return ReadAs.Unread;
    }

    // ---- which line is meant -------------------------------------------------------------------------------------

    private static string[] Words(Piece piece, (int From, int To) name) =>
        [.. piece.Tokens.Skip(name.From).Take(name.To - name.From).Where(t => t.Plain is not ("" or "." or "'" or "-" or "(" or ")") && !Small.Contains(t.Plain)).Select(t => t.Plain)];

    /// <summary>Lines that a name fits: by any of its readings, else by a word of the ingredient's names.</summary>
    private List<int> Lines(Piece piece, (int From, int To) name)
    {
        var words = Words(piece, name);
        if (words.Length is 0 or > 8)
        {
            return [];
        }
        var match = _vocabulary.Find(words);
        var there = Enumerable.Range(0, _lines.Count).Where(i => match.Aliases.Any(a => a.Ingredient.Id == _lines[i].Ingredient)).ToList();
        if (there.Count > 0)
        {
            return there;
        }
        return [.. Enumerable.Range(0, _lines.Count).Where(i => _vocabulary.Pantry.Find(_lines[i].Ingredient) is { } ingredient && Holds(ingredient, words))];
    }

    private static bool Holds(Ingredient ingredient, string[] words) =>
        ingredient.Aliases.Append(ingredient.Name).Any(a => words.All(w => Tokenizer.Words(a).Contains(w, StringComparer.Ordinal)));

    private bool IsBuild(Piece piece)
    {
        for (var at = piece.From; at < piece.To; at++)
        {
            var word = BarWords.Phrases.Longest(piece.Tokens, at, piece.To);
            if (word.IsFound && word.Values!.Any(m => m.Sense is Sense.Method or Sense.Glass or Sense.Strain or Sense.Ice or Sense.Up or Sense.NoIce))
            {
                return Lines(piece, (piece.From, piece.To)).Count == 0;
            }
        }
        return false;
    }

    private static bool HasAmountAndName(Piece piece) => AmountReader.Read(piece.Tokens, piece.From, piece.To) is not null && piece.To - piece.From > 1;

    private static int? Between(Piece piece, params string[] words)
    {
        for (var at = piece.From; at < piece.To; at++)
        {
            if (words.Contains(piece.Tokens[at].Plain, StringComparer.Ordinal))
            {
                return at;
            }
        }
        return null;
    }

    private static (int At, int End)? Instead(Piece piece) =>
        Between(piece, "instead") is { } at ? (at, at + 1 < piece.To && piece.Tokens[at + 1].Is("of") ? at + 2 : at + 1) : null;

    private static HashSet<string> Set(string words) => new(words.Split(' '), StringComparer.Ordinal);
}
