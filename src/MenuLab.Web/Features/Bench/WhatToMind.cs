using MenuLab.Core.Balance;
using MenuLab.Core.Safety;

namespace MenuLab.Web.Features.Bench;

/// <summary>The cautions that bench, card and command line show: those of safety and those of the pouring, without the mere notes.</summary>
public static class WhatToMind
{
    /// <summary>What a person must look at.</summary>
    public static IReadOnlyList<Caution> Of(WeighedDrink weighed, DrinkBalance balance, DrinkWords words, SiteRules rules) =>
        [.. Cautions.Of(weighed.Lines, balance, words, rules).Where(c => c.Strength > CautionStrength.Note), .. PourCautions.Of(weighed, balance, rules.Format)];
}
