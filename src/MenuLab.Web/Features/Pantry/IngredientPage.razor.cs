using MenuLab.Core;
using MenuLab.Core.House;
using MenuLab.Core.Iterations;
using MenuLab.Core.Pantry;
using MenuLab.Data.Pantry;
using Microsoft.AspNetCore.Components;

namespace MenuLab.Web.Features.Pantry;

/// <summary>One ingredient: loads it, hands changes to the desk and keeps what was typed when one is refused.</summary>
public sealed partial class IngredientPage(PantryDesk desk) : IDisposable
{
    private readonly HashSet<string> _unfolded = [];
    private (Ingredient Ingredient, IngredientSheet Sheet)? _opened;
    private TypedFigures _typed = null!;
    private Preview _preview = null!;
    private IDisposable? _listening;
    private IReadOnlyList<Problem> _problems = [];
    private IReadOnlyList<Problem> _figureProblems = [];
    private string _said = "";
    private bool _missing;
    private bool _theirs;
    private bool _asking;
    private bool _busy;

    /// <summary>The ingredient's id.</summary>
    [Parameter] public Guid Id { get; set; }

    /// <summary>How the house writes.</summary>
    [CascadingParameter] public HouseFormat Format { get; set; } = HouseFormat.Plain;

    private IngredientId Which => new(Id);

    private int Seen => _opened!.Value.Sheet.Version;

    private Core.Safety.SiteRules Rules => desk.Book.Stock.Rules;

    private DateOnly Today => desk.Today;

    private string Currency => desk.Book.Site.Currency;

    private bool IsOnHand => desk.Book.OnHand.Contains(Which);

    private string NameOf(PersonId person) => desk.Book.NameOf(person);

    private DateOnly DayOf(DateTimeOffset instant) => desk.Book.Site.DayOf(instant);

    /// <inheritdoc/>
    protected override async Task OnParametersSetAsync()
    {
        if (_opened is { } opened && opened.Ingredient.Id == Which)
        {
            return;
        }
        _listening ??= desk.Listen(() => InvokeAsync(HouseChangedAsync));
        _opened = await desk.OpenAsync(Which);
        _missing = _opened is null;
        (_problems, _figureProblems, _said, _theirs, _asking) = ([], [], "", false, false);
        if (_opened is { } now)
        {
            _typed = new TypedFigures(now.Ingredient);
            Worked();
        }
    }

    private void Worked() => _preview = _typed.Preview();

    private void Fold(string group) => _ = _unfolded.Remove(group) || _unfolded.Add(group);

    private void Forget()
    {
        _typed = new TypedFigures(_opened!.Value.Ingredient);
        _figureProblems = [];
        Worked();
    }

    private async Task SaveFiguresAsync()
    {
        _said = "";
        var figures = _typed.ToSave();
        _figureProblems = figures.Problems;
        if (!figures.IsOk)
        {
            return;
        }
        _figureProblems = await KeepAsync(() => desk.SetFiguresAsync(Which, Seen, figures.Value), takesTyped: true);
        _said = _figureProblems.Count == 0 ? "Saved. Drafts count with it from now on; saved iterations keep theirs." : "";
    }

    private async Task<(IReadOnlyList<Problem> Problems, string Said)> AddReadingAsync(NewReading reading)
    {
        var before = CompositionText.Hash(_opened!.Value.Ingredient.Composition);
        var problems = await KeepAsync(() => desk.AddReadingAsync(Which, Seen, reading));
        var moved = problems.Count > 0 || CompositionText.Hash(_opened!.Value.Ingredient.Composition) != before;
        return (problems, problems.Count > 0 ? ""
            : moved ? "Kept. Drafts count with it from now on."
            : "Kept. It changes no figure of the liquid: another reading is later, or what it tells is stated already (Brix counts only where nobody states the sugars).");
    }

    private Task<IReadOnlyList<Problem>> SetAllergensAsync(IReadOnlyList<AllergenWord> words) => KeepAsync(() => desk.SetAllergensAsync(Which, Seen, words));

    private Task<IReadOnlyList<Problem>> DescribeAsync(int seen, IngredientCard card) => KeepAsync(() => desk.DescribeAsync(Which, seen, card));

    private Task<IReadOnlyList<Problem>> AddPackAsync(PackId id, string supplier, double amount, string unit) => KeepAsync(() => desk.AddPackAsync(id, Which, supplier, amount, unit));

    private Task<IReadOnlyList<Problem>> AddPriceAsync(NewPrice price) => KeepAsync(() => desk.AddPriceAsync(price));

    private Task<IReadOnlyList<Problem>> ArchivePackAsync(PackId id) => KeepAsync(() => desk.ArchivePackAsync(id));

    private async Task HandAsync(bool isOnHand) => _problems = await KeepAsync(() => desk.SetOnHandAsync(Which, isOnHand));

    private async Task ArchiveAsync()
    {
        _problems = await KeepAsync(() => desk.ArchiveAsync(Which, Seen));
        _asking = false;
    }

    private async Task RestoreAsync() => _problems = await KeepAsync(() => desk.RestoreAsync(Which, Seen));

    private async Task<IReadOnlyList<Problem>> KeepAsync<T>(Func<Task<Result<T>>> change, bool takesTyped = false)
    {
        _busy = true;
        try
        {
            var result = await change();
            if (result.IsOk)
            {
                await ReadAsync(keepTyped: !takesTyped);
            }
            else if (result.Problems.Any(p => p.Field == PantryWriting.SomebodyElse))
            {
                _theirs = true;
            }
            return result.Problems;
        }
        finally
        {
            _busy = false;
            StateHasChanged();
        }
    }

    // The house changed: by this page (then it reads for itself), by another page, or elsewhere in the pantry.
    private async Task HouseChangedAsync()
    {
        if (_busy || _opened is not { } mine || await desk.OpenAsync(Which) is not { } now || _busy)
        {
            return;
        }
        if (now.Sheet.Version == mine.Sheet.Version || _typed.Changed == 0)
        {
            await ReadAsync(keepTyped: true);
        }
        else
        {
            _theirs = true;
        }
        StateHasChanged();
    }

    private async Task TakeInAsync()
    {
        await ReadAsync(keepTyped: true);
        _figureProblems = [];
    }

    private async Task ReadAsync(bool keepTyped)
    {
        if (await desk.OpenAsync(Which) is { } now)
        {
            _opened = now;
            _typed = keepTyped ? _typed.Over(now.Ingredient) : new TypedFigures(now.Ingredient);
            _theirs = false;
            Worked();
        }
    }

    /// <inheritdoc/>
    public void Dispose() => _listening?.Dispose();
}
