using MenuLab.Core.Balance;
using MenuLab.Core.House;
using MenuLab.Core.Pantry;
using MenuLab.Data.Pantry;
using MenuLab.Web.Features.House;

namespace MenuLab.Web.Features.Pantry;

/// <summary>An ingredient as the list shows it.</summary>
public sealed class ShelfRow
{
    private readonly string _names;

    /// <summary>A row.</summary>
    public ShelfRow(Ingredient ingredient, IReadOnlyList<string> roles, PriceNow? price, bool isOnHand, bool isArchived)
    {
        Ingredient = ingredient;
        Roles = roles;
        Price = price;
        IsOnHand = isOnHand;
        IsArchived = isArchived;
        SearchName = Core.House.SearchName.Of(ingredient.Name);
        _names = string.Join('\n', ingredient.Aliases.Select(Core.House.SearchName.Of).Prepend(SearchName));
        ComesTo = ComesTo.Of(ingredient.Id, ingredient.Kind, ingredient.Composition);
        Sugar = From(ingredient, Metric.Sugar, FigureQuantities.TotalSugars, "sucrose_g", "glucose_g", "fructose_g", "lactose_g", "maltose_g", FigureQuantities.Brix, FigureQuantities.Carbohydrate);
        Acid = From(ingredient, Metric.Acid, FigureQuantities.TitratableAcidity, "citric_g", "malic_g", "tartaric_g", "acetic_g", "lactic_g");
        Ph = From(ingredient, Metric.Ph, FigureQuantities.Ph);
        Strength = From(ingredient, Metric.Abv, QuantityWords.Strength);
    }

    /// <summary>The ingredient.</summary>
    public Ingredient Ingredient { get; }

    /// <summary>What it is there for.</summary>
    public IReadOnlyList<string> Roles { get; }

    /// <summary>Its price; null where nobody has entered one.</summary>
    public PriceNow? Price { get; }

    /// <summary>Somebody said that it is in the house.</summary>
    public bool IsOnHand { get; }

    /// <summary>It is out of use.</summary>
    public bool IsArchived { get; }

    /// <summary>The name as ordered.</summary>
    public string SearchName { get; }

    /// <summary>What its figures come to.</summary>
    public ComesTo ComesTo { get; }

    /// <summary>What the sugar rests on.</summary>
    public Origin Sugar { get; }

    /// <summary>What the acid rests on.</summary>
    public Origin Acid { get; }

    /// <summary>What the pH rests on.</summary>
    public Origin Ph { get; }

    /// <summary>What the strength rests on.</summary>
    public Origin Strength { get; }

    /// <summary>Its name or one of its aliases contains a text in the form of <see cref="Core.House.SearchName"/>.</summary>
    public bool Answers(string search) => search.Length == 0 || _names.Contains(search, StringComparison.Ordinal);

    private Origin From(Ingredient ingredient, Metric metric, params ReadOnlySpan<string> quantities)
    {
        if (ComesTo[metric].Certainty == Core.Quantities.Certainty.Unknown)
        {
            return Origin.Unknown;
        }
        foreach (var quantity in quantities)
        {
            if (Origins.Of(ingredient.Figures.Counting(quantity)) is var origin and not Origin.Unknown)
            {
                return origin;
            }
        }
        // No figure states it: the kind's own bound, or for a pH the acids and minerals.
        return metric == Metric.Ph ? Origin.WorkedOut : Origin.Typical;
    }
}

/// <summary>What the list is narrowed to; the default shows all that is in use.</summary>
/// <param name="Text">Part of a name or alias.</param>
/// <param name="Kind">Only this kind.</param>
/// <param name="Role">Only with this role.</param>
/// <param name="OnHandOnly">Only what is in the house.</param>
/// <param name="Allergen">Only by this allergen.</param>
/// <param name="AllergenState">What is known of that allergen: there, or an open question.</param>
/// <param name="Archived">What is out of use, and nothing else.</param>
public sealed record ShelfFilter(
    string Text = "", IngredientKind? Kind = null, string? Role = null, bool OnHandOnly = false, Allergen? Allergen = null,
    AllergenState AllergenState = AllergenState.Present, bool Archived = false);

/// <summary>All ingredients of the house as the list shows them, worked out once per change.</summary>
public sealed class Shelf
{
    /// <summary>A shelf.</summary>
    public Shelf(HouseBook book, IReadOnlyDictionary<IngredientId, IReadOnlyList<string>> roles, IReadOnlyDictionary<IngredientId, PriceNow> prices) =>
        Rows =
        [
            .. book.Stock.Pantry.All
                .Select(i => new ShelfRow(i, roles.GetValueOrDefault(i.Id) ?? [], prices.GetValueOrDefault(i.Id), book.OnHand.Contains(i.Id), book.Archived.Contains(i.Id)))
                .OrderBy(r => r.SearchName, StringComparer.Ordinal),
        ];

    /// <summary>All of them, by name.</summary>
    public IReadOnlyList<ShelfRow> Rows { get; }

    /// <summary>How many are in use.</summary>
    public int InUse => Rows.Count(r => !r.IsArchived);

    /// <summary>The rows that a filter leaves: names that begin with the text first, then by name.</summary>
    public IReadOnlyList<ShelfRow> Find(ShelfFilter filter)
    {
        var search = SearchName.Of(filter.Text);
        return
        [
            .. Rows
                .Where(r => r.IsArchived == filter.Archived && r.Answers(search))
                .Where(r => filter.Kind is null || r.Ingredient.Kind == filter.Kind)
                .Where(r => filter.Role is null || r.Roles.Contains(filter.Role))
                .Where(r => !filter.OnHandOnly || r.IsOnHand)
                .Where(r => filter.Allergen is not { } a || r.Ingredient.Composition.Allergens[a] == filter.AllergenState)
                .OrderBy(r => !r.SearchName.StartsWith(search, StringComparison.Ordinal)),
        ];
    }
}
