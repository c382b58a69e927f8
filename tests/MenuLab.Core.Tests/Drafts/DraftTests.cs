using MenuLab.Core.Drafts;
using MenuLab.Core.House;
using MenuLab.Core.Pantry;
using MenuLab.Core.Quantities;

namespace MenuLab.Core.Tests.Drafts;

public class DraftTests
{
    private static readonly DateTimeOffset Noon = new(2026, 11, 3, 12, 0, 0, TimeSpan.Zero);
    private static readonly PersonId Ada = PersonId.New();
    private static readonly PageId Laptop = PageId.New();
    private static readonly PageId Phone = PageId.New();

    private readonly Draft _draft = Draft.Start(DraftId.New(), "Harbour fog", Ada, Noon).Value;
    private readonly List<AppliedEdit> _log = [];

    [Theory]
    [InlineData("")]
    [InlineData("   ")]
    [InlineData(null)]
    [InlineData("two\nlines")]
    public void A_draft_needs_a_name_on_one_line(string? name) =>
        Assert.Equal("Name", Assert.Single(Draft.Start(DraftId.New(), name, Ada, Noon).Problems).Field);

    [Fact]
    public void A_name_may_be_80_characters_and_not_81()
    {
        Assert.True(Draft.Start(DraftId.New(), new string('q', 80), Ada, Noon).IsOk);
        Assert.False(Draft.Start(DraftId.New(), new string('q', 81), Ada, Noon).IsOk);
    }

    [Fact]
    public void A_brief_leaves_everything_open_but_the_name()
    {
        Assert.Equal(Brief.Open, _draft.Brief);
        Assert.Null(_draft.Style);
        Assert.Equal(Standing.InTheWorks, _draft.Standing);
        Assert.Equal(0, _draft.Version);
    }

    [Fact]
    public void Dropping_a_draft_needs_a_reason_and_parking_it_does_not()
    {
        Assert.Equal("StandingReason", Assert.Single(Try(new Stand(Standing.Dropped, " ")).Problems).Field);
        Do(new Stand(Standing.Parked, ""));
        Do(new Stand(Standing.Dropped, "too close to the quince one"));
        Assert.Equal((Standing.Dropped, "too close to the quince one"), (_draft.Standing, _draft.StandingReason));
    }

    [Fact]
    public void A_change_of_amount_and_a_change_of_treatment_by_two_people_are_both_kept_without_a_word()
    {
        var line = AddLine("22.5 quince syrup", 22.5);
        var seen = _draft.Version;
        Do(new ChangeLine(line, LineFields.Amount, Content("x", 20)), Laptop, seen);
        var outcome = Do(new ChangeLine(line, LineFields.Treatment, Content("x", 22.5) with { Treatment = "toasted" }), Phone, seen);

        Assert.Empty(outcome.Collisions);
        var content = Assert.Single(_draft.Lines).Content;
        Assert.Equal(20, content.Amount.Value);
        Assert.Equal("toasted", content.Treatment);
    }

    [Fact]
    public void Two_amounts_of_one_line_collide_the_later_stands_and_the_other_is_told_with_what_stood_before()
    {
        var line = AddLine("22.5 quince syrup", 22.5);
        var seen = _draft.Version;
        Do(new ChangeLine(line, LineFields.Amount, Content("x", 20)), Laptop, seen);
        var outcome = Do(new ChangeLine(line, LineFields.Amount, Content("x", 25)), Phone, seen);

        Assert.Equal(25, _draft.Lines[0].Amount);
        var collision = Assert.Single(outcome.Collisions);
        Assert.Equal(new EditField(line, "amount"), collision.Field);
        Assert.Equal(20, Assert.IsType<ChangeLine>(collision.Theirs.Edit.Action).Content.Amount.Value);
        Assert.Equal(22.5, Assert.IsType<ChangeLine>(collision.Theirs.Undo).Content.Amount.Value);

        Do(EditFields.Narrow(collision.Theirs.Edit.Action, collision.Field), Phone);
        Assert.Equal(20, _draft.Lines[0].Amount);
    }

    [Fact]
    public void The_same_amount_from_two_people_is_no_collision()
    {
        var line = AddLine("22.5 quince syrup", 22.5);
        var seen = _draft.Version;
        Do(new ChangeLine(line, LineFields.Amount, Content("x", 20)), Laptop, seen);
        Assert.Empty(Do(new ChangeLine(line, LineFields.Amount, Content("x", 20)), Phone, seen).Collisions);
    }

    [Fact]
    public void Typing_fast_on_one_page_collides_with_nobody()
    {
        var line = AddLine("22.5 quince syrup", 22.5);
        var seen = _draft.Version;
        Do(new ChangeLine(line, LineFields.Amount, Content("x", 20)), Laptop, seen);
        Assert.Empty(Do(new ChangeLine(line, LineFields.Amount, Content("x", 25)), Laptop, seen).Collisions);
    }

