using MenuLab.Core.Drafts.Rounds;

namespace MenuLab.Core.Tests.Drafts.Rounds;

public class StabilityTastesTests
{
    private static readonly IReadOnlySet<TasteMoment> None = new HashSet<TasteMoment>();

    [Theory]
    [InlineData(0, TasteState.Due, TasteState.Later, TasteState.Later, TasteMoment.Minute0)]
    [InlineData(4.9, TasteState.Due, TasteState.Later, TasteState.Later, TasteMoment.Minute0)]
    [InlineData(5, TasteState.Missed, TasteState.Due, TasteState.Later, TasteMoment.Minute5)]
    [InlineData(12, TasteState.Missed, TasteState.Missed, TasteState.Due, TasteMoment.Minute10)]
    [InlineData(25, TasteState.Missed, TasteState.Missed, TasteState.Missed, null)]
    public void In_the_glass_one_taste_is_due_until_the_next_one_is(double minutes, TasteState zero, TasteState five, TasteState ten, TasteMoment? next)
    {
        var tastes = StabilityTastes.Glass(Trial.Noon, Trial.Noon.AddMinutes(minutes), None);
        Assert.Equal([zero, five, ten], tastes.Select(t => t.State));
        Assert.Equal([0, 5, 10], tastes.Select(t => (t.At - Trial.Noon).TotalMinutes));
        Assert.Equal(next, StabilityTastes.Next(tastes)?.Moment);
    }

    [Theory]
    [InlineData(0, TasteMoment.Day0)]
    [InlineData(2, TasteMoment.Day1)]
    [InlineData(3, TasteMoment.Day3)]
    [InlineData(13, TasteMoment.Day7)]
    [InlineData(14, null)]
    public void From_the_bottle_what_is_due_comes_before_what_comes_later(int days, TasteMoment? next)
    {
        var day = new DateOnly(2026, 11, 3);
        Assert.Equal(next, StabilityTastes.Next(StabilityTastes.Bottle(day, day.AddDays(days), None))?.Moment);
    }

    [Fact]
    public void What_was_tasted_is_not_due_and_the_next_is_the_one_to_come()
    {
        var day = new DateOnly(2026, 11, 3);
        var tastes = StabilityTastes.Bottle(day, day.AddDays(1), new HashSet<TasteMoment> { TasteMoment.Day0, TasteMoment.Day1 });
        Assert.Equal([TasteState.Tasted, TasteState.Tasted, TasteState.Later, TasteState.Later], tastes.Select(t => t.State));
        Assert.Equal((TasteMoment.Day3, day.AddDays(3)), StabilityTastes.Next(tastes) is { } next ? (next.Moment, next.On) : default);
    }

    [Fact]
    public void Every_moment_says_how_long_it_is_after()
    {
        (int, bool)[] passed = [(0, false), (5, false), (10, false), (0, true), (1, true), (3, true), (7, true)];
        Assert.Equal(passed, Enum.GetValues<TasteMoment>().Select(StabilityTastes.Passed));
    }
}
