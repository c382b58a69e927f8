using System.Net;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using UglyToad.PdfPig;
using static Microsoft.Playwright.Assertions;

namespace MenuLab.EndToEnd;

/// <summary>The whole path of a drink, as the person at the bench walks it.</summary>
public partial class BenchTests(SiteAndBrowser run)
{
    [Fact]
    public async Task A_drink_is_typed_worked_saved_compared_started_from_and_printed()
    {
        await using var visit = await NewDraftAsync("Slack Tide");
        var page = visit.Page;

        // Typed: every line is in the drink and moves the figures.
        await TypeAsync(page, "45 ml black tea, brewed");
        await TypeAsync(page, "22.5 ml honey syrup");
        await TypeAsync(page, "15 ml lemon juice");
        await TypeAsync(page, "shake 12 s, fine strain, coupe");
        await Expect(page.GetByTestId("line")).ToHaveCountAsync(3);
        await Expect(page.GetByLabel(new Regex("^Method"))).ToHaveValueAsync("shaken");
        await Expect(Figure(page, "sugar_g_per_100ml")).ToHaveTextAsync(Number());
        var sweet = await Figure(page, "sugar_g_per_100ml").TextContentAsync();

        // Saved, in one key, with a reason of its own.
        await page.Keyboard.PressAsync("Control+s");
        await Expect(page.GetByTestId("iteration-1")).ToContainTextAsync("First pour");
        await Expect(page.GetByTestId("save")).ToContainTextAsync("Save as 2");

        // Changed: an amount in its cell, another figure, another reason.
        var cell = page.GetByLabel("Amount of Honey syrup 2:1 by mass (honey:water)");
        await cell.FillAsync("15");
        await cell.PressAsync("Enter");
        await Expect(Figure(page, "sugar_g_per_100ml")).Not.ToHaveTextAsync(sweet!);
        await Expect(page.Locator("#reason")).ToHaveValueAsync(new Regex("22.5 → 15 mL"));
        await page.Locator("#reason").FillAsync("The honey led");
        await page.Keyboard.PressAsync("Control+s");
        await Expect(page.GetByTestId("iteration-2")).ToContainTextAsync("The honey led");

        // Compared.
        await page.GetByTestId("iteration-1").GetByRole(AriaRole.Button).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Compare", Exact = true }).ClickAsync();
        await Expect(page).ToHaveURLAsync(new Regex("/compare"));
        await Expect(page.Locator("main")).ToContainTextAsync("Honey syrup");
        await Expect(page.Locator("main")).ToContainTextAsync("−7.5 mL");

        // Started from the first again.
        await page.GoBackAsync();
        await page.GetByTestId("iteration-1").GetByRole(AriaRole.Button).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Start from 1" }).ClickAsync();
        await Expect(page.GetByTestId("bench-now")).ToContainTextAsync("from 1");
        await Expect(page.GetByLabel("Amount of Honey syrup 2:1 by mass (honey:water)")).ToHaveValueAsync("22.5");
        await TypeAsync(page, "2 dashes saline 20%");
        await Expect(page.GetByTestId("line")).ToHaveCountAsync(4);
        await page.Keyboard.PressAsync("Control+s");
        await Expect(page.GetByTestId("iteration-3")).ToContainTextAsync("from 1");

        // Printed, and read back.
        var address = new Uri(page.Url).AbsolutePath.Replace("/drafts/", "/card/drafts/", StringComparison.Ordinal);
        using var client = new HttpClient();
        using var answer = await client.GetAsync(run.Address + address + "?paper=A6");
        Assert.Equal((HttpStatusCode.OK, "application/pdf"), (answer.StatusCode, answer.Content.Headers.ContentType?.MediaType));
        using var pdf = PdfDocument.Open(await answer.Content.ReadAsByteArrayAsync());
        var text = string.Join(' ', Assert.Single(pdf.GetPages()).GetWords().Select(w => w.Text));
        foreach (var word in new[] { "Slack", "Tide", "DRAFT", "22.5", "¾", "Coupe", "Shaken" })
        {
            Assert.Contains(word, text, StringComparison.Ordinal);
        }
        visit.WasClean();
    }

