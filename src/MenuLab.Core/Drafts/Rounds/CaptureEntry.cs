using System.Text.Json.Serialization;
using MenuLab.Core.House;
using MenuLab.Core.Pantry;

namespace MenuLab.Core.Drafts.Rounds;

/// <summary>What can be captured; a closed set.</summary>
public enum CaptureKind
{
    /// <summary>A typed line of a draft.</summary>
    Line,
    /// <summary>A cell of a round.</summary>
    PourCell,
    /// <summary>A note of a pour.</summary>
    Note,
    /// <summary>Something read off.</summary>
    Reading,
    /// <summary>A batch of a prep was made.</summary>
    BatchMade,
    /// <summary>Something was poured away.</summary>
    PouredAway,
    /// <summary>Something ran out.</summary>
    OutOfStock,
    /// <summary>The answer to a collision.</summary>
    Answer,
}

/// <summary>What was captured.</summary>
[JsonPolymorphic(TypeDiscriminatorPropertyName = "kind")]
[JsonDerivedType(typeof(CapturedLine), "line")]
[JsonDerivedType(typeof(CapturedCell), "pour_cell")]
[JsonDerivedType(typeof(CapturedNote), "note")]
[JsonDerivedType(typeof(CapturedReading), "reading")]
[JsonDerivedType(typeof(CapturedBatch), "batch_made")]
[JsonDerivedType(typeof(CapturedPouredAway), "poured_away")]
[JsonDerivedType(typeof(CapturedOutOfStock), "out_of_stock")]
[JsonDerivedType(typeof(CapturedAnswer), "answer")]
public abstract record Captured
{
    /// <summary>Which of the closed set it is.</summary>
    [JsonIgnore]
    public abstract CaptureKind Kind { get; }
}

/// <summary>A typed line. A line that the draft has is typed anew; one that it has not is added below the last.</summary>
/// <param name="Draft">The draft.</param>
/// <param name="Line">The line, made where it is typed.</param>
/// <param name="Text">The text as typed.</param>
/// <param name="Seen">Version of the working copy that the author saw; null where the device had none.</param>
public sealed record CapturedLine(DraftId Draft, LineId Line, string Text, int? Seen = null) : Captured
{
    /// <inheritdoc/>
    [JsonIgnore]
    public override CaptureKind Kind => CaptureKind.Line;
}

/// <summary>A cell of a round.</summary>
/// <param name="Round">The round.</param>
/// <param name="Letter">The pour.</param>
/// <param name="Line">The line.</param>
/// <param name="Field">What of it.</param>
/// <param name="Amount">The amount in the line's unit; null takes it back.</param>
/// <param name="Seen">What the author saw the cell itself say; null for nothing (the line's own amount).</param>
public sealed record CapturedCell(RoundId Round, PourLetter Letter, LineId Line, CellField Field, double? Amount = null, double? Seen = null) : Captured
{
    /// <inheritdoc/>
    [JsonIgnore]
    public override CaptureKind Kind => CaptureKind.PourCell;
}

/// <summary>A note of a pour.</summary>
/// <param name="Note">The note.</param>
public sealed record CapturedNote(PourNote Note) : Captured
{
    /// <inheritdoc/>
    [JsonIgnore]
    public override CaptureKind Kind => CaptureKind.Note;
}

/// <summary>Something read off. One of an ingredient counts in the pantry; one of a batch, or of a thing such as a fridge, is kept here.</summary>
/// <param name="What">What was read: "brix", "ph", "titration", "density", "temperature", "weight".</param>
/// <param name="Value">The figure.</param>
/// <param name="Unit">Its unit.</param>
/// <param name="Day">The bar's day.</param>
/// <param name="Ingredient">The ingredient; null for a thing.</param>
/// <param name="Batch">The batch of it; null for none.</param>
/// <param name="Thing">What was read where it is no ingredient: "Fridge 2"; empty else.</param>
/// <param name="Celsius">Temperature of what was read, °C; null where nobody said.</param>
/// <param name="Seen">The reading of the same sort that the author saw; null for none.</param>
public sealed record CapturedReading(
    string What, double Value, string Unit, DateOnly Day, IngredientId? Ingredient = null, Guid? Batch = null, string Thing = "", double? Celsius = null, EntryId? Seen = null) : Captured
{
    /// <inheritdoc/>
    [JsonIgnore]
    public override CaptureKind Kind => CaptureKind.Reading;
}

