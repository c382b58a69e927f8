using System.Text.RegularExpressions;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace MenuLab.EndToEnd;

/// <summary>Pours side by side, from the bench to the winner.</summary>
public class RoundTests(SiteAndBrowser run)
{
    private const string Lemon = "Lemon juice, fresh";

    [Theory]
    [InlineData(390, 844)]
    [InlineData(1024, 768)]
    public async Task Three_variants_stand_side_by_side_after_at_most_four_taps_from_an_open_draft(int width, int height)
    {
        await using var visit = await DraftAsync(run.Address, $"Three Across {width}", width, height);
        var taps = await RoundByThumb.ThreeAcrossAsync(visit.Page, Lemon, "2.5");
        Assert.InRange(taps, 1, 4);
        await Expect(Cells(visit.Page)).ToHaveTextAsync(["12.5", "15", "17.5"]);
        await Expect(visit.Page.GetByTestId("figure-acid").Locator(".fig")).ToHaveCountAsync(3);
        visit.WasClean();
    }

    [Fact]
    public async Task A_note_in_three_taps_outlives_a_killed_server_and_a_reload_and_is_there_once()
    {
        await using var site = await run.StartAnotherAsync();
        await using var visit = await DraftAsync(site.Address.GetLeftPart(UriPartial.Authority), "Cut Line", 390, 844);
        var page = visit.Page;
        await RoundByThumb.ThreeAcrossAsync(page, Lemon);
        await page.Locator(".letter[data-letter=b]").ClickAsync();
        await page.Locator(".face").First.ClickAsync();

        await site.KillAsync();
        var (taps, _) = await RoundByThumb.NoteAsync(page);
        Assert.InRange(taps, 1, 3);
        await Expect(page.GetByTestId("net")).ToContainTextAsync("Kept here, 2 wait");
        await page.Locator("tr.ch .cell[data-letter=b]").ClickAsync();
        await page.GetByLabel("Poured into this glass").FillAsync("18");
        await page.Locator("#cell-done").ClickAsync();
        await Expect(Cells(page).Nth(1)).ToHaveTextAsync("15poured 18");
        await Expect(page.Locator(".from-before")).ToBeVisibleAsync();
        await Expect(page.GetByTestId("figure-acid").Locator(".fig").First).ToBeVisibleAsync();   // old figures stay

        await site.StartAgainAsync();
        await page.ReloadAsync();
        await Expect(page.GetByTestId("net")).ToContainTextAsync("Everything is saved.", new() { Timeout = 30_000 });
        await Expect(Cells(page).Nth(1)).ToHaveTextAsync("15poured 18");
        await Expect(page.GetByTestId("said-b")).ToHaveCountAsync(1);
        await Expect(page.GetByTestId("said-b")).ToContainTextAsync("more sour wanted, yes");
        await Expect(page.GetByTestId("tally")).ToContainTextAsync("informal, 1 taste");
        await Expect(page.Locator(".from-before")).ToBeHiddenAsync();
    }

    [Fact]
    public async Task What_is_poured_moves_the_figures_of_its_pour_and_a_touch_more_becomes_the_next_column()
    {
        await using var visit = await DraftAsync(run.Address, "A Touch More", 390, 844);
        var page = visit.Page;
        await RoundByThumb.ThreeAcrossAsync(page, Lemon);
        var acid = page.GetByTestId("figure-acid").Locator(".fig");
        var before = await acid.AllTextContentsAsync();
        await page.Locator("tr.ch .cell[data-letter=c]").ClickAsync();
        await page.GetByLabel("Poured into this glass").FillAsync("22,5");
        await page.Locator("#cell-done").ClickAsync();
        await Expect(acid.Nth(2)).Not.ToHaveTextAsync(before[2]);
        Assert.Equal(before[0], await acid.Nth(0).TextContentAsync());
        await Expect(Cells(page).Nth(2)).ToHaveTextAsync("17.5poured 22.5");

        await page.Locator(".letter[data-letter=b]").ClickAsync();
        await RoundByThumb.NoteAsync(page);
        await Expect(page.Locator("#touch")).ToContainTextAsync(new Regex($"A touch more: {Lemon} 15 → 17.5 mL; it brings [0-9]+ % of the acid"));
        await page.GetByRole(AriaRole.Button, new() { Name = "Pour it as D" }).ClickAsync();
        await Expect(Cells(page)).ToHaveTextAsync(["12.5", "15", "17.5poured 22.5", "17.5"]);
        await Expect(page.GetByTestId("note-letter")).ToHaveTextAsync("D");
        visit.WasClean();
    }

