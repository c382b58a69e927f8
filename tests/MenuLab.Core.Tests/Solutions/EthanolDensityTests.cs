using CsCheck;
using MenuLab.Core.Solutions;
using MenuLab.TestKit.Solutions;

namespace MenuLab.Core.Tests.Solutions;

public sealed class EthanolDensityTests
{
    public static TheoryData<double, double, double, double, double> LangeRows
    {
        get
        {
            var data = new TheoryData<double, double, double, double, double>();
            foreach (var row in Oracle.Rows("ethanol-density-checks.csv"))
            {
                data.Add(row.Number("ethanol_mass_pct"), row.Number("sg_20_4_handbook"), row.Number("abv_handbook"), row.Number("sg_formula"), row.Number("abv_formula"));
            }
            return data;
        }
    }

    public static TheoryData<double, double, double, double> GridRows
    {
        get
        {
            var data = new TheoryData<double, double, double, double>();
            foreach (var row in Oracle.Rows("ethanol-abv-grid.csv"))
            {
                data.Add(row.Number("abv_pct_20C"), row.Number("abw_pct"), row.Number("density_20C_kg_m3"), row.Number("g_ethanol_per_100mL"));
            }
            return data;
        }
    }

    [Theory]
    [MemberData(nameof(LangeRows))] // Lange's Handbook, 15th ed., Table 5.13: within 4e-5 of specific gravity, 0.1 % vol
    public void Specific_gravity_and_strength_match_the_handbook(double massPercent, double gravity, double abv, double gravityOfScript, double abvOfScript)
    {
        var density = EthanolDensity.KilogramsPerCubicMetre(massPercent / 100);
        Assert.Equal(gravity, density / 999.972, 5e-5);
        Assert.Equal(abv, EthanolDensity.AbvPercent(massPercent / 100), 0.1);
        Assert.Equal(gravityOfScript, density / 999.972, 5.1e-6);
        Assert.Equal(abvOfScript, EthanolDensity.AbvPercent(massPercent / 100), 0.0051);
    }

    [Theory]
    [MemberData(nameof(GridRows))] // regression: the reference's script
    public void Strength_by_mass_and_density_match_every_row_of_the_grid(double abv, double abw, double density, double grams)
    {
        var p = EthanolDensity.MassFraction(abv);
        Assert.Equal(abw, 100 * p, 0.00051);
        Assert.Equal(density, EthanolDensity.KilogramsPerCubicMetre(p), 0.0051);
        Assert.Equal(grams, abv * EthanolDensity.PureAt20 / 1000, 0.00051);
    }

    [Fact] // OIML R 22 (1975)
    public void Coefficients_are_those_of_the_recommendation()
    {
        var rows = Oracle.Rows("oiml-r22-coefficients.csv");
        var seen = 0;
        foreach (var row in rows)
        {
            var k = (int)row.Number("k") - 1;
            var code = (row.Text("set"), row.Text("i")) switch
            {
                ("A", _) => EthanolDensity.A[k],
                ("B", _) => EthanolDensity.B[k],
                ("C", "1") => EthanolDensity.C1[k],
                ("C", "2") => EthanolDensity.C2[k],
                ("C", "3") => EthanolDensity.C3[k],
                ("C", "4") => EthanolDensity.C4[k],
                ("C", "5") => EthanolDensity.C5[k],
                _ => double.NaN,
            };
            // The file prints 16 digits; a double may differ in the last.
            Assert.Equal(row.Number("value"), code, Math.Abs(code) * 1e-14);
            seen++;
        }
        Assert.Equal(12 + 6 + 11 + 10 + 9 + 4 + 2, seen);
    }

    [Fact]
    public void The_density_of_pure_ethanol_is_the_value_of_the_equation() =>
        Assert.Equal(EthanolDensity.PureAt20, EthanolDensity.KilogramsPerCubicMetre(1), 1e-8);

    [Fact] // serving volume at 0 °C, docs/science.md, section 0: smaller by 0.24, 0.53 and 0.73 %
    public void A_drink_shrinks_on_cooling_as_the_reference_states()
    {
        Check(10, 0.24);
        Check(20, 0.53);
        Check(25, 0.73);

        static void Check(double abv, double percent)
        {
            var p = EthanolDensity.MassFraction(abv);
            Assert.Equal(percent, 100 * (1 - EthanolDensity.KilogramsPerCubicMetre(p) / EthanolDensity.KilogramsPerCubicMetre(p, 0)), 0.006);
        }
    }

    [Fact]
    public void Strength_by_mass_comes_back_from_strength_by_volume() =>
        Gen.Double[0, 1].Sample(p => Math.Abs(EthanolDensity.MassFraction(Math.Min(100, EthanolDensity.AbvPercent(p))) - p) < 1e-10, iter: 2000);

    [Fact]
    public void What_the_equation_cannot_know_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => EthanolDensity.KilogramsPerCubicMetre(1.001));
        Assert.Throws<ArgumentOutOfRangeException>(() => EthanolDensity.KilogramsPerCubicMetre(0.4, 41));
        Assert.Throws<ArgumentOutOfRangeException>(() => EthanolDensity.MassFraction(100.1));
        Assert.Throws<ArgumentOutOfRangeException>(() => EthanolDensity.AbvPercent(double.NaN));
    }
}
