using CsCheck;
using MenuLab.Core.Solutions;
using MenuLab.TestKit.Solutions;

namespace MenuLab.Core.Tests.Solutions;

public sealed class FreezingTests
{
    public static TheoryData<double, double, double, double> EthanolRows
    {
        get
        {
            var data = new TheoryData<double, double, double, double>();
            foreach (var row in Oracle.Rows("ethanol-freezing.csv"))
            {
                // 0.5 °C against Lange; the CRC column (MEMORY) runs up to 0.6 °C off, at 24 and 30 % by 1.03 and 1.18.
                var crc = row.Text("source").StartsWith("CRC", StringComparison.Ordinal);
                var tolerance = !crc ? 0.5 : row.Number("ethanol_mass_pct") < 24 ? 0.6 : 1.2;
                data.Add(row.Number("ethanol_mass_pct"), row.Number("freezing_depression_C_handbook"), row.Number("formula"), tolerance);
            }
            return data;
        }
    }

    public static TheoryData<double, double, double> SucroseRows
    {
        get
        {
            var data = new TheoryData<double, double, double>();
            foreach (var row in Oracle.Rows("sucrose-freezing.csv"))
            {
                data.Add(row.Number("brix"), row.Number("freezing_depression_C_handbook"), row.Number("formula"));
            }
            return data;
        }
    }

    [Theory]
    [MemberData(nameof(EthanolRows))] // Lange's Handbook Table 5.13; CRC concentrative properties (MEMORY)
    public void Ethanol_and_water_freeze_as_tabulated(double massPercent, double handbook, double script, double tolerance)
    {
        var depression = -Freezing.PointCelsius(new Liquid(State.Simple(100 - massPercent, massPercent, 0)));
        Assert.Equal(handbook, depression, tolerance);
        Assert.Equal(script, depression, 0.0051);
    }

    [Theory]
    [MemberData(nameof(SucroseRows))] // CRC concentrative properties (MEMORY); 0.15 °C to 40 Brix, 0.18 at 42
    public void Sucrose_solutions_freeze_as_tabulated(double brix, double handbook, double script)
    {
        var depression = -Freezing.PointCelsius(new Liquid(State.Simple(100 - brix, 0, brix)));
        Assert.Equal(handbook, depression, brix <= 40 ? 0.15 : 0.19);
        Assert.Equal(script, depression, 0.00051);
    }

    [Theory] // CRC concentrative properties (MEMORY), section 7; and the reference's script
    [InlineData(10, 1.16, 1.168)]
    [InlineData(20, 2.70, 2.684)]
    [InlineData(30, 4.80, 4.713)]
    public void Glucose_solutions_freeze_as_tabulated(double percent, double handbook, double script)
    {
        var depression = -Freezing.PointCelsius(new Liquid(State.Of((Component.Water, 100 - percent), (Component.Glucose, percent))));
        Assert.Equal(handbook, depression, 0.15);
        Assert.Equal(script, depression, 0.00051);
    }

    [Theory] // quick values of section 7 (computed there)
    [InlineData(5, -1.7)]
    [InlineData(10, -3.5)]
    [InlineData(15, -5.5)]
    [InlineData(20, -7.9)]
    [InlineData(25, -10.6)]
    public void Spirits_and_water_freeze_at_the_quick_values(double abv, double celsius)
    {
        var p = EthanolDensity.MassFraction(abv);
        Assert.Equal(celsius, Freezing.PointCelsius(new Liquid(State.Simple(1 - p, p, 0))), 0.06);
    }

    [Theory] // CRC concentrative properties, MEMORY; two ideal particles overstate it by a tenth, 0.05 °C at the salt of a drink
    [InlineData(1, 0.59)]
    [InlineData(5, 2.98)]
    public void Brine_freezes_within_an_eighth_of_the_handbook(double percent, double handbook) =>
        Assert.Equal(handbook, -Freezing.PointCelsius(new Liquid(State.Of((Component.Water, 100 - percent), (Component.Salt, percent)))), handbook / 8);

