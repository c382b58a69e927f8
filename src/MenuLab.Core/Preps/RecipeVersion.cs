using System.Globalization;
using MenuLab.Core.House;
using MenuLab.Core.Pantry;

namespace MenuLab.Core.Preps;

/// <summary>
/// How a prep is made: its lines and its steps, immutable. A change is a new version with the next number; batches and saved iterations keep
/// theirs.
/// </summary>
public sealed class RecipeVersion
{
    /// <summary>Longest name.</summary>
    public const int NameMaxLength = 120;

    /// <summary>Most lines and most steps.</summary>
    public const int MostLines = 200;

    private RecipeVersion(IngredientId prep, int number, string name, IReadOnlyList<PrepLine> lines, IReadOnlyList<PrepStep> steps)
    {
        Prep = prep;
        Number = number;
        Name = name;
        Lines = lines;
        Steps = steps;
    }

    /// <summary>The prep, which is an ingredient.</summary>
    public IngredientId Prep { get; }

    /// <summary>Number of the version, from 1.</summary>
    public int Number { get; }

    /// <summary>The prep's name as it stood.</summary>
    public string Name { get; }

    /// <summary>What goes in.</summary>
    public IReadOnlyList<PrepLine> Lines { get; }

    /// <summary>What is done.</summary>
    public IReadOnlyList<PrepStep> Steps { get; }

    /// <summary>Mass of all lines, g.</summary>
    public double GramsIn
    {
        get
        {
            var sum = 0.0;
            foreach (var line in Lines)
            {
                sum += line.Grams;
            }
            return sum;
        }
    }

    /// <summary>Field of a line's figure, for problems.</summary>
    public static string LineField(int line, string figure) => string.Create(CultureInfo.InvariantCulture, $"Lines[{line}].{figure}");

    /// <summary>Field of a step's figure, for problems.</summary>
    public static string StepField(int step, string figure) => string.Create(CultureInfo.InvariantCulture, $"Steps[{step}].{figure}");

    /// <summary>Makes a version, or says what stands in its way, all at once.</summary>
    /// <param name="prep">The prep.</param>
    /// <param name="number">Number, from 1.</param>
    /// <param name="name">Name.</param>
    /// <param name="lines">What goes in.</param>
    /// <param name="steps">What is done.</param>
    /// <returns>The version, or problems whose fields are "Name", "Lines[2].Grams", "Steps[0].Minutes" and the like.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number below 1.</exception>
    public static Result<RecipeVersion> Make(IngredientId prep, int number, string? name, IReadOnlyList<PrepLine> lines, IReadOnlyList<PrepStep> steps)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(number, 1);
        var problems = new List<Problem>();
        var trimmed = OneLine.Check(name, 1, NameMaxLength, nameof(Name), "a name", problems);
        RecipeCheck.Lines(prep, lines, problems);
        RecipeCheck.Steps(lines.Count, steps, problems);
        return problems.Count > 0
            ? Result.Invalid<RecipeVersion>(problems)
            : Result.Ok(new RecipeVersion(prep, number, trimmed, [.. lines], [.. steps]));
    }
}
