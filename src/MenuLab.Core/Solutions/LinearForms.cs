namespace MenuLab.Core.Solutions;

/// <summary>The figures of a liquid that are weighted sums of its parts, each in the unit of its name.</summary>
public enum LinearForm
{
    /// <summary>Mass, g.</summary>
    Grams,
    /// <summary>Pure ethanol at 20 °C, mL.</summary>
    EthanolMillilitres,
    /// <summary>All sugars, told apart or not, g; polyols are not among them.</summary>
    SugarGrams,
    /// <summary>Sweetness as grams of sucrose, by the default factors of <see cref="Sweetness"/>.</summary>
    SweetnessGrams,
    /// <summary>Soluble solids, g: sugars, polyols, other carbohydrate, acids but acetic and carbonic, salt and other solids.</summary>
    SolubleSolidsGrams,
    /// <summary>Titratable acidity, mol of H+ to pH 8.1: acids at their charge there minus the strong-ion difference.</summary>
    AcidEquivalents,
    /// <summary>Energy by the EU factors, kJ.</summary>
    KilojoulesEu,
    /// <summary>Energy by the EU factors, kcal.</summary>
    KilocaloriesEu,
    /// <summary>Energy by the US factors, kcal.</summary>
    KilocaloriesUs,
    /// <summary>Caffeine, mg.</summary>
    CaffeineMilligrams,
    /// <summary>Quinine as base, mg.</summary>
    QuinineMilligrams,
    /// <summary>Table salt, g.</summary>
    SaltGrams,
    /// <summary>Polyols, g.</summary>
    PolyolGrams,
    /// <summary>Sucrose, g.</summary>
    SucroseGrams,
    /// <summary>Glucose, g.</summary>
    GlucoseGrams,
    /// <summary>Fructose, g.</summary>
    FructoseGrams,
    /// <summary>Galactose, g.</summary>
    GalactoseGrams,
    /// <summary>Lactose, g.</summary>
    LactoseGrams,
    /// <summary>Maltose, g.</summary>
    MaltoseGrams,
    /// <summary>Sugars not told apart, g.</summary>
    SugarNotToldApartGrams,
    /// <summary>Citric acid, anhydrous, g.</summary>
    CitricGrams,
    /// <summary>Malic acid, g.</summary>
    MalicGrams,
    /// <summary>Tartaric acid, g.</summary>
    TartaricGrams,
    /// <summary>Acetic acid, g.</summary>
    AceticGrams,
    /// <summary>Lactic acid, g.</summary>
    LacticGrams,
    /// <summary>Ascorbic, succinic, phosphoric, quinic and oxalic acid, g; carbonic is not among them.</summary>
    OtherAcidGrams,
}

/// <summary>Everything about a liquid that is a weighted sum of its parts.</summary>
public static class LinearForms
{
    /// <summary>How many linear forms there are.</summary>
    public const int Count = (int)LinearForm.OtherAcidGrams + 1;

    // The weights that are not zero, component after component: those of component c stand from Start[c] to Start[c + 1].
    // A drink holds some 12 of the 38 components and each feeds about 5 of the 26 forms, so this is ten times less work than the full table.
    private static readonly int[] Start = new int[Components.Count + 1];
    private static readonly int[] Form;
    private static readonly double[] Weights;

    static LinearForms()
    {
        var forms = new List<int>();
        var weights = new List<double>();
        for (var c = 0; c < Components.Count; c++)
        {
            for (var f = 0; f < Count; f++)
            {
                var weight = Weight((LinearForm)f, (Component)c);
                if (weight != 0)
                {
                    forms.Add(f);
                    weights.Add(weight);
                }
            }
            Start[c + 1] = forms.Count;
        }
        Form = [.. forms];
        Weights = [.. weights];
    }

