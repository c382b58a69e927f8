using MenuLab.Core.Drafts;
using MenuLab.Core.House;

namespace MenuLab.Web.Features.Bench;

/// <summary>A line in words, as the house writes and pours: for its row on a page, and as a line that reads one way only.</summary>
/// <param name="Format">How figures are written.</param>
/// <param name="Grid">How the house pours.</param>
/// <param name="First">The unit that stands first: mL or fluid ounce.</param>
public sealed record LineWords(HouseFormat Format, PourGrid Grid, Unit First)
{
    /// <summary>The figure in ounces as on a jigger: "1 ½"; decimals where no fraction fits.</summary>
    public string Ounces(double millilitres) =>
        Grid.FromMillilitres(millilitres).FluidOunces is { Length: > 0 } jigger ? jigger : Format.Amount(millilitres / Grid.OunceMillilitres);

    /// <summary>The amount in the unit that stands first (the header says which), or with its own unit where it has no volume.</summary>
    public string Amount(DraftLine line) =>
        line.IsTopUp ? "top"
        : IsPieces(line.Unit) ? (double.IsFinite(line.Amount) ? Range(line) : "")
        : IsWeight(line.Unit) || (!double.IsFinite(line.Millilitres) && double.IsFinite(line.Grams)) ? Format.Amount(line.Grams) + " g"
        : !double.IsFinite(line.Millilitres) ? (double.IsFinite(line.Amount) ? Range(line) : "")
        : First == Unit.FluidOunce ? Ounces(line.Millilitres)
        : Format.Amount(line.Millilitres);

    /// <summary>The same with the unit that a header would say.</summary>
    public string WithUnit(DraftLine line) =>
        line.IsTopUp || IsPieces(line.Unit) || IsWeight(line.Unit) || !double.IsFinite(line.Millilitres) ? Amount(line)
        : $"{Amount(line)} {(First == Unit.FluidOunce ? "fl oz" : "mL")}";

    /// <summary>The same amount as typed, where that was in another unit; else the other of mL and fluid ounces.</summary>
    public string Other(DraftLine line)
    {
        if (line.IsTopUp)
        {
            return "to the wash line";
        }
        if (IsPieces(line.Unit))
        {
            return Word(line.Unit, line.Amount);
        }
        if (line.Unit is not (Unit.Millilitre or Unit.FluidOunce or Unit.None or Unit.Gram) && double.IsFinite(line.Amount))
        {
            return $"{Range(line)} {Word(line.Unit, line.Amount)}";
        }
        return IsWeight(line.Unit) || !double.IsFinite(line.Millilitres) ? ""
            : First == Unit.FluidOunce ? Format.Amount(line.Millilitres) + " mL"
            // Beside the millilitres only what a jigger shows, as on the card: nobody pours 0.17 fl oz.
            : Grid.FromMillilitres(line.Millilitres).FluidOunces is { Length: > 0 } jigger ? jigger + " fl oz" : "";
    }

    /// <summary>Where it starts: the usual places have names.</summary>
    public static string StartsAt(double celsius) => celsius switch
    {
        4 => "fridge",
        22 => "shelf",
        -18 => "freezer",
        _ => "",
    };

    /// <summary>Where it goes, if not into the liquid.</summary>
    public static string Of(Place place) => place switch
    {
        Place.Rinse => "rinse",
        Place.Rim => "rim",
        Place.Garnish => "garnish",
        Place.Beside => "beside",
        _ => "",
    };

    /// <summary>When it joins.</summary>
    public static string Of(Joins joins) => joins switch
    {
        Joins.InTheGlass => "in the glass",
        Joins.OnTop => "on top",
        _ => "mixed",
    };

    /// <summary>The unit as a word, in the plural where the amount asks for it.</summary>
    public static string Word(Unit unit, double amount)
    {
        var (one, many) = Words(unit);
        return amount is > 1 ? many : one;
    }

    /// <summary>"2", or "1–2" where a range was typed.</summary>
    private string Range(DraftLine line) =>
        double.IsFinite(line.AmountLow) && double.IsFinite(line.AmountHigh) && line.AmountLow < line.AmountHigh
            ? $"{Format.Amount(line.AmountLow)}\u2013{Format.Amount(line.AmountHigh)}"
            : Format.Amount(line.Amount);

    private static bool IsPieces(Unit unit) => unit is Unit.Piece or Unit.Leaf or Unit.Sprig or Unit.Slice or Unit.Wedge or Unit.Peel or Unit.Cube;

    private static bool IsWeight(Unit unit) => unit is Unit.Gram or Unit.Kilogram or Unit.WeightOunce or Unit.Pound or Unit.Pinch;

    private static (string One, string Many) Words(Unit unit) => unit switch
    {
        Unit.Millilitre => ("ml", "ml"),
        Unit.Centilitre => ("cl", "cl"),
        Unit.Litre => ("l", "l"),
        Unit.FluidOunce => ("fl oz", "fl oz"),
        Unit.Teaspoon => ("tsp", "tsp"),
        Unit.Tablespoon => ("tbsp", "tbsp"),
        Unit.BarSpoon => ("bar spoon", "bar spoons"),
        Unit.Dash => ("dash", "dashes"),
        Unit.Drop => ("drop", "drops"),
        Unit.Mist => ("mist", "mists"),
        Unit.Cup => ("cup", "cups"),
        Unit.Gram => ("g", "g"),
        Unit.Kilogram => ("kg", "kg"),
        Unit.WeightOunce => ("oz by weight", "oz by weight"),
        Unit.Pound => ("lb", "lb"),
        Unit.Part => ("part", "parts"),
        Unit.Piece => ("piece", "pieces"),
        Unit.Leaf => ("leaf", "leaves"),
        Unit.Sprig => ("sprig", "sprigs"),
        Unit.Slice => ("slice", "slices"),
        Unit.Wedge => ("wedge", "wedges"),
        Unit.Peel => ("peel", "peels"),
        Unit.Pinch => ("pinch", "pinches"),
        Unit.Cube => ("cube", "cubes"),
        Unit.Splash => ("splash", "splashes"),
        Unit.Float => ("float", "floats"),
        Unit.Top => ("top", "top"),
        Unit.Rinse => ("rinse", "rinses"),
        _ => ("", ""),
    };
}
