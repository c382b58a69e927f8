using System.Text.RegularExpressions;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace MenuLab.EndToEnd;

/// <summary>Drafts from a brief and from files, and the house's settings, in whatever bar the site shows.</summary>
public partial class DraftsTests(SiteAndBrowser run)
{
    [Fact]
    public async Task A_draft_starts_from_one_line_of_brief_by_the_keyboard_alone_and_is_listed_with_what_it_is_for()
    {
        await using var visit = await run.OpenAsync(path: "/");
        await visit.ReadyAsync();
        await Expect(visit.Page.Locator("[data-keys=n]")).ToBeVisibleAsync();
        await visit.Page.Keyboard.PressAsync("n");
        await Expect(visit.Page.GetByLabel("Name")).ToBeFocusedAsync();
        await visit.Page.Keyboard.TypeAsync("Grey Heron");
        await visit.Page.GetByLabel("Slot on the menu").FillAsync("first of the evening");
        await visit.Page.GetByLabel("Claim").FillAsync("below 0.5 % ABV");
        await Expect(visit.Page.Locator("#claim-told")).ToContainTextAsync("Binds to below 0.5 % ABV");
        await visit.Page.GetByLabel("May cost").FillAsync("1,500");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Start the draft" }).ClickAsync();
        await Expect(visit.Page.Locator("#cost-told")).ToContainTextAsync("1500");
        await visit.Page.GetByLabel("May cost").FillAsync("1,50");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Start the draft" }).ClickAsync();
        await Expect(visit.Page).ToHaveURLAsync(Bench());

        await visit.Page.GotoAsync(run.Address + "/");
        await visit.ReadyAsync();
        await Expect(Draft(visit, "Grey Heron")).ToContainTextAsync("first of the evening · below 0.5 % ABV");
        await visit.Page.Keyboard.PressAsync("/");
        await visit.Page.Keyboard.TypeAsync("evening");
        await Expect(visit.Page.GetByTestId("draft").First).ToContainTextAsync("Grey Heron");
        await Draft(visit, "Grey Heron").GetByRole(AriaRole.Button, new() { Name = "Park" }).ClickAsync();
        await Expect(visit.Page.GetByLabel("What is Grey Heron waiting for?")).ToBeFocusedAsync();
        await visit.Page.Keyboard.TypeAsync("the gentian");
        await visit.Page.Keyboard.PressAsync("Enter");
        await Expect(visit.Page.GetByText("Grey Heron is parked now.")).ToBeVisibleAsync();
        visit.WasClean();
    }

    [Fact]
    public async Task Files_are_shown_line_by_line_before_they_become_drafts()
    {
        await using var visit = await run.OpenAsync(path: "/drafts/import");
        await visit.ReadyAsync();
        await visit.Page.GetByLabel("Files: text").SetInputFilesAsync(
        [
            File("tide.csv", "drink,amount,unit,ingredient\nTide Table,45,ml,apple juice\n,5,,of Mira's smoke\n"),
            File("cut.json", "{\"@type\": \"Recipe\",\n \"name\": \"cut"),
        ]);
        await Expect(visit.Page.GetByTestId("read")).ToContainTextAsync("45 mL Apple juice");
        await Expect(visit.Page.GetByTestId("kept")).ToContainTextAsync("Kept as typed.");
        await Expect(visit.Page.GetByTestId("problem")).ToContainTextAsync("Line 2, column 14.");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Bring in 1 drink" }).ClickAsync();
        await Expect(visit.Page).ToHaveURLAsync(Bench());
        await visit.Page.GotoAsync(run.Address + "/");
        await Expect(Draft(visit, "Tide Table")).ToBeVisibleAsync();
        visit.WasClean();
    }

    [Fact]
    public async Task A_large_file_arrives_whole_and_one_too_large_is_told()
    {
        await using var visit = await run.OpenAsync(path: "/drafts/import");
        await visit.ReadyAsync();
        var drinks = string.Join("\n", Enumerable.Range(1, 2_000).Select(n => $"Tide {n}\n45 ml apple juice\n"));
        await visit.Page.GetByLabel("Files: text").SetInputFilesAsync([File("book.txt", drinks), File("big.txt", new string('x', 2_000_001))]);
        await Expect(visit.Page.GetByText("2000 drinks read from 2 sources")).ToBeVisibleAsync(new() { Timeout = 30_000 });
        await Expect(visit.Page.GetByTestId("incoming")).ToHaveCountAsync(25);
        await Expect(visit.Page.GetByTestId("problem")).ToContainTextAsync("2.0 MB");
        await Expect(visit.Page.GetByRole(AriaRole.Button, new() { Name = "Bring in 25 drinks" })).ToBeEnabledAsync();
        visit.WasClean();
    }

    [Fact]
    public async Task A_typed_drink_becomes_a_draft()
    {
        await using var visit = await run.OpenAsync();
        await visit.ReadyAsync();
        await visit.PasteAsync(TypedTexts.LowWater.Replace("Low Water", "Ebb Lantern", StringComparison.Ordinal), TypedTexts.LowWaterLines);
        await visit.Page.GetByTestId("start-draft").ClickAsync();
        await Expect(visit.Page).ToHaveURLAsync(Bench());
        await visit.Page.GotoAsync(run.Address + "/");
        await Expect(Draft(visit, "Ebb Lantern")).ToBeVisibleAsync();
    }

