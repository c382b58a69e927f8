using System.Text;
using MenuLab.Core.Specs;
using MenuLab.Print.Fonts;
using PdfSharp.Drawing;
using PdfSharp.Pdf;

namespace MenuLab.Print.Tests;

public class SpellingTests
{
    [Fact]
    public void Each_face_has_the_words_and_signs_that_the_program_prints()
    {
        const string signs = "½¼¾⅓⅛⅜⅝⅞≈≤≥–·•°%&’‘“”×→µ0123456789()/:;,.";
        var letters = "ÅåÄäÖöÆæØøÉéÈèÊêËëÇçÑñŁłŠšŽžČčŘřÝýÍíÁáÚúŮůĚěŇňŤťĎďŐőŰűŞşĞğİıÞþÐðßŒœĄąĘęŚśŹźŻżĆćŃńΑαΩωЖжЯя";
        Assert.All(Enum.GetValues<Face>(), face => Assert.All((signs + letters).EnumerateRunes(), sign => Assert.True(Inter.File(face).Has(sign), sign.ToString())));
    }

    [Theory]
    [InlineData("⅔", "2/3")]                       // the faces lack it
    [InlineData("1⅔ fl oz", "1 2/3 fl oz")]
    [InlineData("1 ⅔ fl oz", "1 2/3 fl oz")]
    [InlineData("ﬁne-strain", "fine-strain")]
    [InlineData("Åkerbär", "Åkerbär")]            // decomposed accents are composed
    [InlineData("  two \t lines\nrun  in ", "two lines run in")]
    [InlineData("soft\u00ADhyphen", "softhyphen")]
    public void What_can_be_written_another_way_is(string text, string expected)
    {
        var spelling = new Spelling();
        Assert.Equal(expected, spelling.Set(text, "Name").Replace(Spelling.KeptSpace, ' '));
        Assert.Empty(spelling.Problems);
    }

    [Theory]
    [InlineData("tick ☐ here", "☐", "U+2610")]
    [InlineData("茶", "茶", "U+8336")]
    [InlineData("شاي", "ش", "U+0634")]
    [InlineData("🍐 pear", "🍐", "U+1F350")]
    [InlineData("x\u030Cy", "\u030C", "U+030C")]    // a mark that composes with nothing would land beside its letter
    public void What_cannot_be_written_is_a_problem_that_names_the_character(string text, string character, string code)
    {
        var spelling = new Spelling();
        spelling.Set(text, "Line 3");
        var problem = spelling.Problems[0];
        Assert.Equal("Line 3", problem.Field);
        Assert.Contains($"\"{character}\" ({code})", problem.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("with 200 g of ice", "with 200_g of ice")]
    [InlineData("1 ½ fl oz of it", "1_½_fl_oz of it")]
    [InlineData("at ≤ 4 °C", "at ≤_4_°C")]
    [InlineData("1 piece Barley cracker", "1_piece Barley cracker")]
    [InlineData("½ bar spoon salt", "½_bar_spoon salt")]
    [InlineData("5 grapes", "5 grapes")]
    [InlineData("0.5 % ABV", "0.5_% ABV")]
    public void A_figure_keeps_its_unit(string text, string kept) => Assert.Equal(kept, Spelling.KeepUnits(text).Replace(Spelling.KeptSpace, '_'));

    [Fact]
    public void Every_character_of_the_drawn_text_has_a_glyph_in_its_face()
    {
        foreach (var card in (CardContent[])[Demo.LowWaterOrchard, Demo.SpecOnIce, Demo.HarbourMasterPunch, Demo.NorthernNames])
        {
            var text = string.Concat(CardPrinter.Draw([card], CardPaper.A6).Value.Pages[0].Select(box => box.Text));
            Assert.NotEmpty(text);
            Assert.All(text.EnumerateRunes(), rune => Assert.True(Inter.File(Face.Regular).Has(rune), rune.ToString()));
        }
    }

    [Theory]
    [InlineData("Low Water Orchard")]
    [InlineData("1 ½ fl oz – 22.5 mL")]
    [InlineData("Žitný čaj, pražený")]
    public void Our_widths_are_those_that_the_PDF_library_draws_with(string text)
    {
        using var document = new PdfDocument();
        using var graphics = XGraphics.FromPdfPage(document.AddPage());
        Assert.All(Enum.GetValues<Face>(), face =>
            Assert.Equal(graphics.MeasureString(text, Inter.At(face, 100)).Width, Inter.File(face).Ems(text) * 100, 0.05));
    }

    [Fact]
    public void The_licence_of_the_faces_goes_along_with_their_own_copyright_line()
    {
        var licence = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Inter-OFL.txt"));
        Assert.Contains("SIL OPEN FONT LICENSE", licence, StringComparison.Ordinal);
        var copyright = licence.Split('\n')[0].Trim();
        Assert.All(Enum.GetValues<Face>(), face =>
            Assert.Contains(copyright, Encoding.BigEndianUnicode.GetString(Inter.File(face).Bytes) + Encoding.BigEndianUnicode.GetString(Inter.File(face).Bytes.AsSpan(1)), StringComparison.Ordinal));
    }
}
