using MenuLab.Core.Pantry;

namespace MenuLab.Core.Drafts.Reading;

/// <summary>
/// Every way to write what the house has: names, keys and aliases of its ingredients, and names of its methods, ices and
/// glasses, in plain form. Built once per pantry (about 3,000 aliases: some tens of milliseconds), then only read, so
/// any number of readers may share it.
/// </summary>
public sealed class Vocabulary
{
    /// <summary>At most this many candidates are offered from the beginning of a word.</summary>
    private const int MostCompletions = 8;

    /// <summary>Words that a stock list puts first: "juice apple", "tea green".</summary>
    private static readonly HashSet<string> Heads = new(StringComparer.Ordinal)
        { "juice", "syrup", "tea", "vinegar", "sugar", "milk", "wine", "vermouth", "beer", "coffee", "acid", "water", "cream" };

    private readonly Dictionary<string, List<Alias>> _exact = new(StringComparer.Ordinal);
    private readonly Dictionary<string, List<Alias>> _singular = new(StringComparer.Ordinal);
    private readonly Dictionary<string, List<Alias>> _compact = new(StringComparer.Ordinal);
    private readonly Dictionary<string, List<Alias>> _reordered = new(StringComparer.Ordinal);
    private readonly PhraseTable<Alias> _phrases = new(PlainText.Singular);
    private readonly PhraseTable<Meaning> _builds = new();
    private readonly Spelling _words = new();
    private readonly List<(string Compact, Alias Alias)> _sorted = [];

    private Vocabulary(PantryList pantry, BuildCatalogue catalogue)
    {
        Pantry = pantry;
        Catalogue = catalogue;
        foreach (var ingredient in pantry.All)
        {
            Add(ingredient);
        }
        _words.Seal();
        _sorted.AddRange(_compact.SelectMany(c => c.Value.Select(a => (c.Key, a))).OrderBy(c => c.Key, StringComparer.Ordinal));
        AddBuilds(catalogue);
    }

    /// <summary>The vocabulary of a pantry and a catalogue.</summary>
    public static Vocabulary Of(PantryList pantry, BuildCatalogue catalogue) => new(pantry, catalogue);

    /// <summary>The pantry that it was made of.</summary>
    public PantryList Pantry { get; }

    /// <summary>The catalogue that it was made of.</summary>
    public BuildCatalogue Catalogue { get; }

    /// <summary>A way to write an ingredient.</summary>
    /// <param name="Ingredient">What is meant.</param>
    /// <param name="Text">As it stands in the pantry.</param>
    /// <param name="Unit">A unit that is part of the word ("Zitronenscheibe").</param>
    internal sealed record Alias(Ingredient Ingredient, string Text, Unit? Unit)
    {
        public string? Assumes => Ingredient.AliasAssumptions.GetValueOrDefault(Text);
    }

    internal enum How
    {
        None,
        /// <summary>As it stands in the pantry.</summary>
        Exact,
        /// <summary>The same words in another number or order, run together or apart.</summary>
        Alike,
        /// <summary>Short words spelled out.</summary>
        Spelled,
        /// <summary>After mending a slip.</summary>
        Corrected,
        /// <summary>Only to be offered: two slips, a tie, or the beginning of a word.</summary>
        Offered,
    }

    /// <summary>What a name may mean.</summary>
    internal readonly record struct Match(How How, IReadOnlyList<Alias> Aliases, string Read)
    {
        public bool IsFound => How is not (How.None or How.Offered);
    }

    internal PhraseTable<Alias>.Found Longest(List<Token> tokens, int from, int to) => _phrases.Longest(tokens, from, to);

    internal PhraseTable<Meaning>.Found LongestBuild(List<Token> tokens, int from, int to) => _builds.Longest(tokens, from, to);

    internal bool KnowsWord(string word) => _words.Knows(word) || _words.Knows(PlainText.Singular(word));

