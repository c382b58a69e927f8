using MenuLab.Core.Solutions;

namespace MenuLab.Core.Preps;

/// <summary>How much must boil off to reach a target.</summary>
internal static class Reduction
{
    /// <summary>What is measured of a pot: mL of the liquid, g of all, Brix of the liquid (NaN where a refractometer reads wrong).</summary>
    public static double Measure(Pot pot, ReduceTo to) => to switch
    {
        ReduceTo.Millilitres => Density.Millilitres(new Liquid(pot.Liquid)),
        ReduceTo.Grams => pot.Grams,
        _ => BrixReading.Expected(new Liquid(pot.Liquid)),
    };

    /// <summary>Grams to take off; 0 where the pot is past the target already.</summary>
    public static double GramsTo(Pot pot, ReduceTo to, double target, double alcoholShare)
    {
        if (to == ReduceTo.Grams)
        {
            return Math.Max(0, pot.Grams - target);
        }
        // Illinois: a secant that keeps its bracket, some eight steps. The excess falls as more boils off.
        double low = 0, high = pot.Liquid[(int)Component.Water];
        double atLow = Excess(low), atHigh = Excess(high);
        if (!(atLow > 0) || !(atHigh < 0))
        {
            return atLow > 0 ? high : 0;
        }
        var side = 0;
        for (var step = 0; step < 60 && high - low > 1e-12 * high; step++)
        {
            var grams = (atHigh * low - atLow * high) / (atHigh - atLow);
            var excess = Excess(grams);
            if (Math.Abs(excess) < 1e-12)
            {
                return grams;
            }
            if (excess > 0)
            {
                (low, atLow) = (grams, excess);
                atHigh = side == 1 ? atHigh / 2 : atHigh;
                side = 1;
            }
            else
            {
                (high, atHigh) = (grams, excess);
                atLow = side == -1 ? atLow / 2 : atLow;
                side = -1;
            }
        }
        return (atHigh * low - atLow * high) / (atHigh - atLow);

        double Excess(double grams)
        {
            var tried = pot.Copy();
            PotModels.Evaporate(tried, grams, Evaporation.AceticVolatility.Value, alcoholShare);
            var measured = Measure(tried, to);
            return to == ReduceTo.Brix ? target - measured : measured - target;
        }
    }
}
