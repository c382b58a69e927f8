using MenuLab.Core.Balance;
using MenuLab.Core.Drafts;
using MenuLab.Core.Drafts.Rounds;
using MenuLab.Core.House;
using MenuLab.Core.Pantry;
using MenuLab.Core.Quantities;
using MenuLab.Web.Features.Bench;
using MenuLab.Web.Features.House;

namespace MenuLab.Web.Features.Rounds;

/// <summary>Works a round out and puts it in the house's words.</summary>
/// <param name="book">What the house has and how it writes.</param>
/// <param name="roles">What its ingredients are there for.</param>
/// <param name="now">The time.</param>
public sealed class RoundInWords(HouseBook book, ILookup<IngredientId, string> roles, DateTimeOffset now)
{
    private const int GramDecimals = 1;

    private readonly PourStock _stock = new(book.Stock.Pantry, book.Stock.Catalogue, book.Stock.Measures, book.Stock.PricePerGram);
    private readonly PourStep _steps = new(book.Grid);

    private HouseFormat Format => book.Format;

    /// <summary>The view.</summary>
    /// <param name="round">The round.</param>
    /// <param name="draft">Its draft as it stands.</param>
    /// <param name="notes">Its notes.</param>
    /// <param name="from">Number of the round that it goes on from; null for none.</param>
    /// <param name="faces">Who may have tasted.</param>
    public RoundView Of(Round round, Draft draft, IReadOnlyList<WrittenNote> notes, int? from, IReadOnlyList<Face> faces)
    {
        var figures = PourBalance.All(round, _stock, Detail.RangesAndShares);
        var touches = new Touches(_stock, _steps, Format, roles);
        return new RoundView
        {
            Id = round.Id,
            Draft = draft.Id,
            DraftName = draft.Name,
            Number = round.Number,
            Told = $"{SizeOf(round.Size)} · {Origin(round, from)} · {Day(round.At)}, {Clock(round.At)}",
            From = round.FromRound,
            Pours = [.. round.Pours.Zip(figures, (pour, f) => Column(round, pour, notes, [.. touches.Of(round, pour.Letter, f)], f))],
            Rows = [.. round.Lines.Select(line => Row(round, line))],
            Figures = FiguresAcross(figures, draft.Brief),
            FiguresAre = figures[0].Tasted.Served is not null ? "as served" : $"before any ice: {figures[0].Tasted.ServedMissingBecause}",
            LeftOut = [.. figures.SelectMany(f => f.Notes).Distinct()],
            SmallTrial = PourBalance.SmallTrial(round, figures[0], Format),
            NextLetter = round.Pours.Count < Round.MostPours ? (PourLetter)round.Pours.Count : null,
            Faces = faces,
            Mix = Mix(round),
            Winner = round.Winner,
            IsEnded = round.EndedAt is not null,
            Ended = round.EndedAt is { } at ? $"{book.NameOf(round.EndedBy!.Value)}, {Day(at)}, {Clock(at)}" : "",
            Reason = round.Winner is { } winner ? Winners.Reason(round, winner, notes, NameOf, Format) : "",
            Iteration = round.Iteration,
            BenchIsOther = Winners.Edits(round, PourLetter.A, draft, _stock.Understand).OfType<StartFrom>().Any(),
            Comma = Format.Numbers == NumberPattern.Comma,
            Now = now,
        };
    }

    /// <summary>The ladder's rungs in words, the last first.</summary>
    public IReadOnlyList<RungRow> Rungs(IReadOnlyList<Rung> rungs) =>
    [
        .. rungs.Reverse().Select(rung =>
        {
            var round = rung.Round;
            var from = rungs.FirstOrDefault(r => r.Round.Id == round.FromRound)?.Round.Number;
            var outcome = round switch
            {
                { Winner: { } letter } => $"{letter} won",
                { EndedAt: not null } => "none won",
                _ when rung.Next is not null => "went on",
                _ => "goes on",
            };
            return new RungRow(
                round.Id, $"Round {Number(round.Number)}", Origin(round, from), outcome, rung.Reason, rung.Tally?.InWords ?? "", round.Iteration, round.EndedAt is null && rung.Next is null);
        }),
    ];

    private string NameOf(IngredientId id) => book.Stock.Pantry.Find(id)?.Name ?? "something";

    private static string Number(int number) => HouseFormat.Plain.Number(number, 0);

    private string Day(DateTimeOffset at) => Format.Day(DateOnly.FromDateTime(book.Site.ClockAt(at)));

    private string Clock(DateTimeOffset at) => HouseFormat.Time(TimeOnly.FromDateTime(book.Site.ClockAt(at)));

    private string SizeOf(RoundSize size) => size.Kind switch
    {
        SizeKind.Half => "half size",
        SizeKind.Third => "a third",
        SizeKind.ByWeight => $"{Format.Amount(size.Grams!.Value)} g each",
        _ => "full size",
    };

    private static string Origin(Round round, int? from) =>
        from is { } number ? $"from {round.FromPour} of round {Number(number)}"
        : round.FromIteration is { } iteration ? $"from the bench, after {Number(iteration)}"
        : "from the bench";

