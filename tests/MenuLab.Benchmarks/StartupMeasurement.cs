using System.Diagnostics;
using MenuLab.EndToEnd;

namespace MenuLab.Benchmarks;

/// <summary>From the command to the first page: the ready-to-run program, on an empty data folder and on one that is there.</summary>
internal static class StartupMeasurement
{
    private const int Starts = 5;

    public static async Task RunAsync()
    {
        var folder = await PublishedSite.PublishAsync(readyToRun: true);
        var empty = new List<double>();
        var filled = new List<double>();
        var data = "";
        for (var i = 0; i < Starts; i++)
        {
            data = PublishedSite.EmptyData("data-to-start");
            empty.Add(await StartAsync(folder, data));
        }
        for (var i = 0; i < Starts; i++)
        {
            filled.Add(await StartAsync(folder, data));
        }
        Console.WriteLine($"empty: {string.Join(", ", empty.Select(ms => $"{ms:0}"))} ms; existing: {string.Join(", ", filled.Select(ms => $"{ms:0}"))} ms");
        Figure.Print("startup_empty_ms", Median(empty), "ms");
        Figure.Print("startup_ms", Median(filled), "ms");
    }

    private static async Task<double> StartAsync(string folder, string data)
    {
        var clock = Stopwatch.StartNew();
        await using var site = await PublishedSite.StartAsync(folder, data);
        using var client = new HttpClient();
        (await client.GetAsync(site.Address)).EnsureSuccessStatusCode();
        return clock.Elapsed.TotalMilliseconds;
    }

    private static double Median(List<double> values) => values.Order().ElementAt(values.Count / 2);
}
