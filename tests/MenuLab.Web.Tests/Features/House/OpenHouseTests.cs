using MenuLab.Web.Features.House;
using Microsoft.EntityFrameworkCore;

namespace MenuLab.Web.Tests.Features.House;

public sealed class OpenHouseTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("menulab-open-");
    private readonly StandingClock _clock = new();
    private readonly List<string> _said = [];

    private string File => Path.Combine(_folder.FullName, "demo.db");

    [Fact]
    public async Task A_demo_bar_whose_making_was_cut_off_after_the_pantry_is_made_by_the_next_start()
    {
        await (await OpenAsync(isDemo: false)).DisposeAsync();
        await using var house = await OpenAsync(isDemo: true);
        await using var db = house.Read();
        Assert.True(await db.Drafts.CountAsync() >= 8);
        Assert.True(house.Book.Stock.PricesPerGram.Count > 0);
    }

    [Fact]
    public async Task A_clock_that_was_set_back_is_told_and_one_that_goes_on_is_not()
    {
        await (await OpenAsync(isDemo: false)).DisposeAsync();
        _said.Clear();
        _clock.Now = _clock.Now.AddMinutes(5);
        await (await OpenAsync(isDemo: false)).DisposeAsync();
        Assert.Empty(_said);

        _clock.Now = _clock.Now.AddMinutes(-90);
        await (await OpenAsync(isDemo: false)).DisposeAsync();
        Assert.Contains("90 min behind", Assert.Single(_said), StringComparison.Ordinal);
    }

    private Task<OpenHouse> OpenAsync(bool isDemo) => OpenHouse.OpenAsync(File, isDemo, _said.Add, _clock);

    public void Dispose() => _folder.Delete(recursive: true);
}
