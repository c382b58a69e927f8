using MenuLab.Core.Balance;
using MenuLab.Core.Drafts;
using MenuLab.Core.Drafts.Reading;
using MenuLab.Core.House;
using MenuLab.Core.Iterations;
using MenuLab.Data.Drafts;
using MenuLab.Data.House;
using MenuLab.Data.Iterations;
using MenuLab.Data.Opening;
using MenuLab.Data.Pantry;
using MenuLab.Data.Seeding;
using MenuLab.TestKit.Databases;
using Microsoft.EntityFrameworkCore;

namespace MenuLab.Data.Tests.Seeding;

/// <summary>A database with the shipped pantry and the demo bar, made once for all tests that only look at it.</summary>
public abstract class MadeDemo(TestDatabase database) : IAsyncLifetime
{
    internal static readonly DateTimeOffset Now = new(2026, 11, 3, 2, 30, 0, TimeSpan.Zero);

    /// <summary>Half past two at night still belongs to the day before.</summary>
    internal static readonly DateOnly Today = new(2026, 11, 2);

    internal DemoContent Content { get; } = DemoBar.Load(DemoBar.DefaultFolder);

    internal string? Missing => database.Missing;

    internal Store Store { get; private set; } = null!;

    internal DemoMade Made { get; private set; } = DemoMade.Nothing;

    public async ValueTask InitializeAsync()
    {
        if (Missing is null)
        {
            Store = await database.Open();
            await FirstRows.Ensure(Store.Writer, Shipped.Data.Measures, Now);
            await ShippedIngredients.TakeIn(Store.Writer, Shipped.Data.Pantry, 1, Now);
            Made = await Make();
        }
    }

    public async ValueTask DisposeAsync()
    {
        GC.SuppressFinalize(this);
        if (Store is not null)
        {
            await Store.DisposeAsync();
        }
        await database.DisposeAsync();
    }

    internal Task<DemoMade> Make(DemoContent? content = null) => DemoBar.MakeAsync(Store.Writer, Store.Read, Shipped.Data, content ?? Content, Now);
}

public sealed class MadeDemo_on_Sqlite() : MadeDemo(new SqliteDatabase());

public sealed class MadeDemo_on_Postgres() : MadeDemo(new PostgresDatabase());

public abstract class DemoBarTests : IDisposable
{
    private readonly MadeDemo _demo;
    private readonly MenuLabDbContext _db;

    protected DemoBarTests(MadeDemo demo)
    {
        if (demo.Missing is { } why)
        {
            Assert.Skip(why);
        }
        _demo = demo;
        _db = demo.Store.Read();
    }

    public void Dispose()
    {
        GC.SuppressFinalize(this);
        _db?.Dispose();
    }

    [Fact]
    public async Task Everything_in_the_files_comes_into_the_database()
    {
        var content = _demo.Content;
        Assert.Equal(new DemoMade(content.Ingredients.Count, content.Drinks.Count, content.Drinks.Sum(d => d.Iterations.Count)), _demo.Made);
        Assert.Equal(content.Drinks.Select(d => d.Name).Order(), (await _db.ListDrafts()).Select(d => d.Name).Order());
        Assert.Equal(content.Drinks.Sum(d => d.Iterations.Count), await _db.Iterations.CountAsync());
        Assert.Equal(content.Prices.Count, await _db.Prices.CountAsync());
        Assert.Equal(content.Prices.Select(p => p.Pack).Distinct().Count(), await _db.Packs.CountAsync());
        Assert.Equal(content.Readings.Count, await _db.Readings.CountAsync());
        Assert.Equal(content.People.Count + 1, await _db.People.CountAsync());
    }

    [Fact]
    public async Task Made_twice_it_changes_nothing()
    {
        var before = await Counts();
        Assert.Equal(DemoMade.Nothing, await _demo.Make());
        Assert.Equal(before, await Counts());
        Assert.DoesNotContain(0, before);
    }

