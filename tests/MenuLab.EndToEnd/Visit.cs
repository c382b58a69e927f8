using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace MenuLab.EndToEnd;

/// <summary>One visit to the site: a page, and what it asked for or broke meanwhile.</summary>
public sealed class Visit : IAsyncDisposable
{
    private static readonly AxeRunOptions Rules = new()
    {
        RunOnly = new RunOnlyOptions { Type = "tag", Values = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"] },
    };

    private readonly IBrowserContext _context;

    private Visit(IBrowserContext context, IPage page)
    {
        _context = context;
        Page = page;
    }

    /// <summary>The page.</summary>
    public IPage Page { get; }

    /// <summary>Requests and sockets to any other origin.</summary>
    public List<string> Strangers { get; } = [];

    /// <summary>Errors in the console and breaches of the content security policy.</summary>
    public List<string> Complaints { get; } = [];

    /// <summary>The field for the drink.</summary>
    public ILocator Text => Page.GetByLabel("Type or paste a drink as you would write it");

    internal static async Task<Visit> StartAsync(IBrowserContext context, string address, string path)
    {
        var page = await context.NewPageAsync();
        var visit = new Visit(context, page);
        page.Request += (_, request) =>
        {
            if (!request.Url.StartsWith(address + "/", StringComparison.Ordinal) && !request.Url.StartsWith("data:", StringComparison.Ordinal))
            {
                visit.Strangers.Add(request.Url);
            }
        };
        page.WebSocket += (_, socket) =>
        {
            if (!socket.Url.StartsWith(address.Replace("http://", "ws://", StringComparison.Ordinal) + "/", StringComparison.Ordinal))
            {
                visit.Strangers.Add(socket.Url);
            }
        };
        page.Console += (_, message) =>
        {
            if (message.Type == "error")
            {
                visit.Complaints.Add(message.Text);
            }
        };
        page.PageError += (_, error) => visit.Complaints.Add(error);
        await page.ExposeFunctionAsync("policyBroken", (string what) => visit.Complaints.Add(what));
        await page.AddInitScriptAsync("addEventListener('securitypolicyviolation', e => policyBroken(`${e.violatedDirective}: ${e.blockedURI} ${e.sample}`))");
        await page.GotoAsync(address + path);
        return visit;
    }

    /// <summary>Waits until the page listens.</summary>
    public async Task ReadyAsync()
    {
        await Page.Locator("[data-interactive=true]").WaitForAsync();
        await Page.Locator("main").First.WaitForAsync();
    }

    /// <summary>Puts a text into the field as a paste would, and waits for so many lines to be read.</summary>
    public async Task PasteAsync(string text, int lines)
    {
        await Text.FillAsync(text);
        await Assertions.Expect(Page.GetByTestId("line")).ToHaveCountAsync(lines);
        await Assertions.Expect(Page.Locator("main")).ToHaveAttributeAsync("aria-busy", "false");
    }

    /// <summary>No rule of WCAG 2.2 AA that a machine can check is broken.</summary>
    /// <param name="state">What is on the page, for the message.</param>
    public async Task ExpectAccessibleAsync(string state)
    {
        var result = await Page.RunAxe(Rules);
        Assert.NotEmpty(result.Passes);
        Assert.Empty(result.Violations.SelectMany(rule => rule.Nodes.Select(node => $"{state}: {rule.Id}: {node.Html}")));
    }

    /// <summary>Nothing went to another origin and nothing broke.</summary>
    public void WasClean()
    {
        Assert.Empty(Strangers);
        Assert.Empty(Complaints);
    }

    /// <summary>Closes the window.</summary>
    public async ValueTask DisposeAsync() => await _context.CloseAsync();
}
