using System.Globalization;
using MenuLab.Print.Fonts;

namespace MenuLab.Print;

/// <summary>A stretch of text in one face.</summary>
internal readonly record struct Run(string Text, Face Face);

/// <summary>
/// Text set in lines of a width: wraps at spaces, never between a figure and its unit, and inside a word only where the
/// word alone is wider than the line. PDFsharp's own formatter lets such a word run out and drops what lies below the box.
/// </summary>
internal sealed class Paragraph
{
    private readonly List<List<TextMark>> _lines = [];
    private readonly double _points;
    private readonly double _leading;

    /// <param name="runs">Spelled text; runs join without a space of their own.</param>
    /// <param name="points">Size, pt.</param>
    /// <param name="width">Width of the line, mm.</param>
    /// <param name="leading">Distance of two baselines in sizes.</param>
    public Paragraph(IReadOnlyList<Run> runs, double points, double width, double leading = 1.25)
    {
        _points = points;
        _leading = Math.Max(leading * points * Type.MillimetresPerPoint, Type.Height(points) + 0.01);
        var x = 0.0;
        foreach (var (text, face, spaceBefore) in Words(runs))
        {
            var space = spaceBefore && x > 0 ? Type.Width(" ", face, points) : 0;
            if (_lines.Count == 0 || x + space + Width(text, face) > width && (spaceBefore || x == 0))
            {
                _lines.Add([]);
                (x, space) = (0, 0);
            }
            x = Add(text, face, x, space, width);
        }
    }

    public int LineCount => _lines.Count;

    /// <summary>Height of all lines, mm.</summary>
    public double Height => _lines.Count == 0 ? 0 : Type.Height(_points) + (_lines.Count - 1) * _leading;

    /// <summary>Width of the widest line, mm.</summary>
    public double Width() => _lines.Count == 0 ? 0 : _lines.Max(line => line.Count == 0 ? 0 : line[^1].X + Width(line[^1].Text, line[^1].Face));

    /// <summary>The lines with their top left corner at (x, y).</summary>
    public IEnumerable<TextMark> At(double x, double y) =>
        _lines.SelectMany((line, i) => line.Select(mark => mark with { X = x + mark.X, Baseline = y + Type.Ascent(_points) + i * _leading }));

    private double Add(string text, Face face, double x, double space, double width)
    {
        foreach (var piece in Pieces(text, face, width))
        {
            if (x > 0 && x + space + Width(piece, face) > width)
            {
                _lines.Add([]);
                (x, space) = (0, 0);
            }
            var line = _lines[^1];
            if (line.Count > 0 && line[^1].Face == face)
            {
                line[^1] = line[^1] with { Text = line[^1].Text + (space > 0 ? " " : "") + piece };
            }
            else
            {
                line.Add(new TextMark(x + space, 0, piece, face, _points));
            }
            x += space + Width(piece, face);
            space = 0;
        }
        return x;
    }

    /// <summary>The word, or as much of it at a time as a line holds.</summary>
    private List<string> Pieces(string word, Face face, double width)
    {
        if (Width(word, face) <= width)
        {
            return [word];
        }
        var pieces = new List<string> { "" };
        var characters = StringInfo.GetTextElementEnumerator(word);
        while (characters.MoveNext())
        {
            var longer = pieces[^1] + characters.GetTextElement();
            if (pieces[^1].Length > 0 && Width(longer, face) > width)
            {
                pieces.Add(characters.GetTextElement());
            }
            else
            {
                pieces[^1] = longer;
            }
        }
        return pieces;
    }

    private static IEnumerable<(string Text, Face Face, bool SpaceBefore)> Words(IReadOnlyList<Run> runs)
    {
        var pending = false;
        foreach (var run in runs)
        {
            var words = run.Text.Split(' ');
            for (var i = 0; i < words.Length; i++)
            {
                pending |= i > 0;
                if (words[i].Length > 0)
                {
                    yield return (words[i], run.Face, pending);
                    pending = false;
                }
            }
        }
    }

    private double Width(string text, Face face) => Type.Width(text, face, _points);
}
