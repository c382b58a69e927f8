
namespace MenuLab.Core.Safety;

/// <summary>Which interaction table is read.</summary>
public enum TcsTable
{
    /// <summary>Table A: heat-treated to kill vegetative cells and packaged afterwards.</summary>
    A,
    /// <summary>Table B: not heated, or heated and left open. Nearly every bar prep.</summary>
    B,
}

/// <summary>What a box of the tables says. No box says "safe".</summary>
public enum TcsResult
{
    /// <summary>No time and temperature control required by the US table; says nothing about mould, acid-proof pathogens or quality.</summary>
    NoHold,
    /// <summary>A product assessment is required: held cold until a laboratory or process authority says otherwise.</summary>
    Assessment,
}

/// <summary>A box of the tables, with edges that are in or out; NaN for no edge.</summary>
/// <param name="Id">Row id.</param>
/// <param name="Table">Which table.</param>
/// <param name="WaterActivity">Edges by water activity.</param>
/// <param name="Ph">Edges by pH.</param>
/// <param name="Result">What it says.</param>
/// <param name="Source">Who says so.</param>
public sealed record TcsBox(string Id, TcsTable Table, TcsEdges WaterActivity, TcsEdges Ph, TcsResult Result, string Source)
{
    internal static TcsBox Read(RuleTable t) => new(
        t.Required("id"), t.Word<TcsTable>("table", w => w switch { "A" => TcsTable.A, "B" => TcsTable.B, _ => null }), Edges(t, "aw"), Edges(t, "ph"),
        t.Word<TcsResult>("result", w => w switch { "no_hold" => TcsResult.NoHold, "assessment" => TcsResult.Assessment, _ => null }),
        $"{t.Required("source")} {t.Required("section")} ({t.Required("edition")})");

    private static TcsEdges Edges(RuleTable t, string of) =>
        new(t.NumberOrNaN(of + "_min"), t.Flag(of + "_min_inclusive"), t.NumberOrNaN(of + "_max"), t.Flag(of + "_max_inclusive"));
}

/// <summary>Two edges.</summary>
/// <param name="Low">Lower edge, or NaN.</param>
/// <param name="LowIsIn">The lower edge belongs to the box.</param>
/// <param name="High">Upper edge, or NaN.</param>
/// <param name="HighIsIn">The upper edge belongs to the box.</param>
public readonly record struct TcsEdges(double Low, bool LowIsIn, double High, bool HighIsIn)
{
    /// <summary>A figure lies between them.</summary>
    public bool Hold(double figure) =>
        (double.IsNaN(Low) || figure > Low || (LowIsIn && figure == Low)) && (double.IsNaN(High) || figure < High || (HighIsIn && figure == High));
}

/// <summary>The two interaction tables of pH and water activity.</summary>
/// <remarks>
/// Source: FDA Food Code 2022, 1-201.10(B), definition of time/temperature control for safety food, Tables A and B; seen in state adoptions
/// that carry both tables. US law; elsewhere an indicator only. Valid for: a homogeneous whole prep, pH 0 to 14, water activity 0 to 1. Error: none, a look-up.
/// </remarks>
public static class TcsTables
{
    /// <summary>Table A only if heated and then packaged; unknown counts as not.</summary>
    public static TcsTable Choose(bool? heatTreated, bool? packagedAfter) => heatTreated == true && packagedAfter == true ? TcsTable.A : TcsTable.B;

    /// <summary>The box that a pair of figures falls in, as it stands.</summary>
    /// <exception cref="ArgumentOutOfRangeException">pH outside 0 to 14, water activity outside 0 to 1, or NaN.</exception>
    public static TcsBox Box(RuleBook book, TcsTable table, double ph, double waterActivity)
    {
        var (p, a) = (Guard.InRange(ph, 0, 14), Guard.InRange(waterActivity, 0, 1));
        return book.TcsBoxes.First(b => b.Table == table && b.Ph.Hold(p) && b.WaterActivity.Hold(a));
    }

    /// <summary>What the table says when one figure or both may be missing: whatever the missing one could be, the strictest of it.</summary>
    /// <param name="book">The rules.</param>
    /// <param name="table">Which table.</param>
    /// <param name="ph">pH, or null.</param>
    /// <param name="waterActivity">Water activity, or null.</param>
    public static TcsResult Strictest(RuleBook book, TcsTable table, double? ph, double? waterActivity) =>
        book.TcsBoxes.Any(b => b.Table == table && b.Result == TcsResult.Assessment
            && (ph is not { } p || b.Ph.Hold(p)) && (waterActivity is not { } a || b.WaterActivity.Hold(a)))
            ? TcsResult.Assessment : TcsResult.NoHold;
}

