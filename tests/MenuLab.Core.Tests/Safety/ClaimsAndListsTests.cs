using CsCheck;
using MenuLab.Core.Drafts;
using MenuLab.Core.Pantry;
using MenuLab.Core.Safety;

namespace MenuLab.Core.Tests.Safety;

public class ClaimsAndListsTests
{
    public static TheoryData<string> HiddenAlcohol => [.. TestTable.Read("hidden-alcohol.csv").Select(r => r["id"])];

    [Theory]
    [MemberData(nameof(HiddenAlcohol))]
    public void Hidden_alcohol_and_the_words_it_costs_are_those_of_the_table(string id)
    {
        var row = TestTable.Read("hidden-alcohol.csv").Single(r => r["id"] == id);
        var abv = Doses.Abv([new EthanolPart("it", N(row["ingredient_ml"]), N(row["ingredient_abv_percent"]))], N(row["finished_drink_ml"]));
        // Half of the last digit, and what the table's unrounded dash (0.92419 mL, here 0.924) adds: twice 0.00019 mL at 45 % in 90 mL or more.
        Assert.Equal(N(row["drink_abv_percent"]), abv, 0.0005 + 2 * 0.00019 * 45 / 90);

        Assert.All(
            new[]
            {
                ("US", AlcoholWord.NonAlcoholic, "US_non_alcoholic_lt_0_5"), ("UK", AlcoholWord.AlcoholFree, "UK_alcohol_free_le_0_05"),
                ("UK", AlcoholWord.Dealcoholised, "UK_dealc_ceiling_le_0_5"), ("UK", AlcoholWord.LowAlcohol, "UK_low_alcohol_le_1_2"),
                ("AU", AlcoholWord.LowAlcohol, "ANZ_low_alcohol_le_1_15"),
            },
            line => Assert.Equal(row[line.Item3], AlcoholClaims.ByPlace(Rules.In(line.Item1), line.Item2, SafetyFigure.Exactly(abv)).Answer == ClaimAnswer.Allowed ? "yes" : "no"));
        Assert.Equal("no", row["zero_claim_allowed"]);
        Assert.All(["US", "UK", "EU", "AU", "CA", "an island"], site =>
            Assert.NotEqual(ClaimAnswer.Allowed, AlcoholClaims.ToPrint(Rules.In(site), AlcoholWord.AlcoholFree, SafetyFigure.Exactly(abv), true).Answer));
    }

    [Fact]
    public void Two_full_dashes_cross_half_a_per_cent_below_166_millilitres()
    {
        // 2 x 0.924 mL at 45 % in 166 mL: 0.501; in 167 mL: 0.498.
        Assert.True(Doses.Abv([new EthanolPart("bitters", 1.848, 45)], 166) > 0.5);
        Assert.True(Doses.Abv([new EthanolPart("bitters", 1.848, 45)], 167) < 0.5);
    }

    [Fact]
    public void Zero_words_are_never_allowed_while_an_ingredient_carries_alcohol_or_nobody_knows() =>
        Gen.Select(Gen.Double[0, 2], Gen.OneOf("US", "UK", "EU", "AU", "CA", "an island"), Gen.Bool).Sample((abv, site, known) =>
            AlcoholClaims.ToPrint(Rules.In(site), AlcoholWord.AlcoholFree, SafetyFigure.Exactly(abv), known ? true : null).Answer != ClaimAnswer.Allowed);

    [Fact]
    public void More_alcohol_never_allows_more() =>
        Gen.Select(Gen.Double[0, 5], Gen.Double[0, 5], Gen.OneOf("US", "UK", "EU", "AU", "CA", "an island"), Gen.Enum<AlcoholWord>()).Sample((a, b, site, word) =>
            AlcoholClaims.ByPlace(Rules.In(site), word, SafetyFigure.Exactly(Math.Min(a, b))).Answer <= AlcoholClaims.ByPlace(Rules.In(site), word, SafetyFigure.Exactly(Math.Max(a, b))).Answer);

