using MenuLab.Core.Balance;
using MenuLab.Core.Drafts;
using MenuLab.Core.House;
using MenuLab.Web.Features.Bench;
using MenuLab.Web.Features.History;

namespace MenuLab.Web.Tests.Features.History;

[Collection<AtTheHarbour>]
public sealed class HistoryDeskTests(HarbourHouse harbour)
{
    private static readonly LineWords Words = new(HouseFormat.Plain, new PourGrid(), Unit.Millilitre);

    [Fact]
    public async Task The_rail_tells_where_each_iteration_came_from_and_what_changed_on_the_bench_since()
    {
        var history = (await harbour.Desk().OfAsync(harbour.Draft))!;
        Assert.Equal("Low Water", history.Name);
        Assert.Equal([(1, "first", false), (2, "", false), (3, "", false), (4, "from 2", true)], history.Iterations.Select(i => (i.Number, i.From, i.IsTurned)));
        Assert.Equal((4, 1, "one change since 4"), (history.Now.From!.Value, history.Now.Changes, history.Now.Since));
        Assert.Matches("^Honey syrup.* 30 → 22.5 mL$", history.Now.InWords);
        Assert.All(history.Iterations, i => Assert.True(i.Figures.Sugar > 0));
    }

    [Fact]
    public async Task A_draft_without_iterations_has_a_bench_that_is_not_saved_yet_and_an_unknown_one_has_no_history()
    {
        var history = (await harbour.Desk().OfAsync(harbour.Empty))!;
        Assert.Empty(history.Iterations);
        Assert.Equal("not saved yet", history.Now.Since);
        Assert.Null(await harbour.Desk().OfAsync(DraftId.New()));
        Assert.Null(await harbour.Desk().StatesAsync(DraftId.New(), []));
        Assert.Null(await harbour.Desk().IterationAsync(harbour.Draft, 9));
    }

    [Fact]
    public async Task Columns_come_in_the_order_asked_for_and_what_is_not_there_is_left_out()
    {
        var desk = harbour.Desk();
        Assert.Equal(["3", "1", "now"], (await desk.StatesAsync(harbour.Draft, ["3", "7", "1", "x", "3", "now"]))!.Select(s => s.Key));
        Assert.Equal(["4", "now"], (await desk.StatesAsync(harbour.Draft, []))!.Select(s => s.Key));
        Assert.Equal(HistoryDesk.MaxColumns, (await desk.StatesAsync(harbour.Draft, ["1", "2", "3", "4", "now"]))!.Count);
    }

    [Fact]
    public async Task Figures_that_todays_engine_would_print_otherwise_are_told_and_the_stored_ones_stay()
    {
        var (old, _) = (await harbour.Desk().IterationAsync(harbour.Old, 1))!.Value;
        var sugar = Assert.Single(old.Drift, d => d.Info.Metric == Metric.Sugar);
        Assert.Equal(old.Shown[Metric.Sugar], sugar.Before);
        Assert.True(sugar.Difference < 0);
    }

    [Fact]
    public async Task An_iteration_saved_by_todays_engine_does_not_drift()
    {
        var (state, parent) = (await harbour.Desk().IterationAsync(harbour.Draft, 4))!.Value;
        Assert.Empty(state.Drift);
        Assert.Equal(2, parent!.Number);
        Assert.Equal(parent.Key, HouseFormat.Plain.Number(state.From!.Value, 0));
        Assert.NotNull(state.Hash);
    }

