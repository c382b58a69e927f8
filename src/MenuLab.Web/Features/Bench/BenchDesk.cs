using MenuLab.Core;
using MenuLab.Core.Balance;
using MenuLab.Core.Drafts;
using MenuLab.Core.Drafts.Reading;
using MenuLab.Core.House;
using MenuLab.Core.Iterations;
using MenuLab.Core.Pantry;
using MenuLab.Data.Drafts;
using MenuLab.Data.Iterations;
using MenuLab.Web.Accounts;
using MenuLab.Web.Features.History;
using MenuLab.Web.Features.House;

namespace MenuLab.Web.Features.Bench;

/// <summary>What the bench can do with a draft: read it and work it out, apply an edit, save an iteration, start from one.</summary>
public sealed class BenchDesk(CurrentHouse current, CurrentPerson person)
{
    /// <summary>The house that the page works in.</summary>
    public OpenHouse House => current.House;

    /// <summary>Who sits before the page.</summary>
    public PersonId Person => person.Id;

    /// <summary>Listens to what other pages do with a draft and to the house.</summary>
    public IDisposable Listen(PageId page, DraftId draft, Action onDraft, Action onHouse) => House.Notice.Listen(page, person.Id, draft, onDraft, onHouse);

    /// <summary>Reads a draft and works it out; null where there is none.</summary>
    /// <param name="id">The draft.</param>
    /// <param name="first">The unit that amounts are shown in first.</param>
    /// <param name="history">The saved iterations where they are known and nobody saved since; null reads them.</param>
    public async Task<BenchView?> ReadAsync(DraftId id, Unit first, IReadOnlyList<IterationCell>? history = null)
    {
        await using var db = House.Read();
        if (await db.OpenDraft(id) is not { } draft)
        {
            return null;
        }
        return ViewOf(draft, House.Book, first, history ?? await HistoryAsync(id));
    }

    /// <summary>The saved iterations of a draft.</summary>
    public async Task<IReadOnlyList<IterationCell>> HistoryAsync(DraftId id)
    {
        await using var db = House.Read();
        return IterationCell.Of(await db.HistoryOf(id), House.Book);
    }

    /// <summary>What an iteration was computed from; null where there is none.</summary>
    public async Task<Snapshot?> SnapshotAsync(IterationId id)
    {
        await using var db = House.Read();
        return (await db.LoadIteration(id))?.Body.Snapshot();
    }

    /// <summary>Applies an edit and tells the other pages.</summary>
    public async Task<Result<EditOutcome>> ApplyAsync(DraftId draft, EditId id, PageId page, int seen, EditAction action)
    {
        var outcome = await House.Drafts.Apply(draft, id, person.Id, page, seen, action);
        if (outcome.IsOk)
        {
            House.Notice.TellDraft(draft, page);
        }
        return outcome;
    }

    /// <summary>The edits above a version, with who made them.</summary>
    public async Task<IReadOnlyList<AppliedEdit>> EditsSinceAsync(DraftId draft, int version)
    {
        await using var db = House.Read();
        return await db.EditsOf(draft, version);
    }

    /// <summary>Saves what is on the bench as an iteration.</summary>
    /// <returns>The iteration; or why not: somebody changed the draft since the view was read, nothing is in it, the reason is too long.</returns>
    public async Task<Result<Iteration>> SaveAsync(BenchView view, IterationId id, string reason, PageId page)
    {
        if (view.Lines.Count == 0)
        {
            return Result.Invalid<Iteration>(new Problem("lines", "There is nothing to save yet: type the first line."));
        }
        var book = House.Book;
        var ingredients = view.Now.Lines.Select(l => book.Stock.Pantry.Find(l.Line.Ingredient)!.Composition).Distinct().ToList();
        var byHash = ingredients.ToDictionary(c => CompositionText.Hash(c));
        if (view.Now.Lines.FirstOrDefault(l => !byHash.ContainsKey(l.Composition)) is { } stale)
        {
            return Result.Invalid<Iteration>(new Problem("pantry", $"{stale.IngredientName} changed in the pantry a moment ago: look at the figures and save again."));
        }
        var weighed = view.Now.Weigh(hash => byHash[hash], book.Stock.Measures);
        var balance = BalanceEngine.Of(weighed.Lines, weighed.Build, Detail.RangesAndShares, view.Now.UncountedMillilitres);
        var saved = await House.Iterations.Save(new IterationToSave(
            id, view.Id, view.Version, view.GoesOnFrom?.Id, reason, person.Id, view.Now, balance,
            new EngineStamp(BalanceEngine.Version, view.Now.Measures, Jurisdiction: book.Site.Jurisdiction), ingredients));
        if (saved.IsOk)
        {
            House.Notice.TellDraft(view.Id, page);
        }
        return saved;
    }

