using MenuLab.Print.Fonts;
using PdfSharp.Drawing;
using PdfSharp.Pdf;
using PdfSharp.UniversalAccessibility;

namespace MenuLab.Print;

/// <summary>
/// The one door to the PDF: all that is drawn passes here. It opens a structure element for each part, so that the file
/// can be read aloud in order; refuses what would leave the safe margin; and records every box, which the tests read.
/// </summary>
internal sealed class Page : IDisposable
{
    private readonly XGraphics _graphics;
    private readonly StructureBuilder _structure;
    private readonly Paper _paper;
    private readonly List<DrawnBox> _boxes = [];

    public Page(PdfDocument document, UAManager tags, Paper paper)
    {
        _paper = paper;
        var page = document.AddPage();
        // Not page.Size: it throws where no standard size fits.
        page.Width = XUnit.FromMillimeter(paper.Width);
        page.Height = XUnit.FromMillimeter(paper.Height);
        _graphics = XGraphics.FromPdfPage(page);
        _structure = tags.StructureBuilder;
    }

    public IReadOnlyList<DrawnBox> Boxes => _boxes;

    /// <summary>Draws a part, moved by (x, y) mm.</summary>
    /// <exception cref="InvalidOperationException">A mark would leave the safe margin: the layout is wrong.</exception>
    public void Draw(Part part, double x, double y)
    {
        switch (part.Kind)
        {
            case PartKind.Artifact:
                _structure.BeginArtifact();
                break;
            case PartKind.Heading:
                _structure.BeginElement(PdfBlockLevelElementTag.Heading1);
                break;
            case PartKind.Illustration:
                var around = part.Marks.Select(mark => BoxOf(part.Kind, mark, x, y)).ToList();
                _structure.BeginElement(PdfIllustrationElementTag.Figure, part.Says, new XRect(
                    new XPoint(Points(around.Min(b => b.Left)), Points(around.Min(b => b.Top))),
                    new XPoint(Points(around.Max(b => b.Right)), Points(around.Max(b => b.Bottom)))));
                break;
            default:
                _structure.BeginElement(PdfBlockLevelElementTag.Paragraph);
                break;
        }
        for (var i = 0; i < part.Marks.Count; i++)
        {
            var mark = part.Marks[i];
            var box = BoxOf(part.Kind, mark, x, y);
            if (box.Left < Paper.SafeMargin || box.Top < Paper.SafeMargin
                || box.Right > _paper.Width - Paper.SafeMargin || box.Bottom > _paper.Height - Paper.SafeMargin)
            {
                throw new InvalidOperationException($"Outside the safe margin: {box}");
            }
            _boxes.Add(box);
            Draw(mark, x, y, box, isLast: i == part.Marks.Count - 1);
        }
        _structure.End();
    }

    public void Dispose() => _graphics.Dispose();

    private void Draw(Mark mark, double x, double y, DrawnBox box, bool isLast)
    {
        switch (mark)
        {
            case TextMark text:
                if (text.IsCleared)
                {
                    _graphics.DrawRectangle(
                        XBrushes.White, Points(box.Left), Points(box.Top), Points(box.Right - box.Left), Points(box.Bottom - box.Top));
                }
                // A kept space is only for breaking lines. The space behind parts it from the next text where it is read aloud or copied.
                _graphics.DrawString(
                    text.Text.Replace(Spelling.KeptSpace, ' ') + (isLast ? "" : " "), Inter.At(text.Face, text.Points), XBrushes.Black, Points(x + text.X), Points(y + text.Baseline));
                break;
            case LineMark line:
                _graphics.DrawLine(Pen(line.Width, line.Dashed), Points(x + line.X1), Points(y + line.Y1), Points(x + line.X2), Points(y + line.Y2));
                break;
            case OutlineMark outline:
                _graphics.DrawPolygon(Pen(outline.Width, dashed: false), [.. outline.Corners.Select(c => new XPoint(Points(x + c.X), Points(y + c.Y)))]);
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(mark), mark, "No such mark.");
        }
    }

    private static DrawnBox BoxOf(PartKind kind, Mark mark, double x, double y) => mark switch
    {
        TextMark t => new DrawnBox(
            kind, MarkKind.Text, t.Text, t.Points, x + t.X, y + t.Baseline - Type.Ascent(t.Points),
            x + t.X + Type.Width(t.Text, t.Face, t.Points), y + t.Baseline + Type.Descent(t.Points)),
        LineMark l => new DrawnBox(
            kind, MarkKind.Stroke, "", 0, x + Math.Min(l.X1, l.X2) - (l.X1 == l.X2 ? l.Width / 2 : 0), y + Math.Min(l.Y1, l.Y2) - (l.Y1 == l.Y2 ? l.Width / 2 : 0),
            x + Math.Max(l.X1, l.X2) + (l.X1 == l.X2 ? l.Width / 2 : 0), y + Math.Max(l.Y1, l.Y2) + (l.Y1 == l.Y2 ? l.Width / 2 : 0)),
        OutlineMark o => new DrawnBox(
            kind, MarkKind.Outline, "", 0, x + o.Corners.Min(c => c.X), y + o.Corners.Min(c => c.Y), x + o.Corners.Max(c => c.X), y + o.Corners.Max(c => c.Y)),
        _ => throw new ArgumentOutOfRangeException(nameof(mark), mark, "No such mark."),
    };

    private static XPen Pen(double millimetres, bool dashed)
    {
        var pen = new XPen(XColors.Black, Points(millimetres));
        if (dashed)
        {
            pen.DashStyle = XDashStyle.Custom;
            pen.DashPattern = [2, 1.5];      // in pen widths
        }
        return pen;
    }

    private static double Points(double millimetres) => millimetres / Type.MillimetresPerPoint;
}
