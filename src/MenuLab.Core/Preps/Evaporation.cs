using MenuLab.Core.Solutions;

namespace MenuLab.Core.Preps;

/// <summary>What boils off.</summary>
public static class Evaporation
{
    /// <summary>Heat that a gram of water takes along, J (steam tables 2256.5 at 100 °C, MEMORY).</summary>
    public const double JoulesPerGram = 2257;

    /// <summary>Volatility of acetic acid beside water at the boil, dilute: ratio of its shares in vapour and liquid; MEMORY.</summary>
    public static UsualRange AceticVolatility => new(0.7, 0.6, 0.8);

    /// <summary>Below the boil, from a pan of 20 cm, g/min; MEMORY.</summary>
    public static UsualRange SimmerGramsPerMinute => new(4, 2, 6);

    /// <summary>Share of the contents that a covered pan or a cold process loses; common practice, no source.</summary>
    public static UsualRange CoveredLoss => new(0.005, 0, 0.01);

    /// <summary>Relative standard uncertainty of the boil-off by power: the efficiency; ESTIMATE.</summary>
    public const double EfficiencyUncertainty = 0.15;

    private const double SimmerPanCentimetres = 20;

    /// <summary>Share of a burner's power that reaches the liquid of an open pan.</summary>
    /// <param name="hob">What heats the pan.</param>
    /// <returns>0 to 1.</returns>
    /// <remarks>Source: MEMORY: gas 0.4, electric 0.6, induction 0.75. Valid for: a pan as wide as the burner. Error: 15 % (ESTIMATE).</remarks>
    public static double Efficiency(Hob hob) => hob switch
    {
        Hob.Gas => 0.4,
        Hob.Electric => 0.6,
        _ => 0.75,
    };

    /// <summary>Water that boils off an open pan.</summary>
    /// <param name="watts">Power of the burner, W.</param>
    /// <param name="hob">What heats the pan.</param>
    /// <param name="minutes">Time at the boil, min.</param>
    /// <returns>g.</returns>
    /// <remarks>Source: energy balance, eta P t / h. Valid for: a rolling boil, no lid. Error: 15 %, of the efficiency; weighing overrules it.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Negative, infinite or NaN.</exception>
    public static double BoiledOffGrams(double watts, Hob hob, double minutes) =>
        Efficiency(hob) * Guard.FiniteNonNegative(watts) * 60 * Guard.FiniteNonNegative(minutes) / JoulesPerGram;

    /// <summary>Time until a pan boils.</summary>
    /// <param name="grams">Mass of the liquid, g.</param>
    /// <param name="joulesPerGramKelvin">Its heat capacity, J/(g K): 4.18 for water, about 3.1 for a 50 Brix syrup.</param>
    /// <param name="kelvin">Rise of temperature, K.</param>
    /// <param name="watts">Power of the burner, W, above 0.</param>
    /// <param name="hob">What heats the pan.</param>
    /// <returns>min.</returns>
    /// <remarks>Source: energy balance, m c dT / (eta P). Valid for: as <see cref="BoiledOffGrams"/>. Error: 15 %.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Negative, infinite or NaN, or no power.</exception>
    public static double HeatUpMinutes(double grams, double joulesPerGramKelvin, double kelvin, double watts, Hob hob)
    {
        ArgumentOutOfRangeException.ThrowIfZero(watts);
        return Guard.FiniteNonNegative(grams) * Guard.FiniteNonNegative(joulesPerGramKelvin) * Guard.FiniteNonNegative(kelvin)
            / (Efficiency(hob) * Guard.FiniteNonNegative(watts) * 60);
    }

    /// <summary>Water that leaves a pan below the boil.</summary>
    /// <param name="panCentimetres">Inner width of the pan, cm.</param>
    /// <param name="minutes">Time, min.</param>
    /// <returns>g, with the usual range of the rate.</returns>
    /// <remarks>Source: MEMORY, 2 to 6 g/min from 20 cm, by area. Valid for: no lid, no wind. Error: the range.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Negative, infinite or NaN.</exception>
    public static UsualRange SimmeredOffGrams(double panCentimetres, double minutes)
    {
        var width = Guard.FiniteNonNegative(panCentimetres) / SimmerPanCentimetres;
        var factor = width * width * Guard.FiniteNonNegative(minutes);
        var rate = SimmerGramsPerMinute;
        return new UsualRange(factor * rate.Value, factor * rate.Low, factor * rate.High);
    }

    /// <summary>Share of the acetic acid that is left when a share of the water is.</summary>
    /// <param name="waterLeft">Water left, 0 to 1.</param>
    /// <param name="volatility">Volatility beside water, 0 to 2; usually 0.6 to 0.8.</param>
    /// <returns>0 to 1.</returns>
    /// <remarks>Source: Rayleigh distillation, n/n0 = (w/w0)^K. Valid for: dilute acetic acid at the boil. Error: K 0.6 to 0.8 (MEMORY) is 66.0 to 57.4 % at half.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Outside these ranges, or NaN.</exception>
    public static double AceticLeft(double waterLeft, double volatility) => Math.Pow(Guard.InRange(waterLeft, 0, 1), Guard.InRange(volatility, 0, 2));

    /// <summary>Takes so many grams off as water with its acetic acid; at most what there is.</summary>
    /// <returns>Grams taken.</returns>
    internal static double TakeOff(double[] liquid, double grams, double volatility)
    {
        var water = Math.Max(0, liquid[(int)Component.Water]);
        var aceticGrams = Math.Max(0, liquid[(int)Component.Acetic]) * Components.GramsPerUnit(Component.Acetic);
        grams = Math.Min(grams, water + aceticGrams);
        if (!(grams > 0))
        {
            return 0;
        }
        // Of the water a share r stays, of the acid r to the power of K: the mass taken falls as r rises, so halving and Newton find it.
        double low = 0, high = 1;
        var left = water > 0 ? Math.Max(0, 1 - grams / water) : 0;
        for (var step = 0; step < 100 && aceticGrams > 0; step++)
        {
            var acid = Math.Pow(left, volatility);
            var excess = water * (1 - left) + aceticGrams * (1 - acid) - grams;
            if (excess > 0)
            {
                low = left;
            }
            else
            {
                high = left;
            }
            var slope = water + (left > 0 ? aceticGrams * volatility * acid / left : 0);
            var next = left + excess / slope;
            if (!(next >= low && next <= high))
            {
                next = (low + high) / 2;
            }
            if (Math.Abs(next - left) < 1e-14)
            {
                break;
            }
            left = next;
        }
        var acidTaken = aceticGrams > 0 ? aceticGrams * (1 - Math.Pow(left, volatility)) : 0;
        liquid[(int)Component.Acetic] -= acidTaken / Components.GramsPerUnit(Component.Acetic);
        liquid[(int)Component.Water] -= grams - acidTaken;
        return grams;
    }
}