    [Fact]
    public async Task The_winner_becomes_an_iteration_with_its_reason_and_stands_on_the_ladder()
    {
        await using var visit = await DraftAsync(run.Address, "Who Wins", 1024, 768);
        var page = visit.Page;
        var bench = page.Url;
        await RoundByThumb.ThreeAcrossAsync(page, Lemon);
        await page.Locator(".letter[data-letter=c]").ClickAsync();
        await page.Locator("[data-axis=finish]").ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "longer" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "yes", Exact = true }).ClickAsync();
        await Expect(page.GetByTestId("said-c")).ToContainTextAsync("finish short, yes");
        await page.GetByRole(AriaRole.Button, new() { Name = "C wins" }).ClickAsync();
        await Expect(page.GetByTestId("reason")).ToHaveTextAsync($"C: {Lemon} 15 → 17.5 mL; finish short");
        await page.GetByRole(AriaRole.Button, new() { Name = "Save C as an iteration" }).ClickAsync();
        await Expect(page).ToHaveURLAsync(new Regex("/iterations/1$"));
        await Expect(page.Locator("main")).ToContainTextAsync($"C: {Lemon} 15 → 17.5 mL; finish short");

        await page.GotoAsync(bench);
        await Expect(page.GetByTestId("rung")).ToContainTextAsync("C won");
        await Expect(page.GetByTestId("rung")).ToContainTextAsync("became 1");
        await Expect(page.GetByLabel($"Amount of {Lemon}")).ToHaveValueAsync("17.5");
        await page.GetByRole(AriaRole.Link, new() { Name = "Round 1" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Next round from C" }).ClickAsync();
        await Expect(page.Locator("h1")).ToContainTextAsync("round 2");
        await Expect(page.Locator(".round-top")).ToContainTextAsync("from C of round 1");
        visit.WasClean();
    }

    [Fact]
    public async Task A_photo_goes_with_its_note_and_a_step_that_needs_the_server_says_so_without_it()
    {
        await using var visit = await DraftAsync(run.Address, "With a Photo", 390, 844);
        var page = visit.Page;
        await RoundByThumb.ThreeAcrossAsync(page, Lemon);
        await page.Locator("#words-open").ClickAsync();
        await page.Locator("#photo").SetInputFilesAsync(new FilePayload { Name = "pour.png", MimeType = "image/png", Buffer = Convert.FromBase64String("iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNkYPhfDwAChwGA60e6kgAAAABJRU5ErkJggg==") });
        await Expect(page.Locator("#sends")).ToContainTextAsync("pour.png: saved");
        await Expect(page.GetByTestId("said-a").GetByRole(AriaRole.Link)).ToHaveCountAsync(1);
        var picture = await page.GetByTestId("said-a").GetByRole(AriaRole.Link).GetAttributeAsync("href");
        using var client = new HttpClient();
        using var answer = await client.GetAsync(run.Address + picture);
        Assert.Equal("image/png", answer.Content.Headers.ContentType?.MediaType);

        await page.Context.SetOfflineAsync(true);
        await page.Locator("#any-cell").ScrollIntoViewIfNeededAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "none wins" }).ClickAsync();
        await Expect(page.Locator("#wrong")).ToContainTextAsync("The server is not reached");
        await page.Context.SetOfflineAsync(false);
    }

    [Theory]
    [InlineData(390, 844, "dark")]
    [InlineData(390, 844, "light")]
    [InlineData(768, 1024, "dark")]
    [InlineData(1024, 768, "light")]
    [InlineData(1440, 900, "dark")]
    public async Task A_round_breaks_no_rule_of_WCAG_2_2_AA_that_a_machine_can_check_and_its_targets_are_large_enough(int width, int height, string mode)
    {
        await using var visit = await DraftAsync(run.Address, $"By Touch {width} {mode}", width, height);
        var page = visit.Page;
        await page.Context.AddCookiesAsync([new Cookie { Name = "mode", Value = mode, Url = run.Address }]);
        await page.GetByRole(AriaRole.Button, new() { Name = "Side by side" }).ClickAsync();
        await page.GetByTestId("start-round").WaitForAsync();
        await visit.ExpectAccessibleAsync("side by side");
        await page.GetByRole(AriaRole.Button, new() { Name = "Close" }).ClickAsync();
        await RoundByThumb.ThreeAcrossAsync(page, Lemon);
        await RoundByThumb.NoteAsync(page);
        await page.Locator("#clock").ClickAsync();
        await Expect(page.Locator("#clock")).ToHaveTextAsync(new Regex("[0-9]+:[0-9]{2}$"));
        await page.Locator("#mix > summary").ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "B wins" }).ClickAsync();
        await page.GetByTestId("reason").WaitForAsync();
        await visit.ExpectAccessibleAsync("round");
        await Expect(page.Locator("html")).ToHaveAttributeAsync("data-mode", mode);
        await page.Locator("tr.ch .cell").First.ClickAsync();
        await visit.ExpectAccessibleAsync("cell");
        var small = await page.EvaluateAsync<string[]>(
            "() => [...document.querySelectorAll('main button, main select, main textarea, main input:not([type=file]), main a.btn, main summary')].filter(e => e.offsetParent && e.getBoundingClientRect().height < 44).map(e => e.outerHTML)");
        Assert.Empty(small);
        visit.WasClean();
    }

    // The cells of the line that differs.
    private static ILocator Cells(IPage page) => page.Locator("tr.ch .cell");

    /// <summary>A draft of three lines on its bench, with the taps counted.</summary>
    private async Task<Visit> DraftAsync(string address, string name, int width, int height)
    {
        var visit = await run.OpenAtAsync(address, "/drafts/new", width, height);
        await RoundByThumb.CountAsync(visit.Page);
        await visit.ReadyAsync();
        await visit.Page.GetByLabel("Name").First.FillAsync(name);
        await visit.Page.Locator("button[type=submit]").First.ClickAsync();
        var line = visit.Page.Locator("#line");
        await line.WaitForAsync();
        await line.FillAsync($"45 ml black tea, brewed\n15 ml lemon juice\n22.5 ml honey syrup\nshake 12 s, fine strain, coupe");
        await line.PressAsync("Enter");
        await Expect(visit.Page.GetByTestId("line")).ToHaveCountAsync(3);
        await visit.Page.ReloadAsync();
        await Expect(visit.Page.GetByTestId("line")).ToHaveCountAsync(3);
        return visit;
    }
}
