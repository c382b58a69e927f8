using MenuLab.Core.Drafts;
using MenuLab.Core.Drafts.Reading;

namespace MenuLab.Core.Tests.Reading;

/// <summary>Rules that the sheet does not reach, or not by their figures. Expectations: common practice, no source, unless said.</summary>
public sealed class DrinkReaderTests
{
    // ---- what must never be taken for its neighbour --------------------------------------------------------------

    [Theory]
    [InlineData("20 ml lemon verbena")]
    [InlineData("20 ml pear vinegar")]
    [InlineData("2 dashes orange bitters")]
    [InlineData("2 dashes celery bitters")]
    [InlineData("20 ml lime cordial")]
    [InlineData("20 ml orange blossom water")]
    [InlineData("10 ml ginger syrup")]
    [InlineData("20 ml cream soda")]
    [InlineData("30 ml mint tea")]
    [InlineData("10 ml long pepper tincture")]
    [InlineData("20 ml light agave")]
    [InlineData("20 ml hot sauce")]
    [InlineData("10 ml rose water")]
    [InlineData("10 ml sour cherry syrup")]
    [InlineData("5 ml chilli honey")]
    [InlineData("10 ml smoked maple syrup")]
    [InlineData("20 ml honey ginger")]
    [InlineData("2 lime leaves")]
    [InlineData("3 drops saline 5 %")]
    public void A_name_with_a_word_too_many_is_offered_as_new_and_never_read(string text) =>
        Assert.Contains("new", Reader.Keys(Reader.Question(text)));

    [Theory]
    [InlineData("30 ml ginger beer", "ginger_beer")]
    [InlineData("5 g ginger root", "ginger_root")]
    [InlineData("20 ml juice apple", "apple_juice")]
    [InlineData("20 ml Rote-Bete-Saft", "beet_juice")]
    [InlineData("20 ml jus d’orange", "orange_juice")]
    [InlineData("20 ml zumo de limon amarillo", "lemon_juice")]
    [InlineData("2 cl Gruentee", "tea_green")]
    [InlineData("15 ml lemon_juice", "lemon_juice")]
    public void A_name_is_found_in_any_of_its_spellings(string text, string key) => Assert.Equal(key, Reader.Key(Reader.Line(text)));

    [Fact]
    public void A_mended_slip_is_said()
    {
        var line = Reader.Line("20 ml pinapple juice");
        Assert.Equal("pineapple_juice", Reader.Key(line));
        Assert.Contains(line.Assumptions, a => a.Contains("Pineapple juice", StringComparison.Ordinal));
    }

    [Fact]
    public void A_wrong_first_letter_is_asked() => Assert.Contains("honey", Reader.Keys(Reader.Question("10 ml money")));

    // ---- amounts -------------------------------------------------------------------------------------------------

    [Fact]
    public void A_bare_number_says_which_unit_it_was_read_in()
    {
        Assert.Contains("Read 22.5 as mL, the house's unit.", Reader.Line("22,5 lemon").Assumptions);
        var ounces = Assert.Single(Reader.OfShipped.Read("3/4 lemon", Reader.InOunces).Lines);
        Assert.Contains("Read 0.75 as fl oz, the house's unit.", ounces.Assumptions);
        Assert.Equal(22.5, ounces.Millilitres, 1e-9);
    }

    [Theory]
    [InlineData("0.75 lemon", Unit.Millilitre, Unit.FluidOunce, Unit.Millilitre)]
    [InlineData("45 lemon juice", Unit.FluidOunce, Unit.Millilitre, Unit.FluidOunce)]
    public void A_bare_number_that_cannot_be_meant_offers_both_units(string text, Unit house, Unit likelier, Unit other)
    {
        var drink = Reader.OfShipped.Read(text, new ReadSettings { BareNumber = house });
        Assert.Empty(drink.Lines);
        Assert.Equal([likelier, other], Assert.Single(drink.Questions).Candidates.Where(c => c.Line is not null).Select(c => c.Line!.Unit));
    }

    [Fact]
    public void A_grouped_number_is_asked_with_both_figures() =>
        Assert.Equal([1500, 1.5], Reader.Question("1,500 ml water").Candidates.Where(c => c.Line is not null).Select(c => c.Line!.Millilitres));

