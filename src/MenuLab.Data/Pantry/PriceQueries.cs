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
    public static async Task<IReadOnlyDictionary<IngredientId, double>> PricesPerGram(this MenuLabDbContext db, SiteId site, DateOnly day, PantryList pantry)
    {
        var prices = await (
            from price in db.Prices
            join pack in db.Packs on price.Pack equals pack.Id
            join at in db.Sites on pack.Site equals at.Id
            where pack.Site == site && pack.ArchivedAt == null && price.Currency == at.Currency && price.FromDay <= day
            select new { pack.Ingredient, Pack = pack, Price = price }).ToListAsync();
        var perGram = new Dictionary<IngredientId, double>();
        // The ids are made in the order of entry, so the later one wins on one day.
        foreach (var row in prices.OrderBy(p => p.Price.FromDay).ThenBy(p => p.Price.Id.Value))
        {
            if (pantry.Find(row.Ingredient) is { } ingredient && PerGram(row.Price, row.Pack, ingredient) is { } cost)
            {
                perGram[row.Ingredient] = cost;
            }
        }
        return perGram;
    }

    /// <summary>What a gram costs by one price of one pack; null for a pack of pieces that nobody has weighed.</summary>
    internal static double? PerGram(PriceRow price, PackRow pack, Ingredient ingredient)
    {
        var net = Costing.Net(Money.Of(price.Amount / 10_000m, price.Currency), price.IsGross, price.TaxRate / 10_000m);
        return Costing.PerGram(net, pack.Amount, pack.Unit, ingredient);
    }
}
