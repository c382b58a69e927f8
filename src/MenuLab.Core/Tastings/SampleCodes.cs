using MenuLab.Core.Statistics;

namespace MenuLab.Core.Tastings;

/// <summary>Three-digit numbers that stand for samples and say nothing: no pattern, no meaning, and hard to mistake for one another.</summary>
public static class SampleCodes
{
    /// <summary>The lowest code.</summary>
    public const int Lowest = 100;

    /// <summary>The highest code.</summary>
    public const int Highest = 999;

    // Numbers that mean something outside the bar: emergency calls, lessons of a year, web errors, luck and bad luck.
    private static readonly HashSet<int> WithMeaning =
        [101, 110, 112, 115, 118, 119, 187, 211, 247, 311, 360, 365, 404, 411, 420, 500, 501, 666, 711, 747, 777, 808, 911, 999];

    /// <summary>Every number that may be a code in any house.</summary>
    /// <returns>847 numbers, rising.</returns>
    /// <remarks>Source: docs/statistics.md, section 1.1; the exclusions are ours: three equal digits, runs up or down, hundreds, numbers with a meaning. Valid for: any tasting. Error: none.</remarks>
    public static IReadOnlyList<int> Candidates { get; } = [.. Enumerable.Range(Lowest, Highest - Lowest + 1).Where(MayBeACode)];

    /// <summary>Draws codes.</summary>
    /// <param name="count">How many, 1 or more.</param>
    /// <param name="used">Codes that this tasting has used already.</param>
    /// <param name="houseNumbers">Numbers that mean something in this house: street, tables, prices, strengths, batches.</param>
    /// <param name="draw">Where chance comes from; for a real tasting a source that nobody can foretell.</param>
    /// <returns>Different codes, none used; none a reordering of another or one digit away from it while there are enough; a problem when there are not enough at all.</returns>
    /// <remarks>
    /// Source: docs/statistics.md, section 1.1 (random three-digit codes, each once a tasting: AS 2542.2.2, 5.5). With all rules some 70 to 80 codes
    /// fit a tasting; after that codes one digit apart are let in, then reordered ones. Valid for: one tasting. Error: none.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than one.</exception>
    public static Result<IReadOnlyList<int>> Draw(int count, IReadOnlyCollection<int> used, IReadOnlyCollection<int> houseNumbers, Draw draw)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1);
        var left = Candidates.Except(houseNumbers).Except(used).ToArray();
        if (left.Length < count)
        {
            return Result.Invalid<IReadOnlyList<int>>(new Problem("Codes", $"Only {left.Length} codes are left for this tasting. Shorten the list of house numbers or start another tasting."));
        }
        SeededDraws.Shuffle<int>(left, draw);
        var taken = new List<int>(used);
        foreach (var (reordered, near) in new[] { (false, false), (false, true), (true, true) })
        {
            foreach (var code in left)
            {
                if (taken.Count == used.Count + count)
                {
                    break;
                }
                if (!taken.Any(other => other == code || (!near && DigitsApart(code, other) == 1) || (!reordered && SameDigits(code, other))))
                {
                    taken.Add(code);
                }
            }
        }
        return Result.Ok<IReadOnlyList<int>>(taken.GetRange(used.Count, count));
    }

    /// <summary>In how many places two codes differ, 0 to 3.</summary>
    internal static int DigitsApart(int one, int other) => Digits(one).Zip(Digits(other)).Count(pair => pair.First != pair.Second);

    /// <summary>Whether two codes hold the same digits in any order.</summary>
    internal static bool SameDigits(int one, int other) => Digits(one).Order().SequenceEqual(Digits(other).Order());

    private static bool MayBeACode(int code)
    {
        var digits = Digits(code);
        var (first, second) = (digits[1] - digits[0], digits[2] - digits[1]);
        var isPattern = first == second && Math.Abs(first) <= 1;
        return !isPattern && code % 100 != 0 && !WithMeaning.Contains(code);
    }

    private static int[] Digits(int code) => [code / 100, code / 10 % 10, code % 10];
}
