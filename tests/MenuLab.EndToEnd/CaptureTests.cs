using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace MenuLab.EndToEnd;

/// <summary>What is noted down behind the bar, with and without a network.</summary>
public class CaptureTests(SiteAndBrowser run)
{
    [Fact]
    public async Task Forty_entries_of_two_devices_arrive_once_in_order_and_with_their_authors_after_twenty_minutes_without_network_and_server()
    {
        await using var site = await run.StartAnotherAsync();
        var address = site.Address.GetLeftPart(UriPartial.Authority);
        await using var one = await OpenAsync(address, 390, 844);
        await using var other = await OpenAsync(address, 1024, 768);
        var done = await TwoDevices.RunAsync(site, one.Page, other.Page, ("Ines", "Joss"), entries: 40);
        Assert.Equal((40, 40, 0, 0, true), (done.Noted.Count, done.Arrived.Count, done.Lost, done.Doubled, done.IsInOrder));
        Assert.All(done.Noted, noted => Assert.Contains((noted.Words, noted.Device), done.Arrived));
        Assert.Empty(one.Strangers);
    }

    [Fact]
    public async Task What_is_half_typed_outlives_a_reload_and_a_killed_server()
    {
        await using var site = await run.StartAnotherAsync();
        await using var visit = await OpenAsync(site.Address.GetLeftPart(UriPartial.Authority), 390, 844);
        await visit.Page.Locator("[name=text]").FillAsync("22.5 ml quince cor");
        await visit.Page.ReloadAsync();
        await Expect(visit.Page.Locator("[name=text]")).ToHaveValueAsync("22.5 ml quince cor");
        await site.KillAsync();
        await visit.Page.Locator("[data-of=line] .keep").ClickAsync();
        await Expect(visit.Page.GetByTestId("net")).ToContainTextAsync("Kept here, 1 waits");
        await visit.Page.Locator("[name=text]").FillAsync("and half of anoth");
        await site.StartAgainAsync();
        await visit.Page.ReloadAsync();
        await Expect(visit.Page.Locator("[name=text]")).ToHaveValueAsync("and half of anoth");
        await Expect(visit.Page.GetByTestId("net")).ToContainTextAsync("Everything is saved.");
        await Expect(visit.Page.GetByTestId("logged")).ToContainTextAsync("22.5 ml quince cor");
    }

    [Fact]
    public async Task Two_who_read_the_same_thing_are_told_and_neither_figure_is_dropped()
    {
        await using var one = await OpenAsync(run.Address, 390, 844);
        await using var other = await OpenAsync(run.Address, 390, 844);
        await ReadAsync(one.Page, "Walk-in 7", "3,4");
        await Expect(one.Page.GetByTestId("logged").First).ToContainTextAsync("saved");
        await ReadAsync(other.Page, "Walk-in 7", "3.2");
        await Expect(other.Page.GetByTestId("met")).ToContainTextAsync("set this too: 3.4. You have 3.2");
        await other.Page.GetByRole(AriaRole.Button, new() { Name = "Use their 3.4" }).ClickAsync();
        await Expect(other.Page.GetByTestId("met")).ToHaveCountAsync(0);
        await other.Page.ReloadAsync();
        await other.Page.Locator(".of-house summary").ClickAsync();
        foreach (var figure in new[] { "3.4", "3.2" })
        {
            await Expect(other.Page.GetByTestId("arrived")).ToContainTextAsync($"temperature {figure} °C Walk-in 7");
        }
        one.WasClean();
        other.WasClean();
    }

    [Theory]
    [InlineData("1,500", "1.5 or 1500")]
    [InlineData("-3", "zero or more")]
    [InlineData("", "Write a number")]
    public async Task An_amount_that_may_mean_two_things_or_none_is_asked_back_and_stays(string typed, string told)
    {
        await using var visit = await OpenAsync(run.Address, 390, 844);
        await ReadAsync(visit.Page, "Fridge 2", typed);
        var form = visit.Page.Locator("[data-of=reading]");
        await Expect(form.GetByRole(AriaRole.Alert)).ToContainTextAsync(told);
        await Expect(form.Locator("[name=value]")).ToHaveValueAsync(typed);
        await Expect(visit.Page.GetByTestId("logged")).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task A_line_noted_on_a_phone_stands_on_the_open_bench()
    {
        await using var bench = await run.OpenAsync(path: "/");
        await bench.Page.GetByRole(AriaRole.Link, new() { Name = "Low Water Orchard" }).First.ClickAsync();
        await bench.Page.GetByTestId("line").First.WaitForAsync();
        await using var phone = await OpenAsync(run.Address, 390, 844);
        await phone.Page.Locator("[name=draft]").SelectOptionAsync(new SelectOptionValue { Label = "Low Water Orchard" });
        await phone.Page.Locator("[name=text]").FillAsync("2.5 ml beet leaf juice of nowhere");
        await phone.Page.Locator("[data-of=line] .keep").ClickAsync();
        await Expect(bench.Page.Locator("#lines")).ToContainTextAsync("beet leaf juice of nowhere");
    }

    [Theory]
    [InlineData(390, 844, ColorScheme.Dark)]
    [InlineData(1024, 768, ColorScheme.Light)]
    public async Task Noting_down_is_accessible_in_every_kind(int width, int height, ColorScheme mode)
    {
        await using var visit = await run.OpenAsync(width, height, mode, "/capture");
        foreach (var kind in new[] { "line", "pour_cell", "note", "reading", "batch_made", "poured_away", "out_of_stock" })
        {
            await visit.Page.Locator($"[data-kind={kind}]").ClickAsync();
            await visit.ExpectAccessibleAsync(kind);
            var small = await visit.Page.EvaluateAsync<string[]>(
                "() => [...document.querySelectorAll('main button, main select, main input, main textarea, main a.btn')].filter(e => e.offsetParent && e.getBoundingClientRect().height < 44).map(e => e.outerHTML)");
            Assert.Empty(small);
        }
        visit.WasClean();
    }

    private static async Task ReadAsync(IPage page, string of, string value)
    {
        await page.Locator("[data-kind=reading]").ClickAsync();
        var form = page.Locator("[data-of=reading]");
        await form.Locator("[name=of]").FillAsync(of);
        await form.GetByRole(AriaRole.Button, new() { Name = "°C", Exact = true }).ClickAsync();
        await form.Locator("[name=value]").FillAsync(value);
        await form.Locator(".keep").ClickAsync();
    }

    private async Task<Visit> OpenAsync(string address, int width, int height)
    {
        var visit = await run.OpenAtAsync(address, "/capture", width, height, ColorScheme.Dark);
        await visit.Page.Clock.InstallAsync();
        return visit;
    }
}
