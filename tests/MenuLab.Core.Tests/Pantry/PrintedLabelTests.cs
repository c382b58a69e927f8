using MenuLab.Core.Pantry;
using MenuLab.Core.Preps;
using MenuLab.Core.Solutions;

namespace MenuLab.Core.Tests.Pantry;

public class PrintedLabelTests
{
    private static readonly DateOnly Today = new(2026, 11, 25);

    // Invented: a pear soda of 4.8 g sugar, 92 kJ: 17 x 4.8 = 81.6 kJ, so 10.4 kJ are left, 0.80 g of acid at 13 kJ/g.
    private static readonly PrintedLabel PearSoda = new()
    {
        Basis = LabelBasis.Per100Millilitres, Kilojoules = 92, Kilocalories = 22, Fat = 0, Carbohydrate = 4.8, Sugars = 4.8, Protein = 0, Salt = 0.01, ReadOn = Today,
    };

    private static Composition Compose(PrintedLabel label, IngredientKind kind = IngredientKind.Juice) => label.Read(Today).Value.Compose(kind).Composition;

    private static Problem Refused(PrintedLabel label) => Assert.Single(label.Read(Today).Problems);

    [Fact]
    public void A_label_becomes_a_composition_with_its_acid_bounded_by_energy()
    {
        var reading = PearSoda.Read(Today).Value;
        Assert.Empty(reading.Remarks);
        var acid = reading.Figures.Single(f => f.Quantity == FigureQuantities.TitratableAcidity);
        // By hand: up to 0.5 g of fat, 0.5 g of protein could hide behind "0", so none is left for sure; at most 10.4 + 0.5 + 17 x 0.05 kJ.
        Assert.Equal(0, acid.Low);
        Assert.Equal((10.4 + 0.5 + 17 * 0.05) / 13, acid.High, 1e-9);
        var composition = reading.Compose(IngredientKind.Juice).Composition;
        Assert.Equal(4.8, PrepFigures.Of(composition, PrepFigure.Sugar).Value, 0.01);
        Assert.True(composition.Knows(Composition.TotalSugarKnown | Composition.TotalAcidKnown));
        Assert.True(composition.Caveats.HasFlag(CompositionCaveats.AcidityAssumed));
    }

    [Fact]
    public void A_flavoured_water_is_bounded_by_the_person_who_read_it()
    {
        // "Behaves as water with aroma: sugar 0 to 2 g, acid up to 1 %".
        var label = new PrintedLabel { Basis = LabelBasis.Per100Millilitres, Sugars = new LabelFigure(2, IsLessThan: true), AcidAtMost = 1, ReadOn = Today };
        var sugar = PrepFigures.Of(Compose(label), PrepFigure.Sugar);
        var acid = PrepFigures.Of(Compose(label), PrepFigure.Acid);
        Assert.Equal((0, 2), (Math.Round(sugar.Low, 2), Math.Round(sugar.High, 2)));
        Assert.Equal((0, 1), (Math.Round(acid.Low, 2), Math.Round(acid.High, 2)));
    }

    [Fact]
    public void A_serving_is_turned_into_100()
    {
        var serving = PearSoda with { Basis = LabelBasis.PerServingMillilitres, Serving = 250, Kilojoules = 230, Kilocalories = 55, Carbohydrate = 12, Sugars = 12, Salt = 0.025 };
        Assert.Equal(4.8, PrepFigures.Of(Compose(serving), PrepFigure.Sugar).Value, 0.01);
        Assert.Equal("Serving", Refused(serving with { Serving = null }).Field);
        Assert.Equal("Serving", Refused(serving with { Serving = 0 }).Field);
    }

    [Fact]
    public void Per_100_g_is_kept_by_mass_and_strength_is_by_volume()
    {
        var byMass = Compose(PearSoda with { Basis = LabelBasis.Per100Grams });
        Assert.Equal(0.048, byMass.PerGram[(int)Component.SugarNotToldApart], 1e-6);
        // 12 % vol, 10 g sugar: 17 x 10 + 29 x 9.47 = 445 kJ.
        var sweetWine = new PrintedLabel { Basis = LabelBasis.Per100Millilitres, AbvPercent = 12, Kilojoules = 450, Fat = 0, Carbohydrate = 10, Sugars = 10, Protein = 0, ReadOn = Today };
        Assert.Empty(sweetWine.Read(Today).Value.Remarks);
        Assert.Equal(12, PrepFigures.Of(Compose(sweetWine, IngredientKind.Alcohol), PrepFigure.Abv).Value, 0.01);
    }

    [Fact]
    public void Salt_is_sodium_times_2_and_a_half()
    {
        // Regulation (EU) 1169/2011, Annex I.
        var sodium = (PearSoda with { Salt = 0.5 }).Read(Today).Value.Figures.Single(f => f.Quantity == FigureQuantities.Sodium);
        Assert.Equal(200, sodium.Value, 1e-9);
    }

