using MenuLab.Core.Balance;
using MenuLab.Core.House;
using MenuLab.Core.Pantry;
using MenuLab.Core.Quantities;
using Microsoft.EntityFrameworkCore;

namespace MenuLab.Data.Pantry;

/// <summary>Reads prices.</summary>
public static class PriceQueries
{
    /// <summary>
    /// What a gram of each ingredient costs at a site on a day, net, in the site's currency. Of all packs in use the price from the latest day
    /// counts, on one day the one entered last; a price in another currency, from a later day, or for a pack of pieces that nobody has weighed
    /// does not.
    /// </summary>
    /// <param name="db">A context to read with.</param>
    /// <param name="site">The site.</param>
    /// <param name="day">The site's day.</param>
    /// <param name="pantry">Where densities and piece weights are found; what it lacks has no price.</param>
    /// <returns>Net price per gram; an ingredient without a price is absent.</returns>
    public static async Task<IReadOnlyDictionary<IngredientId, double>> PricesPerGram(this MenuLabDbContext db, SiteId site, DateOnly day, PantryList pantry) =>
        (await db.PricesNow(site, day, pantry)).ToDictionary(p => p.Key, p => p.Value.PerGram);

    /// <summary>The same with the day since when each price counts.</summary>
    public static async Task<IReadOnlyDictionary<IngredientId, PriceNow>> PricesNow(this MenuLabDbContext db, SiteId site, DateOnly day, PantryList pantry)
    {
        var prices = await (
            from price in db.Prices
            join pack in db.Packs on price.Pack equals pack.Id
            join at in db.Sites on pack.Site equals at.Id
            where pack.Site == site && pack.ArchivedAt == null && price.Currency == at.Currency && price.FromDay <= day
            select new { Pack = pack, Price = price }).ToListAsync();
        return Counting(prices.Select(p => p.Price), prices.Select(p => p.Pack).DistinctBy(p => p.Id), pantry);
    }

    /// <summary>The price of each ingredient that counts, the latest of some; all of them in one currency and from days that have come.</summary>
    internal static Dictionary<IngredientId, PriceNow> Counting(IEnumerable<PriceRow> prices, IEnumerable<PackRow> packs, PantryList pantry)
    {
        var byId = packs.ToDictionary(p => p.Id);
        var counting = new Dictionary<IngredientId, PriceNow>();
        // The ids are made in the order of entry, so the later one wins on one day.
        foreach (var price in prices.OrderBy(p => p.FromDay).ThenBy(p => p.Id.Value))
        {
            var pack = byId[price.Pack];
            if (pantry.Find(pack.Ingredient) is { } ingredient && PerGram(price, pack, ingredient) is { } cost)
            {
                counting[ingredient.Id] = new PriceNow(cost, price.FromDay);
            }
        }
        return counting;
    }

    /// <summary>What a gram costs by one price; null where nobody has weighed a piece.</summary>
    internal static double? PerGram(PriceRow price, PackRow pack, Ingredient ingredient)
    {
        var net = Costing.Net(Money.Of(price.Amount / 10_000m, price.Currency), price.IsGross, price.TaxRate / 10_000m);
        return Costing.PerGram(net, pack.Amount, pack.Unit, ingredient);
    }
}
