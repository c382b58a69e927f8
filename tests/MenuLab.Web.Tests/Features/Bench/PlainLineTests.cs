using MenuLab.Web.Features.Bench;

namespace MenuLab.Web.Tests.Features.Bench;

public class PlainLineTests
{
    private const string Text = "Sour\n2 lime, 15 ml verjus\n15 ml honey";

    [Fact]
    public void Only_the_asked_piece_of_the_line_changes() =>
        Assert.Equal("Sour\n60 ml lime juice, 15 ml verjus\n15 ml honey", PlainLine.Put(Text, 2, "2 lime", "60 ml lime juice"));

    [Fact]
    public void A_piece_that_is_not_there_any_more_gives_way_with_its_whole_line() =>
        Assert.Equal("Sour\n60 ml lime juice\n15 ml honey", PlainLine.Put(Text, 2, "3 lemon", "60 ml lime juice"));

    [Theory]
    [InlineData(0)]
    [InlineData(4)]
    public void A_line_that_is_not_there_changes_nothing(int line) =>
        Assert.Equal(Text, PlainLine.Put(Text, line, "2 lime", "60 ml lime juice"));
}