    [Theory]
    [InlineData("-5 ml honey")]
    [InlineData("0 ml honey")]
    [InlineData("25 l water")]
    [InlineData("1 500 ml water")]
    [InlineData("20-15 ml honey")]
    [InlineData("99999999999999999999999999 ml honey")]
    [InlineData("2O ml lemon juice")]
    public void An_amount_that_no_drink_holds_stays_as_typed_with_a_reason(string text)
    {
        var drink = Reader.Read(text);
        Assert.Empty(drink.Lines);
        Assert.NotEmpty(Assert.Single(drink.Unread).Reason);
    }

    [Theory]
    [InlineData("1 handful mint")]
    [InlineData("1 pint cream")]
    [InlineData("1 bottle white wine")]
    [InlineData("a handful of basil")]
    public void A_measure_that_no_house_agrees_on_asks_how_much(string text) => Assert.NotEmpty(Reader.Question(text).Candidates);

    // Jigger 1.0 mL below 30 mL and 1.5 above, dash 0.25 mL, scale 0.5 g: beverage science, section 14.
    [Theory]
    [InlineData("20 ml water", 1.0)]
    [InlineData("45 ml water", 1.5)]
    [InlineData("2 dashes water", 0.5)]
    public void A_poured_line_is_as_uncertain_as_its_measure(string text, double millilitres)
    {
        var line = Reader.Line(text);
        Assert.Equal(millilitres, line.GramsUncertainty / (line.Grams / line.Millilitres), 1e-9);
    }

    [Fact]
    public void A_weighed_line_is_as_uncertain_as_the_scale() => Assert.Equal(0.5, Reader.Line("40 g honey").GramsUncertainty);

    [Fact]
    public void A_range_widens_the_uncertainty_by_a_rectangle()
    {
        var plain = Reader.Line("20 ml lemon juice");
        var range = Reader.Line("15-25 ml lemon juice");
        Assert.Equal((20, 15, 25), (range.Amount, range.AmountLow, range.AmountHigh));
        var density = plain.Grams / 20;
        Assert.Equal(Math.Sqrt(1 + 100.0 / 12) * density, range.GramsUncertainty, 1e-9);
    }

    [Fact]
    public void Scant_and_fat_move_the_amount_and_widen_it()
    {
        var plain = Reader.Line("20 ml lemon juice");
        var scant = Reader.Line("scant 20 ml lemon juice");
        var fat = Reader.Line("fat 20 ml lemon juice");
        Assert.Equal(18, scant.Millilitres, 1e-9);
        Assert.Equal(22, fat.Millilitres, 1e-9);
        Assert.True(scant.GramsUncertainty > plain.GramsUncertainty && fat.GramsUncertainty > plain.GramsUncertainty);
        Assert.Contains(scant.Assumptions, a => a.StartsWith("Scant", StringComparison.Ordinal));
    }

