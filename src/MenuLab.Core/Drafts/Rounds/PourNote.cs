using MenuLab.Core.House;

namespace MenuLab.Core.Drafts.Rounds;

/// <summary>What a taste can be too much or too little of.</summary>
public enum TasteAxis
{
    /// <summary>Sweet.</summary>
    Sweet,
    /// <summary>Sour.</summary>
    Sour,
    /// <summary>Bitter.</summary>
    Bitter,
    /// <summary>Body.</summary>
    Body,
    /// <summary>Bite.</summary>
    Bite,
    /// <summary>How long it lasts.</summary>
    Finish,
    /// <summary>How cold it is.</summary>
    Cold,
    /// <summary>How watery it is.</summary>
    Watery,
}

/// <summary>What is wanted of it.</summary>
public enum Wish
{
    /// <summary>Less of it.</summary>
    Less,
    /// <summary>It is right.</summary>
    Right,
    /// <summary>More of it.</summary>
    More,
}

/// <summary>Whether a pour is worth going on with.</summary>
public enum Verdict
{
    /// <summary>No.</summary>
    No,
    /// <summary>Maybe.</summary>
    Maybe,
    /// <summary>Yes.</summary>
    Yes,
}

/// <summary>One axis and what is wanted of it.</summary>
/// <param name="Axis">The axis.</param>
/// <param name="Wish">What is wanted.</param>
public readonly record struct AxisWish(TasteAxis Axis, Wish Wish);

/// <summary>
/// What somebody noted of a pour; never changes. It is informal: known pours, no plan, no blinding. It is counted as "informal,
/// n tastes" and never among a panel's figures.
/// </summary>
public sealed record PourNote
{
    // A device leaves out what nobody said, and the reader of JSON sets what it did not find to null.

    /// <summary>Most characters in its words.</summary>
    public const int WordsMaxLength = 500;

    /// <summary>Most people who taste one pour at once.</summary>
    public const int MostTasters = 30;

    /// <summary>Most photos and sounds of one note.</summary>
    public const int MostAttachments = 6;

    /// <summary>The round.</summary>
    public required RoundId Round { get; init; }

    /// <summary>The pour.</summary>
    public required PourLetter Letter { get; init; }

    /// <summary>What is wanted, each axis once.</summary>
    public IReadOnlyList<AxisWish> Wishes { get; init => field = value ?? []; } = [];

    /// <summary>Whether it is worth going on with; null where nobody said.</summary>
    public Verdict? Verdict { get; init; }

    /// <summary>Who tasted; empty for the author alone.</summary>
    public IReadOnlyList<PersonId> Tasters { get; init => field = value ?? []; } = [];

    /// <summary>In words; may be empty.</summary>
    public string Words { get; init => field = value ?? ""; } = "";

    /// <summary>Photos and sounds.</summary>
    public IReadOnlyList<AttachmentId> Attachments { get; init => field = value ?? []; } = [];

    /// <summary>How long after pouring or bottling; null where nobody said.</summary>
    public TasteMoment? Moment { get; init; }

    /// <summary>The note that it puts right; null for a new one.</summary>
    public EntryId? Replaces { get; init; }

    /// <summary>All that is wrong with it; empty where nothing is.</summary>
    public IReadOnlyList<Problem> Problems()
    {
        var problems = new List<Problem>();
        if (Wishes.Count == 0 && Verdict is null && string.IsNullOrWhiteSpace(Words) && Attachments.Count == 0)
        {
            problems.Add(new Problem("note", "Say what is wanted, yes or no, or something in words."));
        }
        if (Wishes.DistinctBy(w => w.Axis).Count() != Wishes.Count || Wishes.Any(w => !Enum.IsDefined(w.Axis) || !Enum.IsDefined(w.Wish)))
        {
            problems.Add(new Problem("wishes", "Each of the eight words is said once."));
        }
        if (Words.Length > WordsMaxLength)
        {
            problems.Add(new Problem("words", $"A note has at most {WordsMaxLength} characters."));
        }
        if (Tasters.Count > MostTasters || Tasters.Distinct().Count() != Tasters.Count)
        {
            problems.Add(new Problem("tasters", $"Each taster is named once, {MostTasters} at most."));
        }
        if (Attachments.Count > MostAttachments)
        {
            problems.Add(new Problem("attachments", $"A note has at most {MostAttachments} photos and sounds."));
        }
        return problems;
    }
}

/// <summary>A note with who wrote it and when it came.</summary>
/// <param name="Id">The entry that it came as.</param>
/// <param name="Note">The note.</param>
/// <param name="By">Who wrote it.</param>
/// <param name="At">When, by the device's clock; shown, never used to put notes in order.</param>
/// <param name="Order">Its place in the order of arrival.</param>
public sealed record WrittenNote(EntryId Id, PourNote Note, PersonId By, DateTimeOffset At, long Order)
{
    /// <summary>Who tasted: those that it names, else its author.</summary>
    public IReadOnlyList<PersonId> Tasters => Note.Tasters.Count > 0 ? Note.Tasters : [By];

    /// <summary>The notes that stand, in the order of arrival: all but those that a later one of the same round puts right.</summary>
    public static IReadOnlyList<WrittenNote> ThatStand(IReadOnlyCollection<WrittenNote> notes)
    {
        var replaced = notes.Select(n => n.Note.Replaces).OfType<EntryId>().ToHashSet();
        return [.. notes.Where(n => !replaced.Contains(n.Id)).OrderBy(n => n.Order)];
    }
}
