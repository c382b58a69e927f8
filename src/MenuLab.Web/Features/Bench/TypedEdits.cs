using MenuLab.Core;
using MenuLab.Core.Drafts;
using MenuLab.Core.Drafts.Reading;
using MenuLab.Core.House;
using MenuLab.Web.Features.Drafts;
using MenuLab.Web.Features.House;

namespace MenuLab.Web.Features.Bench;

/// <summary>What a text typed on the bench does to the working copy.</summary>
public static class TypedEdits
{
    private const LineFields Measured = LineFields.Ingredient | LineFields.Amount;

    /// <summary>The edits of a text that was read for this drink. Nothing that was typed is dropped: what cannot be read is kept as typed.</summary>
    public static IReadOnlyList<EditAction> Of(BenchView view, ReadDrink read, HouseBook book)
    {
        var typed = IncomingDrink.Of(read);
        var edits = BuildEdits(view, typed);
        if (read is { Lines: [var only], Questions: [], Unread: [] } && JoinsLine(view, only) is { } onto)
        {
            return [.. edits, onto.Edit];
        }
        var after = view.Lines.Count > 0 ? view.Lines[^1].Id : (LineId?)null;
        // The draft has its name; a line that reads like one is kept as typed, since nobody typed it for nothing.
        var named = read.Name.Length > 0 ? new[] { LineContent.KeptAsTyped(read.Name) } : [];
        foreach (var content in named.Concat(typed.Lines.Select(l => l.Content)))
        {
            var add = new AddLine(LineId.New(), content, after);
            after = add.Line;
            edits.Add(add);
        }
        return edits;
    }

    /// <summary>The line of the drink that a read line would be added to, since it is the same thing in the same unit; null for none.</summary>
    public static (BenchLine Line, Func<LineWords, string> Amount, ChangeLine Edit)? JoinsLine(BenchView view, DraftLine read)
    {
        if (read.IsTopUp || double.IsNaN(read.Amount) || read.AmountLow < read.AmountHigh || read.Place != Place.In || read.Treatment.Length > 0)
        {
            return null;
        }
        var same = view.Lines.FirstOrDefault(l =>
            l.Content.Ingredient == read.Ingredient && l.Content.Place == read.Place && Adds(l.Content, read) is not null && l.Content.Amount is { Value: not null } typed && !(typed.Low < typed.High)
            && l.Content.Treatment.Length == 0);
        if (same is null)
        {
            return null;
        }
        var amount = new TypedAmount(same.Content.Amount.Value + Adds(same.Content, read), null, null, same.Content.Amount.Unit);
        var content = same.Content with { Amount = amount };
        return (same, words => Written(words, content), new ChangeLine(same.Id, LineFields.Amount, content));
    }

    /// <summary>The edit that a typed amount comes to: a bare number keeps the unit that the cell shows, anything else is read as on a line.</summary>
    public static Result<ChangeLine> Amount(BenchView view, BenchLine line, string typed, Unit first, HouseBook book)
    {
        if (line.Content.Ingredient is not { } id || book.Stock.Pantry.Find(id) is not { } ingredient)
        {
            return Invalid("This line is kept as typed; say what it is first.");
        }
        var number = HouseParse.Number(typed);
        if (number.Outcome == NumberOutcome.TwoReadings)
        {
            return Invalid(number.Echo);
        }
        if (number.IsRead)
        {
            return number.Value < 0 ? Invalid("An amount is zero or more. To take the line away, remove it.")
                : number.Value > Draft.LargestAmount ? Invalid("An amount is at most a million.")
                : Result.Ok(Change(line, new TypedAmount(number.Value, null, null, ShownUnit(line.Content, first))));
        }
        var read = book.Reader.Read($"{typed} {ingredient.Name}", new ReadSettings { BareNumber = first, Method = view.Build.Method });
        return read is { Lines: [var meant], Questions: [], Unread: [] } && meant.Ingredient == id
            ? Result.Ok(new ChangeLine(line.Id, LineFields.Amount, line.Content with { Amount = LineContent.Of(meant).Amount }))
            : Invalid($"“{typed}” is no amount. Write one such as 22.5, 3/4 oz, 2 dashes or top.");

        static Result<ChangeLine> Invalid(string message) => Result.Invalid<ChangeLine>(new Problem("amount", message));
    }

    /// <summary>A line that is written anew in place of an old one; null where the text does not read as one line.</summary>
    public static ChangeLine? Rewritten(BenchLine line, ReadDrink read) =>
        read is { Lines: [var meant], Questions: [], Unread: [] }
            ? new ChangeLine(line.Id, Measured | LineFields.Text | LineFields.Place | LineFields.Joins | LineFields.Start | LineFields.Treatment, LineContent.Of(meant))
            : null;

    /// <summary>The line as one of the answers to its question would have it.</summary>
    public static ChangeLine Answered(BenchLine line, DraftLine meant) =>
        new(line.Id, Measured | LineFields.Place | LineFields.Joins | LineFields.Start | LineFields.Treatment, LineContent.Of(meant) with { Text = line.Content.Text });

    // How much a read line adds to one in the drink, in that one's unit; null where the two cannot be added.
    private static double? Adds(LineContent there, DraftLine read) =>
        there.Amount.Unit == read.Unit ? read.Amount
        : IsPoured(there.Amount.Unit) && IsPoured(read.Unit) && there.Understood.Millilitres is > 0 and { } millilitres
            ? Math.Round(read.Millilitres * there.Amount.Value!.Value / millilitres, 4)
        : null;

    private static bool IsPoured(Unit unit) => unit is Unit.Millilitre or Unit.Centilitre or Unit.Litre or Unit.FluidOunce;

    private static ChangeLine Change(BenchLine line, TypedAmount amount) => new(line.Id, LineFields.Amount, line.Content with { Amount = amount });

    // What the cell shows in the house's unit is also typed in it; pieces, dashes and grams keep their own.
    private static Unit ShownUnit(LineContent content, Unit first) => content.Amount.Unit switch
    {
        Unit.Top or Unit.None or Unit.Rinse => first,
        Unit.Kilogram or Unit.WeightOunce or Unit.Pound or Unit.Pinch => Unit.Gram,
        Unit.Gram or Unit.Piece or Unit.Leaf or Unit.Sprig or Unit.Slice or Unit.Wedge or Unit.Peel or Unit.Cube => content.Amount.Unit,
        _ => content.Understood.Millilitres is null ? content.Amount.Unit : first,
    };

    private static string Written(LineWords words, LineContent content) =>
        $"{words.Format.Amount(content.Amount.Value ?? double.NaN)} {LineWords.Word(content.Amount.Unit, content.Amount.Value ?? 1)}".TrimEnd();

    private static List<EditAction> BuildEdits(BenchView view, IncomingDrink typed)
    {
        var fields = EditFields.Said(typed.Build);
        return fields == BuildFields.None ? [] : [new ChangeBuild(fields, typed.Build with { Steps = [.. view.Build.Steps, .. typed.Build.Steps] })];
    }
}
