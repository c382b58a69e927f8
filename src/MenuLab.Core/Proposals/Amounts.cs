using MenuLab.Core.Pantry;
using MenuLab.Core.Preps;
using MenuLab.Core.Solutions;

namespace MenuLab.Core.Proposals;

/// <summary>What an amount added makes of a figure, and how a target is refused.</summary>
internal static class Amounts
{
    /// <summary>A figure of a portion with so many grams of something else per gram.</summary>
    public static double With(Composition start, Composition added, double perGram, PrepFigure figure)
    {
        Span<double> mixed = stackalloc double[Components.Count];
        for (var i = 0; i < mixed.Length; i++)
        {
            mixed[i] = start.PerGram[i] + perGram * added.PerGram[i];
        }
        return PrepFigures.Value(mixed, figure);
    }

    /// <summary>Problems of a target that lies outside what is possible.</summary>
    public static Result<Adjustment> Refused(string field, string message) => Result.Invalid<Adjustment>(new Problem(field, message));
}
