using MenuLab.Core.House;
using MenuLab.Core.Safety;
using MenuLab.Data.Drafts;
using MenuLab.Data.Drafts.Rounds;
using MenuLab.Data.House;
using MenuLab.Data.Iterations;
using MenuLab.Data.Opening;
using MenuLab.Data.Pantry;
using MenuLab.Data.Seeding;
using MenuLab.Data.Writing;
using MenuLab.Core.Drafts;
using MenuLab.Core.Drafts.Reading;
using MenuLab.Web.Features.Bench;
using Microsoft.EntityFrameworkCore;

namespace MenuLab.Web.Features.House;

/// <summary>An open database with what pages need of it at hand.</summary>
public sealed class OpenHouse : IAsyncDisposable
{
    /// <summary>The edition of the shipped ingredients that this program brings.</summary>
    public const int ShippedEdition = 1;

    private readonly TimeProvider _time;
    private readonly BuildCatalogue _catalogue;
    private readonly RuleBook _rules;
    private readonly SemaphoreSlim _refreshing = new(1, 1);
    private HouseBook _book = null!;

    private OpenHouse(Store store, string file, bool isDemo, BuildCatalogue catalogue, RuleBook rules, TimeProvider time)
    {
        Store = store;
        File = file;
        IsDemo = isDemo;
        _catalogue = catalogue;
        _rules = rules;
        _time = time;
        Drafts = new DraftWriting(store.Writer, time, content => Understanding.Of(content, Book.Stock.Pantry, Book.Stock.Measures));
        Iterations = new IterationWriting(store.Writer, time);
        Rounds = new RoundWriting(store.Writer, time, content => Understanding.Of(content, Book.Stock.Pantry, Book.Stock.Measures));
        Captures = new CaptureWriting(store.Writer, time, Drafts, new PantryWriting(store.Writer, time), ReadLine);
    }

    /// <summary>The database.</summary>
    public Store Store { get; }

    /// <summary>All writes go through it.</summary>
    public IWriter Writer => Store.Writer;

    /// <summary>Its file.</summary>
    public string File { get; }

    /// <summary>It is the invented demo bar.</summary>
    public bool IsDemo { get; }

    /// <summary>What the house has and how it writes, as of the last change.</summary>
    public HouseBook Book => Volatile.Read(ref _book);

    /// <summary>Starts drafts and applies edits.</summary>
    public DraftWriting Drafts { get; }

    /// <summary>Saves iterations.</summary>
    public IterationWriting Iterations { get; }

    /// <summary>Starts and ends rounds.</summary>
    public RoundWriting Rounds { get; }

    /// <summary>Takes what devices captured.</summary>
    public CaptureWriting Captures { get; }

    /// <summary>Tells pages that a draft or the house itself changed.</summary>
    public ChangeNotice Notice { get; } = new();

    /// <summary>A context to read with, for one operation.</summary>
    public MenuLab.Data.MenuLabDbContext Read() => Store.Read();

    /// <summary>Opens a file, or makes it: schema, first rows, shipped ingredients and, in the demo's own file, the demo bar.</summary>
    /// <param name="file">The database file.</param>
    /// <param name="isDemo">Fill an empty one with the demo bar.</param>
    /// <param name="say">Takes a sentence on what is being done and takes a while.</param>
    /// <param name="time">The clock.</param>
    /// <exception cref="StoreException">It cannot be used; nothing was overwritten.</exception>
    public static async Task<OpenHouse> OpenAsync(string file, bool isDemo, Action<string> say, TimeProvider time)
    {
        var isNew = !System.IO.File.Exists(file);
        if (isNew)
        {
            say(isDemo ? $"Making {file}: the pantry and an invented demo bar. This takes a few seconds, once." : $"Making {file}: the pantry. This takes a few seconds, once.");
        }
        // Read beside the database's opening: neither needs the other.
        var shipped = Task.Run(() => (Catalogue: SeedData.LoadCatalogue(SeedData.DefaultFolder), Rules: SeedData.LoadRules(SeedData.DefaultFolder)));
        var store = await SqliteStore.Open(new SqliteStoreOptions { File = file, Time = time });
        try
        {
            if (store.BackupMade is { } backup)
            {
                say($"Brought {file} up to date; as it was before, it is in {backup}.");
            }
            var (edition, behind) = await LookAsync(store.Writer, time);
            if (behind > TimeSpan.Zero)
            {
                say($"The clock of this machine stands {HouseFormat.Plain.Number(Math.Ceiling(behind.TotalMinutes), 0)} min behind what this house has seen before. New work keeps its order; look at the clock, since days and times are told by it.");
            }
            await FillAsync(store, edition, isDemo, isNew, say, time);
            var (catalogue, rules) = await shipped;
            var house = new OpenHouse(store, file, isDemo, catalogue, rules, time);
            await house.RefreshAsync();
            return house;
        }
        catch
        {
            await store.DisposeAsync();
            throw;
        }
    }

