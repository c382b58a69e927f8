using CsCheck;
using MenuLab.Core.Drafts.Reading;

namespace MenuLab.Core.Tests.Reading;

public sealed class SpellingTests
{
    [Theory]
    [InlineData("lemon", "lemon", 0)]
    [InlineData("lemmon", "lemon", 1)]
    [InlineData("lemno", "lemon", 1)]
    [InlineData("leme", "lime", 1)]
    [InlineData("leme", "lemon", 2)]
    [InlineData("", "lemon", 5)]
    public void Slips_are_counted_one_for_each_letter_and_each_swap(string a, string b, int slips) => Assert.Equal(slips, Spelling.Distance(a, b));

    [Fact]
    public void A_word_with_one_letter_changed_is_found_within_one_slip()
    {
        string[] words = ["lemon", "grapefruit", "hibiscus", "vermouth", "rosemary"];
        var spelling = new Spelling();
        foreach (var word in words)
        {
            spelling.Add(word);
        }
        spelling.Seal();
        Gen.Select(Gen.Int[0, words.Length - 1], Gen.Int[0, 30], Gen.Char['a', 'z'], Gen.Int[0, 2]).Sample(x =>
        {
            var word = words[x.Item1];
            var at = x.Item2 % word.Length;
            var slip = x.Item4 switch { 0 => word.Remove(at, 1), 1 => word.Insert(at, x.Item3.ToString()), _ => word.Remove(at, 1).Insert(at, x.Item3.ToString()) };
            return spelling.Find(slip, 1).Any(n => n.Word == word);
        });
    }

    [Theory]
    [InlineData("Crème de Coco", "creme de coco")]
    [InlineData("Weißwein", "weisswein")]
    [InlineData("blanc d’œuf", "blanc d’oeuf")]
    [InlineData("jabłko", "jablko")]
    [InlineData("ＭＬ", "ml")]
    [InlineData("e\u0301rable", "erable")]
    public void Plain_form_drops_marks_and_case(string text, string plain) => Assert.Equal(plain, PlainText.Of(text));

    [Fact]
    public void Plain_form_survives_half_a_surrogate_pair() => Assert.Equal("ab", PlainText.Of("a\uD83Db\uDC4D"));
}
