using MenuLab.Core.Drafts;
using MenuLab.Core.House;

namespace MenuLab.Core.Iterations;

/// <summary>Each change in a few words. The one place where they are put.</summary>
internal static class ChangeWords
{
    private const int Told = 3;

    // A text that a person typed may be a whole paragraph; its beginning says which it is.
    private const int TextToldMaxLength = 40;

    public static IReadOnlyList<string> All(WhatChanged changes, HouseFormat format) => [.. InOrder(changes, format)];

    public static string Reason(WhatChanged changes, HouseFormat format)
    {
        var all = All(changes, format);
        if (all.Count == 0)
        {
            return "";
        }
        // "And 1 more" takes as much room as the change itself.
        var told = all.Count <= Told + 1 ? all.Count : Told;
        var text = string.Join(", ", all.Take(told)) + (all.Count > told ? $" and {all.Count - told} more" : "");
        return Capital(text.Length <= Iteration.ReasonMaxLength ? text : text[..(Iteration.ReasonMaxLength - 1)] + "…");
    }

    public static string Capital(string text) => text.Length == 0 ? "" : char.ToUpperInvariant(text[0]) + text[1..];

    /// <summary>An amount as typed: "7.5 mL", "½ fl oz", "2 dashes", "15–20 mL", "top"; empty where none was written.</summary>
    public static string Amount(DraftLine line, HouseFormat format)
    {
        var (figure, unit) = Parts(line, format);
        return unit.Length == 0 ? figure : figure.Length == 0 ? unit : $"{figure} {unit}";
    }

    /// <summary>So much of a unit: fluid ounces as on a jigger, everything else as a figure.</summary>
    public static string Figure(double value, Unit unit, HouseFormat format) =>
        unit == Unit.FluidOunce && value >= 0 && PourGrid.Fraction(value) is { Length: > 0 } fraction ? fraction : format.Amount(value);

    /// <summary>"+7.5 mL", "−2 drops", "in", "out"; empty where the amount did not change.</summary>
    public static string Difference(LineChange line, HouseFormat format)
    {
        if (line.What is LineAspects.Added or LineAspects.Removed || !line.What.HasFlag(LineAspects.Amount))
        {
            return line.What switch { LineAspects.Added => "in", LineAspects.Removed => "out", _ => "" };
        }
        var (difference, unit) = Difference(line.Before!.Line, line.After!.Line);
        return !double.IsFinite(difference) || difference == 0
            ? "another amount"
            : $"{(difference > 0 ? "+" : "−")}{Figure(Math.Abs(difference), unit, format)} {UnitLabel.Of(unit, Math.Abs(difference) <= 1)}";
    }

    /// <summary>After less before in the unit typed, or in mL where that changed too; NaN where neither says it.</summary>
    public static (double Difference, Unit Unit) Difference(DraftLine before, DraftLine after) =>
        before.Unit == after.Unit && double.IsFinite(before.Amount) && double.IsFinite(after.Amount) && !after.IsTopUp
            ? (after.Amount - before.Amount, after.Unit)
            : (after.Millilitres - before.Millilitres, Unit.Millilitre);

    private static IEnumerable<string> InOrder(WhatChanged changes, HouseFormat format)
    {
        var changed = changes.ChangedLines.ToList();
        var inTheLiquid = changed.Where(l => InTheLiquid(l) && l.What != LineAspects.Reckoned).OrderByDescending(Size).ToList();
        var beside = changed.Where(l => !InTheLiquid(l) && l.What != LineAspects.Reckoned).ToList();
        var reckoned = changed.Where(l => l.What == LineAspects.Reckoned).ToList();
        foreach (var line in inTheLiquid)
        {
            yield return Line(line, format);
        }
        foreach (var build in changes.Build.Where(b => b.Part is not (BuildPart.Strain or BuildPart.Steps or BuildPart.Reckoned)))
        {
            yield return Build(build, changes, format);
        }
        foreach (var line in beside)
        {
            yield return Line(line, format);
        }
        foreach (var text in changes.TextsAdded)
        {
            yield return $"“{Beginning(text)}” in, kept as typed";
        }
        foreach (var text in changes.TextsRemoved)
        {
            yield return $"“{Beginning(text)}” out";
        }
        foreach (var build in changes.Build.Where(b => b.Part is BuildPart.Strain or BuildPart.Steps))
        {
            yield return Build(build, changes, format);
        }
        if (changes.IsReordered)
        {
            yield return "poured in another order";
        }
        if (changes.IsRenamed)
        {
            yield return $"called {changes.After.Name}";
        }
        if (changes.HasOtherStyle)
        {
            yield return changes.After.Style is { } style ? $"style {style.Replace('_', ' ')}" : "no style";
        }
        foreach (var line in reckoned)
        {
            yield return Line(line, format);
        }
        if (changes.Build.Any(b => b.Part == BuildPart.Reckoned))
        {
            yield return "new figures for method, ice or glass";
        }
    }

    private static bool InTheLiquid(LineChange line) => line.Before?.Line.Place == Place.In || line.After?.Line.Place == Place.In;

    private static double Size(LineChange line)
    {
        var size = double.IsNaN(line.MillilitresDifference) ? line.GramsDifference : line.MillilitresDifference;
        return double.IsNaN(size) ? 0 : Math.Abs(size);
    }

