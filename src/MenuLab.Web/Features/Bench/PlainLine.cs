using MenuLab.Core.Drafts;
using MenuLab.Core.House;
using MenuLab.Core.Pantry;

namespace MenuLab.Web.Features.Bench;

/// <summary>A line written out so that it reads one way only: what an answer puts in place of the typed text.</summary>
public static class PlainLine
{
    /// <summary>The line in plain words: place, amount, unit, full name, treatment.</summary>
    public static string Of(DraftLine line, Ingredient ingredient)
    {
        var amount = double.IsFinite(line.Amount) ? HouseFormat.Amount(line.Amount) + " " : "";
        var unit = line.Unit switch
        {
            Unit.None => "",
            Unit.Top => "top with ",
            _ => LineWords.Word(line.Unit, line.Amount) + " ",
        };
        var place = line.Place is Place.In ? "" : LineWords.Of(line.Place) + ": ";
        var treatment = line.Treatment.Length > 0 ? $", {line.Treatment}" : "";
        return place + (line.IsTopUp ? "" : amount) + unit + ingredient.Name + treatment;
    }

    /// <summary>The whole text with a piece of one of its lines replaced.</summary>
    /// <param name="text">The text.</param>
    /// <param name="line">The line, from 1.</param>
    /// <param name="piece">What is replaced; the whole line where the piece is not found in it.</param>
    /// <param name="wording">What comes in its place.</param>
    public static string Put(string text, int line, string piece, string wording)
    {
        var lines = text.Split('\n');
        if (line < 1 || line > lines.Length)
        {
            return text;
        }
        var old = lines[line - 1];
        var at = old.IndexOf(piece, StringComparison.Ordinal);
        lines[line - 1] = at < 0 || piece.Length == 0 ? wording : string.Concat(old.AsSpan(0, at), wording, old.AsSpan(at + piece.Length));
        return string.Join('\n', lines);
    }
}
