using MenuLab.Core;
using MenuLab.Core.Drafts;
using MenuLab.Core.House;
using MenuLab.Data.Writing;
using Microsoft.EntityFrameworkCore;

namespace MenuLab.Data.Drafts;

/// <summary>Starts drafts and applies edits, each in a transaction of its own (architecture 1.10).</summary>
/// <param name="writer">The one writer.</param>
/// <param name="time">Says when.</param>
/// <param name="understand">Gives a line whose ingredient or amount changed its millilitres and grams.</param>
public sealed class DraftWriting(IWriter writer, TimeProvider time, Func<LineContent, LineContent> understand)
{
    // A retry that comes later than this is not a retry; until then a pruned edit could be taken for a new one.
    private static readonly TimeSpan RetriesEnd = TimeSpan.FromDays(30);

    /// <summary>Starts a draft; again with the same id gives the one that was started.</summary>
    /// <returns>The draft, or what is wrong with the name.</returns>
    public Task<Result<Draft>> Start(DraftId id, string? name, PersonId by, CancellationToken cancellation = default) =>
        writer.Write(
            async db =>
            {
                if (await db.Drafts.AsNoTracking().SingleOrDefaultAsync(d => d.Id == id) is { } started)
                {
                    return Result.Ok(started);
                }
                var draft = Draft.Start(id, name, by, time.GetUtcNow());
                if (draft.IsOk)
                {
                    db.Add(draft.Value);
                    await db.SaveChangesAsync();
                }
                return draft;
            },
            cancellation);

    /// <summary>Applies an edit and answers when it is durable; an edit that comes again is answered as the first time.</summary>
    /// <returns>What became of it, or why it cannot be applied.</returns>
    public Task<Result<EditOutcome>> Apply(DraftId draftId, EditId id, PersonId by, PageId page, int seen, EditAction action, CancellationToken cancellation = default) =>
        writer.Write(db => ApplyIn(db, draftId, id, by, page, seen, action), cancellation);

    /// <summary>Applies an edit within a transaction that somebody else began.</summary>
    internal async Task<Result<EditOutcome>> ApplyIn(MenuLabDbContext db, DraftId draftId, EditId id, PersonId by, PageId page, int seen, EditAction action)
    {
        await db.Hold(draftId);
        var draft = await db.Drafts.AsTracking().SingleOrDefaultAsync(d => d.Id == draftId);
        if (draft is null)
        {
            return Result.Invalid<EditOutcome>(new Problem("draft", "There is no such draft."));
        }
        // Sent again, it may say that it saw more than the first time; the first time counts.
        var before = await db.Edits.AsNoTracking().SingleOrDefaultAsync(e => e.Id == id);
        if (before is not null && before.Draft != draftId)
        {
            return Result.Invalid<EditOutcome>(new Problem("edit", "This edit belongs to another draft."));
        }
        var edit = before?.ToApplied().Edit ?? new Edit(id, by, page, seen, action, time.GetUtcNow());
        var since = await db.Edits.AsNoTracking().Where(e => e.Draft == draftId && e.Version > edit.Seen).OrderBy(e => e.Version).ToListAsync();
        var outcome = draft.Apply(edit, [.. since.Select(e => e.ToApplied())], understand);
        if (outcome.IsOk && before is null)
        {
            db.Add(EditRow.Of(draftId, outcome.Value.Applied));
            await db.SaveChangesAsync();
        }
        return outcome;
    }

    /// <summary>Lets edits go that the draft's last iteration has made history and that nobody can be sending again.</summary>
    /// <returns>How many went.</returns>
    public Task<int> Prune(DraftId draftId, CancellationToken cancellation = default) =>
        writer.Write(
            db =>
            {
                var before = time.GetUtcNow() - RetriesEnd;
                return db.Edits
                    .Where(e => e.Draft == draftId && e.At < before && db.Iterations.Any(i => i.Draft == draftId && i.DraftVersion >= e.Version))
                    .ExecuteDeleteAsync();
            },
            cancellation);
}
