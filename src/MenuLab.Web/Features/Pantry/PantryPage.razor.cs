using MenuLab.Core.Pantry;
using MenuLab.Core.Quantities;
using MenuLab.Core.House;
using MenuLab.Web.Features.Bench;
using Microsoft.AspNetCore.Components;

namespace MenuLab.Web.Features.Pantry;

/// <summary>The list: read once per change of the house, narrowed in memory at every key.</summary>
public sealed partial class PantryPage(PantryDesk desk) : IDisposable
{
    private const string There = "there";
    private const string Open = "a question";
    private static readonly string[] States = [There, Open];
    private static readonly RenderFragment Dash = builder => builder.AddMarkupContent(0, "<span class=\"muted\">–</span>");

    private Shelf? _shelf;
    private ShelfFilter _filter = new();
    private IReadOnlyList<ShelfRow> _found = [];
    private IDisposable? _listening;
    private string _refusal = "";

    /// <summary>How the house writes.</summary>
    [CascadingParameter] public HouseFormat Format { get; set; } = HouseFormat.Plain;

    /// <inheritdoc/>
    protected override Task OnInitializedAsync()
    {
        _listening = desk.Listen(() => InvokeAsync(ReadAsync));
        return ReadAsync();
    }

    private async Task ReadAsync()
    {
        _shelf = await desk.ShelfAsync();
        Narrow(_filter);
        StateHasChanged();
    }

    private void Narrow(ShelfFilter filter)
    {
        _filter = filter;
        _found = _shelf?.Find(filter) ?? [];
    }

    private async Task HandAsync(IngredientId id, bool isOnHand)
    {
        var said = await desk.SetOnHandAsync(id, isOnHand);
        _refusal = said.IsOk ? "" : said.Problems[0].Message;
    }

    private static T? Parsed<T>(ChangeEventArgs chosen)
        where T : struct, Enum => Enum.TryParse<T>(chosen.Value as string, out var value) ? value : null;

    private RenderFragment Figure(Estimate estimate, int decimals, Origin origin, bool isDry) => builder =>
    {
        var unknown = estimate.Certainty == Certainty.Unknown;
        builder.OpenElement(0, "span");
        builder.AddAttribute(1, "class", unknown ? "offt" : null);
        builder.AddContent(2, Format.Value(estimate, decimals));
        builder.CloseElement();
        if (isDry && !unknown)
        {
            builder.AddMarkupContent(3, "<small class=\"muted\"> /100 g</small>");
        }
        builder.OpenComponent<OriginMark>(4);
        builder.AddComponentParameter(5, nameof(OriginMark.Origin), unknown ? Origin.Unknown : origin);
        builder.CloseComponent();
    };

    private string Price(ShelfRow row, Data.Pantry.PriceNow price) =>
        row.ComesTo.IsDry
            ? $"{Format.Money(100 * price.PerGram, desk.Book.Site.Currency)} /100 g"
            : $"{Format.Money(100 * price.PerGram * row.ComesTo.Composition.GramsPerMillilitre, desk.Book.Site.Currency)} /100 mL";

    /// <summary>What is there, and what is an open question; many questions are counted.</summary>
    private static (string There, string Open) AllergensOf(ShelfRow row)
    {
        const int MostNamed = 2;
        var known = row.Ingredient.Composition.Allergens;
        var all = Enum.GetValues<Allergen>();
        var open = all.Where(a => known[a] == AllergenState.Unknown).Select(AllergenWords.Of).ToList();
        return (
            string.Join(", ", all.Where(a => known[a] == AllergenState.Present).Select(AllergenWords.Of)),
            open.Count == 0 ? "" : open.Count <= MostNamed ? string.Join(", ", open) + " unknown" : $"{open.Count} unknown");
    }

    /// <inheritdoc/>
    public void Dispose() => _listening?.Dispose();
}
