using MenuLab.Core.Iterations;
using MenuLab.Core.Pantry;
using Microsoft.EntityFrameworkCore;

namespace MenuLab.Data.Pantry;

/// <summary>Builds what the reader and the engine need from the rows that people edit.</summary>
public static class PantryReading
{
    /// <summary>All ingredients of the house with the compositions that drinks use today; archived ones too, since drafts may hold them.</summary>
    /// <exception cref="InvalidDataException">A composition's text does not have its hash.</exception>
    public static async Task<PantryList> LoadPantry(this MenuLabDbContext db)
    {
        // Split, or five lists of one ingredient would multiply each other.
        var rows = await db.Ingredients.AsSplitQuery().ToListAsync();
        var now = await db.IngredientNow.ToDictionaryAsync(n => n.Ingredient, n => n.Composition);
        var bodies = await (from n in db.IngredientNow join c in db.Compositions on n.Composition equals c.Hash select c).Distinct().ToDictionaryAsync(c => c.Hash, c => c.Body);
        var compositions = bodies.ToDictionary(b => b.Key, b =>
            ContentHash.Of(b.Value) == b.Key ? CompositionText.Read(b.Value) : throw new InvalidDataException($"The composition {b.Key} is damaged."));
        return new PantryList(rows.Where(r => now.ContainsKey(r.Id)).Select(r => ToIngredient(r, compositions[now[r.Id]])));
    }

    /// <summary>The composition that an ingredient's figures make.</summary>
    /// <exception cref="ArgumentException">They make none.</exception>
    internal static Composition Compose(IngredientRow row)
    {
        var allergens = row.Allergens.Aggregate(default(AllergenSet), (set, a) => set | default(AllergenSet).With(a.Allergen, a.State));
        var flags = (row.IsCarbonated ? CompositionCaveats.Carbonated : 0) | (row.HasRawEgg ? CompositionCaveats.RawEgg : 0);
        return CompositionBuilder.Build(row.Kind, row.Basis, Figures(row), allergens, flags).Composition;
    }

    private static Ingredient ToIngredient(IngredientRow row, Composition composition) => new()
    {
        Id = row.Id,
        // An ingredient of the house has no key of its own; its id is as stable.
        Key = row.Key ?? row.Id.Value.ToString(),
        Name = row.Name,
        Kind = row.Kind,
        Basis = row.Basis,
        KeptAtCelsius = row.KeptAtCelsius,
        Aliases = [.. row.Aliases.OrderBy(a => a.Place).Select(a => a.Alias)],
        AliasAssumptions = row.Aliases.Where(a => a.Assumes.Length > 0).ToDictionary(a => a.Alias, a => a.Assumes, StringComparer.OrdinalIgnoreCase),
        AllergenFacts = [.. row.Allergens.OrderBy(a => a.Allergen).Select(a => new AllergenFact(a.Allergen, a.State, a.Law, a.Source, a.Note))],
        Figures = Figures(row),
        Pieces = [.. row.Pieces.OrderBy(p => p.Measure, StringComparer.Ordinal).Select(p => new PieceWeight(p.Measure, p.Grams, p.Source))],
        Composition = composition,
        Note = row.Note,
    };

    // In a fixed order: the composition's last bits must not depend on how a database hands rows out.
    private static List<IngredientFigure> Figures(IngredientRow row) =>
    [
        .. row.Figures.OrderBy(f => f.Quantity, StringComparer.Ordinal).ThenBy(f => f.Origin, StringComparer.Ordinal)
            .Select(f => new IngredientFigure(f.Quantity, f.Value ?? double.NaN, f.Low ?? double.NaN, f.High ?? double.NaN, f.Source, f.Status, f.Origin)),
    ];
}
