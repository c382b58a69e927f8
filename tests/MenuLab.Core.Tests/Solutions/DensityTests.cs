using CsCheck;
using MenuLab.Core.Solutions;
using MenuLab.TestKit.Solutions;

namespace MenuLab.Core.Tests.Solutions;

public sealed class DensityTests
{
    // 45 mL of spirit at 40 % vol, 22.5 mL of lime (1.035 g/mL, 2 % sugar as sucrose, 6 g/100 mL acid as citric), 22.5 mL of 1:1 syrup.
    [Fact] // docs/science.md, section 2 (computed there)
    public void The_worked_drink_has_the_volume_strength_sugar_and_acid_of_the_reference()
    {
        Check(State.WorkedDrink(), 89.95, 20.01, 15.90, 1.501);
        Check(State.Sum(State.WorkedDrink(), State.Of((Component.Water, 45))), 135.15, 13.32, 10.58, 0.999);

        static void Check(double[] state, double volume, double abv, double sugar, double acid)
        {
            var millilitres = Density.Millilitres(new Liquid(state));
            Assert.Equal(volume, millilitres, 0.006);
            Assert.Equal(abv, 100 * state[(int)Component.Ethanol] / EthanolDensity.PureAt20 * 1000 / millilitres, 0.006);
            Assert.Equal(sugar, 100 * state[(int)Component.Sucrose] / millilitres, 0.006);
            Assert.Equal(acid, 100 * state[(int)Component.Citric] * 192.124 / millilitres, 0.0006);
        }
    }

    [Theory] // contraction, docs/science.md, section 2 (computed there; the first is the textbook's "about 96.4")
    [InlineData(50, 100, 50, 96.46, 51.83)]
    [InlineData(500, 96, 500, 969.6, 49.51)]
    [InlineData(60, 40, 30, 89.87, 26.71)]
    [InlineData(750, 40, 250, 998.4, 30.05)]
    public void Ethanol_and_water_contract_as_tabulated(double spirit, double abv, double water, double volume, double mixedAbv)
    {
        var p = EthanolDensity.MassFraction(abv);
        var grams = spirit * EthanolDensity.KilogramsPerCubicMetre(p) / 1000;
        var state = State.Simple(grams * (1 - p) + water * EthanolDensity.KilogramsPerCubicMetre(0) / 1000, grams * p, 0);
        var millilitres = Density.Millilitres(new Liquid(state));
        Assert.Equal(volume, millilitres, volume > 500 ? 0.06 : 0.006);
        Assert.Equal(mixedAbv, spirit * abv / millilitres, 0.006);
    }

    [Fact]
    public void An_empty_liquid_has_no_volume_and_finite_partial_volumes()
    {
        var partial = new double[Components.Count];
        Assert.Equal(0, Density.Millilitres(new Liquid(new double[Components.Count]), partial));
        Assert.All(partial, value => Assert.True(double.IsFinite(value)));
        Assert.Equal(1000 / 998.20123, partial[(int)Component.Water], 1e-9);
        Assert.Equal(1000 / 789.2391233, partial[(int)Component.Ethanol], 1e-9);
    }

    [Theory]
    [InlineData(Component.Water, 1 / 0.99820123)]
    [InlineData(Component.Ethanol, 1 / 0.7892391233)]
    [InlineData(Component.Residual, 1)]
    [InlineData(Component.Glycerol, 0.769)]
    [InlineData(Component.Salt, 0.33)]
    [InlineData(Component.Caffeine, 0)]
    [InlineData(Component.Charge, 0)]
    public void A_liquid_of_one_component_has_that_components_volume(Component component, double millilitres) =>
        Assert.Equal(millilitres, Density.Millilitres(new Liquid(State.Of((component, 1)))), 1e-12);

    [Fact] // sucrose crystals are 1.587 g/mL (handbook, MEMORY); the equation ends at 85 Brix
    public void Dry_sugar_is_near_the_density_of_its_crystals() =>
        Assert.Equal(1 / 1.587, Density.Millilitres(new Liquid(State.Of((Component.Sucrose, 1)))), 0.02);

