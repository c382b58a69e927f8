using MenuLab.Core.Drafts;
using MenuLab.Core.Pantry;

namespace MenuLab.Core.Safety;

/// <summary>A word about alcohol, or a duty that a strength brings, with its line.</summary>
/// <param name="Id">Row id.</param>
/// <param name="Where">Where it holds.</param>
/// <param name="Key">Key of the word (non_alcoholic, alcohol_free, ...) or of the duty (licensable, abv_statement, ...).</param>
/// <param name="IsDuty">A duty: the comparison says when it applies. Else a word: the comparison says when it is allowed.</param>
/// <param name="Scope">What it covers: any drink, or beer, wine, wine_zero, proposal.</param>
/// <param name="Comparison">How strength is compared; null for a word that is never allowed beside the name of an alcoholic drink.</param>
/// <param name="AbvPercent">The line, % vol; NaN for none.</param>
/// <param name="Strength">How strong the caution is.</param>
/// <param name="Message">What to say when a word fails or a duty applies.</param>
/// <param name="Note">Force and conditions.</param>
/// <param name="Source">Who says so.</param>
public sealed record AlcoholClaimRule(
    string Id, Jurisdictions Where, string Key, bool IsDuty, string Scope, Comparison? Comparison, double AbvPercent, CautionStrength Strength, string Message,
    string Note, RuleSource Source)
{
    /// <summary>It covers every drink, a mixed one too.</summary>
    public bool IsForAnyDrink => Scope == "any";

    /// <summary>The comparison holds at a strength: a word is allowed, a duty applies. "None at all" is met by zero alone.</summary>
    public bool Holds(double abvPercent) => Comparison?.Holds(abvPercent, AbvPercent) ?? false;

    internal static AlcoholClaimRule Read(RuleTable t)
    {
        var sign = t.Required("operator");
        return new AlcoholClaimRule(
            t.Required("id"), t.Word<Jurisdictions>("places", Jurisdiction.Read), t.Required("key"),
            t.Required("kind") switch { "duty" => true, "claim" => false, _ => throw t.Fault("kind", "neither claim nor duty") },
            t.Required("scope"),
            // No strength lies below none, so "none at all" is "at most none".
            sign is "never" or "pending" ? null : sign == "=" ? Safety.Comparison.AtMost : t.Word<Comparison>("operator", Comparisons.Read),
            t.NumberOrNaN("abv_percent"), t.Word("strength", SafetyRule.ReadStrength), t.Required("message"), $"{t.Required("force")}; {t.Text("note")}".TrimEnd(' ', ';'),
            new RuleSource(t.Required("source"), "", t.Text("edition"), t.Word("status", SafetyRule.ReadStatus), t.Text("seen_in")));
    }
}

/// <summary>Whether words may be printed.</summary>
public enum ClaimAnswer
{
    /// <summary>Within the lines that are known here. Local codes decide all the same.</summary>
    Allowed,
    /// <summary>Not settled: the strength may be over, or is not known, or no line was found for this place.</summary>
    NotSettled,
    /// <summary>Over a line.</summary>
    NotAllowed,
}

/// <summary>The answer to one claim about alcohol, with why.</summary>
/// <param name="Answer">Whether the words may be printed.</param>
/// <param name="Cautions">Why not, the strongest first; empty where allowed.</param>
public sealed record ClaimVerdict(ClaimAnswer Answer, IReadOnlyList<Caution> Cautions);

/// <summary>Words about alcohol and the duties that a strength brings, per jurisdiction.</summary>
/// <remarks>
/// Source: row by row in the rules: 27 CFR 7.65 and FDA CPG 510.400 (US), DHSC low-alcohol descriptors guidance (UK, Dec 2018), Reg. (EU) 1169/2011 and
/// 1308/2013, FSANZ Standard 2.7.1, CFIA. Label law governs packages; for a line on a menu the same words are the cautious course. Strengths are compared
/// unrounded, % vol. Local codes decide.
/// </remarks>
public static class AlcoholClaims
{
    /// <summary>Whether one word may stand, by the line of the place alone.</summary>
    /// <param name="rules">The site's rules.</param>
    /// <param name="word">The word.</param>
    /// <param name="abv">Strength as served, % vol.</param>
    /// <param name="besideAlcoholName">It stands beside the name of an alcoholic drink.</param>
    public static ClaimVerdict ByPlace(SiteRules rules, AlcoholWord word, SafetyFigure abv, bool besideAlcoholName = false)
    {
        var lines = rules.Shipped.Claims.Where(c => !c.IsDuty && c.IsForAnyDrink && c.Where != Jurisdictions.All && (c.Where & rules.Where) != 0 && c.Key == Key(word)).ToList();
        var known = lines.Where(c => c.Comparison is not null || besideAlcoholName).ToList();
        if (known.Count == 0)
        {
            return new ClaimVerdict(ClaimAnswer.NotSettled, [NoLine(word, rules)]);
        }
        return Together(known.Select(line => Judge(line, abv, rules)));
    }

    /// <summary>Whether one word may be printed: the strictest of the line of the place and of the rule that a zero is never printed while an ingredient carries alcohol.</summary>
    /// <param name="rules">The site's rules.</param>
    /// <param name="word">The word.</param>
    /// <param name="abv">Strength as served, % vol.</param>
    /// <param name="anyIngredientWithAlcohol">An ingredient carries alcohol, however little; null where nobody knows.</param>
    /// <param name="besideAlcoholName">It stands beside the name of an alcoholic drink.</param>
    public static ClaimVerdict ToPrint(SiteRules rules, AlcoholWord word, SafetyFigure abv, bool? anyIngredientWithAlcohol, bool besideAlcoholName = false)
    {
        var byPlace = ByPlace(rules, word, abv, besideAlcoholName);
        if (word != AlcoholWord.AlcoholFree || anyIngredientWithAlcohol == false)
        {
            return byPlace;
        }
        var own = rules.Shipped.Claims.Single(c => c.Id == "CL-ALL-01");
        var caution = Say(own, own.Message, "", rules, isOver: anyIngredientWithAlcohol == true);
        return Together([byPlace, new ClaimVerdict(anyIngredientWithAlcohol == true ? ClaimAnswer.NotAllowed : ClaimAnswer.NotSettled, [caution])]);
    }

