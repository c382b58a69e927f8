using MenuLab.Core.House;
using MenuLab.Core.Pantry;

namespace MenuLab.Core.Drafts.Reading;

/// <summary>
/// A line that waits for what only the whole drink tells: its method (when a carbonated line joins) and the total that
/// parts are scaled to. One spec and one ingredient without a question make a line, anything else a question.
/// </summary>
internal sealed record Pending
{
    public required string Text { get; init; }

    public required int Line { get; init; }

    public required int Column { get; init; }

    /// <summary>Readings of the amount, likeliest first.</summary>
    public required IReadOnlyList<LineSpec> Specs { get; init; }

    /// <summary>What may be meant, likeliest first, each with what is assumed in taking it so.</summary>
    public required IReadOnlyList<(Ingredient Ingredient, string? Assumes)> Ingredients { get; init; }

    /// <summary>What is asked; null where nothing is.</summary>
    public string? Asks { get; init; }

    /// <summary>The name to offer "as new"; null where it is known.</summary>
    public string? NewName { get; init; }

    public bool IsPart => Specs[0].Unit == Unit.Part;

    public DraftLine ToLine(MeasuresSet measures, MethodModel? method) => Make(Ingredients[0], Specs[0], measures, method);

    public LineQuestion ToQuestion(MeasuresSet measures, MethodModel? method)
    {
        var candidates = new List<Candidate>();
        foreach (var ingredient in Ingredients)
        {
            foreach (var spec in Specs)
            {
                var line = Make(ingredient, spec, measures, method);
                candidates.Add(new Candidate(Specs.Count > 1 ? $"{ingredient.Ingredient.Name}, {Amount(spec)}" : ingredient.Ingredient.Name, line));
            }
        }
        if (NewName is not null)
        {
            candidates.Add(new Candidate($"as new: {NewName}", null));
        }
        var spec0 = Specs[0];
        var millilitres = Specs.Count == 1 ? UnitWords.Millilitres(spec0.Unit, measures) * spec0.Amount : double.NaN;
        if (Specs.Count == 1 && spec0.Unit == Unit.Part)
        {
            millilitres = spec0.Amount * spec0.PartMillilitres;
        }
        return new LineQuestion
        {
            Text = Text,
            Line = Line,
            Column = Column,
            Asks = Asks ?? "Which one is meant?",
            Candidates = candidates,
            Millilitres = millilitres,
            Place = spec0.Place,
        };
    }

    private static DraftLine Make((Ingredient Ingredient, string? Assumes) what, LineSpec spec, MeasuresSet measures, MethodModel? method)
    {
        if (what.Assumes is { Length: > 0 } assumes)
        {
            spec = spec.Assuming(assumes);
        }
        if (spec.Joins is null && spec.Place == Place.In && MethodDefaults.Joins(what.Ingredient, method) is { } joins)
        {
            spec = (spec with { Joins = joins }).Assuming(joins == Joins.InTheGlass
                ? "Carbonated: poured into the glass, over the ice."
                : "Carbonated: added on top, not mixed with the others.");
        }
        if (spec.Place == Place.In && double.IsNaN(spec.StartCelsius) && MethodDefaults.StartCelsius(what.Ingredient, method) is { } hot)
        {
            spec = (spec with { StartCelsius = hot }).Assuming("A hot drink: taken as poured at 90 °C.");
        }
        return LineMaker.Make(what.Ingredient, spec, measures);
    }

    internal static string Amount(LineSpec spec) => double.IsNaN(spec.Amount) ? "no amount" : $"{HouseParse.Echo(spec.Amount)} {UnitNames.Of(spec.Unit)}";
}

/// <summary>Units as they are told in questions and assumptions.</summary>
internal static class UnitNames
{
    public static string Of(Unit unit) => unit switch
    {
        Unit.Millilitre => "mL",
        Unit.Centilitre => "cL",
        Unit.Litre => "L",
        Unit.FluidOunce => "fl oz",
        Unit.Teaspoon => "tsp",
        Unit.Tablespoon => "tbsp",
        Unit.BarSpoon => "bar spoon",
        Unit.Gram => "g",
        Unit.Kilogram => "kg",
        Unit.WeightOunce => "oz by weight",
        Unit.Pound => "lb",
        Unit.None => "",
        _ => unit.ToString().ToLowerInvariant(),
    };
}
