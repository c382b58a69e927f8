using MenuLab.Core.Drafts;
using MenuLab.Core.House;
using MenuLab.Core.Iterations;
using Microsoft.EntityFrameworkCore;

namespace MenuLab.Data.Drafts;

/// <summary>A draft as lists show it.</summary>
/// <param name="Id">Identity.</param>
/// <param name="Name">Name.</param>
/// <param name="Style">Key of its style.</param>
/// <param name="Standing">Where it stands.</param>
/// <param name="ChangedAt">When it last changed.</param>
/// <param name="Iterations">How many iterations it has.</param>
public sealed record DraftListing(DraftId Id, string Name, string? Style, Standing Standing, DateTimeOffset ChangedAt, int Iterations)
{
    /// <summary>Why it stands there; empty where nobody said.</summary>
    public string StandingReason { get; init; } = "";

    /// <summary>What it is for.</summary>
    public Brief Brief { get; init; } = Brief.Open;

    /// <summary>Who changed it last.</summary>
    public PersonId ChangedBy { get; init; }

    /// <summary>Version of its working copy, as a change of its standing has to say.</summary>
    public int Version { get; init; }

    /// <summary>The figures of its last iteration; null where it has none.</summary>
    public IterationFigures? LastFigures { get; init; }
}

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
        var rows = await drafts
            .OrderByDescending(d => d.ChangedAt)
            .ThenBy(d => d.Id)
            .Select(d => new { d.Id, d.Name, d.Style, d.Standing, d.StandingReason, d.Brief, d.ChangedAt, d.MadeBy, d.Version })
            .ToListAsync();
        // An iteration is numbered within its draft and never goes, so the last number is how many there are.
        var lastNumbers = db.Iterations.GroupBy(i => i.Draft).Select(g => new { Draft = g.Key, Number = g.Max(i => i.Number) });
        var lasts = await (
            from i in db.Iterations
            join last in lastNumbers on new { i.Draft, i.Number } equals new { last.Draft, last.Number }
            join d in drafts on i.Draft equals d.Id
            select new { i.Draft, i.Number, i.By, i.Figures }).ToDictionaryAsync(i => i.Draft);
        // The newest edit carries the version of the working copy; it may have been let go after an iteration.
        var authors = await (from d in drafts join e in db.Edits on new { d.Id, d.Version } equals new { Id = e.Draft, e.Version } select new { e.Draft, e.Author })
            .ToDictionaryAsync(e => e.Draft, e => e.Author);
        return
        [
            .. rows.Select(d =>
            {
                var last = lasts.GetValueOrDefault(d.Id);
                return new DraftListing(d.Id, d.Name, d.Style, d.Standing, d.ChangedAt, last?.Number ?? 0)
                {
                    StandingReason = d.StandingReason,
                    Brief = d.Brief,
                    ChangedBy = authors.TryGetValue(d.Id, out var author) ? author : last?.By ?? d.MadeBy,
                    Version = d.Version,
                    LastFigures = last?.Figures,
                };
            }),
        ];
    }

    /// <summary>A draft with its lines and build; null where there is none.</summary>
    public static Task<Draft?> OpenDraft(this MenuLabDbContext db, DraftId id) => db.Drafts.SingleOrDefaultAsync(d => d.Id == id);

    /// <summary>The edits of a draft that are still kept, in order: what happened, and what can be taken back.</summary>
    public static async Task<IReadOnlyList<AppliedEdit>> EditsOf(this MenuLabDbContext db, DraftId id, int above = 0) =>
        [.. (await db.Edits.Where(e => e.Draft == id && e.Version > above).OrderBy(e => e.Version).ToListAsync()).Select(e => e.ToApplied())];
}
