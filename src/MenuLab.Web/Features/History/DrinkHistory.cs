using MenuLab.Core.Drafts;
using MenuLab.Core.House;
using MenuLab.Core.Iterations;
using MenuLab.Web.Features.House;

namespace MenuLab.Web.Features.History;

/// <summary>The iterations of a draft and what is on the bench now, as the rail shows them.</summary>
/// <param name="Draft">The draft.</param>
/// <param name="Name">Its name.</param>
/// <param name="Iterations">Oldest first.</param>
/// <param name="Now">What is on the bench.</param>
public sealed record DrinkHistory(DraftId Draft, string Name, IReadOnlyList<IterationCell> Iterations, BenchCell Now);

/// <summary>An iteration on the rail: only what lists hold, no body is read for it.</summary>
/// <param name="Id">Identity.</param>
/// <param name="Number">Its number.</param>
/// <param name="Parent">Number of the iteration it came from; null for the first.</param>
/// <param name="Reason">Why; may be empty.</param>
/// <param name="Day">The site's day.</param>
/// <param name="By">Name of who saved it.</param>
/// <param name="Figures">Its figures.</param>
/// <param name="DraftVersion">Version of the working copy that it saved.</param>
public sealed record IterationCell(IterationId Id, int Number, int? Parent, string Reason, DateOnly Day, string By, IterationFigures Figures, int DraftVersion)
{
    /// <summary>The iterations of a draft as the rail shows them, in their order.</summary>
    public static IReadOnlyList<IterationCell> Of(IReadOnlyList<Iteration> iterations, HouseBook book)
    {
        var numbers = iterations.ToDictionary(i => i.Id, i => i.Number);
        return
        [
            .. iterations.Select(i => new IterationCell(
                i.Id, i.Number, i.Parent is { } parent ? numbers[parent] : null, i.Reason, book.Site.DayOf(i.At), book.NameOf(i.By), i.Figures, i.DraftVersion)),
        ];
    }

    /// <summary>It does not follow the one before it.</summary>
    public bool IsTurned => Parent is { } parent && parent != Number - 1;

    /// <summary>"first", "from 2", or nothing where it follows the one before.</summary>
    public string From => Parent is not { } parent ? "first" : IsTurned ? $"from {HouseFormat.Plain.Number(parent, 0)}" : "";
}

/// <summary>What is on the bench, on the rail.</summary>
/// <param name="From">Number of the iteration it goes on from; null before the first.</param>
/// <param name="Changes">How many changes there are since; 0 before the first.</param>
/// <param name="InWords">The changes in one line; empty for none.</param>
/// <param name="Figures">Its figures.</param>
public sealed record BenchCell(int? From, int Changes, string InWords, IterationFigures Figures)
{
    /// <summary>"one change since 3", "nothing changed since 3", "not saved yet".</summary>
    public string Since => From is not { } from ? "not saved yet"
        : Changes switch { 0 => "nothing changed", 1 => "one change", _ => $"{HouseFormat.Plain.Number(Changes, 0)} changes" } + $" since {HouseFormat.Plain.Number(from, 0)}";
}
