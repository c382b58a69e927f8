using System.Globalization;
using System.Numerics;
using MenuLab.Core.Pantry;
using MenuLab.Core.Quantities;
using MenuLab.Core.Solutions;

namespace MenuLab.Core.Preps;

/// <summary>A pot being worked on: its contents, how well they are known, and which part of them nobody knows.</summary>
internal sealed class PrepWork
{
    private const int Bits = 64;

    // Below half a gram in 100 g no refractometer of a bar sees it; a twentieth of a gram of acid no tongue.
    private const double UnseenSolidsPercent = 0.5;
    private const double UnseenAcidPercent = 0.05;

    // A small part of a step, so that no part of the pot changes its sign.
    private const double SmallPart = 0.01;

    private readonly double[] _unknownGrams = new double[Bits];
    private readonly PrepSources _sources = new();
    private double[] _joinedBefore = [];

    public Pot Pot { get; private set; } = new();

    public PrepTalk Talk { get; } = new();

    public AllergenSet Allergens { get; private set; }

    public CompositionCaveats Caveats { get; set; }

    /// <summary>Puts lines in. The order in which they are given does not matter: they join in the order of ingredient, mass and kind.</summary>
    public void Add(IReadOnlyList<(PrepLine Line, Composition Composition)> lines)
    {
        var sorted = lines.OrderBy(l => l.Line.Ingredient).ThenBy(l => l.Line.Grams).ThenBy(l => l.Line.Solid).ToList();
        var after = Pot.Copy();
        var places = new int[sorted.Count];
        for (var i = 0; i < sorted.Count; i++)
        {
            places[i] = Put(after, sorted[i].Line, sorted[i].Composition);
        }
        Pot = after;
        _joinedBefore = [.. after.Solids.Select(s => s.JoinedGrams)];
        JoinSources(sorted, places);
    }

    private int Put(Pot pot, PrepLine line, Composition composition)
    {
        Allergens |= composition.Allergens;
        if (line.Solid == SolidKind.Dissolves)
        {
            Caveats |= composition.Caveats;
            Unknown(composition.Known, line.Grams);
            Pot.Add(pot.Liquid, line.Grams, composition.PerGram);
            return 0;
        }
        Caveats |= line.Solid == SolidKind.Fruit ? composition.Caveats : CompositionCaveats.None;
        var parts = composition.PerGram.ToArray();
        for (var i = 0; i < parts.Length; i++)
        {
            parts[i] *= line.Grams;
        }
        pot.Solids.Add(new Solid { Ingredient = line.Ingredient, Kind = line.Solid, Known = composition.Known, StartGrams = line.Grams, Parts = parts });
        return pot.Solids.Count;
    }

    private void JoinSources(List<(PrepLine Line, Composition Composition)> sorted, int[] places)
    {
        var joined = new List<(Composition, double[])>();
        for (var first = 0; first < sorted.Count;)
        {
            var grams = new double[1 + Pot.Solids.Count];
            var next = first;
            for (; next < sorted.Count && sorted[next].Line.Ingredient == sorted[first].Line.Ingredient; next++)
            {
                grams[places[next]] += sorted[next].Line.Grams;
            }
            joined.Add((sorted[first].Composition, grams));
            first = next;
        }
        _sources.Join(Pot, joined);
        for (var i = 0; i < sorted.Count; i++)
        {
            var (line, composition) = sorted[i];
            if (line.GramsUncertainty > 0)
            {
                Own(places[i], composition.PerGram, line.GramsUncertainty);
            }
            if (line.Solid == SolidKind.TeaLeaf)
            {
                FillTea(places[i], composition, Component.Caffeine, Infusion.LeafCaffeine, "caffeine");
                FillTea(places[i], composition, Component.Tannin, Infusion.LeafPolyphenols, "polyphenols");
            }
        }
    }

    private void Own(int place, ReadOnlySpan<double> direction, double factor)
    {
        var change = Pot.NoChange();
        Pot.Add(change[place], factor, direction);
        _sources.AddOwn(change);
    }

