using MenuLab.Core;
using MenuLab.Core.Balance;
using MenuLab.Core.Drafts;
using MenuLab.Core.House;
using MenuLab.Data.Opening;
using MenuLab.Web.Features.History;
using MenuLab.Web.Features.House;
using MenuLab.Web.Features.Rounds;
using Microsoft.AspNetCore.Components;

namespace MenuLab.Web.Features.Bench;

/// <summary>The bench: takes what is typed and pressed to the session, and shows what it says.</summary>
public sealed partial class BenchPage(BenchDesk desk, HistoryDesk history, BenchBrowser browser, NavigationManager navigation, ILogger<BenchPage> log) : IDisposable
{
    // Under this, nobody notices.
    private static readonly TimeSpan Slow = TimeSpan.FromMilliseconds(300);
    private static readonly string[] Units = ["mL", "fl oz"];

    private BenchSession? _session;
    private IDisposable? _listening;
    private TypedLine _typed = TypedLine.Empty;
    private IReadOnlyList<Leftover> _left = [];
    private string _initially = "";
    private string _text = "";
    private string? _reason;
    private string _refused = "";
    private string _failed = "";
    private Metric _chosen = Metric.Sugar;
    private string _chosenState = "";
    private ChangesInWords? _changes;
    private readonly SemaphoreSlim _turn = new(1, 1);
    private StartRound? _sideBySide;
    private bool _busy;
    private bool _slow;
    private bool _gone;
    private bool _missing;
    private bool _asked;
    private bool _opened;

    /// <summary>The draft.</summary>
    [Parameter]
    public Guid Id { get; set; }

    /// <summary>Number of an iteration that is to be put on the bench.</summary>
    [SupplyParameterFromQuery]
    public int? From { get; set; }

    private BenchSession Session => _session!;

    private BenchView? View => _session?.View;

    private HouseBook Book => desk.House.Book;

    private string Reason => _reason ?? Session.OwnReason;

    private IReadOnlyList<Problem> BuildProblems => [.. Session.Problems.Where(p => p.Field.StartsWith("build", StringComparison.Ordinal))];

    private string Kept
    {
        get
        {
            var at = HouseFormat.Time(TimeOnly.FromDateTime(Book.Site.ClockAt(View!.ChangedAt)));
            return $"Kept {at} · {(Session.Others switch { 0 => "only you here", 1 => "open on another page too", var n => $"open on {n} other pages" })}";
        }
    }

    /// <inheritdoc/>
    protected override async Task OnParametersSetAsync()
    {
        if (_session is not null)
        {
            return;
        }
        var session = new BenchSession(desk, new DraftId(Id));
        await session.OpenAsync();
        _session = session;
        _missing = View is null;
        _listening = desk.Listen(session.Page, new DraftId(Id), () => _ = InvokeAsync(OthersChangedAsync), () => _ = InvokeAsync(OthersChangedAsync));
    }

