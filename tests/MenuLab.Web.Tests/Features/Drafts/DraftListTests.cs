using Bunit;
using MenuLab.Core.Drafts;
using MenuLab.Core.House;
using MenuLab.Core.Iterations;
using MenuLab.Core.Pantry;
using MenuLab.Data.Drafts;
using MenuLab.Data.Pantry;
using MenuLab.Web.Features.Drafts;
using MenuLab.Web.Features.House;
using MenuLab.Web.Tests.Features.House;
using Microsoft.Extensions.DependencyInjection;

namespace MenuLab.Web.Tests.Features.Drafts;

public sealed class DraftListTests : BunitContext, IAsyncLifetime
{
    private HouseOnDisk _test = null!;

    public async ValueTask InitializeAsync()
    {
        _test = await HouseOnDisk.OpenAsync();
        JSInterop.Mode = JSRuntimeMode.Loose;
        Services.AddSingleton(_test.Drafts);
    }

    async ValueTask IAsyncDisposable.DisposeAsync()
    {
        await base.DisposeAsync();
        await _test.DisposeAsync();
    }

    [Fact]
    public void An_empty_house_offers_three_ways_in()
    {
        var page = Page();
        Assert.Equal(["/type", "/drafts/new", "/drafts/import"], page.FindAll(".ways a").Select(a => a.GetAttribute("href")));
    }