    [Fact]
    public void Two_pages_of_one_person_collide_like_two_people()
    {
        var seen = _draft.Version;
        Do(new Rename("Fog over the pier"), Laptop, seen);
        Assert.Single(Do(new Rename("Pier fog"), Phone, seen).Collisions);
    }

    [Fact]
    public void Typing_into_a_line_that_somebody_removed_brings_it_back_and_says_so()
    {
        var first = AddLine("30 pear", 30);
        var second = AddLine("15 verjus", 15);
        var seen = _draft.Version;
        Do(new RemoveLine(first), Laptop, seen);
        var outcome = Do(new ChangeLine(first, LineFields.Amount, Content("x", 35)), Phone, seen);

        Assert.Equal([first, second], _draft.Lines.Select(l => l.Id));
        Assert.Equal(35, _draft.Lines[0].Amount);
        Assert.Equal(35, _draft.Lines[0].Millilitres);
        Assert.IsType<RemoveLine>(Assert.Single(outcome.Collisions).Theirs.Edit.Action);
    }

    [Fact]
    public void Removing_a_line_that_somebody_is_typing_into_is_told_with_what_they_typed()
    {
        var line = AddLine("30 pear", 30);
        var seen = _draft.Version;
        Do(new ChangeLine(line, LineFields.Amount, Content("x", 35)), Laptop, seen);
        var outcome = Do(new RemoveLine(line), Phone, seen);

        Assert.Empty(_draft.Lines);
        Assert.Equal(35, Assert.IsType<ChangeLine>(Assert.Single(outcome.Collisions).Theirs.Edit.Action).Content.Amount.Value);
    }

    [Fact]
    public void A_line_that_is_gone_for_good_is_a_problem_not_a_crash()
    {
        var line = AddLine("30 pear", 30);
        Do(new RemoveLine(line));
        var version = _draft.Version;
        foreach (var action in new EditAction[] { new ChangeLine(line, LineFields.Amount, Content("x", 1)), new MoveLine(line, null), new RemoveLine(line) })
        {
            Assert.Equal("line", Assert.Single(Try(action).Problems).Field);
        }
        Assert.Equal(version, _draft.Version);
    }

    [Fact]
    public void An_amount_alone_is_understood_again_and_an_amount_with_its_ingredient_brings_its_own()
    {
        var line = AddLine("30 pear", 30);
        Do(new ChangeLine(line, LineFields.Amount, Content("x", 40) with { Understood = new Understood(999, 999, 0, []) }));
        Assert.Equal((40, 41), (_draft.Lines[0].Millilitres, _draft.Lines[0].Grams));

        Do(new ChangeLine(line, LineFields.Ingredient | LineFields.Amount, Content("x", 50) with { Understood = new Understood(50, 47, 0, []) }));
        Assert.Equal((50, 47), (_draft.Lines[0].Millilitres, _draft.Lines[0].Grams));
    }

    [Fact]
    public void A_line_kept_as_typed_counts_as_volume_that_nobody_knows_and_is_no_draft_line()
    {
        AddLine("30 pear", 30);
        Do(new AddLine(LineId.New(), LineContent.KeptAsTyped("25 of the new shrub", 25), null));
        Do(new AddLine(LineId.New(), LineContent.KeptAsTyped("a bit of that", null), null));
        Do(new AddLine(LineId.New(), LineContent.KeptAsTyped("10 something beside", 10, Place.Beside), null));
        Assert.Equal(25, _draft.UncountedMillilitres);
        Assert.Equal("30 pear", Assert.Single(_draft.DraftLines).Text);
    }

    [Theory]
    [InlineData(-1)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(double.NaN)]
    [InlineData(1.1e6)]
    public void An_impossible_amount_is_a_problem_and_changes_nothing(double amount)
    {
        Assert.Equal("amount", Assert.Single(Try(new AddLine(LineId.New(), Content("x", amount), null)).Problems).Field);
        Assert.Equal(0, _draft.Version);
    }

    [Fact]
    public void A_page_ahead_of_the_database_is_told_to_reload() =>
        Assert.Contains("reload", Assert.Single(Try(new Rename("x"), seen: 7).Problems).Message, StringComparison.Ordinal);

    [Fact]
    public void The_hundred_and_first_line_is_a_problem()
    {
        for (var i = 0; i < Draft.MaxLines; i++)
        {
            AddLine("30 pear", 30);
        }
        Assert.False(Try(new AddLine(LineId.New(), Content("x", 1), null)).IsOk);
    }

    [Fact]
    public void Lines_move_and_stay_numbered_from_one()
    {
        var lines = Enumerable.Range(1, 4).Select(i => AddLine($"{i} pear", i)).ToArray();
        Do(new MoveLine(lines[3], null));
        Do(new MoveLine(lines[0], lines[2]));
        Assert.Equal([lines[3], lines[1], lines[2], lines[0]], _draft.Lines.Select(l => l.Id));
        Assert.Equal([1, 2, 3, 4], _draft.Lines.Select(l => l.Position));
    }

