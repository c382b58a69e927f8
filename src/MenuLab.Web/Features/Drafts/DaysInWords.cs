using MenuLab.Core.House;

namespace MenuLab.Web.Features.Drafts;

/// <summary>Days and instants as people say them, by the site's clock.</summary>
public static class DaysInWords
{
    /// <summary>How far off a day is that something is due: "in 5 days", "today", "3 days overdue".</summary>
    public static string Due(DateOnly due, DateOnly today) => (due.DayNumber - today.DayNumber) switch
    {
        0 => "today",
        1 => "tomorrow",
        > 1 and var days => $"in {days} days",
        -1 => "1 day overdue",
        var days => $"{-days} days overdue",
    };

    /// <summary>When something happened: "today, 14:02", "yesterday, 23:40", "14 Oct 2026, 18:05". After midnight it is still today until the site's day turns.</summary>
    public static string When(DateTimeOffset instant, DateTimeOffset now, Site site, HouseFormat format)
    {
        var day = site.DayOf(instant);
        var days = site.DayOf(now).DayNumber - day.DayNumber;
        var word = days switch { 0 => "today", 1 => "yesterday", _ => format.Day(day) };
        return $"{word}, {HouseFormat.Time(TimeOnly.FromDateTime(site.ClockAt(instant)))}";
    }
}
