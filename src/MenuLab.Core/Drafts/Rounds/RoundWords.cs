using MenuLab.Core.House;
using MenuLab.Core.Pantry;

namespace MenuLab.Core.Drafts.Rounds;

/// <summary>What a pour changed and what was said of it, in a few words. The one place where they are put.</summary>
public static class RoundWords
{
    private const int NotesTold = 3;
    private const int WordsToldMaxLength = 80;

    /// <summary>A wish in words: "more sour wanted", "finish short", "sour right".</summary>
    public static string Of(AxisWish wish) => (wish.Axis, wish.Wish) switch
    {
        (TasteAxis.Finish, Wish.More) => "finish short",
        (TasteAxis.Finish, Wish.Less) => "finish too long",
        (TasteAxis.Cold, Wish.More) => "colder wanted",
        (TasteAxis.Cold, Wish.Less) => "less cold wanted",
        (TasteAxis.Watery, Wish.Less) => "too watery",
        (TasteAxis.Watery, Wish.More) => "more water wanted",
        var (axis, Right) when Right == Wish.Right => $"{Word(axis)} right",
        var (axis, more) => $"{(more == Wish.More ? "more" : "less")} {Word(axis)} wanted",
    };

    /// <summary>What was said of a pour: what most want, what they disagree on, and the last words, at most three things.</summary>
    /// <param name="notes">Notes of any pours.</param>
    /// <param name="letter">The pour.</param>
    /// <returns>A sentence without a full stop; empty where nothing was said.</returns>
    public static string Notes(IReadOnlyCollection<WrittenNote> notes, PourLetter letter)
    {
        var axes = NoteTally.Of(notes, letter).Axes;
        var wanted = axes.Where(a => a.Wanted is Wish.Less or Wish.More).Select(a => Of(new AxisWish(a.Axis, a.Wanted!.Value)));
        var split = axes.Where(a => a.Wanted is null).Select(a => $"no agreement on {Word(a.Axis)}");
        var right = axes.Where(a => a.Wanted == Wish.Right).Select(a => Of(new AxisWish(a.Axis, Wish.Right)));
        var words = WrittenNote.ThatStand(notes).LastOrDefault(n => n.Note.Letter == letter && !string.IsNullOrWhiteSpace(n.Note.Words))?.Note.Words;
        var told = wanted.Concat(split).Concat(right).Take(words is null ? NotesTold : NotesTold - 1);
        return string.Join(", ", words is null ? told : told.Append($"“{Beginning(words)}”"));
    }

    /// <summary>Where a pour differs from the lines that the round began with, as it was tasted: "Verjus 15 → 17.5 mL".</summary>
    /// <param name="round">The round.</param>
    /// <param name="letter">The pour.</param>
    /// <param name="name">Name of an ingredient.</param>
    /// <param name="format">How the house writes figures.</param>
    public static IReadOnlyList<string> Changes(Round round, PourLetter letter, Func<IngredientId, string> name, HouseFormat format)
    {
        var share = round.Share;
        return
        [
            .. from line in round.Lines
               let amount = line.Content.Amount
               let whole = GlassLines.WholeAmount(round, letter, line, share)
               where whole is not null && !Same(whole.Value, amount.Value!.Value)
               select $"{(line.Content.Ingredient is { } id ? name(id) : Beginning(line.Content.Text))} {Figure(amount.Value!.Value, amount.Unit, format)} → {WithUnit(whole.Value, amount.Unit, format)}",
        ];
    }

    /// <summary>An amount with its unit: "17.5 mL", "¾ fl oz", "2 dashes".</summary>
    /// <param name="amount">The amount.</param>
    /// <param name="unit">Its unit.</param>
    /// <param name="format">How the house writes figures.</param>
    public static string WithUnit(double amount, Unit unit, HouseFormat format) => $"{Figure(amount, unit, format)} {UnitLabel.Of(unit, amount <= 1)}".TrimEnd();

    internal static string Beginning(string text)
    {
        var line = string.Concat(text.Select(c => char.IsControl(c) ? ' ' : c)).Trim();
        return line.Length <= WordsToldMaxLength ? line : line[..WordsToldMaxLength].TrimEnd() + "…";
    }

    private static string Figure(double amount, Unit unit, HouseFormat format) =>
        unit == Unit.FluidOunce && PourGrid.Fraction(amount) is { Length: > 0 } fraction ? fraction : format.Amount(amount);

    // Amounts that went through a share and back differ in the last bits only.
    private static bool Same(double left, double right) => Math.Abs(left - right) <= 1e-9 * Math.Max(1, Math.Abs(left));

    private static string Word(TasteAxis axis) => axis.ToString().ToLowerInvariant();
}