    [Fact]
    public void Nothing_printed_of_sugar_leaves_it_between_nothing_and_the_carbohydrate()
    {
        var sugar = PrepFigures.Of(Compose(PearSoda with { Sugars = null, Kilojoules = null, Kilocalories = null }), PrepFigure.Sugar);
        Assert.Equal(0, sugar.Low, 0.01);
        // At most the 4.8 g and their rounding; the density adds half a per cent.
        Assert.Equal(4.85, sugar.High, 0.05);
    }

    [Fact]
    public void What_cannot_be_is_refused_at_its_field()
    {
        Assert.Equal("Sugars", Refused(PearSoda with { Sugars = 6 }).Field);
        Assert.Equal("Fat", Refused(PearSoda with { Fat = -1 }).Field);
        Assert.Equal("AbvPercent", Refused(PearSoda with { AbvPercent = 140 }).Field);
        Assert.Equal("Carbohydrate", Refused(PearSoda with { Basis = LabelBasis.Per100Grams, Carbohydrate = 90, Sugars = 90, Protein = 20 }).Field);
        Assert.Equal("ReadOn", Refused(PearSoda with { ReadOn = Today.AddDays(1) }).Field);
        Assert.Equal("Kilojoules", Refused(PearSoda with { Kilojoules = double.NaN }).Field);
    }

    [Fact]
    public void What_does_not_fit_is_remarked_at_its_field()
    {
        Assert.Equal(["Kilocalories"], (PearSoda with { Kilocalories = 40 }).Read(Today).Value.Remarks.Select(r => r.Field));
        Assert.Equal(["Kilojoules"], (PearSoda with { Kilojoules = 60, Kilocalories = null }).Read(Today).Value.Remarks.Select(r => r.Field));
        Assert.Equal(["Kilojoules"], (PearSoda with { Kilojoules = 500, Kilocalories = null }).Read(Today).Value.Remarks.Select(r => r.Field));
        Assert.Equal(["AcidAtMost"], (PearSoda with { Kilojoules = 130, Kilocalories = null, AcidAtMost = 0.1 }).Read(Today).Value.Remarks.Select(r => r.Field));
    }

    [Fact]
    public void A_bound_that_the_energy_contradicts_is_set_aside_for_what_the_energy_leaves()
    {
        // 130 - 81.6 = 48.4 kJ are left; "0" may stand for 0.5 g of fat and of protein: by hand 48.4 - 0.5 - 17 x 0.55 - 37 x 0.5 to 48.4 + 0.5 + 17 x 0.05.
        var acid = (PearSoda with { Kilojoules = 130, Kilocalories = null, AcidAtMost = 0.1 }).Read(Today).Value.Figures.Single(f => f.Quantity == FigureQuantities.TitratableAcidity);
        Assert.Equal(20.05 / 13, acid.Low, 1e-9);
        Assert.Equal(49.75 / 13, acid.High, 1e-9);
    }

    [Fact]
    public void The_rounding_of_polyols_counts_for_the_acid_as_well()
    {
        // 17 x (6 - 4) + 10 x 4 = 74 kJ of 80; carbohydrate may be 0.05 g less at 17 kJ, polyols 0.05 g more at 10 in place of 17.
        var acid = (PearSoda with { Carbohydrate = 6, Sugars = 2, Polyols = 4, Kilojoules = 80, Kilocalories = null }).Read(Today).Value
            .Figures.Single(f => f.Quantity == FigureQuantities.TitratableAcidity);
        Assert.Equal((6 + 0.5 + 17 * 0.05 + 7 * 0.05) / 13, acid.High, 1e-9);
    }

    [Fact]
    public void An_allergen_is_a_question_until_a_person_has_confirmed_it()
    {
        var label = PearSoda with { Allergens = default(AllergenSet).With(Allergen.Sulphites, AllergenState.Present) };
        Assert.Equal(AllergenState.Unknown, label.Read(Today).Value.Allergens[Allergen.Sulphites]);
        Assert.Equal(AllergenState.Present, (label with { AllergensConfirmed = true }).Read(Today).Value.Allergens[Allergen.Sulphites]);
    }

    [Fact]
    public void A_reading_goes_stale_after_a_year_or_as_the_house_says()
    {
        Assert.False(PearSoda.IsStale(Today.AddMonths(12)));
        Assert.True(PearSoda.IsStale(Today.AddMonths(12).AddDays(1)));
        Assert.True(PearSoda.IsStale(Today.AddMonths(4), 3));
    }

    [Fact]
    public void A_bought_bottle_narrows_the_range_instead_of_opening_a_hole()
    {
        var unread = CompositionBuilder.Build(IngredientKind.Juice, CompositionBuilder.PerVolume, [], default).Composition;
        Assert.False(unread.Knows(Composition.TotalSugarKnown));
        Assert.True(Compose(PearSoda).Knows(Composition.TotalSugarKnown | Composition.TotalAcidKnown));
    }
}
