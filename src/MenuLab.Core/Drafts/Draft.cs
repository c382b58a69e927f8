using MenuLab.Core.House;
using MenuLab.Core.Quantities;

namespace MenuLab.Core.Drafts;

/// <summary>A drink being developed: its name, brief and standing, and one working copy that changes edit by edit.</summary>
public sealed class Draft
{
    /// <summary>Most characters in a name.</summary>
    public const int NameMaxLength = 80;

    /// <summary>Most characters in the key of a style, a method, a glass or an ice.</summary>
    public const int KeyMaxLength = 60;

    /// <summary>Most characters in a reason.</summary>
    public const int ReasonMaxLength = 500;

    /// <summary>Most characters in a line as typed, and in a step of the build.</summary>
    public const int TextMaxLength = 500;

    /// <summary>Most characters in a treatment.</summary>
    public const int TreatmentMaxLength = 200;

    /// <summary>Most lines; a drink has about ten.</summary>
    public const int MaxLines = 100;

    /// <summary>Most steps in a build.</summary>
    public const int MaxSteps = 100;

    /// <summary>Largest amount of a line, in whatever unit: far above any glass, and no figure overflows.</summary>
    public const double LargestAmount = 1e6;

    private readonly List<WorkingLine> _lines = [];

    private Draft(DraftId id, string name, PersonId madeBy, DateTimeOffset madeAt)
    {
        Id = id;
        Name = name;
        SearchName = House.SearchName.Of(name);
        MadeBy = madeBy;
        MadeAt = madeAt;
        ChangedAt = madeAt;
    }

    /// <summary>Identity.</summary>
    public DraftId Id { get; private set; }

    /// <summary>Name as shown.</summary>
    public string Name { get; private set; }

    /// <summary>Name as searched.</summary>
    public string SearchName { get; private set; }

    /// <summary>Key of its style; null for none yet.</summary>
    public string? Style { get; private set; }

    /// <summary>Where the work stands.</summary>
    public Standing Standing { get; private set; }

    /// <summary>Why it stands there; empty while it is in the works.</summary>
    public string StandingReason { get; private set; } = "";

    /// <summary>What it must achieve.</summary>
    public Brief Brief { get; private set; } = Brief.Open;

    /// <summary>Who started it.</summary>
    public PersonId MadeBy { get; private set; }

    /// <summary>When it was started.</summary>
    public DateTimeOffset MadeAt { get; private set; }

    /// <summary>When it last changed.</summary>
    public DateTimeOffset ChangedAt { get; private set; }

    /// <summary>When it was archived; null while it is not.</summary>
    public DateTimeOffset? ArchivedAt { get; private set; }

    /// <summary>Version of the working copy: 0 at the start, one more with every edit.</summary>
    public int Version { get; private set; }

    /// <summary>Number of the iteration that was last put on the bench; null where none was.</summary>
    public int? StartedFrom { get; private set; }

    /// <summary>Version at which that happened.</summary>
    public int StartedAtVersion { get; private set; }

    /// <summary>The lines in order.</summary>
    public IReadOnlyList<WorkingLine> Lines => [.. _lines.OrderBy(l => l.Position)];

    /// <summary>The build.</summary>
    public WorkingBuild Build { get; private set; } = new();

    /// <summary>The lines that are understood, in order, as the balance takes them.</summary>
    public IReadOnlyList<DraftLine> DraftLines => [.. Lines.Select(l => l.Content.ToDraftLine()).OfType<DraftLine>()];

    /// <summary>Volume of lines that are kept as typed and would go into the drink, mL, where it is certain.</summary>
    public double UncountedMillilitres => _lines.Where(l => l.Ingredient is null && l.Place == Place.In).Sum(l => l.Millilitres ?? 0);

    /// <summary>Starts a draft.</summary>
    /// <param name="id">Identity.</param>
    /// <param name="name">Name, 1 to 80 characters without line breaks.</param>
    /// <param name="by">Who starts it.</param>
    /// <param name="at">When.</param>
    /// <returns>The draft, or what is wrong with the name.</returns>
    public static Result<Draft> Start(DraftId id, string? name, PersonId by, DateTimeOffset at)
    {
        var problems = new List<Problem>();
        var trimmed = OneLine.Check(name, 1, NameMaxLength, nameof(Name), "a name", problems);
        return problems.Count > 0 ? Result.Invalid<Draft>(problems) : Result.Ok(new Draft(id, trimmed, by, at));
    }

