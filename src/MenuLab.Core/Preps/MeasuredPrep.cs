using MenuLab.Core.Pantry;
using MenuLab.Core.Quantities;
using MenuLab.Core.Solutions;

namespace MenuLab.Core.Preps;

/// <summary>A figure as the recipe gives it beside the figure as the readings give it.</summary>
/// <param name="Figure">Which.</param>
/// <param name="Estimated">By the recipe.</param>
/// <param name="Measured">With the readings.</param>
public sealed record FigurePair(PrepFigure Figure, Estimate Estimated, Estimate Measured);

/// <summary>A batch with what was read on it: the composition that closes the gap between recipe and readings.</summary>
public sealed class MeasuredPrep
{
    // Instrument practice, MEMORY (docs/science.md, section 14); the scale and the density by flask ESTIMATE.
    private const double BrixUncertainty = 0.3;
    private const double PhUncertainty = 0.05;
    private const double TitrationUncertainty = 0.02;
    private const double AbvUncertainty = 0.15;
    private const double DensityUncertainty = 0.001;
    private const double MassUncertainty = 0.005;
    private const double SmallPart = 0.01;

    private MeasuredPrep()
    {
    }

    /// <summary>What it is made of by recipe and readings together.</summary>
    public required Composition Composition { get; init; }

    /// <summary>The readings say something of the composition, not only of the amount.</summary>
    public required bool HasOwnComposition { get; init; }

    /// <summary>Finished mass, g: read, else by the recipe.</summary>
    public required double Grams { get; init; }

    /// <summary>Finished volume at 20 °C, mL: read, else by mass and density.</summary>
    public required double Millilitres { get; init; }

    /// <summary>Finished mass over what went in, %.</summary>
    public required double YieldPercent { get; init; }

    /// <summary>What is still asked for.</summary>
    public required IReadOnlyList<Ask> OpenAsks { get; init; }

    /// <summary>Every figure twice.</summary>
    public required IReadOnlyList<FigurePair> Figures { get; init; }

    /// <summary>Puts recipe and readings together.</summary>
    /// <param name="outcome">The prep as its recipe says it comes out.</param>
    /// <param name="readings">What was read.</param>
    /// <param name="madeOn">Day the batch was made.</param>
    /// <param name="today">The site's day today.</param>
    /// <returns>The measured prep, or problems with fields of <see cref="BatchReadings"/>.</returns>
    /// <remarks>
    /// Source: a Brix reading sets the concentration (all that is dissolved moves as one against water; with a titration, all but the acids; where the
    /// recipe asks for the Brix of a solid's extract, other solids); titration and pH set acid and charge as for any ingredient (docs/science.md,
    /// section 5); mass and volume set the density; a finished mass sets the water where only a pan's loss was estimated. Error: of the readings (Brix
    /// 0.3, pH 0.05, titration 2 %, strength 0.15 % vol, density 0.1 %, MEMORY) and what they leave open of the recipe's.
    /// </remarks>
    public static Result<MeasuredPrep> From(PrepOutcome outcome, BatchReadings readings, DateOnly madeOn, DateOnly today)
    {
        var problems = readings.Check(outcome, madeOn, today);
        if (problems.Count > 0)
        {
            return Result.Invalid<MeasuredPrep>(problems);
        }
        var closing = new Closing(outcome, readings);
        var read = closing.Apply(outcome.Composition.PerGram.ToArray(), closing.Figures);
        if (closing.Misfit(read) is { } misfit)
        {
            return Result.Invalid<MeasuredPrep>(misfit);
        }
        var hasOwn = closing.Figures.Any(f => !double.IsNaN(f));
        var composition = hasOwn ? Compose(outcome.Composition, closing, read, readings) : outcome.Composition;
        var grams = readings.Grams ?? outcome.Grams.Value;
        var added = outcome.Ledger.Sum(e => e.AddedGrams);
        return Result.Ok(new MeasuredPrep
        {
            Composition = composition,
            HasOwnComposition = hasOwn,
            Grams = grams,
            Millilitres = readings.Millilitres ?? grams / composition.GramsPerMillilitre,
            YieldPercent = 100 * grams / added,
            OpenAsks = Open(outcome.Asks, readings),
            Figures = [.. Enum.GetValues<PrepFigure>().Select(f => new FigurePair(f, PrepFigures.Of(outcome.Composition, f), PrepFigures.Of(composition, f)))],
        });
    }

