using MenuLab.Core.Pantry;

namespace MenuLab.Core.Safety;

/// <summary>How much a caution asks of people. None of them refuses anything: that is for local codes and the people who answer.</summary>
public enum CautionStrength
{
    /// <summary>Shown.</summary>
    Note,
    /// <summary>A person reads and accepts it.</summary>
    Mind,
    /// <summary>Something is to be added, measured or printed before approval.</summary>
    Act,
    /// <summary>An open point that only a director's written reason of its own passes; kept with the approval and printed on card and label.</summary>
    Strongest,
}

/// <summary>Something that a person must look at before the drink or prep is served. It speaks up and decides nothing.</summary>
/// <param name="Key">The rule's id, e.g. "TC-16": stable, and the same for the same cause.</param>
/// <param name="Text">All of it in words: what, the figure against the limit, and what to do.</param>
/// <param name="Lines">Places of the lines that cause it, among the weighed lines; empty where no line does.</param>
/// <param name="Source">The rule behind it with section, edition and status; ends by deferring to local codes.</param>
public sealed record Caution(string Key, string Text, IReadOnlyList<int> Lines, string Source)
{
    /// <summary>How much it asks of people.</summary>
    public CautionStrength Strength { get; init; } = CautionStrength.Mind;

    /// <summary>What triggered it.</summary>
    public string Trigger { get; init; } = "";

    /// <summary>The figure against the limit, with unit, as the house writes numbers; empty where the rule has no figure.</summary>
    public string Against { get; init; } = "";

    /// <summary>What to do.</summary>
    public string Todo { get; init; } = "";

    /// <summary>Where the rule behind it holds.</summary>
    public Jurisdictions Where { get; init; } = Jurisdictions.All;

    /// <summary>How the rule's figure became known; recalled ones are unverified until somebody looks them up.</summary>
    public FigureStatus Status { get; init; } = FigureStatus.Assumed;

    /// <summary>Nothing settles it yet: a figure is unknown, or only its range reaches the limit.</summary>
    public bool IsNotSettled { get; init; }

    /// <summary>It passes only with a director's written reason of its own, and is printed on card and label.</summary>
    public bool NeedsReason => Strength == CautionStrength.Strongest;
}

/// <summary>Checks the reasons that a director wrote for cautions of the strongest kind.</summary>
public static class CautionReasons
{
    /// <summary>Fewest and most characters of a reason.</summary>
    public const int FewestCharacters = 10, MostCharacters = 1000;

    /// <summary>Each caution of the strongest kind needs a reason of its own: one answer for all passes none.</summary>
    /// <param name="cautions">All cautions; the weaker ones ask for nothing here.</param>
    /// <param name="reasons">What was written, by <see cref="Caution.Key"/>.</param>
    /// <returns>The trimmed reasons by key, or a problem for each caution whose reason is missing, too short, too long or that of another.</returns>
    public static Result<IReadOnlyDictionary<string, string>> Check(IEnumerable<Caution> cautions, IReadOnlyDictionary<string, string> reasons)
    {
        var problems = new List<Problem>();
        var given = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var caution in cautions.Where(c => c.NeedsReason).DistinctBy(c => c.Key))
        {
            var reason = reasons.GetValueOrDefault(caution.Key)?.Trim() ?? "";
            if (reason.Length is < FewestCharacters or > MostCharacters)
            {
                problems.Add(new Problem(caution.Key, $"Write a reason of {FewestCharacters} to {MostCharacters} characters for: {caution.Text}"));
            }
            else if (given.Values.Contains(reason, StringComparer.OrdinalIgnoreCase))
            {
                problems.Add(new Problem(caution.Key, $"This reason already answers another caution; write one of its own for: {caution.Text}"));
            }
            else
            {
                given.Add(caution.Key, reason);
            }
        }
        return problems.Count > 0 ? Result.Invalid<IReadOnlyDictionary<string, string>>(problems) : Result.Ok<IReadOnlyDictionary<string, string>>(given);
    }
}