    /// <summary>Number of the iteration that the working copy goes on from.</summary>
    /// <param name="last">Number of the last iteration; null where there is none.</param>
    /// <param name="lastSavedVersion">Version of the working copy that it saved.</param>
    /// <returns>The one that was put on the bench, unless an iteration was saved since; then that one. Null before the first.</returns>
    public int? GoesOnFrom(int? last, int lastSavedVersion) => last is null ? null : StartedFrom is { } number && StartedAtVersion > lastSavedVersion ? number : last;

    /// <summary>Takes the draft out of every list; what refers to it stays.</summary>
    public void Archive(DateTimeOffset at)
    {
        ArchivedAt ??= at;
        ChangedAt = at;
    }

    /// <summary>
    /// Applies an edit. A field that nobody else touched since the version seen is simply set; one that collides is set
    /// too, and the other value is told. An edit that was applied before is not applied again.
    /// </summary>
    /// <param name="edit">The edit.</param>
    /// <param name="since">All edits of this draft with a version above the one seen, in order.</param>
    /// <param name="understand">
    /// Gives a content whose ingredient or amount (but not both) changed its millilitres and grams. An edit that sets both,
    /// and a line that is added, bring theirs along.
    /// </param>
    /// <returns>What became of it, or why it cannot be applied; then nothing has changed.</returns>
    public Result<EditOutcome> Apply(Edit edit, IReadOnlyList<AppliedEdit> since, Func<LineContent, LineContent> understand)
    {
        for (var i = 0; i < since.Count; i++)
        {
            if (since[i].Edit.Id == edit.Id)
            {
                return Result.Ok(new EditOutcome(since[i], EditFields.Collisions(since[i].Edit, [.. since.Take(i)])));
            }
        }
        if (edit.Seen < 0 || edit.Seen > Version)
        {
            return Invalid(nameof(edit.Seen), "This page is ahead of the database, which was restored to an earlier state: reload the page.");
        }
        var problems = Check(edit.Action);
        if (problems.Count > 0)
        {
            return Result.Invalid<EditOutcome>(problems);
        }
        var (undo, problem) = Do(edit, since, understand);
        if (undo is null)
        {
            return Invalid("line", problem);
        }
        Version++;
        ChangedAt = edit.At;
        return Result.Ok(new EditOutcome(new AppliedEdit(edit, Version, undo), EditFields.Collisions(edit, since)));
    }

    private static Result<EditOutcome> Invalid(string field, string message) => Result.Invalid<EditOutcome>(new Problem(field, message));

    private static (EditAction? Undo, string Problem) Undone(EditAction undo) => (undo, "");

    private static (EditAction? Undo, string Problem) Refused(string problem) => (null, problem);

    private (EditAction? Undo, string Problem) Do(Edit edit, IReadOnlyList<AppliedEdit> since, Func<LineContent, LineContent> understand)
    {
        switch (edit.Action)
        {
            case AddLine add:
                return Add(add);
            case ChangeLine change:
                return Change(change, edit.Page, since, understand);
            case MoveLine move:
                return Move(move);
            case RemoveLine remove:
                return Remove(remove);
            case ChangeBuild change:
                var build = Build.Value;
                Build.Set(change.Fields, change.Build);
                return Undone(change with { Build = build });
            case ChangeBrief change:
                var brief = Brief;
                Brief = Merge(brief, change.Fields, change.Brief);
                return Undone(change with { Brief = brief });
            case Rename rename:
                var name = Name;
                Name = rename.Name.Trim();
                SearchName = House.SearchName.Of(Name);
                return Undone(new Rename(name));
            case ChooseStyle choose:
                var style = Style;
                Style = choose.Style;
                return Undone(new ChooseStyle(style));
            case Stand stand:
                var stood = new Stand(Standing, StandingReason);
                Standing = stand.Standing;
                StandingReason = stand.Reason.Trim();
                return Undone(stood);
            case StartFrom start:
                return Start(start);
            default:
                throw new ArgumentException($"Nobody knows how to do {edit.Action.GetType().Name}.", nameof(edit));
        }
    }

