using System.Globalization;
using MenuLab.Core.Preps;
using MenuLab.Core.Solutions;

namespace MenuLab.Core.Proposals;

/// <summary>Brings a syrup to a Brix.</summary>
public static class SyrupBrix
{
    /// <summary>Field of a target that cannot be reached.</summary>
    public const string Target = "TargetBrix";

    /// <summary>How much sugar or water brings a syrup to a Brix.</summary>
    /// <param name="syrup">The syrup, so many g of it.</param>
    /// <param name="targetBrix">What the refractometer is to show at 20 °C, 0 to 85.</param>
    /// <param name="sugar">What is dissolved where it is too thin.</param>
    /// <param name="water">What is added where it is too strong.</param>
    /// <returns>The amounts, or a problem with the field <see cref="Target"/>.</returns>
    /// <remarks>
    /// Source: mass balance on the reading of <see cref="Refractometer.ExpectedReading"/>; in a pure syrup x = m (T - B)/(100 - T) of sugar or
    /// m (B/T - 1) of water. Valid for: syrups and cordials below 1 % alcohol by mass. Error: of the syrup's own Brix, 0.3 where it was read.
    /// </remarks>
    public static Result<Adjustment> Reach(Portion syrup, double targetBrix, Additive sugar, Additive water)
    {
        if (!(targetBrix > 0 && targetBrix <= SucroseDensity.HighestBrix))
        {
            return Amounts.Refused(Target, Say($"A syrup of {targetBrix} Brix is not possible; give a target above 0 and at most {SucroseDensity.HighestBrix:0}."));
        }
        if (!syrup.Composition.Knows(PrepFigures.Needs(PrepFigure.Brix)))
        {
            return Amounts.Refused(Target, "Nobody knows what is dissolved in this syrup; read its Brix first.");
        }
        var now = PrepFigures.Value(syrup.Composition.PerGram, PrepFigure.Brix);
        if (double.IsNaN(now))
        {
            return Amounts.Refused(Target, "It holds more than 1 % alcohol by mass, where a refractometer reads wrong; adjust by recipe instead.");
        }
        var added = targetBrix > now ? sugar : water;
        if (!added.Composition.Knows(PrepFigures.Needs(PrepFigure.Brix)))
        {
            return Amounts.Refused(Target, "Nobody knows what is dissolved in what is added; choose something that is known.");
        }
        var perGram = Crossing.Of(x => Amounts.With(syrup.Composition, added.Composition, x, PrepFigure.Brix) - targetBrix, 0, 1000);
        if (double.IsNaN(perGram))
        {
            return Amounts.Refused(Target, Say($"What is added does not bring it to {targetBrix:0.#} Brix; choose something {(targetBrix > now ? "sweeter" : "thinner")}."));
        }
        List<string> notes = [];
        var storage = SucroseDensity.SaturationBrix(4);
        if (targetBrix > storage)
        {
            notes.Add(Say($"Above {storage:0.0} Brix a pure syrup may crystallise in the refrigerator."));
        }
        return Result.Ok(new Adjustment(targetBrix > now ? "dissolve" : "dilute", syrup, [added.Of(perGram * syrup.Grams)], notes));
    }

    private static string Say(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
