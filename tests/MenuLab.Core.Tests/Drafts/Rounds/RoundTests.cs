using MenuLab.Core.Drafts;
using MenuLab.Core.Drafts.Rounds;
using MenuLab.Core.House;

namespace MenuLab.Core.Tests.Drafts.Rounds;

public class RoundTests
{
    [Fact]
    public void A_round_keeps_the_lines_that_stood_on_the_bench_when_it_started()
    {
        var draft = Trial.Orchard();
        var round = Trial.Round(draft);
        Trial.Do(draft, new RemoveLine(draft.Lines[1].Id));
        Trial.Do(draft, new ChangeBuild(BuildFields.Glass, new Build { Glass = "coupe" }));
        Assert.Equal(["45 Barley tea", "22.5 Quince cordial", "15 Verjus"], round.Lines.Select(l => l.Content.Text));
        Assert.Equal("highball", round.Build.Glass);
        Assert.Equal(4, round.FromVersion);
        Assert.Equal([PourLetter.A, PourLetter.B, PourLetter.C], round.Pours.Select(p => p.Letter));
    }

    [Fact]
    public void A_cell_that_nobody_set_says_what_the_line_says_and_one_that_was_set_is_changed()
    {
        var draft = Trial.Orchard();
        var verjus = draft.Lines[2].Id;
        var round = Trial.Round(draft, 3, RoundSize.Full, new(PourLetter.A, verjus, 15), new CellAmount(PourLetter.B, verjus, 17.5));
        var line = round.Line(verjus)!;
        Assert.Equal([15, 17.5, 15], round.Pours.Select(p => round.Specified(p.Letter, line)!.Value));
        Assert.Equal([false, true, false], round.Pours.Select(p => round.IsChanged(p.Letter, line)));
        Assert.True(round.Differs(line));
        Assert.False(round.Differs(round.Lines[0]));
        Assert.True(round.Set(PourLetter.B, verjus, CellField.Specified, null, EntryId.New()).IsOk);
        Assert.False(round.IsChanged(PourLetter.B, line));
    }

    [Fact]
    public void What_was_poured_stands_beside_what_was_specified_at_the_size_of_the_round()
    {
        var draft = Trial.Orchard();
        var round = Trial.Round(draft, 2, RoundSize.Half);
        var cordial = round.Lines[1];
        Assert.Equal(11.25, round.ToPour(PourLetter.A, cordial));
        Assert.Equal(11.25, round.InGlass(PourLetter.A, cordial));
        Assert.True(round.Set(PourLetter.A, cordial.Line, CellField.Poured, 12, EntryId.New()).IsOk);
        Assert.Equal((22.5, 11.25, 12), (round.Specified(PourLetter.A, cordial), round.ToPour(PourLetter.A, cordial), round.InGlass(PourLetter.A, cordial)));
        Assert.True(round.IsPouredOtherwise(PourLetter.A, cordial));
        Assert.False(round.IsPouredOtherwise(PourLetter.B, cordial));
        Assert.True(round.Set(PourLetter.A, cordial.Line, CellField.Poured, 11.25, EntryId.New()).IsOk);
        Assert.False(round.IsPouredOtherwise(PourLetter.A, cordial));
        // As it was tasted, the whole drink had twice of what was in the half.
        Assert.True(round.Set(PourLetter.A, cordial.Line, CellField.Poured, 12, EntryId.New()).IsOk);
        Assert.Equal(24, Winners.Lines(round, PourLetter.A, Trial.Stock.Understand)[1].Content.Amount.Value);
    }

    [Fact]
    public void A_size_by_weight_is_a_share_of_the_mass_before_ice_and_tops_and_a_garnish_stays_whole()
    {
        var garnish = Trial.Line(Trial.Cordial, 3, Unit.Gram, place: Place.Garnish);
        var draft = Trial.Bench([Trial.Line(Trial.Tea, 40, Unit.Gram), Trial.Line(Trial.Verjus, 10, Unit.Gram), Trial.Top, garnish]);
        var round = Trial.Round(draft, 2, RoundSize.ByWeight(20));
        Assert.Equal(50, round.DrinkGrams, 9);
        Assert.Equal(0.4, round.Share, 9);
        Assert.Equal([16, 4, null, 3], GlassLines.Specified(round, PourLetter.A, Trial.Stock.Understand).Select(l => l.Amount.Value is { } a ? Math.Round(a, 9) : (double?)null));
        Assert.Equal(20, GlassLines.Specified(round, PourLetter.A, Trial.Stock.Understand).Where(l => l.Place == Place.In).Sum(l => l.Understood.Grams ?? 0), 9);
    }

