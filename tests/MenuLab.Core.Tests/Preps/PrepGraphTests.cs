using MenuLab.Core.Pantry;
using MenuLab.Core.Preps;
using MenuLab.Core.Solutions;
using MenuLab.TestKit.Preps;

namespace MenuLab.Core.Tests.Preps;

public class PrepGraphTests
{
    private static RecipeVersion Made(int number, string name, params IReadOnlyList<IngredientId> of) =>
        Larder.Recipe(Larder.Id(number), name, [.. of.Select(i => Larder.Line(i, 100))], new Combine([.. Enumerable.Range(0, of.Count)]));

    private static readonly RecipeVersion Syrup = Made(101, "Quince syrup", Larder.Sugar, Larder.Water);
    private static readonly RecipeVersion Sour = Made(102, "Verjus sour mix", Larder.Id(101), Larder.Lemon);
    private static readonly RecipeVersion Punch = Made(103, "Harbour punch", Larder.Id(102), Larder.Id(101), Larder.Water);
    private static readonly RecipeVersion Apart = Made(104, "Fennel vinegar", Larder.Vinegar);

    [Fact]
    public void Every_prep_stands_after_what_it_is_made_of()
    {
        var graph = PrepGraph.Of([Punch, Apart, Sour, Syrup]).Value;
        var order = graph.Order.Select(r => r.Name).ToList();
        Assert.Equal(4, order.Count);
        Assert.True(order.IndexOf("Quince syrup") < order.IndexOf("Verjus sour mix"));
        Assert.True(order.IndexOf("Verjus sour mix") < order.IndexOf("Harbour punch"));
    }

    [Fact]
    public void A_cycle_through_three_preps_is_refused_with_its_chain_by_name()
    {
        var closing = Made(101, "Quince syrup", Larder.Id(103), Larder.Sugar);
        var refused = PrepGraph.Of([Punch, Sour, Syrup, Apart]).Value.With(closing);
        var problem = Assert.Single(refused.Problems);
        Assert.Equal("Lines", problem.Field);
        Assert.Equal(
            "A prep cannot be made of itself: Quince syrup is made of Harbour punch, Harbour punch of Verjus sour mix, Verjus sour mix of Quince syrup. Take one of these lines out.",
            problem.Message);
    }

    [Fact]
    public void A_diamond_is_no_cycle() => Assert.True(PrepGraph.Of([Syrup, Sour, Punch]).IsOk);

    [Fact]
    public void Users_of_an_ingredient_are_found_through_all_levels_and_no_others()
    {
        var graph = PrepGraph.Of([Punch, Apart, Sour, Syrup]).Value;
        Assert.Equal([Syrup.Prep, Sour.Prep, Punch.Prep], graph.UsersOf(Larder.Sugar));
        Assert.Equal([Sour.Prep, Punch.Prep], graph.UsersOf(Larder.Lemon));
        Assert.Empty(graph.UsersOf(Larder.Spice));
    }

    [Fact]
    public void A_changed_ingredient_changes_what_is_made_of_it_to_the_same_figures_as_working_all_out()
    {
        var graph = PrepGraph.Of([Punch, Apart, Sour, Syrup]).Value;
        var before = graph.Work(Larder.Find);
        var sourer = Larder.Build(IngredientKind.CitrusJuice, ("total_sugars_g", 2.5), ("citric_g", 6.5), ("ph", 2.2));
        Composition? After(IngredientId id) => id == Larder.Lemon ? sourer : Larder.Find(id);
        var changes = graph.Rework(before, Larder.Lemon, After);
        Assert.Equal([Sour.Prep, Punch.Prep], changes.Select(c => c.Prep));
        var all = graph.Work(After);
        foreach (var change in changes)
        {
            Assert.Equal(all[change.Prep].Value.Composition.PerGram, change.After.Value.Composition.PerGram);
            Assert.True(change.After.Value.Composition.PerGram[(int)Component.Citric] > change.Before!.Composition.PerGram[(int)Component.Citric]);
        }
    }

    [Fact]
    public void A_measured_prep_goes_into_what_is_made_of_it()
    {
        var graph = PrepGraph.Of([Sour, Syrup]).Value;
        var thick = Larder.Build(IngredientKind.SugarOrSyrup, ("sucrose_g", 66));
        var worked = graph.Work(Larder.Find, null, id => id == Syrup.Prep ? thick : null);
        Assert.Equal(0.33, worked[Sour.Prep].Value.Composition.PerGram[(int)Component.Sucrose], 0.01);
    }

    [Fact]
    public void Costs_add_up_through_the_levels()
    {
        var graph = PrepGraph.Of([Sour, Syrup]).Value;
        var worked = graph.Work(Larder.Find, id => id == Larder.Sugar ? 0.002 : id == Larder.Lemon ? 0.01 : 0);
        // Syrup: 0.2 for 200 g; sour: 100 g of it and 1.0 of lemon.
        Assert.Equal(1.1, worked[Sour.Prep].Value.Cost.Total, 1e-9);
        var unpriced = graph.Work(Larder.Find, id => id == Larder.Lemon ? 0.01 : null);
        Assert.Equal(1, unpriced[Sour.Prep].Value.Cost.Unpriced);
    }

    [Fact]
    public void A_part_with_something_to_mend_names_it_above()
    {
        var broken = Larder.Recipe(Larder.Id(101), "Quince syrup", [Larder.Line(Larder.Herb, 100), Larder.Line(Larder.Water, 100)], new Combine([0, 1]), new Strain());
        var worked = PrepGraph.Of([broken, Sour]).Value.Work(Larder.Find);
        Assert.StartsWith("Line 1, Quince syrup, has something to mend first", worked[Sour.Prep].Problems[0].Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Allergens_come_up_through_the_levels_as_present_or_unknown()
    {
        var nut = new Composition(
            Larder.Of(Larder.Water).PerGram, Larder.Of(Larder.Water).Known, [],
            default(AllergenSet).With(Allergen.TreeNuts, AllergenState.Present).With(Allergen.Sulphites, AllergenState.Unknown), CompositionCaveats.None);
        var worked = PrepGraph.Of([Punch, Sour, Syrup]).Value.Work(id => id == Larder.Sugar ? Larder.Of(Larder.Sugar) : id == Larder.Lemon ? nut : Larder.Find(id));
        var allergens = worked[Punch.Prep].Value.Composition.Allergens;
        Assert.Equal(
            (AllergenState.Present, AllergenState.Unknown, AllergenState.Absent), (allergens[Allergen.TreeNuts], allergens[Allergen.Sulphites], allergens[Allergen.Milk]));
    }
}
