using System.CommandLine;
using MenuLab.Core.Drafts;
using MenuLab.Core.Drafts.Reading;
using MenuLab.Core.House;
using MenuLab.Core.Safety;
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
        var house = new HouseStock(seed.Pantry, seed.Catalogue, seed.Measures)
        {
            // A drink at the command line is served nobody knows where: the rules of everywhere.
            Rules = SiteRules.Of(seed.Rules, "", HouseFormat.Plain),
        };
        var reader = new DrinkReader(Vocabulary.Of(seed.Pantry, seed.Catalogue), seed.Measures);

        var read = DrinkFile.Read(path, reader, settings);
        foreach (var remark in read.Remarks)
        {
            Console.Error.WriteLine($"{path}: {remark}");
        }
        if (read.Problem is { } problem)
        {
            Console.Error.WriteLine($"{path}:{problem.Line}:{problem.Column}: {problem.Message}");
            return 1;
        }

        var worked = read.Drinks.Select(d => WorkedDrink.Of(d, house)).ToList();
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
}
