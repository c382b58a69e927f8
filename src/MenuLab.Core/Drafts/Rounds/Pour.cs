using MenuLab.Core.House;

namespace MenuLab.Core.Drafts.Rounds;

/// <summary>One column of a round.</summary>
public sealed class Pour
{
    internal Pour(PourLetter letter) => Letter = letter;

    /// <summary>Its name within the round.</summary>
    public PourLetter Letter { get; private set; }

    /// <summary>When it was poured and its timer started; null before.</summary>
    public DateTimeOffset? PouredAt { get; internal set; }

    /// <summary>The day it went into a bottle, to be tasted again; null while it did not.</summary>
    public DateOnly? BottledOn { get; internal set; }
}

/// <summary>What a cell of a round says.</summary>
public enum CellField
{
    /// <summary>How much is to be poured into a whole drink, in the line's unit.</summary>
    Specified,
    /// <summary>How much was poured into this glass, in the line's unit; of a half or a third it is the half or the third.</summary>
    Poured,
}

/// <summary>Where a pour differs from the lines that all pours of its round share. What is null is as the line says.</summary>
public sealed class PourCell
{
    internal PourCell(PourLetter letter, LineId line)
    {
        Letter = letter;
        Line = line;
    }

    /// <summary>The pour.</summary>
    public PourLetter Letter { get; private set; }

    /// <summary>The line.</summary>
    public LineId Line { get; private set; }

    /// <summary>Amount for a whole drink, in the line's unit; null for the line's own.</summary>
    public double? Specified { get; internal set; }

    /// <summary>The entry that specified it; null where the round began with it.</summary>
    public EntryId? SpecifiedBy { get; internal set; }

    /// <summary>Amount that went into this glass, in the line's unit; null where nobody said that it differed.</summary>
    public double? Poured { get; internal set; }

    /// <summary>The entry that said so.</summary>
    public EntryId? PouredBy { get; internal set; }

    /// <summary>The batch of the prep that was open; null where nobody said.</summary>
    public Guid? Batch { get; internal set; }
}

/// <summary>An amount that a round begins with.</summary>
/// <param name="Letter">The pour.</param>
/// <param name="Line">The line.</param>
/// <param name="Amount">Amount for a whole drink, in the line's unit.</param>
public readonly record struct CellAmount(PourLetter Letter, LineId Line, double Amount);

/// <summary>What a cell said before it was set.</summary>
/// <param name="Amount">The amount; null where it said nothing.</param>
/// <param name="By">The entry that had set it; null where none had.</param>
public readonly record struct CellBefore(double? Amount, EntryId? By);

/// <summary>A round that is to be started.</summary>
public sealed record RoundToStart
{
    /// <summary>Identity, made by the page.</summary>
    public required RoundId Id { get; init; }

    /// <summary>The draft.</summary>
    public required DraftId Draft { get; init; }

    /// <summary>How many pours, 2 to 6.</summary>
    public int Pours { get; init; } = 3;

    /// <summary>How large they are.</summary>
    public RoundSize Size { get; init; } = RoundSize.Full;

    /// <summary>Where pours differ from the start, see <see cref="Across"/>.</summary>
    public IReadOnlyList<CellAmount> Cells { get; init; } = [];

    /// <summary>The round that it goes on from; null to start from what is on the bench now.</summary>
    public RoundId? FromRound { get; init; }

    /// <summary>The pour of that round whose lines it takes; named where a round is.</summary>
    public PourLetter? FromPour { get; init; }
}

/// <summary>Who did something and when.</summary>
/// <param name="By">Who.</param>
/// <param name="At">When.</param>
public readonly record struct Done(PersonId By, DateTimeOffset At);
