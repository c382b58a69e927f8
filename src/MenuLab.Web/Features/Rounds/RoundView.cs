using MenuLab.Core.Drafts;
using MenuLab.Core.Drafts.Rounds;
using MenuLab.Core.House;

namespace MenuLab.Web.Features.Rounds;

/// <summary>A round as its page shows it: read from the database, computed, in the house's words.</summary>
public sealed record RoundView
{
    /// <summary>The round.</summary>
    public required RoundId Id { get; init; }

    /// <summary>The draft.</summary>
    public required DraftId Draft { get; init; }

    /// <summary>The draft's name.</summary>
    public required string DraftName { get; init; }

    /// <summary>Its number within the draft.</summary>
    public required int Number { get; init; }

    /// <summary>Size, origin, day and time in one line.</summary>
    public required string Told { get; init; }

    /// <summary>The round that it goes on from; null where it began on the bench.</summary>
    public RoundId? From { get; init; }

    /// <summary>The columns, A first.</summary>
    public required IReadOnlyList<PourColumn> Pours { get; init; }

    /// <summary>The lines, in order.</summary>
    public required IReadOnlyList<RoundRow> Rows { get; init; }

    /// <summary>The five figures, each for every pour.</summary>
    public required IReadOnlyList<FigureAcross> Figures { get; init; }

    /// <summary>What the figures are of: as served, or before the ice and why.</summary>
    public required string FiguresAre { get; init; }

    /// <summary>What was left out of the figures and why.</summary>
    public IReadOnlyList<string> LeftOut { get; init; } = [];

    /// <summary>The warning that a small trial dilutes more; empty where there is nothing to warn of.</summary>
    public string SmallTrial { get; init; } = "";

    /// <summary>The name of the next pour; null where there are six.</summary>
    public PourLetter? NextLetter { get; init; }

    /// <summary>Who may have tasted.</summary>
    public required IReadOnlyList<Face> Faces { get; init; }

    /// <summary>The shared part.</summary>
    public required MixOnce Mix { get; init; }

    /// <summary>The pour that won; null while none has.</summary>
    public PourLetter? Winner { get; init; }

    /// <summary>It ended.</summary>
    public bool IsEnded { get; init; }

    /// <summary>Who ended it and when; empty while it goes on.</summary>
    public string Ended { get; init; } = "";

    /// <summary>What the winner changed and what was said of it; empty while nothing won.</summary>
    public string Reason { get; init; } = "";

    /// <summary>Number of the iteration that the winner became; null where it became none.</summary>
    public int? Iteration { get; init; }

    /// <summary>The bench has other lines or another build than this round began with: a winner replaces all of it.</summary>
    public bool BenchIsOther { get; init; }

    /// <summary>The house writes a decimal comma.</summary>
    public bool Comma { get; init; }

    /// <summary>When the page was made, for the clocks on it.</summary>
    public required DateTimeOffset Now { get; init; }
}

/// <summary>A column.</summary>
/// <param name="Letter">Its name.</param>
/// <param name="PouredAt">When it was poured; null before.</param>
/// <param name="Tally">Its notes, counted: "informal, 2 tastes"; empty for none.</param>
/// <param name="Touches">What a touch would be.</param>
/// <param name="Said">Its notes, the last first.</param>
/// <param name="Tastes">When it is tasted again.</param>
/// <param name="Bottled">The day it was bottled, in words; empty where it was not.</param>
/// <param name="Plot">Its tastes over time.</param>
public sealed record PourColumn(
    PourLetter Letter, DateTimeOffset? PouredAt, string Tally, IReadOnlyList<Touch> Touches, IReadOnlyList<Said> Said, IReadOnlyList<PlannedTaste> Tastes, string Bottled, TastePlot Plot)
{
    /// <summary>The letter as data: "b".</summary>
    public string Key => RoundKeys.Of(Letter);
}

