using MenuLab.Core.House;
using MenuLab.Data.House;
using MenuLab.Data.Pantry;
using MenuLab.TestKit.Databases;

namespace MenuLab.Data.Tests.Pantry;

public abstract class PriceQueriesTests(TestDatabase database) : StoreTests(database)
{
    private static readonly DateOnly Today = new(2026, 11, 3);

    [Fact]
    public async Task The_price_from_the_latest_day_that_has_come_counts_whatever_the_pack()
    {
        await Price(amount: 1000, unit: "g", price: 10m, from: Today.AddDays(-20));
        await Price(amount: 500, unit: "g", price: 6m, from: Today.AddDays(-5));
        await Price(amount: 500, unit: "g", price: 99m, from: Today.AddDays(1));
        Assert.Equal(0.012, await Cost(Today), 1e-12);
        Assert.Equal(0.012, await Cost(Today.AddDays(-5)), 1e-12);
        Assert.Equal(0.010, await Cost(Today.AddDays(-6)), 1e-12);
        Assert.Equal(double.NaN, await Cost(Today.AddDays(-21)));
    }

    [Fact]
    public async Task A_gross_price_counts_without_its_tax_and_a_volume_by_its_density()
    {
        await Price(amount: 700, unit: "ml", price: 11.9m, from: Today, isGross: true, tax: 19);
        Assert.Equal(10 / (700 * Harbour.Quince.Composition.GramsPerMillilitre), await Cost(Today), 1e-12);
    }

    [Fact]
    public async Task A_price_in_another_currency_or_of_a_pack_out_of_use_or_of_pieces_that_nobody_weighed_does_not_count()
    {
        await Price(amount: 100, unit: "g", price: 1m, from: Today.AddDays(-9));
        await Price(amount: 100, unit: "g", price: 2m, from: Today.AddDays(-8), currency: "GBP");
        await Price(amount: 100, unit: "g", price: 3m, from: Today.AddDays(-7), archived: true);
        await Price(amount: 100, unit: "piece", price: 4m, from: Today.AddDays(-6));
        Assert.Equal(0.01, await Cost(Today), 1e-12);
    }

    [Fact]
    public async Task On_one_day_the_price_entered_last_counts()
    {
        await Price(amount: 100, unit: "g", price: 1m, from: Today);
        await Price(amount: 100, unit: "g", price: 2m, from: Today);
        Assert.Equal(0.02, await Cost(Today), 1e-12);
    }

    [Fact]
    public async Task Another_site_has_prices_of_its_own()
    {
        await Price(amount: 100, unit: "g", price: 1m, from: Today);
        var other = Site.Of(SiteId.New(), "The other quay", "Etc/UTC", Site.UsualDayTurn, "EUR", "EU").Value;
        await Store.Writer.Write(db => { db.Add(other); return db.SaveChangesAsync(); });
        await using var db = Store.Read();
        Assert.Empty(await db.PricesPerGram(other.Id, Today, Harbour.Pantry));
    }

    private async Task<double> Cost(DateOnly day)
    {
        await using var db = Store.Read();
        return (await db.PricesPerGram(FirstRows.FirstSite, day, Harbour.Pantry)).GetValueOrDefault(Harbour.Quince.Id, double.NaN);
    }

    private int _entered;

    private Task<int> Price(double amount, string unit, decimal price, DateOnly from, string currency = "EUR", bool isGross = false, int tax = 0, bool archived = false) =>
        Store.Writer.Write(async db =>
        {
            var pack = new PackRow
            {
                Id = PackId.New(), Ingredient = Harbour.Quince.Id, Site = FirstRows.FirstSite, Supplier = "made up", Amount = amount, Unit = unit,
                ArchivedAt = archived ? Harbour.Noon : null,
            };
            db.Add(pack);
            db.Add(new PriceRow
            {
                // A minute apart: two ids of one millisecond have no order.
                Id = new PriceId(Guid.CreateVersion7(Harbour.Noon.AddMinutes(_entered++))), Pack = pack.Id, Amount = (long)(price * 10_000), Currency = currency,
                IsGross = isGross, TaxRate = tax * 10_000L, FromDay = from, EnteredBy = Harbour.Somebody,
            });
            return await db.SaveChangesAsync();
        });
}

public sealed class PriceQueriesTests_on_Sqlite() : PriceQueriesTests(new SqliteDatabase());

public sealed class PriceQueriesTests_on_Postgres() : PriceQueriesTests(new PostgresDatabase());
