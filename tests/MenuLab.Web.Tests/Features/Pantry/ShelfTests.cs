using System.Diagnostics;
using MenuLab.Core.Balance;
using MenuLab.Core.House;
using MenuLab.Core.Pantry;
using MenuLab.Core.Safety;
using MenuLab.Data.Pantry;
using MenuLab.Data.Seeding;
using MenuLab.Web.Features.Bench;
using MenuLab.Web.Features.House;
using MenuLab.Web.Features.Pantry;

namespace MenuLab.Web.Tests.Features.Pantry;

public sealed class ShelfTests
{
    private static readonly SeedData Shipped = SeedData.Load(SeedData.DefaultFolder);
    private static readonly Ingredient Lemon = Shipped.Pantry.Find("lemon_juice")!;
    private static readonly Ingredient Lime = Shipped.Pantry.Find("lime_juice")!;

    private static readonly Shelf Shelf = new(
        new HouseBook(new HouseStock(Shipped.Pantry, Shipped.Catalogue, Shipped.Measures) { Rules = SiteRules.Of(Shipped.Rules, "EU", HouseFormat.Plain) }, new HouseSettings(), Site.Of(SiteId.New(), "The quay", "Etc/UTC", Site.UsualDayTurn, "EUR", "EU").Value)
        {
            Archived = new HashSet<IngredientId> { Lime.Id },
            OnHand = new HashSet<IngredientId> { Lemon.Id },
        },
        new Dictionary<IngredientId, IReadOnlyList<string>> { [Lemon.Id] = ["sour"] }, new Dictionary<IngredientId, PriceNow>());

    [Fact]
    public void A_name_is_found_by_any_part_and_by_its_aliases_marks_aside_and_what_begins_with_it_comes_first()
    {
        Assert.Equal(Lemon.Id, Shelf.Find(new ShelfFilter("lemón juice, fr"))[0].Ingredient.Id);
        var alias = Lemon.Aliases.First(a => !Lemon.Name.Contains(a, StringComparison.OrdinalIgnoreCase));
        Assert.Contains(Shelf.Find(new ShelfFilter(alias)), r => r.Ingredient.Id == Lemon.Id);
        var found = Shelf.Find(new ShelfFilter("le"));
        Assert.StartsWith("LE", found[0].SearchName, StringComparison.Ordinal);
        Assert.Empty(Shelf.Find(new ShelfFilter("nothing is called this")));
    }

    [Fact]
    public void What_is_archived_is_found_only_where_the_archived_are_asked_for()
    {
        Assert.DoesNotContain(Shelf.Find(new ShelfFilter("lime")), r => r.Ingredient.Id == Lime.Id);
        Assert.Equal([Lime.Id], Shelf.Find(new ShelfFilter(Archived: true)).Select(r => r.Ingredient.Id));
    }

    [Fact]
    public void Each_filter_leaves_what_fits_and_nothing_else()
    {
        Assert.All(Shelf.Find(new ShelfFilter(Kind: IngredientKind.Vinegar)), r => Assert.Equal(IngredientKind.Vinegar, r.Ingredient.Kind));
        Assert.NotEmpty(Shelf.Find(new ShelfFilter(Kind: IngredientKind.Vinegar)));
        Assert.Equal([Lemon.Id], Shelf.Find(new ShelfFilter(Role: "sour")).Select(r => r.Ingredient.Id));
        Assert.Equal([Lemon.Id], Shelf.Find(new ShelfFilter(OnHandOnly: true)).Select(r => r.Ingredient.Id));
        var milk = Shelf.Find(new ShelfFilter(Allergen: Allergen.Milk));
        var asked = Shelf.Find(new ShelfFilter(Allergen: Allergen.Milk, AllergenState: AllergenState.Unknown));
        Assert.All(milk, r => Assert.Equal(AllergenState.Present, r.Ingredient.Composition.Allergens[Allergen.Milk]));
        Assert.All(asked, r => Assert.Equal(AllergenState.Unknown, r.Ingredient.Composition.Allergens[Allergen.Milk]));
        Assert.NotEmpty(milk);
        Assert.NotEmpty(asked);
    }

    [Fact]
    public void A_figure_that_nobody_knows_is_marked_unknown_and_one_of_the_kind_is_never_marked_as_read_from_a_table()
    {
        Assert.Contains(Shelf.Rows, r => r.Sugar == Origin.Unknown);
        foreach (var row in Shelf.Rows)
        {
            Assert.Equal(row.Sugar == Origin.Unknown, row.ComesTo[Metric.Sugar].Certainty == Core.Quantities.Certainty.Unknown);
            if (row.Ph == Origin.Table)
            {
                Assert.Equal(FigureStatus.Confirmed, row.Ingredient.Figures.Single(f => f.Quantity == "ph").Status);
            }
        }
    }

    [Fact]
    public void Three_hundred_ingredients_are_searched_within_the_time_of_a_key()
    {
        Shelf.Find(new ShelfFilter("x"));
        var watch = Stopwatch.StartNew();
        const int Keys = 20;
        for (var key = 0; key < Keys; key++)
        {
            Shelf.Find(new ShelfFilter("lemon juice"[..(1 + key % 10)]));
        }
        Assert.True(watch.Elapsed.TotalMilliseconds / Keys < 50, $"A key took {watch.Elapsed.TotalMilliseconds / Keys:0.00} ms.");
    }
}
