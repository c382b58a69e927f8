using CsCheck;
using MenuLab.Core.Specs;
using MenuLab.Print.Fonts;

namespace MenuLab.Print.Tests;

public class LayoutTests
{
    private static readonly string[] Words =
    [
        "sea", "buckthorn", "quince", "fennel", "barley,", "gentian-root", "verjus", "pear", "beet", "hibiscus", "smoked", "½", "200 g", "1 ⅔ fl oz", "Åkerbär", "šípek",
        "Donaudampfschifffahrtsgesellschaftskapitänslikörverkostungsprotokollblattrand", "to", "the", "of", "i",
    ];

    private static readonly Gen<string> Text = OneOf(Words).Array[1, 12].Select(words => string.Join(' ', words));

    private static readonly Gen<string> ShortText = OneOf(Words[..^5]).Array[1, 3].Select(words => string.Join(' ', words));

    private static readonly Gen<CardAmount> Amount = OneOf(
        Demo.Amount("45 mL"), Demo.Amount("1 ½ fl oz"), Demo.Amount("2–3 dashes"), Demo.Amount("12.5 g"), CardAmount.None, Demo.Amount("top"), Demo.Amount("≈ 135 mL"), Demo.Amount("½ bar spoon"));

    [Fact]
    public void Small_cards_always_fit_and_nothing_on_them_overlaps_or_leaves_the_margin() =>
        Card(ShortText, lines: 8, steps: 3, cautions: 1).Select(OneOf(Enum.GetValues<CardPaper>())).Sample((card, paper) =>
        {
            var printed = CardPrinter.Draw([card], paper);
            Assert.True(printed.IsOk, printed.IsOk ? "" : printed.Problems[0].Message);
            AssertClean(printed.Value, paper);
        }, iter: 150);

    [Fact]
    public void Cards_of_any_length_are_clean_or_refused()
    {
        var (clean, refused) = (0, 0);
        Card(Text, lines: 18, steps: 10, cautions: 4).Select(OneOf(Enum.GetValues<CardPaper>())).Sample((card, paper) =>
        {
            var printed = CardPrinter.Draw([card], paper);
            if (printed.IsOk)
            {
                Interlocked.Increment(ref clean);
                AssertClean(printed.Value, paper);
            }
            else
            {
                Interlocked.Increment(ref refused);
                Assert.Contains("does not fit", Assert.Single(printed.Problems).Message, StringComparison.Ordinal);
            }
        }, iter: 300);
        Assert.True(clean >= 20 && refused >= 20, $"{clean} clean, {refused} refused: the cases say too little.");
    }

    [Fact]
    public void Nothing_that_was_handed_in_is_left_out_however_small_the_setting()
    {
        Card(Text, lines: 14, steps: 8, cautions: 3).Sample(card =>
        {
            var printed = CardPrinter.Draw([card], CardPaper.A6);
            if (!printed.IsOk)
            {
                return;
            }
            // Broken words come apart, so spaces are left out of the comparison.
            var text = Packed(PrintedText.Of(printed.Value.Pdf));
            Assert.All(
                [card.Name, card.Issue, card.Allergens, card.CrossContact, card.Strength, card.Energy, .. card.Steps, .. card.Cautions, .. card.Facts.Select(f => f.Text),
                 .. card.Lines.SelectMany(l => (string[])[$"{l.Amount}", $"{l.Other}", l.Name, l.Detail])],
                part => Assert.Contains(Packed(new Spelling().Set(part, "")), text, StringComparison.Ordinal));
        }, iter: 60);
    }

    [Theory]
    [InlineData(10)]
    [InlineData(25)]
    [InlineData(90)]
    public void A_paragraph_stays_in_its_width_and_loses_no_letter(double width) =>
        Text.Sample(text =>
        {
            var spelled = new Spelling().Set(text, "");
            var paragraph = new Paragraph([new Run(spelled, Face.Regular)], 9, width);
            var marks = paragraph.At(0, 0).ToList();
            Assert.Equal(Packed(spelled), Packed(string.Concat(marks.Select(mark => mark.Text))));
            Assert.All(marks, mark => Assert.True(mark.X + Type.Width(mark.Text, mark.Face, mark.Points) <= width + 1e-9));
            Assert.True(marks.Max(mark => mark.Baseline) + Type.Descent(9) <= paragraph.Height + 1e-9);
        });

    [Fact]
    public void A_line_never_begins_with_the_unit_of_a_figure()
    {
        var text = Spelling.KeepUnits("Add 30 mL and 30 mL and 30 mL and 1 ½ fl oz and 30 mL.");
        for (var width = 18.0; width < 60; width += 0.5)
        {
            var lines = new Paragraph([new Run(text, Face.Regular)], 9, width).At(0, 0);
            Assert.All(lines, line => Assert.DoesNotMatch("^(mL|fl|oz|½)", line.Text));
        }
    }

