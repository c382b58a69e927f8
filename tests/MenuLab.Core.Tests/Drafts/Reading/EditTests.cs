using MenuLab.Core.Drafts.Reading;

namespace MenuLab.Core.Tests.Reading;

public sealed class EditTests
{
    private static readonly string[] Drink = ["Night Rope", "45 ml apple juice", "20 ml lemon juice", "10 ml honey", "1 pinch salt", "shake 10 s, coupe"];

    private static ReadDrink Edit(string text) => Reader.OfShipped.Edit(Reader.Read(Drink), text, Reader.InMillilitres);

    private static string Show(ReadDrink drink) => string.Join("; ", drink.Lines.Select(l => FormattableString.Invariant($"{l.Amount} {Reader.Key(l)}")));

    [Theory]
    [InlineData("as 4 but lemon 20 > 22.5", "45 apple_juice; 22.5 lemon_juice; 10 honey; 1 salt")]
    [InlineData("lemon 22,5", "45 apple_juice; 22.5 lemon_juice; 10 honey; 1 salt")]
    [InlineData("22.5 lemon", "45 apple_juice; 22.5 lemon_juice; 10 honey; 1 salt")]
    [InlineData("lemon up to 25, honey down 2.5", "45 apple_juice; 25 lemon_juice; 7.5 honey; 1 salt")]
    [InlineData("apple +5; honey -1", "50 apple_juice; 20 lemon_juice; 9 honey; 1 salt")]
    [InlineData("no salt", "45 apple_juice; 20 lemon_juice; 10 honey")]
    [InlineData("without honey and no salt", "45 apple_juice; 20 lemon_juice")]
    [InlineData("double the honey", "45 apple_juice; 20 lemon_juice; 20 honey; 1 salt")]
    [InlineData("halve the honey", "45 apple_juice; 20 lemon_juice; 5 honey; 1 salt")]
    [InlineData("lime instead of lemon", "45 apple_juice; 20 lime_juice; 10 honey; 1 salt")]
    [InlineData("swap honey for maple syrup", "45 apple_juice; 20 lemon_juice; 10 maple_syrup; 1 salt")]
    [InlineData("+ 2 dashes aromatic bitters", "45 apple_juice; 20 lemon_juice; 10 honey; 1 salt; 2 bitters_aromatic")]
    public void A_clear_edit_is_done(string text, string expected)
    {
        var edited = Edit(text);
        Assert.Equal(expected, Show(edited));
        Assert.Empty(edited.Questions);
        Assert.Empty(edited.Unread);
        Assert.Equal("Night Rope", edited.Name);
    }

    [Theory]
    [InlineData("lemon 25 > 22.5")]
    [InlineData("no pepper")]
    [InlineData("agave 10 > 8")]
    [InlineData("a touch less honey")]
    [InlineData("honey -20")]
    [InlineData("swap honey for simple syrup")]
    [InlineData("double it")]
    [InlineData("lemon 1,500")]
    [InlineData("make it nicer")]
    public void An_unclear_edit_changes_nothing_and_is_asked_or_kept(string text)
    {
        var edited = Edit(text);
        Assert.Equal(Show(Reader.Read(Drink)), Show(edited));
        Assert.True(edited.Questions.Count + edited.Unread.Count + edited.Notes.Count > 0);
    }

    [Fact]
    public void Lines_that_the_edit_does_not_name_stay_as_they_were()
    {
        var before = Reader.Read(Drink);
        var edited = Reader.OfShipped.Edit(before, "lemon 20 > 25", Reader.InMillilitres);
        Assert.Same(before.Lines[0], edited.Lines[0]);
        Assert.Same(before.Lines[2], edited.Lines[2]);
    }

    [Fact]
    public void The_build_changes_only_where_the_edit_says()
    {
        var edited = Edit("as 4 but stir 30 s, over a big rock");
        Assert.Equal(("stirred", 30.0, "coupe", "block"), (edited.Build.Method, edited.Build.Seconds, edited.Build.Glass, edited.Build.ServedOn));
        Assert.Equal("shaken", Edit("no salt").Build.Method);
    }

    [Fact]
    public void Open_questions_of_the_drink_are_not_lost_by_an_edit()
    {
        var before = Reader.Read("45 ml apple juice", "20 ml quince cordial", "honey ?? 3");
        var edited = Reader.OfShipped.Edit(before, "apple 45 > 40", Reader.InMillilitres);
        Assert.Equal(before.Questions.Count + before.Unread.Count, edited.Questions.Count + edited.Unread.Count);
    }
}