/// <summary>How a reading came to be.</summary>
public enum ReadingOrigin
{
    /// <summary>A meter's figure for this batch.</summary>
    Measured,
    /// <summary>Worked out from the composition: good for taste, never for holding.</summary>
    Computed,
    /// <summary>From a list of foods, or a label.</summary>
    Listed,
}

/// <summary>A pH or a water activity with how it came to be.</summary>
/// <param name="Value">pH 0 to 14, or water activity 0 to 1.</param>
/// <param name="Origin">How.</param>
/// <param name="On">Day of a measured one.</param>
public readonly record struct SafetyReading(double Value, ReadingOrigin Origin, DateOnly? On = null);

/// <summary>What is known of a prep when its holding is decided. A reading or a heating that nobody tells of counts as missing, which gives the stricter answer.</summary>
public sealed record PrepToHold
{
    /// <summary>Unopened, commercially processed, sealed and shelf-stable.</summary>
    public bool IsUnopenedShelfStable { get; init; }

    /// <summary>pH of the finished whole prep.</summary>
    public SafetyReading? Ph { get; init; }

    /// <summary>Water activity of the finished whole prep.</summary>
    public SafetyReading? WaterActivity { get; init; }

    /// <summary>Heated enough to kill vegetative cells.</summary>
    public bool? IsHeatTreated { get; init; }

    /// <summary>Packaged after that, hot and sealed.</summary>
    public bool? IsPackagedAfter { get; init; }

    /// <summary>Holds animal food, cooked plant food, raw seed sprouts, cut melon, leafy greens or tomato, or garlic in oil.</summary>
    public bool HoldsNamedFood { get; init; }

    /// <summary>Garlic, herb, chilli or vegetable in oil: a bulk pH says nothing about the water inside.</summary>
    public bool IsOilInfusion { get; init; }

    /// <summary>Acid was added so that it need not be chilled (not for taste).</summary>
    public bool IsAcidAddedToAvoidCold { get; init; }

    /// <summary>Vacuum bag, sous-vide, sealed jar, under oil, nitrogen keg.</summary>
    public bool IsReducedOxygen { get; init; }

    /// <summary>Somebody counts on its alcohol to keep it.</summary>
    public bool IsKeptByItsAlcohol { get; init; }
}