    // A leaf of which nobody has a figure holds what leaves usually hold.
    private void FillTea(int place, Composition composition, Component what, UsualRange milligramsPerGram, string name)
    {
        if (composition.PerGram[(int)what] > 0)
        {
            return;
        }
        var leaf = Pot.Solids[place - 1];
        leaf.Parts[(int)what] = milligramsPerGram.Value * leaf.StartGrams;
        var direction = new double[Components.Count];
        direction[(int)what] = milligramsPerGram.Uncertainty * leaf.StartGrams;
        Own(place, direction, 1);
        Note(-1, PrepNoteKind.Estimate, Say($"The {name} of the leaf are those of usual leaf: {milligramsPerGram.Low:0} to {milligramsPerGram.High:0} mg per g (from memory, no source)."));
    }

    /// <summary>Does a step.</summary>
    public void Do(StepModel model)
    {
        var before = Pot;
        var after = before.Copy();
        model.Apply(after, model.Figures);
        foreach (var source in _sources.List)
        {
            var moved = before.Moved(SmallPart, source.Change);
            model.Apply(moved, model.Figures);
            source.Change = after.ChangeTo(moved, SmallPart);
        }
        for (var i = 0; i < model.Figures.Length; i++)
        {
            if (model.Uncertainties[i] > 0)
            {
                // A whole step, since some figures are bounded on both sides.
                double[] figures = [.. model.Figures];
                figures[i] += model.Uncertainties[i];
                var moved = before.Copy();
                model.Apply(moved, figures);
                _sources.AddOwn(after.ChangeTo(moved, 1));
            }
        }
        var kept = after.Kept / before.Kept;
        for (var b = 0; b < Bits; b++)
        {
            _unknownGrams[b] *= kept;
        }
        Pot = after;
        JoinUnknown(before, after);
    }

    // What came out of the solids brings its own open questions.
    private void JoinUnknown(Pot before, Pot after)
    {
        var pressed = after.LiquidGrams - before.LiquidGrams;
        if (after.Solids.Count == 0 && before.Solids.Count > 0 && pressed > 0)
        {
            var soluble = before.Solids.Sum(PotModels.SolubleGrams);
            foreach (var solid in before.Solids)
            {
                Unknown(solid.Known, pressed * PotModels.SolubleGrams(solid) / soluble);
            }
        }
        for (var i = 0; i < after.Solids.Count; i++)
        {
            var joined = after.Solids[i].JoinedGrams;
            if (joined > _joinedBefore[i] && after.Solids[i].Kind != SolidKind.TeaLeaf)
            {
                Unknown(after.Solids[i].Known, joined - _joinedBefore[i]);
            }
            _joinedBefore[i] = joined;
        }
    }

    /// <summary>What the solids give beyond the models: nothing is taken up in the figures, and what it could be is told.</summary>
    public void AfterInfusion(int step, ReadOnlySpan<bool> wettedBefore)
    {
        for (var i = 0; i < Pot.Solids.Count; i++)
        {
            if (i < wettedBefore.Length && wettedBefore[i])
            {
                continue;
            }
            var solid = Pot.Solids[i];
            if (solid.Kind is SolidKind.Fruit)
            {
                continue;
            }
            Open(Component.Bitter.Bit());
            if (solid.Kind == SolidKind.TeaLeaf)
            {
                Note(step, PrepNoteKind.Estimate, "Of tea only caffeine and polyphenols are counted; its other solids are about 0.3 g per 100 g.");
                Caveats |= CompositionCaveats.ChargeAssumed;
                continue;
            }
            Open(Component.Tannin.Bit());
            if (solid.Kind == SolidKind.GroundCoffee)
            {
                Open(Component.Caffeine.Bit() | Component.Charge.Bit() | Composition.TotalAcidKnown | Composition.SolidsKnown | Component.OtherSolids.Bit());
                AskReading(step, AskKind.Brix, "Brix", "Read the Brix: what coffee gives is not modelled.", double.NaN, "Brix");
                AskReading(step, AskKind.Caffeine, "Caffeine", "The caffeine of coffee is not modelled; a cup of 237 mL holds about 96 mg.", double.NaN, "mg/L");
                continue;
            }
            OpenTraces(step, solid);
            Bound(step, i, solid);
        }
    }

