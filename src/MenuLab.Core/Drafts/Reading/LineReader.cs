using MenuLab.Core.House;
using MenuLab.Core.Pantry;

namespace MenuLab.Core.Drafts.Reading;

/// <summary>
/// Decides what a clause with a name or an amount is: a line, a question or unread. Whatever a person would ask back is
/// asked; what is assumed is said.
/// </summary>
internal sealed partial class LineReader(Vocabulary vocabulary, MeasuresSet measures, ReadSettings settings, string text, List<Token> tokens)
{
    /// <summary>A clause and what became of it: exactly one of the two is set.</summary>
    public readonly record struct Outcome(Pending? Pending, string? Unread);

    private static Outcome Unread(string reason) => new(null, reason);

    /// <summary>The words of the name in the order typed, small words between them included.</summary>
    public string[] NameWords(Clause clause, bool withTreatments = false)
    {
        var at = new SortedSet<int>(clause.Name);
        if (withTreatments)
        {
            at.UnionWith(clause.TreatmentTokens);
        }
        if (at.Count == 0)
        {
            return [];
        }
        for (var i = at.Min; i < at.Max; i++)
        {
            if (tokens[i].Kind == TokenKind.Word && !at.Contains(i) && IsSmall(i))
            {
                at.Add(i);
            }
        }
        return [.. at.Select(i => tokens[i].Plain).Where(IsNameWord)];
    }

    private static bool IsNameWord(string plain) => plain is not ("'" or "-" or "." or "," or "(" or ")" or "");

    private bool IsSmall(int at) =>
        BarWords.Phrases.Longest(tokens, at, at + 1) is { IsFound: true } found && found.Values!.Any(m => m.Sense is Sense.Filler or Sense.And or Sense.With);

    /// <summary>What the clause's name may mean.</summary>
    public Vocabulary.Match Match(Clause clause) => clause.Found ??= FindMatch(clause);

    private Vocabulary.Match FindMatch(Clause clause)
    {
        var best = vocabulary.Find(NameWords(clause), clause.IsJoined);
        if (best.IsFound)
        {
            return WithStrength(clause, best);
        }
        var bare = clause.Name.OrderBy(i => i).Select(i => tokens[i].Plain).Where(IsNameWord).ToArray();
        var other = vocabulary.Find(bare);
        if (!other.IsFound && clause.TreatmentTokens.Count > 0)
        {
            var whole = vocabulary.Find(NameWords(clause, withTreatments: true));
            other = whole.IsFound ? whole : other;
        }
        return WithStrength(clause, other.IsFound || best.How == Vocabulary.How.None ? other : best);
    }

    /// <summary>A strength that was typed must be one that the ingredient is called by: saline 10 % is not saline 20 %.</summary>
    private static Vocabulary.Match WithStrength(Clause clause, Vocabulary.Match match)
    {
        if (clause.Strengths.Count == 0 || !match.IsFound)
        {
            return match;
        }
        var strengths = clause.Strengths.Select(HouseParse.Echo).ToArray();
        var fitting = match.Aliases
            .Where(a => strengths.All(s => a.Ingredient.Aliases.Append(a.Ingredient.Name).Any(n => Tokenizer.Words(n).Contains(s, StringComparer.Ordinal)))).ToList();
        return fitting.Count > 0 ? match with { Aliases = fitting } : match with { How = Vocabulary.How.Offered };
    }

    /// <summary>The word at a token stands in some name of the pantry.</summary>
    public bool IsNameWordOfPantry(int at) => vocabulary.KnowsWord(tokens[at].Plain);

    /// <summary>Two clauses together are one name: "lime juice, bottled".</summary>
    public bool IsOneName(Clause first, Clause second)
    {
        string[] words = [.. NameWords(first), .. NameWords(second)];
        return vocabulary.Find(words, inAnyOrder: true) is { How: Vocabulary.How.Exact or Vocabulary.How.Alike };
    }

