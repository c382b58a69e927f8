using System.Globalization;
using MenuLab.TestKit.Solutions;

namespace MenuLab.Core.Tests.Statistics;

/// <summary>The figures of other programs, beside these tests: tables, and long files of case, quantity, value (12 significant digits).</summary>
internal static class StatisticsOracle
{
    // Half a unit of the twelfth significant digit, and a little for the rounding of our own sums.
    public const double TwelveDigits = 1e-11;

    public static IReadOnlyList<OracleRow> Rows(string file) => Oracle.Rows(file, "Statistics");

    private static readonly Dictionary<string, Dictionary<(string Case, string Quantity), string>> Long = [];

    /// <summary>One figure of a long file; a quantity that is not there fails the test.</summary>
    public static double Value(string file, string group, string quantity)
    {
        Dictionary<(string, string), string> table;
        lock (Long)
        {
            if (!Long.TryGetValue(file, out table!))
            {
                // Some quantities hold a comma-free name with spaces; the value is always last.
                table = Rows(file).ToDictionary(row => (row.Text("case"), row.Text("quantity")), row => row.Text("value"));
                Long[file] = table;
            }
        }
        return double.Parse(table[(group, quantity)], CultureInfo.InvariantCulture);
    }

    public static double Anova(string group, string quantity) => Value("oracle-anova-rank.csv", group, quantity);

    public static double Panel(string group, string quantity) => Value("oracle-panel.csv", group, quantity);

    public static double Link(string group, string quantity) => Value("oracle-link-design.csv", group, quantity);

    public static double Cata(string group, string quantity) => Value("oracle-cata-misc.csv", group, quantity);

    /// <summary>Equal to a share of the expected size, or to the same amount where that is below 1e-12.</summary>
    public static void Near(double expected, double? actual, double relative = TwelveDigits, string about = "")
    {
        Assert.True(actual is { } found && Math.Abs(found - expected) <= relative * Math.Max(Math.Abs(expected), 1e-12),
            string.Create(CultureInfo.InvariantCulture, $"{about}: expected {expected:R}, got {actual:R}"));
    }

    /// <summary>Equal to an amount.</summary>
    public static void Within(double expected, double? actual, double tolerance, string about = "")
    {
        Assert.True(actual is { } found && (found == expected || Math.Abs(found - expected) <= tolerance),
            string.Create(CultureInfo.InvariantCulture, $"{about}: expected {expected:R}, got {actual:R}"));
    }
}