    /// <summary>Whether everything that a claim says about alcohol may be printed.</summary>
    /// <param name="rules">The site's rules.</param>
    /// <param name="claim">The claim as written, in English.</param>
    /// <param name="abv">Strength as served, % vol.</param>
    /// <param name="anyIngredientWithAlcohol">An ingredient carries alcohol, however little; null where nobody knows.</param>
    /// <returns>The answer; allowed without cautions where the claim says nothing about alcohol.</returns>
    public static ClaimVerdict OfText(SiteRules rules, string claim, SafetyFigure abv, bool? anyIngredientWithAlcohol) =>
        Together(Drafts.Claims.WordsOf(claim).Select(word => ToPrint(rules, word, abv, anyIngredientWithAlcohol)));

    /// <summary>Duties that a strength brings at the site: licence, statement of strength, warnings.</summary>
    /// <param name="rules">The site's rules.</param>
    /// <param name="abv">Strength as served, % vol; a range that reaches the line counts.</param>
    /// <returns>A caution each; one that is not settled where only the range reaches the line.</returns>
    public static IReadOnlyList<Caution> Duties(SiteRules rules, SafetyFigure abv) =>
    [
        .. rules.Shipped.Claims
            .Where(c => c.IsDuty && c.IsForAnyDrink && (c.Where & rules.Where) != 0)
            .Where(c => c.Holds(abv.Value) || c.Holds(abv.High) || abv.IsUnknown)
            .Select(c => Say(c, c.Message, "", rules, c.Holds(abv.Value))),
    ];

    private static ClaimVerdict Judge(AlcoholClaimRule line, SafetyFigure abv, SiteRules rules)
    {
        if (line.Comparison is null)
        {
            return new ClaimVerdict(ClaimAnswer.NotAllowed, [Say(line, line.Message, "", rules, true)]);
        }
        var shown = double.IsNaN(abv.Value) ? "strength not known" : $"{Shown(line, abv.Value, rules)} % vol";
        if (!double.IsNaN(abv.Value) && !line.Holds(abv.Value))
        {
            return new ClaimVerdict(ClaimAnswer.NotAllowed, [Say(line, line.Message, shown, rules, true)]);
        }
        return line.Holds(abv.High) && !abv.IsUnknown
            ? new ClaimVerdict(ClaimAnswer.Allowed, [])
            : new ClaimVerdict(ClaimAnswer.NotSettled, [Say(line, line.Message, shown, rules, false)]);
    }

    // Two decimals, and more where rounding would carry the figure across the line.
    private static string Shown(AlcoholClaimRule line, double value, SiteRules rules)
    {
        var decimals = 2;
        while (decimals < 9 && line.Holds(Math.Round(value, decimals, MidpointRounding.AwayFromZero)) != line.Holds(value))
        {
            decimals++;
        }
        return rules.Format.Number(value, decimals);
    }

    private static Caution Say(AlcoholClaimRule line, string message, string shown, SiteRules rules, bool isOver)
    {
        var strength = isOver || line.Strength < CautionStrength.Act ? line.Strength : CautionStrength.Act;
        return new Caution(line.Id, $"{(isOver ? "" : "Not settled: ")}{(shown.Length > 0 ? shown + ". " : "")}{message}", [], line.Source.InWords)
        {
            Strength = strength,
            Trigger = $"{line.Key.Replace('_', ' ')}, {Jurisdiction.Name(line.Where)}",
            Against = shown.Length == 0 || double.IsNaN(line.AbvPercent) ? shown : $"{shown} against {rules.Format.Amount(line.AbvPercent)} % vol",
            Todo = message,
            Where = line.Where,
            Status = line.Source.Status,
            IsNotSettled = !isOver,
        };
    }

    private static Caution NoLine(AlcoholWord word, SiteRules rules) => new(
        "no_line_for_claim", $"No line for \"{Key(word).Replace('_', ' ')}\" is known here for {Jurisdiction.Name(rules.Where)}. Print the strength, and ask who answers for labels there.", [], "none found; local codes decide")
    {
        Strength = CautionStrength.Act,
        Trigger = "a claim about alcohol",
        Todo = "Print the strength, and ask.",
        Where = rules.Where,
        Status = FigureStatus.Assumed,
        IsNotSettled = true,
    };

    private static ClaimVerdict Together(IEnumerable<ClaimVerdict> verdicts)
    {
        var all = verdicts.ToList();
        return all.Count == 0
            ? new ClaimVerdict(ClaimAnswer.Allowed, [])
            : new ClaimVerdict(all.Max(v => v.Answer), [.. all.SelectMany(v => v.Cautions).DistinctBy(c => c.Key).OrderByDescending(c => c.Strength)]);
    }

    private static string Key(AlcoholWord word) => word switch
    {
        AlcoholWord.AlcoholFree => "alcohol_free",
        AlcoholWord.NonAlcoholic => "non_alcoholic",
        AlcoholWord.Dealcoholised => "dealcoholised",
        AlcoholWord.LowAlcohol => "low_alcohol",
        _ => "non_intoxicating",
    };
}
