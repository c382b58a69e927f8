using MenuLab.Core.House;
using MenuLab.Core.Pantry;

namespace MenuLab.Core.Safety;

/// <summary>A band of the US rounding of declared figures.</summary>
/// <param name="Id">Row id.</param>
/// <param name="Key">kcal, fat, cholesterol, sodium, carbohydrate or servings.</param>
/// <param name="Nutrients">What it covers.</param>
/// <param name="Unit">Unit.</param>
/// <param name="From">Lower edge; belongs to the band unless the band below ends at it.</param>
/// <param name="ToIsIn">The upper edge belongs to the band.</param>
/// <param name="To">Upper edge; NaN for none.</param>
/// <param name="Step">Nearest so much; 0 declares nothing but zero; NaN where words stand for it.</param>
/// <param name="Words">Words instead of a figure; else empty.</param>
/// <param name="Source">Who says so.</param>
public sealed record RoundingBand(string Id, string Key, string Nutrients, string Unit, double From, bool ToIsIn, double To, double Step, string Words, string Source)
{
    internal static RoundingBand Read(RuleTable t) => new(
        t.Required("id"), t.Required("key"), t.Required("nutrients"), t.Required("unit"), t.Number("from"), t.Text("to_operator") == "<=", t.NumberOrNaN("to"),
        t.NumberOrNaN("step"), t.Text("text"), $"{t.Required("source")} ({t.Required("status")})");

    /// <summary>A figure lies below the upper edge.</summary>
    internal bool IsBelowTop(double figure) => double.IsNaN(To) || figure < To || (ToIsIn && figure == To);
}

/// <summary>A figure as it is declared.</summary>
/// <param name="Value">The figure; NaN where words stand for it.</param>
/// <param name="Words">Words instead; else empty.</param>
/// <param name="Band">The band.</param>
public sealed record DeclaredFigure(double Value, string Words, RoundingBand Band)
{
    /// <summary>As printed, with its unit.</summary>
    public string Text(HouseFormat format) => Words.Length > 0 ? Words : $"{format.Amount(Value)} {Band.Unit}";
}

/// <summary>A nutrition claim, a duty, a tier or a share of a day.</summary>
/// <param name="Id">Row id.</param>
/// <param name="Where">Where it holds.</param>
/// <param name="Key">Key, e.g. "low_sugars".</param>
/// <param name="Kind">claim, duty, tier or information.</param>
/// <param name="Words">In words.</param>
/// <param name="Quantity">What is compared.</param>
/// <param name="Comparison">How; null for a yes.</param>
/// <param name="Limit">The figure; NaN for a yes.</param>
/// <param name="Unit">Its unit.</param>
/// <param name="FromDay">In force from; null for ever.</param>
/// <param name="ToDay">In force to; null for ever.</param>
/// <param name="Strength">How strong the caution is.</param>
/// <param name="Message">What to say.</param>
/// <param name="Source">Who says so.</param>
/// <param name="Status">How it became known.</param>
public sealed record NutritionRule(
    string Id, Jurisdictions Where, string Key, string Kind, string Words, string Quantity, Comparison? Comparison, double Limit, string Unit, DateOnly? FromDay, DateOnly? ToDay,
    CautionStrength Strength, string Message, string Source, FigureStatus Status)
{
    /// <summary>It is in force on a day.</summary>
    public bool IsInForce(DateOnly day) => (FromDay is not { } from || day >= from) && (ToDay is not { } to || day <= to);

    /// <summary>The comparison holds.</summary>
    public bool Holds(double figure) => Comparison?.Holds(figure, Limit) ?? false;

    internal static NutritionRule Read(RuleTable t)
    {
        var sign = t.Required("operator");
        var isFlag = sign == "=" && t.Required("limit") == "yes";
        return new NutritionRule(
            t.Required("id"), t.Word<Jurisdictions>("places", Jurisdiction.Read), t.Required("key"), t.Required("kind"), t.Required("words"), t.Required("quantity"),
            isFlag ? null : sign == "=" ? Safety.Comparison.AtMost : t.Word<Comparison>("operator", Comparisons.Read), isFlag ? double.NaN : t.Number("limit"), t.Text("unit"),
            t.DayOrNull("from_day"), t.DayOrNull("to_day"), t.Word("strength", SafetyRule.ReadStrength), t.Required("message"), t.Required("source"),
            t.Word("status", SafetyRule.ReadStatus));
    }
}

