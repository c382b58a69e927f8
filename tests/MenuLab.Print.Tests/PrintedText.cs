using System.Text;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;

namespace MenuLab.Print.Tests;

/// <summary>Reads a card back with another library than wrote it.</summary>
internal static class PrintedText
{
    /// <summary>The text in reading order, a line for each structure element that has any.</summary>
    public static string Of(byte[] pdf)
    {
        using var document = PdfDocument.Open(pdf);
        var text = new StringBuilder();
        foreach (var page in document.GetPages())
        {
            foreach (var part in page.GetMarkedContents().Where(part => part.Letters.Count > 0))
            {
                text.Append(string.Concat(part.Letters.Select(letter => letter.Value)).Trim()).Append('\n');
            }
        }
        return text.ToString();
    }

    /// <summary>The letters of each page, whether in an element or not.</summary>
    public static IReadOnlyList<Letter> Letters(byte[] pdf)
    {
        using var document = PdfDocument.Open(pdf);
        return [.. document.GetPages().SelectMany(page => page.Letters)];
    }
}
