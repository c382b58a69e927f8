using MenuLab.Core.Balance;
using MenuLab.Core.Drafts;
using MenuLab.Core.House;
using MenuLab.Core.Pantry;

namespace MenuLab.Core.Safety;

/// <summary>What would go wrong in the pouring of a drink, beside the cautions of Core/Safety.</summary>
public static class PourCautions
{
    private const double FullPercent = 100;

    /// <summary>The cautions.</summary>
    /// <param name="drink">The weighed drink.</param>
    /// <param name="balance">Its balance.</param>
    /// <param name="format">How figures are written.</param>
    public static IEnumerable<Caution> Of(WeighedDrink drink, DrinkBalance balance, HouseFormat format)
    {
        var fizzy = Enumerable.Range(0, drink.Lines.Length).Where(i => GoesFizzyIntoTheTin(drink.Lines[i])).ToList();
        if (fizzy.Count > 0 && drink.Build.Method is { InTheGlass: false })
        {
            yield return new Caution(
                "fizz_in_tin", "A fizzy line goes into the tin: in a closed tin it builds pressure and loses its gas. Write it as a top, or into the glass.",
                fizzy, "common practice, no source");
        }
        if (balance.Served is { } served && Math.Round(served[Metric.GlassFill].Value) > FullPercent)
        {
            yield return new Caution(
                "over_wash_line", $"Over the wash line: the glass would be at {format.Number(served[Metric.GlassFill].Value, 0)} % of it. Pour less, or take a larger glass.",
                [], "the glass as the house list has it");
        }
    }

    private static bool GoesFizzyIntoTheTin(WeighedLine line) =>
        line is { IsInLiquid: true, IsTopUp: false, Joins: Joins.Mixed } && (line.Composition.Caveats & CompositionCaveats.Carbonated) != 0;
}
