using MenuLab.Core.Drafts;
using MenuLab.Core.House;
using MenuLab.Core.Pantry;
using MenuLab.Core.Safety;
using MenuLab.Data.Seeding;

namespace MenuLab.Core.Tests.Safety;

public class RuleBookTests
{
    [Fact]
    public void Every_rule_has_a_source_a_place_a_status_and_something_to_do()
    {
        Assert.Equal(1, Rules.Book.Number);
        Assert.Equal(130, Rules.Book.Rules.Count);
        Assert.All(Rules.Book.Rules, r => Assert.True(r.Source.Text.Length > 0 && r.Todo.Length > 10 && r.Where != Jurisdictions.None, r.Id));
        Assert.All(Rules.Book.Rules, r => Assert.EndsWith("local codes decide", r.Source.InWords, StringComparison.Ordinal));
        Assert.Contains(Rules.Book.Rules, r => r.Source.Status == FigureStatus.Memory && r.Source.InWords.Contains("recalled and unverified", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("US", Jurisdictions.UnitedStates)]
    [InlineData("US-CA", Jurisdictions.UnitedStates)]
    [InlineData("gb", Jurisdictions.UnitedKingdom)]
    [InlineData("PT", Jurisdictions.EuropeanUnion)]
    [InlineData("NZ", Jurisdictions.AustraliaNewZealand)]
    [InlineData("CA", Jurisdictions.Canada)]
    [InlineData("ZZ", Jurisdictions.All)]
    public void A_site_s_word_for_its_law_is_read_and_an_unknown_one_gets_all_rules(string site, Jurisdictions where) => Assert.Equal(where, Jurisdiction.Of(site));

    [Theory]
    [InlineData("rules.csv", "caffeine_mg,>,200,mg", "caffeine_mg,>,200,g", "unit")]
    [InlineData("rules.csv", "caffeine_mg,>,200,mg", "coffee_mg,>,200,mg", "subject")]
    [InlineData("rules.csv", "caffeine_mg,>,200,mg", "caffeine_mg,>,many,mg", "limit")]
    [InlineData("rules.csv", "strongest", "fatal", "strength")]
    [InlineData("claims.csv", "CL-US-01,US,", "CL-US-01,Atlantis,", "places")]
    [InlineData("tcs.csv", "TCS-A-01,A,", "TCS-A-01,C,", "table")]
    public void A_fault_in_a_file_is_told_with_file_line_and_column(string file, string was, string becomes, string column)
    {
        var fault = Assert.Throws<FormatException>(() => RuleBook.Parse(name =>
        {
            var text = File.ReadAllText(Path.Combine(SeedData.DefaultFolder, "safety", name));
            Assert.True(name != file || text.Contains(was, StringComparison.Ordinal));
            return name == file ? text.Replace(was, becomes, StringComparison.Ordinal) : text;
        }));
        Assert.StartsWith($"{file}, line ", fault.Message, StringComparison.Ordinal);
        Assert.Contains($"column {column}", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_house_adds_rules_on_figures_and_on_words_and_takes_none_away()
    {
        var house = HouseRules.Of(
            2,
            [
                new HouseRuleWish { Id = "H-01", Name = "House caffeine", Quantity = "caffeine_mg", Operator = ">", Limit = 120, Strength = CautionStrength.Act, Todo = "Print it twice." },
                new HouseRuleWish { Id = "H-02", Name = "Pink pepper", Words = "pink pepper|pink peppercorn", Strength = CautionStrength.Mind, Todo = "Warn cashew guests.", Source = "our own kitchen" },
            ],
            [], Rules.Book).Value;
        var rules = Rules.Us with { House = house };
        var cautions = rules.Check(SafetyFacts.None.With("caffeine_mg", 210));
        Assert.NotNull(cautions.Of("SB-CAF-01"));
        Assert.Equal("210.0 mg against at most 120 mg", cautions.Of("H-01")!.Against);
        Assert.Equal("our own kitchen; local codes decide", house.Rules[1].Source.InWords);

        var again = HouseRules.FromJson(house.ToJson(), Rules.Book);
        Assert.Equal(house.ToJson(), again.ToJson());
        Assert.Equal(["H-01", "H-02"], again.Rules.Select(r => r.Id));
    }

    [Fact]
    public void A_house_rule_that_says_too_little_is_refused_with_all_that_is_wrong()
    {
        var refused = HouseRules.Of(
            1,
            [
                new HouseRuleWish { Id = "TC-05", Name = "", Quantity = "coffee", Operator = "=", Limit = double.NaN, Todo = "" },
                new HouseRuleWish { Id = "H-03", Name = "Both", Quantity = "caffeine_mg", Operator = ">", Limit = 1, Words = "x", Todo = "Do." },
            ],
            [new HouseShelfLife("moonshine", 5, ""), new HouseShelfLife("shrub", 0, "")], Rules.Book);
        Assert.False(refused.IsOk);
        Assert.Equal(9, refused.Problems.Count);
        Assert.All(
            ["[]", "{}", "null", """{"number":0,"rules":[],"shelf_lives":[]}""", """{"number":1,"rules":[null],"shelf_lives":[]}""", """{"number":1,"rules":[]}"""],
            text => Assert.Throws<FormatException>(() => HouseRules.FromJson(System.Text.Encoding.UTF8.GetBytes(text), Rules.Book)));
    }

    [Fact]
    public void A_prep_label_nobody_decided_on_says_cold_untested_and_use_by()
    {
        var fields = LabelField.Of(Rules.Us, PrintedDocument.PrepLabel, SafetyFacts.None).Select(f => f.Id).ToList();
        Assert.Equal(["LB-P-01", "LB-P-02", "LB-P-03", "LB-P-04", "LB-P-05", "LB-P-06", "LB-P-09"], fields);
        var released = TcsDecision.Of(new PrepToHold { Ph = new(3.1, ReadingOrigin.Measured) }, Rules.Us);
        Assert.Equal(["LB-P-01", "LB-P-02", "LB-P-05", "LB-P-06", "LB-P-08"], LabelField.Of(Rules.Us, PrintedDocument.PrepLabel, released.Facts, released).Select(f => f.Id));
    }

    [Fact]
    public void A_card_says_what_the_drink_holds_and_nothing_that_nobody_asked()
    {
        Assert.Equal(["LB-S-01", "LB-S-02"], LabelField.Of(Rules.In("EU"), PrintedDocument.SpecCard, SafetyFacts.None).Select(f => f.Id));
        var facts = SafetyFacts.None.With("ethanol", true).With("abv_percent", 0.3).With("quinine_mg", 4.0).With("raw_egg", true).With("so2_mg_per_l", double.NaN);
        Assert.Equal(
            ["LB-S-01", "LB-S-02", "LB-S-03", "LB-S-04", "LB-S-05", "LB-S-07", "LB-S-10"], LabelField.Of(Rules.Us, PrintedDocument.SpecCard, facts).Select(f => f.Id));
        Assert.Equal(["LB-S-18"], LabelField.Of(Rules.Us, PrintedDocument.WidePrint, SafetyFacts.None).Select(f => f.Id));
    }

    [Fact]
    public void Words_are_found_whole_in_any_case_and_with_marks_or_in_the_plural()
    {
        Assert.True(new Phrase("tonka", false).IsIn("Tonka-bean syrup"));
        Assert.True(new Phrase("bean", false).IsIn("Tónka BEANS"));
        Assert.True(new Phrase("st john's wort", false).IsIn("St John\u2019s Wort tea"));
        Assert.True(new Phrase("elderberry", false).IsIn("elderberries, raw"));
        Assert.False(new Phrase("ale", false).IsIn("kale juice"));
        Assert.False(new Phrase("yew", false).IsIn("Yewberry"));
    }

    [Fact]
    public void The_shipped_pantry_s_own_allergens_agree_with_the_words_where_both_are_sure()
    {
        var pantry = SeedData.Load(SeedData.DefaultFolder).Pantry;
        var missed = new List<string>();
        foreach (var ingredient in pantry.All)
        {
            foreach (var hint in AllergenLists.InName(Rules.Book, ingredient.Name).Where(h => h.State == AllergenState.Present))
            {
                if (Rules.Book.Allergens.Single(a => a.Key == hint.Key).Allergen is { } allergen && ingredient.Composition.Allergens[allergen] == AllergenState.Absent)
                {
                    missed.Add($"{ingredient.Name}: {hint.Key} by {hint.Row.Id}");
                }
            }
        }
        Assert.Empty(missed);
    }

    [Fact]
    public void House_format_reaches_the_text_of_a_claim() =>
        Assert.Contains(
            "0,55", AlcoholClaims.ByPlace(Rules.Us with { Format = new HouseFormat(NumberPattern.Comma) }, AlcoholWord.NonAlcoholic, SafetyFigure.Exactly(0.55)).Cautions[0].Text,
            StringComparison.Ordinal);
}
