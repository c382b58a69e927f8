using MenuLab.Core;
using MenuLab.Core.Drafts;
using MenuLab.Core.Drafts.Rounds;
using MenuLab.Core.House;
using MenuLab.Data.Writing;
using Microsoft.EntityFrameworkCore;

namespace MenuLab.Data.Drafts.Rounds;

/// <summary>Starts, changes and ends rounds, each change in a transaction of its own. Cells and notes are captured: <see cref="CaptureWriting"/>.</summary>
/// <param name="writer">The one writer.</param>
/// <param name="time">Says when.</param>
/// <param name="understand">Gives a line whose amount changed its millilitres and grams.</param>
public sealed class RoundWriting(IWriter writer, TimeProvider time, Func<LineContent, LineContent> understand)
{
    /// <summary>Starts a round from what is on the bench, or from a pour of an earlier round; again with the same id gives the one that was started.</summary>
    /// <returns>The round, or all that is wrong with it.</returns>
    public Task<Result<Round>> Start(RoundToStart wish, PersonId by, CancellationToken cancellation = default) =>
        writer.Write(
            async db =>
            {
                await db.HoldCaptures();
                await db.Hold(wish.Draft);
                if (await db.OpenRound(wish.Id) is { } started)
                {
                    return started.Draft == wish.Draft ? Result.Ok(started) : Invalid("round", "This round belongs to another draft.");
                }
                var number = (await db.Rounds.Where(r => r.Draft == wish.Draft).MaxAsync(r => (int?)r.Number) ?? 0) + 1;
                var round = wish.FromRound is { } from ? await GoOn(db, wish, from, number, by) : await FromTheBench(db, wish, number, by);
                if (round.IsOk)
                {
                    db.Add(round.Value);
                    await db.SaveChangesAsync();
                }
                return round;
            },
            cancellation);

    /// <summary>Adds a pour under the next letter, like another one; where the letter is there already, nothing is added.</summary>
    public Task<Result<Round>> AddPour(RoundId id, PourLetter letter, PourLetter? like, CancellationToken cancellation = default) =>
        Change(id, round => After(round, round.Add(letter, like)), cancellation);

    /// <summary>Says from which batch a line of a pour came; null takes it back.</summary>
    public Task<Result<Round>> OpenBatch(RoundId id, PourLetter letter, LineId line, Guid? batch, CancellationToken cancellation = default) =>
        Change(id, round => After(round, round.OpenBatch(letter, line, batch)), cancellation);

    /// <summary>Starts the timer of pours that were not poured before.</summary>
    public Task<Result<Round>> Poured(RoundId id, IReadOnlyCollection<PourLetter> letters, CancellationToken cancellation = default) =>
        Change(
            id,
            round =>
            {
                round.Poured(letters, time.GetUtcNow());
                return Result.Ok(round);
            },
            cancellation);

    /// <summary>Puts a pour into a bottle, to be tasted again in some days.</summary>
    /// <param name="id">The round.</param>
    /// <param name="letter">The pour.</param>
    /// <param name="on">The bar's day.</param>
    /// <param name="cancellation">Gives up waiting.</param>
    public Task<Result<Round>> Bottle(RoundId id, PourLetter letter, DateOnly on, CancellationToken cancellation = default) =>
        Change(id, round => After(round, round.Bottle(letter, on)), cancellation);

    /// <summary>Ends a round; said again, the last word stands.</summary>
    public Task<Result<Round>> End(RoundId id, PourLetter? winner, PersonId by, CancellationToken cancellation = default) =>
        Change(id, round => round.End(winner, by, time.GetUtcNow()), cancellation);

    /// <summary>Says that the winner became an iteration of the draft.</summary>
    public Task<Result<Round>> Became(RoundId id, int iteration, CancellationToken cancellation = default) =>
        writer.Write(
            async db =>
            {
                await db.HoldCaptures();
                if (await db.Rounds.AsTracking().SingleOrDefaultAsync(r => r.Id == id) is not { } round || !await db.Iterations.AnyAsync(i => i.Draft == round.Draft && i.Number == iteration))
                {
                    return Invalid("round", "There is no such round, or its draft has no such iteration.");
                }
                round.Became(iteration);
                await db.SaveChangesAsync();
                return Result.Ok(round);
            },
            cancellation);

    /// <summary>Keeps a photo or a sound; again with the same id keeps the first.</summary>
    public Task<Result<AttachmentId>> Attach(AttachmentId id, string? mediaType, byte[] bytes, PersonId by, CancellationToken cancellation = default) =>
        writer.Write(
            async db =>
            {
                await db.HoldCaptures();
                if (await db.Attachments.AnyAsync(a => a.Id == id))
                {
                    return Result.Ok(id);
                }
                var made = Attachment.Of(id, mediaType, bytes, by, time.GetUtcNow());
                if (!made.IsOk)
                {
                    return made.As<AttachmentId>();
                }
                db.Add(made.Value);
                await db.SaveChangesAsync();
                return Result.Ok(id);
            },
            cancellation);

    private async Task<Result<Round>> GoOn(MenuLabDbContext db, RoundToStart wish, RoundId from, int number, PersonId by) =>
        await db.OpenRound(from) is { } earlier && earlier.Draft == wish.Draft
            ? earlier.GoOn(wish, number, understand, by, time.GetUtcNow())
            : Invalid("round", "The draft has no such round to go on from.");

    private async Task<Result<Round>> FromTheBench(MenuLabDbContext db, RoundToStart wish, int number, PersonId by)
    {
        if (await db.OpenDraft(wish.Draft) is not { } draft)
        {
            return Invalid("draft", "There is no such draft.");
        }
        var last = await db.Iterations.Where(i => i.Draft == wish.Draft).OrderByDescending(i => i.Number).Select(i => new { i.Number, i.DraftVersion }).FirstOrDefaultAsync();
        return Round.Start(wish, draft, number, draft.GoesOnFrom(last?.Number, last?.DraftVersion ?? 0), by, time.GetUtcNow());
    }

    private Task<Result<Round>> Change(RoundId id, Func<Round, Result<Round>> change, CancellationToken cancellation) =>
        writer.Write(
            async db =>
            {
                await db.HoldCaptures();
                if (await db.Rounds.AsTracking().SingleOrDefaultAsync(r => r.Id == id) is not { } round)
                {
                    return Invalid("round", "There is no such round.");
                }
                var changed = change(round);
                if (changed.IsOk)
                {
                    await db.SaveChangesAsync();
                }
                return changed;
            },
            cancellation);

    private static Result<Round> After<T>(Round round, Result<T> step) => step.IsOk ? Result.Ok(round) : step.As<Round>();

    private static Result<Round> Invalid(string field, string message) => Result.Invalid<Round>(new Problem(field, message));
}
