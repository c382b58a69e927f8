using System.Globalization;
using MenuLab.Core.Balance;
using MenuLab.Core.House;
using MenuLab.Core.Pantry;
using MenuLab.Core.Safety;
using MenuLab.Core.Solutions;
using MenuLab.TestKit.Balance;

namespace MenuLab.Core.Tests.Safety;

public class CautionsTests
{
    [Fact]
    public void Plain_syrup_and_water_raise_nothing() => Assert.Empty(Of("US", Made.Line(Made.Syrup, 20), Made.Line(Made.Water, 80)));

    [Fact]
    public void Without_rules_a_drink_says_that_nothing_was_checked()
    {
        WeighedLine[] lines = [Made.Line(Made.Water, 80)];
        var caution = Assert.Single(Cautions.Of(lines, BalanceEngine.Of(lines, Made.NoBuild, Detail.Ranges), DrinkWords.None, SiteRules.None));
        Assert.Contains("nothing was checked", caution.Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("US")]
    [InlineData("EU")]   // a US rule, shown as advice
    [InlineData("an island")]
    public void Raw_egg_is_named_with_its_line_wherever_it_is_served(string site)
    {
        var egg = new Composition(Made.Water.PerGram, ulong.MaxValue, [], default, CompositionCaveats.RawEgg);
        var caution = Of(site, Made.Line(Made.Water, 60), Made.Line(egg, 25)).Of("TC-16")!;
        Assert.StartsWith("Raw egg", caution.Text, StringComparison.Ordinal);
        Assert.Equal([1], caution.Lines);
        Assert.Equal(site == "EU", caution.Text.Contains("shown here as advice", StringComparison.Ordinal));
    }

    [Fact]
    public void Quinine_over_83_mg_per_litre_in_a_fizzy_drink_asks_for_a_reason_in_the_US_and_a_word_everywhere()
    {
        // 21 CFR 172.575: 83 ppm in carbonated beverages, and to be declared.
        var strong = Fizzy(0.1);   // 100 mg/kg
        var weak = Fizzy(0.06);
        Assert.True(Of("US", Made.Line(strong, 100)).Of("SB-QUI-01")!.NeedsReason);
        Assert.Contains("83 mg/L", Of("US", Made.Line(strong, 100)).Of("SB-QUI-01")!.Against, StringComparison.Ordinal);
        Assert.Null(Of("US", Made.Line(weak, 100)).Of("SB-QUI-01"));
        Assert.Null(Of("EU", Made.Line(strong, 100)).Of("SB-QUI-01"));
        Assert.All(["US", "EU"], site => Assert.Contains("contains quinine", Of(site, Made.Line(weak, 100)).Of("SB-QUI-02")!.Text, StringComparison.Ordinal));
    }

    [Fact]
    public void Quinine_that_nobody_knows_is_told_as_not_known_and_asks_for_a_reading_not_for_a_reason()
    {
        var mystery = Made.Of(Made.AllBut(Component.Quinine.Bit()), []);
        var cautions = Of("US", Made.Line(mystery, 20), Made.Line(Made.Water, 80));
        Assert.Contains("not settled", cautions.Of("SB-QUI-02")!.Text, StringComparison.Ordinal);
        Assert.Null(cautions.Of("SB-QUI-06"));   // one question, asked once
        Assert.DoesNotContain(cautions, c => c.NeedsReason);
    }

    [Fact]
    public void A_level_that_may_be_over_is_told_beside_the_word_that_it_is_there()
    {
        var facts = SafetyFacts.None.With("carbonated", true).With("quinine_mg", 14.0).With("quinine_mg_per_l", new SafetyFigure(78, 70, 86, false, []));
        var cautions = Rules.Us.Check(facts);
        Assert.False(cautions.Of("SB-QUI-02")!.IsNotSettled);
        Assert.Equal("between 70.0 and 86.0 mg/L against at most 83 mg/L", cautions.Of("SB-QUI-01")!.Against);
        Assert.Equal(CautionStrength.Act, cautions.Of("SB-QUI-01")!.Strength);
    }

    [Theory]
    [InlineData(100.0, 1.0, "AC-01")]   // 40 % vol, 1 in 101: 0.40 % vol
    [InlineData(100.0, 2.0, "AC-08")]   // 0.78 % vol
    [InlineData(100.0, 20.0, null)]     // 6.7 % vol: nobody takes it for a drink without
    public void A_little_spirit_loses_the_claim_at_half_a_per_cent(double water, double spirit, string? key)
    {
        var keys = Of("US", Made.Line(Made.Water, water), Made.Line(Made.Spirit, spirit)).Select(c => c.Key);
        Assert.Equal(key is null ? [] : [key], keys);
    }

    [Fact]
    public void An_ingredient_whose_alcohol_nobody_knows_puts_the_claim_in_doubt()
    {
        var mystery = Made.Of(Made.AllBut(Component.Ethanol.Bit()), []);
        Assert.True(Of("US", Made.Line(mystery, 20), Made.Line(Made.Water, 80)).Of("AC-08")!.IsNotSettled);
    }

    [Fact]
    public void Two_standard_drinks_in_one_glass_are_counted_by_the_site_s_own_drink()
    {
        // 24 g of ethanol: 1.7 US standard drinks of 14 g, 3.0 UK units of 7.89 g, 2.4 of Australia's 10 g.
        WeighedLine[] lines = [Made.Line(Made.Spirit, 24 / Made.Spirit.PerGram[(int)Component.Ethanol] / Made.Spirit.GramsPerMillilitre)];
        Assert.Null(Of("US", lines).Of("SV-05"));
        Assert.StartsWith("3.0", Of("UK", lines).Of("SV-05")!.Against, StringComparison.Ordinal);
        Assert.StartsWith("2.4", Of("AU", lines).Of("SV-05")!.Against, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Tonka bean syrup", "", "SB-COU-02", true)]
    [InlineData("Elderberry cordial", "", "SB-ELD-01", false)]   // raw or cooked? nobody knows from the word
    [InlineData("Water", "Pour over dry ice and serve", "SB-DRY-01", true)]
    [InlineData("Water", "Chill the glass with liquid nitrogen", "SB-LN2-01", true)]
    [InlineData("Wormwood tea", "", "SB-THU-04", false)]
    [InlineData("Oleander flower", "", "SB-OLE-01", true)]
    public void A_word_of_an_ingredient_or_a_step_raises_its_rule(string name, string step, string rule, bool needsReason)
    {
        WeighedLine[] lines = [Made.Line(Made.Water, 100)];
        var cautions = Cautions.Of(lines, BalanceEngine.Of(lines, Made.NoBuild, Detail.Ranges), new DrinkWords([name], [step]), Rules.In("an island"));
        var caution = cautions.Of(rule)!;
        Assert.Equal(needsReason, caution.NeedsReason);
        Assert.Equal(step.Length > 0 ? [] : [0], caution.Lines);
    }

    [Theory]
    [InlineData("Smoked salt")]
    [InlineData("Ginger beer")]
    [InlineData("Sweet pear")]
    [InlineData("Coffee, brewed")]
    [InlineData("Yewberry-free jam")]
    public void A_word_inside_another_word_raises_nothing(string name)
    {
        WeighedLine[] lines = [Made.Line(Made.Water, 100)];
        Assert.Empty(Cautions.Of(lines, BalanceEngine.Of(lines, Made.NoBuild, Detail.Ranges), new DrinkWords([name], []), Rules.In("an island")));
    }

    [Theory]
    [InlineData(1.0, false)]    // 1 g of cassia at 3 g/kg: 0.05 mg/kg, 0.12 at 7: the range reaches 0.1 (EFSA 2008)
    [InlineData(2.5, true)]
    [InlineData(0.5, null)]     // 0.06 mg/kg at most
    public void Cassia_is_weighed_against_a_day_s_coumarin(double grams, bool? settled)
    {
        WeighedLine[] lines = [Made.Line(Made.Water, grams), Made.Line(Made.Water, 100)];
        var caution = Cautions.Of(lines, BalanceEngine.Of(lines, Made.NoBuild, Detail.Ranges), new DrinkWords(["Cassia, ground", "Water"], []), Rules.In("EU")).Of("SB-COU-01");
        Assert.Equal(settled, caution is null ? null : !caution.IsNotSettled);
    }

    [Theory]
    [InlineData(0.09, null)]
    [InlineData(0.11, "11.0 % against at most 10 %")]
    public void Polyols_are_weighed_against_10_per_cent_of_the_drink_s_mass(double perGram, string? against)
    {
        // Reg. (EU) 1169/2011 Annex III 2.4: above 10 per cent by mass.
        var sweet = Made.Of((Component.Erythritol, perGram));
        Assert.Equal(against, Of("EU", Made.Line(sweet, 100)).Of("SB-POL-01")?.Against);
    }

    [Theory]
    [InlineData(1.0, 0.9, 1.1, true)]
    [InlineData(1.3, 1.1, 1.4, true)]     // the range reaches 1.2: the advice may be due
    [InlineData(1.5, 1.4, 1.6, false)]
    public void A_condition_whose_figure_may_be_on_either_side_does_not_silence_a_rule(double abv, double low, double high, bool isAdvised)
    {
        // Reg. (EU) 1169/2011 Annex III 3.3: 50 mg/L up to 1.2 % vol, 300 mg/L above.
        var facts = SafetyFacts.None.With("glycyrrhizin_mg_per_l", 60.0).With("abv_percent", new SafetyFigure(abv, low, high, false, []));
        Assert.Equal(isAdvised, Rules.In("EU").Check(facts).Of("SB-LIQ-04") is not null);
    }

    [Fact]
    public void Acid_in_copper_is_told_by_the_drink_s_own_pH()
    {
        // Food Code 4-101.14: below 6.
        WeighedLine[] lines = [Made.Line(Made.TableLemon, 25), Made.Line(Made.Water, 100)];
        var balance = BalanceEngine.Of(lines, Made.NoBuild, Detail.Ranges);
        Assert.True(Cautions.Of(lines, balance, new DrinkWords([], ["Serve in a copper mug"]), Rules.Us).Of("SB-COP-01")!.NeedsReason);
        Assert.Null(Cautions.Of(lines, balance, new DrinkWords([], ["Serve in a steel mug"]), Rules.Us).Of("SB-COP-01"));
    }

    [Fact]
    public void A_caution_says_what_the_figure_against_the_limit_what_to_do_and_who_says_so()
    {
        var caution = Rules.Us.Check(SafetyFacts.None.With("caffeine_mg", 210)).Of("SB-CAF-01")!;
        Assert.Equal("210.0 mg against at most 200 mg", caution.Against);
        Assert.StartsWith("Caffeine: 210.0 mg against at most 200 mg. One glass holds more", caution.Text, StringComparison.Ordinal);
        Assert.Equal("caffeine per serving", caution.Trigger);
        Assert.Contains("EFSA Journal 2015", caution.Source, StringComparison.Ordinal);
        Assert.EndsWith("local codes decide", caution.Source, StringComparison.Ordinal);
        Assert.Equal(FigureStatus.Confirmed, caution.Status);
    }

    [Fact]
    public void Figures_are_written_as_the_house_writes_them()
    {
        var comma = Rules.Us with { Format = new HouseFormat(NumberPattern.Comma) };
        Assert.Equal("0,55 % vol against below 0,5 % vol", comma.Check(SafetyFacts.None.With("ferment_abv_percent", 0.55)).Of("TC-20")!.Against);
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
            Assert.Equal("0.55 % vol against below 0.5 % vol", Rules.Us.Check(SafetyFacts.None.With("ferment_abv_percent", 0.55)).Of("TC-20")!.Against);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Theory]
    [InlineData(0.5001, "0.50")]
    [InlineData(0.49996, null)]
    [InlineData(0.5, "0.50")]
    public void Rounding_never_carries_a_figure_across_its_limit(double abv, string? shown)
    {
        var against = Rules.Us.Check(SafetyFacts.None.With("ferment_abv_percent", abv)).Of("TC-20")?.Against;
        Assert.Equal(shown is null ? null : $"{shown} % vol against below 0.5 % vol", against);
        // Two decimals of 83.0001 would read as the limit itself, which is allowed.
        Assert.Equal("83.0001 mg/L against at most 83 mg/L", Rules.Us.Check(SafetyFacts.None.With("carbonated", true).With("quinine_mg_per_l", 83.0001)).Of("SB-QUI-01")!.Against);
    }

    [Fact]
    public void The_strongest_come_first() =>
        Assert.Equal(
            [CautionStrength.Strongest, CautionStrength.Act],
            Rules.Us.Check(SafetyFacts.None.With("caffeine_mg", 210).With("cold_hold_celsius", 9)).Where(c => c.Strength > CautionStrength.Mind).Select(c => c.Strength));

    [Fact]
    public void Each_strongest_caution_needs_a_reason_of_its_own()
    {
        var cautions = Rules.Us.Check(SafetyFacts.None.With("cold_hold_celsius", 9).With("days_counting_made", 8));
        Assert.Equal(2, cautions.Count(c => c.NeedsReason));
        Assert.Equal(2, CautionReasons.Check(cautions, new Dictionary<string, string>()).Problems.Count);
        Assert.Single(CautionReasons.Check(cautions, new Dictionary<string, string> { ["TC-05"] = "Seen to, and noted.", ["TC-09"] = "seen to, and noted. " }).Problems);
        var given = CautionReasons.Check(cautions, new Dictionary<string, string> { ["TC-05"] = " The fridge was repaired. ", ["TC-09"] = "Assessed by the laboratory." });
        Assert.Equal("The fridge was repaired.", given.Value["TC-05"]);
        Assert.True(CautionReasons.Check(Rules.Us.Check(SafetyFacts.None.With("caffeine_mg", 210)), new Dictionary<string, string>()).IsOk);
    }

    [Fact]
    public void A_figure_over_any_limit_is_never_passed_in_silence_by_being_unknown()
    {
        // Whatever quantity a rule compares: relevant and not known raises it, or a rule on the same quantity that it yields to.
        foreach (var rule in Rules.Book.Rules.Where(r => !r.IsOnFlag))
        {
            var cautions = Rules.In("an island").Check(SafetyFacts.None.With(rule.Subject, double.NaN));
            Assert.True(rule.YieldsTo.Append(rule.Id).Any(id => cautions.Of(id) is { IsNotSettled: true, NeedsReason: false }), rule.Id);
        }
    }

    [Fact]
    public void No_sentence_calls_anything_safe()
    {
        var texts = Rules.Book.Rules.SelectMany(r => new[] { r.Name, r.Todo, r.Trigger }).Concat(Rules.Book.Claims.Select(c => c.Message)).Concat(Rules.Book.NutritionClaims.Select(n => n.Message));
        // "food-safe", "judged safe" and "no safe dose" speak of others' words or of what there is none of.
        Assert.All(texts, t => Assert.DoesNotMatch(@"(?i)\b(is|are|it's|now|therefore) safe\b", t));
    }

    private static Composition Fizzy(double quininePerGram)
    {
        var still = Made.Of((Component.Quinine, quininePerGram));
        return new Composition(still.PerGram, still.Known, [], default, CompositionCaveats.Carbonated);
    }

    private static IReadOnlyList<Caution> Of(string site, params WeighedLine[] lines) =>
        Cautions.Of(lines, BalanceEngine.Of(lines, Made.NoBuild, Detail.Ranges), DrinkWords.None, Rules.In(site));
}
