using MenuLab.Core.Balance;
using MenuLab.Core.Drafts;
using MenuLab.Core.House;
using MenuLab.Core.Pantry;

namespace MenuLab.Core.Iterations;

/// <summary>A line as it was when the iteration was saved.</summary>
/// <param name="Line">As typed and as understood.</param>
/// <param name="IngredientName">The ingredient's name as it stood.</param>
/// <param name="Composition">Hash of what it was made of.</param>
/// <param name="PricePerGram">Net price per gram taken from stock; null where unpriced.</param>
public sealed record SnapshotLine(DraftLine Line, string IngredientName, ContentHash Composition, double? PricePerGram);

/// <summary>All that a balance was computed from, in the newest shape; the compositions by their hashes.</summary>
public sealed record Snapshot
{
    /// <summary>The drink's name as it stood.</summary>
    public required string Name { get; init; }

    /// <summary>Key of its style; null for none.</summary>
    public string? Style { get; init; }

    /// <summary>The lines in order.</summary>
    public required IReadOnlyList<SnapshotLine> Lines { get; init; }

    /// <summary>Texts of lines that were kept as typed and are not among the lines.</summary>
    public IReadOnlyList<string> KeptAsTyped { get; init; } = [];

    /// <summary>Volume of those, where it is certain, mL.</summary>
    public double UncountedMillilitres { get; init; }

    /// <summary>The build as chosen.</summary>
    public required Build Build { get; init; }

    /// <summary>The models that the build's keys stood for.</summary>
    public required BuildModel Models { get; init; }

    /// <summary>Number of the measures set that the lines were understood by.</summary>
    public required int Measures { get; init; }

    /// <summary>Currency of the prices, ISO 4217; null where none was known.</summary>
    public string? Currency { get; init; }

    /// <summary>Takes a snapshot of a working copy.</summary>
    /// <param name="draft">The draft.</param>
    /// <param name="pantry">Where its ingredients are found.</param>
    /// <param name="catalogue">Where methods, ices and glasses are found.</param>
    /// <param name="measures">The measures in use.</param>
    /// <param name="pricePerGram">Net price per gram, 0 where unpriced; null for no prices at all.</param>
    /// <param name="currency">Currency of the prices.</param>
    /// <exception cref="ArgumentException">A line names an ingredient that the pantry lacks, or the build a key that the catalogue lacks.</exception>
    public static Snapshot Take(
        Draft draft, PantryList pantry, BuildCatalogue catalogue, MeasuresSet measures, Func<IngredientId, double>? pricePerGram = null, string? currency = null)
    {
        var lines = draft.DraftLines.Select(line =>
        {
            var ingredient = pantry.Find(line.Ingredient) ?? throw new ArgumentException($"The pantry has no ingredient {line.Ingredient}.", nameof(pantry));
            var price = pricePerGram?.Invoke(line.Ingredient) ?? 0;
            return new SnapshotLine(line, ingredient.Name, CompositionText.Hash(ingredient.Composition), price > 0 ? price : null);
        });
        var build = draft.Build.Value;
        return new Snapshot
        {
            Name = draft.Name,
            Style = draft.Style,
            Lines = [.. lines],
            KeptAsTyped = [.. draft.Lines.Where(l => l.Ingredient is null).Select(l => l.Text)],
            UncountedMillilitres = draft.UncountedMillilitres,
            Build = build,
            Models = Weigher.Of([], build, pantry, catalogue, measures).Build,
            Measures = measures.Number,
            Currency = currency,
        };
    }

    /// <summary>Computes the balance again, with the engine as it is today.</summary>
    /// <param name="composition">Finds a composition by its hash.</param>
    /// <param name="measures">The measures set of <see cref="Measures"/>.</param>
    /// <param name="detail">How much to work out.</param>
    /// <exception cref="ArgumentException">Another measures set.</exception>
    public DrinkBalance Recompute(Func<ContentHash, Composition> composition, MeasuresSet measures, Detail detail = Detail.RangesAndShares)
    {
        if (measures.Number != Measures)
        {
            throw new ArgumentException($"This iteration was understood by measures set {Measures}, not {measures.Number}.", nameof(measures));
        }
        var weighed = Weigh(composition, measures);
        return BalanceEngine.Of(weighed.Lines, weighed.Build, detail, UncountedMillilitres);
    }

    /// <summary>The lines as the engine takes them, from the compositions and models of the snapshot alone.</summary>
    public WeighedDrink Weigh(Func<ContentHash, Composition> composition, MeasuresSet measures)
    {
        var ingredients = Lines.DistinctBy(l => l.Line.Ingredient).Select(l => new Ingredient
        {
            Id = l.Line.Ingredient, Key = l.Line.Ingredient.Value.ToString(), Name = l.IngredientName, Kind = default, KeptAtCelsius = l.Line.StartCelsius,
            Composition = composition(l.Composition),
        });
        var prices = Lines.DistinctBy(l => l.Line.Ingredient).ToDictionary(l => l.Line.Ingredient, l => l.PricePerGram ?? 0);
        var weighed = Weigher.Of([.. Lines.Select(l => l.Line)], new Build(), new PantryList(ingredients), new BuildCatalogue([], [], []), measures, id => prices[id]);
        return weighed with { Build = Models };
    }
}
