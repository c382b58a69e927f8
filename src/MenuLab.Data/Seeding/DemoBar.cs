using System.Globalization;
using MenuLab.Core.Drafts;
using MenuLab.Core.Drafts.Reading;
using MenuLab.Core.House;
using MenuLab.Core.Pantry;
using MenuLab.Core.Quantities;
using MenuLab.Data.House;
using MenuLab.Data.Pantry;
using MenuLab.Data.Writing;
using Microsoft.EntityFrameworkCore;

namespace MenuLab.Data.Seeding;

/// <summary>What making the demo bar has added.</summary>
/// <param name="Ingredients">Ingredients of the house.</param>
/// <param name="Drafts">Drafts.</param>
/// <param name="Iterations">Iterations of all of them.</param>
public sealed record DemoMade(int Ingredients, int Drafts, int Iterations)
{
    /// <summary>It was there already.</summary>
    public static DemoMade Nothing { get; } = new(0, 0, 0);
}

/// <summary>
/// An invented bar at an invented harbour, preparing its list for late autumn: the first thing that somebody new to MenuLab looks at. Its
/// ingredients are the house's own; the shipped pantry never holds one of them.
/// </summary>
public static class DemoBar
{
    /// <summary>Origin of a figure that the house holds.</summary>
    public const string HouseOrigin = "house";

    /// <summary>Origin of a figure that was read on the bench.</summary>
    public const string ReadingOrigin = "reading";

    /// <summary>Where the files lie beside the program.</summary>
    public static string DefaultFolder => Path.Combine(SeedData.DefaultFolder, "demo");

    /// <summary>Reads all files of a folder.</summary>
    /// <exception cref="SeedDataException">A file is missing or holds a fault; the message names file and line.</exception>
    public static DemoContent Load(string folder)
    {
        try
        {
            var people = SeedTable.Read(folder, "people.csv", t => new DemoPerson(new PersonId(Id(t, "id")), t.Required("name"), t.Required("initials")));
            var byName = people.ToDictionary(p => p.Name, p => p.Id, StringComparer.Ordinal);
            return new DemoContent(
                people,
                SeedData.Ingredients(folder, status => status == FigureStatus.Measured ? ReadingOrigin : HouseOrigin),
                SeedTable.Read(folder, "packs.csv", t => Price(t, byName)),
                SeedTable.Read(folder, "readings.csv", t => Reading(t, byName)),
                [.. Directory.GetFiles(Path.Combine(folder, "drinks"), "*.txt").Order(StringComparer.Ordinal).Select(path => DemoDrinkFile.Read(path, byName))]);
        }
        catch (SeedDataException e)
        {
            throw new SeedDataException("demo/" + e.Message, e);
        }
        catch (IOException e)
        {
            throw new SeedDataException($"demo/drinks cannot be read: {e.Message}", e);
        }
    }

    /// <summary>
    /// Makes the demo bar in a database that has its first rows and the shipped ingredients, all in one transaction; a second call changes nothing.
    /// </summary>
    /// <param name="writer">The one writer.</param>
    /// <param name="read">A context to read with.</param>
    /// <param name="shipped">What MenuLab ships with.</param>
    /// <param name="demo">The demo bar.</param>
    /// <param name="now">The time; everything of the demo lies at least a day before.</param>
    /// <exception cref="SeedDataException">A price or a reading is of an ingredient that nobody has, or a drink cannot be made.</exception>
    public static async Task<DemoMade> MakeAsync(IWriter writer, Func<MenuLabDbContext> read, SeedData shipped, DemoContent demo, DateTimeOffset now)
    {
        Site site;
        await using (var db = read())
        {
            if (await IsMade(db, demo))
            {
                return DemoMade.Nothing;
            }
            site = await db.Sites.SingleAsync(s => s.Id == FirstRows.FirstSite);
        }
        // Worked out before the writer is held, since others wait behind it.
        var days = new DemoDays(site, now);
        var house = demo.Ingredients.Select(Row).ToList();
        var pantry = new PantryList([.. shipped.Pantry.All, .. demo.Ingredients]);
        var (packs, prices) = PacksAndPrices(demo, pantry, days);
        var readings = demo.Readings.Select(r => ReadingOf(r, pantry, days)).ToList();
        var drafts = Drafts(shipped, demo, pantry, site, days, packs, prices);
        Composition[] compositions =
        [
            .. drafts.SelectMany(d => d.Iterations).SelectMany(i => i.Lines).Select(l => l.Ingredient).Distinct().Select(id => pantry.Find(id)!.Composition),
        ];
        return await writer.Write(async db =>
        {
            if (await IsMade(db, demo))
            {
                return DemoMade.Nothing;
            }
            var hashes = await db.KeepCompositions([.. demo.Ingredients.Select(i => i.Composition)]);
            await db.KeepCompositions(compositions);
            db.AddRange(demo.People.Select(p => Person.Of(p.Id, p.Name, p.Initials, PersonKind.Staff).Value));
            db.AddRange(house);
            db.AddRange(house.Zip(hashes, (row, hash) => new IngredientNowRow { Ingredient = row.Id, Composition = hash }));
            db.AddRange(packs);
            db.AddRange(prices);
            db.AddRange(readings);
            foreach (var draft in drafts)
            {
                db.Add(draft.Draft);
                db.AddRange(draft.Edits);
                foreach (var iteration in draft.Iterations)
                {
                    db.Add(iteration.Iteration);
                    db.Add(iteration.Body);
                    db.AddRange(iteration.Lines);
                }
            }
            await db.SaveChangesAsync();
            return new DemoMade(house.Count, drafts.Count, drafts.Sum(d => d.Iterations.Count));
        });
    }

