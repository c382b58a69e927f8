using System.Globalization;
using CsCheck;
using MenuLab.Core.Solutions;
using MenuLab.TestKit.Solutions;

namespace MenuLab.Core.Tests.Solutions;

public sealed class SucroseDensityTests
{
    public static TheoryData<double, double, double, double> Checks
    {
        get
        {
            var data = new TheoryData<double, double, double, double>();
            foreach (var row in Oracle.Rows("sucrose-density-checks.csv"))
            {
                // Tolerances as the reference states them: the old tables drift from the newer measurement at high Brix.
                var crc = row.Text("source").StartsWith("CRC", StringComparison.Ordinal);
                var brix = row.Number("brix");
                data.Add(brix, row.Number("temp_C"), row.Number("reference_kg_m3"), !crc ? 0.5 : brix <= 40 ? 0.05 : 0.35);
            }
            return data;
        }
    }

    [Theory]
    [MemberData(nameof(Checks))] // CRC-type table and NBS Circular 457 Table 2
    public void Density_matches_the_printed_tables(double brix, double celsius, double density, double tolerance) =>
        Assert.Equal(density, SucroseDensity.KilogramsPerCubicMetre(brix, celsius), tolerance);

    [Fact] // regression: the reference's script, printed to 0.01
    public void Density_matches_every_cell_of_the_grid()
    {
        var cells = 0;
        foreach (var row in Oracle.Rows("sucrose-density-grid.csv"))
        {
            foreach (var column in row.Columns.Skip(1))
            {
                var celsius = double.Parse(column[..^1], CultureInfo.InvariantCulture);
                Assert.Equal(row.Number(column), SucroseDensity.KilogramsPerCubicMetre(row.Number("brix"), celsius), 0.00501);
                cells++;
            }
        }
        Assert.Equal(128, cells);
    }

    [Fact] // ICUMSA SPS-4, two published codes
    public void Coefficients_are_those_of_the_standard()
    {
        var rows = Oracle.Rows("sucrose-density-coefficients.csv");
        foreach (var row in rows)
        {
            Assert.Equal(row.Number("c_ik_kg_m3"), SucroseDensity.Coefficients[(int)row.Number("tau_power_i") * 6 + (int)row.Number("w_power_k") - 1]);
        }
        Assert.Equal(rows.Count, SucroseDensity.Coefficients.Count(c => c != 0));
    }

    [Theory] // worked syrups of the reference, section 1 (computed there)
    [InlineData(50.00, 1229.65, 61.48, 162.65)]
    [InlineData(60.00, 1286.61, 77.20, 129.54)]
    [InlineData(66.6666667, 1326.75, 88.45, 113.06)]
    public void Worked_syrups_have_their_density_sugar_and_yield(double brix, double density, double sugar, double yield)
    {
        Assert.Equal(density, SucroseDensity.KilogramsPerCubicMetre(brix), 0.006);
        Assert.Equal(sugar, SucroseDensity.GramsPer100Millilitres(brix), 0.006);
        Assert.Equal(yield, 100 / SucroseDensity.GramsPer100Millilitres(brix) * 100, 0.006);
    }

    [Theory] // section 1: syrups by volume at 0.845 g/mL bulk sugar, printed to 0.1 kg/m3 (with US cups: 45.9, 62.9)
    [InlineData(1, 45.84, 1207.1)]
    [InlineData(2, 62.87, 1303.7)]
    public void Syrups_by_volume_have_the_brix_and_density_of_the_reference(double parts, double brix, double density)
    {
        var sugar = parts * 0.845;
        var found = 100 * sugar / (sugar + 0.9982);
        Assert.Equal(brix, found, 0.006);
        Assert.Equal(density, SucroseDensity.KilogramsPerCubicMetre(found), 0.06);
    }

    [Theory] // CRC-type column, differences up to 0.0004 stated
    [InlineData(10, 0.6167)]
    [InlineData(20, 0.6186)]
    [InlineData(30, 0.6202)]
    [InlineData(40, 0.6225)]
    [InlineData(50, 0.6249)]
    [InlineData(60, 0.6278)]
    public void Apparent_volume_matches_the_printed_table(double brix, double millilitresPerGram) =>
        Assert.Equal(millilitresPerGram, SucroseDensity.ApparentMillilitresPerGram(brix), 0.00045);

    [Fact]
    public void Apparent_volume_does_not_jump_where_the_limit_takes_over() =>
        Assert.Equal(SucroseDensity.ApparentMillilitresPerGram(0.0000099), SucroseDensity.ApparentMillilitresPerGram(0.0000101), 1e-7);

    [Theory] // CRC-type solubility; 2:1 syrup is over the line in a refrigerator
    [InlineData(0, 64.18)]
    [InlineData(15, 66.33)]
    [InlineData(20, 67.09)]
    [InlineData(25, 67.89)]
    [InlineData(17.5, 66.71)]
    public void Saturation_matches_the_printed_table(double celsius, double brix) =>
        Assert.Equal(brix, SucroseDensity.SaturationBrix(celsius), 1e-9);

    [Fact]
    public void Brix_comes_back_from_density_and_from_grams_per_100_mL() =>
        Gen.Select(Gen.Double[0, SucroseDensity.HighestBrix], Gen.Double[0, SucroseDensity.HighestCelsius]).Sample((brix, celsius) =>
        {
            var density = SucroseDensity.KilogramsPerCubicMetre(brix, celsius);
            var grams = SucroseDensity.GramsPer100Millilitres(brix, celsius);
            return Math.Abs(SucroseDensity.BrixFrom(density, celsius) - brix) < 1e-6
                   && Math.Abs(SucroseDensity.BrixFromGramsPer100Millilitres(grams, celsius) - brix) < 1e-6;
        }, iter: 2000);

    [Fact]
    public void What_the_formula_cannot_know_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => SucroseDensity.KilogramsPerCubicMetre(85.1));
        Assert.Throws<ArgumentOutOfRangeException>(() => SucroseDensity.KilogramsPerCubicMetre(-0.1));
        Assert.Throws<ArgumentOutOfRangeException>(() => SucroseDensity.KilogramsPerCubicMetre(50, 81));
        Assert.Throws<ArgumentOutOfRangeException>(() => SucroseDensity.KilogramsPerCubicMetre(double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => SucroseDensity.BrixFrom(990));
        Assert.Throws<ArgumentOutOfRangeException>(() => SucroseDensity.BrixFromGramsPer100Millilitres(130));
        Assert.Throws<ArgumentOutOfRangeException>(() => SucroseDensity.SaturationBrix(30));
        Assert.Throws<ArgumentOutOfRangeException>(() => WaterDensity.KilogramsPerCubicMetre(-1));
        Assert.Throws<ArgumentOutOfRangeException>(() => WaterDensity.KilogramsPerCubicMetre(double.NaN));
    }
}
