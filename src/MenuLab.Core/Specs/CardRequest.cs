using MenuLab.Core.Balance;
using MenuLab.Core.Drafts;
using MenuLab.Core.House;
using MenuLab.Core.Pantry;

namespace MenuLab.Core.Specs;

/// <summary>What a card is made from.</summary>
public sealed record CardRequest
{
    /// <summary>The drink.</summary>
    public required string Name { get; init; }

    /// <summary>"iteration 4", "on the bench now", or "Spec 23, issue 1".</summary>
    public required string Issue { get; init; }

    /// <summary>Nobody has approved it.</summary>
    public required bool IsDraft { get; init; }

    /// <summary>The site's calendar day.</summary>
    public required DateOnly PrintedOn { get; init; }

    /// <summary>The day from which the issue is in force; null for a draft.</summary>
    public DateOnly? InForceFrom { get; init; }

    /// <summary>All lines, in the order in which they are poured.</summary>
    public required IReadOnlyList<DraftLine> Lines { get; init; }

    /// <summary>The name of each ingredient in the lines, as it stood.</summary>
    public required IReadOnlyDictionary<IngredientId, string> Names { get; init; }

    /// <summary>Method, ice, glass, steps.</summary>
    public required Build Build { get; init; }

    /// <summary>Where the keys of the build have their names and the glass its wash line.</summary>
    public required BuildCatalogue Catalogue { get; init; }

    /// <summary>The balance of these lines with this build.</summary>
    public required DrinkBalance Balance { get; init; }

    /// <summary>How the house pours.</summary>
    public required PourGrid Grid { get; init; }

    /// <summary>How the house writes figures and days.</summary>
    public HouseFormat Format { get; init; } = HouseFormat.Plain;

    /// <summary>The house reads fluid ounces first.</summary>
    public bool FluidOuncesFirst { get; init; }

    /// <summary>Allergens by their species where it is known, e.g. Gluten: "barley (gluten)"; the rest get the list's own words.</summary>
    public IReadOnlyDictionary<Allergen, string> AllergenNames { get; init; } = new Dictionary<Allergen, string>();

    /// <summary>What else the bar handles: "milk", "egg".</summary>
    public IReadOnlyList<string> AlsoHandled { get; init; } = [];

    /// <summary>Cautions, a sentence each, the most serious first.</summary>
    public IReadOnlyList<string> Cautions { get; init; } = [];
}
