using System.Globalization;
using CsCheck;
using MenuLab.Core.House;
using MenuLab.Core.Pantry;
using MenuLab.Core.Preps;
using MenuLab.Core.Solutions;
using MenuLab.TestKit.Preps;

namespace MenuLab.Core.Tests.Preps;

public class MeasuredPrepTests
{
    private static readonly DateOnly Made = new(2026, 11, 20);
    private static readonly DateOnly Today = new(2026, 11, 25);
    private static readonly BatchReadings None = new() { ReadOn = Today };

    private static readonly PrepOutcome Cordial = Larder.Work(Larder.Recipe(
        [Larder.Line(Larder.Sugar, 500), Larder.Line(Larder.Water, 300), Larder.Line(Larder.Lemon, 200)], new Combine([0, 1, 2]), new Heat(10) { PanCentimetres = 24 })).Value;

    private static readonly PrepOutcome Infusion = Larder.Work(Larder.Recipe(
        [Larder.Line(Larder.Spirit, 500), Larder.Line(Larder.Sugar, 100)], new Combine([0, 1]))).Value;

    private static Result<MeasuredPrep> Read(BatchReadings readings, PrepOutcome? outcome = null) => MeasuredPrep.From(outcome ?? Cordial, readings, Made, Today);

    private static double Figure(Composition composition, PrepFigure figure) => PrepFigures.Of(composition, figure).Value;

    public static IEnumerable<TheoryDataRow<double, double, double>> BrixTable() =>
        File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Preps", "brix-temperature.csv")).Where(l => !l.StartsWith('#')).Skip(1)
            .Select(l => l.Split(',').Select(n => double.Parse(n, CultureInfo.InvariantCulture)).ToArray())
            .Select(n => new TheoryDataRow<double, double, double>(n[0], n[1], n[2]));

    [Theory]
    [MemberData(nameof(BrixTable))]
    public void A_cold_sample_is_corrected_as_the_wine_office_prints_it(double celsius, double brix, double correction) =>
        Assert.Equal(correction, BrixReading.TemperatureCorrection(brix, celsius), 0.015);

    // The old international table (MEMORY): +0.79 at 20 Brix and 30 °C, +0.38 at 25 °C.
    [Fact]
    public void A_warm_sample_reads_too_low_and_one_at_20_as_it_is()
    {
        Assert.Equal(20.79, new BrixReading(20, 30).At20, 0.02);
        Assert.Equal(20.38, new BrixReading(20, 25).At20, 0.02);
        Assert.Equal(20, new BrixReading(20, 20).At20, 1e-12);
        Assert.Equal(20, new BrixReading(20, null).At20);
    }

    [Fact]
    public void The_temperature_correction_rises_with_temperature() =>
        Gen.Select(Gen.Double[0, 85], Gen.Double[10, 29.9], Gen.Double[0, 0.1]).Sample((brix, celsius, more) =>
            BrixReading.TemperatureCorrection(brix, celsius + more) >= BrixReading.TemperatureCorrection(brix, celsius));

    // 10 mL of juice needing 89.0 mL of 0.1 N: 0.890 eq/L, 5.70 g/100 mL as citric (docs/science.md, section 4); as acetic 0.890 x 60.052.
    [Fact]
    public void A_titration_gives_its_acidity_as_any_acid()
    {
        var reading = new TitrationReading(89.0, 0.1, 10);
        Assert.Equal(0.890, reading.EquivalentsPerLitre, 1e-12);
        Assert.Equal(57.0, reading.GramsPerLitre(Component.Citric), 0.01);
        Assert.Equal(53.45, reading.GramsPerLitre(Component.Acetic), 0.01);
    }

    [Theory]
    [InlineData(45.0)]
    [InlineData(62.0)]
    public void The_measured_brix_is_the_one_that_was_read(double brix)
    {
        var measured = Read(None with { Brix = new BrixReading(brix, null) }).Value;
        var read = PrepFigures.Of(measured.Composition, PrepFigure.Brix);
        Assert.Equal(brix, read.Value, 1e-6);
        // The instrument's 0.3 is all that is left of the range.
        Assert.InRange(read.High - read.Value, 0.5, 0.7);
        Assert.True(measured.HasOwnComposition);
    }

