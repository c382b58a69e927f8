using MenuLab.Core;
using MenuLab.Core.Drafts;
using MenuLab.Core.House;
using MenuLab.Data.Writing;
using Microsoft.EntityFrameworkCore;

namespace MenuLab.Data.Drafts;

/// <summary>A draft that begins with more than a name: a brief, or the lines of a drink that was brought in.</summary>
/// <param name="Id">Identity, made by the page, so that starting twice starts once.</param>
/// <param name="Name">Name.</param>
/// <param name="Actions">What is done to it at once, in order. A line that is added brings along what it was understood as.</param>
public sealed record DraftToStart(DraftId Id, string? Name, IReadOnlyList<EditAction> Actions)
{
    /// <summary>The draft with its first edits, in memory; nothing is stored.</summary>
    /// <returns>Both, or all that is wrong with the first action that cannot be done.</returns>
    public Result<(Draft Draft, IReadOnlyList<AppliedEdit> Edits)> Make(PersonId by, PageId page, DateTimeOffset at)
    {
        var started = Draft.Start(Id, Name, by, at);
        if (!started.IsOk)
        {
            return started.As<(Draft, IReadOnlyList<AppliedEdit>)>();
        }
        var edits = new List<AppliedEdit>();
        foreach (var action in Actions)
        {
            var outcome = started.Value.Apply(new Edit(EditId.New(), by, page, edits.Count, action, at), [], content => content);
            if (!outcome.IsOk)
            {
                return outcome.As<(Draft, IReadOnlyList<AppliedEdit>)>();
            }
            edits.Add(outcome.Value.Applied);
        }
        return Result.Ok((started.Value, (IReadOnlyList<AppliedEdit>)edits));
    }
}

/// <summary>Starts drafts with what is known of them already, all in one transaction: all of them or none.</summary>
/// <param name="writer">The one writer.</param>
/// <param name="time">Says when.</param>
public sealed class DraftStarting(IWriter writer, TimeProvider time)
{
    /// <summary>Starts drafts and answers when they are durable; one that was started before under its id is left as it is.</summary>
    /// <returns>Their ids in order, or what is wrong; then none was started.</returns>
    public Task<Result<IReadOnlyList<DraftId>>> Start(IReadOnlyList<DraftToStart> drafts, PersonId by, PageId page, CancellationToken cancellation = default) =>
        writer.Write(
            async db =>
            {
                var now = time.GetUtcNow();
                foreach (var wanted in drafts)
                {
                    if (await db.Drafts.AnyAsync(d => d.Id == wanted.Id))
                    {
                        continue;
                    }
                    var made = wanted.Make(by, page, now);
                    if (!made.IsOk)
                    {
                        return made.As<IReadOnlyList<DraftId>>();
                    }
                    db.Add(made.Value.Draft);
                    db.AddRange(made.Value.Edits.Select(e => EditRow.Of(wanted.Id, e)));
                }
                await db.SaveChangesAsync();
                return Result.Ok<IReadOnlyList<DraftId>>([.. drafts.Select(d => d.Id)]);
            },
            cancellation);
}
