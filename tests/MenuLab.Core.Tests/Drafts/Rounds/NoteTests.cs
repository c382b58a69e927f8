using MenuLab.Core.Drafts.Rounds;

namespace MenuLab.Core.Tests.Drafts.Rounds;

public class NoteTests
{
    private static readonly Round Round = Trial.Round(Trial.Orchard());

    [Fact]
    public void Of_each_taster_the_last_word_on_each_axis_counts_and_other_pours_do_not()
    {
        var notes = new[]
        {
            Trial.Note(Round, PourLetter.B, 1, Trial.Ines, new AxisWish(TasteAxis.Sour, Wish.Less)),
            Trial.Note(Round, PourLetter.B, 2, Trial.Ines, new(TasteAxis.Sour, Wish.More), new AxisWish(TasteAxis.Sweet, Wish.Right)),
            Trial.Note(Round, PourLetter.B, 3, Trial.Joss, new AxisWish(TasteAxis.Sour, Wish.More)),
            Trial.Note(Round, PourLetter.A, 4, Trial.Joss, new AxisWish(TasteAxis.Sour, Wish.Less)),
        };
        var tally = NoteTally.Of([.. Enumerable.Reverse(notes)], PourLetter.B);
        Assert.Equal((2, "informal, 2 tastes"), (tally.Tastes, tally.InWords));
        Assert.Equal([new AxisTally(TasteAxis.Sour, 0, 0, 2), new AxisTally(TasteAxis.Sweet, 0, 1, 0)], tally.Axes);
        Assert.Equal("", NoteTally.Of(notes, PourLetter.C).InWords);
    }

    [Fact]
    public void A_note_tasted_by_three_counts_for_three_and_again_after_five_minutes_for_three_more()
    {
        var by = new[] { Trial.Ines, Trial.Joss, Core.House.PersonId.New() };
        var note = Trial.Note(Round, PourLetter.A, 1, Trial.Ines) is var n ? n with { Note = n.Note with { Tasters = by, Verdict = Verdict.Yes, Moment = TasteMoment.Minute0 } } : null!;
        var later = note with { Id = EntryId.New(), Order = 2, Note = note.Note with { Moment = TasteMoment.Minute5, Verdict = Verdict.No } };
        Assert.Equal((6, 3, 0, 3), NoteTally.Of([note, later], PourLetter.A) is var t ? (t.Tastes, t.Yes, t.Maybe, t.No) : default);
        Assert.Equal((3, 0, 3), NoteTally.Of([note, later], PourLetter.A, TasteMoment.Minute5) is var five ? (five.Tastes, five.Yes, five.No) : default);
    }

    [Fact]
    public void A_note_that_another_puts_right_does_not_count()
    {
        var wrong = Trial.Note(Round, PourLetter.A, 1, Trial.Ines, new AxisWish(TasteAxis.Bitter, Wish.More));
        var right = Trial.Note(Round, PourLetter.A, 2, Trial.Ines, new AxisWish(TasteAxis.Body, Wish.More));
        right = right with { Note = right.Note with { Replaces = wrong.Id } };
        Assert.Equal([TasteAxis.Body], NoteTally.Of([wrong, right], PourLetter.A).Axes.Select(a => a.Axis));
    }

    [Theory]
    [InlineData(0, 0, 2, Wish.More)]
    [InlineData(2, 0, 1, Wish.Less)]
    [InlineData(1, 0, 1, null)]
    [InlineData(1, 3, 1, Wish.Right)]
    [InlineData(0, 2, 1, Wish.Right)]
    public void What_most_want_is_told_and_an_even_split_is_no_wish(int less, int right, int more, Wish? wanted) =>
        Assert.Equal(wanted, new AxisTally(TasteAxis.Sour, less, right, more).Wanted);

    [Fact]
    public void Words_tell_what_is_wanted_then_what_nobody_agrees_on_then_what_was_said()
    {
        var notes = new[]
        {
            Trial.Note(Round, PourLetter.A, 1, Trial.Ines, new(TasteAxis.Sweet, Wish.More), new AxisWish(TasteAxis.Watery, Wish.Less)),
            Trial.Note(Round, PourLetter.A, 2, Trial.Joss, new AxisWish(TasteAxis.Sweet, Wish.Less)),
        };
        Assert.Equal("too watery, no agreement on sweet", RoundWords.Notes(notes, PourLetter.A));
        notes[1] = notes[1] with { Note = notes[1].Note with { Words = " smells of\nhay " } };
        Assert.Equal("too watery, no agreement on sweet, “smells of hay”", RoundWords.Notes(notes, PourLetter.A));
        Assert.Equal("", RoundWords.Notes(notes, PourLetter.B));
    }

    [Fact]
    public void A_note_that_says_nothing_or_one_axis_twice_is_a_problem()
    {
        var note = new PourNote { Round = Round.Id, Letter = PourLetter.A };
        Assert.Equal("note", Assert.Single(note.Problems()).Field);
        Assert.Equal("wishes", Assert.Single((note with { Wishes = [new(TasteAxis.Sour, Wish.More), new(TasteAxis.Sour, Wish.Less)] }).Problems()).Field);
        Assert.Equal("words", Assert.Single((note with { Words = new string('x', 501) }).Problems()).Field);
        Assert.Equal("tasters", Assert.Single((note with { Verdict = Verdict.No, Tasters = [Trial.Ines, Trial.Ines] }).Problems()).Field);
        Assert.Empty((note with { Attachments = [AttachmentId.New()] }).Problems());
    }
}
