using MenuLab.Core.House;

namespace MenuLab.Core.Drafts.Reading;

/// <summary>One drink while it is read, source line after source line.</summary>
internal sealed class DrinkInReading(Vocabulary vocabulary, MeasuresSet measures, ReadSettings settings)
{
    private readonly List<Pending> _pending = [];
    private readonly List<UnreadLine> _unread = [];
    private readonly List<string> _notes = [];
    private readonly List<SourceLine> _account = [];
    private readonly BuildReader _build = new();
    private string _name = "";
    private ReadYield? _yield;
    private double _total = double.NaN;
    private bool _isListOfParts;
    private bool _isFirst = true;
    private bool _isEdit;

    /// <summary>For an edit: the build that is there, whose fields are replaced by what is said now.</summary>
    public void ContinueFrom(Build build)
    {
        _build.StartFrom(build);
        _isFirst = false;
        _isEdit = true;
    }

    private void Build(Clause clause)
    {
        if (_isEdit)
        {
            _build.Replace(clause);
        }
        else
        {
            _build.Add(clause);
        }
    }

    public void Add(int number, string text)
    {
        var tokens = Tokenizer.Cut(text);
        var from = Bullets.Skip(tokens);
        var clauses = new ClauseScanner(vocabulary, text, tokens, from).Scan();
        var reader = new LineReader(vocabulary, measures, settings, text, tokens);
        var joined = ClauseJoiner.Join(clauses, reader.IsOneName, c => reader.Match(c).IsFound);
        var source = new Source(number, text, tokens, reader);
        if (joined.Count == 0)
        {
            // Only marks: a rule between two parts of the text.
            Account(source, 0, text.Length, ReadAs.Note);
            return;
        }
        var pieces = new ReadAs[joined.Count];
        var onNameLine = _isFirst && IsName(joined[0], source);
        if (!onNameLine && joined.Any(c => c.Ratio is not null))
        {
            ReadRatio(joined, source, pieces);
        }
        else
        {
            for (var i = 0; i < joined.Count; i++)
            {
                pieces[i] = onNameLine && i == 0 ? ReadName(joined[i], source) : Read(joined[i], source, onNameLine);
            }
        }
        _isFirst = false;
        for (var i = 0; i < joined.Count; i++)
        {
            var first = i;
            // What is noted side by side was written as one remark.
            while (pieces[i] == ReadAs.Note && i + 1 < joined.Count && pieces[i + 1] == ReadAs.Note)
            {
                i++;
            }
            var start = first == 0 ? 0 : tokens[joined[first].From].Start;
            var end = i + 1 < joined.Count ? tokens[joined[i + 1].From].Start : text.Length;
            Account(source, start, end, pieces[i]);
        }
    }

    public void KeepUnread(int number, int column, string text, string reason)
    {
        _unread.Add(new UnreadLine(text.Trim(), number, column, reason));
        _account.Add(new SourceLine(number, 1, text, ReadAs.Unread));
        _isFirst = false;
    }

    /// <summary>A source line with what reads it.</summary>
    private sealed record Source(int Number, string Text, List<Token> Tokens, LineReader Reader)
    {
        public string Of(Clause clause)
        {
            var from = clause.From;
            var to = Math.Min(clause.To, Tokens.Count);
            while (from < to - 1 && IsSeparator(Tokens[from]))
            {
                from++;
            }
            while (to - 1 > from && IsSeparator(Tokens[to - 1]))
            {
                to--;
            }
            return from < to ? Text[Tokens[from].Start..Tokens[to - 1].End] : "";
        }

        public int Column(Clause clause) => Tokens[Math.Min(clause.From, Tokens.Count - 1)].Start + 1;

        private static bool IsSeparator(Token token) => token.Kind == TokenKind.Mark && token.Plain is "," or ";" or "." or "/" or "-" or "--" or "+" or ":" or "..." or "(" or ")";
    }

    private void Account(Source source, int start, int end, ReadAs what)
    {
        var piece = source.Text[start..end];
        var trimmed = piece.Trim();
        if (trimmed.Length > 0)
        {
            _account.Add(new SourceLine(source.Number, start + piece.IndexOf(trimmed[0], StringComparison.Ordinal) + 1, trimmed, what));
            if (what == ReadAs.Note && trimmed.Any(char.IsLetterOrDigit))
            {
                _notes.Add(trimmed);
            }
        }
    }

