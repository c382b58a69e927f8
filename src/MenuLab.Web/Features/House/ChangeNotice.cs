using System.Collections.Concurrent;
using MenuLab.Core.Drafts;
using MenuLab.Core.House;

namespace MenuLab.Web.Features.House;

/// <summary>A page that has a draft open.</summary>
/// <param name="Page">The page.</param>
/// <param name="Person">Who sits before it.</param>
public sealed record Presence(PageId Page, PersonId Person);

/// <summary>
/// Tells pages of this process that something changed; they read it again from the database. No truth lives here: who is
/// there and nothing else, and it is rebuilt as pages open (architecture 1.12).
/// </summary>
public sealed class ChangeNotice
{
    private readonly ConcurrentDictionary<PageId, Listener> _listeners = new();

    /// <summary>Listens until disposed. The calls come on any thread; a page takes them to its own.</summary>
    /// <param name="page">The page that listens; it is not told of its own edits.</param>
    /// <param name="person">Who sits before it.</param>
    /// <param name="draft">The draft it has open; null for a page without one.</param>
    /// <param name="onDraft">The draft changed: the newest version, or somebody came or went.</param>
    /// <param name="onHouse">Pantry or settings changed.</param>
    public IDisposable Listen(PageId page, PersonId person, DraftId? draft, Action? onDraft, Action? onHouse)
    {
        _listeners[page] = new Listener(person, draft, onDraft, onHouse);
        Tell(draft, page);
        return new Leave(this, page, draft);
    }

    /// <summary>A draft was changed from a page: the others that have it open read it again.</summary>
    public void TellDraft(DraftId draft, PageId from) => Tell(draft, from);

    /// <summary>Pantry or settings changed.</summary>
    public void TellHouse()
    {
        foreach (var listener in _listeners.Values)
        {
            listener.OnHouse?.Invoke();
        }
    }

    /// <summary>Who else has a draft open.</summary>
    public IReadOnlyList<Presence> Others(DraftId draft, PageId page) =>
        [.. _listeners.Where(l => l.Key != page && l.Value.Draft == draft).Select(l => new Presence(l.Key, l.Value.Person))];

    private void Tell(DraftId? draft, PageId from)
    {
        foreach (var (page, listener) in _listeners)
        {
            if (page != from && draft is not null && listener.Draft == draft)
            {
                listener.OnDraft?.Invoke();
            }
        }
    }

    private sealed record Listener(PersonId Person, DraftId? Draft, Action? OnDraft, Action? OnHouse);

    private sealed class Leave(ChangeNotice notice, PageId page, DraftId? draft) : IDisposable
    {
        public void Dispose()
        {
            if (notice._listeners.TryRemove(page, out _))
            {
                notice.Tell(draft, page);
            }
        }
    }
}
