using MenuLab.Core.Drafts;
using MenuLab.Core.House;

namespace MenuLab.Core.Iterations;

/// <summary>In what two states of a line differ.</summary>
[Flags]
public enum LineAspects
{
    /// <summary>In nothing.</summary>
    None = 0,
    /// <summary>It came.</summary>
    Added = 1,
    /// <summary>It went.</summary>
    Removed = 2,
    /// <summary>How much.</summary>
    Amount = 4,
    /// <summary>Where it goes.</summary>
    Place = 8,
    /// <summary>When it joins.</summary>
    Joins = 16,
    /// <summary>At which temperature it starts.</summary>
    Start = 32,
    /// <summary>What is done to it.</summary>
    Treatment = 64,
    /// <summary>What the house reckons with: its composition, its price, what a dash or a piece of it holds. Nobody changed the line itself.</summary>
    Reckoned = 128,
}

/// <summary>A line before and after; unchanged lines are told too.</summary>
/// <param name="Before">The line before; null where it came.</param>
/// <param name="After">The line after; null where it went.</param>
/// <param name="What">In what they differ.</param>
public sealed record LineChange(SnapshotLine? Before, SnapshotLine? After, LineAspects What)
{
    // Figures that went through another unit and back differ in the last bits only.
    private const double Rounding = 1e-9;

    /// <summary>Nothing about it changed.</summary>
    public bool IsNothing => What == LineAspects.None;

    /// <summary>Name of the ingredient, as it stood last.</summary>
    public string Name => (After ?? Before)!.IngredientName;

    /// <summary>Where the line goes, or went.</summary>
    public Place Place => (After ?? Before)!.Line.Place;

    /// <summary>After less before, mL; what came or went counts whole; NaN where either is not known.</summary>
    public double MillilitresDifference => Of(After, l => l.Millilitres) - Of(Before, l => l.Millilitres);

    /// <summary>After less before, g; what came or went counts whole; NaN where either is not known.</summary>
    public double GramsDifference => Of(After, l => l.Grams) - Of(Before, l => l.Grams);

    /// <summary>The change of the amount in the unit typed, or in mL where that changed too: "+7.5 mL", "−2 drops"; "in" or "out" for a line that came or went; empty where the amount did not change.</summary>
    /// <param name="format">How the house writes figures.</param>
    public string AmountInWords(HouseFormat format) => ChangeWords.Difference(this, format);

    /// <summary>What changed about a line that stayed, beside its amount: "now on top", "from 22° instead of 4°".</summary>
    /// <param name="format">How the house writes figures.</param>
    public IReadOnlyList<string> BesidesInWords(HouseFormat format) => [.. ChangeWords.Besides(this, format)];

    /// <summary>A line that only one of two states has, or that both have.</summary>
    /// <exception cref="ArgumentException">Neither has it.</exception>
    public static LineChange Of(SnapshotLine? before, SnapshotLine? after) => (before, after) switch
    {
        (null, null) => throw new ArgumentException("A change has a line before or after.", nameof(after)),
        (null, _) => new LineChange(null, after, LineAspects.Added),
        (_, null) => new LineChange(before, null, LineAspects.Removed),
        var (b, a) => new LineChange(b, a, Differ(b, a)),
    };

    private static LineAspects Differ(SnapshotLine before, SnapshotLine after)
    {
        var (b, a) = (before.Line, after.Line);
        var sameTyped = b.Unit == a.Unit && Same(b.Amount, a.Amount) && Same(b.AmountLow, a.AmountLow) && Same(b.AmountHigh, a.AmountHigh);
        var sameAmount = sameTyped || SamePour(b, a);
        return When(LineAspects.Amount, !sameAmount)
            | When(LineAspects.Place, b.Place != a.Place)
            | When(LineAspects.Joins, b.Joins != a.Joins)
            | When(LineAspects.Start, !Same(b.StartCelsius, a.StartCelsius))
            | When(LineAspects.Treatment, b.Treatment != a.Treatment)
            | When(LineAspects.Reckoned, before.Composition != after.Composition || before.PricePerGram != after.PricePerGram || (sameAmount && !SameReckoned(b, a)));
    }

    // ¾ fl oz that is written as 22.5 mL is no change; a range against a figure is one.
    private static bool SamePour(DraftLine before, DraftLine after) =>
        before.Unit != after.Unit && before.IsTopUp == after.IsTopUp && double.IsFinite(before.Millilitres) && Same(before.Millilitres, after.Millilitres)
        && IsRange(before) == IsRange(after) && (!IsRange(before) || (Same(Low(before), Low(after)) && Same(High(before), High(after))));

    private static bool SameReckoned(DraftLine before, DraftLine after) => Same(before.Millilitres, after.Millilitres) && Same(before.Grams, after.Grams);

    private static bool IsRange(DraftLine line) => line.AmountLow < line.AmountHigh;

    private static double Low(DraftLine line) => line.AmountLow * line.Millilitres / line.Amount;

    private static double High(DraftLine line) => line.AmountHigh * line.Millilitres / line.Amount;

    private static LineAspects When(LineAspects aspect, bool differs) => differs ? aspect : LineAspects.None;

    private static bool Same(double left, double right) =>
        left.Equals(right) || Math.Abs(left - right) <= Rounding * Math.Max(Math.Abs(left), Math.Abs(right));

    private static double Of(SnapshotLine? line, Func<DraftLine, double> figure) => line is null ? 0 : figure(line.Line);
}
