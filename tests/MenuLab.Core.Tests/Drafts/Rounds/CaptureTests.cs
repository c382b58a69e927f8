using System.Text;
using System.Text.Json;
using MenuLab.Core.Drafts;
using MenuLab.Core.Drafts.Rounds;
using MenuLab.Core.House;
using MenuLab.Core.Pantry;

namespace MenuLab.Core.Tests.Drafts.Rounds;

public class CaptureTests
{
    private static readonly DeviceId Phone = DeviceId.New();
    private static readonly DeviceId Tablet = DeviceId.New();

    public static TheoryData<Captured> Kinds() =>
    [
        new CapturedLine(DraftId.New(), LineId.New(), "22,5 Sanddorn № 2", 4),
        new CapturedCell(RoundId.New(), PourLetter.C, LineId.New(), CellField.Poured, 17.5, null),
        new CapturedNote(new PourNote
        {
            Round = RoundId.New(), Letter = PourLetter.A, Wishes = [new(TasteAxis.Finish, Wish.Less)], Verdict = Verdict.Maybe, Tasters = [Trial.Ines], Words = "hay", Attachments = [AttachmentId.New()],
            Moment = TasteMoment.Day3, Replaces = EntryId.New(),
        }),
        new CapturedReading("brix", 43.1, "°Bx", new DateOnly(2026, 11, 3), IngredientId.New(), Guid.NewGuid(), "", 20, EntryId.New()),
        new CapturedBatch(IngredientId.New(), Guid.NewGuid(), 1.2, Unit.Litre, new DateOnly(2026, 11, 3)),
        new CapturedPouredAway(IngredientId.New(), null, null, Unit.None, "cloudy"),
        new CapturedOutOfStock(IngredientId.New(), SiteId.New()),
        new CapturedAnswer(EntryId.New()),
    ];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void What_was_captured_comes_back_from_its_text_as_it_was(Captured what)
    {
        var entry = new CaptureEntry(EntryId.New(), Phone, 7, Trial.Joss, Trial.Noon, what);
        Assert.Empty(entry.Problems());
        var text = CaptureText.Write(entry);
        var back = CaptureText.Read(text);
        Assert.Equal(Encoding.UTF8.GetString(text), Encoding.UTF8.GetString(CaptureText.Write(back)));
        Assert.Equal((entry.Id, entry.Device, entry.Counter, entry.By, entry.At, what.Kind), (back.Id, back.Device, back.Counter, back.By, back.At, back.What.Kind));
        Assert.Equal(what.GetType(), back.What.GetType());
    }

    [Fact]
    public void Every_kind_has_a_case_above() => Assert.Equal(Enum.GetValues<CaptureKind>(), Kinds().Select(k => k.Data.Kind));

    // As a device writes it; the names are what scripts lean on.
    [Fact]
    public void The_text_of_a_device_is_read_by_its_names()
    {
        const string Text = """
            {"id":"01941f29-7c00-7000-8000-000000000011","device":"01941f29-7c00-7000-8000-000000000012","counter":3,"by":"01941f29-7c00-7000-8000-000000000001",
             "at":"2026-11-03T15:32:00+01:00","what":{"kind":"note","note":{"round":"01941f29-7c00-7000-8000-000000000013","letter":"b","wishes":[{"axis":"sour","wish":"more"}],
             "verdict":"yes","moment":"minute5"}}}
            """;
        var entry = CaptureText.Read(Encoding.UTF8.GetBytes(Text));
        var note = Assert.IsType<CapturedNote>(entry.What).Note;
        Assert.Equal((PourLetter.B, Verdict.Yes, TasteMoment.Minute5, new AxisWish(TasteAxis.Sour, Wish.More)), (note.Letter, note.Verdict, note.Moment, note.Wishes[0]));
        Assert.Equal((3, Trial.Noon.AddHours(2.5).AddMinutes(2)), (entry.Counter, entry.At.ToUniversalTime()));
        Assert.Empty(entry.Problems());
    }

