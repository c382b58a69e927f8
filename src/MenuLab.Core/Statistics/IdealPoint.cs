using MenuLab.Core.House;

namespace MenuLab.Core.Statistics;

/// <summary>Liking of a sample by what is in it.</summary>
/// <param name="Taster">The taster, counted from 0 without gaps.</param>
/// <param name="Amount">The metric, in its unit: 8 for 8 g of sugar in 100 mL.</param>
/// <param name="Liking">Points of the scale.</param>
public readonly record struct LikedAmount(int Taster, double Amount, double Liking);

/// <summary>Why an optimum is shown or not.</summary>
public enum IdealKind
{
    /// <summary>There is an optimum.</summary>
    Found,
    /// <summary>Liking still rises or falls at the edge of what was tried: try more.</summary>
    BeyondTheEdge,
    /// <summary>Liking does not bend enough for an optimum.</summary>
    NotClear,
    /// <summary>Too few tasters or amounts.</summary>
    TooFew,
}

/// <summary>A parabola of liking over an amount.</summary>
/// <param name="Kind">Whether an optimum is shown.</param>
/// <param name="Tasters">How many tasters.</param>
/// <param name="Centre">The amount from which the slope is counted.</param>
/// <param name="Slope">Points per unit at the centre.</param>
/// <param name="Bend">Points per unit squared; below zero for a hill.</param>
/// <param name="SlopeVariance">Variance of the slope.</param>
/// <param name="BendVariance">Variance of the bend.</param>
/// <param name="Covariance">Covariance of both.</param>
/// <param name="Degrees">Degrees of freedom of the residual.</param>
/// <param name="MeanSquare">Residual mean square, points squared.</param>
/// <param name="BendByLuck">Chance of so strong a bend, either way, by luck alone.</param>
/// <param name="Optimum">The amount liked best; null where the bend is no hill.</param>
/// <param name="DeltaError">Its standard error by the delta method, for comparison; null with it.</param>
/// <param name="Fieller">The 95 % limits by Fieller's theorem; null where they are not finite.</param>
/// <param name="FiellerG">Fieller's g: below 1 the limits are finite.</param>
/// <param name="TasterError">Standard error from leaving out one taster at a time; null where one of the fits has no hill.</param>
/// <param name="Range">The wider of both ranges, to be shown; null where either is missing.</param>
/// <param name="Press">Sum of squared errors, each answer foretold without itself.</param>
/// <param name="PressOfTasters">The same by tasters' means alone.</param>
/// <param name="PressOfLine">The same by a straight line.</param>
/// <param name="Foretold">1 minus Press over the total sum of squares: how much of new answers it foretells.</param>
/// <param name="WithoutLevel">The optimum without each amount in turn; null where that fit has no hill.</param>
public sealed record IdealPointResult(
    IdealKind Kind, int Tasters, double Centre, double Slope, double Bend, double SlopeVariance, double BendVariance, double Covariance, int Degrees, double MeanSquare,
    double BendByLuck, double? Optimum, double? DeltaError, Ranged? Fieller, double FiellerG, double? TasterError, Ranged? Range,
    double Press, double PressOfTasters, double PressOfLine, double Foretold, IReadOnlyList<(double Level, double? Optimum)> WithoutLevel);

/// <summary>The amount a panel likes best.</summary>
public static class IdealPoint
{
    /// <summary>Fewer tasters show no optimum. Our choice.</summary>
    public const int FewestTasters = 6;

    /// <summary>Fewer different amounts show no optimum: three draw the parabola, the fourth checks it. Our choice.</summary>
    public const int FewestLevels = 4;

