using System.Text.RegularExpressions;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace MenuLab.EndToEnd;

public sealed partial class PantryTests(SiteAndBrowser run)
{
    [Fact]
    public async Task An_ingredient_is_found_opened_changed_checked_and_saved_and_a_reading_outranks_what_was_typed()
    {
        await using var visit = await run.OpenAsync(path: "/pantry");
        var page = visit.Page;
        await FindAsync(visit, "pineapple juice");
        await page.GetByTestId("ingredient").First.GetByRole(AriaRole.Link).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToContainTextAsync("Pineapple juice");

        var sugars = page.GetByTestId("figure-total_sugars_g");
        await sugars.Locator(".own input").FillAsync("99");
        await Expect(page.GetByTestId("checks")).ToContainTextAsync("more than the whole");
        await sugars.Locator(".own input").FillAsync("12,5");
        await Expect(page.GetByTestId("checks")).Not.ToContainTextAsync("more than the whole");
        await page.GetByRole(AriaRole.Button, new() { Name = "Save figures" }).ClickAsync();
        await Expect(sugars.Locator(".num")).ToContainTextAsync("12.5");
        await Expect(sugars).ToContainTextAsync("our own: label");

        await page.GetByTestId("figure-ph").Locator(".own input").FillAsync("3.9");
        await page.GetByRole(AriaRole.Button, new() { Name = "Save figures" }).ClickAsync();
        await Expect(page.GetByTestId("figure-ph").Locator(".num")).ToContainTextAsync("3.9");
        var readings = page.GetByRole(AriaRole.Form, new() { Name = "Add a reading" });
        await readings.GetByLabel("What").SelectOptionAsync("ph");
        await readings.GetByTestId("reading-value").FillAsync("3.52");
        await readings.GetByRole(AriaRole.Button, new() { Name = "Keep the reading" }).ClickAsync();
        await Expect(page.GetByTestId("reading")).ToHaveCountAsync(1);
        await Expect(page.GetByTestId("figure-ph").Locator(".num")).ToContainTextAsync("3.52");
        await Expect(page.GetByTestId("figure-ph")).ToContainTextAsync("our own says 3.9");
        await Expect(page.GetByTestId("comes-ph")).ToContainTextAsync("3.52");

        await page.ReloadAsync();
        await visit.ReadyAsync();
        await Expect(page.GetByTestId("figure-ph").Locator(".num")).ToContainTextAsync("3.52");
        visit.WasClean();
    }

    [Fact]
    public async Task A_price_and_its_history_show_what_thirty_millilitres_cost()
    {
        await using var visit = await run.OpenAsync(path: "/pantry");
        var page = visit.Page;
        await FindAsync(visit, "grape juice");
        await page.GetByTestId("ingredient").First.GetByRole(AriaRole.Link).ClickAsync();
        await page.GetByTestId("price-pack").SelectOptionAsync("");
        await page.GetByTestId("pack-amount").FillAsync("1000");
        var rows = await page.GetByTestId("price").CountAsync();
        await page.GetByTestId("price-amount").FillAsync("4.50");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep the price" }).ClickAsync();
        await Expect(page.GetByTestId("price")).ToHaveCountAsync(rows + 1);
        await Expect(page.GetByTestId("price").Filter(new() { HasText = "€4.50" })).ToContainTextAsync("€0.1");

        await page.GetByTestId("price-amount").FillAsync("4.95");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep the price" }).ClickAsync();
        await Expect(page.GetByTestId("price")).ToHaveCountAsync(rows + 2);
        await Expect(page.GetByTestId("price").Filter(new() { HasText = "€4.95" })).ToContainTextAsync("▲ 10 %");
        visit.WasClean();
    }

