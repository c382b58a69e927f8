namespace MenuLab.Core.Safety;

/// <summary>
/// One edition of the shipped rules: immutable and numbered. They are advice with sources, not law and no guarantee: every one gives way to
/// the local health, liquor and labelling codes and to a licensed professional.
/// </summary>
public sealed class RuleBook
{
    /// <summary>The files that a book is read from.</summary>
    public static IReadOnlyList<string> Files { get; } =
    [
        "edition.csv", "rules.csv", "tcs.csv", "use-within.csv", "claims.csv", "allergen-lists.csv", "tree-nuts.csv", "allergen-words.csv",
        "nutrition-rounding.csv", "nutrition-claims.csv", "standard-drinks.csv", "label-fields.csv",
    ];

    private readonly Dictionary<string, SafetyRule> _byId;

    private RuleBook(Func<string, string> textOf)
    {
        (Number, Name) = RuleTable.Read("edition.csv", textOf("edition.csv"), t => ((int)t.Number("number"), t.Required("name"))).Single();
        Rules = Read("rules.csv", SafetyRule.Read);
        TcsBoxes = Read("tcs.csv", TcsBox.Read);
        UseWithin = Read("use-within.csv", UseWithinRule.Read);
        Claims = Read("claims.csv", AlcoholClaimRule.Read);
        Allergens = Read("allergen-lists.csv", ListedAllergen.Read);
        TreeNuts = Read("tree-nuts.csv", ListedNut.Read);
        AllergenWords = Read("allergen-words.csv", AllergenWord.Read);
        Rounding = Read("nutrition-rounding.csv", RoundingBand.Read);
        NutritionClaims = Read("nutrition-claims.csv", NutritionRule.Read);
        StandardDrinks = Read("standard-drinks.csv", StandardDrink.Read);
        LabelFields = Read("label-fields.csv", LabelField.Read);
        _byId = Rules.ToDictionary(r => r.Id, StringComparer.Ordinal);
        foreach (var stray in Rules.SelectMany(r => r.YieldsTo).Where(id => !_byId.ContainsKey(id)))
        {
            throw new FormatException($"rules.csv, column yields_to: no rule is called {stray}.");
        }

        IReadOnlyList<T> Read<T>(string file, Func<RuleTable, T> make) => RuleTable.Read(file, textOf(file), make);
    }

    /// <summary>Number of the edition.</summary>
    public int Number { get; }

    /// <summary>What the edition follows.</summary>
    public string Name { get; }

    /// <summary>Rules that compare one figure or flag.</summary>
    public IReadOnlyList<SafetyRule> Rules { get; }

    /// <summary>The boxes of the two interaction tables.</summary>
    public IReadOnlyList<TcsBox> TcsBoxes { get; }

    /// <summary>How long preps are held, by type.</summary>
    public IReadOnlyList<UseWithinRule> UseWithin { get; }

    /// <summary>Words and duties about alcohol.</summary>
    public IReadOnlyList<AlcoholClaimRule> Claims { get; }

    /// <summary>Allergens and whose list they stand on.</summary>
    public IReadOnlyList<ListedAllergen> Allergens { get; }

    /// <summary>Nuts and whose list they stand on.</summary>
    public IReadOnlyList<ListedNut> TreeNuts { get; }

    /// <summary>Which allergens the words of a name bring or put into question.</summary>
    public IReadOnlyList<AllergenWord> AllergenWords { get; }

    /// <summary>Bands of the US rounding.</summary>
    public IReadOnlyList<RoundingBand> Rounding { get; }

    /// <summary>Nutrition claims, duties and sugar tiers.</summary>
    public IReadOnlyList<NutritionRule> NutritionClaims { get; }

    /// <summary>Grams of ethanol in a standard drink, by country.</summary>
    public IReadOnlyList<StandardDrink> StandardDrinks { get; }

    /// <summary>What labels and cards must carry.</summary>
    public IReadOnlyList<LabelField> LabelFields { get; }

    /// <summary>Reads an edition.</summary>
    /// <param name="textOf">The text of each of <see cref="Files"/>, by name.</param>
    /// <exception cref="FormatException">A text holds a fault; the message names file, line and column.</exception>
    public static RuleBook Parse(Func<string, string> textOf) => new(textOf);

    /// <summary>A rule by its id.</summary>
    /// <exception cref="ArgumentException">There is none.</exception>
    public SafetyRule Rule(string id) => _byId.GetValueOrDefault(id) ?? throw new ArgumentException($"No rule is called {id}.", nameof(id));
}
