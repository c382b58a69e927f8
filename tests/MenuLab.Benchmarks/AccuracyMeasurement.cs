using MenuLab.Core.Balance;
using MenuLab.TestKit.Balance;
using MenuLab.TestKit.Solutions;

namespace MenuLab.Benchmarks;

/// <summary>Every reference vector: the largest error of each computation against its oracle, and how many rows are outside tolerance.</summary>
internal static class AccuracyMeasurement
{
    public static int Run()
    {
        var outside = 0;
        foreach (var group in ReferenceVectors.All.GroupBy(row => row.Text("computation")))
        {
            var worst = 0.0;
            var worstOfTolerance = 0.0;
            foreach (var row in group)
            {
                var error = Math.Abs(ReferenceVectors.Compute(row) - row.Number("expected"));
                worst = Math.Max(worst, error);
                worstOfTolerance = Math.Max(worstOfTolerance, error / row.Number("tolerance"));
                outside += error > row.Number("tolerance") ? 1 : 0;
            }
            Figure.Print("accuracy_solutions_" + Key(group.Key) + "_max_error", worst, Unit(group.Key));
            Figure.Print("accuracy_solutions_" + Key(group.Key) + "_of_tolerance", worstOfTolerance, "ratio");
        }
        // The engine as a whole, by the keys of its metrics.
        var engine = EngineOracles.All();
        foreach (var group in engine.GroupBy(o => o.Metric))
        {
            var info = Metrics.Info(group.Key);
            outside += group.Count(o => !(Math.Abs(o.Actual - o.Expected) <= o.Tolerance));
            Figure.Print("accuracy_" + info.Key + "_max_error", group.Max(o => Math.Abs(o.Actual - o.Expected)), info.Unit.Length == 0 ? "1" : info.Unit.Replace(' ', '_'));
            Figure.Print("accuracy_" + info.Key + "_of_tolerance", group.Max(o => Math.Abs(o.Actual - o.Expected) / o.Tolerance), "ratio");
        }
        Figure.Print("accuracy_rows", ReferenceVectors.All.Count + engine.Count, "rows");
        Figure.Print("accuracy_outside_tolerance", outside, "rows");
        return outside == 0 ? 0 : 1;
    }

    // "sucrose density kg/m3" is sucrose_density in kg/m3.
    private static readonly string[] Units = ["kJ per 100 mL", "kcal per 100 mL", "kg/m3", "g/(L bar)", "g/meq", "mPa s", "mL", "g sucrose per L", "pct"];

    private static string Unit(string computation) =>
        Units.FirstOrDefault(u => computation.Contains(u, StringComparison.Ordinal))?.Replace(' ', '_')
        ?? (computation.EndsWith(" g", StringComparison.Ordinal) ? "g" : computation.EndsWith(" C", StringComparison.Ordinal) ? "C" : computation.StartsWith("pH", StringComparison.Ordinal) ? "pH" : "1");

    private static string Key(string computation)
    {
        var words = computation.ToLowerInvariant().Split([' ', '/', '(', ')', ':', '-'], StringSplitOptions.RemoveEmptyEntries);
        return string.Join('_', words);
    }
}
