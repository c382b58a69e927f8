namespace MenuLab.Core.Solutions;

/// <summary>Volume of a liquid from what is in it: additive apparent volumes.</summary>
/// <remarks>
/// Ethanol and water take the volume of their own mixture, sucrose (and sugars not told apart, as sucrose) what they add
/// to the water at that sugar : water ratio, everything else a constant volume per gram. Traces and charge take none.
/// </remarks>
public static class Density
{
    private static readonly double[] MillilitresPerUnit = MakeMillilitresPerUnit();

    /// <summary>Volume of a liquid at 20 °C.</summary>
    /// <param name="liquid">The mixing state.</param>
    /// <returns>mL, the volume residual included; 0 for an empty liquid.</returns>
    /// <remarks>
    /// Source: OIML R 22 for ethanol and water, ICUMSA SPS-4 for sucrose, constants of <see cref="ApparentMillilitresPerUnit"/> for the rest.
    /// Valid for: any composition without negative parts; dry sugar is extrapolated (1.55 g/mL). Error: 0.15 % (k = 1) for sugar with
    /// ethanol (0.03 % at worst against the Tabarie relation of OIV-MA-AS2-03B), 0.5 % where much else is dissolved.
    /// </remarks>
    public static double Millilitres(Liquid liquid)
    {
        var parts = liquid.Parts;
        var constants = MillilitresPerUnit;
        var sum = 0.0;
        for (var i = (int)Component.Glucose; i < Components.Count; i++)
        {
            sum += parts[i] * constants[i];
        }
        // These two are not constant; the table holds zero for the second.
        var water = liquid[Component.Water];
        var solvent = water + liquid[Component.Ethanol];
        if (solvent != 0)
        {
            sum += 1000 * solvent / EthanolDensity.At20(liquid[Component.Ethanol] / solvent, out _);
        }
        var sugar = liquid[Component.Sucrose] + liquid[Component.SugarNotToldApart];
        if (sugar != 0)
        {
            var syrup = sugar + water;
            sum += 1000 * (syrup / SucroseDensity.At20(sugar / syrup, out _) - water / SucroseDensity.WaterAt20);
        }
        return sum;
    }

    /// <summary>Volume of a liquid at 20 °C and how it answers to each part.</summary>
    /// <param name="liquid">The mixing state.</param>
    /// <param name="partial">Receives mL per unit of each component (<see cref="Components.Count"/> numbers).</param>
    /// <returns>mL, as <see cref="Millilitres(Liquid)"/> gives it.</returns>
    /// <remarks>
    /// Source: derivatives of the same formulas, by hand. Valid for: as the volume; where there is neither water nor ethanol the
    /// partial volumes of these two are those of the pure liquids. Error: of the derivative none, of the model as the volume's.
    /// </remarks>
    /// <exception cref="ArgumentException">The span has another length.</exception>
    public static double Millilitres(Liquid liquid, Span<double> partial)
    {
        if (partial.Length != Components.Count)
        {
            throw new ArgumentException($"A liquid has {Components.Count} parts.", nameof(partial));
        }
        MillilitresPerUnit.CopyTo(partial);

        var water = liquid[Component.Water];
        var solvent = water + liquid[Component.Ethanol];
        if (solvent != 0)
        {
            var strength = liquid[Component.Ethanol] / solvent;
            var density = EthanolDensity.At20(strength, out var slope);
            partial[(int)Component.Water] = 1000 / density * (1 + slope * strength / density);
            partial[(int)Component.Ethanol] = 1000 / density * (1 - slope * (1 - strength) / density);
        }
        else
        {
            partial[(int)Component.Water] = 1000 / EthanolDensity.At20(0, out _);
            partial[(int)Component.Ethanol] = 1000 / EthanolDensity.PureAt20;
        }

        var sugar = liquid[Component.Sucrose] + liquid[Component.SugarNotToldApart];
        var syrup = sugar + water;
        // With neither sugar nor water the sugar is on its own.
        var fraction = syrup != 0 ? sugar / syrup : 1;
        var syrupDensity = SucroseDensity.At20(fraction, out var syrupSlope);
        var ofSugar = 1000 / syrupDensity * (1 - syrupSlope * (1 - fraction) / syrupDensity);
        partial[(int)Component.Sucrose] = ofSugar;
        partial[(int)Component.SugarNotToldApart] = ofSugar;
        if (sugar != 0)
        {
            partial[(int)Component.Water] +=
                1000 / syrupDensity * (1 + syrupSlope * fraction / syrupDensity) - 1000 / SucroseDensity.WaterAt20;
        }
        return Millilitres(liquid);
    }

    /// <summary>The constant volume that a unit of a component takes in solution at 20 °C.</summary>
    /// <param name="component">Any component but water, ethanol, sucrose and sugars not told apart, whose volume is not constant (0).</param>
    /// <returns>mL per unit of the component (g; mol for acids; 1 for the residual; 0 for charge and traces).</returns>
    /// <remarks>
    /// Source: polyols from partial molar volumes at infinite dilution (xylitol, erythritol, sorbitol, mannitol, glycerol); the rest
    /// MEMORY: glucose, maltose 0.62, fructose, galactose, lactose 0.61, other polyols 0.64, dextrins, fibre and gums 0.62, most acids 0.60,
    /// acetic 0.87, lactic 0.80 (from an 88 % solution of 1.206 g/mL), phosphoric 0.52 (from an 85 % solution of 1.685 g/mL),
    /// succinic 0.70, oxalic 0.55, dissolved CO2 0.75 (33 mL/mol), protein 0.73, fat 1.08, table salt 0.33, other solids 0.60 mL/g.
    /// Valid for: drinks; concentrated acids and brines up to 5 % off. Error: 0.02 mL/g for sugars, 0.05 mL/g otherwise.
    /// </remarks>
    public static double ApparentMillilitresPerUnit(Component component) => MillilitresPerUnit[(int)component];

    private static double[] MakeMillilitresPerUnit()
    {
        var volume = new double[Components.Count];
        Set(Component.Glucose, 0.62);
        Set(Component.Fructose, 0.61);
        Set(Component.Galactose, 0.61);
        Set(Component.Lactose, 0.61);
        Set(Component.Maltose, 0.62);
        Set(Component.Glycerol, 0.769);
        Set(Component.Sorbitol, 0.652);
        Set(Component.Mannitol, 0.654);
        Set(Component.Xylitol, 0.671);
        Set(Component.Erythritol, 0.711);
        Set(Component.OtherPolyol, 0.64);
        Set(Component.OtherCarbohydrate, 0.62);
        Set(Component.Citric, 0.60);
        Set(Component.Malic, 0.60);
        Set(Component.Tartaric, 0.60);
        Set(Component.Acetic, 0.87);
        Set(Component.Lactic, 0.80);
        Set(Component.Ascorbic, 0.60);
        Set(Component.Succinic, 0.70);
        Set(Component.Phosphoric, 0.52);
        Set(Component.Quinic, 0.60);
        Set(Component.Oxalic, 0.55);
        Set(Component.Carbonic, 0.75);
        Set(Component.Protein, 0.73);
        Set(Component.Fat, 1.08);
        Set(Component.Fibre, 0.62);
        Set(Component.Salt, 0.33);
        Set(Component.OtherSolids, 0.60);
        volume[(int)Component.Residual] = 1;
        return volume;

        void Set(Component component, double millilitresPerGram) =>
            volume[(int)component] = millilitresPerGram * Components.GramsPerUnit(component);
    }
}
