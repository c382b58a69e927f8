using MenuLab.Core.Pantry;
using MenuLab.Core.Preps;
using MenuLab.Core.Quantities;

namespace MenuLab.Core.Proposals;

/// <summary>Something that can be added in any amount.</summary>
/// <param name="Ingredient">Identity.</param>
/// <param name="Composition">What it is made of.</param>
public sealed record Additive(IngredientId Ingredient, Composition Composition)
{
    /// <summary>So much of it.</summary>
    public Portion Of(double grams) => new(Ingredient, Composition, grams);
}

/// <summary>What an adjuster proposes: amounts, and what comes out.</summary>
public sealed class Adjustment
{
    internal Adjustment(string word, Portion start, IReadOnlyList<Portion> added, IReadOnlyList<string> notes)
    {
        Word = word;
        Parts = [start, .. added];
        Outcome = Mixture.Of(Parts);
        Notes = notes;
        Before = start.Composition;
    }

    /// <summary>The step that is done: "dissolve", "dilute", "acidify", "combine".</summary>
    public string Word { get; }

    /// <summary>What it starts from, then what is added; amounts of 0 g stand for "nothing to add".</summary>
    public IReadOnlyList<Portion> Parts { get; }

    /// <summary>What it starts from.</summary>
    public Composition Before { get; }

    /// <summary>What comes out.</summary>
    public Composition Outcome { get; }

    /// <summary>What to know.</summary>
    public IReadOnlyList<string> Notes { get; }

    /// <summary>What comes out, g.</summary>
    public double Grams => Parts.Sum(p => p.Grams);

    /// <summary>What comes out at 20 °C, mL.</summary>
    public double Millilitres => Grams / Outcome.GramsPerMillilitre;

    /// <summary>A figure before and after.</summary>
    public (Estimate Before, Estimate After) Figure(PrepFigure figure) => (PrepFigures.Of(Before, figure), PrepFigures.Of(Outcome, figure));

    /// <summary>The adjustment as a recipe of a prep of its own.</summary>
    /// <param name="prep">The new prep.</param>
    /// <param name="number">Number of the version, from 1.</param>
    /// <param name="name">Its name.</param>
    /// <returns>As <see cref="RecipeVersion.Make"/> gives it.</returns>
    public Result<RecipeVersion> AsRecipe(IngredientId prep, int number, string name)
    {
        var lines = Parts.Where(p => p.Grams > 0).Select(p => new PrepLine(p.Ingredient, p.Grams)).ToList();
        int[] rest = [.. Enumerable.Range(1, lines.Count - 1)];
        PrepStep[] steps = rest.Length == 0 ? [new Combine([0])] : [new Combine([0]), Word switch
        {
            "dissolve" => new Dissolve(rest),
            "dilute" => new Dilute(rest),
            "acidify" => new Acidify(rest),
            _ => new Combine(rest),
        }];
        return RecipeVersion.Make(prep, number, name, lines, steps);
    }
}