    [Fact]
    public async Task A_house_that_writes_a_comma_has_a_comma_in_the_figures_of_a_typed_drink()
    {
        await using var visit = await run.OpenAsync(path: "/house");
        await visit.ReadyAsync();
        try
        {
            await SaveNumbersAsync(visit, "comma");
            await visit.Page.GotoAsync(run.Address + "/type");
            await visit.ReadyAsync();
            await visit.PasteAsync(TypedTexts.LowWater, TypedTexts.LowWaterLines);
            await Expect(visit.Page.GetByTestId("line").Nth(1).Locator(".amount")).ToHaveTextAsync("22,5");
            await Expect(visit.Page.GetByTestId("sugar_g_per_100ml").Locator(".val b")).ToHaveTextAsync(Comma());
        }
        finally
        {
            await visit.Page.GotoAsync(run.Address + "/house");
            await visit.ReadyAsync();
            await SaveNumbersAsync(visit, "point");
        }
        visit.WasClean();
    }

    [Theory]
    [InlineData(1440, 900, ColorScheme.Light)]
    [InlineData(1440, 900, ColorScheme.Dark)]
    [InlineData(1024, 768, ColorScheme.Light)]
    [InlineData(1024, 768, ColorScheme.Dark)]
    [InlineData(390, 844, ColorScheme.Light)]
    public async Task No_rule_of_WCAG_2_2_AA_that_a_machine_can_check_is_broken(int width, int height, ColorScheme mode)
    {
        await using var visit = await run.OpenAsync(width, height, mode, "/drafts/import");
        await visit.ReadyAsync();
        await visit.Page.GetByLabel("Files: text").SetInputFilesAsync([File("tide.txt", "Spring Tide\n45 ml apple juice\n5 of Mira's smoke\n")]);
        await Expect(visit.Page.GetByTestId("incoming")).ToBeVisibleAsync();
        await visit.ExpectAccessibleAsync("import");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Bring in 1 drink" }).ClickAsync();
        await Expect(visit.Page).ToHaveURLAsync(Bench());

        await visit.Page.GotoAsync(run.Address + "/");
        await visit.ReadyAsync();
        await Expect(Draft(visit, "Spring Tide").First).ToBeVisibleAsync();
        await visit.ExpectAccessibleAsync("list");
        await Draft(visit, "Spring Tide").First.GetByRole(AriaRole.Button, new() { Name = "Drop" }).ClickAsync();
        await visit.ExpectAccessibleAsync("asking why");

        foreach (var path in new[] { "/drafts/new", "/house" })
        {
            await visit.Page.GotoAsync(run.Address + path);
            await visit.ReadyAsync();
            await Expect(visit.Page.Locator("form")).ToBeVisibleAsync();
            await visit.ExpectAccessibleAsync(path);
        }
        visit.WasClean();
    }

    [Theory]
    [InlineData(1024, 768)]
    [InlineData(768, 1024)]
    [InlineData(390, 844)]
    public async Task Nothing_hangs_over_the_side_and_touch_targets_are_large_enough(int width, int height)
    {
        await using var visit = await run.OpenAsync(width, height, path: "/drafts/import");
        await visit.ReadyAsync();
        await visit.Page.GetByLabel("Files: text").SetInputFilesAsync([File("neap.txt", "Neap Tide\n45 ml apple juice\n5 of Mira's smoke\n")]);
        await Expect(visit.Page.GetByTestId("incoming")).ToBeVisibleAsync();
        await ExpectFitsAsync(visit.Page, width);
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Bring in 1 drink" }).ClickAsync();
        await Expect(visit.Page).ToHaveURLAsync(Bench());
        foreach (var path in new[] { "/", "/drafts/new", "/house" })
        {
            await visit.Page.GotoAsync(run.Address + path);
            await visit.ReadyAsync();
            await Expect(visit.Page.Locator("main .sheet").First).ToBeVisibleAsync();
            await ExpectFitsAsync(visit.Page, width);
        }
    }

    private static async Task ExpectFitsAsync(IPage page, int width)
    {
        Assert.True(await page.EvaluateAsync<bool>("() => document.documentElement.scrollWidth <= innerWidth"), $"{page.Url} is wider than {width} px.");
        if (width < 1000)
        {
            var small = await page.EvaluateAsync<string[]>(
                "() => [...document.querySelectorAll('main button, main .btn, main .choice span, main .field, main .tick, main .avoid label')].filter(e => e.offsetHeight < 44).map(e => e.outerHTML)");
            Assert.Empty(small);
        }
    }

    private static async Task SaveNumbersAsync(Visit visit, string mark)
    {
        await visit.Page.GetByLabel("Decimal mark").SelectOptionAsync(new SelectOptionValue { Label = mark });
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Save the settings" }).ClickAsync();
        await Expect(visit.Page.GetByText("Saved. Every page writes so from now on.")).ToBeVisibleAsync();
    }

    private static ILocator Draft(Visit visit, string name) => visit.Page.GetByTestId("draft").Filter(new() { HasText = name });

    private static FilePayload File(string name, string text) => new() { Name = name, MimeType = "text/plain", Buffer = System.Text.Encoding.UTF8.GetBytes(text) };

    [GeneratedRegex("/drafts/[0-9a-f-]{36}$")]
    private static partial Regex Bench();

    [GeneratedRegex(@"^\d+,\d+$")]
    private static partial Regex Comma();
}