    private (EditAction? Undo, string Problem) Start(StartFrom start)
    {
        if (start.Lines.Count > MaxLines)
        {
            return Refused($"A draft holds at most {MaxLines} lines.");
        }
        if (start.Lines.DistinctBy(l => l.Line).Count() != start.Lines.Count)
        {
            return Refused("A line stands twice in what is to be put on the bench.");
        }
        var before = new StartFrom(StartedFrom, [.. Lines.Select(l => new PlacedLine(l.Id, l.Content))], Build.Value, StartedAtVersion);
        _lines.Clear();
        _lines.AddRange(start.Lines.Select((l, i) => new WorkingLine(l.Line, i + 1, l.Content)));
        Build.Set(Enum.GetValues<BuildFields>().Aggregate((all, field) => all | field), start.Build);
        StartedFrom = start.Iteration;
        StartedAtVersion = start.AtVersion ?? Version + 1;
        return Undone(before);
    }

    private (EditAction? Undo, string Problem) Add(AddLine add)
    {
        if (Find(add.Line) is not null)
        {
            return Refused("This line stands in the draft already.");
        }
        if (_lines.Count == MaxLines)
        {
            return Refused($"A draft holds at most {MaxLines} lines.");
        }
        Insert(new WorkingLine(add.Line, 0, add.Content), add.After);
        return Undone(new RemoveLine(add.Line));
    }

    private (EditAction? Undo, string Problem) Change(ChangeLine change, PageId page, IReadOnlyList<AppliedEdit> since, Func<LineContent, LineContent> understand)
    {
        var line = Find(change.Line);
        EditAction? undo = null;
        if (line is null)
        {
            // Somebody removed the line while this author typed into it: what is typed wins over what is taken away.
            if (_lines.Count == MaxLines || Removed(change.Line, page, since) is not { } again)
            {
                return Refused("This line was removed.");
            }
            line = new WorkingLine(again.Line, 0, again.Content);
            Insert(line, again.After);
            undo = new RemoveLine(change.Line);
        }
        var before = line.Content;
        var after = WorkingLine.Merge(before, change.Fields, change.Content);
        const LineFields Measured = LineFields.Ingredient | LineFields.Amount;
        if (change.Fields.HasFlag(Measured))
        {
            after = after with { Understood = change.Content.Understood };
        }
        else if ((change.Fields & Measured) != 0)
        {
            after = understand(after);
        }
        line.Set(after);
        return Undone(undo ?? change with { Content = before });
    }

    /// <summary>The line as it was when another page took it off the bench; null where none did.</summary>
    private static AddLine? Removed(LineId line, PageId page, IReadOnlyList<AppliedEdit> since)
    {
        for (var i = since.Count - 1; i >= 0; i--)
        {
            if (since[i].Edit.Page == page)
            {
                continue;
            }
            if (since[i].Undo is AddLine add && add.Line == line)
            {
                return add;
            }
            if (since[i].Undo is StartFrom start)
            {
                for (var place = 0; place < start.Lines.Count; place++)
                {
                    if (start.Lines[place].Line == line)
                    {
                        return new AddLine(line, start.Lines[place].Content, place == 0 ? null : start.Lines[place - 1].Line);
                    }
                }
            }
        }
        return null;
    }

    private (EditAction? Undo, string Problem) Move(MoveLine move)
    {
        if (Find(move.Line) is not { } line)
        {
            return Refused("This line was removed.");
        }
        if (move.After == move.Line)
        {
            return Refused("A line cannot stand below itself.");
        }
        var above = Above(line);
        _lines.Remove(line);
        Insert(line, move.After);
        return Undone(new MoveLine(move.Line, above));
    }

    private (EditAction? Undo, string Problem) Remove(RemoveLine remove)
    {
        if (Find(remove.Line) is not { } line)
        {
            return Refused("This line was removed.");
        }
        var above = Above(line);
        _lines.Remove(line);
        Renumber(Lines);
        return Undone(new AddLine(line.Id, line.Content, above));
    }

    private WorkingLine? Find(LineId id) => _lines.Find(l => l.Id == id);

    private LineId? Above(WorkingLine line) => _lines.Find(l => l.Position == line.Position - 1)?.Id;

    private void Insert(WorkingLine line, LineId? after)
    {
        var order = Lines.ToList();
        var anchor = after is { } id ? order.FindIndex(l => l.Id == id) : -1;
        order.Insert(after is null ? 0 : anchor < 0 ? order.Count : anchor + 1, line);
        _lines.Add(line);
        Renumber(order);
    }

    private static void Renumber(IReadOnlyList<WorkingLine> order)
    {
        for (var i = 0; i < order.Count; i++)
        {
            order[i].Position = i + 1;
        }
    }

