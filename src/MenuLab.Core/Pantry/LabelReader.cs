using System.Globalization;
using MenuLab.Core.Solutions;

namespace MenuLab.Core.Pantry;

/// <summary>Reads one label: first what cannot be, then what does not fit, then the figures.</summary>
internal sealed class LabelReader(PrintedLabel label)
{
    // "0" and "less than 0.5" may stand for anything up to this, g (EU guidance on tolerances, 2012, MEMORY).
    private const double PrintedAsNothing = 0.5;
    private const double SaltPerSodium = 2.5;

    // More than this a drink's acid cannot be without somebody noticing; a gap in energy beyond it is a misprint.
    private const double MostAcid = 15;

    private const string Source = "label as printed";
    private const string Origin = "house";

    private readonly List<Problem> _problems = [];
    private readonly List<LabelRemark> _remarks = [];
    private readonly List<IngredientFigure> _figures = [];

    private bool IsPerMass => label.Basis is LabelBasis.Per100Grams or LabelBasis.PerServingGrams;

    private bool IsPerServing => label.Basis is LabelBasis.PerServingGrams or LabelBasis.PerServingMillilitres;

    // From what is printed to 100 g or 100 mL.
    private double Factor => IsPerServing ? 100 / label.Serving!.Value : 1;

    public Result<LabelReading> Read(DateOnly today)
    {
        CheckNumbers(today);
        if (_problems.Count == 0)
        {
            CheckParts();
        }
        if (_problems.Count > 0)
        {
            return Result.Invalid<LabelReading>(_problems);
        }
        CheckEnergies();
        var (ethanol, grams) = Ethanol();
        Figures(ethanol);
        Acid(ethanol, grams);
        var allergens = label.AllergensConfirmed ? label.Allergens : new AllergenSet(0, label.Allergens.Present | label.Allergens.Unknown);
        return Result.Ok(new LabelReading(IsPerMass ? CompositionBuilder.PerMass : CompositionBuilder.PerVolume, _figures, allergens, _remarks));
    }

    private void CheckNumbers(DateOnly today)
    {
        foreach (var (field, figure) in Parts())
        {
            if (figure is { } printed && !(printed.Value >= 0 && double.IsFinite(printed.Value)))
            {
                _problems.Add(new Problem(field, Say($"{field} cannot be {printed.Value} g; give 0 g or more, as printed.")));
            }
        }
        foreach (var (field, value) in (ReadOnlySpan<(string, double?)>)[
            (nameof(label.Kilojoules), label.Kilojoules), (nameof(label.Kilocalories), label.Kilocalories), (nameof(label.AcidAtMost), label.AcidAtMost)])
        {
            if (value is { } number && !(number >= 0 && double.IsFinite(number)))
            {
                _problems.Add(new Problem(field, Say($"{field} cannot be {number}; give 0 or more, as printed.")));
            }
        }
        if (label.AbvPercent is { } abv && !(abv >= 0 && abv <= 96))
        {
            _problems.Add(new Problem(nameof(label.AbvPercent), Say($"{abv} % vol is not possible; give 0 to 96 % vol.")));
        }
        if (IsPerServing && !(label.Serving > 0 && double.IsFinite(label.Serving.Value)))
        {
            _problems.Add(new Problem(nameof(label.Serving), "Say how much a serving is, in the unit printed beside it."));
        }
        if (label.ReadOn > today)
        {
            _problems.Add(new Problem(nameof(label.ReadOn), Say($"The label was read on {label.ReadOn:yyyy-MM-dd}, after today ({today:yyyy-MM-dd}); enter the day it was read.")));
        }
    }

    private void CheckParts()
    {
        var rounding = HalfStep(label.Carbohydrate) + HalfStep(label.Sugars) + HalfStep(label.Polyols);
        if (label.Carbohydrate is { IsLessThan: false } carbohydrate)
        {
            var within = Printed(label.Sugars) + Printed(label.Polyols);
            if (within > carbohydrate.Value + rounding + 1e-9)
            {
                _problems.Add(new Problem(
                    nameof(label.Sugars),
                    Say($"Sugars and polyols ({within:0.##} g) are more than the carbohydrate they are part of ({carbohydrate.Value:0.##} g); read the two lines again.")));
            }
        }
        var sum = Factor * (Printed(label.Carbohydrate ?? label.Sugars) + Printed(label.Fat) + Printed(label.Protein) + Printed(label.Fibre) + Printed(label.Salt));
        // 100 mL of the densest syrup weigh 145 g.
        var most = IsPerMass ? 100 : 145;
        if (sum > most + 0.5)
        {
            var field = IsPerServing ? nameof(label.Serving) : nameof(label.Carbohydrate);
            _problems.Add(new Problem(field, Say($"The parts add up to {sum:0.#} g per {(IsPerMass ? "100 g" : "100 mL")}, more than there can be; check the column that was read and the serving.")));
        }
    }

