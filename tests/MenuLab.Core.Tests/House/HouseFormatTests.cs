using System.Globalization;
using CsCheck;
using MenuLab.Core.House;
using MenuLab.Core.Quantities;

namespace MenuLab.Core.Tests.House;

public class HouseFormatTests
{
    // The figures of the drawn bench: value, interval, decimals at most, and how a person would say it.
    [Theory]
    [InlineData(11.2, 10.4, 12.0, 2, "11.2", "10.4–12.0")]
    [InlineData(0.72, 0.65, 0.79, 3, "0.72", "0.65–0.79")]
    [InlineData(15.5, 14.1, 16.9, 1, "15.5", "14.1–16.9")]
    [InlineData(0.02, 0, 0.06, 2, "0.02", "0.00–0.06")]
    [InlineData(151, 146, 156, 1, "151", "146–156")]
    [InlineData(18.2, 15.1, 21.3, 1, "18", "15–21")]
    [InlineData(3.031, 2.99, 3.07, 2, "3.03", "2.99–3.07")]
    [InlineData(-1.2, -3.2, 0.8, 1, "−1", "−3 to 1")]
    public void A_figure_is_no_finer_than_its_uncertainty(double value, double low, double high, int most, string figure, string likely)
    {
        var estimate = new Estimate(value, low, high, "g", 0);
        Assert.Equal(figure, HouseFormat.Plain.Value(estimate, most));
        Assert.Equal(likely, HouseFormat.Plain.Likely(estimate, most));
    }

    [Fact]
    public void A_figure_without_a_range_prints_all_its_decimals_and_one_number_as_range()
    {
        var exact = new Estimate(12.5, 12.5, 12.5, "% vol", 0);
        Assert.Equal("12.50", HouseFormat.Plain.Value(exact, 2));
        Assert.Equal("12.50", HouseFormat.Plain.Likely(exact, 2));
    }

    [Fact]
    public void Exactly_nothing_is_zero_without_decimals() =>
        Assert.Equal("0", HouseFormat.Plain.Value(new Estimate(0, 0, 0, "g", 0), 3));

    [Fact]
    public void Above_five_per_cent_unknown_a_figure_is_a_lower_bound_without_a_range()
    {
        var estimate = new Estimate(0.41, 0.38, 0.44, "g/100 mL", 13);
        Assert.Equal("at least 0.41", HouseFormat.Plain.Value(estimate, 3));
        Assert.Equal("", HouseFormat.Plain.Likely(estimate, 3));
        Assert.Equal("at least 0.41 g/100 mL, unknown for 13 % of the volume", HouseFormat.Plain.Sentence(estimate, 3));
    }

    [Theory]
    [InlineData(0.41, 60, "unknown, unknown for 60 % of the volume")]
    [InlineData(double.NaN, 0, "unknown")]
    public void What_nobody_knows_is_a_word_without_a_unit(double value, double unknown, string sentence) =>
        Assert.Equal(sentence, HouseFormat.Plain.Sentence(new Estimate(value, value, value, "g", unknown), 2));

    [Fact]
    public void A_plain_figure_reads_with_unit_and_range() =>
        Assert.Equal("11.2 g/100 mL, likely 10.4–12.0", HouseFormat.Plain.Sentence(new Estimate(11.2, 10.4, 12.0, "g/100 mL", 0), 2));

    [Fact]
    public void A_pure_number_has_no_blank_at_its_end() =>
        Assert.Equal("3.03, likely 2.99–3.07", HouseFormat.Plain.Sentence(new Estimate(3.03, 2.99, 3.07, "", 0), 2));

    [Theory]
    [InlineData(-0.04, 1, "0.0")]
    [InlineData(-1.25, 2, "−1.25")]
    [InlineData(0.125, 2, "0.13")]
    [InlineData(1234.5, 1, "1234.5")]
    [InlineData(double.NaN, 1, "unknown")]
    public void Numbers_round_half_away_from_zero_without_grouping_or_negative_zero(double value, int decimals, string text) =>
        Assert.Equal(text, HouseFormat.Plain.Number(value, decimals));

