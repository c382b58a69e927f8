using MenuLab.Core.Drafts;
using MenuLab.Web.Accounts;
using MenuLab.Web.Features.Bench;
using MenuLab.Web.Features.House;
using Microsoft.Extensions.Logging.Abstractions;

namespace MenuLab.Web.Tests.Features.House;

/// <summary>A house of its own with the shipped pantry, in a folder that goes with it. Made once per test class.</summary>
public sealed class TestHouse : IAsyncLifetime
{
    private readonly string _folder = Path.Combine(Path.GetTempPath(), "menulab-" + Guid.NewGuid().ToString("N"));
    private Houses _houses = null!;

    public OpenHouse House => _houses.Current;

    public CurrentHouse Current => new(_houses);

    public BenchDesk Bench => new(Current, new CurrentPerson());

    public async ValueTask InitializeAsync()
    {
        _houses = new Houses(new DataFolder(_folder), TimeProvider.System, NullLogger<Houses>.Instance);
        await _houses.ShowAsync(demo: false, _ => { });
    }

    /// <summary>A draft with these typed lines, opened on a page.</summary>
    public async Task<BenchSession> StartAsync(params string[] lines)
    {
        var id = DraftId.New();
        await House.Drafts.Start(id, "Low Water", new CurrentPerson().Id);
        var session = await OpenAsync(id);
        foreach (var line in lines)
        {
            Assert.True(await session.EnterAsync(Guid.CreateVersion7(), line), line);
        }
        return session;
    }

    /// <summary>The same draft on another page.</summary>
    public async Task<BenchSession> OpenAsync(DraftId id)
    {
        var session = new BenchSession(Bench, id);
        await session.OpenAsync();
        return session;
    }

    public async ValueTask DisposeAsync()
    {
        await _houses.DisposeAsync();
        Directory.Delete(_folder, recursive: true);
    }
}
