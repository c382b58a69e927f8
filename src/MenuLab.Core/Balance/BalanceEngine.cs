using MenuLab.Core.Drafts;
using MenuLab.Core.Pantry;
using MenuLab.Core.Solutions;

namespace MenuLab.Core.Balance;

/// <summary>
/// Computes the balance of a drink from weighed lines and a build: mixes by mass, chills what is in the tin by heat
/// balance, adds what joins later, fills to the wash line, and reads the metrics off the mixed state.
/// </summary>
/// <remarks>
/// Pure: the same input gives the same output to the last bit on one platform. Lines are summed in the order of
/// ingredient id, then mass, so the order of typing cannot matter. Units: see <see cref="Metrics"/>. Ranges are 95 %
/// intervals by first-order propagation over the mixed state (docs/science.md, section 14); they are first order, so
/// good while every relative uncertainty is below about 15 %.
/// </remarks>
public static class BalanceEngine
{
    /// <summary>Number of the engine; raised in the same commit as any golden figure that moves.</summary>
    public const int Version = 1;

    private const int LinesOnStack = 64;

    /// <summary>The balance of a drink.</summary>
    /// <param name="lines">Its lines, in any order.</param>
    /// <param name="build">Method, ices and glass.</param>
    /// <param name="detail">Figures alone, with ranges, or with each line's shares.</param>
    /// <param name="uncountedMillilitres">Volume of lines that are kept as typed and not among the lines, mL; it counts as unknown in every metric.</param>
    /// <exception cref="ArgumentOutOfRangeException">A mass is negative or not finite.</exception>
    public static DrinkBalance Of(ReadOnlySpan<WeighedLine> lines, BuildModel build, Detail detail, double uncountedMillilitres = 0)
    {
        Span<int> order = lines.Length <= LinesOnStack ? stackalloc int[lines.Length] : new int[lines.Length];
        Sort(lines, order);

        // Everything in the liquid but tops to the wash line, which follow from the glass.
        var tin = new LiquidState(stackalloc double[LiquidState.Size]);
        var mixed = new LiquidState(stackalloc double[LiquidState.Size]);
        var heat = new HeatBook();
        var allergens = default(AllergenSet);
        var topUps = 0;
        foreach (var i in order)
        {
            ref readonly var line = ref lines[i];
            allergens |= line.Composition.Allergens;
            if (!line.IsInLiquid)
            {
                continue;
            }
            if (line.IsTopUp)
            {
                topUps++;
                continue;
            }
            Guard.FiniteNonNegative(line.Grams);
            if (JoinsTin(line))
            {
                tin.Add(line.Grams, line.Composition.PerGram, line.Composition.Forms);
                heat.AddToTin(line);
            }
            else
            {
                mixed.Add(line.Grams, line.Composition.PerGram, line.Composition.Forms);
                heat.AddLater(line, line.Grams);
            }
        }
        mixed.Add(1, tin.Parts, tin.Forms);
        mixed.Settle();

        var ranges = detail >= Detail.Ranges && mixed.Volume > 0;
        if (ranges)
        {
            mixed.Differentiate();
        }
        var mixedFigures = new double[3 * Metrics.Count];
        Span<double> figures = stackalloc double[Metrics.Count];
        Span<double> variance = stackalloc double[Metrics.Count];
        mixed.Figures(figures);
        figures[(int)Metric.FinalTemperature] = mixed.Grams > 0 ? heat.MixedCelsius : double.NaN;
        figures[(int)Metric.Cost] = Cost(lines, order, 0, out var unpricedPercent);
        if (ranges)
        {
            Ranges.Mixed(lines, order, mixed, variance);
        }
        var caveats = Caveats(lines, order, mixed.Ph, figures, withTopUps: false);
        Ranges.Fill(figures, variance, caveats, mixedFigures);
        var mixedSet = new MetricSet(mixedFigures, Unknown(lines, order, 0, uncountedMillilitres, unpricedPercent), caveats, uncountedMillilitres > 0);

        var served = new LiquidState(stackalloc double[LiquidState.Size]);
        var because = WhyNotServed(mixed, tin, build, topUps);
        if (because.Length > 0)
        {
            var mixedShares = detail == Detail.RangesAndShares ? Shares(lines, mixed, 0) : [];
            return new DrinkBalance(mixedSet, null, because, mixedShares, lines.Length, allergens, double.NaN);
        }

        var method = build.Method!;
        var settings = Settings(method, build, tin, out var tinVolume);
        var chilled = tin.Grams > 0
            ? Ice.Chill(new Liquid(tin.Parts), heat.TinCelsius, settings)
            : new Chilled(0, 0, heat.TinCelsius, settings.IceGrams, false, true);
        var tinStart = heat.TinCelsius;
        var tinCapacity = heat.TinCapacity;
        var added = method.IceStaysIn ? settings.IceGrams : chilled.AddedWaterGrams;

        served.Add(1, mixed.Parts, mixed.Forms);
        AddWater(served, added);
        heat.ChillTin(tin.Grams > 0 ? chilled.Celsius : double.NaN, added);

        var displaced = DisplacedMillilitres(method, build, chilled, served);
        var topUpGrams = 0.0;
        if (topUps > 0)
        {
            topUpGrams = FillToWashLine(lines, order, served, build.Glass!.WashLineMillilitres - displaced);
            foreach (var i in order)
            {
                if (lines[i].IsInLiquid && lines[i].IsTopUp)
                {
                    served.Add(topUpGrams, lines[i].Composition.PerGram, lines[i].Composition.Forms);
                    heat.AddLater(lines[i], topUpGrams);
                }
            }
        }
        served.Settle();

        served.Figures(figures);
        figures[(int)Metric.Dilution] = tinVolume > 0 ? 100 * added / WaterGramsPerMillilitre / tinVolume : 0;
        figures[(int)Metric.FinalTemperature] = heat.MixedCelsius;
        figures[(int)Metric.GlassFill] = build.Glass is { } glass ? 100 * (served.Volume + displaced) / glass.WashLineMillilitres : double.NaN;
        figures[(int)Metric.Cost] = Cost(lines, order, topUpGrams, out unpricedPercent);
        variance.Clear();
        if (ranges)
        {
            served.Differentiate();
            var dilution = new DilutionModel(tinVolume, tinStart, tinCapacity, added, chilled, settings, method, build.Glass);
            Ranges.Served(lines, order, tin, served, dilution, topUpGrams, topUps, variance);
        }
        caveats = Caveats(lines, order, served.Ph, figures, withTopUps: true);
        // The freezing-point model, and with it the heat balance, has its limits (docs/science.md, section 7).
        if (settings.IceGrams > 0 && !Freezing.IsWithinRange(new Liquid(served.Parts)))
        {
            caveats[(int)Metric.Dilution] |= MetricCaveats.OutsideRange;
            caveats[(int)Metric.FinalTemperature] |= MetricCaveats.OutsideRange;
        }
        if (!chilled.Converged)
        {
            caveats[(int)Metric.Dilution] |= MetricCaveats.NotConverged;
        }
        var servedFigures = new double[3 * Metrics.Count];
        Ranges.Fill(figures, variance, caveats, servedFigures);
        var servedSet = new MetricSet(servedFigures, Unknown(lines, order, topUpGrams, uncountedMillilitres, unpricedPercent), caveats, uncountedMillilitres > 0);
        var shares = detail == Detail.RangesAndShares ? Shares(lines, served, topUpGrams) : [];
        return new DrinkBalance(mixedSet, servedSet, "", shares, lines.Length, allergens, topUps > 0 ? topUpGrams : double.NaN);
    }