    /// <summary>Finds a name by its plain words, from the strictest comparison to the loosest.</summary>
    /// <param name="words">Plain words in the order typed.</param>
    /// <param name="inAnyOrder">
    /// The order may differ, as in "lime juice, bottled" and "tea green": not for names at large, or orange bitters would
    /// be bitter orange.
    /// </param>
    internal Match Find(IReadOnlyList<string> words, bool inAnyOrder = false)
    {
        if (words.Count is 0 or > 9)
        {
            return new Match(How.None, [], "");
        }
        var reorder = inAnyOrder || Heads.Contains(words[0]);
        var plain = Plain(words, reorder);
        if (plain.How != How.None)
        {
            return plain;
        }
        var spelled = words.Select(w => BarWords.Spelled.GetValueOrDefault(w, w)).ToArray();
        if (!spelled.SequenceEqual(words, StringComparer.Ordinal) && Plain(spelled, reorder) is { How: not How.None } inFull)
        {
            return inFull with { How = How.Spelled };
        }
        var corrected = Corrected(spelled);
        return corrected.How != How.None ? corrected : Completed(words);
    }

    private Match Plain(IReadOnlyList<string> words, bool reorder)
    {
        var joined = string.Join(' ', words);
        if (_exact.TryGetValue(joined, out var exact))
        {
            return new Match(How.Exact, exact, joined);
        }
        if (_singular.TryGetValue(string.Join(' ', words.Select(PlainText.Singular)), out var singular))
        {
            return new Match(How.Alike, singular, joined);
        }
        if (_compact.TryGetValue(string.Concat(words), out var compact))
        {
            return new Match(How.Alike, compact, joined);
        }
        return reorder && words.Count > 1 && _reordered.TryGetValue(Reordered(words), out var reordered)
            ? new Match(How.Alike, reordered, joined)
            : new Match(How.None, [], joined);
    }

    /// <summary>
    /// Mends slips word by word, and reads the result only where nothing else lies near: a word of four letters with a
    /// wrong one in it ("leme"), a wrong first letter and two slips are asked.
    /// </summary>
    private Match Corrected(string[] words)
    {
        if (words.Length > 5 || words.Any(w => w.Length == 0))
        {
            return new Match(How.None, [], "");
        }
        var choices = new List<List<Spelling.Near>>();
        var combinations = 1;
        foreach (var word in words)
        {
            List<Spelling.Near> near = KnowsWord(word) || word.Length < 4 || !char.IsLetter(word[0])
                ? [new Spelling.Near(word, 0)]
                : Choices(word);
            combinations *= near.Count;
            if (combinations is 0 or > 300)
            {
                return new Match(How.None, [], "");
            }
            choices.Add(near);
        }
        var found = new List<(int Slips, string[] Words, List<Alias> Aliases)>();
        var picked = new string[words.Length];
        Pick(0, 0);
        if (found.Count == 0)
        {
            return new Match(How.None, [], "");
        }
        var best = found.Min(f => f.Slips);
        // A wrong letter in a short word leaves so little that a second slip is nearly as likely as the first; a letter
        // too many, missing or swapped leaves all the others.
        var isFaint = words.Zip(found.First(f => f.Slips == best).Words).Any(pair => pair.First.Length <= 5 && pair.First.Length == pair.Second.Length && IsSubstitution(pair.First, pair.Second));
        var near1 = found.Where(f => f.Slips <= best + (isFaint ? 1 : 0)).OrderBy(f => f.Slips).ToList();
        var aliases = near1.SelectMany(f => f.Aliases).DistinctBy(a => a.Ingredient).ToList();
        var winner = near1.Where(f => f.Slips == best).SelectMany(f => f.Aliases).DistinctBy(a => a.Ingredient).ToList();
        var text = string.Join(' ', near1[0].Words);
        var sure = words.Zip(near1[0].Words).All(pair => IsPlainSlip(pair.First, pair.Second)) && near1.All(f => SameIngredients(f.Aliases, near1[0].Aliases));
        // "ging" is one letter from gin, and the beginning of ginger.
        var begun = sure ? Completed(words).Aliases.Where(a => !winner.Any(w => w.Ingredient.Id == a.Ingredient.Id)).ToList() : [];
        return sure && begun.Count == 0 ? new Match(How.Corrected, winner, text) : new Match(How.Offered, [.. begun, .. aliases], text);

        void Pick(int at, int slips)
        {
            if (at == words.Length)
            {
                if (slips > 0 && Plain(picked, reorder: false) is { How: not How.None } match)
                {
                    found.Add((slips, [.. picked], [.. match.Aliases]));
                }
                return;
            }
            foreach (var choice in choices[at])
            {
                picked[at] = choice.Word;
                Pick(at + 1, slips + choice.Slips);
            }
        }
    }

