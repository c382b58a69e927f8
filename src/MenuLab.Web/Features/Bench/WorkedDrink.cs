using MenuLab.Core.Balance;
using MenuLab.Core.Drafts;
using MenuLab.Core.Drafts.Reading;
using MenuLab.Core.House;
using MenuLab.Core.Pantry;
using MenuLab.Core.Safety;

namespace MenuLab.Web.Features.Bench;

/// <summary>What the house has to work with: its pantry, its methods, ices and glasses, its measures, and what its ingredients cost.</summary>
public sealed record HouseStock(PantryList Pantry, BuildCatalogue Catalogue, MeasuresSet Measures)
{
    /// <summary>Net price per gram in the site's currency; what has no price is not in it.</summary>
    public IReadOnlyDictionary<IngredientId, double> PricesPerGram { get; init; } = new Dictionary<IngredientId, double>();

    /// <summary>The safety rules that the site goes by; without them every drink says that nothing was checked.</summary>
    public SiteRules Rules { get; init; } = SiteRules.None;

    /// <summary>Net price per gram; 0 where unpriced, as the engine takes it.</summary>
    public double PricePerGram(IngredientId ingredient) => PricesPerGram.GetValueOrDefault(ingredient);
}

/// <summary>A drink all the way from its reading to its balance and cautions; the page and the command line show the same one.</summary>
/// <param name="Read">The drink as read.</param>
/// <param name="Weighed">Its weighed lines and models.</param>
/// <param name="Balance">Its balance, with ranges and shares.</param>
/// <param name="Cautions">What a person must look at.</param>
public sealed record WorkedDrink(ReadDrink Read, WeighedDrink Weighed, DrinkBalance Balance, IReadOnlyList<Caution> Cautions)
{
    /// <summary>Works a drink out.</summary>
    /// <param name="read">The drink as read.</param>
    /// <param name="house">What the house has.</param>
    /// <param name="uncountedMillilitres">Volume of lines that are not counted, mL; null takes it from the questions.</param>
    public static WorkedDrink Of(ReadDrink read, HouseStock house, double? uncountedMillilitres = null)
    {
        var weighed = Weigher.Of(read.Lines, read.Build, house.Pantry, house.Catalogue, house.Measures, house.PricePerGram);
        var uncounted = uncountedMillilitres ?? read.Questions.Where(q => q.Place == Place.In && double.IsFinite(q.Millilitres)).Sum(q => q.Millilitres);
        var balance = BalanceEngine.Of(weighed.Lines, weighed.Build, Detail.RangesAndShares, uncounted);
        return new WorkedDrink(read, weighed, balance, WhatToMind.Of(weighed, balance, Words(read, weighed, house.Pantry), house.Rules));
    }

    private static DrinkWords Words(ReadDrink read, WeighedDrink weighed, PantryList pantry) => new(
        [.. weighed.From.Select(place => read.Lines[place]).Select(line => $"{pantry.Find(line.Ingredient)!.Name} {line.Treatment} {line.Text}")],
        // A line that is still open may name the very thing that a rule is about.
        [.. read.Build.Steps, .. read.Questions.Select(q => q.Text), .. read.Unread.Select(u => u.Text)]);

    /// <summary>Which lines bring an allergen or leave it open, in the order typed.</summary>
    public IEnumerable<DraftLine> LinesWith(Allergen allergen, AllergenState state) =>
        Weighed.Lines.Select((line, i) => (line, i)).Where(x => x.line.Composition.Allergens[allergen] == state).Select(x => Read.Lines[Weighed.From[x.i]]);

    /// <summary>Notes of the reading, of the weighing, and why there is no served state.</summary>
    public IEnumerable<string> AllNotes()
    {
        foreach (var note in Read.Notes.Concat(Weighed.Notes))
        {
            yield return note;
        }
        if (Balance.ServedMissingBecause.Length > 0)
        {
            yield return "No served figures: " + Balance.ServedMissingBecause;
        }
        var open = Read.Questions.Count + Read.Unread.Count;
        if (open > 0)
        {
            yield return $"{open} {(open == 1 ? "line is" : "lines are")} kept as typed and not in the figures.";
        }
    }
}
