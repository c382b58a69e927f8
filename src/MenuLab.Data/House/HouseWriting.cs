using MenuLab.Core;
using MenuLab.Core.House;
using MenuLab.Data.Writing;
using Microsoft.EntityFrameworkCore;

namespace MenuLab.Data.House;

/// <summary>All of the house's settings as somebody would like them, saved as one.</summary>
/// <param name="Seen">Version of the settings that the person saw.</param>
/// <param name="Wish">How the house writes and pours.</param>
/// <param name="FluidOunceMillilitres">What an ounce holds, mL.</param>
/// <param name="TimeZone">IANA time zone.</param>
/// <param name="DayTurn">When the site's day turns.</param>
/// <param name="Currency">ISO 4217 code.</param>
/// <param name="Jurisdiction">Whose rules apply.</param>
public sealed record SettingsToSave(int Seen, HouseWish Wish, double FluidOunceMillilitres, string? TimeZone, TimeOnly DayTurn, string? Currency, string? Jurisdiction);

/// <summary>Saves the house's settings.</summary>
/// <param name="writer">The one writer.</param>
/// <param name="time">Says when a measures set was made.</param>
public sealed class HouseWriting(IWriter writer, TimeProvider time)
{
    /// <summary>Field of the problem that somebody else saved first.</summary>
    public const string Conflict = "version";

    /// <summary>Saves all of them, or nothing.</summary>
    /// <returns>The settings as they stand now, or all that is wrong.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An ounce of nothing.</exception>
    public Task<Result<HouseSettings>> Save(SettingsToSave save, PersonId by, CancellationToken cancellation = default)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(save.FluidOunceMillilitres);
        return writer.Write(
            async db =>
            {
                var settings = await db.HouseSettings.AsTracking().SingleAsync();
                // One site until there are two (architecture 1.17); it is saved under the version of the settings.
                var site = await db.Sites.AsTracking().OrderBy(s => s.Id).FirstAsync();
                if (settings.Version != save.Seen)
                {
                    return SavedBefore();
                }
                var changed = settings.Change(save.Wish);
                var moved = site.Change(site.Name, save.TimeZone, save.DayTurn, save.Currency, save.Jurisdiction);
                if (!changed.IsOk || !moved.IsOk)
                {
                    return Result.Invalid<HouseSettings>([.. changed.Problems, .. moved.Problems]);
                }
                await UseOunce(db, settings, save.FluidOunceMillilitres, by);
                try
                {
                    await db.SaveChangesAsync();
                }
                catch (DbUpdateConcurrencyException)
                {
                    return SavedBefore();   // on a server two hosts may read the same version
                }
                return Result.Ok(settings);
            },
            cancellation);
    }

    // A set never changes, since saved iterations name it: another ounce is another set, or an older one with the same content.
    private async Task UseOunce(MenuLabDbContext db, HouseSettings settings, double millilitres, PersonId by)
    {
        var sets = (await db.Sets.Where(s => s.Kind == SetKind.Measures).OrderBy(s => s.Number).ToListAsync()).ConvertAll(s => s.Measures());
        var wanted = sets.Single(s => s.Number == settings.MeasuresSet) with { FluidOunce = millilitres };
        if (sets.Find(s => s == wanted with { Number = s.Number }) is { } same)
        {
            if (same.Number != settings.MeasuresSet)
            {
                settings.UseMeasures(same.Number);
            }
            return;
        }
        var made = wanted with { Number = sets[^1].Number + 1 };
        db.Add(NumberedSet.Of(made, by, time.GetUtcNow()));
        settings.UseMeasures(made.Number);
    }

    private static Result<HouseSettings> SavedBefore() =>
        Result.Invalid<HouseSettings>(new Problem(Conflict, "Somebody else saved the settings after this page was opened. Load the page again to see theirs; nothing of yours was saved."));
}
