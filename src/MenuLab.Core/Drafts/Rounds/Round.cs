using MenuLab.Core.House;

namespace MenuLab.Core.Drafts.Rounds;

/// <summary>
/// Two to six variants of a draft side by side. All share the lines and the build that stood on the bench when the round
/// started; a pour says only where it differs. A round's amounts are those of a whole drink, whatever its size; what was
/// poured is what went into the glass.
/// </summary>
public sealed class Round
{
    /// <summary>Fewest pours.</summary>
    public const int FewestPours = 2;

    /// <summary>Most pours.</summary>
    public const int MostPours = 6;

    private readonly List<Pour> _pours = [];
    private readonly List<PourCell> _cells = [];
    private readonly byte[] _content;
    private RoundContent? _read;

    private Round(RoundId id, DraftId draft, int number, PersonId by, DateTimeOffset at, SizeKind sizeKind, double? sizeGrams, int fromVersion, byte[] content)
    {
        Id = id;
        Draft = draft;
        Number = number;
        By = by;
        At = at;
        SizeKind = sizeKind;
        SizeGrams = sizeGrams;
        FromVersion = fromVersion;
        _content = content;
    }

    /// <summary>Identity.</summary>
    public RoundId Id { get; private set; }

    /// <summary>The draft.</summary>
    public DraftId Draft { get; private set; }

    /// <summary>Its number within the draft, from 1.</summary>
    public int Number { get; private set; }

    /// <summary>Who started it.</summary>
    public PersonId By { get; private set; }

    /// <summary>When.</summary>
    public DateTimeOffset At { get; private set; }

    /// <summary>How large its pours are.</summary>
    public RoundSize Size => new(SizeKind, SizeGrams);

    /// <summary>The sort of <see cref="Size"/>.</summary>
    public SizeKind SizeKind { get; private set; }

    /// <summary>Grams of a pour by weight.</summary>
    public double? SizeGrams { get; private set; }

    /// <summary>Version of the working copy that it started from.</summary>
    public int FromVersion { get; private set; }

    /// <summary>Number of the iteration that the working copy went on from; null before the first.</summary>
    public int? FromIteration { get; private set; }

    /// <summary>The round that it goes on from; null where it started from the bench.</summary>
    public RoundId? FromRound { get; private set; }

    /// <summary>The pour of that round.</summary>
    public PourLetter? FromPour { get; private set; }

    /// <summary>The pour that won; null while none has.</summary>
    public PourLetter? Winner { get; private set; }

    /// <summary>When it ended; null while it goes on.</summary>
    public DateTimeOffset? EndedAt { get; private set; }

    /// <summary>Who ended it.</summary>
    public PersonId? EndedBy { get; private set; }

    /// <summary>Number of the iteration that its winner became; null where it became none.</summary>
    public int? Iteration { get; private set; }

    /// <summary>The lines that all pours share, in order, as they were when it started.</summary>
    public IReadOnlyList<PlacedLine> Lines => Content.Lines;

    /// <summary>The build, as it was when it started.</summary>
    public Build Build => Content.Build;

    /// <summary>The pours, A first.</summary>
    public IReadOnlyList<Pour> Pours => [.. _pours.OrderBy(p => p.Letter)];

    /// <summary>The cells that say something, by pour.</summary>
    public IReadOnlyList<PourCell> Cells => [.. _cells.OrderBy(c => c.Letter).ThenBy(c => c.Line.Value)];

    /// <summary>Mass of the whole drink as the lines say it, before ice and tops, g; what has no known mass is not in it.</summary>
    public double DrinkGrams => GramsOf(Lines);

    /// <summary>Share of a whole drink that a pour is.</summary>
    public double Share => Size.ShareOf(DrinkGrams);

    private RoundContent Content => _read ??= RoundText.Read(_content);

    /// <summary>Starts a round from what is on the bench.</summary>
    /// <param name="wish">What is wanted.</param>
    /// <param name="draft">The draft.</param>
    /// <param name="number">Its number within the draft: one more than the last.</param>
    /// <param name="fromIteration">Number of the iteration that the working copy goes on from (<see cref="Drafts.Draft.GoesOnFrom"/>).</param>
    /// <param name="by">Who.</param>
    /// <param name="at">When.</param>
    /// <returns>The round, or all that is wrong with it.</returns>
    public static Result<Round> Start(RoundToStart wish, Draft draft, int number, int? fromIteration, PersonId by, DateTimeOffset at) =>
        Start(wish, [.. draft.Lines.Select(l => new PlacedLine(l.Id, l.Content))], draft.Build.Value, number, draft.Version, fromIteration, by, at);

