using MenuLab.Core.Pantry;
using MenuLab.Core.Quantities;
using MenuLab.Core.Solutions;

namespace MenuLab.Core.Preps;

/// <summary>What a step did to the mass in the pot, g. Entries of a prep add up: what went in is what is there and what left.</summary>
/// <param name="Step">Place of the step in the recipe, from 0.</param>
/// <param name="Word">The step.</param>
/// <param name="AddedGrams">Lines that went in.</param>
/// <param name="GasInGrams">Carbon dioxide that was dissolved.</param>
/// <param name="EvaporatedGrams">Water, acetic acid and alcohol that went into the air.</param>
/// <param name="GasOutGrams">Carbon dioxide that left, and what a ferment gave off.</param>
/// <param name="StrainedGrams">Solids and the liquid they kept, out of the pot.</param>
/// <param name="SpiltGrams">What a weight after the step says has stuck to spoon and jug.</param>
/// <param name="LiquidGrams">Liquid in the pot after the step.</param>
/// <param name="SolidGrams">Solids in the pot after the step.</param>
public readonly record struct LedgerEntry(
    int Step, string Word, double AddedGrams, double GasInGrams, double EvaporatedGrams, double GasOutGrams, double StrainedGrams, double SpiltGrams,
    double LiquidGrams, double SolidGrams)
{
    /// <summary>In less out, g: what the pot gained.</summary>
    public double NetGrams => AddedGrams + GasInGrams - EvaporatedGrams - GasOutGrams - StrainedGrams - SpiltGrams;
}

/// <summary>What is wanted that no model knows.</summary>
public enum AskKind
{
    /// <summary>Weight of the pot's contents after the step.</summary>
    Weight,
    /// <summary>Juice pressed, as a share of the fruit.</summary>
    JuiceYield,
    /// <summary>Refractometer reading.</summary>
    Brix,
    /// <summary>Titration to pH 8.1.</summary>
    Titration,
    /// <summary>pH.</summary>
    Ph,
    /// <summary>Alcohol by volume, by a laboratory or a still; not by refractometer.</summary>
    Strength,
    /// <summary>Caffeine, by a laboratory.</summary>
    Caffeine,
}

/// <summary>Something that is asked for instead of being made up.</summary>
/// <param name="Step">Place of the step that raised it, from 0.</param>
/// <param name="Kind">What is wanted.</param>
/// <param name="Field">The field where an answer is typed, as in <see cref="Problem.Field"/>; a batch reading answers it too.</param>
/// <param name="Text">One sentence.</param>
/// <param name="Low">Least that it can be, in <paramref name="Unit"/>; NaN where nothing bounds it.</param>
/// <param name="High">Most that it can be; NaN where nothing bounds it.</param>
/// <param name="Unit">Unit of the bounds and of the answer.</param>
public sealed record Ask(int Step, AskKind Kind, string Field, string Text, double Low, double High, string Unit);

/// <summary>What a note on a prep is about.</summary>
public enum PrepNoteKind
{
    /// <summary>A model is used outside where it was measured, or is only an estimate.</summary>
    Estimate,
    /// <summary>Sugar may crystallise where it is kept.</summary>
    MayCrystallise,
    /// <summary>Steeped so long or with so much leaf that it turns astringent.</summary>
    OverSteeped,
    /// <summary>Sucrose slowly turns into glucose and fructose.</summary>
    Inversion,
    /// <summary>Solids are still in the pot.</summary>
    SolidsStillIn,
    /// <summary>A part of it nobody knows.</summary>
    Unknown,
    /// <summary>Something that is easily overlooked by people with an allergy.</summary>
    Allergen,
    /// <summary>Alcohol may be in it.</summary>
    Alcohol,
}

/// <summary>Something that whoever makes or uses the prep should know.</summary>
/// <param name="Step">Place of the step, from 0; -1 for the whole prep.</param>
/// <param name="Kind">What it is about.</param>
/// <param name="Text">One sentence.</param>
public sealed record PrepNote(int Step, PrepNoteKind Kind, string Text);

/// <summary>What lines cost together. Money without a currency: the caller's.</summary>
/// <param name="Total">Sum of the priced lines, net.</param>
/// <param name="PerGram">Total over the finished mass.</param>
/// <param name="Unpriced">Lines without a price; with any, both figures are "at least".</param>
public readonly record struct PrepCost(double Total, double PerGram, int Unpriced);

/// <summary>A prep as its recipe says it comes out.</summary>
public sealed class PrepOutcome
{
    private readonly double[] _unknownPercent;

    internal PrepOutcome(double[] unknownPercent) => _unknownPercent = unknownPercent;

    /// <summary>The recipe.</summary>
    public required RecipeVersion Recipe { get; init; }

    /// <summary>What comes out, per gram, with ranges and unknowns.</summary>
    public required Composition Composition { get; init; }

    /// <summary>Finished mass, g.</summary>
    public required Estimate Grams { get; init; }

    /// <summary>Finished volume at 20 °C, mL.</summary>
    public required Estimate Millilitres { get; init; }

    /// <summary>Finished mass over what went in, %.</summary>
    public required Estimate YieldPercent { get; init; }

    /// <summary>Mass by step.</summary>
    public required IReadOnlyList<LedgerEntry> Ledger { get; init; }

    /// <summary>What is asked for.</summary>
    public required IReadOnlyList<Ask> Asks { get; init; }

    /// <summary>What to know.</summary>
    public required IReadOnlyList<PrepNote> Notes { get; init; }

    /// <summary>What it costs.</summary>
    public required PrepCost Cost { get; init; }

    /// <summary>Water left by estimate and nothing was strained: then the finished mass tells how much.</summary>
    public required bool MassTellsWater { get; init; }

    /// <summary>Share of the finished mass, %, that comes from lines which do not know a component.</summary>
    public double UnknownPercent(Component component) => _unknownPercent[(int)component];

    /// <summary>Share of the finished mass, %, that comes from lines which do not know one of the sums of <see cref="Pantry.Composition"/>.</summary>
    /// <param name="bit">One of <see cref="Pantry.Composition.TotalSugarKnown"/>, TotalAcidKnown, SolidsKnown.</param>
    public double UnknownPercent(ulong bit) => _unknownPercent[System.Numerics.BitOperations.TrailingZeroCount(bit)];

    /// <summary>How far the ledger is from closing, relative to what went in.</summary>
    public double LedgerGap
    {
        get
        {
            double net = 0, added = 0;
            foreach (var entry in Ledger)
            {
                net += entry.NetGrams;
                added += entry.AddedGrams + entry.GasInGrams;
            }
            var last = Ledger[^1];
            return Math.Abs(net - last.LiquidGrams - last.SolidGrams) / added;
        }
    }
}
