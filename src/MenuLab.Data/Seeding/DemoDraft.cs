using MenuLab.Core.Balance;
using MenuLab.Core.Drafts;
using MenuLab.Core.Drafts.Reading;
using MenuLab.Core.House;
using MenuLab.Core.Iterations;
using MenuLab.Core.Pantry;
using MenuLab.Data.Drafts;

namespace MenuLab.Data.Seeding;

/// <summary>What the drinks of the demo bar are worked with.</summary>
/// <param name="Pantry">Shipped and house ingredients.</param>
/// <param name="Catalogue">Methods, ices and glasses.</param>
/// <param name="Measures">The measures in use.</param>
/// <param name="Reader">Reads the drinks.</param>
/// <param name="Currency">Currency of the prices.</param>
/// <param name="Jurisdiction">Whose rules.</param>
internal sealed record DemoBench(PantryList Pantry, BuildCatalogue Catalogue, MeasuresSet Measures, DrinkReader Reader, string Currency, string Jurisdiction);

/// <summary>
/// Works a draft in memory as the bench would: what was typed becomes edits against the working copy, and an iteration is a snapshot of that copy
/// with its balance. Its rows are then written all at once.
/// </summary>
internal sealed class DemoDraft
{
    private readonly DemoBench _bench;
    private readonly PageId _page;
    private readonly List<EditRow> _edits = [];
    private readonly List<SavedIteration> _iterations = [];

    public DemoDraft(DemoBench bench, DraftId id, string name, PersonId by, DateTimeOffset at)
    {
        _bench = bench;
        _page = new PageId(Guid.CreateVersion7(at));
        Draft = Draft.Start(id, name, by, at).Value;
    }

    public Draft Draft { get; }

    /// <summary>Every edit in order.</summary>
    public IReadOnlyList<EditRow> Edits => _edits;

    /// <summary>Every iteration, the first first.</summary>
    public IReadOnlyList<SavedIteration> Iterations => _iterations;

    /// <summary>Applies an edit.</summary>
    public void Do(EditAction action, PersonId by, DateTimeOffset at)
    {
        var edit = new Edit(new EditId(Guid.CreateVersion7(at)), by, _page, Draft.Version, action, at);
        var outcome = Draft.Apply(edit, [], content => Understanding.Of(content, _bench.Pantry, _bench.Measures));
        if (!outcome.IsOk)
        {
            throw new SeedDataException($"The drink {Draft.Name} cannot be made: {string.Join(" ", outcome.Problems.Select(p => p.Message))}");
        }
        _edits.Add(EditRow.Of(Draft.Id, outcome.Value.Applied));
    }

    /// <summary>Makes the working copy what a text says, edit by edit, so that a line which only changes stays the same line.</summary>
    public void Type(string text, PersonId by, DateTimeOffset at)
    {
        var read = _bench.Reader.Read(text, new ReadSettings());
        var wanted = read.InOrder(LineContent.Of, LineContent.KeptAsTyped, unread => LineContent.KeptAsTyped(unread.Text));
        var free = Draft.Lines.ToList();
        var there = wanted.Select(content => TakeAlike(free, content)).ToList();
        foreach (var gone in free)
        {
            Do(new RemoveLine(gone.Id), by, at);
        }
        LineId? above = null;
        for (var i = 0; i < wanted.Count; i++)
        {
            var line = there[i]?.Id ?? new LineId(Guid.CreateVersion7(at));
            if (there[i] is not { } before)
            {
                Do(new AddLine(line, wanted[i], above), by, at);
            }
            else
            {
                if (Changed(before.Content, wanted[i]) is var fields and not LineFields.None)
                {
                    Do(new ChangeLine(line, fields, wanted[i]), by, at);
                }
                if (Draft.Lines[i].Id != line)
                {
                    Do(new MoveLine(line, above), by, at);
                }
            }
            above = line;
        }
        if (Changed(Draft.Build.Value, read.Build) is var build and not BuildFields.None)
        {
            Do(new ChangeBuild(build, read.Build), by, at);
        }
    }

    /// <summary>Saves the working copy as an iteration.</summary>
    /// <param name="from">Number of the iteration that it came from; null for the last one.</param>
    /// <param name="reason">Why; may be empty.</param>
    /// <param name="by">Who.</param>
    /// <param name="at">When.</param>
    /// <param name="prices">Net price per gram on that day.</param>
    public void Save(int? from, string reason, PersonId by, DateTimeOffset at, IReadOnlyDictionary<IngredientId, double> prices)
    {
        Func<IngredientId, double> price = id => prices.GetValueOrDefault(id);
        var snapshot = Snapshot.Take(Draft, _bench.Pantry, _bench.Catalogue, _bench.Measures, price, _bench.Currency);
        var weighed = Weigher.Of(Draft.DraftLines, Draft.Build.Value, _bench.Pantry, _bench.Catalogue, _bench.Measures, price);
        var balance = BalanceEngine.Of(weighed.Lines, weighed.Build, Detail.RangesAndShares, Draft.UncountedMillilitres);
        var number = _iterations.Count + 1;
        var parent = (from ?? number - 1) is > 0 and var place ? _iterations[place - 1].Iteration.Id : (IterationId?)null;
        var stamp = new EngineStamp(BalanceEngine.Version, _bench.Measures.Number, Jurisdiction: _bench.Jurisdiction);
        _iterations.Add(Iteration.Save(
            new IterationId(Guid.CreateVersion7(at)), Draft.Id, number, parent, reason, by, at, Draft.Version, snapshot, balance, stamp).Value);
    }

    /// <summary>Takes the line that a content changes: the same ingredient at the same place, or the same words.</summary>
    private static WorkingLine? TakeAlike(List<WorkingLine> free, LineContent content)
    {
        var at = free.FindIndex(l => l.Ingredient == content.Ingredient && (content.Ingredient is null ? l.Text == content.Text : l.Place == content.Place));
        if (at < 0)
        {
            return null;
        }
        var line = free[at];
        free.RemoveAt(at);
        return line;
    }

    private static LineFields Changed(LineContent before, LineContent after)
    {
        var measured = before.Amount == after.Amount && Same(before.Understood, after.Understood);
        return (before.Text == after.Text ? 0 : LineFields.Text)
            // Both, so that what the words say beside the figure ("scant") comes along with it.
            | (measured ? 0 : LineFields.Ingredient | LineFields.Amount)
            | (before.Place == after.Place ? 0 : LineFields.Place)
            | (before.Joins == after.Joins ? 0 : LineFields.Joins)
            | (before.StartCelsius == after.StartCelsius ? 0 : LineFields.Start)
            | (before.Treatment == after.Treatment ? 0 : LineFields.Treatment);
    }

    private static bool Same(Understood one, Understood other) =>
        (one.Millilitres, one.Grams, one.GramsUncertainty) == (other.Millilitres, other.Grams, other.GramsUncertainty) && one.Assumptions.SequenceEqual(other.Assumptions);

    private static BuildFields Changed(Build before, Build after) =>
        (before.Method == after.Method ? 0 : BuildFields.Method)
        | (before.Seconds == after.Seconds ? 0 : BuildFields.Seconds)
        | (before.Ice == after.Ice ? 0 : BuildFields.Ice)
        | (before.Glass == after.Glass ? 0 : BuildFields.Glass)
        | (before.Strain == after.Strain ? 0 : BuildFields.Strain)
        | (before.ServedOn == after.ServedOn ? 0 : BuildFields.ServedOn)
        | (before.Steps.SequenceEqual(after.Steps) ? 0 : BuildFields.Steps);
}
