using MenuLab.Core.House;
using MenuLab.Core.Pantry;

namespace MenuLab.Core.Drafts.Reading;

/// <summary>
/// Decides what a clause with a name or an amount is: a line, a question or unread. Whatever a person would ask back is
/// asked; what is assumed is said.
/// </summary>
internal sealed class LineReader(Vocabulary vocabulary, MeasuresSet measures, ReadSettings settings, string text, List<Token> tokens)
{
    // Nobody pours less than this many mL by a bare number, or more than that many ounces into one glass.
    private const double LeastBareMillilitres = 4;
    private const double MostBareOunces = 8;
    private const double MostBareDashes = 10;
    private const double MostBarePieces = 6;

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
        return Misfit(narrowed[0].Ingredient, specs, clause, named) is { } misfit
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

    // ---- how much ------------------------------------------------------------------------------------------------

    private static string? NoAmountProblem(Clause clause, Place place, bool isEqualPart)
    {
        if (clause.HasAmount || isEqualPart || place != Place.In || clause.Says(Sense.Top) || clause.Says(Sense.Float))
        {
            return null;
        }
        if (clause.Says(Sense.OnTop) && clause.Unit is null)
        {
            return null;
        }
        if (clause.Unit is null)
        {
            return "How much?";
        }
        return clause.Unit is Unit.Millilitre or Unit.Centilitre or Unit.Litre or Unit.FluidOunce or Unit.Gram or Unit.Kilogram or Unit.WeightOunce or Unit.Pound or Unit.Cup or Unit.Part
            ? "The number in front of the unit is missing: how much?"
            : null;
    }

    private Outcome AskHowMuch(Clause clause, string problem, IReadOnlyList<Vocabulary.Alias> aliases, bool known, string named, LineSpec spec, int line, int column, string typed)
    {
        var offered = known || aliases.Count > 0 ? Narrow(aliases, Unit.Millilitre, spec, clause) : Near(clause);
        if (offered.Count == 0 && !known)
        {
            return Unread($"No amount, and “{named}” is not in the pantry: write how much and what.");
        }
        return new Outcome(
            new Pending
            {
                Text = typed, Line = line, Column = column, Specs = [spec], Ingredients = [.. offered.Select(a => (a.Ingredient, (string?)null))], Asks = problem,
                NewName = known ? null : named,
            },
            null);
    }

    /// <summary>The readings of the amount, and what must be asked about them.</summary>
    private (IReadOnlyList<LineSpec> Specs, string? Asks) Amounts(Clause clause, LineSpec spec, IReadOnlyList<Vocabulary.Alias>? aliases, bool isEqualPart = false)
    {
        if (isEqualPart)
        {
            return ([spec with { Amount = 1, Low = 1, High = 1, Unit = Unit.Part }], null);
        }
        if (clause.Amount is not { } amount)
        {
            return (WithoutFigure(clause, spec), null);
        }
        spec = spec with { Amount = amount.Value, Low = amount.Low, High = amount.High };
        if (!double.IsNaN(clause.Times))
        {
            var times = spec with { Amount = amount.Value * clause.Times, Low = amount.Low * clause.Times, High = amount.High * clause.Times, Unit = clause.Unit ?? settings.BareNumber };
            return ([times, times with { Amount = amount.Value, Low = amount.Low, High = amount.High }], "Is it poured so many times, or once?");
        }
        if (amount.HasTwoReadings)
        {
            var unit = clause.Unit ?? settings.BareNumber;
            return ([spec with { Amount = amount.Grouped, Low = amount.Grouped, High = amount.Grouped, Unit = unit }, spec with { Unit = unit }],
                $"{HouseParse.Echo(amount.Value)} or {HouseParse.Echo(amount.Grouped)}?");
        }
        if (clause.Again is { } again && !SaysTheSame(clause, again))
        {
            return ([spec with { Unit = clause.Unit ?? settings.BareNumber }, spec with { Amount = again.Amount.Value, Low = again.Amount.Low, High = again.Amount.High, Unit = again.Unit ?? settings.BareNumber }],
                "The two amounts are not the same: which one holds?");
        }
        if (clause.EitherSpoon)
        {
            return ([spec with { Unit = Unit.Tablespoon }, spec with { Unit = Unit.Teaspoon }], "Tablespoon or teaspoon?");
        }
        return clause.Unit is { } typedUnit ? WithUnit(clause, spec, typedUnit, aliases) : Bare(clause, spec, amount, aliases);
    }