    [Theory]
    [InlineData(1, SizeKind.Full, null, "pours")]
    [InlineData(7, SizeKind.Full, null, "pours")]
    [InlineData(3, SizeKind.ByWeight, null, "size")]
    [InlineData(3, SizeKind.Half, 20.0, "size")]
    [InlineData(3, SizeKind.ByWeight, 2.0, "size")]
    public void A_round_that_cannot_be_poured_is_a_problem(int pours, SizeKind kind, double? grams, string field)
    {
        var draft = Trial.Orchard();
        var started = Round.Start(new RoundToStart { Id = RoundId.New(), Draft = draft.Id, Pours = pours, Size = new RoundSize(kind, grams) }, draft, 1, null, Trial.Ines, Trial.Noon);
        Assert.Equal(field, Assert.Single(started.Problems).Field);
    }

    [Fact]
    public void An_empty_bench_an_unknown_cell_and_a_negative_amount_are_problems()
    {
        var empty = Trial.Bench([]);
        Assert.Equal("lines", Assert.Single(Round.Start(new RoundToStart { Id = RoundId.New(), Draft = empty.Id }, empty, 1, null, Trial.Ines, Trial.Noon).Problems).Field);
        var draft = Trial.Bench([Trial.Line(Trial.Tea, 45), Trial.Top]);
        var round = Trial.Round(draft, 2);
        Assert.Equal("pour", Assert.Single(round.Set(PourLetter.C, round.Lines[0].Line, CellField.Poured, 1, EntryId.New()).Problems).Field);
        Assert.Equal("line", Assert.Single(round.Set(PourLetter.A, LineId.New(), CellField.Poured, 1, EntryId.New()).Problems).Field);
        Assert.Equal("line", Assert.Single(round.Set(PourLetter.A, round.Lines[1].Line, CellField.Specified, 1, EntryId.New()).Problems).Field);
        Assert.Equal("amount", Assert.Single(round.Set(PourLetter.A, round.Lines[0].Line, CellField.Poured, -1, EntryId.New()).Problems).Field);
        Assert.Equal("amount", Assert.Single(round.Set(PourLetter.A, round.Lines[0].Line, CellField.Poured, double.NaN, EntryId.New()).Problems).Field);
        Assert.Empty(round.Cells);
    }

    [Fact]
    public void Pour_it_as_D_takes_the_amounts_of_another_pour_but_not_what_was_poured_and_six_are_the_most()
    {
        var draft = Trial.Orchard();
        var verjus = draft.Lines[2].Id;
        var round = Trial.Round(draft, 3, RoundSize.Full, new CellAmount(PourLetter.B, verjus, 17.5));
        Assert.True(round.Set(PourLetter.B, verjus, CellField.Poured, 18, EntryId.New()).IsOk);
        Assert.False(round.Add(PourLetter.E, PourLetter.B).IsOk);
        Assert.True(round.Add(PourLetter.D, PourLetter.B).IsOk);
        Assert.True(round.Add(PourLetter.D, PourLetter.A).IsOk);
        Assert.Equal((17.5, 17.5), (round.Specified(PourLetter.D, round.Line(verjus)!), round.InGlass(PourLetter.D, round.Line(verjus)!)));
        Assert.True(round.Add(PourLetter.E, null).IsOk && round.Add(PourLetter.F, null).IsOk);
        Assert.False(round.Add((PourLetter)6, null).IsOk);
        Assert.Equal(6, round.Pours.Count);
    }

    [Fact]
    public void The_winner_goes_on_the_bench_as_changes_of_amounts_and_as_one_edit_where_the_bench_has_moved_on()
    {
        var draft = Trial.Orchard();
        var (cordial, verjus) = (draft.Lines[1].Id, draft.Lines[2].Id);
        var round = Trial.Round(draft, 2, RoundSize.Full, new CellAmount(PourLetter.B, verjus, 17.5));
        Assert.True(round.Set(PourLetter.B, cordial, CellField.Poured, 20, EntryId.New()).IsOk);
        Assert.Empty(Winners.Edits(round, PourLetter.A, draft, Trial.Stock.Understand));
        var edits = Winners.Edits(round, PourLetter.B, draft, Trial.Stock.Understand);
        Assert.Equal([(cordial, 20.0), (verjus, 17.5)], edits.Cast<ChangeLine>().Select(e => (e.Line, e.Content.Amount.Value!.Value)));
        foreach (var edit in edits)
        {
            Trial.Do(draft, edit);
        }
        Assert.Equal([45, 20, 17.5], draft.Lines.Select(l => l.Amount!.Value));
        Assert.Empty(Winners.Edits(round, PourLetter.B, draft, Trial.Stock.Understand));

        Trial.Do(draft, new RemoveLine(verjus));
        var all = Assert.IsType<StartFrom>(Assert.Single(Winners.Edits(round, PourLetter.B, draft, Trial.Stock.Understand)));
        Trial.Do(draft, all);
        Assert.Equal([(45, "45 Barley tea"), (20, "22.5 Quince cordial"), (17.5, "15 Verjus")], draft.Lines.Select(l => (l.Amount!.Value, l.Text)));
        Assert.Null(draft.StartedFrom);
    }

