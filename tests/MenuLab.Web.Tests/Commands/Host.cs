using System.Diagnostics;

namespace MenuLab.Web.Tests.Commands;

/// <summary>Runs the host as a process of its own, as a person at a terminal does.</summary>
internal static class Host
{
    public sealed record Outcome(int ExitCode, string Output, string Errors);

    public static async Task<Outcome> RunAsync(string[] args, params (string Name, string Value)[] environment)
    {
        var start = new ProcessStartInfo("dotnet") { RedirectStandardOutput = true, RedirectStandardError = true, UseShellExecute = false };
        start.ArgumentList.Add(Path.Combine(AppContext.BaseDirectory, "MenuLab.Web.dll"));
        foreach (var arg in args)
        {
            start.ArgumentList.Add(arg);
        }
        foreach (var (name, value) in environment)
        {
            start.Environment[name] = value;
        }
        using var process = Process.Start(start)!;
        var output = process.StandardOutput.ReadToEndAsync();
        var errors = process.StandardError.ReadToEndAsync();
        using var limit = new CancellationTokenSource(TimeSpan.FromSeconds(60));
        await process.WaitForExitAsync(limit.Token);
        return new Outcome(process.ExitCode, await output, await errors);
    }
}
