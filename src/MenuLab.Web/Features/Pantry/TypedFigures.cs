using MenuLab.Core;
using MenuLab.Core.House;
using MenuLab.Core.Pantry;
using MenuLab.Core.Solutions;
using MenuLab.Data.Pantry;

namespace MenuLab.Web.Features.Pantry;

/// <summary>The house's own figure of one quantity as it stands in the form. What was typed stays as typed, whatever becomes of it.</summary>
public sealed class TypedFigure
{
    internal TypedFigure(QuantityWord word, IngredientFigure? own, Func<double, string> write)
    {
        Word = word;
        Was = own;
        if (own is null)
        {
            return;
        }
        Text = Origins.Of(own) == Origin.Unknown ? HouseFormat.Unknown : Write(own.Value);
        (Low, High) = (Write(own.Low), Write(own.High));
        From = own.Status is FigureStatus.Assumed or FigureStatus.Memory ? Origin.Typical : Origins.Of(own) == Origin.Label ? Origin.Label : Origin.Table;
        Source = own.Source;

        string Write(double value) => double.IsNaN(value) ? "" : write(value);
    }

    /// <summary>Which figure.</summary>
    public QuantityWord Word { get; }

    /// <summary>The figure: a number; blank for none of our own; "unknown" where the house says that nobody knows.</summary>
    public string Text { get; set; } = "";

    /// <summary>Its low end.</summary>
    public string Low { get; set; } = "";

    /// <summary>Its high end.</summary>
    public string High { get; set; } = "";

    /// <summary>What it rests on: a label, a table or paper, or nothing but use.</summary>
    public Origin From { get; set; } = Origin.Label;

    /// <summary>Where exactly.</summary>
    public string Source { get; set; } = "";

    /// <summary>Something was typed.</summary>
    public bool IsTyped => Text.Trim().Length + Low.Trim().Length + High.Trim().Length > 0;

    /// <summary>The house's own figure as it was saved; null for none.</summary>
    internal IngredientFigure? Was { get; }

    internal (string, string, string, Origin, string) Typed => (Text.Trim(), Low.Trim(), High.Trim(), From, Source.Trim());
}

/// <summary>What became of one typed figure.</summary>
/// <param name="Figure">What to save; null where nothing changes or it cannot be read.</param>
/// <param name="Problem">What stands in the way; empty for nothing.</param>
/// <param name="Answers">Readings to choose between, where there are two.</param>
public readonly record struct ReadFigure(HouseFigure? Figure, string Problem, IReadOnlyList<string> Answers);

/// <summary>What the figures of a record come to, with what is being typed.</summary>
/// <param name="ComesTo">The figures of the liquid; null where they make none.</param>
/// <param name="Remarks">What a person should look at.</param>
/// <param name="Impossible">Why there is no liquid; empty where there is one.</param>
public sealed record Preview(ComesTo? ComesTo, IReadOnlyList<CompositionRemark> Remarks, string Impossible);

/// <summary>All figures of an ingredient in the form.</summary>
public sealed class TypedFigures
{
    private const double EthanolGramsPerMillilitre = EthanolDensity.PureAt20 / 1000;

    // Density and grams of ethanol depend on each other; each round brings them some ten times closer.
    private const int Rounds = 12;

    private readonly Ingredient _ingredient;
    private readonly Dictionary<string, TypedFigure> _figures;
    private readonly Dictionary<string, (string, string, string, Origin, string)> _saved;

    /// <summary>The figures of an ingredient as saved.</summary>
    public TypedFigures(Ingredient ingredient)
    {
        _ingredient = ingredient;
        _figures = QuantityWords.All.ToDictionary(w => w.Quantity, w => new TypedFigure(
            w, ingredient.Figures.FirstOrDefault(f => f.Quantity == w.Quantity && f.Origin == PantryWriting.House), value => HouseParse.Echo(Shown(w.Quantity, value))));
        _saved = _figures.ToDictionary(f => f.Key, f => f.Value.Typed);
    }

    /// <summary>The ingredient as saved.</summary>
    public Ingredient Ingredient => _ingredient;

    /// <summary>One of them.</summary>
    public TypedFigure this[string quantity] => _figures[quantity];

    /// <summary>How many differ from what is saved.</summary>
    public int Changed => _figures.Count(f => f.Value.Typed != _saved[f.Key]);

    /// <summary>It differs from what is saved.</summary>
    public bool IsChanged(string quantity) => _figures[quantity].Typed != _saved[quantity];

    /// <summary>The same typed texts over another version of the ingredient: what was not touched follows it.</summary>
    public TypedFigures Over(Ingredient ingredient)
    {
        var over = new TypedFigures(ingredient);
        foreach (var (quantity, typed) in _figures.Where(f => IsChanged(f.Key)))
        {
            var figure = over._figures[quantity];
            (figure.Text, figure.Low, figure.High, figure.From, figure.Source) = (typed.Text, typed.Low, typed.High, typed.From, typed.Source);
        }
        return over;
    }

