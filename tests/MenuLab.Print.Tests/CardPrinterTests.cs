using System.Globalization;
using MenuLab.Core.Specs;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Graphics.Operations;
using UglyToad.PdfPig.Tokens;

namespace MenuLab.Print.Tests;

public class CardPrinterTests
{
    private const double PointsPerMillimetre = 72 / 25.4;

    public static TheoryData<string> Cards => ["low-water-orchard", "harbour-master-punch", "northern-names", "spec-on-ice"];

    [Theory]
    [InlineData(CardPaper.A6, 105, 148)]
    [InlineData(CardPaper.FourBySix, 101.6, 152.4)]
    [InlineData(CardPaper.SheetA4OfFour, 210, 297)]
    [InlineData(CardPaper.SheetLetterOfFour, 215.9, 279.4)]
    public void A_card_is_one_page_of_exactly_its_paper(CardPaper paper, double width, double height)
    {
        using var document = PdfDocument.Open(Print(Demo.LowWaterOrchard, paper));
        Assert.Equal(1, document.NumberOfPages);
        var page = document.GetPage(1);
        Assert.Equal(width * PointsPerMillimetre, page.Width, 0.01);
        Assert.Equal(height * PointsPerMillimetre, page.Height, 0.01);
    }

    [Theory]
    [MemberData(nameof(Cards))]
    public void The_text_of_a_card_is_the_approved_one(string name)
    {
        var approved = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Approved", $"{name}.approved.txt"));
        Assert.Equal(approved, PrintedText.Of(Print(Card(name), CardPaper.A6)));
    }

    [Theory]
    [MemberData(nameof(Cards))]
    public void Each_demo_card_fits_on_every_paper(string name) =>
        Assert.All(Enum.GetValues<CardPaper>(), paper => Assert.True(CardPrinter.Print(Card(name), paper).IsOk));

    [Theory]
    [MemberData(nameof(Cards))]
    public void All_text_stands_in_a_structure_element(string name)
    {
        var pdf = Print(Card(name), CardPaper.A6);
        var inElements = PrintedText.Of(pdf).Count(c => !char.IsWhiteSpace(c));
        Assert.Equal(PrintedText.Letters(pdf).Count(letter => !string.IsNullOrWhiteSpace(letter.Value)), inElements);
    }

    [Fact]
    public void The_file_is_tagged_has_a_title_and_says_its_language()
    {
        using var document = PdfDocument.Open(Print(Demo.LowWaterOrchard, CardPaper.A6));
        var catalog = document.Structure.Catalog.CatalogDictionary;
        Assert.True(catalog.ContainsKey(NameToken.Create("StructTreeRoot")));
        Assert.True(catalog.TryGet(NameToken.Create("Lang"), out StringToken language));
        Assert.Equal("en", language.Data);
        Assert.Equal("Low Water Orchard", document.Information.Title);
    }

    [Fact]
    public void The_ladder_is_told_in_words_to_those_who_hear_the_card()
    {
        using var document = PdfDocument.Open(Print(Demo.SpecOnIce, CardPaper.A6));
        var told = document.Structure.CrossReferenceTable.ObjectOffsets.Keys
            .Select(reference => document.Structure.GetObject(reference).Data).OfType<DictionaryToken>()
            .Select(dictionary => dictionary.TryGet(NameToken.Create("Alt"), out StringToken text) ? text.Data : "").Where(text => text.Length > 0);
        Assert.Equal("Running total: 30, ice to 38, to 173, on ice 300 mL; wash line 300 mL", Assert.Single(told));
    }

