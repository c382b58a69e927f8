using Microsoft.Playwright;

namespace MenuLab.EndToEnd;

/// <summary>Pictures to look at; with MENULAB_PICTURES=1 also those of the README's tour.</summary>
public class PictureTests(SiteAndBrowser run)
{
    private const int MostBytes = 200_000;

    private static bool ForTheTour => Environment.GetEnvironmentVariable("MENULAB_PICTURES") == "1";

    [Theory]
    [InlineData("laptop-light", 1440, 900, ColorScheme.Light)]
    [InlineData("laptop-dark", 1440, 900, ColorScheme.Dark)]
    [InlineData("tablet-light", 1024, 768, ColorScheme.Light)]
    [InlineData("tablet-dark", 1024, 768, ColorScheme.Dark)]
    [InlineData("upright-light", 768, 1024, ColorScheme.Light)]
    [InlineData("upright-dark", 768, 1024, ColorScheme.Dark)]
    [InlineData("phone-light", 390, 844, ColorScheme.Light)]
    [InlineData("phone-dark", 390, 844, ColorScheme.Dark)]
    public async Task The_page_is_pictured_with_a_drink_on_it(string name, int width, int height, ColorScheme mode)
    {
        await using var visit = await run.OpenAsync(width, height, mode);
        await visit.ReadyAsync();
        await visit.PasteAsync(TypedTexts.LowWater + "\na whisper of beet leaf", TypedTexts.LowWaterLines);
        await visit.Page.EvaluateAsync("() => { document.activeElement.blur(); scrollTo(0, 0); }");

        var folder = Path.Combine(Repository.Artifacts, "pictures");
        var first = await visit.Page.ScreenshotAsync(new() { Path = Path.Combine(folder, $"type-a-drink-{name}.png") });
        Assert.InRange(first.Length, 1, int.MaxValue);
        await visit.Page.Locator("summary").ClickAsync();
        await visit.Page.Locator("#balance").ScrollIntoViewIfNeededAsync();
        await visit.Page.ScreenshotAsync(new() { Path = Path.Combine(folder, $"type-a-drink-{name}-all.png"), FullPage = true });

        if (ForTheTour && name is "laptop-light" or "tablet-dark")
        {
            await visit.Page.Locator("summary").ClickAsync();
            await visit.Page.EvaluateAsync("() => scrollTo(0, 0)");
            var path = Path.Combine(Repository.Root, "docs", "pictures", $"type-a-drink-{name}.png");
            var picture = await visit.Page.ScreenshotAsync(new() { Path = path });
            Assert.InRange(picture.Length, 1, MostBytes);
        }
        visit.WasClean();
    }
}
