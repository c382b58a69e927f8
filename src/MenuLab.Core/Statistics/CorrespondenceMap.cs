using MathNet.Numerics.LinearAlgebra;

namespace MenuLab.Core.Statistics;

/// <summary>A map of samples and words: near a word lie the samples it was said of more often than of others.</summary>
/// <param name="Samples">Places of the samples, one row a sample, one column an axis.</param>
/// <param name="Words">Places of the words, one row a word, one column an axis.</param>
/// <param name="Inertias">What each axis carries, largest first; all above zero.</param>
/// <param name="Shares">The same as shares of the whole, adding up to 1.</param>
/// <param name="SampleContributions">How much of each axis each sample makes up, per cent; one row a sample.</param>
public sealed record Map(double[,] Samples, double[,] Words, IReadOnlyList<double> Inertias, IReadOnlyList<double> Shares, double[,] SampleContributions)
{
    internal double[,] Axes { get; init; } = new double[0, 0];

    internal double[] WordMasses { get; init; } = [];
}

/// <summary>How a sample's place moves when other tasters of the same kind had come: centre and spread on the first two axes.</summary>
/// <param name="X">Centre on the first axis.</param>
/// <param name="Y">Centre on the second axis; zero where there is one axis only.</param>
/// <param name="XX">Variance on the first axis.</param>
/// <param name="YY">Variance on the second axis.</param>
/// <param name="XY">Covariance of both.</param>
public readonly record struct Cloud(double X, double Y, double XX, double YY, double XY);

/// <summary>Correspondence analysis of ticks or mentions.</summary>
public static class CorrespondenceMap
{
    /// <summary>Fewer tasters than this make no map. Our choice.</summary>
    public const int FewestTasters = 6;

    /// <summary>Fewer samples than this make no map. Our choice.</summary>
    public const int FewestSamples = 3;

    /// <summary>Fewer mentions than this make no map. Our choice.</summary>
    public const int FewestMentions = 40;

    /// <summary>Words with fewer mentions than this are left out. Our choice.</summary>
    public const int FewestMentionsOfAWord = 3;

    /// <summary>Why no map is drawn; null where one may be.</summary>
    /// <param name="tasters">How many tasters.</param>
    /// <param name="counts">Mentions, samples in rows, words in columns.</param>
    /// <remarks>Source: docs/statistics.md, section 5.2; the limits are ours. Valid for: any counts. Error: none.</remarks>
    public static string? WhyNot(int tasters, int[,] counts)
    {
        var mentions = counts.Cast<int>().Sum();
        return tasters < FewestTasters ? "Too few tasters for a map: it would show chance."
            : counts.GetLength(0) < FewestSamples ? "Two drinks make no map: compare their words."
            : mentions < FewestMentions ? "Too few words were said for a map: it would show chance."
            : null;
    }

    /// <summary>Makes a map.</summary>
    /// <param name="counts">Mentions, samples in rows, words in columns; two of each at least, no row or column of zeros, no negative count.</param>
    /// <returns>Places of samples and words; the sample furthest out on each axis is on its positive side.</returns>
    /// <remarks>
    /// Source: docs/statistics.md, section 5.2: singular values of the standardised residuals. One taster's mentions belong together, so no chance
    /// is given; <see cref="Clouds"/> tells how steady the places are. Valid for: mentions counted once a taster. Error: rounding.
    /// </remarks>
    /// <exception cref="ArgumentException">Too small a table, a negative count, or a row or column of zeros.</exception>
    public static Map Of(int[,] counts)
    {
        var (samples, words) = (counts.GetLength(0), counts.GetLength(1));
        if (samples < 2 || words < 2 || counts.Cast<int>().Any(count => count < 0))
        {
            throw new ArgumentException("Needs two samples, two words, and no negative count.", nameof(counts));
        }
        var all = (double)counts.Cast<int>().Sum();
        var rowMasses = Enumerable.Range(0, samples).Select(s => Enumerable.Range(0, words).Sum(w => counts[s, w]) / all).ToArray();
        var wordMasses = Enumerable.Range(0, words).Select(w => Enumerable.Range(0, samples).Sum(s => counts[s, w]) / all).ToArray();
        if (rowMasses.Any(mass => !(mass > 0)) || wordMasses.Any(mass => !(mass > 0)))
        {
            throw new ArgumentException("A sample or a word has no mentions.", nameof(counts));
        }
        var residuals = Matrix<double>.Build.Dense(samples, words, (s, w) =>
            (counts[s, w] / all - rowMasses[s] * wordMasses[w]) / Math.Sqrt(rowMasses[s] * wordMasses[w]));
        var svd = residuals.Svd();
        // Samples that say all the same leave roundings instead of an axis.
        var axes = svd.S.Count(value => value > 1e-12);
        var (rows, columns, directions, contributions) = (new double[samples, axes], new double[words, axes], new double[words, axes], new double[samples, axes]);
        for (var k = 0; k < axes; k++)
        {
            var value = svd.S[k];
            var furthest = Enumerable.Range(0, samples).MaxBy(s => Math.Abs(svd.U[s, k]) / Math.Sqrt(rowMasses[s]));
            var sign = svd.U[furthest, k] < 0 ? -1 : 1;
            for (var s = 0; s < samples; s++)
            {
                rows[s, k] = sign * value * svd.U[s, k] / Math.Sqrt(rowMasses[s]);
                contributions[s, k] = 100 * svd.U[s, k] * svd.U[s, k];
            }
            for (var w = 0; w < words; w++)
            {
                directions[w, k] = sign * svd.VT[k, w];
                columns[w, k] = value * directions[w, k] / Math.Sqrt(wordMasses[w]);
            }
        }
        var inertias = svd.S.Take(axes).Select(value => value * value).ToArray();
        return new Map(rows, columns, inertias, [.. inertias.Select(inertia => inertia / inertias.Sum())], contributions) { Axes = directions, WordMasses = wordMasses };
    }

