using System.Globalization;
using MenuLab.Core.Specs;

namespace MenuLab.Print.Tests;

/// <summary>Invented cards. Their figures are for layout, not for science.</summary>
internal static class Demo
{
    public static CardContent LowWaterOrchard { get; } = new()
    {
        Name = "Low Water Orchard",
        Issue = "iteration 4",
        IsDraft = true,
        PrintedOn = new DateOnly(2026, 10, 19),
        Facts =
        [
            new("Method", "Shaken, 12 s, fine-strained"), new("Ice", "Cubes"), new("Glass", "Coupe, no ice"), new("Rim", "½ smoked salt"), new("Garnish", "Quince leaf"),
        ],
        Lines =
        [
            Line(1, "45 mL", "1 ½ fl oz", "Toasted barley tea", "shelf"),
            Line(2, "15 mL", "½ fl oz", "Quince cordial", "fridge"),
            Line(3, "15 mL", "½ fl oz", "Sea buckthorn juice", "strained, fridge"),
            Line(4, "15 mL", "½ fl oz", "Verjus", "shelf"),
            Line(5, "20 mL", "⅔ fl oz", "Gentian-root tea", "fridge"),
            Line(6, "7.5 mL", "¼ fl oz", "Fennel syrup 1:1", "shelf"),
            Line(7, "4 drops", "0.2 mL", "Smoked saline 20 %", "shelf, last, on top"),
        ],
        Ladder = Rungs([45, 15, 15, 15, 20, 7.5], melt: 36, ice: 0),
        WashLineMillilitres = 165,
        Steps = ["1–6 into the tin with 200 g of wet cubes.", "Shake till the tin frosts, then fine-strain.", "Saline last, on top."],
        Allergens = "Contains barley (gluten) and sulphites.",
        CrossContact = "Shakers, strainers and garnish trays are shared; the bar also handles milk, egg, almond and celery.",
        Strength = "No alcohol recorded in its ingredients.",
        Energy = "About 61 kcal (256 kJ), about 13 g sugar.",
    };

    /// <summary>An approved spec with a short card and the lengthener to the wash line.</summary>
    public static CardContent SpecOnIce { get; } = LowWaterOrchard with
    {
        Name = "Slack Tide",
        Issue = "Spec 23, issue 1",
        IsDraft = false,
        InForceFrom = new DateOnly(2026, 11, 2),
        Facts = [new("Method", "Built"), new("Ice", "Cubes"), new("Glass", "Highball, cubes"), new("Garnish", "1 peel Pear")],
        Lines =
        [
            Line(1, "30 mL", "1 fl oz", "Pear shrub", "fridge"),
            Line(2, "2 dashes", "–", "Gentian bitters", "shelf"),
            Line(3, "top", "≈ 135 mL", "Hibiscus soda", "fridge"),
        ],
        Ladder =
        [
            new(RungKind.Line, 1, 0, 30, "30"), new(RungKind.Melt, 0, 30, 38, "ice to 38"), new(RungKind.Line, 3, 38, 173, "to 173"), new(RungKind.Ice, 0, 173, 300, "on ice 300"),
        ],
        WashLineMillilitres = 300,
        Steps = ["Build over ice, lift once with a bar spoon."],
        Allergens = "",
        OpenAllergens = "Not settled: sulphites and celery. Ask before serving.",
        CrossContact = "Shakers, strainers and garnish trays are shared.",
        Strength = "Below 0.5 % ABV; contains traces of alcohol.",
        Energy = "About 48 kcal (201 kJ), at least 9 g sugar.",
        Cautions = ["Contains quinine."],
    };

