using System.Globalization;
using MenuLab.Core.Specs;
using MenuLab.Print.Fonts;

namespace MenuLab.Print;

/// <summary>How much is set how close.</summary>
internal enum Density
{
    /// <summary>As drawn: details under the names, a step per line, totals on the ladder.</summary>
    Roomy,
    /// <summary>Details, steps and facts run in.</summary>
    Tight,
    /// <summary>Also the totals: a slim ladder with the figures in a line below.</summary>
    Compact,
}

/// <summary>
/// One way to set a card in a frame: a density and a scale. Type never falls below its smallest size, amounts and names not
/// below theirs. Nothing is left out in any of them.
/// </summary>
internal sealed class CardSetting
{
    private const double ThickRule = 0.6;
    private const double ThinRule = 0.2;
    private const double DraftStroke = 0.5;

    // A row's number must not read as part of its amount: "2 2 dashes".
    private const double NumberGap = 2.8;

    // The dot stays with what it ends, so that no line begins with one.
    private static readonly string Between = $"{Spelling.KeptSpace}· ";

    private const double LeastNameWidth = 24;
    private const double MostAmountWidth = 27;

    private readonly CardContent _content;
    private readonly double _scale;
    private readonly bool _isTight;
    private readonly bool _isCompact;
    // From the edge of the card to its contents, mm.
    private readonly double _margin;
    private readonly double _width;
    private readonly double _height;
    private bool _breaksNames;

    // From the top down.
    private readonly List<Block> _top = [];
    private readonly Rows? _rows;
    private readonly List<Block> _below = [];
    private readonly List<Block> _foot = [];

    private CardSetting(CardContent content, double cardWidth, double cardHeight, Density density, double scale)
    {
        (_content, _scale, _isTight, _isCompact) = (content, scale, density != Density.Roomy, density == Density.Compact);
        _margin = _isCompact ? 4 : 5;
        (_width, _height) = (cardWidth - 2 * _margin, cardHeight - 2 * _margin);
        _top.Add(Header());
        _top.Add(Facts());
        _rows = LinesAndLadder();
        if (_isCompact && _content.Ladder.Count > 0)
        {
            _below.Add(RunningTotal());
        }
        _below.Add(Steps());
        _foot.Add(AllergenFrame());
        _foot.Add(Foot());
    }

    /// <summary>How much higher the contents are than the card, mm; infinite where the columns find no room side by side.</summary>
    public double Over => _rows is null
        ? double.PositiveInfinity
        : Blocks.Sum(block => block.Height) + _rows.Height - _height;

    /// <summary>The part that takes most room, for the person who must shorten something.</summary>
    public string Largest => Blocks.Append(new Block("lines", _rows?.Height ?? 0, _ => [])).MaxBy(block => block.Height)!.Name;

    private IEnumerable<Block> Blocks => _top.Concat(_below).Concat(_foot);

    /// <summary>It fits; a card with few lines is set larger only where plenty of room is left and no name breaks for it.</summary>
    public bool Fits => _scale > 1 ? Over <= -0.15 * _height && !_breaksNames : Over <= 0;

    /// <summary>All settings, from the largest to the smallest.</summary>
    public static IEnumerable<CardSetting> All(CardContent content, double cardWidth, double cardHeight)
    {
        (Density Density, double[] Scales)[] settings =
        [
            (Density.Roomy, [1.3, 1.2, 1.1, 1, 0.95, 0.9, 0.85]),
            (Density.Tight, [1, 0.95, 0.9, 0.85, 0.8, 0.75]),
            (Density.Compact, [0.95, 0.9, 0.85, 0.8, 0.75, 0.7, 0.65, 0.6]),
        ];
        return settings.SelectMany(s => s.Scales.Select(scale => new CardSetting(content, cardWidth, cardHeight, s.Density, scale)));
    }

    /// <summary>The parts in reading order, for a card whose top left corner is at (0, 0). Only where nothing is over.</summary>
    public IReadOnlyList<Part> Parts()
    {
        var parts = new List<Part>();
        if (_content.IsDraft)
        {
            parts.Add(DraftMark.Across(_margin, _margin, _width, _height));
        }
        var spare = -Over;
        var y = _margin;
        foreach (var block in _top)
        {
            parts.AddRange(block.At(y));
            y += block.Height;
        }
        // Most of the spare room goes between the lines, where the eye looks for them; the rest stays above the foot.
        var lines = _rows!.Height + Math.Min(0.75 * spare, 3.5 * _content.Lines.Count);
        parts.AddRange(_rows.At(y, lines));
        y += lines;
        foreach (var block in _below)
        {
            parts.AddRange(block.At(y));
            y += block.Height;
        }
        y = _margin + _height - _foot.Sum(block => block.Height);
        foreach (var block in _foot)
        {
            parts.AddRange(block.At(y));
            y += block.Height;
        }
        return parts;
    }

