using System.CommandLine;
using MenuLab.Core.Drafts;
using MenuLab.Core.Drafts.Reading;
using MenuLab.Core.Exchange;
using MenuLab.Data.Seeding;
using MenuLab.Web.Features.Bench;

namespace MenuLab.Web.Commands;

/// <summary>
/// <c>balance FILE</c>: reads a text, CSV or schema.org Recipe file and prints each drink's balance, as a table or, with
/// <c>--json</c>, as JSON and nothing else on standard output.
/// </summary>
internal static class BalanceVerb
{
    public static Command Command()
    {
        var file = new Argument<string>("file") { Description = "A text file (a drink's name on a line, its lines below, an empty line between drinks), a .csv table, or a .json schema.org Recipe." };
        var json = new Option<bool>("--json") { Description = "Print JSON and nothing else." };
        var unit = new Option<string>("--unit") { Description = "Unit of a bare number: ml or oz.", DefaultValueFactory = _ => "ml" };
        unit.AcceptOnlyFromAmong("ml", "oz");
        var total = new Option<double?>("--parts-total") { Description = "Total in mL that parts are scaled to where the text names none." };
        var command = new Command("balance", "Print the balance of the drinks in a file.") { file, json, unit, total };
        command.SetAction(parsed => Run(
            parsed.GetValue(file)!,
            new ReadSettings
            {
                BareNumber = parsed.GetValue(unit) == "oz" ? Unit.FluidOunce : Unit.Millilitre,
                PartsTotalMillilitres = parsed.GetValue(total),
            },
            parsed.GetValue(json)));
        return command;
    }

    private static int Run(string path, ReadSettings settings, bool asJson)
    {
        var seed = SeedData.Load(SeedData.DefaultFolder);
        var house = new HouseStock(seed.Pantry, seed.Catalogue, seed.Measures);
        var reader = new DrinkReader(Vocabulary.Of(seed.Pantry, seed.Catalogue), seed.Measures);

        var problem = ReadFile(path, reader, settings, out var drinks, out var remarks);
        foreach (var remark in remarks)
        {
            Console.Error.WriteLine($"{path}: {remark}");
        }
        if (problem is not null)
        {
            Console.Error.WriteLine($"{path}:{problem.Line}:{problem.Column}: {problem.Message}");
            return 1;
        }

        var worked = drinks.Select(d => WorkedDrink.Of(d, house)).ToList();
        if (asJson)
        {
            using var output = Console.OpenStandardOutput();
            BalanceJson.Write(output, worked, house.Pantry);
            output.Write("\n"u8);
        }
        else
        {
            BalanceTable.Write(Console.Out, worked, house.Pantry);
        }
        return 0;
    }

    /// <summary>The drinks of a file; what a file is follows from its ending, else from its first character.</summary>
    internal static FileProblem? ReadFile(
        string path, DrinkReader reader, ReadSettings settings, out IReadOnlyList<ReadDrink> drinks, out IReadOnlyList<string> remarks)
    {
        drinks = [];
        remarks = [];
        if (TextFile.Read(path, out var text) is { } unreadable)
        {
            return unreadable;
        }
        var ending = Path.GetExtension(path).ToLowerInvariant();
        FileProblem? problem = null;
        if (ending == ".csv" || ending == ".tsv")
        {
            problem = CsvDrinks.Read(text, out var typed, out var strangers);
            drinks = [.. typed.Select(t => Read(t, reader, settings))];
            remarks = [.. strangers.Select(s => $"the column \"{s}\" means nothing here and was not used.")];
        }
        else if (ending is ".json" or ".jsonld" || text.TrimStart().StartsWith('{') || text.TrimStart().StartsWith('['))
        {
            problem = RecipeDocument.Read(text, out var typed);
            drinks = [.. typed.Select(t => Read(t, reader, settings))];
        }
        else
        {
            drinks = reader.ReadSheet(text, settings);
        }
        return problem ?? NothingRead(drinks);
    }

    // The name is given apart: the reader must not look for one among the lines.
    private static ReadDrink Read(DrinkText typed, DrinkReader reader, ReadSettings settings)
    {
        var name = typed.Name.Length > 0 ? typed.Name : "Drink";
        return reader.Read(name + "\n" + typed.Text, settings) with { Name = typed.Name };
    }

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
