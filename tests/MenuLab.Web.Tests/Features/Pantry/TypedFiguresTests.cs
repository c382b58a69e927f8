using MenuLab.Core.Balance;
using MenuLab.Core.Pantry;
using MenuLab.Core.Quantities;
using MenuLab.Data.Pantry;
using MenuLab.Web.Features.Pantry;

namespace MenuLab.Web.Tests.Features.Pantry;

public sealed class TypedFiguresTests
{
    [Theory]
    [InlineData("6.5", 6.5)]
    [InlineData("6,5", 6.5)]
    [InlineData(" 6 1/2 ", 6.5)]
    [InlineData("0", 0)]
    public void A_number_is_read_with_comma_or_point(string text, double expected)
    {
        var typed = new TypedFigures(Jetty.Juice());
        typed["total_sugars_g"].Text = text;
        Assert.Equal(expected, typed.Read("total_sugars_g").Figure!.Value);
    }

    [Fact]
    public void A_grouped_number_is_asked_back_with_both_readings_and_stays_as_typed()
    {
        var typed = new TypedFigures(Jetty.Juice());
        typed["sodium_mg"].Text = "1,500";
        var read = typed.Read("sodium_mg");
        Assert.Null(read.Figure);
        Assert.Equal(["1.5", "1500"], read.Answers);
        Assert.Equal("1,500", typed["sodium_mg"].Text);
        Assert.False(typed.ToSave().IsOk);
    }

    [Fact]
    public void A_blank_takes_our_own_figure_away_and_is_never_zero()
    {
        var typed = new TypedFigures(Jetty.Juice(Jetty.Own("total_sugars_g", 6), Jetty.Shipped("total_sugars_g", 9)));
        typed["total_sugars_g"].Text = "";
        var figure = Assert.Single(typed.ToSave().Value);
        Assert.True(figure.IsTakenAway);
        Assert.Null(figure.Value);
        Assert.Equal(9, typed.Preview().ComesTo!.Per100(Metric.Sugar).Value / typed.Preview().ComesTo!.Composition.GramsPerMillilitre, 1e-9);
    }

    [Theory]
    [InlineData("unknown")]
    [InlineData("Unknown")]
    [InlineData("?")]
    public void Unknown_can_be_said_and_makes_a_shipped_figure_unknown(string text)
    {
        var typed = new TypedFigures(Jetty.Juice(Jetty.Shipped("total_sugars_g", 9)));
        typed["total_sugars_g"].Text = text;
        Assert.Equal(Certainty.Unknown, typed.Preview().ComesTo![Metric.Sugar].Certainty);
        Assert.Null(Assert.Single(typed.ToSave().Value).Value);
    }

    [Theory]
    [InlineData("total_sugars_g", "-3", "", "", "less than nothing")]
    [InlineData("total_sugars_g", "1e9", "", "", "Write a number")]
    [InlineData("total_sugars_g", "99999999", "", "", "between 0 and 100")]
    [InlineData("ph", "", "4", "3", "low end lies above")]
    [InlineData("ph", "5", "3", "4", "outside its own")]
    [InlineData("ph", "", "3", "", "At least")]
    [InlineData("ethanol_g", "101", "", "", "between 0 and 100")]
    [InlineData("ph", "lemony", "", "", "Write a number")]
    public void What_cannot_be_is_told_in_a_sentence_and_not_saved(string quantity, string text, string low, string high, string says)
    {
        var typed = new TypedFigures(Jetty.Juice());
        (typed[quantity].Text, typed[quantity].Low, typed[quantity].High) = (text, low, high);
        Assert.Contains(says, typed.Read(quantity).Problem, StringComparison.Ordinal);
        Assert.Equal(quantity, Assert.Single(typed.ToSave().Problems).Field);
        Assert.Equal(text, typed[quantity].Text);
    }

    [Fact]
    public void Nothing_touched_saves_nothing() =>
        Assert.Empty(new TypedFigures(Jetty.Juice(Jetty.Own("ethanol_g", 3.21987654), Jetty.Shipped("ph", 3))).ToSave().Value);

    [Theory]
    [InlineData(CompositionBuilder.PerMass, 40)]
    [InlineData(CompositionBuilder.PerVolume, 40)]
    [InlineData(CompositionBuilder.PerMass, 17.5)]
    public void A_strength_typed_as_on_the_label_comes_out_as_typed(string basis, double abv)
    {
        var typed = new TypedFigures(Jetty.Made(IngredientKind.Alcohol, basis, Jetty.Shipped("total_sugars_g", 12)));
        typed[QuantityWords.Strength].Text = abv.ToString(System.Globalization.CultureInfo.InvariantCulture);
        // Without a density of its own the model gives one; the strength must close with it within a label's last digit.
        Assert.Equal(abv, typed.Preview().ComesTo![Metric.Abv].Value, 0.05);
    }

    [Fact]
    public void Sugars_by_name_that_do_not_make_the_total_are_remarked_while_typing()
    {
        var typed = new TypedFigures(Jetty.Juice(Jetty.Shipped("sucrose_g", 2), Jetty.Shipped("glucose_g", 2), Jetty.Shipped("total_sugars_g", 4)));
        Assert.DoesNotContain(typed.Preview().Remarks, r => r.Topic == CompositionTopic.Sugars);
        typed["total_sugars_g"].Text = "9";
        Assert.Contains(typed.Preview().Remarks, r => r.Topic == CompositionTopic.Sugars);
    }

    [Fact]
    public void Parts_above_the_whole_are_remarked_while_typing()
    {
        var typed = new TypedFigures(Jetty.Juice());
        typed["total_sugars_g"].Text = "80";
        typed["protein_g"].Text = "40";
        Assert.Contains(typed.Preview().Remarks, r => r.Topic == CompositionTopic.Mass);
    }

    [Fact]
    public void What_was_typed_stays_over_somebody_elses_version_and_the_rest_follows_it()
    {
        var typed = new TypedFigures(Jetty.Juice());
        typed["total_sugars_g"].Text = "6";
        var over = typed.Over(Jetty.Juice(Jetty.Own("total_sugars_g", 7), Jetty.Own("ph", 3.2)));
        Assert.Equal(("6", "3.2"), (over["total_sugars_g"].Text, over["ph"].Text));
        Assert.Equal("total_sugars_g", Assert.Single(over.ToSave().Value).Quantity);
    }

    [Fact]
    public void Every_figure_that_there_is_has_words_and_a_limit()
    {
        Assert.Equal(FigureQuantities.All.Order(), QuantityWords.All.Select(w => w.Quantity).Order());
        Assert.All(FigureQuantities.All, q => Assert.True(FigureLimits.Of(q, "100 g").Most > FigureLimits.Of(q, "100 g").Least));
    }

    [Fact]
    public void A_reading_counts_before_our_own_and_that_before_the_shipped()
    {
        IngredientFigure[] figures = [Jetty.Shipped("ph", 3.0), Jetty.Read("ph", 3.2), Jetty.Own("ph", 3.1)];
        Assert.Equal(Origin.MeasuredHere, Origins.Of(figures.Counting("ph")));
        Assert.Equal(Origin.Label, Origins.Of(figures[..1].Append(figures[2]).ToList().Counting("ph")));
        Assert.Equal(Origin.Table, Origins.Of(figures[..1].Counting("ph")));
        Assert.Equal(Origin.Unknown, Origins.Of(figures.Counting("brix")));
    }
}