    private double Points(double asDrawn, double least = Type.SmallestPoints) => Math.Max(least, asDrawn * _scale);

    private double Gap(double asDrawn) => asDrawn * (_isCompact ? 0.4 : _isTight ? 0.6 : 1) * _scale;

    private Block Header()
    {
        var small = Points(9);
        var day = _content.InForceFrom is { } from ? $"in force from {Day(from)}" : Day(_content.PrintedOn);
        var dayWidth = Type.Width(day, Face.Regular, small);

        var draftPoints = Points(12, 10);
        var draftWidth = _content.IsDraft ? Type.Width("DRAFT", Face.Bold, draftPoints) + 2 * (DraftStroke + 0.8) : 0;
        var draftHeight = _content.IsDraft ? Type.Height(draftPoints) + 2 * (DraftStroke + 0.1) : 0;
        var issueLeft = _margin + (draftWidth > 0 ? draftWidth + 2 : 0);
        var issue = new Paragraph([new Run(_content.Issue, Face.SemiBold)], small, _width - (issueLeft - _margin) - dayWidth - 3);
        var rowHeight = Math.Max(draftHeight, issue.Height);

        var name = Name();
        var height = rowHeight + Gap(1) + name.Height + Gap(1.2) + ThickRule + Gap(1.2);
        return new Block("name", height, y =>
        {
            var parts = new List<Part>();
            var middle = y + (draftHeight > 0 ? draftHeight : Type.Height(small)) / 2;
            if (_content.IsDraft)
            {
                parts.Add(Frame(_margin, y, draftWidth, draftHeight, DraftStroke));
                parts.Add(Part.Text(PartKind.Paragraph, [new TextMark(_margin + DraftStroke + 0.8, y + DraftStroke + 0.1 + Type.Ascent(draftPoints), "DRAFT", Face.Bold, draftPoints)]));
            }
            var firstLine = Math.Max(y, middle - Type.Height(small) / 2);
            // Several lines of issue begin at the top, one stands beside the middle of DRAFT.
            var issueTop = issue.LineCount > 1 ? y : firstLine;
            parts.Add(Part.Text(PartKind.Paragraph, [.. issue.At(issueLeft, issueTop)]));
            parts.Add(Part.Text(PartKind.Paragraph, [new TextMark(_margin + _width - dayWidth, issueTop + Type.Ascent(small), day, Face.Regular, small)]));
            parts.Add(Part.Text(PartKind.Heading, [.. name.At(_margin, y + rowHeight + Gap(1))]));
            var rule = y + rowHeight + Gap(1) + name.Height + Gap(1.2) + ThickRule / 2;
            parts.Add(Part.Artifact(new LineMark(_margin, rule, _margin + _width, rule, ThickRule)));
            return parts;
        });
    }

    /// <summary>As large as one line holds, down to a size from which on it wraps.</summary>
    private Paragraph Name()
    {
        var largest = Points(_isTight ? 20 : 25);
        var wrapping = Points(_isTight ? 13 : 16, 11);
        var oneLine = _width / Math.Max(Type.Width(_content.Name, Face.Bold, 1), 1e-6);
        var points = oneLine >= wrapping ? Math.Min(largest, oneLine * 0.9999) : wrapping;
        return new Paragraph([new Run(_content.Name, Face.Bold)], points, _width, 1.17);
    }

    private Block Facts() => _isTight ? FactsRunIn() : FactsInCells();

    private Block FactsRunIn()
    {
        var runs = new List<Run>();
        foreach (var fact in _content.Facts)
        {
            runs.Add(new Run((runs.Count > 0 ? " " : "") + fact.Name + ": ", Face.Regular));
            runs.Add(new Run(fact.Text + (fact == _content.Facts[^1] ? "" : Between.TrimEnd(' ')), Face.SemiBold));
        }
        var text = new Paragraph(runs, Points(8.5), _width, 1.2);
        return new Block("glass and garnish", text.Height + Gap(1) + ThinRule + Gap(0.8), y =>
        [
            Part.Text(PartKind.Paragraph, [.. text.At(_margin, y)]),
            Rule(y + text.Height + Gap(1), ThinRule),
        ]);
    }