    // Two slips in five letters leave too little of the word, unless one slip reaches another.
    private List<Spelling.Near> Choices(string word)
    {
        var near = _words.Find(word, 2);
        return near.Count > 0 && word.Length <= 5 && near[0].Slips == 2 ? [] : [.. near.Take(12)];
    }

    private static bool IsPlainSlip(string typed, string read) =>
        typed == read || (Spelling.Distance(typed, read) == 1
            && (typed[0] == read[0] || (typed.Length > 1 && read.Length > 1 && typed[0] == read[1] && typed[1] == read[0]))
            && !(typed.Length == 4 && read.Length == 4 && IsSubstitution(typed, read)));

    private static bool IsSubstitution(string typed, string read) => typed.Where((c, i) => c != read[i]).Count() == 1;

    private static bool SameIngredients(List<Alias> a, List<Alias> b) =>
        a.Select(x => x.Ingredient.Id).ToHashSet().SetEquals(b.Select(x => x.Ingredient.Id));

    /// <summary>What begins like the typed word; only ever offered.</summary>
    private Match Completed(IReadOnlyList<string> words)
    {
        var typed = string.Concat(words);
        if (typed.Length is < 3 or > 24)
        {
            return new Match(How.None, [], "");
        }
        var from = _sorted.BinarySearch((typed, null!), Comparer<(string Compact, Alias Alias)>.Create((x, y) => string.CompareOrdinal(x.Compact, y.Compact)));
        from = from < 0 ? ~from : from;
        while (from > 0 && _sorted[from - 1].Compact.StartsWith(typed, StringComparison.Ordinal))
        {
            from--;
        }
        var begun = _sorted.Skip(from).TakeWhile(c => c.Compact.StartsWith(typed, StringComparison.Ordinal)).Take(60)
            .OrderBy(c => c.Compact.Length).Select(c => c.Alias).DistinctBy(a => a.Ingredient.Id).Take(MostCompletions).ToList();
        return begun.Count == 0 ? new Match(How.None, [], "") : new Match(How.Offered, begun, string.Join(' ', words));
    }

    /// <summary>Ingredients of a kind that hold all these words in one of their names, for "top ginger".</summary>
    internal IReadOnlyList<Alias> Holding(IReadOnlyList<string> words, Func<Ingredient, bool> kind) =>
        [.. Pantry.All.Where(kind)
            .Select(i => (Ingredient: i, Text: i.Aliases.Append(i.Name).FirstOrDefault(a => words.All(w => Tokenizer.Words(a).Contains(w, StringComparer.Ordinal)))))
            .Where(x => x.Text is not null).Select(x => new Alias(x.Ingredient, x.Text!, null))];

