using System.Diagnostics;
using MenuLab.Core.Balance;

namespace MenuLab.Benchmarks;

/// <summary>
/// Time and heap of the engine on one 10-line drink. A plain loop: the median of many short batches, which a garbage
/// collection or a neighbour on the second core cannot move.
/// </summary>
internal static class BalanceMeasurement
{
    private const int WarmUp = 20_000;
    private const int Batches = 401;
    private const int PerBatch = 200;

    public static int Figures() => Measure("balance", Detail.Figures);

    public static int Ranges() => Measure("balance_ranges", Detail.RangesAndShares);

    private static int Measure(string name, Detail detail)
    {
        var (lines, build) = TenLines.Drink();
        var sink = 0.0;
        for (var i = 0; i < WarmUp; i++)
        {
            sink += BalanceEngine.Of(lines, build, detail).Mixed[Metric.Volume].Value;
        }
        // Tiered compilation finishes in the background.
        Thread.Sleep(500);
        for (var i = 0; i < WarmUp; i++)
        {
            sink += BalanceEngine.Of(lines, build, detail).Mixed[Metric.Volume].Value;
        }

        var batches = new double[Batches];
        for (var b = 0; b < Batches; b++)
        {
            var start = Stopwatch.GetTimestamp();
            for (var i = 0; i < PerBatch; i++)
            {
                sink += BalanceEngine.Of(lines, build, detail).Mixed[Metric.Volume].Value;
            }
            batches[b] = Stopwatch.GetElapsedTime(start).TotalMicroseconds / PerBatch;
        }
        Array.Sort(batches);

        var before = GC.GetAllocatedBytesForCurrentThread();
        sink += BalanceEngine.Of(lines, build, detail).Mixed[Metric.Volume].Value;
        var bytes = GC.GetAllocatedBytesForCurrentThread() - before;

        Console.WriteLine($"10 lines, {detail}; {Batches} batches of {PerBatch}; check sum {sink:E3}");
        Figure.Print(name + "_median_us", batches[Batches / 2], "us");
        Figure.Print(name + "_allocated_bytes", bytes, "B");
        return 0;
    }
}
