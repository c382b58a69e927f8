using MenuLab.Core.Drafts;
using MenuLab.Core.Drafts.Rounds;
using MenuLab.Data.Drafts;
using MenuLab.Data.Drafts.Rounds;
using MenuLab.Data.Opening;
using MenuLab.Web.Accounts;
using MenuLab.Web.Features.House;
using MenuLab.Web.Features.Rounds;
using Microsoft.EntityFrameworkCore;

namespace MenuLab.Web.Features.Drafts;

/// <summary>What the list of drafts can do.</summary>
public sealed class DraftDesk(CurrentHouse current, CurrentPerson person, TimeProvider time)
{
    // A bottle is tasted for a week, and what was missed stays due for another.
    private const int BottlesDaysBack = 14;

    private readonly PageId _page = PageId.New();

    /// <summary>All drafts that are not archived, the last changed first.</summary>
    public async Task<IReadOnlyList<DraftRow>> ListAsync(CancellationToken cancellation = default)
    {
        await using var db = current.House.Read();
        cancellation.ThrowIfCancellationRequested();
        var (book, now) = (current.Book, time.GetUtcNow());
        return [.. (await db.ListDrafts()).Select(listing => DraftRow.Of(listing, book, now))];
    }

    /// <summary>The brief of a draft as a form; null where there is no such draft.</summary>
    public async Task<OpenBrief?> OpenBriefAsync(DraftId id)
    {
        await using var db = current.House.Read();
        return await db.OpenDraft(id) is { } draft ? new OpenBrief(draft, BriefForm.Of(draft, current.Book.Format)) : null;
    }

    /// <summary>Changes what the form changed and nothing else.</summary>
    /// <returns>Empty, or why it was not done.</returns>
    public async Task<string> ChangeBriefAsync(OpenBrief open, NamedBrief wanted, CancellationToken cancellation = default)
    {
        var draft = open.Draft;
        var seen = draft.Version;
        try
        {
            foreach (var action in open.Changes(wanted))
            {
                var done = await current.House.Drafts.Apply(draft.Id, EditId.New(), person.Id, _page, seen, action, cancellation);
                if (!done.IsOk)
                {
                    return done.Problems[0].Message;
                }
            }
        }
        catch (StoreException problem)
        {
            return problem.Message;
        }
        current.House.Notice.TellDraft(draft.Id, _page);
        return "";
    }

    /// <summary>Takes a draft up, parks it or drops it.</summary>
    /// <returns>What a person should hear: why it was not done, or that somebody else did something to it meanwhile; empty where there is nothing to say.</returns>
    public async Task<string> StandAsync(DraftRow draft, Standing standing, string reason, CancellationToken cancellation = default)
    {
        try
        {
            var done = await current.House.Drafts.Apply(draft.Id, EditId.New(), person.Id, _page, draft.Version, new Stand(standing, reason), cancellation);
            if (!done.IsOk)
            {
                return done.Problems[0].Message;
            }
            current.House.Notice.TellDraft(draft.Id, _page);
            return done.Value.Collisions is [var collision, ..] && collision.Theirs.Edit.Action is Stand theirs
                ? $"{current.Book.NameOf(collision.Theirs.Edit.By)} had just put {draft.Name} elsewhere ({StandingWords.Of(theirs.Standing)}); yours stands now."
                : "";
        }
        catch (StoreException problem)
        {
            return problem.Message;
        }
    }

    /// <summary>What the house itself keeps and no draft in the works uses any more without this one.</summary>
    public async Task<IReadOnlyList<ServesNothing>> ServesNothingAsync(DraftId draft)
    {
        await using var db = current.House.Read();
        return await db.ServesNothingWithout(draft);
    }

    /// <summary>Tastes from bottles whose day has come, the first due first.</summary>
    public async Task<IReadOnlyList<DueTaste>> DueTastesAsync()
    {
        var (today, format) = (current.Book.Today(time), current.Book.Format);
        await using var db = current.House.Read();
        var due =
            (from bottled in await db.BottledSince(today.AddDays(-BottlesDaysBack))
             from taste in StabilityTastes.Bottle(bottled.BottledOn, today, bottled.Tasted)
             where taste.State == TasteState.Due
             orderby taste.On
             select (bottled.Round, bottled.Letter, taste)).ToList();
        var drafts = due.Select(d => d.Round.Draft).Distinct().ToList();
        var names = await db.Drafts.Where(d => drafts.Contains(d.Id)).ToDictionaryAsync(d => d.Id, d => d.Name);
        return [.. due.Select(d => new DueTaste(d.Round.Id, $"{names[d.Round.Draft]}, round {format.Number(d.Round.Number, 0)}, {d.Letter}: {RoundKeys.InWords(d.taste.Moment)} in the bottle, since {format.Day(d.taste.On)}"))];
    }
}
