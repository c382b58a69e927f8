using System.Globalization;
using MenuLab.Core.Pantry;
using MenuLab.Core.Preps;
using MenuLab.Core.Solutions;

namespace MenuLab.Core.Proposals;

/// <summary>Acids by mass share.</summary>
/// <param name="Name">Name as shown.</param>
/// <param name="Shares">Acid and share of the powder by mass; taken relative to their sum.</param>
/// <param name="Source">Where it comes from.</param>
public sealed record AcidMix(string Name, IReadOnlyList<(Component Acid, double Share)> Shares, string Source)
{
    private const string Practice = "common practice, no source";

    /// <summary>Mixes that bars start from; any other may be made.</summary>
    public static IReadOnlyList<AcidMix> Usual { get; } =
    [
        new("Like lemon", [(Component.Citric, 1)], Practice),
        new("Like lime", [(Component.Citric, 2), (Component.Malic, 1)], Practice),
        new("Like grape", [(Component.Tartaric, 1), (Component.Malic, 1)], Practice),
        new("Like orchard fruit", [(Component.Malic, 1)], Practice),
    ];
}

/// <summary>Brings a juice to an acidity with powders.</summary>
public static class JuiceAcidity
{
    /// <summary>Field of a target that cannot be reached.</summary>
    public const string Target = "TargetAcidity";

    /// <summary>How much acid powder brings a juice to an acidity.</summary>
    /// <param name="juice">The juice, so many g of it.</param>
    /// <param name="targetGramsPer100Millilitres">Titratable acidity wanted, as anhydrous citric acid, g/100 mL of what comes out.</param>
    /// <param name="powders">Powders and their shares by mass, relative to their sum.</param>
    /// <returns>The amounts, or a problem with the field <see cref="Target"/>.</returns>
    /// <remarks>
    /// Source: charge balance (<see cref="LinearForm.AcidEquivalents"/>) over the volume of the mixture; pH before and after by
    /// <see cref="AcidBase.Solve"/>. Valid for: powders that dissolve whole. Error: of the juice's acid, 8 to 22 % from book, 2 % titrated.
    /// </remarks>
    public static Result<Adjustment> Reach(Portion juice, double targetGramsPer100Millilitres, IReadOnlyList<(Additive Powder, double Share)> powders)
    {
        if (!(targetGramsPer100Millilitres > 0 && targetGramsPer100Millilitres <= 60))
        {
            return Amounts.Refused(Target, Say($"An acidity of {targetGramsPer100Millilitres} g/100 mL is not possible; give a target above 0 and at most 60."));
        }
        var shares = powders.Sum(p => p.Share);
        if (powders.Count == 0 || powders.Any(p => !(p.Share >= 0)) || !(shares > 0))
        {
            return Amounts.Refused("Powders", "Name at least one acid, each with a share of 0 or more.");
        }
        if (!juice.Composition.Knows(Composition.TotalAcidKnown))
        {
            return Amounts.Refused(Target, "Nobody knows the acid of this juice; titrate it first.");
        }
        if (!powders.All(p => p.Powder.Composition.Knows(Composition.TotalAcidKnown)))
        {
            return Amounts.Refused("Powders", "Nobody knows the acid of one of the powders; choose another.");
        }
        var now = PrepFigures.Value(juice.Composition.PerGram, PrepFigure.Acid);
        if (targetGramsPer100Millilitres < now)
        {
            return Amounts.Refused(Target, Say($"It has {now:0.00} g/100 mL already, more than the target; blend it with something less sour instead."));
        }
        var mix = Mixture.Of([.. powders.Select(p => p.Powder.Of(p.Share / shares))]);
        var perGram = Crossing.Of(x => Amounts.With(juice.Composition, mix, x, PrepFigure.Acid) - targetGramsPer100Millilitres, 0, 10);
        return double.IsNaN(perGram)
            ? Amounts.Refused(Target, Say($"These powders do not bring it to {targetGramsPer100Millilitres:0.##} g/100 mL; choose stronger ones."))
            : Result.Ok(new Adjustment(
                "acidify", juice, [.. powders.Select(p => p.Powder.Of(perGram * juice.Grams * p.Share / shares))],
                ["Equal acidity is not equal sourness: acids taste differently. Taste it."]));
    }

    private static string Say(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
