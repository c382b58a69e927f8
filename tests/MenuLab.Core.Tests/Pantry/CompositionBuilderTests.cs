using CsCheck;
using MenuLab.Core.Pantry;
using MenuLab.Core.Solutions;

namespace MenuLab.Core.Tests.Pantry;

public class CompositionBuilderTests
{
    private static IngredientFigure Figure(
        string quantity, double value = double.NaN, double low = double.NaN, double high = double.NaN,
        FigureStatus status = FigureStatus.Confirmed, string origin = "house") => new(quantity, value, low, high, "test", status, origin);

    private static BuiltComposition Build(IngredientKind kind, params IngredientFigure[] figures) =>
        CompositionBuilder.Build(kind, CompositionBuilder.PerMass, figures, default);

    private static double Per100(BuiltComposition built, Component component) => 100 * built.Composition.PerGram[(int)component];

    private static Spread Spread(BuiltComposition built, SpreadSource source) => built.Composition.Spreads.ToArray().Single(s => s.Source == source);

    private static double[] AcidsPerLitre(Composition composition)
    {
        var acids = new double[Components.AcidCount];
        for (var a = 0; a < acids.Length - 1; a++)
        {
            acids[a] = 1000 * composition.GramsPerMillilitre * composition.PerGram[(int)Components.FirstAcid + a];
        }
        return acids;
    }

    private static double Ph(Composition composition) =>
        AcidBase.Solve(AcidsPerLitre(composition), 1000 * composition.GramsPerMillilitre * composition.PerGram[(int)Component.Charge]).Ph;

    // ICUMSA SPS-4: 50 Bx is 1229.65 kg/m3 at 20 °C.
    [Fact]
    public void A_syrup_takes_its_water_by_difference_and_its_density_from_the_model()
    {
        var syrup = Build(IngredientKind.SugarOrSyrup, Figure("total_sugars_g", 50), Figure("sucrose_g", 50));
        Assert.Equal(50, Per100(syrup, Component.Water), 1e-9);
        Assert.Equal(1.22965, syrup.Composition.GramsPerMillilitre, 1e-5);
        Assert.True(syrup.Composition.Caveats.HasFlag(CompositionCaveats.DensityEstimated));
        Assert.True(syrup.Composition.Knows(Composition.TotalSugarKnown | Composition.TotalAcidKnown | Composition.SolidsKnown));
        Assert.Equal("by difference", syrup.Reason(Component.Water));
        Assert.Equal(0.005, Spread(syrup, SpreadSource.Density).Relative);
    }

    [Fact]
    public void A_stated_density_is_closed_by_the_residual_and_trusted_by_how_it_became_known()
    {
        var printed = Build(IngredientKind.SugarOrSyrup, Figure("sucrose_g", 50), Figure("density_g_ml", 1.25));
        Assert.Equal(1.25, printed.Composition.GramsPerMillilitre, 1e-12);
        // 1/1.25 less 1/1.22965 mL/g.
        Assert.Equal(-0.013237, printed.Composition.PerGram[(int)Component.Residual], 1e-5);
        Assert.False(printed.Composition.Caveats.HasFlag(CompositionCaveats.DensityEstimated));
        Assert.Equal(0.01, Spread(printed, SpreadSource.Density).Relative);
        var measured = Build(IngredientKind.SugarOrSyrup, Figure("sucrose_g", 50), Figure("density_g_ml", 1.25, status: FigureStatus.Measured));
        Assert.Equal(0.001, Spread(measured, SpreadSource.Density).Relative);
    }

    [Fact]
    public void Figures_per_volume_become_figures_per_mass()
    {
        // 31.57 g of ethanol and 24 g of sugar in 100 mL.
        var liqueur = CompositionBuilder.Build(
            IngredientKind.Alcohol, CompositionBuilder.PerVolume, [Figure("ethanol_g", 31.57), Figure("total_sugars_g", 24)], default);
        var density = liqueur.Composition.GramsPerMillilitre;
        Assert.Equal(0.3157, liqueur.Composition.PerGram[(int)Component.Ethanol] * density, 1e-9);
        Assert.Equal(0.24, liqueur.Composition.PerGram[(int)Component.SugarNotToldApart] * density, 1e-9);
        // Tabarie (OIV): 40 % vol and 240 g/L lie between 0.95768 at 25 g/L and well above it; each 10 g/L adds about 3.8 kg/m3.
        Assert.InRange(density, 1.030, 1.045);
        Assert.Equal(0, liqueur.Composition.PerGram[(int)Component.Residual]);
    }

