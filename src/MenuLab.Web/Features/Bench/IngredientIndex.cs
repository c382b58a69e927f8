using MenuLab.Core.House;
using MenuLab.Core.Pantry;

namespace MenuLab.Web.Features.Bench;

/// <summary>An ingredient offered while a line is typed.</summary>
/// <param name="Ingredient">Which.</param>
/// <param name="Name">Its name.</param>
/// <param name="From">Where in the typed text its name begins; what stands before is the amount.</param>
/// <param name="IsOnHand">Somebody said that it is in the house.</param>
public sealed record Suggestion(IngredientId Ingredient, string Name, int From, bool IsOnHand);

/// <summary>Finds ingredients by the beginning of their names' words: while somebody types, and in free text. Built once per book.</summary>
public sealed class IngredientIndex
{
    /// <summary>Rows that a list of suggestions has at most.</summary>
    public const int MostSuggestions = 6;

    private const int MostWords = 5;
    private const int ShortestNameInText = 4;

    private readonly List<Entry> _entries;
    private readonly ILookup<string, Entry> _byFirstWord;
    private readonly IReadOnlySet<IngredientId> _onHand;

    /// <summary>Of these ingredients.</summary>
    public IngredientIndex(IEnumerable<Ingredient> ingredients, IReadOnlySet<IngredientId> onHand)
    {
        _onHand = onHand;
        _entries = [.. ingredients.SelectMany(i => i.Aliases.Append(i.Name).Select(name => new Entry(i, SearchName.Of(name), name == i.Name)))];
        _byFirstWord = _entries.ToLookup(e => e.Words[0], StringComparer.Ordinal);
    }

    /// <summary>Ingredients whose name goes on from the last words of a typed line.</summary>
    /// <param name="typed">The line so far.</param>
    public IReadOnlyList<Suggestion> For(string typed)
    {
        var starts = WordStarts(typed);
        // The longest end of the text that begins some name: "45 ml black te" is offered for "black te", not for "te".
        foreach (var from in starts.TakeLast(MostWords))
        {
            var sought = SearchName.Of(typed[from..]);
            if (sought.Length < 2 || !sought.Any(char.IsLetter))
            {
                continue;
            }
            var found = _entries.Where(e => e.Name.StartsWith(sought, StringComparison.Ordinal) || e.Name.Contains(" " + sought, StringComparison.Ordinal))
                .OrderBy(e => !e.Name.StartsWith(sought, StringComparison.Ordinal)).ThenBy(e => !_onHand.Contains(e.Ingredient.Id)).ThenBy(e => !e.IsOwnName).ThenBy(e => e.Name.Length)
                .ThenBy(e => e.Name, StringComparer.Ordinal)
                .DistinctBy(e => e.Ingredient.Id).Take(MostSuggestions).ToList();
            if (found.Count > 0)
            {
                return [.. found.Select(e => new Suggestion(e.Ingredient.Id, e.Ingredient.Name, from, _onHand.Contains(e.Ingredient.Id)))];
            }
        }
        return [];
    }

    /// <summary>Ingredients that a free text names in full, the longest name at each place.</summary>
    public IReadOnlyList<Ingredient> NamedIn(string text)
    {
        var words = Split(SearchName.Of(text));
        var found = new List<Ingredient>();
        for (var at = 0; at < words.Length; at++)
        {
            var best = _byFirstWord[words[at]]
                .Where(e => e.Name.Length >= ShortestNameInText && at + e.Words.Length <= words.Length && e.Words.AsSpan().SequenceEqual(words.AsSpan(at, e.Words.Length)))
                .MaxBy(e => e.Words.Length);
            if (best is not null)
            {
                found.Add(best.Ingredient);
                at += best.Words.Length - 1;
            }
        }
        return [.. found.DistinctBy(i => i.Id)];
    }

    private static List<int> WordStarts(string typed)
    {
        var starts = new List<int>();
        for (var i = 0; i < typed.Length; i++)
        {
            if (!char.IsWhiteSpace(typed[i]) && (i == 0 || char.IsWhiteSpace(typed[i - 1])))
            {
                starts.Add(i);
            }
        }
        return starts;
    }

    private static string[] Split(string name) => name.Split([' ', ',', '.', ';', ':', '(', ')', '/'], StringSplitOptions.RemoveEmptyEntries);

    private sealed record Entry(Ingredient Ingredient, string Name, bool IsOwnName)
    {
        public string[] Words { get; } = Split(Name) is { Length: > 0 } words ? words : [""];
    }
}