    private Block FactsInCells()
    {
        const double between = 4;
        var (small, large) = (Points(7.5), Points(10));
        var cells = new List<(double X, int Row, Paragraph Name, Paragraph Text)>();
        var rowHeights = new List<double>();
        var x = 0.0;
        foreach (var fact in _content.Facts)
        {
            var name = new Paragraph([new Run(fact.Name, Face.Regular)], small, _width);
            var text = new Paragraph([new Run(fact.Text, Face.SemiBold)], large, _width);
            var width = Math.Max(name.Width(), text.Width());
            if (rowHeights.Count == 0 || x + width > _width)
            {
                rowHeights.Add(0);
                x = 0;
            }
            cells.Add((x, rowHeights.Count - 1, name, text));
            rowHeights[^1] = Math.Max(rowHeights[^1], name.Height + text.Height);
            x += width + between;
        }
        var height = rowHeights.Sum() + Gap(1) * Math.Max(0, rowHeights.Count - 1);
        return new Block("glass and garnish", height + Gap(1.2) + ThinRule + Gap(1.2), y =>
        [
            .. cells.Select(cell =>
            {
                var top = y + rowHeights.Take(cell.Row).Sum() + cell.Row * Gap(1);
                return Part.Text(PartKind.Paragraph, [.. cell.Name.At(_margin + cell.X, top), .. cell.Text.At(_margin + cell.X, top + cell.Name.Height)]);
            }),
            Rule(y + height + Gap(1.2), ThinRule),
        ]);
    }

    private Rows? LinesAndLadder()
    {
        var ladder = new Ladder(_content, isSlim: _isCompact);
        var columnGap = _isCompact ? 1.5 : 2;
        var left = ladder.Width > 0 ? ladder.Width + columnGap : 0;
        var sizes = new LineSizes(
            Number: Points(9),
            Figure: Points(_isTight ? 12.5 : 17, _isCompact ? 8.5 : 10),
            Unit: Points(_isTight ? 8 : 9),
            OtherFigure: Points(_isTight ? 9 : 11),
            OtherUnit: Points(7.5),
            Name: Points(_isTight ? 9 : 11, _isCompact ? 7.5 : 8.5),
            Detail: Points(_isTight ? 8 : 8.5));
        var numberWidth = _content.Lines.Count == 0 ? 0 : _content.Lines.Max(line => Type.Width(Number(line), Face.Bold, sizes.Number));
        var mostWidth = _isCompact ? 15 : MostAmountWidth * Math.Max(1, _scale);
        var amounts = _content.Lines.Select(line => new SetAmount(line.Amount, Face.Bold, sizes.Figure, sizes.Unit, mostWidth)).ToList();
        var others = _content.Lines.Select(line => new SetAmount(line.Other, Face.SemiBold, sizes.OtherFigure, sizes.OtherUnit, mostWidth)).ToList();
        var amountWidth = amounts.Select(a => a.Width).DefaultIfEmpty().Max();
        var otherWidth = others.Select(a => a.Width).DefaultIfEmpty().Max();
        var amountRight = left + numberWidth + NumberGap + amountWidth;
        var otherLeft = amountRight + columnGap;
        var nameLeft = otherLeft + otherWidth + columnGap;
        if (_width - nameLeft < LeastNameWidth)
        {
            return null;
        }

        var rows = new List<Row>();
        for (var i = 0; i < _content.Lines.Count; i++)
        {
            var line = _content.Lines[i];
            var nameWidth = _width - nameLeft;
            Paragraph[] texts = line.Detail.Length == 0 ? [new Paragraph([new Run(line.Name, Face.SemiBold)], sizes.Name, nameWidth, 1.17)]
                : _isTight ? [new Paragraph([new Run(line.Name + ",", Face.SemiBold), new Run(" " + line.Detail, Face.Regular)], sizes.Name, nameWidth, 1.17)]
                : [new Paragraph([new Run(line.Name, Face.SemiBold)], sizes.Name, nameWidth, 1.17), new Paragraph([new Run(line.Detail, Face.Regular)], sizes.Detail, nameWidth, 1.17)];
            _breaksNames |= texts[0].LineCount > 1;
            rows.Add(new Row(Number(line), amounts[i], others[i], texts, Math.Max(texts.Sum(t => t.Height), Type.Height(amounts[i].Points))));
        }
        var padding = Gap(1);
        return new Rows(
            Math.Max(rows.Sum(row => row.Height + padding), ladder.MinHeight),
            (y, height) => RowParts(rows, ladder, sizes, left, amountRight, otherLeft, nameLeft, y, height));
    }

