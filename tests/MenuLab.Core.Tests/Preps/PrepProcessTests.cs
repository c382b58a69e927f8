using MenuLab.Core.Pantry;
using MenuLab.Core.Preps;
using MenuLab.Core.Solutions;
using MenuLab.TestKit.Preps;

namespace MenuLab.Core.Tests.Preps;

public class PrepProcessTests
{
    private static readonly PrepLine[] SugarAndWater = [Larder.Line(Larder.Sugar, 500), Larder.Line(Larder.Water, 500)];

    private static PrepOutcome Work(IReadOnlyList<PrepLine> lines, params IReadOnlyList<PrepStep> steps) => Larder.Work(Larder.Recipe(lines, steps)).Value;

    private static Problem Refused(IReadOnlyList<PrepLine> lines, params IReadOnlyList<PrepStep> steps)
    {
        var made = RecipeVersion.Make(Larder.Id(1000), 1, "Test prep", lines, steps);
        return made.IsOk ? Larder.Work(made.Value).Problems[0] : made.Problems[0];
    }

    [Theory]
    [InlineData(-5.0)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void A_time_that_cannot_be_is_refused_at_its_field(double minutes)
    {
        var problem = Refused(SugarAndWater, new Combine([0, 1]), new Steep(minutes, 95));
        Assert.Equal("Steps[1].Minutes", problem.Field);
        Assert.StartsWith("Step 2 (steep) has a time of", problem.Message, StringComparison.Ordinal);
        Assert.Contains("give 0 to", problem.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(1.2, "120 %")]
    [InlineData(0, "0 %")]
    [InlineData(-0.1, "-10 %")]
    public void A_yield_outside_nothing_to_all_is_refused(double yield, string says)
    {
        var problem = Refused([Larder.Line(Larder.Raspberry, 300)], new Combine([0]), new Press(yield));
        Assert.Equal("Steps[1].Yield", problem.Field);
        Assert.Contains(says, problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void More_juice_than_the_fruit_holds_is_refused()
    {
        // 6.5 fibre, 1.2 protein, 0.65 g fat in 100 g are no juice: 91.65 % is the most.
        Assert.Contains("91.", Refused([Larder.Line(Larder.Raspberry, 300)], new Combine([0]), new Press(0.95)).Message, StringComparison.Ordinal);
        Assert.Equal("Steps[1].WeighedGrams", Refused([Larder.Line(Larder.Raspberry, 300)], new Combine([0]), new Press { WeighedGrams = 290 }).Field);
    }

    [Fact]
    public void A_weight_above_what_went_in_is_a_yield_over_100_percent()
    {
        var problem = Refused(SugarAndWater, new Combine([0, 1]), new Heat(10) { WeighedGrams = 1200 });
        Assert.Equal("Steps[1].WeighedGrams", problem.Field);
        Assert.Contains("120 %, over 100 %", problem.Message, StringComparison.Ordinal);
        Assert.True(Larder.Work(Larder.Recipe(SugarAndWater, new Combine([0, 1]), new Heat(10) { WeighedGrams = 1003 })).IsOk);
    }

    [Fact]
    public void Straining_with_nothing_left_is_refused_with_both_figures()
    {
        var problem = Refused([Larder.Line(Larder.Herb, 100), Larder.Line(Larder.Water, 200)], new Combine([0, 1]), new Steep(10, 95), new Strain());
        Assert.Equal("Steps[2].WeighedGrams", problem.Field);
        Assert.Contains("the solids hold 300 g and there are 200 g of liquid", problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_pot_that_boils_dry_is_refused_and_so_is_a_target_it_is_past()
    {
        Assert.Contains("boils dry", Refused(SugarAndWater, new Combine([0, 1]), new Heat(60) { Watts = 3000 }).Message, StringComparison.Ordinal);
        Assert.Equal("Steps[1].Target", Refused(SugarAndWater, new Combine([0, 1]), new Reduce(ReduceTo.Brix, 40)).Field);
        Assert.Equal("Steps[1].Target", Refused(SugarAndWater, new Combine([0, 1]), new Reduce(ReduceTo.Grams, 1100)).Field);
        Assert.Equal("Steps[1].Target", Refused(SugarAndWater, new Combine([0, 1]), new Reduce(ReduceTo.Grams, 400)).Field);
        Assert.Equal("Steps[1].Target", Refused(SugarAndWater, new Combine([0, 1]), new Reduce(ReduceTo.Brix, 120)).Field);
    }

    [Fact]
    public void A_line_that_no_step_takes_or_two_take_is_refused_and_all_problems_come_at_once()
    {
        var made = RecipeVersion.Make(
            Larder.Id(1000), 1, " ", [Larder.Line(Larder.Sugar, -1), Larder.Line(Larder.Water, 5), Larder.Line(Larder.Id(1000), 5)], [new Combine([0, 0, 7])]);
        Assert.Equal(
            ["Lines[0].Grams", "Lines[0].Ingredient", "Lines[1].Ingredient", "Lines[2].Ingredient", "Lines[2].Ingredient", "Name", "Steps[0].Lines"],
            made.Problems.Select(p => p.Field).Order(StringComparer.Ordinal));
    }

    [Theory]
    [InlineData(ReduceTo.Brix, 60)]
    [InlineData(ReduceTo.Grams, 820)]
    [InlineData(ReduceTo.Millilitres, 650)]
    public void A_reduction_ends_at_its_target(ReduceTo to, double target)
    {
        var reduced = Work(SugarAndWater, new Combine([0, 1]), new Reduce(to, target));
        var measured = to switch
        {
            ReduceTo.Brix => PrepFigures.Of(reduced.Composition, PrepFigure.Brix).Value,
            ReduceTo.Grams => reduced.Grams.Value,
            _ => reduced.Millilitres.Value,
        };
        Assert.Equal(target, measured, 1e-6);
        Assert.Equal(500, Larder.Component(reduced, Component.Sucrose), 1e-9);
        // Stopped by the refractometer, the Brix is as good as its reading; the syrup's own spread no longer matters.
        if (to == ReduceTo.Brix)
        {
            var brix = PrepFigures.Of(reduced.Composition, PrepFigure.Brix);
            Assert.InRange(brix.High - brix.Value, 0.55, 0.7);
        }
    }

    [Fact]
    public void Spirit_in_the_pot_stops_a_reduction_to_a_brix_and_asks_for_its_strength()
    {
        PrepLine[] lines = [Larder.Line(Larder.Sugar, 100), Larder.Line(Larder.Spirit, 500)];
        Assert.Contains("alcohol", Refused(lines, new Combine([0, 1]), new Reduce(ReduceTo.Brix, 50)).Message, StringComparison.Ordinal);
        var heated = Work(lines, new Combine([0, 1]), new Heat(5) { GramsPerMinute = 20 });
        var ask = Assert.Single(heated.Asks, a => a.Kind == AskKind.Strength);
        // 166.5 g of alcohol, 100 g gone: between all of them alcohol and none.
        var abv = PrepFigures.Of(heated.Composition, PrepFigure.Abv);
        Assert.Equal(ask.Low, abv.Low, 1.5);
        Assert.Equal(ask.High, abv.High, 1.5);
        Assert.InRange(ask.Low / ask.High, 0.3, 0.5);
    }

    [Fact]
    public void A_pan_of_which_nothing_is_known_is_asked_for_and_stands_between_bounds()
    {
        var open = Work(SugarAndWater, new Combine([0, 1]), new Heat(10));
        var ask = Assert.Single(open.Asks);
        Assert.Equal((AskKind.Weight, "Steps[1].WeighedGrams"), (ask.Kind, ask.Field));
        Assert.Equal(1000 - 184, ask.Low, 0.5);
        Assert.Equal(1000 - 11, ask.High, 0.5);
        Assert.InRange(open.Grams.Low, ask.Low - 10, ask.Low + 10);
        Assert.Empty(Work(SugarAndWater, new Combine([0, 1]), new Heat(10) { PanCentimetres = 20 }).Asks);
    }

    [Fact]
    public void A_covered_pan_loses_less_than_one_percent()
    {
        var covered = Work(SugarAndWater, new Combine([0, 1]), new Heat(30) { Lid = true });
        Assert.InRange(covered.Grams.Value, 990, 1000);
        Assert.InRange(covered.Grams.Low, 989.9, 1000);
    }

    // Liquid kept by the solids, g per g (MEMORY): tea 2.5, herbs 3, spices 0.8.
    [Theory]
    [InlineData(5, 20, 2.5)]
    [InlineData(10, 20, 3)]
    [InlineData(6, 20, 0.8)]
    public void Strained_solids_keep_their_share_of_the_liquid(int number, double grams, double kept)
    {
        var strained = Work([Larder.Line(Larder.Id(number), grams), Larder.Line(Larder.Water, 1000)], new Combine([0, 1]), new Steep(5, 90), new Strain());
        var before = strained.Ledger[1].LiquidGrams;
        Assert.Equal(before - kept * grams, strained.Grams.Value, 1e-9);
        Assert.Equal(0, strained.Ledger[^1].SolidGrams);
    }

    [Fact]
    public void A_weight_after_straining_outranks_the_table()
    {
        PrepLine[] lines = [Larder.Line(Larder.Herb, 20), Larder.Line(Larder.Water, 1000)];
        var weighed = Work(lines, new Combine([0, 1]), new Steep(5, 90), new Strain { WeighedGrams = 951 });
        Assert.Equal(951, weighed.Grams.Value, 1e-9);
        Assert.InRange(weighed.Grams.High - weighed.Grams.Low, 3.5, 4.5);
    }

    [Fact]
    public void Pulp_that_only_drips_is_asked_for()
    {
        PrepLine[] lines = [Larder.Line(Larder.Raspberry, 300), Larder.Line(Larder.Sugar, 300)];
        Assert.Contains(Work(lines, new Combine([0, 1]), new Rest(24), new Strain(StrainerMesh.Coarse, Pressed: false)).Asks, a => a.Kind == AskKind.Weight);
        Assert.Empty(Work(lines, new Combine([0, 1]), new Rest(24), new Strain()).Asks);
    }

    [Fact]
    public void Milk_clearing_asks_for_its_weight_forgets_tannin_and_keeps_the_allergen()
    {
        var milk = new Composition(
            Larder.Of(Larder.Water).PerGram, Larder.Of(Larder.Water).Known, [], new AllergenSet(1u << (int)Allergen.Milk, 0), CompositionCaveats.None);
        var recipe = Larder.Recipe([new PrepLine(Larder.Id(50), 200), Larder.Line(Larder.Lemon, 300)], new Combine([0, 1]), new Clarify(ClarifiedBy.Milk));
        var cleared = PrepProcess.Work(recipe, id => id == Larder.Id(50) ? milk : Larder.Of(id)).Value;
        Assert.Equal(AllergenState.Present, cleared.Composition.Allergens[Allergen.Milk]);
        Assert.Contains(cleared.Notes, n => n.Kind == PrepNoteKind.Allergen);
        Assert.Contains(cleared.Asks, a => a.Kind == AskKind.Weight && a.Low == 0 && Math.Abs(a.High - 500) < 1e-9);
        Assert.False(cleared.Composition.Knows(Component.Tannin.Bit()));
        Assert.True(cleared.Composition.Knows(Composition.TotalSugarKnown));
    }

    [Fact]
    public void A_ferment_knows_neither_sugar_nor_strength_and_asks_for_four_readings()
    {
        var fermented = Work(SugarAndWater, new Combine([0, 1]), new Ferment(5, 22));
        Assert.Equal([AskKind.Strength, AskKind.Titration, AskKind.Ph, AskKind.Weight], fermented.Asks.Select(a => a.Kind));
        Assert.False(fermented.Composition.Knows(Component.Ethanol.Bit()));
        Assert.False(fermented.Composition.Knows(Composition.TotalSugarKnown));
        Assert.Equal(100, fermented.UnknownPercent(Component.Ethanol));
        Assert.True(double.IsNaN(PrepFigures.Of(fermented.Composition, PrepFigure.Sugar).Value));
        // 500 g of sucrose: at most 269 g of alcohol.
        Assert.Equal(100 * 269 / 0.78924 / 813.2, fermented.Asks[0].High, 0.5);
    }

    [Fact]
    public void Fruit_in_a_ferment_gives_its_juice_and_its_sugar_counts_in_what_could_be_made()
    {
        // 500 g of raspberries: 400 g of juice join the 550 g; 22.1 g of sugar of their own beside the 50 g.
        var fermented = Work(
            [Larder.Line(Larder.Raspberry, 500), Larder.Line(Larder.Sugar, 50), Larder.Line(Larder.Water, 500)], new Combine([0, 1, 2]), new Ferment(3, 22));
        Assert.Equal(950, fermented.Ledger[^1].LiquidGrams + fermented.Ledger[^1].GasOutGrams, 1e-9);
        // Sucrose, C12H22O11 and a water: four of ethanol and four of carbon dioxide, 0.538 and 0.514 g per g (standard atomic weights).
        var weight = Assert.Single(fermented.Asks, a => a.Kind == AskKind.Weight);
        Assert.Equal(1050 - 0.514 * 72.1, weight.Low, 1e-6);
        // 950 g with some 74 g dissolved at 0.62 mL/g: 923 mL.
        Assert.Equal(100 * 0.538 * 72.1 / 0.78924 / 923, Assert.Single(fermented.Asks, a => a.Kind == AskKind.Strength).High, 0.05);
    }

    [Fact]
    public void A_steeped_solid_that_holds_caffeine_or_quinine_does_not_leave_a_liquid_known_to_have_none()
    {
        var leaf = Larder.Build(IngredientKind.HerbOrSpice, ("water_g", 8), ("fibre_g", 20), ("caffeine_mg", 1200), ("quinine_mg", 300));
        var recipe = Larder.Recipe([new PrepLine(Larder.Id(61), 10, SolidKind.DryHerb), Larder.Line(Larder.Water, 998.2)], new Combine([0, 1]), new Steep(10, 95), new Strain());
        var steeped = PrepProcess.Work(recipe, id => id == Larder.Id(61) ? leaf : Larder.Of(id)).Value;
        Assert.False(steeped.Composition.Knows(Component.Caffeine.Bit()));
        Assert.False(steeped.Composition.Knows(Component.Quinine.Bit()));
        // At most all of it: 120 mg in a litre.
        Assert.Equal(120, Assert.Single(steeped.Asks, a => a.Kind == AskKind.Caffeine).High, 0.5);
        var without = Work([Larder.Line(Larder.Herb, 10), Larder.Line(Larder.Water, 998.2)], new Combine([0, 1]), new Steep(10, 95), new Strain());
        Assert.DoesNotContain(without.Asks, a => a.Kind == AskKind.Caffeine);
    }

    [Fact]
    public void Carbonating_adds_the_gas_to_the_ledger()
    {
        // 1 volume is 1.977 g/L (docs/science.md, section 8).
        var charged = Work([Larder.Line(Larder.Water, 998.2)], new Combine([0]), new Carbonate(3));
        Assert.Equal(3 * 1.977, charged.Ledger[^1].GasInGrams, 0.01);
        Assert.True(charged.Composition.Caveats.HasFlag(CompositionCaveats.Carbonated));
        // 4 °C, 2.0 bar gauge: 4.42 volumes (COMPUTED, same section).
        var underPressure = Work([Larder.Line(Larder.Water, 998.2)], new Combine([0]), new Carbonate(null, 2, 4));
        Assert.Equal(4.42 * 1.977, underPressure.Ledger[^1].GasInGrams, 0.05);
    }

    [Fact]
    public void Toasting_asks_what_it_weighs_and_counts_it()
    {
        PrepLine[] lines = [Larder.Line(Larder.Spice, 50)];
        Assert.Single(Work(lines, new Combine([0]), new Toast(5)).Asks);
        var weighed = Work(lines, new Combine([0]), new Toast(5) { WeighedGrams = 47 });
        Assert.Empty(weighed.Asks);
        Assert.Equal(47, weighed.Grams.Value, 1e-9);
        Assert.Equal("Steps[1].WeighedGrams", Refused(lines, new Combine([0]), new Toast(5) { WeighedGrams = 40 }).Field);
    }

    [Fact]
    public void A_herb_that_could_give_acid_is_asked_for_and_its_aroma_leaves_bitterness_unknown()
    {
        var infused = Work([Larder.Line(Larder.Herb, 100), Larder.Line(Larder.Water, 1000)], new Combine([0, 1]), new Steep(10, 95), new Strain());
        Assert.Contains(infused.Asks, a => a.Kind == AskKind.Brix);
        Assert.False(infused.Composition.Knows(Component.Bitter.Bit()));
        Assert.False(infused.Composition.Knows(Component.Tannin.Bit()));
    }

    [Fact]
    public void A_dash_of_something_unknown_is_told_and_does_not_make_the_prep_unknown()
    {
        var bottle = Larder.Build(IngredientKind.Alcohol, ("ethanol_g", 30));
        Composition Of(IngredientId id) => id == Larder.Id(60) ? bottle : Larder.Of(id);
        var dash = PrepProcess.Work(Larder.Recipe([.. SugarAndWater, new PrepLine(Larder.Id(60), 20)], new Combine([0, 1, 2])), Of).Value;
        Assert.Equal(2, dash.UnknownPercent(Composition.TotalSugarKnown), 0.1);
        Assert.True(dash.Composition.Knows(Composition.TotalSugarKnown));
        var much = PrepProcess.Work(Larder.Recipe([.. SugarAndWater, new PrepLine(Larder.Id(60), 100)], new Combine([0, 1, 2])), Of).Value;
        Assert.False(much.Composition.Knows(Composition.TotalSugarKnown));
    }

    [Fact]
    public void Cost_is_the_lines_over_the_finished_mass_and_an_unpriced_line_is_counted()
    {
        var recipe = Larder.Recipe(SugarAndWater, new Combine([0, 1]), new Heat(5) { WeighedGrams = 900 });
        var cost = PrepProcess.Work(recipe, Larder.Find, id => id == Larder.Sugar ? 0.002 : null).Value.Cost;
        Assert.Equal((1.0, 1.0 / 900, 1), (cost.Total, cost.PerGram, cost.Unpriced));
    }

    [Fact]
    public void A_strong_syrup_may_crystallise_and_a_weak_one_not()
    {
        Assert.Contains(Work([Larder.Line(Larder.Sugar, 200), Larder.Line(Larder.Water, 100)], new Dissolve([0, 1])).Notes, n => n.Kind == PrepNoteKind.MayCrystallise);
        Assert.DoesNotContain(Work(SugarAndWater, new Dissolve([0, 1])).Notes, n => n.Kind == PrepNoteKind.MayCrystallise);
    }

    [Fact]
    public void The_same_ingredient_on_two_lines_varies_as_one()
    {
        var one = Work([Larder.Line(Larder.Lemon, 200), Larder.Line(Larder.Water, 100)], new Combine([0, 1]));
        var two = Work([Larder.Line(Larder.Lemon, 100), Larder.Line(Larder.Water, 100), Larder.Line(Larder.Lemon, 100)], new Combine([0, 1, 2]));
        var (a, b) = (PrepFigures.Of(one.Composition, PrepFigure.Acid), PrepFigures.Of(two.Composition, PrepFigure.Acid));
        Assert.Equal(a.High - a.Low, b.High - b.Low, 1e-9);
    }

    [Fact]
    public void A_mixture_of_one_has_the_range_of_its_ingredient()
    {
        var lemon = Larder.Of(Larder.Lemon);
        var mixed = Mixture.Of([new Portion(Larder.Lemon, lemon, 250)]);
        foreach (var figure in (PrepFigure[])[PrepFigure.Acid, PrepFigure.Sugar, PrepFigure.Ph, PrepFigure.Density, PrepFigure.Brix])
        {
            var (a, b) = (PrepFigures.Of(lemon, figure), PrepFigures.Of(mixed, figure));
            Assert.Equal(a.Value, b.Value, 1e-9);
            Assert.Equal(a.High, b.High, 1e-6);
        }
        Assert.Equal(lemon.Known, mixed.Known);
    }
}
