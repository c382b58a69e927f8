using System.Globalization;
using CsvHelper;
using MenuLab.Core.Exchange;

namespace MenuLab.Web.Commands;

/// <summary>
/// Reads drinks from a table: one line of a drink a row, rows of one drink together. Columns by name, in any order and
/// case: drink; line (as typed), or amount, unit and ingredient; place, treatment; method, seconds, ice, glass, strain;
/// yield; note. Unknown columns are told, never dropped in silence.
/// </summary>
internal static class CsvDrinks
{
    private static readonly Dictionary<string, string> Names = new(StringComparer.OrdinalIgnoreCase)
    {
        ["drink"] = "drink", ["name"] = "drink",
        ["line"] = "line", ["text"] = "line",
        ["amount"] = "amount", ["quantity"] = "amount", ["qty"] = "amount",
        ["unit"] = "unit",
        ["ingredient"] = "ingredient", ["item"] = "ingredient",
        ["place"] = "place", ["treatment"] = "treatment",
        ["method"] = "method", ["seconds"] = "seconds", ["ice"] = "ice", ["glass"] = "glass", ["strain"] = "strain",
        ["yield"] = "yield", ["note"] = "note", ["notes"] = "note", ["steps"] = "note",
    };

    // The separator is found by the library. A short row is fine: what is not said is left out.
    private static readonly CsvReaderOptions Options = new()
    {
        TrackLineNumbers = true, MalformedData = CsvMalformedDataHandling.Throw, FieldCountMismatch = CsvFieldCountHandling.Allow,
        MissingField = CsvMissingFieldHandling.ReturnEmpty, SkipEmptyLines = true, FormatProvider = CultureInfo.InvariantCulture,
    };

    /// <summary>The drinks of a table.</summary>
    /// <param name="csv">The table, with a header row; separated by comma, semicolon or tab.</param>
    /// <param name="drinks">The drinks in the order of the rows.</param>
    /// <param name="strangers">Columns that mean nothing here.</param>
    /// <returns>Null, or where the table cannot be read.</returns>
    public static FileProblem? Read(string csv, out IReadOnlyList<DrinkText> drinks, out IReadOnlyList<string> strangers)
    {
        var found = new List<DrinkText>();
        var unknown = new List<string>();
        drinks = found;
        strangers = unknown;
        try
        {
            using var reader = CsvReader.FromText(csv, Options);
            var columns = Columns(reader.Headers, unknown);
            if (!columns.ContainsValue("line") && !columns.ContainsValue("ingredient"))
            {
                return new FileProblem(1, 1, $"No column is named \"ingredient\" or \"line\" (found: {string.Join(", ", reader.Headers)}). The first row must name the columns.");
            }
            Rows(reader, columns, found);
        }
        catch (CsvFormatException e)
        {
            return new FileProblem((int)Math.Max(1, e.LineNumber), Math.Max(0, e.FieldIndex) + 1, "This row is not a proper table row: look for a quotation mark that is not closed.");
        }
        return found.Count > 0 ? null : new FileProblem(2, 1, "The table has a header but no rows.");
    }

    private static Dictionary<int, string> Columns(IReadOnlyList<string> header, List<string> unknown)
    {
        var columns = new Dictionary<int, string>();
        for (var i = 0; i < header.Count; i++)
        {
            if (Names.TryGetValue(header[i].Trim(), out var name))
            {
                columns[i] = name;
            }
            else
            {
                unknown.Add(header[i]);
            }
        }
        return columns;
    }

    private static void Rows(CsvReader reader, Dictionary<int, string> columns, List<DrinkText> found)
    {
        string? name = null;
        var first = 0;
        var lines = new List<string>();
        while (reader.Read())
        {
            var row = columns.ToLookup(c => c.Value, c => c.Key < reader.FieldCount ? reader.GetString(c.Key).Trim() : "");
            var drink = One(row, "drink");
            // A row without a drink's name belongs to the one above.
            if (name is null || (drink.Length > 0 && drink != name))
            {
                Finish();
                name = drink;
                first = (int)reader.LineNumber;
            }
            AddRow(row, lines);
        }
        Finish();

        void Finish()
        {
            if (name is not null)
            {
                found.Add(new DrinkText(name, string.Join('\n', lines), first));
                lines.Clear();
            }
        }
    }

    private static void AddRow(ILookup<string, string> row, List<string> lines)
    {
        var place = One(row, "place").ToLowerInvariant();
        var typed = One(row, "line");
        if (typed.Length == 0 && One(row, "ingredient").Length > 0)
        {
            typed = string.Join(' ', new[] { One(row, "amount"), One(row, "unit"), One(row, "ingredient"), One(row, "treatment") }.Where(t => t.Length > 0));
        }
        if (typed.Length > 0)
        {
            lines.Add(place is "" or "in" ? typed : $"{place}: {typed}");
        }
        var build = new[] { Method(row), One(row, "strain").Replace('_', ' '), One(row, "glass").Replace('_', ' ') }.Where(t => t.Length > 0);
        AddOnce(string.Join(", ", build));
        var yield = One(row, "yield");
        AddOnce(yield.Length == 0 || yield.StartsWith("yield", StringComparison.OrdinalIgnoreCase) ? yield : "yield " + yield);
        foreach (var note in row["note"])
        {
            AddOnce(note);
        }

        void AddOnce(string text)
        {
            if (text.Length > 0 && !lines.Contains(text))
            {
                lines.Add(text);
            }
        }
    }

    // The ice belongs to the method ("shaken 12 s with cubes"); named after the glass it would be the ice that is served.
    private static string Method(ILookup<string, string> row)
    {
        var (method, seconds, ice) = (One(row, "method").Replace('_', ' '), One(row, "seconds"), One(row, "ice").Replace('_', ' '));
        var timed = seconds.Length > 0 && method.Length > 0 ? $"{method} {seconds} s" : method;
        return ice.Length == 0 ? timed : ice == "none" ? $"{timed} no ice".Trim() : $"{timed} with {ice}".Trim();
    }

    private static string One(ILookup<string, string> row, string column) => row[column].FirstOrDefault(t => t.Length > 0) ?? "";
}
