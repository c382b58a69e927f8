using CsCheck;
using MenuLab.Core.Solutions;
using MenuLab.TestKit.Solutions;

namespace MenuLab.Core.Tests.Solutions;

public sealed class AcidBaseTests
{
    // Grams of citric acid per mole of H+; as the reference states titrations.
    private const double CitricPerEquivalent = 64.041;

    public static TheoryData<string> AcidNames => [.. Oracle.Rows("acids.csv").Select(row => row.Text("acid"))];

    [Fact]
    public void The_table_of_acids_names_every_acid_of_the_state() =>
        Assert.Equal(Components.AcidCount, AcidNames.Select(name => Enum.Parse<Component>(name, ignoreCase: true)).Where(acid => acid.IsAcid()).Distinct().Count());

    [Theory]
    [MemberData(nameof(AcidNames))] // each row of the file names the source of its constants
    public void Constants_of_an_acid_are_those_of_the_table(string name)
    {
        var row = Oracle.Rows("acids.csv").Single(r => r.Text("acid") == name);
        var acid = Enum.Parse<Component>(name, ignoreCase: true);
        var index = acid - Components.FirstAcid;
        for (var i = 0; i < 3; i++)
        {
            var column = $"pKa{i + 1}";
            Assert.Equal(row.Has(column) ? row.Number(column) : double.PositiveInfinity, AcidBase.Pk[3 * index + i]);
        }
        var chargeAtEnd = AcidBase.MeanCharge(acid, 8.1, 0);
        Assert.Equal(row.Number("mean_charge_at_pH_8.1"), chargeAtEnd, 0.00051);
        if (acid == Component.Carbonic)
        {
            // Dissolved CO2 is not counted in an acidity, and its mass is that of the gas.
            Assert.Equal(0, AcidBase.ChargeAtEndPoint[index]);
            Assert.Throws<ArgumentOutOfRangeException>(() => AcidBase.EquivalentMass(acid));
            Assert.Equal(row.Number("molar_mass_g_mol") - 18.0153, Components.GramsPerUnit(acid), 0.001);
            return;
        }
        Assert.Equal(chargeAtEnd, AcidBase.ChargeAtEndPoint[index]);
        Assert.Equal(row.Number("molar_mass_g_mol"), Components.GramsPerUnit(acid));
        Assert.Equal(row.Number("equivalent_weight_g"), AcidBase.EquivalentMass(acid), 0.00051);
        Assert.Equal(row.Number("g_citric_anhydrous_per_g"), AcidBase.ConvertAcidity(1, acid, Component.Citric), 0.000051);
    }

    [Theory] // docs/science.md, section 5, computed there, printed to 0.001; carboxylic acids at 25 °C
    [InlineData(Component.Citric, 0.1, 2.083)]
    [InlineData(Component.Citric, 0.1 / 3, 2.335)]
    [InlineData(Component.Citric, 0.01, 2.623)]
    [InlineData(Component.Citric, 50 / 192.124, 1.869)]
    [InlineData(Component.Citric, 10 / 192.124, 2.232)]
    [InlineData(Component.Citric, 1.5 / 192.124, 2.684)]
    [InlineData(Component.Acetic, 0.01, 3.387)]
    [InlineData(Component.Tartaric, 0.05, 2.197)]
    [InlineData(Component.Oxalic, 0.05, 1.532)]
    [InlineData(Component.Malic, 0.05, 2.370)]
    [InlineData(Component.Carbonic, 0.0337, 3.913)]
    [InlineData(Component.Carbonic, 3 / 22.26, 3.612)]
    [InlineData(Component.Carbonic, 3.5 / 22.26, 3.578)]
    public void A_single_acid_has_the_ph_of_the_reference(Component acid, double moles, double ph) =>
        Assert.Equal(ph, AcidBase.Solve(State.Acids((acid, moles)), 0).Ph, 0.00055);

    [Theory] // section 8, computed there: carbonic acid beside alkalinity and beside citric acid
    [InlineData(3 / 22.26, 0, 0.005, 4.906)]
    [InlineData(3 / 22.26 + 0.005, 0, 0.005, 4.890)]
    [InlineData(4 / 22.26, 1.5 / 192.124, 0, 2.679)]
    public void Carbonic_acid_has_the_ph_of_the_reference(double carbonic, double citric, double charge, double ph) =>
        Assert.Equal(ph, AcidBase.Solve(State.Acids((Component.Carbonic, carbonic), (Component.Citric, citric)), charge).Ph, 0.00055);

