using MenuLab.Core;
using MenuLab.Core.Drafts;
using MenuLab.Core.House;
using MenuLab.Core.Pantry;
using MenuLab.Core.Quantities;

namespace MenuLab.Web.Features.Drafts;

/// <summary>A brief with the name and the style that a draft keeps beside it.</summary>
/// <param name="Name">Name.</param>
/// <param name="Style">Key of the style; null for none.</param>
/// <param name="Brief">The brief.</param>
/// <param name="Fields">Which of its fields were filled in.</param>
public sealed record NamedBrief(string Name, string? Style, Brief Brief, BriefFields Fields);

/// <summary>The form of a new draft, as typed. Only the name is needed.</summary>
public sealed class BriefForm
{
    /// <summary>Name.</summary>
    public string Name { get; set; } = "";

    /// <summary>The slot on the menu.</summary>
    public string Slot { get; set; } = "";

    /// <summary>Key of the style; empty for none.</summary>
    public string Style { get; set; } = "";

    /// <summary>The claim.</summary>
    public string Claim { get; set; } = "";

    /// <summary>The direction of flavour.</summary>
    public string Flavour { get; set; } = "";

    /// <summary>What it may cost, as typed.</summary>
    public string Cost { get; set; } = "";

    /// <summary>What it is to sell for, as typed.</summary>
    public string Price { get; set; } = "";

    /// <summary>Equipment that there is, or is not.</summary>
    public string Equipment { get; set; } = "";

    /// <summary>The day it must be ready.</summary>
    public DateOnly? Due { get; set; }

    /// <summary>Allergens to avoid.</summary>
    public ISet<Allergen> Avoid { get; } = new HashSet<Allergen>();

    /// <summary>The form of a draft that is there.</summary>
    public static BriefForm Of(Draft draft, HouseFormat format)
    {
        var brief = draft.Brief;
        var form = new BriefForm
        {
            Name = draft.Name, Slot = brief.Slot, Style = draft.Style ?? "", Claim = brief.Claim, Flavour = brief.Flavour, Equipment = brief.Equipment, Due = brief.Due,
            Cost = brief.CostLimit is { } cost ? format.Amount((double)cost.Amount) : "",
            Price = brief.Price is { } price ? format.Amount((double)price.Amount) : "",
        };
        form.Avoid.UnionWith(Enum.GetValues<Allergen>().Where(a => brief.Avoid[a] == AllergenState.Present));
        return form;
    }

    /// <summary>What was typed, or all that is wrong with it; fields by the names of this form's properties.</summary>
    /// <param name="currency">The site's currency, ISO 4217.</param>
    public Result<NamedBrief> Read(string currency)
    {
        var problems = new List<Problem>();
        if (Name.Trim().Length is 0 or > Draft.NameMaxLength)
        {
            problems.Add(new Problem(nameof(Name), $"Give a name of 1 to {Draft.NameMaxLength} characters; it can be changed at any time."));
        }
        foreach (var (field, text) in new[] { (nameof(Slot), Slot), (nameof(Claim), Claim), (nameof(Flavour), Flavour), (nameof(Equipment), Equipment) })
        {
            if (text.Trim().Length > Brief.TextMaxLength)
            {
                problems.Add(new Problem(field, $"At most {Brief.TextMaxLength} characters."));
            }
        }
        var brief = new Brief
        {
            Slot = Slot.Trim(), Claim = Claim.Trim(), Flavour = Flavour.Trim(), Equipment = Equipment.Trim(), Due = Due,
            CostLimit = MoneyOf(nameof(Cost), Cost, currency, problems),
            Price = MoneyOf(nameof(Price), Price, currency, problems),
            Avoid = Avoid.Aggregate(default(AllergenSet), (set, allergen) => set.With(allergen, AllergenState.Present)),
        };
        return problems.Count > 0 ? Result.Invalid<NamedBrief>(problems) : Result.Ok(new NamedBrief(Name.Trim(), Style.Length == 0 ? null : Style, brief, Filled(brief)));
    }

    /// <summary>Largest amount of money that is taken; no drink costs more, and the column holds it.</summary>
    private const double MostMoney = 1e6;

    private static Money? MoneyOf(string field, string typed, string currency, List<Problem> problems)
    {
        if (string.IsNullOrWhiteSpace(typed))
        {
            return null;
        }
        var number = HouseParse.Number(typed);
        if (!number.IsRead)
        {
            problems.Add(new Problem(field, number.Echo));
            return null;
        }
        if (number.Value is < 0 or > MostMoney)
        {
            problems.Add(new Problem(field, "Money is zero or more, and at most a million."));
            return null;
        }
        return Money.Of(Math.Round((decimal)number.Value, 4), currency);
    }

    private static BriefFields Filled(Brief brief) =>
        (brief.Slot.Length > 0 ? BriefFields.Slot : 0)
        | (brief.Claim.Length > 0 ? BriefFields.Claim : 0)
        | (brief.Flavour.Length > 0 ? BriefFields.Flavour : 0)
        | (brief.Equipment.Length > 0 ? BriefFields.Equipment : 0)
        | (brief.CostLimit is null ? 0 : BriefFields.CostLimit)
        | (brief.Price is null ? 0 : BriefFields.Price)
        | (brief.Avoid == default ? 0 : BriefFields.Avoid)
        | (brief.Due is null ? 0 : BriefFields.Due);
}