    public Outcome Read(Clause clause, int line, int column, string typed, bool isEqualPart)
    {
        if (clause.Trouble.Length > 0)
        {
            return Unread(clause.Trouble);
        }
        if (!clause.HasName && !TakeUnitAsName(clause))
        {
            return clause.Says(Sense.Top)
                ? Unread("What is it topped with? Write it behind the word.")
                : Unread("An amount without an ingredient: write what it is of.");
        }
        var place = PlaceOf(clause);
        var spec = new LineSpec
        {
            Text = typed,
            Place = place,
            Treatment = string.Join(", ", clause.Treatments.Distinct(StringComparer.OrdinalIgnoreCase)),
            StartCelsius = clause.StartCelsius,
            IsScant = clause.Says(Sense.Scant),
            IsFat = clause.Says(Sense.Fat),
            IsAbout = clause.Says(Sense.About),
            IsJuiceOf = clause.Says(Sense.JuiceOf),
            Joins = JoinsOf(clause, place),
        };
        if (!double.IsNaN(clause.StartCelsius) && !clause.StartIsFigure)
        {
            spec = spec.Assuming($"Starts at {HouseParse.Echo(clause.StartCelsius)} °C.");
        }
        if (clause.StartIsFigure && clause.StartCelsius is < -60 or > 130)
        {
            return Unread("No drink starts at that temperature.");
        }
        return clause.OrAt >= 0
            ? EitherOr(clause, spec, line, column, typed)
            : Decide(clause, Match(clause), spec, line, column, typed, isEqualPart);
    }

    // ".75 L": with nothing behind it, L is the name.
    private bool TakeUnitAsName(Clause clause)
    {
        if (clause.UnitAt < 0 || vocabulary.Find([tokens[clause.UnitAt].Plain]) is not { How: Vocabulary.How.Exact })
        {
            return false;
        }
        clause.Name.Add(clause.UnitAt);
        clause.Found = null;
        clause.Unit = null;
        clause.UnitAt = -1;
        return true;
    }

    private static Place PlaceOf(Clause clause)
    {
        if (clause.Says(Sense.Rinse))
        {
            return Place.Rinse;
        }
        if (clause.Says(Sense.Garnish))
        {
            return Place.Garnish;
        }
        if (clause.Says(Sense.OnTheRim))
        {
            return clause.Unit is { } unit && UnitWords.IsCount(unit) ? Place.Garnish : Place.Rim;
        }
        if (clause.Says(Sense.Rim))
        {
            return Place.Rim;
        }
        return clause.Says(Sense.Beside) ? Place.Beside : Place.In;
    }

    private static Joins? JoinsOf(Clause clause, Place place)
    {
        if (place != Place.In)
        {
            return null;
        }
        if (clause.Says(Sense.Top) || clause.Says(Sense.Float) || clause.Says(Sense.OnTop))
        {
            return Joins.OnTop;
        }
        return clause.Says(Sense.InTheGlass) ? Joins.InTheGlass : null;
    }

    // ---- either, or ----------------------------------------------------------------------------------------------

    private Outcome EitherOr(Clause clause, LineSpec spec, int line, int column, string typed)
    {
        string[] left = [.. clause.Name.Where(i => i < clause.OrAt).Order().Select(i => tokens[i].Plain)];
        string[] right = [.. clause.Name.Where(i => i > clause.OrAt).Order().Select(i => tokens[i].Plain)];
        var (specs, _) = Amounts(clause, spec, null);
        var both = new List<(Ingredient, string?)>();
        var unknown = new List<string>();
        foreach (var side in new[] { left, right })
        {
            var match = vocabulary.Find(side);
            if (match.How == Vocabulary.How.None || side.Length == 0)
            {
                unknown.Add(string.Join(' ', side));
                continue;
            }
            both.AddRange(Narrow(match.Aliases, specs[0].Unit, spec, clause).Select(a => (a.Ingredient, a.Assumes)));
        }
        return new Outcome(
            new Pending
            {
                Text = typed, Line = line, Column = column, Specs = specs, Ingredients = [.. both.DistinctBy(b => b.Item1.Id)],
                Asks = "Two are named: which one goes in?", NewName = unknown.Count > 0 ? unknown[0] : null,
            },
            null);
    }

    // ---- one name ------------------------------------------------------------------------------------------------

