using MenuLab.Data.Opening;

namespace MenuLab.TestKit.Databases;

/// <summary>A database of its own for a test, made by the real migrations and thrown away afterwards.</summary>
public abstract class TestDatabase : IAsyncDisposable
{
    /// <summary>Why tests on it cannot run on this machine; null where they can.</summary>
    public virtual string? Missing => null;

    /// <summary>Opens it; a second call opens it again, as another host would.</summary>
    public abstract Task<Store> Open();

    /// <inheritdoc/>
    public abstract ValueTask DisposeAsync();
}