    /// <summary>Starts the next round from a pour of this one: it shares that pour's lines as they were tasted.</summary>
    /// <param name="wish">What is wanted; its <see cref="RoundToStart.FromPour"/> names the pour.</param>
    /// <param name="number">Its number within the draft.</param>
    /// <param name="understand">What an amount of an ingredient comes to (<see cref="Understanding.Of"/>).</param>
    /// <param name="by">Who.</param>
    /// <param name="at">When.</param>
    /// <returns>The round, or all that is wrong with it.</returns>
    public Result<Round> GoOn(RoundToStart wish, int number, Func<LineContent, LineContent> understand, PersonId by, DateTimeOffset at)
    {
        if (wish.FromPour is not { } letter || !Has(letter))
        {
            return Result.Invalid<Round>(new Problem("pour", $"Round {Number} has no such pour to go on from."));
        }
        var started = Start(wish, Winners.Lines(this, letter, understand), Build, number, FromVersion, FromIteration, by, at);
        if (started.IsOk)
        {
            (started.Value.FromRound, started.Value.FromPour) = (Id, letter);
        }
        return started;
    }

    /// <summary>It has a pour of this name.</summary>
    public bool Has(PourLetter letter) => _pours.Exists(p => p.Letter == letter);

    /// <summary>A line by its id; null where the round has none.</summary>
    public PlacedLine? Line(LineId line) => Lines.FirstOrDefault(l => l.Line == line);

    /// <summary>A cell; null where it says nothing.</summary>
    public PourCell? Cell(PourLetter letter, LineId line) => _cells.Find(c => c.Letter == letter && c.Line == line);

    /// <summary>How much a whole drink of this pour is to get of a line, in the line's unit; null for a line without an amount.</summary>
    public double? Specified(PourLetter letter, PlacedLine line) => Cell(letter, line.Line)?.Specified ?? line.Content.Amount.Value;

    /// <summary>How much of a line is to go into the glass of this pour, in the line's unit: a half of a half.</summary>
    public double? ToPour(PourLetter letter, PlacedLine line) => Specified(letter, line) * (GlassLines.Scales(line.Content) ? Share : 1);

    /// <summary>How much of a line went into the glass of this pour, in the line's unit: what was poured, else what was to be poured.</summary>
    public double? InGlass(PourLetter letter, PlacedLine line) => Cell(letter, line.Line)?.Poured ?? ToPour(letter, line);

    /// <summary>The cell is specified otherwise than the line that all pours share.</summary>
    public bool IsChanged(PourLetter letter, PlacedLine line) => Specified(letter, line) != line.Content.Amount.Value;

    /// <summary>Something else was poured than was to be poured.</summary>
    public bool IsPouredOtherwise(PourLetter letter, PlacedLine line) =>
        Cell(letter, line.Line)?.Poured is { } poured && !(Math.Abs(poured - (ToPour(letter, line) ?? double.NaN)) < 1e-9);

    /// <summary>Not every pour is to get the same of this line.</summary>
    public bool Differs(PlacedLine line) => _pours.Select(p => Specified(p.Letter, line)).Distinct().Count() > 1;

    /// <summary>Adds a pour under the next letter, like another one: "pour it as D".</summary>
    /// <param name="letter">The letter that the page offered; where it is there already, nothing is added.</param>
    /// <param name="like">The pour whose amounts it takes; null for the lines as they are.</param>
    /// <returns>The pour, or why there is none.</returns>
    public Result<Pour> Add(PourLetter letter, PourLetter? like)
    {
        if (_pours.Find(p => p.Letter == letter) is { } there)
        {
            return Result.Ok(there);
        }
        if (!Enum.IsDefined(letter) || (int)letter != _pours.Count)
        {
            return Result.Invalid<Pour>(new Problem("pour", _pours.Count == MostPours ? $"A round has at most {MostPours} pours." : "The next pour takes the next letter."));
        }
        var pour = new Pour(letter);
        _pours.Add(pour);
        foreach (var cell in _cells.Where(c => c.Letter == like && c.Specified is not null).ToList())
        {
            _cells.Add(new PourCell(letter, cell.Line) { Specified = cell.Specified, Batch = cell.Batch });
        }
        return Result.Ok(pour);
    }

    /// <summary>Sets what a cell says.</summary>
    /// <param name="letter">The pour.</param>
    /// <param name="line">The line.</param>
    /// <param name="field">What of it.</param>
    /// <param name="amount">The amount in the line's unit, 0 to a million; null takes it back.</param>
    /// <param name="by">The entry that sets it.</param>
    /// <returns>What it said before, or why it cannot be set.</returns>
    public Result<CellBefore> Set(PourLetter letter, LineId line, CellField field, double? amount, EntryId by)
    {
        var problems = new List<Problem>();
        Check(letter, line, amount, problems);
        if (problems.Count > 0)
        {
            return Result.Invalid<CellBefore>(problems);
        }
        var cell = CellAt(letter, line);
        if (field == CellField.Specified)
        {
            var before = new CellBefore(cell.Specified, cell.SpecifiedBy);
            (cell.Specified, cell.SpecifiedBy) = (amount, by);
            return Result.Ok(before);
        }
        var poured = new CellBefore(cell.Poured, cell.PouredBy);
        (cell.Poured, cell.PouredBy) = (amount, by);
        return Result.Ok(poured);
    }

    /// <summary>Says from which batch a line of a pour came.</summary>
    /// <returns>The cell, or why there is none.</returns>
    public Result<PourCell> OpenBatch(PourLetter letter, LineId line, Guid? batch)
    {
        if (!Has(letter) || Line(line) is null)
        {
            return Result.Invalid<PourCell>(new Problem("cell", "The round has no such pour or line."));
        }
        var cell = CellAt(letter, line);
        cell.Batch = batch;
        return Result.Ok(cell);
    }

