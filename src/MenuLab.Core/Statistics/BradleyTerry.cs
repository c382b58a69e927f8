using MathNet.Numerics.LinearAlgebra;

namespace MenuLab.Core.Statistics;

/// <summary>Strengths of drinks that were only compared in pairs.</summary>
/// <param name="Strengths">Natural logarithm of each strength; they add up to zero.</param>
/// <param name="Errors">Standard errors of the strengths.</param>
/// <param name="Covariance">Covariance of the strengths.</param>
/// <param name="Deviance">How far the wins are from the strengths.</param>
/// <param name="LevelDeviance">How far the wins are from equal strengths.</param>
/// <param name="ByLuck">Chance of a difference of both as large when all strengths are equal (chi-squared).</param>
public sealed record BradleyTerryResult(
    IReadOnlyList<double> Strengths, IReadOnlyList<double> Errors, double[,] Covariance, double Deviance, double LevelDeviance, double ByLuck)
{
    /// <summary>Chance that one wins against another.</summary>
    /// <param name="one">Number of the first.</param>
    /// <param name="other">Number of the second.</param>
    /// <returns>0 to 1.</returns>
    /// <remarks>Source: docs/statistics.md, section 6.2. Valid for: the model. Error: see <see cref="DifferenceError"/>.</remarks>
    public double Wins(int one, int other) => 1 / (1 + Math.Exp(Strengths[other] - Strengths[one]));

    /// <summary>Standard error of a difference of two strengths.</summary>
    /// <param name="one">Number of the first.</param>
    /// <param name="other">Number of the second.</param>
    /// <remarks>Source: covariance of the strengths. Valid for: independent comparisons. Error: that of the normal approximation.</remarks>
    public double DifferenceError(int one, int other) => Math.Sqrt(Math.Max(0, Covariance[one, one] + Covariance[other, other] - 2 * Covariance[one, other]));
}

/// <summary>One comparison of a pair.</summary>
/// <param name="Taster">The taster, counted from 0.</param>
/// <param name="Winner">The drink that was preferred, counted from 0.</param>
/// <param name="Loser">The other drink, counted from 0.</param>
public readonly record struct PairChoice(int Taster, int Winner, int Loser);

/// <summary>The model of Bradley and Terry: one wins against another with chance s/(s + t), s and t their strengths.</summary>
public static class BradleyTerry
{
    /// <summary>Wins added to every pair, half each way, so that a drink that never lost has a strength, too. Our choice.</summary>
    public const double AddedByDefault = 0.5;

    private const double Settled = 1e-12;
    private const int MostRounds = 200_000;

    /// <summary>Works out strengths.</summary>
    /// <param name="wins">Wins of the row against the column, zero or more, nothing on the diagonal; two drinks at least.</param>
    /// <param name="added">Wins added to each pair, half each way, zero or more; more draws all strengths together.</param>
    /// <returns>Strengths with errors and test; null where nothing is added and some drinks never lose, directly or in a chain, to others.</returns>
    /// <remarks>
    /// Source: docs/statistics.md, section 6.2: the iteration of Zermelo and of Bradley and Terry until no strength moves by 1e-12; errors from the
    /// inverse of the information among strengths that add up to zero. Comparisons of one taster are not independent: see <see cref="Ranges"/>. Valid for: no ties (leave
    /// them out). Error: 1e-10.
    /// </remarks>
    /// <exception cref="ArgumentException">Not a square table of two at least, wins on the diagonal, or a drink that was never compared.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A negative or infinite count.</exception>
    public static BradleyTerryResult? Of(double[,] wins, double added = AddedByDefault)
    {
        var count = wins.GetLength(0);
        if (count < 2 || wins.GetLength(1) != count)
        {
            throw new ArgumentException("Needs a square table of two drinks at least.", nameof(wins));
        }
        Guard.FiniteNonNegative(added);
        var all = new double[count, count];
        for (var i = 0; i < count; i++)
        {
            for (var j = 0; j < count; j++)
            {
                all[i, j] = Guard.FiniteNonNegative(wins[i, j]) + (i == j ? 0 : added / 2);
            }
            if (wins[i, i] != 0)
            {
                throw new ArgumentException("A drink cannot win against itself.", nameof(wins));
            }
        }
        CheckCompared(Enumerable.Range(0, count).Where(i => Enumerable.Range(0, count).Any(j => wins[i, j] + wins[j, i] > 0)).Count(), count, nameof(wins));
        if (!EachReachesEach(all))
        {
            return null;
        }
        var strengths = Iterate(all, null);
        var covariance = Covariance(all, strengths);
        var (deviance, level) = (Deviance(all, strengths), Deviance(all, new double[count]));
        return new BradleyTerryResult(strengths, [.. Enumerable.Range(0, count).Select(i => Math.Sqrt(Math.Max(0, covariance[i, i])))], covariance, deviance, level,
            Distributions.ChiSquaredUpper(level - deviance, count - 1));
    }