/// <summary>A line across all pours.</summary>
/// <param name="Line">The line.</param>
/// <param name="Name">Name of the ingredient, or the text as typed.</param>
/// <param name="Under">What stands small under it: treatment, or where it goes.</param>
/// <param name="Amount">The amount that all pours share, in the line's unit; null for a line without one.</param>
/// <param name="Unit">The unit as printed; empty for none.</param>
/// <param name="Step">Its smallest step; null where it has none.</param>
/// <param name="Scale">The share of it that goes into a glass.</param>
/// <param name="Shared">The amount as all pours have it.</param>
/// <param name="Cells">A cell per pour, A first.</param>
public sealed record RoundRow(LineId Line, string Name, string Under, double? Amount, string Unit, double? Step, double Scale, string Shared, IReadOnlyList<Cell> Cells)
{
    /// <summary>The pours differ here, in what they should have or in what they got.</summary>
    public bool Differs => Cells.Any(c => c.IsPouredOtherwise) || Cells.Select(c => c.ToPour).Distinct().Count() > 1;

    /// <summary>A pour can have another amount of it.</summary>
    public bool CanChange => Amount is not null;

    /// <summary>All pours got it as written.</summary>
    public bool IsPoured => Cells.All(c => c.Poured is not null && !c.IsPouredOtherwise);
}

/// <summary>A cell.</summary>
/// <param name="Letter">The pour.</param>
/// <param name="Specified">What the cell itself says, for a whole drink; null for the line's own amount.</param>
/// <param name="Poured">What was poured into this glass, where somebody said so.</param>
/// <param name="ToPour">What is to go into this glass; null for a line without an amount.</param>
/// <param name="IsChanged">It is to have another amount than the line.</param>
/// <param name="IsPouredOtherwise">Something else was poured.</param>
/// <param name="Text">What is to go into this glass, as the house writes it, without the unit.</param>
/// <param name="PouredText">What was poured, likewise; empty where nobody said.</param>
/// <param name="Batch">The batch of the prep that was open; empty where nobody said.</param>
public sealed record Cell(PourLetter Letter, double? Specified, double? Poured, double? ToPour, bool IsChanged, bool IsPouredOtherwise, string Text, string PouredText, string Batch);

/// <summary>The mark before a figure; the same everywhere.</summary>
public enum FigureMark
{
    /// <summary>Nothing is said against it: a disc.</summary>
    Inside,
    /// <summary>Over what it may be: a triangle to the right.</summary>
    Over,
    /// <summary>Not known, or only in part: a diamond.</summary>
    Open,
}

/// <summary>A figure across all pours.</summary>
/// <param name="Key">Its key.</param>
/// <param name="Name">Its name.</param>
/// <param name="Unit">Its unit, for the row's head.</param>
/// <param name="Cells">A figure per pour.</param>
public sealed record FigureAcross(string Key, string Name, string Unit, IReadOnlyList<FigureInCell> Cells);

/// <summary>A figure of a pour.</summary>
/// <param name="Value">The value.</param>
/// <param name="Small">What stands small below it; empty for nothing.</param>
/// <param name="Mark">The mark.</param>
/// <param name="Sentence">The same in a sentence, with unit, likely span and what is said against it.</param>
public sealed record FigureInCell(string Value, string Small, FigureMark Mark, string Sentence);

/// <summary>Somebody who may have tasted.</summary>
/// <param name="Id">Who.</param>
/// <param name="Name">The name.</param>
/// <param name="Initials">What stands on the button.</param>
public sealed record Face(PersonId Id, string Name, string Initials);

/// <summary>A note in words.</summary>
/// <param name="Who">Who tasted, with their names.</param>
/// <param name="When">When: the moment where it has one, and the time.</param>
/// <param name="Wishes">What is wanted, and yes or no.</param>
/// <param name="Words">In words; may be empty.</param>
/// <param name="Attachments">Photos and sounds.</param>
public sealed record Said(string Who, string When, string Wishes, string Words, IReadOnlyList<AttachmentId> Attachments);

