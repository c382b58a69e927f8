using System.Globalization;
using MenuLab.Core.Solutions;

namespace MenuLab.Core.Pantry;

/// <summary>Asks whether the figures of a record fit each other. It finds faults to look at; it mends none.</summary>
public static class CompositionCheck
{
    /// <summary>The parts may add up to 100 g with so much to spare, g.</summary>
    public const double MassTolerance = 0.5;

    /// <summary>Stated energy may differ from the parts' by so much, relative, and by <see cref="EnergyToleranceKilocalories"/>.</summary>
    public const double EnergyTolerance = 0.15;

    /// <summary>Smaller gaps in energy are rounding, kcal.</summary>
    public const double EnergyToleranceKilocalories = 5;

    /// <summary>Named sugars may differ from the total by so much, relative, and by <see cref="SugarToleranceGrams"/>.</summary>
    public const double SugarTolerance = 0.15;

    /// <summary>Smaller gaps in sugars are rounding, g.</summary>
    public const double SugarToleranceGrams = 0.2;

    /// <summary>Stated density may differ from the model's by so much, relative.</summary>
    public const double DensityTolerance = 0.01;

    /// <summary>What does not fit.</summary>
    /// <param name="basis">What the figures are per: "100 g" or "100 mL".</param>
    /// <param name="figures">The figures of one ingredient.</param>
    /// <param name="composition">The composition made of them; null leaves the density unchecked.</param>
    /// <returns>A remark for each check that fails; a check whose figures are missing is not made.</returns>
    /// <remarks>
    /// Source: mass, energy and sugar checks as for a food table (energy factors 4, 4, 9 kcal/g, fibre 2, organic acids 3, ethanol 7: Regulation
    /// (EU) 1169/2011 Annex XIV); the density check is the gap to the mixing model. Valid for: figures per 100 g (only the density per 100 mL).
    /// Error: tables round their parts and use energy factors of their own, so that a remark is a question, not a verdict.
    /// </remarks>
    /// <exception cref="ArgumentException">An unknown quantity, or a figure that is negative, infinite or outside its own bounds.</exception>
    public static IReadOnlyList<CompositionRemark> Remarks(string basis, IReadOnlyList<IngredientFigure> figures, Composition? composition = null)
    {
        var facts = new FigureTable(figures);
        var remarks = new List<CompositionRemark>();
        if (basis == CompositionBuilder.PerMass)
        {
            Mass(remarks, facts);
            EnergyOf(remarks, facts);
        }
        Sugars(remarks, facts);
        if (composition is not null)
        {
            DensityOf(remarks, facts, composition);
        }
        return remarks;
    }

    private static void Mass(List<CompositionRemark> remarks, FigureTable facts)
    {
        var sum = facts.Value(FigureQuantities.Water) + facts.Value("protein_g") + facts.Value("fat_g") + facts.Value(FigureQuantities.Carbohydrate)
            + facts.Value(FigureQuantities.Ash) + OrNothing(facts, "ethanol_g") + OrNothing(facts, "acetic_g");
        // A sum with a part missing is NaN and makes no remark.
        if (Math.Abs(sum - 100) >= MassTolerance - 1e-9)
        {
            remarks.Add(new CompositionRemark(CompositionTopic.Mass, sum, 100, Say($"The parts add up to {sum:0.00} g, not 100 g.")));
        }
    }

    private static void EnergyOf(List<CompositionRemark> remarks, FigureTable facts)
    {
        var acid = 0.0;
        foreach (var (quantity, component) in FigureQuantities.Acids)
        {
            // Acetic acid is in no table's carbohydrate; vitamin C counts as nothing.
            acid += component is Component.Acetic or Component.Ascorbic ? 0 : OrNothing(facts, quantity);
        }
        var fibre = OrNothing(facts, "fibre_g");
        var rest = Math.Max(0, facts.Value(FigureQuantities.Carbohydrate) - fibre - acid);
        var stated = facts.Value(FigureQuantities.Energy);
        var computed = 4 * (facts.Value("protein_g") + rest) + 9 * facts.Value("fat_g") + 2 * fibre + 3 * (acid + OrNothing(facts, "acetic_g"))
            + 7 * OrNothing(facts, "ethanol_g");
        if (Math.Abs(computed - stated) > Math.Max(EnergyTolerance * stated, EnergyToleranceKilocalories))
        {
            remarks.Add(new CompositionRemark(
                CompositionTopic.Energy, stated, computed, Say($"The record says {stated:0} kcal, its parts come to {computed:0} kcal.")));
        }
    }

    private static void Sugars(List<CompositionRemark> remarks, FigureTable facts)
    {
        var named = 0.0;
        var any = false;
        foreach (var (quantity, _) in FigureQuantities.Sugars)
        {
            if (facts.Find(quantity) is { } sugar)
            {
                named += sugar.Value;
                any = true;
            }
        }
        var total = facts.Value(FigureQuantities.TotalSugars);
        if (any && Math.Abs(named - total) > Math.Max(SugarTolerance * total, SugarToleranceGrams))
        {
            remarks.Add(new CompositionRemark(
                CompositionTopic.Sugars, total, named, Say($"The sugars by name add up to {named:0.00} g, the total says {total:0.00} g.")));
        }
    }

    private static void DensityOf(List<CompositionRemark> remarks, FigureTable facts, Composition composition)
    {
        if (facts.Find(FigureQuantities.Density) is not { } stated)
        {
            return;
        }
        var model = 1 / (1 / stated.Value - composition.PerGram[(int)Component.Residual]);
        if (Math.Abs(stated.Value / model - 1) > DensityTolerance)
        {
            remarks.Add(new CompositionRemark(
                CompositionTopic.Density, stated.Value, model, Say($"The record says {stated.Value:0.000} g/mL, its parts come to {model:0.000} g/mL.")));
        }
    }

    private static double OrNothing(FigureTable facts, string quantity) => facts.Find(quantity)?.Value ?? 0;

    private static string Say(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