    // ---- the name ------------------------------------------------------------------------------------------------

    private static bool IsName(Clause clause, Source source)
    {
        if (!clause.HasName || clause.SaysPlace || clause.Ratio is not null || clause.Says(Sense.EqualParts) || clause.Says(Sense.Makes) || clause.Says(Sense.Total)
            || (clause.Unit is not null && (clause.HasAmount || clause.UnitAt <= clause.Name.Min())) || clause.Trouble.Length > 0 || clause.OrAt >= 0)
        {
            return false;
        }
        if (clause.HasBuild && (!clause.HasStrangers || (clause.Build[0].At == clause.From && clause.Build[0].Meaning.Sense != Sense.Up)))
        {
            return false;
        }
        if (clause.HasAmount && clause.Amount!.Value.Trouble.Length == 0 && (source.Tokens[clause.From].Kind == TokenKind.Word || source.Tokens[clause.From].Is("#")) && clause.Name.Min() >= clause.Amount.Value.End)
        {
            // "Three Anchors", "#4 Foghorn": a number in words in front of a name that no ingredient has.
            return clause.HasStrangers && clause.Name.All(i => !source.Reader.IsNameWordOfPantry(i));
        }
        if (clause.HasAmount)
        {
            // "slack rope 2": a number behind words of which none is an ingredient's.
            return clause.Name.Max() < clause.Amount!.Value.End - 1 && clause.HasStrangers && clause.Name.All(i => !source.Reader.IsNameWordOfPantry(i));
        }
        return !source.Reader.Match(clause).IsFound;
    }

    private ReadAs ReadName(Clause clause, Source source)
    {
        _name = source.Of(clause).Trim();
        return ReadAs.Name;
    }

    // ---- one clause ----------------------------------------------------------------------------------------------

    private ReadAs Read(Clause clause, Source source, bool onNameLine)
    {
        var typed = source.Of(clause);
        if (clause.Trouble.Length > 0)
        {
            return onNameLine ? ReadAs.Note : Unread(source, typed, clause.Trouble, clause.TroubleAt);
        }
        if (ReadYieldOrTotal(clause, typed) is { } yielded)
        {
            return yielded;
        }
        if (clause.Says(Sense.EqualParts) && !clause.HasName)
        {
            _isListOfParts = true;
            return ReadAs.Note;
        }
        _isListOfParts |= clause.Says(Sense.EqualParts);
        if (_isListOfParts && clause.HasName && clause.Amount is { Trouble: "" } && clause.Unit is { } unit && clause.Name.Max() < clause.Amount.Value.End - 1
            && !double.IsNaN(UnitWords.Millilitres(unit, measures)))
        {
            // "... and dry vermouth to 75 ml": the last name carries the total.
            TakeTotal(clause);
            return Line(clause, source, typed, isEqualPart: true);
        }
        if (clause.InBrackets && !clause.HasAmount && !clause.SaysPlace)
        {
            return ReadAs.Note;
        }
        if (IsEmptyOfLine(clause))
        {
            return clause.HasBuild || clause.Says(Sense.Step) || !double.IsNaN(clause.Seconds) ? BuildOnly(clause, typed) : ReadAs.Note;
        }
        if (!clause.HasAmount && clause.Unit is null && !clause.SaysPlace && !(clause.Says(Sense.Vague) && source.Reader.Match(clause).IsFound))
        {
            return WithoutAmount(clause, source, typed, onNameLine);
        }
        if (onNameLine && (!clause.HasName || (clause.Unit is null && !source.Reader.Match(clause).IsFound)))
        {
            return ReadAs.Note;
        }
        if (clause.Says(Sense.Rinse) && !clause.HasAmount && clause.HasBuild)
        {
            // "Rinse a coupe with ...": the glass is named on the way.
            Build(clause);
        }
        if (clause.HasAmount && clause.Unit is null && (clause.Says(Sense.Step) || clause.HasBuild) && clause.HasStrangers && !clause.SaysPlace && !source.Reader.Match(clause).IsFound && clause.Name.All(i => !source.Reader.IsNameWordOfPantry(i)))
        {
            // "Stirred down 40 revolutions", "simmer 3 good minutes": a figure of the step.
            return BuildOnly(clause, typed);
        }
        return Line(clause, source, typed, isEqualPart: false);
    }

