using MenuLab.Core.Drafts;
using MenuLab.Core.Drafts.Rounds;
using MenuLab.Core.House;
using MenuLab.Core.Pantry;
using Microsoft.EntityFrameworkCore;

namespace MenuLab.Data.Drafts.Rounds;

/// <summary>A round with its notes.</summary>
/// <param name="Round">The round with its pours and cells.</param>
/// <param name="Notes">Its notes in the order of arrival, those that a later one puts right among them.</param>
public sealed record RoundSheet(Round Round, IReadOnlyList<WrittenNote> Notes);

/// <summary>An entry as lists show it.</summary>
/// <param name="Entry">What was captured.</param>
/// <param name="ReceivedAt">When it arrived.</param>
/// <param name="Answer">What became of it.</param>
public sealed record CaptureListing(CaptureEntry Entry, DateTimeOffset ReceivedAt, CaptureAnswer Answer);

/// <summary>A prep that only drafts hold which nobody works on.</summary>
/// <param name="Ingredient">Which.</param>
/// <param name="Name">Its name.</param>
public sealed record ServesNothing(IngredientId Ingredient, string Name);

/// <summary>A bottled pour with what was noted of it.</summary>
/// <param name="Round">The round.</param>
/// <param name="Letter">The pour.</param>
/// <param name="BottledOn">The day it was bottled.</param>
/// <param name="Tasted">Moments of which there is a note.</param>
public sealed record BottledPour(Round Round, PourLetter Letter, DateOnly BottledOn, IReadOnlySet<TasteMoment> Tasted);

/// <summary>Reads rounds, notes and what was captured.</summary>
public static class RoundQueries
{
    /// <summary>A round with its pours and cells; null where there is none.</summary>
    public static Task<Round?> OpenRound(this MenuLabDbContext db, RoundId id) => db.Rounds.AsNoTracking().AsSplitQuery().SingleOrDefaultAsync(r => r.Id == id);

    /// <summary>The rounds of a draft with their notes, the first first.</summary>
    public static async Task<IReadOnlyList<RoundSheet>> RoundsOf(this MenuLabDbContext db, DraftId draft)
    {
        var rounds = await db.Rounds.AsNoTracking().AsSplitQuery().Where(r => r.Draft == draft).OrderBy(r => r.Number).ToListAsync();
        var notes = await (from n in db.PourNotes join r in db.Rounds on n.Round equals r.Id where r.Draft == draft orderby n.ReceivedOrder select n).ToListAsync();
        return [.. rounds.Select(r => new RoundSheet(r, [.. notes.Where(n => n.Round == r.Id).Select(n => n.ToNote())]))];
    }

    /// <summary>The notes of a round, in the order of arrival.</summary>
    public static async Task<IReadOnlyList<WrittenNote>> NotesOf(this MenuLabDbContext db, RoundId round) =>
        [.. (await db.PourNotes.Where(n => n.Round == round).OrderBy(n => n.ReceivedOrder).ToListAsync()).Select(n => n.ToNote())];

    /// <summary>The ladder of a draft: its rounds with the note that drove each step.</summary>
    public static async Task<IReadOnlyList<Rung>> LadderOf(this MenuLabDbContext db, DraftId draft, Func<IngredientId, string> name, HouseFormat format)
    {
        var sheets = await db.RoundsOf(draft);
        return Ladder.Of([.. sheets.Select(s => s.Round)], [.. sheets.SelectMany(s => s.Notes)], name, format);
    }

    /// <summary>What arrived since an instant, the last first.</summary>
    /// <param name="db">A context to read with.</param>
    /// <param name="since">The beginning of the bar's day, say.</param>
    /// <param name="device">Only what this device captured; null for all.</param>
    public static async Task<IReadOnlyList<CaptureListing>> CapturedSince(this MenuLabDbContext db, DateTimeOffset since, DeviceId? device = null)
    {
        var rows = db.CaptureEntries.Where(e => e.ReceivedAt >= since);
        rows = device is { } d ? rows.Where(e => e.Device == d) : rows;
        return [.. (await rows.OrderByDescending(e => e.ReceivedOrder).ToListAsync()).Select(Listing)];
    }

    /// <summary>Collisions that nobody has answered, the first first.</summary>
    /// <param name="db">A context to read with.</param>
    /// <param name="draft">Only those of this draft and its rounds; null for all.</param>
    public static async Task<IReadOnlyList<CaptureListing>> OpenCollisions(this MenuLabDbContext db, DraftId? draft = null)
    {
        var rows = db.CaptureEntries.Where(e =>
            e.Outcome == CaptureOutcome.Collided && !db.CaptureEntries.Any(a => a.Answers == e.Id && a.Outcome != CaptureOutcome.Refused));
        rows = draft is { } d ? rows.Where(e => e.Draft == d) : rows;
        return [.. (await rows.OrderBy(e => e.ReceivedOrder).ToListAsync()).Select(Listing)];
    }

    /// <summary>Pours that were bottled since a day, with what was tasted of them, the first bottled first.</summary>
    public static async Task<IReadOnlyList<BottledPour>> BottledSince(this MenuLabDbContext db, DateOnly since)
    {
        var rounds = await db.Rounds.AsNoTracking().AsSplitQuery().Where(r => EF.Property<List<Pour>>(r, "_pours").Any(p => p.BottledOn != null)).ToListAsync();
        var ids = rounds.Select(r => r.Id).ToList();
        var notes = (await db.PourNotes.Where(n => ids.Contains(n.Round)).ToListAsync()).Select(n => n.ToNote().Note).ToList();
        return
        [
            .. from round in rounds
               from pour in round.Pours
               where pour.BottledOn >= since
               orderby pour.BottledOn, round.Number, pour.Letter
               select new BottledPour(
                   round, pour.Letter, pour.BottledOn!.Value,
                   notes.Where(n => n.Round == round.Id && n.Letter == pour.Letter).Select(n => n.Moment).OfType<TasteMoment>().ToHashSet()),
        ];
    }

    /// <summary>A photo or a sound; null where there is none.</summary>
    public static Task<Attachment?> OpenAttachment(this MenuLabDbContext db, AttachmentId id) => db.Attachments.AsNoTracking().SingleOrDefaultAsync(a => a.Id == id);

    /// <summary>
    /// What the house itself keeps for a draft and for nothing else that is in the works: named when the draft is parked or
    /// dropped. What was bought ready serves other drafts as soon as somebody wants it, and is not named.
    /// </summary>
    public static async Task<IReadOnlyList<ServesNothing>> ServesNothingWithout(this MenuLabDbContext db, DraftId draft)
    {
        var lines = db.Drafts.SelectMany(d => EF.Property<List<WorkingLine>>(d, "_lines"), (d, l) => new { d.Id, d.Standing, d.ArchivedAt, l.Ingredient });
        var served = lines.Where(l => l.Id != draft && l.Standing == Standing.InTheWorks && l.ArchivedAt == null).Select(l => l.Ingredient);
        var own = lines.Where(l => l.Id == draft).Select(l => l.Ingredient);
        // What has no key came from the house and not with the program.
        var rows = await db.Ingredients
            .Where(i => i.Key == null && i.ArchivedAt == null && own.Contains(i.Id) && !served.Contains(i.Id))
            .OrderBy(i => i.SearchName).Select(i => new { i.Id, i.Name }).ToListAsync();
        return [.. rows.Select(r => new ServesNothing(r.Id, r.Name))];
    }

    private static CaptureListing Listing(CaptureRow row) => new(row.ToEntry(), row.ReceivedAt, row.ToAnswer(isDoubled: false));
}