    /// <inheritdoc/>
    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        if (_asked || View is null)
        {
            return;
        }
        // Nothing can be typed before what was typed last time stands there again: the one would overwrite the other.
        _asked = true;
        var kept = await browser.ReadAsync(Id);
        foreach (var entry in kept.Waiting)
        {
            await EnteredAsync(entry);
        }
        _left = kept.Left(View);
        if (From is { } number)
        {
            // Taken up once: a reload must not put it on the bench again.
            navigation.NavigateTo($"/drafts/{Id}", replace: true);
            await StartFromAsync(number);
        }
        if (kept.Reason.Length > 0)
        {
            _reason = kept.Reason;
        }
        _initially = kept.Line;
        Typed(kept.Line);
        _opened = true;
        StateHasChanged();
    }

    private void Typed(string text)
    {
        _text = text;
        _typed = desk.ReadTyped(View!, text, Session.First);
    }

    private Task<bool> TypedAsync(string? text) => GuardAsync(() =>
    {
        Typed(text ?? "");
        return Task.FromResult(true);
    });

    private async Task EnteredAsync(EnteredEventArgs entry)
    {
        var taken = await GuardAsync(() =>
        {
            Typed("");   // in its turn: a key typed before it may still wait
            return Session.EnterAsync(entry.Id, entry.Text);
        });
        if (taken)
        {
            await browser.ArrivedAsync(Id, entry.Id);
        }
    }

    private async Task PickAsync(Suggestion suggestion)
    {
        var text = _text[..Math.Min(suggestion.From, _text.Length)] + suggestion.Name;
        Typed(text);
        await browser.FillLineAsync(Id, text);
    }

    private async Task AmountAsync((BenchLine Line, string Typed) set)
    {
        _refused = set.Typed;
        if (await GuardAsync(() => Session.SetAmountAsync(set.Line, set.Typed)))
        {
            _refused = "";
            await browser.DropAsync(BenchLines.KeptName(View!.Id, set.Line.Id));
        }
    }

    private Task<bool> ChangeAsync(EditAction action) => GuardAsync(() => Session.DoAsync(action));

    private async Task ChangeBuildAsync(EditAction action)
    {
        if (await GuardAsync(() => Session.DoAsync(action)) && action is ChangeBuild { Fields: BuildFields.Steps })
        {
            await browser.DropAsync($"steps/{Id}");
        }
    }

    private Task<bool> MethodAsync(string? key) => GuardAsync(async () =>
    {
        await Session.ChooseMethodAsync(key);
        return true;
    });

    private Task<bool> AnswerAsync((BenchLine Line, Answer Answer) given) => GuardAsync(() => Session.AnswerAsync(given.Line, given.Answer));

    private Task<bool> RewriteAsync((BenchLine Line, string Typed) set) => GuardAsync(() => Session.RewriteAsync(set.Line, set.Typed));

    private void SideBySide(BenchLine? line) => _sideBySide?.Open(line);

    private Task<bool> RemoveAsync(BenchLine line) => ChangeAsync(new RemoveLine(line.Id));

    private async Task MoveAsync((BenchLine Line, int By) move)
    {
        if (await GuardAsync(() => Session.MoveAsync(move.Line, move.By)))
        {
            // The moved row first, then the focus: a row loses it while it moves.
            StateHasChanged();
            await browser.FocusAsync($"[data-line='{move.Line.Id.Value}'] {(move.Line.Row is ReadRow ? "input.cell" : "button.grip")}");
        }
    }

    private Task<bool> PlaceAsync((BenchLine Line, int Place) move) => GuardAsync(() => Session.PlaceAsync(move.Line, move.Place));

    private Task<bool> UndoAsync() => GuardAsync(async () => { await Session.UndoAsync(); return true; });

    private Task<bool> RedoAsync() => GuardAsync(async () => { await Session.RedoAsync(); return true; });

    private Task<bool> ShowInAsync(string unit) => GuardAsync(async () => { await Session.ShowInAsync(unit == "fl oz" ? Unit.FluidOunce : Unit.Millilitre); return true; });

    private Task<bool> TakeTheirsAsync(Clash clash) => GuardAsync(async () => { await Session.TakeTheirsAsync(clash); return true; });

    private void KeepMine(Clash clash) => Session.KeepMine(clash);

    private void Noted() => Session.Noted();

    private Task<bool> StartFromAsync(int number) => GuardAsync(async () =>
    {
        if (View!.History.FirstOrDefault(row => row.Number == number) is { } saved)
        {
            await Session.StartFromAsync(saved);
        }
        return true;
    });

    private async Task ChooseStateAsync(string state)
    {
        (_chosenState, _changes) = (_chosenState == state ? "" : state, null);
        _changes = _chosenState.Length == 0 ? null : await history.ChangesAsync(new DraftId(Id), _chosenState);
    }

    private void Compare(string state)
    {
        var from = View!.GoesOnFrom is { } saved ? HouseFormat.Plain.Number(saved.Number, 0) : "";
        navigation.NavigateTo($"/drafts/{Id}/compare?of={(state == DrinkState.Now ? from : state)},{DrinkState.Now}");
    }

    private Task<bool> AddAsideAsync(NamedAside aside) => ChangeAsync(new AddLine(
        LineId.New(), new LineContent { Text = aside.Name, Ingredient = aside.Ingredient, Place = Place.Garnish, StartCelsius = Book.Stock.Pantry.Find(aside.Ingredient)!.KeptAtCelsius },
        View!.Lines.Count > 0 ? View.Lines[^1].Id : null));

    private async Task SaveAsync()
    {
        if (await GuardAsync(async () => await Session.SaveAsync(Reason) is not null))
        {
            _reason = null;
            await browser.DropAsync($"reason/{Id}");
        }
        else if (_failed.Length == 0)
        {
            _failed = string.Join(" ", Session.Problems.Select(p => p.Message));
        }
    }

    private async Task PutInAsync(Leftover left)
    {
        if (View!.Lines.FirstOrDefault(l => l.Id == left.Line) is { } line)
        {
            await AmountAsync((line, left.Typed));
        }
        else
        {
            await ChangeBuildAsync(new ChangeBuild(BuildFields.Steps, View.Build with { Steps = [.. left.Typed.Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)] }));
        }
        _left = [.. _left.Where(l => l != left)];
    }

    private async Task DropAsync(Leftover left)
    {
        await browser.DropAsync(left.Name);
        _left = [.. _left.Where(l => l != left)];
    }

    // The amount in the iteration that the working copy goes on from, as its cell would have shown it.
    private string? Was(BenchLine line)
    {
        var understood = View!.Lines.Where(l => l.Content.Ingredient is not null).TakeWhile(l => l.Id != line.Id).Count();
        if (line.Content.Ingredient is null || Session.Changed is not { } changed || understood >= changed.After.Lines.Count)
        {
            return null;
        }
        var change = changed.Lines.FirstOrDefault(c => ReferenceEquals(c.After, changed.After.Lines[understood]));
        return change switch
        {
            { Before: { } before } when change.What.HasFlag(Core.Iterations.LineAspects.Amount) => new LineWords(Book.Format, Book.Grid, Session.First) is var words && words.Amount(before.Line) is { Length: > 0 } amount ? "was " + amount : "had no amount",
            { Before: null } => "new",
            _ => null,
        };
    }

    private async Task OthersChangedAsync()
    {
        if (await GuardAsync(async () => { await Session.ReadAgainAsync(); return true; }))
        {
            StateHasChanged();
        }
    }

    // Whatever the database says, the page stays and what was typed stays with it.
    private async Task<bool> GuardAsync(Func<Task<bool>> work)
    {
        try
        {
            // One after the other: the key that saves must not overtake the line that was typed before it.
            await _turn.WaitAsync();
        }
        catch (ObjectDisposedException)
        {
            return false;   // the page was left
        }
        _busy = true;
        try
        {
            var working = work();
            if (await Task.WhenAny(working, Task.Delay(Slow)) != working)
            {
                _slow = true;
                StateHasChanged();
            }
            var done = await working;
            _failed = "";
            return done;
        }
        catch (StoreException trouble)
        {
            _failed = trouble.Message;
            return false;
        }
#pragma warning disable CA1031 // An edit that breaks must not take the page and what was typed with it; it is told and logged.
        catch (Exception problem)
#pragma warning restore CA1031
        {
            log.LogError(problem, "An edit of draft {Draft} broke.", Id);
            _failed = "That did not work; the cause is in the program's log.";
            return false;
        }
        finally
        {
            (_busy, _slow) = (false, false);
            if (!_gone)
            {
                _turn.Release();
            }
        }
    }

    /// <summary>While an edit is on its way nothing is drawn, unless it takes so long that somebody would notice.</summary>
    protected override bool ShouldRender() => !_busy || _slow;

    /// <inheritdoc/>
    public void Dispose()
    {
        _gone = true;
        _listening?.Dispose();
        _turn.Dispose();
    }
}
