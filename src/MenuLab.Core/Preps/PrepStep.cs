namespace MenuLab.Core.Preps;

/// <summary>One step of a prep. The set is closed: what the bar does to a pot, and nothing else.</summary>
public abstract record PrepStep
{
    private protected PrepStep()
    {
    }

    /// <summary>What the pot's contents weighed after the step, g; null where nobody weighed. A weight outranks every estimate.</summary>
    public double? WeighedGrams { get; init; }

    /// <summary>A remark for whoever makes it.</summary>
    public string Remark { get; init; } = "";

    /// <summary>The word for the step.</summary>
    public abstract string Word { get; }
}

/// <summary>A step that puts lines of the recipe into the pot.</summary>
/// <param name="Lines">Places of the lines in the recipe, from 0.</param>
public abstract record AddingStep(IReadOnlyList<int> Lines) : PrepStep;

/// <summary>Puts things together.</summary>
/// <param name="Lines">Places of the lines in the recipe, from 0.</param>
public sealed record Combine(IReadOnlyList<int> Lines) : AddingStep(Lines)
{
    /// <inheritdoc/>
    public override string Word => "combine";
}

/// <summary>Stirs in what dissolves: sugar, salt, gum.</summary>
/// <param name="Lines">Places of the lines in the recipe, from 0.</param>
public sealed record Dissolve(IReadOnlyList<int> Lines) : AddingStep(Lines)
{
    /// <inheritdoc/>
    public override string Word => "dissolve";
}

/// <summary>Thins with water or another liquid.</summary>
/// <param name="Lines">Places of the lines in the recipe, from 0.</param>
public sealed record Dilute(IReadOnlyList<int> Lines) : AddingStep(Lines)
{
    /// <inheritdoc/>
    public override string Word => "dilute";
}

/// <summary>Makes sour, with acid powder or a sour liquid.</summary>
/// <param name="Lines">Places of the lines in the recipe, from 0.</param>
public sealed record Acidify(IReadOnlyList<int> Lines) : AddingStep(Lines)
{
    /// <inheritdoc/>
    public override string Word => "acidify";
}

/// <summary>Roasts dry solids before any liquid joins. How much water goes is asked for.</summary>
/// <param name="Minutes">Time, min.</param>
/// <param name="Celsius">Oven or pan, °C; null for a pan over a flame.</param>
public sealed record Toast(double Minutes, double? Celsius = null) : PrepStep
{
    /// <inheritdoc/>
    public override string Word => "toast";
}

/// <summary>What heats a pan.</summary>
public enum Hob
{
    /// <summary>Gas flame.</summary>
    Gas,
    /// <summary>Electric plate.</summary>
    Electric,
    /// <summary>Induction.</summary>
    Induction,
}

/// <summary>Heats or simmers. Of rate, power and pan, the first that is given decides what evaporates; without any it is asked for.</summary>
/// <param name="Minutes">Time from when it boils or simmers, min.</param>
public sealed record Heat(double Minutes) : PrepStep
{
    /// <summary>Temperature of the liquid, °C; for what the solids give.</summary>
    public double Celsius { get; init; } = 100;

    /// <summary>The house's own rate, g/min.</summary>
    public double? GramsPerMinute { get; init; }

    /// <summary>Power of the burner at a rolling boil, W.</summary>
    public double? Watts { get; init; }

    /// <summary>What heats the pan; asked with the power.</summary>
    public Hob Hob { get; init; }

    /// <summary>Inner width of the pan at a simmer below the boil, cm.</summary>
    public double? PanCentimetres { get; init; }

    /// <summary>The lid is on.</summary>
    public bool Lid { get; init; }

    /// <inheritdoc/>
    public override string Word => "heat";
}

/// <summary>How a steep ends.</summary>
public enum SteepStop
{
    /// <summary>The solids come out.</summary>
    Straining,
    /// <summary>The pot is cooled with the solids in it.</summary>
    Cooling,
}

/// <summary>How finely tea leaf is cut.</summary>
public enum LeafCut
{
    /// <summary>Whole or coarse leaf.</summary>
    Coarse,
    /// <summary>Fine granules and dust.</summary>
    Fine,
}