    // All of it came in one transaction, so one row tells.
    private static Task<bool> IsMade(MenuLabDbContext db, DemoContent demo)
    {
        var somebody = demo.People[0].Id;
        return db.People.AnyAsync(p => p.Id == somebody);
    }

    private static IngredientRow Row(Ingredient ingredient)
    {
        var row = new IngredientRow
        {
            Id = ingredient.Id, Name = ingredient.Name, SearchName = SearchName.Of(ingredient.Name), Kind = ingredient.Kind, Basis = ingredient.Basis,
            KeptAtCelsius = ingredient.KeptAtCelsius, Note = ingredient.Note, IsCarbonated = ingredient.Composition.Caveats.HasFlag(CompositionCaveats.Carbonated),
            HasRawEgg = ingredient.Composition.Caveats.HasFlag(CompositionCaveats.RawEgg),
        };
        row.Figures.AddRange(ingredient.Figures.Select(f => new FigureRow
        {
            Quantity = f.Quantity, Value = Known(f.Value), Low = Known(f.Low), High = Known(f.High), Source = f.Source, Status = f.Status, Origin = f.Origin,
        }));
        row.Allergens.AddRange(ingredient.AllergenFacts.Select(a => new AllergenRow { Allergen = a.Allergen, State = a.State, Law = a.Law, Source = a.Source, Note = a.Note }));
        row.Pieces.AddRange(ingredient.Pieces.Select(p => new PieceRow { Measure = p.Measure, Grams = p.Grams, Source = p.Source }));
        row.Aliases.AddRange(ingredient.Aliases.Select((alias, i) => new AliasRow
        {
            Alias = alias, SearchName = SearchName.Of(alias), Place = i + 1, Assumes = ingredient.AliasAssumptions.GetValueOrDefault(alias, ""),
        }));
        return row;
    }

    private static (List<PackRow> Packs, List<PriceRow> Prices) PacksAndPrices(DemoContent demo, PantryList pantry, DemoDays days)
    {
        var packs = new List<PackRow>();
        var prices = new List<PriceRow>();
        foreach (var price in demo.Prices.OrderByDescending(p => p.DaysBefore))
        {
            if (packs.All(p => p.Id != price.Pack))
            {
                packs.Add(new PackRow
                {
                    Id = price.Pack, Ingredient = Find(pantry, price.Key, "packs.csv").Id, Site = days.Site.Id, Supplier = price.Supplier, Amount = price.Amount, Unit = price.Unit,
                });
            }
            var from = days.Day(price.DaysBefore);
            prices.Add(new PriceRow
            {
                Id = new PriceId(Guid.CreateVersion7(days.At(from, OfficeHour))), Pack = price.Pack, Amount = decimal.ToInt64(price.Price.Amount * 10_000),
                Currency = price.Price.Currency, IsGross = price.IsGross, TaxRate = decimal.ToInt64(price.TaxPercent * 10_000), FromDay = from, EnteredBy = price.By,
            });
        }
        return (packs, prices);
    }

    private static readonly TimeOnly OfficeHour = new(11, 0);

    private static ReadingRow ReadingOf(DemoReading reading, PantryList pantry, DemoDays days)
    {
        var day = days.Day(reading.DaysBefore);
        return new ReadingRow
        {
            Id = new ReadingId(Guid.CreateVersion7(days.At(day, OfficeHour))), Ingredient = Find(pantry, reading.Key, "readings.csv").Id, Kind = reading.Kind, Value = reading.Value,
            Unit = reading.Unit, Celsius = reading.Celsius, Day = day, ReadBy = reading.By, Note = reading.Note,
        };
    }