    [Theory] // NBS standards (molality x 0.997 = mol/L), section 5; the ideal column shows what activities are for
    [InlineData(Component.Citric, 0.05, 0.05, 3.947, 3.769)]
    [InlineData(Component.Carbonic, 0.05, 0.075, 10.322, 10.004)]
    [InlineData(Component.Tartaric, 0.0341, 0.0341, 3.709, 3.556)]
    [InlineData(Component.Phosphoric, 0.05, 0.075, 7.198, 6.877)]
    public void Ideal_and_davies_ph_of_the_buffers_are_those_of_the_reference(Component acid, double molality, double cations, double ideal, double davies)
    {
        var acids = State.Acids((acid, molality * 0.997));
        Assert.Equal(ideal, AcidBase.Solve(acids, cations * 0.997, ideal: true).Ph, 0.00055);
        Assert.Equal(davies, AcidBase.Solve(acids, cations * 0.997).Ph, 0.00055);
    }

    [Fact]
    public void A_result_above_ph_8_is_kept_and_flagged()
    {
        Assert.True(AcidBase.Solve(State.Acids((Component.Carbonic, 0.04985)), 0.074775) is { OutsideRange: true, Converged: true, Ph: > 10 and < 10.01 });
        Assert.True(AcidBase.Solve(State.Acids((Component.Citric, 0.05)), 0.05) is { OutsideRange: false, Converged: true });
    }

    [Theory]
    [InlineData(1.6, 14)]
    [InlineData(20, 14)]
    [InlineData(-20, -1)]
    public void Charges_that_cannot_balance_give_the_nearer_end_and_the_flag(double charge, double end)
    {
        var solution = AcidBase.Solve(State.Acids((Component.Citric, 0.05)), charge);
        Assert.Equal(end, solution.Ph);
        Assert.True(solution.OutsideRange);
        var perAcid = new double[Components.AcidCount];
        AcidBase.Sensitivity(State.Acids((Component.Citric, 0.05)), charge, solution, perAcid, out var perCharge);
        Assert.Equal(0, perCharge);
        Assert.All(perAcid, value => Assert.Equal(0, value));
    }

    [Theory] // section 5: inferring (C mol/L, SID meq/L), computed there, printed to four and three digits
    [InlineData("lemon", 0.3180, 48.4)]
    [InlineData("lime", 0.3349, 44.7)]
    [InlineData("orange", 0.0706, 66.0)]
    [InlineData("vinegar", 0.8345, 1.6)]
    public void Total_acid_and_charge_are_inferred_as_in_the_reference(string name, double total, double charge)
    {
        var (ph, equivalents, profile) = Liquids[name];
        var inferred = AcidBase.InferFrom(ph, equivalents, profile);
        Assert.True(inferred.Converged);
        Assert.Equal(total, inferred.TotalMolesPerLitre, 0.000051);
        Assert.Equal(charge, 1000 * inferred.ChargeMolesPerLitre, 0.051);
    }

    [Theory] // section 5: mixtures, computed there; volumes in mL of each liquid, filled up with water
    [InlineData("lemon", 25, "", 0, 125, 2.497, 2.525, 11.40, 9.69)]
    [InlineData("lemon", 25, "", 0, 250, 2.589, 2.605, 5.70, 4.84)]
    [InlineData("lemon", 25, "", 0, 150, 2.520, 2.544, 9.50, 8.07)]
    [InlineData("lime", 22.5, "", 0, 150, 2.496, 2.516, 9.00, 6.71)]
    [InlineData("lemon", 22.5, "orange", 45, 150, 2.901, 2.968, 11.10, 27.07)]
    [InlineData("vinegar", 15, "", 0, 150, 2.948, 2.949, 5.33, 0.16)]
    [InlineData("lemon", 15, "vinegar", 10, 150, 2.574, 2.590, 9.25, 4.95)]
    [InlineData("lemon", 5, "", 0, 200, 2.828, 2.831, 1.43, 1.21)]
    public void A_mixture_has_the_ph_acidity_and_charge_of_the_reference(
        string first, double firstMl, string second, double secondMl, double total, double ph, double idealPh, double citricPerLitre, double charge)
    {
        var (acids, sid) = Mixture(total, (first, firstMl), (second, secondMl));
        Assert.Equal(ph, AcidBase.Solve(acids, sid).Ph, 0.0006);
        Assert.Equal(idealPh, AcidBase.Solve(acids, sid, ideal: true).Ph, 0.0006);
        Assert.Equal(citricPerLitre, AcidBase.TitratableEquivalentsPerLitre(acids, sid) * CitricPerEquivalent, 0.0051);
        Assert.Equal(charge, 1000 * sid, 0.0051);
    }