    [Fact]
    public void The_ladder_is_drawn_to_scale()
    {
        var ladder = new Ladder(Demo.LowWaterOrchard, isSlim: false);
        var marks = ladder.At(0, 0, 80).OfType<LineMark>().ToList();
        var washLine = marks.MaxBy(line => line.Width)!.Y1;
        var zero = marks.Max(line => Math.Max(line.Y1, line.Y2));
        // The strokes that carry the totals are the only ones of this width.
        var totals = marks.Where(line => line.Width == 0.4).Select(line => (zero - line.Y1) / (zero - washLine) * 165).Order().ToList();
        double[] expected = [0, 45, 60, 75, 90, 110, 117.5, 153.5];
        Assert.Equal(expected.Length, totals.Count);
        Assert.All(expected.Zip(totals), pair => Assert.Equal(pair.First, pair.Second, 1e-6));
    }

    [Fact]
    public void A_drink_over_its_wash_line_is_drawn_over_it()
    {
        var marks = new Ladder(Demo.NorthernNames, isSlim: false).At(0, 0, 80).ToList();
        var stroke = marks.OfType<LineMark>().MaxBy(line => line.Width)!;
        Assert.Contains(marks.OfType<LineMark>(), line => Math.Min(line.Y1, line.Y2) < stroke.Y1 - 2);
        Assert.Contains(marks.OfType<TextMark>(), text => text.Text.Contains("170", StringComparison.Ordinal));
    }

    private static void AssertClean(PrintedCards printed, CardPaper cardPaper)
    {
        var paper = Paper.Of(cardPaper);
        foreach (var boxes in printed.Pages)
        {
            Assert.All(boxes, box =>
            {
                Assert.InRange(box.Left, Paper.SafeMargin, box.Right);
                Assert.InRange(box.Top, Paper.SafeMargin, box.Bottom);
                Assert.True(box.Right <= paper.Width - Paper.SafeMargin && box.Bottom <= paper.Height - Paper.SafeMargin);
            });
            var texts = boxes.Where(box => box.Mark == MarkKind.Text && box.Text.Length > 0).ToList();
            Assert.NotEmpty(texts);
            Assert.All(texts, box => Assert.InRange(box.Points, 7, 40));
            // Strokes may meet strokes (a bracket and its scale); nothing may touch a text.
            var others = texts.Concat(boxes.Where(box => box.Mark == MarkKind.Stroke)).ToList();
            for (var i = 0; i < texts.Count; i++)
            {
                for (var j = i + 1; j < others.Count; j++)
                {
                    if (Overlap(texts[i], others[j]))
                    {
                        Assert.Fail($"{texts[i]} and {others[j]}");
                    }
                }
            }
        }
    }

    private static bool Overlap(DrawnBox a, DrawnBox b) =>
        Math.Min(a.Right, b.Right) - Math.Max(a.Left, b.Left) > 1e-6 && Math.Min(a.Bottom, b.Bottom) - Math.Max(a.Top, b.Top) > 1e-6;

    private static string Packed(string text) => string.Concat(text.Where(c => !char.IsWhiteSpace(c)));

    private static Gen<T> OneOf<T>(params T[] from) => Gen.Int[0, from.Length - 1].Select(i => from[i]);

    private static Gen<CardContent> Card(Gen<string> text, int lines, int steps, int cautions) =>
        from name in text
        from facts in text.Array[0, 5]
        from set in Gen.Select(Amount, Amount, text, text).Array[0, lines]
        from poured in Gen.Double[2, 60].Array[0, lines]
        from melt in Gen.Double[0, 80]
        from ice in Gen.Double[0, 200]
        from wash in Gen.Double[50, 500]
        from hasWash in Gen.Bool
        from isDraft in Gen.Bool
        from stepTexts in text.Array[0, steps]
        from cautionTexts in text.Array[0, cautions]
        from open in text
        select Demo.LowWaterOrchard with
        {
            Name = name,
            IsDraft = isDraft,
            Facts = [.. facts.Select((fact, i) => new CardFact(((string[])["Method", "Ice", "Glass", "Rim", "Garnish"])[i], fact))],
            Lines = [.. set.Select((line, i) => new CardLine(i + 1, line.Item1, line.Item2, line.Item3, line.Item4))],
            Ladder = Demo.Rungs(poured, melt, ice),
            WashLineMillilitres = hasWash ? wash : null,
            Steps = stepTexts,
            Cautions = cautionTexts,
            OpenAllergens = open,
        };
}