/// <summary>How a prep is to be held, with why.</summary>
/// <param name="HoldCold">It is to be held cold and dated.</param>
/// <param name="Table">The table that was read.</param>
/// <param name="AsRead">What the table says of the readings as they stand, computed ones too: where it may go once measured; null where a figure is missing.</param>
/// <param name="Facts">The flags that the decision raised.</param>
/// <param name="Cautions">Why, the strongest first.</param>
/// <param name="Sentence">In words, for the place.</param>
public sealed record TcsDecision(bool HoldCold, TcsTable Table, TcsResult? AsRead, SafetyFacts Facts, IReadOnlyList<Caution> Cautions, string Sentence)
{
    /// <summary>Decides how a prep is held.</summary>
    /// <param name="prep">What is known of it.</param>
    /// <param name="rules">The site's rules.</param>
    /// <returns>The decision. It never says that a prep is safe: it says whether the tables require it to be held cold.</returns>
    /// <remarks>
    /// Order: sealed and unopened; readings (a computed or listed pH counts as missing, a computed water activity points the way and releases nothing);
    /// named foods; the table; acid added to escape the cold; reduced oxygen; within 0.1 pH or 0.01 water activity of an edge the stricter box (house
    /// margin); no credit for alcohol. Source: FDA Food Code 2022, 1-201.10(B), 3-502.11, 3-502.12.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A reading outside its scale.</exception>
    public static TcsDecision Of(PrepToHold prep, SiteRules rules)
    {
        var book = rules.Shipped;
        var (ph, aw) = (Checked(prep.Ph, 14), Checked(prep.WaterActivity, 1));
        var table = TcsTables.Choose(prep.IsHeatTreated, prep.IsPackagedAfter);
        TcsResult? asRead = ph is null && aw is null ? null : TcsTables.Strictest(book, table, ph, aw);
        if (prep.IsUnopenedShelfStable)
        {
            return new TcsDecision(false, table, asRead, SafetyFacts.None, [], "Sealed and shelf-stable as bought: no cold hold until it is opened; then decide again.");
        }

        var facts = SafetyFacts.None;
        double? measuredPh = prep.Ph is { Origin: ReadingOrigin.Measured } ? ph : null;
        double? measuredAw = prep.WaterActivity is { Origin: ReadingOrigin.Measured } ? aw : null;
        if (prep.Ph is { Origin: not ReadingOrigin.Measured })
        {
            facts = facts.With("ph_computed", true);
        }
        if (prep.WaterActivity is { Origin: not ReadingOrigin.Measured })
        {
            facts = facts.With("aw_computed", true);
        }

        var byReadings = TcsTables.Strictest(book, table, measuredPh, measuredAw);
        // The tables grow stricter with either figure, so the strictest box within the margin is the one at its upper corner.
        var nearEdge = TcsTables.Strictest(book, table, Raised(measuredPh, book.Rule("TC-24").Limit, 14), Raised(measuredAw, book.Rule("TC-24-AW").Limit, 1));
        var held = nearEdge == TcsResult.Assessment;
        if (held && byReadings == TcsResult.NoHold)
        {
            if (TcsTables.Strictest(book, table, Raised(measuredPh, book.Rule("TC-24").Limit, 14), measuredAw) == TcsResult.Assessment)
            {
                facts = facts.With("ph_to_edge", Distance(book, table, measuredPh!.Value, b => b.Ph));
            }
            else
            {
                facts = facts.With("aw_to_edge", measuredAw is { } a ? Distance(book, table, a, b => b.WaterActivity) : double.NaN);
            }
        }
        else if (held)
        {
            facts = facts.With(measuredPh is null || measuredAw is null ? "tcs_reading_missing" : "tcs_assessment_needed", true);
        }
        if (table == TcsTable.A)
        {
            facts = facts.With("tcs_table_a", true);
        }
        if (prep.HoldsNamedFood && held)
        {
            facts = facts.With("tcs_named_food", true);
        }
        if (prep.IsOilInfusion)
        {
            held = true;
            facts = facts.With("tcs_named_food", true);
        }
        if (prep.IsAcidAddedToAvoidCold)
        {
            held = true;
            facts = facts.With("acid_to_avoid_cold", true);
        }
        if (prep.IsReducedOxygen)
        {
            facts = facts.With("reduced_oxygen", true);
        }
        if (prep.IsKeptByItsAlcohol)
        {
            facts = facts.With("alcohol_instead_of_cold", true);
        }
        facts = facts.With("cold_hold", held).With("release_rests_on_reading", !held);
        return new TcsDecision(held, table, asRead, facts, rules.Check(facts), Words(held, rules));
    }

    private static double? Checked(SafetyReading? reading, double most) => reading is { } r ? Guard.InRange(r.Value, 0, most, "reading") : null;

    // To the ninth decimal, so that 4.1 and 0.1 make 4.2.
    private static double? Raised(double? figure, double by, double most) => figure is { } f ? Math.Min(Math.Round(f + by, 9), most) : null;

    private static double Distance(RuleBook book, TcsTable table, double figure, Func<TcsBox, TcsEdges> edges) => book.TcsBoxes
        .Where(b => b.Table == table)
        .SelectMany(b => new[] { edges(b).Low, edges(b).High })
        .Where(edge => !double.IsNaN(edge))
        .Min(edge => Math.Round(Math.Abs(edge - figure), 9));

    private static string Words(bool held, SiteRules rules)
    {
        var cold = rules.Format.Degrees(rules.Shipped.Rule("TC-05").Limit);
        var days = rules.Format.Number(rules.Shipped.Rule("TC-09").Limit, 0);
        if (held)
        {
            return $"Hold cold, {cold} or colder, and date it: {days} days, the day it is made counting as the first.";
        }
        return rules.Where == Jurisdictions.UnitedStates
            ? "No cold hold required by the Food Code tables on these readings; that says nothing of mould, flavour or what fresh juice may carry. Local codes decide."
            : "No US hold required on these readings; show your own hazard plan. Local codes decide.";
    }
}
