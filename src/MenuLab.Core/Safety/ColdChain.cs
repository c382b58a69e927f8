namespace MenuLab.Core.Safety;

/// <summary>When a hot prep must have cooled.</summary>
/// <param name="At21By">At 21 °C or colder by then.</param>
/// <param name="At5By">At 5 °C or colder by then.</param>
public readonly record struct CoolingDeadlines(DateTimeOffset At21By, DateTimeOffset At5By);

/// <summary>Temperatures and clocks of holding and cooling. Each check gives the cautions of the site's rules; none says that a prep is safe.</summary>
/// <remarks>
/// Source: FDA Food Code 2022, 3-501.14, 3-501.16, 3-501.19 (US; elsewhere shown as advice), and the UK food hygiene regulations, Schedule 4.
/// Figures stand in the rules TC-05 to TC-08, TC-12, TC-26 and TC-27.
/// </remarks>
public static class ColdChain
{
    /// <summary>A prep was found at a temperature.</summary>
    /// <param name="rules">The site's rules.</param>
    /// <param name="celsius">Its temperature, °C; NaN where nobody read it.</param>
    public static IReadOnlyList<Caution> Holding(SiteRules rules, double celsius) => rules.Check(SafetyFacts.None.With("cold_hold_celsius", celsius));

    /// <summary>A hot prep was cooled.</summary>
    /// <param name="rules">The site's rules.</param>
    /// <param name="hoursTo21">Hours from 57 to 21 °C; NaN where nobody noted them.</param>
    /// <param name="hoursTo5">Hours from 57 to 5 °C in total; NaN likewise.</param>
    public static IReadOnlyList<Caution> CooledFromHot(SiteRules rules, double hoursTo21, double hoursTo5) =>
        rules.Check(SafetyFacts.None.With("hours_57_to_21", hoursTo21).With("hours_57_to_5", hoursTo5));

    /// <summary>A prep made of things at room temperature was cooled.</summary>
    /// <param name="rules">The site's rules.</param>
    /// <param name="hoursTo5">Hours to 5 °C; NaN where nobody noted them.</param>
    public static IReadOnlyList<Caution> CooledFromRoom(SiteRules rules, double hoursTo5) => rules.Check(SafetyFacts.None.With("hours_room_to_5", hoursTo5));

    /// <summary>A prep stood out of cooling, from 5 °C or colder.</summary>
    /// <param name="rules">The site's rules.</param>
    /// <param name="hours">Hours; NaN where nobody noted them.</param>
    public static IReadOnlyList<Caution> StoodOut(SiteRules rules, double hours) =>
        rules.Check(SafetyFacts.None.With("hours_out_of_cooling", hours).With("hours_above_8", hours));

    /// <summary>When a prep that was at 57 °C must have cooled.</summary>
    /// <param name="book">The rules; TC-06 and TC-07 hold the hours.</param>
    /// <param name="at57">When it was at 57 °C.</param>
    public static CoolingDeadlines Deadlines(RuleBook book, DateTimeOffset at57) =>
        new(at57.AddHours(book.Rule("TC-06").Limit), at57.AddHours(book.Rule("TC-07").Limit));
}
