using MenuLab.Core.Balance;
using MenuLab.Core.Drafts;
using MenuLab.Core.Iterations;
using MenuLab.Data.House;
using MenuLab.Data.Iterations;
using MenuLab.Web.Features.History;
using MenuLab.Web.Features.House;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Extensions.DependencyInjection;

namespace MenuLab.Web.Tests.Features.History;

/// <summary>A host on a house of its own with one invented drink in it: four iterations, the fourth from the second, and a bench that goes on from the fourth.</summary>
public sealed class HarbourHouse : IAsyncLifetime
{
    private readonly string _folder = Path.Combine(Path.GetTempPath(), "menulab-" + Guid.NewGuid().ToString("n"));
    private WebApplication _site = null!;

    /// <summary>The drink.</summary>
    public DraftId Draft { get; } = DraftId.New();

    /// <summary>A draft with a name and nothing else.</summary>
    public DraftId Empty { get; } = DraftId.New();

    /// <summary>A draft whose one iteration has other figures stored than its lines give today, as an older engine would have left it.</summary>
    public DraftId Old { get; } = DraftId.New();

    /// <summary>A client of the host.</summary>
    public HttpClient Client { get; } = new();

    public async ValueTask InitializeAsync()
    {
        _site = WebHost.Build(["--data", _folder, "--urls", "http://127.0.0.1:0"]);
        await _site.Services.GetRequiredService<Houses>().ShowAsync(demo: false);
        await FillAsync(_site.Services.GetRequiredService<Houses>().Current);
        await _site.StartAsync();
        Client.BaseAddress = new Uri(_site.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.Single());
    }

    public async ValueTask DisposeAsync()
    {
        Client.Dispose();
        await _site.DisposeAsync();
        Directory.Delete(_folder, recursive: true);
    }

    /// <summary>The desk, as a page would get it.</summary>
    public HistoryDesk Desk() => new(Current());

    /// <summary>The house, as a page would get it.</summary>
    public CurrentHouse Current() => new(_site.Services.GetRequiredService<Houses>());

    private async Task FillAsync(OpenHouse house)
    {
        const string Barley = "45 ml black tea, brewed";
        await house.Drafts.Start(Empty, "Nothing yet", FirstRows.AtThisMachine);
        await house.Drafts.Start(Draft, "Low Water", FirstRows.AtThisMachine);
        await house.Drafts.Start(Old, "An old one", FirstRows.AtThisMachine);
        await Save(house, Old, "First pour", null, $"{Barley}\n30 ml honey syrup", storedAsOf: $"{Barley}\n45 ml honey syrup");
        var first = await Save(house, Draft, "First pour", null, $"{Barley}\n30 ml honey syrup\n7.5 ml lemon juice\nShake 12 s, strain into a coupe");
        var second = await Save(house, Draft, "Lemon in, to lift it", first, $"{Barley}\n30 ml honey syrup\n15 ml lemon juice\n2 dashes saline\nShake 12 s, strain into a coupe");
        await Save(house, Draft, "Less honey", second, $"{Barley}\n22.5 ml honey syrup\n15 ml lemon juice\n2 dashes saline\nShake 12 s, strain into a coupe");
        await Save(house, Draft, "", second, $"{Barley}\n15 ml lemon juice\n30 ml honey syrup\n10 ml oat drink\ngarnish: rosemary sprig\nStir, strain into a rocks glass", "a whisper of beet leaf");
        await Put(house, Draft, $"{Barley}\n15 ml lemon juice\n22.5 ml honey syrup\n10 ml oat drink\ngarnish: rosemary sprig\nStir, strain into a rocks glass", "a whisper of beet leaf");
    }

    private static async Task<IterationId> Save(OpenHouse house, DraftId draft, string reason, IterationId? parent, string text, string? keptAsTyped = null, string? storedAsOf = null)
    {
        await Put(house, draft, text, keptAsTyped);
        await using var db = house.Read();
        var version = db.Drafts.Single(d => d.Id == draft).Version;
        var stock = house.Book.Stock;
        var working = db.Drafts.Single(d => d.Id == draft);
        var snapshot = Snapshot.Take(working, stock.Pantry, stock.Catalogue, stock.Measures, stock.PricePerGram, house.Book.Site.Currency);
        var weighed = Weigher.Of(working.DraftLines, working.Build.Value, stock.Pantry, stock.Catalogue, stock.Measures, stock.PricePerGram);
        var saved = await house.Iterations.Save(new IterationToSave(
            IterationId.New(), draft, version, parent, reason, FirstRows.AtThisMachine, snapshot,
            storedAsOf is null
                ? BalanceEngine.Of(weighed.Lines, weighed.Build, Detail.RangesAndShares, working.UncountedMillilitres)
                : house.Book.Pasted.Work(storedAsOf, Unit.Millilitre).Balance,
            new EngineStamp(BalanceEngine.Version, stock.Measures.Number, Jurisdiction: "EU"),
            [.. snapshot.Lines.Select(l => stock.Pantry.Find(l.Line.Ingredient)!.Composition).Distinct()]));
        Assert.True(saved.IsOk, string.Join(' ', saved.IsOk ? [] : saved.Problems.Select(p => p.Message)));
        return saved.Value.Id;
    }

    private static async Task Put(OpenHouse house, DraftId draft, string text, string? keptAsTyped)
    {
        var read = house.Book.Pasted.Work(text, Unit.Millilitre).Read;
        Assert.Empty(read.Questions);
        Assert.Empty(read.Unread);
        var lines = read.Lines.Select(LineContent.Of).Concat(keptAsTyped is null ? [] : [LineContent.KeptAsTyped(keptAsTyped, null)]);
        await using var db = house.Read();
        var version = db.Drafts.Single(d => d.Id == draft).Version;
        var put = await house.Drafts.Apply(
            draft, EditId.New(), FirstRows.AtThisMachine, PageId.New(), version, new StartFrom(null, [.. lines.Select(c => new PlacedLine(LineId.New(), c))], read.Build));
        Assert.True(put.IsOk);
    }
}

/// <summary>The tests that share the house; making one takes seconds.</summary>
[CollectionDefinition]
public sealed class AtTheHarbour : ICollectionFixture<HarbourHouse>;
