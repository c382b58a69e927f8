using MenuLab.Core.Drafts;
using MenuLab.Core.House;
using MenuLab.Core.Pantry;

namespace MenuLab.Web.Features.Bench;

/// <summary>A line written out in full, and put in place of the typed text.</summary>
public static class PlainLine
{
    /// <summary>Ways to write the line, plainest first: place, amount, unit, name, treatment; then with other names, then by weight.</summary>
    public static IEnumerable<string> Wordings(DraftLine line, Ingredient ingredient)
    {
        var place = line.Place is Place.In ? "" : LineWords.Of(line.Place) + ": ";
        var treatment = line.Treatment.Length > 0 ? $", {line.Treatment}" : "";
        var amount = line.IsTopUp ? "top with " : (double.IsFinite(line.Amount) ? HouseFormat.Plain.Amount(line.Amount) + " " : "") + Unit(line);
        string[] names = [ingredient.Name, .. ingredient.Aliases, ingredient.Key.Replace('_', ' ')];
        foreach (var name in names)
        {
            yield return place + amount + name + treatment;
        }
        if (double.IsFinite(line.Grams))
        {
            foreach (var name in names)
            {
                yield return $"{place}{HouseFormat.Plain.Amount(line.Grams)} g {name}{treatment}";
            }
        }
    }

    private static string Unit(DraftLine line) => LineWords.Word(line.Unit, line.Amount) is { Length: > 0 } word ? word + " " : "";

    /// <summary>The whole text after a question was answered.</summary>
    public static string Put(string text, AskedRow question, Answer answer) =>
        answer.IsNewLine ? $"{text.TrimEnd()}\n{answer.Wording}" : Put(text, question.Line, question.Text, answer.Wording ?? question.Text);

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
