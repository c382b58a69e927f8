using MenuLab.Core.House;

namespace MenuLab.Core.Statistics;

/// <summary>One answer to "is it just right?", with the liking of the same sample.</summary>
/// <param name="Taster">The taster, counted from 0.</param>
/// <param name="Rating">1 much too little, 2 a little too little, 3 just right, 4 a little too much, 5 much too much.</param>
/// <param name="Liking">Liking of the same sample, points of its scale.</param>
public readonly record struct JustRightAnswer(int Taster, int Rating, double Liking);

/// <summary>Those who found too little, or too much, beside those who found it just right.</summary>
/// <param name="Count">How many answers.</param>
/// <param name="Share">Share of all answers, 0 to 1.</param>
/// <param name="Mean">Their mean liking; null without answers.</param>
/// <param name="Drop">Mean liking of "just right" minus theirs, points; null where either has no answers.</param>
/// <param name="Weighted">Share times drop.</param>
/// <param name="Limits">The drop with its 95 % limits (Welch), for one answer a taster; null where either has fewer than two answers or nothing varies.</param>
/// <param name="T">Welch's t.</param>
/// <param name="Degrees">Its degrees of freedom.</param>
/// <param name="ByLuck">Chance of so large a drop, either way, by luck alone.</param>
/// <param name="EffectSize">The drop in standard deviations, corrected for few answers (Hedges).</param>
public sealed record JustRightSide(
    int Count, double Share, double? Mean, double? Drop, double? Weighted, Ranged? Limits, double? T, double? Degrees, double? ByLuck, double? EffectSize);

/// <summary>What "just right" answers come to.</summary>
/// <param name="Answers">How many answers.</param>
/// <param name="Tasters">How many tasters.</param>
/// <param name="RightCount">How many said just right.</param>
/// <param name="RightMean">Their mean liking; null without answers.</param>
/// <param name="TooLittle">Those who found too little.</param>
/// <param name="TooMuch">Those who found too much.</param>
/// <param name="OverallDrop">Mean liking of "just right" minus that of all others; null where either has no answers.</param>
public sealed record JustRightResult(int Answers, int Tasters, int RightCount, double? RightMean, JustRightSide TooLittle, JustRightSide TooMuch, double? OverallDrop);

/// <summary>What to do about a property.</summary>
public enum CallOut
{
    /// <summary>Counts are shown, nothing is called out.</summary>
    CountsOnly,
    /// <summary>Almost nobody found it right: change it first, measure later.</summary>
    ChangeFirst,
    /// <summary>Both sides are large: the panel is split, change nothing.</summary>
    Split,
    /// <summary>Too little of it, and it costs liking.</summary>
    TooLittle,
    /// <summary>Too much of it, and it costs liking.</summary>
    TooMuch,
    /// <summary>Noticed but forgiven: leave it.</summary>
    Forgiven,
    /// <summary>A few mind strongly: list it, do not act on it alone.</summary>
    FewMindStrongly,
}

/// <summary>"Just right" answers and what they cost in liking.</summary>
public static class JustRight
{
    /// <summary>A side below this share of answers is not called out. Source: textbook screen (ASTM MNL 63; Lawless and Heymann; MEMORY).</summary>
    public const double LargeShare = 0.20;

    /// <summary>Works out one property.</summary>
    /// <param name="answers">One answer a taster for one sample, or several samples pooled; one answer or more.</param>
    /// <returns>Shares, drops and tests. Pooled over samples the answers of one taster belong together: then use <see cref="DropByTasters"/> or <see cref="Together"/> for limits.</returns>
    /// <remarks>Source: docs/statistics.md, section 3: Welch's t against "just right", Hedges' correction. Valid for: properties with a "too little". Error: rounding.</remarks>
    /// <exception cref="ArgumentException">No answers, a rating outside 1 to 5, or a liking that is not finite.</exception>
    public static JustRightResult Of(IReadOnlyList<JustRightAnswer> answers)
    {
        Check(answers);
        var little = Likings(answers, -1);
        var right = Likings(answers, 0);
        var much = Likings(answers, 1);
        double[] others = [.. little, .. much];
        return new JustRightResult(answers.Count, answers.Select(answer => answer.Taster).Distinct().Count(), right.Length, Mean(right),
            Side(right, little, answers.Count), Side(right, much, answers.Count), Mean(right) - Mean(others));
    }

