using MenuLab.Core.Balance;
using MenuLab.Core.Pantry;
using MenuLab.Core.Solutions;

namespace MenuLab.Core.Safety;

/// <summary>What the words of a drink add to its figures.</summary>
/// <param name="LineNames">For each weighed line, the ingredient's name and what was typed of it: looked through for the words of the rules.</param>
/// <param name="Steps">Steps of the build, in words.</param>
public sealed record DrinkWords(IReadOnlyList<string> LineNames, IReadOnlyList<string> Steps)
{
    /// <summary>No words: only the figures are checked.</summary>
    public static DrinkWords None { get; } = new([], []);
}

/// <summary>The cautions of a drink: its figures and words put to the rules of the site. Every text defers to local codes.</summary>
public static class Cautions
{
    // Below this, g/g, fruit juice and vinegar of its own nature are not named as a cause.
    private const double NoticeableEthanol = 0.002;

    // A drink above this is not mistaken for one without alcohol, % vol (UK low-alcohol line, DHSC 2018).
    private const double LooksLow = 1.2;

    // Coumarin of cassia, g/kg: usual and high (MEMORY); Ceylon cinnamon holds hardly any, which nobody can tell from the word.
    private const double CassiaCoumarin = 3, CassiaCoumarinHigh = 7;

    /// <summary>The cautions of a drink.</summary>
    /// <param name="lines">Its weighed lines.</param>
    /// <param name="balance">Its balance.</param>
    /// <param name="words">Names of its lines and its steps.</param>
    /// <param name="rules">The site's rules.</param>
    /// <returns>The strongest first; none of them says that the drink is safe.</returns>
    public static IReadOnlyList<Caution> Of(ReadOnlySpan<WeighedLine> lines, DrinkBalance balance, DrinkWords words, SiteRules rules) =>
        rules.Check(Facts(lines, balance, words, rules));

    /// <summary>What is known of a drink: also what its card must carry is decided by it (<see cref="LabelField.Of"/>).</summary>
    public static SafetyFacts Facts(ReadOnlySpan<WeighedLine> lines, DrinkBalance balance, DrinkWords words, SiteRules rules)
    {
        var set = balance.Served ?? balance.Mixed;
        var facts = OfFigures(lines, set, rules);
        return rules.Book is null ? facts : OfWords(facts, lines, set, words, rules);
    }

    private static SafetyFacts OfFigures(ReadOnlySpan<WeighedLine> lines, MetricSet set, SiteRules rules)
    {
        var facts = SafetyFacts.None;
        var egg = Where(lines, l => (l.Composition.Caveats & CompositionCaveats.RawEgg) != 0);
        if (egg.Count > 0)
        {
            facts = facts.With("raw_egg", new SafetyFlag(true, egg));
        }
        facts = facts.With("carbonated", Where(lines, l => l.IsInLiquid && (l.Composition.Caveats & CompositionCaveats.Carbonated) != 0).Count > 0);

        var litres = set[Metric.Volume].Value / 1000;
        var kilograms = set[Metric.Mass].Value / 1000;
        var quinine = Bringing(lines, Component.Quinine);
        if (quinine.Count > 0)
        {
            var level = set[Metric.Quinine];
            facts = facts.With("quinine_mg_per_kg", SafetyFigure.Of(level, 1, quinine))
                .With("quinine_mg_per_l", SafetyFigure.Of(level, kilograms / litres, quinine))
                .With("quinine_mg", SafetyFigure.Of(level, kilograms, quinine));
        }
        var caffeine = Bringing(lines, Component.Caffeine);
        if (caffeine.Count > 0)
        {
            facts = facts.With("caffeine_mg", SafetyFigure.Of(set[Metric.Caffeine], 1, caffeine)).With("caffeine_mg_per_l", SafetyFigure.Of(set[Metric.Caffeine], 1 / litres, caffeine));
        }
        var polyols = Where(lines, l => l.IsInLiquid && l.Composition.PerGram[(int)Component.Erythritol] + l.Composition.PerGram[(int)Component.Xylitol]
            + l.Composition.PerGram[(int)Component.Sorbitol] + l.Composition.PerGram[(int)Component.Mannitol] + l.Composition.PerGram[(int)Component.OtherPolyol] > 0);
        if (polyols.Count > 0)
        {
            // g/100 mL over g/mL: grams per 100 g.
            facts = facts.With("polyol_percent", SafetyFigure.Of(set[Metric.Polyol], litres / kilograms, polyols))
                .With("erythritol_g_per_kg_body", Doses.PerBodyKilogram(Sum(lines, Component.Erythritol)));
            if (Sum(lines, Component.Xylitol) > 0)
            {
                facts = facts.With("xylitol", new SafetyFlag(true, polyols));
            }
        }
        if (set[Metric.Ph] is { UnknownPercent: 0, Value: not double.NaN } ph)
        {
            facts = facts.With("drink_ph", SafetyFigure.Of(ph, 1, []));
        }
        return Alcohol(facts, lines, set, rules);
    }

