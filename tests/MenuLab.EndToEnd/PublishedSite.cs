using System.Diagnostics;
using System.Text.RegularExpressions;

namespace MenuLab.EndToEnd;

/// <summary>The published program, running on a port of its own: what a house would run, not the build output.</summary>
internal sealed partial class PublishedSite : IAsyncDisposable
{
    private static readonly TimeSpan StartsWithin = TimeSpan.FromSeconds(60);
    private readonly Process _process;

    private PublishedSite(Process process, Uri address)
    {
        _process = process;
        Address = address;
    }

    /// <summary>Where it listens.</summary>
    public Uri Address { get; }

    /// <summary>Publishes the program and starts it.</summary>
    /// <exception cref="InvalidOperationException">It cannot be published or does not start; the message holds what it wrote.</exception>
    public static async Task<PublishedSite> StartAsync()
    {
        var folder = Path.Combine(Repository.Artifacts, "site");
        if (Directory.Exists(folder))
        {
            Directory.Delete(folder, recursive: true);   // nothing of an earlier run may help this one
        }
        // Ready-to-run code would start a little faster and take twice as long to publish.
        var (exit, output) = await Commands.RunAsync(
            "dotnet", "publish", "src/MenuLab.Web", "-c", "Release", "-o", folder, "-p:PublishReadyToRun=false", "-nodereuse:false", "-v:quiet");
        return exit == 0 ? await RunAsync(folder) : throw new InvalidOperationException("Publishing failed: " + output);
    }

    private static async Task<PublishedSite> RunAsync(string folder)
    {
        var data = Path.Combine(Repository.Artifacts, "data");
        if (Directory.Exists(data))
        {
            Directory.Delete(data, recursive: true);
        }
        var process = Process.Start(new ProcessStartInfo("dotnet", [Path.Combine(folder, "MenuLab.Web.dll"), "--urls", "http://127.0.0.1:0"])
        {
            RedirectStandardOutput = true,
            // Started from elsewhere, so that it has to find its own files.
            WorkingDirectory = Path.GetTempPath(),
            Environment = { ["MENULAB_DATA"] = data },
        })!;
        using var patience = new CancellationTokenSource(StartsWithin);
        var said = new List<string>();
        try
        {
            while (await process.StandardOutput.ReadLineAsync(patience.Token) is { } line)
            {
                said.Add(line);
                if (Listening().Match(line) is { Success: true } match)
                {
                    _ = process.StandardOutput.ReadToEndAsync(CancellationToken.None);   // a full pipe would stop the program
                    return new PublishedSite(process, new Uri(match.Groups[1].Value));
                }
            }
        }
        catch (OperationCanceledException)
        {
            process.Kill(entireProcessTree: true);
        }
        throw new InvalidOperationException("The program did not say where it listens: " + string.Join('\n', said));
    }

    [GeneratedRegex(@"^MenuLab is at (http://[\d.:]+)")]
    private static partial Regex Listening();

    /// <summary>Stops it.</summary>
    public async ValueTask DisposeAsync()
    {
        _process.Kill(entireProcessTree: true);
        await _process.WaitForExitAsync();
        _process.Dispose();
    }
}