    /// <summary>Notes the time in a house that is there.</summary>
    /// <returns>The edition of shipped ingredients that it has, 0 before its first rows; and how far the clock stands behind.</returns>
    private static Task<(int Edition, TimeSpan Behind)> LookAsync(IWriter writer, TimeProvider time) =>
        writer.Write(async db =>
        {
            if (await db.HouseSettings.AsTracking().SingleOrDefaultAsync() is not { } settings)
            {
                return (0, TimeSpan.Zero);
            }
            var behind = settings.Saw(time.GetUtcNow());
            await db.SaveChangesAsync();
            return (settings.ShippedEdition, behind);
        });

    // What is there is asked of the database and not of the file's age: a start that was cut off is made good by the next.
    private static async Task FillAsync(Store store, int edition, bool isDemo, bool isNew, Action<string> say, TimeProvider time)
    {
        if (edition >= ShippedEdition && !(isDemo && await IsEmptyAsync(store)))
        {
            return;
        }
        var shipped = SeedData.Load(SeedData.DefaultFolder);
        await FirstRows.Ensure(store.Writer, shipped.Measures, time.GetUtcNow());
        // The writer takes one after the other; the demo bar is worked out meanwhile.
        var taking = ShippedIngredients.TakeIn(store.Writer, shipped.Pantry, ShippedEdition, time.GetUtcNow());
        var making = isDemo ? Task.Run(() => DemoBar.MakeAsync(store.Writer, store.Read, shipped, DemoBar.Load(DemoBar.DefaultFolder), time.GetUtcNow())) : Task.CompletedTask;
        // In this order: where the ingredients fail the demo bar fails for the lack of them, and theirs is the cause to tell.
        await Task.WhenAll(taking, making);
        var taken = await taking;
        if (!isNew && taken.Added + taken.Changed + taken.Archived > 0)
        {
            say($"Took in edition {ShippedEdition} of the shipped ingredients: {taken.Added} new, {taken.Changed} changed, {taken.Archived} archived.");
        }
    }

    private static async Task<bool> IsEmptyAsync(Store store)
    {
        await using var db = store.Read();
        return !await db.Drafts.AnyAsync();
    }

    /// <summary>Reads the book anew after a change of the pantry or the settings, and tells the pages.</summary>
    public async Task RefreshAsync()
    {
        await _refreshing.WaitAsync();
        try
        {
            var book = await ReadBookAsync();
            Volatile.Write(ref _book, book);
            // Sorting three thousand names takes a moment; whoever types first should not wait for it.
            _ = Task.Run(() => book.Reader);
        }
        finally
        {
            _refreshing.Release();
        }
        Notice.TellHouse();
    }

    // A text that is not one line (a step, two lines) is kept as typed, and the bench asks about it.
    private LineContent ReadLine(string text)
    {
        var read = Book.Reader.Read(text, new ReadSettings { BareNumber = Book.FirstUnit });
        return read is { Lines: [var line], Questions: [], Unread: [] } ? LineContent.Of(line) : LineContent.KeptAsTyped(text);
    }

    private async Task<HouseBook> ReadBookAsync()
    {
        await using var db = Read();
        var settings = await db.HouseSettings.SingleAsync();
        // One site until there are two (architecture 1.17).
        var site = await db.Sites.OrderBy(s => s.Id).FirstAsync();
        var measures = (await db.Sets.SingleAsync(s => s.Kind == SetKind.Measures && s.Number == settings.MeasuresSet)).Measures();
        var pantry = await db.LoadPantry();
        var prices = await db.PricesPerGram(site.Id, site.DayOf(_time.GetUtcNow()), pantry);
        var stock = new HouseStock(pantry, _catalogue, measures)
        {
            PricesPerGram = prices,
            Rules = SiteRules.Of(_rules, site.Jurisdiction, settings.Format),
        };
        return new HouseBook(stock, settings, site)
        {
            Archived = (await db.Ingredients.Where(i => i.ArchivedAt != null).Select(i => i.Id).ToListAsync()).ToHashSet(),
            OnHand = (await db.OnHand.Where(o => o.Site == site.Id).Select(o => o.Ingredient).ToListAsync()).ToHashSet(),
            People = await db.People.ToDictionaryAsync(p => p.Id, p => p.Name),
        };
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        await Store.DisposeAsync();
        _refreshing.Dispose();
    }
}
