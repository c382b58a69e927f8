using System.Globalization;
using System.Text.RegularExpressions;

namespace MenuLab.Core.Drafts;

/// <summary>What a claim about alcohol binds a drink to.</summary>
/// <param name="PercentVol">The limit, % vol, 0 to 100.</param>
/// <param name="IsBelow">The drink must stay below the limit; else it may reach it.</param>
/// <param name="NoneInAnyLine">The words also bar any line that carries alcohol, however little.</param>
/// <param name="Source">The rule behind the limit, and where another place draws another line.</param>
public sealed record AlcoholLimit(double PercentVol, bool IsBelow, bool NoneInAnyLine, string Source);

/// <summary>Words about alcohol whose use rules bind.</summary>
public enum AlcoholWord
{
    /// <summary>No alcohol, alcohol free, zero, 0.0.</summary>
    AlcoholFree,
    /// <summary>Non-alcoholic.</summary>
    NonAlcoholic,
    /// <summary>Dealcoholised, alcohol removed.</summary>
    Dealcoholised,
    /// <summary>Low alcohol.</summary>
    LowAlcohol,
    /// <summary>Non-intoxicating.</summary>
    NonIntoxicating,
}

/// <summary>
/// Reads what the words of a claim bind a drink to. It answers for the words alone: which of them may be printed is for
/// local codes and whoever answers for the menu.
/// </summary>
public static partial class Claims
{
    /// <summary>Claims that a brief often holds.</summary>
    public static IReadOnlyList<string> Suggestions { get; } = ["no alcohol", "below 0.5 % ABV", "low alcohol, at most 1.2 % ABV"];

    /// <summary>The limit that a claim text binds to, % vol; null where it names none.</summary>
    /// <param name="claim">Any text, in English, e.g. "below 0.5 % ABV".</param>
    /// <returns>The strictest limit that the text names, % vol.</returns>
    /// <remarks>Source, valid range and error: as <see cref="LimitOf"/>.</remarks>
    public static double? AbvLimit(string claim) => LimitOf(claim)?.PercentVol;

    /// <summary>The same with how it binds and by which rule.</summary>
    /// <param name="claim">Any text, in English.</param>
    /// <returns>The strictest limit that the text names, or null.</returns>
    /// <remarks>
    /// Source: for a written figure, the figure. For words: UK DHSC guidance on low-alcohol descriptors (Dec 2018) for
    /// "alcohol free" 0.05 or less and "low alcohol" 1.2 or less; 27 CFR 7.65 (formerly 7.26) and FDA CPG 510.400 for
    /// "non-alcoholic" and "dealcoholised" below 0.5. Zero in words is held to the 0.05 and to no line with alcohol.
    /// Valid for: English, % vol. Other places draw other lines, and those named here may have moved: local codes decide.
    /// Error: none; it compares words.
    /// </remarks>
    public static AlcoholLimit? LimitOf(string claim)
    {
        var found = new List<AlcoholLimit>();
        foreach (Match match in Figure().Matches(claim))
        {
            var figure = double.Parse(match.Groups["figure"].ValueSpan.ToString().Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);
            if (figure <= 100)
            {
                found.Add(new AlcoholLimit(figure, Below().IsMatch(match.Groups["word"].Value), false, "the figure as written; local codes decide which words may stand beside it"));
            }
        }
        if (Zero().IsMatch(claim))
        {
            found.Add(new AlcoholLimit(
                0.05, false, true,
                "UK: 0.05 % or less (DHSC guidance on low-alcohol descriptors, Dec 2018). US, Australia and New Zealand: none at all (27 CFR 7.65; FSANZ Standard 2.7.1). Local codes decide."));
        }
        if (NonAlcoholic().IsMatch(claim) || Dealcoholised().IsMatch(claim))
        {
            found.Add(new AlcoholLimit(
                0.5, true, false,
                "US: below 0.5 %, and the label says so (27 CFR 7.65, FDA CPG 510.400). UK: 0.5 % or less for \"dealcoholised\" (DHSC, Dec 2018). Australia and New Zealand: none at all for \"non-alcoholic\" (FSANZ Standard 2.7.1). Local codes decide."));
        }
        if (Low().IsMatch(claim))
        {
            found.Add(new AlcoholLimit(
                1.2, false, false,
                "UK: 1.2 % or less (DHSC guidance on low-alcohol descriptors, Dec 2018). Australia and New Zealand: 1.15 % or less (FSANZ Standard 2.7.1); Canada: below 1.1 %. Local codes decide."));
        }
        return found.Count == 0 ? null : found.MinBy(l => (l.PercentVol, !l.IsBelow, !l.NoneInAnyLine));
    }

    /// <summary>The words about alcohol that a claim uses, each once.</summary>
    /// <param name="claim">Any text, in English.</param>
    /// <remarks>Error: none; it compares words. Which of them may be printed where is for the rules of Core/Safety, and for local codes.</remarks>
    public static IReadOnlyList<AlcoholWord> WordsOf(string claim) =>
    [
        .. new (AlcoholWord Word, Regex Pattern)[]
        {
            (AlcoholWord.AlcoholFree, Zero()), (AlcoholWord.NonAlcoholic, NonAlcoholic()), (AlcoholWord.Dealcoholised, Dealcoholised()),
            (AlcoholWord.LowAlcohol, Low()), (AlcoholWord.NonIntoxicating, NonIntoxicating()),
        }.Where(w => w.Pattern.IsMatch(claim)).Select(w => w.Word),
    ];

    // A word that limits, a figure, per cent, and then nothing or a word for alcohol: "below 5 % sugar" is no limit of strength.
    [GeneratedRegex(
        @"(?<word>below|under|less than|<|at most|no more than|not more than|not above|not over|up to|max(?:imum)?\.?|≤)\s*(?<figure>\d{1,3}(?:[.,]\d{1,3})?)\s*(?:(?:%|per ?cent)(?=\s*(?:abv\b|alc|vol|by vol|$|[^\w\s]|(?:and|or|in|when|as|with)\b))|abv\b)",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Figure();

    [GeneratedRegex("below|under|less than|<", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Below();

    [GeneratedRegex(@"\balcohol[- ]?free\b|\b(?:no|zero|without|free of)(?: any)? alcohol\b|(?<![\d.,])0[.,]0(?![\d])|(?<![\d.,])0 ?%(?= ?(?:abv|alc|vol))|\bzero[- ](?:proof|abv)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Zero();

    [GeneratedRegex(@"\bnon[- ]?alcoholic\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex NonAlcoholic();

    [GeneratedRegex(@"\bde-?alcoholi[sz]ed\b|\balcohol[- ]removed\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Dealcoholised();

    [GeneratedRegex(@"\bnon[- ]?intoxicating\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex NonIntoxicating();

    [GeneratedRegex(@"\blow[- ](?:in )?(?:alcohol|abv)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Low();
}
