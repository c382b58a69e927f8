using System.Text;
using System.Text.Json;

namespace MenuLab.Web.Tests.Commands;

public sealed class BalanceVerbTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("menulab-balance");

    public void Dispose() => _folder.Delete(recursive: true);

    private const string Harbour = """
        Quay Lamp
        45 ml apple juice
        20 ml fresh lemon juice
        15 ml simple syrup 1:1 by mass
        shake 12 s with cubes, fine strain into a coupe
        garnish: rosemary sprig
        """;

    [Fact]
    public async Task A_text_file_gives_every_documented_key()
    {
        using var json = await JsonOf(Harbour);
        var drink = Assert.Single(json.RootElement.EnumerateArray());
        Assert.Equal("Quay Lamp", drink.GetProperty("name").GetString());
        Assert.Equal(["name", "lines", "questions", "unread", "build", "yield", "notes", "metrics", "allergens", "cautions", "engine_version"], drink.EnumerateObject().Select(p => p.Name));
        Assert.Equal(4, drink.GetProperty("lines").GetArrayLength());
        Assert.Equal(0, drink.GetProperty("unread").GetArrayLength());
        var line = drink.GetProperty("lines")[0];
        Assert.Equal(["text", "ingredient", "key", "volume_ml", "mass_g", "place", "joins", "start_c", "treatment", "assumptions"], line.EnumerateObject().Select(p => p.Name));
        Assert.Equal("apple_juice", line.GetProperty("key").GetString());
        Assert.Equal(45, line.GetProperty("volume_ml").GetDouble(), 1e-9);
        Assert.Equal("garnish", drink.GetProperty("lines")[3].GetProperty("place").GetString());
        Assert.Equal(("shaken", "coupe", "fine_strained", 12.0), (Build("method"), Build("glass"), Build("strain"), drink.GetProperty("build").GetProperty("seconds").GetDouble()));
        foreach (var state in new[] { "mixed", "served" })
        {
            var metrics = drink.GetProperty("metrics").GetProperty(state);
            Assert.Equal(Core.Balance.Metrics.All.Select(m => m.Key), metrics.EnumerateObject().Select(p => p.Name));
            Assert.All(metrics.EnumerateObject(), m => Assert.Equal(["value", "low", "high", "unit", "unknown_percent"], m.Value.EnumerateObject().Select(p => p.Name)));
        }
        // 45 + 20 + 15 mL, before any ice; the sugar by hand: apple 45 x 1.048 x 9.62 %, lemon 20 x 1.031 x 2.52 %, syrup 15 x 1.23 x 50 % (SR28 09016, 09152).
        Assert.Equal(80, Value("mixed", "volume_ml"), 0.2);
        Assert.Equal((4.54 + 0.52 + 9.22) / 80 * 100, Value("mixed", "sugar_g_per_100ml"), 0.15);
        Assert.True(Value("served", "volume_ml") > Value("mixed", "volume_ml") + 10);
        Assert.Equal(0, Value("served", "abv_percent"), 0.1);

        string? Build(string key) => drink.GetProperty("build").GetProperty(key).GetString();
        double Value(string state, string key) => drink.GetProperty("metrics").GetProperty(state).GetProperty(key).GetProperty("value").GetDouble();
    }

    [Fact]
    public async Task Without_a_method_served_is_null_and_the_notes_say_why()
    {
        using var json = await JsonOf("Plain\n45 ml apple juice\n");
        var drink = json.RootElement[0];
        Assert.Equal(JsonValueKind.Null, drink.GetProperty("metrics").GetProperty("served").ValueKind);
        Assert.Contains(drink.GetProperty("notes").EnumerateArray(), n => n.GetString()!.Contains("no method", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_comma_decimal_culture_changes_nothing()
    {
        var path = Write("drink.txt", Harbour);
        var plain = await Host.RunAsync(["balance", path, "--json"]);
        var german = await Host.RunAsync(["balance", path, "--json"], ("LC_ALL", "de_DE.UTF-8"), ("LANG", "de_DE.UTF-8"));
        Assert.Equal((0, plain.Output), (german.ExitCode, german.Output));
        Assert.Equal((await Host.RunAsync(["balance", path])).Output, (await Host.RunAsync(["balance", path], ("LC_ALL", "de_DE.UTF-8"))).Output);
    }

    [Fact]
    public async Task A_table_and_a_recipe_document_give_what_the_text_gives()
    {
        var csv = "drink,amount,unit,ingredient,place,method,seconds,ice,glass,strain\n"
            + "Quay Lamp,45,ml,apple juice,,shaken,12,cubes,coupe,fine strained\n,20,ml,fresh lemon juice\n,15,ml,simple syrup 1:1 by mass\n,1,sprig,rosemary,garnish\n";
        var recipe = """
            {"@context": "https://schema.org", "@type": "Recipe", "name": "Quay Lamp",
             "recipeIngredient": ["45 ml apple juice", "20 ml fresh lemon juice", "15 ml simple syrup 1:1 by mass", "garnish: rosemary sprig"],
             "recipeInstructions": "shake 12 s with cubes, fine strain into a coupe"}
            """;
        var expected = Figures(await JsonOf(Harbour));
        Assert.Equal(expected, Figures(await JsonOf(csv, "drink.csv")));
        Assert.Equal(expected, Figures(await JsonOf(recipe, "drink.json")));

        static string Figures(JsonDocument json) => json.RootElement[0].GetProperty("name").GetString() + json.RootElement[0].GetProperty("metrics").GetRawText();
    }

    [Fact]
    public async Task Ounces_are_taken_for_bare_numbers_when_asked()
    {
        var path = Write("oz.txt", "Small Tide\n1 1/2 apple juice\n");
        var run = await Host.RunAsync(["balance", path, "--json", "--unit", "oz"]);
        using var json = JsonDocument.Parse(run.Output);
        Assert.Equal(45, json.RootElement[0].GetProperty("lines")[0].GetProperty("volume_ml").GetDouble(), 1e-9);
    }

    [Theory]
    [InlineData("empty.txt", "", ":1:1:")]
    [InlineData("blank.txt", " \n\t\n", ":1:1:")]
    [InlineData("cut.json", "{\"@type\": \"Recipe\",\n \"name\": \"cut", ":2:14:")]
    [InlineData("other.json", "{\"@type\": \"Person\"}", ":1:1:")]
    [InlineData("no-column.csv", "a,b\n1,2\n", ":1:1:")]
    [InlineData("no-row.csv", "drink,amount,unit,ingredient\n", ":2:1:")]
    public async Task Bad_input_ends_with_1_and_names_line_and_column(string name, string content, string place)
    {
        var run = await Host.RunAsync(["balance", Write(name, content), "--json"]);
        Assert.Equal((1, ""), (run.ExitCode, run.Output));
        Assert.Contains(name + place, run.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_missing_file_a_huge_file_and_a_wrong_encoding_are_told()
    {
        var missing = await Host.RunAsync(["balance", Path.Combine(_folder.FullName, "nowhere.txt")]);
        Assert.Equal(1, missing.ExitCode);
        Assert.Contains("cannot be opened", missing.Errors, StringComparison.Ordinal);

        var huge = await Host.RunAsync(["balance", Write("huge.txt", new string('x', 10_000_000))]);
        Assert.Equal(1, huge.ExitCode);
        Assert.Contains("10.0 MB", huge.Errors, StringComparison.Ordinal);

        var latin = Path.Combine(_folder.FullName, "latin.txt");
        await File.WriteAllBytesAsync(latin, Encoding.Latin1.GetBytes("Quay\n45 ml purée\n"));
        var wrong = await Host.RunAsync(["balance", latin]);
        Assert.Equal(1, wrong.ExitCode);
        Assert.Contains("latin.txt:2:10:", wrong.Errors, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("🍐\n45 ml apple juice 🍏\n")]
    [InlineData("ليمون\n‮45 ml apple juice\n")]
    [InlineData("Minus\n-45 ml apple juice\nNaN ml lemon juice\n1e308 l lemon juice\n45 ml apple juice\n")]
    public async Task Odd_text_is_read_or_kept_but_never_lost(string text)
    {
        using var json = await JsonOf(text);
        var drink = json.RootElement[0];
        var typed = text.Split('\n', StringSplitOptions.RemoveEmptyEntries).Length;
        var accounted = drink.GetProperty("lines").GetArrayLength() + drink.GetProperty("questions").GetArrayLength() + drink.GetProperty("unread").GetArrayLength()
            + drink.GetProperty("notes").GetArrayLength() + (drink.GetProperty("name").GetString()!.Length > 0 ? 1 : 0);
        Assert.True(accounted >= typed, drink.GetRawText());
        var volume = drink.GetProperty("metrics").GetProperty("mixed").GetProperty("volume_ml").GetProperty("value");
        Assert.True(volume.ValueKind == JsonValueKind.Null || volume.GetDouble() < 60);
    }

    private async Task<JsonDocument> JsonOf(string content, string name = "drink.txt")
    {
        var run = await Host.RunAsync(["balance", Write(name, content), "--json"]);
        Assert.True(run.ExitCode == 0, run.Errors);
        return JsonDocument.Parse(run.Output);
    }

    private string Write(string name, string content)
    {
        var path = Path.Combine(_folder.FullName, name);
        File.WriteAllText(path, content);
        return path;
    }
}
