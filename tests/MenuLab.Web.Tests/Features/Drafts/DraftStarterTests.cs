using System.Text;
using MenuLab.Core.Drafts;
using MenuLab.Core.Drafts.Reading;
using MenuLab.Core.Pantry;
using MenuLab.Core.Quantities;
using MenuLab.Data.Drafts;
using MenuLab.Web.Commands;
using MenuLab.Web.Features.Drafts;
using MenuLab.Web.Tests.Features.House;

namespace MenuLab.Web.Tests.Features.Drafts;

public sealed class DraftStarterTests : IAsyncLifetime
{
    private const string Lamp =
        "Quay Lamp\n45 ml apple juice\n5 of Mira's smoke\n20 ml fresh lemon juice\nshake 12 s with cubes, fine strain into a coupe\nServe with a wink.\nmakes 2\ngarnish: rosemary sprig";

    private HouseOnDisk _test = null!;

    public async ValueTask InitializeAsync() => _test = await HouseOnDisk.OpenAsync();

    public ValueTask DisposeAsync() => _test.DisposeAsync();

    [Fact]
    public async Task A_typed_text_becomes_a_draft_and_what_was_not_understood_keeps_its_place_and_its_words()
    {
        var id = (await _test.Starter.FromTextAsync(Lamp, Unit.Millilitre)).Value;
        var draft = await DraftAsync(id);
        Assert.Equal("Quay Lamp", draft.Name);
        Assert.Equal(["45 ml apple juice", "5 of Mira's smoke", "20 ml fresh lemon juice", "garnish: rosemary sprig"], draft.Lines.Select(l => l.Text));
        Assert.Equal([true, false, true, true], draft.Lines.Select(l => l.Ingredient is not null));
        Assert.Equal(("shaken", 12.0, "coupe", "fine_strained"), (draft.Build.Method, draft.Build.Seconds!.Value, draft.Build.Glass, draft.Build.Strain));
        // Notes and the yield have no other home in a draft.
        Assert.Equal(["Serve with a wink.", "makes 2"], draft.Build.Steps.TakeLast(2));
        Assert.Equal(45, draft.Lines[0].Millilitres!.Value, 9);
    }

    [Fact]
    public async Task Bare_ounces_are_read_as_ounces_and_a_text_without_a_name_gets_a_placeholder()
    {
        var draft = await DraftAsync((await _test.Starter.FromTextAsync("1 1/2 apple juice", Unit.FluidOunce)).Value);
        Assert.Equal(IncomingDrink.Nameless, draft.Name);
        Assert.Equal(45, Assert.Single(draft.Lines).Millilitres!.Value, 9);
    }

    [Fact]
    public async Task A_text_without_a_line_starts_nothing()
    {
        Assert.False((await _test.Starter.FromTextAsync("  \n", Unit.Millilitre)).IsOk);
        Assert.Empty(await _test.Drafts.ListAsync());
    }

    [Fact]
    public async Task A_brief_is_kept_as_it_was_said_and_money_takes_a_comma_or_a_point()
    {
        var form = new BriefForm { Name = " Grey Heron ", Slot = "first of the evening", Style = "before_food", Claim = "no alcohol", Cost = "1,20", Price = "9.5", Due = new DateOnly(2026, 11, 20) };
        form.Avoid.Add(Allergen.Egg);
        var id = DraftId.New();
        for (var i = 0; i < 2; i++)
        {
            Assert.Equal(id, (await _test.Starter.FromBriefAsync(id, form.Read("EUR").Value)).Value);
        }
        Assert.Single(await _test.Drafts.ListAsync());
        var draft = await DraftAsync(id);
        Assert.Equal(("Grey Heron", "before_food", "first of the evening", "no alcohol"), (draft.Name, draft.Style, draft.Brief.Slot, draft.Brief.Claim));
        Assert.Equal((Money.Of(1.2m, "EUR"), Money.Of(9.5m, "EUR"), new DateOnly(2026, 11, 20)), (draft.Brief.CostLimit, draft.Brief.Price, draft.Brief.Due));
        Assert.Equal(AllergenState.Present, draft.Brief.Avoid[Allergen.Egg]);
        Assert.Equal(2, draft.Version);
    }

