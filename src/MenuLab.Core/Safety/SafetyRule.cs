using System.Globalization;
using MenuLab.Core.Pantry;

namespace MenuLab.Core.Safety;

/// <summary>How a rule compares; published limits often differ only in whether the limit itself is allowed.</summary>
public enum Comparison
{
    /// <summary>A flag that is set.</summary>
    Is,
    /// <summary>Above the limit.</summary>
    Above,
    /// <summary>At the limit or above.</summary>
    AtLeast,
    /// <summary>Below the limit.</summary>
    Below,
    /// <summary>At the limit or below.</summary>
    AtMost,
}

/// <summary>Compares.</summary>
public static class Comparisons
{
    /// <summary>The comparison holds. Compare the unrounded value; NaN never holds.</summary>
    public static bool Holds(this Comparison comparison, double value, double limit) => comparison switch
    {
        Comparison.Above => value > limit,
        Comparison.AtLeast => value >= limit,
        Comparison.Below => value < limit,
        Comparison.AtMost => value <= limit,
        _ => false,
    };

    internal static Comparison? Read(string sign) => sign switch
    {
        "is" => Comparison.Is,
        ">" => Comparison.Above,
        ">=" => Comparison.AtLeast,
        "<" => Comparison.Below,
        "<=" => Comparison.AtMost,
        _ => null,
    };
}

/// <summary>Where a rule was read: kept with it, so that anybody can look it up.</summary>
/// <param name="Text">Law, code, guidance or paper; "house rule" where there is none.</param>
/// <param name="Section">Section or article; may be empty.</param>
/// <param name="Edition">Edition or date; may be empty.</param>
/// <param name="Status">Seen in a source, recalled, computed or a house choice.</param>
/// <param name="Note">Where it was seen, or what is doubtful.</param>
public sealed record RuleSource(string Text, string Section, string Edition, FigureStatus Status, string Note)
{
    /// <summary>In words, ending by deferring to local codes.</summary>
    public string InWords
    {
        get
        {
            var place = Section.Length > 0 ? $"{Text} {Section}" : Text;
            var edition = Edition.Length > 0 && !Text.Contains(Edition, StringComparison.Ordinal) ? $" ({Edition})" : "";
            return $"{place}{edition}{(Status == FigureStatus.Memory ? ", recalled and unverified" : "")}; local codes decide";
        }
    }
}

