using MenuLab.Core.Drafts;
using MenuLab.Core.Pantry;
using MenuLab.Core.Solutions;

namespace MenuLab.Core.Balance;

/// <summary>What the dilution of a drink depends on, as it was before the tin was chilled.</summary>
internal readonly record struct DilutionModel(
    double TinVolume, double TinCelsius, double TinCapacity, double AddedGrams, Chilled Chilled, IceSettings Settings, MethodModel Method, Glass? Glass)
{
    /// <summary>The melted mass answers to what is in the tin; else all the ice has melted, or none.</summary>
    public bool MeltResponds => !Method.IceStaysIn && !Chilled.AllMelted && Chilled.MeltedGrams > 0;
}

/// <summary>
/// First-order ranges over the mixed state (docs/science.md, section 14). Each source of uncertainty is a direction in
/// component space; what a metric does along it is the metric's gradient times the direction. Amplitudes add up within
/// a source, squares between sources.
/// </summary>
internal static class Ranges
{
    private const double Sigmas95 = 1.96;

    // ESTIMATE: how far a line's or a served drink's temperature may be off, K.
    private const double TemperatureUncertainty = 1.0;

    // Section 2: a mixture of sugar and ethanol, against additive volumes.
    private const double MixingVolumeUncertainty = 0.0015;

    // Section 5: pH of a mixture, where every acid line has been read and where any was assumed; and of what ethanol does.
    private const double PhReadUncertainty = 0.08;
    private const double PhAssumedUncertainty = 0.20;
    private const double PhPerAbvPercent = 0.006;

    // Above this relative uncertainty a figure that cannot be negative gets a skewed range.
    private const double SkewAbove = 0.15;

    /// <summary>Variance of each metric of the mixed state.</summary>
    public static void Mixed(ReadOnlySpan<WeighedLine> lines, ReadOnlySpan<int> order, in LiquidState state, Span<double> variance)
    {
        var along = new Directions(state, stackalloc double[Directions.Size], topUps: 0);
        Lines(lines, order, along, variance, [], 0, 0, 0, withTopUps: false);
        Models(state, along, variance);
        variance[(int)Metric.FinalTemperature] = TemperatureUncertainty * TemperatureUncertainty;
    }

    /// <summary>Variance of each metric of the served state.</summary>
    public static void Served(
        ReadOnlySpan<WeighedLine> lines, ReadOnlySpan<int> order, in LiquidState tin, in LiquidState state, in DilutionModel dilution, double topUpGrams,
        int topUps, Span<double> variance)
    {
        var along = new Directions(state, stackalloc double[Directions.Size], topUps)
        {
            TinVolume = dilution.TinVolume,
            DilutionPercent = dilution.TinVolume > 0 ? 100 * dilution.AddedGrams / BalanceEngine.WaterGramsPerMillilitre / dilution.TinVolume : 0,
            WashLine = dilution.Glass?.WashLineMillilitres ?? double.NaN,
        };
        foreach (var i in order)
        {
            if (lines[i].IsInLiquid && lines[i].IsTopUp)
            {
                along.AddTop(lines[i].Composition);
            }
        }

        Span<double> meltPerPart = stackalloc double[Components.Count];
        var meltPerKelvin = 0.0;
        if (dilution.MeltResponds)
        {
            MeltGradient(tin, dilution, meltPerPart, out meltPerKelvin);
        }
        Lines(lines, order, along, variance, meltPerPart, meltPerKelvin, dilution.TinCelsius, dilution.TinCapacity, withTopUps: true, topUpGrams);
        Models(state, along, variance);

        var modelGrams = dilution.Method.DilutionUncertainty * dilution.TinVolume * BalanceEngine.WaterGramsPerMillilitre;
        if (modelGrams > 0 && dilution.Settings.IceGrams > 0)
        {
            along.Water(modelGrams);
            Square(along.Delta, variance);
        }
        var approach = 0.25 * dilution.Settings.ApproachKelvin;
        variance[(int)Metric.FinalTemperature] = TemperatureUncertainty * TemperatureUncertainty + approach * approach;
    }