    [Fact]
    public void All_readings_together_come_back_from_the_composition()
    {
        var measured = Read(None with
        {
            Grams = 940, Millilitres = 765, Brix = new BrixReading(54, null), Ph = 2.6, Titration = new TitrationReading(20, 0.1, 10),
        }).Value;
        Assert.Equal(54, Figure(measured.Composition, PrepFigure.Brix), 1e-6);
        Assert.Equal(2.6, Figure(measured.Composition, PrepFigure.Ph), 1e-3);
        Assert.Equal(20 * 0.1 / 10 * 6.4041, Figure(measured.Composition, PrepFigure.Acid), 1e-3);
        Assert.Equal(940.0 / 765, measured.Composition.GramsPerMillilitre, 1e-9);
        Assert.Equal((940.0, 765.0), (measured.Grams, measured.Millilitres));
        Assert.Equal(94, measured.YieldPercent, 1e-9);
        Assert.False(measured.Composition.Caveats.HasFlag(CompositionCaveats.DensityEstimated));
        var ph = measured.Figures.Single(f => f.Figure == PrepFigure.Ph);
        Assert.True(ph.Measured.High - ph.Measured.Low < ph.Estimated.High - ph.Estimated.Low);
    }

    [Fact]
    public void A_titration_alone_moves_the_acid_and_leaves_the_sugar()
    {
        var measured = Read(None with { Titration = new TitrationReading(30, 0.1, 10) }).Value;
        Assert.Equal(30 * 0.1 / 10 * 6.4041, Figure(measured.Composition, PrepFigure.Acid), 1e-4);
        Assert.Equal(Cordial.Composition.PerGram[(int)Component.Sucrose], measured.Composition.PerGram[(int)Component.Sucrose], 1e-9);
    }

    [Fact]
    public void The_finished_mass_tells_the_water_where_only_a_pan_was_estimated()
    {
        Assert.True(Cordial.MassTellsWater);
        var measured = Read(None with { Grams = 900 }).Value;
        // Sugar is neither boiled off nor made.
        Assert.Equal(Larder.Component(Cordial, Component.Sucrose), 900 * measured.Composition.PerGram[(int)Component.Sucrose], 1e-6);
        var mixed = Larder.Work(Larder.Recipe([Larder.Line(Larder.Sugar, 500), Larder.Line(Larder.Water, 500)], new Combine([0, 1]))).Value;
        Assert.False(Read(None with { Grams = 900 }, mixed).Value.HasOwnComposition);
    }