    /// <summary>kJ and kcal of one label are each summed by their own factors: 3.9 to 4.4 kJ go to a kcal.</summary>
    private void CheckEnergies()
    {
        if (label.Kilojoules is { } kilojoules && label.Kilocalories is { } kilocalories
            && (kilojoules + 0.5 < 3.9 * (kilocalories - 0.5) || kilojoules - 0.5 > 4.45 * (kilocalories + 0.5)))
        {
            _remarks.Add(new LabelRemark(
                nameof(label.Kilocalories), Say($"{kilojoules:0.#} kJ and {kilocalories:0.#} kcal do not fit each other (a kcal is about 4.2 kJ); read both again.")));
        }
    }

    /// <summary>Ethanol per 100 g or mL, and the mass of that amount, g.</summary>
    private (double Ethanol, double Grams) Ethanol()
    {
        var perMillilitre = (label.AbvPercent ?? 0) / 100 * EthanolDensity.PureAt20 / 1000;
        var solids = Factor * (Printed(label.Carbohydrate ?? label.Sugars) + Printed(label.Protein) + Printed(label.Fat));
        var vector = new double[Components.Count];
        var density = 1.0;
        for (var round = 0; round < 20; round++)
        {
            var grams = IsPerMass ? 100 : 100 * density;
            vector[(int)Component.Ethanol] = perMillilitre * grams / density;
            vector[(int)Component.Sucrose] = solids;
            vector[(int)Component.Water] = Math.Max(0, grams - vector[(int)Component.Ethanol] - solids);
            var liquid = new Liquid(vector);
            density = liquid.Grams / Density.Millilitres(liquid);
        }
        return (vector[(int)Component.Ethanol], IsPerMass ? 100 : 100 * density);
    }

    private void Figures(double ethanol)
    {
        if (label.AbvPercent is not null)
        {
            State("ethanol_g", ethanol);
        }
        if (label.Sugars is { } sugars)
        {
            Put(FigureQuantities.TotalSugars, sugars);
        }
        else if (label.Carbohydrate is { } all)
        {
            // Without the line "of which sugars" any part of it may be.
            Between(FigureQuantities.TotalSugars, 0, Factor * Most(all), "label as printed: sugars are at most the carbohydrate");
        }
        if (label.Polyols is { } polyols)
        {
            Put("other_polyol_g", polyols);
        }
        if (label.Carbohydrate is { } carbohydrate && label.Sugars is not null)
        {
            State(FigureQuantities.OtherCarbohydrate, Math.Max(0, Factor * (Printed(carbohydrate) - Printed(label.Sugars) - Printed(label.Polyols))));
        }
        foreach (var (quantity, figure) in (ReadOnlySpan<(string, LabelFigure?)>)[("fat_g", label.Fat), ("fibre_g", label.Fibre), ("protein_g", label.Protein)])
        {
            if (figure is { } printed)
            {
                Put(quantity, printed);
            }
        }
        if (label.Salt is { } salt)
        {
            State(FigureQuantities.Sodium, 1000 * Factor * Printed(salt) / SaltPerSodium);
        }
        var energy = label.Kilocalories ?? label.Kilojoules / 4.184;
        if (energy is { } kilocalories)
        {
            State(FigureQuantities.Energy, Factor * kilocalories);
        }
    }

