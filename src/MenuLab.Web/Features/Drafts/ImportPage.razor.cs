using System.Globalization;
using System.Text;
using MenuLab.Core.Drafts;
using MenuLab.Core.Drafts.Reading;
using MenuLab.Core.Exchange;
using MenuLab.Core.House;
using MenuLab.Web.Commands;
using MenuLab.Web.Features.Bench;
using MenuLab.Web.Features.House;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Forms;
using Microsoft.JSInterop;

namespace MenuLab.Web.Features.Drafts;

/// <summary>Takes files or a pasted text, shows how every line was read, and brings in what is ticked.</summary>
public sealed partial class ImportPage(ImportDesk desk, DraftStarter starter, CurrentHouse current, NavigationManager navigation) : IDisposable
{
    /// <summary>As many files as one look can take in; each may hold many drinks.</summary>
    private const int MostFiles = 20;

    /// <summary>Drinks shown at once: a page of a thousand tables is slow to draw and nobody reads it.</summary>
    private const int Page = 25;

    private const string Pasted = "Pasted text";
    private const string Millilitre = "mL";
    private const string Ounce = "fl oz";
    private const int MostCharacters = TypeADrink.MostCharacters;
    private static readonly string[] BareNumbers = [Millilitre, Ounce];

    private readonly CancellationTokenSource _left = new();
    private readonly HashSet<OfferedDrink> _ticked = [];
    private readonly List<HandedFile> _handed = [];
    private IReadOnlyList<IncomingFile> _files = [];
    private string _pasted = "";
    private string _bare = current.Book.FirstUnit == Unit.FluidOunce ? Ounce : Millilitre;
    private string _parts = "";
    private string _partsProblem = "";
    private double? _partsTotal;
    private string _said = "";
    private bool _reading;
    private int _shown = Page;

    [Inject] private IJSRuntime Browser { get; set; } = default!;

    private CurrentHouse Current => current;

    private LineWords Words => new(current.Book.Format, current.Book.Grid, Bare);

    private Unit Bare => _bare == Ounce ? Unit.FluidOunce : Unit.Millilitre;

    private static string Count(int count, string what) => count == 1 ? $"1 {what}" : string.Create(CultureInfo.InvariantCulture, $"{count} {what}s");

    /// <inheritdoc/>
    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        // What was pasted before a reload or a lost connection is offered again.
        if (firstRender && await Browser.InvokeAsync<string?>("keptText.read", "import") is { Length: > 0 } kept)
        {
            _pasted = kept;
            await ReadAgainAsync();
            StateHasChanged();
        }
    }

    private async Task TakeAsync(InputFileChangeEventArgs chosen)
    {
        _handed.Clear();
        if (chosen.FileCount > MostFiles)
        {
            _said = $"{chosen.FileCount} files are too many at once: up to {MostFiles} are read. Choose fewer.";
            _files = [];
            _ticked.Clear();
            return;
        }
        foreach (var file in chosen.GetMultipleFiles(MostFiles))
        {
            _handed.Add(await TakeAsync(file));
        }
        await ReadAgainAsync();
    }

    private async Task<HandedFile> TakeAsync(IBrowserFile file)
    {
        if (file.Size > TextFile.LargestBytes)
        {
            return new HandedFile(file.Name, [], TextFile.TooLarge(file.Size));
        }
        try
        {
            using var bytes = new MemoryStream();
            await using var stream = file.OpenReadStream(TextFile.LargestBytes, _left.Token);
            await stream.CopyToAsync(bytes, _left.Token);
            return new HandedFile(file.Name, bytes.ToArray());
        }
        catch (Exception e) when (e is IOException or JSException or TimeoutException)
        {
            return new HandedFile(file.Name, [], new FileProblem(1, 1, "The file did not arrive whole. Choose it again."));
        }
    }

    private Task PasteAsync(ChangeEventArgs typed)
    {
        _pasted = typed.Value as string ?? "";
        return ReadAgainAsync();
    }

    private Task ReadAsAsync(string bare)
    {
        _bare = bare;
        return ReadAgainAsync();
    }

    private Task PartsAsync(ChangeEventArgs typed)
    {
        _parts = typed.Value as string ?? "";
        var number = HouseParse.Number(_parts);
        _partsTotal = number.IsRead && number.Value > 0 ? number.Value : null;
        _partsProblem = string.IsNullOrWhiteSpace(_parts) || _partsTotal is not null ? "" : number.IsRead ? "Parts add up to more than nothing." : number.Echo;
        return ReadAgainAsync();
    }

    private async Task ReadAgainAsync()
    {
        _reading = true;
        _shown = Page;
        var pasted = string.IsNullOrWhiteSpace(_pasted) ? [] : new[] { new HandedFile(Pasted, Encoding.UTF8.GetBytes(_pasted)) };
        _files = await desk.ReadAsync([.. _handed, .. pasted], new ReadSettings { BareNumber = Bare, PartsTotalMillilitres = _partsTotal }, _left.Token);
        _ticked.Clear();
        TickShown(0);
        _said = _files.Count == 0 ? "" : $"{Count(_files.Sum(f => f.Drinks.Count), "drink")} read from {Count(_files.Count, "source")}; nothing is stored yet.";
        _reading = false;
    }

    private void ShowMore()
    {
        var before = _shown;
        _shown += Page;
        TickShown(before);
    }

    private void TickShown(int from) => _ticked.UnionWith(_files.SelectMany(f => f.Drinks.Skip(from).Take(_shown - from)).Where(d => d.Problem is null));

    private void Tick(OfferedDrink offered, bool on)
    {
        if (on)
        {
            _ticked.Add(offered);
        }
        else
        {
            _ticked.Remove(offered);
        }
    }

    private async Task BringInAsync()
    {
        _reading = true;
        var started = await starter.BringInAsync([.. _files.SelectMany(f => f.Drinks).Where(_ticked.Contains).Select(d => d.Drink)], _left.Token);
        _reading = false;
        if (!started.IsOk)
        {
            _said = started.Problems[0].Message + " Nothing was stored.";
            return;
        }
        await Browser.InvokeVoidAsync("keptText.keep", "import", "");
        navigation.NavigateTo(started.Value.Count == 1 ? $"/drafts/{started.Value[0].Value}" : "/");
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _left.Cancel();
        _left.Dispose();
    }
}
