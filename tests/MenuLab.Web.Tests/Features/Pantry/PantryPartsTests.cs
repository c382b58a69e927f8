using Bunit;
using MenuLab.Core;
using MenuLab.Core.House;
using MenuLab.Core.Pantry;
using MenuLab.Data.House;
using MenuLab.Data.Pantry;
using MenuLab.Web.Features.Pantry;

namespace MenuLab.Web.Tests.Features.Pantry;

/// <summary>The parts of the pantry's pages, each with what it is given; they inject nothing.</summary>
public sealed class PantryPartsTests : BunitContext
{
    private static readonly DateOnly Today = new(2026, 11, 3);

    [Fact]
    public void A_figure_that_nobody_knows_is_the_word_unknown_and_no_digit()
    {
        var rows = Render<FigureRows>(p => p.Add(r => r.Typed, new TypedFigures(Jetty.Juice())).Add(r => r.Words, QuantityWords.First));
        Assert.Equal(QuantityWords.First.Count, rows.FindAll("tr").Count);
        foreach (var row in rows.FindAll("tr"))
        {
            Assert.Equal("unknown", row.QuerySelector(".num")!.TextContent.Trim());
            Assert.Equal("unknown", row.QuerySelector("svg")!.GetAttribute("aria-label"));
        }
    }

    [Fact]
    public void A_stated_zero_is_a_zero_and_bounds_alone_are_told_as_bounds()
    {
        var juice = Jetty.Juice(Jetty.Shipped("total_sugars_g", 0), Jetty.Shipped("ph", double.NaN, 2.6, 2.9));
        var rows = Render<FigureRows>(p => p.Add(r => r.Typed, new TypedFigures(juice)).Add(r => r.Words, QuantityWords.First));
        Assert.Equal("0 g", rows.Find("[data-testid=figure-total_sugars_g] .num").TextContent.Trim());
        Assert.Equal("2.6–2.9", rows.Find("[data-testid=figure-ph] .num").TextContent.Trim());
    }

    [Fact]
    public void Where_the_house_writes_commas_figures_are_written_with_them()
    {
        var rows = Render<FigureRows>(p => p
            .Add(r => r.Typed, new TypedFigures(Jetty.Juice(Jetty.Shipped("total_sugars_g", 2.5)))).Add(r => r.Words, QuantityWords.First)
            .AddCascadingValue(new HouseFormat(NumberPattern.Comma)));
        Assert.Equal("2,5 g", rows.Find("[data-testid=figure-total_sugars_g] .num").TextContent.Trim());
    }

    [Fact]
    public void A_figure_typed_two_ways_offers_both_readings_and_a_press_answers()
    {
        var typed = new TypedFigures(Jetty.Juice());
        var rows = Render<FigureRows>(p => p.Add(r => r.Typed, typed).Add(r => r.Words, [QuantityWords.Of("sodium_mg")]));
        rows.Find(".own input").Input("1,500");
        Assert.Equal("1,500", rows.Find(".own input").GetAttribute("value"));
        Assert.Equal("true", rows.Find(".own input").GetAttribute("aria-invalid"));
        rows.FindAll(".answers button")[1].Click();
        Assert.Equal(1500, typed.Read("sodium_mg").Figure!.Value);
    }