    /// <summary>How steady the samples' places are: tasters are drawn again, and each sample is put where its new words place it on the same axes.</summary>
    /// <param name="map">The map of these mentions.</param>
    /// <param name="mentions">True where a taster said a word of a sample: tasters, samples, words, the words of the map.</param>
    /// <param name="draws">Random numbers.</param>
    /// <param name="times">How often tasters are drawn, 2 or more.</param>
    /// <returns>One cloud a sample; null where a sample got no words in some draw.</returns>
    /// <remarks>Source: docs/statistics.md, section 5.2, resampling of tasters with the axes held. Valid for: six tasters and up. Error: that of so many draws.</remarks>
    /// <exception cref="ArgumentException">The mentions are not those of the map.</exception>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than two draws.</exception>
    public static IReadOnlyList<Cloud?> Clouds(Map map, bool[,,] mentions, SeededDraws draws, int times = 500)
    {
        var (tasters, samples, words) = (mentions.GetLength(0), mentions.GetLength(1), mentions.GetLength(2));
        if (samples != map.Samples.GetLength(0) || words != map.Words.GetLength(0) || tasters == 0)
        {
            throw new ArgumentException("The mentions are not those of the map.", nameof(mentions));
        }
        ArgumentOutOfRangeException.ThrowIfLessThan(times, 2);
        var places = Enumerable.Range(0, samples).Select(_ => new List<(double X, double Y)>()).ToArray();
        var counts = new int[samples, words];
        for (var time = 0; time < times; time++)
        {
            Array.Clear(counts);
            for (var drawn = 0; drawn < tasters; drawn++)
            {
                var taster = draws.Below(tasters);
                for (var s = 0; s < samples; s++)
                {
                    for (var w = 0; w < words; w++)
                    {
                        counts[s, w] += mentions[taster, s, w] ? 1 : 0;
                    }
                }
            }
            for (var s = 0; s < samples; s++)
            {
                var said = Enumerable.Range(0, words).Sum(w => counts[s, w]);
                if (said > 0)
                {
                    places[s].Add((Place(map, counts, s, said, 0), map.Inertias.Count > 1 ? Place(map, counts, s, said, 1) : 0));
                }
            }
        }
        return [.. places.Select(own => own.Count == times ? (Cloud?)CloudOf(own) : null)];
    }

    // A profile's place on an axis: its words' weights over the root of their masses.
    private static double Place(Map map, int[,] counts, int sample, int said, int axis) =>
        Enumerable.Range(0, map.WordMasses.Length).Sum(w => ((double)counts[sample, w] / said - map.WordMasses[w]) / Math.Sqrt(map.WordMasses[w]) * map.Axes[w, axis]);

    private static Cloud CloudOf(List<(double X, double Y)> places)
    {
        var (x, y) = (places.Average(p => p.X), places.Average(p => p.Y));
        double Mean(Func<(double X, double Y), double> product) => places.Sum(product) / (places.Count - 1);
        return new Cloud(x, y, Mean(p => (p.X - x) * (p.X - x)), Mean(p => (p.Y - y) * (p.Y - y)), Mean(p => (p.X - x) * (p.Y - y)));
    }
}