    /// <summary>What one unit of a component adds to a linear form.</summary>
    /// <param name="form">The form.</param>
    /// <param name="component">The component, counted in its own unit.</param>
    /// <returns>Unit of the form per unit of the component.</returns>
    /// <remarks>
    /// Source: molar masses of <see cref="Components"/>, ethanol density of OIML R 22, factors of <see cref="Sweetness"/> and
    /// <see cref="Energy"/>, charges of <see cref="AcidBase.ChargeAtEndPoint"/>. Valid for: all components. Error: that of these figures;
    /// the acid equivalents leave out the H+ and OH- of water itself (1.3e-6 mol/L, 0.000008 g/100 mL as citric) and activities.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">No such form.</exception>
    public static double Weight(LinearForm form, Component component)
    {
        var grams = Components.GramsPerUnit(component);
        return form switch
        {
            LinearForm.Grams => grams,
            LinearForm.EthanolMillilitres => component == Component.Ethanol ? 1000 / EthanolDensity.PureAt20 : 0,
            LinearForm.SugarGrams => IsSugar(component) ? grams : 0,
            LinearForm.SweetnessGrams => Sweetness.Factor(component).Default,
            LinearForm.SolubleSolidsGrams => IsSolubleSolid(component) ? grams : 0,
            LinearForm.AcidEquivalents => component == Component.Charge ? -1
                : component.IsAcid() ? AcidBase.ChargeAtEndPoint[component - Components.FirstAcid]
                : 0,
            LinearForm.KilojoulesEu => Energy.KilojoulesEu(component),
            LinearForm.KilocaloriesEu => Energy.KilocaloriesEu(component),
            LinearForm.KilocaloriesUs => Energy.KilocaloriesUs(component),
            LinearForm.CaffeineMilligrams => component == Component.Caffeine ? 1 : 0,
            LinearForm.QuinineMilligrams => component == Component.Quinine ? 1 : 0,
            LinearForm.SaltGrams => Only(Component.Salt),
            LinearForm.PolyolGrams => IsPolyol(component) ? grams : 0,
            LinearForm.SucroseGrams => Only(Component.Sucrose),
            LinearForm.GlucoseGrams => Only(Component.Glucose),
            LinearForm.FructoseGrams => Only(Component.Fructose),
            LinearForm.GalactoseGrams => Only(Component.Galactose),
            LinearForm.LactoseGrams => Only(Component.Lactose),
            LinearForm.MaltoseGrams => Only(Component.Maltose),
            LinearForm.SugarNotToldApartGrams => Only(Component.SugarNotToldApart),
            LinearForm.CitricGrams => Only(Component.Citric),
            LinearForm.MalicGrams => Only(Component.Malic),
            LinearForm.TartaricGrams => Only(Component.Tartaric),
            LinearForm.AceticGrams => Only(Component.Acetic),
            LinearForm.LacticGrams => Only(Component.Lactic),
            LinearForm.OtherAcidGrams => component is >= Component.Ascorbic and <= Component.Oxalic ? grams : 0,
            _ => throw new ArgumentOutOfRangeException(nameof(form), form, "No such linear form."),
        };

        double Only(Component one) => component == one ? grams : 0;
    }

    /// <summary>All linear forms of a mixing state.</summary>
    /// <param name="parts">The state, <see cref="Components.Count"/> numbers.</param>
    /// <param name="forms">Receives <see cref="Count"/> numbers, each in the unit of its form.</param>
    /// <remarks>Source, range and error: those of <see cref="Weight"/>; parts may be negative (a difference of two states).</remarks>
    /// <exception cref="ArgumentException">A span has another length.</exception>
    public static void Of(ReadOnlySpan<double> parts, Span<double> forms)
    {
        if (parts.Length != Components.Count)
        {
            throw new ArgumentException($"A liquid has {Components.Count} parts.", nameof(parts));
        }
        if (forms.Length != Count)
        {
            throw new ArgumentException($"There are {Count} linear forms.", nameof(forms));
        }
        forms.Clear();
        for (var c = 0; c < parts.Length; c++)
        {
            var part = parts[c];
            if (part == 0)
            {
                continue;
            }
            for (var w = Start[c]; w < Start[c + 1]; w++)
            {
                forms[Form[w]] += part * Weights[w];
            }
        }
    }

    internal static bool IsSugar(Component component) => component is >= Component.Sucrose and <= Component.SugarNotToldApart;

    internal static bool IsPolyol(Component component) => component is >= Component.Glycerol and <= Component.OtherPolyol;

    // Acetic acid and carbon dioxide leave on drying; fat, protein and fibre are not in solution.
    internal static bool IsSolubleSolid(Component component) =>
        IsSugar(component) || IsPolyol(component)
        || (component.IsAcid() && component is not (Component.Acetic or Component.Carbonic))
        || component is Component.OtherCarbohydrate or Component.Salt or Component.OtherSolids;
}