    [Fact] // section 5: lemon 5 mL in 200, the water holding 5 meq/L alkalinity
    public void Alkaline_water_lifts_the_ph_of_a_weak_lemonade()
    {
        var (acids, sid) = Mixture(200, ("lemon", 5), ("", 0));
        acids[Component.Carbonic - Components.FirstAcid] = 4.875e-3;
        Assert.Equal(3.543, AcidBase.Solve(acids, sid + 4.875e-3).Ph, 0.0006);
        Assert.Equal(3.588, AcidBase.Solve(acids, sid + 4.875e-3, ideal: true).Ph, 0.0006);
        Assert.Equal(6.09, 1000 * (sid + 4.875e-3), 0.006);
    }

    [Fact] // section 8: lemon 25 mL in 150 mL, without and with 3 volumes
    public void Carbon_dioxide_hardly_moves_a_lemonade()
    {
        var (acids, sid) = Mixture(150, ("lemon", 25), ("", 0));
        acids[Component.Carbonic - Components.FirstAcid] = 3 / 22.26;
        Assert.Equal(2.519, AcidBase.Solve(acids, sid).Ph, 0.0006);
    }

    [Fact] // section 5: dilution 5x moves lemon by 0.15, where averaged [H+] gives 3.05
    public void Ph_is_not_an_average()
    {
        var (acids, sid) = Mixture(125, ("lemon", 25), ("", 0));
        var ph = AcidBase.Solve(acids, sid).Ph;
        Assert.Equal(0.15, ph - 2.35, 0.006);
        Assert.Equal(0.55, -Math.Log10(Math.Pow(10, -2.35) / 5) - ph, 0.006);
    }

    [Fact] // section 5: minerals of juices per 100 g (USDA, MEMORY), taken as mg per 100 mL
    public void Charge_from_minerals_matches_the_sums_of_the_reference()
    {
        Assert.Equal(66, 1000 * AcidBase.ChargeFromMinerals(0, 2000, 110, 110, 0, phosphoricListed: false), 0.5);
        Assert.Equal(61, 1000 * AcidBase.ChargeFromMinerals(0, 2000, 110, 110, 5 * 30.97, phosphoricListed: false), 0.5);
        Assert.Equal(66, 1000 * AcidBase.ChargeFromMinerals(0, 2000, 110, 110, 5 * 30.97, phosphoricListed: true), 0.5);
        Assert.Equal(43.5, 1000 * AcidBase.ChargeFromMinerals(0, 1170, 140, 80, 0, phosphoricListed: false), 0.1);
        Assert.Equal(1, 1000 * AcidBase.ChargeFromMinerals(22.99, 0, 0, 0, 0, phosphoricListed: false), 1e-12);
    }

    [Fact] // section 5: the guard of 0.9 of the protons; 3 from citric and 2 from malic
    public void Minerals_that_outweigh_the_acids_are_not_credible()
    {
        var acids = State.Acids((Component.Citric, 0.010), (Component.Malic, 0.005));
        Assert.True(AcidBase.MineralChargeIsCredible(0.0359, acids));
        Assert.False(AcidBase.MineralChargeIsCredible(0.0361, acids));
        Assert.False(AcidBase.MineralChargeIsCredible(0.001, State.Acids()));
    }

