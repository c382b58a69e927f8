using MenuLab.Core.Solutions;

namespace MenuLab.Core.Pantry;

/// <summary>What a remark on a record is about.</summary>
public enum CompositionTopic
{
    /// <summary>The parts do not add up to 100 g.</summary>
    Mass,
    /// <summary>The stated energy does not follow from the parts.</summary>
    Energy,
    /// <summary>The sugars by name do not add up to the total.</summary>
    Sugars,
    /// <summary>The stated density does not follow from the parts.</summary>
    Density,
    /// <summary>The minerals carry more charge than the acids can: an anion is missing.</summary>
    MissingAnion,
    /// <summary>pH and titration contradict each other.</summary>
    Acidity,
}

/// <summary>Something about a record that a person should look at.</summary>
/// <param name="Topic">What it is about.</param>
/// <param name="Stated">The figure as stated, in the unit of the topic (g, kcal, g/mL, mmol per 100 g).</param>
/// <param name="Computed">The figure that follows from the rest of the record.</param>
/// <param name="Text">One sentence.</param>
public sealed record CompositionRemark(CompositionTopic Topic, double Stated, double Computed, string Text);

/// <summary>A composition with the account of how it came about.</summary>
public sealed class BuiltComposition
{
    private readonly string[] _reasons;

    internal BuiltComposition(Composition composition, string[] reasons, IReadOnlyList<CompositionRemark> remarks)
    {
        Composition = composition;
        _reasons = reasons;
        Remarks = remarks;
    }

    /// <summary>The composition.</summary>
    public Composition Composition { get; }

    /// <summary>The figure or rule that a component's amount rests on; empty for one that nobody knows.</summary>
    public string Reason(Component component) => _reasons[(int)component];

    /// <summary>What a person should look at.</summary>
    public IReadOnlyList<CompositionRemark> Remarks { get; }
}
