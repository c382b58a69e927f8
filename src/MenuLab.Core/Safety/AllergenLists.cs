using MenuLab.Core.Pantry;

namespace MenuLab.Core.Safety;

/// <summary>An allergen, or a thing that guests ask for like one, and whose list it stands on.</summary>
/// <param name="Key">snake_case, e.g. "tree_nut".</param>
/// <param name="Allergen">The pantry's word for it; null for what is on no list (coconut).</param>
/// <param name="Name">Plain name.</param>
/// <param name="On">Whose list it is on.</param>
/// <param name="Note">What to mind.</param>
/// <param name="Source">Where the lists were read.</param>
public sealed record ListedAllergen(string Key, Allergen? Allergen, string Name, Jurisdictions On, string Note, string Source)
{
    internal static ListedAllergen Read(RuleTable t) => new(
        t.Required("key"), t.Text("allergen").Length == 0 ? null : t.Word<Allergen>("allergen", w => Enum.TryParse<Allergen>(w, out var a) ? a : null),
        t.Required("name"), Columns(t), t.Text("note"), $"{t.Required("source")} ({t.Required("status")})");

    internal static Jurisdictions Columns(RuleTable t) =>
        (t.Flag("us") ? Jurisdictions.UnitedStates : 0) | (t.Flag("eu") ? Jurisdictions.EuropeanUnion : 0) | (t.Flag("uk") ? Jurisdictions.UnitedKingdom : 0)
        | (t.Flag("ca") ? Jurisdictions.Canada : 0) | (t.Flag("au_nz") ? Jurisdictions.AustraliaNewZealand : 0);
}

/// <summary>A nut and whose list of nuts it is on.</summary>
/// <param name="Key">Plain word, e.g. "pine nut".</param>
/// <param name="Name">Name with its other words.</param>
/// <param name="On">Whose list it is on.</param>
/// <param name="Source">Where the lists were read.</param>
public sealed record ListedNut(string Key, string Name, Jurisdictions On, string Source)
{
    internal static ListedNut Read(RuleTable t) => new(t.Required("key"), t.Required("name"), ListedAllergen.Columns(t), $"{t.Required("source")} ({t.Required("status")})");
}

/// <summary>What the words of an ingredient's name say of allergens.</summary>
/// <param name="Id">Row id.</param>
/// <param name="Goods">The goods in words.</param>
/// <param name="Words">Words that name them.</param>
/// <param name="NotWords">Words that name something else.</param>
/// <param name="Brings">Keys of allergens with the species, where one is told.</param>
/// <param name="IsCertain">Always there; else ask the maker, and hold approval until answered.</param>
/// <param name="Note">What to mind; with no allergen a remark for guests who ask.</param>
/// <param name="Source">Where it is from.</param>
public sealed record AllergenWord(
    string Id, string Goods, IReadOnlyList<Phrase> Words, IReadOnlyList<Phrase> NotWords, IReadOnlyList<(string Key, string Species)> Brings, bool IsCertain, string Note,
    string Source)
{
    internal static AllergenWord Read(RuleTable t) => new(
        t.Required("id"), t.Required("goods"), Phrase.ReadAll(t.Required("words")), Phrase.ReadAll(t.Text("not_words")),
        [.. t.Text("allergens").Split('|', StringSplitOptions.RemoveEmptyEntries).Select(a => a.Split(':')).Select(a => (a[0], a.Length > 1 ? a[1] : ""))],
        t.Required("certainty") switch { "certain" => true, "ask" or "info" => false, var w => throw t.Fault("certainty", $"nobody knows \"{w}\"") },
        t.Text("note"), t.Required("source"));
}

/// <summary>An allergen that a name brings or puts into question.</summary>
/// <param name="Key">Key of a <see cref="ListedAllergen"/>.</param>
/// <param name="Species">The species, where it is told; else empty.</param>
/// <param name="State">Present, or unknown where the maker must be asked.</param>
/// <param name="Row">The row that says so.</param>
public sealed record AllergenHint(string Key, string Species, AllergenState State, AllergenWord Row);

/// <summary>Allergens by jurisdiction and by the words of a name. Suggestions for a person to confirm against the label; a name without a hint is no proof of absence.</summary>
/// <remarks>
/// Source: US: FALCPA, FASTER Act, FDA Q&amp;A on food allergens ed. 5 (Jan 2025); EU and UK: Reg. (EU) 1169/2011 Annex II; Canada: Health Canada and CFIA;
/// Australia and New Zealand: FSANZ 1.2.3 (MEMORY). The map from names is general knowledge, MEMORY row by row. Local codes decide.
/// </remarks>
public static class AllergenLists
{
    /// <summary>Something is on the list of the place; of several places, on any.</summary>
    /// <param name="book">The rules.</param>
    /// <param name="key">Key of a <see cref="ListedAllergen"/>.</param>
    /// <param name="where">The place.</param>
    /// <exception cref="ArgumentException">Nothing has this key.</exception>
    public static bool IsListed(RuleBook book, string key, Jurisdictions where) => (Find(book, key).On & where) != 0;