    [Fact]
    public void Sugars_that_a_source_does_not_tell_apart_are_kept_as_such()
    {
        var molasses = Build(IngredientKind.SugarOrSyrup, Figure("total_sugars_g", 74.72), Figure("sucrose_g", 29.4), Figure("glucose_g", 11.92), Figure("fructose_g", 12.79));
        Assert.Equal(20.61, Per100(molasses, Component.SugarNotToldApart), 1e-9);
        Assert.False(molasses.Composition.Knows(Component.Lactose.Bit()));
        Assert.True(molasses.Composition.Knows(Composition.TotalSugarKnown));
        var white = Build(IngredientKind.SugarOrSyrup, Figure("total_sugars_g", 99.8), Figure("sucrose_g", 99.8));
        Assert.True(white.Composition.Knows(Component.Lactose.Bit()));
        Assert.Equal("the sugars named make up the total", white.Reason(Component.Lactose));
    }

    [Fact]
    public void Sugar_of_an_aperitif_is_an_open_question_and_its_density_less_certain()
    {
        var aperitif = CompositionBuilder.Build(IngredientKind.Alcohol, CompositionBuilder.PerVolume, [Figure("ethanol_g", 8.68)], default);
        Assert.False(aperitif.Composition.Knows(Composition.TotalSugarKnown));
        Assert.Equal("", aperitif.Reason(Component.SugarNotToldApart));
        Assert.False(aperitif.Composition.Knows(Component.Quinine.Bit()));
        Assert.DoesNotContain(aperitif.Composition.Spreads.ToArray(), s => s.Source == SpreadSource.Sugar);
        Assert.Equal(0.027, Spread(aperitif, SpreadSource.Density).Relative);
    }

    [Fact]
    public void Bounds_become_their_middle_with_the_range_as_a_spread()
    {
        var near = CompositionBuilder.Build(IngredientKind.Alcohol, CompositionBuilder.PerVolume, [Figure("ethanol_g", low: 0, high: 0.39, status: FigureStatus.Memory)], default);
        var perMillilitre = near.Composition.PerGram[(int)Component.Ethanol] * near.Composition.GramsPerMillilitre;
        Assert.Equal(0.00195, perMillilitre, 1e-9);
        Assert.Equal(0.0039 / 3.92, Spread(near, SpreadSource.Ethanol).PerGram[(int)Component.Ethanol] * near.Composition.GramsPerMillilitre, 1e-9);
        Assert.True(near.Composition.Knows(Component.Ethanol.Bit()));
    }

    [Fact]
    public void At_least_alone_is_no_figure() =>
        Assert.False(Build(IngredientKind.CitrusJuice, Figure("ta_citric_g", low: 4.5)).Composition.Knows(Composition.TotalAcidKnown));

    [Fact]
    public void Herbs_hold_no_alcohol_to_speak_of_and_say_so()
    {
        var basil = Build(IngredientKind.HerbOrSpice, Figure("water_g", 92.06), Figure("protein_g", 3.15), Figure("carbohydrate_g", 2.65), Figure("fibre_g", 1.6));
        Assert.Equal(0, Per100(basil, Component.Ethanol));
        Assert.Equal("at most a trace (kind)", basil.Reason(Component.Ethanol));
        Assert.Equal(0.001 / 1.96, Spread(basil, SpreadSource.Ethanol).PerGram[(int)Component.Ethanol], 1e-12);
        Assert.Equal("none (kind)", basil.Reason(Component.Caffeine));
        // 2.65 g of carbohydrate less 1.6 of fibre is sugar or starch, nobody knows which: half each.
        Assert.Equal(0.525, Per100(basil, Component.SugarNotToldApart), 1e-9);
    }

