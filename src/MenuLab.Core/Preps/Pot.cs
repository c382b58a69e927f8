using MenuLab.Core.Pantry;
using MenuLab.Core.Solutions;

namespace MenuLab.Core.Preps;

/// <summary>A solid in the pot: what it still holds, and how much of it has gone into the liquid.</summary>
internal sealed class Solid
{
    public required IngredientId Ingredient { get; init; }

    public required SolidKind Kind { get; init; }

    /// <summary>What the composition knows; what joins the liquid is unknown where it is not.</summary>
    public required ulong Known { get; init; }

    /// <summary>Mass as it went in, g.</summary>
    public required double StartGrams { get; init; }

    /// <summary>What it still holds, in the units of the components.</summary>
    public required double[] Parts { get; set; }

    /// <summary>Share of its soluble part that has joined the liquid.</summary>
    public double JuiceOut { get; set; }

    /// <summary>Time until it is wet, min; tea only.</summary>
    public double DelayLeft { get; set; } = Infusion.DelayMinutes;

    /// <summary>Sum of rate times minutes for caffeine.</summary>
    public double CaffeineExposure { get; set; }

    /// <summary>Sum of rate times minutes for polyphenols.</summary>
    public double PolyphenolExposure { get; set; }

    /// <summary>Share of the extractable caffeine that is out.</summary>
    public double CaffeineOut { get; set; }

    /// <summary>Share of the extractable polyphenols that is out.</summary>
    public double PolyphenolsOut { get; set; }

    /// <summary>Grams that have joined the liquid so far.</summary>
    public double JoinedGrams { get; set; }

    /// <summary>It has lain in a liquid.</summary>
    public bool Wetted { get; set; }

    public double Grams => new Liquid(Parts).Grams;

    public Solid Copy()
    {
        var copy = (Solid)MemberwiseClone();
        copy.Parts = [.. Parts];
        return copy;
    }
}

/// <summary>What is in the pot, and what has left it so far. A step makes a new pot of it.</summary>
internal sealed class Pot
{
    public double[] Liquid { get; set; } = new double[Components.Count];

    public List<Solid> Solids { get; set; } = [];

    public double GasIn { get; set; }

    public double Evaporated { get; set; }

    public double GasOut { get; set; }

    public double Strained { get; set; }

    public double Spilt { get; set; }

    /// <summary>Product of the shares of the liquid that were kept where some of it was lost as it was.</summary>
    public double Kept { get; set; } = 1;

    public double LiquidGrams => new Liquid(Liquid).Grams;

    public double SolidGrams
    {
        get
        {
            var sum = 0.0;
            foreach (var solid in Solids)
            {
                sum += solid.Grams;
            }
            return sum;
        }
    }

    public double Grams => LiquidGrams + SolidGrams;

    public Pot Copy()
    {
        var copy = (Pot)MemberwiseClone();
        copy.Liquid = [.. Liquid];
        copy.Solids = Solids.ConvertAll(s => s.Copy());
        return copy;
    }

    /// <summary>The pot moved along a change: the liquid first, then each solid.</summary>
    public Pot Moved(double factor, double[][] change)
    {
        var moved = Copy();
        Add(moved.Liquid, factor, change[0]);
        for (var i = 0; i < Solids.Count; i++)
        {
            Add(moved.Solids[i].Parts, factor, change[i + 1]);
        }
        return moved;
    }

    /// <summary>The change from this pot to another, divided by a factor; it takes over the other's arrays.</summary>
    public double[][] ChangeTo(Pot other, double factor)
    {
        var change = new double[1 + Solids.Count][];
        change[0] = Difference(Liquid, other.Liquid, factor);
        for (var i = 0; i < Solids.Count; i++)
        {
            change[i + 1] = Difference(Solids[i].Parts, other.Solids[i].Parts, factor);
        }
        return change;
    }

    public double[][] NoChange()
    {
        var change = new double[1 + Solids.Count][];
        for (var i = 0; i < change.Length; i++)
        {
            change[i] = new double[Components.Count];
        }
        return change;
    }

    /// <summary>Takes a share of the liquid out as it is.</summary>
    public double LoseLiquid(double share)
    {
        var lost = share * LiquidGrams;
        for (var i = 0; i < Liquid.Length; i++)
        {
            Liquid[i] *= 1 - share;
        }
        Kept *= 1 - share;
        return lost;
    }

    public static void Add(double[] to, double factor, ReadOnlySpan<double> what)
    {
        for (var i = 0; i < to.Length; i++)
        {
            to[i] += factor * what[i];
        }
    }

    // In place: a prep is moved along every source at every step, and what it allocates is what it costs.
    private static double[] Difference(double[] from, double[] to, double factor)
    {
        for (var i = 0; i < to.Length; i++)
        {
            to[i] = (to[i] - from[i]) / factor;
        }
        return to;
    }
}