    private static bool IsEmptyOfLine(Clause clause) => !clause.HasName && !clause.HasAmount && clause.Unit is null && !clause.SaysPlace;

    private ReadAs Line(Clause clause, Source source, string typed, bool isEqualPart)
    {
        if (!clause.HasBuild && !double.IsNaN(clause.Seconds))
        {
            Build(clause);
        }
        if (clause.HasBuild && !clause.Says(Sense.Rinse))
        {
            Build(clause);
            _build.AddStep(BuildWordsOf(clause, source));
        }
        var outcome = source.Reader.Read(clause, source.Number, source.Column(clause), typed, isEqualPart);
        if (outcome.Pending is not { } pending)
        {
            return Unread(source, typed, outcome.Unread!, clause.From);
        }
        _pending.Add(pending);
        if (!isEqualPart && clause.HasAmount && clause.Unit != Drafts.Unit.Part)
        {
            _isListOfParts = false;
        }
        return pending.Asks is null && pending.Ingredients.Count == 1 && pending.Specs.Count == 1 ? ReadAs.Line : ReadAs.Question;
    }

    private static string BuildWordsOf(Clause clause, Source source)
    {
        var first = clause.Build.Min(b => b.At);
        var last = clause.Build.Max(b => b.End) - 1;
        // Build words on both sides of the name ("shake 45 ml apple juice with cubes"): the step is the whole clause.
        var nameInside = clause.Name.Any(i => i > first && i < last);
        return nameInside ? source.Of(clause) : source.Text[source.Tokens[first].Start..source.Tokens[last].End];
    }

    private ReadAs BuildOnly(Clause clause, string typed)
    {
        if (clause.Says(Sense.Told))
        {
            return ReadAs.Note;
        }
        Build(clause);
        _build.AddStep(typed);
        _isListOfParts = false;
        return ReadAs.Build;
    }

    private ReadAs WithoutAmount(Clause clause, Source source, string typed, bool onNameLine)
    {
        if (_isListOfParts && !clause.HasBuild)
        {
            return Line(clause, source, typed, isEqualPart: true);
        }
        if (clause.HasBuild || (clause.Says(Sense.Step) && clause.HasStrangers))
        {
            return Told(clause) || IsRemark(clause) ? ReadAs.Note : Step(clause, source, typed);
        }
        var match = source.Reader.Match(clause);
        var isNamed = match.IsFound || clause.OrAt >= 0 || clause.Says(Sense.ToTaste);
        return isNamed && !onNameLine && !clause.Says(Sense.Told) ? Line(clause, source, typed, isEqualPart: false) : ReadAs.Note;
    }

    /// <summary>"Needs to warm up a bit", "tastes like a shaken milk": words of the bar in a sentence about something else.</summary>
    private static bool IsRemark(Clause clause) =>
        clause.HasBuild && clause.HasStrangers && clause.Build[0].At > clause.From && clause.Name.Count > clause.Build.Count && !clause.Says(Sense.Label);

    private static bool Told(Clause clause) => clause.Says(Sense.Told);

    /// <summary>A step that names an ingredient which is no line yet asks for its amount; else it is kept as written.</summary>
    private ReadAs Step(Clause clause, Source source, string typed)
    {
        var match = source.Reader.Match(clause);
        if (match.IsFound && !clause.HasStrangers && !_pending.Any(p => p.Ingredients.Any(i => match.Aliases.Any(a => a.Ingredient.Id == i.Ingredient.Id))))
        {
            return Line(clause, source, typed, isEqualPart: false);
        }
        Build(clause);
        _build.AddStep(typed);
        return ReadAs.Build;
    }

    private ReadAs Unread(Source source, string typed, string reason, int at)
    {
        var token = source.Tokens[Math.Min(at, source.Tokens.Count - 1)];
        _unread.Add(new UnreadLine(typed, source.Number, token.Start + 1, reason));
        return ReadAs.Unread;
    }

    // ---- yields, totals, parts -----------------------------------------------------------------------------------

