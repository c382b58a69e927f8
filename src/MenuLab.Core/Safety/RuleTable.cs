using System.Globalization;
using System.Text;

namespace MenuLab.Core.Safety;

/// <summary>One table of rules, row by row, from the text of a comma-separated file (RFC 4180) whose first line names the columns. Numbers in the invariant culture.</summary>
internal sealed class RuleTable
{
    private readonly string _file;
    private readonly Dictionary<string, int> _columns = new(StringComparer.Ordinal);
    private List<string> _row = [];
    private int _line;

    private RuleTable(string file) => _file = file;

    /// <summary>Makes one thing of each row.</summary>
    /// <exception cref="FormatException">The text holds a fault; the message names file, line and column.</exception>
    public static List<T> Read<T>(string file, string text, Func<RuleTable, T> make)
    {
        var table = new RuleTable(file);
        var rows = new List<T>();
        foreach (var (cells, line) in Rows(file, text))
        {
            table._line = line;
            if (table._columns.Count == 0)
            {
                for (var c = 0; c < cells.Count; c++)
                {
                    table._columns.Add(cells[c], c);
                }
                continue;
            }
            if (cells.Count != table._columns.Count)
            {
                throw new FormatException(string.Create(CultureInfo.InvariantCulture, $"{file}, line {line}: {cells.Count} cells under {table._columns.Count} columns."));
            }
            table._row = cells;
            rows.Add(make(table));
        }
        return rows;
    }

    /// <summary>A cell that may be empty.</summary>
    public string Text(string column) => _columns.TryGetValue(column, out var at) ? _row[at] : throw new FormatException($"{_file}: there is no column called {column}.");

    /// <summary>A cell that may not be empty.</summary>
    public string Required(string column) => Text(column) is { Length: > 0 } text ? text : throw Fault(column, "the cell is empty");

    /// <summary>A number.</summary>
    public double Number(string column) =>
        double.TryParse(Required(column), NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number) && double.IsFinite(number)
            ? number
            : throw Fault(column, $"\"{Text(column)}\" is not a number");

    /// <summary>A number, or NaN for an empty cell.</summary>
    public double NumberOrNaN(string column) => Text(column).Length == 0 ? double.NaN : Number(column);

    /// <summary>A calendar day, or null for an empty cell.</summary>
    public DateOnly? DayOrNull(string column) =>
        Text(column).Length == 0 ? null
        : DateOnly.TryParseExact(Text(column), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) ? day
        : throw Fault(column, $"\"{Text(column)}\" is not a day");

    /// <summary>0 or 1.</summary>
    public bool Flag(string column) => Required(column) switch { "0" => false, "1" => true, var text => throw Fault(column, $"\"{text}\" is neither 0 nor 1") };

    /// <summary>What a word of the cell stands for.</summary>
    public T Word<T>(string column, Func<string, T?> read)
        where T : struct => read(Text(column)) ?? throw Fault(column, $"nobody knows \"{Text(column)}\"");

    /// <summary>A fault in a cell of the row at hand.</summary>
    public FormatException Fault(string column, string what) => new(string.Create(CultureInfo.InvariantCulture, $"{_file}, line {_line}, column {column}: {what}."));

    private static IEnumerable<(List<string> Cells, int Line)> Rows(string file, string text)
    {
        var cells = new List<string>();
        var cell = new StringBuilder();
        var quoted = false;
        var (line, startedAt) = (1, 1);
        for (var i = 0; i < text.Length; i++)
        {
            var c = text[i];
            if (c == '\n')
            {
                line++;
            }
            if (quoted)
            {
                if (c != '"')
                {
                    cell.Append(c);
                }
                else if (i + 1 < text.Length && text[i + 1] == '"')
                {
                    cell.Append('"');
                    i++;
                }
                else
                {
                    quoted = false;
                }
            }
            else if (c == '"' && cell.Length == 0)
            {
                quoted = true;
            }
            else if (c == ',')
            {
                cells.Add(cell.ToString());
                cell.Clear();
            }
            else if (c == '\n')
            {
                cells.Add(cell.ToString());
                cell.Clear();
                if (cells is not [""])
                {
                    yield return (cells, startedAt);
                }
                cells = [];
                startedAt = line;
            }
            else if (c != '\r' && c != '\uFEFF')
            {
                cell.Append(c);
            }
        }
        if (quoted)
        {
            throw new FormatException(string.Create(CultureInfo.InvariantCulture, $"{file}, line {startedAt}: a quoted cell never ends."));
        }
        if (cell.Length > 0 || cells.Count > 0)
        {
            cells.Add(cell.ToString());
            yield return (cells, startedAt);
        }
    }
}