    [Fact]
    public async Task Drafts_stand_in_three_groups_and_a_search_shows_in_which_it_found_something()
    {
        await StartAsync("Åkerholm Fog", slot: "first of the evening");
        await StartAsync("Pier");
        var rope = await StartAsync("Barley Rope");
        await _test.Drafts.StandAsync(rope, Standing.Parked, "no barley");
        var page = Page();
        Assert.Equal(["In the works 2", "Parked 1", "Dropped 0"], Groups(page));
        Assert.Equal(["Pier", "Åkerholm Fog"], Names(page));

        page.Find("input[type=search]").Input("akerHOLM");
        Assert.Equal(["In the works 1", "Parked 0", "Dropped 0"], Groups(page));
        page.Find("input[type=search]").Input("evening");
        Assert.Equal(["Åkerholm Fog"], Names(page));
        page.Find("input[type=search]").Input("rope");
        Assert.Equal(["In the works 0", "Parked 1", "Dropped 0"], Groups(page));
        Assert.Contains("look under the other words", page.Find(".empty").TextContent, StringComparison.Ordinal);
        page.FindAll("input[type=radio]")[1].Change(true);
        Assert.Contains("Parked: no barley", page.Find("[data-testid=draft]").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Dropping_asks_for_a_reason_and_does_nothing_without_one()
    {
        await StartAsync("Pier");
        var page = Page();
        Button(page, "Drop").Click();
        page.Find("tr.ask form").Submit();
        Assert.Equal(["In the works 1", "Parked 0", "Dropped 0"], Groups(page));
        page.Find("tr.ask input").Input("too close to last year");
        await page.Find("tr.ask form").SubmitAsync();
        page.WaitForAssertion(() => Assert.Equal(["In the works 0", "Parked 0", "Dropped 1"], Groups(page)));
        Assert.Equal("Pier is dropped now.", page.Find(".said").TextContent);
        var listed = Assert.Single(await _test.Drafts.ListAsync());
        Assert.Equal((Standing.Dropped, "too close to last year"), (listed.Standing, listed.Reason));

        page.FindAll("input[type=radio]")[2].Change(true);
        await Button(page, "Take up").ClickAsync(new());
        page.WaitForAssertion(() => Assert.Equal(["In the works 1", "Parked 0", "Dropped 0"], Groups(page)));
    }

    [Fact]
    public async Task Parking_names_what_the_house_made_for_this_draft_and_nothing_else()
    {
        var own = IngredientId.New();
        Assert.True((await new PantryWriting(_test.House.Writer, _test.Clock).Add(new NewIngredient(own, "Fennel and salt syrup", IngredientKind.SugarOrSyrup, CompositionBuilder.PerMass, 4), _test.Person.Id)).IsOk);
        await _test.House.RefreshAsync();
        var pier = await StartAsync("Pier");
        var line = new LineContent { Text = "15 ml fennel and salt syrup", Ingredient = own, Amount = new TypedAmount(15, null, null, Unit.Millilitre), StartCelsius = 4 };
        Assert.True((await _test.House.Drafts.Apply(pier.Id, EditId.New(), _test.Person.Id, PageId.New(), pier.Version, new AddLine(LineId.New(), line, null))).IsOk);
        var page = Page();
        Assert.Empty(page.FindAll("[data-testid=idle]"));
        Button(page, "Park").Click();
        page.Find("tr.ask input").Input("waits for the quince");
        await page.Find("tr.ask form").SubmitAsync();
        page.WaitForAssertion(() => Assert.Equal("Fennel and salt syrup", page.Find("[data-testid=idle] li").TextContent));
        Assert.Equal($"/pantry/{own.Value}", page.Find("[data-testid=idle] a").GetAttribute("href"));
    }

    [Fact]
    public async Task When_two_people_put_a_draft_elsewhere_the_later_one_stands_and_is_told()
    {
        var seen = await StartAsync("Pier");
        Assert.Equal("", await _test.Drafts.StandAsync(seen, Standing.Parked, ""));
        // Each desk is a page of its own; this one has seen the draft before it was parked.
        var said = await _test.Drafts.StandAsync(seen, Standing.Dropped, "no");
        Assert.Contains("had just put Pier elsewhere (parked)", said, StringComparison.Ordinal);
        Assert.Equal(Standing.Dropped, Assert.Single(await _test.Drafts.ListAsync()).Standing);
    }

    [Fact]
    public void A_row_says_figures_as_the_house_writes_them_and_unknown_in_a_word()
    {
        var row = Row(new IterationFigures { Sugar = 6.24, Acid = 0.617, Abv = 0.3, Cost = 0.91, Unknown = 0 }, new HouseFormat(NumberPattern.Comma));
        Assert.Equal(("6,2", "0,62", "0,30", "€0,91"), (row.Sugar, row.Acid, row.Strength, row.Cost));
        row = Row(new IterationFigures { Sugar = 6.24, Unknown = 12 }, HouseFormat.Plain);
        Assert.Equal(("at least 6.2", "unknown", "unknown", "unknown"), (row.Sugar, row.Acid, row.Strength, row.Cost));
        row = Row(null, HouseFormat.Plain);
        Assert.Equal(("", "", "", ""), (row.Sugar, row.Acid, row.Strength, row.Cost));
    }

    [Theory]
    [InlineData(0, "today")]
    [InlineData(1, "tomorrow")]
    [InlineData(5, "in 5 days")]
    [InlineData(-1, "1 day overdue")]
    [InlineData(-14, "14 days overdue")]
    public void A_due_day_is_said_in_words(int days, string words)
    {
        var today = new DateOnly(2026, 11, 3);
        Assert.Equal(words, DaysInWords.Due(today.AddDays(days), today));
    }

    [Fact]
    public async Task Only_a_draft_in_the_works_is_overdue()
    {
        var id = DraftId.New();
        await _test.Starter.FromBriefAsync(id, new BriefForm { Name = "Late", Due = new DateOnly(2026, 11, 1) }.Read("EUR").Value);
        var row = Assert.Single(await _test.Drafts.ListAsync());
        Assert.Equal(("2 days overdue", "1 Nov 2026", true), (row.Due, row.DueDay, row.IsOverdue));
        await _test.Drafts.StandAsync(row, Standing.Parked, "");
        row = Assert.Single(await _test.Drafts.ListAsync());
        Assert.Equal(("", "1 Nov 2026", false), (row.Due, row.DueDay, row.IsOverdue));
    }

    [Theory]
    [InlineData("2026-11-03T23:59", "2026-11-04T02:30", "today, 23:59")]
    [InlineData("2026-11-04T01:15", "2026-11-04T02:30", "today, 01:15")]
    [InlineData("2026-11-03T23:59", "2026-11-04T04:00", "yesterday, 23:59")]
    [InlineData("2026-10-14T18:05", "2026-11-04T04:00", "14 Oct 2026, 18:05")]
    public void After_midnight_it_is_still_today_until_the_sites_day_turns(string instant, string now, string words)
    {
        var lisbon = Site.Of(SiteId.New(), "Shed", "Europe/Lisbon", new TimeOnly(4, 0), "EUR", "EU").Value;   // UTC in November, UTC+1 to 25 October
        var at = DateTimeOffset.Parse(instant + (instant.StartsWith("2026-10", StringComparison.Ordinal) ? "+01:00" : "Z"), System.Globalization.CultureInfo.InvariantCulture);
        Assert.Equal(words, DaysInWords.When(at, DateTimeOffset.Parse(now + "Z", System.Globalization.CultureInfo.InvariantCulture), lisbon, HouseFormat.Plain));
    }

    private static string[] Groups(IRenderedComponent<DraftsPage> page) => [.. page.FindAll(".choice span").Select(s => s.TextContent)];

    private static string[] Names(IRenderedComponent<DraftsPage> page) => [.. page.FindAll("[data-testid=draft] th a").Select(a => a.TextContent)];

    private static AngleSharp.Dom.IElement Button(IRenderedComponent<DraftsPage> page, string word) => page.FindAll("[data-testid=draft] button").First(b => b.TextContent.StartsWith(word, StringComparison.Ordinal));

    private IRenderedComponent<DraftsPage> Page()
    {
        var page = Render<DraftsPage>();
        page.WaitForState(() => !page.Markup.Contains("Reading …", StringComparison.Ordinal));
        return page;
    }

    private DraftRow Row(IterationFigures? figures, HouseFormat format)
    {
        var settings = new HouseSettings();
        Assert.True(settings.Change(new HouseWish { NumberPattern = format.Numbers, DatePattern = format.Dates }).IsOk);
        var book = new HouseBook(_test.House.Book.Stock, settings, _test.House.Book.Site);
        return DraftRow.Of(new DraftListing(DraftId.New(), "Fog", null, Standing.InTheWorks, _test.Clock.Now, figures is null ? 0 : 1) { LastFigures = figures }, book, _test.Clock.Now);
    }

    private async Task<DraftRow> StartAsync(string name, string slot = "")
    {
        _test.Clock.Now = _test.Clock.Now.AddMinutes(1);
        var id = DraftId.New();
        Assert.True((await _test.Starter.FromBriefAsync(id, new BriefForm { Name = name, Slot = slot }.Read("EUR").Value)).IsOk);
        return (await _test.Drafts.ListAsync()).Single(d => d.Id == id);
    }
}
