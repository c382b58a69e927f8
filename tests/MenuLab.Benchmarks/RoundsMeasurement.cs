using MenuLab.EndToEnd;
using Microsoft.Playwright;

namespace MenuLab.Benchmarks;

/// <summary>Rounds in a real browser, as a thumb works them: taps to three variants, seconds to a note, and a cell of six pours of twelve lines to its new figures on screen.</summary>
internal static class RoundsMeasurement
{
    private const int Updates = 60;
    private const int Warmup = 20;

    private const string TwelveLines = """
        45 ml black tea, brewed
        15 ml lemon juice
        22.5 ml honey syrup
        15 ml apple juice
        7.5 ml verjus
        7.5 ml lime juice
        10 ml orange juice
        5 ml grapefruit juice
        5 ml simple syrup
        5 ml demerara syrup
        10 ml cranberry juice
        2 dashes saline
        shake 12 s, fine strain, coupe
        """;

    // From the tap on "a touch more poured" until the pour's acid has another text, in the page's own clock.
    private const string Update = """
        () => new Promise((resolve, reject) => {
          const acid = () => document.querySelector('[data-testid=figure-acid] td:nth-of-type(2) .fig')?.textContent;
          const before = acid();
          const late = setTimeout(() => reject(new Error('no new figure within 5 s')), 5000);
          let start = 0;
          new MutationObserver((_, observer) => {
            if (acid() && acid() !== before) {
              observer.disconnect();
              clearTimeout(late);
              requestAnimationFrame(() => resolve(performance.now() - start));
            }
          }).observe(document.getElementById('round'), { childList: true, subtree: true });
          start = performance.now();
          const poured = document.getElementById('poured');
          poured.value = Number(poured.value) > 20 ? '15' : '30';
          poured.dispatchEvent(new Event('change', { bubbles: true }));
        })
        """;

    public static async Task RunAsync()
    {
        await using var site = await PublishedSite.StartAsync(await PublishedSite.PublishAsync(readyToRun: true), PublishedSite.EmptyData("data-of-rounds"));
        using var playwright = await Playwright.CreateAsync();
        var (path, _) = await ChromiumOnThisMachine.FindOrGetAsync(playwright);
        await using var browser = await playwright.Chromium.LaunchAsync(new() { ExecutablePath = path, Args = ChromiumOnThisMachine.Arguments });
        var taps = new List<int>();
        var seconds = new List<double>();
        foreach (var (width, height) in new[] { (390, 844), (1024, 768) })
        {
            await using var context = await browser.NewContextAsync(new() { ViewportSize = new() { Width = width, Height = height }, HasTouch = true });
            var page = await DraftAsync(context, site, $"By Thumb {width}");
            taps.Add(await RoundByThumb.ThreeAcrossAsync(page, "Lemon juice, fresh", "2.5"));
            foreach (var letter in new[] { "a", "b", "c" })
            {
                await page.Locator($".letter[data-letter={letter}]").ClickAsync();
                var (noteTaps, noteSeconds) = await RoundByThumb.NoteAsync(page, hurry: false);
                Console.WriteLine($"{width}x{height}, {letter}: a note in {noteTaps} taps, {noteSeconds:0.00} s with 0.6 s before each tap");
                seconds.Add(noteSeconds);
            }
        }
        Figure.Print("round_taps", taps.Max(), "taps");
        Figure.Print("note_seconds", seconds.Max(), "s");
        await UpdatesAsync(browser, site);
    }

    private static async Task UpdatesAsync(IBrowser browser, PublishedSite site)
    {
        await using var context = await browser.NewContextAsync(new() { ViewportSize = new() { Width = 390, Height = 844 }, HasTouch = true });
        var page = await DraftAsync(context, site, "Six of Twelve");
        await page.GetByRole(AriaRole.Button, new() { Name = "Side by side" }).ClickAsync();
        await page.GetByLabel("Pours").SelectOptionAsync("6");
        await page.GetByTestId("start-round").ClickAsync();
        await page.WaitForURLAsync("**/rounds/**");
        await page.Locator(".letter[data-letter=b]").ClickAsync();
        await page.Locator("#any-cell").ClickAsync();
        await page.Locator("#cell-line").SelectOptionAsync(new SelectOptionValue { Label = "Lemon juice, fresh" });
        var times = new List<double>();
        for (var i = 0; i < Warmup + Updates; i++)
        {
            var took = await page.EvaluateAsync<double>(Update);
            if (i >= Warmup)
            {
                times.Add(took);
            }
        }
        times.Sort();
        Console.WriteLine($"six pours of {await page.GetByTestId("line-across").CountAsync()} lines, {Updates} changes after {Warmup} to warm up");
        Figure.Print("round_screen_p50_ms", times[Updates / 2], "ms");
        Figure.Print("round_screen_p95_ms", times[Updates * 95 / 100], "ms");
    }

    private static async Task<IPage> DraftAsync(IBrowserContext context, PublishedSite site, string name)
    {
        var page = await context.NewPageAsync();
        await RoundByThumb.CountAsync(page);
        await page.GotoAsync(new Uri(site.Address, "/drafts/new").ToString());
        await page.GetByLabel("Name").First.FillAsync(name);
        await page.Locator("button[type=submit]").First.ClickAsync();
        var line = page.Locator("#line");
        await line.WaitForAsync();
        await line.FillAsync(TwelveLines);
        await line.PressAsync("Enter");
        await Assertions.Expect(page.GetByTestId("line")).ToHaveCountAsync(12);
        return page;
    }
}
