using System.Text.Json;
using System.Text.Json.Serialization;
using MenuLab.Core.Pantry;

namespace MenuLab.Core.Safety;

/// <summary>What a house wants to rule for itself, as typed.</summary>
public sealed record HouseRuleWish
{
    /// <summary>Id, "H-" and letters, digits or hyphens.</summary>
    public string? Id { get; init; }

    /// <summary>A few words that open the caution.</summary>
    public string? Name { get; init; }

    /// <summary>Key of a quantity (<see cref="SafetyQuantities"/>); empty for a rule on words.</summary>
    public string? Quantity { get; init; }

    /// <summary>One of &gt;, &gt;=, &lt;, &lt;=; empty for a rule on words.</summary>
    public string? Operator { get; init; }

    /// <summary>Limit in the quantity's unit; null for a rule on words.</summary>
    public double? Limit { get; init; }

    /// <summary>Words in an ingredient's name or a step that raise the rule, | between; empty for a rule on a quantity.</summary>
    public string? Words { get; init; }

    /// <summary>How much it asks of people.</summary>
    public CautionStrength Strength { get; init; }

    /// <summary>What to do.</summary>
    public string? Todo { get; init; }

    /// <summary>Who says so; empty for "house rule".</summary>
    public string? Source { get; init; }
}

/// <summary>The house's own shelf life of a type of prep.</summary>
/// <param name="PrepType">Key of a use-within rule.</param>
/// <param name="Days">Days held, the day made counting as the first; 1 to 730.</param>
/// <param name="Reason">A director's reason, needed where this is longer than suggested; else may be empty.</param>
public sealed record HouseShelfLife(string PrepType, int Days, string Reason);

/// <summary>
/// A house's own rules, immutable and numbered. They come on top of the shipped ones and take none of them away, so a house can be stricter and
/// never silently looser.
/// </summary>
public sealed class HouseRules
{
    /// <summary>Most characters of a name, and of the other texts.</summary>
    public const int NameMaxLength = 60, TextMaxLength = 400;

    /// <summary>Longest shelf life of its own, days.</summary>
    public const int MostDays = 730;

    private HouseRules(int number, IReadOnlyList<HouseRuleWish> wishes, IReadOnlyList<SafetyRule> rules, IReadOnlyList<HouseShelfLife> shelfLives) =>
        (Number, _wishes, Rules, ShelfLives) = (number, wishes, rules, shelfLives);

    private readonly IReadOnlyList<HouseRuleWish> _wishes;

    /// <summary>A house that has none.</summary>
    public static HouseRules None { get; } = new(0, [], [], []);

    /// <summary>Number of the set; 0 for none.</summary>
    public int Number { get; }

    /// <summary>The rules.</summary>
    public IReadOnlyList<SafetyRule> Rules { get; }

    /// <summary>Its own shelf lives.</summary>
    public IReadOnlyList<HouseShelfLife> ShelfLives { get; }

