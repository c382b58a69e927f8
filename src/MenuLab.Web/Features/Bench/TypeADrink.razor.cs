using MenuLab.Core.Balance;
using MenuLab.Core.Drafts;
using MenuLab.Web.Features.House;
using Microsoft.JSInterop;

namespace MenuLab.Web.Features.Bench;

/// <summary>Keeps what is typed, reads it a moment after the last key, and shows what it comes to.</summary>
public sealed partial class TypeADrink(CurrentHouse current, IJSRuntime browser, ILogger<TypeADrink> log) : IDisposable
{
    /// <summary>A pasted text longer than this is no drink; and a browser's message must stay below 32 KB.</summary>
    public const int MostCharacters = 6000;

    /// <summary>What an empty page shows in grey: a drink of the invented bar.</summary>
    public const string Example =
        "Low Water\n45 ml black tea, brewed\n22.5 ml honey syrup\n15 ml lemon juice\n15 ml verjus\n2 dashes saline 20%\nShake, fine strain into a coupe\nGarnish: rosemary sprig";

    private const string Millilitre = "mL";
    private const string Ounce = "fl oz";
    private static readonly string[] BareNumbers = [Millilitre, Ounce];
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(150);

    private TypedDrink _drink = new();
    private string _text = "";
    private string _bare = Millilitre;
    private Metric _chosen = Metric.Sugar;
    private bool _opened;
    private bool _stale;
    private bool _failed;
    private CancellationTokenSource _waiting = new();

    private string Counted => _drink.Rows.Count == 0
        ? ""
        : Lines(_drink.Read.Count()) + " read" + (_drink.NotCounted > 0 ? $", {_drink.NotCounted} not counted yet" : "");

    private static string Lines(int count) => count == 1 ? "1 line" : $"{count} lines";

    /// <inheritdoc/>
    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        if (!firstRender)
        {
            return;
        }
        _text = await browser.InvokeAsync<string?>("keptText.read", "drink") ?? "";
        _bare = await browser.InvokeAsync<string?>("keptText.read", "bare") == Ounce ? Ounce : Millilitre;
        _opened = true;
        ReadNow();
        StateHasChanged();
    }

    private async Task TypedAsync(string? typed)
    {
        _text = typed ?? "";
        _stale = true;
        await _waiting.CancelAsync();
        _waiting.Dispose();
        _waiting = new CancellationTokenSource();
        try
        {
            await Task.Delay(Pause, _waiting.Token);
        }
        catch (OperationCanceledException)
        {
            return;   // another key came, or the page was left
        }
        ReadNow();
    }

    private async Task ReadAsAsync(string bare)
    {
        _bare = bare;
        ReadNow();
        await browser.InvokeVoidAsync("keptText.keep", "bare", bare);
    }

    private Task AnswerAsync((AskedRow Question, Answer Answer) given) => ReplaceAsync(PlainLine.Put(_text, given.Question, given.Answer));

    private async Task ReplaceAsync(string text)
    {
        _text = text;
        ReadNow();
        await browser.InvokeVoidAsync("keptText.keep", "drink", text);
    }

    private void ReadNow()
    {
        try
        {
            _drink = current.Book.Pasted.Read(_text, _bare == Ounce ? Unit.FluidOunce : Unit.Millilitre);
            _failed = false;
            _stale = false;
        }
#pragma warning disable CA1031 // A text that the reader or the engine cannot bear must not take the page and its text with it; it is told and logged.
        catch (Exception problem)
#pragma warning restore CA1031
        {
            log.LogError(problem, "A typed drink could not be worked out.");
            _failed = true;
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _waiting.Cancel();
        _waiting.Dispose();
    }
}
