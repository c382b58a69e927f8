using MenuLab.Core.Pantry;

namespace MenuLab.Core.Tests.Pantry;

public class CompositionCheckTests
{
    private static IReadOnlyList<CompositionRemark> Remarks(params (string Quantity, double Value)[] figures) =>
        CompositionCheck.Remarks(CompositionBuilder.PerMass, [.. figures.Select(Figure)]);

    private static IngredientFigure Figure((string Quantity, double Value) f) =>
        new(f.Quantity, f.Value, double.NaN, double.NaN, "USDA SR28", FigureStatus.Confirmed, "shipped 1");

    // SR28 02030, whose parts are from different samples: 12.46 + 10.39 + 3.26 + 63.95 + 4.49 = 94.55.
    [Fact]
    public void Black_pepper_does_not_add_up()
    {
        var remark = Assert.Single(Remarks(("water_g", 12.46), ("protein_g", 10.39), ("fat_g", 3.26), ("carbohydrate_g", 63.95), ("ash_g", 4.49)));
        Assert.Equal((CompositionTopic.Mass, 94.55), (remark.Topic, Math.Round(remark.Stated, 2)));
    }

    // SR28 02048: 93.81 + 0.93 + 0.17 ash leaves room for 5.09 g of acetic acid.
    [Fact]
    public void Vinegar_adds_up_once_its_acid_is_named()
    {
        (string, double)[] record = [("water_g", 93.81), ("protein_g", 0), ("fat_g", 0), ("carbohydrate_g", 0.93), ("ash_g", 0.17)];
        Assert.Equal(CompositionTopic.Mass, Assert.Single(Remarks(record)).Topic);
        Assert.Empty(Remarks([.. record, ("acetic_g", 5.09)]));
    }

    // SR28 19165 uses factors of its own for cocoa: 228 kcal stated, 359 by 4, 4, 9 and 2 for fibre.
    [Fact]
    public void Cocoa_has_less_energy_than_its_parts()
    {
        var remark = Assert.Single(Remarks(("kcal", 228), ("protein_g", 19.6), ("fat_g", 13.7), ("carbohydrate_g", 57.9), ("fibre_g", 37)));
        Assert.Equal((CompositionTopic.Energy, 359.0), (remark.Topic, Math.Round(remark.Computed)));
    }

    [Fact]
    public void Acid_counts_with_its_own_factor_not_as_sugar() =>
        Assert.Empty(Remarks(("kcal", 22), ("protein_g", 0.35), ("fat_g", 0.24), ("carbohydrate_g", 6.9), ("fibre_g", 0.3), ("citric_g", 4.65)));

    // SR28 19304: 29.40 + 11.92 + 12.79 of 74.72 g.
    [Fact]
    public void Molasses_has_sugars_that_nobody_named()
    {
        var remark = Assert.Single(Remarks(("total_sugars_g", 74.72), ("sucrose_g", 29.4), ("glucose_g", 11.92), ("fructose_g", 12.79)));
        Assert.Equal((CompositionTopic.Sugars, 54.11), (remark.Topic, Math.Round(remark.Computed, 2)));
    }

    [Fact]
    public void A_density_far_from_the_parts_is_told_and_a_near_one_is_not()
    {
        // 50 Bx is 1.2297 g/mL (ICUMSA SPS-4).
        Assert.Equal(1.2297, Assert.Single(With(1.25)).Computed, 1e-3);
        Assert.Empty(With(1.23));

        static IReadOnlyList<CompositionRemark> With(double density)
        {
            IngredientFigure[] figures = [Figure(("sucrose_g", 50)), Figure(("density_g_ml", density))];
            return CompositionCheck.Remarks(
                CompositionBuilder.PerMass, figures, CompositionBuilder.Build(IngredientKind.SugarOrSyrup, CompositionBuilder.PerMass, figures, default).Composition);
        }
    }

    [Fact]
    public void A_check_whose_figures_are_missing_is_not_made() => Assert.Empty(Remarks(("water_g", 50), ("kcal", 300)));
}
