using System.Globalization;
using MenuLab.Core.Preps;
using MenuLab.Core.Solutions;

namespace MenuLab.Core.Proposals;

/// <summary>Blends two batches to a target.</summary>
public static class BatchBlend
{
    /// <summary>Field of a target that cannot be reached.</summary>
    public const string Target = "Target";

    /// <summary>In which shares two batches reach a target.</summary>
    /// <param name="one">The first batch.</param>
    /// <param name="other">The second batch.</param>
    /// <param name="grams">Blend wanted, g, above 0.</param>
    /// <param name="figure">Figure to reach.</param>
    /// <param name="target">Target in the figure's unit.</param>
    /// <returns>The amounts of both, or a problem with the field <see cref="Target"/>.</returns>
    /// <remarks>Source: mass balance; the figure is that of the mixed state, never an average of the two. Valid for: targets between the two. Error: of the two.</remarks>
    public static Result<Adjustment> Reach(Additive one, Additive other, double grams, PrepFigure figure, double target)
    {
        if (!(grams > 0 && double.IsFinite(grams)))
        {
            return Amounts.Refused("Grams", "Say how much is wanted, above 0 g.");
        }
        if (!one.Composition.Knows(PrepFigures.Needs(figure)) || !other.Composition.Knows(PrepFigures.Needs(figure)))
        {
            return Amounts.Refused(Target, "Nobody knows this figure of one of the two batches; read it, or choose another.");
        }
        var share = Crossing.Of(s => OfShare(s) - target, 0, 1);
        if (double.IsNaN(share))
        {
            return Amounts.Refused(
                Target, string.Create(CultureInfo.InvariantCulture, $"{target} does not lie between the two batches ({OfShare(0):0.00} and {OfShare(1):0.00} {PrepFigures.Unit(figure)}); choose a target between them, or another batch."));
        }
        return Result.Ok(new Adjustment("combine", one.Of(grams * (1 - share)), [other.Of(grams * share)], []));

        double OfShare(double s)
        {
            Span<double> mixed = stackalloc double[Components.Count];
            for (var i = 0; i < mixed.Length; i++)
            {
                mixed[i] = (1 - s) * one.Composition.PerGram[i] + s * other.Composition.PerGram[i];
            }
            return PrepFigures.Value(mixed, figure);
        }
    }
}
