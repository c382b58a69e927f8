using MenuLab.Core.Drafts;
using MenuLab.Core.House;
using MenuLab.Web.Features.House;

namespace MenuLab.Web.Features.Bench;

/// <summary>Edits in words, for whoever finds that somebody else was at work.</summary>
public static class EditWords
{
    /// <summary>What an edit did: "Verjus 15 mL → 22.5 mL".</summary>
    public static string Of(AppliedEdit applied, BenchView view, HouseBook book, Unit first) => (applied.Edit.Action, applied.Undo) switch
    {
        (AddLine add, _) => $"{Name(add.Content, book)} in ({Amount(add.Content, book, first)})",
        (RemoveLine, AddLine was) => $"{Name(was.Content, book)} out",
        (ChangeLine change, ChangeLine was) when change.Fields.HasFlag(LineFields.Amount) => $"{Name(was.Content, book)} {Amount(was.Content, book, first)} → {Amount(change.Content, book, first)}",
        (ChangeLine change, _) => $"{NameOf(change.Line, view)}: {Fields(change.Fields)}",
        (MoveLine move, _) => $"{NameOf(move.Line, view)} moved",
        (ChangeBuild change, _) => $"build: {Fields(change.Fields)}",
        (ChangeBrief, _) => "the brief",
        (Rename rename, _) => $"named {rename.Name}",
        (StartFrom { Iteration: { } number }, _) => $"started from {number}",
        (StartFrom, _) => "put the earlier lines back",
        (Stand stand, _) => stand.Standing switch { Standing.Parked => "parked it", Standing.Dropped => "dropped it", _ => "took it up again" },
        _ => "a change",
    };

    /// <summary>A collision in words, with both values.</summary>
    public static Clash ClashOf(Collision collision, AppliedEdit mine, BenchView view, HouseBook book, Unit first)
    {
        var who = book.NameOf(collision.Theirs.Edit.By);
        var when = HouseFormat.Time(TimeOnly.FromDateTime(book.Site.ClockAt(collision.Theirs.Edit.At)));
        var what = collision.Field.Line is { } line ? NameOf(line, view) : Field(collision.Field.Name);
        return new Clash(
            collision, mine, $"{what}: {who}, on another page at {when}, set it while you did.",
            Value(collision.Theirs.Edit.Action, collision.Field, book, first), Value(mine.Edit.Action, collision.Field, book, first));
    }

    private static string Value(EditAction action, EditField field, HouseBook book, Unit first) => (action, field.Name) switch
    {
        (ChangeLine change, "amount") => Amount(change.Content, book, first),
        (ChangeLine change, "text") => change.Content.Text,
        (ChangeLine change, "ingredient") => Name(change.Content, book),
        (ChangeLine change, "place") => change.Content.Place == Place.In ? "in the liquid" : LineWords.Of(change.Content.Place),
        (ChangeLine change, "joins") => LineWords.Of(change.Content.Joins),
        (ChangeLine change, "start") => book.Format.Degrees(change.Content.StartCelsius ?? double.NaN),
        (ChangeLine change, "treatment") => change.Content.Treatment.Length > 0 ? change.Content.Treatment : "no treatment",
        (ChangeBuild change, "build_method") => book.Stock.Catalogue.Method(change.Build.Method)?.Name ?? "no method",
        (ChangeBuild change, "build_glass") => book.Stock.Catalogue.Glass(change.Build.Glass)?.Name ?? "no glass",
        (ChangeBuild change, "build_seconds") => change.Build.Seconds is { } s ? $"{book.Format.Amount(s)} s" : "no time",
        (ChangeBuild change, "build_steps") => string.Join(" · ", change.Build.Steps),
        (ChangeBuild change, "build_ice") => book.Stock.Catalogue.Ice(change.Build.Ice)?.Name ?? "the usual ice",
        (ChangeBuild change, "build_served_on") => book.Stock.Catalogue.Ice(change.Build.ServedOn)?.Name ?? "no ice",
        (ChangeBuild change, "build_strain") => change.Build.Strain?.Replace('_', ' ') ?? "not said",
        (Rename rename, _) => rename.Name,
        (RemoveLine, _) => "taken out",
        (AddLine add, _) => $"in ({Amount(add.Content, book, first)})",
        (StartFrom { Iteration: { } number }, _) => $"iteration {number}",
        (MoveLine, _) => "the other place",
        (Stand stand, _) => stand.Standing switch { Standing.Parked => "parked", Standing.Dropped => "dropped", _ => "in the works" },
        _ => "the other value",
    };

    private static string Amount(LineContent content, HouseBook book, Unit first)
    {
        // An edit of the amount alone carries the millilitres of before; what it comes to is worked out as the draft does.
        if (Understanding.Of(content, book.Stock.Pantry, book.Stock.Measures).ToDraftLine() is not { } line)
        {
            return "as typed";
        }
        var words = new LineWords(book.Format, book.Grid, first);
        var amount = words.Amount(line);
        return amount.Length == 0 ? "no amount"
            : line.IsTopUp || amount.EndsWith(" g", StringComparison.Ordinal) ? amount
            : double.IsFinite(line.Millilitres) ? amount + (first == Unit.FluidOunce ? " fl oz" : " mL")
            : $"{amount} {words.Other(line)}".TrimEnd();
    }

    private static string Name(LineContent content, HouseBook book) =>
        content.Ingredient is { } id && book.Stock.Pantry.Find(id) is { } ingredient ? ingredient.Name : $"“{content.Text}”";

    private static string NameOf(LineId line, BenchView view) => view.Lines.FirstOrDefault(l => l.Id == line)?.Name ?? "A line";

    private static string Fields<T>(T fields)
        where T : struct, Enum =>
        string.Join(", ", Enum.GetValues<T>().Where(f => !f.Equals(default(T)) && fields.HasFlag(f)).Select(f => f.ToString() switch
        {
            nameof(BuildFields.ServedOn) => "what it is served on",
            nameof(LineFields.Joins) => "when it joins",
            nameof(LineFields.Start) => "where it starts",
            nameof(LineFields.Place) => "where it goes",
            nameof(LineFields.Text) => "its wording",
            var word => word.ToLowerInvariant(),
        }));

    private static string Field(string name) => name switch
    {
        "start" => "The whole drink",
        "name" => "The name",
        "style" => "The style",
        "standing" => "Where the work stands",
        _ when name.StartsWith("build_", StringComparison.Ordinal) => "The build",
        _ => "The brief",
    };
}
