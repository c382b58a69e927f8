namespace MenuLab.Core.House;

/// <summary>Identifies a site of the house.</summary>
/// <param name="Value">A version 7 Guid.</param>
public readonly record struct SiteId(Guid Value)
{
    /// <summary>A new id; later ids sort later.</summary>
    public static SiteId New() => new(Guid.CreateVersion7());
}

/// <summary>A place where the house works: it has its own prices, stock, clock and law (architecture 1.17, 1.18).</summary>
public sealed class Site
{
    /// <summary>Most characters in a site's name.</summary>
    public const int NameMaxLength = 80;

    /// <summary>The hour at which a site's day turns unless it says otherwise: a shift ends after midnight.</summary>
    public static TimeOnly UsualDayTurn { get; } = new(4, 0);

    private Site(SiteId id, string name, string timeZone, TimeOnly dayTurn, string currency, string jurisdiction)
    {
        Id = id;
        Name = name;
        TimeZone = timeZone;
        DayTurn = dayTurn;
        Currency = currency;
        Jurisdiction = jurisdiction;
    }

    /// <summary>Identity.</summary>
    public SiteId Id { get; private set; }

    /// <summary>Name as shown.</summary>
    public string Name { get; private set; }

    /// <summary>IANA time zone, e.g. "Europe/Lisbon".</summary>
    public string TimeZone { get; private set; }

    /// <summary>When its day turns.</summary>
    public TimeOnly DayTurn { get; private set; }

    /// <summary>ISO 4217 code, three capital letters.</summary>
    public string Currency { get; private set; }

    /// <summary>Which rules apply: "EU", "US", …; letters, digits and hyphens.</summary>
    public string Jurisdiction { get; private set; }

    /// <summary>A site.</summary>
    /// <returns>The site, or all that is wrong with what was given.</returns>
    public static Result<Site> Of(SiteId id, string? name, string? timeZone, TimeOnly dayTurn, string? currency, string? jurisdiction)
    {
        var site = new Site(id, "", "", dayTurn, "", "");
        return site.Change(name, timeZone, dayTurn, currency, jurisdiction);
    }

    /// <summary>Changes what the site goes by.</summary>
    /// <returns>This site, or all that is wrong with what was given; then nothing has changed.</returns>
    public Result<Site> Change(string? name, string? timeZone, TimeOnly dayTurn, string? currency, string? jurisdiction)
    {
        var problems = new List<Problem>();
        var trimmed = OneLine.Check(name, 1, NameMaxLength, nameof(Name), "a name", problems);
        var zone = timeZone?.Trim() ?? "";
        if (!TimeZoneInfo.TryFindSystemTimeZoneById(zone, out var found) || !found.HasIanaId)
        {
            problems.Add(new Problem(nameof(TimeZone), $"There is no IANA time zone \"{zone}\"; write it like Europe/Lisbon."));
        }
        var code = currency?.Trim() ?? "";
        if (code.Length != 3 || !code.All(char.IsAsciiLetterUpper))
        {
            problems.Add(new Problem(nameof(Currency), "Give an ISO 4217 code, three capital letters."));
        }
        var law = jurisdiction?.Trim() ?? "";
        if (law.Length is 0 or > 16 || !law.All(c => char.IsAsciiLetterOrDigit(c) || c == '-'))
        {
            problems.Add(new Problem(nameof(Jurisdiction), "Give a jurisdiction such as EU or US."));
        }
        if (problems.Count > 0)
        {
            return Result.Invalid<Site>(problems);
        }
        (Name, TimeZone, DayTurn, Currency, Jurisdiction) = (trimmed, zone, dayTurn, code, law);
        return Result.Ok(this);
    }

    /// <summary>The site's day at an instant: what is before its day turns still belongs to the day before.</summary>
    public DateOnly DayOf(DateTimeOffset instant) =>
        DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(instant, TimeZoneInfo.FindSystemTimeZoneById(TimeZone)).DateTime - DayTurn.ToTimeSpan());

    /// <summary>The clock on the site's wall at an instant.</summary>
    public DateTime ClockAt(DateTimeOffset instant) => TimeZoneInfo.ConvertTime(instant, TimeZoneInfo.FindSystemTimeZoneById(TimeZone)).DateTime;
}
