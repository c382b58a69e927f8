using CsCheck;
using MenuLab.Core.Drafts;

namespace MenuLab.Core.Tests.Drafts;

public class StylesAndClaimsTests
{
    [Fact]
    public void Style_keys_are_unique_fit_the_column_and_are_found_again()
    {
        Assert.Equal(Styles.All.Count, Styles.All.Select(s => s.Key).Distinct().Count());
        Assert.Equal(Styles.All.Count, Styles.All.Select(s => s.Name).Distinct().Count());
        Assert.All(Styles.All, s => Assert.Matches("^[a-z_]{3,60}$", s.Key));
        Assert.All(Styles.All, s => Assert.Same(s, Styles.Find(s.Key)));
        Assert.InRange(Styles.All.Count, 8, 14);
    }

    [Fact]
    public void An_unknown_style_keeps_its_key_and_none_is_empty()
    {
        Assert.Equal(("Short sour", "tidal", ""), (Styles.NameOf("short_sour"), Styles.NameOf("tidal"), Styles.NameOf(null)));
        Assert.Null(Styles.Find("tidal"));
    }

    // UK DHSC guidance on low-alcohol descriptors, Dec 2018 (0.05, 0.5, 1.2); 27 CFR 7.65, formerly 7.26 (below 0.5).
    [Theory]
    [InlineData("below 0.5 % ABV", 0.5)]
    [InlineData("Under 0,5 % vol", 0.5)]
    [InlineData("less than 0.5 percent alcohol by volume", 0.5)]
    [InlineData("≤ 1.2%", 1.2)]
    [InlineData("at most 8 % ABV, made for lunch", 8)]
    [InlineData("max. 11 % abv", 11)]
    [InlineData("below 0.5 ABV", 0.5)]
    [InlineData("alcohol-free", 0.05)]
    [InlineData("Alcohol free", 0.05)]
    [InlineData("no alcohol", 0.05)]
    [InlineData("without any alcohol", 0.05)]
    [InlineData("0.0", 0.05)]
    [InlineData("0,0 % vol", 0.05)]
    [InlineData("0 % ABV", 0.05)]
    [InlineData("non-alcoholic", 0.5)]
    [InlineData("dealcoholized", 0.5)]
    [InlineData("de-alcoholised wine base", 0.5)]
    [InlineData("low alcohol", 1.2)]
    [InlineData("low in alcohol", 1.2)]
    [InlineData("alcohol-free (below 0.5 % ABV)", 0.05)]
    [InlineData("low alcohol, at most 1.0 % ABV", 1)]
    public void A_claim_names_the_strictest_limit_of_its_words_and_figures(string claim, double limit) => Assert.Equal(limit, Claims.AbvLimit(claim));

    [Theory]
    [InlineData("")]
    [InlineData("vegan")]
    [InlineData("30 % less sugar")]
    [InlineData("below 5 % sugar")]
    [InlineData("less than 2 % fat and 90 kcal")]
    [InlineData("10.0 g of sugar")]
    [InlineData("20.05 batch")]
    [InlineData("with low acid")]
    [InlineData("alcohol of the house")]
    [InlineData("at most 400 % ABV")]
    [InlineData("11 % ABV")]
    public void A_claim_without_a_limit_names_none(string claim) => Assert.Null(Claims.AbvLimit(claim));

    [Fact]
    public void Below_is_told_from_at_most_and_zero_bars_every_line_that_carries_alcohol()
    {
        Assert.True(Claims.LimitOf("below 0.5 % ABV")!.IsBelow);
        Assert.False(Claims.LimitOf("at most 0.5 % ABV")!.IsBelow);
        Assert.True(Claims.LimitOf("at most 0.5 % ABV, less than 0.5 % ABV")!.IsBelow);
        Assert.True(Claims.LimitOf("no alcohol")!.NoneInAnyLine);
        Assert.False(Claims.LimitOf("non-alcoholic")!.NoneInAnyLine);
        Assert.All(new[] { "no alcohol", "non-alcoholic", "low alcohol", "below 2 % ABV" }, c => Assert.Contains("ocal codes decide", Claims.LimitOf(c)!.Source, StringComparison.Ordinal));
    }

    [Fact]
    public void Every_suggestion_names_a_limit_and_fits_a_brief() =>
        Assert.All(Claims.Suggestions, s => Assert.True(Claims.AbvLimit(s) is not null && s.Length <= Brief.TextMaxLength, s));

    [Fact]
    public void Any_figure_below_a_hundred_is_read_as_it_is_written() =>
        Gen.Int[1, 9999].Select(n => n / 100m).Sample(limit =>
            Claims.AbvLimit(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"below {limit:0.##} % ABV")) == (double)limit);

    [Fact]
    public void No_text_makes_it_throw() => Gen.String.Sample(text => Claims.AbvLimit(text) is null or (>= 0 and <= 100));
}