    // Charge balance worked by hand elsewhere: 57 g/L as citric, 0.97 citric and 0.03 malic, pH 2.35 -> 0.3180 mol/L acid, 48.4 meq/L.
    [Fact]
    public void Titration_and_pH_together_give_acid_and_charge()
    {
        var lemon = CompositionBuilder.Build(
            IngredientKind.CitrusJuice, CompositionBuilder.PerVolume,
            [Figure("ta_citric_g", 5.7, status: FigureStatus.Measured), Figure("ph", 2.35, status: FigureStatus.Measured),
                Figure("citric_g", 0.97 * 192.124 / 10), Figure("malic_g", 0.03 * 134.087 / 10), Figure("total_sugars_g", 2.5)], default);
        var acids = AcidsPerLitre(lemon.Composition);
        Assert.Equal(0.3180, acids.Sum(), 0.0005);
        Assert.Equal(0.97, acids[0] / acids.Sum(), 1e-9);
        Assert.Equal(0.0484, 1000 * lemon.Composition.GramsPerMillilitre * lemon.Composition.PerGram[(int)Component.Charge], 0.0005);
        Assert.Equal(2.35, Ph(lemon.Composition), 1e-6);
        Assert.Equal(5.7, 6.40413 * AcidBase.TitratableEquivalentsPerLitre(acids, 1000 * lemon.Composition.GramsPerMillilitre * lemon.Composition.PerGram[(int)Component.Charge]), 1e-4);
        Assert.Equal(0.02, Spread(lemon, SpreadSource.Acid).Relative);
        Assert.Equal(CompositionCaveats.DensityEstimated, lemon.Composition.Caveats);
        // A 0.05 pH error moves lemon's charge by about 6.5 meq/L.
        Assert.Equal(0.0065, Math.Abs(1000 * lemon.Composition.GramsPerMillilitre * Spread(lemon, SpreadSource.Charge).PerGram[(int)Component.Charge]), 0.001);
    }

    [Fact]
    public void An_acidity_that_only_adds_up_the_acids_is_no_titration()
    {
        var juice = Build(IngredientKind.CitrusJuice, Figure("citric_g", 4.65), Figure("ta_citric_g", 2, status: FigureStatus.Computed), Figure("ph", 2.3), Figure("total_sugars_g", 2.5));
        Assert.Equal(4.65, Per100(juice, Component.Citric) * 192.124, 1e-9);
        Assert.Equal(2.3, Ph(juice.Composition), 1e-6);
        Assert.True(juice.Composition.Caveats.HasFlag(CompositionCaveats.ChargeAssumed));
        Assert.False(juice.Composition.Caveats.HasFlag(CompositionCaveats.AcidProfileAssumed));
    }

    [Fact]
    public void Titration_alone_scales_the_acids_and_takes_the_charge_from_the_minerals()
    {
        var plain = Build(IngredientKind.Juice, Figure("ta_citric_g", 0.9), Figure("density_g_ml", 1.04));
        Assert.True(plain.Composition.Caveats.HasFlag(CompositionCaveats.AcidProfileAssumed));
        Assert.True(plain.Composition.Caveats.HasFlag(CompositionCaveats.PhNotComputable));
        var withMinerals = Build(IngredientKind.Juice, Figure("ta_citric_g", 0.9), Figure("density_g_ml", 1.04), Figure("potassium_mg", 391));
        // 391 mg of potassium binds 10 mmol of acid on top of the free acid that a titration sees.
        Assert.Equal(0.1, Per100(withMinerals, Component.Charge) * 10, 1e-9);
        Assert.True(Per100(withMinerals, Component.Citric) > Per100(plain, Component.Citric) * 1.5);
        Assert.Equal(
            0.9 * 1.04, 6.40413 * AcidBase.TitratableEquivalentsPerLitre(AcidsPerLitre(withMinerals.Composition), 1000 * 1.04 * withMinerals.Composition.PerGram[(int)Component.Charge]),
            1e-4);
    }

    [Fact]
    public void Minerals_that_outweigh_the_acids_make_the_pH_not_computable()
    {
        // Raw beet, SR28 11080 and IFCT: 0.134 g of citric acid against 325 mg of potassium.
        var beet = Build(IngredientKind.Produce, Figure("water_g", 87.58), Figure("total_sugars_g", 6.76), Figure("citric_g", 0.134), Figure("potassium_mg", 325));
        Assert.True(beet.Composition.Caveats.HasFlag(CompositionCaveats.PhNotComputable));
        Assert.False(beet.Composition.Knows(Component.Charge.Bit()));
        Assert.True(beet.Composition.Knows(Composition.TotalAcidKnown));
        Assert.Equal(CompositionTopic.MissingAnion, Assert.Single(beet.Remarks).Topic);
    }

