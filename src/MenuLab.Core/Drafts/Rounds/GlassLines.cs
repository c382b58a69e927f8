namespace MenuLab.Core.Drafts.Rounds;

/// <summary>The lines of one pour, with the amounts that it has of them.</summary>
public static class GlassLines
{
    /// <summary>What is in the glass: what was poured where somebody said so, else what was to be poured, at the size of the round.</summary>
    /// <param name="round">The round.</param>
    /// <param name="letter">The pour.</param>
    /// <param name="understand">What an amount of an ingredient comes to (<see cref="Understanding.Of"/>).</param>
    public static IReadOnlyList<LineContent> Poured(Round round, PourLetter letter, Func<LineContent, LineContent> understand)
    {
        var share = round.Share;
        return [.. round.Lines.Select(l => At(l.Content, round.InGlass(letter, l), share, understand))];
    }

    /// <summary>What is to go into the glass, at the size of the round.</summary>
    /// <param name="round">The round.</param>
    /// <param name="letter">The pour.</param>
    /// <param name="understand">What an amount of an ingredient comes to.</param>
    public static IReadOnlyList<LineContent> Specified(Round round, PourLetter letter, Func<LineContent, LineContent> understand)
    {
        var share = round.Share;
        return [.. round.Lines.Select(l => At(l.Content, round.ToPour(letter, l), share, understand))];
    }

    /// <summary>The whole drink that was tasted: what is in the glass, brought to full size.</summary>
    /// <param name="round">The round.</param>
    /// <param name="letter">The pour.</param>
    /// <param name="understand">What an amount of an ingredient comes to.</param>
    public static IReadOnlyList<LineContent> Whole(Round round, PourLetter letter, Func<LineContent, LineContent> understand)
    {
        var share = round.Share;
        return [.. round.Lines.Select(l => At(l.Content, WholeAmount(round, letter, l, share), 1, understand))];
    }

    /// <summary>How much of a line the whole drink that was tasted has: what was poured brought to full size, else what was specified.</summary>
    internal static double? WholeAmount(Round round, PourLetter letter, PlacedLine line, double share) =>
        round.Cell(letter, line.Line)?.Poured is { } poured ? Math.Round(poured / (Scales(line.Content) ? share : 1), 9) : round.Specified(letter, line);

    /// <summary>A line of a smaller pour is smaller. What stands beside the liquid (garnish, rim) and what rinses the glass is not.</summary>
    internal static bool Scales(LineContent line) => line.Place == Place.In;

    // A line that is as typed keeps what its words said ("scant"); one with another amount is understood by the rules.
    private static LineContent At(LineContent line, double? amount, double share, Func<LineContent, LineContent> understand)
    {
        if (amount is { } a && a != line.Amount.Value)
        {
            var changed = line with { Amount = line.Amount with { Value = a, Low = null, High = null } };
            return a == 0 ? changed with { Understood = new Understood(0, 0, 0, []) } : understand(changed);
        }
        if (share == 1 || amount is not null || !Scales(line))
        {
            return line;
        }
        // Without a figure of its own (a float, a splash, what is kept as typed) it shrinks as it was understood.
        var u = line.Understood;
        return line with { Understood = u with { Millilitres = u.Millilitres * share, Grams = u.Grams * share, GramsUncertainty = u.GramsUncertainty * share } };
    }
}