    /// <summary>Value, low and high of each metric into one array of triples.</summary>
    public static void Fill(ReadOnlySpan<double> figures, ReadOnlySpan<double> variance, ReadOnlySpan<MetricCaveats> caveats, Span<double> triples)
    {
        for (var m = 0; m < Metrics.Count; m++)
        {
            var value = figures[m];
            var uncertainty = Math.Sqrt(variance[m]);
            if (m == (int)Metric.Ph && uncertainty > 0)
            {
                var assumed = (caveats[m] & MetricCaveats.ChargeAssumed) != 0;
                var ethanol = PhPerAbvPercent * figures[(int)Metric.Abv];
                uncertainty = Math.Max(uncertainty, assumed ? PhAssumedUncertainty : PhReadUncertainty);
                uncertainty = Math.Sqrt(uncertainty * uncertainty + ethanol * ethanol);
            }
            var (low, high) = Interval(value, uncertainty, canBeNegative: m is (int)Metric.FinalTemperature or (int)Metric.Acid);
            triples[3 * m] = value;
            triples[3 * m + 1] = low;
            triples[3 * m + 2] = high;
        }
    }

    /// <summary>
    /// The 95 % interval. Up to 15 % relative uncertainty it is the value -+ 1.96 standard uncertainties; above, for what
    /// cannot be negative, that of the log-normal distribution with this mean and standard uncertainty, which leans the
    /// right way and stays above zero.
    /// </summary>
    internal static (double Low, double High) Interval(double value, double uncertainty, bool canBeNegative)
    {
        if (!(uncertainty > 0) || double.IsNaN(value))
        {
            return (value, value);
        }
        if (canBeNegative || value <= 0 || uncertainty <= SkewAbove * value)
        {
            var low = value - Sigmas95 * uncertainty;
            return (canBeNegative ? low : Math.Max(0, low), value + Sigmas95 * uncertainty);
        }
        var relative = uncertainty / value;
        var sigma = Math.Sqrt(Math.Log(1 + relative * relative));
        var median = value / Math.Sqrt(1 + relative * relative);
        // Never narrower than what stands just below the switch, so that more uncertainty never narrows a range.
        return (
            Math.Min(median * Math.Exp(-Sigmas95 * sigma), value * (1 - Sigmas95 * SkewAbove)),
            Math.Max(median * Math.Exp(Sigmas95 * sigma), value * (1 + Sigmas95 * SkewAbove)));
    }

    /// <summary>What the lines bring: their amounts, and the spreads of their compositions, one ingredient's lines together.</summary>
    private static void Lines(
        ReadOnlySpan<WeighedLine> lines, ReadOnlySpan<int> order, Directions along, Span<double> variance, ReadOnlySpan<double> meltPerPart,
        double meltPerKelvin, double tinCelsius, double tinCapacity, bool withTopUps, double topUpGrams = 0)
    {
        Span<double> sugar = stackalloc double[Metrics.Count];
        for (var first = 0; first < order.Length;)
        {
            // One run: the lines of one ingredient with one composition. The same lemon on two lines varies as one.
            var composition = lines[order[first]].Composition;
            var inTin = 0.0;
            var inAll = 0.0;
            var next = first;
            for (; next < order.Length && lines[order[next]].Ingredient == lines[order[first]].Ingredient
                && ReferenceEquals(lines[order[next]].Composition, composition); next++)
            {
                ref readonly var line = ref lines[order[next]];
                if (!line.IsInLiquid || (line.IsTopUp && !withTopUps))
                {
                    continue;
                }
                var grams = line.IsTopUp ? topUpGrams : line.Grams;
                var joinsTin = BalanceEngine.JoinsTin(line) && !line.IsTopUp;
                inAll += grams;
                inTin += joinsTin ? grams : 0;
                if (line.GramsUncertainty > 0 && !line.IsTopUp)
                {
                    var u = line.GramsUncertainty;
                    var melt = 0.0;
                    if (joinsTin && !meltPerPart.IsEmpty)
                    {
                        var warming = tinCapacity > 0 ? HeatBook.CapacityPerGram(composition.PerGram) * (line.StartCelsius - tinCelsius) / tinCapacity : 0;
                        melt = u * (Dot(meltPerPart, composition.PerGram) + meltPerKelvin * warming);
                    }
                    along.Along(composition.PerGram, composition.Forms, u, melt, joinsTin ? u / composition.GramsPerMillilitre : 0);
                    along.Delta[(int)Metric.Cost] = line.Cost.IsPriced ? line.Cost.PerGram * u : 0;
                    Square(along.Delta, variance);
                }
            }
            first = next;
            if (inAll <= 0)
            {
                continue;
            }
            var sugarSeen = false;
            foreach (var spread in composition.Spreads)
            {
                var melt = inTin > 0 && !meltPerPart.IsEmpty ? inTin * Dot(meltPerPart, spread.PerGram) : 0;
                along.Along(spread.PerGram, spread.Forms, inAll, melt, 0);
                Square(along.Delta, variance);
                if (spread.Source == SpreadSource.Sugar)
                {
                    along.Delta.CopyTo(sugar);
                    sugarSeen = true;
                }
                else if (spread.Source == SpreadSource.Acid && sugarSeen)
                {
                    // Sugar and acid of one lot of fruit are not independent.
                    var twice = 2 * composition.SugarAcidCorrelation;
                    for (var m = 0; m < Metrics.Count; m++)
                    {
                        variance[m] += twice * sugar[m] * along.Delta[m];
                    }
                }
            }
        }
    }

