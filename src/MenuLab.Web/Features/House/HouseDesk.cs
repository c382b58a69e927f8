using MenuLab.Core;
using MenuLab.Data.House;
using MenuLab.Data.Opening;
using MenuLab.Web.Accounts;

namespace MenuLab.Web.Features.House;

/// <summary>Where the files of the two bars lie.</summary>
/// <param name="Own">The bar's own house.</param>
/// <param name="Demo">The demo bar.</param>
/// <param name="Copies">Copies that were made before an update changed a file.</param>
public sealed record HouseFiles(string Own, string Demo, string Copies);

/// <summary>What the page of the house's settings can do.</summary>
public sealed class HouseDesk(CurrentHouse current, CurrentPerson person, Houses houses, DataFolder folder, TimeProvider time)
{
    /// <summary>The demo bar is the one this page works with.</summary>
    public bool IsDemo => current.House.IsDemo;

    /// <summary>Where the files lie.</summary>
    public HouseFiles Files => new(folder.OwnFile, folder.DemoFile, Path.Combine(folder.Path, "backups"));

    /// <summary>The settings as they stand.</summary>
    public HouseForm Open() => HouseForm.Of(current.Book);

    /// <summary>The time, for examples.</summary>
    public DateTimeOffset Now => time.GetUtcNow();

    /// <summary>Saves the form, and has every open page read the house again.</summary>
    /// <returns>The form as it stands now, or all that is wrong; then nothing was saved.</returns>
    public async Task<Result<HouseForm>> SaveAsync(HouseForm form, CancellationToken cancellation = default)
    {
        var read = form.Read();
        if (!read.IsOk)
        {
            return read.As<HouseForm>();
        }
        try
        {
            var saved = await new HouseWriting(current.House.Writer, time).Save(read.Value, person.Id, cancellation);
            if (!saved.IsOk)
            {
                return saved.As<HouseForm>();
            }
        }
        catch (StoreException problem)
        {
            return Result.Invalid<HouseForm>(new Problem("store", problem.Message));
        }
        await current.House.RefreshAsync();
        return Result.Ok(Open());
    }

    /// <summary>Shows the other bar from the next page on.</summary>
    /// <returns>Empty, or why its file cannot be opened.</returns>
    public async Task<string> ShowAsync(bool demo)
    {
        try
        {
            await houses.ShowAsync(demo);
            return "";
        }
        catch (StoreException problem)
        {
            return problem.Message;
        }
    }
}
