using MenuLab.Data.Opening;

namespace MenuLab.Web.Features.House;

/// <summary>
/// The houses of a data folder: the bar's own in one file, the invented demo bar in another. One of them is shown; which
/// one is remembered in the folder. Each is opened when it is first shown and held until the host stops.
/// </summary>
public sealed class Houses(DataFolder folder, TimeProvider time) : IAsyncDisposable
{
    private readonly SemaphoreSlim _opening = new(1, 1);
    private OpenHouse? _own;
    private OpenHouse? _demo;
    private OpenHouse? _current;

    /// <summary>The house that is shown.</summary>
    /// <exception cref="InvalidOperationException">None was opened yet.</exception>
    public OpenHouse Current => Volatile.Read(ref _current) ?? throw new InvalidOperationException("No house is open yet.");

    /// <summary>Opens the house that was shown last; on an empty folder the demo bar.</summary>
    /// <param name="say">Takes a sentence on what is being done and takes a while.</param>
    /// <exception cref="StoreException">Its file cannot be used; nothing was overwritten.</exception>
    public Task OpenAsync(Action<string> say) => ShowAsync(folder.ShowsDemo, say);

    /// <summary>Shows the demo bar or the bar's own house from now on; pages that are open go on with the one they have.</summary>
    /// <exception cref="StoreException">Its file cannot be used; nothing was overwritten.</exception>
    public async Task ShowAsync(bool demo, Action<string>? say = null)
    {
        await _opening.WaitAsync();
        try
        {
            var shown = demo ? _demo ??= await Open(folder.DemoFile, true) : _own ??= await Open(folder.OwnFile, false);
            Volatile.Write(ref _current, shown);
            folder.Remember(demo);
        }
        finally
        {
            _opening.Release();
        }

        Task<OpenHouse> Open(string file, bool isDemo) => OpenHouse.OpenAsync(file, isDemo, say ?? (_ => { }), time);
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        foreach (var house in new[] { _own, _demo })
        {
            if (house is not null)
            {
                await house.DisposeAsync();
            }
        }
        _opening.Dispose();
    }
}
