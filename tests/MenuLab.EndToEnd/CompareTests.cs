using System.Net;
using Microsoft.Playwright;
using UglyToad.PdfPig;
using static Microsoft.Playwright.Assertions;

namespace MenuLab.EndToEnd;

/// <summary>Iterations of the demo bar's first drink: side by side, one as it was saved, and their cards.</summary>
public class CompareTests(SiteAndBrowser run)
{
    // As seed-data/demo names it.
    private const string LowWaterOrchard = "/drafts/01941f2a-4001-7716-a3f3-0d2cbbb2596b";

    [Theory]
    [InlineData(1440, 900, ColorScheme.Light)]
    [InlineData(1024, 768, ColorScheme.Dark)]
    [InlineData(390, 844, ColorScheme.Light)]
    public async Task Three_iterations_stand_side_by_side_and_what_did_not_change_can_be_left_out(int width, int height, ColorScheme mode)
    {
        await using var visit = await run.OpenAsync(width, height, mode, LowWaterOrchard + "/compare?of=2,3,5");
        await visit.ReadyAsync();
        await Expect(visit.Page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("Low Water Orchard: 2, 3 and 5 side by side");
        var cordial = visit.Page.GetByTestId("line-across").Filter(new() { HasText = "Quince cordial" });
        await Expect(cordial).ToContainTextAsync("▼ −7.5 mL");
        await Expect(visit.Page.GetByTestId("across-sugar_g_per_100ml").Locator(".ring")).ToHaveCountAsync(2);
        await visit.ExpectAccessibleAsync("history");

        await Expect(visit.Page.GetByTestId("line-across").Filter(new() { HasText = "Toasted barley tea" })).ToHaveCountAsync(1);
        await visit.Page.GetByLabel("Only what changed").CheckAsync();
        await Expect(visit.Page.GetByTestId("line-across").Filter(new() { HasText = "Toasted barley tea" })).ToHaveCountAsync(0);
        await Expect(cordial).ToHaveCountAsync(1);
        visit.WasClean();
    }

    [Fact]
    public async Task Another_iteration_joins_and_one_is_left_out_by_links()
    {
        await using var visit = await run.OpenAsync(path: LowWaterOrchard + "/compare?of=2,3");
        await visit.ReadyAsync();
        await visit.Page.GetByText("Add another").ClickAsync();
        await visit.Page.GetByRole(AriaRole.Link, new() { Name = "on the bench now" }).ClickAsync();
        await Expect(visit.Page.GetByTestId("column-now")).ToBeVisibleAsync();
        await visit.Page.GetByRole(AriaRole.Link, new() { Name = "Leave 2 out" }).ClickAsync();
        await Expect(visit.Page.GetByTestId("column-2")).ToHaveCountAsync(0);
        await Expect(visit.Page.GetByTestId("column-3")).ToBeVisibleAsync();
        visit.WasClean();
    }

    [Theory]
    [InlineData(1440, 900, ColorScheme.Dark)]
    [InlineData(390, 844, ColorScheme.Light)]
    public async Task An_iteration_opens_as_it_was_saved_and_says_what_changed_since_the_one_it_came_from(int width, int height, ColorScheme mode)
    {
        await using var visit = await run.OpenAsync(width, height, mode, LowWaterOrchard + "/iterations/4");
        await visit.ReadyAsync();
        await Expect(visit.Page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("Low Water Orchard, iteration 4");
        await Expect(visit.Page.Locator(".changes")).ToContainTextAsync("2 → 4");
        await Expect(visit.Page.GetByRole(AriaRole.Link, new() { Name = "Start from 4" })).ToHaveAttributeAsync("href", LowWaterOrchard + "?from=4");
        await visit.ExpectAccessibleAsync("history");
        visit.WasClean();
    }

    [Fact]
    public async Task The_card_of_an_iteration_says_which_it_is_and_that_nobody_approved_it()
    {
        await using var visit = await run.OpenAsync(path: LowWaterOrchard + "/iterations/3");
        await visit.ReadyAsync();
        var address = await visit.Page.GetByRole(AriaRole.Form, new() { Name = "Print a card" }).GetAttributeAsync("action");
        using var client = new HttpClient();
        using var answer = await client.GetAsync(run.Address + address + "?paper=A6");

        Assert.Equal((HttpStatusCode.OK, "application/pdf"), (answer.StatusCode, answer.Content.Headers.ContentType?.MediaType));
        using var pdf = PdfDocument.Open(await answer.Content.ReadAsByteArrayAsync());
        var text = string.Join(' ', Assert.Single(pdf.GetPages()).GetWords().Select(w => w.Text));
        Assert.Contains("iteration 3", text, StringComparison.Ordinal);
        Assert.Contains("DRAFT", text, StringComparison.Ordinal);
        Assert.Contains("barley (gluten)", text, StringComparison.Ordinal);
    }
}
