using CsCheck;
using MenuLab.Core.Solutions;
using MenuLab.TestKit.Solutions;

namespace MenuLab.Core.Tests.Solutions;

public sealed class IceTests
{
    private static readonly IceSettings Shaken = new(200, -1, 0.02, 49, 22, 500, 0.3, CapAtStart: false);
    private static readonly IceSettings Stirred = new(200, -1, 0.02, 10, 22, 300, 6, CapAtStart: true);

    // Section 7, cases A to C (water, ethanol, sucrose).
    private static readonly double[] CaseA = State.Simple(83.653, 17.363, 9.900);
    private static readonly double[] CaseB = State.Simple(103.710, 0, 9.900);
    private static readonly double[] CaseC = State.Simple(70.080, 23.677, 4.000);

    public static TheoryData<double> Strengths => [.. Oracle.Rows("ice-dilution-comparison.csv").Select(row => row.Number("initial_abv_pct"))];

    [Fact] // regression cases of section 7: tolerances 0.1 g, 0.05 °C, 0.002, and the figures printed with them
    public void Regression_cases_give_melt_temperature_dilution_volume_and_strength_of_the_reference()
    {
        Check(CaseA, Shaken, 50.00, -5.15, 0.492, 164.25, 13.39);
        Check(CaseB, Shaken, 33.23, -0.09, 0.339, 147.29, 0);
        Check(CaseC, Stirred, 36.73, -2.93, 0.408, 140.86, 21.30);

        static void Check(double[] drink, IceSettings settings, double melted, double celsius, double dilution, double volume, double abv)
        {
            var chilled = Ice.Chill(new Liquid(drink), 22, settings);
            var served = State.Sum(drink, State.Of((Component.Water, chilled.AddedWaterGrams)));
            var millilitres = Density.Millilitres(new Liquid(served));
            Assert.True(chilled.Converged);
            Assert.False(chilled.AllMelted);
            Assert.Equal(melted, chilled.MeltedGrams, 0.0051);
            Assert.Equal(melted + 4, chilled.AddedWaterGrams, 0.0051);
            Assert.Equal(196 - melted, chilled.IceLeftGrams, 0.0051);
            Assert.Equal(celsius, chilled.Celsius, 0.0051);
            Assert.Equal(dilution, Dilution(drink, chilled), 0.00051);
            Assert.Equal(volume, millilitres, 0.0051);
            Assert.Equal(abv, drink[(int)Component.Ethanol] / EthanolDensity.PureAt20 * 1e5 / millilitres, 0.0051);
        }
    }

    [Theory]
    [MemberData(nameof(Strengths))] // regression: the reference's script, printed to 0.001 and 0.1 °C
    public void Dilution_by_strength_matches_every_row_of_the_comparison(double abv)
    {
        var row = Oracle.Rows("ice-dilution-comparison.csv").Single(r => r.Number("initial_abv_pct") == abv);
        var shaken = Poured(110, abv, 9);
        var stirred = Poured(100, abv, 4);
        var fromShaker = Ice.Chill(new Liquid(shaken), 22, Shaken);
        var fromGlass = Ice.Chill(new Liquid(stirred), 22, Stirred);
        var bare = Ice.Chill(new Liquid(shaken), 22, Shaken with { VesselJoulesPerKelvin = 0, AmbientJoules = 0 });
        Assert.Equal(row.Number("shaken_model"), Dilution(shaken, fromShaker), 0.0011);
        Assert.Equal(row.Number("shaken_final_T_C"), fromShaker.Celsius, 0.0511);
        var servedVolume = Density.Millilitres(new Liquid(State.Sum(shaken, State.Of((Component.Water, fromShaker.AddedWaterGrams)))));
        Assert.Equal(row.Number("shaken_final_abv"), 110 * abv / servedVolume, 0.0511);
        Assert.Equal(row.Number("shaken_model_no_vessel_no_ambient"), Dilution(shaken, bare), 0.0011);
        Assert.Equal(row.Number("stirred_model"), Dilution(stirred, fromGlass), 0.0011);
        Assert.Equal(row.Number("stirred_final_T_C"), fromGlass.Celsius, 0.0511);
    }

    [Fact] // limit (a), by hand: 99.82 g x 4.18 x 20 / 333.55
    public void Wet_ice_in_water_melts_by_the_heat_of_the_water_alone()
    {
        var chilled = Ice.Chill(new Liquid(State.Simple(99.82, 0, 0)), 20, new IceSettings(200, 0, 0, 0, 20, 0, 0, CapAtStart: false));
        Assert.Equal(99.82 * 4.18 * 20 / 333.55, chilled.MeltedGrams, 1e-6);
        Assert.Equal(0, chilled.Celsius, 1e-12);
    }

