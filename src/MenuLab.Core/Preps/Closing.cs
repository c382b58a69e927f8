using System.Globalization;
using MenuLab.Core.Solutions;

namespace MenuLab.Core.Preps;

/// <summary>Moves a composition to what was read. Readings depend on each other through the volume, so they are set in turn until they rest.</summary>
internal sealed class Closing
{
    public const int Abv = 0;
    public const int Brix = 1;
    public const int Titration = 2;
    public const int Ph = 3;
    public const int Density = 4;
    public const int Mass = 5;

    // Each round brings volume and shares some hundred times closer.
    private const int Rounds = 10;

    private readonly bool _brixIsExtract;
    private readonly double _estimatedGrams;

    public Closing(PrepOutcome outcome, BatchReadings readings)
    {
        _brixIsExtract = outcome.Asks.Any(a => a.Kind == AskKind.Brix);
        _estimatedGrams = outcome.Grams.Value;
        Figures =
        [
            readings.AbvPercent ?? double.NaN,
            readings.Brix?.At20 ?? double.NaN,
            readings.Titration?.EquivalentsPerLitre ?? double.NaN,
            readings.Ph ?? double.NaN,
            readings is { Grams: { } g, Millilitres: { } ml } ? g / ml : double.NaN,
            readings.Brix is null && outcome.MassTellsWater && readings.Grams is { } mass ? mass : double.NaN,
        ];
    }

    /// <summary>What was read, by the numbers above; NaN where nothing was.</summary>
    public double[] Figures { get; }

    /// <summary>The composition per gram with what was read.</summary>
    public double[] Apply(double[] perGram, double[] figures)
    {
        if (!double.IsNaN(figures[Mass]))
        {
            Concentrate(perGram, _estimatedGrams / figures[Mass], acidsToo: true);
        }
        for (var round = 0; round < Rounds; round++)
        {
            if (!double.IsNaN(figures[Abv]))
            {
                perGram[(int)Component.Ethanol] = figures[Abv] / 100 * EthanolDensity.PureAt20 / 1000 * Solutions.Density.Millilitres(new Liquid(perGram));
                Fill(perGram);
            }
            SetAcids(perGram, figures[Titration], figures[Ph]);
            if (!double.IsNaN(figures[Brix]))
            {
                SetBrix(perGram, figures[Brix], acidsToo: double.IsNaN(figures[Titration]));
            }
            if (!double.IsNaN(figures[Density]))
            {
                perGram[(int)Component.Residual] += 1 / figures[Density] - Solutions.Density.Millilitres(new Liquid(perGram));
            }
        }
        return perGram;
    }

    /// <summary>A reading that no composition can follow, or null.</summary>
    public Problem? Misfit(double[] read)
    {
        if (read[(int)Component.Water] < 0 || read.Any(double.IsNaN))
        {
            var field = double.IsNaN(Figures[Brix]) ? nameof(BatchReadings.Grams) : nameof(BatchReadings.Brix);
            return new Problem(field, "With these readings there would be no water left in it; check the readings and the recipe's amounts.");
        }
        if (!double.IsNaN(Figures[Brix]) && Math.Abs(BrixReading.Expected(new Liquid(read)) - Figures[Brix]) > 0.01)
        {
            return new Problem(
                nameof(BatchReadings.Brix),
                string.Create(CultureInfo.InvariantCulture, $"{Figures[Brix]:0.0} Brix does not fit a prep with nothing dissolved in it; check reading and recipe."));
        }
        return null;
    }

    private static void SetAcids(double[] perGram, double equivalentsPerLitre, double ph)
    {
        if (double.IsNaN(equivalentsPerLitre) && double.IsNaN(ph))
        {
            return;
        }
        var perLitre = 1000 / Solutions.Density.Millilitres(new Liquid(perGram));
        Span<double> acids = stackalloc double[Components.AcidCount];
        var total = 0.0;
        for (var a = 0; a < acids.Length; a++)
        {
            acids[a] = Math.Max(0, perGram[(int)Components.FirstAcid + a]) * perLitre;
            total += a < acids.Length - 1 ? acids[a] : 0;
        }
        if (double.IsNaN(equivalentsPerLitre))
        {
            perGram[(int)Component.Charge] = AcidBase.ChargeFrom(ph, acids) / perLitre;
            return;
        }
        if (total == 0)
        {
            // Nobody knows which acids: all of it as citric.
            acids[0] = total = 1;
        }
        var inferred = double.IsNaN(ph) ? default : AcidBase.InferFrom(ph, equivalentsPerLitre, acids);
        var moles = inferred.Converged ? inferred.TotalMolesPerLitre : MolesFor(equivalentsPerLitre + perGram[(int)Component.Charge] * perLitre, acids, total);
        for (var a = 0; a < acids.Length - 1; a++)
        {
            perGram[(int)Components.FirstAcid + a] = acids[a] / total * moles / perLitre;
        }
        if (inferred.Converged)
        {
            perGram[(int)Component.Charge] = inferred.ChargeMolesPerLitre / perLitre;
        }
        Fill(perGram);
    }

    private static double MolesFor(double equivalents, ReadOnlySpan<double> acids, double total)
    {
        var mean = 0.0;
        for (var a = 0; a < acids.Length - 1; a++)
        {
            mean += acids[a] / total * AcidBase.ChargeAtEndPoint[a];
        }
        return Math.Max(0, equivalents) / mean;
    }

    private void SetBrix(double[] perGram, double brix, bool acidsToo)
    {
        if (_brixIsExtract)
        {
            for (var step = 0; step < 20; step++)
            {
                var gap = (brix - BrixReading.Expected(new Liquid(perGram))) / 100;
                perGram[(int)Component.OtherSolids] = Math.Max(0, perGram[(int)Component.OtherSolids] + gap);
                Fill(perGram);
            }
            return;
        }
        // Nearly in proportion, so a few steps do.
        for (var step = 0; step < 20; step++)
        {
            var now = BrixReading.Expected(new Liquid(perGram));
            if (!(now > 0.01) || Math.Abs(now - brix) < 1e-12)
            {
                return;
            }
            Concentrate(perGram, Math.Max(brix, 1e-6) / now, acidsToo);
        }
    }

    /// <summary>Moves what is dissolved against water; alcohol stays.</summary>
    private static void Concentrate(double[] perGram, double factor, bool acidsToo)
    {
        for (var i = 0; i < perGram.Length; i++)
        {
            var component = (Component)i;
            var isAcid = component.IsAcid() || component == Component.Charge;
            if (component is not (Component.Water or Component.Ethanol or Component.Residual) && (acidsToo || !isAcid))
            {
                perGram[i] *= factor;
            }
        }
        Fill(perGram);
    }

    private static void Fill(double[] perGram)
    {
        perGram[(int)Component.Water] = 0;
        perGram[(int)Component.Water] = 1 - new Liquid(perGram).Grams;
    }
}
