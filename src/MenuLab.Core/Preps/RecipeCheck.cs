using System.Globalization;
using MenuLab.Core.Pantry;
using MenuLab.Core.Solutions;

namespace MenuLab.Core.Preps;

/// <summary>What can be said of a recipe before anything is worked out. Problems name the field and how to mend it.</summary>
internal static class RecipeCheck
{
    // Ten years: longer is a slip of the keyboard.
    private const double MostDays = 3650;

    public static void Lines(IngredientId prep, IReadOnlyList<PrepLine> lines, List<Problem> problems)
    {
        if (lines.Count is 0 or > RecipeVersion.MostLines)
        {
            problems.Add(new Problem(nameof(RecipeVersion.Lines), $"Give 1 to {RecipeVersion.MostLines} lines; a prep is made of something."));
        }
        for (var i = 0; i < lines.Count; i++)
        {
            var line = lines[i];
            if (!(line.Grams > 0) || !double.IsFinite(line.Grams))
            {
                problems.Add(new Problem(RecipeVersion.LineField(i, nameof(PrepLine.Grams)), Say($"Line {i + 1} weighs {line.Grams} g; give a mass above 0 g.")));
            }
            if (!(line.GramsUncertainty >= 0) || !double.IsFinite(line.GramsUncertainty))
            {
                problems.Add(new Problem(
                    RecipeVersion.LineField(i, nameof(PrepLine.GramsUncertainty)), Say($"The uncertainty of line {i + 1} is {line.GramsUncertainty} g; give 0 g or more.")));
            }
            if (line.Ingredient == prep)
            {
                problems.Add(new Problem(
                    RecipeVersion.LineField(i, nameof(PrepLine.Ingredient)),
                    Say($"Line {i + 1} is the prep itself; a prep cannot be made of itself. Take the line out, or make this a new prep.")));
            }
        }
    }

    public static void Steps(int lineCount, IReadOnlyList<PrepStep> steps, List<Problem> problems)
    {
        if (steps.Count is 0 or > RecipeVersion.MostLines)
        {
            problems.Add(new Problem(nameof(RecipeVersion.Steps), $"Give 1 to {RecipeVersion.MostLines} steps, beginning with what is put together."));
        }
        var addedBy = new int[lineCount];
        for (var i = 0; i < steps.Count; i++)
        {
            var at = new At(i, steps[i], problems);
            at.Mass(steps[i].WeighedGrams, nameof(PrepStep.WeighedGrams), "weight");
            Figures(at, steps[i]);
            if (steps[i] is AddingStep adding)
            {
                Adds(at, adding, addedBy);
            }
        }
        for (var line = 0; line < lineCount; line++)
        {
            if (addedBy[line] != 1)
            {
                problems.Add(new Problem(
                    RecipeVersion.LineField(line, nameof(PrepLine.Ingredient)),
                    addedBy[line] == 0
                        ? Say($"No step puts line {line + 1} into the pot; add it to a step or take the line out.")
                        : Say($"{addedBy[line]} steps put line {line + 1} into the pot; split it into lines of their own.")));
            }
        }
    }

    private static void Adds(At at, AddingStep step, int[] addedBy)
    {
        if (step.Lines.Count == 0)
        {
            at.Problem(nameof(AddingStep.Lines), "names no line; say what goes in");
        }
        foreach (var line in step.Lines)
        {
            if (line < 0 || line >= addedBy.Length)
            {
                at.Problem(nameof(AddingStep.Lines), Say($"names line {line + 1}, but there are {addedBy.Length}; choose one of the recipe's lines"));
            }
            else
            {
                addedBy[line]++;
            }
        }
    }

    private static void Figures(At at, PrepStep step)
    {
        switch (step)
        {
            case Toast s:
                at.Time(s.Minutes, nameof(s.Minutes), MostDays * 24 * 60, "min");
                at.Range(s.Celsius, nameof(s.Celsius), 0, 300, "°C");
                break;
            case Heat s:
                at.Time(s.Minutes, nameof(s.Minutes), MostDays * 24 * 60, "min");
                at.Range(s.Celsius, nameof(s.Celsius), 0, 130, "°C");
                at.Range(s.GramsPerMinute, nameof(s.GramsPerMinute), 0, 10_000, "g/min");
                at.Range(s.Watts, nameof(s.Watts), 0, 100_000, "W");
                at.Range(s.PanCentimetres, nameof(s.PanCentimetres), 1, 200, "cm");
                break;
            case Steep s:
                at.Time(s.Minutes, nameof(s.Minutes), MostDays * 24 * 60, "min");
                at.Range(s.Celsius, nameof(s.Celsius), -30, 110, "°C");
                break;
            case Rest s:
                at.Time(s.Hours, nameof(s.Hours), MostDays * 24, "h");
                at.Range(s.Celsius, nameof(s.Celsius), -30, 110, "°C");
                break;
            case Blend s:
                at.Time(s.Minutes, nameof(s.Minutes), MostDays * 24 * 60, "min");
                break;
            case Press { Yield: { } yield } when !(yield > 0 && yield <= 1):
                at.Problem(nameof(Press.Yield), Say($"has a yield of {100 * yield:0.#} %; what is pressed cannot weigh more than what went in. Give more than 0 and at most 100 %"));
                break;
            case Reduce s when s.To == ReduceTo.Brix:
                at.Range(s.Target, nameof(s.Target), 0, SucroseDensity.HighestBrix, "Brix");
                break;
            case Reduce s:
                at.Mass(s.Target, nameof(s.Target), "target");
                break;
            case Carbonate s:
                at.Range(s.Volumes, nameof(s.Volumes), 0, 10, "volumes");
                at.Range(s.GaugeBar, nameof(s.GaugeBar), 0, 10, "bar");
                at.Range(s.Celsius, nameof(s.Celsius), 0, 60, "°C");
                if (s.Volumes is null && (s.GaugeBar is null || s.Celsius is null))
                {
                    at.Problem(nameof(s.Volumes), "says neither volumes nor pressure with temperature; give one of the two");
                }
                break;
            case Chill s:
                at.Range(s.Celsius, nameof(s.Celsius), -30, 60, "°C");
                break;
            case Ferment s:
                at.Time(s.Days, nameof(s.Days), MostDays, "days");
                at.Range(s.Celsius, nameof(s.Celsius), -5, 60, "°C");
                break;
        }
    }

    private static string Say(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    /// <summary>One step and where its problems go.</summary>
    private readonly struct At(int step, PrepStep of, List<Problem> problems)
    {
        public void Time(double value, string field, double most, string unit)
        {
            if (!(value >= 0 && value <= most))
            {
                Problem(field, Say($"has a time of {value} {unit}; give 0 to {most} {unit}"));
            }
        }

        public void Range(double? value, string field, double low, double high, string unit)
        {
            if (value is { } given && !(given >= low && given <= high))
            {
                Problem(field, Say($"says {given} {unit}; give {low} to {high} {unit}"));
            }
        }

        public void Mass(double? value, string field, string what)
        {
            if (value is { } given && !(given > 0 && double.IsFinite(given)))
            {
                Problem(field, Say($"has a {what} of {given}; give a figure above 0, or leave it open"));
            }
        }

        public void Problem(string field, string says) =>
            problems.Add(new Problem(RecipeVersion.StepField(step, field), Say($"Step {step + 1} ({of.Word}) {says}.")));
    }
}
