using MenuLab.Core.Drafts;
using MenuLab.Core.Pantry;
using MenuLab.Web.Features.Bench;

namespace MenuLab.Web.Features.Drafts;

/// <summary>What a line was understood as, in one phrase: "45 mL Apple juice, clear, on top".</summary>
public static class LineAsRead
{
    /// <summary>The phrase; "kept as typed" for a line without an ingredient.</summary>
    public static string Of(LineContent line, PantryList pantry, LineWords words)
    {
        if (line.Ingredient is not { } id || pantry.Find(id) is not { } ingredient)
        {
            return "kept as typed";
        }
        var treatment = line.Treatment.Length > 0 ? $" ({line.Treatment})" : "";
        var where = line.Place != Place.In ? ", " + LineWords.Of(line.Place) : line.Joins != Joins.Mixed && line.Amount.Unit != Unit.Top ? ", " + LineWords.Of(line.Joins) : "";
        return $"{Amount(line, words)} {ingredient.Name}{treatment}{where}".TrimStart();
    }

    private static string Amount(LineContent line, LineWords words) => line switch
    {
        { Amount.Unit: Unit.Top } => "top to the wash line with",
        { Amount: { Unit: Unit.Piece or Unit.Leaf or Unit.Sprig or Unit.Slice or Unit.Wedge or Unit.Peel or Unit.Cube, Value: var pieces } } =>
            pieces is { } count ? $"{words.Format.Amount(count)} {LineWords.Word(line.Amount.Unit, count)}" : LineWords.Word(line.Amount.Unit, 1),
        { Amount.Unit: Unit.Gram or Unit.Kilogram or Unit.WeightOunce or Unit.Pound or Unit.Pinch, Understood.Grams: { } grams } => words.Format.Amount(grams) + " g",
        { Understood.Millilitres: { } millilitres } => words.First == Unit.FluidOunce ? words.Ounces(millilitres) + " fl oz" : words.Format.Amount(millilitres) + " mL",
        { Understood.Grams: { } grams } => words.Format.Amount(grams) + " g",
        _ => "",
    };
}
