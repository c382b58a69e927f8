using System.Globalization;

namespace MenuLab.TestKit.Solutions;

/// <summary>A CSV file beside the tests: lines that begin with # say where it comes from, the first other line names the columns.</summary>
public static class Oracle
{
    public static IReadOnlyList<OracleRow> Rows(string file, string folder = "Solutions")
    {
        var lines = File.ReadLines(Path.Combine(AppContext.BaseDirectory, folder, file))
            .Where(line => line.Length > 0 && !line.StartsWith('#'))
            .Select(Cells)
            .ToList();
        var columns = lines[0];
        var rows = lines.Skip(1).Select(cells => new OracleRow(columns, cells)).ToList();
        return rows.Count > 0 ? rows : throw new InvalidDataException($"{file} holds no rows.");
    }

    // Commas inside double quotes do not part cells; no cell of ours holds a quote.
    private static string[] Cells(string line)
    {
        var cells = new List<string>();
        var cell = new System.Text.StringBuilder();
        var quoted = false;
        foreach (var c in line)
        {
            if (c == '"')
            {
                quoted = !quoted;
            }
            else if (c == ',' && !quoted)
            {
                cells.Add(cell.ToString());
                cell.Clear();
            }
            else
            {
                cell.Append(c);
            }
        }
        cells.Add(cell.ToString());
        return [.. cells];
    }
}

/// <summary>One row of an oracle file.</summary>
public sealed class OracleRow(string[] columns, string[] cells)
{
    public IReadOnlyList<string> Columns => columns;

    public string Text(string column)
    {
        var at = Array.IndexOf(columns, column);
        return at >= 0 ? cells[at] : throw new InvalidDataException($"No column {column}.");
    }

    public bool Has(string column) => Text(column).Length > 0;

    public double Number(string column) => double.Parse(Text(column), CultureInfo.InvariantCulture);
}
