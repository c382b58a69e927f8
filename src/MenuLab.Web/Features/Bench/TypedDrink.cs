using MenuLab.Core.Balance;
using MenuLab.Core.Pantry;
using MenuLab.Core.Quantities;

namespace MenuLab.Web.Features.Bench;

/// <summary>A typed drink as the page shows it: rows in the order typed, build, figures, allergens, cautions.</summary>
public sealed record TypedDrink
{
    /// <summary>Name as typed; empty where none was.</summary>
    public string Name { get; init; } = "";

    /// <summary>Every line, question and unread line, in the order typed.</summary>
    public IReadOnlyList<Row> Rows { get; init; } = [];

    /// <summary>Build and yield, as words: "Method" and "Shaken, 12 s".</summary>
    public IReadOnlyList<BuildWord> Build { get; init; } = [];

    /// <summary>Steps as written.</summary>
    public IReadOnlyList<string> Steps { get; init; } = [];

    /// <summary>What else was typed or assumed about the drink as a whole.</summary>
    public IReadOnlyList<string> Notes { get; init; } = [];

    /// <summary>Figures of everything that stays in the liquid, before any ice melts; null where no line is read.</summary>
    public IReadOnlyList<Figure>? Mixed { get; init; }

    /// <summary>Figures as served; null where they cannot be told.</summary>
    public IReadOnlyList<Figure>? Served { get; init; }

    /// <summary>Why there are no figures as served; empty where there are.</summary>
    public string ServedMissingBecause { get; init; } = "";

    /// <summary>Wash line of the glass, mL; NaN where no glass is named.</summary>
    public double WashLineMillilitres { get; init; } = double.NaN;

    /// <summary>Allergens that are there.</summary>
    public IReadOnlyList<AllergenRow> Present { get; init; } = [];

    /// <summary>Allergens that nobody has looked up yet.</summary>
    public IReadOnlyList<AllergenRow> NotKnown { get; init; } = [];

    /// <summary>What to mind, the rule behind it beside it.</summary>
    public IReadOnlyList<CautionRow> Cautions { get; init; } = [];

    /// <summary>The rows that count.</summary>
    public IEnumerable<ReadRow> Read => Rows.OfType<ReadRow>();

    /// <summary>How many rows do not count yet.</summary>
    public int NotCounted => Rows.Count(row => row is not ReadRow);
}

/// <summary>One row of a typed drink.</summary>
/// <param name="Text">The text as typed, exactly.</param>
public abstract record Row(string Text);

/// <summary>A line that was read.</summary>
/// <param name="Text">The text as typed.</param>
public sealed record ReadRow(string Text) : Row(Text)
{
    /// <summary>The amount in the unit that stands first, e.g. "22.5" under mL, or with its own unit, "0.3 g".</summary>
    public required string Amount { get; init; }

    /// <summary>The same amount otherwise: "¾ fl oz", "4 drops", "leaf".</summary>
    public required string Other { get; init; }

    /// <summary>Name of the ingredient.</summary>
    public required string Ingredient { get; init; }

    /// <summary>What is done to it; empty where nothing was said.</summary>
    public string Treatment { get; init; } = "";

    /// <summary>Where it starts: "fridge", "shelf", "freezer", or empty where only the temperature was said.</summary>
    public string StartsAt { get; init; } = "";

    /// <summary>Temperature at which it starts, e.g. "4°".</summary>
    public string StartsDegrees { get; init; } = "";

    /// <summary>Where it goes, if not into the liquid: "garnish", "rim", "rinse", "beside".</summary>
    public string Place { get; init; } = "";

    /// <summary>When it joins: "mixed", "in the glass", "on top".</summary>
    public string Joins { get; init; } = "";

    /// <summary>What was assumed in reading it.</summary>
    public IReadOnlyList<string> Assumptions { get; init; } = [];

    /// <summary>Its share of each metric, 0 to 1, in the order of the metrics; empty where it is not in the figures.</summary>
    public IReadOnlyList<double> Shares { get; init; } = [];

    /// <summary>Its share of one metric; NaN where that means nothing.</summary>
    public double Share(Metric metric) => Shares.Count == 0 ? double.NaN : Shares[(int)metric];
}

/// <summary>A line that needs an answer.</summary>
/// <param name="Text">The text as typed.</param>
/// <param name="Line">Source line, from 1.</param>
/// <param name="Asks">What is asked.</param>
/// <param name="Answers">Possible answers, likeliest first.</param>
public sealed record AskedRow(string Text, int Line, string Asks, IReadOnlyList<Answer> Answers) : Row(Text);

/// <summary>An answer to a question.</summary>
/// <param name="Label">What the button says.</param>
/// <param name="Wording">What the line says after it was pressed; null where the answer is something the pantry does not have yet.</param>
/// <param name="IsNewLine">The wording comes as a line of its own at the end, instead of in place of the asked one.</param>
public sealed record Answer(string Label, string? Wording, bool IsNewLine = false);

/// <summary>A line that could not be read.</summary>
/// <param name="Text">The text as typed.</param>
/// <param name="Reason">What was not understood and how to write it.</param>
public sealed record UnreadRow(string Text, string Reason) : Row(Text);

/// <summary>One word about the build.</summary>
/// <param name="Name">E.g. "Method".</param>
/// <param name="Words">E.g. "Shaken, 12 s".</param>
public sealed record BuildWord(string Name, string Words);

/// <summary>One computed figure.</summary>
/// <param name="Info">Which metric it is.</param>
/// <param name="Estimate">Value and range.</param>
/// <param name="Caveats">Remarks on its validity.</param>
public sealed record Figure(MetricInfo Info, Estimate Estimate, MetricCaveats Caveats);

/// <summary>An allergen and where it is, or may be.</summary>
/// <param name="Allergen">Which.</param>
/// <param name="In">Names of the ingredients.</param>
public sealed record AllergenRow(Allergen Allergen, IReadOnlyList<string> In);

/// <summary>Something to mind. It speaks up and decides nothing.</summary>
/// <param name="Text">What it is and what to do.</param>
/// <param name="In">Names of the ingredients that cause it; empty where it is the drink as a whole.</param>
/// <param name="Source">The rule behind it.</param>
public sealed record CautionRow(string Text, IReadOnlyList<string> In, string Source);
