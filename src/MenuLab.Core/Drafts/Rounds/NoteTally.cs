namespace MenuLab.Core.Drafts.Rounds;

/// <summary>How often each wish was said on one axis.</summary>
/// <param name="Axis">The axis.</param>
/// <param name="Less">Tasters who want less.</param>
/// <param name="Right">Tasters to whom it is right.</param>
/// <param name="More">Tasters who want more.</param>
public sealed record AxisTally(TasteAxis Axis, int Less, int Right, int More)
{
    /// <summary>How many want it changed.</summary>
    public int Changes => Less + More;

    /// <summary>What most want; null where as many want more as want less and none or fewer find it right.</summary>
    public Wish? Wanted => More > Less && More >= Right ? Wish.More : Less > More && Less >= Right ? Wish.Less : Less == More && Changes > 0 && Right < Changes ? null : Wish.Right;
}

/// <summary>The informal notes of one pour, counted: of each taster and moment the last word on each axis.</summary>
/// <param name="Tastes">How many tastes: tasters, each once per moment.</param>
/// <param name="Axes">The axes on which something was said, those that most want changed first.</param>
/// <param name="No">Tasters who say no.</param>
/// <param name="Maybe">Tasters who say maybe.</param>
/// <param name="Yes">Tasters who say yes.</param>
public sealed record NoteTally(int Tastes, IReadOnlyList<AxisTally> Axes, int No, int Maybe, int Yes)
{
    /// <summary>How it is shown, so that nobody takes it for a panel's finding: "informal, 2 tastes"; empty for none.</summary>
    public string InWords => Tastes switch { 0 => "", 1 => "informal, 1 taste", _ => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"informal, {Tastes} tastes") };

    /// <summary>Counts the notes of one pour.</summary>
    /// <param name="notes">Notes of any pours, in any order.</param>
    /// <param name="letter">The pour.</param>
    /// <param name="moment">Only those of this moment; null for all.</param>
    public static NoteTally Of(IReadOnlyCollection<WrittenNote> notes, PourLetter letter, TasteMoment? moment = null)
    {
        var tastes = WrittenNote.ThatStand(notes).Where(n => n.Note.Letter == letter && (moment is null || n.Note.Moment == moment))
            .SelectMany(n => n.Tasters.Select(t => (Taste: (t, n.Note.Moment), n.Note))).ToList();
        var axes = tastes.SelectMany(t => t.Note.Wishes.Select(w => (t.Taste, w.Axis, w.Wish)))
            .GroupBy(w => (w.Taste, w.Axis)).Select(g => g.Last())
            .GroupBy(w => w.Axis)
            .Select(g => new AxisTally(g.Key, g.Count(w => w.Wish == Wish.Less), g.Count(w => w.Wish == Wish.Right), g.Count(w => w.Wish == Wish.More)))
            .OrderByDescending(a => a.Changes).ThenBy(a => a.Axis);
        var verdicts = tastes.Where(t => t.Note.Verdict is not null).GroupBy(t => t.Taste).Select(g => g.Last().Note.Verdict!.Value).ToList();
        return new NoteTally(
            tastes.Select(t => t.Taste).Distinct().Count(), [.. axes],
            verdicts.Count(v => v == Verdict.No), verdicts.Count(v => v == Verdict.Maybe), verdicts.Count(v => v == Verdict.Yes));
    }
}
