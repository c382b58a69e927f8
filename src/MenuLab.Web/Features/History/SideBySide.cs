using MenuLab.Core.Balance;
using MenuLab.Core.Drafts;
using MenuLab.Core.House;
using MenuLab.Core.Iterations;
using MenuLab.Core.Quantities;
using MenuLab.Web.Features.Bench;

namespace MenuLab.Web.Features.History;

/// <summary>A line in one column.</summary>
/// <param name="Amount">Amount with unit; empty where the column has no such line or it has no amount.</param>
/// <param name="Other">In the other unit.</param>
/// <param name="Kept">Share of the bar's room that was there before, 0 to 1.</param>
/// <param name="Added">Share that was added.</param>
/// <param name="Gone">Share that was taken away.</param>
/// <param name="Change">Against the column to the left; null in the first.</param>
/// <param name="Difference">The same as printed, with a mark for more and for less; empty in the first.</param>
/// <param name="Notes">Where it goes and what else changed.</param>
public sealed record LineCell(string Amount, string Other, double Kept, double Added, double Gone, LineChange? Change, string Difference, IReadOnlyList<string> Notes);

/// <summary>An ingredient across the columns.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Changed">It differs in some column.</param>
/// <param name="Cells">One per column.</param>
public sealed record LineRowAcross(string Name, bool Changed, IReadOnlyList<LineCell> Cells);

/// <summary>A part of the build across the columns.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Texts">One per column.</param>
public sealed record BuildRowAcross(string Name, IReadOnlyList<string> Texts)
{
    /// <summary>It differs from the column to the left.</summary>
    public bool ChangedAt(int column) => column > 0 && Texts[column] != Texts[column - 1];

    /// <summary>It differs in some column.</summary>
    public bool Changed => Texts.Distinct().Count() > 1;
}

/// <summary>A figure in one column.</summary>
/// <param name="Estimate">The figure.</param>
/// <param name="Value">As printed.</param>
/// <param name="Before">Where the column to the left stood; NaN for none.</param>
/// <param name="Difference">Against the column to the left, as printed; empty in the first.</param>
public sealed record FigureCell(Estimate Estimate, string Value, double Before, string Difference);

/// <summary>A figure across the columns.</summary>
/// <param name="Info">Which.</param>
/// <param name="Cells">One per column.</param>
public sealed record FigureRowAcross(MetricInfo Info, IReadOnlyList<FigureCell> Cells)
{
    /// <summary>Its printed figure differs in some column, or is not known.</summary>
    public bool Changed => Cells.Skip(1).Any(c => c.Difference != "=");
}

/// <summary>States of a drink side by side: lines aligned by ingredient, build, figures, and what changed from column to column.</summary>
public sealed class SideBySide
{
    /// <summary>Name of the row with the texts that were kept as typed.</summary>
    public const string KeptAsTyped = "Kept as typed";

    private static readonly Metric[] Figured = [.. FigureWords.Large, .. FigureWords.Told];

    private readonly LineWords _words;
    private readonly double _longest;

    /// <param name="states">The columns, left to right; at least one.</param>
    /// <param name="words">How lines are written.</param>
    public SideBySide(IReadOnlyList<DrinkState> states, LineWords words)
    {
        States = states;
        _words = words;
        _longest = states.SelectMany(s => s.Snapshot.Lines).Select(l => Length(l.Line)).DefaultIfEmpty(0).Max();
        Changes = [.. states.Skip(1).Select((after, i) => ChangesInWords.Of(states[i], after, words.Format))];
        Lines = [.. AlignedLines.Of([.. states.Select(s => s.Snapshot)]).Select(Row)];
        Build = [.. BuildRows()];
        Figures = [.. Figured.Select(Row)];
    }

    /// <summary>The columns.</summary>
    public IReadOnlyList<DrinkState> States { get; }

    /// <summary>From each column to the next.</summary>
    public IReadOnlyList<ChangesInWords> Changes { get; }

    /// <summary>The lines.</summary>
    public IReadOnlyList<LineRowAcross> Lines { get; }

    /// <summary>The build.</summary>
    public IReadOnlyList<BuildRowAcross> Build { get; }

    /// <summary>The figures.</summary>
    public IReadOnlyList<FigureRowAcross> Figures { get; }

    /// <summary>"2, 3 and 5 side by side".</summary>
    public string Title => States.Count == 1
        ? States[0].Title
        : $"{string.Join(", ", States.SkipLast(1).Select(s => s.Number is null ? s.Title : s.Key))} and {(States[^1].Number is null ? States[^1].Title : States[^1].Key)} side by side";

    /// <summary>"107.6 mL before ice · 144 mL in the glass".</summary>
    public string Volumes(DrinkState state)
    {
        var (mixed, served) = (state.Balance.Mixed[Metric.Volume], state.Balance.Served?[Metric.Volume]);
        var digits = Metrics.Info(Metric.Volume).Digits;
        return $"{_words.Format.Value(mixed, digits)} mL before ice" + (served is { } s ? $" · {_words.Format.Value(s, digits)} mL in the glass" : " · in the glass not known");
    }

    private LineRowAcross Row(AlignedLine row)
    {
        var cells = row.Lines.Select((line, i) => Cell(i == 0 ? null : row.Lines[i - 1], line, i == 0)).ToList();
        return new LineRowAcross(row.Name, cells.Any(c => c.Change is { IsNothing: false }), cells);
    }

