using System.Globalization;
using CsvHelper;

namespace MenuLab.Data.Seeding;

/// <summary>One file of seed-data, row by row. Cells are read by column name, numbers in the invariant culture.</summary>
internal sealed class SeedTable
{
    private static readonly CsvReaderOptions Options = new()
    {
        Separator = ',',
        TrackLineNumbers = true,
        MalformedData = CsvMalformedDataHandling.Throw,
        FieldCountMismatch = CsvFieldCountHandling.Throw,
        FormatProvider = CultureInfo.InvariantCulture,
    };

    private readonly string _file;
    private readonly CsvReader _reader;
    private readonly string[] _columns;

    private SeedTable(string file, CsvReader reader)
    {
        _file = file;
        _reader = reader;
        _columns = [.. reader.Headers];
    }

    /// <summary>Makes one thing of each row.</summary>
    public static List<T> Read<T>(string folder, string file, Func<SeedTable, T> make)
    {
        try
        {
            using var reader = CsvReader.FromFile(Path.Combine(folder, file), Options);
            var table = new SeedTable(file, reader);
            var rows = new List<T>();
            while (reader.Read())
            {
                rows.Add(make(table));
            }
            return rows;
        }
        catch (CsvFormatException e)
        {
            throw new SeedDataException($"{file}, line {e.LineNumber}: {e.Message}", e);
        }
        catch (IOException e)
        {
            throw new SeedDataException($"{file} cannot be read: {e.Message}", e);
        }
    }

    /// <summary>A cell that may be empty.</summary>
    public string Text(string column)
    {
        var at = Array.IndexOf(_columns, column);
        return at >= 0 ? _reader.GetString(at) : throw new SeedDataException($"{_file}: there is no column called {column}.");
    }

    /// <summary>A cell that may not be empty.</summary>
    public string Required(string column)
    {
        var text = Text(column);
        return text.Length > 0 ? text : throw Fault(column, "the cell is empty");
    }

    /// <summary>A number, or NaN for an empty cell.</summary>
    public double NumberOrNaN(string column) => Text(column).Length == 0 ? double.NaN : Number(column);

    /// <summary>A number, or another where the cell is empty.</summary>
    public double NumberOr(string column, double other) => Text(column).Length == 0 ? other : Number(column);

    /// <summary>A number.</summary>
    public double Number(string column)
    {
        var text = Required(column);
        return double.TryParse(text, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number)
            ? number
            : throw Fault(column, $"\"{text}\" is not a number");
    }

    /// <summary>0 or 1.</summary>
    public bool Flag(string column) => Required(column) switch
    {
        "0" => false,
        "1" => true,
        var text => throw Fault(column, $"\"{text}\" is neither 0 nor 1"),
    };

    /// <summary>One of a list of words.</summary>
    public T OneOf<T>(string column, bool upperCase = false)
        where T : struct, Enum
    {
        var text = Required(column);
        return Enum.TryParse<T>(text, ignoreCase: upperCase, out var value) && !char.IsAsciiDigit(text[0])
            ? value
            : throw Fault(column, $"\"{text}\" is none of {string.Join(", ", Enum.GetNames<T>())}");
    }

    /// <summary>A fault in a cell of the row at hand.</summary>
    public SeedDataException Fault(string column, string what, Exception? inner = null) =>
        new($"{_file}, line {_reader.LineNumber}, column {column}: {what}.", inner);
}