    /// <summary>What is called out, by the size of the panel.</summary>
    /// <param name="result">What the answers come to.</param>
    /// <remarks>
    /// Source: docs/statistics.md, section 3; the thresholds are ours. Below six tasters nothing is called out; up to twelve it takes three answers, a
    /// fifth of all and a drop of 1.0; above twelve a fifth and a drop of 0.5. Valid for: liking on nine points. Error: a rule, no figure.
    /// </remarks>
    public static CallOut Called(JustRightResult result)
    {
        if (result.Tasters < 6)
        {
            return CallOut.CountsOnly;
        }
        if (result.RightCount < 3)
        {
            return CallOut.ChangeFirst;
        }
        if (result.TooLittle.Share >= LargeShare && result.TooMuch.Share >= LargeShare)
        {
            return CallOut.Split;
        }
        var (fewest, drop) = result.Tasters <= 12 ? (3, 1.0) : (1, 0.5);
        bool Large(JustRightSide side) => side.Share >= LargeShare && side.Count >= fewest;
        if (Large(result.TooMuch) && result.TooMuch.Drop >= drop)
        {
            return CallOut.TooMuch;
        }
        if (Large(result.TooLittle) && result.TooLittle.Drop >= drop)
        {
            return CallOut.TooLittle;
        }
        if ((Large(result.TooMuch) && result.TooMuch.Drop < 0.5) || (Large(result.TooLittle) && result.TooLittle.Drop < 0.5))
        {
            return CallOut.Forgiven;
        }
        return (result.TooMuch.Share < LargeShare && result.TooMuch.Drop >= 1) || (result.TooLittle.Share < LargeShare && result.TooLittle.Drop >= 1)
            ? CallOut.FewMindStrongly
            : CallOut.CountsOnly;
    }

    /// <summary>The result in plain words.</summary>
    /// <param name="property">What was asked about, as people say it: "sweet", "bitter".</param>
    /// <param name="result">What the answers come to.</param>
    /// <param name="limits">The drop of the side called out with limits that fit the answers; null for those of <see cref="Of"/>.</param>
    /// <param name="format">How the house writes numbers.</param>
    /// <remarks>Source: docs/statistics.md, section 3. Valid for: liking on nine points. Error: none of its own.</remarks>
    public static string Sentence(string property, JustRightResult result, Ranged? limits, HouseFormat format)
    {
        var called = Called(result);
        var counts = $"Of {result.Answers} answers {result.TooLittle.Count} said not {property} enough, {result.RightCount} just right, {result.TooMuch.Count} too {property}.";
        return called switch
        {
            CallOut.TooMuch => $"{Cost("too " + property, result.TooMuch, limits, format)}",
            CallOut.TooLittle => $"{Cost($"not {property} enough", result.TooLittle, limits, format)}",
            CallOut.ChangeFirst => $"{counts} Almost nobody found it just right: change it first, measure later.",
            CallOut.Split => $"{counts} The panel is split: change nothing, and look whether two groups want two versions.",
            CallOut.Forgiven => $"{counts} Noticed but forgiven: leave it.",
            CallOut.FewMindStrongly => $"{counts} A few mind strongly: not enough to act on alone.",
            _ => counts,
        };
    }