    private static Brief Merge(Brief into, BriefFields fields, Brief from) => into with
    {
        Slot = fields.HasFlag(BriefFields.Slot) ? from.Slot : into.Slot,
        Claim = fields.HasFlag(BriefFields.Claim) ? from.Claim : into.Claim,
        Flavour = fields.HasFlag(BriefFields.Flavour) ? from.Flavour : into.Flavour,
        CostLimit = fields.HasFlag(BriefFields.CostLimit) ? from.CostLimit : into.CostLimit,
        Price = fields.HasFlag(BriefFields.Price) ? from.Price : into.Price,
        Avoid = fields.HasFlag(BriefFields.Avoid) ? from.Avoid : into.Avoid,
        Equipment = fields.HasFlag(BriefFields.Equipment) ? from.Equipment : into.Equipment,
        Due = fields.HasFlag(BriefFields.Due) ? from.Due : into.Due,
    };

    private static List<Problem> Check(EditAction action)
    {
        var problems = new List<Problem>();
        switch (action)
        {
            case AddLine add:
                Check(add.Content, problems);
                break;
            case ChangeLine change:
                Check(change.Content, problems);
                break;
            case ChangeBuild change:
                Check(change.Build, problems);
                break;
            case ChangeBrief change:
                foreach (var text in new[] { change.Brief.Slot, change.Brief.Claim, change.Brief.Flavour, change.Brief.Equipment })
                {
                    Length(text, Brief.TextMaxLength, "brief", "Each text of a brief", problems);
                }
                if (change.Brief.CostLimit is { Amount: < 0 } || change.Brief.Price is { Amount: < 0 })
                {
                    problems.Add(new Problem("brief", "Money in a brief is zero or more."));
                }
                break;
            case Rename rename:
                OneLine.Check(rename.Name, 1, NameMaxLength, nameof(Name), "a name", problems);
                break;
            case ChooseStyle style:
                Length(style.Style, KeyMaxLength, nameof(Style), "The key of a style", problems);
                break;
            case StartFrom start:
                foreach (var line in start.Lines)
                {
                    Check(line.Content, problems);
                }
                Check(start.Build, problems);
                break;
            case Stand stand:
                OneLine.Check(stand.Reason, stand.Standing == Standing.Dropped ? 1 : 0, ReasonMaxLength, nameof(StandingReason), "a reason", problems);
                break;
        }
        return problems;
    }

    private static void Check(LineContent content, List<Problem> problems)
    {
        Length(content.Text, TextMaxLength, "text", "A line", problems);
        Length(content.Treatment, TreatmentMaxLength, "treatment", "A treatment", problems);
        double?[] amounts =
        [
            content.Amount.Value, content.Amount.Low, content.Amount.High, content.Understood.Millilitres, content.Understood.Grams, content.Understood.GramsUncertainty,
        ];
        if (amounts.Any(a => a is { } amount && !(amount >= 0 && amount <= LargestAmount)))
        {
            problems.Add(new Problem("amount", "An amount is zero or more, and at most a million."));
        }
        if (content.StartCelsius is { } celsius && !(celsius >= Temperature.LowestCelsius && celsius <= Temperature.HighestCelsius))
        {
            problems.Add(new Problem("start", $"A line starts between {Temperature.LowestCelsius} and {Temperature.HighestCelsius} °C."));
        }
    }

    private static void Check(Build build, List<Problem> problems)
    {
        foreach (var key in new[] { build.Method, build.Ice, build.Glass, build.Strain, build.ServedOn })
        {
            Length(key, KeyMaxLength, "build", "The key of a method, ice or glass", problems);
        }
        if (build.Seconds is { } seconds && !(seconds >= 0 && seconds <= LargestAmount))
        {
            problems.Add(new Problem("build_seconds", "Seconds are zero or more, and at most a million."));
        }
        if (build.Steps.Count > MaxSteps)
        {
            problems.Add(new Problem("build_steps", $"A build has at most {MaxSteps} steps."));
        }
        foreach (var step in build.Steps)
        {
            Length(step, TextMaxLength, "build_steps", "A step", problems);
            if (step.Contains('\n'))
            {
                problems.Add(new Problem("build_steps", "A step stands on one line."));
            }
        }
    }

    private static void Length(string? text, int longest, string field, string what, List<Problem> problems)
    {
        if (text?.Length > longest)
        {
            problems.Add(new Problem(field, $"{what} has at most {longest} characters."));
        }
    }
}
