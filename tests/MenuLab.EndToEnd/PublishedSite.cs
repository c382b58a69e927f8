using System.Diagnostics;
using System.Text.RegularExpressions;

namespace MenuLab.EndToEnd;

/// <summary>The published program, running on a port of its own: what a house would run, not the build output.</summary>
internal sealed partial class PublishedSite : IAsyncDisposable
{
    private static readonly TimeSpan StartsWithin = TimeSpan.FromSeconds(60);
    private static readonly string Folder = Path.Combine(Repository.Artifacts, "site");
    private readonly string _data;
    private Process _process;

    private PublishedSite(Process process, Uri address, string data)
    {
        _process = process;
        Address = address;
        _data = data;
    }

    /// <summary>Where it listens.</summary>
    public Uri Address { get; }

    /// <summary>Publishes the program and starts it.</summary>
    /// <exception cref="InvalidOperationException">It cannot be published or does not start; the message holds what it wrote.</exception>
    public static async Task<PublishedSite> StartAsync()
    {
        if (Directory.Exists(Folder))
        {
            Directory.Delete(Folder, recursive: true);   // nothing of an earlier run may help this one
        }
        // Ready-to-run code would start a little faster and take twice as long to publish.
        var (exit, output) = await Commands.RunAsync(
            "dotnet", "publish", "src/MenuLab.Web", "-c", "Release", "-o", Folder, "-p:PublishReadyToRun=false", "-nodereuse:false", "-v:quiet");
        return exit == 0 ? await StartAsync(Path.Combine(Repository.Artifacts, "data")) : throw new InvalidOperationException("Publishing failed: " + output);
    }

    /// <summary>Starts the published program on an empty data folder of its own.</summary>
    public static async Task<PublishedSite> StartAsync(string data)
    {
        if (Directory.Exists(data))
        {
            Directory.Delete(data, recursive: true);
        }
        var (process, address) = await RunAsync(data, "http://127.0.0.1:0");
        return new PublishedSite(process, address, data);
    }

    /// <summary>Kills it, as a power cut would.</summary>
    public Task KillAsync()
    {
        _process.Kill(entireProcessTree: true);
        return _process.WaitForExitAsync();
    }

    /// <summary>Starts it again where it was, on the same data.</summary>
    public async Task StartAgainAsync()
    {
        _process.Dispose();
        (_process, _) = await RunAsync(_data, Address.GetLeftPart(UriPartial.Authority));
    }

    private static async Task<(Process Process, Uri Address)> RunAsync(string data, string urls)
    {
        var process = Process.Start(new ProcessStartInfo("dotnet", [Path.Combine(Folder, "MenuLab.Web.dll"), "--urls", urls])
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
                    return (process, new Uri(match.Groups[1].Value));
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