    [Theory]
    [MemberData(nameof(Cards))]
    public void Faces_are_Inter_embedded_and_cut_down_to_what_is_used(string name)
    {
        var pdf = Print(Card(name), CardPaper.A6);
        using var document = PdfDocument.Open(pdf);
        var embedded = Embedded(document).ToList();
        Assert.InRange(embedded.Count, 3, 6);
        Assert.All(embedded, font =>
        {
            Assert.Matches(@"^[A-Z]{6}\+Inter", font.Name);
            // The whole face is over 300 kB.
            Assert.InRange(font.Bytes, 1000, 100_000);
        });
        Assert.All(document.GetPage(1).Letters, letter => Assert.Contains("Inter", letter.FontName, StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Cards))]
    public void A_card_is_black_on_white_without_any_picture(string name)
    {
        using var document = PdfDocument.Open(Print(Card(name), CardPaper.A6));
        var page = document.GetPage(1);
        Assert.Empty(page.GetImages());
        Assert.All(page.Letters, letter => Assert.Equal((0, 0, 0), letter.Color.ToRGBValues()));
        string[] colours = ["rg", "RG", "g", "G", "k", "K", "sc", "SC", "scn", "SCN"];
        var set = page.Operations.Where(operation => colours.Contains(operation.Operator)).ToList();
        // Strokes are never given a colour: black is what a PDF begins with.
        Assert.NotEmpty(set);
        Assert.All(set, operation => Assert.True(operation
            is SetNonStrokeColorDeviceRgb { R: 0, G: 0, B: 0 } or SetNonStrokeColorDeviceRgb { R: 1, G: 1, B: 1 }));
    }

    [Theory]
    [InlineData(CardPaper.A6)]
    [InlineData(CardPaper.SheetA4OfFour)]
    public void A_draft_says_so_at_the_top_and_across(CardPaper paper)
    {
        var printed = CardPrinter.Draw([Demo.LowWaterOrchard], paper).Value;
        var cards = paper == CardPaper.A6 ? 1 : 4;
        Assert.Equal(cards, PrintedText.Of(printed.Pdf).Split('\n').Count(line => line == "DRAFT"));
        // Five letters, three of them with a hole.
        Assert.Equal(8 * cards, printed.Pages[0].Count(box => box.Mark == MarkKind.Outline));
    }

    [Fact]
    public void The_mark_across_reaches_over_most_of_the_card()
    {
        var across = CardPrinter.Draw([Demo.LowWaterOrchard], CardPaper.A6).Value.Pages[0].Where(box => box.Mark == MarkKind.Outline).ToList();
        Assert.InRange(across.Max(box => box.Right) - across.Min(box => box.Left), 60, 98);
        Assert.InRange(across.Max(box => box.Bottom) - across.Min(box => box.Top), 100, 141);
    }

    [Fact]
    public void A_spec_in_force_is_no_draft_and_says_from_when()
    {
        var printed = CardPrinter.Draw([Demo.SpecOnIce], CardPaper.A6).Value;
        var text = PrintedText.Of(printed.Pdf);
        Assert.DoesNotContain("DRAFT", text, StringComparison.Ordinal);
        Assert.Contains("in force from 2 Nov 2026", text, StringComparison.Ordinal);
        Assert.DoesNotContain(printed.Pages[0], box => box.Mark == MarkKind.Outline);
    }

    [Theory]
    [InlineData(CardPaper.SheetA4OfFour, 105, 148.5)]
    [InlineData(CardPaper.SheetLetterOfFour, 107.95, 139.7)]
    public void A_sheet_carries_four_cards_and_marks_where_to_cut(CardPaper paper, double cardWidth, double cardHeight)
    {
        var boxes = CardPrinter.Draw([Demo.LowWaterOrchard, Demo.SpecOnIce, Demo.HarbourMasterPunch, Demo.NorthernNames], paper).Value.Pages.Single();
        var names = boxes.Where(box => box.Part == PartKind.Heading).Select(box => (box.Text, Column: (int)(box.Left / cardWidth), Row: (int)(box.Top / cardHeight))).ToList();
        Assert.Equal([(0, 0), (1, 0), (0, 1), (1, 1)], names.Select(name => (name.Column, name.Row)));
        Assert.Equal("Åkerbär & šípek", names[3].Text);
        Assert.Equal(3, boxes.Count(box => box.Mark == MarkKind.Stroke && Math.Abs((box.Left + box.Right) / 2 - cardWidth) < 0.01 && box.Right - box.Left < 1));
        Assert.Equal(3, boxes.Count(box => box.Mark == MarkKind.Stroke && Math.Abs((box.Top + box.Bottom) / 2 - cardHeight) < 0.01 && box.Bottom - box.Top < 1));
    }

    [Fact]
    public void One_card_alone_fills_its_sheet_and_a_fifth_begins_a_new_one()
    {
        var alone = PrintedText.Of(Print(Demo.LowWaterOrchard, CardPaper.SheetA4OfFour));
        Assert.Equal(4, alone.Split('\n').Count(line => line == "Low Water Orchard"));
        var five = CardPrinter.Draw([.. Enumerable.Repeat(Demo.SpecOnIce, 5)], CardPaper.SheetA4OfFour).Value;
        Assert.Equal([4, 1], five.Pages.Select(page => page.Count(box => box.Part == PartKind.Heading)));
    }