    private ReadAs? ReadYieldOrTotal(Clause clause, string typed)
    {
        if (!clause.HasAmount || clause.HasName)
        {
            return null;
        }
        var millilitres = clause.Amount!.Value.Value * UnitWords.Millilitres(clause.Unit ?? Drafts.Unit.None, measures);
        if (clause.Says(Sense.Total) || (clause.IsBareAmount && _isListOfParts && !double.IsNaN(millilitres)))
        {
            _total = double.IsNaN(millilitres) ? clause.Amount.Value.Value * UnitWords.Millilitres(settings.BareNumber, measures) : millilitres;
            _isListOfParts |= clause.Says(Sense.EqualParts);
            return ReadAs.Yield;
        }
        if (clause.Says(Sense.Makes) || clause.Says(Sense.Drinks))
        {
            _yield ??= new ReadYield(typed, clause.Unit is null ? clause.Amount.Value.Value : double.NaN, millilitres);
            _total = double.IsNaN(_total) ? millilitres : _total;
            return ReadAs.Yield;
        }
        return null;
    }

    /// <summary>"3:2:1 a / b / c, 90 ml" and "3 oz total, 2:1 a, b": numbers to names in their order.</summary>
    private void ReadRatio(List<Clause> clauses, Source source, ReadAs[] pieces)
    {
        var ratio = clauses.First(c => c.Ratio is not null).Ratio!;
        var names = clauses.Where(c => c.HasName).ToList();
        var fits = names.Count == ratio.Length && ratio.All(r => r > 0);
        var next = 0;
        for (var i = 0; i < clauses.Count; i++)
        {
            var clause = clauses[i];
            var typed = source.Of(clause);
            if (clause.HasName && !fits)
            {
                pieces[i] = Unread(source, typed, $"The ratio has {ratio.Length} numbers and the list {names.Count} names.", clause.From);
                continue;
            }
            if (clause.HasName)
            {
                // "honey to 90 ml": the amount behind the last name is the total.
                TakeTotal(clause);
                clause.Amount = Reading.Amount.Of(ratio[next++], clause.From);
                clause.Unit = Drafts.Unit.Part;
                pieces[i] = Line(clause, source, typed, isEqualPart: false);
                continue;
            }
            if (clause.HasAmount)
            {
                TakeTotal(clause);
                pieces[i] = ReadAs.Yield;
                continue;
            }
            pieces[i] = Read(clause, source, onNameLine: false);
        }
    }

    private void TakeTotal(Clause clause)
    {
        if (clause.Amount is { Trouble: "" } amount)
        {
            _total = amount.Value * UnitWords.Millilitres(clause.Unit ?? settings.BareNumber, measures);
        }
    }

    // ---- the end -------------------------------------------------------------------------------------------------

    public ReadDrink Done()
    {
        var build = _build.Done(vocabulary.Catalogue);
        foreach (var other in _build.OtherMethods.Distinct(StringComparer.Ordinal))
        {
            _notes.Add($"Two methods are named: {build.Method} was taken, {other} stands in the steps.");
        }
        var method = vocabulary.Catalogue.Method(build.Method ?? settings.Method);
        var lines = new List<DraftLine>();
        var questions = new List<LineQuestion>();
        foreach (var pending in Shared(_pending))
        {
            if (pending.Asks is null && pending.NewName is null && pending.Specs.Count == 1 && pending.Ingredients.Count == 1)
            {
                lines.Add(pending.ToLine(measures, method));
            }
            else
            {
                questions.Add(pending.ToQuestion(measures, method));
            }
        }
        return new ReadDrink
        {
            Name = _name,
            Lines = lines,
            Questions = questions,
            Unread = _unread,
            Build = build,
            Yield = _yield,
            Notes = _notes,
            Account = _account,
        };
    }

    /// <summary>Parts become volumes where a total is known; without one they are asked.</summary>
    private List<Pending> Shared(List<Pending> all)
    {
        var parts = all.Where(p => p.IsPart).Sum(p => p.Specs[0].Amount);
        var total = double.IsNaN(_total) ? settings.PartsTotalMillilitres ?? double.NaN : _total;
        return [.. all.Select(p => !p.IsPart ? p : p with
        {
            Specs = [p.Specs[0] with { PartMillilitres = total / parts }],
            Asks = p.Asks ?? (double.IsNaN(total) ? "Parts of what total?" : null),
        })];
    }
}
