using MenuLab.Core.Drafts.Reading;
using MenuLab.Core.House;
using MenuLab.Core.Pantry;

namespace MenuLab.Core.Drafts;

/// <summary>What a line of a working copy comes to after one of its fields was changed, by the same rules as a typed line.</summary>
public static class Understanding
{
    /// <summary>Gives a content its millilitres, grams, uncertainty and assumptions.</summary>
    /// <param name="content">The content; one without an ingredient, or with one that the pantry lacks, is understood as nothing.</param>
    /// <param name="pantry">Where its ingredient is found.</param>
    /// <param name="measures">The measures in use.</param>
    /// <returns>
    /// The content with what it was understood as. What only the words of a typed line said ("scant", "about", "juice of") is
    /// not among its fields: a line that is typed again brings that along itself.
    /// </returns>
    public static LineContent Of(LineContent content, PantryList pantry, MeasuresSet measures)
    {
        if (content.Ingredient is not { } id || pantry.Find(id) is not { } ingredient)
        {
            return content with { Understood = Understood.Nothing };
        }
        var (value, low, high, unit) = (content.Amount.Value ?? double.NaN, content.Amount.Low, content.Amount.High, content.Amount.Unit);
        var line = LineMaker.Make(
            ingredient,
            new LineSpec
            {
                Text = content.Text, Amount = value, Low = low ?? double.NaN, High = high ?? double.NaN, Unit = unit, Place = content.Place, Joins = content.Joins,
                Treatment = content.Treatment, StartCelsius = content.StartCelsius ?? double.NaN,
            },
            measures);
        return content with { Understood = LineContent.Of(line).Understood };
    }
}
