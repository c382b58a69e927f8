using MenuLab.Core;
using MenuLab.Core.Drafts;
using MenuLab.Core.Drafts.Reading;
using MenuLab.Core.Iterations;
using MenuLab.Web.Features.History;

namespace MenuLab.Web.Features.Bench;

/// <summary>A field that somebody else changed while this page typed. This page's value stands until a person says otherwise.</summary>
/// <param name="Collision">What collided.</param>
/// <param name="Mine">This page's edit.</param>
/// <param name="Says">Who, what, when, in words.</param>
/// <param name="TheirValue">Their value in words.</param>
/// <param name="MyValue">This page's value in words.</param>
public sealed record Clash(Collision Collision, AppliedEdit Mine, string Says, string TheirValue, string MyValue);

/// <summary>
/// One page's work on one draft: the view, what can be taken back, what collided, what was refused. Every change goes to
/// the database as an edit and the view is read again; nothing here is truth. Its
/// calls come one after the other; the page sees to that.
/// </summary>
public sealed class BenchSession(BenchDesk desk, DraftId draft)
{
    private readonly Stack<EditAction> _undo = new();
    private readonly Stack<EditAction> _redo = new();
    private readonly List<Clash> _clashes = [];
    private Snapshot? _from;
    private int _fromNumber;

    /// <summary>This page.</summary>
    public PageId Page { get; } = PageId.New();

    /// <summary>The draft as last read; null until it was opened, or where there is none.</summary>
    public BenchView? View { get; private set; }

    /// <summary>The unit that amounts are shown in first, and that a bare number is read in.</summary>
    public Unit First { get; private set; } = desk.House.Book.FirstUnit;

    /// <summary>What changed since the iteration that the working copy goes on from; null before it was read.</summary>
    public WhatChanged? Changed { get; private set; }

    /// <summary>The reason that writes itself from what changed.</summary>
    public string OwnReason { get; private set; } = "";

    /// <summary>The history with what is on the bench.</summary>
    public DrinkHistory History => new(
        draft, View!.Name, View.History, new BenchCell(View.GoesOnFrom?.Number, Changed?.Count ?? 0, View.GoesOnFrom is null ? "" : OwnReason, View.Figures));

    /// <summary>Fields that somebody else changed meanwhile.</summary>
    public IReadOnlyList<Clash> Clashes => _clashes;

    /// <summary>What other pages did since this page last looked, in words, the newest first.</summary>
    public IReadOnlyList<string> OthersDid { get; private set; } = [];

    /// <summary>Why the last edit was refused; empty where it was not.</summary>
    public IReadOnlyList<Problem> Problems { get; private set; } = [];

    /// <summary>The line that the last refusal is about.</summary>
    public LineId? ProblemLine { get; private set; }

    /// <summary>Something can be taken back.</summary>
    public bool CanUndo => _undo.Count > 0;

    /// <summary>Something that was taken back can be done again.</summary>
    public bool CanRedo => _redo.Count > 0;

    /// <summary>Who else has the draft open.</summary>
    public int Others => desk.House.Notice.Others(draft, Page).Count;

    /// <summary>Opens the draft.</summary>
    public Task OpenAsync() => ReadAsync(history: null);

    /// <summary>Shows amounts in another unit first.</summary>
    public Task ShowInAsync(Unit first)
    {
        First = first;
        return ReadAsync(View?.History);
    }

    /// <summary>Reads the draft again, since another page changed it, and says what they did.</summary>
    public async Task ReadAgainAsync()
    {
        var seen = View?.Version ?? 0;
        await ReadAsync(history: null);
        if (View is { } view && view.Version > seen)
        {
            var theirs = (await desk.EditsSinceAsync(draft, seen)).Where(e => e.Edit.Page != Page).ToList();
            if (theirs.Count > 0)
            {
                OthersDid = [.. theirs.AsEnumerable().Reverse().Take(5).Select(e => $"{desk.House.Book.NameOf(e.Edit.By)}, on another page: {EditWords.Of(e, view, desk.House.Book, First)}.")];
            }
        }
    }

    /// <summary>Stops saying what others did.</summary>
    public void Noted() => OthersDid = [];