    /// <summary>Fourteen lines, nine steps, all allergens of the list.</summary>
    public static CardContent HarbourMasterPunch { get; } = LowWaterOrchard with
    {
        Name = "The Harbour Master's Late-Autumn Fog Punch",
        Issue = "iteration 12",
        Facts =
        [
            new("Method", "Blended, 20 s, open-pour"), new("Ice", "Crushed"), new("Glass", "Stoneware mug, crushed"), new("Rinse", "Smoked barley spirit"),
            new("Rim", "½ bar spoon Smoked salt and toasted barley crumb"), new("Garnish", "1 leaf Beet; 1 slice Quince, torched"), new("Beside", "1 piece Barley cracker"),
        ],
        Lines =
        [
            Line(1, "22.5 mL", "¾ fl oz", "Toasted barley spirit", "freezer"),
            Line(2, "22.5 mL", "¾ fl oz", "Quince eau-de-vie", "shelf"),
            Line(3, "20 mL", "⅔ fl oz", "Sea buckthorn and pear leaf cordial 1:1", "strained, fridge"),
            Line(4, "15 mL", "½ fl oz", "Fermented hibiscus shrub", "fridge"),
            Line(5, "15 mL", "½ fl oz", "Verjus", "fridge"),
            Line(6, "15 mL", "½ fl oz", "Almond and oat orgeat", "fridge"),
            Line(7, "12.5 mL", "–", "Beet leaf juice", "fine-strained, fridge"),
            Line(8, "10 mL", "⅓ fl oz", "Gentian-root tea, triple strength", "12 °C"),
            Line(9, "7.5 mL", "¼ fl oz", "Fennel syrup 2:1", "shelf"),
            Line(10, "7.5 mL", "¼ fl oz", "Smoked whey", "clarified, fridge"),
            Line(11, "1 piece", "–", "Egg white, pasteurised", "fridge"),
            Line(12, "2–3 dashes", "–", "Celery-seed bitters", "shelf"),
            Line(13, "4 drops", "0.2 mL", "Smoked saline 20 %", "shelf"),
            Line(14, "top", "≈ 60 mL", "Pear soda", "fridge"),
        ],
        Ladder =
        [
            .. Rungs([22.5, 22.5, 20, 15, 15, 15, 12.5, 10, 7.5, 7.5, 30], melt: 70, ice: 0),
            new(RungKind.Line, 14, 247.5, 307.5, "to 307.5"), new(RungKind.Ice, 0, 307.5, 340, "on ice 340"),
        ],
        WashLineMillilitres = 340,
        Steps =
        [
            "Rinse the mug with smoked barley spirit and pour it away.", "Rim half of the mug.", "1–13 into the blender with 120 g of crushed ice.", "Blend 20 s at low speed.",
            "Pour without straining.", "Top with pear soda from low down.", "Torch the quince slice away from the bottles.", "Lay the beet leaf on the ice, the slice on the leaf.", "Serve with the cracker beside.",
        ],
        Allergens = "Contains barley and oats (gluten), wheat, crustaceans, egg, fish, peanut, soy, milk, almond (tree nuts), celery, mustard, sesame, sulphites, lupin and molluscs.",
        OpenAllergens = "Not settled: hazelnut and walnut (tree nuts). Ask before serving.",
        CrossContact = "Shakers, strainers and garnish trays are shared; the bar also handles hazelnut, walnut, coconut and pine nut.",
        Strength = "11.4 % ABV, likely 10.2 to 12.6; 28 g alcohol.",
        Energy = "About 262 kcal (1096 kJ), at least 24 g sugar.",
        Cautions = ["Pasteurised egg only.", "Flame out before service."],
    };

    public static CardContent NorthernNames { get; } = SpecOnIce with
    {
        Name = "Åkerbär & šípek",
        Issue = "iteration 2",
        IsDraft = true,
        InForceFrom = null,
        Allergens = "No allergen of the list is declared.",
        OpenAllergens = "",
        Lines =
        [
            Line(1, "1 ½ fl oz", "45 mL", "Åkerbär & šípek cordial", "fridge"),
            Line(2, "⅔ fl oz", "20 mL", "Žitný čaj, pražený", "shelf"),
            Line(3, "⅛ fl oz", "–", "Jałowiec, ørret-salt", "shelf"),
            Line(4, "3 leaves", "–", "Rødbedeblad", "torn, fridge"),
        ],
        Ladder = [.. Rungs([45, 20, 3.75], melt: 24, ice: 90)],
        WashLineMillilitres = 170,
        Facts = [new("Method", "Shaken, 10 s"), new("Ice", "Cubes"), new("Glass", "Rocks, cubes")],
        Steps = ["Shake hard; ½ of the leaves go into the tin at ≤ 4 °C."],
    };

    public static CardAmount Amount(string text) => text.Split(' ') switch
    {
        [var figure] => new(figure, ""),
        [var whole, var fraction, .. var unit] when "½¼¾⅓⅔⅛⅜⅝⅞".Contains(fraction, StringComparison.Ordinal) => new($"{whole} {fraction}", string.Join(' ', unit)),
        ["≈", var figure, .. var unit] => new($"≈ {figure}", string.Join(' ', unit)),
        [var figure, .. var unit] => new(figure, string.Join(' ', unit)),
        _ => throw new ArgumentException("No amount.", nameof(text)),
    };

    private static CardLine Line(int number, string amount, string other, string name, string detail) => new(number, Amount(amount), Amount(other), name, detail);

    public static IReadOnlyList<LadderRung> Rungs(double[] millilitres, double melt, double ice)
    {
        var rungs = new List<LadderRung>();
        var total = 0.0;
        foreach (var (kind, number, amount) in millilitres.Select((ml, i) => (RungKind.Line, i + 1, ml)).Append((RungKind.Melt, 0, melt)).Append((RungKind.Ice, 0, ice)))
        {
            if (amount > 0)
            {
                var figure = (Math.Round(2 * (total + amount)) / 2).ToString(kind == RungKind.Line ? "0.#" : "0", CultureInfo.InvariantCulture);
                rungs.Add(new LadderRung(kind, number, total, total + amount, kind switch
                {
                    RungKind.Melt => $"ice to {figure}",
                    RungKind.Ice => $"on ice {figure}",
                    _ => rungs.Count == 0 ? figure : $"to {figure}",
                }));
                total += amount;
            }
        }
        return rungs;
    }
}
