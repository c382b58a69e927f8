using MenuLab.Core.Balance;
using MenuLab.Core.Drafts;
using MenuLab.Web.Features.Bench;
using MenuLab.Web.Tests.Features.House;

namespace MenuLab.Web.Tests.Features.Bench;

public class BenchSessionTests(TestHouse test) : IClassFixture<TestHouse>
{
    private static string Amounts(BenchSession session) => string.Join(", ", session.View!.Lines.Select(l => l.Row is ReadRow row ? $"{row.Amount} {row.Ingredient}" : $"“{l.Content.Text}”"));

    private static double Sugar(BenchSession session) => session.View!.Drink.Mixed![(int)Metric.Sugar].Estimate.Value;

    [Fact]
    public async Task A_typed_line_is_in_the_drink_and_in_the_figures_at_once()
    {
        var session = await test.StartAsync("45 ml black tea, brewed", "22.5 ml honey syrup");
        Assert.Equal("45 Black tea, brewed, 22.5 Honey syrup 2:1 by mass (honey:water)", Amounts(session));
        Assert.True(Sugar(session) > 10);
        Assert.Equal(2, session.View!.Version);
    }

    [Fact]
    public async Task A_text_that_comes_again_under_its_id_is_not_added_again()
    {
        var session = await test.StartAsync();
        var id = Guid.CreateVersion7();
        Assert.True(await session.EnterAsync(id, "45 ml black tea, brewed\n15 ml lemon juice"));
        Assert.True(await session.EnterAsync(id, "45 ml black tea, brewed\n15 ml lemon juice"));
        Assert.Equal(2, session.View!.Lines.Count);
    }

    [Fact]
    public async Task What_cannot_be_read_is_kept_as_typed_in_its_place()
    {
        var session = await test.StartAsync("45 ml black tea, brewed", "a whisper of beet leaf", "15 ml lemon juice");
        Assert.Equal("45 Black tea, brewed, “a whisper of beet leaf”, 15 Lemon juice, fresh", Amounts(session));
        Assert.Equal(1, session.View!.NotCounted);
        Assert.Equal(["a whisper of beet leaf"], session.View.Now.KeptAsTyped);
    }

    [Fact]
    public async Task The_same_thing_typed_again_is_added_to_its_line()
    {
        var session = await test.StartAsync("22.5 ml lemon juice", "7.5 ml lemon juice");
        Assert.Equal("30 Lemon juice, fresh", Amounts(session));
        await session.UndoAsync();
        Assert.Equal("22.5 Lemon juice, fresh", Amounts(session));
    }

    [Theory]
    [InlineData("30", "30")]
    [InlineData("22,5", "22.5")]
    [InlineData("3/4 oz", "22.5")]
    [InlineData("0", "0")]
    public async Task An_amount_is_typed_into_its_cell_in_the_unit_that_it_shows_or_in_any_other(string typed, string shown)
    {
        var session = await test.StartAsync("15 ml lemon juice");
        Assert.True(await session.SetAmountAsync(session.View!.Lines[0], typed));
        Assert.Equal(shown, ((ReadRow)session.View.Lines[0].Row).Amount);
    }

    [Theory]
    [InlineData("-45", "zero or more")]
    [InlineData("1,500", "1.5 or 1500")]
    [InlineData("1e308", "no amount")]
    [InlineData("9999999", "at most a million")]
    [InlineData("plenty", "no amount")]
    [InlineData("", "no amount")]
    public async Task A_bad_amount_is_refused_with_what_to_do_and_changes_nothing(string typed, string says)
    {
        var session = await test.StartAsync("15 ml lemon juice");
        Assert.False(await session.SetAmountAsync(session.View!.Lines[0], typed));
        Assert.Contains(says, Assert.Single(session.Problems).Message, StringComparison.Ordinal);
        Assert.Equal(session.View.Lines[0].Id, session.ProblemLine);
        Assert.Equal("15 Lemon juice, fresh", Amounts(session));
    }

