using System.Globalization;
using MenuLab.Core.Pantry;
using MenuLab.Core.Preps;
using MenuLab.Core.Quantities;

namespace MenuLab.Core.Proposals;

/// <summary>How a figure of a rescued batch stands beside the good one.</summary>
/// <param name="Figure">Which.</param>
/// <param name="Good">The good batch.</param>
/// <param name="Rescued">The rescued batch.</param>
public sealed record RescuedFigure(PrepFigure Figure, Estimate Good, Estimate Rescued);

/// <summary>A rescue: what to add, by volume, and what is left different.</summary>
/// <param name="Adjustment">The amounts.</param>
/// <param name="PartsByVolume">mL to add per mL of the bad batch: the 0.6 of "1 : 0.6".</param>
/// <param name="Sentence">One sentence: "Dilute 1 : 0.6 (by volume) with ... to match the good one."</param>
/// <param name="Beside">Every figure that both know, beside the good one.</param>
public sealed record Rescue(Adjustment Adjustment, double PartsByVolume, string Sentence, IReadOnlyList<RescuedFigure> Beside);

/// <summary>Saves a batch that was reduced too far or steeped too long.</summary>
public static class BatchRescue
{
    /// <summary>Field of a rescue that cannot be made.</summary>
    public const string Field = "Figure";

    /// <summary>How far to dilute a batch so that one figure matches a good one.</summary>
    /// <param name="bad">The batch that went wrong, so many g of it.</param>
    /// <param name="good">A good one.</param>
    /// <param name="figure">What is to match: Brix for one reduced too far, tannin for one steeped too long.</param>
    /// <param name="with">What it is diluted with: water, or the same prep made without what is too much.</param>
    /// <param name="withName">Name of that, for the sentence.</param>
    /// <returns>The rescue, or a problem with the field <see cref="Field"/>.</returns>
    /// <remarks>
    /// Source: mass balance on one figure; the others fall along and are told beside the good batch. Valid for: what is too strong. A burnt taste does not
    /// dilute away. Error: of both batches.
    /// </remarks>
    public static Result<Rescue> Match(Portion bad, Composition good, PrepFigure figure, Additive with, string withName)
    {
        var wanted = PrepFigures.Of(good, figure).Value;
        var now = PrepFigures.Of(bad.Composition, figure).Value;
        if (double.IsNaN(wanted) || double.IsNaN(now))
        {
            return Result.Invalid<Rescue>(new Problem(Field, "Nobody knows this figure of one of the two batches; read it, or choose another."));
        }
        if (!with.Composition.Knows(PrepFigures.Needs(figure)))
        {
            return Result.Invalid<Rescue>(new Problem(Field, $"Nobody knows this figure of {withName}; choose another figure, or something else to add."));
        }
        var perGram = Crossing.Of(x => Amounts.With(bad.Composition, with.Composition, x, figure) - wanted, 0, 100);
        if (double.IsNaN(perGram))
        {
            return Result.Invalid<Rescue>(new Problem(
                Field,
                string.Create(CultureInfo.InvariantCulture, $"It stands at {now:0.##}, the good one at {wanted:0.##} {PrepFigures.Unit(figure)}; {withName} does not bring it there. Choose another figure, or something else to add.")));
        }
        var adjustment = new Adjustment("dilute", bad, [with.Of(perGram * bad.Grams)], ["Dilution does not take a burnt taste away. Taste it beside the good one."]);
        var parts = adjustment.Parts[1].Millilitres / bad.Millilitres;
        var beside = Enum.GetValues<PrepFigure>()
            .Select(f => new RescuedFigure(f, PrepFigures.Of(good, f), PrepFigures.Of(adjustment.Outcome, f)))
            .Where(f => !double.IsNaN(f.Good.Value) && !double.IsNaN(f.Rescued.Value));
        return Result.Ok(new Rescue(
            adjustment, parts, string.Create(CultureInfo.InvariantCulture, $"Dilute 1 : {parts:0.0#} (by volume) with {withName} to match the good one."), [.. beside]));
    }
}
