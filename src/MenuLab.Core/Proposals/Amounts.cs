using MenuLab.Core.Pantry;
using MenuLab.Core.Preps;
using MenuLab.Core.Solutions;

namespace MenuLab.Core.Proposals;

/// <summary>Finds the amount at which a mixture reaches a target.</summary>
internal static class Amounts
{
    /// <summary>A figure of a portion with so many grams of something else per gram.</summary>
    public static double With(Composition start, Composition added, double perGram, PrepFigure figure)
    {
        Span<double> mixed = stackalloc double[Components.Count];
        for (var i = 0; i < mixed.Length; i++)
        {
            mixed[i] = start.PerGram[i] + perGram * added.PerGram[i];
        }
        return PrepFigures.Value(mixed, figure);
    }

    /// <summary>The root of a function between two ends where it has different signs: Illinois, a secant that keeps its bracket. NaN where the signs are the same.</summary>
    public static double Root(Func<double, double> function, double low, double high)
    {
        double atLow = function(low), atHigh = function(high);
        if (atLow == 0)
        {
            return low;
        }
        if (atHigh == 0)
        {
            return high;
        }
        if (double.IsNaN(atLow) || double.IsNaN(atHigh) || Math.Sign(atLow) == Math.Sign(atHigh))
        {
            return double.NaN;
        }
        var side = 0;
        for (var step = 0; step < 200 && high - low > 1e-13 * Math.Max(Math.Abs(high), 1e-3); step++)
        {
            var at = (atHigh * low - atLow * high) / (atHigh - atLow);
            var value = function(at);
            if (Math.Abs(value) < 1e-13)
            {
                return at;
            }
            if (Math.Sign(value) == Math.Sign(atLow))
            {
                (low, atLow) = (at, value);
                atHigh = side == 1 ? atHigh / 2 : atHigh;
                side = 1;
            }
            else
            {
                (high, atHigh) = (at, value);
                atLow = side == -1 ? atLow / 2 : atLow;
                side = -1;
            }
        }
        return (low + high) / 2;
    }

    /// <summary>Problems of a target that lies outside what is possible.</summary>
    public static Result<Adjustment> Refused(string field, string message) => Result.Invalid<Adjustment>(new Problem(field, message));
}
