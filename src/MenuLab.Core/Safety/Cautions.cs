using MenuLab.Core.Balance;
using MenuLab.Core.Pantry;

namespace MenuLab.Core.Safety;

/// <summary>Something that a person must look at before the drink is served. It speaks up and decides nothing.</summary>
/// <param name="Key">Stable key, e.g. "raw_egg".</param>
/// <param name="Text">What it is and what to do, deferring to local codes and licensed practice.</param>
/// <param name="Lines">Places of the lines that cause it, among the weighed lines.</param>
/// <param name="Source">The rule behind it.</param>
public sealed record Caution(string Key, string Text, IReadOnlyList<int> Lines, string Source);

/// <summary>
/// The first cautions: raw egg, quinine, caffeine, and a claim of little or no alcohol that the drink loses. The full
/// rules with their jurisdictions come later; every text defers to local codes.
/// </summary>
public static class Cautions
{
    /// <summary>Strength at which most "non-alcoholic" claims end, % vol (27 CFR 7.65: below 0.5; UK Licensing Act 2003 s. 191: above 0.5 is licensable).</summary>
    public const double ClaimLimitAbvPercent = 0.5;

    /// <summary>Quinine ceiling used, mg/kg: 21 CFR 172.575, as base, carbonated beverages.</summary>
    public const double QuinineLimitMilligramsPerKilogram = 83;

    /// <summary>Caffeine level at which a drink other than tea or coffee is labelled high, mg/L (EU Reg. 1169/2011 Annex III; MEMORY).</summary>
    public const double CaffeineLabelMilligramsPerLitre = 150;

    /// <summary>Cautions of a drink.</summary>
    /// <param name="lines">Its weighed lines.</param>
    /// <param name="balance">Its balance.</param>
    public static IReadOnlyList<Caution> Of(ReadOnlySpan<WeighedLine> lines, DrinkBalance balance)
    {
        var cautions = new List<Caution>();
        var set = balance.Served ?? balance.Mixed;

        var egg = Where(lines, l => (l.Composition.Caveats & CompositionCaveats.RawEgg) != 0);
        if (egg.Count > 0)
        {
            cautions.Add(new Caution(
                "raw_egg",
                "Raw egg: use pasteurised egg, or tell guests and print the reminder that local rules ask for; never for guests at high risk.",
                egg, "FDA Food Code 2022, 3-302.13 and 3-603.11; local code decides"));
        }

        var quinine = Where(lines, l => l.Composition.PerGram[(int)Solutions.Component.Quinine] > 0 || !l.Composition.Knows(1UL << (int)Solutions.Component.Quinine));
        var level = set[Metric.Quinine];
        if (quinine.Count > 0 && (level.Value > 0 || level.UnknownPercent > 0))
        {
            var over = level.High > QuinineLimitMilligramsPerKilogram
                ? $" It may exceed {QuinineLimitMilligramsPerKilogram} mg/kg, the US ceiling for carbonated drinks: measure or dilute."
                : "";
            cautions.Add(new Caution(
                "quinine",
                level.Value > 0
                    ? "Contains quinine: say so on card and menu; it does not suit everyone (pregnancy, some heart medicines, earlier reactions)." + over
                    : "May contain quinine: read the label before serving.",
                quinine, "21 CFR 172.575; EU limit recalled (MEMORY); local code decides"));
        }

        var caffeine = set[Metric.Caffeine].Value / (set[Metric.Volume].Value / 1000);
        if (caffeine > CaffeineLabelMilligramsPerLitre)
        {
            cautions.Add(new Caution(
                "caffeine_high",
                $"More than {CaffeineLabelMilligramsPerLitre} mg of caffeine per litre: EU labels call this a high caffeine content, unless the drink is named after coffee or tea. Not for children; guests ask.",
                Where(lines, l => l.IsInLiquid && l.Composition.PerGram[(int)Solutions.Component.Caffeine] > 0),
                "EU Reg. 1169/2011 Annex III (MEMORY); local code decides"));
        }

        var ethanol = Where(lines, l => l.IsInLiquid && (l.Composition.PerGram[(int)Solutions.Component.Ethanol] > NoticeableEthanol || !l.Composition.Knows(1UL << (int)Solutions.Component.Ethanol)));
        var abv = set[Metric.Abv];
        if (ethanol.Count > 0 && abv.Value < LooksLow && (abv.High >= ClaimLimitAbvPercent || abv.UnknownPercent > 0))
        {
            cautions.Add(new Caution(
                "low_alcohol_claim",
                "Little alcohol, but not surely below 0.5 % vol: it cannot be called non-alcoholic for now. Read the labels or measure; local law decides what may be said.",
                ethanol, "27 CFR 7.65; UK Licensing Act 2003 s. 191; local code decides"));
        }
        else if (ethanol.Count > 0 && abv.Value < ClaimLimitAbvPercent && abv.Value > 0)
        {
            cautions.Add(new Caution(
                "trace_alcohol",
                "Below 0.5 % vol, but there is some alcohol in it: do not call it \"alcohol free\" or \"0.0\".",
                ethanol, "27 CFR 7.65; UK low-alcohol descriptors guidance (2018): above 0.05 % vol is not alcohol free; local code decides"));
        }
        return cautions;
    }

    // Below this, g/g, fruit juice and vinegar of its own nature are not named as a cause.
    private const double NoticeableEthanol = 0.002;

    // A drink above this is not mistaken for one without alcohol, % vol.
    private const double LooksLow = 1.2;

    private static List<int> Where(ReadOnlySpan<WeighedLine> lines, Func<WeighedLine, bool> which)
    {
        var places = new List<int>();
        for (var i = 0; i < lines.Length; i++)
        {
            if (which(lines[i]))
            {
                places.Add(i);
            }
        }
        return places;
    }
}
