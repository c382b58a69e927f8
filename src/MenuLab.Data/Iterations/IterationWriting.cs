using MenuLab.Core;
using MenuLab.Core.Balance;
using MenuLab.Core.Drafts;
using MenuLab.Core.House;
using MenuLab.Core.Iterations;
using MenuLab.Core.Pantry;
using MenuLab.Data.Pantry;
using MenuLab.Data.Writing;
using Microsoft.EntityFrameworkCore;

namespace MenuLab.Data.Iterations;

/// <summary>What is to be saved as an iteration: computed outside the writer, from one version of the working copy.</summary>
/// <param name="Id">Made by the page, so that saving twice saves once.</param>
/// <param name="Draft">The draft.</param>
/// <param name="DraftVersion">Version of the working copy that the snapshot was taken of.</param>
/// <param name="Parent">The iteration it came from; null for the draft's last.</param>
/// <param name="Reason">Why.</param>
/// <param name="By">Who.</param>
/// <param name="Snapshot">What the balance was computed from.</param>
/// <param name="Balance">The balance.</param>
/// <param name="Stamp">What computed it.</param>
/// <param name="Compositions">The compositions that the snapshot names.</param>
public sealed record IterationToSave(
    IterationId Id, DraftId Draft, int DraftVersion, IterationId? Parent, string? Reason, PersonId By, Snapshot Snapshot, DrinkBalance Balance, EngineStamp Stamp,
    IReadOnlyCollection<Composition> Compositions);

/// <summary>Saves iterations.</summary>
public sealed class IterationWriting(IWriter writer, TimeProvider time)
{
    /// <summary>Saves an iteration and answers when it is durable.</summary>
    /// <returns>The iteration, or why it was not saved: the draft changed meanwhile, a parent of another draft, a reason too long.</returns>
    public Task<Result<Iteration>> Save(IterationToSave save, CancellationToken cancellation = default) =>
        writer.Write(
            async db =>
            {
                await db.Hold(save.Draft);
                if (await db.Iterations.AsNoTracking().SingleOrDefaultAsync(i => i.Id == save.Id) is { } saved)
                {
                    return Result.Ok(saved);
                }
                var version = await db.Drafts.Where(d => d.Id == save.Draft).Select(d => (int?)d.Version).SingleOrDefaultAsync();
                if (version != save.DraftVersion)
                {
                    return Invalid("draft", version is null ? "There is no such draft." : "The draft changed while it was being saved: look at it and save again.");
                }
                var last = await db.Iterations.AsNoTracking().Where(i => i.Draft == save.Draft).OrderByDescending(i => i.Number).FirstOrDefaultAsync();
                if (save.Parent is { } named && !await db.Iterations.AnyAsync(i => i.Id == named && i.Draft == save.Draft))
                {
                    return Invalid("parent", "The iteration it came from belongs to another draft.");
                }
                var made = Iteration.Save(
                    save.Id, save.Draft, (last?.Number ?? 0) + 1, save.Parent ?? last?.Id, save.Reason, save.By, time.GetUtcNow(), save.DraftVersion, save.Snapshot,
                    save.Balance, save.Stamp);
                if (!made.IsOk)
                {
                    return made.As<Iteration>();
                }
                await db.KeepCompositions(save.Compositions);
                db.Add(made.Value.Iteration);
                db.Add(made.Value.Body);
                db.AddRange(made.Value.Lines);
                await db.SaveChangesAsync();
                return Result.Ok(made.Value.Iteration);
            },
            cancellation);

    private static Result<Iteration> Invalid(string field, string message) => Result.Invalid<Iteration>(new Problem(field, message));
}