    // How much of them leaves the solid no model knows, and nobody may read none for some.
    private void OpenTraces(int step, Solid solid)
    {
        if (solid.Parts[(int)Component.Quinine] > 0)
        {
            Open(Component.Quinine.Bit());
        }
        if (solid.Parts[(int)Component.Caffeine] > 0)
        {
            Open(Component.Caffeine.Bit());
            AskReading(
                step, AskKind.Caffeine, "Caffeine", "The caffeine that this solid gives is not modelled.",
                1000 * solid.Parts[(int)Component.Caffeine] / Density.Millilitres(new Liquid(Pot.Liquid)), "mg/L");
        }
    }

    private void Bound(int step, int place, Solid solid)
    {
        // Between nothing and all that dissolves; the best guess is nothing, as for a trace by its kind.
        var change = Pot.NoChange();
        for (var c = Component.Ethanol; c <= Component.Salt; c++)
        {
            if (c == Component.Charge || LinearForms.IsSolubleSolid(c))
            {
                var variance = 0.0;
                foreach (var source in _sources.List)
                {
                    variance += source.Change[place + 1][(int)c] * source.Change[place + 1][(int)c];
                }
                var most = solid.Parts[(int)c] + 1.96 * Math.Sqrt(variance);
                change[0][(int)c] = most / 1.96;
                change[place + 1][(int)c] = -most / 1.96;
            }
        }
        _sources.AddOwn(change);
        Unknown(solid.Known, solid.StartGrams);
        var liquid = Pot.LiquidGrams;
        var solids = 100 * 1.96 * PrepFigures.Form(change[0], LinearForm.SolubleSolidsGrams) / liquid;
        if (solids > UnseenSolidsPercent)
        {
            AskReading(step, AskKind.Brix, "Brix", Say($"Read the Brix: what this solid gives is not modelled, and it could be up to {solids:0.0} g per 100 g."), solids, "g/100 g");
        }
        var acid = 100 * 1.96 * PrepFigures.Form(change[0], LinearForm.AcidEquivalents) * AcidBase.EquivalentMass(Component.Citric) / liquid;
        if (acid > UnseenAcidPercent || (solid.Known & Composition.TotalAcidKnown) == 0)
        {
            AskReading(
                step, AskKind.Titration, "Titration", "Titrate: the acid that this solid gives is not modelled.",
                (solid.Known & Composition.TotalAcidKnown) == 0 ? double.NaN : acid, "g/100 g");
        }
    }

    /// <summary>Nobody knows these of all that is in the pot now.</summary>
    public void Open(ulong bits)
    {
        var grams = Pot.LiquidGrams;
        for (var b = 0; b < Bits; b++)
        {
            if ((bits >> b & 1) != 0)
            {
                _unknownGrams[b] = grams;
            }
        }
    }

    private void Unknown(ulong known, double grams)
    {
        for (var b = 0; b < Bits; b++)
        {
            if (IsAsked(b) && (known >> b & 1) == 0)
            {
                _unknownGrams[b] += grams;
            }
        }
    }

    private static bool IsAsked(int bit) =>
        bit < Components.Count || bit == BitOperations.TrailingZeroCount(Composition.TotalSugarKnown)
        || bit == BitOperations.TrailingZeroCount(Composition.TotalAcidKnown) || bit == BitOperations.TrailingZeroCount(Composition.SolidsKnown);