/// <summary>Where a drink stands between the sugar tiers.</summary>
public enum SugarTier
{
    /// <summary>Under the line.</summary>
    None,
    /// <summary>The middle tier.</summary>
    Standard,
    /// <summary>The high tier.</summary>
    Higher,
}

/// <summary>Declared figures, nutrition claims, duties and tiers.</summary>
/// <remarks>
/// Source: 21 CFR 101.9(c) (rounding), 21 CFR 101.11 and 101.60, Reg. (EC) 1924/2006 Annex (EU and UK claims per 100 mL), UK Soft Drinks Industry Levy and
/// Calorie Labelling Regulations 2021, WHO guideline on sugars (2015). Drinks served in open cups are outside the levy: a tier is information, never a tax due.
/// </remarks>
public static class NutritionLabels
{
    /// <summary>Rounds a total once, by the US bands; halves go up (the regulation is silent; MEMORY).</summary>
    /// <param name="book">The rules.</param>
    /// <param name="key">kcal, fat, cholesterol, sodium, carbohydrate or servings.</param>
    /// <param name="figure">The unrounded total, zero or more.</param>
    /// <exception cref="ArgumentException">There is no such key.</exception>
    public static DeclaredFigure Round(RuleBook book, string key, double figure)
    {
        var value = Guard.FiniteNonNegative(figure);
        var bands = book.Rounding.Where(b => b.Key == key).ToList();
        var band = bands.Find(b => b.IsBelowTop(value)) ?? throw new ArgumentException($"No rounding is known for {key}.", nameof(key));
        return band.Words.Length > 0 ? new DeclaredFigure(double.NaN, band.Words, band)
            : band.Step == 0 ? new DeclaredFigure(0, "", band)
            : new DeclaredFigure(Math.Floor(value / band.Step + 0.5) * band.Step, "", band);
    }

    /// <summary>A nutrition claim is met.</summary>
    /// <param name="rules">The site's rules.</param>
    /// <param name="key">low_energy, energy_free, low_sugars, sugars_free, low_fat, fat_free, no_added_sugars, sugar_free, calorie_free, low_calorie.</param>
    /// <param name="figure">The unrounded figure in the claim's unit (EU and UK per 100 mL, US per serving).</param>
    /// <returns>Null where the site has no such claim.</returns>
    /// <remarks>Above 1.2 % vol the EU and the UK bar health claims and nearly all nutrition claims: see <see cref="AlcoholClaims.Duties"/>.</remarks>
    public static bool? MeetsClaim(SiteRules rules, string key, double figure)
    {
        var found = rules.Shipped.NutritionClaims.Where(c => c.Kind == "claim" && c.Key == key && (c.Where & rules.Where) != 0).ToList();
        return found.Count == 0 ? null : found.TrueForAll(c => c.Holds(figure));
    }

    /// <summary>A duty that a number brings: calories on menus from so many employees (UK) or sites (US).</summary>
    /// <param name="rules">The site's rules.</param>
    /// <param name="quantity">employees or locations.</param>
    /// <param name="count">How many.</param>
    public static IReadOnlyList<NutritionRule> Duties(SiteRules rules, string quantity, double count) =>
        [.. rules.Shipped.NutritionClaims.Where(c => c.Kind == "duty" && c.Quantity == quantity && (c.Where & rules.Where) != 0 && c.Holds(count))];

    /// <summary>The UK sugar tier on a day.</summary>
    /// <param name="book">The rules.</param>
    /// <param name="sugarGramsPer100Millilitres">All sugars, g/100 mL, unrounded.</param>
    /// <param name="day">The day.</param>
    public static SugarTier Tier(RuleBook book, double sugarGramsPer100Millilitres, DateOnly day)
    {
        var sugar = Guard.FiniteNonNegative(sugarGramsPer100Millilitres);
        return book.NutritionClaims.Where(c => c.Kind == "tier" && c.IsInForce(day) && c.Holds(sugar))
            .Max(c => c.Key switch { "tier_higher" => SugarTier.Higher, "tier_standard" => SugarTier.Standard, _ => SugarTier.None });
    }
}