/// <summary>A batch of a prep was made.</summary>
/// <param name="Prep">The prep.</param>
/// <param name="Batch">The batch, made on the device.</param>
/// <param name="Amount">How much.</param>
/// <param name="Unit">Of what.</param>
/// <param name="Day">The bar's day.</param>
public sealed record CapturedBatch(IngredientId Prep, Guid Batch, double Amount, Unit Unit, DateOnly Day) : Captured
{
    /// <inheritdoc/>
    [JsonIgnore]
    public override CaptureKind Kind => CaptureKind.BatchMade;
}

/// <summary>Something was poured away.</summary>
/// <param name="Ingredient">What.</param>
/// <param name="Batch">The batch of it; null for none.</param>
/// <param name="Amount">How much; null for all of it.</param>
/// <param name="Unit">Of what.</param>
/// <param name="Why">Why; may be empty.</param>
public sealed record CapturedPouredAway(IngredientId Ingredient, Guid? Batch = null, double? Amount = null, Unit Unit = Unit.None, string Why = "") : Captured
{
    /// <inheritdoc/>
    [JsonIgnore]
    public override CaptureKind Kind => CaptureKind.PouredAway;
}

/// <summary>Something ran out at a site.</summary>
/// <param name="Ingredient">What.</param>
/// <param name="Site">Where.</param>
public sealed record CapturedOutOfStock(IngredientId Ingredient, SiteId Site) : Captured
{
    /// <inheritdoc/>
    [JsonIgnore]
    public override CaptureKind Kind => CaptureKind.OutOfStock;
}

/// <summary>Somebody looked at a collision; what stands from then on was set by an entry of its own where it changed.</summary>
/// <param name="To">The entry that collided.</param>
public sealed record CapturedAnswer(EntryId To) : Captured
{
    /// <inheritdoc/>
    [JsonIgnore]
    public override CaptureKind Kind => CaptureKind.Answer;
}

/// <summary>What was captured, as the device keeps it until the server has answered.</summary>
/// <param name="Id">Made on the device; the same id is never taken twice.</param>
/// <param name="Device">The device.</param>
/// <param name="Counter">Its place among what that device captured, from 1; the device's clock puts nothing in order.</param>
/// <param name="By">Who.</param>
/// <param name="At">When, by the device's clock; shown, nothing else.</param>
/// <param name="What">What was captured.</param>
public sealed record CaptureEntry(EntryId Id, DeviceId Device, long Counter, PersonId By, DateTimeOffset At, Captured What)
{
    /// <summary>Most characters in a text of an entry but a typed line.</summary>
    public const int TextMaxLength = 200;

    /// <summary>All that is wrong with it, whatever the house holds; empty where nothing is.</summary>
    public IReadOnlyList<Problem> Problems()
    {
        var problems = new List<Problem>();
        if (Id.Value == Guid.Empty || Device.Value == Guid.Empty || Counter < 0)
        {
            // Two entries without an id would be taken for one.
            problems.Add(new Problem("id", "An entry has an id, a device and a counter."));
        }
        switch (What)
        {
            case CapturedLine line:
                Text(line.Text, 1, Draft.TextMaxLength, "text", "A line", problems);
                break;
            case CapturedCell cell:
                Amount(cell.Amount, problems);
                Known(cell.Letter, problems);
                Known(cell.Field, problems);
                break;
            case CapturedNote note:
                problems.AddRange(note.Note.Problems());
                break;
            case CapturedReading reading:
                Text(reading.Thing, reading.Ingredient is null ? 1 : 0, TextMaxLength, "thing", "What was read", problems);
                Text(reading.What, 1, TextMaxLength, "what", "The sort of a reading", problems);
                Text(reading.Unit, 0, TextMaxLength, "unit", "A unit", problems);
                if (!double.IsFinite(reading.Value) || reading.Celsius is { } celsius && !double.IsFinite(celsius))
                {
                    problems.Add(new Problem("value", "A reading is a number."));
                }
                break;
            case CapturedBatch batch:
                Amount(batch.Amount, problems);
                Known(batch.Unit, problems);
                break;
            case CapturedPouredAway away:
                Amount(away.Amount, problems);
                Known(away.Unit, problems);
                Text(away.Why, 0, TextMaxLength, "why", "A reason", problems);
                break;
        }
        return problems;
    }

