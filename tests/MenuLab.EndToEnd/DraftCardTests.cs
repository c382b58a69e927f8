using System.Net;
using UglyToad.PdfPig;

namespace MenuLab.EndToEnd;

public class DraftCardTests(SiteAndBrowser run)
{
    private const string Drink = "Low Water\n45 ml black tea, brewed\n22.5 ml honey syrup\n15 ml lemon juice\na whisper of beet leaf\nShake 12 s, fine strain into a coupe\nGarnish: rosemary sprig";

    [Theory]
    [InlineData("A6", 105.0, 148.0)]
    [InlineData("FourBySix", 101.6, 152.4)]
    [InlineData("SheetA4OfFour", 210.0, 297.0)]
    public async Task A_typed_drink_prints_as_a_draft_that_names_what_is_still_open(string paper, double width, double height)
    {
        using var client = new HttpClient();
        using var answer = await client.PostAsync(run.Address + "/card/draft", Form(Drink, paper));

        Assert.Equal((HttpStatusCode.OK, "application/pdf"), (answer.StatusCode, answer.Content.Headers.ContentType?.MediaType));
        using var pdf = PdfDocument.Open(await answer.Content.ReadAsByteArrayAsync());
        var page = Assert.Single(pdf.GetPages());
        Assert.Equal(width, page.Width / 72 * 25.4, 0.1);
        Assert.Equal(height, page.Height / 72 * 25.4, 0.1);
        var text = string.Join(' ', page.GetWords().Select(w => w.Text));
        foreach (var word in new[] { "Low", "Water", "DRAFT", "22.5", "whisper", "Coupe" })
        {
            Assert.Contains(word, text, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task A_text_without_a_line_is_answered_with_what_to_do()
    {
        using var client = new HttpClient();
        using var answer = await client.PostAsync(run.Address + "/card/draft", Form("Low Water", "A6"));

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains("no line to print yet", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    private static FormUrlEncodedContent Form(string text, string paper) => new(new Dictionary<string, string> { ["text"] = text, ["unit"] = "mL", ["paper"] = paper });
}
