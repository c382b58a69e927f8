using MenuLab.Web.Accounts;
using MenuLab.Web.Features.Drafts;
using MenuLab.Web.Features.House;

namespace MenuLab.Web.Tests.Features.House;

/// <summary>A house of its own on SQLite, opened as the host opens it, with a clock that stands.</summary>
internal sealed class HouseOnDisk : IAsyncDisposable
{
    private static readonly Lazy<Task<byte[]>> Template = new(MakeTemplate);
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("menulab-house-");

    private HouseOnDisk()
    {
        Folder = new DataFolder(_folder.FullName);
        Houses = new Houses(Folder, Clock);
    }

    public StandingClock Clock { get; } = new();

    public DataFolder Folder { get; }

    public Houses Houses { get; }

    public CurrentPerson Person { get; } = new();

    public CurrentHouse Current => new(Houses);

    public OpenHouse House => Houses.Current;

    public DraftDesk Drafts => new(Current, Person, Clock);

    public HouseDesk Desk => new(Current, Person, Houses, Folder, Clock);

    public DraftStarter Starter => new(House, Person.Id, Clock);

    public ImportDesk Import => new(Current, Person);

    /// <summary>A house without a draft: a copy of one that was made once.</summary>
    public static async Task<HouseOnDisk> OpenAsync()
    {
        var made = new HouseOnDisk();
        await File.WriteAllBytesAsync(made.Folder.OwnFile, await Template.Value);
        await made.Houses.ShowAsync(demo: false, _ => { });
        return made;
    }

    public async ValueTask DisposeAsync()
    {
        await Houses.DisposeAsync();
        _folder.Delete(recursive: true);
    }

    private static async Task<byte[]> MakeTemplate()
    {
        var folder = Directory.CreateTempSubdirectory("menulab-house-template-");
        var file = Path.Combine(folder.FullName, "house.db");
        await (await OpenHouse.OpenAsync(file, false, _ => { }, TimeProvider.System)).DisposeAsync();
        var bytes = await File.ReadAllBytesAsync(file);
        folder.Delete(recursive: true);
        return bytes;
    }
}

/// <summary>A clock that stands until it is moved.</summary>
internal sealed class StandingClock : TimeProvider
{
    public DateTimeOffset Now { get; set; } = new(2026, 11, 3, 12, 0, 0, TimeSpan.Zero);

    public override DateTimeOffset GetUtcNow() => Now;
}