    [Fact] // limits (b) and (c)
    public void A_liquid_at_zero_melts_nothing()
    {
        var water = State.Simple(100, 0, 0);
        var wet = Ice.Chill(new Liquid(water), 0, new IceSettings(200, 0, 0, 0, 20, 0, 0, CapAtStart: false));
        var cold = Ice.Chill(new Liquid(State.Simple(100, 0, 8)), 0, new IceSettings(200, -18, 0, 0, 20, 0, 0, CapAtStart: false));
        Assert.Equal(0, wet.MeltedGrams);
        Assert.Equal(0, wet.Celsius);
        Assert.Equal(0, cold.MeltedGrams);
        Assert.Equal(200, cold.IceLeftGrams);
        Assert.Equal(Freezing.PointCelsius(new Liquid(State.Simple(100, 0, 8))), cold.Celsius, 1e-12);
    }

    [Theory] // limit (e): case A with 100 J/K and 1500 J
    [InlineData(0, 0.562)]
    [InlineData(-1, 0.552)]
    [InlineData(-10, 0.461)]
    public void Colder_ice_dilutes_less(double iceCelsius, double dilution)
    {
        var settings = Shaken with { VesselJoulesPerKelvin = 100, AmbientJoules = 1500, IceCelsius = iceCelsius };
        Assert.Equal(dilution, Dilution(CaseA, Ice.Chill(new Liquid(CaseA), 22, settings)), 0.00051);
    }

    [Fact] // limit (f): without the heat of mixing 0.552 becomes 0.542; the energy account below shows where the heat goes
    public void The_heat_of_mixing_is_worth_a_hundredth_of_dilution()
    {
        var settings = Shaken with { VesselJoulesPerKelvin = 100, AmbientJoules = 1500 };
        var with = Ice.Chill(new Liquid(CaseA), 22, settings);
        var heat = Mixing(83.653, 17.363) - Mixing(83.653 + with.AddedWaterGrams, 17.363);
        // Taking that heat out of the ambient heat is the same as leaving it out.
        var without = Ice.Chill(new Liquid(CaseA), 22, settings with { AmbientJoules = 1500 - heat });
        Assert.Equal(0.552, Dilution(CaseA, with), 0.00051);
        Assert.Equal(0.542, Dilution(CaseA, without), 0.0011);
    }

    [Fact] // limit (g)
    public void Too_little_ice_melts_away_and_the_drink_stays_warmer()
    {
        var chilled = Ice.Chill(new Liquid(CaseB), 22, new IceSettings(20, -1, 0, 0, 22, 0, 0.3, CapAtStart: false));
        Assert.True(chilled.AllMelted);
        Assert.Equal(20, chilled.MeltedGrams);
        Assert.Equal(0, chilled.IceLeftGrams);
        Assert.Equal(5.86, chilled.Celsius, 0.0051);
        Assert.Equal(0.182, Dilution(CaseB, chilled), 0.00051);
    }

    [Theory] // ice forms, section 7: 120 mL at 5 °C, 10 % vol, 8 g/100 mL of sugar; vessel 60 J/K at 20 °C, approach 0.5
    [InlineData(150, -1, 0.02, 500, 0.19)]
    [InlineData(200, -1, 0.06, 500, 0.27)]
    [InlineData(200, -1, 0.08, 500, 0.30)]
    [InlineData(150, -18, 0, 0, 0.03)]
    public void Surface_water_is_what_tells_ice_forms_apart(double ice, double iceCelsius, double surface, double ambient, double dilution)
    {
        var drink = Poured(120, 10, 8);
        var chilled = Ice.Chill(new Liquid(drink), 5, new IceSettings(ice, iceCelsius, surface, 60, 20, ambient, 0.5, CapAtStart: false));
        Assert.Equal(dilution, Dilution(drink, chilled), 0.0051);
    }

    [Fact]
    public void Without_ice_the_vessel_and_the_air_settle_the_temperature()
    {
        var chilled = Ice.Chill(new Liquid(State.Simple(100, 0, 0)), 20, new IceSettings(0, -1, 0.02, 41.8, -10, 418, 0.3, CapAtStart: false));
        // 418 J/K at 20 °C, 41.8 J/K at -10 °C and 418 J more, over 459.8 J/K.
        Assert.Equal((8360 - 418 + 418) / 459.8, chilled.Celsius, 1e-9);
        Assert.True(chilled is { MeltedGrams: 0, AddedWaterGrams: 0, IceLeftGrams: 0, AllMelted: false, Converged: true });
    }

    [Fact]
    public void A_drink_colder_than_the_approach_is_not_warmed_by_ice()
    {
        // Single block, approach 3 K: at 0 °C a drink is already closer than that.
        var chilled = Ice.Chill(new Liquid(CaseB), 0, new IceSettings(150, -18, 0, 0, 20, 0, 3, CapAtStart: false));
        Assert.Equal(0, chilled.MeltedGrams);
        Assert.True(chilled.Celsius <= 0, $"warmed to {chilled.Celsius}");
    }

