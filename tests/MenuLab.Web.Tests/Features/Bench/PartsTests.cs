using Bunit;
using MenuLab.Core.Balance;
using MenuLab.Core.Pantry;
using MenuLab.Core.Quantities;
using MenuLab.Web.Features.Bench;

namespace MenuLab.Web.Tests.Features.Bench;

/// <summary>The parts of the page, each with figures made up for the test; they inject nothing.</summary>
public sealed class PartsTests : BunitContext
{
    [Fact]
    public void A_plain_figure_shows_value_unit_range_and_a_rule_that_says_the_same()
    {
        var row = Render<FigureRow>(p => p.Add(r => r.Figure, Figure(Metric.Sugar, 11.2, 10.4, 12.0)));

        Assert.Equal("11.2", row.Find(".val b").TextContent);
        Assert.Contains("g/100 mL", row.Find(".val").TextContent, StringComparison.Ordinal);
        Assert.Contains("likely 10.4–12.0", row.Find(".say2").TextContent, StringComparison.Ordinal);
        Assert.Equal("Sweet 11.2 g/100 mL, likely 10.4–12.0", row.Find("[role=img]").GetAttribute("aria-label"));
        Assert.Equal("left:56.00%", row.Find(".rule .value").GetAttribute("style"));
    }

    [Fact]
    public void A_lower_bound_says_at_least_and_for_how_much_of_the_volume_nothing_is_known()
    {
        var row = Render<FigureRow>(p => p.Add(r => r.Figure, Figure(Metric.Acid, 0.41, 0.39, 0.43, unknown: 13)));

        Assert.Contains("at least", row.Find(".val").TextContent, StringComparison.Ordinal);
        Assert.Contains("unknown for 13 % of the volume", row.Find(".say2").TextContent, StringComparison.Ordinal);
        Assert.Empty(row.FindAll(".rule .span"));
        Assert.NotEmpty(row.FindAll(".rule .beyond"));
    }

