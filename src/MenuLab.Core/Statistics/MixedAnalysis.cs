using MathNet.Numerics.LinearAlgebra;

namespace MenuLab.Core.Statistics;

/// <summary>Scores with gaps, tasters as a chance selection.</summary>
/// <param name="Samples">Means of the samples and the test of their differences.</param>
/// <param name="TasterVariance">Variance between tasters' levels, zero or more, points squared.</param>
/// <param name="ErrorVariance">Variance of what is left, points squared.</param>
public sealed record MixedResult(SampleMeans Samples, double TasterVariance, double ErrorVariance);

/// <summary>The mixed analysis of scores with gaps. <see cref="GappedAnalysis"/> is the plain choice; this one also uses what tasters' levels tell.</summary>
public static class MixedAnalysis
{
    private const double LowestLog = -12;
    private const double HighestLog = 8;

    /// <summary>Fits sample means with a chance level for each taster.</summary>
    /// <param name="scores">One score a taster and sample; both counted from 0 without gaps.</param>
    /// <returns>Means, test and variances; null where the scores leave no error or nothing but tasters' levels varies.</returns>
    /// <remarks>
    /// Source: docs/statistics.md, section 2.4c: restricted maximum likelihood over the ratio of both variances by golden section (one hump), degrees of
    /// freedom of Satterthwaite from the curvature there, several contrasts as in Fai and Cornelius 1996 (MEMORY). Where tasters' levels do not vary, plain
    /// degrees of freedom. Valid for: normal levels and errors. Error: 1e-6 in variances, 1e-4 in degrees of freedom.
    /// </remarks>
    /// <exception cref="ArgumentException">No scores, gaps in the numbering, a cell twice, or a score that is not finite.</exception>
    public static MixedResult? Of(IReadOnlyList<Score> scores)
    {
        var (_, samples) = ScoreTables.Check(scores);
        var table = new Likelihood(scores, samples);
        if (scores.Count <= samples || table.Fit(1).Residual <= 1e-20 * scores.Sum(score => score.Value * score.Value))
        {
            return null;
        }
        var log = Highest(x => table.Profile(Math.Exp(x)));
        var ratio = table.Profile(0) >= table.Profile(Math.Exp(log)) ? 0 : Math.Exp(log);
        var fit = table.Fit(ratio);
        var error = fit.Residual / (scores.Count - samples);
        var covariance = error * fit.Information.Inverse();

        var errors = new double[samples, samples];
        for (var a = 0; a < samples; a++)
        {
            for (var b = 0; b < samples; b++)
            {
                errors[a, b] = a == b ? 0 : Math.Sqrt(covariance[a, a] + covariance[b, b] - 2 * covariance[a, b]);
            }
        }
        var (f, degrees) = Test(table, fit.Means, covariance, ratio * error, error, scores.Count - samples);
        var test = new FTest(f, samples - 1, degrees, Distributions.FUpper(f, samples - 1, degrees));
        return new MixedResult(new SampleMeans([.. fit.Means], errors, test, error), ratio * error, error);
    }

    // Differences from the last sample, made independent of each other, each with its own degrees of freedom.
    private static (double F, double Degrees) Test(Likelihood table, Vector<double> means, Matrix<double> covariance, double tasterVariance, double error, int plainDegrees)
    {
        var samples = means.Count;
        var contrasts = Matrix<double>.Build.Dense(samples - 1, samples, (row, column) => column == row ? 1 : column == samples - 1 ? -1 : 0);
        var eigen = (contrasts * covariance * contrasts.Transpose()).Evd(Symmetricity.Symmetric);
        var independent = eigen.EigenVectors.Transpose() * contrasts;
        var f = Enumerable.Range(0, samples - 1).Average(m => Math.Pow(independent.Row(m) * means, 2) / eigen.EigenValues[m].Real);
        if (tasterVariance == 0)
        {
            return (f, plainDegrees);
        }
        var ofVariances = table.Curvature(tasterVariance, error).Inverse();
        var sum = 0.0;
        for (var m = 0; m < samples - 1; m++)
        {
            var slope = table.SlopeOfVariance(independent.Row(m), tasterVariance, error);
            var variance = eigen.EigenValues[m].Real;
            var degrees = 2 * variance * variance / (slope * ofVariances * slope);
            sum += degrees > 2 ? degrees / (degrees - 2) : 0;
        }
        return (f, sum > samples - 1 ? 2 * sum / (sum - (samples - 1)) : plainDegrees);
    }

