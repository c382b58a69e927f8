using System.Globalization;
using MenuLab.Core.Balance;
using MenuLab.Core.Drafts;
using MenuLab.Core.House;
using MenuLab.Core.Pantry;
using MenuLab.Core.Specs;
using MenuLab.TestKit.Balance;

namespace MenuLab.Core.Tests.Specs;

public class SpecCardTests
{
    private static readonly IngredientId Barley = Made.Id(), Quince = Made.Id(), Verjus = Made.Id(), Saline = Made.Id(), Soda = Made.Id(), Spirit = Made.Id();

    private static readonly Dictionary<IngredientId, string> Names = new()
    {
        [Barley] = "Toasted barley tea", [Quince] = "Quince cordial", [Verjus] = "Verjus", [Saline] = "Smoked saline 20 %", [Soda] = "Soda water", [Spirit] = "Pear spirit",
    };

    private static readonly Glass Coupe = new("coupe", "Coupe", 190, 165, "none", "test");

    private static readonly BuildCatalogue Catalogue = new([Made.Shaken], [Made.Cubes], [Made.Highball, Coupe]);

    private static readonly Build Shake = new() { Method = "shaken", Seconds = 12, Glass = "coupe", Strain = "fine_strained", Steps = ["Shake till the tin frosts."] };

    private static readonly DraftLine[] LowWater =
    [
        Line(Barley, 45, Unit.Millilitre, 45, celsius: 22),
        Line(Quince, 0.75, Unit.FluidOunce, 22.18),
        Line(Verjus, 25, Unit.Millilitre, 25) with { Treatment = "strained" },
        Line(Saline, 4, Unit.Drop, 0.2) with { Joins = Joins.OnTop },
    ];

    [Fact]
    public void Lines_print_the_unit_typed_and_the_other_on_the_grid()
    {
        var lines = Card(LowWater, Shake).Lines;
        Assert.Equal(["45 mL", "22.5 mL", "25 mL", "4 drops"], lines.Select(line => line.Amount.ToString()));
        Assert.Equal(["1 ½ fl oz", "¾ fl oz", "–", "0.2 mL"], lines.Select(line => line.Other.ToString()));
    }

    [Fact]
    public void A_house_that_reads_ounces_has_them_first()
    {
        var lines = SpecCard.Content(Request(LowWater, Shake) with { FluidOuncesFirst = true }).Lines;
        Assert.Equal(["1 ½ fl oz", "¾ fl oz", "25 mL", "4 drops"], lines.Select(line => line.Amount.ToString()));
    }

    [Fact]
    public void A_line_says_what_is_done_to_it_where_it_starts_and_when_it_joins()
    {
        var lines = Card(LowWater, Shake).Lines;
        Assert.Equal(["shelf", "fridge", "strained, fridge", "fridge, last, on top"], lines.Select(line => line.Detail));
    }

    [Fact]
    public void What_joins_later_stands_below_what_is_mixed_whatever_was_typed_first()
    {
        DraftLine[] typed = [Line(Soda, double.NaN, Unit.Top, double.NaN) with { Joins = Joins.OnTop }, Line(Quince, 30, Unit.Millilitre, 30)];
        Assert.Equal(["Quince cordial", "Soda water"], Card(typed, new Build()).Lines.Select(line => line.Name));
    }

    [Fact]
    public void The_ladder_adds_what_was_poured_and_then_what_the_ice_gave()
    {
        var request = Request(LowWater, Shake);
        var ladder = SpecCard.Content(request).Ladder;
        Assert.Equal(["45", "to 67", "to 92"], ladder.Take(3).Select(rung => rung.Label));
        Assert.Equal(RungKind.Melt, ladder[3].Kind);
        // The balance counts contraction, the ladder does not: no alcohol here, so they agree but for the saline.
        Assert.Equal(request.Balance.Served![Metric.Volume].Value, ladder[3].To, 0.5);
        Assert.Equal(4, ladder.Count);
        Assert.Equal(165, SpecCard.Content(request).WashLineMillilitres);
    }

