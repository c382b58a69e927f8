using MenuLab.Print.Fonts;

namespace MenuLab.Print;

/// <summary>What a part of the page is to somebody who hears it read.</summary>
internal enum PartKind
{
    Heading,
    Paragraph,
    /// <summary>A picture with text in it, told by its <see cref="Part.Says"/>.</summary>
    Illustration,
    /// <summary>Rules, frames, marks: nothing to read.</summary>
    Artifact,
}

/// <summary>Something set: where it lies on the card in millimetres from the top left corner.</summary>
internal abstract record Mark;

/// <summary>One line of text in one face.</summary>
/// <param name="X">Left edge, mm.</param>
/// <param name="Baseline">Baseline, mm.</param>
/// <param name="Text">Spelled text.</param>
/// <param name="Face">The face.</param>
/// <param name="Points">Size, pt.</param>
/// <param name="IsCleared">The lines of DRAFT stop short of it: an amount with a line through it could be misread.</param>
internal sealed record TextMark(double X, double Baseline, string Text, Face Face, double Points, bool IsCleared = false) : Mark;

/// <summary>A straight stroke, always black: no greys, so that any printer can print it.</summary>
internal sealed record LineMark(double X1, double Y1, double X2, double Y2, double Width, bool Dashed = false) : Mark;

/// <summary>The outline of a polygon, not filled.</summary>
internal sealed record OutlineMark(IReadOnlyList<(double X, double Y)> Corners, double Width) : Mark;

/// <summary>Marks that belong together.</summary>
/// <param name="Kind">What they are.</param>
/// <param name="Says">What is read aloud instead of a picture; empty for text.</param>
/// <param name="Marks">In reading order.</param>
internal sealed record Part(PartKind Kind, string Says, IReadOnlyList<Mark> Marks)
{
    public static Part Text(PartKind kind, IReadOnlyList<Mark> marks) => new(kind, "", marks);

    public static Part Artifact(params IReadOnlyList<Mark> marks) => new(PartKind.Artifact, "", marks);
}

/// <summary>What was drawn.</summary>
internal enum MarkKind
{
    Text,
    Stroke,
    /// <summary>Across everything else, on purpose.</summary>
    Outline,
}

/// <summary>What a mark takes up on the page, mm.</summary>
internal sealed record DrawnBox(PartKind Part, MarkKind Mark, string Text, double Points, double Left, double Top, double Right, double Bottom);

/// <summary>Sizes of set type. Points are for type, millimetres for everything else.</summary>
internal static class Type
{
    public const double MillimetresPerPoint = 25.4 / 72;

    /// <summary>No type is set smaller.</summary>
    public const double SmallestPoints = 7;

    // Å and descenders of Inter lie within these; with lines at least their sum apart, no two lines touch.
    private const double EmsAbove = 0.95;
    private const double EmsBelow = 0.21;

    public static double Ascent(double points) => EmsAbove * points * MillimetresPerPoint;

    public static double Descent(double points) => EmsBelow * points * MillimetresPerPoint;

    public static double Height(double points) => Ascent(points) + Descent(points);

    public static double Width(string text, Face face, double points) => Inter.File(face).Ems(text) * points * MillimetresPerPoint;
}