    /// <summary>An allergen is on the list of the place. Wheat counts among the gluten cereals where they are listed.</summary>
    public static bool IsListed(RuleBook book, Allergen allergen, Jurisdictions where) => book.Allergens.Any(a => a.Allergen == allergen && (a.On & where) != 0);

    /// <summary>A nut counts as a tree nut at the place; null for a nut that no list names.</summary>
    /// <param name="book">The rules.</param>
    /// <param name="nut">"almond", "pine nut"...</param>
    /// <param name="where">The place.</param>
    public static bool? CountsAsTreeNut(RuleBook book, string nut, Jurisdictions where) =>
        book.TreeNuts.FirstOrDefault(n => new Phrase(n.Key, false).IsIn(nut)) is { } found ? (found.On & where) != 0 : null;

    /// <summary>What a name brings or puts into question, the certain first, each allergen once per species.</summary>
    /// <param name="book">The rules.</param>
    /// <param name="name">An ingredient's name, in English.</param>
    public static IReadOnlyList<AllergenHint> InName(RuleBook book, string name)
    {
        var words = Phrase.Split(name);
        List<AllergenHint> hints =
        [
            .. Rows(book, words)
                .SelectMany(row => row.Brings.Select(b => new AllergenHint(
                    b.Key, b.Species, row.IsCertain && row.Words.Any(w => !w.IsAQuestion && w.IsIn(words)) ? AllergenState.Present : AllergenState.Unknown, row)))
                .OrderBy(h => h.State)
                .DistinctBy(h => (h.Key, h.Species)),
        ];
        // "Tree nut" beside "almond, tree nut" says nothing more.
        hints.RemoveAll(h => h.Species.Length == 0 && hints.Exists(other => other.Key == h.Key && other.Species.Length > 0 && other.State <= h.State));
        return hints;
    }

    /// <summary>Remarks on things that stand on no list but that guests ask after: "cashew family", "daisy-family reactions".</summary>
    public static IReadOnlyList<AllergenWord> Remarks(RuleBook book, string name) => [.. Rows(book, Phrase.Split(name)).Where(r => r.Brings.Count == 0)];

    /// <summary>
    /// What a drink may pick up from kit that other drinks use unwashed: allergens of theirs that it lacks. A rinse with water or spirit removes none of it.
    /// </summary>
    /// <param name="drink">Allergens of the drink.</param>
    /// <param name="sharedKit">Allergens of everything else that goes through the same shakers, jiggers, strainers, blenders, rim dishes and scoops.</param>
    /// <returns>Allergens absent from the drink and present or unknown in the kit, as unknown.</returns>
    public static AllergenSet CrossContact(AllergenSet drink, AllergenSet sharedKit) => new(0, (sharedKit.Present | sharedKit.Unknown) & ~drink.Present & ~drink.Unknown);

    /// <summary>Facts about a drink's allergens for the rules of the place.</summary>
    /// <param name="book">The rules.</param>
    /// <param name="allergens">Allergens of the drink.</param>
    /// <param name="isSharedKit">It is made with kit that other drinks use; null where nobody knows.</param>
    public static SafetyFacts Facts(RuleBook book, AllergenSet allergens, bool? isSharedKit)
    {
        var facts = SafetyFacts.None;
        foreach (var (flag, on) in new[] { ("allergen_on_us_list", Jurisdictions.UnitedStates), ("allergen_on_eu_list", Jurisdictions.EuropeanUnion | Jurisdictions.UnitedKingdom) })
        {
            facts = facts.With(flag, Any(a => IsListed(book, a, on)));
        }
        facts = facts.With("allergen_off_us_list", Any(a => !IsListed(book, a, Jurisdictions.UnitedStates)));
        facts = facts.With("allergen_unknown", allergens.Unknown != 0);
        var any = Any(_ => true);
        return any == false ? facts : facts.With("shared_kit", isSharedKit);

        bool? Any(Func<Allergen, bool> which)
        {
            var states = Enum.GetValues<Allergen>().Where(which).Select(a => allergens[a]).ToList();
            return states.Contains(AllergenState.Present) ? true : states.Contains(AllergenState.Unknown) ? null : false;
        }
    }

    private static IEnumerable<AllergenWord> Rows(RuleBook book, string[] words) =>
        book.AllergenWords.Where(row => row.Words.Any(w => w.IsIn(words)) && !row.NotWords.Any(w => w.IsIn(words)));

    private static ListedAllergen Find(RuleBook book, string key) =>
        book.Allergens.FirstOrDefault(a => a.Key == key) ?? throw new ArgumentException($"No allergen has the key {key}.", nameof(key));
}