    /// <summary>The edit that puts a saved iteration on the bench.</summary>
    public static StartFrom StartFrom(int number, Snapshot saved)
    {
        var lines = saved.Lines.Select(l => LineContent.Of(l.Line)).Concat(saved.KeptAsTyped.Select(text => LineContent.KeptAsTyped(text)));
        return new StartFrom(number, [.. lines.Select(content => new PlacedLine(LineId.New(), content))], saved.Build);
    }

    /// <summary>Reads what is being typed against the drink that it would join.</summary>
    public TypedLine ReadTyped(BenchView view, string typed, Unit first)
    {
        if (string.IsNullOrWhiteSpace(typed))
        {
            return TypedLine.Empty;
        }
        var book = House.Book;
        var read = Read(view, typed, first);
        var words = new LineWords(book.Format, book.Grid, first);
        var onto = read is { Lines: [var only], Questions: [], Unread: [] } ? TypedEdits.JoinsLine(view, only) : null;
        return new TypedLine
        {
            Text = typed,
            Pieces = TypedLine.PiecesOf(read, line => book.Stock.Pantry.Find(line.Ingredient)!.Name, words, onto is null ? null : (Place(view, onto.Value.Line), onto.Value.Amount(words))),
            // Behind a comma stands what is done to it; a name that is complete needs no completing.
            Suggestions = typed.AsSpan().ContainsAny(',', '\n') || (read is { Lines: [var whole], Questions: [] } && EndsWithName(typed, book.Stock.Pantry.Find(whole.Ingredient)!)) ? [] : book.Index.For(typed),
            Preview = read.Lines.Count == 0 ? null : Preview(view, read, book, first),
        };
    }

    /// <summary>The edits that a typed text comes to.</summary>
    public IReadOnlyList<EditAction> EditsOf(BenchView view, string typed, Unit first) => TypedEdits.Of(view, Read(view, typed, first), House.Book);

    /// <summary>The amount that somebody typed into a line's cell, or what is wrong with it.</summary>
    public Result<ChangeLine> AmountOf(BenchView view, BenchLine line, string typed, Unit first) => TypedEdits.Amount(view, line, typed, first, House.Book);

    private ReadDrink Read(BenchView view, string typed, Unit first) =>
        House.Book.Reader.Read(typed, new ReadSettings { BareNumber = first, Method = view.Build.Method });

    private static int Place(BenchView view, BenchLine line) => view.Lines.Select((l, i) => (l, i)).First(x => x.l.Id == line.Id).i + 1;

    private static bool EndsWithName(string typed, Ingredient ingredient) => SearchName.Of(typed).EndsWith(SearchName.Of(ingredient.Name), StringComparison.Ordinal);

    private static TypedDrink Preview(BenchView view, ReadDrink read, HouseBook book, Unit first)
    {
        var lines = view.Lines.Select(l => l.Content.ToDraftLine()).OfType<DraftLine>().Concat(read.Lines).ToList();
        var drink = new ReadDrink { Name = view.Name, Lines = lines, Questions = [], Unread = [], Build = view.Build, Notes = [], Account = [] };
        return book.Pasted.InWords(first).Of(WorkedDrink.Of(drink, book.Stock, view.Now.UncountedMillilitres));
    }

