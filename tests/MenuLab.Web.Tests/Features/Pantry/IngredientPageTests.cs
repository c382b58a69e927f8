using Bunit;
using MenuLab.Core.Pantry;
using MenuLab.Data.Pantry;
using MenuLab.Web.Accounts;
using MenuLab.Web.Features.House;
using MenuLab.Web.Features.Pantry;
using Microsoft.Extensions.DependencyInjection;

namespace MenuLab.Web.Tests.Features.Pantry;

/// <summary>The page and its desk on a house of their own.</summary>
public sealed class IngredientPageTests : BunitContext, IAsyncLifetime
{
    private readonly string _folder = Directory.CreateTempSubdirectory("menulab-pantry-").FullName;
    private Houses _houses = null!;
    private PantryDesk _desk = null!;

    public async ValueTask InitializeAsync()
    {
        _houses = new Houses(new DataFolder(_folder), TimeProvider.System);
        await _houses.ShowAsync(demo: false);
        _desk = new PantryDesk(new CurrentHouse(_houses), new CurrentPerson(), TimeProvider.System);
        Services.AddSingleton(_desk);
    }

    protected override async ValueTask DisposeAsyncCore()
    {
        await base.DisposeAsyncCore();
        await _houses.DisposeAsync();
        Directory.Delete(_folder, recursive: true);
    }

    [Fact]
    public async Task A_saved_figure_counts_at_once_in_the_book_that_drinks_are_worked_out_with()
    {
        var id = Lemon.Id;
        var page = Render<IngredientPage>(p => p.Add(i => i.Id, id.Value));
        await page.WaitForElement("[data-testid=figure-total_sugars_g] .own input").InputAsync("4.5");
        Assert.Contains("not saved yet", page.Find("[data-testid=comes-to]").TextContent, StringComparison.Ordinal);
        await page.Find(".save-row .go").ClickAsync();

        page.WaitForAssertion(() => Assert.Contains("as saved", page.Find("[data-testid=comes-to]").TextContent, StringComparison.Ordinal));
        Assert.Equal("4.5 g", page.Find("[data-testid=figure-total_sugars_g] .num").TextContent.Trim());
        Assert.Equal(4.5, _desk.Book.Stock.Pantry.Find(id)!.Figures.Counting("total_sugars_g")!.Value);
    }

    [Fact]
    public async Task A_refused_figure_stays_as_typed_and_nothing_is_saved()
    {
        var page = Render<IngredientPage>(p => p.Add(i => i.Id, Lemon.Id.Value));
        await page.WaitForElement("[data-testid=figure-total_sugars_g] .own input").InputAsync("-4");
        await page.Find(".save-row .go").ClickAsync();
        Assert.Contains("less than nothing", page.Find(".problems").TextContent, StringComparison.Ordinal);
        Assert.Equal("-4", page.Find("[data-testid=figure-total_sugars_g] .own input").GetAttribute("value"));
        Assert.DoesNotContain(Lemon.Figures, f => f.Origin == PantryWriting.House);
    }

    [Fact]
    public async Task Somebody_else_who_saves_first_is_told_and_what_was_typed_stands_over_theirs()
    {
        var page = Render<IngredientPage>(p => p.Add(i => i.Id, Lemon.Id.Value));
        await page.WaitForElement("[data-testid=figure-total_sugars_g] .own input").InputAsync("4.5");
        Assert.True((await _desk.SetFiguresAsync(Lemon.Id, 0, [new HouseFigure("ph", 2.4, null, null, "label", FigureStatus.Confirmed)])).IsOk);
        page.WaitForElement("[data-testid=theirs]");
        await page.Find(".save-row .go").ClickAsync();
        Assert.Contains("Somebody else saved", page.Find(".figures .problems").TextContent, StringComparison.Ordinal);

        await page.Find("[data-testid=theirs] button").ClickAsync();
        page.WaitForAssertion(() => Assert.Equal("2.4", page.Find("[data-testid=figure-ph] .own input").GetAttribute("value")));
        Assert.Equal("4.5", page.Find("[data-testid=figure-total_sugars_g] .own input").GetAttribute("value"));
        await page.Find(".save-row .go").ClickAsync();
        page.WaitForAssertion(() => Assert.Equal((2.4, 4.5), (Lemon.Figures.Counting("ph")!.Value, Lemon.Figures.Counting("total_sugars_g")!.Value)));
    }

    [Fact]
    public void An_address_that_leads_to_no_ingredient_says_so()
    {
        var page = Render<IngredientPage>(p => p.Add(i => i.Id, Guid.NewGuid()));
        Assert.Equal("Not in the pantry", page.WaitForElement("h1").TextContent);
    }

    [Fact]
    public async Task The_list_follows_what_is_archived_and_what_is_on_hand()
    {
        var list = Render<PantryPage>();
        var all = list.WaitForElements("[data-testid=ingredient]").Count;
        Assert.True((await _desk.ArchiveAsync(Lemon.Id, 0)).IsOk);
        Assert.True((await _desk.SetOnHandAsync(_desk.Book.Stock.Pantry.Find("lime_juice")!.Id, true)).IsOk);
        list.WaitForAssertion(() => Assert.Equal(all - 1, list.FindAll("[data-testid=ingredient]").Count));
        await list.Find("#find").InputAsync("lime juice, fresh");
        Assert.True(list.FindAll("[data-testid=ingredient]")[0].QuerySelector(".hand input")!.HasAttribute("checked"));
        Assert.DoesNotContain("NaN", list.Markup, StringComparison.Ordinal);
    }

    private Ingredient Lemon => _desk.Book.Stock.Pantry.Find("lemon_juice")!;
}