    /// <summary>Strengths with limits from drawing tasters again.</summary>
    /// <param name="choices">Every comparison.</param>
    /// <param name="drinks">How many drinks, 2 or more.</param>
    /// <param name="draws">Random numbers.</param>
    /// <param name="added">Wins added to each pair, above zero.</param>
    /// <param name="times">How often tasters are drawn, 100 or more.</param>
    /// <returns>One strength a drink with the middle 95 % of the drawn ones; null for fewer than six tasters, of whom only counts should be shown.</returns>
    /// <remarks>Source: docs/statistics.md, section 6.2. Valid for: six tasters and up. Error: that of so many draws.</remarks>
    /// <exception cref="ArgumentException">A drink that was never compared, is not there or meets itself.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A count outside its range.</exception>
    public static IReadOnlyList<Ranged>? Ranges(IReadOnlyList<PairChoice> choices, int drinks, SeededDraws draws, double added = AddedByDefault, int times = 1000)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(drinks, 2);
        ArgumentOutOfRangeException.ThrowIfLessThan(times, 100);
        if (!(added > 0))
        {
            throw new ArgumentOutOfRangeException(nameof(added), added, "Must be above zero.");
        }
        if (choices.Any(c => c.Winner == c.Loser || c.Winner < 0 || c.Loser < 0 || c.Winner >= drinks || c.Loser >= drinks))
        {
            throw new ArgumentException("A comparison names a drink that is not there, or one drink twice.", nameof(choices));
        }
        CheckCompared(choices.SelectMany(c => new[] { c.Winner, c.Loser }).Distinct().Count(), drinks, nameof(choices));
        var byTaster = choices.GroupBy(choice => choice.Taster).OrderBy(own => own.Key).Select(own => own.ToArray()).ToArray();
        if (byTaster.Length < Verdict.FewestForLetters)
        {
            return null;
        }
        var strengths = Iterate(Wins(byTaster, drinks, added), null);
        var drawn = Enumerable.Range(0, drinks).Select(_ => new List<double>(times)).ToArray();
        for (var time = 0; time < times; time++)
        {
            var again = Iterate(Wins(byTaster.Select(_ => byTaster[draws.Below(byTaster.Length)]), drinks, added), strengths);
            for (var d = 0; d < drinks; d++)
            {
                drawn[d].Add(again[d]);
            }
        }
        return [.. Enumerable.Range(0, drinks).Select(d => Percentiles.Middle95(strengths[d], drawn[d]))];
    }

    private static double[,] Wins(IEnumerable<PairChoice[]> byTaster, int drinks, double added)
    {
        var wins = new double[drinks, drinks];
        for (var i = 0; i < drinks; i++)
        {
            for (var j = 0; j < drinks; j++)
            {
                wins[i, j] = i == j ? 0 : added / 2;
            }
        }
        foreach (var choice in byTaster.SelectMany(own => own))
        {
            wins[choice.Winner, choice.Loser]++;
        }
        return wins;
    }

    // Added wins would make an average drink of one that nobody compared, and a sure one at that.
    private static void CheckCompared(int compared, int drinks, string name)
    {
        if (compared < drinks)
        {
            throw new ArgumentException("A drink was never compared.", name);
        }
    }

    // Finite strengths need a chain of wins from every drink to every other.
    private static bool EachReachesEach(double[,] wins)
    {
        var count = wins.GetLength(0);
        var reaches = new bool[count, count];
        for (var i = 0; i < count; i++)
        {
            for (var j = 0; j < count; j++)
            {
                reaches[i, j] = i == j || wins[i, j] > 0;
            }
        }
        for (var k = 0; k < count; k++)
        {
            for (var i = 0; i < count; i++)
            {
                for (var j = 0; j < count; j++)
                {
                    reaches[i, j] |= reaches[i, k] && reaches[k, j];
                }
            }
        }
        return reaches.Cast<bool>().All(reached => reached);
    }

    private static double[] Iterate(double[,] wins, double[]? start)
    {
        var count = wins.GetLength(0);
        var strengths = start is null ? new double[count] : (double[])start.Clone();
        var next = new double[count];
        for (var round = 0; round < MostRounds; round++)
        {
            for (var i = 0; i < count; i++)
            {
                var (won, shared) = (0.0, 0.0);
                for (var j = 0; j < count; j++)
                {
                    if (j != i)
                    {
                        won += wins[i, j];
                        shared += (wins[i, j] + wins[j, i]) / (Math.Exp(strengths[i]) + Math.Exp(strengths[j]));
                    }
                }
                next[i] = Math.Log(won / shared);
            }
            var mean = next.Average();
            var moved = 0.0;
            for (var i = 0; i < count; i++)
            {
                moved = Math.Max(moved, Math.Abs(next[i] - mean - strengths[i]));
                strengths[i] = next[i] - mean;
            }
            if (moved < Settled)
            {
                return strengths;
            }
        }
        return strengths;
    }

    // On strengths that add up to zero the information has no inverse; adding 1/p everywhere and taking it off again gives it one.
    private static double[,] Covariance(double[,] wins, double[] strengths)
    {
        var count = strengths.Length;
        var information = Matrix<double>.Build.Dense(count, count, 1.0 / count);
        for (var i = 0; i < count; i++)
        {
            for (var j = 0; j < count; j++)
            {
                if (i != j)
                {
                    var chance = 1 / (1 + Math.Exp(strengths[j] - strengths[i]));
                    var weight = (wins[i, j] + wins[j, i]) * chance * (1 - chance);
                    information[i, i] += weight;
                    information[i, j] -= weight;
                }
            }
        }
        return (information.Inverse() - 1.0 / count).ToArray();
    }

    private static double Deviance(double[,] wins, double[] strengths)
    {
        var deviance = 0.0;
        for (var i = 0; i < strengths.Length; i++)
        {
            for (var j = 0; j < strengths.Length; j++)
            {
                if (i != j && wins[i, j] > 0)
                {
                    var chance = 1 / (1 + Math.Exp(strengths[j] - strengths[i]));
                    deviance += 2 * wins[i, j] * Math.Log(wins[i, j] / (wins[i, j] + wins[j, i]) / chance);
                }
            }
        }
        return Math.Max(0, deviance);
    }
}
