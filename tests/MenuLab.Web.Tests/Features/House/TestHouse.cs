using MenuLab.Core.Drafts;
using MenuLab.Web.Features.Bench;

namespace MenuLab.Web.Tests.Features.House;

/// <summary>One house for a test class that works drafts on its bench.</summary>
public sealed class TestHouse : IAsyncLifetime
{
    private HouseOnDisk _disk = null!;

    public BenchDesk Bench => new(_disk.Current, _disk.Person);

    public async ValueTask InitializeAsync() => _disk = await HouseOnDisk.OpenAsync();

    /// <summary>A draft with these typed lines, opened on a page.</summary>
    public async Task<BenchSession> StartAsync(params string[] lines)
    {
        var id = DraftId.New();
        await _disk.House.Drafts.Start(id, "Low Water", _disk.Person.Id);
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

    public ValueTask DisposeAsync() => _disk.DisposeAsync();
}
