using MenuLab.Core.Drafts;
using MenuLab.Core.Drafts.Reading;

namespace MenuLab.Web.Features.Bench;

/// <summary>A recognised piece of a typed line.</summary>
/// <param name="Text">What it was read as: "22.5 mL".</param>
/// <param name="As">What it is: "amount, from ¾ fl oz".</param>
/// <param name="IsOdd">Something is off with it: a fruit-coloured bar and the reason.</param>
public sealed record Piece(string Text, string As, bool IsOdd = false);

/// <summary>A line while it is typed: its pieces, what may complete it, and the drink as it would be with it.</summary>
public sealed record TypedLine
{
    /// <summary>Nothing is typed.</summary>
    public static TypedLine Empty { get; } = new();

    /// <summary>The text that all this is about; the hand may be further already.</summary>
    public string Text { get; init; } = "";

    /// <summary>The recognised pieces, in order.</summary>
    public IReadOnlyList<Piece> Pieces { get; init; } = [];

    /// <summary>What may complete it.</summary>
    public IReadOnlyList<Suggestion> Suggestions { get; init; } = [];

    /// <summary>Figures with this line in the drink; null where it does not read as one.</summary>
    public TypedDrink? Preview { get; init; }

    /// <summary>The pieces of a read line.</summary>
    /// <param name="read">The text as read.</param>
    /// <param name="name">Finds an ingredient's name.</param>
    /// <param name="words">How lines are written.</param>
    /// <param name="joinsLine">The line of the drink that it would be added to: its place from 1 and the amount that it then has; null for none.</param>
    public static IReadOnlyList<Piece> PiecesOf(ReadDrink read, Func<DraftLine, string> name, LineWords words, (int Place, string Amount)? joinsLine)
    {
        var pieces = new List<Piece>();
        foreach (var line in read.Lines)
        {
            if (words.Amount(line) is { Length: > 0 } amount)
            {
                var unit = double.IsFinite(line.Millilitres) && line.Place == Place.In && !line.IsTopUp ? words.First == Unit.FluidOunce ? " fl oz" : " mL" : "";
                pieces.Add(new Piece(amount + unit, words.Other(line) is { Length: > 0 } other ? $"amount, {other}" : "amount"));
            }
            pieces.Add(new Piece(name(line), line.Assumptions.Count > 0 ? string.Join(" ", line.Assumptions) : "ingredient"));
            if (line.Treatment.Length > 0)
            {
                pieces.Add(new Piece(line.Treatment, "treatment"));
            }
            if (line.Place != Place.In)
            {
                pieces.Add(new Piece(LineWords.Of(line.Place), "place, not in the liquid"));
            }
            else if (line.Joins != Joins.Mixed)
            {
                pieces.Add(new Piece(LineWords.Of(line.Joins), "joins"));
            }
        }
        pieces.AddRange(read.Questions.Select(q => new Piece(q.Text.Trim(), q.Asks, IsOdd: true)));
        pieces.AddRange(read.Unread.Select(u => new Piece(u.Text.Trim(), u.Reason, IsOdd: true)));
        pieces.AddRange(new[] { read.Build.Method, read.Build.Glass, read.Build.Ice, read.Build.Strain }.OfType<string>().Select(key => new Piece(key.Replace('_', ' '), "build")));
        if (pieces.Count == 0 && read.Name.Length > 0)
        {
            pieces.Add(new Piece(read.Name, "no amount and no known ingredient: Enter keeps it as typed", IsOdd: true));
        }
        if (joinsLine is { } onto)
        {
            pieces.Add(new Piece($"already line {onto.Place}", $"Enter adds to it: {onto.Amount}"));
        }
        return pieces;
    }
}
