using Bunit;
using MenuLab.Core.House;
using MenuLab.Web.Features.House;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;

namespace MenuLab.Web.Tests.Features.House;

public sealed class HouseDeskTests : BunitContext, IAsyncLifetime
{
    private HouseOnDisk _test = null!;

    public async ValueTask InitializeAsync()
    {
        _test = await HouseOnDisk.OpenAsync();
        Services.AddSingleton(_test.Desk);
        JSInterop.Setup<bool>("keys.lettersAre").SetResult(true);
    }

    async ValueTask IAsyncDisposable.DisposeAsync()
    {
        await base.DisposeAsync();
        await _test.DisposeAsync();
    }

    [Fact]
    public async Task What_is_saved_is_how_the_house_writes_and_reads_from_then_on()
    {
        var told = 0;
        using var page = _test.House.Notice.Listen(Core.Drafts.PageId.New(), _test.Person.Id, null, null, () => told++);
        var form = _test.Desk.Open();
        (form.Numbers, form.Dates, form.FirstUnit, form.Ounce, form.PourStep, form.Currency, form.TimeZone, form.DayTurn) =
            (NumberPattern.Comma, DatePattern.YearMonthDay, FirstUnit.FluidOunces, Ounce.UnitedStates, "7,5", "sek", "Europe/Stockholm", "5:30");
        var saved = await _test.Desk.SaveAsync(form);
        Assert.True(saved.IsOk);
        var book = _test.House.Book;
        Assert.Equal(("22,5", "2026-10-14", Core.Drafts.Unit.FluidOunce), (book.Format.Amount(22.5), book.Format.Day(new DateOnly(2026, 10, 14)), book.FirstUnit));
        Assert.Equal((29.5735, 2, 7.5), (book.Stock.Measures.FluidOunce, book.Settings.MeasuresSet, book.Settings.PourStepMillilitres));
        Assert.Equal(("SEK", "Europe/Stockholm", new TimeOnly(5, 30)), (book.Site.Currency, book.Site.TimeZone, book.Site.DayTurn));
        Assert.Equal(("7,5", "05:30", 1), (saved.Value.PourStep, saved.Value.DayTurn, told));
    }

    [Fact]
    public async Task A_form_that_was_opened_before_somebody_else_saved_is_refused()
    {
        var (mine, theirs) = (_test.Desk.Open(), _test.Desk.Open());
        theirs.Name = "Theirs";
        Assert.True((await _test.Desk.SaveAsync(theirs)).IsOk);
        mine.Name = "Mine";
        Assert.Contains("Somebody else saved", Assert.Single((await _test.Desk.SaveAsync(mine)).Problems).Message, StringComparison.Ordinal);
        Assert.Equal("Theirs", _test.House.Book.Settings.Name);
    }

    [Theory]
    [InlineData("1,500", "04:00", "PourStep")]
    [InlineData("2.5", "half four", "DayTurn")]
    [InlineData("0.1", "04:00", "PourStepMillilitres")]
    public async Task What_cannot_be_read_is_told_beside_its_field_and_nothing_is_saved(string step, string turn, string field)
    {
        var form = _test.Desk.Open();
        (form.PourStep, form.DayTurn, form.Name) = (step, turn, "Changed");
        Assert.Equal(field, Assert.Single((await _test.Desk.SaveAsync(form)).Problems).Field);
        Assert.Equal("", _test.House.Book.Settings.Name);
    }

    [Fact]
    public void Examples_follow_the_form_before_it_is_saved()
    {
        var form = _test.Desk.Open();
        Assert.Equal("22.5 mL · ¾ fl oz", HouseExamples.Amount(form));
        (form.Numbers, form.FirstUnit, form.Ounce) = (NumberPattern.Comma, FirstUnit.FluidOunces, Ounce.UnitedStates);
        Assert.Equal("¾ fl oz · 22,18 mL", HouseExamples.Amount(form));
        form.TimeZone = "Europe/Lisbon";
        Assert.Equal("It is 12:00 there, and the bar's day is 3 Nov 2026.", HouseExamples.Clock(form, _test.Clock.Now));
        Assert.Equal("It is 03:00 there, and the bar's day is 2 Nov 2026.", HouseExamples.Clock(form, _test.Clock.Now.AddHours(-9)));
        form.TimeZone = "Mars/Olympus";
        Assert.Equal("", HouseExamples.Clock(form, _test.Clock.Now));
    }

    [Fact]
    public void The_page_shows_examples_live_and_loads_itself_anew_after_saving()
    {
        var page = Render<HousePage>();
        Assert.Contains("22.5 mL · ¾ fl oz", page.Find("#unit-told").TextContent, StringComparison.Ordinal);
        page.Find("#numbers").Change("Comma");
        Assert.Contains("€0,91", page.Find("#currency-told").TextContent, StringComparison.Ordinal);
        page.Find("#ounce").Change("UnitedStates");
        Assert.Contains("Saved iterations keep the ounce", page.Find("#ounce-told").TextContent, StringComparison.Ordinal);
        page.Find("form").Submit();
        page.WaitForAssertion(() => Assert.EndsWith("/house?saved=true", Services.GetRequiredService<NavigationManager>().Uri, StringComparison.Ordinal));
        Assert.Equal((NumberPattern.Comma, 2), (_test.House.Book.Settings.NumberPattern, _test.House.Book.Settings.MeasuresSet));
    }

    [Fact]
    public async Task The_other_bar_is_shown_from_the_next_page_on_and_is_remembered()
    {
        var before = _test.Current;
        Assert.Equal("", await _test.Desk.ShowAsync(demo: true));
        Assert.True(_test.House.IsDemo);
        Assert.False(before.House.IsDemo);
        Assert.True(_test.Folder.ShowsDemo);
        Assert.Equal("", await _test.Desk.ShowAsync(demo: false));
        Assert.False(_test.Folder.ShowsDemo);
    }
}
