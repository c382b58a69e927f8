using MenuLab.Core.Solutions;
using MenuLab.TestKit.Solutions;

namespace MenuLab.Core.Tests.Solutions;

public sealed class SweetnessTests
{
    // Rows that are no component of ours: blends, sugars that the composition does not tell apart, and sweeteners by the milligram.
    private static readonly string[] Apart =
    [
        "invert sugar", "isomaltulose", "trehalose", "tagatose", "allulose", "maltodextrin", "polydextrose", "maltitol", "isomalt", "lactitol",
        "steviol glycosides", "sucralose", "aspartame", "acesulfame potassium", "saccharin (sodium)", "cyclamate (sodium)", "thaumatin",
    ];

    public static TheoryData<string> Components => [.. Oracle.Rows("sweeteners.csv").Select(row => row.Text("sweetener")).Except(Apart)];

    [Fact]
    public void Every_sugar_and_polyol_of_its_own_has_a_row()
    {
        var named = Components.Select(name => Of(name)).Order();
        Component[] expected =
        [
            Component.Sucrose, Component.Glucose, Component.Fructose, Component.Galactose, Component.Lactose, Component.Maltose,
            Component.Glycerol, Component.Sorbitol, Component.Mannitol, Component.Xylitol, Component.Erythritol,
        ];
        Assert.Equal(expected, named);
    }

    [Theory]
    [MemberData(nameof(Components))]
    public void Sweetness_and_volume_of_a_component_are_those_of_the_table(string name)
    {
        var row = Oracle.Rows("sweeteners.csv").Single(r => r.Text("sweetener") == name);
        var factor = Sweetness.Factor(Of(name));
        Assert.Equal(row.Number("default_relative_sweetness"), factor.Default);
        Assert.Equal(row.Number("low"), factor.Low);
        Assert.Equal(row.Number("high"), factor.High);
        if (row.Text("apparent_specific_volume_mL_g") != "formula")
        {
            Assert.Equal(row.Number("apparent_specific_volume_mL_g"), Density.ApparentMillilitresPerUnit(Of(name)));
        }
        Assert.Equal(row.Number("kcal_g_EU"), Energy.KilocaloriesEu(Of(name)));
    }

    [Fact] // published: invert 1.0 (tolerance 0.6 on 10 g), lactose 0.77 to 1.9 on 4.8 g, HFCS-55 1.0 to 1.2, honey 71.1 (section 3)
    public void Blends_have_the_sweetness_of_the_reference()
    {
        Assert.Equal(9.5, Sum((Component.Glucose, 5), (Component.Fructose, 5)), 1e-9);
        Assert.Equal(10, Sum((Component.Glucose, 5), (Component.Fructose, 5)), 0.6);
        Assert.Equal(0.96, Sum((Component.Lactose, 4.8)), 1e-9);
        Assert.Equal(0.954, Sum((Component.Fructose, 0.55), (Component.Glucose, 0.42), (Component.OtherCarbohydrate, 0.03)), 1e-9);
        Assert.Equal(71.1, Sum((Component.Fructose, 38), (Component.Glucose, 31), (Component.Maltose, 7), (Component.Sucrose, 1)), 0.051);

        static double Sum(params ReadOnlySpan<(Component, double)> parts)
        {
            var forms = new double[LinearForms.Count];
            LinearForms.Of(State.Of(parts), forms);
            return forms[(int)LinearForm.SweetnessGrams];
        }
    }

    [Fact]
    public void The_default_lies_between_low_and_high()
    {
        foreach (var component in Enum.GetValues<Component>())
        {
            var factor = Sweetness.Factor(component);
            Assert.True(factor.Low <= factor.Default && factor.Default <= factor.High, component.ToString());
        }
    }

    public static TheoryData<string> Hyperbolas => [.. Oracle.Rows("sweetener-hyperbola.csv").Select(row => row.Text("sweetener"))];

    [Theory]
    [MemberData(nameof(Hyperbolas))] // DuBois et al. 1991, MEMORY
    public void A_high_potency_sweetener_follows_its_hyperbola(string name)
    {
        var row = Oracle.Rows("sweetener-hyperbola.csv").Single(r => r.Text("sweetener") == name);
        var sweetener = name switch
        {
            "rebaudioside A" => HighPotencySweetener.RebaudiosideA,
            "aspartame" => HighPotencySweetener.Aspartame,
            "acesulfame potassium" => HighPotencySweetener.AcesulfamePotassium,
            "saccharin sodium" => HighPotencySweetener.SaccharinSodium,
            "cyclamate sodium" => HighPotencySweetener.CyclamateSodium,
            _ => throw new NotSupportedException(name),
        };
        Assert.Equal(row.Number("Rmax_pct_sucrose_equiv"), sweetener.CeilingPercentSucrose);
        Assert.Equal(row.Number("k_mg_L"), sweetener.HalfMilligramsPerLitre);
        Assert.Equal(row.Number("check_R"), Sweetness.HighPotency(sweetener, row.Number("check_C_mg_L")), 1e-9);
        Assert.InRange(Sweetness.HighPotency(sweetener, 1e6), 0.99 * sweetener.CeilingPercentSucrose, sweetener.CeilingPercentSucrose);
        Assert.Equal(0, Sweetness.HighPotency(sweetener, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => Sweetness.HighPotency(sweetener, double.NaN));
    }

    private static Component Of(string name) => Enum.Parse<Component>(name.Split(' ')[0], ignoreCase: true);
}