    private List<Part> RowParts(
        List<Row> rows, Ladder ladder, LineSizes sizes, double left, double amountRight, double otherLeft, double nameLeft, double y, double height)
    {
        var parts = new List<Part>();
        var padding = rows.Count == 0 ? 0 : (height - rows.Sum(row => row.Height)) / rows.Count;
        var top = y;
        foreach (var row in rows)
        {
            var middle = top + (row.Height + padding) / 2;
            // One baseline for number and both amounts, so that the eye runs along it.
            var baseline = middle - Type.Height(row.Amount.Points) / 2 + Type.Ascent(row.Amount.Points);
            var marks = new List<Mark> { new TextMark(_margin + left, baseline, row.Number, Face.Bold, sizes.Number) };
            marks.AddRange(row.Amount.At(_margin + amountRight - row.Amount.Width, baseline));
            marks.AddRange(row.Other.At(_margin + otherLeft, baseline));
            var textTop = middle - row.Texts.Sum(t => t.Height) / 2;
            foreach (var text in row.Texts)
            {
                marks.AddRange(text.At(_margin + nameLeft, textTop));
                textTop += text.Height;
            }
            parts.Add(Part.Text(PartKind.Paragraph, marks));
            top += row.Height + padding;
            if (row != rows[^1])
            {
                parts.Add(Part.Artifact(new LineMark(_margin + left, top, _margin + _width, top, ThinRule)));
            }
        }
        if (ladder.Width > 0)
        {
            parts.Add(new Part(PartKind.Illustration, ladder.Says, [.. ladder.At(_margin, y, height - 0.5)]));
        }
        return parts;
    }

    private Block RunningTotal()
    {
        var totals = string.Join(Between, _content.Ladder.Select(rung => rung.Label.StartsWith("to ", StringComparison.Ordinal) ? rung.Label[3..] : rung.Label));
        var wash = _content.WashLineMillilitres is { } line ? $"; wash line {line.ToString("0", CultureInfo.InvariantCulture)}{Spelling.KeptSpace}mL" : "";
        var text = new Paragraph([new Run("Total:", Face.SemiBold), new Run($" {totals}{Spelling.KeptSpace}mL{wash}", Face.Regular)], Type.SmallestPoints, _width, 1.17);
        return new Block("lines", text.Height + ThinRule + Gap(1.2), y =>
        [
            Rule(y, ThinRule),
            Part.Text(PartKind.Paragraph, [.. text.At(_margin, y + ThinRule + Gap(0.6)).Select(Cleared)]),
        ]);
    }

    private Block Steps()
    {
        if (_content.Steps.Count == 0)
        {
            return new Block("steps", ThickRule + Gap(1.5), y => [Rule(y, ThickRule)]);
        }
        const double indent = 3;
        var points = Points(_isTight ? 9 : 10.5);
        var above = ThickRule + Gap(1.2);
        if (_isTight)
        {
            var runIn = new Paragraph([new Run(string.Join(Between, _content.Steps), Face.Regular)], points, _width, 1.2);
            return new Block("steps", above + runIn.Height + Gap(1.5), y => [Rule(y, ThickRule), Part.Text(PartKind.Paragraph, [.. runIn.At(_margin, y + above)])]);
        }
        var steps = _content.Steps.Select(step => new Paragraph([new Run(step, Face.Regular)], points, _width - indent)).ToList();
        return new Block("steps", above + steps.Sum(step => step.Height + Gap(0.5)) + Gap(1.5), y =>
        {
            var parts = new List<Part> { Rule(y, ThickRule) };
            var top = y + above;
            foreach (var step in steps)
            {
                parts.Add(Part.Text(PartKind.Paragraph, [new TextMark(_margin, top + Type.Ascent(points), "•", Face.Bold, points), .. step.At(_margin + indent, top)]));
                top += step.Height + Gap(0.5);
            }
            return parts;
        });
    }

    private Block AllergenFrame()
    {
        var padding = ThickRule + Gap(1);
        List<Run> runs =
        [
            .. ((string[])[_content.Allergens, _content.OpenAllergens]).Where(said => said.Length > 0).Select(said => new Run(said + " ", Face.Bold)),
            new(_content.CrossContact, Face.Regular),
        ];
        var text = new Paragraph(runs, Points(9.5, _isCompact ? 7 : 7.5), _width - 2 * (padding + 0.6), _isCompact ? 1.17 : 1.2);
        var height = text.Height + 2 * padding;
        return new Block("allergens", height + Gap(1.2) + 0.3, y =>
        [
            Frame(_margin, y, _width, height, ThickRule),
            Part.Text(PartKind.Paragraph, [.. text.At(_margin + padding + 0.6, y + padding).Select(Cleared)]),
        ]);
    }

