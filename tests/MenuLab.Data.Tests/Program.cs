using MenuLab.Data.Tests.Schemas;
using MenuLab.Data.Tests.Writing;

namespace MenuLab.Data.Tests;

/// <summary>Runs the tests, as the entry point that xunit makes by itself; or writes until it is killed, or makes a schema's fixture.</summary>
internal static class Program
{
    public static async Task<int> Main(string[] args) =>
        args is [KillTests.WriteUntilKilled, var file]
            ? await KillTests.Write(file)
            : args is [FilledDatabase.Make, var to]
            ? await FilledDatabase.At(to)
            : args.Any(a => a is "--server" or "--internal-msbuild-node")
                ? await Xunit.MicrosoftTestingPlatform.TestPlatformTestFramework.RunAsync(args, SelfRegisteredExtensions.AddSelfRegisteredExtensions)
                : await Xunit.Runner.InProc.SystemConsole.ConsoleRunner.Run(args);
}
