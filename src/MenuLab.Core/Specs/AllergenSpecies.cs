using MenuLab.Core.Pantry;

namespace MenuLab.Core.Specs;

/// <summary>The two allergens that are named by species: cereals with gluten and nuts.</summary>
/// <remarks>Source: EU Regulation 1169/2011, Annex II, 1 and 8 (species recalled, MEMORY). Local codes decide what must be said.</remarks>
public static class AllergenSpecies
{
    private static readonly string[] Cereals = ["wheat", "spelt", "rye", "barley", "oats"];

    private static readonly string[] Nuts = ["almond", "hazelnut", "walnut", "cashew", "pecan", "brazil nut", "pistachio", "macadamia"];

    /// <summary>What stands for an allergen where every ingredient that has it names its species: "barley and oats (gluten)", "almond (tree nuts)".</summary>
    /// <param name="allergen">Which.</param>
    /// <param name="notes">What the pantry notes beside it, one per ingredient that has it.</param>
    /// <returns>Null where the allergen has no species or an ingredient does not say which: then the list's own word covers all.</returns>
    public static string? Name(Allergen allergen, IReadOnlyList<string> notes)
    {
        var (species, word) = allergen switch { Allergen.Gluten => (Cereals, "gluten"), Allergen.TreeNuts => (Nuts, "tree nuts"), _ => ([], "") };
        var named = notes.Select(n => n.Trim().ToLowerInvariant()).Distinct().ToList();
        return named.Count > 0 && named.All(species.Contains) ? $"{CardWords.InAList(named)} ({word})" : null;
    }
}
