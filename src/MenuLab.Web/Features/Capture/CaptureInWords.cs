using MenuLab.Core.Drafts;
using MenuLab.Core.Drafts.Rounds;
using MenuLab.Core.Pantry;
using MenuLab.Web.Features.House;

namespace MenuLab.Web.Features.Capture;

/// <summary>What was captured, in a few words, for the day's list.</summary>
/// <param name="Book">Names and how figures are written.</param>
/// <param name="Drafts">Names of drafts.</param>
public sealed record CaptureInWords(HouseBook Book, IReadOnlyDictionary<DraftId, string> Drafts)
{
    /// <summary>The words: "15 ml verjus, in Low Water Orchard".</summary>
    public string Of(Captured what) => what switch
    {
        CapturedLine line => $"{line.Text}, in {Drafts.GetValueOrDefault(line.Draft, "a draft")}",
        CapturedCell cell => $"{cell.Letter}: {(cell.Field == CellField.Poured ? "poured" : "to pour")} {(cell.Amount is { } amount ? Book.Format.Amount(amount) : "as written")}",
        CapturedNote note => $"{note.Note.Letter}: {NoteWords(note.Note)}",
        CapturedReading reading => $"{reading.What} {Book.Format.Amount(reading.Value)} {reading.Unit} {(reading.Ingredient is { } id ? Name(id) : reading.Thing)}",
        CapturedBatch batch => $"{RoundWords.WithUnit(batch.Amount, batch.Unit, Book.Format)} made, {Name(batch.Prep)}",
        CapturedPouredAway away => $"poured away {(away.Amount is { } amount ? RoundWords.WithUnit(amount, away.Unit, Book.Format) : "all")} {Name(away.Ingredient)}{(away.Why.Length > 0 ? ": " + away.Why : "")}",
        CapturedOutOfStock stock => $"out of stock: {Name(stock.Ingredient)}",
        CapturedAnswer => "looked at what met another",
        _ => "",
    };

    private static string NoteWords(PourNote note) => string.Join(", ",
        note.Wishes.Select(RoundWords.Of)
            .Concat(note.Verdict is { } verdict ? [verdict.ToString().ToLowerInvariant()] : Array.Empty<string>())
            .Concat(note.Words.Length > 0 ? [$"“{note.Words}”"] : Array.Empty<string>()));

    private string Name(IngredientId id) => Book.Stock.Pantry.Find(id)?.Name ?? "something that is gone";
}
