namespace MenuLab.Core.Pantry;

/// <summary>What the figures of a label are per.</summary>
public enum LabelBasis
{
    /// <summary>Per 100 mL.</summary>
    Per100Millilitres,
    /// <summary>Per 100 g.</summary>
    Per100Grams,
    /// <summary>Per serving of so many mL.</summary>
    PerServingMillilitres,
    /// <summary>Per serving of so many g.</summary>
    PerServingGrams,
}

/// <summary>A figure as printed: "4.8", or "less than 0.5".</summary>
/// <param name="Value">The number printed.</param>
/// <param name="IsLessThan">Printed as "less than".</param>
public readonly record struct LabelFigure(double Value, bool IsLessThan = false)
{
    /// <summary>A number as printed.</summary>
    public static implicit operator LabelFigure(double value) => new(value);

    /// <summary>A number as printed.</summary>
    public static LabelFigure FromDouble(double value) => new(value);
}

/// <summary>A bottle's label as somebody read it; what does not stand on it is null.</summary>
public sealed record PrintedLabel
{
    /// <summary>After so many months a reading of a label is stale unless the house says otherwise.</summary>
    public const int UsualMonths = 12;

    /// <summary>What the figures are per.</summary>
    public required LabelBasis Basis { get; init; }

    /// <summary>Serving, in mL or g as the basis says; only for figures per serving.</summary>
    public double? Serving { get; init; }

    /// <summary>Energy, kJ.</summary>
    public double? Kilojoules { get; init; }

    /// <summary>Energy, kcal.</summary>
    public double? Kilocalories { get; init; }

    /// <summary>Fat, g.</summary>
    public LabelFigure? Fat { get; init; }

    /// <summary>Carbohydrate, g; sugars and polyols are within it.</summary>
    public LabelFigure? Carbohydrate { get; init; }

    /// <summary>Of which sugars, g.</summary>
    public LabelFigure? Sugars { get; init; }

    /// <summary>Of which polyols, g.</summary>
    public LabelFigure? Polyols { get; init; }

    /// <summary>Fibre, g.</summary>
    public LabelFigure? Fibre { get; init; }

    /// <summary>Protein, g.</summary>
    public LabelFigure? Protein { get; init; }

    /// <summary>Salt, g.</summary>
    public LabelFigure? Salt { get; init; }

    /// <summary>Alcohol, % vol; never per serving.</summary>
    public double? AbvPercent { get; init; }

    /// <summary>Most acid that the person who read it thinks possible, g as citric per 100 mL or 100 g; null where nobody says.</summary>
    public double? AcidAtMost { get; init; }

    /// <summary>Allergens picked out of the ingredients list.</summary>
    public AllergenSet Allergens { get; init; }

    /// <summary>A person has compared the allergens with the label; until then each of them is a question.</summary>
    public bool AllergensConfirmed { get; init; }

    /// <summary>Day it was read.</summary>
    public required DateOnly ReadOn { get; init; }

    /// <summary>The reading is older than the house wants.</summary>
    public bool IsStale(DateOnly today, int months = UsualMonths) => ReadOn.AddMonths(months) < today;

    /// <summary>Turns the label into figures for a composition.</summary>
    /// <param name="today">The site's day today.</param>
    /// <returns>Figures per 100 mL or 100 g with remarks, or problems with the field of each.</returns>
    /// <remarks>
    /// Source: energy factors of Regulation (EU) 1169/2011 Annex XIV; salt is sodium times 2.5 (the same, Annex I); figures of at most 0.5 g may be printed as
    /// 0 (EU guidance on tolerances, 2012, MEMORY), so 0 is read as 0 to 0.5. What energy the parts leave is taken as acid, bounded by the rounding of
    /// all figures. Valid for: labels that print energy, fat, carbohydrate, sugars, protein. Error: told in the bounds.
    /// </remarks>
    public Result<LabelReading> Read(DateOnly today) => new LabelReader(this).Read(today);
}

/// <summary>Something on a label that a person should look at.</summary>
/// <param name="Field">Field of <see cref="PrintedLabel"/>.</param>
/// <param name="Text">One sentence.</param>
public sealed record LabelRemark(string Field, string Text);

/// <summary>What a label says, as figures.</summary>
/// <param name="Basis">"100 g" or "100 mL".</param>
/// <param name="Figures">Figures of origin "house" with what is bounded as bounds.</param>
/// <param name="Allergens">Allergens: present where confirmed, else questions.</param>
/// <param name="Remarks">What does not fit.</param>
public sealed record LabelReading(string Basis, IReadOnlyList<IngredientFigure> Figures, AllergenSet Allergens, IReadOnlyList<LabelRemark> Remarks)
{
    /// <summary>The composition of the label.</summary>
    /// <param name="kind">Sort of ingredient, for what the label does not say.</param>
    /// <returns>As <see cref="CompositionBuilder.Build"/> gives it.</returns>
    public BuiltComposition Compose(IngredientKind kind) => CompositionBuilder.Build(kind, Basis, Figures, Allergens);
}
