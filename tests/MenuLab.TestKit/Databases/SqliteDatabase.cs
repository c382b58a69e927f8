using MenuLab.Data.Opening;

namespace MenuLab.TestKit.Databases;

/// <summary>A SQLite file in a folder of its own: a copy of one template, migrated once for the whole run.</summary>
public sealed class SqliteDatabase : TestDatabase
{
    private static readonly Lazy<Task<byte[]>> Template = new(MakeTemplate);
    private readonly string _folder = Directory.CreateTempSubdirectory("menulab-test-").FullName;

    /// <summary>The file; a test may put another one there before opening it.</summary>
    public string File => Path.Combine(_folder, "house.db");

    /// <summary>Its folder.</summary>
    public string Folder => _folder;

    /// <inheritdoc/>
    public override async Task<Store> Open()
    {
        if (!System.IO.File.Exists(File))
        {
            await System.IO.File.WriteAllBytesAsync(File, await Template.Value);
        }
        return await SqliteStore.Open(new SqliteStoreOptions { File = File });
    }

    /// <inheritdoc/>
    public override ValueTask DisposeAsync()
    {
        Directory.Delete(_folder, recursive: true);
        return ValueTask.CompletedTask;
    }

    private static async Task<byte[]> MakeTemplate()
    {
        var folder = Directory.CreateTempSubdirectory("menulab-template-").FullName;
        var file = Path.Combine(folder, "template.db");
        await (await SqliteStore.Open(new SqliteStoreOptions { File = file })).DisposeAsync();
        var bytes = await System.IO.File.ReadAllBytesAsync(file);
        Directory.Delete(folder, recursive: true);
        return bytes;
    }
}