    /// <summary>Fits a parabola, tasters' levels taken out.</summary>
    /// <param name="answers">Likings; three different amounts and two tasters at least, one metric varied while the rest was held.</param>
    /// <param name="centre">The amount from which the slope is counted; null for the middle of what was tried.</param>
    /// <returns>The parabola, its optimum with limits, and whether the optimum may be shown.</returns>
    /// <remarks>
    /// Source: docs/statistics.md, section 8.1: least squares; tasters with one answer are left out; Fieller's limits; leaving out tasters (t with J - 1 degrees), for tasters have different
    /// ideals. Shown only for six tasters, four amounts, a bend below zero with a chance under 0.10, g below 1, an optimum inside what was tried, a
    /// positive share foretold, and an optimum that moves by less than half the range when an amount is left out. Valid for: amounts varied by design. Error: rounding.
    /// </remarks>
    /// <exception cref="ArgumentException">Too few amounts or tasters, or answers that leave no error.</exception>
    public static IdealPointResult Of(IReadOnlyList<LikedAmount> answers, double? centre = null)
    {
        Check(answers);
        // A taster with one answer tells a level and nothing else, and that answer cannot be foretold without itself.
        answers = [.. answers.GroupBy(a => a.Taster).Where(own => own.Count() > 1).SelectMany(own => own)];
        Check(answers);
        var (lowest, highest) = (answers.Min(a => a.Amount), answers.Max(a => a.Amount));
        var middle = centre ?? (lowest + highest) / 2;
        var fit = Fit(answers, middle, power: 2) ?? throw new ArgumentException("The amounts do not bend, or leave no error.", nameof(answers));
        if (fit.Degrees < 1)
        {
            throw new ArgumentException("The answers leave no error.", nameof(answers));
        }
        var tasters = answers.Select(a => a.Taster).Distinct().Count();
        var (first, second) = (fit.Coefficients.Length - 2, fit.Coefficients.Length - 1);
        var (slope, bend) = (fit.Coefficients[first], fit.Coefficients[second]);
        var (v11, v22, v12) = (fit.MeanSquare * fit.Variance(fit.Only(first)), fit.MeanSquare * fit.Variance(fit.Only(second)), fit.MeanSquare * fit.Covariance(fit.Only(first), fit.Only(second)));
        var byLuck = v22 > 0 ? Distributions.StudentTwoSided(bend / Math.Sqrt(v22), fit.Degrees) : 0;
        var t = Distributions.StudentQuantile(0.975, fit.Degrees);
        var g = t * t * v22 / (bend * bend);

        double? optimum = bend < 0 ? middle - slope / (2 * bend) : null;
        double? delta = bend < 0 ? DeltaError(slope, bend, v11, v22, v12) : null;
        var fieller = optimum is { } best && g < 1 ? Fieller(best, middle, slope, bend, v11, v22, v12, t) : (Ranged?)null;
        var jackknife = optimum is null || tasters < 2 ? null : TasterError(answers, middle);
        var range = fieller is { } limits && jackknife is { } error ? Wider(limits, Distributions.StudentQuantile(0.975, tasters - 1) * error) : (Ranged?)null;

        var levels = answers.Select(a => a.Amount).Distinct().Order().ToList();
        var without = levels.Select(level => (level, Optimum([.. answers.Where(a => a.Amount != level)], middle))).ToList();
        var likings = answers.Select(a => a.Liking).ToList();
        var mean = likings.Average();
        var press = fit.Press();
        var pressOfTasters = Fit(answers, middle, power: 0)!.Press();
        var foretold = 1 - press / likings.Sum(liking => (liking - mean) * (liking - mean));
        var kind = tasters < FewestTasters || levels.Count < FewestLevels ? IdealKind.TooFew
            : optimum < lowest || optimum > highest ? IdealKind.BeyondTheEdge
            : optimum is null && Math.Abs(slope) > 0 && v11 > 0 && Distributions.StudentTwoSided(slope / Math.Sqrt(v11), fit.Degrees) < 0.10 ? IdealKind.BeyondTheEdge
            : range is null || byLuck >= 0.10 || !(foretold > 0 && press < pressOfTasters)
                || without.Any(w => w.Item2 is null || Math.Abs(w.Item2.Value - optimum!.Value) >= (highest - lowest) / 2) ? IdealKind.NotClear
            : IdealKind.Found;
        return new IdealPointResult(kind, tasters, middle, slope, bend, v11, v22, v12, fit.Degrees, fit.MeanSquare, byLuck, optimum, delta, fieller, g, jackknife, range,
            press, pressOfTasters, Fit(answers, middle, power: 1)!.Press(), foretold, without);
    }

    /// <summary>Points of liking lost at a distance from the optimum.</summary>
    /// <param name="result">A parabola with a bend below zero.</param>
    /// <param name="distance">Distance, in the unit of the amount.</param>
    /// <returns>Points, zero or more.</returns>
    /// <remarks>Source: the parabola itself. Valid for: amounts that were tried. Error: that of the bend.</remarks>
    public static double Lost(IdealPointResult result, double distance) => Math.Max(0, -result.Bend) * distance * distance;

