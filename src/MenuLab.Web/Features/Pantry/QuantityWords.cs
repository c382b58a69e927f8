using MenuLab.Core.Pantry;

namespace MenuLab.Web.Features.Pantry;

/// <summary>A figure as the pantry calls it.</summary>
/// <param name="Quantity">Name of the quantity, as in seed-data.</param>
/// <param name="Name">In words.</param>
/// <param name="Unit">Its unit; empty for none.</param>
/// <param name="IsPart">It belongs to the one above it.</param>
public sealed record QuantityWord(string Quantity, string Name, string Unit, bool IsPart = false);

/// <summary>The figures of an ingredient in the order of the page, in words.</summary>
public static class QuantityWords
{
    /// <summary>Strength as a label writes it; kept as grams of ethanol.</summary>
    public const string Strength = "ethanol_g";

    /// <summary>The five that matter first.</summary>
    public static IReadOnlyList<QuantityWord> First { get; } =
    [
        new(FigureQuantities.TotalSugars, "Sugars", "g"),
        new(FigureQuantities.TitratableAcidity, "Acid, as citric", "g"),
        new(FigureQuantities.Ph, "pH", ""),
        new(Strength, "Strength", "% vol"),
        new(FigureQuantities.Density, "Density at 20 °C", "g/mL"),
    ];

    /// <summary>The rest, in groups that fold.</summary>
    public static IReadOnlyList<(string Group, IReadOnlyList<QuantityWord> Words)> Folded { get; } =
    [
        ("Sugars by name and °Bx",
        [
            new("sucrose_g", "sucrose", "g", true), new("glucose_g", "glucose", "g", true), new("fructose_g", "fructose", "g", true), new("galactose_g", "galactose", "g", true),
            new("lactose_g", "lactose", "g", true), new("maltose_g", "maltose", "g", true), new(FigureQuantities.Brix, "Brix", "°Bx"),
            new(FigureQuantities.BrixMinimum, "Least Brix by law", "°Bx"), new(FigureQuantities.SugarUncertainty, "Sugars may be off by", "g"),
        ]),
        ("Acids by name",
        [
            new("citric_g", "citric", "g", true), new("malic_g", "malic", "g", true), new("tartaric_g", "tartaric", "g", true), new("acetic_g", "acetic", "g", true),
            new("lactic_g", "lactic", "g", true), new("succinic_g", "succinic", "g", true), new("phosphoric_g", "phosphoric", "g", true), new("quinic_g", "quinic", "g", true),
            new("oxalic_g", "oxalic", "g", true), new("ascorbic_g", "ascorbic (vitamin C)", "g", true), new(FigureQuantities.AcidVariation, "Acids differ between lots by", "%"),
        ]),
        ("Water, solids and energy",
        [
            new(FigureQuantities.Water, "Water", "g"), new(FigureQuantities.Carbohydrate, "Carbohydrate, by difference", "g"), new("fibre_g", "Fibre", "g"),
            new("other_carb_g", "Starch and dextrins", "g"), new("protein_g", "Protein", "g"), new("fat_g", "Fat", "g"), new(FigureQuantities.Ash, "Ash", "g"),
            new("glycerol_g", "Glycerol", "g"), new("sorbitol_g", "Sorbitol", "g"), new("mannitol_g", "Mannitol", "g"), new("xylitol_g", "Xylitol", "g"),
            new("erythritol_g", "Erythritol", "g"), new("other_polyol_g", "Other polyols", "g"), new(FigureQuantities.Energy, "Energy as stated", "kcal"),
        ]),
        ("Minerals, gas and what bites",
        [
            new(FigureQuantities.Sodium, "Sodium", "mg"), new(FigureQuantities.Potassium, "Potassium", "mg"), new(FigureQuantities.Calcium, "Calcium", "mg"),
            new(FigureQuantities.Magnesium, "Magnesium", "mg"), new(FigureQuantities.Phosphorus, "Phosphorus", "mg"), new(FigureQuantities.Charge, "Mineral charge", "mmol"),
            new(FigureQuantities.CarbonDioxideVolumes, "Carbon dioxide", "volumes"), new(FigureQuantities.Carbonic, "Carbonate", "mmol"), new(FigureQuantities.Caffeine, "Caffeine", "mg"),
            new(FigureQuantities.Quinine, "Quinine", "mg"), new(FigureQuantities.QuininePerLitre, "Quinine per litre", "mg/L"), new(FigureQuantities.JuiceYield, "Juice it gives", "%"),
        ]),
    ];

    /// <summary>All of them.</summary>
    public static IReadOnlyList<QuantityWord> All { get; } = [.. First, .. Folded.SelectMany(g => g.Words)];

    /// <summary>The words for a quantity.</summary>
    public static QuantityWord Of(string quantity) => All.First(w => w.Quantity == quantity);

    /// <summary>The figure's name with its unit and basis, as a field is called: "Sugars, g per 100 g".</summary>
    public static string Label(QuantityWord word, string basis) =>
        word.Unit.Length == 0 ? word.Name : IsPerBasis(word) ? $"{word.Name}, {word.Unit} per {basis}" : $"{word.Name}, {word.Unit}";

    /// <summary>It is per 100 g or 100 mL; density, pH, strength and shares are not.</summary>
    public static bool IsPerBasis(QuantityWord word) => word.Unit is "g" or "mg" or "mmol" or "kcal";

    /// <summary>A kind in words.</summary>
    public static string Of(IngredientKind kind) => kind switch
    {
        IngredientKind.CitrusJuice => "citrus juice",
        IngredientKind.Juice => "juice",
        IngredientKind.Produce => "fruit or vegetable",
        IngredientKind.HerbOrSpice => "herb or spice",
        IngredientKind.SugarOrSyrup => "sugar or syrup",
        IngredientKind.Vinegar => "vinegar",
        IngredientKind.Dairy => "dairy",
        IngredientKind.EggOrFoamer => "egg or foamer",
        IngredientKind.TeaOrCoffee => "tea or coffee",
        IngredientKind.Carbonated => "carbonated",
        IngredientKind.Water => "water",
        IngredientKind.NutOrSeed => "nut or seed",
        IngredientKind.AcidSaltOrGum => "acid, salt or gum",
        _ => "alcohol",
    };

    /// <summary>A kind of reading in words.</summary>
    public static string OfReading(string kind) => kind switch
    {
        "brix" => "Brix",
        "ph" => "pH",
        "titration" => "Acid, as citric",
        _ => "Density",
    };

    /// <summary>A pack in words: "750 mL", "1 piece".</summary>
    public static string OfPackUnit(string unit, double amount) => unit switch { "ml" => "mL", "piece" when amount != 1 => "pieces", _ => unit };

    /// <summary>The places where things are kept.</summary>
    public static IReadOnlyList<(string Name, double Celsius)> Places { get; } = [("fridge", 4), ("shelf", 22), ("freezer", -18)];

    /// <summary>Where it is kept, in words: "fridge"; empty for a temperature of its own.</summary>
    public static string Place(double celsius) => Places.FirstOrDefault(p => p.Celsius == celsius).Name ?? "";
}