    [Fact]
    public void Sodium_is_taken_as_salt_and_brings_no_charge()
    {
        // 58.443/22.990 of the sodium: 39.34 g of sodium is 100 g of salt.
        var salted = Build(IngredientKind.Juice, Figure("citric_g", 0.3), Figure("potassium_mg", 39.1), Figure("sodium_mg", 393.4));
        Assert.Equal(1.0, Per100(salted, Component.Salt), 0.001);
        Assert.Equal(0.001, Per100(salted, Component.Charge), 1e-12);
        Assert.True(salted.Composition.Caveats.HasFlag(CompositionCaveats.ChargeAssumed));
    }

    [Fact]
    public void Unknown_acids_clear_their_bits_but_vitamin_C_stays()
    {
        var fruit = Build(IngredientKind.Produce, Figure("water_g", 85), Figure("ascorbic_g", 0.05), Figure("ph", 3.3));
        Assert.False(fruit.Composition.Knows(Composition.TotalAcidKnown));
        Assert.False(fruit.Composition.Knows(Component.Citric.Bit()));
        Assert.True(fruit.Composition.Knows(Component.Ascorbic.Bit()));
        Assert.True(fruit.Composition.Caveats.HasFlag(CompositionCaveats.PhNotComputable));
    }

    [Fact]
    public void A_sour_tea_is_asked_for_its_acid_and_a_mild_one_is_not()
    {
        Assert.False(Build(IngredientKind.TeaOrCoffee, Figure("water_g", 99.6), Figure("ph", 3.1)).Composition.Knows(Composition.TotalAcidKnown));
        Assert.True(Build(IngredientKind.TeaOrCoffee, Figure("water_g", 99.6), Figure("ph", 5.2)).Composition.Knows(Composition.TotalAcidKnown));
    }

    [Fact]
    public void Milk_has_buffers_that_the_model_lacks() =>
        Assert.True(Build(IngredientKind.Dairy, Figure("water_g", 88), Figure("protein_g", 3.2), Figure("ph", 6.6)).Composition.Caveats.HasFlag(CompositionCaveats.PhNotComputable));

    [Fact]
    public void Gas_is_dissolved_on_top_of_the_flat_record()
    {
        var cola = Build(IngredientKind.Carbonated, Figure("water_g", 89), Figure("total_sugars_g", 11), Figure("phosphoric_g", 0), Figure("co2_volumes", 3.7), Figure("density_g_ml", 1.04));
        // 3.7 volumes over 22.26 L/mol and 1.04 kg/L, 44.01 g/mol.
        Assert.Equal(3.7 / 22.26 / 10.4, Per100(cola, Component.Carbonic), 1e-9);
        Assert.Equal(89 - 3.7 / 22.26 / 10.4 * 44.0095, Per100(cola, Component.Water), 1e-9);
        Assert.True(cola.Composition.Caveats.HasFlag(CompositionCaveats.Carbonated));
        Assert.False(cola.Composition.Caveats.HasFlag(CompositionCaveats.MassOverstated));
        Assert.False(Build(IngredientKind.Carbonated, Figure("total_sugars_g", 11)).Composition.Knows(Component.Carbonic.Bit()));
    }

    [Fact]
    public void Parts_above_the_whole_take_other_carbohydrate_first_then_water_and_are_flagged()
    {
        var small = Build(IngredientKind.Juice, Figure("water_g", 90), Figure("total_sugars_g", 9), Figure("other_carb_g", 2), Figure("citric_g", 0.5));
        Assert.Equal(90, Per100(small, Component.Water), 1e-9);
        Assert.Equal(0.5, Per100(small, Component.OtherCarbohydrate), 1e-9);
        Assert.False(small.Composition.Caveats.HasFlag(CompositionCaveats.MassOverstated));
        var large = Build(IngredientKind.Juice, Figure("water_g", 84.21), Figure("total_sugars_g", 14.25), Figure("citric_g", 3.5));
        Assert.Equal(82.25, Per100(large, Component.Water), 1e-9);
        Assert.True(large.Composition.Caveats.HasFlag(CompositionCaveats.MassOverstated));
        Assert.Equal(1.96, Assert.Single(large.Remarks).Stated - 100, 1e-9);
    }

