using CsCheck;
using MenuLab.Core.Safety;
using MenuLab.Core.Solutions;

namespace MenuLab.Core.Tests.Safety;

public class HoldingTests
{
    private static readonly DateOnly Made = new(2026, 11, 2);

    // ---- tables

    public static TheoryData<string, double, double, string, string, string> Syrups =>
        [.. TestTable.Read("syrup-water-activity.csv").Select(r => (r["preparation"], N(r["sucrose_mass_percent"]), N(r["aw_estimate"]), r["tableB_at_pH6_5"], r["tableB_at_pH4_5"], r["tableB_at_pH3_2"]))];

    [Theory]
    [MemberData(nameof(Syrups))]
    public void A_syrup_s_computed_activity_and_its_boxes_are_those_of_the_table(string syrup, double percent, double activity, string neutral, string middling, string sour)
    {
        var computed = WaterActivity.OfSucrose(1000 * percent / 342.297 / (100 - percent));
        Assert.Equal(activity, computed, 0.0005);   // half of the last digit
        // The helper rows sit on an edge; there the box of the printed figure counts.
        var read = syrup.StartsWith("sucrose ", StringComparison.Ordinal) && !syrup.Contains("syrup", StringComparison.Ordinal) ? double.NaN : computed;
        if (!double.IsNaN(read) && Math.Abs(read - 0.88) > 0.001)
        {
            Assert.All([(6.5, neutral), (4.5, middling), (3.2, sour)], x => Assert.Equal(x.Item2, TcsTables.Box(Rules.Book, TcsTable.B, x.Item1, read).Result == TcsResult.NoHold ? "NON_TCS" : "PA"));
        }
    }

    [Fact]
    public void Every_pair_of_figures_falls_in_exactly_one_box() =>
        Gen.Select(Gen.Int[0, 1400], Gen.Int[0, 1000], Gen.Bool).Sample((ph, activity, a) =>
            Rules.Book.TcsBoxes.Count(b => b.Table == (a ? TcsTable.A : TcsTable.B) && b.Ph.Hold(ph / 100.0) && b.WaterActivity.Hold(activity / 1000.0)) == 1);

    [Fact]
    public void More_acid_or_drier_is_never_judged_stricter() =>
        Gen.Select(Gen.Double[0, 14], Gen.Double[0, 14], Gen.Double[0, 1], Gen.Double[0, 1], Gen.Bool).Sample((p1, p2, a1, a2, isA) =>
        {
            var table = isA ? TcsTable.A : TcsTable.B;
            return TcsTables.Box(Rules.Book, table, Math.Min(p1, p2), Math.Min(a1, a2)).Result <= TcsTables.Box(Rules.Book, table, Math.Max(p1, p2), Math.Max(a1, a2)).Result;
        });

    [Fact]
    public void Table_A_is_never_stricter_than_Table_B() =>
        Gen.Select(Gen.Double[0, 14], Gen.Double[0, 1]).Sample((ph, activity) =>
            TcsTables.Box(Rules.Book, TcsTable.A, ph, activity).Result <= TcsTables.Box(Rules.Book, TcsTable.B, ph, activity).Result);

    // ---- decision

    [Fact]
    public void A_computed_or_listed_figure_never_releases_a_prep_whatever_it_is() =>
        Gen.Select(Gen.Double[0, 14], Gen.Double[0, 1], Gen.Bool, Gen.Bool).Sample((ph, activity, heated, listed) =>
        {
            var origin = listed ? ReadingOrigin.Listed : ReadingOrigin.Computed;
            return TcsDecision.Of(
                new PrepToHold { Ph = new(ph, origin), WaterActivity = new(activity, origin), IsHeatTreated = heated, IsPackagedAfter = heated }, Rules.Us).HoldCold;
        });

    [Fact]
    public void A_missing_reading_is_never_judged_milder_than_a_read_one() =>
        Gen.Select(Gen.Double[0, 14], Gen.Double[0, 1]).Sample((ph, activity) =>
            !Read(ph, activity).HoldCold || (Read(ph, null).HoldCold && Read(null, activity).HoldCold && Read(null, null).HoldCold));

