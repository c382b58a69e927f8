using System.Diagnostics;
using System.Text.RegularExpressions;

namespace MenuLab.EndToEnd;

/// <summary>The published program, running on a port of its own: what a house would run, not the build output.</summary>
internal sealed partial class PublishedSite : IAsyncDisposable
{
    private static readonly TimeSpan StartsWithin = TimeSpan.FromSeconds(60);
    private readonly string _folder;
    private readonly string _data;
    private Process _process;

    private PublishedSite(Process process, Uri address, string folder, string data)
    {
        _folder = folder;
        _process = process;
        Address = address;
        _data = data;
    }

    /// <summary>Where it listens.</summary>
    public Uri Address { get; }

    /// <summary>Publishes the program, as the tests run it.</summary>
    /// <returns>The folder it was published to.</returns>
    /// <exception cref="InvalidOperationException">It cannot be published; the message holds what was written.</exception>
    public static async Task<string> PublishAsync(bool readyToRun = false)
    {
        var folder = Path.Combine(Repository.Artifacts, readyToRun ? "site-ready-to-run" : "site");
        if (Directory.Exists(folder))
        {
            Directory.Delete(folder, recursive: true);   // nothing of an earlier run may help this one
        }
        // Ready-to-run code starts faster and takes twice as long to publish; it is for one kind of machine.
        string[] kind = readyToRun
            ? ["-p:PublishReadyToRun=true", "-r", System.Runtime.InteropServices.RuntimeInformation.RuntimeIdentifier, "--self-contained", "false", "-p:NuGetLockFilePath=obj/ready-to-run.lock.json"]
            : ["-p:PublishReadyToRun=false"];
        var (exit, output) = await Commands.RunAsync(
            "dotnet", ["publish", "src/MenuLab.Web", "-c", "Release", "-o", folder, .. kind, "-nodereuse:false", "-v:quiet"]);
        return exit == 0 ? folder : throw new InvalidOperationException("Publishing failed: " + output);
    }

    /// <summary>Starts a published program on a data folder.</summary>
    /// <param name="folder">Where it was published to.</param>
    /// <param name="data">The data folder; what is in it stays.</param>
    /// <exception cref="InvalidOperationException">It does not start; the message holds what it wrote.</exception>
    public static async Task<PublishedSite> StartAsync(string folder, string data)
    {
        var (process, address) = await RunAsync(folder, data, "http://127.0.0.1:0");
        return new PublishedSite(process, address, folder, data);
    }

    /// <summary>An empty data folder.</summary>
    public static string EmptyData(string name)
    {
        var data = Path.Combine(Repository.Artifacts, name);
        if (Directory.Exists(data))
        {
            Directory.Delete(data, recursive: true);
        }
        return data;
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
        (_process, _) = await RunAsync(_folder, _data, Address.GetLeftPart(UriPartial.Authority));
    }

    private static async Task<(Process Process, Uri Address)> RunAsync(string folder, string data, string urls)
    {
        var process = Process.Start(new ProcessStartInfo("dotnet", [Path.Combine(folder, "MenuLab.Web.dll"), "--urls", urls])
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
