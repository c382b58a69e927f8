using MenuLab.Core.House;

namespace MenuLab.Core.Tests.House;

public class SearchNameTests
{
    [Theory]
    [InlineData("Åkerbär", "AKERBAR")]
    [InlineData("Purée  de\u00a0coing ", "PUREE DE COING")]
    [InlineData("½ tea", "1⁄2 TEA")]
    [InlineData("Ｆｅｎｎｅｌ", "FENNEL")]
    [InlineData("røgsalt", "RØGSALT")]
    [InlineData("  ", "")]
    public void A_name_is_searched_without_marks_case_or_double_blanks(string name, string expected) =>
        Assert.Equal(expected, SearchName.Of(name));

    [Fact]
    public void A_search_name_is_its_own_search_name() =>
        Assert.Equal(SearchName.Of("Crème de pêche"), SearchName.Of(SearchName.Of("Crème de pêche")));
}