    private static string Line(LineChange line, HouseFormat format)
    {
        switch (line.What)
        {
            case LineAspects.Added:
                return WithAmount($"{line.Name} in", line.After!.Line, format);
            case LineAspects.Removed:
                return WithAmount($"{line.Name} out", line.Before!.Line, format);
            case LineAspects.Reckoned:
                return $"{line.Name}: new figures in the pantry";
        }
        var amount = line.What.HasFlag(LineAspects.Amount) ? [Arrow(line.Before!.Line, line.After!.Line, format)] : Array.Empty<string>();
        return $"{line.Name} {string.Join(" and ", [.. amount, .. Besides(line, format)])}";
    }

    /// <summary>What changed about a line that stayed, beside its amount.</summary>
    public static IEnumerable<string> Besides(LineChange line, HouseFormat format)
    {
        if (line.Before?.Line is not { } before || line.After?.Line is not { } after)
        {
            yield break;
        }
        if (line.What.HasFlag(LineAspects.Place))
        {
            yield return after.Place switch { Place.In => "now in the drink", Place.Rinse => "now a rinse", Place.Rim => "now on the rim", Place.Garnish => "now a garnish", _ => "now beside" };
        }
        if (line.What.HasFlag(LineAspects.Joins))
        {
            yield return after.Joins switch { Joins.Mixed => "now mixed with the others", Joins.InTheGlass => "now in the glass", _ => "now on top" };
        }
        if (line.What.HasFlag(LineAspects.Start))
        {
            yield return $"from {format.Degrees(after.StartCelsius)} instead of {format.Degrees(before.StartCelsius)}";
        }
        if (line.What.HasFlag(LineAspects.Treatment))
        {
            yield return after.Treatment.Length > 0 ? $"now {Beginning(after.Treatment)}" : $"no longer {Beginning(before.Treatment)}";
        }
    }

    private static string WithAmount(string text, DraftLine line, HouseFormat format) =>
        Amount(line, format) is { Length: > 0 } amount ? $"{text} ({amount})" : text;

    private static string Arrow(DraftLine before, DraftLine after, HouseFormat format)
    {
        var (from, fromUnit) = Parts(before, format);
        var (to, toUnit) = Parts(after, format);
        return from.Length > 0 && to.Length > 0 && (fromUnit == toUnit || (before.Unit == after.Unit && toUnit.Length > 0))
            ? $"{from} → {to} {toUnit}"
            : $"{Or(Amount(before, format))} → {Or(Amount(after, format))}";

        static string Or(string amount) => amount.Length > 0 ? amount : "no amount";
    }

    private static (string Figure, string Unit) Parts(DraftLine line, HouseFormat format)
    {
        if (line.IsTopUp)
        {
            return ("", "top");
        }
        if (line.Unit == Unit.None || !double.IsFinite(line.Amount))
        {
            // "A sprig" and "a splash" were typed without a figure; nobody measured what stands for them.
            return line.Unit != Unit.None ? ("", UnitLabel.Of(line.Unit, true))
                : double.IsFinite(line.Millilitres) ? (format.Amount(line.Millilitres), UnitLabel.Of(Unit.Millilitre, true))
                : double.IsFinite(line.Grams) ? (format.Amount(line.Grams), UnitLabel.Of(Unit.Gram, true))
                : ("", "");
        }
        var figure = line.AmountLow < line.AmountHigh
            ? $"{Figure(line.AmountLow, line.Unit, format)}–{Figure(line.AmountHigh, line.Unit, format)}"
            : Figure(line.Amount, line.Unit, format);
        return (figure, UnitLabel.Of(line.Unit, line.Amount <= 1));
    }

    private static string Build(BuildChange change, WhatChanged changes, HouseFormat format)
    {
        var (before, after) = (Small(change.Before), Small(change.After));
        return change.Part switch
        {
            BuildPart.Method => after.Length == 0 ? $"no method said instead of {before}" : before.Length == 0 ? after : $"{before} → {after}",
            BuildPart.Seconds => (Small(changes.After.Models.Method?.Name ?? "") + " " + Seconds(changes.Before.Build.Seconds, changes.After.Build.Seconds, format)).TrimStart(),
            BuildPart.Ice => $"{before} → {after}",
            BuildPart.Glass => after.Length == 0 ? $"no glass said instead of {before}" : before.Length == 0 ? $"in a {after}" : $"{before} → {after}",
            BuildPart.ServedOn => $"served on {after} instead of {before}",
            BuildPart.Strain => after.Length == 0 ? $"no longer {before}" : after,
            BuildPart.Steps => "other steps",
            _ => "",
        };
    }

    private static string Seconds(double? before, double? after, HouseFormat format) => (before, after) switch
    {
        ({ } b, { } a) => $"{format.Amount(b)} → {format.Amount(a)} s",
        (null, { } a) => $"{format.Amount(a)} s",
        ({ } b, null) => $"without the {format.Amount(b)} s",
        _ => "",
    };

    private static string Beginning(string text)
    {
        var line = string.Concat(text.Select(c => char.IsControl(c) ? ' ' : c)).Trim();
        return line.Length <= TextToldMaxLength ? line : line[..TextToldMaxLength].TrimEnd() + "…";
    }

    // Methods, ices and glasses are common words, so they can stand inside a sentence; names of ingredients keep their spelling.
    private static string Small(string name) => name.Length == 0 ? "" : char.ToLowerInvariant(name[0]) + name[1..];
}
