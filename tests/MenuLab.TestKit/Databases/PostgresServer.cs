using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;

namespace MenuLab.TestKit.Databases;

/// <summary>A PostgreSQL server of this test run's own, on a free port of the loopback address, in a temporary folder.</summary>
internal sealed class PostgresServer
{
    /// <summary>Set to 1, it turns a machine without PostgreSQL from a reason to skip into a failure.</summary>
    private const string Require = "MENULAB_REQUIRE_POSTGRES";

    private const string User = "menulab";
    private static readonly Lazy<PostgresServer> Server = new(Start);
    private readonly int _port;

    private PostgresServer(int port) => _port = port;

    /// <summary>Why there is none; null where there is one.</summary>
    /// <exception cref="InvalidOperationException">There is none, and one is required.</exception>
    public static string? Missing
    {
        get
        {
            if (Binaries() is not null)
            {
                return null;
            }
            var why = "No PostgreSQL server is installed (looked for /usr/lib/postgresql/*/bin/initdb).";
            return Environment.GetEnvironmentVariable(Require) == "1" ? throw new InvalidOperationException($"{why} {Require}=1 requires one.") : why;
        }
    }

    /// <summary>The server, started when first asked for and stopped when the process ends.</summary>
    public static PostgresServer Running => Server.Value;

    /// <summary>How to reach it.</summary>
    public string ConnectionString => string.Create(CultureInfo.InvariantCulture, $"Host=127.0.0.1;Port={_port};Username={User};Maximum Pool Size=20");

    private static string? Binaries() =>
        !Directory.Exists("/usr/lib/postgresql")
            ? null
            : Directory.GetDirectories("/usr/lib/postgresql").Select(d => Path.Combine(d, "bin")).Where(d => File.Exists(Path.Combine(d, "initdb")))
                .OrderByDescending(d => int.TryParse(Path.GetFileName(Path.GetDirectoryName(d)), CultureInfo.InvariantCulture, out var v) ? v : 0).FirstOrDefault();

    private static PostgresServer Start()
    {
        var bin = Binaries()!;
        var folder = Directory.CreateTempSubdirectory("menulab-postgres-").FullName;
        var data = Path.Combine(folder, "data");
        if (Environment.UserName == "root")
        {
            // The server refuses to run as root; the account that came with it owns the folder instead.
            Run("/bin/chown", ["postgres", folder]);
        }
        // Durability is switched off: it lives for one run.
        RunAsServer(Path.Combine(bin, "initdb"), ["-D", data, "-U", User, "--auth=trust", "--encoding=UTF8", "--locale=C.UTF-8", "--no-sync"]);
        var port = FreePort();
        var settings = string.Create(CultureInfo.InvariantCulture, $"-c listen_addresses=127.0.0.1 -c port={port} -c unix_socket_directories= -c fsync=off -c full_page_writes=off");
        RunAsServer(Path.Combine(bin, "pg_ctl"), ["-D", data, "-w", "-t", "60", "-l", Path.Combine(folder, "log"), "-o", settings, "start"]);
        AppDomain.CurrentDomain.ProcessExit += (_, _) =>
        {
            RunAsServer(Path.Combine(bin, "pg_ctl"), ["-D", data, "-m", "immediate", "stop"]);
            Directory.Delete(folder, recursive: true);
        };
        return new PostgresServer(port);
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    private static void RunAsServer(string program, string[] arguments)
    {
        if (Environment.UserName == "root")
        {
            Run("/usr/sbin/runuser", ["-u", "postgres", "--", program, .. arguments]);
        }
        else
        {
            Run(program, arguments);
        }
    }

    private static void Run(string program, string[] arguments)
    {
        // Output goes to nobody: a server that inherits a pipe would keep its reader waiting.
        var start = new ProcessStartInfo("/bin/sh") { WorkingDirectory = "/", UseShellExecute = false };
        start.ArgumentList.Add("-c");
        start.ArgumentList.Add("exec \"$0\" \"$@\" </dev/null >/dev/null 2>&1");
        start.ArgumentList.Add(program);
        foreach (var argument in arguments)
        {
            start.ArgumentList.Add(argument);
        }
        using var process = Process.Start(start)!;
        process.WaitForExit();
        if (process.ExitCode != 0)
        {
            throw new InvalidOperationException($"{program} {string.Join(' ', arguments)} ended with {process.ExitCode}.");
        }
    }
}
