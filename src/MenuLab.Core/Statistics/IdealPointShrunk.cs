using MathNet.Numerics.LinearAlgebra;

namespace MenuLab.Core.Statistics;

/// <summary>What is believed about a parabola before the tasting: normal, independent.</summary>
/// <param name="SlopeMean">Slope at the centre, points per unit.</param>
/// <param name="SlopeSpread">Its standard deviation, above zero.</param>
/// <param name="BendMean">Bend, points per unit squared.</param>
/// <param name="BendSpread">Its standard deviation, above zero.</param>
public readonly record struct ParabolaBelief(double SlopeMean, double SlopeSpread, double BendMean, double BendSpread)
{
    /// <summary>For sugar in g/100 mL; other metrics are rescaled so that one practical step is worth half a point. Our choice.</summary>
    public static ParabolaBelief Sugar => new(0, 0.5, -0.1, 0.1);
}

/// <summary>A parabola after belief and answers were put together.</summary>
/// <param name="Slope">Mean of the slope.</param>
/// <param name="Bend">Mean of the bend.</param>
/// <param name="SlopeSpread">Standard deviation of the slope.</param>
/// <param name="BendSpread">Standard deviation of the bend.</param>
/// <param name="Covariance">Covariance of both.</param>
/// <param name="Hill">Chance that there is an optimum at all, 0 to 1; below 0.90 is "no clear optimum".</param>
/// <param name="Optimum">Middle value and 95 % limits of the optimum, given that there is one; null where that is unlikely.</param>
public sealed record ShrunkParabola(double Slope, double Bend, double SlopeSpread, double BendSpread, double Covariance, double Hill, Ranged? Optimum)
{
    /// <summary>Below this chance of a hill no optimum is shown. Our choice.</summary>
    public const double ClearFrom = 0.90;

    internal double Centre { get; init; }

    /// <summary>The amount below which the optimum lies with a chance.</summary>
    /// <param name="chance">The chance, above 0 and below 1.</param>
    /// <returns>The amount, in its unit.</returns>
    /// <remarks>Source: docs/statistics.md, section 8.2: P(slope + 2 bend t at most 0, bend below 0) over P(bend below 0), by a 64-point rule. Valid for: a chance of a hill above one half. Error: 1e-8.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A chance outside its range.</exception>
    /// <exception cref="InvalidOperationException">A hill is unlikelier than not.</exception>
    public double OptimumBelow(double chance)
    {
        BinomialTest.CheckShare(chance, nameof(chance));
        if (Hill <= 0.5)
        {
            throw new InvalidOperationException("There is hardly an optimum.");
        }
        var reach = 1.0;
        while (Below(reach) < chance || Below(-reach) > chance)
        {
            reach *= 2;
            if (reach > 1e9)
            {
                throw new InvalidOperationException("The optimum lies nowhere in particular.");
            }
        }
        return Centre + Roots.Between(t => Below(t) - chance, -reach, reach, accuracy: 1e-10);
    }

    // Given the bend the slope is normal, so the two-dimensional chance is an integral over the bend.
    private double Below(double t)
    {
        var rest = Math.Sqrt(Math.Max(0, SlopeSpread * SlopeSpread - Covariance * Covariance / (BendSpread * BendSpread)));
        var (low, high) = (Bend - 9 * BendSpread, Math.Min(0, Bend + 9 * BendSpread));
        var both = Quadrature.Integrate(bend =>
        {
            var slope = Slope + Covariance / (BendSpread * BendSpread) * (bend - Bend);
            return Distributions.NormalDensity((bend - Bend) / BendSpread) / BendSpread * Distributions.NormalLower((-2 * bend * t - slope) / rest);
        }, low, high, 6);
        return both / Hill;
    }
}