    /// <summary>Density of melt water at 20 °C, g/mL, as the dilution figures of docs/science.md, section 7, take it.</summary>
    internal const double WaterGramsPerMillilitre = 0.9982;

    internal static bool JoinsTin(in WeighedLine line) => line.Joins == Joins.Mixed && line.Place == Place.In;

    /// <summary>Adds water as such.</summary>
    private static void AddWater(in LiquidState state, double grams)
    {
        state.Parts[(int)Component.Water] += grams;
        state.Forms[(int)LinearForm.Grams] += grams;
    }

    // Insertion sort: a drink has about ten lines, and nothing is allocated.
    private static void Sort(ReadOnlySpan<WeighedLine> lines, Span<int> order)
    {
        for (var i = 0; i < order.Length; i++)
        {
            var j = i;
            while (j > 0 && Precedes(lines[i], lines[order[j - 1]]))
            {
                order[j] = order[j - 1];
                j--;
            }
            order[j] = i;
        }
    }

    private static bool Precedes(in WeighedLine left, in WeighedLine right)
    {
        var byId = left.Ingredient.CompareTo(right.Ingredient);
        return byId < 0 || (byId == 0 && left.Grams < right.Grams);
    }

    private static string WhyNotServed(in LiquidState mixed, in LiquidState tin, BuildModel build, int topUps)
    {
        if (!(mixed.Volume > 0) && topUps == 0)
        {
            return "Nothing is in the liquid yet.";
        }
        if (build.Method is null)
        {
            return "The text names no method, so ice and dilution are not known.";
        }
        if (build.Method.WeighIt && tin.Grams > 0)
        {
            return $"There is no dilution model for this method ({build.Method.Name}): weigh the drink before and after.";
        }
        return topUps > 0 && build.Glass is null ? "A line goes to the wash line, and the text names no glass." : "";
    }

