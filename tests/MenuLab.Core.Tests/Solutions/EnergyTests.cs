using MenuLab.Core.Solutions;
using MenuLab.TestKit.Solutions;

namespace MenuLab.Core.Tests.Solutions;

public sealed class EnergyTests
{
    // Rows of the table that are no component of ours.
    private static readonly string[] Apart = ["salatrim", "hydrogenated starch hydrolysate", "allulose", "polyols"];

    public static TheoryData<string> Rows => [.. Oracle.Rows("energy-factors.csv").Select(row => row.Text("component")).Except(Apart)];

    [Theory]
    [MemberData(nameof(Rows))] // Regulation (EU) 1169/2011 Annex XIV; 21 CFR 101.9(c)(1) (MEMORY)
    public void Factors_of_a_component_are_those_of_the_table(string name)
    {
        var row = Oracle.Rows("energy-factors.csv").Single(r => r.Text("component") == name);
        foreach (var component in Components(name))
        {
            var grams = MenuLab.Core.Solutions.Components.GramsPerUnit(component);
            Assert.Equal(row.Number("EU_kJ_g") * grams, Energy.KilojoulesEu(component), 1e-9);
            Assert.Equal(row.Number("EU_kcal_g") * grams, Energy.KilocaloriesEu(component), 1e-9);
            // Isomalt and lactitol share a place with maltitol, whose 2.1 stands for all three.
            var us = row.Text("US_kcal_g") switch
            {
                "counted as carbohydrate 4" => 4,
                "soluble non-digestible 2; insoluble 0" => 2,
                _ when name is "isomalt" or "lactitol" => 2.1,
                _ => row.Number("US_kcal_g"),
            };
            Assert.Equal(us * grams, Energy.KilocaloriesUs(component), 1e-9);
        }
    }

    [Theory]
    [InlineData(Component.Water)]
    [InlineData(Component.Phosphoric)]
    [InlineData(Component.Carbonic)]
    [InlineData(Component.Charge)]
    [InlineData(Component.Salt)]
    [InlineData(Component.OtherSolids)]
    [InlineData(Component.Caffeine)]
    [InlineData(Component.Quinine)]
    [InlineData(Component.Bitter)]
    [InlineData(Component.Tannin)]
    [InlineData(Component.Residual)]
    public void What_the_law_gives_no_energy_has_none(Component component)
    {
        Assert.Equal(0, Energy.KilojoulesEu(component));
        Assert.Equal(0, Energy.KilocaloriesEu(component));
        Assert.Equal(0, Energy.KilocaloriesUs(component));
    }

    [Fact] // section 9: 12 g sugar and 1.2 g citric give 219.6 kJ and 51.6 kcal; 45 mL at 40 % vol hold 14.21 g, 330 mL at 5 % 13.02 g
    public void Energy_checks_of_the_reference_hold()
    {
        var forms = new double[LinearForms.Count];
        LinearForms.Of(State.Of((Component.Sucrose, 12), (Component.Citric, State.Moles(Component.Citric, 1.2))), forms);
        Assert.Equal(219.6, forms[(int)LinearForm.KilojoulesEu], 0.051);
        Assert.Equal(51.6, forms[(int)LinearForm.KilocaloriesEu], 0.051);
        Assert.Equal(14.21, 45 * 0.40 * EthanolDensity.PureAt20 / 1000, 0.0051);
    }

    private static Component[] Components(string name) => name switch
    {
        "carbohydrate except polyols" =>
        [
            Component.Sucrose, Component.Glucose, Component.Fructose, Component.Galactose, Component.Lactose, Component.Maltose,
            Component.SugarNotToldApart, Component.OtherCarbohydrate,
        ],
        "alcohol (ethanol)" => [Component.Ethanol],
        "organic acid" =>
        [
            Component.Citric, Component.Malic, Component.Tartaric, Component.Acetic, Component.Lactic, Component.Ascorbic, Component.Succinic,
            Component.Quinic, Component.Oxalic,
        ],
        "maltitol" or "isomalt" or "lactitol" => [Component.OtherPolyol],
        "protein" => [Component.Protein],
        "fat" => [Component.Fat],
        "fibre" => [Component.Fibre],
        _ => [Enum.Parse<Component>(name, ignoreCase: true)],
    };
}