    [Fact]
    public async Task Two_browsers_on_one_draft_lose_neither_edit_and_are_both_told()
    {
        await using var mine = await NewDraftAsync("Two Hands");
        await TypeAsync(mine.Page, "45 ml black tea, brewed");
        await TypeAsync(mine.Page, "15 ml lemon juice");
        await using var theirs = await run.OpenAsync(path: new Uri(mine.Page.Url).AbsolutePath);
        await Expect(theirs.Page.GetByTestId("line")).ToHaveCountAsync(2);
        await Expect(mine.Page.GetByTestId("kept")).ToContainTextAsync("open on another page");

        // Another field each: both stand, and each page shows the other's.
        await SetAsync(mine.Page, "Black tea, brewed", "60");
        await SetAsync(theirs.Page, "Lemon juice, fresh", "20");
        foreach (var page in new[] { mine.Page, theirs.Page })
        {
            await Expect(page.GetByLabel("Amount of Black tea, brewed")).ToHaveValueAsync("60");
            await Expect(page.GetByLabel("Amount of Lemon juice, fresh")).ToHaveValueAsync("20");
        }
        await Expect(mine.Page.GetByTestId("others")).ToContainTextAsync("Lemon juice, fresh 15 mL → 20 mL");

        // Lines typed on both pages are both there.
        await Task.WhenAll(TypeAsync(mine.Page, "5 ml honey syrup"), TypeAsync(theirs.Page, "7.5 ml verjus"));
        foreach (var page in new[] { mine.Page, theirs.Page })
        {
            await Expect(page.GetByTestId("line")).ToHaveCountAsync(4);
        }
        await theirs.Page.CloseAsync();
        await Expect(mine.Page.GetByTestId("kept")).ToContainTextAsync("only you here");
    }

    [Fact]
    public async Task A_server_that_is_killed_loses_no_typed_text()
    {
        await using var site = await run.StartAnotherAsync();
        await using var visit = await run.OpenAtAsync(site.Address.GetLeftPart(UriPartial.Authority), "/drafts/new");
        await NewDraftAsync(visit, "Cut Line");
        var page = visit.Page;
        await TypeAsync(page, "45 ml black tea, brewed");
        await Expect(page.GetByTestId("line")).ToHaveCountAsync(1);

        await site.KillAsync();
        await page.Locator(".no-connection").WaitForAsync(new() { State = WaitForSelectorState.Visible, Timeout = 40_000 });
        await page.Locator("#line").FillAsync("22.5 ml honey syrup");
        await page.Locator("#line").PressAsync("Enter");           // handed over while nobody listens
        await Expect(page.GetByTestId("waiting")).ToContainTextAsync("1 line waits");
        await page.Locator("#line").FillAsync("fine strain");
        await page.Locator("#line").PressAsync("Enter");           // no amount: it waits for the page
        await Expect(page.GetByTestId("waiting")).ToContainTextAsync("2 lines wait");
        await page.Locator("#line").FillAsync("15 ml lemon ju");   // and typed on
        await site.StartAgainAsync();

        // The page comes back by itself: the first line is in the drink, once; the second stands where it was typed.
        await Expect(page.GetByTestId("line")).ToHaveCountAsync(2, new() { Timeout = 60_000 });
        await Expect(page.GetByTestId("line").Nth(1)).ToContainTextAsync("Honey syrup");
        await Expect(page.Locator("#line")).ToHaveValueAsync("15 ml lemon ju");
        await Expect(page.GetByLabel(new Regex("^Strain"))).ToHaveValueAsync("fine_strained");
    }

