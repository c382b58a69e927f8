namespace MenuLab.Core.Drafts.Reading;

/// <summary>What a word of the bar's language does to the clause that it stands in.</summary>
internal enum Sense
{
    /// <summary>No meaning: the default, so that a search that finds nothing is not taken for a unit.</summary>
    Nothing,
    /// <summary>A unit, see <see cref="Meaning.Unit"/>.</summary>
    Unit,
    /// <summary>A method; the key names it.</summary>
    Method,
    /// <summary>An ice.</summary>
    Ice,
    /// <summary>A glass.</summary>
    Glass,
    /// <summary>A strain.</summary>
    Strain,
    /// <summary>Served without ice.</summary>
    Up,
    /// <summary>"No ice".</summary>
    NoIce,
    /// <summary>"Over", "on": the ice that follows is that of the glass.</summary>
    Over,
    /// <summary>"With": what follows goes along.</summary>
    With,
    /// <summary>"And".</summary>
    And,
    /// <summary>"Or".</summary>
    Or,
    /// <summary>Seconds, behind a number.</summary>
    Seconds,
    /// <summary>Minutes or hours, behind a number; belongs to a step.</summary>
    Minutes,
    /// <summary>"Times", behind a number; belongs to a step.</summary>
    Times,
    /// <summary>Degrees Celsius or Fahrenheit, behind a number.</summary>
    Celsius,
    /// <summary>Degrees Fahrenheit.</summary>
    Fahrenheit,
    /// <summary>Garnish.</summary>
    Garnish,
    /// <summary>Rim.</summary>
    Rim,
    /// <summary>"On the rim": a rim for salt, a garnish for a slice.</summary>
    OnTheRim,
    /// <summary>Rinse.</summary>
    Rinse,
    /// <summary>Served beside.</summary>
    Beside,
    /// <summary>Topped up.</summary>
    Top,
    /// <summary>"On top".</summary>
    OnTop,
    /// <summary>Floated.</summary>
    Float,
    /// <summary>"In the glass".</summary>
    InTheGlass,
    /// <summary>What is done to the line's ingredient.</summary>
    Treatment,
    /// <summary>A temperature in words; the figure is °C.</summary>
    Start,
    /// <summary>Says nothing.</summary>
    Filler,
    /// <summary>"Scant".</summary>
    Scant,
    /// <summary>"Fat", "heaped".</summary>
    Fat,
    /// <summary>"About".</summary>
    About,
    /// <summary>"Equal parts".</summary>
    EqualParts,
    /// <summary>"Total".</summary>
    Total,
    /// <summary>"Makes", "yield", "for".</summary>
    Makes,
    /// <summary>"Drinks", behind a number.</summary>
    Drinks,
    /// <summary>A word of the kitchen that makes its clause a step.</summary>
    Step,
    /// <summary>"Not", "was": the build words of the clause are told, not ordered.</summary>
    Told,
    /// <summary>A measure that no house agrees on: "handful", "bottle", "shot".</summary>
    Vague,
    /// <summary>"To taste": an amount that nobody wrote.</summary>
    ToTaste,
    /// <summary>"Juice of", in front of a number of fruit.</summary>
    JuiceOf,
    /// <summary>"x", in front of a number of pieces.</summary>
    Count,
    /// <summary>The label of a build field: "Method:", "Glass:".</summary>
    Label,
}

/// <summary>One meaning of a phrase.</summary>
/// <param name="Sense">What it does.</param>
/// <param name="Key">Key of a method, ice, glass or strain; the word to keep of a treatment.</param>
/// <param name="Unit">The unit.</param>
/// <param name="Figure">°C of a temperature.</param>
internal readonly record struct Meaning(Sense Sense, string Key = "", Unit Unit = Unit.None, double Figure = double.NaN);
