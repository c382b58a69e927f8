using Microsoft.Playwright;
using Xunit.Sdk;
using Xunit.v3;

[assembly: AssemblyFixture(typeof(MenuLab.EndToEnd.SiteAndBrowser))]
// One browser, two cores: one journey at a time.
[assembly: Parallelization(Mode = ParallelMode.None)]

namespace MenuLab.EndToEnd;

/// <summary>One published site and one browser for all tests of a run.</summary>
public sealed class SiteAndBrowser : IAsyncLifetime
{
    private IPlaywright? _playwright;
    private IBrowser? _browser;
    private PublishedSite? _site;
    private string _published = "";

    /// <summary>Where the site listens, without a slash at the end.</summary>
    public string Address { get; private set; } = "";

    /// <summary>Publishes, starts, finds a browser.</summary>
    public async ValueTask InitializeAsync()
    {
        _playwright = await Playwright.CreateAsync();
        var (path, said) = await ChromiumOnThisMachine.FindOrGetAsync(_playwright);
        // The runner shows a passing project's output to nobody, so it also stands in a file (.ci/run prints it).
        Console.WriteLine(said);
        Directory.CreateDirectory(Repository.Artifacts);
        await File.WriteAllTextAsync(Path.Combine(Repository.Artifacts, "browser.txt"), said + Environment.NewLine);
        _browser = await _playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions
        {
            ExecutablePath = path,
            Args = ChromiumOnThisMachine.Arguments,
        });
        _published = await PublishedSite.PublishAsync();
        _site = await PublishedSite.StartAsync(_published, PublishedSite.EmptyData("data"));
        Address = _site.Address.GetLeftPart(UriPartial.Authority);
    }

    /// <summary>A browser window with nothing in its storage, and a list of everything it does that it must not.</summary>
    public Task<Visit> OpenAsync(int width = 1440, int height = 900, ColorScheme mode = ColorScheme.Light, string path = "/type") =>
        OpenAtAsync(Address, path, width, height, mode);

    /// <summary>The published program once more, on data of its own, for a test that kills it.</summary>
    internal Task<PublishedSite> StartAnotherAsync() => PublishedSite.StartAsync(_published, PublishedSite.EmptyData("data-to-kill"));

    /// <summary>The same at another address.</summary>
    internal async Task<Visit> OpenAtAsync(string address, string path, int width = 1440, int height = 900, ColorScheme mode = ColorScheme.Light)
    {
        var context = await _browser!.NewContextAsync(new BrowserNewContextOptions
        {
            ViewportSize = new ViewportSize { Width = width, Height = height },
            ColorScheme = mode,
            ReducedMotion = ReducedMotion.Reduce,
            HasTouch = width < 1000,
        });
        return await Visit.StartAsync(context, address, path);
    }

    /// <summary>Stops all of it.</summary>
    public async ValueTask DisposeAsync()
    {
        if (_browser is not null)
        {
            await _browser.CloseAsync();
        }
        _playwright?.Dispose();
        if (_site is not null)
        {
            await _site.DisposeAsync();
        }
    }
}
