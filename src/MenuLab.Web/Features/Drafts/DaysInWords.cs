using MenuLab.Core.House;

namespace MenuLab.Web.Features.Drafts;

/// <summary>Days and instants as people say them, by the site's clock.</summary>
public static class DaysInWords
{
    /// <summary>A day that something is due: "due 20 Nov 2026, in 5 days"; "3 days overdue, 20 Nov 2026".</summary>
    /// <param name="due">The day.</param>
    /// <param name="today">The site's day.</param>
    /// <param name="format">How days are written.</param>
    /// <param name="counts">Days are counted; else the day alone is told.</param>
    public static string Due(DateOnly due, DateOnly today, HouseFormat format, bool counts)
    {
        var days = due.DayNumber - today.DayNumber;
        return !counts ? $"due {format.Day(due)}" : days switch
        {
            0 => "due today",
            1 => "due tomorrow",
            > 1 => $"due {format.Day(due)}, in {days} days",
            -1 => $"1 day overdue, {format.Day(due)}",
            _ => $"{-days} days overdue, {format.Day(due)}",
        };
    }

    /// <summary>When something happened: "today, 14:02", "yesterday, 23:40", "14 Oct 2026, 18:05". After midnight it is still today until the site's day turns.</summary>
    public static string When(DateTimeOffset instant, DateTimeOffset now, Site site, HouseFormat format)
    {
        var day = site.DayOf(instant);
        var days = site.DayOf(now).DayNumber - day.DayNumber;
        var word = days switch { 0 => "today", 1 => "yesterday", _ => format.Day(day) };
        return $"{word}, {HouseFormat.Time(TimeOnly.FromDateTime(site.ClockAt(instant)))}";
    }
}