    [Fact] // section 4: 10 mL needing 89.0 mL of 0.1 N; 1 g malic; 5 % vinegar; AOAC 942.15's monohydrate factor reads 9.4 % more
    public void Acidities_are_restated_as_in_the_reference()
    {
        Assert.Equal(5.70, 89.0 * 0.1 / 10 * AcidBase.EquivalentMass(Component.Citric) / 10, 0.0005);
        Assert.Equal(0.955, AcidBase.ConvertAcidity(1, Component.Malic, Component.Citric), 0.0005);
        Assert.Equal(5.332, AcidBase.ConvertAcidity(5, Component.Acetic, Component.Citric), 0.0005);
        Assert.Equal(0.8326, 50 / AcidBase.EquivalentMass(Component.Acetic), 0.00005);
        Assert.Equal(1.094, AcidBase.CitricMonohydrateGramsPerMole / Components.GramsPerUnit(Component.Citric), 0.0005);
    }

    [Fact] // section 4: 8.1 to 8.2 changes the inferred acid by 0.15 %; phosphoric counts 1.889, 1.235 g citric per g
    public void The_end_point_matters_little_and_phosphoric_counts_by_charge()
    {
        var lemon = State.Acids((Component.Citric, 0.97), (Component.Malic, 0.03));
        var change = AcidBase.TitratableEquivalentsPerLitre(lemon, 0, 8.2) / AcidBase.TitratableEquivalentsPerLitre(lemon, 0) - 1;
        Assert.Equal(0.0015, change, 0.0003);
        var cola = State.Acids((Component.Phosphoric, State.Moles(Component.Phosphoric, 1)));
        Assert.Equal(1.235, AcidBase.TitratableEquivalentsPerLitre(cola, 0) * CitricPerEquivalent, 0.0011);
    }

    [Fact]
    public void Carbon_dioxide_does_not_count_in_an_acidity()
    {
        var flat = State.Acids((Component.Citric, 0.05));
        var fizzy = State.Acids((Component.Citric, 0.05), (Component.Carbonic, 0.1));
        Assert.Equal(AcidBase.TitratableEquivalentsPerLitre(flat, 0.01), AcidBase.TitratableEquivalentsPerLitre(fizzy, 0.01));
    }

    [Fact]
    public void Figures_that_contradict_each_other_do_not_converge()
    {
        var profile = State.Acids((Component.Citric, 1));
        Assert.False(AcidBase.InferFrom(9, 0.5, profile).Converged);
        Assert.True(double.IsNaN(AcidBase.InferFrom(9, 0.5, profile).TotalMolesPerLitre));
        // pH 1 says more free acid than the titration found.
        Assert.False(AcidBase.InferFrom(1, 0.01, profile).Converged);
        Assert.Throws<ArgumentException>(() => AcidBase.InferFrom(3, 0.5, State.Acids((Component.Carbonic, 1))));
    }

