using MenuLab.Core.House;

namespace MenuLab.Core.Tastings;

/// <summary>One thing a taster drinks in a tasting.</summary>
/// <param name="Millilitres">How much is poured, mL, zero or more.</param>
/// <param name="AbvPercent">Its strength, % vol, 0 to 100.</param>
/// <param name="CaffeineMilligramsPerLitre">Its caffeine, mg/L, zero or more.</param>
/// <param name="Times">How often it is poured for one taster, tasting again included; 1 or more.</param>
public readonly record struct Portion(double Millilitres, double AbvPercent, double CaffeineMilligramsPerLitre, int Times = 1);

/// <summary>What a tasting asks a taster to take in, everything swallowed.</summary>
/// <param name="EthanolGrams">Ethanol of this tasting, g.</param>
/// <param name="EthanolGramsToday">Ethanol with what was planned earlier today, g.</param>
/// <param name="CaffeineMilligrams">Caffeine of this tasting, mg.</param>
/// <param name="CaffeineMilligramsToday">Caffeine with what was planned earlier today, mg.</param>
/// <param name="CapGrams">Most ethanol in this tasting, g.</param>
public sealed record Intake(double EthanolGrams, double EthanolGramsToday, double CaffeineMilligrams, double CaffeineMilligramsToday, double CapGrams)
{
    /// <summary>More ethanol than the house allows: an open point that the lead cannot pass alone.</summary>
    public bool OverAlcohol => EthanolGrams > CapGrams || EthanolGramsToday > IntakeBudget.MostGramsADay;

    /// <summary>More caffeine than is judged safe for healthy adults.</summary>
    public bool OverCaffeine => CaffeineMilligrams > IntakeBudget.MostCaffeineAtOnce || CaffeineMilligramsToday > IntakeBudget.MostCaffeineADay;
}

/// <summary>How much alcohol and caffeine a tasting may ask of a taster. Cautions, no permission: legal and employer rules come first.</summary>
public static class IntakeBudget
{
    /// <summary>Mass of a millilitre of ethanol at 20 °C, g. Source: OIML R 22, rounded.</summary>
    public const double EthanolGramsPerMillilitre = 0.78924;

    /// <summary>Most ethanol in one tasting unless a house sets less, g. Our choice; no standard found.</summary>
    public const double MostGramsByDefault = 10;

    /// <summary>Most ethanol in one day, and the highest cap of one tasting that a house may set, g. Our choice; no standard found.</summary>
    public const double MostGramsADay = 20;

    /// <summary>Most caffeine at once, mg. Source: EFSA Journal 2015;13(5):4102, healthy adults.</summary>
    public const double MostCaffeineAtOnce = 200;

    /// <summary>Most caffeine in one day, mg; 200 in pregnancy. Source: EFSA Journal 2015;13(5):4102.</summary>
    public const double MostCaffeineADay = 400;

    /// <summary>Who is not asked to taste alcohol, traces included; shown to every taster before the first pour.</summary>
    /// <remarks>Source: docs/statistics.md, section 9.3; local law and the employer's rules come first. Valid for: any tasting with alcohol. Error: a list for people, not a judgement of health.</remarks>
    public static IReadOnlyList<string> NotAsked { get; } =
    [
        "anyone under the legal age",
        "anyone who is or may be pregnant",
        "anyone who drives or works machines afterwards",
        "anyone on medicine that does not go with alcohol",
        "anyone in recovery",
        "anyone who would rather not, without a reason",
    ];

    /// <summary>Ethanol of a portion.</summary>
    /// <param name="millilitres">How much, mL, zero or more.</param>
    /// <param name="abvPercent">Its strength, % vol, 0 to 100.</param>
    /// <returns>Ethanol, g.</returns>
    /// <remarks>Source: volume times strength times the density of ethanol at 20 °C. Valid for: any drink. Error: that of the strength.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its range.</exception>
    public static double EthanolGrams(double millilitres, double abvPercent) =>
        Guard.FiniteNonNegative(millilitres) * Guard.InRange(abvPercent, 0, 100) / 100 * EthanolGramsPerMillilitre;

    /// <summary>Adds up what one taster is to take in, everything swallowed: spitting is for the taster's good, the plan counts it all.</summary>
    /// <param name="portions">All pours of one taster: samples, second tastes, the first glass that does not count.</param>
    /// <param name="earlierGrams">Ethanol planned for this taster earlier today, g, zero or more.</param>
    /// <param name="earlierCaffeine">Caffeine planned for this taster earlier today, mg, zero or more.</param>
    /// <param name="capGrams">Most ethanol in this tasting, g, 0 to <see cref="MostGramsADay"/>.</param>
    /// <returns>The sums.</returns>
    /// <remarks>Source: docs/statistics.md, section 9.3. Valid for: one taster and tasting. Error: that of strengths and caffeine.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its range.</exception>
    public static Intake Of(IReadOnlyList<Portion> portions, double earlierGrams = 0, double earlierCaffeine = 0, double capGrams = MostGramsByDefault)
    {
        Guard.FiniteNonNegative(earlierGrams);
        Guard.FiniteNonNegative(earlierCaffeine);
        Guard.InRange(capGrams, 0, MostGramsADay);
        var (grams, caffeine) = (0.0, 0.0);
        foreach (var portion in portions)
        {
            ArgumentOutOfRangeException.ThrowIfLessThan(portion.Times, 1, nameof(portions));
            grams += portion.Times * EthanolGrams(portion.Millilitres, portion.AbvPercent);
            caffeine += portion.Times * portion.Millilitres / 1000 * Guard.FiniteNonNegative(portion.CaffeineMilligramsPerLitre);
        }
        return new Intake(grams, earlierGrams + grams, caffeine, earlierCaffeine + caffeine, capGrams);
    }

    /// <summary>What the lead is told; empty where nothing is over.</summary>
    /// <param name="intake">The sums.</param>
    /// <param name="format">How the house writes numbers.</param>
    /// <returns>Cautions.</returns>
    /// <remarks>Source: docs/statistics.md, section 9.3. Valid for: planning. Error: none of its own.</remarks>
    public static IReadOnlyList<string> Cautions(Intake intake, HouseFormat format)
    {
        var cautions = new List<string>();
        if (intake.EthanolGrams > intake.CapGrams)
        {
            cautions.Add($"Swallowed in full this tasting holds {format.Number(intake.EthanolGrams, 1)} g of alcohol, more than the {format.Amount(intake.CapGrams)} g allowed. Pour less, taste fewer, or ask a director; local rules come first.");
        }
        if (intake.EthanolGramsToday > MostGramsADay)
        {
            cautions.Add($"With today's earlier tastings it comes to {format.Number(intake.EthanolGramsToday, 1)} g of alcohol, more than the {format.Amount(MostGramsADay)} g of one day. Taste another day; local rules come first.");
        }
        if (intake.OverCaffeine)
        {
            cautions.Add($"Caffeine comes to {format.Number(intake.CaffeineMilligrams, 0)} mg now and {format.Number(intake.CaffeineMilligramsToday, 0)} mg today; {format.Amount(MostCaffeineAtOnce)} mg at once and {format.Amount(MostCaffeineADay)} mg a day are judged safe for healthy adults, less in pregnancy.");
        }
        return cautions;
    }
}