    [Fact]
    public void An_unknown_figure_is_a_word_and_never_a_number()
    {
        var row = Render<FigureRow>(p => p.Add(r => r.Figure, Figure(Metric.Cost, double.NaN, double.NaN, double.NaN, unknown: 100)));

        Assert.Equal("unknown", row.Find(".val b").TextContent);
        Assert.Empty(row.FindAll(".rule"));
        Assert.DoesNotContain("NaN", row.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void A_mark_past_the_end_of_its_rule_stays_on_it()
    {
        var row = Render<FigureRow>(p => p.Add(r => r.Figure, Figure(Metric.Sugar, 55, 50, 60)));

        Assert.Equal("left:97.00%", row.Find(".rule .past").GetAttribute("style"));
        Assert.Equal("55", row.Find(".val b").TextContent);
    }

    [Fact]
    public void A_glass_over_its_wash_line_is_a_triangle_and_not_only_a_colour()
    {
        var row = Render<FigureRow>(p => p.Add(r => r.Figure, Figure(Metric.GlassFill, 108, 105, 111)).Add(r => r.WashLineMillilitres, 165));

        Assert.NotEmpty(row.FindAll(".rule .past"));
        Assert.Contains("% of 165 mL", row.Find(".val").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void Pressing_a_figures_name_chooses_its_shares()
    {
        var pressed = 0;
        var row = Render<FigureRow>(p => p.Add(r => r.Figure, Figure(Metric.Acid, 0.7, 0.6, 0.8)).Add(r => r.HasShares, true).Add(r => r.OnChoose, () => pressed++));

        row.Find("button.pick").Click();

        Assert.Equal(1, pressed);
    }

    [Fact]
    public void Remarks_on_a_figures_validity_stand_beside_it()
    {
        var row = Render<FigureRow>(p => p.Add(r => r.Figure, Figure(Metric.Abv, 12, 11.9, 12.1) with { Caveats = MetricCaveats.OutsideRange | MetricCaveats.DensityEstimated }));

        Assert.Contains("outside what the model is good for, a density is estimated", row.Find(".say2").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void Lines_questions_and_unread_lines_keep_their_order_and_exact_words()
    {
        var drink = new TypedDrink
        {
            Rows =
            [
                Line("45 tea"),
                new AskedRow("30 lime", 2, "Which one?", [new Answer("Lime juice, fresh", "30 ml Lime juice, fresh"), new Answer("as new: lime", null)]),
                new UnreadRow("a whisper of beet leaf", "“a whisper” is no amount."),
            ],
        };

        var rows = Render<LineRows>(p => p.Add(r => r.Drink, drink).Add(r => r.Chosen, Metric.Sugar).Add(r => r.First, "mL"));

        Assert.Equal(["line", "question", "unread"], rows.FindAll("tbody tr").Select(tr => tr.GetAttribute("data-testid")));
        Assert.Contains("“a whisper of beet leaf” is kept as typed and not counted.", rows.Find("[data-testid=unread]").TextContent, StringComparison.Ordinal);
        Assert.Single(rows.FindAll(".answers button"));
        Assert.Contains("as new: lime: stays as typed", rows.Find(".answers").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void An_answer_hands_over_the_question_and_the_new_wording()
    {
        var asked = new AskedRow("30 lime", 2, "Which one?", [new Answer("Lime juice, fresh", "30 ml Lime juice, fresh")]);
        (AskedRow Question, Answer Answer) got = default;
        var rows = Render<LineRows>(p => p.Add(r => r.Drink, new TypedDrink { Rows = [asked] }).Add(r => r.Chosen, Metric.Sugar).Add(r => r.First, "mL")
            .Add(r => r.OnAnswer, answer => got = answer));

        rows.Find(".answers button").Click();

        Assert.Equal((asked, asked.Answers[0]), got);
    }

    [Theory]
    [InlineData(0.67, "67 %", "width:48.2px")]
    [InlineData(0.002, "below 1 %", "width:0.1px")]
    public void A_share_is_always_printed_beside_its_bar(double share, string text, string width)
    {
        var bar = Render<ShareBar>(p => p.Add(b => b.Share, share));
        Assert.Equal(text, bar.Find("b").TextContent);
        Assert.Equal(width, bar.Find("i").GetAttribute("style"));
    }

    [Fact]
    public void What_is_not_in_the_liquid_says_so_and_has_no_share() =>
        Assert.Equal("not in the liquid", Render<ShareBar>(p => p.Add(b => b.Share, double.NaN).Add(b => b.Outside, true)).Find("span").TextContent);

    [Fact]
    public void Where_it_can_be_told_the_drink_as_served_is_shown_first_and_can_be_switched()
    {
        var drink = new TypedDrink { Rows = [Line("45 tea")], Mixed = Set(10), Served = Set(7) };
        var panel = Render<BalancePanel>(p => p.Add(b => b.Drink, drink).Add(b => b.Chosen, Metric.Sugar));
        Assert.Equal("7.0", Sweet(panel));
        Assert.True(panel.Find("input[value='as served']").HasAttribute("checked"));

        panel.Find("input[value='as mixed']").Change("as mixed");

        Assert.Equal("10.0", Sweet(panel));
        Assert.True(panel.Find("input[value='as mixed']").HasAttribute("checked"));
    }

    [Fact]
    public void Where_it_cannot_be_told_the_reason_stands_above_the_figures_as_mixed()
    {
        var drink = new TypedDrink { Rows = [Line("45 tea")], Mixed = Set(10), ServedMissingBecause = "The text names no method." };
        var panel = Render<BalancePanel>(p => p.Add(b => b.Drink, drink).Add(b => b.Chosen, Metric.Sugar));

        Assert.Equal("10.0", Sweet(panel));
        Assert.Contains("The text names no method.", panel.Find(".say").TextContent, StringComparison.Ordinal);
        Assert.Empty(panel.FindAll("input[type=radio]"));
    }

    [Fact]
    public void Figures_of_a_drink_with_open_lines_say_what_they_are_of()
    {
        var drink = new TypedDrink { Rows = [Line("45 tea"), new UnreadRow("x", "y")], Mixed = Set(10) };
        var panel = Render<BalancePanel>(p => p.Add(b => b.Drink, drink).Add(b => b.Chosen, Metric.Sugar));

        Assert.Contains("One line is not counted.", panel.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void Old_figures_are_named_as_old()
    {
        var drink = new TypedDrink { Rows = [Line("45 tea")], Mixed = Set(10) };
        var panel = Render<BalancePanel>(p => p.Add(b => b.Drink, drink).Add(b => b.Chosen, Metric.Sugar).Add(b => b.Stale, true));

        Assert.Contains("stale", panel.Find("section").ClassList);
        Assert.Equal("before your edit", panel.Find(".before").TextContent);
    }

    [Fact]
    public void All_other_metrics_are_folded_away_and_what_does_not_apply_is_a_dash()
    {
        var panel = Render<BalancePanel>(p => p.Add(b => b.Drink, new TypedDrink { Rows = [Line("45 tea")], Mixed = Set(10) }).Add(b => b.Chosen, Metric.Sugar));

        Assert.Equal(Metrics.Count - FigureWords.Large.Count, panel.FindAll("details tbody tr").Count);
        Assert.Equal("–", panel.Find("[data-testid=dilution_percent] td").TextContent);
    }

    [Fact]
    public void An_unread_label_is_unknown_and_not_none()
    {
        var drink = new TypedDrink { Rows = [Line("45 tea")], Present = [new(Allergen.Egg, ["Egg white"]), new(Allergen.Milk, ["Whey"])], NotKnown = [new(Allergen.Sulphites, ["Verjus"])] };
        var panel = Render<MindPanel>(p => p.Add(m => m.Drink, drink));

        Assert.Contains("Contains egg and milk. In: Egg white, Whey.", panel.Find("[data-testid=allergens-present]").TextContent, StringComparison.Ordinal);
        Assert.Contains("Sulphites: unknown, not none. In: Verjus.", panel.Find("[data-testid=allergens-unknown]").TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain("No allergen", panel.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_a_declared_allergen_the_page_does_not_call_the_drink_free_of_any()
    {
        var panel = Render<MindPanel>(p => p.Add(m => m.Drink, new TypedDrink { Rows = [Line("45 tea"), new UnreadRow("x", "y")] }));

        Assert.Contains("No allergen is declared for the lines read. Lines that are not counted may hold others.", panel.Markup, StringComparison.Ordinal);
        Assert.DoesNotContain("free", panel.Markup, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void A_caution_names_its_ingredients_and_its_rule()
    {
        var drink = new TypedDrink { Rows = [Line("20 egg white")], Cautions = [new CautionRow("Use pasteurised egg.", ["Egg white, raw"], "a rule")] };
        var caution = Render<MindPanel>(p => p.Add(m => m.Drink, drink)).Find("[data-testid=caution]");

        Assert.Contains("Egg white, raw.", caution.TextContent, StringComparison.Ordinal);
        Assert.Contains("Use pasteurised egg. a rule", caution.TextContent, StringComparison.Ordinal);
    }

    private static string Sweet(IRenderedComponent<BalancePanel> panel) => panel.Find("[data-testid=sugar_g_per_100ml] .val b").TextContent;

    private static ReadRow Line(string text) => new(text) { Amount = "45", Other = "1 ½ fl oz", Ingredient = "Tea", Shares = [.. Metrics.All.Select(_ => 0.5)] };

    private static Figure Figure(Metric metric, double value, double low, double high, double unknown = 0) =>
        new(Metrics.Info(metric), new Estimate(value, low, high, Metrics.Info(metric).Unit, unknown), MetricCaveats.None);

    private static Figure[] Set(double value) =>
        [.. Metrics.All.Select(m => m.Metric == Metric.Dilution ? Figure(m.Metric, double.NaN, double.NaN, double.NaN) : Figure(m.Metric, value, value - 0.4, value + 0.4))];
}