/// <summary>One rule: what it looks at, where the line is, what to do, and who says so.</summary>
/// <param name="Id">Stable id, e.g. "TC-16".</param>
/// <param name="Name">A few words that open the caution.</param>
/// <param name="Topic">tcs, allergen, alcohol, service, substance, method, material, or a house's own.</param>
/// <param name="Where">Where it holds.</param>
/// <param name="IsAdviceElsewhere">Where it is not law it is shown all the same, and asks for no more than an act.</param>
/// <param name="Trigger">What triggers it, in words.</param>
/// <param name="Subject">Key of a quantity (<see cref="SafetyQuantities"/>) or of a flag.</param>
/// <param name="Comparison">How the subject is compared.</param>
/// <param name="Limit">The limit in the quantity's unit; NaN for a flag.</param>
/// <param name="When">Conditions, all of which must hold or be unknown.</param>
/// <param name="YieldsTo">Rules that say the same and more: where one of them speaks, this one keeps quiet.</param>
/// <param name="Words">Words in an ingredient's name or in a step that put the subject into question.</param>
/// <param name="Strength">How much it asks of people.</param>
/// <param name="Todo">What to do.</param>
/// <param name="Source">Who says so.</param>
public sealed record SafetyRule(
    string Id, string Name, string Topic, Jurisdictions Where, bool IsAdviceElsewhere, string Trigger, string Subject, Comparison Comparison, double Limit,
    IReadOnlyList<RuleCondition> When, IReadOnlyList<string> YieldsTo, IReadOnlyList<Phrase> Words, CautionStrength Strength, string Todo, RuleSource Source)
{
    /// <summary>The subject is a flag, not a quantity.</summary>
    public bool IsOnFlag => Comparison == Comparison.Is;

    /// <summary>Unit of the limit; empty for a flag or a pure number.</summary>
    public string Unit => IsOnFlag ? "" : SafetyQuantities.Unit(Subject) ?? "";

    internal static SafetyRule Read(RuleTable t)
    {
        var comparison = t.Word<Comparison>("operator", Comparisons.Read);
        var subject = t.Required("subject");
        if (comparison != Comparison.Is && SafetyQuantities.Unit(subject) is not { } unit)
        {
            throw t.Fault("subject", $"there is no quantity called {subject}");
        }
        if (comparison != Comparison.Is && SafetyQuantities.Unit(subject) != t.Text("unit"))
        {
            throw t.Fault("unit", $"{subject} is in \"{SafetyQuantities.Unit(subject)}\"");
        }
        if (comparison == Comparison.Is && t.Required("limit") != "yes")
        {
            throw t.Fault("limit", "a flag is compared with yes");
        }
        return new SafetyRule(
            t.Required("id"), t.Required("name"), t.Required("topic"), t.Word<Jurisdictions>("places", Jurisdiction.Read), t.Text("elsewhere") == "advice",
            t.Required("trigger"), subject, comparison, comparison == Comparison.Is ? double.NaN : t.Number("limit"),
            [.. t.Text("when").Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(c => RuleCondition.Read(c) ?? throw t.Fault("when", $"\"{c}\" is no condition"))],
            t.Text("yields_to").Split(' ', StringSplitOptions.RemoveEmptyEntries), Phrase.ReadAll(t.Text("words")), t.Word("strength", ReadStrength),
            t.Required("message"), ReadSource(t));
    }

    internal static RuleSource ReadSource(RuleTable t) =>
        new(t.Required("source"), t.Text("section"), t.Text("edition"), t.Word("status", ReadStatus), t.Text("note"));

    internal static CautionStrength? ReadStrength(string word) => word switch
    {
        "note" => CautionStrength.Note,
        "mind" => CautionStrength.Mind,
        "act" => CautionStrength.Act,
        "strongest" => CautionStrength.Strongest,
        _ => null,
    };

    internal static FigureStatus? ReadStatus(string word) =>
        word.StartsWith("CONFIRMED", StringComparison.Ordinal) ? FigureStatus.Confirmed
        : word switch { "MEMORY" => FigureStatus.Memory, "COMPUTED" => FigureStatus.Computed, "ASSUMED" => FigureStatus.Assumed, _ => null };
}

/// <summary>A condition of a rule: a flag, a flag that is not set ("!carbonated"), or a quantity against a figure ("abv_percent>1.2").</summary>
/// <param name="Subject">Key of a flag or a quantity.</param>
/// <param name="Comparison">How it is compared.</param>
/// <param name="Limit">The figure; NaN for a flag.</param>
/// <param name="IsNot">The flag must not be set.</param>
public sealed record RuleCondition(string Subject, Comparison Comparison, double Limit, bool IsNot)
{
    private static readonly string[] Signs = [">=", "<=", ">", "<"];

    /// <summary>What the facts say of it: true, false, or null where they do not tell: a figure whose range reaches across the limit does not.</summary>
    public bool? Of(SafetyFacts facts)
    {
        if (Comparison == Comparison.Is)
        {
            return facts.Flag(Subject)?.State is { } state ? state != IsNot : null;
        }
        if (facts.Figure(Subject) is not { } figure || double.IsNaN(figure.Value) || figure.IsUnknown)
        {
            return null;
        }
        var holds = Comparison.Holds(figure.Value, Limit);
        return Comparison.Holds(figure.Low, Limit) == holds && Comparison.Holds(figure.High, Limit) == holds ? holds : null;
    }

    /// <summary>It was asked, and it holds or is not known. What nobody asked does not count.</summary>
    public bool IsAskedAndNotRuledOut(SafetyFacts facts) =>
        (Comparison == Comparison.Is ? facts.Flag(Subject) is not null || IsNot : facts.Figure(Subject) is not null) && Of(facts) != false;

    internal static RuleCondition? Read(string text)
    {
        foreach (var sign in Signs)
        {
            var at = text.IndexOf(sign, StringComparison.Ordinal);
            if (at > 0)
            {
                return SafetyQuantities.Unit(text[..at]) is not null
                    && double.TryParse(text[(at + sign.Length)..], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var limit)
                    ? new RuleCondition(text[..at], Comparisons.Read(sign)!.Value, limit, false)
                    : null;
            }
        }
        var flag = text.TrimStart('!');
        return flag.Length > 0 && flag.All(c => char.IsAsciiLetterLower(c) || char.IsAsciiDigit(c) || c == '_')
            ? new RuleCondition(flag, Comparison.Is, double.NaN, text[0] == '!')
            : null;
    }
}
