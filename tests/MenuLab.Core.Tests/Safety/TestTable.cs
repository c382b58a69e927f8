using System.Text;

namespace MenuLab.Core.Tests.Safety;

/// <summary>A table beside the tests: # lines, a line of column names, rows; cells may be quoted.</summary>
internal static class TestTable
{
    public static List<Dictionary<string, string>> Read(string file)
    {
        var lines = File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "Safety", file)).Where(l => !l.StartsWith('#')).ToList();
        var columns = Cells(lines[0]);
        return [.. lines.Skip(1).Select(line => columns.Zip(Cells(line)).ToDictionary(p => p.First, p => p.Second))];
    }

    private static List<string> Cells(string line)
    {
        var cells = new List<string>();
        var cell = new StringBuilder();
        var quoted = false;
        for (var i = 0; i < line.Length; i++)
        {
            if (line[i] == '"' && quoted && i + 1 < line.Length && line[i + 1] == '"')
            {
                cell.Append('"');
                i++;
            }
            else if (line[i] == '"')
            {
                quoted = !quoted;
            }
            else if (line[i] == ',' && !quoted)
            {
                cells.Add(cell.ToString());
                cell.Clear();
            }
            else
            {
                cell.Append(line[i]);
            }
        }
        cells.Add(cell.ToString());
        return cells;
    }
}
