using MenuLab.Core;
using MenuLab.Core.Drafts;
using MenuLab.Core.Iterations;
using MenuLab.Core.Pantry;
using MenuLab.Core.Specs;
using MenuLab.Print;
using MenuLab.Web.Features.History;
using MenuLab.Web.Features.House;

namespace MenuLab.Web.Features.Specs;

/// <summary>Makes cards of drinks that nobody has approved yet: each says DRAFT across.</summary>
public sealed class CardDesk(CurrentHouse current, HistoryDesk history, TimeProvider clock)
{
    /// <summary>Most drinks in one file.</summary>
    public const int MaxDrinks = 40;

    private HouseBook Book => current.Book;

    /// <summary>The paper that was asked for; for none the house's own.</summary>
    /// <param name="asked">Name of a paper; null or empty for the house's.</param>
    /// <param name="sheet">Four to a sheet.</param>
    /// <returns>The paper, or that there is no such paper.</returns>
    public Result<CardPaper> Paper(string? asked, bool sheet = false)
    {
        if (string.IsNullOrEmpty(asked))
        {
            var letter = Book.Settings.Paper == Core.House.Paper.Letter;
            return Result.Ok(sheet ? letter ? CardPaper.SheetLetterOfFour : CardPaper.SheetA4OfFour : letter ? CardPaper.FourBySix : CardPaper.A6);
        }
        return Enum.TryParse<CardPaper>(asked, ignoreCase: true, out var paper) && Enum.IsDefined(paper) && !char.IsAsciiDigit(asked[0])
            ? Result.Ok(paper)
            : Result.Invalid<CardPaper>(new Problem("paper", $"There is no such paper; there is {string.Join(", ", Enum.GetNames<CardPaper>())}."));
    }

    /// <summary>The card of a typed drink, or what a person must do before there can be one.</summary>
    public Result<byte[]> Typed(string text, Unit bareNumber, CardPaper paper) =>
        Print([CardSource.Of(Book.Pasted.Work(text, bareNumber), Book.Stock)], paper, bareNumber == Unit.FluidOunce);

    /// <summary>The card of a saved iteration; null where there is none.</summary>
    public async Task<Result<byte[]>?> IterationAsync(IterationId id, CardPaper paper) => await history.FindAsync(id) is { } state ? Print([CardSource.Of(state)], paper) : null;

    /// <summary>The card of what is on the bench; null where there is no such draft.</summary>
    public async Task<Result<byte[]>?> BenchAsync(DraftId id, CardPaper paper) => await history.BenchAsync(id) is { } state ? Print([CardSource.Of(state)], paper) : null;

    /// <summary>Cards of several drafts, of each its last iteration or, where none was saved, what is on the bench; null where one of them does not exist.</summary>
    public async Task<Result<byte[]>?> SheetAsync(IReadOnlyList<DraftId> drafts, CardPaper paper)
    {
        var sources = new List<CardSource>();
        foreach (var draft in drafts)
        {
            if (await history.LastAsync(draft) is not { } state)
            {
                return null;
            }
            sources.Add(CardSource.Of(state));
        }
        return Print(sources, paper);
    }

    private Result<byte[]> Print(IReadOnlyList<CardSource> sources, CardPaper paper, bool? fluidOuncesFirst = null)
    {
        var empty = sources.Where(s => s.Lines.Count == 0).ToList();
        return empty.Count > 0
            ? Result.Invalid<byte[]>([.. empty.Select(s => new Problem("text", $"{s.Name}: there is no line to print yet: type an amount and an ingredient, and answer what is asked."))])
            : CardPrinter.Print([.. sources.Select(s => SpecCard.Content(Request(s, fluidOuncesFirst ?? Book.FirstUnit == Unit.FluidOunce)))], paper);
    }

    private CardRequest Request(CardSource source, bool fluidOuncesFirst) => new()
    {
        Name = source.Name,
        Issue = source.Issue,
        IsDraft = true,
        PrintedOn = Book.Today(clock),
        Lines = source.Lines,
        Names = source.Names,
        Build = source.Build,
        Catalogue = source.Catalogue,
        Balance = source.Balance,
        Grid = Book.Grid,
        Format = Book.Format,
        FluidOuncesFirst = fluidOuncesFirst,
        AllergenNames = Species(source),
        Cautions = [.. NotOnTheCard(source.Open), .. source.Cautions.Select(c => c.Text)],
    };

    // Species are what the pantry notes today: a name for what was in the drink then, not another answer to whether it was.
    private Dictionary<Allergen, string> Species(CardSource source)
    {
        var names = new Dictionary<Allergen, string>();
        foreach (var allergen in Enum.GetValues<Allergen>().Where(a => source.Balance.Allergens[a] == AllergenState.Present))
        {
            var notes = source.Weighed
                .Where(l => l.Composition.Allergens[allergen] == AllergenState.Present)
                .Select(l => l.Ingredient)
                .Distinct()
                .Select(id => Book.Stock.Pantry.Find(id)?.AllergenFacts.FirstOrDefault(f => f.Allergen == allergen && f.State == AllergenState.Present)?.Note ?? "");
            if (AllergenSpecies.Name(allergen, [.. notes]) is { } name)
            {
                names.Add(allergen, name);
            }
        }
        return names;
    }

    // A line that is missing from a card without a word would be poured by nobody.
    private static IEnumerable<string> NotOnTheCard(IReadOnlyList<string> open) =>
        open.Count == 0 ? [] : [$"Not on this card, still open: {string.Join("; ", open)}."];
}
