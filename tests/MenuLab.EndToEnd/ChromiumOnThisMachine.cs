using Microsoft.Playwright;

namespace MenuLab.EndToEnd;

/// <summary>
/// Finds a Chromium or gets one, and says which. Without one the tests fail with what was tried; they are never skipped.
/// </summary>
internal static class ChromiumOnThisMachine
{
    /// <summary>Names a path to use and nothing else.</summary>
    public const string Variable = "MENULAB_CHROMIUM";

    private static readonly string[] Names = ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable"];

    /// <summary>How it is started.</summary>
    public static string[] Arguments =>
    [
        // Root has no sandbox to go into; a container has little shared memory.
        .. Environment.IsPrivilegedProcess && OperatingSystem.IsLinux() ? ["--no-sandbox"] : Array.Empty<string>(),
        "--disable-dev-shm-usage", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
        "--disable-component-update", "--disable-sync",
        // Nothing but this machine has an address: no test can reach out, whatever it tries.
        "--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1",
    ];

    /// <summary>The path of an executable and a sentence on where it came from.</summary>
    /// <exception cref="InvalidOperationException">There is none and none could be got; the message says what was tried.</exception>
    public static async Task<(string Path, string Said)> FindOrGetAsync(IPlaywright playwright)
    {
        if (Environment.GetEnvironmentVariable(Variable) is { Length: > 0 } named)
        {
            return File.Exists(named)
                ? (named, $"Using the browser that {Variable} names: {named}.")
                : throw new InvalidOperationException($"{Variable} names {named}, which does not exist.");
        }
        if (OnPath() is { } installed)
        {
            return (installed, $"Using the installed {installed}.");
        }
        var own = playwright.Chromium.ExecutablePath;
        if (File.Exists(own))
        {
            return (own, $"Using the browser that Playwright installed before: {own}.");
        }

        var tried = new List<string> { $"No browser: {Variable} is not set, none of {string.Join(", ", Names)} is on PATH, Playwright has none at {own}." };
        // A machine without that network should not wait minutes to find out.
        Environment.SetEnvironmentVariable("PLAYWRIGHT_DOWNLOAD_CONNECTION_TIMEOUT", "10000");
        var exit = await Task.Run(() => Microsoft.Playwright.Program.Main(["install", "chromium"]));
        if (exit == 0 && File.Exists(own))
        {
            return (own, $"Found no browser; had Playwright install one: {own}.");
        }
        tried.Add($"Playwright's own install ended with {exit}.");
        if (OperatingSystem.IsLinux() && Environment.IsPrivilegedProcess && File.Exists("/usr/bin/apt-get"))
        {
            await Commands.RunAsync("/usr/bin/apt-get", "update", "-qq");
            var (aptExit, output) = await Commands.RunAsync("/usr/bin/apt-get", "install", "-y", "-qq", "--no-install-recommends", "chromium");
            if (aptExit == 0 && OnPath() is { } fromPackage)
            {
                return (fromPackage, $"Found no browser; installed Debian's package: {fromPackage}.");
            }
            tried.Add($"apt-get install chromium ended with {aptExit}: {output.Trim()}");
        }
        else
        {
            tried.Add("Debian's package was not tried: it takes root on Debian.");
        }
        tried.Add($"Install a Chromium, or name one in {Variable}.");
        throw new InvalidOperationException(string.Join(' ', tried));
    }

    private static string? OnPath() =>
        (from folder in (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator, StringSplitOptions.RemoveEmptyEntries)
         from name in Names
         let path = Path.Combine(folder, OperatingSystem.IsWindows() ? name + ".exe" : name)
         where File.Exists(path)
         select path).FirstOrDefault();
}
