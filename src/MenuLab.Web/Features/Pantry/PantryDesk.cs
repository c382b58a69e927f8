using MenuLab.Core;
using MenuLab.Core.Pantry;
using MenuLab.Data.Pantry;
using MenuLab.Web.Accounts;
using MenuLab.Web.Features.House;

namespace MenuLab.Web.Features.Pantry;

/// <summary>What the pantry's pages can do. After every change the house's book is read anew and all pages are told.</summary>
public sealed class PantryDesk(CurrentHouse current, CurrentPerson person, TimeProvider time)
{
    private readonly PantryWriting _pantry = new(current.House.Writer, time);
    private readonly PackWriting _packs = new(current.House.Writer, time);

    /// <summary>What the house has and how it writes.</summary>
    public HouseBook Book => current.Book;

    /// <summary>The day it is at the site.</summary>
    public DateOnly Today => Book.Today(time);

    /// <summary>Listens for changes of the pantry; the call comes on any thread.</summary>
    public IDisposable Listen(Action onChange) => current.House.Notice.Listen(Core.Drafts.PageId.New(), person.Id, draft: null, onDraft: null, onChange);

    /// <summary>The list.</summary>
    public async Task<Shelf> ShelfAsync()
    {
        var book = Book;
        await using var db = current.House.Read();
        return new Shelf(book, await db.RolesOfAll(), await db.PricesNow(book.Site.Id, Today, book.Stock.Pantry));
    }

    /// <summary>One ingredient; null where there is none.</summary>
    public async Task<(Ingredient Ingredient, IngredientSheet Sheet)?> OpenAsync(IngredientId id)
    {
        if (Book.Stock.Pantry.Find(id) is not { } ingredient)
        {
            return null;
        }
        await using var db = current.House.Read();
        return await db.OpenSheet(ingredient, Book.Site.Id) is { } sheet ? (ingredient, sheet) : null;
    }

    /// <summary>Adds an ingredient of the house.</summary>
    public Task<Result<IngredientId>> AddAsync(NewIngredient wish) => Told(_pantry.Add(wish, person.Id));

    /// <summary>Changes what it goes by.</summary>
    public Task<Result<int>> DescribeAsync(IngredientId id, int seen, IngredientCard card) => Told(_pantry.Describe(id, seen, card, person.Id));

    /// <summary>Sets figures of the house.</summary>
    public Task<Result<int>> SetFiguresAsync(IngredientId id, int seen, IReadOnlyList<HouseFigure> figures) => Told(_pantry.SetFigures(id, seen, figures, person.Id));

    /// <summary>Says what is known of allergens.</summary>
    public Task<Result<int>> SetAllergensAsync(IngredientId id, int seen, IReadOnlyList<AllergenWord> words) => Told(_pantry.SetAllergens(id, seen, words, person.Id));

    /// <summary>Keeps a reading.</summary>
    public Task<Result<int>> AddReadingAsync(IngredientId id, int seen, NewReading reading) => Told(_pantry.AddReading(id, seen, reading, person.Id));

    /// <summary>Says whether it is in the house.</summary>
    public Task<Result<bool>> SetOnHandAsync(IngredientId id, bool isOnHand) => Told(_pantry.SetOnHand(id, Book.Site.Id, isOnHand, person.Id));

    /// <summary>Takes it out of use.</summary>
    public Task<Result<IngredientArchived>> ArchiveAsync(IngredientId id, int seen) => Told(_pantry.Archive(id, seen, person.Id));

    /// <summary>Takes it back into use.</summary>
    public Task<Result<int>> RestoreAsync(IngredientId id, int seen) => Told(_pantry.Restore(id, seen, person.Id));

    /// <summary>Keeps a pack.</summary>
    public Task<Result<PackId>> AddPackAsync(PackId id, IngredientId ingredient, string supplier, double amount, string unit) =>
        Told(_packs.AddPack(new NewPack(id, ingredient, Book.Site.Id, supplier, amount, unit)));

    /// <summary>Takes a pack out of use.</summary>
    public Task<Result<PackId>> ArchivePackAsync(PackId id) => Told(_packs.ArchivePack(id));

    /// <summary>Keeps a price.</summary>
    public Task<Result<PriceId>> AddPriceAsync(NewPrice price) => Told(_packs.AddPrice(price, person.Id));

    private async Task<Result<T>> Told<T>(Task<Result<T>> change)
    {
        var result = await change;
        if (result.IsOk)
        {
            await current.House.RefreshAsync();
        }
        return result;
    }
}
