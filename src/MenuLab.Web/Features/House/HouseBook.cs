using MenuLab.Core.Drafts;
using MenuLab.Core.Drafts.Reading;
using MenuLab.Core.House;
using MenuLab.Core.Pantry;
using MenuLab.Web.Features.Bench;

namespace MenuLab.Web.Features.House;

/// <summary>
/// What the house has and how it writes, as it stood at one moment: read whole, never changed. A page keeps the one it
/// works with and takes the newest when it is told that the house changed.
/// </summary>
public sealed class HouseBook
{
    private readonly Lazy<DrinkReader> _reader;
    private readonly Lazy<PastedDrink> _pasted;
    private readonly Lazy<IngredientIndex> _index;

    /// <summary>A book.</summary>
    public HouseBook(HouseStock stock, HouseSettings settings, Site site)
    {
        Stock = stock;
        Settings = settings;
        Site = site;
        // The names of three thousand ways to write an ingredient take a moment to sort; whoever reads first waits for it.
        _reader = new Lazy<DrinkReader>(() => new DrinkReader(Vocabulary.Of(new PantryList(Stock.Pantry.All.Where(i => !Archived.Contains(i.Id))), Stock.Catalogue), Stock.Measures));
        _index = new Lazy<IngredientIndex>(() => new IngredientIndex(Stock.Pantry.All.Where(i => !Archived.Contains(i.Id)), OnHand));
        _pasted = new Lazy<PastedDrink>(() => new PastedDrink(Stock, _reader.Value, Format, Grid));
    }

    /// <summary>Pantry (archived ingredients too, since drafts may hold them), methods, ices, glasses, measures, prices.</summary>
    public HouseStock Stock { get; }

    /// <summary>How the house writes and pours.</summary>
    public HouseSettings Settings { get; }

    /// <summary>The site: currency, law, clock.</summary>
    public Site Site { get; }

    /// <summary>Ingredients that are out of use: found by no search, read by no new line.</summary>
    public IReadOnlySet<IngredientId> Archived { get; init; } = new HashSet<IngredientId>();

    /// <summary>Ingredients that somebody said are in the house.</summary>
    public IReadOnlySet<IngredientId> OnHand { get; init; } = new HashSet<IngredientId>();

    /// <summary>People by id; an erased one has an empty name.</summary>
    public IReadOnlyDictionary<PersonId, string> People { get; init; } = new Dictionary<PersonId, string>();

    /// <summary>How figures and days are written.</summary>
    public HouseFormat Format => Settings.Format;

    /// <summary>How amounts are poured and printed.</summary>
    public PourGrid Grid => new(Settings.PourStepMillilitres, Stock.Measures.FluidOunce);

    /// <summary>The unit that stands first, and that a bare number is read in.</summary>
    public Unit FirstUnit => Settings.FirstUnit == Core.House.FirstUnit.FluidOunces ? Unit.FluidOunce : Unit.Millilitre;

    /// <summary>Reads typed lines and drinks by the names of this house.</summary>
    public DrinkReader Reader => _reader.Value;

    /// <summary>Works out whole typed drinks.</summary>
    public PastedDrink Pasted => _pasted.Value;

    /// <summary>Finds ingredients while somebody types.</summary>
    public IngredientIndex Index => _index.Value;

    /// <summary>Name of a person; "somebody" where the details were erased.</summary>
    public string NameOf(PersonId person) => People.GetValueOrDefault(person) is { Length: > 0 } name ? name : "somebody";

    /// <summary>The day it is at the site.</summary>
    public DateOnly Today(TimeProvider time) => Site.DayOf(time.GetUtcNow());
}