    private static List<LineSpec> WithoutFigure(Clause clause, LineSpec spec)
    {
        if (spec.Place == Place.Rinse)
        {
            return [spec with { Unit = Unit.Rinse }];
        }
        if (clause.Unit is { } unit)
        {
            spec = spec with { Unit = unit };
            return spec.Place == Place.In && UnitWords.IsCount(unit) && unit is not (Unit.Leaf or Unit.Piece or Unit.Cube)
                && clause.Treatments.Count == 0 && !clause.HasBuild
                ? [(spec with { Place = Place.Garnish, Joins = null }).Assuming("No amount: taken as a garnish.")]
                : [spec.Place == Place.In && !clause.Says(Sense.Top) ? spec.Assuming("No number: taken as one.") : spec];
        }
        if (clause.Says(Sense.Float))
        {
            return [spec with { Unit = Unit.Float }];
        }
        if (clause.Says(Sense.Top))
        {
            return [spec with { Unit = Unit.Top }];
        }
        // "Fennel frond on top", "nutmeg on top": what has no amount and lies on top is a garnish.
        return clause.Says(Sense.OnTop) ? [(spec with { Place = Place.Garnish, Joins = null }).Assuming("No amount: taken as a garnish.")] : [spec];
    }

    private bool SaysTheSame(Clause clause, (Amount Amount, Unit? Unit) again)
    {
        var first = clause.Amount!.Value.Value * UnitWords.Millilitres(clause.Unit ?? settings.BareNumber, measures);
        var second = again.Amount.Value * UnitWords.Millilitres(again.Unit ?? settings.BareNumber, measures);
        // A bracket that weighs what was counted ("1 egg white (33 g)") does not contradict it.
        return double.IsNaN(first) || double.IsNaN(second) || Math.Abs(first - second) <= 0.12 * Math.Max(first, second);
    }

    private (IReadOnlyList<LineSpec>, string?) WithUnit(Clause clause, LineSpec spec, Unit unit, IReadOnlyList<Vocabulary.Alias>? aliases)
    {
        spec = spec with { Unit = unit };
        // Zest by number goes into a syrup or an infusion; a peel or twist lies on the drink.
        var isZest = clause.UnitAt >= 0 && tokens[clause.UnitAt].Plain.StartsWith("zest", StringComparison.Ordinal);
        if (unit == Unit.Peel && !isZest && spec.Place == Place.In && clause.Treatments.Count == 0 && spec.Joins is null && aliases is not null)
        {
            return ([(spec with { Place = Place.Garnish }).Assuming("A peel: taken as a garnish.")], null);
        }
        if (unit == Unit.FluidOunce && aliases is { Count: > 0 } && aliases.All(a => LineMaker.IsSolid(a.Ingredient) || LineMaker.IsPowder(a.Ingredient)))
        {
            var byWeight = (spec with { Unit = Unit.WeightOunce }).Assuming("Read as ounces by weight.");
            return aliases.All(a => a.Ingredient.Kind is IngredientKind.Produce or IngredientKind.NutOrSeed)
                ? ([byWeight], null)
                : ([byWeight, spec], "Ounces by weight, or by the measure?");
        }
        return ([spec], null);
    }

    // ---- a bare number -------------------------------------------------------------------------------------------

