using MenuLab.Core.Pantry;

namespace MenuLab.Data.Pantry;

/// <summary>Whose list an allergen stands on.</summary>
public static class AllergenLaw
{
    /// <summary>"EU", or "EU US" where US law asks for it too.</summary>
    /// <remarks>Source: Regulation (EU) 1169/2011 Annex II (MEMORY); FDA list of major food allergens, January 2025, as in seed-data. Local codes decide.</remarks>
    public static string Of(Allergen allergen) => allergen switch
    {
        Allergen.Gluten or Allergen.Celery or Allergen.Mustard or Allergen.Sulphites or Allergen.Lupin or Allergen.Molluscs => "EU",
        _ => "EU US",
    };
}
