using MathNet.Numerics.RootFinding;

namespace MenuLab.Core.Statistics;

/// <summary>Where a monotone function crosses zero.</summary>
internal static class Roots
{
    private const double Finest = 1e-14;
    private const int MostSteps = 200;

    /// <summary>The root in a bracket; an end that is a root already is returned as it is.</summary>
    /// <remarks>Source: Brent's method as MathNet.Numerics has it. Error: the accuracy asked for, or what rounding in the function leaves.</remarks>
    /// <exception cref="MathNet.Numerics.NonConvergenceException">The function has the same sign at both ends.</exception>
    public static double Between(Func<double, double> function, double low, double high, double accuracy = Finest) =>
        function(low) == 0 ? low : function(high) == 0 ? high : Brent.FindRoot(function, low, high, accuracy, MostSteps);
}
