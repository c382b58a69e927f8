using System.Data.Common;
using MenuLab.Core.Drafts;
using MenuLab.Core.Drafts.Rounds;
using MenuLab.Data.Freezing;
using MenuLab.Data.Pantry;
using MenuLab.Data.Records;
using MenuLab.TestKit.Databases;
using Microsoft.EntityFrameworkCore;

namespace MenuLab.Data.Tests.Freezing;

/// <summary>Every frozen table of the model is attacked with every statement that could change, replace or delete a row.</summary>
public abstract class FreezeTests(TestDatabase database) : StoreTests(database)
{
    /// <summary>The statements, given a table, a key to attack by, and all of its columns.</summary>
    protected abstract IEnumerable<string> Attacks(FrozenTable table, IReadOnlyList<string> key, IReadOnlyList<string> columns);

    [Fact]
    public async Task Every_frozen_table_keeps_its_rows_whatever_statement_is_tried()
    {
        await Fill();
        await using var db = Store.Read();
        var connection = db.Database.GetDbConnection();
        await connection.OpenAsync();
        var tried = 0;
        Assert.Equal(11, db.FrozenTables.Count);
        foreach (var table in db.FrozenTables)
        {
            var columns = Columns(db, table.Table);
            var before = await Contents(connection, table.Table, columns);
            Assert.True(before.Count > 0, $"{table.Table} is empty, so nothing is tried on it.");
            foreach (var attack in table.Keys.SelectMany(key => Attacks(table, key, columns)))
            {
                var refused = await Refused(connection, attack);
                var after = await Contents(connection, table.Table, columns);
                Assert.True(before.SequenceEqual(after), $"Rows of {table.Table} changed by: {attack}");
                // A repeat of an honest insert is passed over without an error; everything else is refused aloud.
                Assert.True(refused || (table.RepeatsAreHonest && attack.StartsWith("INSERT", StringComparison.Ordinal)), $"Not refused: {attack}");
                tried++;
            }
        }
        Assert.True(tried >= 55, $"Only {tried} statements were tried.");
    }

    [Fact]
    public async Task Edits_up_to_the_last_iteration_may_go_and_later_ones_may_not()
    {
        var draft = await Harbour.Mix(Store);
        await using var db = Store.Read();
        var connection = db.Database.GetDbConnection();
        await connection.OpenAsync();
        Assert.True(await Refused(connection, "DELETE FROM edits"));

        Assert.True((await Harbour.Iterations(Store).Save(await Harbour.ToSave(Store, draft))).IsOk);
        Assert.True((await Harbour.Drafts(Store).Apply(draft, EditId.New(), Harbour.Somebody, PageId.New(), 4, new Rename("Pier fog"))).IsOk);
        Assert.True(await Refused(connection, "DELETE FROM edits"));
        Assert.False(await Refused(connection, "DELETE FROM edits WHERE version <= 4"));
        Assert.Equal([5], await db.Edits.Select(e => e.Version).ToListAsync());
    }

    private static List<string> Columns(MenuLabDbContext db, string table) =>
    [
        .. db.Model.GetEntityTypes().Single(e => e.GetTableName() == table)
            .GetProperties().Concat(db.Model.GetEntityTypes().Single(e => e.GetTableName() == table).GetComplexProperties().SelectMany(c => c.ComplexType.GetProperties()))
            .Select(p => p.GetColumnName()),
    ];

    private async Task Fill()
    {
        var draft = await Harbour.Mix(Store);
        var iterations = Harbour.Iterations(Store);
        Assert.True((await iterations.Save(await Harbour.ToSave(Store, draft))).IsOk);
        Assert.True((await Harbour.Drafts(Store).Apply(draft, EditId.New(), Harbour.Somebody, PageId.New(), 4, new Rename("Pier fog"))).IsOk);
        var round = (await Harbour.Rounds(Store).Start(new RoundToStart { Id = RoundId.New(), Draft = draft }, Harbour.Somebody)).Value;
        Assert.Equal(CaptureOutcome.Kept, (await Harbour.Captures(Store).Note(EntryId.New(), DeviceId.New(), Harbour.Somebody, new PourNote { Round = round.Id, Letter = PourLetter.B, Verdict = Verdict.Yes })).Outcome);
        await Store.Writer.Write(async db =>
        {
            var pack = new PackRow { Id = PackId.New(), Ingredient = Harbour.Verjus.Id, Site = Data.House.FirstRows.FirstSite, Amount = 700, Unit = "ml" };
            db.Add(pack);
            db.Add(new PriceRow
            {
                Id = PriceId.New(), Pack = pack.Id, Amount = 123400, Currency = "EUR", IsGross = true, TaxRate = 190000, FromDay = new DateOnly(2026, 11, 3), EnteredBy = Harbour.Somebody,
            });
            db.Add(new ReadingRow { Id = ReadingId.New(), Ingredient = Harbour.Verjus.Id, Kind = "ph", Value = 2.9, Unit = "", Day = new DateOnly(2026, 11, 3), ReadBy = Harbour.Somebody });
            db.Add(new RecordEntry { Id = RecordId.New(), Who = Harbour.Somebody, What = "price_entered", OnTable = "packs", OnId = pack.Id.Value, At = Harbour.Noon });
            return await db.SaveChangesAsync();
        });
    }