    [Fact]
    public void Every_rung_begins_where_the_one_before_ended_or_after_a_line_too_small_to_draw()
    {
        var ladder = Card(LowWater, Shake).Ladder;
        Assert.All(ladder.Skip(1).Zip(ladder), pair => Assert.InRange(pair.First.From - pair.Second.To, 0, 2));
    }

    [Fact]
    public void A_long_drink_is_filled_to_the_wash_line_with_its_ice()
    {
        DraftLine[] lines = [Line(Spirit, 45, Unit.Millilitre, 45), Line(Soda, double.NaN, Unit.Top, double.NaN) with { Joins = Joins.OnTop }];
        WeighedLine[] weighed = [Made.Line(Made.Spirit, 45, id: Spirit), Made.TopUp(Made.Water)];
        var build = new Build { Method = "shaken", Glass = "highball" };
        var balance = BalanceEngine.Of(weighed, new BuildModel(Made.Shaken, Made.Cubes, Made.Highball, Made.Cubes), Detail.RangesAndShares);
        var card = SpecCard.Content(Request(lines, build) with { Balance = balance });
        Assert.Equal("top", card.Lines[1].Amount.ToString());
        Assert.Matches("^≈ [0-9]*[05] mL$", card.Lines[1].Other.ToString());
        Assert.Equal([RungKind.Line, RungKind.Melt, RungKind.Line, RungKind.Ice], card.Ladder.Select(rung => rung.Kind));
        Assert.Equal(300, card.Ladder[^1].To, 0.5);
        Assert.Equal("Highball, cubes", card.Facts.Single(fact => fact.Name == "Glass").Text);
    }

    [Fact]
    public void Facts_are_named_and_what_nobody_said_reads_not_said()
    {
        Assert.Equal(
            ["Method: Shaken, 12 s, fine-strained", "Ice: Cubes", "Glass: Coupe, no ice"],
            Card(LowWater, Shake).Facts.Select(fact => $"{fact.Name}: {fact.Text}"));
        Assert.Equal(["not said", "not said", "not said"], Card(LowWater, new Build()).Facts.Select(fact => fact.Text));
    }

    [Fact]
    public void What_is_not_in_the_liquid_is_a_fact_and_no_line()
    {
        DraftLine[] lines =
        [
            Line(Barley, 45, Unit.Millilitre, 45),
            Line(Quince, 1, Unit.Leaf, double.NaN) with { Place = Place.Garnish, Treatment = "torched" },
            Line(Saline, double.NaN, Unit.None, double.NaN) with { Place = Place.Rim },
        ];
        var card = Card(lines, Shake);
        Assert.Equal(["Toasted barley tea"], card.Lines.Select(line => line.Name));
        Assert.Equal("1 leaf Quince cordial, torched", card.Facts.Single(fact => fact.Name == "Garnish").Text);
        Assert.Equal("Smoked saline 20 %", card.Facts.Single(fact => fact.Name == "Rim").Text);
    }

    [Theory]
    [InlineData(Unit.Dash, 2, "2 dashes", "–")]
    [InlineData(Unit.Dash, 1, "1 dash", "–")]
    [InlineData(Unit.BarSpoon, 0.5, "½ bar spoon", "2.5 mL")]
    [InlineData(Unit.Gram, 12.5, "12.5 g", "–")]
    [InlineData(Unit.Piece, 3, "3 pieces", "–")]
    [InlineData(Unit.Leaf, 6, "6 leaves", "–")]
    [InlineData(Unit.Mist, 1, "1 spray", "–")]
    public void Counted_measures_print_as_themselves(Unit unit, double amount, string first, string other)
    {
        var line = Card([Line(Saline, amount, unit, unit == Unit.BarSpoon ? 5 * amount : amount)], Shake).Lines[0];
        Assert.Equal(first, line.Amount.ToString());
        Assert.Equal(other, line.Other.ToString());
    }

