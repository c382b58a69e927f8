using System.Text.Json;
using MenuLab.Core.Drafts;
using MenuLab.Core.House;
using MenuLab.Core.Iterations;
using MenuLab.Core.Pantry;
using Microsoft.EntityFrameworkCore;

namespace MenuLab.Data.Pantry;

/// <summary>Reads what the pantry's pages show.</summary>
public static class SheetQueries
{
    /// <summary>Everything of one ingredient at a site; null where there is none.</summary>
    /// <param name="db">A context to read with.</param>
    /// <param name="ingredient">The ingredient, with its composition of today.</param>
    /// <param name="site">Whose packs and prices.</param>
    public static async Task<IngredientSheet?> OpenSheet(this MenuLabDbContext db, Ingredient ingredient, SiteId site)
    {
        var id = ingredient.Id;
        if (await db.Ingredients.AsSplitQuery().SingleOrDefaultAsync(i => i.Id == id) is not { } row)
        {
            return null;
        }
        var readings = await db.Readings.Where(r => r.Ingredient == id).ToListAsync();
        var counting = ReadingKinds.ThatCount(readings).Select(r => r.Id).ToHashSet();
        var corrected = readings.Select(r => r.Replaces).OfType<ReadingId>().ToHashSet();
        var packs = await db.Packs.Where(p => p.Ingredient == id && p.Site == site).ToListAsync();
        var packIds = packs.Select(p => p.Id).ToList();
        var prices = (await db.Prices.Where(p => packIds.Contains(p.Pack)).ToListAsync()).ToLookup(p => p.Pack);
        var said = await db.Record.Where(r => r.OnTable == "ingredients" && r.OnId == id.Value && r.What == "allergen_stated").OrderByDescending(r => r.At).ToListAsync();
        return new IngredientSheet
        {
            Version = row.Version,
            IsShipped = row.Key is not null,
            HasRawEgg = row.HasRawEgg,
            ArchivedAt = row.ArchivedAt,
            ArchivedBy = row.ArchivedBy,
            Roles = [.. Roles.All.Where(k => row.Roles.Any(r => r.Role == k))],
            Readings =
            [
                .. readings.OrderByDescending(r => r.Day).ThenByDescending(r => r.Id.Value).Select(r =>
                    new ReadingShown(r.Id, r.Kind, r.Value, r.Unit, r.Celsius, r.Day, r.ReadBy, r.Note, counting.Contains(r.Id), corrected.Contains(r.Id))),
            ],
            Packs =
            [
                .. packs.OrderBy(p => p.ArchivedAt is not null).ThenBy(p => p.Id.Value).Select(p => new PackShown(
                    p.Id, p.Supplier, p.Amount, p.Unit, p.ArchivedAt is not null,
                    [.. prices[p.Id].OrderByDescending(c => c.FromDay).ThenByDescending(c => c.Id.Value).Select(c =>
                        new PriceShown(c.Id, c.Amount / 10_000m, c.Currency, c.IsGross, c.TaxRate / 10_000m, c.FromDay, c.EnteredBy, PriceQueries.PerGram(c, p, ingredient)))])),
            ],
            Drafts = await db.DraftsWith(id),
            AllergensSaid = [.. said.Where(r => r.After is not null).Select(r => Said(r.Who, r.At, r.After!))],
        };
    }

    /// <summary>Drafts in use that hold an ingredient, the last changed first.</summary>
    public static async Task<IReadOnlyList<DraftUse>> DraftsWith(this MenuLabDbContext db, IngredientId id)
    {
        var drafts = await db.Drafts.AsNoTracking()
            .Where(d => d.ArchivedAt == null && EF.Property<List<WorkingLine>>(d, "_lines").Any(l => l.Ingredient == id))
            .OrderByDescending(d => d.ChangedAt).ToListAsync();
        return [.. drafts.Select(d => new DraftUse(d.Id, d.Name, [.. d.Lines.Where(l => l.Ingredient == id).Select(l => l.Text)]))];
    }

    /// <summary>Roles of all ingredients that have any, each in the order in which roles are offered.</summary>
    public static async Task<IReadOnlyDictionary<IngredientId, IReadOnlyList<string>>> RolesOfAll(this MenuLabDbContext db)
    {
        var rows = await db.Ingredients.SelectMany(i => i.Roles, (i, r) => new { i.Id, r.Role }).ToListAsync();
        return rows.GroupBy(r => r.Id).ToDictionary(g => g.Key, g => (IReadOnlyList<string>)[.. Roles.All.Where(k => g.Any(r => r.Role == k))]);
    }

    /// <summary>A composition by its hash.</summary>
    /// <exception cref="InvalidDataException">Its text does not have its hash.</exception>
    internal static async Task<Composition> LoadComposition(this MenuLabDbContext db, ContentHash hash)
    {
        var body = await db.Compositions.AsNoTracking().Where(c => c.Hash == hash).Select(c => c.Body).SingleAsync();
        return ContentHash.Of(body) == hash ? CompositionText.Read(body) : throw new InvalidDataException($"The composition {hash} is damaged.");
    }

    private static AllergenSaid Said(PersonId who, DateTimeOffset at, byte[] after)
    {
        using var json = JsonDocument.Parse(after);
        string Text(string name) => json.RootElement.GetProperty(name).GetString() ?? "";
        return new AllergenSaid(Text("allergen"), Text("state"), Text("source"), who, at);
    }
}
