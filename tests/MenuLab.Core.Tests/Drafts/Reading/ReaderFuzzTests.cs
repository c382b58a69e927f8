using MenuLab.Core.Drafts.Reading;
using MenuLab.TestKit.Reading;

namespace MenuLab.Core.Tests.Reading;

public sealed class ReaderFuzzTests
{
    // A million lines are the benchmark's; here as many as a test may take.
    [Theory]
    [InlineData(1UL)]
    [InlineData(20251125UL)]
    public void Mutated_and_random_lines_are_neither_lost_nor_thrown_at(ulong seed)
    {
        var count = ReaderFuzz.Run(Reader.OfShipped, 15_000, seed);
        Assert.True(count.LinesLost == 0 && count.LinesThrown == 0, count.FirstFault);
        Assert.True(count.LinesFuzzed >= 15_000);
    }

    [Fact]
    public void A_paste_of_ten_megabytes_is_answered_with_a_message_and_kept_whole()
    {
        var paste = string.Concat(Enumerable.Repeat("45 ml apple juice\n", 600_000));
        var drink = Reader.OfShipped.Read(paste, Reader.InMillilitres);
        var unread = Assert.Single(drink.Unread);
        Assert.Equal(paste, unread.Text);
        Assert.Contains("longer than", unread.Reason, StringComparison.Ordinal);
        Assert.Equal(paste, Assert.Single(drink.Account).Text);
        Assert.Single(Reader.OfShipped.ReadSheet(paste, Reader.InMillilitres));
    }

    [Fact]
    public void A_line_of_ten_thousand_characters_stays_unread_and_the_others_are_read()
    {
        var drink = Reader.Read("45 ml apple juice", new string('a', 10_000), "20 ml honey");
        Assert.Equal(2, drink.Lines.Count);
        Assert.Equal(2, Assert.Single(drink.Unread).Line);
    }

    [Fact]
    public void The_longest_line_that_is_read_costs_no_more_than_its_length()
    {
        // Patterns on which a backtracking reader would hang; a minute is far beyond any machine's noise.
        using var stop = new CancellationTokenSource(TimeSpan.FromMinutes(1));
        foreach (var shard in (string[])["lemon ", "1 ", "(", "a ", "1/", "- ", "20 lemon or ", "aple jucie ", "3:", "equal parts ", "w/", "half a "])
        {
            var line = string.Concat(Enumerable.Repeat(shard, DrinkReader.MaxLine / shard.Length));
            Assert.NotEmpty(Reader.Read(line).Account);
            Assert.False(stop.IsCancellationRequested, shard);
        }
    }
}
