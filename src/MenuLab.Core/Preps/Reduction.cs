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
        // The excess falls as more boils off; where all the water is not enough, all of it goes.
        var water = pot.Liquid[(int)Component.Water];
        var grams = Crossing.Of(Excess, 0, water);
        return !double.IsNaN(grams) ? grams : Excess(0) > 0 ? water : 0;

        double Excess(double off)
        {
            var tried = pot.Copy();
            PotModels.Evaporate(tried, off, Evaporation.AceticVolatility.Value, alcoholShare);
            var measured = Measure(tried, to);
            return to == ReduceTo.Brix ? target - measured : measured - target;
        }
    }
}