    private static List<DemoDraft> Drafts(
        SeedData shipped, DemoContent demo, PantryList pantry, Site site, DemoDays days, IReadOnlyList<PackRow> packs, IReadOnlyList<PriceRow> prices)
    {
        var reader = new DrinkReader(Vocabulary.Of(pantry, shipped.Catalogue), shipped.Measures);
        var bench = new DemoBench(pantry, shipped.Catalogue, shipped.Measures, reader, site.Currency, site.Jurisdiction);
        return [.. demo.Drinks.Select(drink =>
        {
            var draft = new DemoDraft(bench, drink.Id, drink.Name, drink.Started.By, days.At(drink.Started));
            var brief = drink.Brief with { Due = drink.DueInDays is { } due ? days.Day(-due) : null };
            draft.Do(new ChangeBrief(Filled(brief), brief), drink.Started.By, days.At(drink.Started));
            foreach (var iteration in drink.Iterations)
            {
                var (by, at) = (iteration.Drink.Moment.By, days.At(iteration.Drink.Moment));
                draft.Type(iteration.Drink.Text, by, at);
                draft.Save(iteration.From, iteration.Reason, by, at, PricesOn(days.Day(iteration.Drink.Moment.DaysBefore)));
            }
            if (drink.Now is { } changed)
            {
                draft.Type(changed.Text, changed.Moment.By, days.At(changed.Moment));
            }
            if (drink.Standing is { } standing)
            {
                draft.Do(new Stand(standing.Standing, standing.Reason), standing.Moment.By, days.At(standing.Moment));
            }
            return draft;
        })];

        Dictionary<IngredientId, double> PricesOn(DateOnly day) =>
            PriceQueries.Counting(prices.Where(p => p.FromDay <= day && p.Currency == site.Currency), packs, pantry).ToDictionary(p => p.Key, p => p.Value.PerGram);
    }

    private static BriefFields Filled(Brief brief) =>
        (brief.Slot.Length > 0 ? BriefFields.Slot : 0) | (brief.Claim.Length > 0 ? BriefFields.Claim : 0) | (brief.Flavour.Length > 0 ? BriefFields.Flavour : 0)
        | (brief.CostLimit is null ? 0 : BriefFields.CostLimit) | (brief.Price is null ? 0 : BriefFields.Price) | (brief.Avoid == default ? 0 : BriefFields.Avoid)
        | (brief.Equipment.Length > 0 ? BriefFields.Equipment : 0) | (brief.Due is null ? 0 : BriefFields.Due);

    private static DemoPrice Price(SeedTable t, Dictionary<string, PersonId> people) => new(
        t.Required("key"), new PackId(Id(t, "pack")), t.Required("supplier"), t.Number("amount"),
        t.Required("unit") is "ml" or "g" or "piece" ? t.Required("unit") : throw t.Fault("unit", "a pack is counted in ml, g or piece"),
        Money.Of((decimal)t.Number("price"), t.Required("currency")),
        t.Required("tax") switch { "gross" => true, "net" => false, var word => throw t.Fault("tax", $"\"{word}\" is neither net nor gross") },
        (decimal)t.Number("tax_percent"), Days(t), Somebody(t, people));

    private static DemoReading Reading(SeedTable t, Dictionary<string, PersonId> people)
    {
        var celsius = t.NumberOrNaN("celsius");
        return new DemoReading(
            t.Required("key"), t.Required("kind"), t.Number("value"), t.Required("unit"), double.IsNaN(celsius) ? null : celsius, Days(t), Somebody(t, people), t.Text("note"));
    }

    private static int Days(SeedTable t) =>
        int.TryParse(t.Required("days_before"), NumberStyles.None, CultureInfo.InvariantCulture, out var days) && days > 0
            ? days
            : throw t.Fault("days_before", "this is no number of days, 1 or more");

    private static PersonId Somebody(SeedTable t, Dictionary<string, PersonId> people) =>
        people.TryGetValue(t.Required("by"), out var id) ? id : throw t.Fault("by", $"nobody is called {t.Required("by")} in people.csv");

    private static Guid Id(SeedTable t, string column) => Guid.TryParseExact(t.Required(column), "D", out var id) ? id : throw t.Fault(column, "not an id");

    private static Ingredient Find(PantryList pantry, string key, string file) =>
        pantry.Find(key) ?? throw new SeedDataException($"demo/{file}, column key: no ingredient is called {key}.");

    private static double? Known(double value) => double.IsNaN(value) ? null : value;
}

/// <summary>The demo bar's days, counted back from the site's day at hand.</summary>
internal sealed class DemoDays
{
    private readonly TimeZoneInfo _zone;
    private readonly DateOnly _today;

    public DemoDays(Site site, DateTimeOffset now)
    {
        Site = site;
        _zone = TimeZoneInfo.FindSystemTimeZoneById(site.TimeZone);
        // A shift ends after midnight, and the bar's day with it.
        _today = DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(now, _zone).DateTime - site.DayTurn.ToTimeSpan());
    }

    public Site Site { get; }

    public DateOnly Day(int daysBefore) => _today.AddDays(-daysBefore);

    public DateTimeOffset At(DemoMoment moment) => At(Day(moment.DaysBefore), moment.Time);

    public DateTimeOffset At(DateOnly day, TimeOnly time)
    {
        var local = day.ToDateTime(time);
        return new DateTimeOffset(local, _zone.GetUtcOffset(local)).ToUniversalTime();
    }
}
