using System.Globalization;
using CsCheck;
using MenuLab.Core.Solutions;
using MenuLab.TestKit.Solutions;

namespace MenuLab.Core.Tests.Solutions;

public sealed class CarbonationTests
{
    public static TheoryData<double, string> SolubilityRows =>
        [.. Oracle.Rows("co2-solubility.csv").Select(row => new TheoryDataRow<double, string>(row.Number("temp_C"), row.Text("source")))];

    [Theory]
    [MemberData(nameof(SolubilityRows))] // Murray and Riley 1971: 1.5 %. CRC table (stated accuracy 2 %): 3.6 % at 0 °C, 2 % from 5 °C on
    public void Solubility_matches_the_measurements(double celsius, string source)
    {
        var row = Oracle.Rows("co2-solubility.csv").Single(r => r.Number("temp_C") == celsius && r.Text("source") == source);
        if (row.Has("bunsen"))
        {
            Assert.Equal(row.Number("bunsen"), Carbonation.Bunsen(celsius), 0.015 * row.Number("bunsen"));
        }
        else
        {
            Assert.Equal(row.Number("crc_mol_kg_atm"), Carbonation.Henry(celsius), (celsius == 0 ? 0.036 : 0.02) * row.Number("crc_mol_kg_atm"));
        }
        Assert.Equal(row.Number("formula_mol_kg_atm"), Carbonation.Henry(celsius), 0.0000051);
    }

    [Fact] // regression: the reference's script, printed to 0.01
    public void Volumes_match_every_cell_of_the_grid()
    {
        foreach (var row in Oracle.Rows("co2-volumes-grid.csv"))
        {
            foreach (var column in row.Columns.Skip(1))
            {
                var bar = double.Parse(column[..column.IndexOf('_', StringComparison.Ordinal)], CultureInfo.InvariantCulture);
                Assert.Equal(row.Number(column), Carbonation.Volumes(bar, row.Number("temp_C")), 0.0051);
            }
        }
    }

    [Theory] // section 8, computed there
    [InlineData(4, 1, 0, 0, 2.95)]
    [InlineData(4, 2, 0, 0, 4.42)]
    [InlineData(10, 2, 0, 0, 3.56)]
    [InlineData(20, 3, 0, 0, 3.45)]
    [InlineData(4, 2, 10, 60, 3.57)]
    public void Examples_have_the_volumes_of_the_reference(double celsius, double bar, double abv, double solids, double volumes) =>
        Assert.Equal(volumes, Carbonation.Volumes(bar, celsius, abv, solids), 0.0061);

    [Theory] // section 8, computed there
    [InlineData(4, 1.38)]
    [InlineData(20, 3.05)]
    public void Three_and_a_half_volumes_need_the_pressure_of_the_reference(double celsius, double bar) =>
        Assert.Equal(bar, Carbonation.GaugeBar(3.5, celsius), 0.0051);

    [Fact] // section 8: lager (PMC8047704) 2.69 x 0.888 and sparkling wine 2.34 x 0.843; the EU wine method's own water value 0.849 vol/bar
    public void Sugar_and_ethanol_lower_the_solubility_as_in_the_reference()
    {
        Assert.Equal(2.69, Carbonation.GramsPerLitreBar(6), 0.0051);
        Assert.Equal(0.888, Carbonation.SolubilityFactor(5, 40), 0.00051);
        Assert.Equal(2.34, Carbonation.GramsPerLitreBar(10), 0.0051);
        Assert.Equal(0.843, Carbonation.SolubilityFactor(12.5, 10), 0.00051);
        // 0.987e-5 per Pa x 0.86 = 0.849 volumes per bar at 20 °C, 1.2 % under the formula.
        Assert.Equal(0.849, Carbonation.Bunsen(20) / 1.01325, 0.0125 * 0.849);
    }

    [Fact]
    public void Beyond_15_percent_and_300_grams_nothing_is_claimed()
    {
        Assert.True(double.IsNaN(Carbonation.SolubilityFactor(15.1, 0)));
        Assert.True(double.IsNaN(Carbonation.Volumes(2, 4, 0, 301)));
        Assert.True(double.IsNaN(Carbonation.GaugeBar(2, 4, 20, 0)));
        Assert.False(double.IsNaN(Carbonation.SolubilityFactor(15, 300)));
    }

    [Fact] // section 8: one volume is 1.977 g/L and 0.0449 mol/L; 60 mL still + 120 mL at 4.0 volumes give 2.67
    public void Moles_and_volumes_go_over_into_each_other()
    {
        Assert.Equal(0.0449, Carbonation.MolesFromVolumes(1, 1000), 0.00005);
        Assert.Equal(1.977, Carbonation.MolesFromVolumes(1, 1000) * Carbonation.GramsPerMole, 0.0006);
        Assert.Equal(2.67, Carbonation.VolumesFromMoles(Carbonation.MolesFromVolumes(4, 120), 180), 0.0051);
    }

    [Fact]
    public void Pressure_comes_back_from_volumes() =>
        Gen.Select(Gen.Double[0, 4], Gen.Double[0, 60], Gen.Double[0, 15], Gen.Double[0, 300]).Sample((bar, celsius, abv, solids) =>
            Math.Abs(Carbonation.GaugeBar(Carbonation.Volumes(bar, celsius, abv, solids), celsius, abv, solids) - bar) < 1e-10, iter: 1000);

    [Fact]
    public void What_the_formula_cannot_know_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Carbonation.Henry(-0.1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Carbonation.Henry(61));
        Assert.Throws<ArgumentOutOfRangeException>(() => Carbonation.Volumes(-1, 4));
        Assert.Throws<ArgumentOutOfRangeException>(() => Carbonation.SolubilityFactor(double.NaN, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => Carbonation.VolumesFromMoles(0.1, 0));
    }
}
