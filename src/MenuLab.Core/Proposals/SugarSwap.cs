using System.Globalization;
using MenuLab.Core.Pantry;
using MenuLab.Core.Preps;
using MenuLab.Core.Solutions;

namespace MenuLab.Core.Proposals;

/// <summary>What stays the same when a sugar is swapped for another.</summary>
public enum SwapBy
{
    /// <summary>Sweetness, as grams of sucrose.</summary>
    Sweetness,
    /// <summary>The index of body of the whole.</summary>
    Body,
}

/// <summary>Swaps a sugar for another.</summary>
public static class SugarSwap
{
    /// <summary>Field of a swap that cannot be made.</summary>
    public const string To = "To";

    private const double ServedCelsius = 5;

    /// <summary>How much of another sugar stands in for one.</summary>
    /// <param name="rest">Everything else in the prep or drink.</param>
    /// <param name="from">The sugar or syrup that goes.</param>
    /// <param name="to">What comes in its place.</param>
    /// <param name="by">What is to stay the same.</param>
    /// <returns>The rest with the new sugar, or a problem with the field <see cref="To"/>.</returns>
    /// <remarks>
    /// Source: factors of <see cref="Sweetness"/> (spans are wide: fructose 1.14 to 1.80), or <see cref="Viscosity.BodyIndex"/> at 5 °C (our own proposal,
    /// ESTIMATE). Valid for: sugars and polyols; strong sweeteners are no sugar. Error: sweetness 5 to 25 %, body unknown.
    /// </remarks>
    public static Result<Adjustment> Equal(Portion rest, Portion from, Additive to, SwapBy by)
    {
        // At equal sweetness the rest stays as sweet as it is, known or not.
        var isKnown = by == SwapBy.Sweetness
            ? from.Composition.Knows(Composition.TotalSugarKnown) && to.Composition.Knows(Composition.TotalSugarKnown)
            : rest.Composition.Knows(Composition.SolidsKnown) && from.Composition.Knows(Composition.SolidsKnown) && to.Composition.Knows(Composition.SolidsKnown);
        if (!isKnown)
        {
            return Amounts.Refused(To, by == SwapBy.Sweetness ? "Nobody knows the sugar of one of the two; read it first." : "Nobody knows what is dissolved in a part of it; read the Brix first.");
        }
        var before = new double[Components.Count];
        Pot.Add(before, rest.Grams, rest.Composition.PerGram);
        Pot.Add(before, from.Grams, from.Composition.PerGram);
        var wanted = Measure(before, by);
        var grams = Crossing.Of(
            x =>
            {
                var after = new double[Components.Count];
                Pot.Add(after, rest.Grams, rest.Composition.PerGram);
                Pot.Add(after, x, to.Composition.PerGram);
                return Measure(after, by) - wanted;
            },
            0, 100 * Math.Max(from.Grams, 1));
        return double.IsNaN(grams)
            ? Amounts.Refused(To, by == SwapBy.Sweetness ? "This does not sweeten enough to stand in; choose a sweeter one." : "This does not give enough body to stand in; choose another.")
            : Result.Ok(new Adjustment("dissolve", rest, [to.Of(grams)], Notes(from, to, grams, by)));
    }

    private static List<string> Notes(Portion from, Additive to, double grams, SwapBy by)
    {
        var other = by == SwapBy.Sweetness
            ? PrepFigures.Form(to.Composition.PerGram, LinearForm.SolubleSolidsGrams) * grams / (PrepFigures.Form(from.Composition.PerGram, LinearForm.SolubleSolidsGrams) * from.Grams)
            : PrepFigures.Form(to.Composition.PerGram, LinearForm.SweetnessGrams) * grams / (PrepFigures.Form(from.Composition.PerGram, LinearForm.SweetnessGrams) * from.Grams);
        return double.IsFinite(other)
            ? [string.Create(CultureInfo.InvariantCulture, $"{(by == SwapBy.Sweetness ? "Its solids, and with them the body, are" : "Its sweetness is")} {100 * other:0} % of what it replaces.")]
            : [];
    }

    private static double Measure(double[] liquid, SwapBy by)
    {
        if (by == SwapBy.Sweetness)
        {
            return PrepFigures.Form(liquid, LinearForm.SweetnessGrams);
        }
        var state = new Liquid(liquid);
        var millilitres = Density.Millilitres(state);
        // Solids of the index: dissolved and suspended, without acetic acid.
        var solids = PrepFigures.Form(liquid, LinearForm.SolubleSolidsGrams) + state[Component.Protein] + state[Component.Fat] + state[Component.Fibre];
        return Viscosity.BodyIndex(Viscosity.MilliPascalSeconds(state, ServedCelsius), ServedCelsius, 100 * solids / millilitres, 100 * state[Component.Fat] / millilitres);
    }
}
