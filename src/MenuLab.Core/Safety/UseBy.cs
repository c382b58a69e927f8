using MenuLab.Core.Pantry;

namespace MenuLab.Core.Safety;

/// <summary>How long a type of prep is held.</summary>
/// <param name="Id">Row id.</param>
/// <param name="Key">Key of the type, e.g. "shrub".</param>
/// <param name="Name">The type in words.</param>
/// <param name="SourceDays">Days that a source gives, the day made counting as the first; NaN for none.</param>
/// <param name="PracticeDaysLow">Days of trade habit, the short end; NaN for none.</param>
/// <param name="PracticeDaysHigh">The long end; NaN for none.</param>
/// <param name="Hours">Hours instead of days; NaN for none.</param>
/// <param name="Storage">How it is kept.</param>
/// <param name="Source">Where it was read, or that there is no source.</param>
/// <param name="Status">How it became known.</param>
/// <param name="Note">What to mind.</param>
public sealed record UseWithinRule(
    string Id, string Key, string Name, double SourceDays, double PracticeDaysLow, double PracticeDaysHigh, double Hours, string Storage, string Source,
    FigureStatus Status, string Note)
{
    internal static UseWithinRule Read(RuleTable t) => new(
        t.Required("id"), t.Required("key"), t.Required("prep_type"), t.NumberOrNaN("source_days"), t.NumberOrNaN("practice_days_low"),
        t.NumberOrNaN("practice_days_high"), t.NumberOrNaN("hours"), t.Required("storage"), t.Required("source"), t.Word("status", SafetyRule.ReadStatus), t.Text("note"));
}

/// <summary>A stay in the freezer.</summary>
/// <param name="Frozen">The day it went in.</param>
/// <param name="Thawed">The day it came out; null while it is in.</param>
public readonly record struct FreezerStay(DateOnly Frozen, DateOnly? Thawed);

/// <summary>Last days of dated preps.</summary>
/// <remarks>
/// Source: FDA Food Code 2022, 3-501.17 and 3-501.18 (seen in a city notice: made 1 July, out on 7 July). The day made counts as the first; a blend keeps
/// the date of its oldest part; freezing pauses the count and does not reset it, and the day of thawing counts as a day (strict reading, MEMORY).
/// </remarks>
public static class DateMark
{
    /// <summary>The last day.</summary>
    /// <param name="made">The day made; of a blend the oldest of its parts.</param>
    /// <param name="days">Days held in all, 1 and up.</param>
    /// <param name="freezer">A stay in the freezer, or null.</param>
    /// <returns>The last day of use; null while it is frozen with days left.</returns>
    /// <exception cref="ArgumentException">Frozen before it was made, or thawed before it was frozen.</exception>
    public static DateOnly? LastDay(DateOnly made, int days, FreezerStay? freezer = null)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(days, 1);
        var withoutFreezing = made.AddDays(days - 1);
        if (freezer is not { } stay)
        {
            return withoutFreezing;
        }
        if (stay.Frozen < made || stay.Thawed < stay.Frozen)
        {
            throw new ArgumentException("A prep is made, then frozen, then thawed.", nameof(freezer));
        }
        var used = stay.Frozen.DayNumber - made.DayNumber + 1;
        return used >= days ? withoutFreezing : stay.Thawed?.AddDays(days - used - 1);
    }

    /// <summary>The day that a blend counts from: the oldest of its parts.</summary>
    /// <exception cref="ArgumentException">No part.</exception>
    public static DateOnly OfBlend(IReadOnlyCollection<DateOnly> made) => made.Count > 0 ? made.Min() : throw new ArgumentException("A blend has parts.", nameof(made));
}

/// <summary>What a suggested last day rests on.</summary>
public enum UseByBasis
{
    /// <summary>A source: the date mark, or the row's own.</summary>
    Source,
    /// <summary>Common practice, no source: flavour carries it, not safety.</summary>
    CommonPractice,
    /// <summary>The house's own shorter limit.</summary>
    House,
    /// <summary>The house's own longer limit, by a director's reason: marked.</summary>
    HouseLonger,
}

/// <summary>A suggested shelf life.</summary>
/// <param name="Days">Days held, the day made counting as the first; null where it is told in hours, or to be tested again.</param>
/// <param name="Hours">Hours instead; NaN for none.</param>
/// <param name="Basis">What it rests on.</param>
/// <param name="BasisWords">The basis in words: "source: ..." or "common practice, no source".</param>
/// <param name="Rule">The row of the prep's type, or null for none.</param>
/// <param name="Cautions">What is to be minded, among them a limit that the house stretches.</param>
public sealed record UseBySuggestion(int? Days, double Hours, UseByBasis Basis, string BasisWords, UseWithinRule? Rule, IReadOnlyList<Caution> Cautions)
{
    /// <summary>The house holds it longer than suggested: shown and printed as such.</summary>
    public bool IsMarked => Basis == UseByBasis.HouseLonger;

