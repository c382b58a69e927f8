using MenuLab.Core.Drafts.Reading;
using MenuLab.Core.House;
using MenuLab.Core.Balance;
using MenuLab.Core.Drafts;
using MenuLab.Core.Pantry;
using MenuLab.Core.Quantities;
using MenuLab.Core.Safety;
using MenuLab.Data.Seeding;
using MenuLab.Web.Features.Bench;

namespace MenuLab.Web.Tests.Features.Bench;

public class PastedDrinkTests
{
    private static readonly SeedData Shipped = SeedData.Load(SeedData.DefaultFolder);
    private static readonly PastedDrink Pasted = new(
        new HouseStock(Shipped.Pantry, Shipped.Catalogue, Shipped.Measures) { Rules = SiteRules.Of(Shipped.Rules, "EU", HouseFormat.Plain) }, new DrinkReader(Vocabulary.Of(Shipped.Pantry, Shipped.Catalogue), Shipped.Measures), HouseFormat.Plain, new PourGrid());

    [Fact]
    public void The_example_on_the_empty_page_reads_without_a_question_and_has_its_figures()
    {
        var drink = Pasted.Read(TypeADrink.Example, Unit.Millilitre);

        Assert.Equal("Low Water", drink.Name);
        Assert.Equal(6, drink.Read.Count());
        Assert.Equal(0, drink.NotCounted);
        Assert.NotNull(drink.Served);
        foreach (var metric in new[] { Metric.Sugar, Metric.Acid, Metric.SugarAcidRatio, Metric.Abv, Metric.GlassFill })
        {
            Assert.Equal(Certainty.Plain, drink.Served[(int)metric].Estimate.Certainty);
        }
        Assert.Equal(Certainty.Unknown, drink.Served[(int)Metric.Cost].Estimate.Certainty);
    }

    [Fact]
    public void An_empty_text_is_an_empty_drink_and_no_fault()
    {
        var drink = Pasted.Read("", Unit.Millilitre);

        Assert.Empty(drink.Rows);
        Assert.Null(drink.Mixed);
    }

    [Fact]
    public void Rows_stand_in_the_order_typed_whatever_became_of_them()
    {
        var drink = Pasted.Read("45 ml black tea\n1,500 ml lemon juice\n15 ml verjus\na whisper of beet leaf\n15 ml honey syrup", Unit.Millilitre);

        Assert.Equal(
            ["45 ml black tea", "1,500 ml lemon juice", "15 ml verjus", "a whisper of beet leaf", "15 ml honey syrup"],
            drink.Rows.Select(row => row.Text));
    }

    [Fact]
    public void Shares_of_the_sugar_add_up_to_the_whole_over_the_lines_in_the_liquid()
    {
        var drink = Pasted.Read(TypeADrink.Example, Unit.Millilitre);

        Assert.Equal(1, drink.Read.Select(row => row.Share(Metric.Sugar)).Where(double.IsFinite).Sum(), tolerance: 1e-5);
        Assert.Single(drink.Read, row => row.Shares.Count == 0);   // the garnish
    }

    [Fact]
    public void A_drink_without_a_method_has_its_mixed_figures_and_says_why_no_others()
    {
        var drink = Pasted.Read("45 ml black tea\n15 ml lemon juice", Unit.Millilitre);

        Assert.NotNull(drink.Mixed);
        Assert.Null(drink.Served);
        Assert.NotEmpty(drink.ServedMissingBecause);
        Assert.Contains(drink.Build, word => word is { Name: "Method", Words: "not said" });
    }

    [Fact]
    public void In_an_ounce_house_a_bare_number_is_an_ounce()
    {
        var row = Assert.Single(Pasted.Read("1.5 black tea", Unit.FluidOunce).Read);

        Assert.Equal("1 ½", row.Amount);
        Assert.Equal("45 mL", row.Other);
    }

    [Fact]
    public void Raw_egg_and_its_allergen_are_told_with_the_line_that_brings_them()
    {
        var drink = Pasted.Read("45 ml black tea\n20 ml egg white\nshake, coupe", Unit.Millilitre);

        var caution = Assert.Single(drink.Cautions, c => c.Text.StartsWith("Raw egg", StringComparison.Ordinal));
        Assert.Equal(["Egg white, raw"], caution.In);
        Assert.Contains(drink.Present, row => row is { Allergen: Allergen.Egg, In: ["Egg white, raw"] });
    }

    [Fact]
    public void More_than_the_glass_holds_is_said() =>
        Assert.Contains(
            Pasted.Read("200 ml black tea\n20 ml lemon juice\nshake, coupe", Unit.Millilitre).Cautions,
            c => c.Text.StartsWith("Over the wash line", StringComparison.Ordinal));
}
