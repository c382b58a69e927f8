namespace MenuLab.Core.Statistics;

/// <summary>How many judgements a forced choice takes. The chance of success goes up and down by single judgements, hence two answers.</summary>
/// <param name="First">The fewest judgements that reach the wanted chance.</param>
/// <param name="Stable">The judgements from which on it never falls below again.</param>
public readonly record struct Judgements(int First, int Stable);

/// <summary>Power of a forced choice and the judgements it takes.</summary>
/// <remarks>Source: docs/statistics.md, section 4.6; the first numbers equal the assessor tables of ISO 4120 and ISO 10399 (MEMORY). Valid for: independent judgements. Error: 1e-8 in the chance, none in the count.</remarks>
public static class PanelSize
{
    /// <summary>Chance that so many judgements show a difference.</summary>
    /// <param name="judgements">All answers, 1 to <see cref="BinomialTest.MostJudgements"/>.</param>
    /// <param name="guess">Share right by guessing, above 0 and below 1.</param>
    /// <param name="right">True share of right answers, 0 to 1.</param>
    /// <param name="level">The chance by luck that is accepted, above 0 and below 1.</param>
    /// <returns>0 to 1; zero where not even all right would do.</returns>
    /// <remarks>Source, valid range and error: see the class.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its range.</exception>
    public static double Power(int judgements, double guess, double right, double level = 0.05)
    {
        Guard.InRange(right, 0, 1);
        return BinomialTest.FewestRight(judgements, guess, level) is { } fewest ? Distributions.BinomialUpper(fewest, judgements, right) : 0;
    }

    /// <summary>The judgements that it takes to show a difference with a wanted chance.</summary>
    /// <param name="guess">Share right by guessing, above 0 and below 1.</param>
    /// <param name="right">True share of right answers, above <paramref name="guess"/> and below 1.</param>
    /// <param name="power">The wanted chance, above 0 and below 1; 0.8 is usual.</param>
    /// <param name="level">The chance by luck that is accepted, above 0 and below 1.</param>
    /// <returns>The counts; null where even <see cref="BinomialTest.MostJudgements"/> would not do.</returns>
    /// <remarks>Source, valid range and error: see the class. The second count is looked for up to twice the first plus 60.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its range.</exception>
    public static Judgements? Required(double guess, double right, double power, double level = 0.05)
    {
        BinomialTest.CheckShare(guess, nameof(guess));
        BinomialTest.CheckShare(power, nameof(power));
        BinomialTest.CheckShare(level, nameof(level));
        if (!(right > guess && right < 1))
        {
            throw new ArgumentOutOfRangeException(nameof(right), right, "Must be above the guessing share and below 1.");
        }
        var (first, stable) = (0, 1);
        var from = 0;
        for (var n = 1; n <= BinomialTest.MostJudgements && (first == 0 || n <= 2 * first + 60); n++)
        {
            var fewest = BinomialTest.FewestRight(n, guess, level, from);
            from = fewest ?? from;
            var reached = fewest is { } count && Distributions.BinomialUpper(count, n, right) >= power;
            first = first == 0 && reached ? n : first;
            stable = reached ? stable : n + 1;
        }
        return first == 0 ? null : new Judgements(first, stable);
    }
}
