using CsCheck;
using MenuLab.Core.Solutions;

namespace MenuLab.TestKit.Solutions;

/// <summary>Writes mixing states and acid spans short, and makes random ones.</summary>
public static class State
{
    public static double[] Of(params ReadOnlySpan<(Component Component, double Amount)> parts)
    {
        var state = new double[Components.Count];
        foreach (var (component, amount) in parts)
        {
            state[(int)component] += amount;
        }
        return state;
    }

    /// <summary>Water, ethanol and sucrose, g.</summary>
    public static double[] Simple(double water, double ethanol, double sucrose) =>
        Of((Component.Water, water), (Component.Ethanol, ethanol), (Component.Sucrose, sucrose));

    public static double[] Acids(params ReadOnlySpan<(Component Acid, double Moles)> acids)
    {
        var span = new double[Components.AcidCount];
        foreach (var (acid, moles) in acids)
        {
            span[acid - Components.FirstAcid] += moles;
        }
        return span;
    }

    public static double[] Sum(params IReadOnlyList<double[]> states)
    {
        var sum = new double[states[0].Length];
        foreach (var state in states)
        {
            for (var i = 0; i < sum.Length; i++)
            {
                sum[i] += state[i];
            }
        }
        return sum;
    }

    public static double[] Times(double factor, double[] state) => Array.ConvertAll(state, part => factor * part);

    /// <summary>The worked drink of docs/science.md, section 2, before ice: 45 mL 40 %, 22.5 mL lime, 22.5 mL 1:1 syrup.</summary>
    public static double[] WorkedDrink()
    {
        var p = EthanolDensity.MassFraction(40);
        var spirit = 45 * EthanolDensity.KilogramsPerCubicMetre(p) / 1000;
        var lime = 22.5 * 1.035;
        var acid = 22.5 * 6 / 100;
        var syrup = 22.5 * SucroseDensity.KilogramsPerCubicMetre(50) / 1000;
        return Of(
            (Component.Ethanol, spirit * p), (Component.Water, spirit * (1 - p)),
            (Component.Sucrose, lime * 0.02), (Component.Citric, Moles(Component.Citric, acid)), (Component.Water, lime * 0.98 - acid),
            (Component.Sucrose, syrup / 2), (Component.Water, syrup / 2));
    }

    /// <summary>Grams of an acid as moles.</summary>
    public static double Moles(Component acid, double grams) => grams / Components.GramsPerUnit(acid);

    /// <summary>Random drinks of about 100 g: water always, everything else present or not.</summary>
    public static readonly Gen<double[]> Drinks =
        Gen.Select(Gen.Double[40, 100], Gen.Double[0, 1].Array[Components.Count], Gen.Bool.Array[Components.Count], (water, sizes, present) =>
        {
            var state = new double[Components.Count];
            for (var c = 1; c < state.Length; c++)
            {
                if (present[c])
                {
                    state[c] = sizes[c] * Most((Component)c);
                }
            }
            state[(int)Component.Water] = water;
            return state;
        });

    /// <summary>Random acids in mol/L: each absent or from 10 µmol/L to 0.5 mol/L, evenly by logarithm.</summary>
    public static readonly Gen<double[]> RandomAcids =
        Gen.Select(Gen.Double[-5, Math.Log10(0.5)].Array[Components.AcidCount], Gen.Double[0, 1].Array[Components.AcidCount],
            (logs, present) => logs.Zip(present, (log, p) => p < 0.35 ? Math.Pow(10, log) : 0).ToArray());

    private static double Most(Component component) => component switch
    {
        Component.Ethanol => 35,
        Component.Sucrose or Component.Glucose or Component.Fructose or Component.SugarNotToldApart => 12,
        _ when component.IsAcid() => 0.01,
        Component.Charge => 0.01,
        Component.Caffeine or Component.Quinine or Component.Bitter or Component.Tannin => 40,
        Component.Residual => 0.5,
        _ => 2,
    };
}
