using MenuLab.Core.Pantry;
using MenuLab.Core.Solutions;

namespace MenuLab.Core.Preps;

/// <summary>One source of uncertainty: what one standard uncertainty of it does to the pot.</summary>
internal sealed class PrepSource
{
    public required SpreadSource Kind { get; init; }

    /// <summary>Which component rules it (for <see cref="SpreadSource.Other"/>), or a number of its own below zero that nothing is merged with.</summary>
    public required int Key { get; init; }

    public required double[][] Change { get; set; }
}

/// <summary>
/// The sources of uncertainty of a pot. Sources of one kind are merged into one as lines join, so that a prep carries as few as a bought ingredient:
/// each change is weighted with its own size, which keeps the merged size at the root of the sum of squares. Only density adds up plainly, since the
/// model's error is the same in all.
/// </summary>
internal sealed class PrepSources
{
    private int _ownKeys;

    public List<PrepSource> List { get; } = [];

    /// <summary>Correlation of the merged sugar and acid.</summary>
    public double SugarAcidCorrelation { get; private set; }

    public void AddOwn(double[][] change, SpreadSource kind = SpreadSource.Other)
    {
        if (Any(change))
        {
            List.Add(new PrepSource { Kind = kind, Key = --_ownKeys, Change = change });
        }
    }

    /// <summary>Takes in what lines bring.</summary>
    /// <param name="pot">The pot with the lines in it.</param>
    /// <param name="joined">For each ingredient: its composition, the grams of it in the liquid and, by place, in each solid.</param>
    public void Join(Pot pot, IReadOnlyList<(Composition Composition, double[] Grams)> joined)
    {
        foreach (var source in List)
        {
            var change = pot.NoChange();
            source.Change.CopyTo(change, 0);
            source.Change = change;
        }
        var covariance = SugarAcidCorrelation * Size(Find(SpreadSource.Sugar)) * Size(Find(SpreadSource.Acid));
        var merges = new Dictionary<(SpreadSource, int), Merge>();
        foreach (var (composition, grams) in joined)
        {
            var all = grams.Sum();
            double sugar = 0, acid = 0;
            foreach (var spread in composition.Spreads)
            {
                var key = spread.Source == SpreadSource.Other ? Ruling(spread.PerGram) : 0;
                if (!merges.TryGetValue((spread.Source, key), out var merge))
                {
                    merge = new Merge(pot.NoChange());
                    merges[(spread.Source, key)] = merge;
                    if (List.Find(s => s.Kind == spread.Source && s.Key == key) is { } before)
                    {
                        merge.Add(before.Change, Size(before));
                        List.Remove(before);
                    }
                }
                var size = all * Size(spread.Source, key, spread.PerGram);
                merge.Add(grams, spread.PerGram, size);
                sugar = spread.Source == SpreadSource.Sugar ? size : sugar;
                acid = spread.Source == SpreadSource.Acid ? size : acid;
            }
            covariance += composition.SugarAcidCorrelation * sugar * acid;
        }
        foreach (var ((kind, key), merge) in merges)
        {
            List.Add(new PrepSource { Kind = kind, Key = key, Change = merge.Finish(plainly: kind == SpreadSource.Density) });
        }
        var sizes = Size(Find(SpreadSource.Sugar)) * Size(Find(SpreadSource.Acid));
        SugarAcidCorrelation = sizes > 0 ? Math.Clamp(covariance / sizes, -1, 1) : 0;
    }

    private PrepSource? Find(SpreadSource kind) => List.Find(s => s.Kind == kind && s.Key == 0);

    private static double Size(PrepSource? source)
    {
        var size = 0.0;
        foreach (var part in source?.Change ?? [])
        {
            size += Size(source!.Kind, source.Key, part);
        }
        return size;
    }

    // The figure by which a source is measured.
    private static double Size(SpreadSource kind, int key, ReadOnlySpan<double> change) => kind switch
    {
        SpreadSource.Sugar => PrepFigures.Form(change, LinearForm.SugarGrams),
        SpreadSource.Acid => PrepFigures.Form(change, LinearForm.AcidEquivalents),
        SpreadSource.Charge => change[(int)Component.Charge],
        SpreadSource.Ethanol => change[(int)Component.Ethanol],
        SpreadSource.Density => change[(int)Component.Residual],
        _ => change[key],
    };

    // The component but water that moves most: by mass, or where none has mass by its amount.
    private static int Ruling(ReadOnlySpan<double> change)
    {
        var best = (int)Component.Residual;
        var most = 0.0;
        for (var i = 1; i < change.Length; i++)
        {
            var mass = Components.GramsPerUnit((Component)i);
            var amount = Math.Abs(change[i]) * (mass > 0 ? mass : 1e-6);
            if (amount > most)
            {
                (best, most) = (i, amount);
            }
        }
        return best;
    }

    private static bool Any(double[][] change)
    {
        foreach (var part in change)
        {
            foreach (var value in part)
            {
                if (value != 0)
                {
                    return true;
                }
            }
        }
        return false;
    }

    /// <summary>Changes on their way into one.</summary>
    private sealed class Merge(double[][] sum)
    {
        // Those with a size, each times its size; those without; and all of them as they are.
        private readonly double[][] _plain = Array.ConvertAll(sum, part => new double[part.Length]);
        private readonly double[][] _all = Array.ConvertAll(sum, part => new double[part.Length]);
        private double _squares;

        public void Add(double[][] change, double size)
        {
            for (var p = 0; p < change.Length; p++)
            {
                Add(p, 1, change[p], size);
            }
            _squares += size * size;
        }

        public void Add(double[] grams, ReadOnlySpan<double> perGram, double size)
        {
            for (var p = 0; p < grams.Length; p++)
            {
                if (grams[p] != 0)
                {
                    Add(p, grams[p], perGram, size);
                }
            }
            _squares += size * size;
        }

        public double[][] Finish(bool plainly)
        {
            if (plainly)
            {
                return _all;
            }
            var size = Math.Sqrt(_squares);
            for (var p = 0; p < sum.Length; p++)
            {
                for (var i = 0; i < sum[p].Length; i++)
                {
                    sum[p][i] = (size > 0 ? sum[p][i] / size : 0) + _plain[p][i];
                }
            }
            return sum;
        }

        private void Add(int part, double factor, ReadOnlySpan<double> change, double size)
        {
            Pot.Add(size != 0 ? sum[part] : _plain[part], size != 0 ? factor * size : factor, change);
            Pot.Add(_all[part], factor, change);
        }
    }
}
