using MenuLab.Core.Solutions;

namespace MenuLab.Core.Balance;

/// <summary>How a metric follows from a linear form of the mixed state.</summary>
internal enum FormulaKind
{
    /// <summary>Factor times the form.</summary>
    Total,
    /// <summary>Factor times the form per mL of the drink.</summary>
    PerMillilitre,
    /// <summary>Factor times the form per g of the drink.</summary>
    PerGram,
    /// <summary>Not of this shape; the engine works it out by itself.</summary>
    OfItsOwn,
}

/// <summary>
/// The shape of each metric. Nearly all are a weighted sum of the state, as it is or per volume or mass; for these the
/// derivative is as plain as the figure, which is what makes ranges cheap.
/// </summary>
internal readonly record struct Formula(FormulaKind Kind, LinearForm Form, double Factor)
{
    /// <summary>g of anhydrous citric acid per equivalent (docs/science.md, section 4: 192.124 / 3).</summary>
    public const double CitricGramsPerEquivalent = 192.124 / 3;

    private static readonly Formula OfItsOwn = new(FormulaKind.OfItsOwn, LinearForm.Grams, 0);

    /// <summary>One formula per metric, in the order of the enum.</summary>
    public static readonly Formula[] All = Make();

    private static Formula[] Make()
    {
        var all = new Formula[Metrics.Count];
        Array.Fill(all, OfItsOwn);

        all[(int)Metric.Mass] = new(FormulaKind.Total, LinearForm.Grams, 1);
        all[(int)Metric.Alcohol] = new(FormulaKind.Total, LinearForm.EthanolMillilitres, EthanolDensity.PureAt20 / 1000);
        all[(int)Metric.EnergyKilojoules] = new(FormulaKind.Total, LinearForm.KilojoulesEu, 1);
        all[(int)Metric.EnergyKilocalories] = new(FormulaKind.Total, LinearForm.KilocaloriesEu, 1);
        all[(int)Metric.EnergyKilocaloriesUs] = new(FormulaKind.Total, LinearForm.KilocaloriesUs, 1);
        all[(int)Metric.Caffeine] = new(FormulaKind.Total, LinearForm.CaffeineMilligrams, 1);

        all[(int)Metric.Brix] = new(FormulaKind.PerGram, LinearForm.SolubleSolidsGrams, 100);
        all[(int)Metric.Quinine] = new(FormulaKind.PerGram, LinearForm.QuinineMilligrams, 1000);

        all[(int)Metric.Abv] = new(FormulaKind.PerMillilitre, LinearForm.EthanolMillilitres, 100);
        all[(int)Metric.Sugar] = new(FormulaKind.PerMillilitre, LinearForm.SugarGrams, 100);
        all[(int)Metric.Sweetness] = new(FormulaKind.PerMillilitre, LinearForm.SweetnessGrams, 100);
        all[(int)Metric.Acid] = new(FormulaKind.PerMillilitre, LinearForm.AcidEquivalents, 100 * CitricGramsPerEquivalent);
        all[(int)Metric.Salt] = new(FormulaKind.PerMillilitre, LinearForm.SaltGrams, 100);
        all[(int)Metric.Polyol] = new(FormulaKind.PerMillilitre, LinearForm.PolyolGrams, 100);
        all[(int)Metric.Sucrose] = new(FormulaKind.PerMillilitre, LinearForm.SucroseGrams, 100);
        all[(int)Metric.Glucose] = new(FormulaKind.PerMillilitre, LinearForm.GlucoseGrams, 100);
        all[(int)Metric.Fructose] = new(FormulaKind.PerMillilitre, LinearForm.FructoseGrams, 100);
        all[(int)Metric.Galactose] = new(FormulaKind.PerMillilitre, LinearForm.GalactoseGrams, 100);
        all[(int)Metric.Lactose] = new(FormulaKind.PerMillilitre, LinearForm.LactoseGrams, 100);
        all[(int)Metric.Maltose] = new(FormulaKind.PerMillilitre, LinearForm.MaltoseGrams, 100);
        all[(int)Metric.SugarNotToldApart] = new(FormulaKind.PerMillilitre, LinearForm.SugarNotToldApartGrams, 100);
        all[(int)Metric.Citric] = new(FormulaKind.PerMillilitre, LinearForm.CitricGrams, 100);
        all[(int)Metric.Malic] = new(FormulaKind.PerMillilitre, LinearForm.MalicGrams, 100);
        all[(int)Metric.Tartaric] = new(FormulaKind.PerMillilitre, LinearForm.TartaricGrams, 100);
        all[(int)Metric.Acetic] = new(FormulaKind.PerMillilitre, LinearForm.AceticGrams, 100);
        all[(int)Metric.Lactic] = new(FormulaKind.PerMillilitre, LinearForm.LacticGrams, 100);
        all[(int)Metric.OtherAcid] = new(FormulaKind.PerMillilitre, LinearForm.OtherAcidGrams, 100);
        return all;
    }
}