    [Fact]
    public void A_range_prints_as_a_range()
    {
        var line = Line(Saline, 2.5, Unit.Dash, 2) with { AmountLow = 2, AmountHigh = 3 };
        Assert.Equal("2–3 dashes", Card([line], Shake).Lines[0].Amount.ToString());
    }

    [Theory]
    [InlineData(-18, "freezer")]
    [InlineData(4, "fridge")]
    [InlineData(22, "shelf")]
    [InlineData(85, "hot, 85 °C")]
    [InlineData(12, "12 °C")]
    public void Where_a_line_starts_is_a_word_where_there_is_one(double celsius, string word) =>
        Assert.Equal(word, Card([Line(Barley, 45, Unit.Millilitre, 45, celsius)], Shake).Lines[0].Detail);

    [Fact]
    public void Allergens_are_named_by_species_and_open_ones_are_questions()
    {
        var set = default(AllergenSet).With(Allergen.Gluten, AllergenState.Present).With(Allergen.Sulphites, AllergenState.Present).With(Allergen.Celery, AllergenState.Unknown);
        var names = new Dictionary<Allergen, string> { [Allergen.Gluten] = "barley (gluten)" };
        Assert.Equal("Contains barley (gluten) and sulphites.", CardWords.Contains(set, names));
        Assert.Equal("Not settled: celery. Ask before serving.", CardWords.Open(set, names));
        Assert.Equal("", CardWords.Open(default, names));
        Assert.Equal("", CardWords.Contains(default(AllergenSet).With(Allergen.Milk, AllergenState.Unknown), names));
    }