    [Fact]
    public void The_check_shows_unknown_figures_as_unknown_and_what_does_not_fit_as_a_sentence()
    {
        var typed = new TypedFigures(Jetty.Juice());
        var empty = Render<CheckPanel>(p => p.Add(c => c.Preview, typed.Preview()));
        Assert.Contains("unknown", empty.Find("[data-testid=comes-sugar]").TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain("NaN", empty.Markup, StringComparison.Ordinal);

        (typed["sucrose_g"].Text, typed["total_sugars_g"].Text) = ("3", "9");
        var full = Render<CheckPanel>(p => p.Add(c => c.Preview, typed.Preview()));
        Assert.Contains("The sugars by name add up to 3.00 g, the total says 9.00 g.", full.Find("[data-testid=checks]").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void A_refused_reading_stays_as_typed_and_says_why()
    {
        var panel = Readings((_) => Task.FromResult<(IReadOnlyList<Problem>, string)>(([new Problem("value", "A reading of this sort lies between 0 and 14.")], "")));
        panel.Find("select").Change("ph");
        panel.Find("[data-testid=reading-value]").Input("44");
        panel.Find("form").Submit();
        Assert.Contains("between 0 and 14", panel.Find("[role=alert]").TextContent, StringComparison.Ordinal);
        Assert.Equal("44", panel.Find("[data-testid=reading-value]").GetAttribute("value"));
    }

    [Fact]
    public void A_reading_that_is_no_number_is_not_sent()
    {
        var sent = 0;
        var panel = Readings(_ => { sent++; return Task.FromResult<(IReadOnlyList<Problem>, string)>(([], "")); });
        panel.Find("[data-testid=reading-value]").Input("1,500");
        panel.Find("form").Submit();
        Assert.Equal(0, sent);
        Assert.Contains("1.5 or 1500", panel.Find("[role=alert]").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void A_kept_reading_is_sent_as_typed_and_empties_the_field()
    {
        NewReading? sent = null;
        var panel = Readings(r => { sent = r; return Task.FromResult<(IReadOnlyList<Problem>, string)>(([], "Kept.")); });
        panel.Find("[data-testid=reading-value]").Input("7,4");
        panel.Find("form").Submit();
        Assert.Equal(("brix", 7.4, "°Bx", Today), (sent!.Kind, sent.Value, sent.Unit, sent.Day));
        Assert.Equal("", panel.Find("[data-testid=reading-value]").GetAttribute("value") ?? "");
        Assert.Equal("Kept.", panel.Find("[role=status]").TextContent);
    }

    [Fact]
    public void Open_allergens_are_a_question_and_absent_is_only_said_of_what_somebody_read()
    {
        AllergenFact[] facts =
        [
            new(Allergen.Sulphites, AllergenState.Unknown, "EU", "nobody has read the label yet", ""),
            new(Allergen.Milk, AllergenState.Absent, "EU US", "read the label", ""),
            new(Allergen.TreeNuts, AllergenState.Present, "EU US", "what it is", "almond"),
        ];
        var panel = Render<AllergenPanel>(p => p.Add(a => a.Facts, facts).Add(a => a.Said, []).Add(a => a.NameOf, _ => "Ines").Add(a => a.DayOf, _ => Today).Add(a => a.OnSave, _ => Task.FromResult<IReadOnlyList<Problem>>([])));
        Assert.Contains("Sulphites: unknown.", panel.Find("[data-testid=open-allergens]").TextContent, StringComparison.Ordinal);
        Assert.Contains("absent by label", panel.Find("[data-testid=allergen-Milk]").TextContent, StringComparison.Ordinal);
        Assert.Contains("present, almond", panel.Find("[data-testid=allergen-TreeNuts]").TextContent, StringComparison.Ordinal);
        Assert.Empty(panel.FindAll("[data-testid=allergen-Egg]"));
        Assert.Contains("Traces and carriers are not in here. Your local rules and a licensed practitioner decide.", panel.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void A_price_tells_what_thirty_millilitres_cost_and_a_piece_that_nobody_weighed_is_unknown()
    {
        PackShown[] packs =
        [
            new(PackId.New(), "the market", 750, "ml", false, [new(PriceId.New(), 11.6m, "EUR", false, 0, Today, FirstRows.AtThisMachine, 0.015), new(PriceId.New(), 11.2m, "EUR", false, 0, Today.AddDays(-90), FirstRows.AtThisMachine, 0.0145)]),
            new(PackId.New(), "", 1, "piece", false, [new(PriceId.New(), 2m, "EUR", false, 0, Today, FirstRows.AtThisMachine, null)]),
        ];
        var panel = Prices(packs);
        var rows = panel.FindAll("[data-testid=price]");
        Assert.Contains("€0.46", rows[0].TextContent, StringComparison.Ordinal);
        Assert.Contains("▲ 3.4 %", rows[0].TextContent, StringComparison.Ordinal);
        Assert.Contains("unknown", rows[2].TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain("€0.00", panel.Markup, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("1.000", "12", "1 or 1000")]
    [InlineData("750", "twelve", "Write a number")]
    [InlineData("", "12", "Give what the pack holds")]
    public void A_price_that_cannot_be_read_stays_as_typed(string amount, string price, string says)
    {
        var panel = Prices([]);
        panel.Find("[data-testid=pack-amount]").Input(amount);
        panel.Find("[data-testid=price-amount]").Input(price);
        panel.Find("form").Submit();
        Assert.Contains(says, panel.Find("[role=alert]").TextContent, StringComparison.Ordinal);
        Assert.Equal(price, panel.Find("[data-testid=price-amount]").GetAttribute("value"));
    }

    private IRenderedComponent<ReadingPanel> Readings(Func<NewReading, Task<(IReadOnlyList<Problem>, string)>> save) =>
        Render<ReadingPanel>(p => p.Add(r => r.Readings, []).Add(r => r.Today, Today).Add(r => r.NameOf, _ => "Ines").Add(r => r.OnSave, save));

    private IRenderedComponent<PricePanel> Prices(IReadOnlyList<PackShown> packs) => Render<PricePanel>(p => p
        .Add(r => r.Packs, packs).Add(r => r.Today, Today).Add(r => r.Currency, "EUR").Add(r => r.GramsPerMillilitre, 1.026)
        .Add(r => r.OnPack, (_, _, _, _) => Task.FromResult<IReadOnlyList<Problem>>([])).Add(r => r.OnPrice, _ => Task.FromResult<IReadOnlyList<Problem>>([])).Add(r => r.OnAway, _ => Task.FromResult<IReadOnlyList<Problem>>([])));
}
