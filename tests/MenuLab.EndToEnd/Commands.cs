using System.Diagnostics;

namespace MenuLab.EndToEnd;

/// <summary>Runs other programs.</summary>
internal static class Commands
{
    /// <summary>Runs a program to its end.</summary>
    /// <returns>Its exit code and everything it wrote.</returns>
    public static async Task<(int ExitCode, string Output)> RunAsync(string program, params string[] arguments)
    {
        using var process = Process.Start(new ProcessStartInfo(program, arguments)
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            WorkingDirectory = Repository.Root,
            // Debian's package tool asks nothing.
            Environment = { ["DEBIAN_FRONTEND"] = "noninteractive" },
        })!;
        var output = process.StandardOutput.ReadToEndAsync();
        var errors = process.StandardError.ReadToEndAsync();
        await process.WaitForExitAsync();
        return (process.ExitCode, await output + await errors);
    }
}
