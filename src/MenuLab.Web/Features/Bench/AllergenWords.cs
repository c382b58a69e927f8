using MenuLab.Core.Pantry;

namespace MenuLab.Web.Features.Bench;

/// <summary>Allergens as a menu would name them.</summary>
public static class AllergenWords
{
    /// <summary>"milk, egg and sulphites".</summary>
    public static string List(IReadOnlyList<AllergenRow> allergens) => allergens.Count switch
    {
        0 => "",
        1 => Of(allergens[0].Allergen),
        _ => string.Join(", ", allergens.SkipLast(1).Select(row => Of(row.Allergen))) + " and " + Of(allergens[^1].Allergen),
    };

    /// <summary>The same with a capital letter.</summary>
    public static string Sentence(IReadOnlyList<AllergenRow> allergens)
    {
        var list = List(allergens);
        return list.Length == 0 ? "" : char.ToUpperInvariant(list[0]) + list[1..];
    }

    /// <summary>Where they are: names of the ingredients, each once.</summary>
    public static string In(IReadOnlyList<AllergenRow> allergens) => string.Join(", ", allergens.SelectMany(row => row.In).Distinct());

    internal static string Of(Allergen allergen) => allergen switch
    {
        Allergen.Gluten => "gluten",
        Allergen.Wheat => "wheat",
        Allergen.TreeNuts => "tree nuts",
        _ => allergen.ToString().ToLowerInvariant(),
    };
}