    [Theory]
    [InlineData(45, "45")]
    [InlineData(22.5, "22.5")]
    [InlineData(0.8, "0.8")]
    [InlineData(0.05, "0.05")]
    [InlineData(0.004, "0.004")]
    [InlineData(29.5735, "29.57")]
    [InlineData(100, "100")]
    [InlineData(0, "0")]
    public void Amounts_have_no_idle_zeros(double amount, string text) => Assert.Equal(text, HouseFormat.Plain.Amount(amount));

    [Theory]
    [InlineData(0, "0 %")]
    [InlineData(0.2, "below 1 %")]
    [InlineData(0.7, "1 %")]
    [InlineData(66.6, "67 %")]
    public void A_small_share_is_not_nothing(double percent, string text) => Assert.Equal(text, HouseFormat.Plain.Percent(percent));

    [Theory]
    [InlineData(4, "4°")]
    [InlineData(-18, "−18°")]
    public void Temperatures_are_whole_degrees(double celsius, string text) => Assert.Equal(text, HouseFormat.Plain.Degrees(celsius));

    [Fact]
    public void The_culture_of_the_machine_changes_nothing()
    {
        var before = CultureInfo.CurrentCulture;
        CultureInfo.CurrentCulture = new CultureInfo("de-DE");
        try
        {
            Assert.Equal("1234.5", HouseFormat.Plain.Number(1234.5, 1));
            Assert.Equal("22.5", HouseFormat.Plain.Amount(22.5));
            Assert.Equal("10.4–12.0", HouseFormat.Plain.Likely(new Estimate(11.2, 10.4, 12.0, "g", 0), 2));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void What_is_printed_is_within_half_a_step_of_the_value() =>
        Gen.Select(Gen.Double[-1e6, 1e6], Gen.Int[0, 4]).Sample((value, decimals) =>
        {
            var printed = double.Parse(HouseFormat.Plain.Number(value, decimals).Replace('\u2212', '-'), CultureInfo.InvariantCulture);
            return Math.Abs(printed - value) <= 0.5 * Math.Pow(10, -decimals) * (1 + 1e-9) + 1e-9;
        });

    [Fact]
    public void A_wider_range_never_prints_more_decimals() =>
        Gen.Select(Gen.Double[1e-6, 1e3], Gen.Double[1, 100], Gen.Int[0, 4]).Sample((half, wider, most) =>
            HouseFormat.Decimals(new Estimate(5, 5 - half * wider, 5 + half * wider, "", 0), most)
            <= HouseFormat.Decimals(new Estimate(5, 5 - half, 5 + half, "", 0), most));

    [Fact]
    public void A_house_that_writes_a_comma_gets_one_in_every_figure_and_no_other_mark()
    {
        var comma = new HouseFormat(NumberPattern.Comma);
        Assert.Equal("22,5", comma.Amount(22.5));
        Assert.Equal("0,0", comma.Number(-0.01, 1));
        Assert.Equal("30", comma.Amount(30));
        Assert.Equal("€0,91", comma.Money(0.91, "EUR"));
        Assert.Equal("12,00 SEK", comma.Money(12, "SEK"));
    }

    [Theory]
    [InlineData(DatePattern.DayMonthYear, "4 Oct 2026")]
    [InlineData(DatePattern.MonthDayYear, "Oct 4, 2026")]
    [InlineData(DatePattern.YearMonthDay, "2026-10-04")]
    public void A_day_is_written_so_that_nobody_takes_the_month_for_the_day(DatePattern pattern, string text) =>
        Assert.Equal(text, new HouseFormat(Dates: pattern).Day(new DateOnly(2026, 10, 4)));

    [Fact]
    public void Degrees_follow_the_scale_of_the_house()
    {
        Assert.Equal("4°", HouseFormat.Plain.Degrees(4));
        Assert.Equal("39 °F", new HouseFormat(Temperatures: TemperatureScale.Fahrenheit).Degrees(4));
    }
}
