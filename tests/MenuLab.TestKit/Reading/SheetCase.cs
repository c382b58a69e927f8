using System.Globalization;

namespace MenuLab.TestKit.Reading;

/// <summary>A line that a case expects: the fields of its row in the sheet's README.</summary>
public sealed record ExpectedLine(bool MayBeAsked, string Amount, string Unit, string Key, string Place, string Joins, IReadOnlyList<string> More);

/// <summary>A piece that must be asked, stay unread, or either of them.</summary>
public sealed record ExpectedPiece(string Text, IReadOnlyList<string> Keys, bool MayBeAsked, bool MayBeUnread);

/// <summary>One typed text of the sheet with the reading that a careful bartender would give it.</summary>
public sealed class SheetCase
{
    public required string File { get; init; }
    public required string Number { get; init; }
    public bool OuncesHouse { get; init; }
    public double? PartsTotal { get; init; }
    public List<string> Before { get; } = [];
    public List<string> Typed { get; } = [];
    public List<ExpectedLine> Lines { get; } = [];
    public List<ExpectedPiece> Pieces { get; } = [];
    public Dictionary<string, string> Build { get; } = new(StringComparer.Ordinal);
    public List<string> Notes { get; } = [];
    public string? Name { get; set; }
    public string? Yield { get; set; }

    /// <summary>Reads every .txt of a folder in the order of names.</summary>
    public static IReadOnlyList<SheetCase> ReadFolder(string folder) =>
        [.. Directory.EnumerateFiles(folder, "*.txt").Order(StringComparer.Ordinal).SelectMany(ReadFile)];

    private static List<SheetCase> ReadFile(string path)
    {
        var cases = new List<SheetCase>();
        foreach (var row in System.IO.File.ReadAllLines(path))
        {
            if (row.StartsWith("== ", StringComparison.Ordinal))
            {
                cases.Add(Head(Path.GetFileName(path), row[3..]));
            }
            else if (cases.Count > 0)
            {
                cases[^1].Take(row);
            }
        }
        return cases;
    }

    private static SheetCase Head(string file, string head)
    {
        var fields = head.Split('|', StringSplitOptions.TrimEntries);
        var settings = fields.Skip(1).Select(f => f.Split(':', 2, StringSplitOptions.TrimEntries)).Where(f => f.Length == 2).ToDictionary(f => f[0], f => f[1], StringComparer.Ordinal);
        return new SheetCase
        {
            File = file,
            Number = fields[0],
            OuncesHouse = settings.GetValueOrDefault("unit") == "oz",
            PartsTotal = settings.TryGetValue("parts", out var parts) ? double.Parse(parts, CultureInfo.InvariantCulture) : null,
        };
    }

    private void Take(string row)
    {
        // Blanks count behind "> "; everywhere else they do not.
        if (row.StartsWith('>'))
        {
            Typed.Add(row.StartsWith("> ", StringComparison.Ordinal) ? row[2..] : row[1..]);
            return;
        }
        if (row.StartsWith('<'))
        {
            Before.Add(row.StartsWith("< ", StringComparison.Ordinal) ? row[2..] : row[1..]);
            return;
        }
        if (string.IsNullOrWhiteSpace(row) || row[0] == '#' || row.StartsWith("before:", StringComparison.Ordinal))
        {
            return;
        }
        var blank = row.IndexOf(' ', StringComparison.Ordinal);
        var (mark, rest) = blank < 0 ? (row, "") : (row[..blank], row[(blank + 1)..].Trim());
        switch (mark)
        {
            case "=" or "=?":
                var fields = rest.Split('|', StringSplitOptions.TrimEntries);
                Lines.Add(new ExpectedLine(mark == "=?", fields[0], fields[1], fields[2], fields[3], fields[4], fields[5..]));
                break;
            case "?" or "?!":
                // The text may hold a bar itself only before the last one, which parts it from the keys.
                var bar = rest.LastIndexOf('|');
                var keys = bar < 0 ? [] : rest[(bar + 1)..].Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
                Pieces.Add(new ExpectedPiece((bar < 0 ? rest : rest[..bar]).Trim(), keys, true, mark == "?!"));
                break;
            case "!":
                Pieces.Add(new ExpectedPiece(rest, [], false, true));
                break;
            case "b":
                foreach (var pair in rest.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).Select(p => p.Split('=', 2)))
                {
                    Build[pair[0].Trim()] = pair[1].Trim();
                }
                break;
            case "n":
                Notes.Add(rest);
                break;
            case "t":
                Name = rest;
                break;
            case "y":
                Yield = rest;
                break;
            default:
                throw new InvalidDataException($"{File}, case {Number}: \"{row}\" is no row of the sheet.");
        }
    }
}
