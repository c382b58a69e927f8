using System.Diagnostics;
using Microsoft.Playwright;

namespace MenuLab.EndToEnd;

/// <summary>The two things that must be quick, done as a thumb does them; the browser counts the taps.</summary>
internal static class RoundByThumb
{
    // To look and to move the thumb to the next button; common practice, no source.
    private const int BetweenTaps = 600;

    private const string CountTaps = "addEventListener('click', e => e.isTrusted && sessionStorage.setItem('taps', Number(sessionStorage.getItem('taps')) + 1), true)";

    /// <summary>Counts the taps from the next page on.</summary>
    public static Task CountAsync(IPage page) => page.AddInitScriptAsync(CountTaps);

    /// <summary>Taps so far.</summary>
    public static Task<int> TapsAsync(IPage page) => page.EvaluateAsync<int>("() => Number(sessionStorage.getItem('taps'))");

    /// <summary>From an open draft, three across on a line, to the page of the round.</summary>
    /// <param name="page">The bench of a draft, with counting.</param>
    /// <param name="line">Name of the line.</param>
    /// <param name="step">Typed as the step; null leaves the one that stands there.</param>
    /// <returns>The taps that it took, numbers not counted.</returns>
    public static async Task<int> ThreeAcrossAsync(IPage page, string line, string? step = null)
    {
        var before = await TapsAsync(page);
        await page.GetByRole(AriaRole.Button, new() { Name = $"More of {line}" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Three across" }).ClickAsync();
        if (step is not null)
        {
            await page.GetByLabel("Step, ").FillAsync(step);
        }
        await page.GetByTestId("start-round").ClickAsync();
        await page.WaitForURLAsync("**/rounds/**");
        await page.Locator(".letter[aria-pressed=true]").WaitForAsync();
        return await TapsAsync(page) - before;
    }

    /// <summary>A note on the chosen pour: more sour, and yes.</summary>
    /// <param name="page">The page of a round.</param>
    /// <param name="hurry">Without the thumb's time.</param>
    /// <returns>Taps and seconds until the page says that it is kept.</returns>
    public static async Task<(int Taps, double Seconds)> NoteAsync(IPage page, bool hurry = true)
    {
        var before = await TapsAsync(page);
        var clock = Stopwatch.StartNew();
        foreach (var button in new[] { "[data-axis=sour]", "[data-wish=more]", "[data-verdict=yes]" })
        {
            await Task.Delay(hurry ? 0 : BetweenTaps);
            await page.Locator(button).ClickAsync();
        }
        await page.GetByTestId("kept-note").Filter(new() { HasTextRegex = new System.Text.RegularExpressions.Regex("more sour, yes · (kept here|saved)") }).WaitForAsync();
        return (await TapsAsync(page) - before, clock.Elapsed.TotalSeconds);
    }
}
