using CsCheck;
using MenuLab.Core.Solutions;
using MenuLab.TestKit.Solutions;

namespace MenuLab.Core.Tests.Solutions;

public sealed class WaterActivityTests
{
    public static TheoryData<double, double, double, double> SucroseRows
    {
        get
        {
            var data = new TheoryData<double, double, double, double>();
            foreach (var row in Oracle.Rows("water-activity-sucrose.csv"))
            {
                data.Add(row.Number("molality"), row.Number("brix"), row.Number("aw_from_osmotic_coeff"), row.Number("aw_norrish"));
            }
            return data;
        }
    }

    public static TheoryData<string> Solutes => [.. Oracle.Rows("norrish-constants.csv").Select(row => row.Text("solute"))];

    [Theory]
    [MemberData(nameof(SucroseRows))] // osmotic coefficients of Robinson and Stokes (MEMORY): 0.001
    public void Sucrose_solutions_match_the_osmotic_coefficients(double molality, double brix, double osmotic, double script)
    {
        Assert.Equal(osmotic, WaterActivity.OfSucrose(molality), 0.001);
        Assert.Equal(script, WaterActivity.OfSucrose(molality), 0.000051);
        // Two decimals of Brix at the strongest row move the activity by 0.0001.
        Assert.Equal(script, WaterActivity.Of(new Liquid(State.Simple(100 - brix, 0, brix))), 0.00015);
    }

    [Theory] // section 10, computed there
    [InlineData(10, 0.9940)]
    [InlineData(20, 0.9859)]
    [InlineData(30, 0.9749)]
    [InlineData(40, 0.9589)]
    [InlineData(50, 0.9348)]
    [InlineData(60, 0.8953)]
    [InlineData(65, 0.8654)]
    [InlineData(67, 0.8506)]
    public void Syrups_have_the_activity_of_the_reference(double brix, double activity) =>
        Assert.Equal(activity, WaterActivity.Of(new Liquid(State.Simple(100 - brix, 0, brix))), 0.000051);

    [Theory]
    [MemberData(nameof(Solutes))] // polyols PMC2836749 Table 3; the rest MEMORY
    public void The_constant_of_each_solute_is_that_of_the_table(string solute)
    {
        var row = Oracle.Rows("norrish-constants.csv").Single(r => r.Text("solute") == solute);
        var component = solute.StartsWith("ethanol", StringComparison.Ordinal) ? Component.Ethanol
            : Enum.Parse<Component>(solute.Split(' ')[0], ignoreCase: true);
        var moles = component switch
        {
            Component.Sucrose or Component.Maltose => 1 / 342.297,
            Component.Glucose or Component.Fructose => 1 / 180.156,
            Component.Ethanol => 1 / 46.068,
            Component.Glycerol => 1 / 92.09,
            Component.Sorbitol or Component.Mannitol => 1 / 182.17,
            Component.Xylitol => 1 / 152.15,
            Component.Erythritol => 1 / 122.12,
            _ when component.IsAcid() => 1,
            _ => double.NaN,
        };
        // An amount that makes x about 0.1, where the constant shows.
        var amount = 0.6 / moles;
        var x = 0.6 / (0.6 + 100 / 18.0153);
        var expected = (1 - x) * Math.Exp(row.Number("K (ln aw = ln xw + K xs^2)") * x * x);
        Assert.Equal(expected, WaterActivity.Of(new Liquid(State.Of((Component.Water, 100), (component, amount)))), 1e-9);
    }

    [Fact] // aw = 1 - 0.033 m, MEMORY; 1 mol/kg is 0.967 in handbooks
    public void Salt_lowers_the_activity_by_a_thirtieth_per_mole() =>
        Assert.Equal(0.967, WaterActivity.Of(new Liquid(State.Of((Component.Water, 1000), (Component.Salt, 58.443)))), 1e-9);

    [Fact]
    public void Water_has_an_activity_of_one_and_a_dry_liquid_none()
    {
        Assert.Equal(1, WaterActivity.Of(new Liquid(State.Simple(100, 0, 0))));
        Assert.True(double.IsNaN(WaterActivity.Of(new Liquid(State.Simple(0, 10, 0)))));
        Assert.True(double.IsNaN(WaterActivity.Of(new Liquid(new double[Components.Count]))));
        Assert.Throws<ArgumentOutOfRangeException>(() => WaterActivity.OfSucrose(-1));
    }

    [Fact]
    public void Activity_is_the_product_of_the_solutes_alone() =>
        Gen.Select(Gen.Double[1, 40], Gen.Double[1, 40], Gen.Double[0, 20]).Sample((sucrose, fructose, ethanol) =>
        {
            double Of(params ReadOnlySpan<(Component, double)> parts) => WaterActivity.Of(new Liquid(State.Sum(State.Of((Component.Water, 100)), State.Of(parts))));
            var product = Of((Component.Sucrose, sucrose)) * Of((Component.Fructose, fructose)) * Of((Component.Ethanol, ethanol));
            return Math.Abs(Of((Component.Sucrose, sucrose), (Component.Fructose, fructose), (Component.Ethanol, ethanol)) - product) < 1e-12;
        }, iter: 1000);
}
