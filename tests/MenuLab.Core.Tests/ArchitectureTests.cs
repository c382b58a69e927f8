using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Text.RegularExpressions;
using MenuLab.Core.Pantry;

namespace MenuLab.Core.Tests;

public partial class ArchitectureTests
{
    [Fact]
    public void Core_refers_to_the_runtime_and_MathNet_only()
    {
        var strangers = typeof(Ingredient).Assembly.GetReferencedAssemblies()
            .Select(a => a.Name!)
            .Where(name => !File.Exists(Path.Combine(RuntimeEnvironment.GetRuntimeDirectory(), name + ".dll")) && name != "MathNet.Numerics");
        Assert.Empty(strangers);
    }

    // The stations of the data, in the order of the path; a folder may use those before it.
    private static readonly string[] Flow =
        ["Quantities", "House", "Solutions", "Pantry", "Preps", "Drafts", "Balance", "Safety", "Iterations", "Proposals",
         "Statistics", "Tastings", "Findings", "Approvals", "Specs", "Menus", "Service", "Exchange"];

    [Fact]
    public void Core_flows_one_way()
    {
        var core = CoreFolder();
        var against = new List<string>();
        var read = 0;
        foreach (var file in Directory.EnumerateFiles(core, "*.cs", SearchOption.AllDirectories))
        {
            var station = Path.GetRelativePath(core, file).Split(Path.DirectorySeparatorChar)[0];
            if (station is "bin" or "obj" || station.EndsWith(".cs", StringComparison.Ordinal))
            {
                continue;
            }
            var here = Array.IndexOf(Flow, station);
            Assert.True(here >= 0, $"{station} is not a station of the flow.");
            read++;
            foreach (Match use in Uses().Matches(File.ReadAllText(file)))
            {
                if (Array.IndexOf(Flow, use.Groups[1].Value) > here)
                {
                    against.Add($"{Path.GetFileName(file)} ({station}) uses {use.Groups[1].Value}");
                }
            }
        }
        Assert.True(read > 20);
        Assert.Empty(against);
    }

    [GeneratedRegex(@"^using (?:static |\w+ = )?MenuLab\.Core\.(\w+)", RegexOptions.Multiline)]
    private static partial Regex Uses();

    private static string CoreFolder([CallerFilePath] string here = "") => Path.GetFullPath(Path.Combine(Path.GetDirectoryName(here)!, "..", "..", "src", "MenuLab.Core"));
}