    /// <summary>A set of house rules.</summary>
    /// <param name="number">Number of the set, 1 and up.</param>
    /// <param name="wishes">The rules as typed.</param>
    /// <param name="shelfLives">The shelf lives.</param>
    /// <param name="book">The shipped rules, whose ids and prep types count.</param>
    /// <returns>The set, or all that is wrong with it; the field is the rule's id or the prep type.</returns>
    public static Result<HouseRules> Of(int number, IReadOnlyList<HouseRuleWish> wishes, IReadOnlyList<HouseShelfLife> shelfLives, RuleBook book)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(number, 1);
        var problems = new List<Problem>();
        var rules = wishes.Select(w => Rule(w, problems)).OfType<SafetyRule>().ToList();
        foreach (var twice in wishes.GroupBy(w => w.Id?.Trim() ?? "").Where(g => g.Count() > 1))
        {
            problems.Add(new Problem(twice.Key, "Two rules have this id: give each its own."));
        }
        foreach (var life in shelfLives)
        {
            if (book.UseWithin.All(u => u.Key != life.PrepType))
            {
                problems.Add(new Problem(life.PrepType, "There is no such type of prep."));
            }
            if (life.Days is < 1 or > MostDays)
            {
                problems.Add(new Problem(life.PrepType, $"Give 1 to {MostDays} days."));
            }
        }
        return problems.Count > 0 ? Result.Invalid<HouseRules>(problems) : Result.Ok(new HouseRules(number, [.. wishes], rules, [.. shelfLives]));
    }

    /// <summary>The set as UTF-8 JSON, to be kept as a numbered set.</summary>
    public byte[] ToJson() => JsonSerializer.SerializeToUtf8Bytes(new Kept(Number, _wishes, ShelfLives), HouseRulesJson.Default.Kept);

    /// <summary>Reads what <see cref="ToJson"/> wrote.</summary>
    /// <exception cref="FormatException">It is no such set.</exception>
    public static HouseRules FromJson(ReadOnlySpan<byte> json, RuleBook book)
    {
        try
        {
            var kept = JsonSerializer.Deserialize(json, HouseRulesJson.Default.Kept);
            // What is not in the text comes as nothing, whatever the types say.
            if (kept is not { Number: >= 1, Rules: { } wishes, ShelfLives: { } lives } || wishes.Contains(null!) || lives.Contains(null!))
            {
                throw new FormatException("These are no house rules.");
            }
            var read = Of(kept.Number, wishes, lives, book);
            return read.IsOk ? read.Value : throw new FormatException($"These are no house rules: {read.Problems[0].Message}");
        }
        catch (JsonException e)
        {
            throw new FormatException($"These are no house rules: {e.Message}", e);
        }
    }

    private static SafetyRule? Rule(HouseRuleWish wish, List<Problem> problems)
    {
        var found = new List<Problem>();
        var id = wish.Id?.Trim() ?? "";
        if (id.Length is < 3 or > 20 || !id.StartsWith("H-", StringComparison.Ordinal) || !id.All(c => char.IsAsciiLetterOrDigit(c) || c == '-'))
        {
            found.Add(new Problem(id, "Give an id such as H-01."));
        }
        var name = Text(wish.Name, NameMaxLength, "a name");
        var todo = Text(wish.Todo, TextMaxLength, "what to do");
        var words = Phrase.ReadAll(wish.Words ?? "");
        var quantity = wish.Quantity?.Trim() ?? "";
        if (quantity.Length == 0 == (words.Count == 0))
        {
            found.Add(new Problem(id, "Give a quantity with its limit, or words to look for: one of the two."));
        }
        var comparison = Comparison.Is;
        if (quantity.Length > 0)
        {
            if (SafetyQuantities.Unit(quantity) is null)
            {
                found.Add(new Problem(id, $"There is no quantity called {quantity}."));
            }
            if (Comparisons.Read(wish.Operator?.Trim() ?? "") is { } read and not Comparison.Is)
            {
                comparison = read;
            }
            else
            {
                found.Add(new Problem(id, "Compare by >, >=, < or <=."));
            }
            if (wish.Limit is not { } limit || !double.IsFinite(limit))
            {
                found.Add(new Problem(id, "Give the limit, a number."));
            }
        }
        if (!Enum.IsDefined(wish.Strength))
        {
            found.Add(new Problem(id, "Say how strong the caution is."));
        }
        var source = wish.Source?.Trim() is { Length: > 0 } said ? said : "house rule";
        if (source.Length > TextMaxLength)
        {
            found.Add(new Problem(id, $"Keep the source to {TextMaxLength} characters."));
        }
        problems.AddRange(found);
        return found.Count > 0 ? null : new SafetyRule(
            id, name, "house", Jurisdictions.All, false, name, quantity.Length > 0 ? quantity : "house_" + id.ToLowerInvariant().Replace('-', '_'), comparison,
            quantity.Length > 0 ? wish.Limit!.Value : double.NaN, [], [], words, wish.Strength, todo, new RuleSource(source, "", "", FigureStatus.Assumed, ""));

        string Text(string? typed, int most, string what)
        {
            var trimmed = typed?.Trim() ?? "";
            if (trimmed.Length is 0 || trimmed.Length > most)
            {
                found.Add(new Problem(id, $"Give {what} of 1 to {most} characters."));
            }
            return trimmed;
        }
    }

    internal sealed record Kept(int Number, IReadOnlyList<HouseRuleWish> Rules, IReadOnlyList<HouseShelfLife> ShelfLives);
}

[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.SnakeCaseLower, UseStringEnumConverter = true)]
[JsonSerializable(typeof(HouseRules.Kept))]
internal sealed partial class HouseRulesJson : JsonSerializerContext;