    /// <summary>
    /// A later entry collides with an earlier one of another device when it sets the same thing to something else without
    /// having seen it. It is applied nevertheless, and both are told: nothing is dropped.
    /// </summary>
    /// <param name="mine">The device of the later entry.</param>
    /// <param name="seen">The value that its author saw.</param>
    /// <param name="value">The value that it sets.</param>
    /// <param name="theirs">The device of the earlier entry; null where no entry set what stands.</param>
    /// <param name="stands">The value that stands.</param>
    public static bool Collides<T>(DeviceId mine, T seen, T value, DeviceId? theirs, T stands) =>
        theirs is { } other && other != mine && !Equals(stands, seen) && !Equals(stands, value);

    private static void Text(string? text, int shortest, int longest, string field, string what, List<Problem> problems)
    {
        if (text is null || text.Trim().Length < shortest || text.Length > longest)
        {
            problems.Add(new Problem(field, $"{what} has {shortest} to {longest} characters."));
        }
    }

    private static void Amount(double? amount, List<Problem> problems)
    {
        if (amount is { } a && !(a >= 0 && a <= Draft.LargestAmount))
        {
            problems.Add(new Problem("amount", "An amount is zero or more, and at most a million."));
        }
    }

    private static void Known<T>(T value, List<Problem> problems)
        where T : struct, Enum
    {
        if (!Enum.IsDefined(value))
        {
            problems.Add(new Problem(typeof(T).Name, "Nobody knows this choice."));
        }
    }
}

/// <summary>What became of an entry.</summary>
public enum CaptureOutcome
{
    /// <summary>Taken.</summary>
    Kept,
    /// <summary>Taken, and it set something that another device had set to something else meanwhile: both are told.</summary>
    Collided,
    /// <summary>It could not be applied (the round or the line is gone): it is kept in the list with the problem, and does nothing.</summary>
    Refused,
}

/// <summary>What an entry met that somebody else had said of the same thing.</summary>
/// <param name="By">Who.</param>
/// <param name="Field">Of what, snake_case: "specified", "poured", "amount", "ph", …</param>
/// <param name="Theirs">Their figure; null where they took it back or it is no figure.</param>
/// <param name="Mine">The figure of this entry; null where it is none.</param>
/// <param name="TheirText">What they said in words where it is no figure; empty else.</param>
/// <param name="Entry">Their entry; null where it came from the bench.</param>
public sealed record Met(PersonId By, string Field, double? Theirs = null, double? Mine = null, string TheirText = "", EntryId? Entry = null);

/// <summary>The answer to one entry.</summary>
/// <param name="Id">The entry.</param>
/// <param name="Outcome">What became of it, the first time that it came.</param>
/// <param name="IsDoubled">It had come before; nothing was done again.</param>
/// <param name="Order">Its place in the order of arrival; 0 where it was not even kept (a problem with the entry itself).</param>
/// <param name="Met">Where it collided: with what; more than one for a typed line.</param>
/// <param name="Problems">Why it was refused.</param>
public sealed record CaptureAnswer(EntryId Id, CaptureOutcome Outcome, bool IsDoubled, long Order, IReadOnlyList<Met> Met, IReadOnlyList<Problem> Problems);
