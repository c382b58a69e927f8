using MenuLab.Core.Drafts;
using MenuLab.Core.House;
using MenuLab.Core.Pantry;

namespace MenuLab.Core.Balance;

/// <summary>A drink as the engine takes it.</summary>
/// <param name="Lines">Its weighed lines.</param>
/// <param name="From">For each weighed line, its place among the draft lines.</param>
/// <param name="Build">The build with its models.</param>
/// <param name="Notes">What was left out of the figures and why, a sentence each.</param>
public sealed record WeighedDrink(WeighedLine[] Lines, int[] From, BuildModel Build, IReadOnlyList<string> Notes);

/// <summary>Turns draft lines into weighed lines and looks the build up.</summary>
public static class Weigher
{
    /// <summary>Weighs a drink.</summary>
    /// <param name="lines">Lines as read.</param>
    /// <param name="build">Build as read.</param>
    /// <param name="pantry">Where their ingredients are found.</param>
    /// <param name="catalogue">Where methods, ices and glasses are found.</param>
    /// <param name="measures">What stays of a rinse.</param>
    /// <param name="pricePerGram">Net price per gram taken from stock, 0 where unpriced; null for no prices at all.</param>
    /// <exception cref="ArgumentException">A line names an ingredient that the pantry lacks, or the build a key that the catalogue lacks.</exception>
    public static WeighedDrink Of(
        IReadOnlyList<DraftLine> lines, Build build, PantryList pantry, BuildCatalogue catalogue, MeasuresSet measures,
        Func<IngredientId, double>? pricePerGram = null)
    {
        var weighed = new List<WeighedLine>(lines.Count);
        var from = new List<int>(lines.Count);
        var notes = new List<string>();
        for (var i = 0; i < lines.Count; i++)
        {
            var line = lines[i];
            var ingredient = pantry.Find(line.Ingredient) ?? throw new ArgumentException($"The pantry has no ingredient {line.Ingredient}.", nameof(lines));
            var known = double.IsFinite(line.Grams);
            if (!known && line.Place == Place.In && !line.IsTopUp)
            {
                notes.Add($"\"{line.Text}\" has no amount that can be weighed, so it is not in the figures.");
                continue;
            }
            var used = known ? line.Grams : 0;
            var grams = line.Place switch
            {
                Place.In => line.IsTopUp ? 0 : used,
                Place.Rinse => Math.Min(known ? used : double.PositiveInfinity, measures.RinseKept * ingredient.Composition.GramsPerMillilitre),
                _ => 0,
            };
            // What clings to the glass after a rinse is anybody's guess between nothing and twice as much.
            var uncertainty = line.Place == Place.Rinse ? grams / 2 : line.Place == Place.In ? line.GramsUncertainty : 0;
            weighed.Add(new WeighedLine(
                ingredient.Id, ingredient.Composition, grams, uncertainty, line.Joins, line.Place, line.StartCelsius, line.IsTopUp && line.Place == Place.In,
                new LineCost(used, pricePerGram?.Invoke(ingredient.Id) ?? 0)));
            from.Add(i);
        }
        return new WeighedDrink([.. weighed], [.. from], Models(build, catalogue), notes);
    }

    private static BuildModel Models(Build build, BuildCatalogue catalogue)
    {
        var method = LookUp(build.Method, catalogue.Method, "method");
        var glass = LookUp(build.Glass, catalogue.Glass, "glass");
        var methodIce = Ice(build.Ice ?? (method?.InTheGlass == true ? build.ServedOn : null) ?? method?.Ice);
        var servedIce = method?.InTheGlass == true ? methodIce : Ice(build.ServedOn ?? glass?.Ice);
        return new BuildModel(method, methodIce, glass, servedIce);

        IceForm? Ice(string? key) => key is null or NoIce ? null : LookUp(key, catalogue.Ice, "ice");
    }

    private const string NoIce = "none";

    private static T? LookUp<T>(string? key, Func<string?, T?> find, string what)
        where T : class =>
        key is null ? null : find(key) ?? throw new ArgumentException($"There is no {what} \"{key}\" in the house.", nameof(key));
}
