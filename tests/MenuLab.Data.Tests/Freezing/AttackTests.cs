using MenuLab.TestKit.Databases;
using Microsoft.EntityFrameworkCore;

namespace MenuLab.Data.Tests.Freezing;

/// <summary>Shows that the attacks of the freeze tests would succeed if a trigger were missing.</summary>
public class AttackTests() : StoreTests(new SqliteDatabase())
{
    [Theory]
    [InlineData("DROP TRIGGER frozen_sets_insert", "INSERT OR REPLACE INTO sets (kind, number, body, made_at) SELECT kind, number, x'00', made_at FROM sets")]
    [InlineData("DROP TRIGGER frozen_sets_insert", "INSERT OR REPLACE INTO sets (rowid, kind, number, body, made_at) SELECT rowid, kind, number + 1, x'00', made_at FROM sets")]
    [InlineData("DROP TRIGGER frozen_sets_update", "UPDATE sets SET body = x'00'")]
    public async Task Without_its_trigger_a_row_is_lost(string trigger, string attack)
    {
        await using var db = Store.Read();
        await Assert.ThrowsAsync<Microsoft.Data.Sqlite.SqliteException>(() => db.Database.ExecuteSqlRawAsync(attack));
        await db.Database.ExecuteSqlRawAsync(trigger);
        await db.Database.ExecuteSqlRawAsync(attack);
        Assert.Equal(1, (await db.Sets.SingleAsync()).Body.Length);
    }

    [Fact]
    public async Task A_retry_of_an_edit_by_plain_SQL_is_passed_over_and_the_old_row_stays()
    {
        await Harbour.Mix(Store);
        await using var db = Store.Read();
        Assert.Equal(0, await db.Database.ExecuteSqlRawAsync("INSERT INTO edits SELECT * FROM edits WHERE true ON CONFLICT DO NOTHING"));
        Assert.Equal(0, await db.Database.ExecuteSqlRawAsync("INSERT OR REPLACE INTO edits SELECT * FROM edits"));
        Assert.Equal(4, await db.Edits.CountAsync());
    }
}
