using MenuLab.Core.House;

namespace MenuLab.Core.Safety;

/// <summary>The rules that a site goes by: an edition, the law of the place, the house's own rules, and how the house writes figures.</summary>
/// <param name="Book">The shipped rules.</param>
/// <param name="Where">The site's law; several or all where it is not known, which gives the strictest.</param>
/// <param name="House">The house's own, on top.</param>
/// <param name="Format">How figures are written.</param>
public sealed record SiteRules(RuleBook? Book, Jurisdictions Where, HouseRules House, HouseFormat Format)
{
    /// <summary>No rules at all: every check says that nothing was checked.</summary>
    public static SiteRules None { get; } = new(null, Jurisdictions.All, HouseRules.None, HouseFormat.Plain);

    /// <summary>The rules of a site.</summary>
    /// <param name="book">The shipped rules.</param>
    /// <param name="site">What the site calls its jurisdiction.</param>
    /// <param name="format">How figures are written.</param>
    public static SiteRules Of(RuleBook book, string site, HouseFormat format) => new(book, Jurisdiction.Of(site), HouseRules.None, format);

    /// <summary>The shipped rules.</summary>
    /// <exception cref="InvalidOperationException">There are none.</exception>
    public RuleBook Shipped => Book ?? throw new InvalidOperationException("No rules were read.");

    /// <summary>Puts the rules to what is known.</summary>
    /// <param name="facts">What is known.</param>
    /// <returns>Cautions, the strongest first, then in the order of the rules. Nothing in here says that anything is safe.</returns>
    public IReadOnlyList<Caution> Check(SafetyFacts facts)
    {
        if (Book is null)
        {
            return [NothingChecked];
        }
        var raised = new List<(SafetyRule Rule, Caution Caution)>();
        foreach (var rule in Book.Rules.Concat(House.Rules))
        {
            if (Judge(rule, facts) is { } caution)
            {
                raised.Add((rule, caution));
            }
        }
        return
        [
            .. raised
                .Where(r => !raised.Exists(other => Yields(r, other)))
                .Select(r => r.Caution)
                .OrderByDescending(c => c.Strength),
        ];
    }

    // A rule that is not settled speaks on beside one that is: what may be over is another matter than what is there.
    private static bool Yields((SafetyRule Rule, Caution Caution) one, (SafetyRule Rule, Caution Caution) other) =>
        one.Rule.YieldsTo.Contains(other.Rule.Id) && other.Caution.Strength >= one.Caution.Strength && (!one.Caution.IsNotSettled || other.Caution.IsNotSettled);

    private static readonly Caution NothingChecked = new(
        "no_rules", "No safety rules are loaded: nothing was checked here. Read the labels and go by your local codes.", [], "none; local codes decide")
    {
        Strength = CautionStrength.Act,
        IsNotSettled = true,
    };

    private Caution? Judge(SafetyRule rule, SafetyFacts facts)
    {
        var isLawHere = (rule.Where & Where) != 0;
        if ((!isLawHere && !rule.IsAdviceElsewhere) || rule.When.Any(c => c.Of(facts) == false))
        {
            return null;
        }
        bool over;
        SafetyFigure figure = default;
        IReadOnlyList<int> lines;
        if (rule.IsOnFlag)
        {
            if (facts.Flag(rule.Subject) is not { State: not false } flag)
            {
                return null;
            }
            (over, lines) = (flag.State == true, flag.Lines);
        }
        else
        {
            if (facts.Figure(rule.Subject) is not { } found)
            {
                return null;
            }
            figure = found;
            var worst = rule.Comparison is Comparison.Above or Comparison.AtLeast ? figure.High : figure.Low;
            over = rule.Comparison.Holds(figure.Value, rule.Limit);
            if (!over && !figure.IsUnknown && !rule.Comparison.Holds(worst, rule.Limit))
            {
                return null;
            }
            lines = figure.Lines;
        }
        // What is not settled is to be measured or read before approval; only what is known to be over asks for a director's reason.
        var most = over && isLawHere ? CautionStrength.Strongest : CautionStrength.Act;
        var strength = rule.Strength < most ? rule.Strength : most;
        var against = rule.IsOnFlag ? "" : Against(rule, figure, over);
        var opening = over ? rule.Name : $"{rule.Name}, not settled";
        var todo = over ? rule.Todo : $"Read the label, ask the maker or measure. Should it be so: {rule.Todo}";
        var elsewhere = isLawHere ? "" : $" A rule of the {Jurisdiction.Name(rule.Where)}, shown here as advice.";
        return new Caution(
            rule.Id, $"{opening}: {(against.Length > 0 ? against + ". " : "")}{todo}{elsewhere}", lines, rule.Source.InWords)
        {
            Strength = strength,
            Trigger = rule.Trigger,
            Against = against,
            Todo = todo,
            Where = rule.Where,
            Status = rule.Source.Status,
            IsNotSettled = !over,
        };
    }

    private string Against(SafetyRule rule, SafetyFigure figure, bool over)
    {
        var unit = rule.Unit.Length > 0 ? " " + rule.Unit : "";
        var limit = Format.Number(rule.Limit, Decimals(rule.Limit)) + unit;
        var allowed = rule switch
        {
            { Comparison: Comparison.Above, Limit: 0 } => "",
            { Comparison: Comparison.Above } => $" against at most {limit}",
            { Comparison: Comparison.AtLeast } => $" against below {limit}",
            { Comparison: Comparison.Below } => $" against {limit} or more",
            _ => $" against more than {limit}",
        };
        if (double.IsNaN(figure.Value) || figure is { Value: 0, IsUnknown: true })
        {
            return "not known" + allowed;
        }
        if (over)
        {
            return Shown(rule, figure.Value) + unit + allowed;
        }
        return figure.IsUnknown
            ? $"{Shown(rule, figure.Value)}{unit} so far, and part of it not known,{allowed}".TrimEnd(',')
            : $"between {Shown(rule, figure.Low)} and {Shown(rule, figure.High)}{unit}{allowed}";
    }

    // One digit more than the limit, and more where rounding would carry the figure across the limit.
    private string Shown(SafetyRule rule, double value)
    {
        var decimals = Decimals(rule.Limit) + 1;
        var over = rule.Comparison.Holds(value, rule.Limit);
        while (decimals < MostDecimals && rule.Comparison.Holds(Math.Round(value, decimals, MidpointRounding.AwayFromZero), rule.Limit) != over)
        {
            decimals++;
        }
        return Format.Number(value, decimals);
    }

    private const int MostDecimals = 9;

    private static int Decimals(double limit)
    {
        var decimals = 0;
        while (decimals < MostDecimals && Math.Abs(Math.Round(limit, decimals) - limit) > 1e-12)
        {
            decimals++;
        }
        return decimals;
    }

}