    private static Composition Compose(Composition estimated, Closing closing, double[] read, BatchReadings readings)
    {
        var spreads = new List<Spread>();
        foreach (var spread in estimated.Spreads)
        {
            var moved = estimated.PerGram.ToArray();
            for (var i = 0; i < moved.Length; i++)
            {
                moved[i] += SmallPart * spread.PerGram[i];
            }
            AddSpread(spreads, spread.Source, read, closing.Apply(moved, closing.Figures), SmallPart, spread.Relative);
        }
        ReadOnlySpan<(int Figure, SpreadSource Source, double Uncertainty)> own =
        [
            (Closing.Abv, SpreadSource.Other, AbvUncertainty), (Closing.Brix, SpreadSource.Other, BrixUncertainty),
            (Closing.Titration, SpreadSource.Other, TitrationUncertainty), (Closing.Ph, SpreadSource.Other, PhUncertainty),
            (Closing.Density, SpreadSource.Other, DensityUncertainty), (Closing.Mass, SpreadSource.Other, MassUncertainty),
        ];
        foreach (var (figure, source, uncertainty) in own)
        {
            if (!double.IsNaN(closing.Figures[figure]))
            {
                double[] figures = [.. closing.Figures];
                var step = SmallPart * (figure is Closing.Titration or Closing.Density or Closing.Mass ? uncertainty * figures[figure] : uncertainty);
                figures[figure] += step;
                AddSpread(spreads, source, read, closing.Apply(estimated.PerGram.ToArray(), figures), SmallPart, 0);
            }
        }
        return new Composition(read, Known(estimated, readings), spreads, estimated.Allergens, Caveats(estimated, readings), estimated.SugarAcidCorrelation);
    }

    private static void AddSpread(List<Spread> spreads, SpreadSource source, double[] from, double[] to, double part, double relative)
    {
        var change = new double[from.Length];
        var most = 0.0;
        for (var i = 0; i < change.Length; i++)
        {
            change[i] = (to[i] - from[i]) / part;
            most = Math.Max(most, Math.Abs(change[i]));
        }
        if (most > 1e-9)
        {
            spreads.Add(new Spread(source, change, relative));
        }
    }

    private static ulong Known(Composition estimated, BatchReadings readings)
    {
        var known = estimated.Known;
        known |= readings.AbvPercent is null ? 0 : Component.Ethanol.Bit();
        known |= readings.Brix is null ? 0 : Composition.SolidsKnown | Component.OtherSolids.Bit();
        known |= readings.Titration is null ? 0 : Composition.TotalAcidKnown;
        known |= readings.Ph is not null && (known & Composition.TotalAcidKnown) != 0 ? Component.Charge.Bit() : 0;
        return known;
    }

    private static CompositionCaveats Caveats(Composition estimated, BatchReadings readings)
    {
        var caveats = estimated.Caveats;
        if (readings.Titration is not null)
        {
            caveats &= ~CompositionCaveats.AcidityAssumed;
        }
        if (readings.Ph is not null)
        {
            caveats &= ~CompositionCaveats.ChargeAssumed;
        }
        if (readings.Ph is not null && readings.Titration is not null)
        {
            caveats &= ~CompositionCaveats.PhNotComputable;
        }
        if (readings.Grams is not null && readings.Millilitres is not null)
        {
            caveats &= ~CompositionCaveats.DensityEstimated;
        }
        return caveats;
    }

    private static List<Ask> Open(IReadOnlyList<Ask> asks, BatchReadings readings)
    {
        // A finished mass answers one open weight; of two it does not tell which.
        var weights = asks.Count(a => a.Kind is AskKind.Weight or AskKind.JuiceYield);
        return [.. asks.Where(a => a.Kind switch
        {
            AskKind.Weight or AskKind.JuiceYield => readings.Grams is null || weights > 1,
            AskKind.Brix => readings.Brix is null,
            AskKind.Titration => readings.Titration is null,
            AskKind.Ph => readings.Ph is null,
            AskKind.Strength => readings.AbvPercent is null,
            _ => true,
        })];
    }
}