    [Fact]
    public async Task Side_by_side_lines_up_by_ingredient_and_the_differences_are_those_of_the_printed_figures()
    {
        var states = (await harbour.Desk().StatesAsync(harbour.Draft, ["2", "3", "4"]))!;
        var sides = new SideBySide(states, Words);
        Assert.Equal("2, 3 and 4 side by side", sides.Title);
        // Iteration 4 pours the lemon before the honey; a line keeps its row all the same.
        var honey = Assert.Single(sides.Lines, l => l.Name.Contains("oney", StringComparison.Ordinal));
        Assert.Equal(["30 mL", "22.5 mL", "30 mL"], honey.Cells.Select(c => c.Amount));
        // Drawn to scale: the longest line is 45 mL.
        Assert.Equal(22.5 / 45, honey.Cells[1].Kept, 9);
        Assert.Equal(0, honey.Cells[1].Added, 9);
        Assert.Equal(7.5 / 45, honey.Cells[1].Gone, 9);
        Assert.Equal(["", "▼ −7.5 mL", "▲ +7.5 mL"], honey.Cells.Select(c => c.Difference));
        // A house that reads ounces first reads the difference in ounces too, whatever was typed.
        var ounces = new SideBySide(states, Words with { First = Unit.FluidOunce });
        Assert.Equal(["", "▼ −¼ fl oz", "▲ +¼ fl oz"], Assert.Single(ounces.Lines, l => l.Name.Contains("oney", StringComparison.Ordinal)).Cells.Select(c => c.Difference));
        var oat = Assert.Single(sides.Lines, l => l.Name.Contains("at drink", StringComparison.Ordinal));
        Assert.Equal(["", "", "10 mL"], oat.Cells.Select(c => c.Amount));
        Assert.Null(oat.Cells[1].Change);
        Assert.Equal([false, false, true], Enumerable.Range(0, 3).Select(sides.Build.Single(b => b.Name == "Method").ChangedAt));
        Assert.Contains(sides.Build, b => b is { Name: "Kept as typed", Changed: true });
        var sugar = sides.Figures.Single(f => f.Info.Metric == Metric.Sugar);
        Assert.Equal("", sugar.Cells[0].Difference);
        Assert.Equal(
            HouseFormat.Plain.Number(Number(sugar.Cells[1].Value) - Number(sugar.Cells[0].Value), sugar.Cells[1].Value.Length - sugar.Cells[1].Value.IndexOf('.', StringComparison.Ordinal) - 1),
            sugar.Cells[1].Difference);
        // Nobody entered a price.
        Assert.All(sides.Figures.Single(f => f.Info.Metric == Metric.Cost).Cells, c => Assert.Equal("unknown", c.Value));

        static double Number(string text) => double.Parse(text, System.Globalization.CultureInfo.InvariantCulture);
    }

    [Fact]
    public async Task A_figure_before_ice_is_not_held_against_a_served_one()
    {
        var served = (await harbour.Desk().StatesAsync(harbour.Draft, ["1"]))![0];
        var beforeIce = (await harbour.Desk().BenchAsync(harbour.Empty))!;
        Assert.Null(beforeIce.Balance.Served);
        var sides = new SideBySide([served, beforeIce], Words);
        Assert.All(sides.Figures, f => Assert.Equal("unknown", f.Cells[1].Difference));
        Assert.All(sides.Figures, f => Assert.True(double.IsNaN(f.Cells[1].Before)));
    }

    [Fact]
    public async Task What_changed_is_told_against_the_iteration_it_came_from_and_a_first_one_has_nothing_to_tell()
    {
        var changes = (await harbour.Desk().ChangesAsync(harbour.Draft, "3"))!;
        Assert.Equal("2 → 3", changes.Between);
        Assert.StartsWith("7.5 mL less ", changes.Sentence, StringComparison.Ordinal);
        Assert.Contains("sugar from ", changes.Sentence, StringComparison.Ordinal);
        Assert.Equal("2 → 4", (await harbour.Desk().ChangesAsync(harbour.Draft, "4"))!.Between);
        Assert.Equal("4 → now", (await harbour.Desk().ChangesAsync(harbour.Draft, "now"))!.Between);
        Assert.Null(await harbour.Desk().ChangesAsync(harbour.Draft, "1"));
        Assert.Null(await harbour.Desk().ChangesAsync(harbour.Draft, "77"));
    }
}