    /// <summary>Adds what was typed. A text that comes again under its id is not added again.</summary>
    /// <param name="id">Made where it was typed.</param>
    /// <param name="typed">The text.</param>
    public async Task<bool> EnterAsync(Guid id, string typed)
    {
        if (View is null || string.IsNullOrWhiteSpace(typed))
        {
            return true;
        }
        var edits = desk.EditsOf(View, typed, First);
        for (var i = 0; i < edits.Count; i++)
        {
            if (!await DoAsync(edits[i], EditIdOf(id, i)))
            {
                return false;
            }
        }
        return true;
    }

    /// <summary>Does an edit; what it takes back is remembered.</summary>
    /// <returns>It was applied; else <see cref="Problems"/> says why not.</returns>
    public async Task<bool> DoAsync(EditAction action, EditId? id = null)
    {
        if (!await ApplyAsync(action, _undo, id))
        {
            return false;
        }
        _redo.Clear();
        return true;
    }

    /// <summary>Chooses another method: lines that stood as the old one takes for granted stand as the new one does.</summary>
    public async Task ChooseMethodAsync(string? key)
    {
        if (View is not { } before)
        {
            return;
        }
        var (book, old) = (desk.House.Book, before.Build.Method);
        if (!await DoAsync(new ChangeBuild(BuildFields.Method, before.Build with { Method = key })))
        {
            return;
        }
        foreach (var line in before.Lines)
        {
            if (line.Content.Ingredient is { } ingredient && book.Stock.Pantry.Find(ingredient) is { } found)
            {
                var (fields, content) = MethodDefaults.After(line.Content, found, book.Stock.Catalogue.Method(old), book.Stock.Catalogue.Method(key));
                if (fields != LineFields.None)
                {
                    await DoAsync(new ChangeLine(line.Id, fields, content));
                }
            }
        }
    }

    /// <summary>Sets a line's amount as typed into its cell.</summary>
    public Task<bool> SetAmountAsync(BenchLine line, string typed)
    {
        var change = desk.AmountOf(View!, line, typed, First);
        return change.IsOk ? DoAsync(change.Value) : RefuseAsync(change.Problems, line.Id);
    }

    /// <summary>Writes a line anew; a text that does not read as one line is kept as typed in its place.</summary>
    public Task<bool> RewriteAsync(BenchLine line, string typed)
    {
        var read = desk.House.Book.Reader.Read(typed, new ReadSettings { BareNumber = First, Method = View!.Build.Method });
        return DoAsync(TypedEdits.Rewritten(line, read) ?? new ChangeLine(
            line.Id, LineFields.Text | LineFields.Ingredient | LineFields.Amount, LineContent.KeptAsTyped(typed) with { Place = line.Content.Place, Joins = line.Content.Joins, StartCelsius = line.Content.StartCelsius }));
    }

    /// <summary>Answers what a line kept as typed is.</summary>
    public Task<bool> AnswerAsync(BenchLine line, Answer answer)
    {
        if (answer.Wording is null)
        {
            return Task.FromResult(false);
        }
        var read = desk.House.Book.Reader.Read(answer.Wording, new ReadSettings { BareNumber = Unit.Millilitre, Method = View!.Build.Method });
        return read.Lines is [var meant] ? DoAsync(TypedEdits.Answered(line, meant)) : RewriteAsync(line, answer.Wording);
    }

    /// <summary>Moves a line one up or down.</summary>
    public Task<bool> MoveAsync(BenchLine line, int by)
    {
        var lines = View!.Lines;
        var place = lines.TakeWhile(l => l.Id != line.Id).Count();
        var target = place + by;
        return target < 0 || target >= lines.Count ? Task.FromResult(false) : PlaceAsync(line, target);
    }

    /// <summary>Moves a line to a place from the top, counted from 0.</summary>
    public Task<bool> PlaceAsync(BenchLine line, int place)
    {
        var others = View!.Lines.Where(l => l.Id != line.Id).ToList();
        var after = Math.Clamp(place, 0, others.Count);
        return DoAsync(new MoveLine(line.Id, after == 0 ? null : others[after - 1].Id));
    }

    /// <summary>Takes the last edit of this page back.</summary>
    public Task UndoAsync() => BackAsync(_undo, _redo);

