using MenuLab.Core.Solutions;

namespace MenuLab.Core.Balance;

/// <summary>
/// Keeps the heat of a drink's lines: where they start, and what they come to when mixed. Heat capacities are those of
/// water and ethanol alike (4.18 J/(g K)) and of solids (1.30, sucrose): docs/science.md, section 7, MEMORY, +-2 %;
/// enough to average starting temperatures, the heat balance itself is <see cref="Ice"/>'s.
/// </summary>
internal struct HeatBook
{
    private const double LiquidJoules = 4.18;
    private const double SolidJoules = 1.30;
    private const double MeltWaterJoules = 4.20;

    private double _tinCapacity;
    private double _tinHeat;
    private double _laterCapacity;
    private double _laterHeat;

    /// <summary>J/(g K) of a composition.</summary>
    public static double CapacityPerGram(ReadOnlySpan<double> perGram)
    {
        var liquid = perGram[(int)Component.Water] + perGram[(int)Component.Ethanol];
        return liquid * LiquidJoules + (1 - liquid) * SolidJoules;
    }

    /// <summary>A line goes into the tin.</summary>
    public void AddToTin(in WeighedLine line)
    {
        var capacity = line.Grams * CapacityPerGram(line.Composition.PerGram);
        _tinCapacity += capacity;
        _tinHeat += capacity * line.StartCelsius;
    }

    /// <summary>A line joins after the tin.</summary>
    public void AddLater(in WeighedLine line, double grams)
    {
        var capacity = grams * CapacityPerGram(line.Composition.PerGram);
        _laterCapacity += capacity;
        _laterHeat += capacity * line.StartCelsius;
    }

    /// <summary>The tin has reached a temperature with so many grams of water added; NaN where nothing was in it.</summary>
    public void ChillTin(double celsius, double addedGrams)
    {
        if (double.IsNaN(celsius))
        {
            return;
        }
        _tinCapacity += MeltWaterJoules * addedGrams;
        _tinHeat = _tinCapacity * celsius;
    }

    /// <summary>Temperature of the tin's lines before any ice, °C; shelf temperature where there are none.</summary>
    public readonly double TinCelsius => _tinCapacity > 0 ? _tinHeat / _tinCapacity : Shelf;

    /// <summary>J/K of what is in the tin.</summary>
    public readonly double TinCapacity => _tinCapacity;

    /// <summary>Temperature of all that is in so far, °C; NaN where nothing is.</summary>
    public readonly double MixedCelsius => (_tinHeat + _laterHeat) / (_tinCapacity + _laterCapacity);

    private const double Shelf = 22;
}