    private static IceSettings Settings(MethodModel method, BuildModel build, in LiquidState tin, out double tinVolume)
    {
        tinVolume = tin.Grams > 0 ? Density.Millilitres(new Liquid(tin.Parts)) : 0;
        var ice = build.MethodIce;
        var grams = ice is null ? 0
            : method.InTheGlass && build.Glass is { } glass ? ice.ServedGrams * glass.BrimMillilitres / 100
            : method.IceGramsPer100Millilitres * tinVolume / 100;
        return new IceSettings(
            grams, ice?.Celsius ?? 0, ice?.SurfaceWaterFraction ?? 0, method.VesselJoulesPerKelvin, method.VesselCelsius, method.AmbientJoules,
            method.ApproachKelvin, method.CapAtStart);
    }

    /// <summary>
    /// mL of liquid that the ice in the glass pushes up: floating ice displaces its own mass of liquid. Source: buoyancy.
    /// Ice that rests on the bottom displaces a little less; a heap above the liquid is not floating and is overstated.
    /// </summary>
    private static double DisplacedMillilitres(MethodModel method, BuildModel build, in Chilled chilled, in LiquidState liquid)
    {
        if (build.Glass is null)
        {
            return 0;
        }
        var ice = method.InTheGlass ? chilled.IceLeftGrams
            : build.ServedIce is { } served ? served.ServedGrams * build.Glass.BrimMillilitres / 100
            : 0;
        var density = liquid.Grams > 0 ? liquid.Grams / Density.Millilitres(new Liquid(liquid.Parts)) : 1;
        return ice / density;
    }

    /// <summary>Grams of each top so that the liquid reaches a volume: one linear step, then one correction; the vector of the tops is one gram of each.</summary>
    private static double FillToWashLine(ReadOnlySpan<WeighedLine> lines, ReadOnlySpan<int> order, in LiquidState below, double target)
    {
        Span<double> top = stackalloc double[Components.Count];
        foreach (var i in order)
        {
            if (lines[i].IsInLiquid && lines[i].IsTopUp)
            {
                var perGram = lines[i].Composition.PerGram;
                for (var c = 0; c < Components.Count; c++)
                {
                    top[c] += perGram[c];
                }
            }
        }
        Span<double> parts = stackalloc double[Components.Count];
        below.Parts.CopyTo(parts);
        var grams = 0.0;
        for (var step = 0; step < 2; step++)
        {
            var missing = target - Density.Millilitres(new Liquid(parts));
            var next = Math.Max(0, grams + missing / Density.Millilitres(new Liquid(top)));
            for (var c = 0; c < Components.Count; c++)
            {
                parts[c] += (next - grams) * top[c];
            }
            grams = next;
        }
        return grams;
    }

    /// <summary>
    /// Share of the volume, in per cent, of lines that do not know what a metric needs. For cost it is the share of lines
    /// without a price, since a garnish has no volume.
    /// </summary>
    private static float[] Unknown(
        ReadOnlySpan<WeighedLine> lines, ReadOnlySpan<int> order, double topUpGrams, double uncountedMillilitres, double unpricedPercent)
    {
        var unknown = new float[Metrics.Count];
        Span<double> missing = stackalloc double[Metrics.Count];
        var total = uncountedMillilitres;
        missing.Fill(uncountedMillilitres);
        foreach (var i in order)
        {
            ref readonly var line = ref lines[i];
            if (!line.IsInLiquid)
            {
                continue;
            }
            var millilitres = (line.IsTopUp ? topUpGrams : line.Grams) / line.Composition.GramsPerMillilitre;
            total += millilitres;
            var noPh = (line.Composition.Caveats & CompositionCaveats.PhNotComputable) != 0;
            for (var m = 0; m < Metrics.Count; m++)
            {
                if (!line.Composition.Knows(Relevance.Masks[m]) || (noPh && m == (int)Metric.Ph))
                {
                    missing[m] += millilitres;
                }
            }
        }
        if (total > 0)
        {
            for (var m = 0; m < Metrics.Count; m++)
            {
                unknown[m] = (float)(100 * missing[m] / total);
            }
        }
        unknown[(int)Metric.Cost] = (float)unpricedPercent;
        return unknown;
    }

