using MenuLab.Data.Drafts;
using MenuLab.Data.Opening;

namespace MenuLab.Web.Tests.Commands;

public sealed class ImportVerbTests : IDisposable
{
    private const string Lamp = "Quay Lamp\n45 ml apple juice\n5 of Mira's smoke\n20 ml fresh lemon juice\nshake 12 s with cubes, fine strain into a coupe\n";
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("menulab-import");

    private string Data => Path.Combine(_folder.FullName, "data");

    private string House => Path.Combine(Data, "house.db");

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public async Task Without_yes_every_line_is_shown_as_read_and_not_even_a_house_is_made()
    {
        var run = await Host.RunAsync(["import", Write("a.txt", Lamp), "--data", Data]);
        Assert.True(run.ExitCode == 0, run.Errors);
        Assert.Contains("\"45 ml apple juice\" -> 45 mL Apple juice, clear, unsweetened", run.Output, StringComparison.Ordinal);
        Assert.Contains("\"5 of Mira's smoke\" -> kept as typed.", run.Output, StringComparison.Ordinal);
        Assert.Contains("Build: shaken, 12 s", run.Output, StringComparison.Ordinal);
        Assert.Contains("Nothing was stored: run it again with --yes", run.Output, StringComparison.Ordinal);
        Assert.False(File.Exists(House));
    }

    [Fact]
    public async Task With_yes_each_drink_is_a_draft_and_a_name_that_is_there_comes_as_another()
    {
        var text = Write("a.txt", Lamp);
        var table = Write("t.csv", "drink,amount,unit,ingredient\nTide,45,ml,apple juice\n");
        var first = await Host.RunAsync(["import", text, table, "--data", Data, "--yes"]);
        Assert.True(first.ExitCode == 0, first.Errors);
        Assert.Contains("Brought 2 drinks in as drafts", first.Output, StringComparison.Ordinal);
        var second = await Host.RunAsync(["import", text, "--data", Data, "--yes"]);
        Assert.Contains("Quay Lamp   (a draft of this name is there already; this comes as another)", second.Output, StringComparison.Ordinal);
        Assert.Equal(["Quay Lamp", "Quay Lamp", "Tide"], (await DraftsAsync()).Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task When_one_file_cannot_be_read_all_problems_are_told_and_nothing_is_stored()
    {
        var run = await Host.RunAsync(["import", Write("a.txt", Lamp), Write("cut.json", "{\"@type\": \"Recipe\",\n \"name\": \"cut"), Write("empty.txt", " "), "--data", Data, "--yes"]);
        Assert.Equal((1, ""), (run.ExitCode, run.Output));
        Assert.Contains("cut.json:2:14:", run.Errors, StringComparison.Ordinal);
        Assert.Contains("empty.txt:1:1:", run.Errors, StringComparison.Ordinal);
        Assert.Contains("Nothing was stored.", run.Errors, StringComparison.Ordinal);
        Assert.False(File.Exists(House));
    }

    [Fact]
    public async Task A_house_that_a_host_holds_is_told_and_left_alone()
    {
        var file = Write("a.txt", Lamp);
        Assert.Equal(0, (await Host.RunAsync(["import", file, "--data", Data, "--yes"])).ExitCode);
        await using (await SqliteStore.Open(new SqliteStoreOptions { File = House }))
        {
            var run = await Host.RunAsync(["import", file, "--data", Data, "--yes"]);
            Assert.Equal(1, run.ExitCode);
            Assert.Contains("Another MenuLab has", run.Errors, StringComparison.Ordinal);
        }
        Assert.Single(await DraftsAsync());
    }

    [Fact]
    public async Task Bare_numbers_are_ounces_when_asked_and_both_bars_at_once_are_refused()
    {
        var run = await Host.RunAsync(["import", Write("oz.txt", "Small Tide\n1 1/2 apple juice\n"), "--data", Data, "--unit", "oz"]);
        Assert.Contains("-> 45 mL Apple juice", run.Output, StringComparison.Ordinal);
        Assert.Equal(1, (await Host.RunAsync(["import", Write("oz.txt", "Small Tide\n1 1/2 apple juice\n"), "--data", Data, "--house", "--demo"])).ExitCode);
    }

    private async Task<IReadOnlyList<string>> DraftsAsync()
    {
        await using var store = await SqliteStore.Open(new SqliteStoreOptions { File = House });
        await using var db = store.Read();
        return [.. (await db.ListDrafts()).Select(d => d.Name)];
    }

    private string Write(string name, string content)
    {
        var path = Path.Combine(_folder.FullName, name);
        File.WriteAllText(path, content);
        return path;
    }
}
