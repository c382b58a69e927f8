using System.CommandLine;
using MenuLab.Core.Drafts;
using MenuLab.Core.Drafts.Reading;
using MenuLab.Core.House;
using MenuLab.Core.Safety;
using MenuLab.Data.Drafts;
using MenuLab.Data.House;
using MenuLab.Data.Opening;
using MenuLab.Data.Seeding;
using MenuLab.Web.Features.Bench;
using MenuLab.Web.Features.Drafts;
using MenuLab.Web.Features.House;

namespace MenuLab.Web.Commands;

/// <summary>
/// <c>import FILE...</c>: shows how every line of the files was read and, with <c>--yes</c>, brings each drink in as a draft.
/// All files are read before anything is stored; when one of them cannot be read, nothing is.
/// </summary>
internal static class ImportVerb
{
    public static Command Command()
    {
        var files = new Argument<string[]>("file")
        {
            Description = "Text files (a drink's name on a line, its lines below, an empty line between drinks), .csv tables, or .json schema.org Recipes.",
            Arity = ArgumentArity.OneOrMore,
        };
        var data = new Option<string?>("--data") { Description = "The data folder; MENULAB_DATA or the usual one unless given." };
        var demo = new Option<bool>("--demo") { Description = "Bring them into the demo bar." };
        var house = new Option<bool>("--house") { Description = "Bring them into the bar's own house, as it does unless told otherwise." };
        var unit = new Option<string?>("--unit") { Description = "Unit of a bare number: ml or oz; the house's own unless given." };
        unit.AcceptOnlyFromAmong("ml", "oz");
        var total = new Option<double?>("--parts-total") { Description = "Total in mL that parts are scaled to where the text names none." };
        var yes = new Option<bool>("--yes") { Description = "Store the drinks; without it they are only shown." };
        var command = new Command("import", "Bring the drinks of files in as drafts.") { files, data, demo, house, unit, total, yes };
        command.Validators.Add(words =>
        {
            if (words.GetValue(demo) && words.GetValue(house))
            {
                words.AddError("Name --demo or --house, not both.");
            }
        });
        command.SetAction(parsed => RunAsync(
            parsed.GetValue(files)!,
            Folder(parsed.GetValue(data)),
            parsed.GetValue(demo),
            new ReadSettings { BareNumber = parsed.GetValue(unit) == "oz" ? Unit.FluidOunce : Unit.Millilitre, PartsTotalMillilitres = parsed.GetValue(total) },
            parsed.GetValue(unit) is null,
            parsed.GetValue(yes)));
        return command;
    }

    private static DataFolder Folder(string? asked) =>
        DataFolder.Of(new ConfigurationBuilder().AddEnvironmentVariables().AddInMemoryCollection(asked is null ? [] : [new("data", asked)]).Build());

    private static async Task<int> RunAsync(string[] files, DataFolder folder, bool demo, ReadSettings settings, bool unitOfTheHouse, bool store)
    {
        var path = demo ? folder.DemoFile : folder.OwnFile;
        try
        {
            // Neither a look at files nor files that cannot be read found a house: where there is none yet, they are first read by what is shipped.
            var founds = !File.Exists(path) && store && CanBeRead(files, settings);
            await using var open = founds || File.Exists(path) ? await OpenHouse.OpenAsync(path, demo, Console.Error.WriteLine, TimeProvider.System) : null;
            var book = open?.Book ?? Shipped();
            var read = Read(files, book, unitOfTheHouse ? settings with { BareNumber = book.FirstUnit } : settings);
            if (read is null)
            {
                await Console.Error.WriteLineAsync("Nothing was stored.");
                return 1;
            }
            var offered = await OfferAsync(read, open);
            foreach (var (file, drinks) in offered)
            {
                Write(file, drinks, book);
            }
            var all = offered.SelectMany(f => f.Drinks).ToList();
            if (all.Find(d => d.Problem is not null) is { } broken)
            {
                await Console.Error.WriteLineAsync($"A draft cannot hold {broken.Drink.Name}: {broken.Problem} Nothing was stored.");
                return 1;
            }
            if (open is null || !store)
            {
                Console.WriteLine($"{Count(all.Count, "drink")} read from {Count(files.Length, "file")}. Nothing was stored: run it again with --yes to bring them in as drafts, into {path}.");
                return 0;
            }
            var code = await StoreAsync(open, all, path);
            if (code == 0 && folder.ShowsDemo != demo)
            {
                Console.WriteLine(demo ? "MenuLab shows the bar's own house: choose the demo bar on the House page to see them." : "MenuLab shows the demo bar: choose the bar's own house on the House page to see them.");
            }
            return code;
        }
        catch (StoreException problem)
        {
            await Console.Error.WriteLineAsync($"{problem.Message} Nothing was stored.");
            return 1;
        }
    }

