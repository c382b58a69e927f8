namespace MenuLab.Core.Preps;

/// <summary>Where a monotone function of an amount crosses zero.</summary>
internal static class Crossing
{
    private const int MostSteps = 200;
    private const double Finest = 1e-13;

    /// <summary>The root between two ends: Illinois, a secant that keeps its bracket, some eight steps. NaN where the signs at the ends are the same.</summary>
    public static double Of(Func<double, double> function, double low, double high)
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
        for (var step = 0; step < MostSteps && high - low > Finest * Math.Max(Math.Abs(high), 1e-3); step++)
        {
            var at = (atHigh * low - atLow * high) / (atHigh - atLow);
            var value = function(at);
            // A volume of a litre is rounded at some 1e-13.
            if (Math.Abs(value) < 1e-12)
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
        return (atHigh * low - atLow * high) / (atHigh - atLow);
    }
}
