using MathNet.Numerics.LinearAlgebra;

namespace MenuLab.Core.Statistics;

/// <summary>The best and the worst of a set.</summary>
/// <param name="Set">The drinks of the set, counted from 0, two different ones at least.</param>
/// <param name="Best">The best of them.</param>
/// <param name="Worst">The worst of them, another one.</param>
public sealed record BestWorstAnswer(IReadOnlyList<int> Set, int Best, int Worst);

/// <summary>What answers of best and worst come to.</summary>
/// <param name="Best">How often each drink was best.</param>
/// <param name="Worst">How often each drink was worst.</param>
/// <param name="Shown">How often each drink was in a set.</param>
/// <param name="Scores">(Best - worst)/shown, -1 to 1; null for a drink never shown.</param>
/// <param name="Utilities">How attractive each drink is, natural logarithm; they add up to zero. Null where no finite figures fit, or a drink was never shown.</param>
/// <param name="LogLikelihood">Logarithm of the chance of these answers by those figures; null with them.</param>
public sealed record BestWorstResult(
    IReadOnlyList<int> Best, IReadOnlyList<int> Worst, IReadOnlyList<int> Shown, IReadOnlyList<double?> Scores, IReadOnlyList<double>? Utilities, double? LogLikelihood);

/// <summary>Best and worst of small sets: for five to nine drinks.</summary>
public static class BestWorst
{
    /// <summary>How strongly figures are drawn together for small panels. Our choice.</summary>
    public const double DrawnByDefault = 0.1;

    private const int MostSteps = 200;

    /// <summary>Works out scores and utilities.</summary>
    /// <param name="answers">The answers, one or more.</param>
    /// <param name="drinks">How many drinks, 2 or more.</param>
    /// <param name="drawn">How strongly the utilities are drawn together: half of it times the sum of their squares is taken off; zero or more.</param>
    /// <returns>Counts, scores, utilities.</returns>
    /// <remarks>
    /// Source: docs/statistics.md, section 6.3: best by exp(u) in the set, then worst by exp(-u) among the rest; Newton's steps, halved where they do not
    /// climb. Valid for: sets that link all drinks. Error: 1e-9.
    /// </remarks>
    /// <exception cref="ArgumentException">No answers, or one whose best or worst is not in its set.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its range.</exception>
    public static BestWorstResult Of(IReadOnlyList<BestWorstAnswer> answers, int drinks, double drawn = DrawnByDefault)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(drinks, 2);
        Guard.FiniteNonNegative(drawn);
        if (answers.Count == 0 || answers.Any(a => a.Best == a.Worst || !a.Set.Contains(a.Best) || !a.Set.Contains(a.Worst)
            || a.Set.Distinct().Count() != a.Set.Count || a.Set.Any(d => d < 0 || d >= drinks)))
        {
            throw new ArgumentException("Best and worst must be two drinks of the set, and the set of drinks that are there.", nameof(answers));
        }
        var all = Enumerable.Range(0, drinks).ToArray();
        var best = Array.ConvertAll(all, d => answers.Count(a => a.Best == d));
        var worst = Array.ConvertAll(all, d => answers.Count(a => a.Worst == d));
        var shown = Array.ConvertAll(all, d => answers.Count(a => a.Set.Contains(d)));
        var scores = Array.ConvertAll(all, d => shown[d] == 0 ? (double?)null : (best[d] - worst[d]) / (double)shown[d]);
        // Drawing together would make an average drink of one that nobody saw.
        var (utilities, likelihood) = shown.Contains(0) ? (null, null) : Climb(answers, drinks, drawn);
        return new BestWorstResult(best, worst, shown, scores, utilities, likelihood);
    }

    private static (double[]? Utilities, double? LogLikelihood) Climb(IReadOnlyList<BestWorstAnswer> answers, int drinks, double drawn)
    {
        var u = Vector<double>.Build.Dense(drinks);
        var here = Look(answers, u, drawn);
        for (var step = 0; step < MostSteps; step++)
        {
            // The figures may all rise together without a change; 1 everywhere fixes their sum.
            var move = (here.Curvature + 1).Solve(here.Slope);
            var there = Look(answers, u + move, drawn);
            while (!(there.Value >= here.Value) && move.L2Norm() > 1e-12)
            {
                move /= 2;
                there = Look(answers, u + move, drawn);
            }
            u += move;
            var settled = move.L2Norm() < 1e-10;
            here = there;
            if (!u.All(double.IsFinite) || u.AbsoluteMaximum() > 30)
            {
                // A drink that is always best runs off to infinity unless it is drawn back.
                return (null, null);
            }
            if (settled)
            {
                var penalty = drawn / 2 * u.DotProduct(u);
                return ([.. u - u.Average()], here.Value + penalty);
            }
        }
        return (null, null);
    }

    private readonly record struct Landscape(double Value, Vector<double> Slope, Matrix<double> Curvature);

    private static Landscape Look(IReadOnlyList<BestWorstAnswer> answers, Vector<double> u, double drawn)
    {
        var value = -drawn / 2 * u.DotProduct(u);
        var slope = -drawn * u;
        var curvature = Matrix<double>.Build.DenseDiagonal(u.Count, drawn);
        foreach (var answer in answers)
        {
            value += Choose(answer.Set, answer.Best, 1);
            value += Choose([.. answer.Set.Where(d => d != answer.Best)], answer.Worst, -1);
        }
        return new Landscape(value, slope, curvature);

        // Adds one choice by exp(sign u) and returns the logarithm of its chance.
        double Choose(IReadOnlyList<int> set, int chosen, int sign)
        {
            var weights = set.Select(d => Math.Exp(sign * u[d])).ToArray();
            var sum = weights.Sum();
            slope[chosen] += sign;
            for (var i = 0; i < set.Count; i++)
            {
                var share = weights[i] / sum;
                slope[set[i]] -= sign * share;
                curvature[set[i], set[i]] += share;
                for (var j = 0; j < set.Count; j++)
                {
                    curvature[set[i], set[j]] -= share * weights[j] / sum;
                }
            }
            return sign * u[chosen] - Math.Log(sum);
        }
    }
}