    [Fact]
    public void An_empty_shaker_and_a_neat_spirit_give_finite_figures()
    {
        foreach (var drink in (double[][])[State.Simple(0, 0, 0), State.Simple(0, 50, 0), State.Simple(30, 60, 0), State.Simple(0, 0, 50)])
        {
            var chilled = Ice.Chill(new Liquid(drink), 22, Shaken);
            Assert.True(chilled.Converged && double.IsFinite(chilled.Celsius) && chilled.MeltedGrams is >= 0 and <= 196, chilled.ToString());
        }
    }

    [Theory]
    [InlineData(double.NaN, -1, 0.02)]
    [InlineData(-1, -1, 0.02)]
    [InlineData(200, 1, 0.02)]
    [InlineData(200, -1, 1.1)]
    public void Settings_no_ice_can_have_are_refused(double grams, double celsius, double surface) =>
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            Ice.Chill(new Liquid(CaseA), 22, new IceSettings(grams, celsius, surface, 49, 22, 500, 0.3, CapAtStart: false)));

    [Theory] // interpolated tables (MEMORY): corners and a midpoint, and the two ends
    [InlineData(0, 4.18, 0, 0)]
    [InlineData(0.15, 4.29, 0.10, -656)]
    [InlineData(0.3, 4.22, 0.30, -699)]
    [InlineData(0.8, 2.97, 0.65, -349.5)]
    [InlineData(1, 2.44, 1, 0)]
    public void Heat_capacity_and_heat_of_mixing_run_straight_between_their_points(double mass, double heat, double moles, double mixing)
    {
        Assert.Equal(heat, Ice.HeatCapacity(mass), 1e-9);
        Assert.Equal(mixing, Ice.HeatOfMixing(moles), 1e-9);
    }

    // Laws.

    private static readonly Gen<(double[] Drink, double Celsius, IceSettings Settings)> Chills =
        Gen.Select(
            Gen.Select(Gen.Double[40, 150], Gen.Double[0, 0.35], Gen.Double[0, 25]),
            Gen.Double[-2, 30],
            Gen.Select(Gen.Double[0, 300], Gen.Double[-20, 0], Gen.Double[0, 0.1], Gen.Double[0, 120], Gen.Double[-10, 30], Gen.Double[0, 1500], Gen.Double[0, 6]),
            Gen.Bool,
            (parts, celsius, s, cap) => (
                State.Simple(parts.Item1 * (1 - parts.Item2), parts.Item1 * parts.Item2, parts.Item3),
                celsius,
                new IceSettings(s.Item1, s.Item2, s.Item3, s.Item4, s.Item5, s.Item6, s.Item7, cap)));

    [Fact]
    public void Energy_closes_to_a_joule_whenever_something_melts() =>
        Chills.Sample(c =>
        {
            var chilled = Ice.Chill(new Liquid(c.Drink), c.Celsius, c.Settings);
            return chilled.Converged && (chilled.MeltedGrams == 0 || Math.Abs(EnergyLeft(c.Drink, c.Celsius, c.Settings, chilled)) < 1);
        }, iter: 3000);

    [Fact]
    public void The_balance_is_zero_at_the_answer_and_agrees_with_the_account() =>
        Chills.Sample(c =>
        {
            var chilled = Ice.Chill(new Liquid(c.Drink), c.Celsius, c.Settings);
            var left = Ice.HeatLeftOver(new Liquid(c.Drink), c.Celsius, c.Settings, chilled.MeltedGrams, chilled.Celsius);
            var account = EnergyLeft(c.Drink, c.Celsius, c.Settings, chilled);
            return Math.Abs(left - account) < 1e-6
                   && (chilled.MeltedGrams == 0 || chilled.AllMelted
                       || Math.Abs(Ice.HeatBalance(new Liquid(c.Drink), c.Celsius, c.Settings, chilled.MeltedGrams)) < 1e-4);
        }, iter: 2000);

    [Fact]
    public void Ice_is_neither_made_nor_lost() =>
        Chills.Sample(c =>
        {
            var chilled = Ice.Chill(new Liquid(c.Drink), c.Celsius, c.Settings);
            return Math.Abs(chilled.AddedWaterGrams + chilled.IceLeftGrams - c.Settings.IceGrams) < 1e-9
                   && chilled.MeltedGrams >= 0 && chilled.IceLeftGrams >= 0
                   && chilled.AllMelted == (chilled.IceLeftGrams == 0 && c.Settings.IceGrams > 0);
        }, iter: 2000);

    [Fact]
    public void Dilution_rises_with_start_temperature_vessel_and_ambient_heat() =>
        Gen.Select(Chills, Gen.Double[0.5, 5]).Sample((c, more) =>
        {
            var first = Ice.Chill(new Liquid(c.Drink), c.Celsius, c.Settings);
            var before = first.MeltedGrams;
            // Where the end is capped at the start, a warmer start also lets the drink end warmer; the law is for the others.
            return (c.Settings.CapAtStart || Rises(Melt(c.Celsius + more, c.Settings)))
                   && Rises(Melt(c.Celsius, c.Settings with { AmbientJoules = c.Settings.AmbientJoules + 50 * more }))
                   // A vessel only brings heat when it is warmer than the drink ends; 30 °C always is.
                   && Melt(c.Celsius, Warm(c.Settings) with { VesselJoulesPerKelvin = c.Settings.VesselJoulesPerKelvin + more }) >= Melt(c.Celsius, Warm(c.Settings));

            double Melt(double celsius, IceSettings settings) => Ice.Chill(new Liquid(c.Drink), celsius, settings).MeltedGrams;
            bool Rises(double after) => after > before || (after == before && (before == 0 || first.AllMelted));
            static IceSettings Warm(IceSettings settings) => settings with { VesselCelsius = 30 };
        }, iter: 1500);

    [Fact]
    public void Dilution_never_rises_with_colder_ice() =>
        Gen.Select(Chills, Gen.Double[0.1, 10]).Sample((c, colder) =>
            Ice.Chill(new Liquid(c.Drink), c.Celsius, c.Settings with { IceCelsius = c.Settings.IceCelsius - colder }).MeltedGrams
            <= Ice.Chill(new Liquid(c.Drink), c.Celsius, c.Settings).MeltedGrams + 1e-9, iter: 2000);

    [Fact]
    public void The_balance_gives_the_slope_of_the_answer()
    {
        // dM/dT by the implicit derivative -(dg/dT)/(dg/dM) against solving again.
        const double h = 1e-3;
        var melted = Ice.Chill(new Liquid(CaseA), 22, Shaken).MeltedGrams;
        var byStart = (Ice.HeatBalance(new Liquid(CaseA), 22 + h, Shaken, melted) - Ice.HeatBalance(new Liquid(CaseA), 22 - h, Shaken, melted)) / (2 * h);
        var byMelt = (Ice.HeatBalance(new Liquid(CaseA), 22, Shaken, melted + h) - Ice.HeatBalance(new Liquid(CaseA), 22, Shaken, melted - h)) / (2 * h);
        var solved = (Ice.Chill(new Liquid(CaseA), 22 + h, Shaken).MeltedGrams - Ice.Chill(new Liquid(CaseA), 22 - h, Shaken).MeltedGrams) / (2 * h);
        Assert.Equal(solved, -byStart / byMelt, 1e-5 * solved);
    }

    private static double Dilution(double[] drink, Chilled chilled) => chilled.AddedWaterGrams / 0.9982 / Density.Millilitres(new Liquid(drink));

    // So many mL of a drink of a strength and g of sugar per 100 mL; water fills up (found by halving).
    private static double[] Poured(double millilitres, double abv, double sugar)
    {
        var ethanol = millilitres * abv / 100 * EthanolDensity.PureAt20 / 1000;
        double low = 0, high = millilitres;
        for (var i = 0; i < 80; i++)
        {
            var water = (low + high) / 2;
            if (Density.Millilitres(new Liquid(State.Simple(water, ethanol, sugar * millilitres / 100))) > millilitres)
            {
                high = water;
            }
            else
            {
                low = water;
            }
        }
        return State.Simple(low, ethanol, sugar * millilitres / 100);
    }

    // The account of section 7, written out again term by term.
    private static double EnergyLeft(double[] drink, double start, IceSettings s, Chilled end)
    {
        double water = drink[(int)Component.Water], ethanol = drink[(int)Component.Ethanol], sucrose = drink[(int)Component.Sucrose];
        var surface = s.IceGrams * s.SurfaceWaterFraction;
        var dry = s.IceGrams - surface;
        var heat = (water + ethanol) * Ice.HeatCapacity(ethanol / (water + ethanol)) + 1.30 * sucrose;
        return heat * (start - end.Celsius)
               + s.VesselJoulesPerKelvin * (s.VesselCelsius - end.Celsius)
               + s.AmbientJoules
               + surface * 4.20 * (0 - end.Celsius)
               + Mixing(water, ethanol) - Mixing(water + surface + end.MeltedGrams, ethanol)
               - end.MeltedGrams * (-2.06 * s.IceCelsius + 333.55 + 4.20 * end.Celsius)
               - (dry - end.MeltedGrams) * 2.06 * (end.Celsius - s.IceCelsius);
    }

    private static double Mixing(double water, double ethanol)
    {
        var moles = water / 18.0153 + ethanol / 46.068;
        return moles * Ice.HeatOfMixing(ethanol / 46.068 / moles);
    }
}