    [Fact]
    public void An_unknown_place_is_as_strict_as_the_strictest() =>
        Gen.Select(Gen.Double[0, 2], Gen.OneOf("US", "UK", "AU", "CA"), Gen.OneOf(AlcoholWord.AlcoholFree, AlcoholWord.NonAlcoholic, AlcoholWord.LowAlcohol)).Sample((abv, site, word) =>
        {
            var there = AlcoholClaims.ByPlace(Rules.In(site), word, SafetyFigure.Exactly(abv)).Answer;
            return there == ClaimAnswer.NotSettled || AlcoholClaims.ByPlace(Rules.In("an island"), word, SafetyFigure.Exactly(abv)).Answer >= there;
        });

    [Fact]
    public void A_strength_that_may_be_over_or_is_not_known_is_not_settled()
    {
        var mayBe = new SafetyFigure(0.45, 0.4, 0.52, false, []);
        Assert.Equal(ClaimAnswer.NotSettled, AlcoholClaims.ByPlace(Rules.Us, AlcoholWord.NonAlcoholic, mayBe).Answer);
        Assert.Equal(ClaimAnswer.NotSettled, AlcoholClaims.ByPlace(Rules.Us, AlcoholWord.NonAlcoholic, SafetyFigure.Unknown([])).Answer);
        Assert.Equal(ClaimAnswer.NotSettled, AlcoholClaims.ByPlace(Rules.In("EU"), AlcoholWord.NonAlcoholic, SafetyFigure.Exactly(0.1)).Answer);   // no line found
    }

    [Fact]
    public void A_claim_s_own_words_are_read_and_judged_together()
    {
        Assert.Equal([AlcoholWord.AlcoholFree, AlcoholWord.LowAlcohol], Claims.WordsOf("No alcohol; low alcohol on request"));
        Assert.Equal([AlcoholWord.NonAlcoholic, AlcoholWord.Dealcoholised], Claims.WordsOf("Non-alcoholic, made of dealcoholised wine"));
        Assert.Equal([AlcoholWord.NonIntoxicating], Claims.WordsOf("non-intoxicating"));
        Assert.Empty(Claims.WordsOf("bright and short"));
        var verdict = AlcoholClaims.OfText(Rules.In("UK"), "alcohol-free", SafetyFigure.Exactly(0.02), true);
        Assert.Equal(ClaimAnswer.NotAllowed, verdict.Answer);
        Assert.True(Assert.Single(verdict.Cautions).NeedsReason);
        Assert.Equal(ClaimAnswer.Allowed, AlcoholClaims.OfText(Rules.In("UK"), "bright and short", SafetyFigure.Exactly(20), true).Answer);
        Assert.Equal(ClaimAnswer.Allowed, AlcoholClaims.OfText(Rules.In("UK"), "alcohol-free", SafetyFigure.Exactly(0), false).Answer);
    }

    [Fact]
    public void Non_alcoholic_beside_the_name_of_an_alcoholic_drink_is_not_for_the_UK() =>
        Assert.Equal(ClaimAnswer.NotAllowed, AlcoholClaims.ByPlace(Rules.In("UK"), AlcoholWord.NonAlcoholic, SafetyFigure.Exactly(0), besideAlcoholName: true).Answer);

    [Fact]
    public void Duties_begin_where_each_place_says()
    {
        Assert.NotNull(AlcoholClaims.Duties(Rules.Us, SafetyFigure.Exactly(0.5)).Of("CL-US-06"));
        Assert.Null(AlcoholClaims.Duties(Rules.In("UK"), SafetyFigure.Exactly(0.5)).Of("CL-UK-05"));
        Assert.NotNull(AlcoholClaims.Duties(Rules.In("UK"), SafetyFigure.Exactly(0.51)).Of("CL-UK-05"));
        Assert.NotNull(AlcoholClaims.Duties(Rules.In("PT"), SafetyFigure.Exactly(1.3)).Of("CL-EU-01"));
        Assert.True(AlcoholClaims.Duties(Rules.In("EU"), new SafetyFigure(1.15, 1.1, 1.25, false, [])).Of("CL-EU-07")!.IsNotSettled);
    }