    [Theory]
    [InlineData(15.0, "pH of 15")]
    [InlineData(-1.0, "pH of -1")]
    [InlineData(double.NaN, "pH of NaN")]
    public void A_pH_outside_the_scale_is_refused(double ph, string says)
    {
        var problem = Assert.Single(Read(None with { Ph = ph }).Problems);
        Assert.Equal("Ph", problem.Field);
        Assert.Contains(says, problem.Message, StringComparison.Ordinal);
        Assert.Contains("give 0 to 14", problem.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(120.0, null)]
    [InlineData(-2.0, null)]
    [InlineData(30.0, 45.0)]
    public void A_brix_that_cannot_be_is_refused(double brix, double? celsius) =>
        Assert.Equal("Brix", Assert.Single(Read(None with { Brix = new BrixReading(brix, celsius) }).Problems).Field);

    [Fact]
    public void A_refractometer_is_refused_where_alcohol_makes_it_wrong_and_says_what_to_do_instead()
    {
        var problem = Assert.Single(Read(None with { Brix = new BrixReading(25, null) }, Infusion).Problems);
        Assert.Equal("Brix", problem.Field);
        Assert.Contains("% alcohol by mass", problem.Message, StringComparison.Ordinal);
        Assert.Contains("titration", problem.Message, StringComparison.Ordinal);
        var ferment = Larder.Work(Larder.Recipe([Larder.Line(Larder.Sugar, 100), Larder.Line(Larder.Water, 900)], new Combine([0, 1]), new Ferment(3, 20))).Value;
        Assert.Contains("Nobody knows how much alcohol", Assert.Single(Read(None with { Brix = new BrixReading(5, null) }, ferment).Problems).Message, StringComparison.Ordinal);
        Assert.True(Read(None with { Brix = new BrixReading(8, null), AbvPercent = 0.4 }, ferment).IsOk);
    }

    [Fact]
    public void A_reading_from_the_future_or_from_before_the_batch_is_refused()
    {
        Assert.Equal("ReadOn", Assert.Single(Read(new BatchReadings { ReadOn = Today.AddDays(1), Ph = 3 }).Problems).Field);
        Assert.Equal("ReadOn", Assert.Single(Read(new BatchReadings { ReadOn = Made.AddDays(-1), Ph = 3 }).Problems).Field);
        Assert.True(Read(new BatchReadings { ReadOn = Made, Ph = 3 }).IsOk);
    }

    [Fact]
    public void A_finished_mass_above_what_went_in_is_a_yield_over_100_percent()
    {
        var problem = Assert.Single(Read(None with { Grams = 1300 }).Problems);
        Assert.Equal("Grams", problem.Field);
        Assert.Contains("130 %, over 100 %", problem.Message, StringComparison.Ordinal);
        Assert.Equal("Millilitres", Assert.Single(Read(None with { Grams = 900, Millilitres = 100 }).Problems).Field);
        Assert.Equal("Grams", Assert.Single(Read(None).Problems).Field);
    }

    [Theory]
    [InlineData(-1, 0.1, 10)]
    [InlineData(10, 0, 10)]
    [InlineData(10, 0.1, 0)]
    [InlineData(10, 50, 10)]
    public void A_titration_that_cannot_be_is_refused(double titrant, double normality, double sample) =>
        Assert.Equal("Titration", Assert.Single(Read(None with { Titration = new TitrationReading(titrant, normality, sample) }).Problems).Field);

    [Fact]
    public void A_reading_answers_the_ask_that_wanted_it()
    {
        var ferment = Larder.Work(Larder.Recipe([Larder.Line(Larder.Sugar, 100), Larder.Line(Larder.Water, 900)], new Combine([0, 1]), new Ferment(3, 20))).Value;
        Assert.Equal(4, ferment.Asks.Count);
        var read = Read(None with { Ph = 3.2, Titration = new TitrationReading(5, 0.1, 10), AbvPercent = 1.1 }, ferment).Value;
        Assert.Equal([AskKind.Weight], read.OpenAsks.Select(a => a.Kind));
        Assert.Equal(1.1, Figure(read.Composition, PrepFigure.Abv), 1e-6);
        Assert.Equal(3.2, Figure(read.Composition, PrepFigure.Ph), 1e-3);
        Assert.False(read.Composition.Knows(Composition.TotalSugarKnown));
    }

    [Fact]
    public void Drinks_use_the_newest_batch_whose_readings_say_what_is_in_it()
    {
        var old = (Batch(1), Read(None with { Brix = new BrixReading(52, null) }).Value);
        var newer = (Batch(2), Read(None with { Brix = new BrixReading(55, null) }).Value);
        var massOnly = (Batch(3), Read(None with { Millilitres = 700 }).Value);
        Assert.Same(newer.Item2.Composition, PrepInUse.Of(Cordial, [newer, massOnly, old]).Composition);
        Assert.Null(PrepInUse.Of(Cordial, [massOnly]).Batch);
        Assert.Same(Cordial.Composition, PrepInUse.Of(Cordial, []).Composition);
    }

    [Fact]
    public void Drift_is_the_slope_from_batch_to_batch()
    {
        var batches = new[] { 52.0, 53, 54.5, 54.5 }.Select((brix, i) => (Batch(i), Read(None with { Brix = new BrixReading(brix, null) }).Value)).Reverse().ToArray();
        var drift = PrepDrift.Of(PrepFigure.Brix, batches);
        // By hand: mean 53.5, slope (1.5 x 2.5 + 0.5 x 1.5)/5 = 0.9; deviation root of (2.25 + 0.25 + 1 + 1)/3 = 1.2247.
        Assert.Equal(53.5, drift.Mean, 1e-6);
        Assert.Equal(0.9, drift.PerBatch, 1e-6);
        Assert.Equal(1.2247, drift.StandardDeviation, 1e-4);
        Assert.Equal([52.0, 53, 54.5, 54.5], drift.Points.Select(p => Math.Round(p.Measured.Value, 6)));
        Assert.True(double.IsNaN(PrepDrift.Of(PrepFigure.Brix, batches.Take(1)).PerBatch));
    }

    private static PrepBatch Batch(int day) => new(new BatchId(new Guid(day, 0, 0, new byte[8])), Larder.Id(1000), 1, Made.AddDays(day), new PersonId(Guid.Empty), None);
}