    [Fact]
    public async Task House_ingredients_come_back_with_the_composition_that_the_iterations_were_computed_from_and_stay_out_of_the_shipped_ones()
    {
        var pantry = await _db.LoadPantry();
        Assert.Equal(Shipped.Data.Pantry.All.Count + _demo.Content.Ingredients.Count, pantry.All.Count);
        foreach (var expected in _demo.Content.Ingredients)
        {
            var actual = pantry.Find(expected.Id)!;
            Assert.Equal((expected.Name, expected.Kind, expected.Basis, expected.Note), (actual.Name, actual.Kind, actual.Basis, actual.Note));
            Assert.Equal(CompositionText.Hash(expected.Composition), CompositionText.Hash(actual.Composition));
            Assert.Equal(expected.Figures.OrderBy(f => f.Quantity, StringComparer.Ordinal), actual.Figures);
        }
        Assert.Equal(_demo.Content.Ingredients.Select(i => i.Id).Order(), (await _db.Ingredients.Where(i => i.Key == null).Select(i => i.Id).ToListAsync()).Order());
        // What a later start finds: the same edition changes nothing, and no house ingredient is dropped.
        Assert.Equal(EditionTaken.Nothing, await ShippedIngredients.TakeIn(_demo.Store.Writer, Shipped.Data.Pantry, 1, MadeDemo.Now));
    }

    [Fact]
    public async Task Each_iteration_holds_the_lines_and_the_build_of_its_text_as_the_houses_pantry_reads_it()
    {
        var pantry = await _db.LoadPantry();
        var reader = new DrinkReader(Vocabulary.Of(pantry, Shipped.Data.Catalogue), Shipped.Data.Measures);
        foreach (var drink in _demo.Content.Drinks)
        {
            var history = await _db.HistoryOf(drink.Id);
            Assert.Equal(drink.Iterations.Select(i => i.Reason), history.Select(i => i.Reason));
            foreach (var (told, saved) in drink.Iterations.Zip(history))
            {
                var read = reader.Read(told.Drink.Text, new ReadSettings());
                var snapshot = (await _db.LoadIteration(saved.Id))!.Body.Snapshot();
                Assert.Equal(
                    read.Lines.Select(l => (l.Text, l.Ingredient, l.Unit, l.Place, l.Joins, l.Millilitres, l.Grams, l.StartCelsius)),
                    snapshot.Lines.Select(l => l.Line).Select(l => (l.Text, l.Ingredient, l.Unit, l.Place, l.Joins, l.Millilitres, l.Grams, l.StartCelsius)));
                Assert.Equal((read.Build.Method, read.Build.Glass, read.Build.Ice), (snapshot.Build.Method, snapshot.Build.Glass, snapshot.Build.Ice));
                Assert.Equal(read.Build.Steps, snapshot.Build.Steps);
            }
        }
    }

    [Fact]
    public async Task Stored_balances_are_those_that_the_engine_computes_from_what_was_stored()
    {
        foreach (var id in await _db.Iterations.Select(i => i.Id).ToListAsync())
        {
            var saved = (await _db.LoadIteration(id))!;
            var snapshot = saved.Body.Snapshot();
            var compositions = await _db.LoadCompositions(saved.Lines.Select(l => l.Composition));
            var (stored, computed) = (saved.Body.Balance(), snapshot.Recompute(hash => compositions[hash], Shipped.Data.Measures));
            Assert.Equal(stored.Served is null, computed.Served is null);
            foreach (var metric in Enum.GetValues<Metric>())
            {
                Close(stored.Mixed[metric].Value, computed.Mixed[metric].Value);
                if (stored.Served is { } served)
                {
                    Close(served[metric].Value, computed.Served![metric].Value);
                    Close(served[metric].High, computed.Served[metric].High);
                }
            }
            Assert.Equal(saved.Iteration.Hash, Iteration.HashOf(saved.Body.Inputs(), BalanceEngine.Version));
        }

        static void Close(double stored, double computed) => Assert.True(
            stored.Equals(computed) || Math.Abs(stored - computed) <= 1e-9 * Math.Max(1, Math.Abs(stored)), $"stored {stored}, computed {computed}");
    }

    [Fact]
    public async Task Two_thirds_of_the_drinks_hold_less_than_half_a_per_cent_of_alcohol_and_keep_their_claim()
    {
        var last = await Last();
        var without = last.Where(x => x.Iteration.Figures.Abv < 0.5).Select(x => x.Drink.Name).ToList();
        Assert.Equal((9, 12), (without.Count, last.Count));
        Assert.Equal(without.Order(), last.Where(x => x.Drink.Brief.Claim is "below 0.5 % ABV" or "without alcohol").Select(x => x.Drink.Name).Order());
        Assert.InRange(last.Single(x => x.Drink.Name == "Ebb and Verjus").Iteration.Figures.Abv!.Value, 3, 8);
        Assert.InRange(last.Single(x => x.Drink.Name == "Ropewalk Fennel").Iteration.Figures.Abv!.Value, 20, 30);
    }

