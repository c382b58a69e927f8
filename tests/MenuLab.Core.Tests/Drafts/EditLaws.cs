using System.Text;
using CsCheck;
using MenuLab.Core.Drafts;
using MenuLab.Core.Pantry;

namespace MenuLab.Core.Tests.Drafts;

/// <summary>Laws of the working copy: two pages type at once, in any order of arrival.</summary>
public class EditLaws
{
    private static readonly DateTimeOffset Noon = new(2026, 11, 3, 12, 0, 0, TimeSpan.Zero);
    private static readonly PageId[] Pages = [PageId.New(), PageId.New()];
    private static readonly LineId[] Lines = [.. Enumerable.Range(0, 4).Select(_ => LineId.New())];

    // Fields of the four lines and of the draft; a stream draws from its own half, so the two never meet.
    private static readonly Gen<EditAction> LowerHalf = Gen.OneOf(
        Gen.Select(Gen.Int[0, 3], Gen.Double[0, 100], (l, v) => (EditAction)new ChangeLine(Lines[l], LineFields.Amount, Content(v))),
        Gen.Select(Gen.Int[0, 3], Gen.Int[0, 4], (l, v) => (EditAction)new ChangeLine(Lines[l], LineFields.Place, Content(1) with { Place = (Place)v })),
        Gen.Select(Gen.Int[0, 3], Gen.Int[-1, 3], (l, after) => (EditAction)new MoveLine(Lines[l], after < 0 || after == l ? null : Lines[after])),
        Gen.Int[0, 99].Select(v => (EditAction)new ChangeBuild(BuildFields.Method, new Build { Method = $"m{v}" })),
        Gen.Int[0, 99].Select(v => (EditAction)new Rename($"name {v}")));

    private static readonly Gen<EditAction> UpperHalf = Gen.OneOf(
        Gen.Select(Gen.Int[0, 3], Gen.Int[0, 99], (l, v) => (EditAction)new ChangeLine(Lines[l], LineFields.Treatment, Content(1) with { Treatment = $"t{v}" })),
        Gen.Select(Gen.Int[0, 3], Gen.Double[-5, 90], (l, v) => (EditAction)new ChangeLine(Lines[l], LineFields.Start, Content(1) with { StartCelsius = v })),
        Gen.Int[0, 99].Select(v => (EditAction)new ChangeBuild(BuildFields.Glass | BuildFields.Seconds, new Build { Glass = $"g{v}", Seconds = v })),
        Gen.Int[0, 99].Select(v => (EditAction)new ChangeBrief(BriefFields.Flavour, new Brief { Flavour = $"f{v}" })),
        Gen.Int[0, 99].Select(v => (EditAction)new ChooseStyle($"s{v}")));

    private static readonly Gen<EditAction> Anything = Gen.OneOf(
        LowerHalf, UpperHalf,
        Gen.Int[0, 3].Select(l => (EditAction)new RemoveLine(Lines[l])),
        Gen.Select(Gen.Int[0, 3], Gen.Int[0, 3], (l, after) => (EditAction)new AddLine(Lines[l], Content(30 + l), Lines[after])),
        Gen.Select(Gen.Int[1, 5], Gen.Int[0, 4], (number, lines) =>
            (EditAction)new StartFrom(number, [.. Lines.Take(lines).Select((l, i) => new PlacedLine(l, Content(50 + i)))], new Build { Method = $"saved{number}" })));

    [Fact]
    public void Edits_of_different_fields_end_in_the_same_state_in_whatever_order_they_arrive_and_collide_never() =>
        Gen.Select(LowerHalf.Array[0, 12], UpperHalf.Array[0, 12], Gen.Bool.Array[24], Gen.Bool.Array[24]).Sample((lower, upper, order, otherOrder) =>
        {
            var one = Play(lower, upper, order);
            var other = Play(lower, upper, otherOrder);
            Assert.Equal(Print(one.Draft), Print(other.Draft));
            Assert.All(one.Outcomes.Concat(other.Outcomes), o => Assert.Empty(o.Collisions));
        });

    [Fact]
    public void The_last_value_that_a_page_set_stands_or_is_told_of_in_a_collision() =>
        Gen.Select(Anything.Array[0, 12], Anything.Array[0, 12], Gen.Bool.Array[24]).Sample((first, second, order) =>
        {
            var played = Play(first, second, order);
            foreach (var page in Pages)
            {
                var own = played.Outcomes.Where(o => o.Applied.Edit.Page == page).SelectMany(o => EditFields.Of(o.Applied.Edit.Action).Select(f => (o, f.Field, f.Value)));
                foreach (var last in own.Where(x => x.Field.Name is not ("presence" or "position")).GroupBy(x => x.Field).Select(g => g.Last()))
                {
                    var overwritten = played.Outcomes.LastOrDefault(o =>
                        o.Applied.Version > last.o.Applied.Version && o.Applied.Edit.Page != page
                        && (EditFields.Of(o.Applied.Edit.Action).Any(f => f.Field == last.Field && !Equals(f.Value, last.Value))
                            || (o.Applied.Edit.Action is StartFrom && (last.Field.Line is not null || last.Field.Name.StartsWith("build_", StringComparison.Ordinal)))));
                    // The other page saw nothing of this one (each sees the start only), so it must be told.
                    Assert.True(
                        overwritten is null || overwritten.Collisions.Any(c => c.Field == last.Field || c.Field.Name == "start"),
                        $"{last.Field} of version {last.o.Applied.Version} was lost without a word.");
                }
            }
        });

