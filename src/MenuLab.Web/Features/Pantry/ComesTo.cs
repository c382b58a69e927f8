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
    private readonly WeighedLine[] _lines;

    private ComesTo(IngredientKind kind, Composition composition, WeighedLine[] lines, DrinkBalance balance)
    {
        _balance = balance;
        Composition = composition;
        _lines = lines;
        IsDry = kind is IngredientKind.HerbOrSpice or IngredientKind.Produce or IngredientKind.NutOrSeed or IngredientKind.AcidSaltOrGum
            || composition.PerGram[(int)Component.Water] + composition.PerGram[(int)Component.Ethanol] < DryBelow;
    }

    // Honey has 17 % water and pours; sugar has none.
    private const double DryBelow = 0.1;

    /// <summary>The composition.</summary>
    public Composition Composition { get; }

    /// <summary>It is not a liquid: figures per 100 mL, pH and strength say nothing of it.</summary>
    public bool IsDry { get; }

    /// <summary>What a person must look at where 100 mL of it are drunk.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="rules">The site's rules.</param>
    public IReadOnlyList<Caution> Cautions(string name, SiteRules rules) => Core.Safety.Cautions.Of(_lines, _balance, new DrinkWords([name], []), rules);

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
        return new ComesTo(kind, composition, lines, balance);
    }
}