    // Common practice, no source: where sour, long and sparkling drinks usually lie.
    [Fact]
    public async Task The_last_iteration_of_what_is_in_the_works_is_in_balance_fits_its_glass_and_costs_what_the_brief_allows()
    {
        var last = (await Last()).Where(x => x.Drink.Standing is null && x.Drink.Name != "Ropewalk Fennel").ToList();
        Assert.Equal(9, last.Count);
        Assert.All(last, x => Assert.InRange(x.Iteration.Figures.Sugar!.Value, 6, 12.5));
        Assert.All(last, x => Assert.InRange(x.Iteration.Figures.Acid!.Value, 0.45, 0.9));
        Assert.All(last, x => Assert.InRange(x.Iteration.Figures.SugarAcidRatio!.Value, 9, 19));
        Assert.All(last, x => Assert.InRange(x.Iteration.Figures.GlassFill!.Value, 85, 101.5));
        Assert.All(last, x => Assert.InRange((decimal)x.Iteration.Figures.Cost!.Value, 0.1m, x.Drink.Brief.CostLimit!.Value.Amount));
        // And it was work to get there: some first pours lie outside.
        var first = await _db.Iterations.Where(i => i.Number == 1).ToListAsync();
        Assert.True(first.Count(i => i.Figures.SugarAcidRatio is < 9 or > 19 || i.Figures.GlassFill > 101.5) >= 5);
    }

    [Fact]
    public async Task Costs_come_from_the_prices_of_the_day_and_a_drink_with_an_unpriced_line_costs_at_least()
    {
        var pantry = await _db.LoadPantry();
        var open = new HashSet<string>();
        var checkedLines = 0;
        foreach (var drink in _demo.Content.Drinks)
        {
            foreach (var (told, saved) in drink.Iterations.Zip(await _db.HistoryOf(drink.Id)))
            {
                var prices = await _db.PricesPerGram(FirstRows.FirstSite, MadeDemo.Today.AddDays(-told.Drink.Moment.DaysBefore), pantry);
                var body = (await _db.LoadIteration(saved.Id))!.Body;
                var snapshot = body.Snapshot();
                Assert.Equal("EUR", snapshot.Currency);
                foreach (var line in snapshot.Lines)
                {
                    Assert.Equal(prices.TryGetValue(line.Line.Ingredient, out var price) ? price : null, line.PricePerGram);
                    checkedLines++;
                }
                var cost = (body.Balance().Served ?? body.Balance().Mixed)[Metric.Cost];
                if (cost.UnknownPercent > 0)
                {
                    open.Add(drink.Name);
                }
            }
        }
        Assert.True(checkedLines > 150);
        Assert.Equal(["Beet Under the Jetty"], open);
    }

    [Fact]
    public async Task A_price_that_rose_makes_the_later_iteration_dearer_by_that()
    {
        // Lemons: 27.90 for a hundred from 31 days before, 31.50 from 9 days before, tax of 7 % in both; 48 g of juice each.
        var lemon = Shipped.The("lemon_juice");
        var pantry = await _db.LoadPantry();
        Assert.Equal(27.90 / 1.07 / 4800, (await _db.PricesPerGram(FirstRows.FirstSite, MadeDemo.Today.AddDays(-10), pantry))[lemon.Id], 1e-12);
        Assert.Equal(31.50 / 1.07 / 4800, (await _db.PricesPerGram(FirstRows.FirstSite, MadeDemo.Today.AddDays(-9), pantry))[lemon.Id], 1e-12);
    }

    [Fact]
    public async Task The_edits_of_each_draft_lead_from_nothing_to_its_working_copy_and_can_all_be_taken_back()
    {
        foreach (var drink in _demo.Content.Drinks)
        {
            var draft = (await _db.OpenDraft(drink.Id))!;
            var edits = await _db.EditsOf(drink.Id);
            Assert.Equal(Enumerable.Range(1, draft.Version), edits.Select(e => e.Version));
            var again = Draft.Start(drink.Id, drink.Name, draft.MadeBy, draft.MadeAt).Value;
            foreach (var applied in edits)
            {
                Assert.True(again.Apply(applied.Edit, [], c => c).IsOk);
            }
            Assert.Equal(draft.Lines.Select(l => (l.Id, l.Position, l.Text, l.Millilitres)), again.Lines.Select(l => (l.Id, l.Position, l.Text, l.Millilitres)));
            Assert.Equal((draft.Brief.Slot, draft.Brief.Due, draft.Standing), (again.Brief.Slot, again.Brief.Due, again.Standing));
            foreach (var applied in edits.Reverse())
            {
                Assert.True(again.Apply(new Edit(EditId.New(), applied.Edit.By, applied.Edit.Page, again.Version, applied.Undo, MadeDemo.Now), [], c => c).IsOk);
            }
            Assert.Empty(again.Lines);
            Assert.Equal(Brief.Open, again.Brief);
        }
    }