    private static bool CanBeRead(string[] files, ReadSettings settings)
    {
        var reader = Shipped().Reader;
        return files.All(file => DrinkFile.Read(file, reader, settings).Problem is null);
    }

    private static HouseBook Shipped()
    {
        var seed = SeedData.Load(SeedData.DefaultFolder);
        return new HouseBook(
            new HouseStock(seed.Pantry, seed.Catalogue, seed.Measures) { Rules = SiteRules.Of(seed.Rules, "EU", HouseFormat.Plain) }, new HouseSettings(), Site.Of(FirstRows.FirstSite, "The house", "Etc/UTC", Site.UsualDayTurn, "EUR", "EU").Value);
    }

    // All problems of all files are told, not the first alone.
    private static List<(string File, IReadOnlyList<IncomingDrink> Drinks)>? Read(string[] files, HouseBook book, ReadSettings settings)
    {
        var read = files.Select(file => (File: file, Read: DrinkFile.Read(file, book.Reader, settings))).ToList();
        foreach (var (file, drinks) in read)
        {
            foreach (var remark in drinks.Remarks)
            {
                Console.Error.WriteLine($"{file}: {remark}");
            }
            if (drinks.Problem is { } problem)
            {
                Console.Error.WriteLine($"{file}:{problem.Line}:{problem.Column}: {problem.Message}");
            }
        }
        return read.Exists(r => r.Read.Problem is not null) ? null : read.ConvertAll(r => (r.File, (IReadOnlyList<IncomingDrink>)[.. r.Read.Drinks.Select(IncomingDrink.Of)]));
    }

    private static async Task<List<(string File, List<OfferedDrink> Drinks)>> OfferAsync(List<(string File, IReadOnlyList<IncomingDrink> Drinks)> read, OpenHouse? house)
    {
        var there = new HashSet<string>();
        if (house is not null)
        {
            await using var db = house.Read();
            there.UnionWith((await db.ListDrafts()).Select(d => SearchName.Of(d.Name)));
        }
        return read.ConvertAll(f => (f.File, f.Drinks.Select(d => ImportDesk.Offer(d, there, FirstRows.AtThisMachine)).ToList()));
    }

    private static void Write(string file, List<OfferedDrink> drinks, HouseBook book)
    {
        // The command line writes a decimal point, whatever the house does.
        var words = new LineWords(HouseFormat.Plain, book.Grid, book.FirstUnit);
        Console.WriteLine($"{file}: {Count(drinks.Count, "drink")}");
        foreach (var offered in drinks)
        {
            Console.WriteLine();
            Console.WriteLine(offered.Drink.Name + (offered.IsThere ? "   (a draft of this name is there already; this comes as another)" : ""));
            foreach (var line in offered.Drink.Lines)
            {
                Console.WriteLine(line.IsRead
                    ? $"     \"{line.Content.Text}\" -> {LineAsRead.Of(line.Content, book.Stock.Pantry, words)}"
                    : $"  ?  \"{line.Content.Text}\" -> kept as typed. {line.Says}");
                foreach (var more in line.Content.Understood.Assumptions.Concat(line.Answers.Select(a => "or: " + a)))
                {
                    Console.WriteLine($"         ({more})");
                }
            }
            if (BuildAsRead.Of(offered.Drink.Build, HouseFormat.Plain) is { Length: > 0 } build)
            {
                Console.WriteLine($"     Build: {build}");
            }
            foreach (var step in offered.Drink.Build.Steps)
            {
                Console.WriteLine($"     Step, as written: {step}");
            }
        }
        Console.WriteLine();
    }

    private static async Task<int> StoreAsync(OpenHouse house, List<OfferedDrink> drinks, string path)
    {
        var started = await new DraftStarter(house, FirstRows.AtThisMachine, TimeProvider.System).BringInAsync([.. drinks.Select(d => d.Drink)]);
        if (!started.IsOk)
        {
            await Console.Error.WriteLineAsync($"{started.Problems[0].Message} Nothing was stored.");
            return 1;
        }
        Console.WriteLine($"Brought {Count(started.Value.Count, "drink")} in as drafts, into {path}.");
        return 0;
    }

    private static string Count(int count, string what) => count == 1 ? $"1 {what}" : $"{count} {what}s";
}