    private Block Foot()
    {
        var points = Points(8.5);
        var cautions = _content.Cautions.Select(caution => (Run[])[new Run("Caution:", Face.Bold), new Run($" {caution}", Face.Regular)]);
        Run[] figures = [new Run($"{_content.Strength} {_content.Energy}", Face.Regular)];
        List<Paragraph> texts = _isCompact
            ? [new Paragraph([.. cautions.SelectMany(runs => runs).Select(Spaced), .. figures], points, _width, 1.17)]
            : [.. cautions.Append(figures).Select(runs => new Paragraph(runs, points, _width, 1.2))];
        texts.Add(new Paragraph([new Run($"Printed {Day(_content.PrintedOn)}. {CardContent.Advice}", Face.Regular)], Type.SmallestPoints, _width, 1.17));
        return new Block(_content.Cautions.Count > 1 ? "cautions" : "foot", texts.Sum(text => text.Height + Gap(0.4)), y =>
        {
            var parts = new List<Part>();
            foreach (var text in texts)
            {
                parts.Add(Part.Text(PartKind.Paragraph, [.. text.At(_margin, y)]));
                y += text.Height + Gap(0.4);
            }
            return parts;
        });
    }

    private static TextMark Cleared(TextMark mark) => mark with { IsCleared = true };

    private static Run Spaced(Run run) => run with { Text = run.Text + " " };

    private Part Rule(double y, double thickness) => Part.Artifact(new LineMark(_margin, y + thickness / 2, _margin + _width, y + thickness / 2, thickness));

    /// <summary>A frame whose strokes lie within the box.</summary>
    private static Part Frame(double left, double top, double width, double height, double stroke)
    {
        var (l, t, r, b) = (left + stroke / 2, top + stroke / 2, left + width - stroke / 2, top + height - stroke / 2);
        return Part.Artifact(
            new LineMark(left, t, left + width, t, stroke), new LineMark(left, b, left + width, b, stroke),
            new LineMark(l, top, l, top + height, stroke), new LineMark(r, top, r, top + height, stroke));
    }

    private static string Number(CardLine line) => line.Number.ToString(CultureInfo.InvariantCulture);

    private string Day(DateOnly day) => _content.Format.Day(day);

    /// <summary>Something of a known height that can be put at any y.</summary>
    private sealed record Block(string Name, double Height, Func<double, IEnumerable<Part>> At);

    /// <summary>The lines beside the ladder: at least so high, and drawn in whatever height there is.</summary>
    private sealed record Rows(double Height, Func<double, double, IEnumerable<Part>> At);

    private sealed record Row(string Number, SetAmount Amount, SetAmount Other, Paragraph[] Texts, double Height);

    private readonly record struct LineSizes(double Number, double Figure, double Unit, double OtherFigure, double OtherUnit, double Name, double Detail);

    /// <summary>A large figure and its small unit on one baseline, never parted; smaller where it would be wider than its column may be.</summary>
    private sealed class SetAmount
    {
        private readonly CardAmount _amount;
        private readonly Face _face;
        private readonly double _unitPoints;

        public SetAmount(CardAmount amount, Face face, double points, double unitPoints, double most)
        {
            (_amount, _face, Points, _unitPoints) = (amount, face, points, unitPoints);
            if (Width > most)
            {
                var shrink = most / Width;
                Points = Math.Max(Type.SmallestPoints, points * shrink);
                _unitPoints = Math.Max(Type.SmallestPoints, unitPoints * shrink);
            }
        }

        public double Points { get; }

        public double Width => FigureWidth + (_amount.Unit.Length == 0 ? 0 : Space + Type.Width(_amount.Unit, Face.SemiBold, _unitPoints));

        private double FigureWidth => Type.Width(_amount.Figure, _face, Points);

        private double Space => Type.Width(" ", Face.Regular, _unitPoints);

        public IEnumerable<TextMark> At(double x, double baseline)
        {
            yield return new TextMark(x, baseline, _amount.Figure, _face, Points, IsCleared: true);
            if (_amount.Unit.Length > 0)
            {
                yield return new TextMark(x + FigureWidth + Space, baseline, _amount.Unit, Face.SemiBold, _unitPoints, IsCleared: true);
            }
        }
    }
}
