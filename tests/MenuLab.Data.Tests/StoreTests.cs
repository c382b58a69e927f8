using MenuLab.Data.Opening;
using MenuLab.TestKit.Databases;

namespace MenuLab.Data.Tests;

/// <summary>A test on a database of its own; each such class has one subclass per database.</summary>
public abstract class StoreTests(TestDatabase database) : IAsyncLifetime
{
    protected TestDatabase Database { get; } = database;

    protected Store Store { get; private set; } = null!;

    public async ValueTask InitializeAsync()
    {
        if (Database.Missing is { } why)
        {
            Assert.Skip(why);
        }
        Store = await Database.Open();
        await Harbour.Furnished(Store);
    }

    public async ValueTask DisposeAsync()
    {
        GC.SuppressFinalize(this);
        if (Store is not null)
        {
            await Store.DisposeAsync();
        }
        await Database.DisposeAsync();
    }
}