    private (IReadOnlyList<LineSpec>, string?) Bare(Clause clause, LineSpec spec, Amount amount, IReadOnlyList<Vocabulary.Alias>? aliases)
    {
        var house = settings.BareNumber;
        var inHouse = spec with { Unit = house };
        var pieces = spec with { Unit = Unit.Piece };
        var ounces = spec with { Unit = Unit.FluidOunce };
        var millilitres = spec with { Unit = Unit.Millilitre };
        if (spec.Place is Place.Rim)
        {
            // "Half salt rim": half the rim, not half a measure.
            return ([spec with { Amount = double.NaN, Low = double.NaN, High = double.NaN, Treatment = "half" }], null);
        }
        if (clause.Says(Sense.Count))
        {
            return ([pieces], null);
        }
        if (spec.Place is Place.Garnish)
        {
            return ([pieces], null);
        }
        if (spec.IsJuiceOf)
        {
            return ([pieces], null);
        }
        if (aliases is { Count: > 0 } && Counted(clause, amount, aliases) is { } counted)
        {
            return counted switch
            {
                Counting.Pieces => ([pieces], null),
                Counting.WholeFruit when house == Unit.Millilitre => ([pieces], null),
                Counting.WholeFruit => ([inHouse, pieces with { IsJuiceOf = true }], "An ounce of the juice, or a whole fruit?"),
                Counting.Dashes => ([spec with { Unit = Unit.Dash }, inHouse], "Dashes, or the house's unit?"),
                Counting.Weighed => ([spec with { Unit = Unit.Gram }, inHouse], $"Grams, or {UnitNames.Of(house)}?"),
                _ => ([pieces, inHouse], $"Pieces, or {UnitNames.Of(house)}?"),
            };
        }
        if (house == Unit.Millilitre && amount.Low < LeastBareMillilitres)
        {
            return ([ounces, millilitres], $"{HouseParse.Echo(amount.Value)} mL is little: are ounces meant?");
        }
        if (house == Unit.FluidOunce && amount.High > MostBareOunces)
        {
            return ([millilitres, ounces], $"{HouseParse.Echo(amount.Value)} ounces are many: are millilitres meant?");
        }
        return ([inHouse.Assuming($"Read {HouseParse.Echo(amount.Value)} as {UnitNames.Of(house)}, the house's unit.")], null);
    }

    private enum Counting
    {
        Pieces,
        WholeFruit,
        Dashes,
        Weighed,
        Unclear,
    }

    /// <summary>What a bare number counts where it is not poured; null where it is.</summary>
    private Counting? Counted(Clause clause, Amount amount, IReadOnlyList<Vocabulary.Alias> aliases)
    {
        var whole = amount.Value == Math.Floor(amount.Value);
        var first = aliases[0].Ingredient;
        var last = tokens[clause.Name.Max()].Plain;
        if (aliases.All(a => LineMaker.IsSolid(a.Ingredient)))
        {
            var isPlural = PlainText.Singular(last) != last || clause.Name.Select(i => tokens[i].Plain).Any(w => PlainText.Singular(w) != w);
            return isPlural || amount.Value <= MostBarePieces ? Counting.Pieces : Counting.Unclear;
        }
        if (aliases.All(a => a.Ingredient.Kind == IngredientKind.EggOrFoamer && !double.IsNaN(LineMaker.PieceGrams(a.Ingredient, Unit.Piece, false))))
        {
            return whole && amount.Value <= MostBarePieces ? Counting.Pieces : amount.Value > 9 && settings.BareNumber == Unit.Millilitre ? null : Counting.Unclear;
        }
        if (aliases.Any(a => a.Ingredient.Kind == IngredientKind.CitrusJuice && IsFruitWord(a)) && amount.Value < LeastBareMillilitres
            && (whole || amount.Value == 0.5) && (settings.BareNumber == Unit.Millilitre || (whole && !amount.IsFraction)))
        {
            return Counting.WholeFruit;
        }
        if (first.Kind == IngredientKind.Alcohol && first.Key.Contains("bitters", StringComparison.Ordinal) && amount.Value <= MostBareDashes)
        {
            return Counting.Dashes;
        }
        return aliases.All(a => LineMaker.IsPowder(a.Ingredient) || a.Ingredient.Kind == IngredientKind.AcidSaltOrGum) ? Counting.Weighed : null;
    }

    private static bool IsFruitWord(Vocabulary.Alias alias) => !alias.Text.Contains("ju", StringComparison.OrdinalIgnoreCase)
        && !alias.Text.Contains("saft", StringComparison.OrdinalIgnoreCase) && !alias.Text.Contains("zumo", StringComparison.OrdinalIgnoreCase)
        && !alias.Text.Contains("suc", StringComparison.OrdinalIgnoreCase) && !alias.Text.Contains("sumo", StringComparison.OrdinalIgnoreCase)
        && !alias.Text.Contains("lj", StringComparison.OrdinalIgnoreCase);

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
    private static string? Misfit(Ingredient ingredient, IReadOnlyList<LineSpec> specs, Clause clause, string named)
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
        _ = clause;
        return null;
    }
}