    [Fact]
    public void The_reason_is_written_from_the_changes_and_the_notes()
    {
        var draft = Trial.Orchard();
        var verjus = draft.Lines[2].Id;
        var round = Trial.Round(draft, 2, RoundSize.Full, new CellAmount(PourLetter.B, verjus, 17.5));
        var notes = new[]
        {
            Trial.Note(round, PourLetter.B, 1, Trial.Ines, new(TasteAxis.Sour, Wish.More), new AxisWish(TasteAxis.Finish, Wish.More)),
            Trial.Note(round, PourLetter.B, 2, Trial.Joss, new AxisWish(TasteAxis.Sour, Wish.More)),
            Trial.Note(round, PourLetter.A, 3, Trial.Joss, new AxisWish(TasteAxis.Sweet, Wish.Less)),
        };
        Assert.Equal("B: Verjus 15 → 17.5 mL; more sour wanted, finish short", Winners.Reason(round, PourLetter.B, notes, Trial.Name, HouseFormat.Plain));
        Assert.Equal("A: as it was; less sweet wanted", Winners.Reason(round, PourLetter.A, notes, Trial.Name, HouseFormat.Plain));
        Assert.Equal("B: Verjus 15 → 17,5 mL", Winners.Reason(round, PourLetter.B, [], Trial.Name, new HouseFormat(NumberPattern.Comma)));
        var long_ = notes[0] with { Note = notes[0].Note with { Words = new string('x', 400) + "\nnew line" } };
        var reason = Winners.Reason(round, PourLetter.B, [long_], Trial.Name, HouseFormat.Plain);
        Assert.True(reason.Length <= Draft.ReasonMaxLength && !reason.Any(char.IsControl));
    }

    [Fact]
    public void The_ladder_tells_of_each_round_what_won_why_and_what_went_on_from_it()
    {
        var draft = Trial.Orchard();
        var verjus = draft.Lines[2].Id;
        var first = Trial.Round(draft, 2, RoundSize.Full, new CellAmount(PourLetter.B, verjus, 17.5));
        Assert.True(first.End(PourLetter.B, Trial.Ines, Trial.Noon).IsOk);
        var second = first.GoOn(
            new RoundToStart { Id = RoundId.New(), Draft = draft.Id, Pours = 2, FromRound = first.Id, FromPour = PourLetter.B, Cells = [new(PourLetter.A, verjus, 20)] },
            2, Trial.Stock.Understand, Trial.Joss, Trial.Noon).Value;
        var notes = new[] { Trial.Note(first, PourLetter.B, 1, Trial.Ines, new AxisWish(TasteAxis.Sour, Wish.More)), Trial.Note(second, PourLetter.A, 2, Trial.Ines, new AxisWish(TasteAxis.Sour, Wish.Right)) };
        var ladder = Ladder.Of([second, first], notes, Trial.Name, HouseFormat.Plain);
        Assert.Equal(["B: Verjus 15 → 17.5 mL; more sour wanted", ""], ladder.Select(r => r.Reason));
        Assert.Equal([2, null], ladder.Select(r => r.Next));
        Assert.True(second.End(PourLetter.A, Trial.Ines, Trial.Noon).IsOk);
        Assert.Equal("A: Verjus 17.5 → 20 mL; sour right", Ladder.Of([first, second], notes, Trial.Name, HouseFormat.Plain)[1].Reason);
        Assert.False(first.GoOn(new RoundToStart { Id = RoundId.New(), Draft = draft.Id, FromPour = PourLetter.C }, 2, Trial.Stock.Understand, Trial.Joss, Trial.Noon).IsOk);
    }
}
