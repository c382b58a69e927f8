using System.Globalization;
using System.Text;
using MenuLab.Core.Exchange;

namespace MenuLab.Web.Commands;

/// <summary>Reads a file as text, or says where it is not text.</summary>
public static class TextFile
{
    /// <summary>Largest file taken, bytes: some 60,000 lines. More is a mistake more often than a bar's book of drinks.</summary>
    public const int LargestBytes = 2_000_000;

    private static readonly UTF8Encoding StrictUtf8 = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>The text of a file: UTF-8, or UTF-16 with its mark.</summary>
    /// <returns>Null, or where it cannot be read.</returns>
    public static FileProblem? Read(string path, out string text)
    {
        text = "";
        byte[] bytes;
        try
        {
            var length = new FileInfo(path).Length;
            if (length > LargestBytes)
            {
                return TooLarge(length);
            }
            bytes = File.ReadAllBytes(path);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return new FileProblem(1, 1, $"The file cannot be opened ({e.Message}). Check its name and your rights to it.");
        }
        return Decode(bytes, out text);
    }

    /// <summary>The text of bytes: UTF-8, or UTF-16 with its mark.</summary>
    /// <returns>Null, or where they are no text.</returns>
    public static FileProblem? Decode(byte[] bytes, out string text)
    {
        text = "";
        if (bytes.Length > LargestBytes)
        {
            return TooLarge(bytes.Length);
        }
        try
        {
            text = TextOf(bytes);
        }
        catch (DecoderFallbackException e)
        {
            var (line, column) = PlaceOf(bytes, e.Index);
            return new FileProblem(line, column, "This is not UTF-8 text from here on. Save the file as UTF-8 and try again.");
        }
        if (text.IndexOf('\0') is >= 0 and var zero)
        {
            // A picture, a spreadsheet's own format, a database: no text has a zero in it.
            var before = text[..zero];
            return new FileProblem(before.Count(c => c == '\n') + 1, before.Length - before.LastIndexOf('\n'), "This is no text file. Save what is in it as text, CSV or JSON and try again.");
        }
        return string.IsNullOrWhiteSpace(text) ? new FileProblem(1, 1, "The file is empty. Type a drink: its name on a line, its lines below.") : null;
    }

    /// <summary>What to say of a file that is too large to be read.</summary>
    public static FileProblem TooLarge(long length) =>
        new(1, 1, string.Create(CultureInfo.InvariantCulture, $"The file has {length / 1e6:0.0} MB; up to {LargestBytes / 1e6:0} MB is read. Split it."));

    private static string TextOf(byte[] bytes)
    {
        if (bytes.AsSpan().StartsWith(Encoding.Unicode.Preamble))
        {
            return Encoding.Unicode.GetString(bytes.AsSpan(2));
        }
        if (bytes.AsSpan().StartsWith(Encoding.BigEndianUnicode.Preamble))
        {
            return Encoding.BigEndianUnicode.GetString(bytes.AsSpan(2));
        }
        var start = bytes.AsSpan().StartsWith(Encoding.UTF8.Preamble) ? 3 : 0;
        return StrictUtf8.GetString(bytes.AsSpan(start));
    }

    // The decoder's index counts from where it began; a UTF-8 mark before it has no line break and three bytes of no column.
    private static (int Line, int Column) PlaceOf(byte[] bytes, int index)
    {
        var start = bytes.AsSpan().StartsWith(Encoding.UTF8.Preamble) ? 3 : 0;
        var before = Encoding.UTF8.GetString(bytes.AsSpan(start, Math.Clamp(index, 0, bytes.Length - start)));
        var line = before.Count(c => c == '\n') + 1;
        return (line, before.Length - before.LastIndexOf('\n'));
    }
}
