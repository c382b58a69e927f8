using System.Globalization;
using CsCheck;
using MenuLab.Core.House;

namespace MenuLab.Core.Tests.House;

public sealed class HouseParseTests
{
    [Theory]
    [InlineData("22.5", 22.5)]
    [InlineData("22,5", 22.5)]
    [InlineData(" 7 ", 7)]
    [InlineData(".75", 0.75)]
    [InlineData(",5", 0.5)]
    [InlineData("0,125", 0.125)]
    [InlineData("3/4", 0.75)]
    [InlineData("1 1/2", 1.5)]
    [InlineData("1-1/2", 1.5)]
    [InlineData("½", 0.5)]
    [InlineData("1½", 1.5)]
    [InlineData("2 ¼", 2.25)]
    [InlineData("2⁄3", 2.0 / 3)]
    [InlineData("1.125", 1.125)]
    [InlineData("٤٥", 45)]
    [InlineData("-2,5", -2.5)]
    [InlineData("1500", 1500)]
    public void A_number_is_read_with_either_separator_and_as_a_fraction(string typed, double expected)
    {
        var parsed = HouseParse.Number(typed);
        Assert.True(parsed.IsRead, parsed.Echo);
        Assert.Equal(expected, parsed.Value, 1e-12);
    }

    [Theory]
    [InlineData("1,500", 1.5, 1500)]
    [InlineData("1.500", 1.5, 1500)]
    [InlineData("12,750", 12.75, 12750)]
    [InlineData("1'500", 1.5, 1500)]
    public void Grouping_is_asked_back_and_never_guessed(string typed, double asDecimal, double grouped)
    {
        var parsed = HouseParse.Number(typed);
        Assert.Equal(NumberOutcome.TwoReadings, parsed.Outcome);
        Assert.Equal(asDecimal, parsed.Value, 1e-12);
        Assert.Equal(grouped, parsed.Grouped);
        Assert.Contains(HouseParse.Echo(grouped), parsed.Echo, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData(null)]
    [InlineData("abc")]
    [InlineData("1o")]
    [InlineData("2.5.1")]
    [InlineData("1,500,000")]
    [InlineData("1.500,5")]
    [InlineData("1/0")]
    [InlineData("5/4")]
    [InlineData("1 500")]
    [InlineData("1e3")]
    [InlineData("NaN")]
    [InlineData("Infinity")]
    [InlineData("--5")]
    [InlineData("5,")]
    [InlineData("1½½")]
    [InlineData("99999999999999999999999999")]
    public void What_is_no_number_says_how_to_write_one(string? typed)
    {
        var parsed = HouseParse.Number(typed);
        Assert.Equal(NumberOutcome.NotANumber, parsed.Outcome);
        Assert.True(double.IsNaN(parsed.Value));
        Assert.NotEmpty(parsed.Echo);
    }

    [Theory]
    [InlineData("de-DE")]
    [InlineData("fr-FR")]
    [InlineData("en-US")]
    [InlineData("ar-EG")]
    public void The_machines_culture_changes_nothing(string culture)
    {
        var before = CultureInfo.CurrentCulture;
        CultureInfo.CurrentCulture = new CultureInfo(culture);
        try
        {
            Assert.Equal(22.5, HouseParse.Number("22.5").Value);
            Assert.Equal(22.5, HouseParse.Number("22,5").Value);
            Assert.Equal("22.5", HouseParse.Number("22,5").Echo);
            Assert.Equal(NumberOutcome.TwoReadings, HouseParse.Number("1.500").Outcome);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void What_it_echoes_reads_as_the_same_number() =>
        Gen.Int[0, 1_999_999].Select(i => i / 100.0).Sample(value =>
        {
            var again = HouseParse.Number(HouseParse.Echo(value));
            return again.IsRead && Math.Abs(again.Value - value) < 1e-9;
        });

    [Fact]
    public void No_text_throws_and_none_reads_as_infinite() =>
        Gen.String.Sample(text => !double.IsInfinity(HouseParse.Number(text).Value));
}
