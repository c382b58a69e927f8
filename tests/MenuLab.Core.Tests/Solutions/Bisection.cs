using MenuLab.TestKit.Solutions;
namespace MenuLab.Core.Tests.Solutions;

/// <summary>
/// The pH by plain halving, written out from the formulas with the constants of acids.csv: nothing shared with the code under test.
/// The ionic strength is averaged between rounds until it rests.
/// </summary>
internal static class Bisection
{
    private static readonly double[][] Pka =
        [.. Oracle.Rows("acids.csv")
            .OrderBy(row => Enum.Parse<Core.Solutions.Component>(row.Text("acid"), ignoreCase: true))
            .Select(row => ((string[])["pKa1", "pKa2", "pKa3"]).Where(row.Has).Select(row.Number).ToArray())];

    public static double Ph(double[] acids, double charge, bool ideal)
    {
        var strength = 0.1;
        var ph = 0.0;
        for (var round = 0; round < 400; round++)
        {
            var capped = Math.Min(strength, 0.5);
            var d = ideal ? 0 : 0.509 * (Math.Sqrt(capped) / (1 + Math.Sqrt(capped)) - 0.3 * capped);
            double low = -1, high = 14;
            while (high - low > 1e-13)
            {
                var middle = (low + high) / 2;
                if (middle == low || middle == high)
                {
                    break;
                }
                if (Excess(acids, charge, middle, d, out _) > 0)
                {
                    low = middle;
                }
                else
                {
                    high = middle;
                }
            }
            ph = (low + high) / 2;
            Excess(acids, charge, ph, d, out var renewed);
            if (Math.Abs(renewed - strength) < 1e-14)
            {
                break;
            }
            strength = (strength + renewed) / 2;
        }
        return ph;
    }

    private static double Excess(double[] acids, double charge, double ph, double d, out double strength)
    {
        var hydrogen = Math.Pow(10, -ph + d);
        var hydroxide = Math.Pow(10, d - 13.995 + ph);
        double negative = 0, squares = 0;
        for (var a = 0; a < acids.Length; a++)
        {
            double term = 1, sum = 1, first = 0, second = 0;
            for (var i = 1; i <= Pka[a].Length; i++)
            {
                term *= Math.Pow(10, -Pka[a][i - 1] + d * (2 * i - 1) + ph);
                sum += term;
                first += i * term;
                second += i * i * term;
            }
            negative += acids[a] * first / sum;
            squares += acids[a] * second / sum;
        }
        strength = 0.5 * (Math.Abs(charge) + hydrogen + hydroxide + squares);
        return charge + hydrogen - hydroxide - negative;
    }
}