    private LineCell Cell(SnapshotLine? before, SnapshotLine? line, bool isFirst)
    {
        var change = isFirst || (before is null && line is null) ? null : LineChange.Of(before, line);
        var (was, now) = (before is null ? 0 : Length(before.Line), line is null ? 0 : Length(line.Line));
        was = isFirst ? now : was;
        List<string> notes = line is null ? [] : [.. new[] { LineWords.Of(line.Line.Place), line.Line.Treatment }.Where(n => n.Length > 0), .. change?.BesidesInWords(_words.Format) ?? []];
        return new LineCell(
            line is null ? "" : _words.WithUnit(line.Line),
            line is null ? "" : _words.Other(line.Line),
            Share(Math.Min(was, now)), Share(Math.Max(0, now - was)), Share(Math.Max(0, was - now)), change, change is null ? "" : Difference(change), notes);
    }

    private string Difference(LineChange change)
    {
        if (!change.What.HasFlag(LineAspects.Amount))
        {
            return change.What switch { LineAspects.None => "=", LineAspects.Added => "▲ in", LineAspects.Removed => "▼ out", LineAspects.Reckoned => "new figures", _ => "changed" };
        }
        // Jigger amounts stand in the house's unit, as the amounts beside them do; drops and dashes as they were counted.
        var millilitres = change.MillilitresDifference;
        var said = IsByJigger(change.Before!.Line) && IsByJigger(change.After!.Line) && double.IsFinite(millilitres) && millilitres != 0
            ? $"{(millilitres > 0 ? "+" : "−")}{(_words.First == Unit.FluidOunce ? _words.Ounces(Math.Abs(millilitres)) + " fl oz" : _words.Format.Amount(Math.Abs(millilitres)) + " mL")}"
            : change.AmountInWords(_words.Format);
        return said[0] switch { '+' => $"▲ {said}", '−' => $"▼ {said}", _ => said };
    }

    private static bool IsByJigger(DraftLine line) => line.Unit is Unit.Millilitre or Unit.Centilitre or Unit.Litre or Unit.FluidOunce or Unit.Part;

    // Grams stand in where a line has no volume, so that a pinch is seen at all.
    private static double Length(DraftLine line) =>
        line.Place != Place.In ? 0 : double.IsFinite(line.Millilitres) ? line.Millilitres : double.IsFinite(line.Grams) ? line.Grams : 0;

    private double Share(double length) => _longest > 0 ? length / _longest : 0;

    private IEnumerable<BuildRowAcross> BuildRows()
    {
        yield return Across("Method", s => s.Models.Method is { } m ? m.Name + (s.Build.Seconds is { } seconds ? $", {_words.Format.Amount(seconds)} s" : "") : "not said");
        yield return Across("Ice", s => s.Models.MethodIce?.Name ?? "none");
        yield return Across("Glass", s => s.Models.Glass is { } g ? $"{g.Name}, {_words.Format.Amount(g.WashLineMillilitres)} mL to the wash line" : "not said");
        yield return Across("Served on", s => s.Models.ServedIce?.Name ?? "no ice");
        yield return Across("Strain", s => s.Build.Strain?.Replace('_', ' ') ?? "not said");
        yield return Across("Steps", s => s.Build.Steps.Count > 0 ? string.Join(' ', s.Build.Steps) : "none written");
        if (States.Any(s => s.Snapshot.KeptAsTyped.Count > 0))
        {
            yield return Across(KeptAsTyped, s => s.KeptAsTyped.Count > 0 ? string.Join("; ", s.KeptAsTyped) : "nothing");
        }
    }

    private BuildRowAcross Across(string name, Func<Snapshot, string> text) => new(name, [.. States.Select(s => text(s.Snapshot))]);

    private FigureRowAcross Row(Metric metric)
    {
        var info = Metrics.Info(metric);
        var decimals = States.Max(s => s.Shown[metric].Certainty == Certainty.Unknown ? 0 : HouseFormat.Decimals(s.Shown[metric], info.Digits));
        return new FigureRowAcross(info, [.. States.Select((state, i) => Cell(state, i == 0 ? null : States[i - 1], info, decimals))]);
    }

    private FigureCell Cell(DrinkState state, DrinkState? left, MetricInfo info, int decimals)
    {
        var estimate = state.Shown[info.Metric];
        var value = Value(estimate, info.Metric, state.Snapshot.Currency, decimals);
        if (left is null)
        {
            return new FigureCell(estimate, value, double.NaN, "");
        }
        // Served is not held against before ice, nor one currency against another.
        var comparable = (left.Balance.Served is null) == (state.Balance.Served is null) && (info.Metric != Metric.Cost || left.Snapshot.Currency == state.Snapshot.Currency);
        var change = new MetricChange(info, left.Shown[info.Metric], estimate) { LeastDecimals = decimals };
        return new FigureCell(
            estimate, value, comparable && change.Certainty != Certainty.Unknown ? change.Before.Value : double.NaN, comparable ? change.InWords(_words.Format) : HouseFormat.Unknown);
    }

    private string Value(Estimate estimate, Metric metric, string? currency, int decimals) => estimate.Certainty switch
    {
        Certainty.Unknown => HouseFormat.Unknown,
        _ => (estimate.Certainty switch { Certainty.AtLeast => "at least ", Certainty.SoFar => "so far ", _ => "" })
            + (metric == Metric.Cost && currency is not null ? _words.Format.Money(estimate.Value, currency) : _words.Format.Number(estimate.Value, decimals)),
    };
}