/// <summary>A taste that is planned.</summary>
/// <param name="Moment">Which.</param>
/// <param name="Name">In words: "5 min", "day 3".</param>
/// <param name="State">Where it stands.</param>
/// <param name="When">When it is due, in words.</param>
public sealed record PlannedTaste(TasteMoment Moment, string Name, TasteState State, string When);

/// <summary>The tastes of a pour over time.</summary>
/// <param name="Marks">How often each verdict was given, moment by moment.</param>
/// <param name="Wanted">What was wanted, moment by moment: "5 min: more sour wanted".</param>
/// <param name="AsServed">The computed figures to hold against them.</param>
public sealed record TastePlot(IReadOnlyList<VerdictCount> Marks, IReadOnlyList<string> Wanted, string AsServed);

/// <summary>How often a verdict was given at a moment.</summary>
/// <param name="Moment">The moment.</param>
/// <param name="No">How often no.</param>
/// <param name="Maybe">How often maybe.</param>
/// <param name="Yes">How often yes.</param>
public sealed record VerdictCount(TasteMoment Moment, int No, int Maybe, int Yes);

/// <summary>The shared part of a round in words.</summary>
/// <param name="Jug">What goes into the jug.</param>
/// <param name="JugTotal">Its volume and weight.</param>
/// <param name="Spare">What is spare.</param>
/// <param name="Glasses">What goes into each glass.</param>
public sealed record MixOnce(IReadOnlyList<PortionRow> Jug, string JugTotal, string Spare, IReadOnlyList<GlassRow> Glasses);

/// <summary>So much of a line.</summary>
/// <param name="Name">What.</param>
/// <param name="Amount">How much, as it is poured.</param>
/// <param name="Grams">On the scale; empty where nobody knows.</param>
public sealed record PortionRow(string Name, string Amount, string Grams);

/// <summary>What goes into a glass, in this order.</summary>
/// <param name="Letter">The pour.</param>
/// <param name="FromJug">From the jug; null where nothing is shared.</param>
/// <param name="Own">Then, each after the scale was set to zero.</param>
/// <param name="Total">What is in it before shaking.</param>
/// <param name="Later">What joins later.</param>
public sealed record GlassRow(PourLetter Letter, PortionRow? FromJug, IReadOnlyList<PortionRow> Own, string Total, IReadOnlyList<PortionRow> Later);

/// <summary>A taste from a bottle that is due.</summary>
/// <param name="Round">The round.</param>
/// <param name="Says">In words.</param>
public sealed record DueTaste(RoundId Round, string Says);

/// <summary>A round on the ladder.</summary>
/// <param name="Round">The round.</param>
/// <param name="Name">"Round 3".</param>
/// <param name="From">Where it came from, in words.</param>
/// <param name="Outcome">What became of it: "B won", "none won", "goes on".</param>
/// <param name="Reason">What the winner changed and what was said of it.</param>
/// <param name="Tally">"informal, 2 tastes".</param>
/// <param name="Iteration">Number of the iteration that it became; null for none.</param>
/// <param name="GoesOn">Nobody ended it.</param>
public sealed record RungRow(RoundId Round, string Name, string From, string Outcome, string Reason, string Tally, int? Iteration, bool GoesOn);

/// <summary>Letters and words of a round as data.</summary>
public static class RoundKeys
{
    /// <summary>"b".</summary>
    public static string Of(PourLetter letter) => letter.ToString().ToLowerInvariant();

    /// <summary>The letter of a key; null for none.</summary>
    public static PourLetter? Letter(string? key) => key is { Length: 1 } && Enum.TryParse<PourLetter>(key, ignoreCase: true, out var letter) && Enum.IsDefined(letter) ? letter : null;

    /// <summary>"minute5", as a note says it.</summary>
    public static string Of(TasteMoment moment) => System.Text.Json.JsonNamingPolicy.SnakeCaseLower.ConvertName(moment.ToString());

    /// <summary>"5 min", "day 3".</summary>
    public static string InWords(TasteMoment moment)
    {
        var (amount, isDays) = StabilityTastes.Passed(moment);
        return string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{(isDays ? "day " : "")}{amount}{(isDays ? "" : " min")}");
    }
}
