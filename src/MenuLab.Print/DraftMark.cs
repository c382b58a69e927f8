namespace MenuLab.Print;

/// <summary>
/// DRAFT across the card in outline: hairlines, so that the text over it reads on any printer; amounts are cleared of them.
/// Drawn and not set, since a
/// word that crosses all others would also stand in the text of the file; the word itself stands at the top of the card.
/// </summary>
internal static class DraftMark
{
    private const double StrokeMillimetres = 0.125;     // one dot at 203 dpi
    private const double Advance = 6.2;
    private const double LetterWidth = 5;
    private const double LetterHeight = 7;

    // Each letter in a box of 5 by 7, y down; a second outline is the hole.
    private static readonly (double X, double Y)[][][] Letters =
    [
        [
            [(0, 0), (3.4, 0), (5, 1.6), (5, 5.4), (3.4, 7), (0, 7)],
            [(1.3, 1.3), (2.9, 1.3), (3.7, 2.1), (3.7, 4.9), (2.9, 5.7), (1.3, 5.7)],
        ],
        [
            [(0, 0), (3.6, 0), (5, 1.4), (5, 3.2), (4, 4.3), (5, 7), (3.6, 7), (2.7, 4.6), (1.3, 4.6), (1.3, 7), (0, 7)],
            [(1.3, 1.2), (3.1, 1.2), (3.7, 1.8), (3.7, 2.8), (3.1, 3.4), (1.3, 3.4)],
        ],
        [
            [(0, 7), (1.9, 0), (3.1, 0), (5, 7), (3.6, 7), (3.1, 5.2), (1.9, 5.2), (1.4, 7)],
            [(2.5, 2.4), (2.85, 4), (2.15, 4)],
        ],
        [[(0, 0), (5, 0), (5, 1.3), (1.3, 1.3), (1.3, 2.9), (4.2, 2.9), (4.2, 4.2), (1.3, 4.2), (1.3, 7), (0, 7)]],
        [[(0, 0), (5, 0), (5, 1.3), (3.15, 1.3), (3.15, 7), (1.85, 7), (1.85, 1.3), (0, 1.3)]],
    ];

    /// <summary>The mark from the lower left to the upper right of a frame.</summary>
    public static Part Across(double left, double top, double width, double height)
    {
        var length = (Letters.Length - 1) * Advance + LetterWidth;
        var angle = Math.Atan2(height, width);
        var (sin, cos) = Math.SinCos(angle);
        var unit = Math.Min(width / (length * cos + LetterHeight * sin), height / (length * sin + LetterHeight * cos));
        var (centreX, centreY) = (left + width / 2, top + height / 2);
        var marks = new List<Mark>();
        for (var i = 0; i < Letters.Length; i++)
        {
            foreach (var outline in Letters[i])
            {
                marks.Add(new OutlineMark([.. outline.Select(c => Turned(unit * (c.X + i * Advance - length / 2), unit * (c.Y - LetterHeight / 2)))], StrokeMillimetres));
            }
        }
        return new Part(PartKind.Artifact, "", marks);

        (double X, double Y) Turned(double x, double y) => (centreX + x * cos + y * sin, centreY - x * sin + y * cos);
    }
}