    [Fact]
    public void Figures_no_liquid_can_have_are_refused()
    {
        var acids = State.Acids((Component.Citric, 0.05));
        Assert.Throws<ArgumentException>(() => AcidBase.Solve(new double[3], 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => AcidBase.Solve(acids, double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => AcidBase.Solve(State.Acids((Component.Citric, -0.01)), 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => AcidBase.Solve(State.Acids((Component.Citric, double.NaN)), 0));
        Assert.Throws<ArgumentException>(() => AcidBase.Sensitivity(acids, 0, AcidBase.Solve(acids, 0), new double[2], out _));
        Assert.Throws<ArgumentOutOfRangeException>(() => AcidBase.InferFrom(15, 0.1, acids));
        Assert.Throws<ArgumentOutOfRangeException>(() => AcidBase.ChargeFrom(double.NaN, acids));
        Assert.Throws<ArgumentOutOfRangeException>(() => AcidBase.MeanCharge(Component.Water, 3, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => AcidBase.ConvertAcidity(-1, Component.Malic, Component.Citric));
        Assert.Throws<ArgumentOutOfRangeException>(() => AcidBase.ConvertAcidity(1, Component.Carbonic, Component.Citric));
        Assert.Throws<ArgumentOutOfRangeException>(() => AcidBase.ChargeFromMinerals(-1, 0, 0, 0, 0, false));
    }

    // Laws.

    // Acids with a charge that drinks can have: a little below none, up to 0.95 of the protons to pH 8.
    private static readonly Gen<(double[] Acids, double Charge)> Drinks =
        Gen.Select(State.RandomAcids, Gen.Double[-0.05, 0.95], (acids, share) => (acids, share * Protons(acids)));

    [Fact]
    public void Newton_agrees_with_plain_bisection() =>
        Gen.Select(Drinks, Gen.Bool).Sample((drink, ideal) =>
        {
            var solved = AcidBase.Solve(drink.Acids, drink.Charge, ideal);
            return solved.Converged && Math.Abs(solved.Ph - Bisection.Ph(drink.Acids, drink.Charge, ideal)) < 1e-7;
        }, iter: 1500);

    [Fact]
    public void The_bracketed_solve_that_newton_falls_back_on_gives_the_same() =>
        Gen.Select(Drinks, Gen.Bool).Sample((drink, ideal) =>
        {
            var safe = AcidBase.SolveBracketed(drink.Acids, drink.Charge, ideal);
            var solved = AcidBase.Solve(drink.Acids, drink.Charge, ideal);
            return safe.Converged && Math.Abs(safe.Ph - solved.Ph) < 1e-7 && Math.Abs(safe.IonicStrength - solved.IonicStrength) < 1e-7;
        }, iter: 2000);

    [Fact]
    public void The_answer_balances_the_charges() =>
        Drinks.Sample(drink =>
        {
            var solved = AcidBase.Solve(drink.Acids, drink.Charge);
            return Math.Abs(AcidBase.ChargeFrom(solved.Ph, drink.Acids) - drink.Charge) < 1e-9;
        }, iter: 2000);

    [Fact]
    public void Acidity_is_linear_in_the_mix() =>
        Gen.Select(Drinks, Drinks, Gen.Double[0, 1]).Sample((a, b, share) =>
        {
            var mixed = State.Sum(State.Times(share, a.Acids), State.Times(1 - share, b.Acids));
            var charge = share * a.Charge + (1 - share) * b.Charge;
            var expected = share * AcidBase.TitratableEquivalentsPerLitre(a.Acids, a.Charge) + (1 - share) * AcidBase.TitratableEquivalentsPerLitre(b.Acids, b.Charge);
            return Math.Abs(AcidBase.TitratableEquivalentsPerLitre(mixed, charge) - expected) < 1e-12;
        }, iter: 2000);

    [Fact]
    public void Mixing_a_liquid_with_itself_leaves_its_ph() =>
        Gen.Select(Drinks, Gen.Double[0.01, 0.99]).Sample((drink, share) =>
        {
            var mixed = State.Sum(State.Times(share, drink.Acids), State.Times(1 - share, drink.Acids));
            var charge = share * drink.Charge + (1 - share) * drink.Charge;
            return Math.Abs(AcidBase.Solve(mixed, charge).Ph - AcidBase.Solve(drink.Acids, drink.Charge).Ph) < 1e-6;
        }, iter: 2000);

    [Fact]
    public void Ph_falls_when_acid_is_added() =>
        Gen.Select(Drinks, Gen.Int[0, Components.AcidCount - 1], Gen.Double[1e-4, 0.1]).Sample((drink, acid, moles) =>
        {
            var more = (double[])drink.Acids.Clone();
            more[acid] += moles;
            return AcidBase.Solve(more, drink.Charge).Ph < AcidBase.Solve(drink.Acids, drink.Charge).Ph;
        }, iter: 2000);

    [Fact]
    public void Ph_rises_when_charge_is_added() =>
        Gen.Select(Drinks, Gen.Double[1e-4, 0.01]).Sample((drink, charge) =>
            AcidBase.Solve(drink.Acids, drink.Charge + charge).Ph > AcidBase.Solve(drink.Acids, drink.Charge).Ph, iter: 2000);

    [Fact]
    public void The_ph_read_comes_back_from_what_was_inferred() =>
        Gen.Select(State.RandomAcids, Gen.Double[1.8, 6], Gen.Double[0.02, 1.2]).Sample((profile, ph, equivalents) =>
        {
            if (profile[..^1].Sum() == 0)
            {
                return true;
            }
            var inferred = AcidBase.InferFrom(ph, equivalents, profile);
            if (!inferred.Converged)
            {
                // Only where the free acid of the pH alone is more than the titration found.
                return Math.Pow(10, -ph) > 0.5 * equivalents;
            }
            var acids = State.Times(inferred.TotalMolesPerLitre / profile[..^1].Sum(), [.. profile[..^1], 0]);
            return Math.Abs(AcidBase.Solve(acids, inferred.ChargeMolesPerLitre).Ph - ph) < 1e-3
                   && Math.Abs(AcidBase.TitratableEquivalentsPerLitre(acids, inferred.ChargeMolesPerLitre) - equivalents) < 1e-9 * equivalents + 1e-12;
        }, iter: 2000);

    [Fact]
    public void Sensitivity_matches_finite_differences() =>
        Gen.Select(Drinks, Gen.Bool).Sample((drink, ideal) =>
        {
            var at = AcidBase.Solve(drink.Acids, drink.Charge, ideal);
            var perAcid = new double[Components.AcidCount];
            AcidBase.Sensitivity(drink.Acids, drink.Charge, at, perAcid, out var perCharge, ideal);
            // Where the strength stands at the cap of Davies the two sides differ; a solution next to it has no one slope.
            if (Math.Abs(at.IonicStrength - 0.5) < 0.002)
            {
                return true;
            }
            // A step that moves the pH by about 1e-4, so that rounding and curvature both stay below the tolerance.
            for (var a = 0; a < perAcid.Length; a++)
            {
                var step = Math.Min(1e-4 / Math.Abs(perAcid[a]), 1e-4);
                var moved = (double[])drink.Acids.Clone();
                moved[a] += step;
                var twice = (double[])drink.Acids.Clone();
                twice[a] += 2 * step;
                var slope = (-3 * Ph(drink.Acids, drink.Charge) + 4 * Ph(moved, drink.Charge) - Ph(twice, drink.Charge)) / (2 * step);
                if (Math.Abs(slope - perAcid[a]) > 0.001 * Math.Abs(perAcid[a]) + 1e-3)
                {
                    return false;
                }
            }
            var s = 1e-4 / Math.Abs(perCharge);
            if (Math.Abs(drink.Charge) < 2 * s)
            {
                return true; // the strength holds |charge|, which has a corner at zero
            }
            var chargeSlope = (Ph(drink.Acids, drink.Charge + s) - Ph(drink.Acids, drink.Charge - s)) / (2 * s);
            return Math.Abs(chargeSlope - perCharge) <= 0.001 * Math.Abs(perCharge);

            double Ph(double[] acids, double charge) => AcidBase.Solve(acids, charge, ideal).Ph;
        }, iter: 1000);

    private static double Protons(double[] acids) => acids.Zip((double[])[2.9, 1.95, 1.95, 1, 1, 1, 1.95, 1.8, 1, 1.95, 0.9], (moles, n) => moles * n).Sum();

    // pH read, titration in eq/L and profile by moles (section 5).
    private static readonly Dictionary<string, (double Ph, double Equivalents, double[] Profile)> Liquids = new()
    {
        ["lemon"] = (2.35, 57 / CitricPerEquivalent, State.Acids((Component.Citric, 0.97), (Component.Malic, 0.03))),
        ["lime"] = (2.30, 60 / CitricPerEquivalent, State.Acids((Component.Citric, 0.95), (Component.Malic, 0.05))),
        ["orange"] = (3.70, 8.5 / CitricPerEquivalent, State.Acids((Component.Citric, 0.83), (Component.Malic, 0.17))),
        ["vinegar"] = (2.50, 50 / 60.052, State.Acids((Component.Acetic, 1))),
    };

    private static (double[] Acids, double Charge) Mixture(double total, params ReadOnlySpan<(string Name, double Millilitres)> pours)
    {
        var acids = new double[Components.AcidCount];
        var charge = 0.0;
        foreach (var (name, millilitres) in pours)
        {
            if (name.Length > 0)
            {
                var (ph, equivalents, profile) = Liquids[name];
                var inferred = AcidBase.InferFrom(ph, equivalents, profile);
                acids = State.Sum(acids, State.Times(inferred.TotalMolesPerLitre * millilitres / total, profile));
                charge += inferred.ChargeMolesPerLitre * millilitres / total;
            }
        }
        return (acids, charge);
    }
}
