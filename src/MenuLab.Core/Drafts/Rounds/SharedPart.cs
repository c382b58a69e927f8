using MenuLab.Core.Pantry;

namespace MenuLab.Core.Drafts.Rounds;

/// <summary>So much of a line.</summary>
/// <param name="Line">Which line.</param>
/// <param name="Text">The line as typed.</param>
/// <param name="Ingredient">What it is; null for a line that is kept as typed.</param>
/// <param name="Amount">In the line's unit; null where it has none.</param>
/// <param name="Unit">The line's unit.</param>
/// <param name="Millilitres">mL; null where it has no volume of its own.</param>
/// <param name="Grams">g; null where nobody knows.</param>
public sealed record Portion(LineId Line, string Text, IngredientId? Ingredient, double? Amount, Unit Unit, double? Millilitres, double? Grams);

/// <summary>What goes into one glass, in this order.</summary>
/// <param name="Letter">The pour.</param>
/// <param name="SharedMillilitres">mL from the shared jug, 0 where nothing is shared.</param>
/// <param name="SharedGrams">g from the shared jug.</param>
/// <param name="Own">What is weighed or measured into this glass alone before it is shaken; its grams are to be read on a scale that was tared before each.</param>
/// <param name="Later">What joins after shaking or stands beside the liquid: lines in the glass, tops, garnishes, rims; each glass has its own.</param>
public sealed record Glassful(PourLetter Letter, double SharedMillilitres, double SharedGrams, IReadOnlyList<Portion> Own, IReadOnlyList<Portion> Later)
{
    /// <summary>What the scale shows after the shared part and everything that is weighed in before shaking, g: what has no known mass is not in it.</summary>
    public double Grams => SharedGrams + Own.Sum(p => p.Grams ?? 0);

    /// <summary>Volume of the same, as measured one by one, mL.</summary>
    public double Millilitres => SharedMillilitres + Own.Sum(p => p.Millilitres ?? 0);
}

/// <summary>
/// The work of a round: what all pours share is mixed once, with something to spare, and then each glass gets its part and
/// its own.
/// </summary>
/// <remarks>
/// Shared are lines that join before shaking, are the same in every pour and have a known mass; nothing that joins later.
/// Arithmetic of sums, so by mass it closes exactly: jug + what each glass gets of its own = all pours + what is spare. The
/// 5 % to spare are common practice, no source. By volume the jug may come to less than the sum where strong spirit meets
/// water, which contract on mixing: what is spare makes up for it; by weight it does not arise.
/// </remarks>
public sealed record SharedPart
{
    /// <summary>What is made to spare, as a share of what is needed.</summary>
    public const double SpareShare = 0.05;

    /// <summary>What goes into the jug, for all pours and with the spare.</summary>
    public required IReadOnlyList<Portion> Jug { get; init; }

    /// <summary>What goes into each glass, A first.</summary>
    public required IReadOnlyList<Glassful> Glasses { get; init; }

    /// <summary>Mass in the jug, g.</summary>
    public double JugGrams => Jug.Sum(p => p.Grams ?? 0);

    /// <summary>Volume in the jug as measured one by one, mL.</summary>
    public double JugMillilitres => Jug.Sum(p => p.Millilitres ?? 0);

    /// <summary>Mass that is left in the jug when every glass has its part, g.</summary>
    public double SpareGrams => JugGrams - Glasses.Sum(g => g.SharedGrams);

    /// <summary>The shared part of a round, at its size, as specified.</summary>
    /// <param name="round">The round.</param>
    /// <param name="understand">What an amount of an ingredient comes to (<see cref="Understanding.Of"/>).</param>
    public static SharedPart Of(Round round, Func<LineContent, LineContent> understand)
    {
        var letters = round.Pours.Select(p => p.Letter).ToList();
        var portions = letters.Select(letter => GlassLines.Specified(round, letter, understand).Zip(round.Lines, (content, line) => (line, content)).ToList()).ToList();
        var shared = portions[0].Where(p => IsShared(p.line, p.content)).Select(p => (p.line.Line, Portion: Of(p.line.Line, p.content))).ToList();
        var sharedLines = shared.Select(s => s.Line).ToHashSet();
        var sharedGrams = shared.Sum(s => s.Portion.Grams ?? 0);
        var sharedMillilitres = shared.Sum(s => s.Portion.Millilitres ?? 0);
        return new SharedPart
        {
            Jug = [.. shared.Select(s => Times(s.Portion, letters.Count * (1 + SpareShare)))],
            Glasses =
            [
                .. letters.Zip(portions, (letter, lines) =>
                {
                    var own = lines.Where(l => !sharedLines.Contains(l.line.Line) && l.content.Amount.Value != 0).ToList();
                    return new Glassful(
                        letter, sharedMillilitres, sharedGrams,
                        [.. own.Where(l => IsBeforeShaking(l.content)).Select(l => Of(l.line.Line, l.content))],
                        [.. own.Where(l => !IsBeforeShaking(l.content)).Select(l => Of(l.line.Line, l.content))]);
                }),
            ],
        };

        bool IsShared(PlacedLine line, LineContent content) => IsBeforeShaking(content) && content.Understood.Grams > 0 && !round.Differs(line);
    }

    private static bool IsBeforeShaking(LineContent line) => line.Place == Place.In && line.Joins == Joins.Mixed && line.Amount.Unit != Unit.Top;

    private static Portion Of(LineId line, LineContent content) => new(
        line, content.Text, content.Ingredient, content.Amount.Value, content.Amount.Unit, content.Understood.Millilitres, content.Understood.Grams);

    private static Portion Times(Portion portion, double times) =>
        portion with { Amount = portion.Amount * times, Millilitres = portion.Millilitres * times, Grams = portion.Grams * times };
}
