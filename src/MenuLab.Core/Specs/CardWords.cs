using MenuLab.Core.Balance;
using MenuLab.Core.House;
using MenuLab.Core.Pantry;
using MenuLab.Core.Quantities;

namespace MenuLab.Core.Specs;

/// <summary>The sentences of a card that stand on figures.</summary>
internal static class CardWords
{
    /// <summary>Where a line starts: a word where there is one, else the temperature.</summary>
    public static string Start(double celsius, HouseFormat format) => celsius switch
    {
        <= -10 => "freezer",
        >= 0 and <= 8 => "fridge",
        >= 18 and <= 25 => "shelf",
        >= 40 => $"hot, {format.Number(celsius, 0)} °C",
        _ => $"{format.Number(celsius, 0)} °C",
    };

    /// <summary>What stands for an allergen where no species is named (words of EU Regulation 1169/2011 Annex II, shortened).</summary>
    public static string Name(Allergen allergen) => allergen switch
    {
        Allergen.Gluten => "cereals with gluten",
        Allergen.Peanut => "peanut",
        Allergen.TreeNuts => "tree nuts",
        Allergen.Sulphites => "sulphites",
        _ => allergen.ToString().ToLowerInvariant(),
    };

    /// <summary>
    /// What a drink contains. Silence of the labels is told as such, never as absence; and not at all beside an open
    /// question, where it would sound like an answer.
    /// </summary>
    public static string Contains(AllergenSet allergens, IReadOnlyDictionary<Allergen, string> names)
    {
        var present = Listed(allergens, AllergenState.Present, names);
        return present.Count > 0 ? $"Contains {InAList(present)}."
            : allergens.Unknown != 0 ? ""
            : "No allergen of the list is declared.";
    }

    /// <summary>What nobody has settled; empty where nothing is open.</summary>
    public static string Open(AllergenSet allergens, IReadOnlyDictionary<Allergen, string> names)
    {
        var open = Listed(allergens, AllergenState.Unknown, names);
        return open.Count > 0 ? $"Not settled: {InAList(open)}. Ask before serving." : "";
    }

    /// <summary>Always printed (safety and claims, LB-S-02).</summary>
    public static string CrossContact(IReadOnlyList<string> alsoHandled) => alsoHandled.Count == 0
        ? "Shakers, strainers and garnish trays are shared."
        : $"Shakers, strainers and garnish trays are shared; the bar also handles {InAList(alsoHandled)}.";

    /// <summary>
    /// Strength and grams of alcohol. Below 0.5 % it says so and that there are traces; it never makes a claim of none,
    /// which depends on where the drink is sold.
    /// </summary>
    public static string Strength(MetricSet metrics, bool isServed, HouseFormat format)
    {
        const double traces = 0.5;      // US 27 CFR 7.65, UK licensing law: what counts as alcohol (safety and claims, section 2.1)
        var abv = metrics[Metric.Abv];
        var before = isServed ? "" : " before ice";
        if (abv.Certainty == Certainty.Unknown)
        {
            return "Strength unknown.";
        }
        if (abv.Certainty is Certainty.AtLeast or Certainty.SoFar)
        {
            return $"At least {Percent(abv.Value, format)} ABV{before}; a part is unknown.";
        }
        if (abv.High == 0)
        {
            return "No alcohol recorded in its ingredients.";
        }
        if (abv.High < traces)
        {
            return $"Below {format.Number(traces, 1)} % ABV{before}; contains traces of alcohol.";
        }
        var alcohol = metrics[Metric.Alcohol].Value;
        var range = $"likely {Percent(abv.Low, format, withSign: false)} to {Percent(abv.High, format, withSign: false)}";
        return $"{Percent(abv.Value, format)} ABV{before}, {range}; {format.Number(alcohol, alcohol < 10 ? 1 : 0)} g alcohol.";
    }

    /// <summary>Energy and sugar of the whole glass.</summary>
    public static string Energy(MetricSet metrics, HouseFormat format)
    {
        var energy = metrics[Metric.EnergyKilocalories];
        var kilojoules = metrics[Metric.EnergyKilojoules];
        var said = energy.Certainty == Certainty.Unknown
            ? "Energy unknown"
            : $"{About(energy.Certainty)} {format.Number(energy.Value, 0)} kcal ({format.Number(kilojoules.Value, 0)} kJ)";
        var sugar = metrics[Metric.Sugar];
        var grams = sugar.Value * metrics[Metric.Volume].Value / 100;
        return sugar.Certainty == Certainty.Unknown || double.IsNaN(grams)
            ? $"{said}, sugar unknown."
            : $"{said}, {About(sugar.Certainty).ToLowerInvariant()} {format.Number(grams, 0)} g sugar.";
    }

    /// <summary>"a", "a and b", "a, b and c".</summary>
    public static string InAList(IReadOnlyList<string> items) => items.Count <= 1
        ? string.Concat(items)
        : $"{string.Join(", ", items.Take(items.Count - 1))} and {items[^1]}";

    private static List<string> Listed(AllergenSet allergens, AllergenState state, IReadOnlyDictionary<Allergen, string> names) =>
        [.. Enum.GetValues<Allergen>().Where(a => allergens[a] == state).Select(a => names.GetValueOrDefault(a) ?? Name(a))];

    private static string About(Certainty certainty) => certainty == Certainty.AtLeast ? "At least" : "About";

    // One digit more than the limit near the limit (safety and claims, section 0), one digit elsewhere.
    private static string Percent(double value, HouseFormat format, bool withSign = true) =>
        format.Number(value, value < 1 ? 2 : 1) + (withSign ? " %" : "");
}
