namespace MenuLab.Print;

/// <summary>What a card is printed on.</summary>
public enum CardPaper
{
    /// <summary>105 x 148 mm, one card.</summary>
    A6,
    /// <summary>4 x 6 in, one card.</summary>
    FourBySix,
    /// <summary>A4, four cards with cut marks.</summary>
    SheetA4OfFour,
    /// <summary>US Letter, four cards with cut marks.</summary>
    SheetLetterOfFour,
}

/// <summary>A paper in millimetres and how many cards lie on it, side by side and one above the other.</summary>
internal sealed record Paper(string Name, double Width, double Height, int Across, int Down)
{
    /// <summary>No printer reaches the edge; nothing is drawn nearer to it.</summary>
    public const double SafeMargin = 3.5;

    public double CardWidth => Width / Across;

    public double CardHeight => Height / Down;

    public static Paper Of(CardPaper paper) => paper switch
    {
        CardPaper.A6 => new Paper("A6", 105, 148, 1, 1),
        CardPaper.FourBySix => new Paper("4 x 6 in", 101.6, 152.4, 1, 1),
        CardPaper.SheetA4OfFour => new Paper("a quarter of A4", 210, 297, 2, 2),
        CardPaper.SheetLetterOfFour => new Paper("a quarter of Letter", 215.9, 279.4, 2, 2),
        _ => throw new ArgumentOutOfRangeException(nameof(paper), paper, "No such paper."),
    };
}
