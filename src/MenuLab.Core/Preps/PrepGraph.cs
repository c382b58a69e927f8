using MenuLab.Core.Pantry;

namespace MenuLab.Core.Preps;

/// <summary>A prep before and after something below it changed.</summary>
/// <param name="Prep">The prep.</param>
/// <param name="Before">As it came out before; null where it could not be worked out.</param>
/// <param name="After">As it comes out now.</param>
public sealed record PrepChange(IngredientId Prep, PrepOutcome? Before, Result<PrepOutcome> After);

/// <summary>
/// The preps of a house and what is made of what, to any depth. Preps stand in an order in which everything comes after what it is made of, so one pass
/// works them all out.
/// </summary>
public sealed class PrepGraph
{
    private readonly RecipeVersion[] _order;
    private readonly Dictionary<IngredientId, int> _place;

    private PrepGraph(RecipeVersion[] order)
    {
        _order = order;
        _place = new Dictionary<IngredientId, int>(order.Length);
        for (var i = 0; i < order.Length; i++)
        {
            _place[order[i].Prep] = i;
        }
    }

    /// <summary>The recipes, each after what it is made of.</summary>
    public IReadOnlyList<RecipeVersion> Order => _order;

    /// <summary>Makes the graph of recipes, one per prep, or names the chain that bites its tail.</summary>
    /// <param name="recipes">The recipe version in use of each prep.</param>
    /// <returns>The graph, or one problem with the field "Lines" and the chain by name: "A is made of B, B of C, C of A".</returns>
    /// <exception cref="ArgumentException">Two recipes of one prep.</exception>
    public static Result<PrepGraph> Of(IReadOnlyCollection<RecipeVersion> recipes)
    {
        var byPrep = new Dictionary<IngredientId, RecipeVersion>(recipes.Count);
        foreach (var recipe in recipes)
        {
            if (!byPrep.TryAdd(recipe.Prep, recipe))
            {
                throw new ArgumentException($"Two recipes of {recipe.Name}; hand in the one in use.", nameof(recipes));
            }
        }
        var walk = new Walk(byPrep);
        foreach (var prep in byPrep.Keys.Order())
        {
            if (walk.Visit(prep) is { } chain)
            {
                return Result.Invalid<PrepGraph>(new Problem(nameof(RecipeVersion.Lines), Sentence(chain)));
            }
        }
        return Result.Ok(new PrepGraph([.. walk.Done]));
    }

    /// <summary>The same graph with one recipe in the place of its prep's, or as a new one: the check before a recipe is saved.</summary>
    /// <param name="recipe">The recipe that is about to be saved.</param>
    /// <returns>The new graph, or the chain that it would close.</returns>
    public Result<PrepGraph> With(RecipeVersion recipe) => Of([.. _order.Where(r => r.Prep != recipe.Prep), recipe]);

    /// <summary>Preps that an ingredient goes into, directly or through others, each after what it is made of.</summary>
    public IReadOnlyList<IngredientId> UsersOf(IngredientId ingredient) => [.. Touched(ingredient).Select(i => _order[i].Prep)];

    /// <summary>Works all preps out.</summary>
    /// <param name="bought">What a bought ingredient is made of; null for one that is not there.</param>
    /// <param name="costPerGram">Net cost of a bought ingredient per gram; null for unpriced.</param>
    /// <param name="measured">
    /// The composition that drinks use where a prep has a measured one; null for the estimated. It also goes into the preps made of it.
    /// </param>
    /// <returns>An outcome, or its problems, per prep; a prep whose part has problems has one of its own.</returns>
    public IReadOnlyDictionary<IngredientId, Result<PrepOutcome>> Work(
        Func<IngredientId, Composition?> bought, Func<IngredientId, double?>? costPerGram = null, Func<IngredientId, Composition?>? measured = null)
    {
        var outcomes = new Dictionary<IngredientId, Result<PrepOutcome>>(_order.Length);
        foreach (var recipe in _order)
        {
            outcomes[recipe.Prep] = WorkOne(recipe, outcomes, bought, costPerGram, measured);
        }
        return outcomes;
    }

