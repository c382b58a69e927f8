using MenuLab.Core.Pantry;
using MenuLab.Core.Quantities;
using MenuLab.Core.Solutions;

namespace MenuLab.Core.Preps;

/// <summary>The figures by which a prep is checked and two batches are compared.</summary>
public enum PrepFigure
{
    /// <summary>What a refractometer shows, Brix.</summary>
    Brix,
    /// <summary>pH.</summary>
    Ph,
    /// <summary>Titratable acidity as anhydrous citric acid, g/100 mL.</summary>
    Acid,
    /// <summary>Sugars, g/100 mL.</summary>
    Sugar,
    /// <summary>Acetic acid, g/100 mL.</summary>
    Acetic,
    /// <summary>Alcohol, % vol.</summary>
    Abv,
    /// <summary>Density at 20 °C, g/mL.</summary>
    Density,
    /// <summary>Water activity; an indicator, no safety determination.</summary>
    WaterActivity,
    /// <summary>Caffeine, mg/L.</summary>
    Caffeine,
    /// <summary>Tannin, mg of gallic acid equivalents per L.</summary>
    Tannin,
}

/// <summary>Reads figures from a composition.</summary>
public static class PrepFigures
{
    private const double PhFloorMeasured = 0.08;
    private const double PhFloorAssumed = 0.20;

    /// <summary>Unit as printed.</summary>
    public static string Unit(PrepFigure figure) => figure switch
    {
        PrepFigure.Brix => "Brix",
        PrepFigure.Ph or PrepFigure.WaterActivity => "",
        PrepFigure.Abv => "% vol",
        PrepFigure.Density => "g/mL",
        PrepFigure.Caffeine or PrepFigure.Tannin => "mg/L",
        _ => "g/100 mL",
    };

    /// <summary>A figure of a composition, without its range.</summary>
    /// <returns>In the unit of <see cref="Unit"/>; NaN where it cannot be told (Brix above 1 % alcohol by mass, pH outside the model).</returns>
    /// <remarks>Source, range and error: those of the functions of Core/Solutions that it calls.</remarks>
    public static double Value(ReadOnlySpan<double> perGram, PrepFigure figure)
    {
        var liquid = new Liquid(perGram);
        if (figure == PrepFigure.Brix)
        {
            return BrixReading.Expected(liquid);
        }
        if (figure == PrepFigure.WaterActivity)
        {
            return WaterActivity.Of(liquid);
        }
        var volume = Density.Millilitres(liquid);
        return figure switch
        {
            PrepFigure.Density => liquid.Grams / volume,
            PrepFigure.Ph => Ph(perGram, volume),
            PrepFigure.Acid => 100 * AcidBase.EquivalentMass(Component.Citric) * Form(perGram, LinearForm.AcidEquivalents) / volume,
            PrepFigure.Sugar => 100 * Form(perGram, LinearForm.SugarGrams) / volume,
            PrepFigure.Acetic => 100 * Form(perGram, LinearForm.AceticGrams) / volume,
            PrepFigure.Abv => 100 * Form(perGram, LinearForm.EthanolMillilitres) / volume,
            PrepFigure.Caffeine => 1000 * liquid[Component.Caffeine] / volume,
            _ => 1000 * liquid[Component.Tannin] / volume,
        };
    }

    /// <summary>A figure of a composition with its 95 % range.</summary>
    /// <returns>Unknown where the composition does not know what the figure needs.</returns>
    /// <remarks>
    /// Source: first order along each spread of the composition, sugar and acid with their correlation; pH with a floor of 0.08, or 0.20 where acid or
    /// charge were assumed (docs/science.md, section 5). Error: of the composition.
    /// </remarks>
    public static Estimate Of(Composition composition, PrepFigure figure)
    {
        var value = Value(composition.PerGram, figure);
        if (!composition.Knows(Needs(figure)) || (figure == PrepFigure.Ph && composition.Caveats.HasFlag(CompositionCaveats.PhNotComputable)))
        {
            return new Estimate(double.NaN, double.NaN, double.NaN, Unit(figure), 100);
        }
        var u = Uncertainty(composition, figure, value);
        if (figure == PrepFigure.Ph)
        {
            var assumed = composition.Caveats.HasFlag(CompositionCaveats.ChargeAssumed) || composition.Caveats.HasFlag(CompositionCaveats.AcidityAssumed);
            u = Math.Max(u, assumed ? PhFloorAssumed : PhFloorMeasured);
        }
        var least = figure is PrepFigure.Ph or PrepFigure.Acid ? double.NegativeInfinity : 0;
        var most = figure == PrepFigure.WaterActivity ? 1 : double.PositiveInfinity;
        return new Estimate(value, Math.Max(least, value - 1.96 * u), Math.Min(most, value + 1.96 * u), Unit(figure), 0);
    }

    private static double Uncertainty(Composition composition, PrepFigure figure, double value)
    {
        // A hundredth of a step keeps every part on its side of zero; the slope is what counts.
        const double part = 0.01;
        Span<double> moved = stackalloc double[Components.Count];
        double variance = 0, sugar = 0, acid = 0;
        foreach (var spread in composition.Spreads)
        {
            for (var i = 0; i < moved.Length; i++)
            {
                moved[i] = composition.PerGram[i] + part * spread.PerGram[i];
                moved[i] = (Component)i is Component.Charge or Component.Residual ? moved[i] : Math.Max(0, moved[i]);
            }
            var change = (Value(moved, figure) - value) / part;
            variance += change * change;
            sugar += spread.Source == SpreadSource.Sugar ? change : 0;
            acid += spread.Source == SpreadSource.Acid ? change : 0;
        }
        return Math.Sqrt(Math.Max(0, variance + 2 * composition.SugarAcidCorrelation * sugar * acid));
    }

    /// <summary>What a composition must know before a figure of it means anything.</summary>
    internal static ulong Needs(PrepFigure figure) => figure switch
    {
        PrepFigure.Brix => Composition.SolidsKnown | Component.Ethanol.Bit(),
        PrepFigure.Ph => Composition.TotalAcidKnown | Component.Charge.Bit(),
        PrepFigure.Acid => Composition.TotalAcidKnown,
        PrepFigure.Sugar or PrepFigure.WaterActivity => Composition.TotalSugarKnown,
        PrepFigure.Acetic => Component.Acetic.Bit(),
        PrepFigure.Abv => Component.Ethanol.Bit(),
        PrepFigure.Caffeine => Component.Caffeine.Bit(),
        PrepFigure.Tannin => Component.Tannin.Bit(),
        _ => 0,
    };

    private static double Ph(ReadOnlySpan<double> perGram, double millilitres)
    {
        Span<double> acids = stackalloc double[Components.AcidCount];
        for (var i = 0; i < acids.Length; i++)
        {
            acids[i] = Math.Max(0, perGram[(int)Components.FirstAcid + i]) * 1000 / millilitres;
        }
        var solved = AcidBase.Solve(acids, perGram[(int)Component.Charge] * 1000 / millilitres);
        return solved.Converged ? solved.Ph : double.NaN;
    }

    // Looked up once: the weights are asked for every spread of every prep.
    private static readonly double[][] Weights = [.. Enum.GetValues<LinearForm>().Select(f => Enum.GetValues<Component>().Select(c => LinearForms.Weight(f, c)).ToArray())];

    internal static double Form(ReadOnlySpan<double> parts, LinearForm form)
    {
        var sum = 0.0;
        var weights = Weights[(int)form];
        for (var i = 0; i < parts.Length; i++)
        {
            sum += parts[i] * weights[i];
        }
        return sum;
    }
}
