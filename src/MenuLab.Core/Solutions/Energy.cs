namespace MenuLab.Core.Solutions;

/// <summary>Energy of a unit of each component by the factors of the law.</summary>
/// <remarks>Sum kilojoules and kilocalories separately and round at the end; the two are not a constant apart.</remarks>
public static class Energy
{
    /// <summary>EU energy, kJ per unit of a component (g; mol for acids).</summary>
    /// <param name="component">Any component; 0 where the law gives none (water, salt, other solids, traces).</param>
    /// <returns>kJ per unit.</returns>
    /// <remarks>
    /// Source: Regulation (EU) 1169/2011 Annex XIV: carbohydrate 17, polyols 10 (glycerol among them), erythritol 0, protein 17, fat 37,
    /// alcohol 29, organic acids 13, fibre 8 kJ/g. Our reading: oxalic is an organic acid, phosphoric and carbonic are not and count 0.
    /// Valid for: labels. Error: none in the factor; 2 to 5 % from compositions.
    /// </remarks>
    public static double KilojoulesEu(Component component) => PerUnit(component, carbohydrate: 17, polyol: 10, protein: 17, fat: 37, alcohol: 29, acid: 13, fibre: 8);

    /// <summary>EU energy, kcal per unit of a component (g; mol for acids).</summary>
    /// <param name="component">Any component; 0 where the law gives none.</param>
    /// <returns>kcal per unit.</returns>
    /// <remarks>
    /// Source: Regulation (EU) 1169/2011 Annex XIV: carbohydrate 4, polyols 2.4, erythritol 0, protein 4, fat 9, alcohol 7, organic
    /// acids 3, fibre 2 kcal/g; reading, range and error as in <see cref="KilojoulesEu"/>.
    /// </remarks>
    public static double KilocaloriesEu(Component component) => PerUnit(component, carbohydrate: 4, polyol: 2.4, protein: 4, fat: 9, alcohol: 7, acid: 3, fibre: 2);

    /// <summary>US energy, kcal per unit of a component (g; mol for acids).</summary>
    /// <param name="component">Any component; 0 where the rule gives none.</param>
    /// <returns>kcal per unit.</returns>
    /// <remarks>
    /// Source: 21 CFR 101.9(c)(1), MEMORY: 4-4-9, alcohol 7, organic acids as carbohydrate 4, fibre 2 (soluble; insoluble would be 0).
    /// Polyols by kind (secondary list): sorbitol 2.6, mannitol 1.6, xylitol 2.4, erythritol 0, others 2.1 (maltitol; isomalt and lactitol
    /// 2.0). Glycerol is not in that list and counts as carbohydrate, 4. Valid for: labels. Error: 2 to 5 % from compositions.
    /// </remarks>
    public static double KilocaloriesUs(Component component) => component switch
    {
        Component.Glycerol => 4,
        Component.Sorbitol => 2.6,
        Component.Mannitol => 1.6,
        Component.Xylitol => 2.4,
        Component.OtherPolyol => 2.1,
        _ => PerUnit(component, carbohydrate: 4, polyol: 0, protein: 4, fat: 9, alcohol: 7, acid: 4, fibre: 2),
    };

    private static double PerUnit(
        Component component, double carbohydrate, double polyol, double protein, double fat, double alcohol, double acid, double fibre) =>
        component switch
        {
            Component.Ethanol => alcohol,
            Component.Erythritol => 0,
            Component.OtherCarbohydrate => carbohydrate,
            Component.Protein => protein,
            Component.Fat => fat,
            Component.Fibre => fibre,
            Component.Phosphoric or Component.Carbonic => 0,
            _ when LinearForms.IsSugar(component) => carbohydrate,
            _ when LinearForms.IsPolyol(component) => polyol,
            _ when component.IsAcid() => acid * Components.GramsPerUnit(component),
            _ => 0,
        };
}