    private Outcome Decide(Clause clause, Vocabulary.Match match, LineSpec spec, int line, int column, string typed, bool isEqualPart)
    {
        var named = TypedName(clause);
        var known = match.IsFound;
        var aliases = known && clause.Says(Sense.Top) ? Toppers(clause, match.Aliases) : match.Aliases;
        if (known && match.Aliases.FirstOrDefault(a => a.Unit is not null)?.Unit is { } inTheWord && clause.Unit is null)
        {
            clause.Unit = inTheWord;
        }
        if (clause.Says(Sense.Vague))
        {
            return AskHowMuch(clause, "Houses do not agree on that measure: how much, in a unit?", aliases, known, named, spec, line, column, typed);
        }
        if (NoAmountProblem(clause, spec.Place, isEqualPart) is { } problem)
        {
            return AskHowMuch(clause, problem, aliases, known, named, spec, line, column, typed);
        }
        var (specs, amountAsks) = Amounts(clause, spec, known ? aliases : null, isEqualPart);
        if (amountAsks is { Length: > 0 } && specs.Count == 0)
        {
            return Unread(amountAsks);
        }
        if (specs.Any(s => IsAbsurd(s)))
        {
            return Unread("An amount of nought, or more than 20 litres: write what goes into one drink or one batch.");
        }
        var narrowed = Narrow(aliases, specs[0].Unit, specs[0], clause);
        var pending = new Pending
        {
            Text = typed, Line = line, Column = column, Specs = specs,
            Ingredients = [.. narrowed.Select(a => (a.Ingredient, Assumption(match, a, aliases.Count > narrowed.Count)))],
            Asks = amountAsks,
        };
        if (!known)
        {
            var offered = match.Aliases.Count > 0 ? narrowed : Near(clause);
            return new Outcome(
                pending with
                {
                    Ingredients = [.. offered.Select(a => (a.Ingredient, (string?)null))],
                    NewName = named,
                    Asks = match.How == Vocabulary.How.Offered && match.Aliases.Count > 0
                        ? $"“{named}” is not among the house's names: is one of these meant, or is it new?"
                        : $"“{named}” is not in the pantry: is it new?",
                },
                null);
        }
        if (narrowed.Count > 1)
        {
            return new Outcome(pending with { Asks = amountAsks ?? $"“{named}” may mean {narrowed.Count} things: which one?", NewName = named }, null);
        }
        return Misfit(narrowed[0].Ingredient, specs, named) is { } misfit
            ? new Outcome(pending with { Asks = amountAsks ?? misfit, NewName = named }, null)
            : new Outcome(clause.IsDoubtful ? pending with { Asks = pending.Asks ?? "A question mark stands behind it: is it so?" } : pending, null);
    }

    private bool IsAbsurd(LineSpec spec)
    {
        if (double.IsNaN(spec.Amount))
        {
            return false;
        }
        var millilitres = UnitWords.Millilitres(spec.Unit, measures) * spec.Amount;
        var grams = UnitWords.Grams(spec.Unit, measures) * spec.Amount;
        return spec.Amount <= 0 || millilitres > AmountReader.Absurd || grams > AmountReader.Absurd || spec.Amount > AmountReader.Absurd;
    }

    private static string? Assumption(Vocabulary.Match match, Vocabulary.Alias alias, bool isNarrowed)
    {
        var said = new List<string>();
        if (match.How is Vocabulary.How.Corrected or Vocabulary.How.Spelled)
        {
            said.Add($"Read as {alias.Ingredient.Name}.");
        }
        else if (isNarrowed)
        {
            said.Add($"Taken as {alias.Ingredient.Name}, by its amount.");
        }
        if (alias.Assumes is { } assumes)
        {
            said.Add(char.ToUpperInvariant(assumes[0]) + assumes[1..] + ".");
        }
        return said.Count == 0 ? null : string.Join(' ', said);
    }

    public string TypedName(Clause clause)
    {
        var at = new SortedSet<int>(clause.Name);
        at.UnionWith(clause.TreatmentTokens.Where(t => clause.Name.Contains(t + 1)));
        return at.Count == 0 ? "" : text[tokens[at.Min].Start..tokens[at.Max].End].Trim();
    }

    /// <summary>"Top ginger": only what lengthens a drink can be meant.</summary>
    private IReadOnlyList<Vocabulary.Alias> Toppers(Clause clause, IReadOnlyList<Vocabulary.Alias> aliases)
    {
        if (aliases.Any(a => a.Ingredient.Kind == IngredientKind.Carbonated) || aliases.All(a => !LineMaker.IsSolid(a.Ingredient)))
        {
            return aliases;
        }
        var fizzy = vocabulary.Holding(NameWords(clause), i => i.Kind == IngredientKind.Carbonated);
        return fizzy.Count > 0 ? fizzy : aliases;
    }

