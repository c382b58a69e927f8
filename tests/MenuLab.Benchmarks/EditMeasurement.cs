using MenuLab.EndToEnd;
using Microsoft.Playwright;

namespace MenuLab.Benchmarks;

/// <summary>A change on the bench to the new figures on screen: a real browser on this machine, the amount of a line of the demo bar's first drink.</summary>
internal static class EditMeasurement
{
    private const int Edits = 200;
    private const int Warmup = 20;

    // From the key that commits the amount until the figure has another text, in the page's own clock: nothing of the tool counts.
    private const string Edit = """
        (typed) => new Promise((resolve, reject) => {
          const cell = document.querySelectorAll('.bench-lines input.cell')[1];
          const figure = document.querySelector('[data-testid=sugar_g_per_100ml] .val');
          const before = figure.textContent;
          const late = setTimeout(() => reject(new Error('no new figure within 5 s')), 5000);
          let start = 0;
          new MutationObserver((_, observer) => {
            if (figure.textContent !== before) {
              observer.disconnect();
              clearTimeout(late);
              requestAnimationFrame(() => resolve(performance.now() - start));
            }
          }).observe(figure, { characterData: true, childList: true, subtree: true });
          cell.value = typed;
          start = performance.now();
          cell.dispatchEvent(new Event('change', { bubbles: true }));
        })
        """;

    public static async Task RunAsync()
    {
        await using var site = await PublishedSite.StartAsync(await PublishedSite.PublishAsync(readyToRun: true), PublishedSite.EmptyData("data-to-edit"));
        using var playwright = await Playwright.CreateAsync();
        var (path, _) = await ChromiumOnThisMachine.FindOrGetAsync(playwright);
        await using var browser = await playwright.Chromium.LaunchAsync(new() { ExecutablePath = path, Args = ChromiumOnThisMachine.Arguments });
        var page = await browser.NewPageAsync();
        await page.GotoAsync(site.Address.ToString());
        await page.GetByRole(AriaRole.Link, new() { Name = "Low Water Orchard" }).First.ClickAsync();
        await page.GetByTestId("line").First.WaitForAsync();
        var times = new List<double>();
        for (var i = 0; i < Warmup + Edits; i++)
        {
            // Far enough apart that the printed figure changes.
            var took = await page.EvaluateAsync<double>(Edit, i % 2 == 0 ? "45" : "22.5");
            if (i >= Warmup)
            {
                times.Add(took);
            }
        }
        times.Sort();
        Figure.Print("edit_p50_ms", times[Edits / 2], "ms");
        Figure.Print("edit_p95_ms", times[Edits * 95 / 100], "ms");
    }
}