    [Fact]
    public void A_form_tells_all_that_is_wrong_with_it_at_once()
    {
        var form = new BriefForm { Cost = "1,500", Price = "-3", Slot = new string('x', 501) };
        Assert.Equal(["Name", "Slot", "Cost", "Price"], form.Read("EUR").Problems.Select(p => p.Field));
        Assert.Contains("1500", form.Read("EUR").Problems[2].Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_changed_brief_changes_only_what_differs_and_leaves_money_of_another_currency_alone()
    {
        var id = DraftId.New();
        await _test.Starter.FromBriefAsync(id, new BriefForm { Name = "Heron", Claim = "no alcohol", Cost = "1.2" }.Read("GBP").Value);
        var open = (await _test.Drafts.OpenBriefAsync(id))!;
        // Somebody else writes the slot meanwhile.
        await _test.House.Drafts.Apply(id, EditId.New(), _test.Person.Id, PageId.New(), open.Draft.Version, new ChangeBrief(BriefFields.Slot, new Brief { Slot = "late" }));
        open.Form.Name = "Grey Heron";
        open.Form.Claim = "";
        Assert.Equal("", await _test.Drafts.ChangeBriefAsync(open, open.Form.Read("EUR").Value));
        var draft = await DraftAsync(id);
        Assert.Equal(("Grey Heron", "", "late", Money.Of(1.2m, "GBP")), (draft.Name, draft.Brief.Claim, draft.Brief.Slot, draft.Brief.CostLimit));
        Assert.Null(await _test.Drafts.OpenBriefAsync(DraftId.New()));
    }

    [Fact]
    public async Task Files_are_read_before_anything_is_stored_and_each_says_what_stands_in_the_way()
    {
        await _test.Starter.FromTextAsync("quay lamp\n45 ml apple juice", Unit.Millilitre);
        var read = await _test.Import.ReadAsync(
            [
                File("a.txt", Lamp + "\n\nPlain\n45 ml apple juice"),
                File("t.csv", "drink,amount,unit,ingredient,colour\nTide,45,ml,apple juice,red\n"),
                File("cut.json", "{\"@type\": \"Recipe\",\n \"name\": \"cut"),
                File("empty.txt", " "),
                new HandedFile("photo.txt", [0x31, 0x0a, 0x00, 0x32]),
                new HandedFile("latin.txt", Encoding.Latin1.GetBytes("Quay\n45 ml purée\n")),
                new HandedFile("big.txt", [], TextFile.TooLarge(3_000_000)),
            ],
            new ReadSettings());
        Assert.Equal([2, 1, 0, 0, 0, 0, 0], read.Select(f => f.Drinks.Count));
        Assert.Equal([true, false], read[0].Drinks.Select(d => d.IsThere));
        Assert.Contains("colour", Assert.Single(read[1].Remarks), StringComparison.Ordinal);
        Assert.Equal([(2, 14), (1, 1), (2, 1), (2, 10), (1, 1)], read.Skip(2).Select(f => (f.Problem!.Line, f.Problem.Column)));
        Assert.Contains("3.0 MB", read[6].Problem!.Message, StringComparison.Ordinal);
        Assert.Single(await _test.Drafts.ListAsync());

        var ids = (await _test.Starter.BringInAsync([.. read.SelectMany(f => f.Drinks).Select(d => d.Drink)])).Value;
        Assert.Equal(3, ids.Count);
        Assert.Equal(2, (await _test.Drafts.ListAsync()).Count(d => string.Equals(d.Name, "Quay Lamp", StringComparison.OrdinalIgnoreCase)));
    }

    [Fact]
    public async Task A_drink_that_no_draft_can_hold_is_told_before_and_keeps_the_others_out_too()
    {
        var read = await _test.Import.ReadAsync([File("long.txt", new string('x', 90) + "\n45 ml apple juice\n\nFine\n45 ml apple juice")], new ReadSettings());
        var drinks = read[0].Drinks;
        var broken = Assert.Single(drinks, d => d.Problem is not null);
        Assert.False((await _test.Starter.BringInAsync([.. drinks.Select(d => d.Drink)])).IsOk);
        Assert.Empty(await _test.Drafts.ListAsync());
        Assert.NotEmpty(broken.Problem!);
    }

    private static HandedFile File(string name, string text) => new(name, Encoding.UTF8.GetBytes(text));

    private async Task<Draft> DraftAsync(DraftId id)
    {
        await using var db = _test.House.Read();
        return (await db.OpenDraft(id))!;
    }
}
