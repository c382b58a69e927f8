using MenuLab.Core;
using MenuLab.Core.House;
using MenuLab.Data.House;
using MenuLab.TestKit.Databases;
using Microsoft.EntityFrameworkCore;

namespace MenuLab.Data.Tests.House;

public abstract class HouseWritingTests(TestDatabase database) : StoreTests(database)
{
    private const double Trade = 30, Us = 29.5735;

    private static SettingsToSave Comma(int seen) => new(
        seen,
        new HouseWish { Name = "Harbour Shed", FirstUnit = FirstUnit.FluidOunces, NumberPattern = NumberPattern.Comma, DatePattern = DatePattern.YearMonthDay, PourStepMillilitres = 5 },
        Trade, "Europe/Lisbon", new TimeOnly(5, 30), "SEK", "UK");

    [Fact]
    public async Task All_settings_come_back_as_they_were_saved()
    {
        var saved = await Save(Comma(await Version()));
        Assert.True(saved.IsOk);
        await using var db = Store.Read();
        var (settings, site) = (await db.HouseSettings.SingleAsync(), await db.Sites.SingleAsync());
        Assert.Equal(("Harbour Shed", FirstUnit.FluidOunces, NumberPattern.Comma, DatePattern.YearMonthDay, 5.0, 1), (settings.Name, settings.FirstUnit, settings.NumberPattern, settings.DatePattern, settings.PourStepMillilitres, settings.MeasuresSet));
        Assert.Equal(("Europe/Lisbon", new TimeOnly(5, 30), "SEK", "UK"), (site.TimeZone, site.DayTurn, site.Currency, site.Jurisdiction));
        Assert.Equal(saved.Value.Version, settings.Version);
    }

    [Fact]
    public async Task All_problems_are_told_at_once_and_then_nothing_is_saved()
    {
        var before = await Version();
        var wish = new HouseWish { Name = new string('x', 81), PourStepMillilitres = 0.1 };
        var refused = await Save(new SettingsToSave(before, wish, Us, "Mars/Olympus", Site.UsualDayTurn, "eur", "!"));
        Assert.Equal(["Name", "PourStepMillilitres", "TimeZone", "Currency", "Jurisdiction"], refused.Problems.Select(p => p.Field));
        Assert.Equal(before, await Version());

        // Right settings beside a wrong site are not saved either.
        Assert.False((await Save(Comma(before) with { TimeZone = "Mars/Olympus" })).IsOk);
        await using var db = Store.Read();
        Assert.Equal(("", 1), ((await db.HouseSettings.SingleAsync()).Name, await db.Sets.CountAsync()));
    }

    [Fact]
    public async Task Whoever_saves_second_is_told_and_overwrites_nothing()
    {
        var seen = await Version();
        Assert.True((await Save(Comma(seen))).IsOk);
        var second = await Save(Comma(seen) with { Currency = "USD" });
        Assert.Equal(HouseWriting.Conflict, Assert.Single(second.Problems).Field);
        await using var db = Store.Read();
        Assert.Equal("SEK", (await db.Sites.SingleAsync()).Currency);
    }

    [Fact]
    public async Task Another_ounce_is_another_measures_set_and_going_back_takes_the_old_one_again()
    {
        Assert.Equal(2, (await Save(Comma(await Version()) with { FluidOunceMillilitres = Us })).Value.MeasuresSet);
        Assert.Equal(1, (await Save(Comma(await Version()))).Value.MeasuresSet);
        Assert.Equal(2, (await Save(Comma(await Version()) with { FluidOunceMillilitres = Us })).Value.MeasuresSet);
        await using var db = Store.Read();
        var sets = (await db.Sets.OrderBy(s => s.Number).ToListAsync()).ConvertAll(s => s.Measures());
        Assert.Equal([Trade, Us], sets.Select(s => s.FluidOunce));
        Assert.Equal(sets[0], sets[1] with { Number = 1, FluidOunce = Trade });
        Assert.Equal(Harbour.Somebody, (await db.Sets.SingleAsync(s => s.Number == 2)).MadeBy);
    }

    [Fact]
    public async Task An_iteration_keeps_the_measures_set_that_it_was_read_with()
    {
        var draft = await Harbour.Mix(Store);
        Assert.True((await Harbour.Iterations(Store).Save(await Harbour.ToSave(Store, draft))).IsOk);
        await Save(Comma(await Version()) with { FluidOunceMillilitres = Us });
        await using var db = Store.Read();
        Assert.Equal((1, 2), ((await db.Iterations.SingleAsync()).Stamp.Measures, (await db.HouseSettings.SingleAsync()).MeasuresSet));
    }

    private Task<Result<HouseSettings>> Save(SettingsToSave save) => new HouseWriting(Store.Writer, TimeProvider.System).Save(save, Harbour.Somebody);

    private async Task<int> Version()
    {
        await using var db = Store.Read();
        return (await db.HouseSettings.SingleAsync()).Version;
    }
}

public sealed class HouseWritingTests_on_Sqlite() : HouseWritingTests(new SqliteDatabase());

public sealed class HouseWritingTests_on_Postgres() : HouseWritingTests(new PostgresDatabase());
