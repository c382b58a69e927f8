using MathNet.Numerics.Integration;

namespace MenuLab.Core.Statistics;

/// <summary>Integrals by a 64-point Gauss-Legendre rule on equal panels: the same points each time, so the same answer each time.</summary>
internal static class Quadrature
{
    private const int Points = 64;

    // The rule on -1 to 1; its abscissas and weights come from MathNet.Numerics.
    private static readonly GaussLegendreRule Rule = new(-1, 1, Points);

    public static double Integrate(Func<double, double> function, double low, double high, int panels)
    {
        var half = (high - low) / panels / 2;
        var sum = 0.0;
        for (var panel = 0; panel < panels; panel++)
        {
            var middle = low + (2 * panel + 1) * half;
            for (var i = 0; i < Points; i++)
            {
                sum += Rule.GetWeight(i) * function(middle + half * Rule.GetAbscissa(i));
            }
        }
        return sum * half;
    }
}
