using MenuLab.Core.Pantry;
using MenuLab.Core.Solutions;

namespace MenuLab.Core.Balance;

/// <summary>
/// What every metric does when the state moves a little along a direction: the directional derivative of all metrics at
/// once. A top to the wash line answers by pouring less where the rest grows.
/// </summary>
internal ref struct Directions
{
    /// <summary>How many numbers of stack it takes.</summary>
    public const int Size = 2 * Metrics.Count + 2 * LinearForms.Count + Components.Count;

    private readonly LiquidState _state;
    private readonly bool _hasTop;
    private readonly Span<double> _figures;
    private readonly Span<double> _forms;
    private readonly Span<double> _topForms;
    private readonly Span<double> _topParts;
    private double _topMillilitres;
    private double _topPh;

    public Directions(LiquidState state, Span<double> stack, int topUps)
    {
        _state = state;
        _hasTop = topUps > 0;
        Delta = stack[..Metrics.Count];
        _figures = stack.Slice(Metrics.Count, Metrics.Count);
        _forms = stack.Slice(2 * Metrics.Count, LinearForms.Count);
        _topForms = stack.Slice(2 * Metrics.Count + LinearForms.Count, LinearForms.Count);
        _topParts = stack[(2 * Metrics.Count + 2 * LinearForms.Count)..];
        state.Figures(_figures);
    }

    /// <summary>The answer: change of each metric, in its unit.</summary>
    public Span<double> Delta { get; }

    /// <summary>Volume of what is in the tin before ice, mL.</summary>
    public double TinVolume { get; init; }

    /// <summary>Dilution, % of that volume.</summary>
    public double DilutionPercent { get; init; }

    /// <summary>Wash line of the glass, mL, or NaN.</summary>
    public double WashLine { get; init; } = double.NaN;

    /// <summary>One more ingredient goes to the wash line; all of them share the missing grams equally.</summary>
    public void AddTop(Composition composition)
    {
        for (var c = 0; c < Components.Count; c++)
        {
            _topParts[c] += composition.PerGram[c];
        }
        for (var f = 0; f < LinearForms.Count; f++)
        {
            _topForms[f] += composition.Forms[f];
        }
        _topMillilitres = _state.VolumeAlong(_topParts);
        _topPh = _state.PhAlong(_topParts);
    }

    /// <summary>So many units of a direction, with so many grams of melt water and so many mL of tin that come with it.</summary>
    public void Along(ReadOnlySpan<double> direction, ReadOnlySpan<double> forms, double amount, double meltGrams, double tinMillilitres)
    {
        for (var f = 0; f < LinearForms.Count; f++)
        {
            _forms[f] = amount * forms[f];
        }
        _forms[(int)LinearForm.Grams] += meltGrams;
        var volume = amount * _state.VolumeAlong(direction) + meltGrams * _state.PartialVolumes[(int)Component.Water];
        Finish(volume, amount * _state.PhAlong(direction), meltGrams, tinMillilitres);
    }

    /// <summary>So many grams of melt water alone.</summary>
    public void Water(double grams)
    {
        _forms.Clear();
        _forms[(int)LinearForm.Grams] = grams;
        Finish(grams * _state.PartialVolumes[(int)Component.Water], 0, grams, 0);
    }

    /// <summary>So many mL of volume at fixed masses.</summary>
    public void VolumeOnly(double millilitres)
    {
        _forms.Clear();
        Finish(millilitres, 0, 0, 0);
    }

    private void Finish(double volume, double ph, double meltGrams, double tinMillilitres)
    {
        if (_hasTop)
        {
            var top = -volume / _topMillilitres;
            for (var f = 0; f < LinearForms.Count; f++)
            {
                _forms[f] += top * _topForms[f];
            }
            ph += top * _topPh;
            volume = 0;
        }
        var perVolume = volume / _state.Volume;
        var perMass = _forms[(int)LinearForm.Grams] / _state.Grams;
        for (var m = 0; m < Metrics.Count; m++)
        {
            var formula = Formula.All[m];
            var change = formula.Factor * _forms[(int)formula.Form];
            Delta[m] = formula.Kind switch
            {
                FormulaKind.Total => change,
                FormulaKind.PerMillilitre => change / _state.Volume - _figures[m] * perVolume,
                FormulaKind.PerGram => change / _state.Grams - _figures[m] * perMass,
                _ => 0,
            };
        }
        Delta[(int)Metric.Volume] = volume;
        Delta[(int)Metric.Ph] = ph + volume * _state.PhPerMillilitre;
        var ratio = _figures[(int)Metric.SugarAcidRatio];
        Delta[(int)Metric.SugarAcidRatio] = double.IsNaN(ratio) ? 0
            : (Delta[(int)Metric.Sugar] - ratio * Delta[(int)Metric.Acid]) / _figures[(int)Metric.Acid];
        if (TinVolume > 0)
        {
            Delta[(int)Metric.Dilution] = (100 * meltGrams / BalanceEngine.WaterGramsPerMillilitre - DilutionPercent * tinMillilitres) / TinVolume;
        }
        Delta[(int)Metric.GlassFill] = double.IsNaN(WashLine) ? 0 : 100 * volume / WashLine;
    }
}