    /// <summary>The last day; null where there are no days.</summary>
    /// <param name="made">The day made; of a blend the oldest of its parts.</param>
    /// <param name="freezer">A stay in the freezer, or null.</param>
    public DateOnly? LastDay(DateOnly made, FreezerStay? freezer = null) => Days is { } days ? DateMark.LastDay(made, days, freezer) : null;

    /// <summary>Suggests how long a prep is held.</summary>
    /// <param name="type">Key of its type; null or unknown for none.</param>
    /// <param name="decision">How it is to be held; null where nobody decided, which counts as held cold.</param>
    /// <param name="rules">The site's rules, with the house's own shelf lives.</param>
    /// <returns>The shortest of what the date mark, the row's source and the short end of trade habit give; the house's own shorter limit wins, its longer one only with a reason.</returns>
    /// <remarks>
    /// Source: rules TC-09 and TC-15 and the use-within rows, each with its own. A prep that is held cold never gets more than the date mark without being marked.
    /// </remarks>
    public static UseBySuggestion Of(string? type, TcsDecision? decision, SiteRules rules)
    {
        var book = rules.Shipped;
        var rule = book.UseWithin.FirstOrDefault(u => u.Key == type);
        var heldCold = decision?.HoldCold != false;
        var dateMark = book.Rule("TC-09");
        (double Days, UseByBasis Basis, string Words) best = (double.NaN, UseByBasis.Source, "");
        if (heldCold)
        {
            Take(dateMark.Limit, UseByBasis.Source, $"source: {dateMark.Source.InWords}");
        }
        // A row's own date mark is for preps that are held cold; what was released keeps the row's habit.
        if (rule is not null && !double.IsNaN(rule.SourceDays) && (heldCold || rule.SourceDays != dateMark.Limit || double.IsNaN(rule.PracticeDaysLow)))
        {
            Take(rule.SourceDays, UseByBasis.Source, $"source: {rule.Source}");
        }
        if (rule is not null && !double.IsNaN(rule.PracticeDaysLow))
        {
            Take(rule.PracticeDaysLow, UseByBasis.CommonPractice, "common practice, no source");
        }
        var cautions = new List<Caution>();
        // What is told in hours stands out of cooling: days say nothing of it, the house's neither.
        if (rule is not null && !double.IsNaN(rule.Hours))
        {
            return new UseBySuggestion(null, rule.Hours, UseByBasis.Source, $"source: {rule.Source}", rule, cautions);
        }
        int? suggested = double.IsNaN(best.Days) ? null : (int)best.Days;
        var own = rules.House.ShelfLives.FirstOrDefault(h => h.PrepType == type);
        if (own is not null && (suggested is null || own.Days < suggested))
        {
            return new UseBySuggestion(own.Days, double.NaN, UseByBasis.House, "the house's own limit", rule, cautions);
        }
        if (own is not null && own.Days > suggested)
        {
            var sourced = SourceLimit(rule, heldCold, dateMark.Limit);
            var longerThanSource = own.Days > sourced;
            var facts = $"{rules.Format.Number(own.Days, 0)} days against {rules.Format.Number(longerThanSource ? sourced : suggested.Value, 0)}";
            if (own.Reason.Trim().Length >= CautionReasons.FewestCharacters)
            {
                cautions.Add(Longer(facts, longerThanSource, best.Words));
                return new UseBySuggestion(own.Days, double.NaN, UseByBasis.HouseLonger, $"longer than suggested, by a director's reason: {own.Reason.Trim()}", rule, cautions);
            }
            cautions.Add(Longer(facts, longerThanSource, best.Words) with
            {
                Text = $"Longer shelf life asked for: {facts}. It waits for a director's written reason; until then the suggestion stands.",
            });
        }
        return new UseBySuggestion(suggested, double.NaN, best.Basis, best.Words.Length > 0 ? best.Words : rule?.Source ?? "no rule", rule, cautions);

        void Take(double days, UseByBasis basis, string words)
        {
            if (double.IsNaN(best.Days) || days < best.Days)
            {
                best = (days, basis, words);
            }
        }
    }

    private static double SourceLimit(UseWithinRule? rule, bool heldCold, double dateMark)
    {
        var limit = heldCold ? dateMark : double.PositiveInfinity;
        return rule is null || double.IsNaN(rule.SourceDays) || (!heldCold && rule.SourceDays == dateMark) ? limit : Math.Min(limit, rule.SourceDays);
    }

    private static Caution Longer(string facts, bool longerThanSource, string basis) => new(
        "longer_shelf_life", $"Held longer than suggested: {facts}. {(longerThanSource ? "A source sets the shorter limit." : "The shorter figure is trade habit.")} It is marked on sheet and label.",
        [], $"{basis}; local codes decide")
    {
        Strength = longerThanSource ? CautionStrength.Strongest : CautionStrength.Mind,
        Trigger = "a shelf life of the house's own above the suggested one",
        Against = facts,
        Todo = "Keep to the shorter limit, or write the reason.",
        Status = FigureStatus.Assumed,
    };
}