    [Fact]
    public void A_reading_outranks_the_house_and_the_house_the_shipped_figure()
    {
        var shipped = Figure("citric_g", 4, origin: "shipped 1");
        var house = Figure("citric_g", 5);
        var read = Figure("citric_g", 6, status: FigureStatus.Measured, origin: "reading");
        Assert.Equal(5, Per100(Build(IngredientKind.CitrusJuice, house, shipped), Component.Citric) * 192.124, 1e-9);
        Assert.Equal(6, Per100(Build(IngredientKind.CitrusJuice, read, house, shipped), Component.Citric) * 192.124, 1e-9);
    }

    [Fact]
    public void Quinine_takes_the_range_of_such_drinks_before_the_ceiling_of_the_law()
    {
        var both = Build(IngredientKind.Carbonated, Figure("quinine_mg", high: 8.3), Figure("quinine_mg_per_l", low: 50, high: 80), Figure("density_g_ml", 1.03));
        Assert.Equal(65 / 10.3, Per100(both, Component.Quinine), 1e-9);
        Assert.Equal(4.15, Per100(Build(IngredientKind.Carbonated, Figure("quinine_mg", high: 8.3)), Component.Quinine), 1e-9);
        var zero = Build(IngredientKind.Carbonated, Figure("quinine_mg", 0));
        Assert.True(zero.Composition.Knows(Component.Quinine.Bit()));
        Assert.Equal(0, Per100(zero, Component.Quinine));
    }

    [Fact]
    public void The_spread_of_sugar_follows_the_kind_and_goes_with_less_water()
    {
        var juice = Build(IngredientKind.Juice, Figure("water_g", 88), Figure("total_sugars_g", 10), Figure("citric_g", 0.5), Figure("ph", 3.5));
        var sugar = Spread(juice, SpreadSource.Sugar);
        Assert.Equal(0.08, sugar.Relative, 1e-12);
        Assert.Equal(0.008, sugar.PerGram[(int)Component.SugarNotToldApart], 1e-12);
        Assert.Equal(-0.008, sugar.PerGram[(int)Component.Water], 1e-12);
        Assert.Equal(-0.3, juice.Composition.SugarAcidCorrelation);
        // More acid at the same pH binds more charge: the ingredient keeps its pH.
        var acid = Spread(juice, SpreadSource.Acid);
        var more = juice.Composition.PerGram.ToArray();
        for (var i = 0; i < more.Length; i++)
        {
            more[i] += acid.PerGram[i];
        }
        var litre = 1000 * juice.Composition.GramsPerMillilitre;
        var acids = new double[Components.AcidCount];
        for (var a = 0; a < acids.Length - 1; a++)
        {
            acids[a] = litre * more[(int)Components.FirstAcid + a];
        }
        Assert.Equal(3.5, AcidBase.Solve(acids, litre * more[(int)Component.Charge]).Ph, 1e-6);
    }

    [Theory]
    [InlineData("sugr_g", 1, double.NaN, double.NaN)]
    [InlineData("sucrose_g", -1, double.NaN, double.NaN)]
    [InlineData("sucrose_g", double.PositiveInfinity, double.NaN, double.NaN)]
    [InlineData("ph", 5, 2, 3)]
    [InlineData("ph", double.NaN, 4, 3)]
    public void A_figure_that_cannot_be_is_refused(string quantity, double value, double low, double high) =>
        Assert.Throws<ArgumentException>(() => Build(IngredientKind.Juice, Figure(quantity, value, low, high)));

    [Fact]
    public void Another_basis_is_refused() =>
        Assert.Throws<ArgumentException>(() => CompositionBuilder.Build(IngredientKind.Juice, "100 ml", [], default));

    [Fact]
    public void Allergens_and_flags_are_carried_along()
    {
        var allergens = default(AllergenSet).With(Allergen.Egg, AllergenState.Present);
        var egg = CompositionBuilder.Build(IngredientKind.EggOrFoamer, CompositionBuilder.PerMass, [Figure("water_g", 87)], allergens, CompositionCaveats.RawEgg);
        Assert.Equal(AllergenState.Present, egg.Composition.Allergens[Allergen.Egg]);
        Assert.True(egg.Composition.Caveats.HasFlag(CompositionCaveats.RawEgg));
    }

