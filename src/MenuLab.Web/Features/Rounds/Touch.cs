using MenuLab.Core.Balance;
using MenuLab.Core.Drafts;
using MenuLab.Core.Drafts.Rounds;
using MenuLab.Core.House;
using MenuLab.Core.Pantry;

namespace MenuLab.Web.Features.Rounds;

/// <summary>What a touch more or less would be in amounts: one line, one step on the pour grid.</summary>
/// <param name="Axis">What is wanted more or less of.</param>
/// <param name="Wish">More or less.</param>
/// <param name="Line">The line that is changed.</param>
/// <param name="Amount">Its new amount for a whole drink, in its unit.</param>
/// <param name="Says">In words: "Verjus 15 → 17.5 mL".</param>
/// <param name="Why">Why this line: "it brings 54 % of the acid".</param>
public sealed record Touch(TasteAxis Axis, Wish Wish, LineId Line, double Amount, string Says, string Why);

/// <summary>
/// Finds the line that a touch is made with: for sweet and sour the one that brings most of the sugar or the acid, for bitter,
/// body and bite the largest that is there for it. Finish, cold and watery come from no one line.
/// </summary>
/// <param name="stock">What the house has.</param>
/// <param name="steps">How it pours.</param>
/// <param name="format">How it writes.</param>
/// <param name="roles">What an ingredient is there for.</param>
public sealed class Touches(PourStock stock, PourStep steps, HouseFormat format, ILookup<IngredientId, string> roles)
{
    private static readonly (TasteAxis Axis, Metric Metric, string Word)[] ByShare = [(TasteAxis.Sweet, Metric.Sugar, "sugar"), (TasteAxis.Sour, Metric.Acid, "acid")];

    private static readonly TasteAxis[] ByRole = [TasteAxis.Bitter, TasteAxis.Body, TasteAxis.Bite];

    /// <summary>The touches of a pour.</summary>
    /// <param name="round">The round.</param>
    /// <param name="letter">The pour.</param>
    /// <param name="figures">Its figures, with shares.</param>
    public IEnumerable<Touch> Of(Round round, PourLetter letter, PourFigures figures)
    {
        var whole = GlassLines.Whole(round, letter, stock.Understand);
        var counted = Enumerable.Range(0, whole.Count).Where(i => whole[i].Ingredient is not null).ToList();
        var weighed = Weigher.Of([.. counted.Select(i => whole[i].ToDraftLine()!)], round.Build, stock.Pantry, stock.Catalogue, stock.Measures);
        var inTheDrink = Enumerable.Range(0, weighed.Lines.Length)
            .Select(i => (Weighed: i, Line: round.Lines[counted[weighed.From[i]]], Content: whole[counted[weighed.From[i]]]))
            .Where(l => l.Content.Place == Place.In && round.Specified(letter, l.Line) is > 0).ToList();
        foreach (var (axis, metric, word) in ByShare)
        {
            var (share, line) = inTheDrink.Select(l => (Share: figures.Whole.Share(l.Weighed, metric), l.Line)).Where(l => l.Share > 0).OrderByDescending(l => l.Share).FirstOrDefault();
            foreach (var touch in Both(round, letter, axis, line, $"it brings {format.Percent(100 * share)} of the {word}"))
            {
                yield return touch;
            }
        }
        foreach (var axis in ByRole)
        {
            var role = axis.ToString().ToLowerInvariant();
            var line = inTheDrink.Where(l => roles[l.Content.Ingredient!.Value].Contains(role)).OrderByDescending(l => l.Content.Understood.Grams ?? 0).Select(l => l.Line).FirstOrDefault();
            foreach (var touch in Both(round, letter, axis, line, $"it is there for {role}"))
            {
                yield return touch;
            }
        }
    }

    private IEnumerable<Touch> Both(Round round, PourLetter letter, TasteAxis axis, PlacedLine? line, string why)
    {
        if (line is null || round.Specified(letter, line) is not { } amount)
        {
            yield break;
        }
        var unit = line.Content.Amount.Unit;
        foreach (var (wish, next) in new[] { (Wish.More, steps.More(amount, unit)), (Wish.Less, steps.Less(amount, unit)) })
        {
            if (next is { } to && to != amount)
            {
                var name = line.Content.Ingredient is { } id ? stock.Pantry.Find(id)!.Name : line.Content.Text;
                yield return new Touch(axis, wish, line.Line, to, $"{name} {AmountWords.Bare(amount, unit, format)} → {RoundWords.WithUnit(to, unit, format)}", why);
            }
        }
    }
}
