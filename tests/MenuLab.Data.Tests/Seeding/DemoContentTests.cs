using MenuLab.Core.Drafts;
using MenuLab.Core.Drafts.Reading;
using MenuLab.Core.Pantry;
using MenuLab.Data.Seeding;

namespace MenuLab.Data.Tests.Seeding;

/// <summary>The demo bar as its files tell it, before any database.</summary>
public sealed class DemoContentTests : IDisposable
{
    private static readonly DemoContent Demo = DemoBar.Load(DemoBar.DefaultFolder);
    private static readonly PantryList Pantry = new([.. Shipped.Data.Pantry.All, .. Demo.Ingredients]);
    private static readonly DrinkReader Reader = new(Vocabulary.Of(Pantry, Shipped.Data.Catalogue), Shipped.Data.Measures);
    private readonly string _folder = Directory.CreateTempSubdirectory("menulab-demo-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void Every_line_is_read_without_a_question_but_the_one_that_is_kept_as_typed()
    {
        var read = Texts().Select(t => Reader.Read(t, new ReadSettings())).ToList();
        Assert.True(read.Count > 35);
        Assert.All(read, r => Assert.True(r.Lines.Count >= 2));
        Assert.Equal(["a whisper of beet leaf"], read.SelectMany(r => r.Questions.Select(q => q.Text).Concat(r.Unread.Select(u => u.Text))));
        Assert.Empty(read.SelectMany(r => r.Notes).Concat(read.Select(r => r.Name).Where(n => n.Length > 0)));
        Assert.All(read, r => Assert.True(r.Build.Method is not null && r.Build.Glass is not null));
    }

    [Fact]
    public void The_drinks_are_made_in_different_ways_and_their_lines_written_in_different_units_and_places()
    {
        var read = Texts().Select(t => Reader.Read(t, new ReadSettings())).ToList();
        Assert.Superset(
            new HashSet<string?> { "shaken", "dry_shaken", "stirred", "built", "hot", "blended", "swizzled", "straight" }, read.Select(r => r.Build.Method).ToHashSet());
        var lines = read.SelectMany(r => r.Lines).ToList();
        Assert.Superset(
            new HashSet<Unit> { Unit.Millilitre, Unit.FluidOunce, Unit.Dash, Unit.Drop, Unit.BarSpoon, Unit.Teaspoon, Unit.Top, Unit.Rinse }, lines.Select(l => l.Unit).ToHashSet());
        Assert.Superset(new HashSet<Place> { Place.In, Place.Rinse, Place.Rim, Place.Garnish }, lines.Select(l => l.Place).ToHashSet());
    }

    [Fact]
    public void Each_draft_has_a_brief_and_a_history_and_the_work_did_not_go_straight_everywhere()
    {
        Assert.True(Demo.Drinks.Count >= 10);
        Assert.All(Demo.Drinks, d => Assert.InRange(d.Iterations.Count, 2, 5));
        Assert.All(Demo.Drinks, d => Assert.True(d.Brief.Slot.Length > 0 && d.Brief.Flavour.Length > 0 && d.Brief.CostLimit is not null && d.DueInDays is not null));
        Assert.Equal(["Low Water Orchard"], Demo.Drinks.Where(d => d.Iterations.Any(i => i.From == 2)).Select(d => d.Name));
        Assert.Equal(["Beet Under the Jetty"], Demo.Drinks.Where(d => d.Standing is { Standing: Standing.Parked, Reason.Length: > 0 }).Select(d => d.Name));
        Assert.Equal(["Ice House Quince"], Demo.Drinks.Where(d => d.Standing is { Standing: Standing.Dropped, Reason.Length: > 0 }).Select(d => d.Name));
        var reasons = Demo.Drinks.SelectMany(d => d.Iterations).Select(i => i.Reason).ToList();
        Assert.InRange(reasons.Count(r => r.Length == 0), 2, reasons.Count / 4);
    }

    [Fact]
    public void No_ingredient_of_the_demo_is_among_the_shipped_ones()
    {
        Assert.InRange(Demo.Ingredients.Count, 12, 20);
        Assert.All(Demo.Ingredients, i => Assert.True(Shipped.Data.Pantry.Find(i.Id) is null && Shipped.Data.Pantry.Find(i.Key) is null));
        var shippedNames = Shipped.Data.Pantry.All.SelectMany(i => i.Aliases.Append(i.Name)).ToHashSet(StringComparer.OrdinalIgnoreCase);
        Assert.DoesNotContain(Demo.Ingredients.SelectMany(i => i.Aliases.Append(i.Name)), shippedNames.Contains);
    }

    [Fact]
    public void Every_fixed_id_is_a_version_7_one_and_stands_for_one_thing()
    {
        Guid[] ids =
        [
            .. Demo.People.Select(p => p.Id.Value), .. Demo.Ingredients.Select(i => i.Id.Value), .. Demo.Drinks.Select(d => d.Id.Value),
            .. Demo.Prices.Select(p => (p.Key, p.Pack.Value)).Distinct().Select(p => p.Value),
        ];
        Assert.Equal(ids.Length, ids.Distinct().Count());
        Assert.All(ids, id => Assert.Equal((7, true), (id.Version, id.Variant is >= 8 and <= 11)));
    }

    [Fact]
    public void Every_figure_allergen_and_weight_says_that_it_is_of_the_demo_and_who_holds_it()
    {
        var figures = Demo.Ingredients.SelectMany(i => i.Figures).ToList();
        Assert.True(figures.Count > 100);
        Assert.All(figures, f => Assert.StartsWith("demo", f.Source, StringComparison.Ordinal));
        Assert.All(figures, f => Assert.Equal(f.Status == FigureStatus.Measured ? "reading" : "house", f.Origin));
        Assert.All(Demo.Ingredients.SelectMany(i => i.AllergenFacts), a => Assert.StartsWith("demo", a.Source, StringComparison.Ordinal));
        Assert.All(Demo.Ingredients.SelectMany(i => i.Pieces), p => Assert.StartsWith("demo", p.Source, StringComparison.Ordinal));
    }

    [Fact]
    public void The_figures_of_each_ingredient_fit_each_other()
    {
        var remarks = Demo.Ingredients.SelectMany(i =>
            CompositionCheck.Remarks(i.Basis, i.Figures, i.Composition)
                .Concat(CompositionBuilder.Build(i.Kind, i.Basis, i.Figures, i.Composition.Allergens).Remarks)
                .Select(r => $"{i.Key}: {r.Text}"));
        Assert.Empty(remarks);
    }

    [Fact]
    public void A_measured_figure_is_one_that_was_read_on_the_bench_and_each_reading_became_one()
    {
        var measured = Demo.Ingredients.SelectMany(i => i.Figures.Where(f => f.Status == FigureStatus.Measured).Select(f => (i.Key, f.Quantity, f.Value)));
        // A titration is read in grams a litre; the figure stands per 100 mL.
        var read = Demo.Readings.Select(r => r.Kind == "titration" ? (r.Key, "ta_citric_g", r.Value / 10) : (r.Key, r.Kind, r.Value));
        Assert.Equal(read.Order(), measured.Order());
        Assert.True(Demo.Readings.Count >= 6);
    }

    [Theory]
    [InlineData("toasted_barley_tea", Allergen.Gluten, AllergenState.Present)]
    [InlineData("toasted_barley_syrup", Allergen.Gluten, AllergenState.Present)]
    [InlineData("toasted_barley_tea", Allergen.Wheat, AllergenState.Unknown)]
    [InlineData("pear_shrub", Allergen.Sulphites, AllergenState.Unknown)]
    [InlineData("quince_cordial", Allergen.Gluten, AllergenState.Absent)]
    public void What_is_known_of_an_allergen(string key, Allergen allergen, AllergenState state) =>
        Assert.Equal(state, Demo.Ingredients.Single(i => i.Key == key).Composition.Allergens[allergen]);

    [Fact]
    public void Most_of_what_the_drinks_use_has_a_price_and_what_has_none_is_in_one_drink()
    {
        var priced = Demo.Prices.Select(p => p.Key).ToHashSet(StringComparer.Ordinal);
        var used = Demo.Drinks.Select(d => (d.Name, Keys: TextsOf(d).SelectMany(t => Reader.Read(t, new ReadSettings()).Lines).Select(l => Pantry.Find(l.Ingredient)!.Key).ToHashSet(StringComparer.Ordinal)))
            .ToList();
        var all = used.SelectMany(u => u.Keys).Distinct(StringComparer.Ordinal).ToList();
        Assert.True(all.Count(priced.Contains) * 3 >= all.Count * 2);
        Assert.Equal(["Beet Under the Jetty"], used.Where(u => !priced.IsSupersetOf(u.Keys)).Select(u => u.Name));
        Assert.True(Demo.Prices.GroupBy(p => p.Pack).Count(g => g.Count() is 2 or 3) >= 3);
    }

    [Theory]
    [InlineData("packs.csv", "9.60,EUR", "9.60 EUR,EUR", "demo/packs.csv, line 34, column price: \"9.60 EUR\" is not a number.")]
    [InlineData("packs.csv", "1000,ml,9.60", "1000,bottle,9.60", "demo/packs.csv, line 34, column unit: a pack is counted in ml, g or piece.")]
    [InlineData("readings.csv", "8,Ines,batch 52", "8,Nobody,batch 52", "demo/readings.csv, line 2, column by: nobody is called Nobody in people.csv.")]
    [InlineData("figures.csv", "toasted_barley_tea,water_g,99.3", "toasted_barley_tea,water_g,wet", "demo/figures.csv, line 2, column value: \"wet\" is not a number.")]
    [InlineData("drinks/net-loft-ember.txt", "iteration 2, 20", "iteration 3, 20", "demo/drinks/net-loft-ember.txt, line 19: this should be iteration 2.")]
    [InlineData("drinks/net-loft-ember.txt", "iteration 2, 20", "iteration 2 from 2, 20", "demo/drinks/net-loft-ember.txt, line 19: there is no iteration 2 above it.")]
    [InlineData("drinks/net-loft-ember.txt", "iteration 2, 20 days", "iteration 2, 30 days", "demo/drinks/net-loft-ember.txt, line 19: this is earlier than what stands above it.")]
    [InlineData("drinks/net-loft-ember.txt", "iteration 2, 20 days before at 14:35, by Teodor", "iteration two", "demo/drinks/net-loft-ember.txt, line 19: this line should read: iteration N")]
    [InlineData("drinks/net-loft-ember.txt", "1.30 EUR", "little", "demo/drinks/net-loft-ember.txt, line 8: \"little\" is no amount of money")]
    [InlineData("drinks/net-loft-ember.txt", "slot: hot", "place: hot", "demo/drinks/net-loft-ember.txt, line 4: \"place: hot, for the terrace\" is no line of a brief")]
    public void A_fault_is_named_with_its_file_and_line(string file, string right, string wrong, string message)
    {
        Copy();
        var path = Path.Combine(_folder, file);
        var text = File.ReadAllText(path);
        Assert.Contains(right, text, StringComparison.Ordinal);
        File.WriteAllText(path, text.Replace(right, wrong, StringComparison.Ordinal));
        Assert.StartsWith(message, Assert.Throws<SeedDataException>(() => DemoBar.Load(_folder)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_that_ends_in_the_middle_of_an_iteration_is_a_fault()
    {
        Copy();
        File.AppendAllText(Path.Combine(_folder, "drinks", "net-loft-ember.txt"), "\niteration 4, 2 days before at 10:00, by Ines\nreason: none\n");
        Assert.EndsWith(": the drink is missing.", Assert.Throws<SeedDataException>(() => DemoBar.Load(_folder)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_missing_file_or_folder_is_named()
    {
        Copy();
        Directory.Delete(Path.Combine(_folder, "drinks"), recursive: true);
        Assert.Contains("demo/drinks cannot be read", Assert.Throws<SeedDataException>(() => DemoBar.Load(_folder)).Message, StringComparison.Ordinal);
        File.Delete(Path.Combine(_folder, "packs.csv"));
        Assert.Contains("demo/packs.csv cannot be read", Assert.Throws<SeedDataException>(() => DemoBar.Load(_folder)).Message, StringComparison.Ordinal);
    }

    private static IEnumerable<string> Texts() => Demo.Drinks.SelectMany(TextsOf);

    private static IEnumerable<string> TextsOf(DemoDrink drink)
    {
        var saved = drink.Iterations.Select(i => i.Drink.Text);
        return drink.Now is { } now ? saved.Append(now.Text) : saved;
    }

    private void Copy()
    {
        foreach (var file in Directory.GetFiles(DemoBar.DefaultFolder, "*", SearchOption.AllDirectories))
        {
            var to = Path.Combine(_folder, Path.GetRelativePath(DemoBar.DefaultFolder, file));
            Directory.CreateDirectory(Path.GetDirectoryName(to)!);
            File.Copy(file, to);
        }
    }
}