    /// <summary>Reads one typed figure.</summary>
    public ReadFigure Read(string quantity)
    {
        var typed = _figures[quantity];
        if (!IsChanged(quantity))
        {
            return new ReadFigure(null, "", []);
        }
        if (!typed.IsTyped)
        {
            return new ReadFigure(HouseFigure.TakeAway(quantity), "", []);
        }
        var status = typed.From == Origin.Typical ? FigureStatus.Assumed : FigureStatus.Confirmed;
        var source = SourceOf(typed);
        if (typed.Text.Trim().ToLowerInvariant() is HouseFormat.Unknown or "?")
        {
            return typed.Low.Trim().Length + typed.High.Trim().Length > 0
                ? new ReadFigure(null, "Unknown has no low and no high. Leave the figure empty to give bounds alone.", [])
                : new ReadFigure(new HouseFigure(quantity, null, null, null, source, status), "", []);
        }
        var numbers = new double?[3];
        foreach (var (text, place) in new[] { (typed.Text, 0), (typed.Low, 1), (typed.High, 2) })
        {
            if (text.Trim().Length == 0)
            {
                continue;
            }
            var parsed = HouseParse.Number(text);
            if (parsed.Outcome != NumberOutcome.Read)
            {
                // Only the figure itself is answered by a press; a bound is typed again.
                var answers = parsed.Outcome == NumberOutcome.TwoReadings && place == 0 ? new[] { HouseParse.Echo(parsed.Value), HouseParse.Echo(parsed.Grouped) } : [];
                return new ReadFigure(null, parsed.Outcome == NumberOutcome.NotANumber ? $"{parsed.Echo} Blank is no figure of ours; \"unknown\" says that nobody knows." : parsed.Echo, answers);
            }
            if (quantity == QuantityWords.Strength && parsed.Value is < 0 or > 100)
            {
                return new ReadFigure(null, $"{HouseParse.Echo(parsed.Value)} % vol cannot be: it lies between 0 and 100.", []);
            }
            numbers[place] = Kept(quantity, parsed.Value);
        }
        var figure = new HouseFigure(quantity, numbers[0], numbers[1], numbers[2], source, status);
        return PantryWriting.Problems(figure, _ingredient.Basis).ToList() is [var problem, ..] ? new ReadFigure(null, problem.Message, []) : new ReadFigure(figure, "", []);
    }

    /// <summary>All that is to be saved, or all that stands in the way.</summary>
    public Result<IReadOnlyList<HouseFigure>> ToSave()
    {
        var read = _figures.Keys.Select(q => (Quantity: q, Read: Read(q))).ToList();
        var problems = read.Where(r => r.Read.Problem.Length > 0).Select(r => new Problem(r.Quantity, $"{_figures[r.Quantity].Word.Name}: {r.Read.Problem}")).ToList();
        return problems.Count > 0
            ? Result.Invalid<IReadOnlyList<HouseFigure>>(problems)
            : Result.Ok<IReadOnlyList<HouseFigure>>([.. read.Select(r => r.Read.Figure).OfType<HouseFigure>()]);
    }

    /// <summary>What the figures come to with what is typed and can be read.</summary>
    public Preview Preview()
    {
        var figures = Figures(except: null);
        try
        {
            var flags = _ingredient.Composition.Caveats & (CompositionCaveats.Carbonated | CompositionCaveats.RawEgg);
            var built = CompositionBuilder.Build(_ingredient.Kind, _ingredient.Basis, figures, _ingredient.Composition.Allergens, flags);
            var remarks = built.Remarks.Concat(CompositionCheck.Remarks(_ingredient.Basis, figures, built.Composition)).ToList();
            return new Preview(ComesTo.Of(_ingredient.Id, _ingredient.Kind, built.Composition), remarks, "");
        }
        catch (ArgumentException problem)
        {
            return new Preview(null, [], problem.Message);
        }
    }

    /// <summary>A kept figure as the page shows it: grams of ethanol as % vol, all else as it is.</summary>
    public double Shown(string quantity, double kept) =>
        quantity == QuantityWords.Strength
            ? kept * (_ingredient.Basis == CompositionBuilder.PerMass ? _ingredient.Composition.GramsPerMillilitre : 1) / EthanolGramsPerMillilitre
            : kept;

    // A label says % vol, the composition holds grams: per 100 g it takes the density that these very grams make.
    private double Kept(string quantity, double typed)
    {
        if (quantity != QuantityWords.Strength)
        {
            return typed;
        }
        var per100Millilitres = typed * EthanolGramsPerMillilitre;
        if (_ingredient.Basis == CompositionBuilder.PerVolume)
        {
            return per100Millilitres;
        }
        var others = Figures(except: quantity);
        var grams = per100Millilitres;
        for (var round = 0; round < Rounds; round++)
        {
            List<IngredientFigure> figures = [.. others, new(quantity, grams, double.NaN, double.NaN, "", FigureStatus.Confirmed, PantryWriting.House)];
            grams = per100Millilitres / CompositionBuilder.Build(_ingredient.Kind, _ingredient.Basis, figures, default).Composition.GramsPerMillilitre;
        }
        return grams;
    }

    private List<IngredientFigure> Figures(string? except)
    {
        var typed = _figures.Keys.Where(q => q != except && IsChanged(q)).Select(q => Read(q).Figure).OfType<HouseFigure>().ToDictionary(f => f.Quantity);
        return
        [
            .. _ingredient.Figures.Where(f => f.Quantity != except && (f.Origin != PantryWriting.House || !typed.ContainsKey(f.Quantity))),
            .. typed.Values.Where(f => !f.IsTakenAway).Select(f => new IngredientFigure(
                f.Quantity, f.Value ?? double.NaN, f.Low ?? double.NaN, f.High ?? double.NaN, f.Source ?? "", f.Status, PantryWriting.House)),
        ];
    }

    private static string SourceOf(TypedFigure typed)
    {
        var source = typed.Source.Trim();
        return typed.From switch
        {
            Origin.Label => source.StartsWith(Origins.Label, StringComparison.OrdinalIgnoreCase) ? source : source.Length == 0 ? Origins.Label : $"{Origins.Label}: {source}",
            Origin.Typical => source.Length == 0 ? "common practice, no source" : source,
            _ => source.Length == 0 ? "table or paper, not named" : source.StartsWith(Origins.Label, StringComparison.OrdinalIgnoreCase) ? $"from a {source}" : source,
        };
    }
}
