using Microsoft.EntityFrameworkCore.Migrations;

namespace MenuLab.Data.Freezing;

/// <summary>What migrations call to freeze a table; SQLite loses triggers when a table is rebuilt, so call it again then.</summary>
public static class FreezeMigration
{
    /// <summary>The triggers of a frozen table, by how their names end.</summary>
    internal static readonly string[] SqliteTriggers = ["update", "delete", "insert"];

    internal static readonly string[] PostgresTriggers = ["change", "truncate"];

    /// <summary>Freezes a table: no row is ever changed, replaced or deleted.</summary>
    /// <param name="migration">The migration.</param>
    /// <param name="table">The table.</param>
    /// <param name="keys">Every unique set of its columns.</param>
    /// <param name="repeatsAreHonest">Pass over an insert of a row that is there, instead of refusing it.</param>
    public static void Freeze(this MigrationBuilder migration, string table, string[][] keys, bool repeatsAreHonest = false) =>
        Freeze(migration, table, keys, repeatsAreHonest, mayGo: null);

    /// <summary>Freezes the edits: like any frozen table, but rows up to the draft's last iteration may go.</summary>
    public static void FreezeEdits(this MigrationBuilder migration, string[][] keys) =>
        Freeze(
            migration, "edits", keys, repeatsAreHonest: true,
            mayGo: "EXISTS (SELECT 1 FROM iterations i WHERE i.draft = OLD.draft AND i.draft_version >= OLD.version)");

    private static void Freeze(MigrationBuilder migration, string table, string[][] keys, bool repeatsAreHonest, string? mayGo)
    {
        if (migration.ActiveProvider?.EndsWith("Sqlite", StringComparison.Ordinal) == true)
        {
            FreezeOnSqlite(migration, table, keys, repeatsAreHonest, mayGo);
        }
        else
        {
            FreezeOnPostgres(migration, table, mayGo);
        }
    }

    private static void FreezeOnSqlite(MigrationBuilder migration, string table, string[][] keys, bool repeatsAreHonest, string? mayGo)
    {
        var refuse = $"RAISE(ABORT, 'The rows of {table} are frozen.')";
        Trigger("update", "UPDATE", null, refuse);
        Trigger("delete", "DELETE", mayGo is null ? null : $"NOT {mayGo}", refuse);
        // Without this one INSERT OR REPLACE passes the other two: it deletes without a delete trigger, and by each
        // unique set of columns, the hidden rowid (-1 while nobody names it) among them.
        var same = string.Join(" OR ", keys.Select(key => "(" + string.Join(" AND ", key.Select(c => $"\"{c}\" = NEW.\"{c}\"")) + ")"));
        Trigger(
            "insert", "INSERT", $"EXISTS (SELECT 1 FROM \"{table}\" WHERE {same}) OR (NEW.rowid <> -1 AND EXISTS (SELECT 1 FROM \"{table}\" WHERE rowid = NEW.rowid))",
            repeatsAreHonest ? "RAISE(IGNORE)" : refuse);

        void Trigger(string name, string before, string? when, string does) =>
            migration.Sql($"""CREATE TRIGGER "frozen_{table}_{name}" BEFORE {before} ON "{table}"{(when is null ? "" : $" WHEN {when}")} BEGIN SELECT {does}; END;""");
    }

    private static void FreezeOnPostgres(MigrationBuilder migration, string table, string? mayGo)
    {
        var function = $"frozen_{table}";
        // A row that may go is let go; everything else about the table is refused.
        var letGo = mayGo is null ? "" : $"IF TG_OP = 'DELETE' THEN IF {mayGo} THEN RETURN OLD; END IF; END IF; ";
        migration.Sql($"""
            CREATE OR REPLACE FUNCTION "{function}"() RETURNS trigger LANGUAGE plpgsql AS $frozen$
            BEGIN {letGo}RAISE EXCEPTION 'The rows of {table} are frozen.' USING ERRCODE = 'restrict_violation'; END $frozen$;
            """);
        migration.Sql($"""CREATE TRIGGER "frozen_{table}_change" BEFORE UPDATE OR DELETE ON "{table}" FOR EACH ROW EXECUTE FUNCTION "{function}"();""");
        migration.Sql($"""CREATE TRIGGER "frozen_{table}_truncate" BEFORE TRUNCATE ON "{table}" FOR EACH STATEMENT EXECUTE FUNCTION "{function}"();""");
    }
}