    /// <summary>Does again what was taken back last.</summary>
    public Task RedoAsync() => BackAsync(_redo, _undo);

    /// <summary>Lets this page's value stand.</summary>
    public void KeepMine(Clash clash) => _clashes.Remove(clash);

    /// <summary>Sets their value again.</summary>
    public async Task TakeTheirsAsync(Clash clash)
    {
        if (await DoAsync(EditFields.Narrow(clash.Collision.Theirs.Edit.Action, clash.Collision.Field)))
        {
            _clashes.Remove(clash);
        }
    }

    /// <summary>Puts a saved iteration on the bench, in place of what is there.</summary>
    public async Task StartFromAsync(IterationCell saved)
    {
        if (await desk.SnapshotAsync(saved.Id) is { } snapshot)
        {
            await DoAsync(BenchDesk.StartFrom(saved.Number, snapshot));
        }
    }

    /// <summary>Saves what is on the bench.</summary>
    /// <param name="reason">Why; may be empty.</param>
    /// <returns>The iteration's number, or null where it was refused.</returns>
    public async Task<int?> SaveAsync(string reason)
    {
        var saved = await desk.SaveAsync(View!, IterationId.New(), reason, Page);
        if (!saved.IsOk)
        {
            await ReadAsync(history: null);
            Problems = saved.Problems;
            return null;
        }
        await ReadAsync(history: null);
        Problems = [];
        return saved.Value.Number;
    }

    private async Task BackAsync(Stack<EditAction> from, Stack<EditAction> to)
    {
        if (from.TryPop(out var action) && !await ApplyAsync(action, to, null))
        {
            from.Clear();   // what it would take back is no longer there
        }
    }

    private async Task<bool> ApplyAsync(EditAction action, Stack<EditAction> undo, EditId? id)
    {
        var outcome = await desk.ApplyAsync(draft, id ?? EditId.New(), Page, View!.Version, action);
        if (!outcome.IsOk)
        {
            return await RefuseAsync(outcome.Problems, action is ChangeLine change ? change.Line : null);
        }
        // An edit that was there already has nothing more to take back.
        if (outcome.Value.Applied.Version > View.Version)
        {
            undo.Push(outcome.Value.Applied.Undo);
        }
        (Problems, ProblemLine) = ([], null);
        await ReadAsync(View.History);
        Collect(outcome.Value);
        return true;
    }

    private void Collect(EditOutcome outcome)
    {
        var fields = outcome.Collisions.Select(c => c.Field.Name).ToHashSet();
        foreach (var collision in outcome.Collisions.Where(c => c.Field.Name != "text" || !fields.Contains("amount")))
        {
            _clashes.RemoveAll(c => c.Collision.Field == collision.Field);
            _clashes.Add(EditWords.ClashOf(collision, outcome.Applied, View!, desk.House.Book, First));
        }
    }

    private Task<bool> RefuseAsync(IReadOnlyList<Problem> problems, LineId? line)
    {
        (Problems, ProblemLine) = (problems, line);
        return Task.FromResult(false);
    }

    private async Task ReadAsync(IReadOnlyList<IterationCell>? history)
    {
        View = await desk.ReadAsync(draft, First, history);
        if (View is null)
        {
            return;
        }
        if (View.GoesOnFrom is { } from && (_from is null || _fromNumber != from.Number))
        {
            (_from, _fromNumber) = (await desk.SnapshotAsync(from.Id), from.Number);
        }
        Changed = View.GoesOnFrom is not null && _from is { } saved ? WhatChanged.Between(saved, View.Now) : null;
        OwnReason = View.GoesOnFrom is null ? (View.Lines.Count == 0 ? "" : WhatChanged.FirstReason) : Changed?.Reason(desk.House.Book.Format) ?? "";
    }

    // Each edit of a text has an id of its own that follows from the text's, so that sending the text again repeats none.
    private static EditId EditIdOf(Guid id, int place)
    {
        Span<byte> bytes = stackalloc byte[16];
        id.TryWriteBytes(bytes, bigEndian: true, out _);
        bytes[15] = (byte)(bytes[15] + place);
        bytes[14] = (byte)(bytes[14] + place / 256);
        return new EditId(new Guid(bytes, bigEndian: true));
    }
}
