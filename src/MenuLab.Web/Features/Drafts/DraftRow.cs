using MenuLab.Core.Balance;
using MenuLab.Core.Drafts;
using MenuLab.Core.House;
using MenuLab.Core.Iterations;
using MenuLab.Core.Quantities;
using MenuLab.Data.Drafts;
using MenuLab.Web.Features.House;

namespace MenuLab.Web.Features.Drafts;

/// <summary>A draft as a row of the list, in the house's words.</summary>
public sealed record DraftRow
{
    /// <summary>Identity.</summary>
    public required DraftId Id { get; init; }

    /// <summary>Name.</summary>
    public required string Name { get; init; }

    /// <summary>Where it stands.</summary>
    public required Standing Standing { get; init; }

    /// <summary>Version of the working copy that this row was read from.</summary>
    public required int Version { get; init; }

    /// <summary>Why it stands there; empty where nobody said.</summary>
    public string Reason { get; init; } = "";

    /// <summary>What it is for: slot, style, claim, as far as the brief says.</summary>
    public IReadOnlyList<string> For { get; init; } = [];

    /// <summary>The day it must be ready; empty where open.</summary>
    public string DueDay { get; init; } = "";

    /// <summary>How far off that day is, in words; empty where it is open, or nobody works on it.</summary>
    public string Due { get; init; } = "";

    /// <summary>That day is past, and it is still in the works.</summary>
    public bool IsOverdue { get; init; }

    /// <summary>When it last changed, in words.</summary>
    public required string Changed { get; init; }

    /// <summary>Who changed it last.</summary>
    public required string ChangedBy { get; init; }

    /// <summary>How many iterations it has.</summary>
    public required int Iterations { get; init; }

    /// <summary>Sugar of the last iteration, without its unit; empty where there is no iteration.</summary>
    public string Sugar { get; init; } = "";

    /// <summary>Acid of the last iteration, without its unit.</summary>
    public string Acid { get; init; } = "";

    /// <summary>Strength of the last iteration, without its unit.</summary>
    public string Strength { get; init; } = "";

    /// <summary>What the priced lines of the last iteration cost.</summary>
    public string Cost { get; init; } = "";

    /// <summary>All words a search may find it by, as databases search.</summary>
    public required string Searched { get; init; }

    /// <summary>The row of a listing.</summary>
    public static DraftRow Of(DraftListing listing, HouseBook book, DateTimeOffset now)
    {
        var format = book.Format;
        var brief = listing.Brief;
        string[] purpose = [brief.Slot, Styles.NameOf(listing.Style), brief.Claim];
        var figures = listing.LastFigures;
        return new DraftRow
        {
            Id = listing.Id,
            Name = listing.Name,
            Standing = listing.Standing,
            Version = listing.Version,
            Reason = listing.StandingReason,
            For = [.. purpose.Where(text => text.Length > 0)],
            DueDay = brief.Due is { } due ? format.Day(due) : "",
            Due = brief.Due is { } day && listing.Standing == Standing.InTheWorks ? DaysInWords.Due(day, book.Site.DayOf(now)) : "",
            IsOverdue = listing.Standing == Standing.InTheWorks && brief.Due < book.Site.DayOf(now),
            Changed = DaysInWords.When(listing.ChangedAt, now, book.Site, format),
            ChangedBy = book.NameOf(listing.ChangedBy),
            Iterations = listing.Iterations,
            Sugar = figures is null ? "" : Figure(figures, Metric.Sugar, figures.Sugar, format),
            Acid = figures is null ? "" : Figure(figures, Metric.Acid, figures.Acid, format),
            Strength = figures is null ? "" : Figure(figures, Metric.Abv, figures.Abv, format),
            Cost = figures is null ? "" : format.Money(figures.Cost ?? double.NaN, book.Site.Currency),
            Searched = SearchName.Of(string.Join(' ', [listing.Name, .. purpose, brief.Flavour, listing.StandingReason])),
        };
    }

    // Lists hold no ranges; three figures are what a list can stand for. Acid, and strength near a claim's limit, need their second decimal.
    private static string Figure(IterationFigures figures, Metric metric, double? value, HouseFormat format) =>
        // The stored share is the larger of sugar's and acid's; strength may know more, and then says "at least" a little too often.
        format.Value(new Estimate(value ?? double.NaN, value ?? double.NaN, value ?? double.NaN, Metrics.Info(metric).Unit, figures.Unknown ?? 0), metric == Metric.Acid || value < 1 ? 2 : 1);
}