    /// <summary>What changes above an ingredient whose composition or price changed; everything else is taken as it was.</summary>
    /// <param name="before">What <see cref="Work"/> gave before the change.</param>
    /// <param name="changed">The ingredient: bought, or a prep whose measured composition is new.</param>
    /// <param name="bought">As in <see cref="Work"/>, after the change.</param>
    /// <param name="costPerGram">As in <see cref="Work"/>, after the change.</param>
    /// <param name="measured">As in <see cref="Work"/>, after the change.</param>
    /// <returns>The touched preps in order, with before and after.</returns>
    public IReadOnlyList<PrepChange> Rework(
        IReadOnlyDictionary<IngredientId, Result<PrepOutcome>> before, IngredientId changed, Func<IngredientId, Composition?> bought,
        Func<IngredientId, double?>? costPerGram = null, Func<IngredientId, Composition?>? measured = null)
    {
        var outcomes = new Dictionary<IngredientId, Result<PrepOutcome>>(before);
        var changes = new List<PrepChange>();
        foreach (var place in Touched(changed))
        {
            var recipe = _order[place];
            var after = WorkOne(recipe, outcomes, bought, costPerGram, measured);
            outcomes[recipe.Prep] = after;
            changes.Add(new PrepChange(recipe.Prep, before.TryGetValue(recipe.Prep, out var was) && was.IsOk ? was.Value : null, after));
        }
        return changes;
    }

    private Result<PrepOutcome> WorkOne(
        RecipeVersion recipe, Dictionary<IngredientId, Result<PrepOutcome>> outcomes, Func<IngredientId, Composition?> bought,
        Func<IngredientId, double?>? costPerGram, Func<IngredientId, Composition?>? measured)
    {
        for (var line = 0; line < recipe.Lines.Count; line++)
        {
            var part = recipe.Lines[line].Ingredient;
            if (outcomes.TryGetValue(part, out var below) && !below.IsOk)
            {
                return Result.Invalid<PrepOutcome>(new Problem(
                    RecipeVersion.LineField(line, nameof(PrepLine.Ingredient)),
                    $"Line {line + 1}, {_order[_place[part]].Name}, has something to mend first: {below.Problems[0].Message}"));
            }
        }
        return PrepProcess.Work(
            recipe,
            id => outcomes.TryGetValue(id, out var part) ? measured?.Invoke(id) ?? part.Value.Composition : bought(id),
            id => outcomes.TryGetValue(id, out var part) ? part.Value.Cost is { Unpriced: 0 } cost ? cost.PerGram : null : costPerGram?.Invoke(id));
    }

    private List<int> Touched(IngredientId changed)
    {
        var touched = new HashSet<IngredientId> { changed };
        var places = new List<int>();
        for (var i = 0; i < _order.Length; i++)
        {
            var recipe = _order[i];
            if (recipe.Lines.Any(l => touched.Contains(l.Ingredient)))
            {
                touched.Add(recipe.Prep);
                places.Add(i);
            }
        }
        return places;
    }

    private static string Sentence(IReadOnlyList<string> chain)
    {
        var parts = new List<string>();
        for (var i = 0; i + 1 < chain.Count; i++)
        {
            parts.Add(i == 0 ? $"{chain[i]} is made of {chain[i + 1]}" : $"{chain[i]} of {chain[i + 1]}");
        }
        return $"A prep cannot be made of itself: {string.Join(", ", parts)}. Take one of these lines out.";
    }

    /// <summary>Visits what a prep is made of before the prep itself.</summary>
    private sealed class Walk(Dictionary<IngredientId, RecipeVersion> recipes)
    {
        private readonly HashSet<IngredientId> _done = [];
        private readonly List<IngredientId> _path = [];

        public List<RecipeVersion> Done { get; } = [];

        /// <summary>The names round a cycle, first and last the same; null where there is none.</summary>
        public IReadOnlyList<string>? Visit(IngredientId prep)
        {
            if (!recipes.TryGetValue(prep, out var recipe) || _done.Contains(prep))
            {
                return null;
            }
            var seen = _path.IndexOf(prep);
            if (seen >= 0)
            {
                return [.. _path.Skip(seen).Append(prep).Select(p => recipes[p].Name)];
            }
            _path.Add(prep);
            foreach (var line in recipe.Lines)
            {
                if (Visit(line.Ingredient) is { } chain)
                {
                    return chain;
                }
            }
            _path.RemoveAt(_path.Count - 1);
            _done.Add(prep);
            Done.Add(recipe);
            return null;
        }
    }
}
