using System.Globalization;
using MenuLab.Core.Preps;

namespace MenuLab.Core.Proposals;

/// <summary>Dilutes a vinegar to a strength.</summary>
public static class VinegarStrength
{
    /// <summary>Field of a target that cannot be reached.</summary>
    public const string Target = "TargetStrength";

    /// <summary>How much water brings a vinegar to a strength.</summary>
    /// <param name="vinegar">The vinegar, so many g of it.</param>
    /// <param name="targetGramsPer100Millilitres">Acetic acid wanted, g/100 mL, as vinegar is labelled.</param>
    /// <param name="water">What is added.</param>
    /// <returns>The amounts, or a problem with the field <see cref="Target"/>.</returns>
    /// <remarks>Source: mass balance over the volume of the mixture. Valid for: table and pickling vinegars. Error: of the vinegar's strength, 5 % by kind.</remarks>
    public static Result<Adjustment> Reach(Portion vinegar, double targetGramsPer100Millilitres, Additive water)
    {
        if (!vinegar.Composition.Knows(PrepFigures.Needs(PrepFigure.Acetic)) || !water.Composition.Knows(PrepFigures.Needs(PrepFigure.Acetic)))
        {
            return Amounts.Refused(Target, "Nobody knows the acetic acid of one of the two; enter the strength on its label, or titrate it first.");
        }
        var now = PrepFigures.Value(vinegar.Composition.PerGram, PrepFigure.Acetic);
        if (!(targetGramsPer100Millilitres > 0) || targetGramsPer100Millilitres > now)
        {
            return Amounts.Refused(
                Target,
                string.Create(CultureInfo.InvariantCulture, $"It has {now:0.00} g of acetic acid per 100 mL; water brings it to anything above 0 and below that, not to {targetGramsPer100Millilitres:0.##}."));
        }
        var perGram = Crossing.Of(x => Amounts.With(vinegar.Composition, water.Composition, x, PrepFigure.Acetic) - targetGramsPer100Millilitres, 0, 10_000);
        return double.IsNaN(perGram)
            ? Amounts.Refused(Target, "What is added does not bring it there; choose water.")
            : Result.Ok(new Adjustment(
                "dilute", vinegar, [water.Of(perGram * vinegar.Grams)],
                ["A diluted vinegar keeps less well and may no longer be sold as vinegar; local codes decide."]));
    }
}