    private static double Highest(Func<double, double> function)
    {
        var golden = (Math.Sqrt(5) - 1) / 2;
        var (low, high) = (LowestLog, HighestLog);
        var (left, right) = (high - golden * (high - low), low + golden * (high - low));
        var (atLeft, atRight) = (function(left), function(right));
        while (high - low > 1e-9)
        {
            if (atLeft >= atRight)
            {
                (high, right, atRight) = (right, left, atLeft);
                left = high - golden * (high - low);
                atLeft = function(left);
            }
            else
            {
                (low, left, atLeft) = (left, right, atRight);
                right = low + golden * (high - low);
                atRight = function(right);
            }
        }
        return (low + high) / 2;
    }

    /// <summary>What is needed of the likelihood. One taster's covariance is an identity plus a constant, so its inverse and determinant are known in closed form.</summary>
    private sealed class Likelihood(IReadOnlyList<Score> scores, int samples)
    {
        private readonly List<Score[]> _byTaster = [.. scores.GroupBy(score => score.Taster).Select(own => own.ToArray())];

        public readonly record struct Fitted(Matrix<double> Information, Vector<double> Means, double Residual, double LogDeterminants);

        /// <summary>Means and residual for a ratio of taster variance to error variance, in units of the error variance.</summary>
        public Fitted Fit(double ratio)
        {
            var information = Matrix<double>.Build.Dense(samples, samples);
            var pull = Vector<double>.Build.Dense(samples);
            var (squares, logs) = (0.0, 0.0);
            foreach (var own in _byTaster)
            {
                var shared = ratio / (1 + ratio * own.Length);
                var sum = own.Sum(score => score.Value);
                foreach (var one in own)
                {
                    information[one.Sample, one.Sample] += 1;
                    pull[one.Sample] += one.Value - shared * sum;
                    foreach (var other in own)
                    {
                        information[one.Sample, other.Sample] -= shared;
                    }
                    squares += one.Value * one.Value;
                }
                squares -= shared * sum * sum;
                logs += Math.Log(1 + ratio * own.Length);
            }
            var means = information.Solve(pull);
            return new Fitted(information, means, squares - pull * means, logs);
        }

        /// <summary>Restricted log-likelihood with the error variance at its best.</summary>
        public double Profile(double ratio)
        {
            var fit = Fit(ratio);
            var degrees = scores.Count - samples;
            return -(degrees * Math.Log(fit.Residual / degrees) + fit.LogDeterminants + Math.Log(fit.Information.Determinant())) / 2;
        }

        /// <summary>Minus the second derivatives of the restricted log-likelihood by both variances.</summary>
        public Matrix<double> Curvature(double taster, double error)
        {
            double[] at = [taster, error];
            double[] step = [1e-3 * taster, 1e-3 * error];
            return Matrix<double>.Build.Dense(2, 2, (i, j) =>
            {
                double Shifted(int signI, int signJ)
                {
                    var moved = (double[])at.Clone();
                    moved[i] += signI * step[i];
                    moved[j] += signJ * step[j];
                    return Full(moved[0], moved[1]);
                }
                return -(Shifted(1, 1) - Shifted(1, -1) - Shifted(-1, 1) + Shifted(-1, -1)) / (4 * step[i] * step[j]);
            });
        }

        /// <summary>Derivatives of a contrast's variance by both variances.</summary>
        public Vector<double> SlopeOfVariance(Vector<double> contrast, double taster, double error)
        {
            double Variance(double t, double e) => e * (contrast * Fit(t / e).Information.Solve(contrast));
            var (stepTaster, stepError) = (1e-4 * taster, 1e-4 * error);
            return Vector<double>.Build.Dense(
            [
                (Variance(taster + stepTaster, error) - Variance(taster - stepTaster, error)) / (2 * stepTaster),
                (Variance(taster, error + stepError) - Variance(taster, error - stepError)) / (2 * stepError),
            ]);
        }

        private double Full(double taster, double error)
        {
            var fit = Fit(taster / error);
            var degrees = scores.Count - samples;
            return -(degrees * Math.Log(error) + fit.LogDeterminants + Math.Log(fit.Information.Determinant()) + fit.Residual / error) / 2;
        }
    }
}