    /// <summary>The drop of one side with limits from drawing tasters again, for answers pooled over samples.</summary>
    /// <param name="answers">Answers pooled over samples.</param>
    /// <param name="tooMuch">The side of too much; otherwise too little.</param>
    /// <param name="draws">Random numbers.</param>
    /// <param name="times">How often tasters are drawn, 100 or more.</param>
    /// <returns>The drop with the middle 95 % of the drawn ones; null where either group has fewer than two answers, or half the draws had.</returns>
    /// <remarks>
    /// Source: docs/statistics.md, section 3: percentile limits; draws with fewer than two answers in either group are passed over. Valid for: six
    /// tasters and up. Error: that of so many draws, about 0.02 points at 10,000.
    /// </remarks>
    /// <exception cref="ArgumentException">No answers, a rating outside 1 to 5, or a liking that is not finite.</exception>
    /// <exception cref="ArgumentOutOfRangeException">Too few draws.</exception>
    public static Ranged? DropByTasters(IReadOnlyList<JustRightAnswer> answers, bool tooMuch, SeededDraws draws, int times = 10_000)
    {
        Check(answers);
        ArgumentOutOfRangeException.ThrowIfLessThan(times, 100);
        var side = tooMuch ? 1 : -1;
        var (right, other) = (Likings(answers, 0), Likings(answers, side));
        if (right.Length < 2 || other.Length < 2)
        {
            return null;
        }
        // Counts and sums of each taster are all that a draw needs.
        var tasters = answers.GroupBy(answer => answer.Taster).OrderBy(own => own.Key).Select(own =>
            (Right: Likings([.. own], 0), Other: Likings([.. own], side)))
            .Select(own => (Rights: own.Right.Length, RightSum: own.Right.Sum(), Others: own.Other.Length, OtherSum: own.Other.Sum())).ToArray();
        var drops = new List<double>(times);
        for (var time = 0; time < times; time++)
        {
            var (rights, rightSum, others, otherSum) = (0, 0.0, 0, 0.0);
            for (var t = 0; t < tasters.Length; t++)
            {
                var own = tasters[draws.Below(tasters.Length)];
                rights += own.Rights;
                rightSum += own.RightSum;
                others += own.Others;
                otherSum += own.OtherSum;
            }
            if (rights >= 2 && others >= 2)
            {
                drops.Add(rightSum / rights - otherSum / others);
            }
        }
        return drops.Count < times / 2 ? null : Percentiles.Middle95(right.Average() - other.Average(), drops);
    }

    /// <summary>The drops of several properties worked out together, tasters' levels taken out.</summary>
    /// <param name="tasters">The taster of each answer, counted from 0 without gaps.</param>
    /// <param name="ratings">For each property the ratings of the same answers, 1 to 5.</param>
    /// <param name="likings">The liking of the same answers.</param>
    /// <returns>For each property what too little and what too much do to liking; null where the answers leave no error or a side has no answers of its own.</returns>
    /// <remarks>Source: docs/statistics.md, section 3: least squares of liking on both sides of every property and on tasters. Valid for: several samples a taster. Error: rounding.</remarks>
    /// <exception cref="ArgumentException">Lists of different length, no answers, a rating outside 1 to 5, or a liking that is not finite.</exception>
    public static IReadOnlyList<(Coefficient? TooLittle, Coefficient? TooMuch)> Together(IReadOnlyList<int> tasters, IReadOnlyList<IReadOnlyList<int>> ratings, IReadOnlyList<double> likings)
    {
        ScoreTables.CheckFinite(likings);
        if (tasters.Count != likings.Count || ratings.Any(own => own.Count != likings.Count))
        {
            throw new ArgumentException("The lists differ in length.", nameof(ratings));
        }
        if (tasters.Any(taster => taster < 0) || ratings.Any(own => own.Any(rating => rating is < 1 or > 5)))
        {
            throw new ArgumentException("Tasters are counted from 0 and ratings run from 1 to 5.", nameof(ratings));
        }
        var columns = LeastSquares.Indicators(tasters, tasters.Max() + 1);
        var first = columns.Count;
        foreach (var own in ratings)
        {
            columns.Add([.. own.Select(rating => rating < 3 ? 1.0 : 0)]);
            columns.Add([.. own.Select(rating => rating > 3 ? 1.0 : 0)]);
        }
        var fit = new LeastSquares(columns, [.. likings]);
        return [.. ratings.Select((_, place) => (Coefficient.Of(fit, first + 2 * place), Coefficient.Of(fit, first + 2 * place + 1)))];
    }

