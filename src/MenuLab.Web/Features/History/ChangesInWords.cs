using MenuLab.Core.House;
using MenuLab.Core.Iterations;

namespace MenuLab.Web.Features.History;

/// <summary>What changed from one state to another, in words.</summary>
/// <param name="Between">Which two: "2 → 3".</param>
/// <param name="Sentence">What was changed and what it did.</param>
/// <param name="All">Every change, the largest first.</param>
/// <param name="BeforeIce">The figures are those before ice, since one of the two has no others.</param>
public sealed record ChangesInWords(string Between, string Sentence, IReadOnlyList<string> All, bool BeforeIce)
{
    /// <summary>From one state to the next.</summary>
    public static ChangesInWords Of(DrinkState before, DrinkState after, HouseFormat format)
    {
        var changes = WhatChanged.Between(before.Snapshot, after.Snapshot);
        var figures = WhatChanged.Figures(before.Balance, after.Balance);
        return new ChangesInWords($"{before.Key} → {after.Key}", changes.Sentence(figures, format), changes.InWords(format), !figures.IsServed);
    }
}
