using System.Globalization;
using MenuLab.Core.Specs;
using MenuLab.Print.Fonts;

namespace MenuLab.Print;

/// <summary>
/// The running total to scale: a bracket for each line from total to total, a dashed one for what the ice gives, the wash
/// line as the one thick stroke. Strokes only, so that it is clean on a label printer.
/// </summary>
internal sealed class Ladder
{
    private const double Points = Type.SmallestPoints;
    private const double BracketWidth = 2;
    private const double LabelGap = 2.4;
    private const double WashStroke = 1;

    // Millilitres between two marks of the scale; the first that leaves them this far apart is taken.
    private static readonly double[] Steps = [5, 10, 25, 50, 100, 250];
    private const double MarksApart = 2.5;

    private static readonly double LabelHeight = Type.Height(Points) + 0.02;

    private readonly IReadOnlyList<LadderRung> _rungs;
    private readonly double? _washLine;
    private readonly double _top;
    private readonly bool _isOverfull;
    private readonly string _washText;
    private readonly double _numberWidth;

    private readonly bool _isSlim;

    /// <param name="content">The card.</param>
    /// <param name="isSlim">Brackets with their numbers only; the totals stand elsewhere.</param>
    public Ladder(CardContent content, bool isSlim)
    {
        _isSlim = isSlim;
        _rungs = content.Ladder;
        _washLine = content.WashLineMillilitres;
        var poured = _rungs.Count == 0 ? 0 : _rungs.Max(rung => rung.To);
        _top = Math.Max(poured, _washLine ?? 0);
        _isOverfull = _washLine < poured - 0.5;
        var figure = _washLine?.ToString("0", CultureInfo.InvariantCulture);
        _washText = _isOverfull ? $"line{Spelling.KeptSpace}{figure}" : $"wash line {figure}{Spelling.KeptSpace}mL";
        _numberWidth = _rungs.Count == 0 ? 0 : _rungs.Max(rung => Type.Width(Number(rung), Face.Bold, Points));
        var labels = _rungs.Select(rung => rung.Label).Append(_isOverfull ? _washText : "0").Max(label => Type.Width(label, Face.SemiBold, Points));
        var washWord = _washLine is null || _isOverfull ? 0 : Type.Width("wash line", Face.SemiBold, Points);
        Width = _rungs.Count == 0 ? 0 : isSlim ? _numberWidth + 0.5 + BracketWidth + 1 + 1.3 : Math.Max(_numberWidth + 0.5 + BracketWidth + 1 + LabelGap + labels, washWord);
        _wash = new Paragraph([new Run(_washText, Face.SemiBold)], Points, Math.Max(Width, washWord), 1.17);
        MinHeight = _rungs.Count == 0 ? 0 : TopBand + (_rungs.Count + (_isOverfull && !isSlim ? 2 : 1)) * LabelHeight + 1;
    }

    private readonly Paragraph _wash;

    /// <summary>mm; 0 where there is nothing to draw.</summary>
    public double Width { get; }

    /// <summary>The least height in which all labels find room, mm.</summary>
    public double MinHeight { get; }

    private bool HasWashOnTop => _washLine is not null && !_isOverfull;

    private double WashTextHeight => _isSlim ? 0 : _wash.Height + 0.4;

    private double TopBand => HasWashOnTop ? WashTextHeight + WashStroke + 0.2 : 0;

    /// <summary>What is read aloud instead.</summary>
    public string Says => $"Running total: {string.Join(", ", _rungs.Select(rung => rung.Label))} mL"
        + (_washLine is { } wash ? $"; wash line {wash.ToString("0", CultureInfo.InvariantCulture)} mL" : "");

    public IEnumerable<Mark> At(double x, double y, double height)
    {
        var axis = x + _numberWidth + 0.5 + BracketWidth + 1;
        var zero = y + height - LabelHeight / 2;
        var full = y + (HasWashOnTop ? WashTextHeight + WashStroke / 2 : LabelHeight / 2);
        double Level(double millilitres) => zero - millilitres / _top * (zero - full);

        yield return new LineMark(axis, zero, axis, full, 0.3);
        foreach (var mark in Scale(axis, zero, full, Level))
        {
            yield return mark;
        }
        if (HasWashOnTop)
        {
            foreach (var mark in _isSlim ? [] : _wash.At(x, y))
            {
                yield return mark;
            }
            yield return new LineMark(x, full, x + Width, full, WashStroke);
        }
        else if (_isOverfull)
        {
            yield return new LineMark(axis - 0.8, Level(_washLine!.Value), axis + 1.6, Level(_washLine.Value), WashStroke);
        }
        foreach (var mark in (_isSlim ? [] : Labels(axis, y + TopBand, y + height, Level)).Concat(Brackets(x, axis, y + TopBand, y + height, Level)))
        {
            yield return mark;
        }
    }