    /// <summary>Known names inside an unknown one, to be offered beside "as new".</summary>
    private List<Vocabulary.Alias> Near(Clause clause)
    {
        var near = new List<Vocabulary.Alias>();
        var from = clause.Name.Min();
        for (var at = from; at <= clause.Name.Max() && near.Count < 4; at++)
        {
            var found = vocabulary.Longest(tokens, at, Math.Min(clause.To, clause.Name.Max() + 1));
            if (found.IsFound)
            {
                near.AddRange(found.Values!);
                at = found.End - 1;
            }
        }
        return [.. near.DistinctBy(a => a.Ingredient.Id).Take(4)];
    }

    // ---- which of several ----------------------------------------------------------------------------------------

    /// <summary>Of several with one name, those that fit the unit: lemon by the mL is its juice, by the slice the fruit.</summary>
    private IReadOnlyList<Vocabulary.Alias> Narrow(IReadOnlyList<Vocabulary.Alias> aliases, Unit unit, LineSpec spec, Clause clause)
    {
        if (aliases.Count < 2)
        {
            return aliases;
        }
        var solid = aliases.Where(a => LineMaker.IsSolid(a.Ingredient)).ToList();
        var liquid = aliases.Where(a => !LineMaker.IsSolid(a.Ingredient)).ToList();
        if (solid.Count == 0 || liquid.Count == 0)
        {
            return aliases;
        }
        var worked = clause.Treatments.Any(t => PlainText.Of(t) is var p && (p.StartsWith("grat", StringComparison.Ordinal) || p.StartsWith("rap", StringComparison.Ordinal)
            || p.StartsWith("muddl", StringComparison.Ordinal) || p.StartsWith("cut", StringComparison.Ordinal) || p.StartsWith("chop", StringComparison.Ordinal)
            || p.StartsWith("slice", StringComparison.Ordinal) || p.StartsWith("quart", StringComparison.Ordinal) || p.StartsWith("ger", StringComparison.Ordinal)
            || p.StartsWith("rall", StringComparison.Ordinal)));
        if (spec.IsJuiceOf)
        {
            return liquid;
        }
        if (worked || spec.Place is Place.Garnish or Place.Rim)
        {
            return solid;
        }
        if (unit == Unit.Piece)
        {
            // A whole citrus fruit in the liquid is there for its juice.
            return liquid.All(a => a.Ingredient.Kind == IngredientKind.CitrusJuice) ? liquid : solid;
        }
        if (UnitWords.IsCount(unit))
        {
            return solid;
        }
        if (!double.IsNaN(UnitWords.Grams(unit, measures)) || unit == Unit.Pinch)
        {
            return aliases;
        }
        // A spoon of ginger may be grated; a spoon of lemon is juice.
        var spoon = unit is Unit.Teaspoon or Unit.Tablespoon or Unit.Cup;
        return spoon && solid.Any(a => a.Ingredient.Kind == IngredientKind.HerbOrSpice) ? aliases : liquid;
    }

    /// <summary>Why an amount and its ingredient do not go together; null where they do.</summary>
    private static string? Misfit(Ingredient ingredient, IReadOnlyList<LineSpec> specs, string named)
    {
        var unit = specs[0].Unit;
        var solid = LineMaker.IsSolid(ingredient);
        if (solid && specs[0].Place == Place.In && unit is Unit.Millilitre or Unit.Centilitre or Unit.Litre or Unit.Top or Unit.Float or Unit.Splash or Unit.Rinse)
        {
            return $"“{named}” is not poured: is its juice or a purée meant?";
        }
        if (unit is Unit.Leaf && ingredient.Kind is not (IngredientKind.HerbOrSpice or IngredientKind.AcidSaltOrGum))
        {
            return $"The leaf of “{named}” is another thing than {ingredient.Name}: is it new?";
        }
        if (unit is Unit.Slice or Unit.Wedge or Unit.Peel or Unit.Sprig or Unit.Cube && !solid && ingredient.Kind is not (IngredientKind.SugarOrSyrup or IngredientKind.EggOrFoamer))
        {
            return $"{ingredient.Name} comes in no such pieces: is the fruit meant?";
        }
        if (unit == Unit.Piece && specs[0].Place == Place.In && !solid && ingredient.Kind != IngredientKind.CitrusJuice && double.IsNaN(LineMaker.PieceGrams(ingredient, Unit.Piece, false))
            && double.IsNaN(LineMaker.PieceGrams(ingredient, Unit.Piece, true)))
        {
            return $"{ingredient.Name} is not counted: how much is meant?";
        }
        return null;
    }
}