    [Fact]
    public void The_version_grows_by_one_with_every_edit_that_is_applied_and_by_none_with_a_refused_one() =>
        Gen.Select(Anything.Array[0, 12], Anything.Array[0, 12], Gen.Bool.Array[24]).Sample((first, second, order) =>
        {
            var played = Play(first, second, order);
            Assert.Equal(Enumerable.Range(Started + 1, played.Outcomes.Count), played.Outcomes.Select(o => o.Applied.Version));
            Assert.Equal(Started + played.Outcomes.Count, played.Draft.Version);
        });

    [Fact]
    public void An_edit_that_arrives_again_changes_nothing_and_is_answered_as_the_first_time() =>
        Gen.Select(Anything.Array[1, 12], Anything.Array[0, 12], Gen.Bool.Array[24], Gen.Int[0, 1000]).Sample((first, second, order, which) =>
        {
            var played = Play(first, second, order);
            if (played.Outcomes.Count == 0)
            {
                return;
            }
            var before = Print(played.Draft);
            var chosen = played.Outcomes[which % played.Outcomes.Count];
            var again = played.Draft.Apply(chosen.Applied.Edit, [.. played.Log.Where(e => e.Version > chosen.Applied.Edit.Seen)], Understand).Value;
            Assert.Equal(before, Print(played.Draft));
            Assert.Same(chosen.Applied, again.Applied);
            Assert.Equal(chosen.Collisions.Select(c => (c.Field, c.Theirs.Version)), again.Collisions.Select(c => (c.Field, c.Theirs.Version)));
        });

    [Fact]
    public void Taking_every_edit_back_from_the_last_to_the_first_gives_the_draft_as_it_was() =>
        Gen.Select(Anything.Array[0, 12], Anything.Array[0, 12], Gen.Bool.Array[24]).Sample((first, second, order) =>
        {
            var start = Print(Play([], [], order).Draft);
            var played = Play(first, second, order);
            foreach (var applied in Enumerable.Reverse(played.Outcomes).Select(o => o.Applied))
            {
                var draft = played.Draft;
                Assert.True(draft.Apply(new Edit(EditId.New(), default, Pages[0], draft.Version, applied.Undo, Noon), [], Understand).IsOk);
            }
            Assert.Equal(start, Print(played.Draft));
        });

    [Fact]
    public void Lines_are_numbered_from_one_without_a_gap_whatever_happens() =>
        Gen.Select(Anything.Array[0, 12], Anything.Array[0, 12], Gen.Bool.Array[24]).Sample((first, second, order) =>
        {
            var lines = Play(first, second, order).Draft.Lines;
            Assert.Equal(Enumerable.Range(1, lines.Count), lines.Select(l => l.Position));
        });

    private const int Started = 4;

    private sealed record Played(Draft Draft, List<AppliedEdit> Log, List<EditOutcome> Outcomes);

    /// <summary>Two pages that saw the four lines and nothing since; their edits arrive as <paramref name="order"/> says.</summary>
    private static Played Play(EditAction[] first, EditAction[] second, bool[] order)
    {
        var draft = Draft.Start(new DraftId(Guid.Empty), "start", default, Noon).Value;
        var log = new List<AppliedEdit>();
        for (var i = 0; i < Lines.Length; i++)
        {
            Send(draft, log, PageId.New(), draft.Version, new AddLine(Lines[i], Content(10 * i), i > 0 ? Lines[i - 1] : null));
        }
        var outcomes = new List<EditOutcome>();
        var next = new[] { 0, 0 };
        var streams = new[] { first, second };
        for (var i = 0; i < first.Length + second.Length; i++)
        {
            var page = order[i] ? 1 : 0;
            page = next[page] < streams[page].Length ? page : 1 - page;
            if (Send(draft, log, Pages[page], Started, streams[page][next[page]++]) is { } outcome)
            {
                outcomes.Add(outcome);
            }
        }
        return new Played(draft, log, outcomes);
    }

    private static EditOutcome? Send(Draft draft, List<AppliedEdit> log, PageId page, int seen, EditAction action)
    {
        var result = draft.Apply(new Edit(EditId.New(), default, page, seen, action, Noon), [.. log.Where(e => e.Version > seen)], Understand);
        if (!result.IsOk)
        {
            return null;
        }
        log.Add(result.Value.Applied);
        return result.Value;
    }

    private static LineContent Content(double amount) => Understand(new LineContent
    {
        Text = "as typed", Ingredient = new IngredientId(Guid.Empty), Amount = new TypedAmount(amount, null, null, Unit.Millilitre), StartCelsius = 4,
    });

    private static LineContent Understand(LineContent content) =>
        content with { Understood = new Understood(content.Amount.Value, 1.025 * content.Amount.Value, 0, []) };

    private static string Print(Draft draft)
    {
        var text = new StringBuilder();
        foreach (var line in draft.Lines)
        {
            text.AppendLine(System.Globalization.CultureInfo.InvariantCulture, $"{line.Position} {line.Id} {Encoding.UTF8.GetString(EditText.Write(new AddLine(line.Id, line.Content, null)))}");
        }
        text.AppendLine(Encoding.UTF8.GetString(EditText.Write(new ChangeBuild(BuildFields.None, draft.Build.Value))));
        text.AppendLine(Encoding.UTF8.GetString(EditText.WriteBrief(draft.Brief)));
        text.Append(draft.Name).Append(' ').Append(draft.Style).Append(' ').Append(draft.Standing).Append(' ').Append(draft.StartedFrom);
        return text.ToString();
    }
}