    private static async Task<bool> Refused(DbConnection connection, string sql)
    {
        try
        {
            await using var command = connection.CreateCommand();
            command.CommandText = sql;
            await command.ExecuteNonQueryAsync();
            return false;
        }
        catch (DbException e)
        {
            // Refused by the freeze and not by something else, such as a fault in the statement.
            Assert.Contains("frozen", e.Message, StringComparison.Ordinal);
            return true;
        }
    }

    private static async Task<List<string>> Contents(DbConnection connection, string table, List<string> columns)
    {
        await using var command = connection.CreateCommand();
        command.CommandText = $"SELECT {string.Join(", ", columns.Select(c => $"\"{c}\""))} FROM \"{table}\" ORDER BY 1, 2";
        await using var reader = await command.ExecuteReaderAsync();
        var rows = new List<string>();
        while (await reader.ReadAsync())
        {
            rows.Add(string.Join('|', Enumerable.Range(0, columns.Count).Select(i => reader.GetValue(i) is byte[] b ? Convert.ToHexString(b) : Convert.ToString(reader.GetValue(i), System.Globalization.CultureInfo.InvariantCulture))));
        }
        return rows;
    }

    protected static string Quote(IEnumerable<string> columns) => string.Join(", ", columns.Select(c => $"\"{c}\""));
}

public sealed class FreezeTests_on_Sqlite() : FreezeTests(new SqliteDatabase())
{
    protected override IEnumerable<string> Attacks(FrozenTable table, IReadOnlyList<string> key, IReadOnlyList<string> columns)
    {
        var name = $"\"{table.Table}\"";
        // The same key and, outside it, another value: what INSERT OR REPLACE would put in the old row's place.
        var other = columns.FirstOrDefault(c => !key.Contains(c)) ?? columns[0];
        var copied = string.Join(", ", columns.Select(c => c == other && c != columns[0] ? $"\"{c}\"" : key.Contains(c) ? $"\"{c}\"" : Different(table, c)));
        yield return $"UPDATE {name} SET \"{other}\" = \"{other}\"";
        yield return $"UPDATE OR REPLACE {name} SET \"{other}\" = \"{other}\"";
        yield return $"DELETE FROM {name}";
        yield return $"INSERT OR REPLACE INTO {name} ({Quote(columns)}) SELECT {copied} FROM {name}";
        yield return $"INSERT INTO {name} ({Quote(columns)}) SELECT {copied} FROM {name} WHERE true ON CONFLICT ({Quote(key)}) DO UPDATE SET \"{other}\" = excluded.\"{other}\"";
        // By the hidden rowid, which no unique key protects.
        yield return $"INSERT OR REPLACE INTO {name} (rowid, {Quote(columns)}) SELECT rowid, {string.Join(", ", columns.Select(c => Different(table, c)))} FROM {name}";
    }

    // A key that is not there yet (16 or 32 random bytes, a new number), so that nothing but the attacked key is in the way.
    private static string Different(FrozenTable table, string column) =>
        table.Keys.Any(k => k.Contains(column))
            ? $"CASE typeof(\"{column}\") WHEN 'blob' THEN randomblob(length(\"{column}\")) WHEN 'integer' THEN \"{column}\" + 1000 ELSE \"{column}\" || 'x' END"
            : $"\"{column}\"";
}

public sealed class FreezeTests_on_Postgres() : FreezeTests(new PostgresDatabase())
{
    protected override IEnumerable<string> Attacks(FrozenTable table, IReadOnlyList<string> key, IReadOnlyList<string> columns)
    {
        var name = $"\"{table.Table}\"";
        var other = columns.FirstOrDefault(c => !key.Contains(c)) ?? columns[0];
        var same = string.Join(" AND ", key.Select(c => $"t.\"{c}\" = s.\"{c}\""));
        yield return $"UPDATE {name} SET \"{other}\" = \"{other}\"";
        yield return $"DELETE FROM {name}";
        yield return $"TRUNCATE {name} CASCADE";
        yield return $"/* upsert */ INSERT INTO {name} ({Quote(columns)}) SELECT {Quote(columns)} FROM {name} ON CONFLICT ({Quote(key)}) DO UPDATE SET \"{other}\" = excluded.\"{other}\"";
        yield return $"MERGE INTO {name} t USING (SELECT * FROM {name}) s ON {same} WHEN MATCHED THEN DELETE";
    }
}
