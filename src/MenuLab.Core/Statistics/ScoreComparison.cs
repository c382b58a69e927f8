using MenuLab.Core.House;

namespace MenuLab.Core.Statistics;

/// <summary>One scored question of a complete tasting, by scores and by ranks.</summary>
/// <param name="Scores">By scores.</param>
/// <param name="Ranks">By ranks.</param>
/// <param name="ByLuck">The chance that is told: that of scores, or the weaker of both where they disagree; null where nothing varies.</param>
/// <param name="Disagree">One is below 5 % and the other above 10 %: the weaker one is told.</param>
/// <param name="Pairs">Every pair of samples; empty for fewer than <see cref="Verdict.FewestForInference"/> tasters.</param>
/// <param name="Letters">Letters of the samples; null for fewer than <see cref="Verdict.FewestForLetters"/> tasters or where nothing varies.</param>
public sealed record ScoreComparisonResult(
    TwoWayResult Scores, FriedmanResult Ranks, double? ByLuck, bool Disagree, IReadOnlyList<PairComparison> Pairs, IReadOnlyList<string>? Letters);

/// <summary>Compares samples that every taster scored once.</summary>
public static class ScoreComparison
{
    /// <summary>Works out one question.</summary>
    /// <param name="scores">Tasters in rows, samples in columns; two of each at least; points of the scale.</param>
    /// <returns>Both analyses and what may be told of them.</returns>
    /// <remarks>
    /// Source: docs/statistics.md, sections 0.4 and 2.3. Letters hold for all pairs together (Tukey), and say nothing differs where the told chance is 5 % or
    /// more. Valid for: one question fixed before the tasting; others are exploratory and take <see cref="Holm"/>. Error: see the analyses.
    /// </remarks>
    /// <exception cref="ArgumentException">Fewer than two tasters or samples, or a score that is not finite.</exception>
    public static ScoreComparisonResult Of(double[,] scores)
    {
        var byScores = TwoWayAnalysis.Of(scores);
        var byRanks = Friedman.Of(scores);
        var (one, other) = (byScores.Samples.Test.ByLuck, byRanks.ByLuck);
        var disagree = (one < 0.05 && other > 0.10) || (other < 0.05 && one > 0.10);
        var told = disagree ? Math.Max(one!.Value, other!.Value) : one;
        var tasters = scores.GetLength(0);
        var pairs = tasters < Verdict.FewestForInference ? [] : PairComparisons.Of(byScores.Samples);
        IReadOnlyList<string>? letters = null;
        if (tasters >= Verdict.FewestForLetters && told is { } chance)
        {
            var apart = pairs.Where(pair => chance < 0.05 && pair.ByLuckAmongAll < 0.05).Select(pair => (pair.One, pair.Other)).ToHashSet();
            letters = Statistics.Letters.Of(byScores.Samples.Means, (a, b) => apart.Contains((a, b)));
        }
        return new ScoreComparisonResult(byScores, byRanks, told, disagree, pairs, letters);
    }

    /// <summary>The verdict on a pair that was named before the tasting.</summary>
    /// <param name="result">The question.</param>
    /// <param name="one">Number of the first sample.</param>
    /// <param name="other">Number of the second sample, another one.</param>
    /// <param name="names">Names of all samples.</param>
    /// <param name="more">What was asked, as a participle: "liked", "rated".</param>
    /// <param name="matters">The smallest difference worth acting on, above zero, in points.</param>
    /// <param name="tasters">How many tasters.</param>
    /// <param name="format">How the house writes numbers.</param>
    /// <remarks>Source: docs/statistics.md, section 0.4. Valid for: one pair named before. Error: none of its own.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Nothing matters, or no tasters.</exception>
    /// <exception cref="ArgumentException">The numbers are those of no pair.</exception>
    public static Verdict OnPair(ScoreComparisonResult result, int one, int other, IReadOnlyList<string> names, string more, double matters, int tasters, HouseFormat format)
    {
        if (one == other || Math.Min(one, other) < 0 || Math.Max(one, other) >= result.Scores.Samples.Means.Count || names.Count != result.Scores.Samples.Means.Count)
        {
            throw new ArgumentException("Name two of the samples, and each of them.", nameof(names));
        }
        var pair = result.Pairs.FirstOrDefault(p => (p.One, p.Other) == (Math.Min(one, other), Math.Max(one, other)));
        var difference = pair?.Alone ?? default;
        var fromFirst = one < other ? difference : new Ranged(-difference.Value, -difference.High, -difference.Low);
        return Verdict.OnMeans(names[one], names[other], more, fromFirst, matters, tasters,
            Verdict.TastersNeeded(result.Scores.Samples.ErrorMeanSquare, names.Count, matters), format);
    }
}