    /// <summary>What the models themselves bring.</summary>
    private static void Models(in LiquidState state, Directions along, Span<double> variance)
    {
        // Additive volumes are off by 0.15 % where sugar and ethanol are both there to speak of.
        if (state.Forms[(int)LinearForm.EthanolMillilitres] > 0.01 * state.Volume && state.Forms[(int)LinearForm.SugarGrams] > 0.01 * state.Volume)
        {
            along.VolumeOnly(MixingVolumeUncertainty * state.Volume);
            Square(along.Delta, variance);
        }
        for (var c = 0; c < Components.Count; c++)
        {
            var u = SweetnessUncertainty[c] * state.Parts[c] * 100 / state.Volume;
            variance[(int)Metric.Sweetness] += u * u;
        }
    }

    // Half the published span is taken as 1.96 standard uncertainties.
    private static readonly double[] SweetnessUncertainty = MakeSweetnessUncertainty();

    private static double[] MakeSweetnessUncertainty()
    {
        var u = new double[Components.Count];
        for (var c = 0; c < Components.Count; c++)
        {
            var factor = Sweetness.Factor((Component)c);
            u[c] = (factor.High - factor.Low) / 2 / Sigmas95;
        }
        return u;
    }

    /// <summary>How the melted mass answers to the tin: implicit derivative of the heat balance, without solving again.</summary>
    private static void MeltGradient(in LiquidState tin, in DilutionModel dilution, Span<double> perPart, out double perKelvin)
    {
        var settings = dilution.Settings;
        var melted = dilution.Chilled.MeltedGrams;
        const double MeltStep = 0.01;
        const double KelvinStep = 0.01;
        var here = Ice.HeatBalance(new Liquid(tin.Parts), dilution.TinCelsius, settings, melted);
        var perMelt = (Ice.HeatBalance(new Liquid(tin.Parts), dilution.TinCelsius, settings, melted + MeltStep) - here) / MeltStep;
        perKelvin = -(Ice.HeatBalance(new Liquid(tin.Parts), dilution.TinCelsius + KelvinStep, settings, melted) - here) / KelvinStep / perMelt;

        // What has mass takes up heat and lowers the freezing point. A component that is not there is skipped: no line brings it.
        for (var c = 0; c < Components.Count; c++)
        {
            var part = tin.Parts[c];
            if (part <= 0 || Components.GramsPerUnit((Component)c) == 0)
            {
                continue;
            }
            var step = 1e-3 * part;
            tin.Parts[c] = part + step;
            perPart[c] = -(Ice.HeatBalance(new Liquid(tin.Parts), dilution.TinCelsius, settings, melted) - here) / step / perMelt;
            tin.Parts[c] = part;
        }
    }

    private static double Dot(ReadOnlySpan<double> left, ReadOnlySpan<double> right)
    {
        var sum = 0.0;
        for (var i = 0; i < left.Length; i++)
        {
            sum += left[i] * right[i];
        }
        return sum;
    }

    private static void Square(ReadOnlySpan<double> delta, Span<double> variance)
    {
        for (var m = 0; m < Metrics.Count; m++)
        {
            variance[m] += delta[m] * delta[m];
        }
    }
}