    private void Add(Ingredient ingredient)
    {
        var aliases = ingredient.Aliases.Append(ingredient.Name).Append(ingredient.Key.Replace('_', ' ')).ToArray();
        var own = aliases.Select(a => string.Join(' ', Tokenizer.Words(a))).ToHashSet(StringComparer.Ordinal);
        for (var i = 0; i < aliases.Length; i++)
        {
            // A key's words stand in the order of the record, not of speech: "cherry_sour_syrup" is no sour cherry syrup.
            var isKey = i == aliases.Length - 1;
            foreach (var text in Spellings(aliases[i]))
            {
                var words = Tokenizer.Words(text);
                if (words.Length == 0 || IsUnitOf(words, own))
                {
                    continue;
                }
                var alias = new Alias(ingredient, aliases[i], CompoundUnit(words));
                Put(_exact, string.Join(' ', words), alias);
                Put(_singular, string.Join(' ', words.Select(PlainText.Singular)), alias);
                if (isKey)
                {
                    continue;
                }
                Put(_compact, string.Concat(words), alias);
                if (words.Length > 1)
                {
                    Put(_reordered, Reordered(words), alias);
                }
                _phrases.Add(text, alias);
                foreach (var word in words.Where(w => w.Length >= 3 && char.IsLetter(w[0])))
                {
                    _words.Add(word);
                    _words.Add(PlainText.Singular(word));
                }
            }
        }
    }

    // "ä" is also typed "ae"; the plain form of both must be known.
    private static IEnumerable<string> Spellings(string alias)
    {
        yield return alias;
        var written = alias.Replace("ä", "ae", StringComparison.OrdinalIgnoreCase).Replace("ö", "oe", StringComparison.OrdinalIgnoreCase).Replace("ü", "ue", StringComparison.OrdinalIgnoreCase);
        if (!ReferenceEquals(written, alias) && written != alias)
        {
            yield return written;
        }
    }

    // "lemon wedge" is a wedge of lemon where "lemon" alone is known too: the unit must not be swallowed by the name. The
    // same holds for "hot water".
    private static bool IsUnitOf(string[] words, HashSet<string> own)
    {
        if (words.Length < 2)
        {
            return false;
        }
        return (IsUnitOrHeat(words[^1]) && own.Contains(string.Join(' ', words[..^1])))
            || (IsUnitOrHeat(words[0]) && own.Contains(string.Join(' ', words[1..])))
            || (words.Length > 2 && IsUnitOrHeat(words[0]) && words[1] is "de" or "di" or "d" && own.Contains(string.Join(' ', words[2..])));
    }

    private static bool IsUnitOrHeat(string word)
    {
        var found = BarWords.Phrases.Longest(Tokenizer.Cut(word), 0, 1);
        return found.IsFound && found.Values!.Any(m => (m.Sense == Sense.Unit && UnitWords.IsCount(m.Unit)) || m.Sense == Sense.Start);
    }

    private static Unit? CompoundUnit(string[] words) =>
        words.Length == 1 && UnitWords.Compounds.FirstOrDefault(c => words[0].Length > c.Ending.Length + 3 && words[0].EndsWith(c.Ending, StringComparison.Ordinal)) is { Ending: not null } compound
            ? compound.Unit
            : null;

    // A house's own glass or method is found by its name and key; the shipped ones have more words in BuildWords.
    private void AddBuilds(BuildCatalogue catalogue)
    {
        foreach (var glass in catalogue.Glasses)
        {
            AddBuild(Sense.Glass, glass.Key, glass.Name);
        }
        foreach (var method in catalogue.Methods)
        {
            AddBuild(Sense.Method, method.Key, method.Name);
        }
        foreach (var ice in catalogue.Ices)
        {
            AddBuild(Sense.Ice, ice.Key, ice.Name);
        }
    }

    private void AddBuild(Sense sense, string key, string name)
    {
        _builds.Add(name, new Meaning(sense, key));
        _builds.Add(key.Replace('_', ' '), new Meaning(sense, key));
    }

    private static string Reordered(IEnumerable<string> words) =>
        string.Join(' ', words.Where(w => w is not ("of" or "de" or "d" or "di" or "du" or "da" or "the" or "and")).Order(StringComparer.Ordinal));

    private static void Put(Dictionary<string, List<Alias>> table, string key, Alias alias)
    {
        if (!table.TryGetValue(key, out var aliases))
        {
            table[key] = aliases = [];
        }
        if (!aliases.Any(a => a.Ingredient == alias.Ingredient))
        {
            aliases.Add(alias);
        }
    }
}
