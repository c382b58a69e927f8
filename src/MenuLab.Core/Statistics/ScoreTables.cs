namespace MenuLab.Core.Statistics;

/// <summary>One score.</summary>
/// <param name="Taster">The taster, counted from 0.</param>
/// <param name="Sample">The sample, counted from 0.</param>
/// <param name="Value">Points of the scale.</param>
public readonly record struct Score(int Taster, int Sample, double Value);

/// <summary>Checks on tables of scores, all of them a caller's promise.</summary>
internal static class ScoreTables
{
    /// <summary>Two tasters, two samples and finite scores.</summary>
    public static void Check(double[,] scores)
    {
        if (scores.GetLength(0) < 2 || scores.GetLength(1) < 2)
        {
            throw new ArgumentException("Needs two tasters and two samples at least.", nameof(scores));
        }
        CheckFinite([.. scores.Cast<double>()]);
    }

    public static void CheckFinite(IReadOnlyList<double> scores)
    {
        if (scores.Count == 0)
        {
            throw new ArgumentException("Needs one score at least.", nameof(scores));
        }
        if (scores.Any(score => !double.IsFinite(score)))
        {
            throw new ArgumentException("A score is not a finite number.", nameof(scores));
        }
    }

    /// <summary>Tasters and samples numbered from 0 without gaps, two samples at least, no cell twice.</summary>
    public static (int Tasters, int Samples) Check(IReadOnlyList<Score> scores)
    {
        CheckFinite([.. scores.Select(score => score.Value)]);
        if (scores.Any(score => score.Taster < 0 || score.Sample < 0))
        {
            throw new ArgumentException("Tasters and samples are counted from 0.", nameof(scores));
        }
        if (scores.DistinctBy(score => (score.Taster, score.Sample)).Count() != scores.Count)
        {
            throw new ArgumentException("A taster has scored a sample twice: use the analysis with repeats.", nameof(scores));
        }
        var (tasters, samples) = (scores.Max(score => score.Taster) + 1, scores.Max(score => score.Sample) + 1);
        if (samples < 2 || scores.Select(score => score.Sample).Distinct().Count() != samples || scores.Select(score => score.Taster).Distinct().Count() != tasters)
        {
            throw new ArgumentException("Every taster and every sample needs a score, and there are two samples at least.", nameof(scores));
        }
        return (tasters, samples);
    }

    /// <summary>Row r of a table.</summary>
    public static double[] Row(double[,] table, int row) => [.. Enumerable.Range(0, table.GetLength(1)).Select(column => table[row, column])];

    /// <summary>Column c of a table.</summary>
    public static double[] Column(double[,] table, int column) => [.. Enumerable.Range(0, table.GetLength(0)).Select(row => table[row, column])];
}