    [Fact]
    public void A_computed_pH_is_told_to_count_as_missing_and_where_it_may_go_once_measured()
    {
        var decision = TcsDecision.Of(new PrepToHold { Ph = new(3.1, ReadingOrigin.Computed) }, Rules.Us);
        Assert.True(decision.HoldCold);
        Assert.Equal(TcsResult.NoHold, decision.AsRead);
        Assert.NotNull(decision.Cautions.Of("TC-31"));
        Assert.NotNull(decision.Cautions.Of("TC-03"));
        Assert.False(TcsDecision.Of(new PrepToHold { Ph = new(3.1, ReadingOrigin.Measured, Made) }, Rules.Us).HoldCold);
    }

    [Theory]
    [InlineData(4.09, false)]
    [InlineData(4.1, true)]     // within 0.1 of 4.2
    [InlineData(4.19, true)]
    [InlineData(4.2, true)]
    public void Advice_changes_where_pH_comes_within_a_tenth_of_4_2(double ph, bool held)
    {
        var decision = Read(ph, null);
        Assert.Equal(held, decision.HoldCold);
        Assert.Equal(held && ph < 4.2, decision.Cautions.Of("TC-24") is not null);
    }

    [Theory]
    [InlineData(4.45, 0.91, false)]  // 4.2 to 4.6, above 0.90 to 0.92: no hold
    [InlineData(4.55, 0.91, true)]   // within 0.1 of 4.6
    [InlineData(4.61, 0.91, true)]
    public void Advice_changes_where_pH_crosses_4_6(double ph, double activity, bool held) => Assert.Equal(held, Read(ph, activity - 0.0001).HoldCold);

    [Theory]
    [InlineData(0.869, false)]
    [InlineData(0.87, true)]      // within 0.01 of 0.88
    public void A_reading_of_water_activity_close_to_the_edge_takes_the_stricter_box(double activity, bool held)
    {
        var decision = Read(7, activity);
        Assert.Equal(held, decision.HoldCold);
        Assert.Equal(held, decision.Cautions.Of("TC-24-AW") is not null);
    }

    [Fact]
    public void Acid_added_to_escape_the_cold_keeps_it_cold_and_asks_for_a_reason()
    {
        var decision = TcsDecision.Of(new PrepToHold { Ph = new(3.5, ReadingOrigin.Measured), IsAcidAddedToAvoidCold = true }, Rules.Us);
        Assert.True(decision.HoldCold);
        Assert.True(decision.Cautions.Of("TC-13")!.NeedsReason);
    }

    [Fact]
    public void Garlic_in_oil_stays_cold_whatever_its_pH() =>
        Assert.True(TcsDecision.Of(new PrepToHold { Ph = new(3.0, ReadingOrigin.Measured), IsOilInfusion = true }, Rules.Us).HoldCold);

    [Fact]
    public void Alcohol_earns_no_credit()
    {
        var decision = TcsDecision.Of(new PrepToHold { IsKeptByItsAlcohol = true }, Rules.Us);
        Assert.True(decision.HoldCold);
        Assert.NotNull(decision.Cautions.Of("TC-25"));
    }