/// <summary>Leaves solids in the liquid, hot or cold.</summary>
/// <param name="Minutes">Time, min.</param>
/// <param name="Celsius">Temperature of the liquid, °C.</param>
/// <param name="Stop">How it ends.</param>
/// <param name="Cut">How tea leaf is cut.</param>
/// <param name="InBag">Tea is in a bag, where the leaf cannot swell freely.</param>
public sealed record Steep(double Minutes, double Celsius, SteepStop Stop = SteepStop.Straining, LeafCut Cut = LeafCut.Coarse, bool InBag = false) : PrepStep
{
    /// <inheritdoc/>
    public override string Word => "steep";
}

/// <summary>Stands, covered, and cools; fruit goes on giving its juice.</summary>
/// <param name="Hours">Time, h.</param>
/// <param name="Celsius">Where it stands, °C.</param>
public sealed record Rest(double Hours, double Celsius = 20) : PrepStep
{
    /// <inheritdoc/>
    public override string Word => "rest";
}

/// <summary>Blends the solids into the liquid.</summary>
/// <param name="Minutes">Time, min.</param>
public sealed record Blend(double Minutes) : PrepStep
{
    /// <inheritdoc/>
    public override string Word => "blend";
}

/// <summary>Juices or presses the solids; what stays in the press is out.</summary>
/// <param name="Yield">Juice as a share of the mass of the solids, above 0 to 1; null where it is asked for.</param>
public sealed record Press(double? Yield = null) : PrepStep
{
    /// <inheritdoc/>
    public override string Word => "press";
}

/// <summary>How fine a strainer is.</summary>
public enum StrainerMesh
{
    /// <summary>Coarse sieve.</summary>
    Coarse,
    /// <summary>Fine sieve or cloth.</summary>
    Fine,
    /// <summary>Paper or felt.</summary>
    Filter,
}

/// <summary>Takes the solids out, with the liquid that they keep.</summary>
/// <param name="Mesh">How fine.</param>
/// <param name="Pressed">The solids are pressed out; fruit that only drips is asked for its weight.</param>
public sealed record Strain(StrainerMesh Mesh = StrainerMesh.Fine, bool Pressed = true) : PrepStep
{
    /// <inheritdoc/>
    public override string Word => "strain";
}

/// <summary>What clears a liquid.</summary>
public enum ClarifiedBy
{
    /// <summary>An agar gel that is broken and drained.</summary>
    Agar,
    /// <summary>Milk that curdles and takes pulp and tannin along.</summary>
    Milk,
}

/// <summary>Clears the liquid. What is left is asked for.</summary>
/// <param name="By">With what; agar and milk themselves are lines of the recipe.</param>
public sealed record Clarify(ClarifiedBy By) : PrepStep
{
    /// <inheritdoc/>
    public override string Word => "clarify";
}

/// <summary>What a reduction is stopped by.</summary>
public enum ReduceTo
{
    /// <summary>Volume at 20 °C, mL.</summary>
    Millilitres,
    /// <summary>Mass, g.</summary>
    Grams,
    /// <summary>Refractometer, Brix at 20 °C.</summary>
    Brix,
}

/// <summary>Boils down to a target.</summary>
/// <param name="To">What is measured.</param>
/// <param name="Target">The target in that unit.</param>
public sealed record Reduce(ReduceTo To, double Target) : PrepStep
{
    /// <inheritdoc/>
    public override string Word => "reduce";
}

/// <summary>Charges with carbon dioxide: volumes, or a pressure and a temperature.</summary>
/// <param name="Volumes">Volumes of gas per volume of liquid that are in it afterwards.</param>
/// <param name="GaugeBar">Pressure above the atmosphere, bar.</param>
/// <param name="Celsius">Temperature under that pressure, °C.</param>
public sealed record Carbonate(double? Volumes = null, double? GaugeBar = null, double? Celsius = null) : PrepStep
{
    /// <inheritdoc/>
    public override string Word => "carbonate";
}

/// <summary>Cools.</summary>
/// <param name="Celsius">To, °C.</param>
public sealed record Chill(double Celsius) : PrepStep
{
    /// <inheritdoc/>
    public override string Word => "chill";
}

/// <summary>Lets yeast or bacteria work. What they make is asked for.</summary>
/// <param name="Days">Time, days.</param>
/// <param name="Celsius">Temperature, °C.</param>
public sealed record Ferment(double Days, double Celsius) : PrepStep
{
    /// <inheritdoc/>
    public override string Word => "ferment";
}
