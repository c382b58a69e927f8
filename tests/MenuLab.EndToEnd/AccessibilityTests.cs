using Microsoft.Playwright;

namespace MenuLab.EndToEnd;

public class AccessibilityTests(SiteAndBrowser run)
{
    [Theory]
    [InlineData(1440, 900, ColorScheme.Light)]
    [InlineData(1440, 900, ColorScheme.Dark)]
    [InlineData(1024, 768, ColorScheme.Light)]
    [InlineData(1024, 768, ColorScheme.Dark)]
    [InlineData(390, 844, ColorScheme.Light)]
    public async Task No_rule_of_WCAG_2_2_AA_that_a_machine_can_check_is_broken(int width, int height, ColorScheme mode)
    {
        await using var visit = await run.OpenAsync(width, height, mode);
        await visit.ReadyAsync();
        await visit.ExpectAccessibleAsync("empty");

        await visit.PasteAsync(TypedTexts.LowWater + "\na whisper of beet leaf", TypedTexts.LowWaterLines);
        await visit.Page.Locator("summary").ClickAsync();
        await visit.ExpectAccessibleAsync("with a drink");
        visit.WasClean();
    }

    [Theory]
    [InlineData(1440, 900)]
    [InlineData(1024, 768)]
    [InlineData(768, 1024)]
    [InlineData(390, 844)]
    public async Task Nothing_hangs_over_the_side_and_touch_targets_are_large_enough(int width, int height)
    {
        await using var visit = await run.OpenAsync(width, height);
        await visit.ReadyAsync();
        await visit.PasteAsync(TypedTexts.LowWater, TypedTexts.LowWaterLines);

        Assert.True(await visit.Page.EvaluateAsync<bool>("() => document.documentElement.scrollWidth <= innerWidth"), $"The page is wider than {width} px.");
        if (width < 1000)
        {
            var small = await visit.Page.EvaluateAsync<string[]>(
                "() => [...document.querySelectorAll('main button, main summary, main .choice span')].filter(e => e.offsetHeight < 44).map(e => e.textContent)");
            Assert.Empty(small);
        }
    }

}