    [Fact]
    public void Water_and_nothing_freeze_at_zero_and_a_dry_liquid_at_the_floor()
    {
        Assert.Equal(0, Freezing.PointCelsius(new Liquid(State.Simple(100, 0, 0))));
        Assert.Equal(0, Freezing.PointCelsius(new Liquid(State.Simple(0, 0, 0))));
        Assert.Equal(Freezing.LowestCelsius, Freezing.PointCelsius(new Liquid(State.Simple(0, 100, 0))));
        Assert.Equal(Freezing.LowestCelsius, Freezing.PointCelsius(new Liquid(State.Simple(10, 90, 0))));
    }

    [Fact]
    public void The_range_that_was_checked_ends_at_30_percent_ethanol_and_40_brix()
    {
        Assert.True(Freezing.IsWithinRange(new Liquid(State.Simple(71, 29, 40))));
        Assert.False(Freezing.IsWithinRange(new Liquid(State.Simple(69, 31, 0))));
        Assert.False(Freezing.IsWithinRange(new Liquid(State.Simple(59, 0, 41))));
    }

    [Fact]
    public void More_of_a_solute_never_raises_the_freezing_point() =>
        Gen.Select(State.Drinks, Gen.Int[1, (int)Component.Carbonic], Gen.Double[0, 1]).Sample((drink, component, more) =>
        {
            var after = (double[])drink.Clone();
            after[component] += ((Component)component).IsAcid() ? more / 100 : more;
            // 1e-9: with a solute more, products round in another order.
            return Freezing.PointCelsius(new Liquid(after)) <= Freezing.PointCelsius(new Liquid(drink)) + 1e-9;
        }, iter: 2000);

    [Fact]
    public void The_freezing_point_solves_the_equilibrium_by_halving_too() =>
        State.Drinks.Sample(drink =>
        {
            var celsius = Freezing.PointCelsius(new Liquid(drink));
            return Math.Abs(celsius - ByHalving(drink)) < 1e-8;
        }, iter: 500);

    // Written out from section 7, over the components that matter for it.
    private static double ByHalving(double[] drink)
    {
        (Component C, double Molar, double A, double B)[] solutes =
        [
            (Component.Ethanol, 46.068, 0.169, -12.506), (Component.Glucose, 180.156, -2.25, 0), (Component.Fructose, 180.156, -2.25, 0),
            (Component.Galactose, 180.156, -2.25, 0), (Component.Lactose, 342.297, -4.54, 0), (Component.Maltose, 342.297, -4.54, 0),
            (Component.Glycerol, 92.09, -1.16, 0), (Component.Sorbitol, 182.17, -1.65, 0), (Component.Mannitol, 182.17, -0.906, 0),
            (Component.Xylitol, 152.15, -1.66, 0), (Component.Erythritol, 122.12, -1.34, 0), (Component.OtherPolyol, 344.31, -4.54, 0),
            (Component.Citric, 1, -6.17, 0), (Component.Malic, 1, -1.82, 0), (Component.Tartaric, 1, -4.68, 0), (Component.Acetic, 1, 0, 0),
            (Component.Lactic, 1, 1.59, 0), (Component.Ascorbic, 1, 0, 0), (Component.Succinic, 1, 0, 0), (Component.Phosphoric, 1, 0, 0),
            (Component.Quinic, 1, 0, 0), (Component.Oxalic, 1, 0, 0), (Component.Carbonic, 1, 0, 0), (Component.Salt, 58.443 / 2, 0, 0),
        ];
        var water = drink[(int)Component.Water] / 18.0153;
        var ln = Term((drink[(int)Component.Sucrose] + drink[(int)Component.SugarNotToldApart]) / 342.297, -6.47, 0);
        foreach (var (c, molar, a, b) in solutes)
        {
            ln += Term(drink[(int)c] / molar, a, b);
        }
        double low = 200, high = 273.15;
        for (var i = 0; i < 100; i++)
        {
            var t = (low + high) / 2;
            var ice = -6009.5 / 8.314462 * (1 / t - 1 / 273.15) + 38.1 / 8.314462 * (273.15 / t - 1 - Math.Log(273.15 / t));
            if (ice > ln)
            {
                high = t;
            }
            else
            {
                low = t;
            }
        }
        return (low + high) / 2 - 273.15;

        double Term(double moles, double a, double b)
        {
            var x = moles / (moles + water);
            return Math.Log(1 - x) + a * x * x + b * x * x * x;
        }
    }
}
