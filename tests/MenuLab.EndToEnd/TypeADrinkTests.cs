using System.Text.RegularExpressions;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace MenuLab.EndToEnd;

public partial class TypeADrinkTests(SiteAndBrowser run)
{
    [Fact]
    public async Task A_pasted_drink_shows_its_lines_as_read_and_its_balance()
    {
        await using var visit = await run.OpenAsync();
        await visit.ReadyAsync();
        await visit.PasteAsync(TypedTexts.LowWater, TypedTexts.LowWaterLines);

        await Expect(visit.Page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("Low Water");
        var tea = visit.Page.GetByTestId("line").First;
        await Expect(tea.Locator(".amount")).ToHaveTextAsync("45");
        await Expect(tea.Locator(".other")).ToHaveTextAsync("1 ½ fl oz");
        await Expect(tea).ToContainTextAsync("Black tea");
        foreach (var figure in new[] { "sugar_g_per_100ml", "acid_citric_g_per_100ml", "sugar_acid_ratio", "abv_percent", "glass_fill_percent" })
        {
            await Expect(visit.Page.GetByTestId(figure).Locator(".val b")).ToHaveTextAsync(Number());
        }
        await Expect(visit.Page.GetByTestId("sugar_g_per_100ml")).ToContainTextAsync("likely");
        // Nobody has entered a price, so the cost is unknown and says so.
        await Expect(visit.Page.GetByTestId("cost")).ToContainTextAsync("unknown");
        visit.WasClean();
    }

    [Fact]
    public async Task Nothing_is_asked_of_another_origin_and_the_page_breaks_none_of_its_own_policy()
    {
        await using var visit = await run.OpenAsync();
        await visit.ReadyAsync();
        await visit.PasteAsync(TypedTexts.LowWater, TypedTexts.LowWaterLines);
        await visit.Page.Locator("summary").ClickAsync();
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Dark screen" }).ClickAsync();
        await Expect(visit.Page.Locator("html")).ToHaveAttributeAsync("data-mode", "dark");

        visit.WasClean();
    }

    [Fact]
    public async Task The_refusal_of_inline_scripts_is_real()
    {
        await using var visit = await run.OpenAsync();
        await visit.ReadyAsync();
        await visit.Page.EvaluateAsync("() => { const s = document.createElement('script'); s.textContent = 'window.ran = true'; document.body.append(s); }");

        Assert.False(await visit.Page.EvaluateAsync<bool>("() => window.ran === true"));
        await Expect(visit.Page.Locator("main")).ToBeVisibleAsync();
        Assert.Contains(visit.Complaints, complaint => complaint.Contains("script-src", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_reload_keeps_the_typed_text_and_the_unit()
    {
        await using var visit = await run.OpenAsync();
        await visit.ReadyAsync();
        await visit.PasteAsync("1 black tea\n45 ml verjus", 1);
        await visit.Page.GetByRole(AriaRole.Radio, new() { Name = "fl oz" }).CheckAsync();
        await Expect(visit.Page.GetByRole(AriaRole.Radio, new() { Name = "fl oz" })).ToBeCheckedAsync();
        await Expect(visit.Page.GetByTestId("line").First.Locator(".other")).ToContainTextAsync("30 mL");

        await visit.Page.ReloadAsync();
        await visit.ReadyAsync();

        await Expect(visit.Text).ToHaveValueAsync("1 black tea\n45 ml verjus");
        await Expect(visit.Page.GetByTestId("line").First.Locator(".other")).ToContainTextAsync("30 mL");
        visit.WasClean();
    }

    [Fact]
    public async Task The_chosen_screen_comes_back_before_the_first_paint()
    {
        await using var visit = await run.OpenAsync(mode: ColorScheme.Light);
        await visit.ReadyAsync();
        Assert.Equal("light", await visit.Page.Locator("html").GetAttributeAsync("data-mode"));
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Dark screen" }).ClickAsync();
        await Expect(visit.Page.Locator("html")).ToHaveAttributeAsync("data-mode", "dark");

        // The server's own markup, before any script has run.
        var html = await (await visit.Page.ReloadAsync())!.TextAsync();

        Assert.Contains("data-mode=\"dark\"", html, StringComparison.Ordinal);
        visit.WasClean();
    }

    [Fact]
    public async Task Without_connection_typing_goes_on_and_the_text_is_still_there_afterwards()
    {
        await using var visit = await run.OpenAsync();
        IWebSocketRoute? page = null;
        var cut = false;
        await visit.Page.RouteWebSocketAsync("**/_blazor**", socket =>
        {
            if (cut)
            {
                _ = socket.CloseAsync(new() { Code = 3001 });
                return;
            }
            page = socket;
            socket.ConnectToServer();
        });
        await visit.Page.ReloadAsync();
        await visit.ReadyAsync();
        await visit.PasteAsync("45 ml lemon juice", 1);

        cut = true;
        await page!.CloseAsync(new() { Code = 3001 });
        await Expect(visit.Page.GetByText("No connection.")).ToBeVisibleAsync();
        await visit.Text.FillAsync("45 ml lemon juice\n15 ml verjus");
        cut = false;
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Try now" }).ClickAsync();

        await Expect(visit.Page.GetByText("No connection.")).ToBeHiddenAsync();
        await Expect(visit.Page.GetByTestId("line")).ToHaveCountAsync(2);
        await Expect(visit.Text).ToHaveValueAsync("45 ml lemon juice\n15 ml verjus");
        Assert.Empty(visit.Strangers);
    }

    [Fact]
    public async Task Everything_can_be_done_with_the_keyboard_alone()
    {
        await using var visit = await run.OpenAsync();
        await visit.ReadyAsync();
        var keys = visit.Page.Keyboard;
        await TabToAsync(visit, "#drink");
        await keys.InsertTextAsync(TypedTexts.LowWater);
        await Expect(visit.Page.GetByTestId("line")).ToHaveCountAsync(TypedTexts.LowWaterLines);

        await TabToAsync(visit, "Acid: show each line's share");
        await keys.PressAsync("Enter");
        await Expect(visit.Page.Locator("th.sharecell")).ToHaveTextAsync("Share of acid");

        await TabToAsync(visit, "All figures");
        await keys.PressAsync("Enter");
        await Expect(visit.Page.GetByTestId("ph")).ToBeVisibleAsync();
        visit.WasClean();
    }

    [Fact]
    public async Task A_question_is_answered_with_one_press_and_the_text_says_so()
    {
        await using var visit = await run.OpenAsync();
        await visit.ReadyAsync();
        await visit.PasteAsync("45 ml black tea\n1,500 ml lemon juice", 1);
        await Expect(visit.Page.GetByTestId("question")).ToContainTextAsync("“1,500 ml lemon juice”");
        await Expect(visit.Page.GetByText("One line is not counted.")).ToBeVisibleAsync();

        await visit.Page.GetByTestId("question").GetByRole(AriaRole.Button, new() { Name = "1.5 mL" }).ClickAsync();

        await Expect(visit.Text).ToHaveValueAsync("45 ml black tea\n1.5 ml Lemon juice, fresh");
        await Expect(visit.Page.GetByTestId("line")).ToHaveCountAsync(2);
        await Expect(visit.Page.GetByTestId("question")).ToHaveCountAsync(0);
        await visit.Page.ReloadAsync();
        await visit.ReadyAsync();
        await Expect(visit.Text).ToHaveValueAsync("45 ml black tea\n1.5 ml Lemon juice, fresh");
        visit.WasClean();
    }

    [Fact]
    public async Task On_a_phone_one_tap_leads_to_the_balance()
    {
        await using var visit = await run.OpenAsync(390, 844);
        await visit.ReadyAsync();
        await visit.PasteAsync(TypedTexts.LowWater, TypedTexts.LowWaterLines);
        await Expect(visit.Page.GetByTestId("sugar_g_per_100ml")).Not.ToBeInViewportAsync();

        await visit.Page.GetByRole(AriaRole.Link, new() { Name = "Balance" }).TapAsync();

        await Expect(visit.Page.GetByTestId("sugar_g_per_100ml")).ToBeInViewportAsync();
        await Expect(visit.Text).ToHaveValueAsync(TypedTexts.LowWater);
        visit.WasClean();
    }

    /// <summary>Presses Tab until the wanted thing has the focus, and sees that the focus shows each time.</summary>
    private static async Task TabToAsync(Visit visit, string idOrText)
    {
        for (var i = 0; i < 40; i++)
        {
            var focused = visit.Page.Locator(":focus");
            if (await focused.CountAsync() == 1 && ("#" + await focused.GetAttributeAsync("id") == idOrText || (await focused.TextContentAsync())!.Contains(idOrText, StringComparison.Ordinal)))
            {
                return;
            }
            await visit.Page.Keyboard.PressAsync("Tab");
            var shown = await visit.Page.EvaluateAsync<bool>(
                """
                () => {
                  const e = document.activeElement;
                  if (e === document.body) return true;
                  const marked = e.matches('.choice input') ? e.nextElementSibling : e;
                  const style = getComputedStyle(marked);
                  return style.boxShadow !== 'none' || style.outlineStyle !== 'none';
                }
                """);
            Assert.True(shown, "The focus is nowhere to be seen.");
        }
        Assert.Fail($"Tab never came to \"{idOrText}\".");
    }

    [GeneratedRegex(@"^\d+(\.\d+)?$")]
    private static partial Regex Number();
}