    // ---- allergens

    [Theory]
    [InlineData("Oat milk", "gluten_cereal", AllergenState.Present)]
    [InlineData("Condensed milk", "milk", AllergenState.Present)]
    [InlineData("Aromatic bitters", "celery", AllergenState.Unknown)]
    [InlineData("Pistachio syrup", "tree_nut", AllergenState.Present)]
    [InlineData("Falernum", "tree_nut", AllergenState.Unknown)]
    [InlineData("Tomato-clam juice", "mollusc", AllergenState.Present)]
    [InlineData("Milk-washed rum", "milk", AllergenState.Present)]
    [InlineData("Red wine", "sulphite", AllergenState.Present)]
    [InlineData("Chitosan", "crustacean", AllergenState.Present)]
    public void A_name_tells_what_to_look_for(string name, string key, AllergenState state) =>
        Assert.Contains(AllergenLists.InName(Rules.Book, name), h => h.Key == key && h.State == state);

    [Theory]
    [InlineData("Oat milk", "milk")]
    [InlineData("Coconut cream", "milk")]
    [InlineData("Cream of tartar", "milk")]
    [InlineData("Ginger beer", "gluten_cereal")]
    [InlineData("Butterfly pea flower", "milk")]
    [InlineData("Pale ginger tea", "gluten_cereal")]   // "ale" inside "pale"
    [InlineData("White wine vinegar", "milk")]
    public void A_name_does_not_tell_of_what_only_sounds_like_it(string name, string key) => Assert.DoesNotContain(AllergenLists.InName(Rules.Book, name), h => h.Key == key);

    [Fact]
    public void Every_listed_allergen_of_the_pantry_is_on_some_list_and_every_hint_names_one()
    {
        Assert.All(Enum.GetValues<Allergen>(), a => Assert.True(AllergenLists.IsListed(Rules.Book, a, Jurisdictions.All), a.ToString()));
        Assert.All(Rules.Book.AllergenWords.SelectMany(w => w.Brings), b => Assert.Contains(Rules.Book.Allergens, a => a.Key == b.Key));
        // US nine with wheat; the EU's fourteen, whose cereals with gluten stand as two words here.
        Assert.Equal(9, Enum.GetValues<Allergen>().Count(a => AllergenLists.IsListed(Rules.Book, a, Jurisdictions.UnitedStates)));
        Assert.Equal(15, Enum.GetValues<Allergen>().Count(a => AllergenLists.IsListed(Rules.Book, a, Jurisdictions.EuropeanUnion)));
    }

    [Theory]
    [InlineData("coconut", Jurisdictions.UnitedStates, false)]   // FDA Q&A ed. 5, January 2025
    [InlineData("pine nut", Jurisdictions.UnitedStates, true)]
    [InlineData("pine nut", Jurisdictions.EuropeanUnion, false)]
    [InlineData("chestnut", Jurisdictions.UnitedStates, false)]
    [InlineData("almonds", Jurisdictions.Canada, true)]
    [InlineData("tiger nut", Jurisdictions.UnitedStates, null)]
    public void Lists_of_nuts_differ(string nut, Jurisdictions where, bool? counts) => Assert.Equal(counts, AllergenLists.CountsAsTreeNut(Rules.Book, nut, where));

