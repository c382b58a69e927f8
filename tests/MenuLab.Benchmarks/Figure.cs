using System.Globalization;

namespace MenuLab.Benchmarks;

/// <summary>Prints what was measured, one line a figure.</summary>
internal static class Figure
{
    public static void Print(string name, double value, string unit) =>
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"figure: {name} {value:0.######} {unit}"));
}