    // Any mixture of figures, sensible or not: parts far above the whole, a pH against the acids, either basis.
    private static readonly Gen<(IngredientKind Kind, string Basis, IngredientFigure[] Figures)> AnyRecord =
        Gen.Select(
            Gen.Enum<IngredientKind>(), Gen.Bool,
            Gen.Select(Gen.OneOf("water_g", "total_sugars_g", "sucrose_g", "glucose_g", "protein_g", "fat_g", "fibre_g", "ash_g", "carbohydrate_g", "ethanol_g",
                "citric_g", "malic_g", "ascorbic_g", "other_carb_g"), Gen.Double[0, 60]).Array[0, 8],
            Gen.Select(Gen.OneOf("ph", "co2_volumes", "ta_citric_g", "brix", "quinine_mg", "caffeine_mg"), Gen.Double[1, 7]).Array[0, 3],
            Gen.Select(Gen.OneOf("potassium_mg", "sodium_mg", "calcium_mg", "phosphorus_mg"), Gen.Double[0, 500]).Array[0, 3],
            Gen.Double[0.7, 1.6].Nullable(0.5),
            (kind, volume, parts, readings, minerals, density) => (
                kind, volume ? CompositionBuilder.PerVolume : CompositionBuilder.PerMass,
                parts.Concat(readings).Concat(minerals).DistinctBy(x => x.Item1).Select(x => Figure(x.Item1, x.Item2))
                    .Concat(density is { } d ? [Figure("density_g_ml", d)] : []).ToArray()));

    [Fact]
    public void Whatever_the_figures_one_gram_is_one_gram_and_spreads_keep_it_so() => AnyRecord.Sample(record =>
    {
        var built = CompositionBuilder.Build(record.Kind, record.Basis, record.Figures, default);
        var ok = Math.Abs(new Liquid(built.Composition.PerGram).Grams - 1) < 1e-9 && built.Composition.PerGram[(int)Component.Water] >= 0;
        foreach (var spread in built.Composition.Spreads)
        {
            ok &= Math.Abs(new Liquid(spread.PerGram).Grams) < 1e-12;
        }
        var stated = record.Figures.FirstOrDefault(f => f.Quantity == "density_g_ml");
        return ok && (stated is null || Math.Abs(built.Composition.GramsPerMillilitre - stated.Value) < 1e-9);
    });

    // Found by the law above (seed e8i3y4ODZYj6).
    [Fact]
    public void A_strong_carbonated_thing_with_titration_and_pH_keeps_one_gram_in_its_spreads()
    {
        var built = CompositionBuilder.Build(
            IngredientKind.Carbonated, CompositionBuilder.PerVolume,
            [Figure("carbohydrate_g", 2.406e-85), Figure("fibre_g", 1.1690140845070423), Figure("ethanol_g", 38.1797527132193), Figure("malic_g", 0), Figure("ph", 5), Figure("ta_citric_g", 4.066666666666666), Figure("phosphorus_mg", 0), Figure("sodium_mg", 259.1884985884517)],
            default).Composition;
        Assert.Equal(1, new Liquid(built.PerGram).Grams, 1e-9);
        Assert.True(built.PerGram[(int)Component.Water] >= 0, $"water {built.PerGram[(int)Component.Water]}");
        foreach (var spread in built.Spreads)
        {
            Assert.Equal(0, new Liquid(spread.PerGram).Grams, 1e-12);
        }
    }

    [Fact]
    public void What_is_unknown_is_zero_in_the_vector() => AnyRecord.Sample(record =>
    {
        var built = CompositionBuilder.Build(record.Kind, record.Basis, record.Figures, default);
        for (var c = Component.Water; c <= Component.Residual; c++)
        {
            // The charge that keeps the pH of an ingredient with unknown acids is the one exception.
            if (!built.Composition.Knows(c.Bit()) && c != Component.Charge && built.Composition.PerGram[(int)c] != 0)
            {
                return false;
            }
        }
        return true;
    });

    [Fact]
    public void More_sugar_in_the_record_never_means_less_in_the_composition() =>
        Gen.Select(Gen.Double[0, 100], Gen.Double[0, 100], Gen.Double[0, 60], Gen.Double[0, 8], (sugar, more, water, acid) => (sugar, more, water, acid)).Sample(x =>
        {
            return Sugar(x.sugar + x.more) >= Sugar(x.sugar) - 1e-12;

            double Sugar(double grams) => Build(
                IngredientKind.Juice, Figure("total_sugars_g", grams), Figure("water_g", x.water), Figure("citric_g", x.acid)).Composition.Forms[(int)LinearForm.SugarGrams];
        });
}