    /// <summary>What energy sugar, fat, protein and alcohol leave is acid, bounded by the rounding of all that was printed.</summary>
    private void Acid(double ethanol, double grams)
    {
        const string leftByEnergy = "label as printed: energy that its parts leave";
        var (low, most) = (0.0, double.NaN);
        var high = label.AcidAtMost ?? double.NaN;
        var reason = "bound by the person who read the label";
        if ((label.Kilojoules ?? label.Kilocalories) is not null && label is { Carbohydrate: not null, Fat: not null, Protein: not null })
        {
            var isKilojoules = label.Kilojoules is not null;
            var field = isKilojoules ? nameof(label.Kilojoules) : nameof(label.Kilocalories);
            double Of(double kilojoules, double kilocalories) => isKilojoules ? kilojoules : kilocalories;
            var known = Factor * (Of(17, 4) * (Printed(label.Carbohydrate) - Printed(label.Polyols) + Printed(label.Protein)) + Of(10, 2.4) * Printed(label.Polyols)
                + Of(37, 9) * Printed(label.Fat) + Of(8, 2) * Printed(label.Fibre)) + Of(29, 7) * ethanol;
            double Rounding(Func<LabelFigure?, double> off) => Factor * (0.5 + Of(17, 4) * (off(label.Carbohydrate) + off(label.Protein)) + Of(37, 9) * off(label.Fat)
                + Of(8, 2) * off(label.Fibre) + Of(7, 1.6) * HalfStep(label.Polyols)) + Of(29, 7) * EthanolRounding;
            // Parts that are more than printed leave less for acid, parts that are less leave more; what is printed as 0 cannot be less.
            var (more, less) = (Rounding(MorePossible), Rounding(LessPossible));
            var gap = Factor * (isKilojoules ? label.Kilojoules!.Value : label.Kilocalories!.Value) - known;
            if (gap < -less - 0.05 * known)
            {
                _remarks.Add(new LabelRemark(field, Say($"The parts come to {known / Factor:0} {(isKilojoules ? "kJ" : "kcal")}, more than the energy printed; read energy and parts again.")));
            }
            else if ((gap - more) / Of(13, 3) > MostAcid)
            {
                _remarks.Add(new LabelRemark(field, Say($"The parts come to only {known / Factor:0} {(isKilojoules ? "kJ" : "kcal")} of the energy printed; a line was missed, or alcohol.")));
            }
            else
            {
                low = Math.Max(0, (gap - more) / Of(13, 3));
                most = Math.Max(0, (gap + less) / Of(13, 3));
                reason = double.IsNaN(high) || most < high ? leftByEnergy : reason;
                high = double.IsNaN(high) ? most : Math.Min(high, most);
            }
        }
        if (!double.IsNaN(high))
        {
            if (low > high)
            {
                _remarks.Add(new LabelRemark(nameof(label.AcidAtMost), Say($"The energy printed leaves at least {low:0.0} g of acid, more than the bound given ({high:0.0} g); the bound is set aside.")));
                (high, reason) = (most, leftByEnergy);
            }
            Between(FigureQuantities.TitratableAcidity, low, Math.Min(high, grams), reason);
        }
    }

    // Strength is printed to half or a tenth of a per cent.
    private double EthanolRounding => label.AbvPercent is > 0 ? 0.05 * EthanolDensity.PureAt20 / 1000 : 0;

    private IEnumerable<(string Field, LabelFigure? Figure)> Parts() =>
    [
        (nameof(label.Fat), label.Fat), (nameof(label.Carbohydrate), label.Carbohydrate), (nameof(label.Sugars), label.Sugars),
        (nameof(label.Polyols), label.Polyols), (nameof(label.Fibre), label.Fibre), (nameof(label.Protein), label.Protein), (nameof(label.Salt), label.Salt),
    ];

    // The middle of what a figure may stand for: the number, or half of "less than".
    private static double Printed(LabelFigure? figure) => figure is not { } printed ? 0 : printed.IsLessThan ? printed.Value / 2 : printed.Value;

    private static double Most(LabelFigure figure) => Printed(figure) + MorePossible(figure);

    private static double MorePossible(LabelFigure? figure) => figure is { Value: 0, IsLessThan: false } ? PrintedAsNothing : HalfStep(figure);

    private static double LessPossible(LabelFigure? figure) => HalfStep(figure);

    // From 10 g labels are rounded to 1 g, below to 0.1 g (EU guidance, MEMORY).
    private static double HalfStep(LabelFigure? figure) =>
        figure is not { } printed || printed.Value == 0 ? 0
        : printed.IsLessThan ? printed.Value / 2
        : printed.Value >= 10 ? 0.5
        : 0.05;

    private void Put(string quantity, LabelFigure figure)
    {
        if (figure.IsLessThan || figure.Value == 0)
        {
            Between(quantity, 0, Factor * Most(figure), Source);
            return;
        }
        State(quantity, Factor * figure.Value);
    }

    private void State(string quantity, double value) =>
        _figures.Add(new IngredientFigure(quantity, value, double.NaN, double.NaN, Source, FigureStatus.Confirmed, Origin));

    private void Between(string quantity, double low, double high, string source) =>
        _figures.Add(new IngredientFigure(quantity, double.NaN, low, high, source, FigureStatus.Assumed, Origin));

    private static string Say(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
