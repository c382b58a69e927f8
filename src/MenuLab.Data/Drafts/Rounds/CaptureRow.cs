using MenuLab.Core;
using MenuLab.Core.Drafts;
using MenuLab.Core.Drafts.Rounds;
using MenuLab.Core.House;
using MenuLab.Core.Pantry;

namespace MenuLab.Data.Drafts.Rounds;

/// <summary>What a device captured and what became of it, as it arrived; never changes.</summary>
public sealed class CaptureRow
{
    public required EntryId Id { get; init; }

    public required CaptureKind Kind { get; init; }

    public required DeviceId Device { get; init; }

    /// <summary>Its place among what the device captured; 0 for what an open page sent at once.</summary>
    public required long Counter { get; init; }

    public required PersonId Author { get; init; }

    /// <summary>When, by the device's clock.</summary>
    public required DateTimeOffset At { get; init; }

    /// <summary>When it arrived.</summary>
    public required DateTimeOffset ReceivedAt { get; init; }

    /// <summary>Its place in the order of arrival, from 1.</summary>
    public required long ReceivedOrder { get; init; }

    // The three and what it answers are found by; they refer to nothing, since what was refused may name what is not there.

    /// <summary>The draft that it is about.</summary>
    public DraftId? Draft { get; init; }

    /// <summary>The round that it is about.</summary>
    public RoundId? Round { get; init; }

    /// <summary>The ingredient that it is about.</summary>
    public IngredientId? Ingredient { get; init; }

    /// <summary>The entry that it answers.</summary>
    public EntryId? Answers { get; init; }

    /// <summary>What was captured, JSON.</summary>
    public required byte[] Body { get; init; }

    public required CaptureOutcome Outcome { get; init; }

    /// <summary>What it collided with, JSON; null where it did not.</summary>
    public byte[]? Met { get; init; }

    /// <summary>Field and message of the problem that it was refused for; null where it was not.</summary>
    public string? ProblemField { get; init; }

    /// <summary>The message.</summary>
    public string? Problem { get; init; }

    internal CaptureEntry ToEntry() => new(Id, Device, Counter, Author, At, CaptureText.ReadWhat(Body));

    internal CaptureAnswer ToAnswer(bool isDoubled) => new(
        Id, Outcome, isDoubled, ReceivedOrder, Met is null ? [] : CaptureText.ReadMet(Met), Problem is null ? [] : [new Problem(ProblemField!, Problem)]);
}

/// <summary>A note of a pour; never changes.</summary>
public sealed class PourNoteRow
{
    /// <summary>The entry that it came as.</summary>
    public required EntryId Id { get; init; }

    public required RoundId Round { get; init; }

    public required PourLetter Letter { get; init; }

    public required PersonId Author { get; init; }

    /// <summary>When, by the device's clock.</summary>
    public required DateTimeOffset At { get; init; }

    /// <summary>Its place in the order of arrival.</summary>
    public required long ReceivedOrder { get; init; }

    /// <summary>The note, JSON.</summary>
    public required byte[] Body { get; init; }

    internal WrittenNote ToNote() => new(Id, CaptureText.ReadNote(Body), Author, At, ReceivedOrder);
}