    private static BenchView ViewOf(Draft draft, HouseBook book, Unit first, IReadOnlyList<IterationCell> history)
    {
        var read = InReading(draft, book);
        var worked = WorkedDrink.Of(read, book.Stock, draft.UncountedMillilitres);
        var drink = book.Pasted.InWords(first).Of(worked);
        var last = history.Count == 0 ? null : history[^1];
        var from = draft.GoesOnFrom(last?.Number, last?.DraftVersion ?? 0);
        return new BenchView
        {
            Id = draft.Id,
            Name = draft.Name,
            Style = draft.Style,
            Standing = draft.Standing,
            StandingReason = draft.StandingReason,
            Brief = draft.Brief,
            Version = draft.Version,
            ChangedAt = draft.ChangedAt,
            Lines = [.. draft.Lines.Select((line, i) => new BenchLine(line.Id, line.Content, drink.Rows[i], line.Ingredient is { } id && book.Archived.Contains(id)))],
            Build = draft.Build.Value,
            Drink = drink,
            Now = Snapshot.Take(draft, book.Stock.Pantry, book.Stock.Catalogue, book.Stock.Measures, book.Stock.PricePerGram, book.Site.Currency),
            Figures = IterationFigures.Of(worked.Balance),
            BriefRemarks = BriefRemark.Of(draft.Brief, worked.Balance, book.Format, book.Site.Currency, (allergen, state) => [.. worked.LinesWith(allergen, state).Select(l => book.Stock.Pantry.Find(l.Ingredient)!.Name).Distinct()]),
            NamedAsides = Asides(draft, book),
            History = history,
            GoesOnFrom = history.FirstOrDefault(row => row.Number == from),
        };
    }

    // The lines of the working copy, in order, as the reader would have given them; a line kept as typed is asked about again,
    // since the pantry may know it by now.
    private static ReadDrink InReading(Draft draft, HouseBook book)
    {
        var account = new List<SourceLine>();
        var questions = new List<LineQuestion>();
        var unread = new List<UnreadLine>();
        foreach (var line in draft.Lines)
        {
            if (line.Ingredient is not null)
            {
                account.Add(new SourceLine(line.Position, 1, line.Text, ReadAs.Line));
                continue;
            }
            var again = book.Reader.Read(line.Text, new ReadSettings { BareNumber = book.FirstUnit, Method = draft.Build.Method });
            if (again.Questions.Count > 0 || again.Lines.Count > 0)
            {
                account.Add(new SourceLine(line.Position, 1, line.Text, ReadAs.Question));
                questions.Add(again.Questions.Count > 0
                    ? again.Questions[0] with { Text = line.Text, Line = line.Position }
                    : new LineQuestion
                    {
                        Text = line.Text, Line = line.Position, Column = 1, Asks = "The pantry knows this by now.",
                        Candidates = [.. again.Lines.Select(l => new Candidate(book.Stock.Pantry.Find(l.Ingredient)!.Name, l))],
                    });
            }
            else
            {
                account.Add(new SourceLine(line.Position, 1, line.Text, ReadAs.Unread));
                unread.Add(new UnreadLine(line.Text, line.Position, 1, again.Unread.Count > 0 ? again.Unread[0].Reason : "No ingredient of the pantry is named."));
            }
        }
        return new ReadDrink
        {
            Name = draft.Name, Lines = draft.DraftLines, Questions = questions, Unread = unread, Build = draft.Build.Value, Notes = [], Account = account,
        };
    }

    private static List<NamedAside> Asides(Draft draft, HouseBook book)
    {
        var there = draft.Lines.Select(l => l.Ingredient).OfType<IngredientId>().ToHashSet();
        var texts = draft.Build.Steps.Concat(draft.Lines.Select(l => l.Treatment)).Where(t => t.Length > 0);
        return
        [
            .. from text in texts
                from named in book.Index.NamedIn(text)
                where !there.Contains(named.Id)
                group text by named into texts2
                select new NamedAside(texts2.First(), texts2.Key.Id, texts2.Key.Name),
        ];
    }
}