    [Fact]
    public async Task Undo_takes_back_line_by_line_and_redo_does_again()
    {
        var session = await test.StartAsync("45 ml black tea, brewed", "15 ml lemon juice", "shake, coupe");
        Assert.Equal("shaken", session.View!.Build.Method);
        await session.UndoAsync();
        Assert.Null(session.View.Build.Method);
        await session.UndoAsync();
        Assert.Equal("45 Black tea, brewed", Amounts(session));
        await session.RedoAsync();
        Assert.Equal("45 Black tea, brewed, 15 Lemon juice, fresh", Amounts(session));
        Assert.True(session.CanRedo);
    }

    [Fact]
    public async Task Two_pages_on_one_draft_lose_neither_edit_and_tell_both_values_of_a_field_that_collided()
    {
        var mine = await test.StartAsync("45 ml black tea, brewed", "15 ml lemon juice");
        var theirs = await test.OpenAsync(mine.View!.Id);

        Assert.True(await theirs.SetAmountAsync(theirs.View!.Lines[1], "10"));
        Assert.True(await theirs.EnterAsync(Guid.CreateVersion7(), "5 ml honey syrup"));
        Assert.True(await mine.SetAmountAsync(mine.View.Lines[1], "20"));      // has not seen theirs
        Assert.True(await mine.SetAmountAsync(mine.View.Lines[0], "60"));

        Assert.Equal("60 Black tea, brewed, 20 Lemon juice, fresh, 5 Honey syrup 2:1 by mass (honey:water)", Amounts(mine));
        var clash = Assert.Single(mine.Clashes);
        Assert.Equal(("10 mL", "20 mL"), (clash.TheirValue, clash.MyValue));

        await mine.TakeTheirsAsync(clash);
        Assert.Empty(mine.Clashes);
        await theirs.ReadAgainAsync();
        Assert.Equal("60 Black tea, brewed, 10 Lemon juice, fresh, 5 Honey syrup 2:1 by mass (honey:water)", Amounts(theirs));
        Assert.Contains(theirs.OthersDid, did => did.Contains("Lemon juice, fresh", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Iterations_are_numbered_say_where_they_come_from_and_write_their_own_reason()
    {
        var session = await test.StartAsync("45 ml black tea, brewed", "15 ml lemon juice");
        Assert.Equal("First pour", session.OwnReason);
        Assert.Equal(1, await session.SaveAsync(session.OwnReason));
        Assert.Equal("", session.OwnReason);

        await session.SetAmountAsync(session.View!.Lines[1], "22.5");
        Assert.Contains("15 → 22.5", session.OwnReason, StringComparison.Ordinal);
        Assert.Equal(2, await session.SaveAsync("more lift"));

        await session.StartFromAsync(session.View.History[0]);
        Assert.Equal("45 Black tea, brewed, 15 Lemon juice, fresh", Amounts(session));
        Assert.Equal(1, session.View.GoesOnFrom!.Number);
        await session.EnterAsync(Guid.CreateVersion7(), "5 ml honey syrup");
        Assert.Equal(3, await session.SaveAsync(session.OwnReason));

        Assert.Equal([null, 1, 1], session.View.History.Select(h => h.Parent));
        Assert.Equal("more lift", session.View.History[1].Reason);
        Assert.Contains("in (5 mL)", session.View.History[2].Reason, StringComparison.Ordinal);
        Assert.Equal(3, session.View.GoesOnFrom!.Number);
    }

    [Fact]
    public async Task Starting_from_an_iteration_is_taken_back_in_one_step()
    {
        var session = await test.StartAsync("45 ml black tea, brewed");
        await session.SaveAsync("");
        await session.EnterAsync(Guid.CreateVersion7(), "15 ml lemon juice");
        await session.StartFromAsync(session.View!.History[0]);
        Assert.Equal("45 Black tea, brewed", Amounts(session));
        await session.UndoAsync();
        Assert.Equal("45 Black tea, brewed, 15 Lemon juice, fresh", Amounts(session));
    }

    [Fact]
    public async Task A_draft_that_another_page_changed_is_not_saved_unseen()
    {
        var mine = await test.StartAsync("45 ml black tea, brewed");
        var theirs = await test.OpenAsync(mine.View!.Id);
        await theirs.EnterAsync(Guid.CreateVersion7(), "15 ml lemon juice");

        Assert.Null(await mine.SaveAsync(""));
        Assert.Contains("changed", Assert.Single(mine.Problems).Message, StringComparison.Ordinal);
        Assert.Equal(2, mine.View.Lines.Count);
        Assert.Equal(1, await mine.SaveAsync(""));
    }

    [Fact]
    public async Task An_empty_draft_is_not_saved()
    {
        var session = await test.StartAsync();
        Assert.Null(await session.SaveAsync(""));
        Assert.Contains("nothing to save", Assert.Single(session.Problems).Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Another_method_takes_its_own_things_for_granted()
    {
        var session = await test.StartAsync("30 ml lemon juice", "60 ml soda water", "shaken");
        Assert.Equal(Joins.OnTop, session.View!.Lines[1].Content.Joins);
        await session.ChooseMethodAsync("built");
        Assert.Equal(Joins.InTheGlass, session.View.Lines[1].Content.Joins);
        Assert.Equal(Joins.Mixed, session.View.Lines[0].Content.Joins);
    }

    [Fact]
    public async Task Lines_move_and_keep_what_they_are()
    {
        var session = await test.StartAsync("45 ml black tea, brewed", "15 ml lemon juice", "5 ml honey syrup");
        await session.MoveAsync(session.View!.Lines[2], -1);
        await session.PlaceAsync(session.View.Lines[0], 2);
        Assert.Equal("5 Honey syrup 2:1 by mass (honey:water), 15 Lemon juice, fresh, 45 Black tea, brewed", Amounts(session));
        Assert.False(await session.MoveAsync(session.View.Lines[2], 1));
    }

    [Fact]
    public async Task A_step_that_names_an_ingredient_which_is_no_line_is_pointed_out()
    {
        var session = await test.StartAsync("45 ml black tea, brewed");
        await session.DoAsync(new ChangeBuild(BuildFields.Steps, new Build { Steps = ["Lay a rosemary sprig across", "Shake hard"] }));
        Assert.Equal("Rosemary, fresh", Assert.Single(session.View!.NamedAsides).Name);
        await session.EnterAsync(Guid.CreateVersion7(), "garnish: rosemary sprig");
        Assert.Empty(session.View.NamedAsides);
    }

    [Fact]
    public async Task A_claim_a_cost_and_an_allergen_of_the_brief_bind_where_they_belong()
    {
        var session = await test.StartAsync("45 ml black tea, brewed", "30 ml whole milk");
        await session.DoAsync(new ChangeBrief(
            BriefFields.Claim | BriefFields.Avoid,
            new Brief { Claim = "below 0.5 % ABV", Avoid = default(Core.Pantry.AllergenSet).With(Core.Pantry.Allergen.Milk, Core.Pantry.AllergenState.Present) }));
        Assert.False(session.View!.BriefRemarks.Single(r => r.Metric == Metric.Abv).IsOff);
        Assert.Contains("avoids milk", session.View.BriefRemarks.Single(r => r.Metric is null).Sentence, StringComparison.Ordinal);
        await session.EnterAsync(Guid.CreateVersion7(), "30 ml gin");
        Assert.True(session.View.BriefRemarks.Single(r => r.Metric == Metric.Abv).IsOff);
    }

    [Fact]
    public async Task A_typed_line_says_what_it_is_read_as_and_what_it_would_do_before_Enter()
    {
        var session = await test.StartAsync("45 ml black tea, brewed", "22.5 ml honey syrup");
        var typed = test.Bench.ReadTyped(session.View!, "1/2 oz honey syrup", Unit.Millilitre);
        Assert.Contains(typed.Pieces, p => p is { Text: "15 mL" });
        Assert.Contains(typed.Pieces, p => p.Text == "already line 2");
        Assert.True(typed.Preview!.Mixed![(int)Metric.Sugar].Estimate.Value > Sugar(session));
        Assert.Contains("Lemon juice, fresh", test.Bench.ReadTyped(session.View!, "15 ml lemo", Unit.Millilitre).Suggestions.Select(s => s.Name));
        Assert.Contains(test.Bench.ReadTyped(session.View!, "zzz qqq", Unit.Millilitre).Pieces, p => p.IsOdd);
        Assert.Same(TypedLine.Empty, test.Bench.ReadTyped(session.View!, " ", Unit.Millilitre));
    }
}