    [Fact]
    public void Shared_kit_brings_what_the_drink_lacks_as_a_question()
    {
        var drink = default(AllergenSet).With(Allergen.Egg, AllergenState.Present);
        var kit = drink.With(Allergen.TreeNuts, AllergenState.Present).With(Allergen.Milk, AllergenState.Unknown);
        var carried = AllergenLists.CrossContact(drink, kit);
        Assert.Equal(0u, carried.Present);
        Assert.Equal([Allergen.Milk, Allergen.TreeNuts], Enum.GetValues<Allergen>().Where(a => carried[a] == AllergenState.Unknown));
    }

    [Fact]
    public void A_drink_with_molluscs_alone_passes_a_US_list_and_is_shown_all_the_same()
    {
        var cautions = Rules.Us.Check(AllergenLists.Facts(Rules.Book, default(AllergenSet).With(Allergen.Molluscs, AllergenState.Present), isSharedKit: true));
        Assert.Null(cautions.Of("AL-01"));
        Assert.NotNull(cautions.Of("AL-09"));
        Assert.NotNull(cautions.Of("AL-05"));
        Assert.NotNull(Rules.In("EU").Check(AllergenLists.Facts(Rules.Book, default(AllergenSet).With(Allergen.Molluscs, AllergenState.Present), null)).Of("AL-03"));
        Assert.Empty(Rules.Us.Check(AllergenLists.Facts(Rules.Book, default, true)));
    }

    [Fact]
    public void Sulphites_are_carried_over_by_dilution()
    {
        // Wine at 100 mg/L, 60 mL in 180 mL: 33 mg/L, to be declared.
        var level = Doses.CarriedOver(100, 60, 180);
        Assert.Equal(33.3, level, 0.05);
        Assert.NotNull(Rules.In("EU").Check(SafetyFacts.None.With("so2_mg_per_l", level)).Of("SB-SUL-01"));
    }

    // ---- doses, worked by hand

    [Fact]
    public void Doses_are_those_of_the_worked_examples()
    {
        Assert.Equal(82.9, Doses.QuinineBase(QuinineSalt.SulphateDihydrate, 100), 0.05);        // factor 0.829
        Assert.Equal(81.7, Doses.QuinineBase(QuinineSalt.HydrochlorideDihydrate, 100), 0.05);   // factor 0.817
        // 20 g/L bark at 5 % alkaloids fully drawn, 30 mL in 180 mL: 167 mg/L.
        Assert.Equal(167, Doses.CarriedOver(1000, 30, 180), 0.5);
        Assert.True(Doses.PotentialAbv(0, 50) > Doses.PotentialAbv(50));
        Assert.Throws<ArgumentOutOfRangeException>(() => Doses.PerLitre(1, 0));
        Assert.True(double.IsNaN(Doses.Abv([new EthanolPart("a bottle without a label", 5, double.NaN)], 100)));
    }

    // ---- rounding

    [Theory]
    [InlineData("servings", 2.4, 2.5)]
    [InlineData("servings", 6.5, 7)]
    [InlineData("cholesterol", 1.9, 0)]
    [InlineData("cholesterol", 12.4, 10)]
    [InlineData("kcal", 5, 5)]
    public void A_declared_figure_is_rounded_once_in_its_band(string key, double figure, double declared) => Assert.Equal(declared, NutritionLabels.Round(Rules.Book, key, figure).Value);

    [Fact]
    public void Every_figure_has_a_band_and_rounding_never_strays_a_step() =>
        Gen.Select(Gen.OneOf("kcal", "fat", "cholesterol", "sodium", "carbohydrate", "servings"), Gen.Double[0, 1000]).Sample((key, figure) =>
        {
            var declared = NutritionLabels.Round(Rules.Book, key, figure);
            return declared.Words.Length > 0 || Math.Abs(declared.Value - figure) <= Math.Max(declared.Band.Step / 2, declared.Band.To is double.NaN || declared.Band.Step > 0 ? 0 : declared.Band.To) + 1e-9;
        });

    private static double N(string text) => double.Parse(text, System.Globalization.CultureInfo.InvariantCulture);
}
