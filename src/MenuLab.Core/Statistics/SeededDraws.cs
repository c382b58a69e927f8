namespace MenuLab.Core.Statistics;

/// <summary>Draws a whole number from 0 up to, but not including, a bound; each with the same chance.</summary>
/// <param name="below">The bound, 1 or more.</param>
public delegate int Draw(int below);

/// <summary>
/// Random numbers that a seed decides: the same seed gives the same numbers on every machine and in every version. For resampling and for
/// designs that must be made again alike; not for secrets (codes of a blind tasting are drawn with the caller's own source).
/// </summary>
/// <remarks>
/// Source: SplitMix64 of Steele, Lea and Flood 2014 (MEMORY): the state grows by 0x9E3779B97F4A7C15, the output is the state stirred by two
/// multiplications and three shifts. Its published first outputs for seed 1234567 are a test. Whole numbers below a bound: the upper half
/// of the 128-bit product, with the uneven remainder refused (Lemire 2019, MEMORY). Period 2^64.
/// </remarks>
/// <param name="seed">Any number.</param>
public sealed class SeededDraws(ulong seed)
{
    private ulong _state = seed;

    /// <summary>The next 64 random bits.</summary>
    public ulong Bits()
    {
        _state += 0x9E3779B97F4A7C15;
        var mixed = _state;
        mixed = (mixed ^ (mixed >> 30)) * 0xBF58476D1CE4E5B9;
        mixed = (mixed ^ (mixed >> 27)) * 0x94D049BB133111EB;
        return mixed ^ (mixed >> 31);
    }

    /// <summary>A whole number from 0 up to, but not including, a bound.</summary>
    /// <param name="below">The bound, 1 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">A bound below 1.</exception>
    public int Below(int below)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(below, 1);
        var bound = (ulong)below;
        while (true)
        {
            var high = Math.BigMul(Bits(), bound, out var low);
            // The division is only needed where the remainder could be uneven: hardly ever for small bounds.
            if (low >= bound || low >= (0 - bound) % bound)
            {
                return (int)high;
            }
        }
    }

    /// <summary>Puts a list into random order, every order with the same chance (Fisher and Yates).</summary>
    /// <param name="items">Changed in place.</param>
    public void Shuffle<T>(Span<T> items)
    {
        // Not by way of the other one: a delegate a row is felt in a million rows.
        for (var last = items.Length - 1; last > 0; last--)
        {
            var other = Below(last + 1);
            (items[last], items[other]) = (items[other], items[last]);
        }
    }

    internal static void Shuffle<T>(Span<T> items, Draw draw)
    {
        for (var last = items.Length - 1; last > 0; last--)
        {
            var other = draw(last + 1);
            (items[last], items[other]) = (items[other], items[last]);
        }
    }
}
