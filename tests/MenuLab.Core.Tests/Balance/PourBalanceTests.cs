using MenuLab.Core.Balance;
using MenuLab.Core.Drafts;
using MenuLab.Core.Drafts.Rounds;
using MenuLab.Core.House;
using MenuLab.Core.Tests.Drafts.Rounds;

namespace MenuLab.Core.Tests.Balance;

public class PourBalanceTests
{
    [Fact]
    public void A_pour_as_specified_has_the_figures_of_a_drink_typed_with_its_amounts()
    {
        var draft = Trial.Orchard();
        var round = Trial.Round(draft, 3, RoundSize.Full, new CellAmount(PourLetter.B, draft.Lines[2].Id, 20));
        var typed = Trial.Bench([Trial.Line(Trial.Tea, 45), Trial.Line(Trial.Cordial, 22.5), Trial.Line(Trial.Verjus, 20)]);
        var figures = PourBalance.Of(round, PourLetter.B, Trial.Stock);
        var expected = Balance(typed);
        foreach (var metric in Metrics.All.Select(m => m.Metric))
        {
            Assert.Equal(expected.Served![metric], figures.Whole.Served![metric]);
        }
        Assert.Equal(expected.Served![Metric.Cost], figures.Cost);
        Assert.Same(figures.Whole, figures.Tasted);
    }

    [Fact]
    public void What_was_poured_gives_the_figures_and_not_what_was_specified()
    {
        var draft = Trial.Orchard();
        var cordial = draft.Lines[1].Id;
        var round = Trial.Round(draft, 2);
        Assert.True(round.Set(PourLetter.B, cordial, CellField.Poured, 30, EntryId.New()).IsOk);
        var typed = Trial.Bench([Trial.Line(Trial.Tea, 45), Trial.Line(Trial.Cordial, 30), Trial.Line(Trial.Verjus, 15)]);
        Assert.Equal(Balance(typed).Served![Metric.Sugar], PourBalance.Of(round, PourLetter.B, Trial.Stock).Sweet);
        Assert.True(PourBalance.Of(round, PourLetter.A, Trial.Stock).Sweet.Value < PourBalance.Of(round, PourLetter.B, Trial.Stock).Sweet.Value);
    }

    /// <summary>
    /// Beverage science, section 7: with a weightless tin and no heat of hands the dilution is that of the liquid alone; what the tin and
    /// the hands add is the same heat for half the liquid, so it counts twice per volume. Its table gives 33.9 % with and 29.6 % without
    /// for 110 mL at 22 °C: 4.3 points, hence 8.6 for the half and 12.9 for the third.
    /// </summary>
    [Theory]
    [InlineData(SizeKind.Half, 2.0)]
    [InlineData(SizeKind.Third, 3.0)]
    public void A_smaller_trial_dilutes_more_by_the_heat_of_the_tin_and_the_hands(SizeKind kind, double times)
    {
        // The reference's case B: 103.71 g water and 9.9 g sugar at 22 °C.
        var warm = new[] { Trial.Line(Trial.Tea, 93.81, Unit.Gram), Trial.Line(Trial.Cordial, 19.8, Unit.Gram) }.Select(l => l with { StartCelsius = 22 });
        var draft = Trial.Bench(warm);
        var figures = PourBalance.Of(Trial.Round(draft, 2, new RoundSize(kind)), PourLetter.A, Trial.Stock);
        var (small, whole) = (figures.Tasted.Served![Metric.Dilution].Value, figures.Whole.Served![Metric.Dilution].Value);
        Assert.Equal(33.9, whole, 0.5);
        Assert.Equal(29.6 + 4.3 * times, small, 1.0);
        Assert.True(figures.Sweet.Value < figures.Whole.Served[Metric.Sugar].Value);
        Assert.Equal(Balance(draft).Served![Metric.Volume], figures.Volume);
    }

    [Fact]
    public void The_warning_tells_both_figures_and_is_silent_for_whole_drinks_and_without_ice()
    {
        var draft = Trial.Orchard();
        var half = Trial.Round(draft, 2, RoundSize.Half);
        var figures = PourBalance.Of(half, PourLetter.A, Trial.Stock);
        var (small, whole) = (figures.Tasted.Served![Metric.Dilution].Value, figures.Whole.Served![Metric.Dilution].Value);
        var warning = PourBalance.SmallTrial(half, figures, HouseFormat.Plain);
        Assert.Contains($"{HouseFormat.Plain.Percent(small)} instead of {HouseFormat.Plain.Percent(whole)}", warning, StringComparison.Ordinal);
        Assert.True(small > whole);
        var full = Trial.Round(draft, 2);
        Assert.Equal("", PourBalance.SmallTrial(full, PourBalance.Of(full, PourLetter.A, Trial.Stock), HouseFormat.Plain));
        var straight = Trial.Round(Trial.Orchard("straight"), 2, RoundSize.Half);
        Assert.Equal("", PourBalance.SmallTrial(straight, PourBalance.Of(straight, PourLetter.A, Trial.Stock), HouseFormat.Plain));
    }

    [Fact]
    public void A_half_that_is_not_iced_tastes_as_the_whole_and_its_top_fills_half_a_glass()
    {
        var draft = Trial.Bench([Trial.Line(Trial.Tea, 45), Trial.Line(Trial.Cordial, 22.5), Trial.Top], "straight");
        var figures = PourBalance.Of(Trial.Round(draft, 2, RoundSize.Half), PourLetter.A, Trial.Stock);
        Assert.Equal(figures.Whole.Served![Metric.Sugar].Value, figures.Sweet.Value, 6);
        Assert.Equal(figures.Whole.TopUpGrams / 2, figures.Tasted.TopUpGrams, 6);
        Assert.Equal(figures.Whole.Served[Metric.Volume].Value / 2, figures.Tasted.Served![Metric.Volume].Value, 6);
        Assert.Equal(100, figures.GlassFill.Value, 1);
    }

    [Fact]
    public void A_line_that_is_kept_as_typed_counts_as_unknown_in_a_pour_too()
    {
        var draft = Trial.Bench([Trial.Line(Trial.Tea, 45), LineContent.KeptAsTyped("45 of Mira's smoke", 45)]);
        Assert.Equal(50, PourBalance.Of(Trial.Round(draft, 2, RoundSize.Half), PourLetter.A, Trial.Stock).Strength.UnknownPercent, 0.1);
    }

    private static DrinkBalance Balance(Draft draft)
    {
        var weighed = Weigher.Of(draft.DraftLines, draft.Build.Value, Trial.Stock.Pantry, Trial.Stock.Catalogue, Trial.Stock.Measures, Trial.Stock.PricePerGram);
        return BalanceEngine.Of(weighed.Lines, weighed.Build, Detail.Ranges);
    }
}