    [Fact]
    public void A_drink_without_declared_allergens_is_never_called_free_or_safe()
    {
        var sentence = CardWords.Contains(default, new Dictionary<Allergen, string>());
        Assert.Equal("No allergen of the list is declared.", sentence);
        Assert.DoesNotContain("safe", Card(LowWater, Shake).CrossContact + sentence, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void Each_allergen_has_a_word()
    {
        var words = Enum.GetValues<Allergen>().Select(CardWords.Name).ToList();
        Assert.Equal(words.Count, words.Distinct().Count());
        Assert.All(words, word => Assert.Equal(word.ToLowerInvariant(), word));
    }

    [Fact]
    public void Without_alcohol_the_card_says_what_is_recorded_and_makes_no_claim() =>
        Assert.Equal("No alcohol recorded in its ingredients.", Card(LowWater, Shake).Strength);

    [Theory]
    [InlineData(0.5, "Below 0.5 % ABV; contains traces of alcohol.")]
    [InlineData(45, "% ABV, likely ")]
    public void Strength_says_traces_below_half_a_per_cent_and_a_range_above(double spirit, string expected)
    {
        var lines = (DraftLine[])[Line(Barley, 60, Unit.Millilitre, 60), Line(Spirit, spirit, Unit.Millilitre, spirit)];
        Assert.Contains(expected, Card(lines, Shake).Strength, StringComparison.Ordinal);
    }

    [Fact]
    public void Before_ice_the_strength_says_so()
    {
        var request = Request([Line(Spirit, 45, Unit.Millilitre, 45)], Shake);
        var mixedOnly = BalanceEngine.Of([Made.Line(Made.Spirit, 45, uncertaintyMillilitres: 1)], Made.NoBuild, Detail.RangesAndShares);
        if (mixedOnly.Served is null)
        {
            Assert.StartsWith("40.0 % ABV before ice", SpecCard.Content(request with { Balance = mixedOnly }).Strength, StringComparison.Ordinal);
        }
        else
        {
            Assert.Fail("Without a build there should be no served state.");
        }
    }

    [Fact]
    public void A_part_that_nobody_knows_makes_the_strength_unknown()
    {
        var unknown = BalanceEngine.Of([Made.Line(Made.Spirit, 30)], Made.NoBuild, Detail.Figures, uncountedMillilitres: 60);
        Assert.Equal("Strength unknown.", SpecCard.Content(Request(LowWater, Shake) with { Balance = unknown }).Strength);
    }

    [Fact]
    public void A_line_without_a_name_is_the_callers_mistake() =>
        Assert.Throws<ArgumentException>(() => Card([Line(Made.Id(), 30, Unit.Millilitre, 30)], Shake));

    [Fact]
    public void A_comma_culture_changes_nothing()
    {
        var before = CultureInfo.CurrentCulture;
        var expected = Flat(Card(LowWater, Shake));
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
            Assert.Equal(expected, Flat(Card(LowWater, Shake)));
            Assert.Contains("22.5", Flat(Card(LowWater, Shake)), StringComparison.Ordinal);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void A_house_that_writes_a_comma_has_it_in_every_figure_of_its_card_and_its_days_in_its_own_order()
    {
        var plain = Card(LowWater, Shake);
        var comma = SpecCard.Content(Request(LowWater, Shake) with { Format = new HouseFormat(NumberPattern.Comma, DatePattern.YearMonthDay) });
        Assert.Contains("22,5", Flat(comma), StringComparison.Ordinal);
        Assert.DoesNotMatch(@"\d\.\d", Flat(comma));
        // Nothing else differs: the sentences' own commas are not between digits.
        Assert.Equal(Flat(plain), System.Text.RegularExpressions.Regex.Replace(Flat(comma), @"(?<=\d),(?=\d)", "."));
        Assert.Equal("2026-10-19", comma.Format.Day(comma.PrintedOn));
    }

    [Fact]
    public void Cereals_and_nuts_are_named_by_species_where_every_ingredient_says_which()
    {
        Assert.Equal("barley and oats (gluten)", AllergenSpecies.Name(Allergen.Gluten, ["barley", "Oats ", "barley"]));
        Assert.Equal("almond (tree nuts)", AllergenSpecies.Name(Allergen.TreeNuts, ["almond"]));
        Assert.Null(AllergenSpecies.Name(Allergen.Gluten, ["barley", ""]));
        Assert.Null(AllergenSpecies.Name(Allergen.Gluten, ["read the label"]));
        Assert.Null(AllergenSpecies.Name(Allergen.Gluten, []));
        Assert.Null(AllergenSpecies.Name(Allergen.Sulphites, ["nearly always above 10 mg/L"]));
    }

    private static string Flat(CardContent card) => string.Join(
        "|", [.. card.Lines.Select(line => line.ToString()), .. card.Ladder.Select(rung => rung.Label), .. card.Facts.Select(fact => fact.Text), card.Strength, card.Energy]);

    private static CardContent Card(DraftLine[] lines, Build build) => SpecCard.Content(Request(lines, build));

    private static CardRequest Request(DraftLine[] lines, Build build)
    {
        var weighed = lines.Where(line => double.IsFinite(line.Millilitres)).Select(line => Made.Line(
            line.Ingredient == Spirit ? Made.Spirit : line.Ingredient == Quince ? Made.Syrup : Made.Water,
            line.Millilitres, line.Joins, line.StartCelsius, line.Millilitres / 50, line.Ingredient)).ToArray();
        return new CardRequest
        {
            Name = "Low Water Orchard", Issue = "iteration 4", IsDraft = true, PrintedOn = new DateOnly(2026, 10, 19),
            Lines = lines, Names = Names, Build = build, Catalogue = Catalogue, Grid = new PourGrid(),
            Balance = BalanceEngine.Of(
                weighed,
                new BuildModel(Catalogue.Method(build.Method), Made.Cubes, Catalogue.Glass(build.Glass), null),
                Detail.RangesAndShares),
        };
    }

    private static DraftLine Line(IngredientId ingredient, double amount, Unit unit, double millilitres, double celsius = 4) => new()
    {
        Text = $"{amount} {unit}", Ingredient = ingredient, Amount = amount, AmountLow = amount, AmountHigh = amount, Unit = unit,
        Millilitres = millilitres, Grams = millilitres, StartCelsius = celsius,
    };
}