    [Fact]
    public void A_card_that_cannot_fit_is_a_problem_that_says_what_to_shorten()
    {
        var endless = Demo.LowWaterOrchard with { Steps = [.. Enumerable.Repeat("Stir down, taste, and stir again until the glass is as cold as the hand will stand.", 30)] };
        var problem = Assert.Single(CardPrinter.Print(endless, CardPaper.A6).Problems);
        Assert.Equal("Low Water Orchard", problem.Field);
        Assert.Matches("^The card does not fit on A6: it needs [0-9]+ mm more at the smallest type. Most room goes to the steps: ", problem.Message);
    }

    [Fact]
    public void Amounts_too_wide_for_any_column_are_a_problem_and_no_crash()
    {
        var wide = Demo.LowWaterOrchard with { Lines = [new CardLine(1, new CardAmount(new string('8', 80), "mL"), CardAmount.None, "Verjus", "fridge")] };
        Assert.Contains("no room for the names", Assert.Single(CardPrinter.Print(wide, CardPaper.A6).Problems).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void All_problems_of_all_cards_come_at_once()
    {
        var odd = Demo.LowWaterOrchard with { Name = "Low ☐ Water", Steps = ["Stir 茶."] };
        var problems = CardPrinter.Print([odd, odd with { Name = "Tide ☐" }], CardPaper.A6).Problems;
        Assert.Equal(["Name", "Step 1", "Name", "Step 1"], problems.Select(problem => problem.Field));
    }

    [Fact]
    public void Printing_twice_gives_the_same_text_in_the_same_places()
    {
        var first = CardPrinter.Draw([Demo.HarbourMasterPunch], CardPaper.FourBySix).Value;
        var second = CardPrinter.Draw([Demo.HarbourMasterPunch], CardPaper.FourBySix).Value;
        Assert.Equal(PrintedText.Of(first.Pdf), PrintedText.Of(second.Pdf));
        Assert.Equal(first.Pages[0], second.Pages[0]);
    }

    [Fact]
    public void A_comma_culture_changes_nothing()
    {
        var expected = PrintedText.Of(Print(Demo.HarbourMasterPunch, CardPaper.A6));
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
            Assert.Equal(expected, PrintedText.Of(Print(Demo.HarbourMasterPunch, CardPaper.A6)));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void Eight_documents_on_four_threads_come_out_as_one_by_one()
    {
        CardContent[] cards = [Demo.LowWaterOrchard, Demo.SpecOnIce, Demo.HarbourMasterPunch, Demo.NorthernNames];
        var expected = cards.Select(card => PrintedText.Of(Print(card, CardPaper.A6))).ToList();
        var printed = new string[8];
        Parallel.For(0, 8, new ParallelOptions { MaxDegreeOfParallelism = 4 }, i => printed[i] = PrintedText.Of(Print(cards[i % 4], CardPaper.A6)));
        Assert.Equal([.. expected, .. expected], printed);
    }

    [Fact]
    public void No_card_is_the_callers_mistake() => Assert.Throws<ArgumentException>(() => CardPrinter.Print([], CardPaper.A6));

    private static CardContent Card(string name) => name switch
    {
        "low-water-orchard" => Demo.LowWaterOrchard,
        "harbour-master-punch" => Demo.HarbourMasterPunch,
        "northern-names" => Demo.NorthernNames,
        _ => Demo.SpecOnIce,
    };

    private static byte[] Print(CardContent content, CardPaper paper) => CardPrinter.Print(content, paper).Value;

    private static IEnumerable<(string Name, int Bytes)> Embedded(PdfDocument document)
    {
        foreach (var reference in document.Structure.CrossReferenceTable.ObjectOffsets.Keys)
        {
            if (document.Structure.GetObject(reference).Data is DictionaryToken dictionary
                && dictionary.TryGet(NameToken.Create("FontFile2"), out IndirectReferenceToken file)
                && dictionary.TryGet(NameToken.Create("FontName"), out NameToken name))
            {
                var stream = (StreamToken)document.Structure.GetObject(file.Data).Data;
                yield return (name.Data, stream.Data.Length);
            }
        }
    }
}
