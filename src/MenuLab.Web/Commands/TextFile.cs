using System.Globalization;
using System.Text;
using MenuLab.Core.Exchange;

namespace MenuLab.Web.Commands;

/// <summary>Reads a file as text, or says where it is not text.</summary>
internal static class TextFile
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
                return new FileProblem(1, 1, string.Create(CultureInfo.InvariantCulture, $"The file has {length / 1e6:0.0} MB; up to {LargestBytes / 1e6:0} MB is read. Split it."));
            }
            bytes = File.ReadAllBytes(path);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return new FileProblem(1, 1, $"The file cannot be opened ({e.Message}). Check its name and your rights to it.");
        }

        try
        {
            text = Decode(bytes);
        }
        catch (DecoderFallbackException e)
        {
            var (line, column) = PlaceOf(bytes, e.Index);
            return new FileProblem(line, column, "This is not UTF-8 text from here on. Save the file as UTF-8 and try again.");
        }
        return string.IsNullOrWhiteSpace(text) ? new FileProblem(1, 1, "The file is empty. Type a drink: its name on a line, its lines below.") : null;
    }

    private static string Decode(byte[] bytes)
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
