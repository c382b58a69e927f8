namespace MenuLab.Core.Drafts.Rounds;

/// <summary>How long after pouring or bottling something is tasted.</summary>
public enum TasteMoment
{
    /// <summary>At once, in the glass.</summary>
    Minute0,
    /// <summary>After 5 minutes in the glass.</summary>
    Minute5,
    /// <summary>After 10 minutes in the glass.</summary>
    Minute10,
    /// <summary>From the bottle, on the day it was filled.</summary>
    Day0,
    /// <summary>A day later.</summary>
    Day1,
    /// <summary>Three days later.</summary>
    Day3,
    /// <summary>A week later.</summary>
    Day7,
}

/// <summary>Where a planned taste stands.</summary>
public enum TasteState
{
    /// <summary>Its time has not come.</summary>
    Later,
    /// <summary>Its time has come.</summary>
    Due,
    /// <summary>It was tasted.</summary>
    Tasted,
    /// <summary>Its time went by, and the next one's has come.</summary>
    Missed,
}

/// <summary>A planned taste in the glass.</summary>
/// <param name="Moment">Which.</param>
/// <param name="At">When it is due.</param>
/// <param name="State">Where it stands.</param>
public sealed record GlassTaste(TasteMoment Moment, DateTimeOffset At, TasteState State);

/// <summary>A planned taste from the bottle.</summary>
/// <param name="Moment">Which.</param>
/// <param name="On">The day it is due, in the bar's days.</param>
/// <param name="State">Where it stands.</param>
public sealed record BottleTaste(TasteMoment Moment, DateOnly On, TasteState State);

/// <summary>
/// When a pour is tasted again: 0, 5 and 10 minutes in the glass, and the day it was bottled and 1, 3 and 7 days later. Common
/// practice, no source. How a drink tastes after days says nothing about whether it is safe to keep.
/// </summary>
public static class StabilityTastes
{
    private static readonly (TasteMoment Moment, int Minutes)[] InGlass = [(TasteMoment.Minute0, 0), (TasteMoment.Minute5, 5), (TasteMoment.Minute10, 10)];

    private static readonly (TasteMoment Moment, int Days)[] InBottle = [(TasteMoment.Day0, 0), (TasteMoment.Day1, 1), (TasteMoment.Day3, 3), (TasteMoment.Day7, 7)];

    // A taste at ten minutes that nobody took is not due for ever.
    private static readonly TimeSpan GlassEnds = TimeSpan.FromMinutes(20);

    private const int BottleEndsAfterDays = 14;

    /// <summary>Minutes in the glass, or days in the bottle: what a plot puts below.</summary>
    public static (int Amount, bool IsDays) Passed(TasteMoment moment) =>
        moment <= TasteMoment.Minute10 ? (InGlass[(int)moment].Minutes, false) : (InBottle[moment - TasteMoment.Day0].Days, true);

    /// <summary>The tastes in the glass.</summary>
    /// <param name="pouredAt">When it was poured.</param>
    /// <param name="now">The time.</param>
    /// <param name="tasted">Moments of which there is a note.</param>
    public static IReadOnlyList<GlassTaste> Glass(DateTimeOffset pouredAt, DateTimeOffset now, IReadOnlySet<TasteMoment> tasted)
    {
        var due = InGlass.Select(m => pouredAt.AddMinutes(m.Minutes)).Append(pouredAt + GlassEnds).ToList();
        return [.. InGlass.Select((m, i) => new GlassTaste(m.Moment, due[i], State(m.Moment, tasted, now >= due[i], now >= due[i + 1])))];
    }

    /// <summary>The tastes from the bottle.</summary>
    /// <param name="bottledOn">The day it was bottled, in the bar's days.</param>
    /// <param name="today">The bar's day.</param>
    /// <param name="tasted">Moments of which there is a note.</param>
    public static IReadOnlyList<BottleTaste> Bottle(DateOnly bottledOn, DateOnly today, IReadOnlySet<TasteMoment> tasted)
    {
        var due = InBottle.Select(m => bottledOn.AddDays(m.Days)).Append(bottledOn.AddDays(BottleEndsAfterDays)).ToList();
        return [.. InBottle.Select((m, i) => new BottleTaste(m.Moment, due[i], State(m.Moment, tasted, today >= due[i], today >= due[i + 1])))];
    }

    /// <summary>What is to be tasted next in the glass: what is due, else what comes; null where nothing is left.</summary>
    public static GlassTaste? Next(IReadOnlyList<GlassTaste> tastes) => tastes.FirstOrDefault(t => t.State == TasteState.Due) ?? tastes.FirstOrDefault(t => t.State == TasteState.Later);

    /// <summary>What is to be tasted next from the bottle: what is due, else what comes; null where nothing is left.</summary>
    public static BottleTaste? Next(IReadOnlyList<BottleTaste> tastes) => tastes.FirstOrDefault(t => t.State == TasteState.Due) ?? tastes.FirstOrDefault(t => t.State == TasteState.Later);

    private static TasteState State(TasteMoment moment, IReadOnlySet<TasteMoment> tasted, bool hasCome, bool nextHasCome) =>
        tasted.Contains(moment) ? TasteState.Tasted : nextHasCome ? TasteState.Missed : hasCome ? TasteState.Due : TasteState.Later;
}