    [Fact]
    public async Task Everything_on_the_bench_is_reached_by_keys_alone()
    {
        await using var visit = await NewDraftAsync("Keys Only");
        var page = visit.Page;
        await page.Keyboard.PressAsync("l");
        await page.Keyboard.TypeAsync("45 ml black te");
        await page.Locator("[role=option]").First.WaitForAsync();
        await page.Keyboard.PressAsync("Tab");
        await Expect(page.Locator("#line")).ToHaveValueAsync(new Regex("45 ml Black tea"));
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.GetByTestId("line")).ToHaveCountAsync(1);
        await page.Keyboard.TypeAsync("15 ml lemon juice");
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.GetByTestId("line")).ToHaveCountAsync(2);

        // Up and down between cells, Alt and arrow move the line.
        await page.GetByLabel("Amount of Lemon juice, fresh").FocusAsync();
        await page.Keyboard.PressAsync("ArrowUp");
        await Expect(page.GetByLabel("Amount of Black tea, brewed")).ToBeFocusedAsync();
        await page.Keyboard.PressAsync("Alt+ArrowDown");
        await Expect(page.GetByTestId("line").First).ToContainTextAsync("Lemon juice");
        await Expect(page.GetByLabel("Amount of Black tea, brewed")).ToBeFocusedAsync();
        await page.Keyboard.PressAsync("Escape");
        await page.EvaluateAsync("() => document.activeElement.blur()");
        await page.Keyboard.PressAsync("Control+z");
        await Expect(page.GetByTestId("line").First).ToContainTextAsync("Black tea");
        visit.WasClean();
    }

    [Fact]
    public async Task Single_letters_can_be_switched_off()
    {
        await using var visit = await NewDraftAsync("No Letters");
        var bench = new Uri(visit.Page.Url).AbsolutePath;
        await visit.Page.GotoAsync(run.Address + "/house");
        await visit.Page.GetByTestId("letters").SetCheckedAsync(false);
        await visit.Page.GotoAsync(run.Address + bench);
        await visit.Page.Locator("#line").WaitForAsync();
        await visit.Page.Keyboard.PressAsync("l");
        await Expect(visit.Page.Locator("#line")).Not.ToBeFocusedAsync();
        await visit.Page.GotoAsync(run.Address + "/house");
        await Expect(visit.Page.GetByTestId("letters")).Not.ToBeCheckedAsync();
        await visit.Page.GetByTestId("letters").SetCheckedAsync(true);
        await visit.Page.GotoAsync(run.Address + bench);
        await visit.Page.Locator("#line").WaitForAsync();
        await visit.Page.Keyboard.PressAsync("l");
        await Expect(visit.Page.Locator("#line")).ToBeFocusedAsync();
        visit.WasClean();
    }

    [Theory]
    [InlineData("-45", "zero or more")]
    [InlineData("1,500", "1.5 or 1500")]
    [InlineData("9999999", "at most a million")]
    [InlineData("plenty", "is no amount")]
    public async Task A_bad_amount_says_what_to_do_and_keeps_what_was_typed(string typed, string says)
    {
        await using var visit = await NewDraftAsync("Bad Amount");
        await TypeAsync(visit.Page, "15 ml lemon juice");
        await SetAsync(visit.Page, "Lemon juice, fresh", typed);
        await Expect(visit.Page.GetByRole(AriaRole.Alert)).ToContainTextAsync(says);
        await Expect(visit.Page.GetByLabel("Amount of Lemon juice, fresh")).ToHaveValueAsync(typed);
        visit.WasClean();
    }

    [Theory]
    [InlineData(1440, 900, ColorScheme.Light)]
    [InlineData(1440, 900, ColorScheme.Dark)]
    [InlineData(1024, 768, ColorScheme.Light)]
    [InlineData(1024, 768, ColorScheme.Dark)]
    public async Task The_bench_and_its_history_break_no_rule_of_WCAG_2_2_AA_that_a_machine_can_check(int width, int height, ColorScheme mode)
    {
        await using var visit = await run.OpenAsync(width, height, mode, "/");
        await OpenDemoDraftAsync(visit.Page, "Low Water Orchard");
        await visit.Page.Locator("button.grip").First.ClickAsync();
        await visit.Page.GetByTestId("iteration-2").GetByRole(AriaRole.Button).ClickAsync();
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Start from 2" }).WaitForAsync();
        await visit.Page.Locator("#line").FillAsync("3/4 oz quin");
        await visit.Page.Locator("[role=option]").First.WaitForAsync();
        await visit.ExpectAccessibleAsync("bench");
        await visit.Page.GotoAsync(visit.Page.Url.Split('?')[0] + "/compare");
        await visit.Page.GetByText("All lines").First.WaitForAsync();
        await visit.ExpectAccessibleAsync("bench");
        visit.WasClean();
    }

    private static ILocator Figure(IPage page, string key) => page.GetByTestId(key).Locator(".val b");

    private static async Task TypeAsync(IPage page, string line)
    {
        await page.Locator("#line").FillAsync(line);
        // As fast as hands can: the next line is typed before the server has said a word about this one.
        await page.Locator("#line").PressAsync("Enter");
    }

    private static async Task SetAsync(IPage page, string ingredient, string amount)
    {
        var cell = page.GetByLabel($"Amount of {ingredient}");
        await cell.FillAsync(amount);
        await cell.PressAsync("Enter");
    }

    private async Task<Visit> NewDraftAsync(string name)
    {
        var visit = await run.OpenAsync(path: "/drafts/new");
        await NewDraftAsync(visit, name);
        return visit;
    }

    private static async Task NewDraftAsync(Visit visit, string name)
    {
        await visit.ReadyAsync();
        await visit.Page.GetByLabel("Name").First.FillAsync(name);
        await visit.Page.Locator("button[type=submit]").First.ClickAsync();
        await visit.Page.Locator("#line").WaitForAsync();
    }

    private static async Task OpenDemoDraftAsync(IPage page, string name)
    {
        await page.GetByRole(AriaRole.Link, new() { Name = name }).First.ClickAsync();
        await page.GetByTestId("line").First.WaitForAsync();
    }

    [GeneratedRegex(@"^\d+(\.\d+)?$")]
    private static partial Regex Number();
}
