using Microsoft.Playwright;

namespace MenuLab.EndToEnd;

/// <summary>What two devices noted, and what the house had of it in the end.</summary>
/// <param name="Noted">Entries that both devices kept, as their words.</param>
/// <param name="Arrived">Entries of the house, the first first: words and author.</param>
internal sealed record NotedAndArrived(IReadOnlyList<(string Device, string Words)> Noted, IReadOnlyList<(string Words, string By)> Arrived)
{
    /// <summary>Entries that the house does not have.</summary>
    public int Lost => Noted.Count(n => !Arrived.Any(a => a.Words == n.Words));

    /// <summary>Entries that the house has more than once.</summary>
    public int Doubled => Arrived.GroupBy(a => a.Words).Sum(g => g.Count() - 1);

    /// <summary>Each device's entries arrived in the order in which they were made.</summary>
    public bool IsInOrder => Noted.GroupBy(n => n.Device).All(device => device.Select(n => n.Words).SequenceEqual(Arrived.Select(a => a.Words).Where(w => device.Any(n => n.Words == w))));
}

/// <summary>
/// Two devices note things while the network is off and the server is killed for twenty minutes. Both hold a page that was
/// opened before; the clock of the pages is moved on, so that nobody waits.
/// </summary>
internal static class TwoDevices
{
    private const int Minutes = 20;

    /// <summary>Lets both note, cuts the network of one, kills the server under the other, and brings both back.</summary>
    /// <param name="site">The site; it is killed and started again.</param>
    /// <param name="first">A window at /capture.</param>
    /// <param name="second">Another, of another device.</param>
    /// <param name="people">Who holds which.</param>
    /// <param name="entries">How many entries both make together.</param>
    public static async Task<NotedAndArrived> RunAsync(PublishedSite site, IPage first, IPage second, (string First, string Second) people, int entries)
    {
        var noted = new List<(string Device, string Words)>();
        await first.GetByLabel("By").SelectOptionAsync(new SelectOptionValue { Label = people.First });
        await second.GetByLabel("By").SelectOptionAsync(new SelectOptionValue { Label = people.Second });
        for (var i = 0; i < entries / 2; i++)
        {
            if (i == entries / 8)
            {
                await first.Context.SetOfflineAsync(true);
                await site.KillAsync();
            }
            noted.Add((people.First, await NoteAsync(first, people.First, i)));
            noted.Add((people.Second, await NoteAsync(second, people.Second, i)));
            if (i > entries / 8)
            {
                // Together they make up the twenty minutes; the outbox tries again and again meanwhile.
                foreach (var page in new[] { first, second })
                {
                    await page.Clock.RunForAsync(Minutes * 60_000 / (entries / 2 - entries / 8));
                }
            }
        }
        // A device that was put away in between and taken up again, without network: nothing of it is gone.
        await site.StartAgainAsync();
        await first.Context.SetOfflineAsync(false);
        foreach (var page in new[] { first, second })
        {
            await page.EvaluateAsync("() => outbox.flush()");
            await page.GetByTestId("net").Filter(new() { HasText = "Everything is saved." }).WaitForAsync(new() { Timeout = 30_000 });
        }
        await first.ReloadAsync();
        await first.Locator(".of-house summary").ClickAsync();
        var arrived = await first.GetByTestId("arrived").Locator("li").EvaluateAllAsync<string[][]>(
            "rows => rows.map(r => [r.querySelector('.grow').textContent, r.querySelector('.muted').textContent.split(', ')[0]])");
        return new NotedAndArrived(noted, [.. arrived.Reverse().Select(a => (a[0], a[1]))]);
    }

    // A line, a reading and something poured away by turns; each has words that no other has.
    private static async Task<string> NoteAsync(IPage page, string who, int i)
    {
        var form = page.Locator(".entry-form:not([hidden])");
        switch (i % 3)
        {
            case 0:
                await page.Locator("[data-kind=line]").ClickAsync();
                await form.Locator("[name=text]").FillAsync($"{i + 1} ml verjus for {who}");
                await form.Locator(".keep").ClickAsync();
                return $"{i + 1} ml verjus for {who}, in {await form.Locator("[name=draft] option:checked").TextContentAsync()}";
            case 1:
                await page.Locator("[data-kind=reading]").ClickAsync();
                await form.Locator("[name=of]").FillAsync($"Fridge of {who}");
                await form.GetByRole(AriaRole.Button, new() { Name = "°C", Exact = true }).ClickAsync();
                await form.Locator("[name=value]").FillAsync($"{i}.5");
                await form.Locator(".keep").ClickAsync();
                return $"temperature {i}.5 °C Fridge of {who}";
            default:
                await page.Locator("[data-kind=poured_away]").ClickAsync();
                await form.Locator("[name=of]").FillAsync("Quince cordial");
                await form.Locator("[name=amount]").FillAsync($"{i}");
                await form.Locator("[name=why]").FillAsync($"cloudy, {who}");
                await form.Locator(".keep").ClickAsync();
                return $"poured away {i} mL Quince cordial: cloudy, {who}";
        }
    }
}
