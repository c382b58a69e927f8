using MenuLab.Core.Drafts;
using MenuLab.Core.Drafts.Reading;
using MenuLab.Core.House;
using MenuLab.Core.Pantry;

namespace MenuLab.Web.Features.Bench;

/// <summary>
/// How an answer to a question is written into the text. It is tried on the reader first, so a button never leads from
/// one question to the next.
/// </summary>
public sealed class AnswerWording(DrinkReader reader, PantryList pantry)
{
    // Amounts are written with two decimals.
    private const double SameAmount = 0.01;

    // What a total of parts usually is in a glass, mL: up, rocks, long.
    private static readonly double[] Totals = [75, 90, 120];

    /// <summary>The answers to a question.</summary>
    public IReadOnlyList<Answer> Of(LineQuestion question) =>
        question.Candidates is [{ Line: { Unit: Unit.Part } parts }] && double.IsNaN(parts.Grams)
            ? [.. Totals.Select(total => new Answer($"{HouseFormat.Plain.Amount(total)} mL in all", $"total {HouseFormat.Plain.Amount(total)} ml", IsNewLine: true))]
            : [.. question.Candidates.Select(candidate => new Answer(candidate.Label, candidate.Line is null ? null : Of(candidate.Line)))];

    /// <summary>A wording that reads as this line and asks nothing; null where there is none.</summary>
    public string? Of(DraftLine meant) =>
        PlainLine.Wordings(meant, pantry.Find(meant.Ingredient)!).FirstOrDefault(wording => Says(wording, meant));

    private bool Says(string wording, DraftLine meant) => reader.Read(wording, new ReadSettings()) switch
    {
        { Lines: [var line], Questions: [], Unread: [] } =>
            line.Ingredient == meant.Ingredient && line.Place == meant.Place
            && (IsClose(line.Grams, meant.Grams) || IsClose(line.Millilitres, meant.Millilitres)),
        // Parts go on to ask for their total: that is another matter than what was asked here.
        { Lines: [], Questions: [{ Candidates: [{ Line: { Unit: Unit.Part } line }] }], Unread: [] } => line.Ingredient == meant.Ingredient && meant.Unit == Unit.Part,
        _ => false,
    };

    private static bool IsClose(double left, double right) => left.Equals(right) || Math.Abs(left - right) <= SameAmount;
}
