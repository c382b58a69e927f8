using MenuLab.Core.Drafts;
using MenuLab.Core.House;
using Microsoft.EntityFrameworkCore;

namespace MenuLab.Data.Drafts;

/// <summary>A draft as lists show it.</summary>
/// <param name="Id">Identity.</param>
/// <param name="Name">Name.</param>
/// <param name="Style">Key of its style.</param>
/// <param name="Standing">Where it stands.</param>
/// <param name="ChangedAt">When it last changed.</param>
/// <param name="Iterations">How many iterations it has.</param>
public sealed record DraftListing(DraftId Id, string Name, string? Style, Standing Standing, DateTimeOffset ChangedAt, int Iterations);

/// <summary>Reads drafts.</summary>
public static class DraftQueries
{
    /// <summary>Drafts that are not archived, the last changed first.</summary>
    /// <param name="db">A context to read with.</param>
    /// <param name="standing">Only those that stand so; null for all.</param>
    /// <param name="named">Only those whose name contains this, marks and case aside; empty for all.</param>
    public static async Task<IReadOnlyList<DraftListing>> ListDrafts(this MenuLabDbContext db, Standing? standing = null, string named = "")
    {
        var drafts = db.Drafts.Where(d => d.ArchivedAt == null);
        drafts = standing is { } s ? drafts.Where(d => d.Standing == s) : drafts;
        var search = SearchName.Of(named);
        drafts = search.Length > 0 ? drafts.Where(d => d.SearchName.Contains(search)) : drafts;
        return await drafts
            .OrderByDescending(d => d.ChangedAt)
            .Select(d => new DraftListing(d.Id, d.Name, d.Style, d.Standing, d.ChangedAt, db.Iterations.Count(i => i.Draft == d.Id)))
            .ToListAsync();
    }

    /// <summary>A draft with its lines and build; null where there is none.</summary>
    public static Task<Draft?> OpenDraft(this MenuLabDbContext db, DraftId id) => db.Drafts.SingleOrDefaultAsync(d => d.Id == id);

    /// <summary>The edits of a draft that are still kept, in order: what happened, and what can be taken back.</summary>
    public static async Task<IReadOnlyList<AppliedEdit>> EditsOf(this MenuLabDbContext db, DraftId id, int above = 0) =>
        [.. (await db.Edits.Where(e => e.Draft == id && e.Version > above).OrderBy(e => e.Version).ToListAsync()).Select(e => e.ToApplied())];
}