    // 48 g of juice in a lemon: USDA SR28, NDB 09152, as in seed-data/pieces.csv.
    [Theory]
    [InlineData("juice of 1 lemon", 48)]
    [InlineData("1 lemon", 48)]
    [InlineData("1/2 lemon, juiced", 24)]
    [InlineData("Saft von 2 Zitronen", 96)]
    public void A_whole_citrus_fruit_in_the_liquid_is_its_juice_and_says_so(string text, double grams)
    {
        var line = Reader.Line(text);
        Assert.Equal(("lemon_juice", Unit.Piece), (Reader.Key(line), line.Unit));
        Assert.Equal(grams, line.Grams, 1e-9);
        Assert.Contains(line.Assumptions, a => a.Contains("juice of one", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("1 T honey", Unit.Tablespoon)]
    [InlineData("1 t honey", Unit.Teaspoon)]
    [InlineData("2d aromatic bitters", Unit.Dash)]
    [InlineData("2# rhubarb", Unit.Pound)]
    [InlineData("4 oz strawberries", Unit.WeightOunce)]
    [InlineData("1 c. à s. de miel", Unit.Tablespoon)]
    public void Units_are_read_by_their_short_forms(string text, Unit unit) => Assert.Equal(unit, Reader.Line(text).Unit);

    // ---- places and joins ----------------------------------------------------------------------------------------

    [Theory]
    [InlineData("garnish: lemon twist", Place.Garnish)]
    [InlineData("rim: salt", Place.Rim)]
    [InlineData("rinse the glass with dry vermouth", Place.Rinse)]
    [InlineData("30 ml soda water on the side", Place.Beside)]
    [InlineData("lemon wheel", Place.Garnish)]
    public void Garnish_rim_rinse_and_side_are_lines_with_their_place(string text, Place place) => Assert.Equal(place, Reader.Line(text).Place);

    [Fact]
    public void A_garnish_label_holds_for_the_list_behind_it()
    {
        var drink = Reader.Read("45 ml apple juice", "Garnish: lemon peel, rosemary");
        Assert.Equal([Place.In, Place.Garnish, Place.Garnish], drink.Lines.Select(l => l.Place));
    }

    [Theory]
    [InlineData("shake, coupe", Joins.OnTop)]
    [InlineData("stir", Joins.OnTop)]
    [InlineData("build in a highball over cubes", Joins.InTheGlass)]
    public void What_is_carbonated_is_not_shaken(string build, Joins joins)
    {
        var drink = Reader.Read("45 ml apple juice", "60 ml tonic water", build);
        Assert.Equal((Joins.Mixed, joins), (drink.Lines[0].Joins, drink.Lines[1].Joins));
        Assert.Contains(drink.Lines[1].Assumptions, a => a.StartsWith("Carbonated", StringComparison.Ordinal));
    }

    [Fact]
    public void A_top_to_the_wash_line_has_no_amount_and_a_top_of_60_ml_has()
    {
        var open = Reader.Line("top with soda");
        Assert.True(open.IsTopUp && double.IsNaN(open.Millilitres) && double.IsNaN(open.Grams) && open.Joins == Joins.OnTop);
        var stated = Reader.Line("top with 60 ml soda");
        Assert.Equal((Joins.OnTop, 60.0, Unit.Millilitre), (stated.Joins, stated.Millilitres, stated.Unit));
    }

    [Theory]
    [InlineData("45 ml spirit from the freezer", -18)]
    [InlineData("100 ml black tea at 60 C", 60)]
    [InlineData("100 ml black tea at 176 °F", 80)]
    [InlineData("30 ml apple juice, room temp", 22)]
    public void A_start_that_is_said_holds(string text, double celsius) => Assert.Equal(celsius, Reader.Line(text).StartCelsius, 1e-9);

    [Fact]
    public void A_start_that_is_not_said_is_where_the_ingredient_is_kept()
    {
        var line = Reader.Line("30 ml honey in a chilled coupe");
        Assert.Equal(Reader.Seed.Pantry.Find(line.Ingredient)!.KeptAtCelsius, line.StartCelsius);
    }

    // ---- build ---------------------------------------------------------------------------------------------------

    [Fact]
    public void Ice_before_the_strain_is_the_shakers_and_behind_it_the_glasss()
    {
        var build = Reader.Read("45 ml apple juice", "shake with crushed 10 s, strain into a double rocks over a big cube").Build;
        Assert.Equal(("shaken", 10.0, "crushed", "double_rocks", "strained", "block"), (build.Method, build.Seconds, build.Ice, build.Glass, build.Strain, build.ServedOn));
    }

    [Fact]
    public void Every_key_of_the_build_words_stands_in_the_catalogue()
    {
        var catalogue = Reader.Seed.Catalogue;
        foreach (var (sense, key, _) in BuildWords.Rows)
        {
            Assert.True(
                sense switch
                {
                    Sense.Method => catalogue.Method(key) is not null,
                    Sense.Ice => key.Length == 0 || catalogue.Ice(key) is not null,
                    Sense.Glass => catalogue.Glass(key) is not null,
                    Sense.Strain => key is "strained" or "fine_strained" or "open_pour" or "unstrained",
                    _ => true,
                },
                $"{sense} {key}");
        }
    }

    [Theory]
    [InlineData("needs to warm up a bit")]
    [InlineData("tastes like a shaken milk")]
    [InlineData("was stirred last week")]
    public void A_remark_is_no_order(string remark)
    {
        var drink = Reader.Read("45 ml apple juice", remark);
        Assert.Equal((null, null), (drink.Build.Method, drink.Build.ServedOn));
        Assert.Contains(remark, drink.Notes);
    }

    [Fact]
    public void A_second_method_is_told_in_a_note()
    {
        var drink = Reader.Read("45 ml apple juice", "shake 10 s", "swizzle");
        Assert.Equal("shaken", drink.Build.Method);
        Assert.Contains(drink.Notes, n => n.Contains("swizzled", StringComparison.Ordinal));
    }

    // ---- the text as a whole -------------------------------------------------------------------------------------

    [Fact]
    public void A_file_of_drinks_is_parted_at_empty_lines_and_numbered_from_its_top()
    {
        var drinks = Reader.OfShipped.ReadSheet("Low Quay\n45 ml apple juice\n\n\nHigh Quay\n20 ml hoeny\n", Reader.InMillilitres);
        Assert.Equal(["Low Quay", "High Quay"], drinks.Select(d => d.Name));
        Assert.Equal([5, 6], drinks[1].Account.Select(a => a.Line));
    }

    [Fact]
    public void Unread_lines_and_questions_say_where_they_stand()
    {
        var drink = Reader.Read("Night Rope", "45 ml apple juice, 2.5.1 ml honey", "20 ml leme juice");
        Assert.Equal((2, 20), (drink.Unread[0].Line, drink.Unread[0].Column));
        Assert.Equal((3, 1), (drink.Questions[0].Line, drink.Questions[0].Column));
    }

    [Fact]
    public void Parts_without_a_total_are_asked_and_with_the_houses_total_read()
    {
        Assert.Equal(2, Reader.Read("2 parts apple juice", "1 part verjus").Questions.Count);
        var house = Reader.OfShipped.Read("2 parts apple juice\n1 part verjus", new ReadSettings { PartsTotalMillilitres = 90 });
        Assert.Equal([60, 30], house.Lines.Select(l => Math.Round(l.Millilitres, 6)));
    }

    [Fact]
    public void Either_or_is_asked_however_it_is_written()
    {
        foreach (var text in (string[])["20 ml lemon or lime", "20 lemon/lime", "lemon/lime 20", "2 cl Zitrone oder Limette"])
        {
            Assert.Equal(["lemon_juice", "lime_juice"], Reader.Keys(Reader.Question(text)).Where(k => k != "new").Order());
        }
    }

    [Fact]
    public void The_same_text_reads_the_same_twice()
    {
        const string Text = "45 aple jucie\n20 lemon\n10 hony\nshake, coupe";
        var first = Reader.Read(Text);
        var second = Reader.Read(Text);
        Assert.Equal(first.Lines.Select(l => l.ToString()).Where(s => s.Length > 0).Count(), second.Lines.Count);
        Assert.Equal(first.Lines.Select(l => (l.Ingredient, l.Grams, string.Join('|', l.Assumptions))), second.Lines.Select(l => (l.Ingredient, l.Grams, string.Join('|', l.Assumptions))));
    }

    [Theory]
    [InlineData("Harbour Cup")]
    [InlineData("Winter Drop")]
    [InlineData("Quay Leaf")]
    public void A_name_may_end_in_a_word_that_is_also_a_measure(string name)
    {
        var drink = Reader.Read(name, "45 ml apple juice");
        Assert.Equal((name, 1), (drink.Name, drink.Lines.Count));
        Assert.Empty(drink.Unread);
    }

    [Fact]
    public void A_measure_and_an_ingredient_on_the_first_line_are_a_line_and_no_name()
    {
        var drink = Reader.Read("splash soda water", "45 ml apple juice");
        Assert.Equal(("", 2), (drink.Name, drink.Lines.Count));
    }

    [Fact]
    public void Tea_in_a_hot_drink_is_poured_hot_and_says_so()
    {
        var hot = Reader.Read("150 ml black tea", "20 ml honey", "serve hot in a mug");
        Assert.Equal([90, 22], hot.Lines.Select(l => l.StartCelsius));
        Assert.Contains(hot.Lines[0].Assumptions, a => a.Contains("90", StringComparison.Ordinal));
        Assert.Equal(4, Assert.Single(Reader.Read("150 ml black tea, fridge cold", "stir with cubes").Lines).StartCelsius);
    }
}
