using CsCheck;
using MenuLab.Core.Statistics;

namespace MenuLab.Core.Tests.Statistics;

public sealed class SeededDrawsTests
{
    [Fact] // SplitMix64, seed 1234567: the first five outputs as they are published with the algorithm (MEMORY)
    public void The_first_numbers_of_a_seed_are_the_published_ones()
    {
        var draws = new SeededDraws(1234567);
        ulong[] published = [6457827717110365317, 3203168211198807973, 9817491932198370423, 4593380528125082431, 16408922859458223821];
        Assert.Equal(published, published.Select(_ => draws.Bits()));
    }

    [Fact]
    public void Whole_numbers_come_up_equally_often()
    {
        var draws = new SeededDraws(1);
        var counts = new int[7];
        for (var i = 0; i < 70_000; i++)
        {
            counts[draws.Below(7)]++;
        }
        // Five standard deviations of a count of 10,000 at one in seven.
        Assert.All(counts, count => Assert.InRange(count, 10_000 - 463, 10_000 + 463));
    }

    [Fact]
    public void A_shuffle_keeps_every_item_and_a_seed_keeps_the_order() =>
        Gen.Select(Gen.ULong, Gen.Int[1, 30]).Sample((seed, count) =>
        {
            var first = Enumerable.Range(0, count).ToArray();
            var second = Enumerable.Range(0, count).ToArray();
            new SeededDraws(seed).Shuffle<int>(first);
            new SeededDraws(seed).Shuffle<int>(second);
            return first.SequenceEqual(second) && first.Order().SequenceEqual(Enumerable.Range(0, count));
        });

    [Fact]
    public void A_bound_below_one_is_refused() => Assert.Throws<ArgumentOutOfRangeException>(() => new SeededDraws(1).Below(0));
}
