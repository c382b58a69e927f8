namespace MenuLab.Core.Drafts;

/// <summary>Units as they are printed behind a figure.</summary>
public static class UnitLabel
{
    /// <summary>The unit: "mL", "dash" or "dashes"; empty for a top and where there is none.</summary>
    /// <param name="unit">Which.</param>
    /// <param name="one">In the singular.</param>
    public static string Of(Unit unit, bool one) => unit switch
    {
        Unit.Millilitre => "mL",
        Unit.Centilitre => "cL",
        Unit.Litre => "L",
        Unit.FluidOunce => "fl oz",
        Unit.Gram => "g",
        Unit.Kilogram => "kg",
        Unit.WeightOunce => "oz wt",
        Unit.Pound => "lb",
        Unit.Teaspoon => "tsp",
        Unit.Tablespoon => "tbsp",
        Unit.BarSpoon => one ? "bar spoon" : "bar spoons",
        Unit.Dash => one ? "dash" : "dashes",
        Unit.Drop => one ? "drop" : "drops",
        Unit.Mist => one ? "spray" : "sprays",
        Unit.Cup => one ? "cup" : "cups",
        Unit.Piece => one ? "piece" : "pieces",
        Unit.Leaf => one ? "leaf" : "leaves",
        Unit.Sprig => one ? "sprig" : "sprigs",
        Unit.Slice => one ? "slice" : "slices",
        Unit.Wedge => one ? "wedge" : "wedges",
        Unit.Peel => one ? "peel" : "peels",
        Unit.Pinch => one ? "pinch" : "pinches",
        Unit.Cube => one ? "cube" : "cubes",
        Unit.Splash => one ? "splash" : "splashes",
        Unit.Float => "float",
        Unit.Rinse => "rinse",
        Unit.Part => one ? "part" : "parts",
        _ => "",
    };
}