    [Theory]
    [InlineData("")]
    [InlineData("null")]
    [InlineData("[]")]
    [InlineData("{\"what\":{\"kind\":\"sing\"}}")]
    [InlineData("{\"id\":\"01941f29-7c00-7000-8000-000000000011\"}")]
    [InlineData("{\"what\":null}")]
    [InlineData("{\"what\":{\"kind\":\"note\"}}")]
    [InlineData("{\"what\":{\"kind\":\"note\",\"note\":null}}")]
    [InlineData("{\"what\":{\"kind\":\"note\",\"note\":{\"round\":\"01941f29-7c00-7000-8000-000000000013\",\"letter\":9}}}")]
    [InlineData("{\"what\":{\"kind\":\"line\",\"text\":null}}")]
    public void What_is_no_entry_is_refused_and_nothing_else_is_thrown(string text) =>
        Assert.ThrowsAny<JsonException>(() => CaptureText.Read(Encoding.UTF8.GetBytes(text)));

    [Theory]
    [InlineData("id")]
    [InlineData("device")]
    [InlineData("counter")]
    [InlineData("by")]
    [InlineData("at")]
    [InlineData("letter")]
    [InlineData("field")]
    [InlineData("round")]
    public void An_entry_that_leaves_out_what_it_must_say_is_refused_and_never_taken_for_another(string without)
    {
        var whole = JsonSerializer.Deserialize<System.Text.Json.Nodes.JsonObject>(
            CaptureText.Write(new CaptureEntry(EntryId.New(), Phone, 7, Trial.Joss, Trial.Noon, new CapturedCell(RoundId.New(), PourLetter.C, LineId.New(), CellField.Poured, 17.5))))!;
        Assert.True(whole.Remove(without) || whole["what"]!.AsObject().Remove(without));
        Assert.ThrowsAny<JsonException>(() => CaptureText.Read(Encoding.UTF8.GetBytes(whole.ToJsonString())));
    }

    [Fact]
    public void An_entry_without_an_id_is_a_problem() =>
        Assert.Equal("id", Assert.Single(new CaptureEntry(default, Phone, 1, Trial.Ines, Trial.Noon, new CapturedAnswer(EntryId.New())).Problems()).Field);

    [Fact]
    public void A_later_value_collides_only_with_another_devices_value_that_was_not_seen_and_differs()
    {
        Assert.True(CaptureEntry.Collides<double?>(Phone, null, 17.5, Tablet, 20));
        Assert.True(CaptureEntry.Collides<double?>(Phone, 15, null, Tablet, 20));
        Assert.False(CaptureEntry.Collides<double?>(Phone, 20, 17.5, Tablet, 20));
        Assert.False(CaptureEntry.Collides<double?>(Phone, null, 20, Tablet, 20));
        Assert.False(CaptureEntry.Collides<double?>(Phone, null, 17.5, Phone, 20));
        Assert.False(CaptureEntry.Collides<double?>(Phone, null, 17.5, null, 20));
    }

    [Fact]
    public void An_entry_with_absurd_figures_or_endless_text_has_problems()
    {
        Captured[] wrong =
        [
            new CapturedLine(DraftId.New(), LineId.New(), " ", null), new CapturedLine(DraftId.New(), LineId.New(), new string('x', 501), null),
            new CapturedCell(RoundId.New(), (PourLetter)9, LineId.New(), CellField.Poured, 1, null), new CapturedCell(RoundId.New(), PourLetter.A, LineId.New(), CellField.Poured, -1, null),
            new CapturedReading("temperature", 4, "°C", default), new CapturedReading("temperature", double.NaN, "°C", default, Thing: "Fridge"),
            new CapturedBatch(IngredientId.New(), Guid.NewGuid(), double.PositiveInfinity, Unit.Litre, default), new CapturedPouredAway(IngredientId.New(), null, 1, Unit.Litre, new string('x', 201)),
        ];
        Assert.All(wrong, what => Assert.NotEmpty(new CaptureEntry(EntryId.New(), Phone, 1, Trial.Ines, Trial.Noon, what).Problems()));
    }
}