    private static SafetyFacts Alcohol(SafetyFacts facts, ReadOnlySpan<WeighedLine> lines, MetricSet set, SiteRules rules)
    {
        var abv = set[Metric.Abv];
        var ethanol = Where(lines, l => l.IsInLiquid
            && (l.Composition.PerGram[(int)Component.Ethanol] > NoticeableEthanol || !l.Composition.Knows(Component.Ethanol.Bit())));
        var figure = SafetyFigure.Of(abv, 1, ethanol);
        facts = facts.With("abv_percent", figure)
            .With("alcoholic", figure.Value > LooksLow ? true : figure.IsUnknown || figure.High > LooksLow ? null : false)
            .With("ethanol", ethanol.Count == 0 ? false : figure.Value > 0 ? true : null);
        if (ethanol.Count > 0 && !(abv.Value >= LooksLow) && (abv.High > 0 || figure.IsUnknown))
        {
            facts = facts.With("low_abv_percent", figure);
        }
        if (rules.Book is not null && set[Metric.Alcohol].Value > 0)
        {
            facts = facts.With("standard_drinks", SafetyFigure.Of(set[Metric.Alcohol], 1 / StandardDrink.At(rules).EthanolGrams, ethanol));
        }
        return facts;
    }

    // A word that names a thing outranks a computed nothing: the record may know nothing of it.
    private static SafetyFacts OfWords(SafetyFacts facts, ReadOnlySpan<WeighedLine> lines, MetricSet set, DrinkWords words, SiteRules rules)
    {
        var names = words.LineNames.Select(Phrase.Split).ToList();
        var steps = words.Steps.Select(Phrase.Split).ToList();
        foreach (var rule in rules.Shipped.Rules.Concat(rules.House.Rules).Where(r => r.Words.Count > 0))
        {
            var (places, inNames) = Find(rule.Words, names);
            var (stepPlaces, inSteps) = Find(rule.Words, steps);
            if (places.Count + stepPlaces.Count == 0)
            {
                continue;
            }
            if (!rule.IsOnFlag)
            {
                facts = facts.Figure(rule.Subject) is { } known && (known.Value > 0 || known.IsUnknown) ? facts : facts.With(rule.Subject, Answer(rule.Subject, places, lines, set));
                facts = rule.Subject.StartsWith("thujone", StringComparison.Ordinal) && facts.Flag("artemisia") is null ? facts.With("artemisia", IsArtemisia([.. names, .. steps])) : facts;
            }
            else if (facts.Flag(rule.Subject)?.State != true)
            {
                facts = facts.With(rule.Subject, new SafetyFlag(inNames || inSteps ? true : null, places));
            }
        }
        return facts.Flag("dry_ice") is null && facts.Flag("liquid_nitrogen") is null ? facts : facts.With("cryogen", true);
    }

    // What the drink's own figures can say of a quantity that a word put into question; else nobody knows.
    private static SafetyFigure Answer(string quantity, List<int> places, ReadOnlySpan<WeighedLine> lines, MetricSet set)
    {
        var grams = 0.0;
        var goesIn = places.Count == 0;
        foreach (var place in places)
        {
            goesIn |= lines[place].IsInLiquid;
            grams += lines[place].IsInLiquid ? lines[place].Grams : 0;
        }
        return quantity switch
        {
            "ph_in_copper" => SafetyFigure.Of(set[Metric.Ph], 1, places),
            // A garnish is not swallowed whole; a pinch on top is far below either limit.
            "nutmeg_g" or "coumarin_mg_per_kg_body" when !goesIn => SafetyFigure.Exactly(0),
            "nutmeg_g" when grams > 0 => SafetyFigure.Exactly(grams) with { Lines = places },
            "coumarin_mg_per_kg_body" when grams > 0 => new SafetyFigure(
                Doses.PerBodyKilogram(Doses.Coumarin(grams, CassiaCoumarin)), 0, Doses.PerBodyKilogram(Doses.Coumarin(grams, CassiaCoumarinHigh)), false, places),
            _ => SafetyFigure.Unknown(places),
        };
    }

    private static readonly Phrase[] Artemisia = [new("wormwood", false), new("artemisia", false), new("mugwort", false)];

    private static bool IsArtemisia(List<string[]> texts) => texts.Exists(n => Artemisia.Any(a => a.IsIn(n)));

    // Which texts hold one of the words, and whether any of those words leaves no question. Plain loops: it runs for every rule at every edit.
    private static (List<int> Places, bool IsCertain) Find(IReadOnlyList<Phrase> phrases, List<string[]> texts)
    {
        var places = new List<int>();
        var isCertain = false;
        for (var i = 0; i < texts.Count; i++)
        {
            var isFound = false;
            for (var p = 0; p < phrases.Count; p++)
            {
                if (phrases[p].IsIn(texts[i]))
                {
                    isFound = true;
                    isCertain |= !phrases[p].IsAQuestion;
                }
            }
            if (isFound)
            {
                places.Add(i);
            }
        }
        return (places, isCertain);
    }

    private static List<int> Bringing(ReadOnlySpan<WeighedLine> lines, Component component) =>
        Where(lines, l => l.IsInLiquid && (l.Composition.PerGram[(int)component] > 0 || !l.Composition.Knows(component.Bit())));

    private static double Sum(ReadOnlySpan<WeighedLine> lines, Component component)
    {
        var sum = 0.0;
        foreach (ref readonly var line in lines)
        {
            sum += line.IsInLiquid ? line.Grams * line.Composition.PerGram[(int)component] : 0;
        }
        return sum;
    }

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