    [Fact] // 5 g/100 mL, one litre: ICUMSA through the liquid against ICUMSA alone
    public void A_syrup_as_a_liquid_has_the_density_of_the_sucrose_equation()
    {
        foreach (var brix in (double[])[1, 10, 30, 50, 66.67])
        {
            var state = State.Simple(100 - brix, 0, brix);
            // The two standards' waters differ by 2 mg/L.
            Assert.Equal(SucroseDensity.KilogramsPerCubicMetre(brix), 1e5 / Density.Millilitres(new Liquid(state)), 0.004);
        }
    }

    [Fact] // 20 % brine 1.148 g/mL, 88 % lactic 1.206, 85 % phosphoric 1.685: handbook values, MEMORY
    public void Concentrated_brine_and_acids_are_within_one_percent_of_handbook_densities()
    {
        Check(State.Of((Component.Water, 80), (Component.Salt, 20)), 1.148, 0.005);
        Check(State.Of((Component.Water, 12), (Component.Lactic, State.Moles(Component.Lactic, 88))), 1.206, 0.01);
        Check(State.Of((Component.Water, 15), (Component.Phosphoric, State.Moles(Component.Phosphoric, 85))), 1.685, 0.005);
        Check(State.Of((Component.Water, 95), (Component.Acetic, State.Moles(Component.Acetic, 5))), 1.0055, 0.003);

        static void Check(double[] state, double density, double relative) =>
            Assert.Equal(density, 100 / Density.Millilitres(new Liquid(state)), density * relative);
    }

    [Fact]
    public void Volume_grows_in_proportion_when_all_parts_do() =>
        Gen.Select(State.Drinks, Gen.Double[0.01, 100]).Sample((drink, factor) =>
        {
            var one = Density.Millilitres(new Liquid(drink));
            var many = Density.Millilitres(new Liquid(State.Times(factor, drink)));
            return Math.Abs(many - factor * one) <= 1e-12 * many;
        }, iter: 2000);

    [Fact]
    public void Partial_volumes_times_amounts_add_up_to_the_volume() =>
        State.Drinks.Sample(drink =>
        {
            var partial = new double[Components.Count];
            var volume = Density.Millilitres(new Liquid(drink), partial);
            var sum = drink.Zip(partial, (part, each) => part * each).Sum();
            return Math.Abs(sum - volume) <= 1e-11 * volume && volume == Density.Millilitres(new Liquid(drink));
        }, iter: 2000);

    [Fact]
    public void Partial_volumes_match_finite_differences() =>
        State.Drinks.Sample(drink =>
        {
            var partial = new double[Components.Count];
            Density.Millilitres(new Liquid(drink), partial);
            for (var c = 0; c < drink.Length; c++)
            {
                var step = 1e-4 * Math.Max(Math.Abs(drink[c]), 0.1);
                // At the edge of an absent component only one side exists; there three points give the same order.
                var difference = drink[c] > step
                    ? (At(c, step) - At(c, -step)) / (2 * step)
                    : (-3 * At(c, 0) + 4 * At(c, step) - At(c, 2 * step)) / (2 * step);
                if (Math.Abs(difference - partial[c]) > 1e-6 * Math.Max(1, Math.Abs(partial[c])))
                {
                    return false;
                }
            }
            return true;

            double At(int component, double by)
            {
                var moved = (double[])drink.Clone();
                moved[component] += by;
                return Density.Millilitres(new Liquid(moved));
            }
        }, iter: 500);

    [Fact]
    public void A_span_of_the_wrong_length_is_refused()
    {
        Assert.Throws<ArgumentException>(() => Density.Millilitres(new Liquid(new double[Components.Count]), new double[3]));
        Assert.Throws<ArgumentException>(() => Density.Millilitres(new Liquid(new double[3])));
    }
}