    private RoundRow Row(Round round, PlacedLine line)
    {
        var (content, unit) = (line.Content, line.Content.Amount.Unit);
        var scale = content.Place == Place.In ? round.Share : 1;
        var cells = round.Pours.Select(p => CellOf(round, p.Letter, line)).ToList();
        var shared = cells[0].ToPour is { } each ? AmountWords.Of(each, unit, Format) : unit == Unit.Top ? "top" : "–";
        return new RoundRow(
            line.Line,
            content.Ingredient is { } id ? NameOf(id) : content.Text,
            string.Join(", ", new[] { LineWords.Of(content.Place), content.Treatment, content.Ingredient is null ? "kept as typed, not counted" : "" }.Where(t => t.Length > 0)),
            content.Amount.Value, UnitLabel.Of(unit, false), content.Amount.Value is { } amount ? _steps.Of(unit, amount) : null, scale, shared, cells);
    }

    private Cell CellOf(Round round, PourLetter letter, PlacedLine line)
    {
        var cell = round.Cell(letter, line.Line);
        var (toPour, unit) = (round.ToPour(letter, line), line.Content.Amount.Unit);
        return new Cell(
            letter, cell?.Specified, cell?.Poured, toPour, round.IsChanged(letter, line), round.IsPouredOtherwise(letter, line),
            toPour is { } amount ? AmountWords.Bare(amount, unit, Format) : "",
            cell?.Poured is { } poured ? AmountWords.Bare(poured, unit, Format) : "",
            // The batch's own name comes with the batches.
            cell?.Batch is { } batch ? batch.ToString("N")[..4] : "");
    }

    private PourColumn Column(Round round, Pour pour, IReadOnlyList<WrittenNote> notes, IReadOnlyList<Touch> touches, PourFigures figures)
    {
        var own = WrittenNote.ThatStand(notes).Where(n => n.Note.Letter == pour.Letter).ToList();
        var tasted = own.Select(n => n.Note.Moment).OfType<TasteMoment>().ToHashSet();
        var glass = pour.PouredAt is { } at ? StabilityTastes.Glass(at, now, tasted) : [];
        var bottle = pour.BottledOn is { } on ? StabilityTastes.Bottle(on, book.Site.DayOf(now), tasted) : [];
        return new PourColumn(
            pour.Letter, pour.PouredAt, NoteTally.Of(notes, pour.Letter).InWords, touches,
            [.. own.AsEnumerable().Reverse().Select(InWords)],
            [
                .. glass.Select(t => new PlannedTaste(t.Moment, RoundKeys.InWords(t.Moment), t.State, Clock(t.At))),
                .. bottle.Select(t => new PlannedTaste(t.Moment, RoundKeys.InWords(t.Moment), t.State, Format.Day(t.On))),
            ],
            pour.BottledOn is { } day ? Format.Day(day) : "",
            new TastePlot(
                [.. tasted.Order().Select(m => NoteTally.Of(notes, pour.Letter, m) is var tally ? new VerdictCount(m, tally.No, tally.Maybe, tally.Yes) : null!)],
                [.. tasted.Order().Select(m => Wanted(notes, pour.Letter, m)).Where(w => w.Length > 0)],
                AsServed(figures)));
    }

    private static string Wanted(IReadOnlyList<WrittenNote> notes, PourLetter letter, TasteMoment moment)
    {
        var said = RoundWords.Notes([.. WrittenNote.ThatStand(notes).Where(n => n.Note.Moment == moment)], letter);
        return said.Length == 0 ? "" : $"{RoundKeys.InWords(moment)}: {said}";
    }

    private string AsServed(PourFigures figures)
    {
        if (figures.Tasted.Served is not { } served)
        {
            return "";
        }
        var (dilution, celsius) = (served[Metric.Dilution], served[Metric.FinalTemperature]);
        return string.Join(", ", new[]
        {
            dilution.Certainty == Certainty.Unknown ? "" : $"dilution {Format.Percent(dilution.Value)}",
            celsius.Certainty == Certainty.Unknown ? "" : Format.Degrees(celsius.Value),
        }.Where(t => t.Length > 0));
    }

    private Said InWords(WrittenNote note)
    {
        var wishes = note.Note.Wishes.Select(RoundWords.Of).Concat(note.Note.Verdict is { } verdict ? [verdict.ToString().ToLowerInvariant()] : []);
        var moment = note.Note.Moment is { } m ? RoundKeys.InWords(m) + " · " : "";
        return new Said(
            string.Join(", ", note.Tasters.Select(book.NameOf)), moment + Clock(note.At), string.Join(", ", wishes), note.Note.Words, note.Note.Attachments);
    }

