using MenuLab.Core.Pantry;

namespace MenuLab.Core.Preps;

/// <summary>So much of an ingredient.</summary>
/// <param name="Ingredient">Identity; the same ingredient twice varies as one.</param>
/// <param name="Composition">What it is made of.</param>
/// <param name="Grams">Mass, g; 0 and up.</param>
public sealed record Portion(IngredientId Ingredient, Composition Composition, double Grams)
{
    /// <summary>Volume at 20 °C by its own density, mL.</summary>
    public double Millilitres => Grams / Composition.GramsPerMillilitre;
}

/// <summary>Mixes compositions by mass.</summary>
public static class Mixture
{
    /// <summary>What portions make together.</summary>
    /// <param name="portions">The portions, at least one of more than 0 g; their order does not matter.</param>
    /// <returns>The composition of the whole, with ranges and unknowns.</returns>
    /// <remarks>
    /// Source: every part is additive by mass; ranges of one source merge as in <see cref="PrepSources"/>. Valid for: anything that mixes without
    /// reacting. Error: of the portions.
    /// </remarks>
    /// <exception cref="ArgumentException">No portion, or none of more than 0 g.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A negative, infinite or NaN mass.</exception>
    public static Composition Of(params IReadOnlyList<Portion> portions)
    {
        var lines = new List<(PrepLine, Composition)>(portions.Count);
        foreach (var portion in portions)
        {
            if (Guard.FiniteNonNegative(portion.Grams) > 0)
            {
                lines.Add((new PrepLine(portion.Ingredient, portion.Grams), portion.Composition));
            }
        }
        if (lines.Count == 0)
        {
            throw new ArgumentException("A mixture has at least one portion of more than 0 g.", nameof(portions));
        }
        var work = new PrepWork();
        work.Add(lines);
        return work.Content().Composition;
    }
}
