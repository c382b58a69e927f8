using PdfSharp.Drawing;
using PdfSharp.Fonts;

namespace MenuLab.Print.Fonts;

/// <summary>The faces that are embedded. There are no italics, so nothing asks for one.</summary>
internal enum Face
{
    Regular,
    SemiBold,
    Bold,
}

/// <summary>Inter, out of this assembly: no font of the machine is ever used, so a card looks the same everywhere.</summary>
internal sealed class Inter : IFontResolver
{
    private static readonly Dictionary<Face, FontFile> Files = Enum.GetValues<Face>().ToDictionary(face => face, Load);
    private static readonly Lock Setting = new();

    public static FontFile File(Face face) => Files[face];

    /// <summary>A face at a size in points. The resolver is process-wide in PDFsharp, so it is set here and nowhere else.</summary>
    public static XFont At(Face face, double points)
    {
        lock (Setting)
        {
            GlobalFontSettings.FontResolver ??= new Inter();
        }
        return new XFont(NameOf(face), points, XFontStyleEx.Regular);
    }

    public FontResolverInfo? ResolveTypeface(string familyName, bool isBold, bool isItalic) =>
        Enum.GetValues<Face>().Any(face => NameOf(face) == familyName) && !isItalic ? new FontResolverInfo(familyName) : null;

    public byte[]? GetFont(string faceName) => Files[Enum.GetValues<Face>().Single(face => NameOf(face) == faceName)].Bytes;

    private static string NameOf(Face face) => $"Inter-{face}";

    private static FontFile Load(Face face)
    {
        using var stream = typeof(Inter).Assembly.GetManifestResourceStream(NameOf(face))
            ?? throw new InvalidOperationException($"The face {NameOf(face)} is not embedded.");
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return new FontFile(bytes);
    }
}