    private static double Cost(ReadOnlySpan<WeighedLine> lines, ReadOnlySpan<int> order, double topUpGrams, out double unpricedPercent)
    {
        var sum = 0.0;
        var counted = 0;
        var unpriced = 0;
        foreach (var i in order)
        {
            ref readonly var line = ref lines[i];
            counted++;
            if (line.Cost.IsPriced)
            {
                sum += line.Cost.PerGram * (line.IsTopUp ? topUpGrams : line.Cost.GramsUsed);
            }
            else
            {
                unpriced++;
            }
        }
        unpricedPercent = counted == 0 ? 100 : 100.0 * unpriced / counted;
        return unpriced == counted ? double.NaN : sum;
    }

    private static MetricCaveats[] Caveats(ReadOnlySpan<WeighedLine> lines, ReadOnlySpan<int> order, PhSolution ph, ReadOnlySpan<double> figures, bool withTopUps)
    {
        var caveats = new MetricCaveats[Metrics.Count];
        var assumed = CompositionCaveats.None;
        foreach (var i in order)
        {
            if (lines[i].IsInLiquid && (withTopUps || !lines[i].IsTopUp))
            {
                assumed |= lines[i].Composition.Caveats;
            }
        }
        if ((assumed & CompositionCaveats.DensityEstimated) != 0)
        {
            caveats[(int)Metric.Volume] |= MetricCaveats.DensityEstimated;
        }
        if ((assumed & (CompositionCaveats.ChargeAssumed | CompositionCaveats.AcidityAssumed | CompositionCaveats.AcidProfileAssumed)) != 0)
        {
            caveats[(int)Metric.Ph] |= MetricCaveats.ChargeAssumed;
        }
        if (ph.OutsideRange)
        {
            caveats[(int)Metric.Ph] |= MetricCaveats.OutsideRange;
        }
        if (figures[(int)Metric.Volume] > 0 && !ph.Converged)
        {
            caveats[(int)Metric.Ph] |= MetricCaveats.NotConverged;
        }
        if (figures[(int)Metric.Brix] > SucroseTopBrix)
        {
            caveats[(int)Metric.Brix] |= MetricCaveats.OutsideRange;
            caveats[(int)Metric.Volume] |= MetricCaveats.OutsideRange;
        }
        return caveats;
    }

    private const double SucroseTopBrix = 85;

    private static float[] Shares(ReadOnlySpan<WeighedLine> lines, in LiquidState state, double topUpGrams)
    {
        var shares = new float[lines.Length * Metrics.Count];
        Array.Fill(shares, float.NaN);
        Span<double> one = stackalloc double[Components.Count];
        var counted = state.Volume > 0;
        if (counted)
        {
            Density.Millilitres(new Liquid(state.Parts), state.PartialVolumes);
        }
        var cost = 0.0;
        for (var i = 0; i < lines.Length; i++)
        {
            cost += CostOf(lines[i], topUpGrams);
        }
        for (var i = 0; i < lines.Length; i++)
        {
            ref readonly var line = ref lines[i];
            var row = shares.AsSpan(i * Metrics.Count, Metrics.Count);
            if (cost > 0)
            {
                row[(int)Metric.Cost] = (float)(CostOf(line, topUpGrams) / cost);
            }
            if (!line.IsInLiquid || !counted)
            {
                continue;
            }
            var grams = line.IsTopUp ? topUpGrams : line.Grams;
            row[(int)Metric.Volume] = (float)(grams * state.VolumeAlong(line.Composition.PerGram) / state.Volume);
            for (var m = 0; m < Metrics.Count; m++)
            {
                var formula = Formula.All[m];
                var whole = state.Forms[(int)formula.Form];
                if (formula.Kind != FormulaKind.OfItsOwn && whole != 0)
                {
                    row[m] = (float)(grams * line.Composition.Forms[(int)formula.Form] / whole);
                }
            }
        }
        return shares;
    }

    private static double CostOf(in WeighedLine line, double topUpGrams) =>
        !line.Cost.IsPriced ? 0 : line.Cost.PerGram * (line.IsTopUp ? topUpGrams : line.Cost.GramsUsed);
}
