using MenuLab.Core.Solutions;

namespace MenuLab.Core.Balance;

/// <summary>
/// A liquid at one moment (mixed, or served) with its volume and pH and, where ranges are asked for, how these two answer
/// to each part. All its spans lie on the caller's stack.
/// </summary>
internal ref struct LiquidState
{
    /// <summary>How many numbers of stack a state takes.</summary>
    public const int Size = 2 * Components.Count + LinearForms.Count + 2 * Components.AcidCount + 1;

    private readonly Span<double> _acids;

    public LiquidState(Span<double> stack)
    {
        Parts = stack[..Components.Count];
        PartialVolumes = stack.Slice(Components.Count, Components.Count);
        Forms = stack.Slice(2 * Components.Count, LinearForms.Count);
        _acids = stack.Slice(2 * Components.Count + LinearForms.Count, Components.AcidCount);
        PhPerAcid = stack.Slice(2 * Components.Count + LinearForms.Count + Components.AcidCount, Components.AcidCount);
    }

    /// <summary>The mixing state, one number per component.</summary>
    public Span<double> Parts { get; }

    /// <summary>Its linear forms.</summary>
    public Span<double> Forms { get; }

    /// <summary>mL per unit of each component; filled by <see cref="Differentiate"/>.</summary>
    public Span<double> PartialVolumes { get; }

    /// <summary>pH per mol/L of each acid; filled by <see cref="Differentiate"/>.</summary>
    public Span<double> PhPerAcid { get; }

    /// <summary>pH per mol/L of charge.</summary>
    public double PhPerCharge { get; private set; }

    /// <summary>pH per mL of volume at fixed amounts.</summary>
    public double PhPerMillilitre { get; private set; }

    /// <summary>Volume at 20 °C, mL.</summary>
    public double Volume { get; private set; }

    /// <summary>The pH, where there is any liquid.</summary>
    public PhSolution Ph { get; private set; }

    public readonly double Grams => Forms[(int)LinearForm.Grams];

    /// <summary>Adds so many grams of a composition.</summary>
    public readonly void Add(double grams, ReadOnlySpan<double> perGram, ReadOnlySpan<double> formsPerGram)
    {
        for (var i = 0; i < Components.Count; i++)
        {
            Parts[i] += grams * perGram[i];
        }
        for (var i = 0; i < LinearForms.Count; i++)
        {
            Forms[i] += grams * formsPerGram[i];
        }
    }

    /// <summary>Works out volume and pH once all is in.</summary>
    public void Settle()
    {
        Volume = Density.Millilitres(new Liquid(Parts));
        if (!(Volume > 0))
        {
            return;
        }
        var perLitre = 1000 / Volume;
        for (var i = 0; i < Components.AcidCount; i++)
        {
            _acids[i] = Parts[(int)Components.FirstAcid + i] * perLitre;
        }
        Ph = AcidBase.Solve(_acids, Parts[(int)Component.Charge] * perLitre);
    }

    /// <summary>Works out how volume and pH answer to the parts; after <see cref="Settle"/>.</summary>
    public void Differentiate()
    {
        Density.Millilitres(new Liquid(Parts), PartialVolumes);
        var perLitre = 1000 / Volume;
        var charge = Parts[(int)Component.Charge] * perLitre;
        AcidBase.Sensitivity(_acids, charge, Ph, PhPerAcid, out var perCharge);
        PhPerCharge = perCharge;

        // At fixed amounts every concentration falls as the volume rises: d(c) = -c dV / V.
        var sum = perCharge * charge;
        for (var i = 0; i < Components.AcidCount; i++)
        {
            sum += PhPerAcid[i] * _acids[i];
        }
        PhPerMillilitre = -sum / Volume;
    }

    /// <summary>mL that a direction of the state adds.</summary>
    public readonly double VolumeAlong(ReadOnlySpan<double> direction)
    {
        var sum = 0.0;
        for (var i = 0; i < Components.Count; i++)
        {
            sum += PartialVolumes[i] * direction[i];
        }
        return sum;
    }

    /// <summary>pH that a direction of the state adds at constant volume.</summary>
    public readonly double PhAlong(ReadOnlySpan<double> direction)
    {
        var sum = PhPerCharge * direction[(int)Component.Charge];
        for (var i = 0; i < Components.AcidCount; i++)
        {
            sum += PhPerAcid[i] * direction[(int)Components.FirstAcid + i];
        }
        return sum * 1000 / Volume;
    }

    /// <summary>Figures of all metrics that follow from the state alone; the others are set to NaN.</summary>
    public readonly void Figures(Span<double> figures)
    {
        for (var m = 0; m < Metrics.Count; m++)
        {
            var formula = Formula.All[m];
            var form = Forms[(int)formula.Form];
            figures[m] = formula.Kind switch
            {
                FormulaKind.Total => formula.Factor * form,
                FormulaKind.PerMillilitre => formula.Factor * form / Volume,
                FormulaKind.PerGram => formula.Factor * form / Grams,
                _ => double.NaN,
            };
        }
        figures[(int)Metric.Volume] = Volume;
        figures[(int)Metric.Ph] = Volume > 0 ? Ph.Ph : double.NaN;
        var acid = figures[(int)Metric.Acid];
        figures[(int)Metric.SugarAcidRatio] = acid >= SmallestAcidForRatio ? figures[(int)Metric.Sugar] / acid : double.NaN;
    }

    // Below this a ratio says nothing: a drink of 5 g sugar would read 500 to 1 and more.
    private const double SmallestAcidForRatio = 0.01;
}