    [Fact]
    public void Outside_the_US_a_release_asks_for_the_house_s_own_evidence_and_no_sentence_says_safe()
    {
        var prep = new PrepToHold { Ph = new(3.1, ReadingOrigin.Measured) };
        Assert.Contains("No US hold required", TcsDecision.Of(prep, Rules.In("UK")).Sentence, StringComparison.Ordinal);
        Assert.Contains("hazard plan", TcsDecision.Of(prep, Rules.In("UK")).Sentence, StringComparison.Ordinal);
        Assert.DoesNotContain("safe", TcsDecision.Of(prep, Rules.Us).Sentence, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("5°", Read(null, null).Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void In_the_EU_a_prep_held_cold_is_told_that_the_national_rule_gives_the_figure()
    {
        Assert.NotNull(TcsDecision.Of(new PrepToHold(), Rules.In("EU")).Cautions.Of("TC-29"));
        Assert.Null(TcsDecision.Of(new PrepToHold { Ph = new(3.1, ReadingOrigin.Measured) }, Rules.In("EU")).Cautions.Of("TC-29"));
    }

    [Theory]
    [InlineData(-0.1, 0.9)]
    [InlineData(14.1, 0.9)]
    [InlineData(4, 1.01)]
    [InlineData(double.NaN, 0.9)]
    public void A_reading_off_its_scale_is_refused(double ph, double activity) => Assert.Throws<ArgumentOutOfRangeException>(() => Read(ph, activity));

    // ---- clocks

    [Fact]
    public void Cooling_has_two_hours_to_21_and_six_in_all()
    {
        var start = new DateTimeOffset(2026, 11, 2, 22, 30, 0, TimeSpan.Zero);
        Assert.Equal(new CoolingDeadlines(start.AddHours(2), start.AddHours(6)), ColdChain.Deadlines(Rules.Book, start));
        Assert.NotNull(ColdChain.CooledFromHot(Rules.Us, double.NaN, 5).Of("TC-06"));   // nobody noted the first stage
        Assert.True(ColdChain.StoodOut(Rules.Us, 4.1).Of("TC-12")!.NeedsReason);
        Assert.Null(ColdChain.StoodOut(Rules.Us, 4).Of("TC-12"));
        Assert.NotNull(ColdChain.StoodOut(Rules.In("UK"), 4.1).Of("TC-27"));
    }

    [Fact]
    public void A_US_rule_elsewhere_is_advice_and_asks_for_no_reason()
    {
        var caution = ColdChain.Holding(Rules.In("UK"), 6).Of("TC-05")!;
        Assert.Equal(CautionStrength.Act, caution.Strength);
        Assert.Contains("shown here as advice", caution.Text, StringComparison.Ordinal);
        Assert.True(ColdChain.Holding(Rules.In("UK"), 9).Of("TC-26")!.NeedsReason);
        Assert.True(ColdChain.Holding(Rules.In("an island"), 6).Of("TC-05")!.NeedsReason);   // no law known: the strictest
    }

    // ---- use by

    [Theory]
    [InlineData(null, 7, UseByBasis.Source)]
    [InlineData("shrub", 7, UseByBasis.Source)]                 // held cold: 7 override 30 of habit
    [InlineData("citrus_juice", 1, UseByBasis.CommonPractice)]  // the short end of 1 to 2
    [InlineData("in_oil", 4, UseByBasis.Source)]
    [InlineData("vacuum_infusion", 2, UseByBasis.Source)]
    [InlineData("cold_brew_coffee", 7, UseByBasis.Source)]
    public void An_untested_prep_gets_the_shortest_of_mark_source_and_habit(string? type, int days, UseByBasis basis)
    {
        var suggestion = UseBySuggestion.Of(type, null, Rules.Us);
        Assert.Equal(days, suggestion.Days);
        Assert.Equal(basis, suggestion.Basis);
        Assert.StartsWith(basis == UseByBasis.Source ? "source: " : "common practice, no source", suggestion.BasisWords, StringComparison.Ordinal);
        Assert.Equal(Made.AddDays(days - 1), suggestion.LastDay(Made));
    }

    [Fact]
    public void A_released_shrub_gets_the_short_end_of_habit_and_says_that_it_has_no_source()
    {
        var suggestion = UseBySuggestion.Of("shrub", Read(3.3, null), Rules.Us);
        Assert.Equal(30, suggestion.Days);
        Assert.Equal(UseByBasis.CommonPractice, suggestion.Basis);
    }

    [Fact]
    public void A_computed_pH_leaves_the_seven_days() =>
        Assert.Equal(7, UseBySuggestion.Of("shrub", TcsDecision.Of(new PrepToHold { Ph = new(3.3, ReadingOrigin.Computed) }, Rules.Us), Rules.Us).Days);

    [Fact]
    public void Garlic_in_oil_has_four_days_even_where_somebody_released_it() =>
        Assert.Equal(4, UseBySuggestion.Of("in_oil", Read(3.3, null), Rules.Us).Days);

    [Fact]
    public void The_house_s_shorter_limit_wins_without_a_word()
    {
        var suggestion = UseBySuggestion.Of("shrub", Read(3.3, null), With(new HouseShelfLife("shrub", 10, "")));
        Assert.Equal((10, UseByBasis.House, false), (suggestion.Days!.Value, suggestion.Basis, suggestion.IsMarked));
        Assert.Empty(suggestion.Cautions);
    }

    [Fact]
    public void The_house_s_longer_limit_waits_for_a_reason_and_is_marked()
    {
        var waiting = UseBySuggestion.Of("shrub", null, With(new HouseShelfLife("shrub", 21, "")));
        Assert.Equal((7, false), (waiting.Days!.Value, waiting.IsMarked));
        Assert.Contains("waits for a director", Assert.Single(waiting.Cautions).Text, StringComparison.Ordinal);

        var marked = UseBySuggestion.Of("shrub", null, With(new HouseShelfLife("shrub", 21, "Challenge study 14 of the laboratory.")));
        Assert.Equal((21, true), (marked.Days!.Value, marked.IsMarked));
        Assert.True(Assert.Single(marked.Cautions).NeedsReason);   // past the date mark, a source

        var habit = UseBySuggestion.Of("shrub", Read(3.3, null), With(new HouseShelfLife("shrub", 45, "Tasted weekly for a year.")));
        Assert.Equal((45, true), (habit.Days!.Value, habit.IsMarked));
        Assert.Equal(CautionStrength.Mind, Assert.Single(habit.Cautions).Strength);   // past trade habit alone
    }

    [Fact]
    public void No_prep_that_is_held_cold_gets_more_than_seven_days_unmarked() =>
        Gen.Select(Gen.OneOf(Rules.Book.UseWithin.Select(u => u.Key).ToArray()), Gen.Int[1, 60], Gen.Bool).Sample((type, days, withReason) =>
        {
            var suggestion = UseBySuggestion.Of(type, null, With(new HouseShelfLife(type, days, withReason ? "A reason long enough." : "")));
            return suggestion.Days is null or <= 7 || suggestion is { IsMarked: true, Cautions: [{ NeedsReason: true }] };
        });

    [Fact]
    public void Freezing_pauses_the_count_and_gives_no_day_back()
    {
        Assert.Equal(Made.AddDays(6), DateMark.LastDay(Made, 7));
        Assert.Null(DateMark.LastDay(Made, 7, new FreezerStay(Made.AddDays(2), null)));
        Assert.Equal(Made.AddDays(103), DateMark.LastDay(Made, 7, new FreezerStay(Made.AddDays(2), Made.AddDays(100))));   // days 1 to 3, then 4 to 7
        Assert.Equal(Made.AddDays(6), DateMark.LastDay(Made, 7, new FreezerStay(Made.AddDays(8), Made.AddDays(20))));      // it was over already
        Assert.Throws<ArgumentException>(() => DateMark.LastDay(Made, 7, new FreezerStay(Made.AddDays(-1), null)));
        Assert.Throws<ArgumentException>(() => DateMark.OfBlend([]));
    }

    private static TcsDecision Read(double? ph, double? activity) => TcsDecision.Of(
        new PrepToHold
        {
            Ph = ph is { } p ? new(p, ReadingOrigin.Measured) : null,
            WaterActivity = activity is { } a ? new(a, ReadingOrigin.Measured) : null,
        }, Rules.Us);

    private static SiteRules With(params HouseShelfLife[] lives) => Rules.Us with { House = HouseRules.Of(1, [], lives, Rules.Book).Value };

    private static double N(string text) => double.Parse(text, System.Globalization.CultureInfo.InvariantCulture);
}