    private static string Cost(string said, JustRightSide side, Ranged? limits, HouseFormat format)
    {
        var drop = format.Number(side.Drop ?? 0, 1);
        var start = $"{format.Percent(100 * side.Share)} of the answers said {said}; those tasters liked it {drop} points less";
        return (limits ?? side.Limits) is { } range ? $"{start} (range {format.Number(range.Low, 1)} to {format.Number(range.High, 1)})." : start + ".";
    }

    private static void Check(IReadOnlyList<JustRightAnswer> answers)
    {
        ScoreTables.CheckFinite([.. answers.Select(answer => answer.Liking)]);
        if (answers.Any(answer => answer.Rating is < 1 or > 5))
        {
            throw new ArgumentException("Ratings run from 1 to 5.", nameof(answers));
        }
    }

    private static double[] Likings(IReadOnlyList<JustRightAnswer> answers, int side) =>
        [.. answers.Where(answer => Math.Sign(answer.Rating - 3) == side).Select(answer => answer.Liking)];

    private static double? Mean(double[] values) => values.Length == 0 ? null : values.Average();

    private static JustRightSide Side(double[] right, double[] other, int answers)
    {
        var share = (double)other.Length / answers;
        var drop = Mean(right) - Mean(other);
        if (right.Length < 2 || other.Length < 2)
        {
            return new JustRightSide(other.Length, share, Mean(other), drop, share * drop, null, null, null, null, null);
        }
        var (varianceRight, varianceOther) = (Moments.Variance(right), Moments.Variance(other));
        var (a, b) = (varianceRight / right.Length, varianceOther / other.Length);
        // Equal likings may differ from their mean by a rounding.
        if (Moments.IsNothing(varianceRight, right) && Moments.IsNothing(varianceOther, other))
        {
            return new JustRightSide(other.Length, share, Mean(other), drop, share * drop, null, null, null, null, null);
        }
        var error = Math.Sqrt(a + b);
        var degrees = (a + b) * (a + b) / (a * a / (right.Length - 1) + b * b / (other.Length - 1));
        var half = Distributions.StudentQuantile(0.975, degrees) * error;
        var pooledDegrees = right.Length + other.Length - 2;
        var pooled = Math.Sqrt(((right.Length - 1) * varianceRight + (other.Length - 1) * varianceOther) / pooledDegrees);
        var size = drop!.Value;
        return new JustRightSide(other.Length, share, Mean(other), size, share * size, new Ranged(size, size - half, size + half), size / error, degrees,
            Distributions.StudentTwoSided(size / error, degrees), size / pooled * (1 - 3.0 / (4 * pooledDegrees - 1)));
    }
}

/// <summary>A coefficient of a fit.</summary>
/// <param name="Value">The coefficient.</param>
/// <param name="Error">Its standard error.</param>
/// <param name="ByLuck">Chance of so large a coefficient, either way, by luck alone.</param>
public readonly record struct Coefficient(double Value, double Error, double ByLuck)
{
    /// <summary>The coefficient of a column; null where the column follows from others or the fit leaves no error.</summary>
    internal static Coefficient? Of(LeastSquares fit, int column)
    {
        if (fit.Degrees < 1 || !fit.Has(column))
        {
            return null;
        }
        var error = Math.Sqrt(fit.MeanSquare * fit.Variance(fit.Only(column)));
        return error == 0 ? null : new Coefficient(fit.Coefficients[column], error, Distributions.StudentTwoSided(fit.Coefficients[column] / error, fit.Degrees));
    }
}