/// <summary>What one standard drink is in a country.</summary>
/// <param name="Country">Country, or body.</param>
/// <param name="Where">The jurisdiction it stands for; none for a country without rules here.</param>
/// <param name="Unit">Its word: standard drink, or unit.</param>
/// <param name="EthanolGrams">Ethanol, g.</param>
/// <param name="Source">Who says so.</param>
public sealed record StandardDrink(string Country, Jurisdictions Where, string Unit, double EthanolGrams, string Source)
{
    /// <summary>How many standard drinks so much ethanol is.</summary>
    /// <param name="ethanolGrams">Ethanol, g, zero or more.</param>
    public double Count(double ethanolGrams) => Guard.FiniteNonNegative(ethanolGrams) / EthanolGrams;

    /// <summary>The standard drink of a country.</summary>
    /// <exception cref="ArgumentException">None is known.</exception>
    public static StandardDrink Of(RuleBook book, string country) =>
        book.StandardDrinks.FirstOrDefault(s => s.Country == country) ?? throw new ArgumentException($"No standard drink of {country} is known.", nameof(country));

    /// <summary>The standard drink of a site; 10 g (WHO AUDIT reference) where its place has none here or is not known.</summary>
    public static StandardDrink At(SiteRules rules) =>
        rules.Shipped.StandardDrinks.FirstOrDefault(s => s.Where == rules.Where && s.Where != Jurisdictions.None) ?? Of(rules.Shipped, "WHO AUDIT reference");

    internal static StandardDrink Read(RuleTable t) => new(
        t.Required("country"), t.Text("place").Length == 0 ? Jurisdictions.None : t.Word<Jurisdictions>("place", Jurisdiction.Read), t.Required("unit"),
        t.Number("ethanol_g"), $"{t.Required("source")} ({t.Required("status")})");
}

/// <summary>What is printed.</summary>
public enum PrintedDocument
{
    /// <summary>A prep label.</summary>
    PrepLabel,
    /// <summary>A bottle for sale.</summary>
    Bottle,
    /// <summary>A spec card.</summary>
    SpecCard,
    /// <summary>Any print of 62 mm and wider.</summary>
    WidePrint,
}

/// <summary>Something that a print must carry.</summary>
/// <param name="Id">Row id.</param>
/// <param name="Document">Where.</param>
/// <param name="MustShow">What.</param>
/// <param name="When">When, in words.</param>
/// <param name="Conditions">When, over what is known; none for always.</param>
/// <param name="Where">Where it holds.</param>
/// <param name="Source">Who says so.</param>
/// <param name="Status">How it became known.</param>
/// <param name="Note">What to mind.</param>
public sealed record LabelField(
    string Id, PrintedDocument Document, string MustShow, string When, IReadOnlyList<RuleCondition> Conditions, Jurisdictions Where, string Source, FigureStatus Status, string Note)
{
    /// <summary>What a print must carry, given what is known. A condition that was asked and is not known counts as met.</summary>
    /// <param name="rules">The site's rules.</param>
    /// <param name="document">Which print.</param>
    /// <param name="facts">What is known of the drink or prep.</param>
    /// <param name="decision">How a prep is held; null where nobody decided, which counts as held cold and untested.</param>
    public static IReadOnlyList<LabelField> Of(SiteRules rules, PrintedDocument document, SafetyFacts facts, TcsDecision? decision = null)
    {
        if (document == PrintedDocument.PrepLabel)
        {
            facts = facts.With("cold_hold", decision?.HoldCold ?? true)
                .With("release_rests_on_reading", decision is { HoldCold: false })
                .With("tcs_reading_missing", decision is null || decision.Facts.Flag("tcs_reading_missing")?.State == true);
        }
        return
        [
            .. rules.Shipped.LabelFields.Where(f => f.Document == document && (f.Where & rules.Where) != 0 && f.Conditions.All(c => c.IsAskedAndNotRuledOut(facts))),
        ];
    }

    internal static LabelField Read(RuleTable t) => new(
        t.Required("id"),
        t.Word<PrintedDocument>("document", w => w switch
        {
            "prep_label" => PrintedDocument.PrepLabel,
            "bottle" => PrintedDocument.Bottle,
            "spec_card" => PrintedDocument.SpecCard,
            "print_62_mm" => PrintedDocument.WidePrint,
            _ => null,
        }),
        t.Required("must_show"), t.Required("when"),
        [.. t.Text("condition").Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(c => RuleCondition.Read(c) ?? throw t.Fault("condition", $"\"{c}\" is no condition"))],
        t.Word<Jurisdictions>("places", Jurisdiction.Read), t.Required("source"), t.Word("status", SafetyRule.ReadStatus), t.Text("note"));
}
