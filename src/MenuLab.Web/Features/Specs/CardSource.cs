using MenuLab.Core.Balance;
using MenuLab.Core.Drafts;
using MenuLab.Core.Pantry;
using MenuLab.Core.Safety;
using MenuLab.Web.Features.Bench;
using MenuLab.Web.Features.History;

namespace MenuLab.Web.Features.Specs;

/// <summary>A drink that a card can be made of, wherever it comes from.</summary>
/// <param name="Name">The drink.</param>
/// <param name="Issue">"iteration 4" or "on the bench now".</param>
/// <param name="Lines">Its lines.</param>
/// <param name="Names">The name of each ingredient, as it stood.</param>
/// <param name="Build">Its build.</param>
/// <param name="Catalogue">What the keys of the build stand for.</param>
/// <param name="Balance">Its balance.</param>
/// <param name="Weighed">Its weighed lines.</param>
/// <param name="Open">Texts of lines that are not on the card.</param>
/// <param name="Cautions">What a person must look at.</param>
public sealed record CardSource(
    string Name, string Issue, IReadOnlyList<DraftLine> Lines, IReadOnlyDictionary<IngredientId, string> Names, Build Build, BuildCatalogue Catalogue, DrinkBalance Balance,
    IReadOnlyList<WeighedLine> Weighed, IReadOnlyList<string> Open, IReadOnlyList<Caution> Cautions)
{
    private const string NoIce = "none";

    /// <summary>A typed drink.</summary>
    public static CardSource Of(WorkedDrink drink, HouseStock stock) => new(
        drink.Read.Name.Length > 0 ? drink.Read.Name : "No name yet",
        "on the bench now",
        drink.Read.Lines,
        drink.Read.Lines.Select(l => l.Ingredient).Distinct().ToDictionary(id => id, id => stock.Pantry.Find(id)!.Name),
        drink.Read.Build,
        stock.Catalogue,
        drink.Balance,
        drink.Weighed.Lines,
        [.. drink.Read.Questions.Select(q => q.Text.Trim()), .. drink.Read.Unread.Select(u => u.Text.Trim())],
        drink.Cautions);

    /// <summary>A saved iteration, or what is on the bench: names, ice and glass as they stood.</summary>
    public static CardSource Of(DrinkState state)
    {
        var (snapshot, models) = (state.Snapshot, state.Snapshot.Models);
        return new(
            snapshot.Name,
            state.Title,
            [.. snapshot.Lines.Select(l => l.Line)],
            snapshot.Lines.DistinctBy(l => l.Line.Ingredient).ToDictionary(l => l.Line.Ingredient, l => l.IngredientName),
            // What the keys meant then, not what the house would take for granted today.
            snapshot.Build with
            {
                Ice = models.MethodIce?.Key ?? snapshot.Build.Ice ?? (models.Method is null ? null : NoIce),
                ServedOn = models.ServedIce?.Key ?? snapshot.Build.ServedOn ?? (models.Glass is null ? null : NoIce),
            },
            new BuildCatalogue(Known(models.Method), Known(models.MethodIce).Concat(Known(models.ServedIce)).DistinctBy(i => i.Key), Known(models.Glass)),
            state.Balance,
            state.Weighed.Lines,
            snapshot.KeptAsTyped,
            state.Cautions());

        static IEnumerable<T> Known<T>(T? model)
            where T : class => model is null ? [] : [model];
    }
}
