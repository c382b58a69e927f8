using MenuLab.Core.House;
using MenuLab.Core.Pantry;
using Microsoft.EntityFrameworkCore;

namespace MenuLab.Data.Pantry;

/// <summary>An ingredient as a search finds it.</summary>
/// <param name="Id">Identity.</param>
/// <param name="Name">Name as shown.</param>
/// <param name="Kind">What sort of thing.</param>
/// <param name="IsArchived">It is out of use, though drafts may still hold it.</param>
public sealed record IngredientListing(IngredientId Id, string Name, IngredientKind Kind, bool IsArchived);

/// <summary>Reads ingredients.</summary>
public static class IngredientQueries
{
    /// <summary>Ingredients whose name or alias contains a text, marks and case aside: names that begin with it first, then by name.</summary>
    /// <param name="db">A context to read with.</param>
    /// <param name="text">The text; empty finds all.</param>
    /// <param name="withArchived">Archived ones too.</param>
    public static async Task<IReadOnlyList<IngredientListing>> FindIngredients(this MenuLabDbContext db, string text, bool withArchived = false)
    {
        var search = SearchName.Of(text);
        var found = await db.Ingredients
            .Where(i => withArchived || i.ArchivedAt == null)
            .Where(i => i.SearchName.Contains(search) || i.Aliases.Any(a => a.SearchName.Contains(search)))
            .Select(i => new { i.SearchName, Listing = new IngredientListing(i.Id, i.Name, i.Kind, i.ArchivedAt != null) })
            .ToListAsync();
        // Ordered here, since each database has its own idea of an alphabet.
        return
        [
            .. found.OrderBy(f => !f.SearchName.StartsWith(search, StringComparison.Ordinal)).ThenBy(f => f.SearchName, StringComparer.Ordinal).Select(f => f.Listing),
        ];
    }
}