    /// <summary>What the pot holds now: the liquid, or where there is none the solids.</summary>
    public PotContent Content()
    {
        var hasLiquid = Pot.LiquidGrams > 0;
        var vector = Sum(hasLiquid, Pot.Liquid, i => Pot.Solids[i].Parts);
        if (!hasLiquid)
        {
            foreach (var solid in Pot.Solids)
            {
                Unknown(solid.Known, solid.StartGrams);
            }
        }
        for (var i = 0; i < vector.Length; i++)
        {
            // What rounding left below nothing.
            vector[i] = (Component)i is Component.Charge or Component.Residual ? vector[i] : Math.Max(0, vector[i]);
        }
        var grams = new Liquid(vector).Grams;
        Span<double> partial = stackalloc double[Components.Count];
        var millilitres = Density.Millilitres(new Liquid(vector), partial);

        var spreads = new List<Spread>(_sources.List.Count);
        double massVariance = 0, volumeVariance = 0;
        foreach (var source in _sources.List.OrderBy(s => s.Kind).ThenBy(s => s.Key < 0).ThenBy(s => Math.Abs(s.Key)))
        {
            var change = Sum(hasLiquid, source.Change[0], i => source.Change[i + 1]);
            var mass = new Liquid(change).Grams;
            var volume = 0.0;
            for (var i = 0; i < change.Length; i++)
            {
                volume += partial[i] * change[i];
            }
            massVariance += mass * mass;
            volumeVariance += volume * volume;
            AddSpread(spreads, source.Kind, vector, change, grams, mass);
        }

        var unknownPercent = new double[Bits];
        var known = 0UL;
        for (var b = 0; b < Bits; b++)
        {
            unknownPercent[b] = Math.Min(100, 100 * _unknownGrams[b] / grams);
            known |= IsAsked(b) && unknownPercent[b] <= Estimate.AtLeastAbovePercent ? 1UL << b : 0;
        }
        for (var i = 0; i < vector.Length; i++)
        {
            vector[i] /= grams;
        }
        var composition = new Composition(vector, known, spreads, Allergens, Caveats, _sources.SugarAcidCorrelation);
        return new PotContent(composition, grams, Math.Sqrt(massVariance), millilitres, Math.Sqrt(volumeVariance), unknownPercent);
    }

    private double[] Sum(bool hasLiquid, double[] liquid, Func<int, double[]> solids)
    {
        double[] sum = [.. liquid];
        for (var i = 0; i < Pot.Solids.Count && !hasLiquid; i++)
        {
            Pot.Add(sum, 1, solids(i));
        }
        return sum;
    }

    private static void AddSpread(List<Spread> spreads, SpreadSource kind, double[] vector, double[] change, double grams, double mass)
    {
        var perGram = new double[change.Length];
        var any = false;
        for (var i = 0; i < change.Length; i++)
        {
            perGram[i] = (change[i] - vector[i] * mass / grams) / grams;
            any |= Math.Abs(perGram[i]) > 1e-15;
        }
        if (any)
        {
            spreads.Add(new Spread(kind, perGram, Relative(kind, vector, perGram, grams)));
        }
    }

    private static double Relative(SpreadSource kind, double[] vector, double[] perGram, double grams)
    {
        var (change, whole) = kind switch
        {
            SpreadSource.Sugar => (PrepFigures.Form(perGram, LinearForm.SugarGrams), PrepFigures.Form(vector, LinearForm.SugarGrams)),
            SpreadSource.Acid => (PrepFigures.Form(perGram, LinearForm.AcidEquivalents), PrepFigures.Form(vector, LinearForm.AcidEquivalents)),
            SpreadSource.Ethanol => (perGram[(int)Component.Ethanol], vector[(int)Component.Ethanol]),
            SpreadSource.Density => (perGram[(int)Component.Residual], Density.Millilitres(new Liquid(vector))),
            _ => (0.0, 0.0),
        };
        return whole > 0 ? Math.Abs(change) * grams / whole : 0;
    }

    private void AskReading(int step, AskKind kind, string field, string text, double high, string unit) =>
        Talk.Asks.Add(new Ask(step, kind, field, text, double.IsNaN(high) ? double.NaN : 0, high, unit));

    private void Note(int step, PrepNoteKind kind, string text) => Talk.Notes.Add(new PrepNote(step, kind, text));

    private static string Say(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}

/// <summary>What a pot holds, as a composition and its amounts with standard uncertainties.</summary>
internal sealed record PotContent(Composition Composition, double Grams, double GramsUncertainty, double Millilitres, double MillilitresUncertainty, double[] UnknownPercent);
