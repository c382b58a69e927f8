using CsCheck;
using MenuLab.Core.Statistics;
using static MenuLab.Core.Tests.Statistics.StatisticsOracle;

namespace MenuLab.Core.Tests.Statistics;

public sealed class StudentizedRangeTests
{
    [Fact] // SciPy 1.10.1 and an independent quadrature; R is off by 9e-5 at two degrees and is not asked
    public void Every_chance_is_that_of_two_other_programs()
    {
        var rows = Rows("studentized-range-cdf.csv");
        Assert.Equal(336, rows.Count);
        foreach (var row in rows)
        {
            var found = StudentizedRange.Lower(row.Number("q"), (int)row.Number("k"), Degrees(row.Text("df")));
            var about = $"q {row.Text("q")}, k {row.Text("k")}, df {row.Text("df")}";
            Within(row.Number("p_independent"), found, 1e-11, about);
            Within(row.Number("p_scipy"), found, 1e-11, about);
        }
    }

    [Fact] // Brent on an independent quadrature, 10 decimals
    public void Every_quantile_is_that_of_the_table()
    {
        var rows = Rows("studentized-range-quantiles.csv");
        Assert.Equal(900, rows.Count);
        foreach (var row in rows)
        {
            Within(row.Number("q_independent"),
                StudentizedRange.Quantile(1 - row.Number("alpha"), (int)row.Number("k"), Degrees(row.Text("df"))), 1e-7,
                $"k {row.Text("k")}, df {row.Text("df")}, alpha {row.Text("alpha")}");
        }
    }

    [Theory] // the usual printed tables, two decimals (MEMORY)
    [InlineData(0.95, 3, 10, 3.88)]
    [InlineData(0.95, 4, 24, 3.90)]
    [InlineData(0.95, 2, 8, 3.26)]
    [InlineData(0.95, 10, 60, 4.65)]
    [InlineData(0.99, 5, 20, 5.29)]
    public void Quantiles_are_those_that_books_print(double share, int means, double degrees, double printed) =>
        Within(printed, StudentizedRange.Quantile(share, means, degrees), 0.005);

    [Theory] // the definition by plain sums over fixed ends: with many means and few degrees the weight lies far above s = 1
    [InlineData(1.3, 100, 2)]
    [InlineData(1.65, 100, 2)]
    [InlineData(1.3, 100, 5)]
    public void A_hundred_means_keep_what_large_scales_add(double q, int means, double degrees)
    {
        double Range(double w) =>
            means * 0.02 * Enumerable.Range(-425, 851).Select(i => i * 0.02).Sum(z => Distributions.NormalDensity(z) * Math.Pow(Distributions.NormalLower(z) - Distributions.NormalLower(z - w), means - 1));
        var half = degrees / 2;
        var factor = 2 * Math.Pow(half, half) / MathNet.Numerics.SpecialFunctions.Gamma(half);
        var sum = 0.01 * Enumerable.Range(-400, 701).Select(i => i * 0.01).Sum(u => factor * Math.Exp(degrees * u - half * Math.Exp(2 * u)) * Range(q * Math.Exp(u)));
        Assert.True(sum > 1e-9);
        Within(sum, StudentizedRange.Lower(q, means, degrees), 1e-11);
    }

    [Fact] // two means: the range is sqrt 2 times the size of Student's t
    public void Two_means_come_down_to_Students_t() =>
        Gen.Select(Gen.Double[0.1, 8], Gen.Int[2, 60]).Sample((q, degrees) =>
            Math.Abs(StudentizedRange.Lower(q, 2, degrees) - (1 - Distributions.StudentTwoSided(q / Math.Sqrt(2), degrees))) < 1e-11, iter: 200);

    [Fact]
    public void More_means_never_make_a_range_more_likely_to_stay_below() =>
        Gen.Select(Gen.Double[0.1, 8], Gen.Int[2, 19], Gen.Int[2, 60]).Sample((q, means, degrees) =>
            StudentizedRange.Lower(q, means + 1, degrees) <= StudentizedRange.Lower(q, means, degrees) + 1e-13, iter: 200);

    [Fact]
    public void Zero_has_no_chance_and_infinity_all_of_it()
    {
        Assert.Equal(0, StudentizedRange.Lower(0, 4, 24), 1e-15);
        Assert.Equal(1, StudentizedRange.Lower(double.PositiveInfinity, 4, 24));
        Assert.Equal(1, StudentizedRange.Lower(200, 4, 24), 1e-12);
    }

    [Theory]
    [InlineData(-1, 3, 10)]
    [InlineData(double.NaN, 3, 10)]
    [InlineData(1, 1, 10)]
    [InlineData(1, 101, 10)]
    [InlineData(1, 3, 1.9)]
    [InlineData(1, 3, double.NaN)]
    public void What_lies_outside_is_refused(double q, int means, double degrees) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => StudentizedRange.Lower(q, means, degrees));

    private static double Degrees(string text) => text == "Inf" ? double.PositiveInfinity : double.Parse(text, System.Globalization.CultureInfo.InvariantCulture);
}