    /// <summary>The result in plain words.</summary>
    /// <param name="result">What was found.</param>
    /// <param name="metric">What was varied, with its unit: "g/100 mL sugar".</param>
    /// <param name="decimals">Decimals the amount is written with.</param>
    /// <param name="format">How the house writes numbers.</param>
    /// <remarks>Source: docs/statistics.md, section 8.1. Valid for: this panel's own drinks. Error: none of its own.</remarks>
    public static string Sentence(IdealPointResult result, string metric, int decimals, HouseFormat format)
    {
        switch (result)
        {
            case { Kind: IdealKind.TooFew }:
                return $"Too few tasters or amounts to say which amount is liked best ({Verdict.People(result.Tasters)}).";
            case { Kind: IdealKind.BeyondTheEdge }:
                return "Liking still changes at the edge of what was tried: try amounts beyond it.";
            case { Kind: IdealKind.Found, Optimum: { } best, Range: { } range }:
                var half = Math.Max(best - range.Low, range.High - best);
                var (low, high) = (format.Number(range.Low, decimals), format.Number(range.High, decimals));
                return $"Your panel's optimum is {format.Number(best, decimals)} {metric}, likely {low} to {high} ({Verdict.People(result.Tasters)}). " +
                    $"Between {low} and {high} you lose at most about {format.Number(Lost(result, half), 1)} points.";
            default:
                return "No clear optimum: the panel's liking hardly depends on the amounts tried, or the tasters differ too much.";
        }
    }

    private static void Check(IReadOnlyList<LikedAmount> answers)
    {
        ScoreTables.CheckFinite([.. answers.Select(a => a.Liking)]);
        ScoreTables.CheckFinite([.. answers.Select(a => a.Amount)]);
        if (answers.Any(a => a.Taster < 0) || answers.Select(a => a.Amount).Distinct().Count() < 3 || answers.Select(a => a.Taster).Distinct().Count() < 2)
        {
            throw new ArgumentException("Needs three amounts and two tasters at least, counted from 0.", nameof(answers));
        }
    }

    // Null where the amounts carry fewer powers than asked for.
    private static LeastSquares? Fit(IReadOnlyList<LikedAmount> answers, double centre, int power)
    {
        var tasters = answers.Select(a => a.Taster).Distinct().Order().ToList();
        var columns = LeastSquares.Indicators([.. answers.Select(a => tasters.IndexOf(a.Taster))], tasters.Count);
        for (var p = 1; p <= power; p++)
        {
            columns.Add([.. answers.Select(a => Math.Pow(a.Amount - centre, p))]);
        }
        var fit = new LeastSquares(columns, [.. answers.Select(a => a.Liking)]);
        return fit.Rank == columns.Count ? fit : null;
    }

    private static double? Optimum(IReadOnlyList<LikedAmount> answers, double centre) =>
        answers.Count > 0 && Fit(answers, centre, power: 2) is { } fit && fit.Coefficients[^1] < 0 ? centre - fit.Coefficients[^2] / (2 * fit.Coefficients[^1]) : null;

    private static double DeltaError(double slope, double bend, double v11, double v22, double v12)
    {
        var (g1, g2) = (-1 / (2 * bend), slope / (2 * bend * bend));
        return Math.Sqrt(g1 * g1 * v11 + 2 * g1 * g2 * v12 + g2 * g2 * v22);
    }

    // All t whose slope, slope + 2 bend t, is not told from zero.
    private static Ranged Fieller(double optimum, double centre, double slope, double bend, double v11, double v22, double v12, double t)
    {
        var (a, b, c) = (4 * (bend * bend - t * t * v22), 4 * (slope * bend - t * t * v12), slope * slope - t * t * v11);
        var root = Math.Sqrt(Math.Max(0, b * b - 4 * a * c));
        return new Ranged(optimum, centre + (-b - root) / (2 * a), centre + (-b + root) / (2 * a));
    }

    private static double? TasterError(IReadOnlyList<LikedAmount> answers, double centre)
    {
        var tasters = answers.Select(a => a.Taster).Distinct().ToList();
        var optima = tasters.Select(taster => Optimum([.. answers.Where(a => a.Taster != taster)], centre)).ToList();
        if (optima.Any(optimum => optimum is null))
        {
            return null;
        }
        var mean = optima.Average()!.Value;
        return Math.Sqrt((tasters.Count - 1.0) / tasters.Count * optima.Sum(optimum => (optimum!.Value - mean) * (optimum.Value - mean)));
    }

    private static Ranged Wider(Ranged fieller, double half) =>
        2 * half > fieller.High - fieller.Low ? new Ranged(fieller.Value, fieller.Value - half, fieller.Value + half) : fieller;
}
