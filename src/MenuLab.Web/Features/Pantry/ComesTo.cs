using MenuLab.Core.Balance;
using MenuLab.Core.Drafts;
using MenuLab.Core.Pantry;
using MenuLab.Core.Quantities;
using MenuLab.Core.Safety;
using MenuLab.Core.Solutions;

namespace MenuLab.Web.Features.Pantry;

/// <summary>What the figures of an ingredient come to: 100 mL of it as a drink of one line, by the same engine as every drink.</summary>
public sealed class ComesTo
{
    private static readonly BuildModel Nothing = new(null, null, null, null);

    private readonly DrinkBalance _balance;

    private ComesTo(IngredientKind kind, Composition composition, DrinkBalance balance, IReadOnlyList<Caution> cautions)
    {
        _balance = balance;
        Composition = composition;
        Cautions = cautions;
        IsDry = kind is IngredientKind.HerbOrSpice or IngredientKind.Produce or IngredientKind.NutOrSeed or IngredientKind.AcidSaltOrGum
            || composition.PerGram[(int)Component.Water] + composition.PerGram[(int)Component.Ethanol] < DryBelow;
    }

    // Honey has 17 % water and pours; sugar has none.
    private const double DryBelow = 0.1;

    /// <summary>The composition.</summary>
    public Composition Composition { get; }

    /// <summary>It is not a liquid: figures per 100 mL, pH and strength say nothing of it.</summary>
    public bool IsDry { get; }

    /// <summary>What a person must look at.</summary>
    public IReadOnlyList<Caution> Cautions { get; }

    /// <summary>A metric of 100 mL of it.</summary>
    public Estimate this[Metric metric] => _balance.Mixed[metric];

    /// <summary>A metric per 100 mL, or, of what is dry, per 100 g.</summary>
    public Estimate Per100(Metric metric)
    {
        var found = this[metric];
        var grams = Composition.GramsPerMillilitre;
        return IsDry ? found with { Value = found.Value / grams, Low = found.Low / grams, High = found.High / grams, Unit = "g/100 g" } : found;
    }

    /// <summary>Works it out.</summary>
    public static ComesTo Of(IngredientId id, IngredientKind kind, Composition composition)
    {
        WeighedLine[] lines = [new(id, composition, 100 * composition.GramsPerMillilitre, 0, Joins.Mixed, Place.In, 20, false)];
        var balance = BalanceEngine.Of(lines, Nothing, Detail.Ranges);
        return new ComesTo(kind, composition, balance, Core.Safety.Cautions.Of(lines, balance));
    }
}