    [Fact]
    public void An_iteration_put_on_the_bench_replaces_lines_and_build_and_can_be_taken_back()
    {
        var old = AddLine("30 ml verjus", 30);
        var kept = LineId.New();
        Do(new StartFrom(2, [new PlacedLine(kept, Content("45 ml tea", 45))], new Build { Method = "stirred" }));
        Assert.Equal([kept], _draft.Lines.Select(l => l.Id));
        Assert.Equal("stirred", _draft.Build.Value.Method);
        Assert.Equal(2, _draft.GoesOnFrom(last: 4, lastSavedVersion: 1));
        Assert.Equal(5, _draft.GoesOnFrom(last: 5, lastSavedVersion: _draft.Version));
        Assert.Null(_draft.GoesOnFrom(last: null, lastSavedVersion: 0));

        Do(_log[^1].Undo);
        Assert.Equal([old], _draft.Lines.Select(l => l.Id));
        Assert.Null(_draft.Build.Value.Method);
        Assert.Equal(4, _draft.GoesOnFrom(last: 4, lastSavedVersion: 1));
    }

    [Fact]
    public void A_line_typed_into_while_another_page_starts_from_an_iteration_comes_back_and_is_told()
    {
        var line = AddLine("30 ml verjus", 30);
        var seen = _draft.Version;
        Do(new StartFrom(1, [], new Build()), Phone);
        var outcome = Do(new ChangeLine(line, LineFields.Amount, Content("30 ml verjus", 22.5)), Laptop, seen);
        Assert.Equal(22.5, Assert.Single(_draft.Lines).Amount);
        Assert.Single(outcome.Collisions);
    }

    [Fact]
    public void Every_kind_of_action_reads_back_from_its_json()
    {
        var content = Content("22,5 ml Quitte", 22.5) with { Treatment = "fine-strained", Place = Place.Rinse, StartCelsius = 4 };
        EditAction[] actions =
        [
            new AddLine(LineId.New(), content, LineId.New()),
            new AddLine(LineId.New(), LineContent.KeptAsTyped("?"), null),
            new ChangeLine(LineId.New(), LineFields.Amount | LineFields.Text, content),
            new MoveLine(LineId.New(), null),
            new RemoveLine(LineId.New()),
            new ChangeBuild(BuildFields.Method, new Build { Method = "shaken", Seconds = 12.5, Steps = ["Shake.", "Strain."] }),
            new ChangeBrief(
                BriefFields.CostLimit,
                new Brief { CostLimit = Money.Of(1.85m, "EUR"), Due = new DateOnly(2026, 11, 20), Avoid = default(AllergenSet).With(Allergen.Milk, AllergenState.Present) }),
            new Rename("Fog"),
            new ChooseStyle(null),
            new Stand(Standing.Dropped, "why"),
            new StartFrom(2, [new PlacedLine(LineId.New(), content)], new Build { Method = "stirred" }),
        ];
        Assert.Equal(typeof(EditAction).Assembly.GetTypes().Count(t => t.IsSubclassOf(typeof(EditAction))), actions.Select(a => a.GetType()).Distinct().Count());
        foreach (var action in actions)
        {
            var again = EditText.Read(EditText.Write(action));
            Assert.Equal(action.GetType(), again.GetType());
            Assert.Equal(EditText.Write(action), EditText.Write(again));
            Assert.Equal(EditFields.Of(action), EditFields.Of(again));
        }
    }

    private LineId AddLine(string text, double amount)
    {
        var id = LineId.New();
        Do(new AddLine(id, Content(text, amount), _draft.Lines.Count > 0 ? _draft.Lines[^1].Id : null));
        return id;
    }

    private static LineContent Content(string text, double amount) => Understand(new LineContent
    {
        Text = text, Ingredient = new IngredientId(new Guid("00000000-0000-7000-8000-000000000001")), Amount = new TypedAmount(amount, null, null, Unit.Millilitre), StartCelsius = 4,
    });

    // As the bench would: a millilitre of everything weighs 1.025 g, rounded here to keep the figures readable.
    private static LineContent Understand(LineContent content) =>
        content with { Understood = new Understood(content.Amount.Value, content.Amount.Value is { } v ? Math.Round(v * 1.025) : null, 0, []) };

    private EditOutcome Do(EditAction action, PageId? page = null, int? seen = null)
    {
        var outcome = Try(action, page, seen).Value;
        _log.Add(outcome.Applied);
        return outcome;
    }

    private Result<EditOutcome> Try(EditAction action, PageId? page = null, int? seen = null)
    {
        var edit = new Edit(EditId.New(), Ada, page ?? Laptop, seen ?? _draft.Version, action, Noon);
        return _draft.Apply(edit, [.. _log.Where(e => e.Version > edit.Seen)], Understand);
    }
}