    private List<FigureAcross> FiguresAcross(IReadOnlyList<PourFigures> pours, Brief brief)
    {
        var remarks = pours.Select(p => BriefRemark.Of(brief, p.Whole, Format, book.Site.Currency, (_, _) => []).Where(r => r.Metric is not null).ToList()).ToList();
        return
        [
            new("sweet", FigureWords.Of(Metric.Sugar), Metrics.Info(Metric.Sugar).Unit, [.. pours.Select(p => Figure(Metric.Sugar, p.Sweet, "", []))]),
            new("acid", FigureWords.Of(Metric.Acid), "as citric, and sugar to acid",
                [.. pours.Select(p => Figure(Metric.Acid, p.Acid, p.Ratio.Certainty == Certainty.Unknown ? "" : $"{Format.Value(p.Ratio, Metrics.Info(Metric.SugarAcidRatio).Digits)} to 1", []))]),
            new("strength", FigureWords.Of(Metric.Abv), Metrics.Info(Metric.Abv).Unit, [.. pours.Select((p, i) => Figure(Metric.Abv, p.Strength, "", remarks[i]))]),
            new("glass", "Glass", "mL, against the wash line", [.. pours.Select(Glass)]),
            new("cost", FigureWords.Of(Metric.Cost), "net, a whole drink", [.. pours.Select((p, i) => Cost(p, remarks[i]))]),
        ];
    }

    private FigureInCell Figure(Metric metric, Estimate estimate, string small, IReadOnlyList<BriefRemark> remarks)
    {
        var info = Metrics.Info(metric);
        var remark = remarks.FirstOrDefault(r => r.Metric == metric);
        var sentence = $"{FigureWords.Of(metric)} {Format.Sentence(estimate, info.Digits)}{(remark is null ? "" : ", " + remark.Sentence)}";
        // Acid differs in the second decimal; of everything else a glance takes no more than its range deserves.
        return new FigureInCell(Format.Value(estimate, metric == Metric.Acid ? 2 : metric == Metric.Sugar ? 1 : info.Digits), small, Mark(estimate, remark is { IsOff: true }), sentence);
    }

    private FigureInCell Glass(PourFigures pour)
    {
        var (volume, fill) = (pour.Volume, pour.GlassFill);
        // The printed figure decides, so that a mark never contradicts it.
        var over = fill.Certainty != Certainty.Unknown && Math.Round(fill.Value, MidpointRounding.AwayFromZero) > 100;
        var small = fill.Certainty == Certainty.Unknown ? "no glass named" : $"{Format.Percent(fill.Value)} full";
        return new FigureInCell(
            Format.Value(volume, 0), small, Mark(volume, over), $"Volume {Format.Sentence(volume, 0)}, {(fill.Certainty == Certainty.Unknown ? "glass fill unknown" : $"{Format.Percent(fill.Value)} of the wash line")}");
    }

    private FigureInCell Cost(PourFigures pour, IReadOnlyList<BriefRemark> remarks)
    {
        var remark = remarks.FirstOrDefault(r => r.Metric == Metric.Cost);
        var known = pour.Cost.Certainty != Certainty.Unknown;
        var least = pour.Cost.Certainty == Certainty.AtLeast ? "at least " : "";
        var money = known ? Format.Money(pour.Cost.Value, book.Site.Currency) : HouseFormat.Unknown;
        return new FigureInCell(money, least.Trim(), Mark(pour.Cost, remark is { IsOff: true }), $"Cost {least}{money}{(remark is null ? "" : ", " + remark.Sentence)}");
    }

    private static FigureMark Mark(Estimate estimate, bool isOver) => isOver ? FigureMark.Over : estimate.Certainty == Certainty.Plain ? FigureMark.Inside : FigureMark.Open;

    private MixOnce Mix(Round round)
    {
        var part = SharedPart.Of(round, _stock.Understand);
        var count = part.Glasses.Count;
        return new MixOnce(
            // Nobody measures a jug in drops or eighths of an ounce.
            [.. part.Jug.Select(p => p.Millilitres is { } millilitres ? Portion(p) with { Amount = $"{Format.Number(millilitres, 1)} mL" } : Portion(p))],
            $"{Format.Number(part.JugMillilitres, 1)} mL, {Grams(part.JugGrams)}",
            $"for {Number(count)} pours, with {Grams(part.SpareGrams)} to spare",
            [
                .. part.Glasses.Select(g => new GlassRow(
                    g.Letter,
                    part.Jug.Count == 0 ? null : new PortionRow("from the jug", $"{Format.Number(g.SharedMillilitres, 1)} mL", Grams(g.SharedGrams)),
                    [.. g.Own.Select(Portion)], $"{Format.Number(g.Millilitres, 1)} mL, {Grams(g.Grams)}", [.. g.Later.Select(Portion)])),
            ]);
    }

    private PortionRow Portion(Portion portion) => new(
        portion.Ingredient is { } id ? NameOf(id) : portion.Text,
        portion.Amount is { } amount ? RoundWords.WithUnit(Math.Round(amount, 2), portion.Unit, Format) : portion.Unit == Unit.Top ? "top" : "",
        portion.Grams is { } grams ? Grams(grams) : "");

    private string Grams(double grams) => Format.Number(grams, GramDecimals) + " g";
}
