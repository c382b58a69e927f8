using MenuLab.Core.Drafts.Reading;
using MenuLab.Core.Exchange;

namespace MenuLab.Web.Commands;

/// <summary>The drinks of a file, or where and why it cannot be read.</summary>
/// <param name="Drinks">The drinks in the order of the file.</param>
/// <param name="Remarks">What was left out, a sentence each.</param>
/// <param name="Problem">Null, or what stands in the way; then there are no drinks.</param>
internal sealed record DrinkFile(IReadOnlyList<ReadDrink> Drinks, IReadOnlyList<string> Remarks, FileProblem? Problem)
{
    /// <summary>Reads a file on this machine.</summary>
    public static DrinkFile Read(string path, DrinkReader reader, ReadSettings settings) =>
        TextFile.Read(path, out var text) is { } problem ? Broken(problem) : ReadText(path, text, reader, settings);

    /// <summary>Reads the bytes of a file that was handed over.</summary>
    /// <param name="name">Its name; its ending says what it is.</param>
    /// <param name="bytes">Its content.</param>
    /// <param name="reader">Reads lines by the names of the house.</param>
    /// <param name="settings">How bare numbers and parts are read.</param>
    public static DrinkFile Read(string name, byte[] bytes, DrinkReader reader, ReadSettings settings) =>
        TextFile.Decode(bytes, out var text) is { } problem ? Broken(problem) : ReadText(name, text, reader, settings);

    /// <summary>Reads a text; what it is follows from the ending of its name, else from its first character.</summary>
    public static DrinkFile ReadText(string name, string text, DrinkReader reader, ReadSettings settings)
    {
        switch (Path.GetExtension(name).ToLowerInvariant())
        {
            case ".csv" or ".tsv":
                var table = CsvDrinks.Read(text, out var rows, out var strangers);
                return Of(table, [.. rows.Select(Read)], [.. strangers.Select(s => $"the column \"{s}\" means nothing here and was not used.")]);
            case ".json" or ".jsonld":
            case var _ when text.TrimStart().StartsWith('{') || text.TrimStart().StartsWith('['):
                var document = RecipeDocument.Read(text, out var recipes);
                return Of(document, [.. recipes.Select(Read)], []);
            default:
                return Of(null, reader.ReadSheet(text, settings), []);
        }

        // The name is given apart: the reader must not look for one among the lines.
        ReadDrink Read(DrinkText typed) => reader.Read((typed.Name.Length > 0 ? typed.Name : "Drink") + "\n" + typed.Text, settings) with { Name = typed.Name };
    }

    private static DrinkFile Of(FileProblem? problem, IReadOnlyList<ReadDrink> drinks, IReadOnlyList<string> remarks) =>
        (problem ?? NothingRead(drinks)) is { } found ? new DrinkFile([], remarks, found) : new DrinkFile(drinks, remarks, null);

    private static DrinkFile Broken(FileProblem problem) => new([], [], problem);

    private static FileProblem? NothingRead(IReadOnlyList<ReadDrink> drinks)
    {
        if (drinks.Any(d => d.Lines.Count > 0 || d.Questions.Count > 0))
        {
            return null;
        }
        var first = drinks.SelectMany(d => d.Unread).FirstOrDefault();
        return first is null
            ? new FileProblem(1, 1, "No line with an amount and an ingredient was found. Type a drink: its name on a line, its lines below.")
            : new FileProblem(first.Line, first.Column, first.Reason);
    }
}
