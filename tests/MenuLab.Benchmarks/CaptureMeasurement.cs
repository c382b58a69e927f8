using MenuLab.EndToEnd;
using Microsoft.Playwright;

namespace MenuLab.Benchmarks;

/// <summary>What two devices note while the network is off and the server is dead, and what the house has of it afterwards.</summary>
internal static class CaptureMeasurement
{
    private const int Entries = 40;

    public static async Task RunAsync()
    {
        await using var site = await PublishedSite.StartAsync(await PublishedSite.PublishAsync(), PublishedSite.EmptyData("data-to-capture"));
        using var playwright = await Playwright.CreateAsync();
        var (path, _) = await ChromiumOnThisMachine.FindOrGetAsync(playwright);
        await using var browser = await playwright.Chromium.LaunchAsync(new() { ExecutablePath = path, Args = ChromiumOnThisMachine.Arguments });
        var first = await OpenAsync(browser, site, 390, 844);
        var second = await OpenAsync(browser, site, 1024, 768);
        var done = await TwoDevices.RunAsync(site, first, second, ("Ines", "Joss"), Entries);
        Figure.Print("capture_lost", done.Lost, "entries");
        Figure.Print("capture_doubled", done.Doubled, "entries");
        Figure.Print("capture_out_of_order", done.IsInOrder ? 0 : 1, "runs");
        Figure.Print("capture_entries", done.Noted.Count, "entries");
    }

    private static async Task<IPage> OpenAsync(IBrowser browser, PublishedSite site, int width, int height)
    {
        var context = await browser.NewContextAsync(new() { ViewportSize = new() { Width = width, Height = height }, HasTouch = true });
        var page = await context.NewPageAsync();
        await page.Clock.InstallAsync();
        await page.GotoAsync(new Uri(site.Address, "capture").ToString());
        return page;
    }
}