    /// <summary>Starts the timer of pours that were not poured before.</summary>
    public void Poured(IReadOnlyCollection<PourLetter> letters, DateTimeOffset at)
    {
        foreach (var pour in _pours.Where(p => letters.Contains(p.Letter)))
        {
            pour.PouredAt ??= at;
        }
    }

    /// <summary>Puts a pour into a bottle, to be tasted again in some days.</summary>
    /// <returns>The pour, or why there is none.</returns>
    public Result<Pour> Bottle(PourLetter letter, DateOnly on)
    {
        if (_pours.Find(p => p.Letter == letter) is not { } pour)
        {
            return Result.Invalid<Pour>(new Problem("pour", "The round has no such pour."));
        }
        pour.BottledOn ??= on;
        return Result.Ok(pour);
    }

    /// <summary>Ends the round.</summary>
    /// <param name="winner">The pour that won; null where none did.</param>
    /// <param name="by">Who says so.</param>
    /// <param name="at">When.</param>
    /// <returns>The round, or why it cannot end so.</returns>
    public Result<Round> End(PourLetter? winner, PersonId by, DateTimeOffset at)
    {
        if (winner is { } letter && !Has(letter))
        {
            return Result.Invalid<Round>(new Problem("winner", "The round has no such pour."));
        }
        (Winner, EndedBy, EndedAt) = (winner, by, at);
        return Result.Ok(this);
    }

    /// <summary>Its winner became an iteration.</summary>
    public void Became(int iteration) => Iteration = iteration;

    internal static double GramsOf(IEnumerable<PlacedLine> lines) =>
        lines.Where(l => l.Content is { Place: Place.In } content && content.Amount.Unit != Unit.Top).Sum(l => l.Content.Understood.Grams ?? 0);

    private static Result<Round> Start(
        RoundToStart wish, IReadOnlyList<PlacedLine> lines, Build build, int number, int fromVersion, int? fromIteration, PersonId by, DateTimeOffset at)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(number, 1);
        var problems = new List<Problem>();
        if (wish.Pours is < FewestPours or > MostPours)
        {
            problems.Add(new Problem("pours", $"A round has {FewestPours} to {MostPours} pours."));
        }
        if (lines.Count == 0)
        {
            problems.Add(new Problem("lines", "Nothing is on the bench to pour."));
        }
        CheckSize(wish.Size, lines, problems);
        if (problems.Count > 0)
        {
            return Result.Invalid<Round>(problems);
        }
        var round = new Round(wish.Id, wish.Draft, number, by, at, wish.Size.Kind, wish.Size.Grams, fromVersion, RoundText.Write(lines, build)) { FromIteration = fromIteration };
        round._pours.AddRange(Enumerable.Range(0, wish.Pours).Select(i => new Pour((PourLetter)i)));
        foreach (var cell in wish.Cells)
        {
            round.Check(cell.Letter, cell.Line, cell.Amount, problems);
            if (problems.Count == 0)
            {
                round.CellAt(cell.Letter, cell.Line).Specified = cell.Amount;
            }
        }
        return problems.Count > 0 ? Result.Invalid<Round>(problems) : Result.Ok(round);
    }

    private static void CheckSize(RoundSize size, IReadOnlyList<PlacedLine> lines, List<Problem> problems)
    {
        if ((size.Kind == SizeKind.ByWeight) != size.Grams.HasValue || !Enum.IsDefined(size.Kind))
        {
            problems.Add(new Problem("size", "A size by weight says how many grams, any other size says none."));
        }
        else if (size.Grams is { } grams && !(grams >= RoundSize.LightestGrams && grams <= RoundSize.HeaviestGrams))
        {
            problems.Add(new Problem("size", $"A pour by weight is {RoundSize.LightestGrams} to {RoundSize.HeaviestGrams} g."));
        }
        else if (size.Grams is not null && !(GramsOf(lines) > 0))
        {
            problems.Add(new Problem("size", "No line has a weight yet, so a size by weight means nothing."));
        }
    }

    private void Check(PourLetter letter, LineId id, double? amount, List<Problem> problems)
    {
        if (!Has(letter))
        {
            problems.Add(new Problem("pour", "The round has no such pour."));
        }
        if (Line(id) is not { } line)
        {
            problems.Add(new Problem("line", "The round has no such line: it was added or removed after the round started."));
        }
        else if (line.Content.Amount.Value is null)
        {
            problems.Add(new Problem("line", $"\"{line.Content.Text}\" has no amount that a pour could change."));
        }
        if (amount is { } a && !(a >= 0 && a <= Drafts.Draft.LargestAmount))
        {
            problems.Add(new Problem("amount", "An amount is zero or more, and at most a million."));
        }
    }

    private PourCell CellAt(PourLetter letter, LineId line)
    {
        if (Cell(letter, line) is { } there)
        {
            return there;
        }
        var cell = new PourCell(letter, line);
        _cells.Add(cell);
        return cell;
    }
}