    private IEnumerable<Mark> Scale(double axis, double zero, double full, Func<double, double> level)
    {
        var step = Steps.FirstOrDefault(s => s / _top * (zero - full) >= MarksApart, Steps[^1]);
        for (var i = 0; i * step <= _top; i++)
        {
            yield return new LineMark(axis, level(i * step), axis + 0.7, level(i * step), 0.2);
        }
    }

    private IEnumerable<Mark> Labels(double axis, double top, double bottom, Func<double, double> level)
    {
        List<(double At, string Text, Face Face)> labels = [(0, "0", Face.Regular), .. _rungs.Select(rung => (rung.To, rung.Label, Face.SemiBold))];
        if (_isOverfull)
        {
            labels.Add((_washLine!.Value, _washText, Face.Bold));
        }
        var ordered = labels.OrderByDescending(label => label.At).ToList();
        var places = Apart([.. ordered.Select(label => level(label.At))], top, bottom);
        for (var i = 0; i < ordered.Count; i++)
        {
            var (at, text, face) = ordered[i];
            var wanted = level(at);
            yield return new LineMark(axis, wanted, axis + 1.3, wanted, 0.4);
            if (Math.Abs(places[i] - wanted) > 0.3)
            {
                yield return new LineMark(axis + 1.3, wanted, axis + LabelGap - 0.2, places[i], 0.15);
            }
            yield return Centred(text, face, axis + LabelGap, places[i]);
        }
    }

    private IEnumerable<Mark> Brackets(double x, double axis, double top, double bottom, Func<double, double> level)
    {
        var ordered = _rungs.Reverse().ToList();
        var numbered = ordered.Where(rung => Number(rung).Length > 0).ToList();
        var places = Apart([.. numbered.Select(rung => (level(rung.From) + level(rung.To)) / 2)], top, bottom);
        for (var i = 0; i < numbered.Count; i++)
        {
            var text = Number(numbered[i]);
            yield return Centred(text, Face.Bold, x + _numberWidth - Type.Width(text, Face.Bold, Points), places[i]);
        }
        foreach (var rung in ordered)
        {
            var inset = Math.Min(0.4, (level(rung.From) - level(rung.To)) / 6);
            var (from, to) = (level(rung.From) - inset, level(rung.To) + inset);
            var (far, near) = (axis - 0.9 - BracketWidth + 0.6, axis - 0.9);
            var dashed = rung.Kind != RungKind.Line;
            yield return new LineMark(near, from, far, from, 0.35, dashed);
            yield return new LineMark(far, from, far, to, 0.35, dashed);
            yield return new LineMark(far, to, near, to, 0.35, dashed);
        }
    }

    private static string Number(LadderRung rung) =>
        rung.Kind == RungKind.Line ? rung.Number.ToString(CultureInfo.InvariantCulture) : "";

    private static TextMark Centred(string text, Face face, double x, double middle) =>
        new(x, middle - LabelHeight / 2 + Type.Ascent(Points), text, face, Points, IsCleared: true);

    /// <summary>Places as near to the wanted ones as labels of one height allow, from the top down; none leaves (top, bottom).</summary>
    private static double[] Apart(double[] wanted, double top, double bottom)
    {
        var places = new double[wanted.Length];
        for (var i = 0; i < places.Length; i++)
        {
            places[i] = Math.Max(wanted[i], i == 0 ? top + LabelHeight / 2 : places[i - 1] + LabelHeight);
        }
        for (var i = places.Length - 1; i >= 0; i--)
        {
            places[i] = Math.Min(places[i], i == places.Length - 1 ? bottom - LabelHeight / 2 : places[i + 1] - LabelHeight);
        }
        return places;
    }
}