    [Fact]
    public async Task A_new_ingredient_asks_about_every_allergen_until_somebody_says_what_the_label_says_and_archiving_asks_first()
    {
        await using var visit = await run.OpenAsync(path: "/pantry/new");
        await visit.ReadyAsync();
        var page = visit.Page;
        await page.GetByTestId("new-name").FillAsync("Smoked pear shrub");
        await page.GetByRole(AriaRole.Button, new() { Name = "Add to the pantry" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("Smoked pear shrub");
        await Expect(page.GetByTestId("open-allergens")).ToContainTextAsync("15 unknown");
        await Expect(page.GetByTestId("comes-sugar")).ToContainTextAsync("unknown");

        await page.GetByRole(AriaRole.Button, new() { Name = "Record it" }).ClickAsync();
        await Expect(page.Locator("#allergens [role=alert]")).ToContainTextAsync("absent needs somebody's word");
        await page.GetByTestId("allergen-source").FillAsync("read the label");
        await page.GetByRole(AriaRole.Button, new() { Name = "Record it" }).ClickAsync();
        await Expect(page.GetByTestId("open-allergens")).ToHaveCountAsync(0);
        await Expect(page.GetByTestId("allergen-Milk")).ToContainTextAsync("absent by label");

        await page.GetByRole(AriaRole.Button, new() { Name = "Archive", Exact = true }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Archive it" }).ClickAsync();
        await Expect(page.GetByTestId("archived")).ToContainTextAsync("Out of use");
        await page.GetByRole(AriaRole.Button, new() { Name = "Take it back into use" }).ClickAsync();
        await Expect(page.GetByTestId("archived")).ToHaveCountAsync(0);
        visit.WasClean();
    }

    [Fact]
    public async Task The_list_is_walked_by_keys_alone()
    {
        await using var visit = await run.OpenAsync(path: "/pantry");
        await visit.ReadyAsync();
        var page = visit.Page;
        await Expect(page.GetByTestId("ingredient").First).ToBeVisibleAsync();
        await page.Keyboard.PressAsync("/");
        await page.Keyboard.TypeAsync("vinegar");
        await Expect(page.Locator("#find")).ToHaveValueAsync("vinegar");
        await Expect(page.GetByTestId("count")).ToContainTextAsync(Shown());
        await Expect(page.GetByTestId("ingredient").First).ToContainTextAsync("inegar");
        await page.Keyboard.PressAsync("ArrowDown");
        await page.Keyboard.PressAsync("ArrowDown");
        var second = await page.GetByTestId("ingredient").Nth(1).GetByRole(AriaRole.Link).InnerTextAsync();
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync(second);
        visit.WasClean();
    }

    [Theory]
    [InlineData(1440, 900, ColorScheme.Light)]
    [InlineData(1440, 900, ColorScheme.Dark)]
    [InlineData(1024, 768, ColorScheme.Light)]
    [InlineData(1024, 768, ColorScheme.Dark)]
    public async Task No_rule_of_WCAG_2_2_AA_that_a_machine_can_check_is_broken_in_the_pantry(int width, int height, ColorScheme mode)
    {
        await using var visit = await run.OpenAsync(width, height, mode, "/pantry");
        var page = visit.Page;
        await FindAsync(visit, "juice");
        await page.GetByRole(AriaRole.Combobox, new() { Name = "Allergen" }).SelectOptionAsync("Sulphites");
        await page.GetByRole(AriaRole.Radio, new() { Name = "a question" }).CheckAsync();
        await visit.ExpectAccessibleAsync("list");
        await page.GetByTestId("ingredient").First.GetByRole(AriaRole.Link).ClickAsync();
        await page.GetByTestId("figure-total_sugars_g").Locator(".own input").FillAsync("1,500");
        await Expect(page.Locator(".answers button")).ToHaveCountAsync(2);
        await page.Locator(".figures summary").Nth(1).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { NameRegex = Change() }).ClickAsync();
        await visit.ExpectAccessibleAsync("ingredient");
        visit.WasClean();
    }

    [Theory]
    [InlineData(1440, 900)]
    [InlineData(1024, 768)]
    [InlineData(768, 1024)]
    [InlineData(390, 844)]
    public async Task Nothing_of_the_pantry_hangs_over_the_side(int width, int height)
    {
        await using var visit = await run.OpenAsync(width, height, path: "/pantry");
        await FindAsync(visit, "verjus");
        Assert.True(await FitsAsync(visit.Page), $"The list is wider than {width} px.");
        await visit.Page.GetByTestId("ingredient").First.GetByRole(AriaRole.Link).ClickAsync();
        await Expect(visit.Page.GetByTestId("comes-sugar")).ToBeVisibleAsync();
        Assert.True(await FitsAsync(visit.Page), $"The ingredient is wider than {width} px.");
    }

    private static async Task FindAsync(Visit visit, string text)
    {
        await visit.ReadyAsync();
        await Expect(visit.Page.GetByTestId("ingredient").First).ToBeVisibleAsync();
        await visit.Page.Locator("#find").FillAsync(text);
        await Expect(visit.Page.GetByTestId("count")).ToContainTextAsync(Shown());
    }

    private static Task<bool> FitsAsync(IPage page) => page.EvaluateAsync<bool>("() => document.documentElement.scrollWidth <= innerWidth");

    // Fewer than a hundred: the text has narrowed the list.
    [GeneratedRegex(@", \d{1,2} shown$")]
    private static partial Regex Shown();

    [GeneratedRegex("^Change name")]
    private static partial Regex Change();
}
