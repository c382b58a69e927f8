using MenuLab.Core.Quantities;

namespace MenuLab.Core.Preps;

/// <summary>A figure of one batch in a series.</summary>
/// <param name="Batch">The batch.</param>
/// <param name="Measured">The figure with its range.</param>
/// <param name="FromEstimate">Measured less estimated, in the figure's unit.</param>
/// <param name="IsOutside">The estimated and the measured range do not touch.</param>
public sealed record DriftPoint(PrepBatch Batch, Estimate Measured, double FromEstimate, bool IsOutside);

/// <summary>How a figure of a prep moves from batch to batch.</summary>
/// <param name="Figure">Which figure.</param>
/// <param name="Points">Batches by day; those without the figure are left out.</param>
/// <param name="Mean">Mean of the points; NaN without any.</param>
/// <param name="StandardDeviation">Between batches (n - 1); NaN below two points.</param>
/// <param name="PerBatch">Slope of the straight line by least squares, in the figure's unit per batch; NaN below two points.</param>
public sealed record PrepDrift(PrepFigure Figure, IReadOnlyList<DriftPoint> Points, double Mean, double StandardDeviation, double PerBatch)
{
    /// <summary>The series of a figure.</summary>
    /// <param name="figure">Which figure.</param>
    /// <param name="batches">Batches with what their readings gave, in any order.</param>
    /// <remarks>Source: mean, sample deviation and least squares over the order of batches. Valid for: any number. Error: none beyond the readings'.</remarks>
    public static PrepDrift Of(PrepFigure figure, IEnumerable<(PrepBatch Batch, MeasuredPrep Measured)> batches)
    {
        var points = new List<DriftPoint>();
        foreach (var (batch, measured) in batches.Where(b => b.Measured.HasOwnComposition).OrderBy(b => b.Batch.MadeOn).ThenBy(b => b.Batch.Id))
        {
            var pair = measured.Figures.Single(f => f.Figure == figure);
            if (!double.IsNaN(pair.Measured.Value))
            {
                var isOutside = pair.Measured.Low > pair.Estimated.High || pair.Measured.High < pair.Estimated.Low;
                points.Add(new DriftPoint(batch, pair.Measured, pair.Measured.Value - pair.Estimated.Value, isOutside));
            }
        }
        var mean = points.Count > 0 ? points.Average(p => p.Measured.Value) : double.NaN;
        double squares = 0, across = 0, along = 0;
        for (var i = 0; i < points.Count; i++)
        {
            var off = points[i].Measured.Value - mean;
            var place = i - (points.Count - 1) / 2.0;
            squares += off * off;
            across += place * off;
            along += place * place;
        }
        return points.Count < 2
            ? new PrepDrift(figure, points, mean, double.NaN, double.NaN)
            : new PrepDrift(figure, points, mean, Math.Sqrt(squares / (points.Count - 1)), across / along);
    }
}
