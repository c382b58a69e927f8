using MenuLab.Core.Solutions;

namespace MenuLab.Core.Preps;

/// <summary>What the models of the steps do to a pot; each changes the pot it is given.</summary>
internal static class PotModels
{
    /// <summary>Lets the solids give what the models know of: juice of fruit, caffeine and polyphenols of tea, water of peel in sugar.</summary>
    public static void Infuse(Pot pot, double minutes, double celsius, LeafCut cut, bool inBag, InfusionFigures figures)
    {
        foreach (var solid in pot.Solids)
        {
            switch (solid.Kind)
            {
                case SolidKind.Fruit:
                    GiveJuice(pot, solid, figures.Juice * solid.StartGrams);
                    break;
                case SolidKind.TeaLeaf:
                    GiveTea(pot, solid, minutes, celsius, cut, inBag ? figures.Bag : 1, figures.Extractable);
                    break;
                case SolidKind.CitrusPeel when !solid.Wetted && IsDry(pot):
                    GiveWater(pot, solid, figures.PeelWater * solid.StartGrams);
                    break;
            }
            solid.Wetted = true;
        }
    }

    /// <summary>
    /// Takes water, acetic acid and alcohol off, and the carbon dioxide that no charge binds. The share is that of the alcohol which could leave: all that is
    /// there, or all that leaves at all.
    /// </summary>
    public static void Evaporate(Pot pot, double grams, double volatility, double alcoholShare)
    {
        var liquid = pot.Liquid;
        var alcohol = Math.Clamp(alcoholShare, 0, 1) * Math.Max(0, Math.Min(grams, liquid[(int)Component.Ethanol]));
        liquid[(int)Component.Ethanol] -= alcohol;
        pot.Evaporated += alcohol + Evaporation.TakeOff(liquid, grams - alcohol, volatility);

        var freeGas = Math.Max(0, liquid[(int)Component.Carbonic] - Math.Max(0, liquid[(int)Component.Charge]));
        liquid[(int)Component.Carbonic] -= freeGas;
        pot.GasOut += freeGas * Components.GramsPerUnit(Component.Carbonic);
    }

    /// <summary>Takes the solids out with the liquid that they keep.</summary>
    public static void Strain(Pot pot, double keptGrams)
    {
        var liquid = pot.LiquidGrams;
        pot.Strained += pot.SolidGrams + (liquid > 0 ? pot.LoseLiquid(Math.Clamp(keptGrams / liquid, 0, 1)) : 0);
        pot.Solids.Clear();
    }

    /// <summary>Presses so many grams of juice out of the solids; what is left of them is out.</summary>
    public static void Press(Pot pot, double juiceGrams)
    {
        var soluble = 0.0;
        foreach (var solid in pot.Solids)
        {
            soluble += SolubleGrams(solid);
        }
        var share = soluble > 0 ? Math.Clamp(juiceGrams / soluble, 0, 1) : 0;
        foreach (var solid in pot.Solids)
        {
            MoveSoluble(pot, solid, share);
        }
        pot.Strained += pot.SolidGrams;
        pot.Solids.Clear();
    }

    /// <summary>Makes the solids part of the liquid. They are remembered, since a sieve finds their pulp again.</summary>
    public static void Blend(Pot pot)
    {
        foreach (var solid in pot.Solids)
        {
            solid.JoinedGrams += solid.Grams;
            Pot.Add(pot.Liquid, 1, solid.Parts);
            Array.Clear(solid.Parts);
            solid.JuiceOut = 1;
        }
    }

    /// <summary>Takes a share of the solids' water off, dry.</summary>
    public static void Toast(Pot pot, double shareOfWater)
    {
        foreach (var solid in pot.Solids)
        {
            var water = Math.Clamp(shareOfWater, 0, 1) * solid.Parts[(int)Component.Water];
            solid.Parts[(int)Component.Water] -= water;
            pot.Evaporated += water;
        }
    }

    /// <summary>Dissolves carbon dioxide up to so many volumes.</summary>
    public static void Carbonate(Pot pot, double volumes)
    {
        var bound = Math.Max(0, pot.Liquid[(int)Component.Charge]);
        var wanted = Carbonation.MolesFromVolumes(Math.Max(0, volumes), Density.Millilitres(new Liquid(pot.Liquid)));
        var free = Math.Max(0, pot.Liquid[(int)Component.Carbonic] - bound);
        var added = Math.Max(0, wanted - free);
        pot.Liquid[(int)Component.Carbonic] += added;
        pot.GasIn += added * Components.GramsPerUnit(Component.Carbonic);
    }

    /// <summary>Takes the sugars out of their places: nobody knows what became of them. So many grams left as gas.</summary>
    public static void Ferment(Pot pot, double gasGrams)
    {
        var sugar = 0.0;
        for (var c = Component.Sucrose; c <= Component.SugarNotToldApart; c++)
        {
            sugar += pot.Liquid[(int)c];
            pot.Liquid[(int)c] = 0;
        }
        var gas = Math.Clamp(gasGrams, 0, Math.Max(0, sugar));
        pot.Liquid[(int)Component.OtherSolids] += sugar - gas;
        pot.GasOut += gas;
    }

    /// <summary>Grams of a solid that water can take along: all but protein, fat and fibre.</summary>
    public static double SolubleGrams(Solid solid)
    {
        var sum = 0.0;
        for (var i = 0; i < Components.Count; i++)
        {
            sum += IsSoluble((Component)i) ? solid.Parts[i] * Components.GramsPerUnit((Component)i) : 0;
        }
        return sum;
    }

    /// <summary>Less than a fifth of it is water: sugar that draws water from what lies in it.</summary>
    public static bool IsDry(Pot pot) => pot.Liquid[(int)Component.Water] < 0.2 * pot.LiquidGrams;

