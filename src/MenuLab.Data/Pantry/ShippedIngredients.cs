using MenuLab.Core.House;
using MenuLab.Core.Pantry;
using MenuLab.Data.Writing;
using Microsoft.EntityFrameworkCore;

namespace MenuLab.Data.Pantry;

/// <summary>A shipped figure that changed while the house holds one of its own, which stays: for the house to decide.</summary>
/// <param name="Ingredient">The ingredient's name.</param>
/// <param name="Quantity">The figure.</param>
/// <param name="ShippedBefore">As shipped before; null where it was not.</param>
/// <param name="ShippedNow">As shipped now; null where it no longer is.</param>
public sealed record FigureToDecide(string Ingredient, string Quantity, double? ShippedBefore, double? ShippedNow);

/// <summary>What taking an edition in has done.</summary>
/// <param name="Added">Ingredients that came in.</param>
/// <param name="Changed">Ingredients whose composition is a new one.</param>
/// <param name="Archived">Ingredients that are no longer shipped and that nothing uses.</param>
/// <param name="ToDecide">Figures for the house to decide.</param>
public sealed record EditionTaken(int Added, int Changed, int Archived, IReadOnlyList<FigureToDecide> ToDecide)
{
    /// <summary>The edition was in already.</summary>
    public static EditionTaken Nothing { get; } = new(0, 0, 0, []);
}

/// <summary>
/// Takes an edition of the shipped ingredients into the database (architecture 1.25): shipped figures move to the new
/// edition, the house's own and readings stay beside them, and no saved iteration can notice.
/// </summary>
public static class ShippedIngredients
{
    private const string Shipped = "shipped ";

    /// <summary>Takes an edition in; a second call with the same or an older one changes nothing. The first rows must be there.</summary>
    /// <param name="writer">The one writer.</param>
    /// <param name="shipped">The shipped ingredients.</param>
    /// <param name="edition">Number of the edition, from 1.</param>
    /// <param name="now">The time.</param>
    public static Task<EditionTaken> TakeIn(IWriter writer, PantryList shipped, int edition, DateTimeOffset now) =>
        writer.Write(async db =>
        {
            var settings = await db.HouseSettings.AsTracking().SingleAsync();
            if (settings.ShippedEdition >= edition)
            {
                return EditionTaken.Nothing;
            }
            var rows = await db.Ingredients.AsTracking().AsSplitQuery().ToDictionaryAsync(r => r.Id);
            var compositions = await db.IngredientNow.AsTracking().ToDictionaryAsync(n => n.Ingredient);
            var (added, changed) = (0, 0);
            var toDecide = new List<FigureToDecide>();
            foreach (var ingredient in shipped.All)
            {
                var isNew = !rows.TryGetValue(ingredient.Id, out var row);
                if (row is null)
                {
                    row = New(ingredient);
                    db.Add(row);
                    added++;
                }
                Update(row, ingredient, toDecide);
                var hash = (await db.KeepCompositions([PantryReading.Compose(row)]))[0];
                if (isNew)
                {
                    db.Add(new IngredientNowRow { Ingredient = row.Id, Composition = hash });
                }
                else if (compositions[row.Id].Composition != hash)
                {
                    compositions[row.Id].Composition = hash;
                    row.Version++;
                    changed++;
                }
            }
            var archived = await ArchiveDropped(db, rows.Values.Where(r => r.Key is not null && r.ArchivedAt is null && shipped.Find(r.Id) is null), now);
            settings.TookIn(edition);
            await db.SaveChangesAsync();
            return new EditionTaken(added, changed, archived, toDecide);
        });

    private static IngredientRow New(Ingredient ingredient) => new()
    {
        Id = ingredient.Id, Key = ingredient.Key, Name = ingredient.Name, SearchName = SearchName.Of(ingredient.Name), Kind = ingredient.Kind, Basis = ingredient.Basis,
        KeptAtCelsius = ingredient.KeptAtCelsius, Note = ingredient.Note, IsCarbonated = false, HasRawEgg = false,
    };

    // Name, note and where it is kept stay as the house has them: nothing says who wrote them last.
    private static void Update(IngredientRow row, Ingredient ingredient, List<FigureToDecide> toDecide)
    {
        row.IsCarbonated = ingredient.Composition.Caveats.HasFlag(CompositionCaveats.Carbonated);
        row.HasRawEgg = ingredient.Composition.Caveats.HasFlag(CompositionCaveats.RawEgg);
        var before = row.Figures.Where(f => f.Origin.StartsWith(Shipped, StringComparison.Ordinal)).ToDictionary(f => f.Quantity);
        var after = ingredient.Figures.ToDictionary(f => f.Quantity);
        foreach (var own in row.Figures.Where(f => !f.Origin.StartsWith(Shipped, StringComparison.Ordinal)))
        {
            var was = before.GetValueOrDefault(own.Quantity)?.Value;
            var now = Known(after.GetValueOrDefault(own.Quantity)?.Value ?? double.NaN);
            if (was != now)
            {
                toDecide.Add(new FigureToDecide(row.Name, own.Quantity, was, now));
            }
        }
        foreach (var figure in before.Values)
        {
            row.Figures.Remove(figure);
        }
        foreach (var figure in after.Values)
        {
            row.Figures.Add(new FigureRow
            {
                Quantity = figure.Quantity, Value = Known(figure.Value), Low = Known(figure.Low), High = Known(figure.High), Source = figure.Source, Status = figure.Status,
                Origin = figure.Origin,
            });
        }
        foreach (var piece in ingredient.Pieces.Where(p => row.Pieces.All(r => r.Measure != p.Measure)))
        {
            row.Pieces.Add(new PieceRow { Measure = piece.Measure, Grams = piece.Grams, Source = piece.Source });
        }
        var place = row.Aliases.Count == 0 ? 0 : row.Aliases.Max(a => a.Place);
        foreach (var alias in ingredient.Aliases.Where(a => row.Aliases.All(r => r.Alias != a)))
        {
            row.Aliases.Add(new AliasRow
            {
                Alias = alias, SearchName = SearchName.Of(alias), Place = ++place, Assumes = ingredient.AliasAssumptions.GetValueOrDefault(alias, ""),
            });
        }
        // An allergen is only ever added here: to take one away is for a person who has read the label.
        foreach (var fact in ingredient.AllergenFacts.Where(f => row.Allergens.All(r => r.Allergen != f.Allergen)))
        {
            row.Allergens.Add(new AllergenRow { Allergen = fact.Allergen, State = fact.State, Law = fact.Law, Source = fact.Source, Note = fact.Note });
        }
    }

    private static async Task<int> ArchiveDropped(MenuLabDbContext db, IEnumerable<IngredientRow> dropped, DateTimeOffset now)
    {
        var archived = 0;
        foreach (var row in dropped)
        {
            if (!await db.Drafts.AnyAsync(d => EF.Property<List<Core.Drafts.WorkingLine>>(d, "_lines").Any(l => l.Ingredient == row.Id)))
            {
                row.ArchivedAt = now;
                row.Version++;
                archived++;
            }
        }
        return archived;
    }

    private static double? Known(double value) => double.IsNaN(value) ? null : value;
}
