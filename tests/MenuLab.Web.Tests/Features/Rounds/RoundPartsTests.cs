using Bunit;
using MenuLab.Core.Drafts;
using MenuLab.Core.Drafts.Rounds;
using MenuLab.Core.House;
using MenuLab.Web.Features.Rounds;

namespace MenuLab.Web.Tests.Features.Rounds;

/// <summary>The parts of a round's page, in a made-up round of two pours.</summary>
public sealed class RoundPartsTests : BunitContext
{
    private static readonly LineId Verjus = LineId.New();

    [Fact]
    public void A_changed_cell_stands_out_and_another_pour_than_written_is_said_in_words()
    {
        var table = Render<RoundTable>(p => p.Add(t => t.Round, Made()));
        var cells = table.FindAll("button.cell[data-letter]").Where(c => c.Closest("tr")!.ClassName == "ch").ToList();
        Assert.Equal(["", "new"], cells.Select(c => c.ParentElement!.ClassName!.Replace("one", "", StringComparison.Ordinal).Trim()));
        Assert.Equal(["15", "17.5poured 18"], cells.Select(c => c.TextContent));
        Assert.Equal("Verjus in B: 17.5 mL, changed, poured 18", cells[1].GetAttribute("aria-label"));
        Assert.Equal("18", cells[1].GetAttribute("data-poured"));
        Assert.Equal("45", table.Find("tr.sh .alike b").TextContent);
    }

    [Fact]
    public void A_figure_over_what_it_may_be_has_a_triangle_and_one_not_known_a_diamond_and_a_word()
    {
        var table = Render<RoundTable>(p => p.Add(t => t.Round, Made()));
        var glass = table.Find("[data-testid=figure-glass]");
        Assert.Single(glass.QuerySelectorAll("svg.over"));
        var cost = table.Find("[data-testid=figure-cost]");
        Assert.Equal(2, cost.QuerySelectorAll("svg.open").Length);
        Assert.Contains("unknown", cost.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void Touches_are_handed_to_the_script_as_data_with_what_they_say()
    {
        var offered = Render<RoundTable>(p => p.Add(t => t.Round, Made())).Find("button[data-letter=b]").GetAttribute("data-touches")!;
        using var json = System.Text.Json.JsonDocument.Parse(offered);
        var touch = json.RootElement[0];
        Assert.Equal(("sour", "more", 20.0), (touch.GetProperty("axis").GetString(), touch.GetProperty("wish").GetString(), touch.GetProperty("amount").GetDouble()));
        Assert.Equal("Verjus 17.5 → 20 mL", touch.GetProperty("says").GetString());
        Assert.Equal(Verjus.Value, touch.GetProperty("line").GetGuid());
    }

    [Fact]
    public void The_note_row_has_a_face_per_person_and_the_eight_words()
    {
        var row = Render<NoteRow>(p => p.Add(n => n.Round, Made()));
        Assert.Equal(["Ines", "Joss"], row.FindAll(".face").Select(f => f.QuerySelector(".vh")!.TextContent));
        Assert.Equal(["sweet", "sour", "bitter", "body", "bite", "finish", "cold", "watery"], row.FindAll(".at").Select(a => a.GetAttribute("data-axis")));
        Assert.All(row.FindAll("[data-wish]"), b => Assert.True(b.HasAttribute("disabled")));
    }

    [Fact]
    public void Before_the_end_each_pour_can_win_or_none_and_after_it_the_winner_goes_on()
    {
        var open = Render<WinnerPart>(p => p.Add(w => w.Round, Made()));
        Assert.Equal(["A wins", "B wins", "none wins"], open.FindAll("button").Select(b => b.TextContent));
        var won = Render<WinnerPart>(p => p.Add(w => w.Round, Made() with { Winner = PourLetter.B, IsEnded = true, Reason = "B: Verjus 15 → 17.5 mL; sour right", BenchIsOther = true }));
        Assert.Equal("B: Verjus 15 → 17.5 mL; sour right", won.Find("[data-testid=reason]").TextContent);
        Assert.Equal(["Next round from B", "B onto the bench", "Save B as an iteration"], won.FindAll(".ends button").Select(b => b.TextContent));
        Assert.Contains("in place of all that is there", won.Find(".caution").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void Tastes_over_time_are_a_mark_per_verdict_and_the_same_in_words()
    {
        var plot = Render<TastePlotPart>(p => p.Add(t => t.Letter, "B").Add(t => t.Plot, new TastePlot([new VerdictCount(TasteMoment.Minute0, 0, 0, 2), new VerdictCount(TasteMoment.Minute10, 1, 1, 0)], [], "")));
        Assert.Equal(3, plot.FindAll("circle").Count);
        Assert.Equal("B over time: 0 min: 2 yes, 0 maybe, 0 no; 10 min: 0 yes, 1 maybe, 1 no", plot.Find("svg").GetAttribute("aria-label"));
    }

    private static RoundView Made()
    {
        var tea = new RoundRow(LineId.New(), "Barley tea", "", 45, "mL", 2.5, 1, "45", [Same(PourLetter.A, 45), Same(PourLetter.B, 45)]);
        var verjus = new RoundRow(
            Verjus, "Verjus", "", 15, "mL", 2.5, 1, "15",
            [Same(PourLetter.A, 15), new Cell(PourLetter.B, 17.5, 18, 17.5, true, true, "17.5", "18", "")]);
        var inside = new FigureInCell("11.2", "", FigureMark.Inside, "Sweet 11.2 g/100 mL");
        var unknown = new FigureInCell("unknown", "", FigureMark.Open, "Cost unknown");
        return new RoundView
        {
            Id = RoundId.New(), Draft = DraftId.New(), DraftName = "Low Water", Number = 1, Told = "full size",
            Pours = [Column(PourLetter.A, []), Column(PourLetter.B, [new Touch(TasteAxis.Sour, Wish.More, Verjus, 20, "Verjus 17.5 → 20 mL", "it brings 54 % of the acid")])],
            Rows = [tea, verjus],
            Figures =
            [
                new FigureAcross("sweet", "Sweet", "g/100 mL", [inside, inside]),
                new FigureAcross("glass", "Glass", "mL", [inside, inside with { Mark = FigureMark.Over }]),
                new FigureAcross("cost", "Cost", "", [unknown, unknown]),
            ],
            FiguresAre = "as served", NextLetter = PourLetter.C,
            Faces = [new Face(PersonId.New(), "Ines", "I"), new Face(PersonId.New(), "Joss", "J")],
            Mix = new MixOnce([], "", "", []), Now = new DateTimeOffset(2026, 11, 3, 12, 0, 0, TimeSpan.Zero),
        };
    }

    private static PourColumn Column(PourLetter letter, IReadOnlyList<Touch> touches) => new(letter, null, "", touches, [], [], "", new TastePlot([], [], ""));

    private static Cell Same(PourLetter letter, double amount) =>
        new(letter, null, null, amount, false, false, amount.ToString(System.Globalization.CultureInfo.InvariantCulture), "", "");
}
