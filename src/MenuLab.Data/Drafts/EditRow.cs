using MenuLab.Core.Drafts;
using MenuLab.Core.House;

namespace MenuLab.Data.Drafts;

/// <summary>An applied edit as it is kept until the draft's next iteration.</summary>
public sealed class EditRow
{
    public required EditId Id { get; init; }

    public required DraftId Draft { get; init; }

    public required int Version { get; init; }

    public required PersonId Author { get; init; }

    public required PageId Page { get; init; }

    public required int Seen { get; init; }

    /// <summary>What it did, JSON.</summary>
    public required byte[] Action { get; init; }

    /// <summary>What takes it back, JSON.</summary>
    public required byte[] Undo { get; init; }

    public required DateTimeOffset At { get; init; }

    internal static EditRow Of(DraftId draft, AppliedEdit applied) => new()
    {
        Id = applied.Edit.Id,
        Draft = draft,
        Version = applied.Version,
        Author = applied.Edit.By,
        Page = applied.Edit.Page,
        Seen = applied.Edit.Seen,
        Action = EditText.Write(applied.Edit.Action),
        Undo = EditText.Write(applied.Undo),
        At = applied.Edit.At,
    };

    internal AppliedEdit ToApplied() => new(new Edit(Id, Author, Page, Seen, EditText.Read(Action), At), Version, EditText.Read(Undo));
}
