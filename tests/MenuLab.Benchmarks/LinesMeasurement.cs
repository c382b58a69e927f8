using MenuLab.Core.Drafts.Reading;
using MenuLab.Data.Seeding;
using MenuLab.TestKit.Reading;

namespace MenuLab.Benchmarks;

/// <summary>The reader on random and mutated lines, and on the sheet of typed texts.</summary>
internal static class LinesMeasurement
{
    public static int Run(int lines, ulong seed)
    {
        var house = SeedData.Load(SeedData.DefaultFolder);
        var reader = new DrinkReader(Vocabulary.Of(house.Pantry, house.Catalogue), house.Measures);

        var score = SheetScore.Run(reader, Path.Combine(AppContext.BaseDirectory, "Sheet"));
        Console.WriteLine($"Sheet: {score.CasesRight} of {score.Cases} texts and {score.LinesRight} of {score.Lines} lines fully right.");
        foreach (var fault in score.Faults)
        {
            Console.WriteLine("  " + fault);
        }
        Figure.Print("texts_read_percent", 100 * score.ShareRight, "%");
        Figure.Print("texts_silently_wrong", score.SilentlyWrong, "lines");

        Console.WriteLine($"Fuzz: seed {seed}.");
        var watch = System.Diagnostics.Stopwatch.StartNew();
        var fuzz = Fuzz(reader, lines, seed);
        if (fuzz.FirstFault.Length > 0)
        {
            Console.WriteLine("  first fault: " + fuzz.FirstFault);
        }
        Figure.Print("lines_fuzzed", fuzz.LinesFuzzed, "lines");
        Figure.Print("lines_lost", fuzz.LinesLost, "lines");
        Figure.Print("lines_thrown", fuzz.LinesThrown, "lines");
        Figure.Print("line_mean_us", watch.Elapsed.TotalMicroseconds * Environment.ProcessorCount / fuzz.LinesFuzzed, "us");
        return fuzz.LinesLost + fuzz.LinesThrown + score.SilentlyWrong == 0 && score.ShareRight >= 0.95 ? 0 : 1;
    }

    // Slices with seeds of their own, on all cores: a million lines in under a minute on two.
    private static FuzzCount Fuzz(DrinkReader reader, int lines, ulong seed)
    {
        const int Slice = 25_000;
        var slices = Math.Max(1, (lines + Slice - 1) / Slice);
        var counts = new FuzzCount[slices];
        Parallel.For(0, slices, i => counts[i] = ReaderFuzz.Run(reader, Math.Min(Slice, lines - i * Slice), seed + (ulong)i));
        return new FuzzCount(
            counts.Sum(c => c.LinesFuzzed), counts.Sum(c => c.LinesLost), counts.Sum(c => c.LinesThrown),
            counts.Select(c => c.FirstFault).FirstOrDefault(f => f.Length > 0) ?? "");
    }
}
