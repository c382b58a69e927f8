namespace MenuLab.Core.Pantry;

/// <summary>All ingredients of the house, found by id or key.</summary>
public sealed class PantryList
{
    private readonly Dictionary<IngredientId, Ingredient> _byId;
    private readonly Dictionary<string, Ingredient> _byKey;

    /// <summary>A pantry of these ingredients.</summary>
    /// <exception cref="ArgumentException">Two share an id or a key.</exception>
    public PantryList(IEnumerable<Ingredient> ingredients)
    {
        All = [.. ingredients.OrderBy(i => i.Id)];
        _byId = All.ToDictionary(i => i.Id);
        _byKey = All.ToDictionary(i => i.Key, StringComparer.Ordinal);
    }

    /// <summary>Every ingredient, in the order of ids.</summary>
    public IReadOnlyList<Ingredient> All { get; }

    /// <summary>The ingredient with this id, or null.</summary>
    public Ingredient? Find(IngredientId id) => _byId.GetValueOrDefault(id);

    /// <summary>The ingredient with this key, or null.</summary>
    public Ingredient? Find(string key) => _byKey.GetValueOrDefault(key);
}