    [Fact]
    public async Task A_line_that_only_changes_stays_the_same_line()
    {
        var id = Named("Low Water Orchard").Id;
        var edits = (await _db.EditsOf(id)).Select(e => e.Edit.Action).ToList();
        Assert.Contains(edits.OfType<ChangeLine>(), e => e.Content.Text == "7.5 ml fennel syrup" && e.Fields.HasFlag(LineFields.Amount));
        var cordial = Assert.Single(edits.OfType<AddLine>(), e => e.Content.Text.EndsWith("quince cordial", StringComparison.Ordinal));
        Assert.Equal(4, edits.OfType<ChangeLine>().Count(e => e.Line == cordial.Line));
    }

    [Fact]
    public async Task Low_Water_Orchard_branches_from_2_and_has_changes_and_an_open_line_on_the_bench()
    {
        var id = Named("Low Water Orchard").Id;
        var history = await _db.HistoryOf(id);
        Assert.Equal([null, 1, 2, 2, 3], history.Select(i => history.SingleOrDefault(p => p.Id == i.Parent)?.Number));
        var draft = (await _db.OpenDraft(id))!;
        Assert.True(draft.Version > history[^1].DraftVersion);
        var kept = Assert.Single(draft.Lines, l => l.Ingredient is null);
        Assert.Equal("a whisper of beet leaf", kept.Text);
        Assert.Equal("7.5 ml fennel syrup", draft.Lines.Single(l => l.Text.Contains("fennel", StringComparison.Ordinal)).Text);
    }

    [Fact]
    public async Task Everything_happened_in_order_at_least_a_day_before_and_is_due_after_today()
    {
        var turn = new DateTimeOffset(MadeDemo.Today.ToDateTime(Site.UsualDayTurn), TimeSpan.Zero);
        foreach (var drink in _demo.Content.Drinks)
        {
            var draft = (await _db.OpenDraft(drink.Id))!;
            DateTimeOffset[] times = [draft.MadeAt, .. (await _db.HistoryOf(drink.Id)).Select(i => i.At), draft.ChangedAt];
            Assert.Equal(times.Order(), times);
            Assert.All(times, t => Assert.True(t < turn));
            Assert.Equal(MadeDemo.Today.AddDays(drink.DueInDays!.Value), draft.Brief.Due);
        }
        Assert.All(await _db.Prices.Select(p => p.FromDay).ToListAsync(), d => Assert.True(d < MadeDemo.Today));
        Assert.All(await _db.Readings.Select(r => r.Day).ToListAsync(), d => Assert.True(d < MadeDemo.Today));
    }

    private async Task<List<(DemoDrink Drink, Iteration Iteration)>> Last()
    {
        var iterations = await _db.Iterations.ToListAsync();
        return [.. _demo.Content.Drinks.Select(d => (d, iterations.Where(i => i.Draft == d.Id).MaxBy(i => i.Number)!))];
    }

    private DemoDrink Named(string name) => _demo.Content.Drinks.Single(d => d.Name == name);

    private async Task<int[]> Counts() =>
    [
        await _db.People.CountAsync(), await _db.Ingredients.CountAsync(), await _db.IngredientNow.CountAsync(), await _db.Compositions.CountAsync(), await _db.Packs.CountAsync(),
        await _db.Prices.CountAsync(), await _db.Readings.CountAsync(), await _db.Drafts.CountAsync(), await _db.Edits.CountAsync(), await _db.Iterations.CountAsync(),
        await _db.IterationBodies.CountAsync(), await _db.IterationLines.CountAsync(),
    ];
}

public sealed class DemoBarTests_on_Sqlite(MadeDemo_on_Sqlite demo) : DemoBarTests(demo), IClassFixture<MadeDemo_on_Sqlite>;

public sealed class DemoBarTests_on_Postgres(MadeDemo_on_Postgres demo) : DemoBarTests(demo), IClassFixture<MadeDemo_on_Postgres>;
