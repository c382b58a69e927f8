namespace MenuLab.Core.Statistics;

/// <summary>A ratio of mean squares and its chance; what every analysis of scores ends in.</summary>
/// <param name="F">The ratio; infinite where nothing but the effect varies; null where nothing varies at all.</param>
/// <param name="Degrees">Degrees of freedom of the effect.</param>
/// <param name="ErrorDegrees">Degrees of freedom of what it is measured by.</param>
/// <param name="ByLuck">Chance of so large a ratio by luck alone, 0 to 1; null where there is no ratio.</param>
public readonly record struct FTest(double? F, double Degrees, double ErrorDegrees, double? ByLuck)
{
    /// <summary>The ratio of an effect's mean square to that of its error.</summary>
    /// <param name="meanSquare">Mean square of the effect, zero or more.</param>
    /// <param name="degrees">Its degrees of freedom, above zero.</param>
    /// <param name="errorMeanSquare">Mean square of the error, zero or more.</param>
    /// <param name="errorDegrees">Its degrees of freedom, above zero.</param>
    /// <remarks>Source: Fisher's F; tail from the incomplete beta function. Valid for: independent normal errors. Error: 1e-10 in the chance.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its range.</exception>
    public static FTest Of(double meanSquare, double degrees, double errorMeanSquare, double errorDegrees)
    {
        Guard.FiniteNonNegative(meanSquare);
        Guard.FiniteNonNegative(errorMeanSquare);
        if (!(degrees > 0 && errorDegrees > 0))
        {
            throw new ArgumentOutOfRangeException(nameof(degrees), degrees, "Degrees of freedom must be above zero.");
        }
        if (meanSquare == 0 && errorMeanSquare == 0)
        {
            return new FTest(null, degrees, errorDegrees, null);
        }
        var f = errorMeanSquare == 0 ? double.PositiveInfinity : meanSquare / errorMeanSquare;
        return new FTest(f, degrees, errorDegrees, Distributions.FUpper(f, degrees, errorDegrees));
    }
}

/// <summary>The means of the samples and how well their differences are known, whatever analysis they come from.</summary>
/// <param name="Means">Mean of each sample, or its adjusted mean where scores are missing; points.</param>
/// <param name="DifferenceErrors">Standard error of each difference of two means, points; zero on the diagonal.</param>
/// <param name="Test">All samples together.</param>
/// <param name="ErrorMeanSquare">Mean square the samples are measured by, points squared.</param>
public sealed record SampleMeans(IReadOnlyList<double> Means, double[,] DifferenceErrors, FTest Test, double ErrorMeanSquare);