    private static bool IsSoluble(Component component) => component is not (Component.Protein or Component.Fat or Component.Fibre);

    private static void GiveJuice(Pot pot, Solid solid, double grams)
    {
        var left = SolubleGrams(solid);
        if (!(left > 0) || solid.JuiceOut >= 1)
        {
            return;
        }
        var atStart = left / (1 - solid.JuiceOut);
        var wanted = Math.Min(1, grams / atStart);
        if (wanted > solid.JuiceOut)
        {
            MoveSoluble(pot, solid, (wanted - solid.JuiceOut) / (1 - solid.JuiceOut));
            solid.JuiceOut = wanted;
        }
    }

    private static void MoveSoluble(Pot pot, Solid solid, double share)
    {
        for (var i = 0; i < Components.Count; i++)
        {
            if (IsSoluble((Component)i))
            {
                var moved = share * solid.Parts[i];
                solid.Parts[i] -= moved;
                pot.Liquid[i] += moved;
                solid.JoinedGrams += moved * Components.GramsPerUnit((Component)i);
            }
        }
    }

    private static void GiveWater(Pot pot, Solid solid, double grams)
    {
        var water = Math.Clamp(grams, 0, Math.Max(0, solid.Parts[(int)Component.Water]));
        solid.Parts[(int)Component.Water] -= water;
        pot.Liquid[(int)Component.Water] += water;
        solid.JoinedGrams += water;
    }

    private static void GiveTea(Pot pot, Solid leaf, double minutes, double celsius, LeafCut cut, double bag, double extractable)
    {
        var wetting = Math.Min(minutes, leaf.DelayLeft);
        leaf.DelayLeft -= wetting;
        var effective = Math.Max(0, bag) * (minutes - wetting);
        leaf.CaffeineExposure += effective * Infusion.CaffeinePerMinute(celsius);
        leaf.PolyphenolExposure += effective * Infusion.PolyphenolsPerMinute(celsius, cut);
        var isCold = celsius < Infusion.ColdBelowCelsius;
        var caffeine = Math.Max(leaf.CaffeineOut, Math.Min(Infusion.Share(leaf.CaffeineExposure), isCold ? Infusion.ColdCaffeine : 1));
        var polyphenols = Math.Max(leaf.PolyphenolsOut, Math.Min(Infusion.Share(leaf.PolyphenolExposure), isCold ? Infusion.ColdPolyphenols : 1));

        var milligrams = Extract(leaf, Component.Caffeine, leaf.CaffeineOut, caffeine, extractable);
        pot.Liquid[(int)Component.Caffeine] += milligrams;
        leaf.CaffeineOut = caffeine;

        milligrams = Extract(leaf, Component.Tannin, leaf.PolyphenolsOut, polyphenols, extractable);
        pot.Liquid[(int)Component.Tannin] += milligrams;
        leaf.PolyphenolsOut = polyphenols;
        MoveDryMatter(pot, leaf, milligrams / 1000);
    }

    private static double Extract(Solid leaf, Component what, double outBefore, double outAfter, double extractable)
    {
        var content = leaf.Parts[(int)what] / (1 - extractable * outBefore);
        var taken = content * extractable * (outAfter - outBefore);
        leaf.Parts[(int)what] -= taken;
        return taken;
    }

    /// <summary>The mass of what was extracted: taken off the leaf's dry matter evenly, found as other solids in the liquid.</summary>
    private static void MoveDryMatter(Pot pot, Solid leaf, double grams)
    {
        var dry = leaf.Grams - leaf.Parts[(int)Component.Water];
        if (!(dry > 0))
        {
            return;
        }
        var share = Math.Clamp(grams / dry, 0, 1);
        for (var c = Component.Ethanol; c <= Component.OtherSolids; c++)
        {
            leaf.Parts[(int)c] *= 1 - (Components.GramsPerUnit(c) > 0 ? share : 0);
        }
        pot.Liquid[(int)Component.OtherSolids] += share * dry;
        leaf.JoinedGrams += share * dry;
    }
}

/// <summary>The figures that an infusion rests on.</summary>
/// <param name="Juice">Juice of fruit, share of its mass.</param>
/// <param name="Extractable">Of what tea holds, the share that ever comes out.</param>
/// <param name="Bag">Rate of tea in a bag beside loose leaf.</param>
/// <param name="PeelWater">Water that sugar draws from peel, g/g.</param>
internal readonly record struct InfusionFigures(double Juice, double Extractable, double Bag, double PeelWater)
{
    public const int Count = 4;

    public static InfusionFigures From(double[] figures) => new(figures[0], figures[1], figures[2], figures[3]);

    public static double[] Values => [SolidRules.FruitJuice.Value, Infusion.Extractable.Value, Infusion.BagFactor.Value, SolidRules.PeelWater.Value];

    /// <summary>Uncertainties of those that matter for what is in the pot.</summary>
    public static double[] Uncertainties(Pot pot, bool inBag)
    {
        var u = new double[Count];
        foreach (var solid in pot.Solids)
        {
            switch (solid.Kind)
            {
                case SolidKind.Fruit when solid.JuiceOut == 0:
                    u[0] = SolidRules.FruitJuice.Uncertainty;
                    break;
                case SolidKind.TeaLeaf:
                    u[1] = Infusion.Extractable.Uncertainty;
                    u[2] = inBag ? Infusion.BagFactor.Uncertainty : 0;
                    break;
                case SolidKind.CitrusPeel when !solid.Wetted && PotModels.IsDry(pot):
                    u[3] = SolidRules.PeelWater.Uncertainty;
                    break;
            }
        }
        return u;
    }
}
