using MenuLab.Core.Pantry;
using MenuLab.Data.House;
using MenuLab.Data.Pantry;
using MenuLab.TestKit.Databases;

namespace MenuLab.Data.Tests.Pantry;

public abstract class PackWritingTests(TestDatabase database) : StoreTests(database)
{
    private static readonly DateOnly Today = new(2026, 11, 3);

    private PackWriting Packs => new(Store.Writer, new Noon());

    [Fact]
    public async Task A_price_stands_as_typed_and_a_later_one_leaves_it_as_history()
    {
        var pack = await Pack(750, "ml");
        await Price(pack, 10.4m, from: Today.AddDays(-100), gross: true, tax: 19.5m);
        await Price(pack, 11.6m, from: Today);
        await using var db = Store.Read();
        var shown = Assert.Single((await db.OpenSheet(Harbour.Quince, FirstRows.FirstSite))!.Packs);
        Assert.Equal([(11.6m, false, 0m), (10.4m, true, 19.5m)], shown.Prices.Select(p => (p.Amount, p.IsGross, p.TaxPercent)));
        Assert.Equal(11.6 / (750 * Harbour.Quince.Composition.GramsPerMillilitre), shown.Prices[0].NetPerGram!.Value, 1e-12);
        var now = (await db.PricesNow(FirstRows.FirstSite, Today, Harbour.Pantry))[Harbour.Quince.Id];
        Assert.Equal((shown.Prices[0].NetPerGram!.Value, Today), (now.PerGram, now.Since));
    }

    [Fact]
    public async Task The_prices_of_today_are_the_ones_that_drinks_are_costed_with()
    {
        await Price(await Pack(750, "ml"), 10.4m, Today.AddDays(-9));
        await Price(await Pack(1, "piece"), 1m, Today.AddDays(-3));
        await Price(await Pack(500, "g"), 7m, Today.AddDays(-5));
        await using var db = Store.Read();
        Assert.Equal(
            await db.PricesPerGram(FirstRows.FirstSite, Today, Harbour.Pantry),
            (await db.PricesNow(FirstRows.FirstSite, Today, Harbour.Pantry)).ToDictionary(p => p.Key, p => p.Value.PerGram));
    }

    [Fact]
    public async Task A_pack_out_of_use_takes_no_price_and_none_of_its_prices_counts()
    {
        var pack = await Pack(500, "g");
        await Price(pack, 5m, Today);
        Assert.True((await Packs.ArchivePack(pack)).IsOk);
        Assert.Equal("pack", Assert.Single((await Packs.AddPrice(new NewPrice(PriceId.New(), pack, 6, "EUR", false, 0, Today), Harbour.Somebody)).Problems).Field);
        await using var db = Store.Read();
        Assert.Empty(await db.PricesNow(FirstRows.FirstSite, Today, Harbour.Pantry));
        Assert.Single(Assert.Single((await db.OpenSheet(Harbour.Quince, FirstRows.FirstSite))!.Packs).Prices);
    }

    [Theory]
    [InlineData("5", "EUT", "7", "currency")]
    [InlineData("5", "eur", "7", "currency")]
    [InlineData("0", "EUR", "7", "price")]
    [InlineData("-3", "EUR", "7", "price")]
    [InlineData("0.00001", "EUR", "7", "price")]
    [InlineData("99999999999", "EUR", "7", "price")]
    [InlineData("5", "EUR", "-1", "tax")]
    [InlineData("5", "EUR", "101", "tax")]
    public async Task A_price_that_cannot_be_is_told_by_its_field(string amount, string currency, string tax, string field)
    {
        var pack = await Pack(500, "g");
        var price = new NewPrice(PriceId.New(), pack, decimal.Parse(amount, System.Globalization.CultureInfo.InvariantCulture), currency, true, decimal.Parse(tax, System.Globalization.CultureInfo.InvariantCulture), Today);
        Assert.Equal(field, Assert.Single((await Packs.AddPrice(price, Harbour.Somebody)).Problems).Field);
    }

    [Theory]
    [InlineData(0, "g", "amount")]
    [InlineData(-1, "g", "amount")]
    [InlineData(double.NaN, "g", "amount")]
    [InlineData(1e9, "g", "amount")]
    [InlineData(5, "bucket", "unit")]
    public async Task A_pack_that_cannot_be_is_told_by_its_field(double amount, string unit, string field)
    {
        var added = await Packs.AddPack(new NewPack(PackId.New(), Harbour.Quince.Id, FirstRows.FirstSite, "", amount, unit));
        Assert.Equal(field, Assert.Single(added.Problems).Field);
    }

    [Fact]
    public async Task Pack_and_price_sent_again_are_there_once()
    {
        var pack = new NewPack(PackId.New(), Harbour.Quince.Id, FirstRows.FirstSite, "the market", 1, "piece");
        var price = new NewPrice(PriceId.New(), pack.Id, 2, "EUR", false, 0, Today);
        for (var i = 0; i < 2; i++)
        {
            Assert.True((await Packs.AddPack(pack)).IsOk);
            Assert.True((await Packs.AddPrice(price, Harbour.Somebody)).IsOk);
        }
        await using var db = Store.Read();
        var shown = Assert.Single((await db.OpenSheet(Harbour.Quince, FirstRows.FirstSite))!.Packs);
        Assert.Null(Assert.Single(shown.Prices).NetPerGram);
    }

    [Fact]
    public async Task A_pack_of_an_ingredient_that_is_not_there_is_a_problem() =>
        Assert.Equal("ingredient", Assert.Single((await Packs.AddPack(new NewPack(PackId.New(), IngredientId.New(), FirstRows.FirstSite, "", 1, "g"))).Problems).Field);

    private async Task<PackId> Pack(double amount, string unit) => (await Packs.AddPack(new NewPack(PackId.New(), Harbour.Quince.Id, FirstRows.FirstSite, "the market", amount, unit))).Value;

    private async Task Price(PackId pack, decimal amount, DateOnly from, bool gross = false, decimal tax = 0) =>
        Assert.True((await Packs.AddPrice(new NewPrice(PriceId.New(), pack, amount, "EUR", gross, tax, from), Harbour.Somebody)).IsOk);

    private sealed class Noon : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => Harbour.Noon;
    }
}

public sealed class PackWritingTests_on_Sqlite() : PackWritingTests(new SqliteDatabase());

public sealed class PackWritingTests_on_Postgres() : PackWritingTests(new PostgresDatabase());