/// <summary>The optimum of a tiny panel, drawn towards what is believed beforehand.</summary>
public static class IdealPointShrunk
{
    /// <summary>Puts belief and answers together.</summary>
    /// <param name="answers">Likings, as for <see cref="IdealPoint.Of"/>.</param>
    /// <param name="belief">What is believed beforehand, in the unit of the amounts.</param>
    /// <param name="centre">The amount from which the slope is counted; null for the middle of what was tried.</param>
    /// <returns>The parabola with the chance of a hill and its optimum.</returns>
    /// <remarks>
    /// Source: docs/statistics.md, section 8.2: normal belief and normal answers, the residual variance put in as estimated; no drawing of random numbers. Valid
    /// for: tasters' levels taken out. Error: 1e-8; the limits leave out that the variance itself is estimated.
    /// </remarks>
    /// <exception cref="ArgumentException">As for <see cref="IdealPoint.Of"/>.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A belief without spread.</exception>
    public static ShrunkParabola Of(IReadOnlyList<LikedAmount> answers, ParabolaBelief belief, double? centre = null)
    {
        if (!(belief.SlopeSpread > 0 && belief.BendSpread > 0))
        {
            throw new ArgumentOutOfRangeException(nameof(belief), belief, "A belief needs spreads above zero.");
        }
        var fit = IdealPoint.Of(answers, centre);
        if (fit.MeanSquare == 0)
        {
            throw new ArgumentException("The answers leave no error.", nameof(answers));
        }
        var (x, y) = WithinTasters(answers, fit.Centre);
        var precision = x.TransposeThisAndMultiply(x) / fit.MeanSquare;
        precision[0, 0] += 1 / (belief.SlopeSpread * belief.SlopeSpread);
        precision[1, 1] += 1 / (belief.BendSpread * belief.BendSpread);
        var pull = x.TransposeThisAndMultiply(y) / fit.MeanSquare;
        pull[0] += belief.SlopeMean / (belief.SlopeSpread * belief.SlopeSpread);
        pull[1] += belief.BendMean / (belief.BendSpread * belief.BendSpread);
        var covariance = precision.Inverse();
        var mean = covariance * pull;
        var bendSpread = Math.Sqrt(covariance[1, 1]);
        var shrunk = new ShrunkParabola(mean[0], mean[1], Math.Sqrt(covariance[0, 0]), bendSpread, covariance[0, 1], Distributions.NormalLower(-mean[1] / bendSpread), null)
        {
            Centre = fit.Centre,
        };
        return shrunk.Hill < ShrunkParabola.ClearFrom ? shrunk
            : shrunk with { Optimum = new Ranged(shrunk.OptimumBelow(0.5), shrunk.OptimumBelow(0.025), shrunk.OptimumBelow(0.975)) };
    }

    /// <summary>Ridge fits of the parabola, for screening; a large penalty pulls the optimum to a wrong place, so limits come from <see cref="Of"/>.</summary>
    /// <param name="answers">Likings, as for <see cref="IdealPoint.Of"/>.</param>
    /// <param name="penalty">Penalty on the standardised coefficients, zero or more.</param>
    /// <param name="centre">The amount from which the slope is counted; null for the middle of what was tried.</param>
    /// <returns>Slope, bend, the optimum (null where there is no hill), and the sum of squared errors of answers foretold without themselves; the best penalty has the least.</returns>
    /// <remarks>Source: docs/statistics.md, section 8.2: columns standardised with n - 1, tasters' levels taken out first. Valid for: choosing among 0, 1, 5 and 20. Error: rounding.</remarks>
    /// <exception cref="ArgumentException">As for <see cref="IdealPoint.Of"/>.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A negative penalty.</exception>
    public static (double Slope, double Bend, double? Optimum, double Press) Ridge(IReadOnlyList<LikedAmount> answers, double penalty, double? centre = null)
    {
        Guard.FiniteNonNegative(penalty);
        var middle = IdealPoint.Of(answers, centre).Centre;
        var (x, y) = WithinTasters(answers, middle);
        var spreads = x.EnumerateColumns().Select(column => column.L2Norm() / Math.Sqrt(x.RowCount - 1)).ToArray();
        var z = Matrix<double>.Build.Dense(x.RowCount, 2, (r, c) => x[r, c] / spreads[c]);
        var inverse = (z.TransposeThisAndMultiply(z) + penalty * Matrix<double>.Build.DenseIdentity(2)).Inverse();
        var standard = inverse * z.TransposeThisAndMultiply(y);
        var residuals = y - z * standard;
        var press = 0.0;
        for (var i = 0; i < y.Count; i++)
        {
            var row = z.Row(i);
            var error = residuals[i] / (1 - row * inverse * row);
            press += error * error;
        }
        var (slope, bend) = (standard[0] / spreads[0], standard[1] / spreads[1]);
        return (slope, bend, bend < 0 ? middle - slope / (2 * bend) : null, press);
    }

    // Slope and bend columns and likings, each less its taster's mean.
    private static (Matrix<double> X, Vector<double> Y) WithinTasters(IReadOnlyList<LikedAmount> answers, double centre)
    {
        var means = answers.GroupBy(a => a.Taster).ToDictionary(own => own.Key, own =>
            (One: own.Average(a => a.Amount - centre), Two: own.Average(a => (a.Amount - centre) * (a.Amount - centre)), Liking: own.Average(a => a.Liking)));
        var x = Matrix<double>.Build.Dense(answers.Count, 2, (r, c) =>
        {
            var from = answers[r].Amount - centre;
            return c == 0 ? from - means[answers[r].Taster].One : from * from - means[answers[r].Taster].Two;
        });
        return (x, Vector<double>.Build.Dense(answers.Count, r => answers[r].Liking - means[answers[r].Taster].Liking));
    }
}
