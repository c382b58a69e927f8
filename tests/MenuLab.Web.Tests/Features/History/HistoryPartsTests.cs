using Bunit;
using MenuLab.Core.Drafts;
using MenuLab.Core.Iterations;
using MenuLab.Web.Features.History;
using Microsoft.Extensions.DependencyInjection;

namespace MenuLab.Web.Tests.Features.History;

/// <summary>The parts of the history and its pages.</summary>
[Collection<AtTheHarbour>]
public sealed class HistoryPartsTests(HarbourHouse harbour) : BunitContext
{
    private static readonly DraftId Draft = DraftId.New();

    [Fact]
    public void A_drink_in_little_has_a_mark_per_known_figure_a_diamond_per_unknown_one_and_says_the_same_in_words()
    {
        var strip = Render<SmallStrip>(p => p.Add(s => s.Figures, new IterationFigures { Sugar = 10, Acid = 0.72, SugarAcidRatio = 14, Abv = 0, GlassFill = 108 }));
        Assert.Equal(4, strip.FindAll("circle").Count);
        Assert.Single(strip.FindAll(".over"));
        Assert.Single(strip.FindAll(".unknown"));
        Assert.Single(strip.FindAll(".wash"));
        // Half of a rule that ends at 20, from 8 to 88.
        Assert.Equal("48.0", strip.Find("circle").GetAttribute("cx"));
        Assert.Equal(
            "Sweet 10.0 g/100 mL, Acid 0.72 g/100 mL, Ratio 14.0 to 1, Strength 0.0 % vol, Glass fill 108 % of the wash line, Cost unknown",
            strip.Find("svg").GetAttribute("aria-label"));
    }

    [Fact]
    public void Choosing_on_the_rail_raises_what_was_chosen_and_then_offers_to_start_and_to_compare()
    {
        var said = new List<string>();
        var rail = Render<HistoryRail>(p => p
            .Add(r => r.History, Two())
            .Add(r => r.OnChoose, key => said.Add($"choose {key}"))
            .Add(r => r.OnStart, number => said.Add($"start {number}"))
            .Add(r => r.OnCompare, key => said.Add($"compare {key}")));
        Assert.Empty(rail.FindAll(".rail-said"));
        rail.Find("[data-testid=iteration-2] button").Click();
        rail.Render(p => p.Add(r => r.Chosen, "2").Add(r => r.Changes, new ChangesInWords("1 → 2", "7.5 mL more Verjus took acid from 0.5 to 0.7 g/100 mL.", ["Verjus 7.5 → 15 mL"], false)));
        Assert.Equal("true", rail.Find("[data-testid=iteration-2] button").GetAttribute("aria-pressed"));
        Assert.Contains("7.5 mL more Verjus took acid", rail.Find(".rail-said").TextContent, StringComparison.Ordinal);
        var buttons = rail.FindAll(".rail-said button");
        Assert.Equal("Start from 2", buttons[0].TextContent);
        buttons[0].Click();
        rail.FindAll(".rail-said button")[1].Click();
        Assert.Equal(["choose 2", "start 2", "compare 2"], said);
    }

    [Fact]
    public void The_bench_cannot_be_started_from_and_says_how_far_it_is_from_where_it_goes_on()
    {
        var rail = Render<HistoryRail>(p => p.Add(r => r.History, Two()).Add(r => r.Chosen, DrinkState.Now));
        Assert.Contains("one change since 2", rail.Find("[data-testid=bench-now]").TextContent, StringComparison.Ordinal);
        Assert.Equal(["Compare"], rail.FindAll(".rail-said button").Select(b => b.TextContent));
    }

    [Fact]
    public void The_compare_page_shows_all_lines_or_only_what_changed_and_marks_a_difference_with_a_shape()
    {
        var page = Page<ComparePage>(p => p.Add(c => c.Id, harbour.Draft.Value), "of=2,3");
        page.WaitForElement("table.cmp");
        Assert.Equal("Low Water: 2 and 3 side by side", page.Find("h1").TextContent);
        Assert.Equal(4, page.FindAll("[data-testid=line-across]").Count);
        var changed = Assert.Single(page.FindAll("[data-testid=line-across]"), r => !r.ClassList.Contains("same"));
        Assert.Contains("▼ −7.5 mL", changed.TextContent, StringComparison.Ordinal);
        Assert.NotEmpty(page.FindAll("[data-testid=across-sugar_g_per_100ml] .ring"));
        page.Find("input[value='Only what changed']").Change("Only what changed");
        Assert.Single(page.FindAll("[data-testid=line-across]"));
        Assert.Empty(page.FindAll("[data-testid=build-across]"));
    }

    [Fact]
    public void The_page_of_an_iteration_shows_it_as_saved_with_what_changed_and_leads_on()
    {
        var page = Page<IterationPage>(p => p.Add(c => c.Id, harbour.Draft.Value).Add(c => c.Number, 4));
        page.WaitForElement("table.lines");
        Assert.Equal("Low Water, iteration 4", page.Find("h1").TextContent);
        Assert.Contains("from 2 · engine", page.Find(".saved-facts").TextContent, StringComparison.Ordinal);
        Assert.Contains("“a whisper of beet leaf”", page.Find("tr.unread").TextContent, StringComparison.Ordinal);
        Assert.Contains($"/drafts/{harbour.Draft.Value}?from=4", page.FindAll("a").Select(a => a.GetAttribute("href")));
        Assert.StartsWith("/card/iteration/", page.Find("form").GetAttribute("action"), StringComparison.Ordinal);
        Assert.Empty(page.FindAll("[data-testid=drift]"));
    }

    [Fact]
    public void A_page_of_what_is_not_there_says_so()
    {
        var page = Page<IterationPage>(p => p.Add(c => c.Id, harbour.Draft.Value).Add(c => c.Number, 99));
        page.WaitForAssertion(() => Assert.Contains("There is no such iteration", page.Markup, StringComparison.Ordinal));
    }

    private IRenderedComponent<T> Page<T>(Action<ComponentParameterCollectionBuilder<T>> parameters, string query = "")
        where T : Microsoft.AspNetCore.Components.IComponent
    {
        Services.AddSingleton(harbour.Current());
        Services.AddSingleton(harbour.Desk());
        Services.GetRequiredService<Microsoft.AspNetCore.Components.NavigationManager>().NavigateTo("/?" + query);
        return Render(parameters);
    }

    private static DrinkHistory Two() => new(
        Draft, "Ebb",
        [
            new IterationCell(IterationId.New(), 1, null, "First pour", new DateOnly(2026, 11, 3), "Ines", new IterationFigures { Sugar = 13, Cost = 0.8 }, 3),
            new IterationCell(IterationId.New(), 2, 1, "Verjus in", new DateOnly(2026, 11, 4), "Ines", new IterationFigures { Sugar = 10, Cost = 0.9 }, 5),
        ],
        new BenchCell(2, 1, "Fennel syrup 5 → 7.5 mL", new IterationFigures { Sugar = 11 }));
}
