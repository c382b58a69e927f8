using MenuLab.Core.Balance;
using MenuLab.Core.Drafts;
using MenuLab.Core.House;

namespace MenuLab.Core.Specs;

/// <summary>Makes the content of a spec card.</summary>
public static class SpecCard
{
    private const string NotSaid = "not said";

    // A rung below this cannot be told from the stroke that draws it, on any paper.
    private const double SmallestRungMillilitres = 2;

    /// <summary>The content of a card: texts and numbers only.</summary>
    /// <remarks>
    /// Units: mL at 20 °C as understood in the lines. Source: amounts by <see cref="PourGrid"/>; the running total adds the
    /// volumes as poured. Valid for: any lines; what nobody said reads "not said". Error: of the running total, the
    /// contraction of alcohol with water, at most 4 % at 50 % vol (MEMORY), and of a top to the wash line, which is printed to 5 mL.
    /// </remarks>
    /// <exception cref="ArgumentException">A line's ingredient has no name.</exception>
    public static CardContent Content(CardRequest request)
    {
        if (request.Lines.FirstOrDefault(line => !request.Names.ContainsKey(line.Ingredient)) is { } nameless)
        {
            throw new ArgumentException($"No name for the ingredient of \"{nameless.Text}\".", nameof(request));
        }
        // Stable: lines that join together keep the order in which they were typed.
        var poured = request.Lines.Where(line => line.Place == Place.In).OrderBy(line => line.Joins).ToList();
        var topUp = TopUpMillilitres(request, poured);
        var metrics = request.Balance.Served ?? request.Balance.Mixed;
        return new CardContent
        {
            Name = request.Name,
            Issue = request.Issue,
            IsDraft = request.IsDraft,
            Format = request.Format,
            PrintedOn = request.PrintedOn,
            InForceFrom = request.InForceFrom,
            Facts = Facts(request),
            Lines = [.. poured.Select((line, i) => Line(request, line, i + 1, topUp))],
            Ladder = Ladder(request, poured, topUp),
            WashLineMillilitres = request.Catalogue.Glass(request.Build.Glass)?.WashLineMillilitres,
            Steps = request.Build.Steps,
            Allergens = CardWords.Contains(request.Balance.Allergens, request.AllergenNames),
            OpenAllergens = CardWords.Open(request.Balance.Allergens, request.AllergenNames),
            CrossContact = CardWords.CrossContact(request.AlsoHandled),
            Strength = CardWords.Strength(metrics, request.Balance.Served is not null, request.Format),
            Energy = CardWords.Energy(metrics, request.Format),
            Cautions = request.Cautions,
        };
    }

    private static List<CardFact> Facts(CardRequest request)
    {
        var build = request.Build;
        var catalogue = request.Catalogue;
        var method = catalogue.Method(build.Method)?.Name ?? NotSaid;
        var seconds = build.Seconds is { } s ? $"{Figure(s, 1, request.Format)} s" : "";
        var strain = build.Strain?.Replace('_', '-') ?? "";
        var facts = new List<CardFact>
        {
            new("Method", Joined(method, seconds, strain)),
            new("Ice", IceName(catalogue, build.Ice ?? catalogue.Method(build.Method)?.Ice)),
            new("Glass", Glass(catalogue, build)),
        };
        foreach (var place in (Place[])[Place.Rinse, Place.Rim, Place.Garnish, Place.Beside])
        {
            var there = request.Lines.Where(line => line.Place == place).ToList();
            if (there.Count > 0)
            {
                facts.Add(new CardFact(place.ToString(), string.Join("; ", there.Select(line => Apart(request, line)))));
            }
        }
        return facts;
    }

    private static string IceName(BuildCatalogue catalogue, string? key) =>
        key == "none" ? "no ice" : catalogue.Ice(key)?.Name ?? NotSaid;

    private static string Glass(BuildCatalogue catalogue, Build build)
    {
        var glass = catalogue.Glass(build.Glass);
        return glass is null ? NotSaid : $"{glass.Name}, {IceName(catalogue, build.ServedOn ?? glass.Ice).ToLowerInvariant()}";
    }

    private static string Apart(CardRequest request, DraftLine line)
    {
        var amount = Amounts(request, line, double.NaN).Amount;
        var name = request.Names[line.Ingredient];
        return Joined(amount == CardAmount.None || line.Unit == Unit.Rinse ? name : $"{amount} {name}", line.Treatment);
    }

    private static CardLine Line(CardRequest request, DraftLine line, int number, double topUp)
    {
        var (amount, other) = Amounts(request, line, topUp);
        // "on top" says it all for a top; a mixed line needs no word.
        var joins = line.Joins switch
        {
            Joins.InTheGlass => "in the glass",
            Joins.OnTop when !line.IsTopUp => "last, on top",
            _ => "",
        };
        return new CardLine(number, amount, other, request.Names[line.Ingredient], Joined(line.Treatment, CardWords.Start(line.StartCelsius, request.Format), joins));
    }

    private static (CardAmount Amount, CardAmount Other) Amounts(CardRequest request, DraftLine line, double topUp)
    {
        var format = request.Format;
        switch (line.Unit)
        {
            case Unit.Millilitre or Unit.Centilitre or Unit.Litre or Unit.Part when double.IsFinite(line.Millilitres):
                if (line.AmountHigh > line.AmountLow)
                {
                    var scale = line.Millilitres / line.Amount;
                    return (new CardAmount($"{Figure(line.AmountLow * scale, 2, format)}–{Figure(line.AmountHigh * scale, 2, format)}", "mL"), CardAmount.None);
                }
                return Poured(request, request.Grid.FromMillilitres(line.Millilitres));
            case Unit.FluidOunce when line.AmountHigh > line.AmountLow:
                return (new CardAmount($"{Count(line.AmountLow, format)}–{Count(line.AmountHigh, format)}", "fl oz"), CardAmount.None);
            case Unit.FluidOunce when double.IsFinite(line.Amount):
                return Poured(request, request.Grid.FromFluidOunces(line.Amount));
            case Unit.Gram when double.IsFinite(line.Amount):
                return (new CardAmount(Figure(line.Amount, 2, format), "g"), CardAmount.None);
            case Unit.Kilogram or Unit.WeightOunce or Unit.Pound when double.IsFinite(line.Amount):
                var unit = line.Unit == Unit.Kilogram ? "kg" : line.Unit == Unit.Pound ? "lb" : "oz wt";
                return (new CardAmount(Count(line.Amount, format), unit), double.IsFinite(line.Grams) ? new CardAmount(format.Number(line.Grams, 0), "g") : CardAmount.None);
            case Unit.Top:
                return (new CardAmount("top", ""), topUp > 0 ? new CardAmount($"≈ {format.Number(5 * Math.Round(topUp / 5), 0)}", "mL") : CardAmount.None);
            case Unit.None or Unit.Rinse:
                return (CardAmount.None, CardAmount.None);
            default:
                return (Counted(line, format), InMillilitres(line, format));
        }
    }

    private static (CardAmount, CardAmount) Poured(CardRequest request, PouredAmount poured)
    {
        var millilitres = poured.Millilitres.Length == 0 ? CardAmount.None : new CardAmount(Written(poured.Millilitres, request.Format), "mL");
        var ounces = poured.FluidOunces.Length == 0 ? CardAmount.None : new CardAmount(Written(poured.FluidOunces, request.Format), "fl oz");
        var ouncesFirst = millilitres == CardAmount.None || (request.FluidOuncesFirst && ounces != CardAmount.None);
        return ouncesFirst ? (ounces, millilitres) : (millilitres, ounces);
    }

    private static CardAmount Counted(DraftLine line, HouseFormat format)
    {
        if (double.IsNaN(line.Amount))
        {
            return new CardAmount(UnitLabel.Of(line.Unit, one: true), "");
        }
        return line.AmountHigh > line.AmountLow
            ? new CardAmount($"{Count(line.AmountLow, format)}–{Count(line.AmountHigh, format)}", UnitLabel.Of(line.Unit, one: false))
            : new CardAmount(Count(line.Amount, format), UnitLabel.Of(line.Unit, line.Amount <= 1));
    }

    // A spoon and a drop hold what the measures say. A dash differs threefold between dashers, and a splash is a gesture:
    // millilitres beside them would be invented.
    private static CardAmount InMillilitres(DraftLine line, HouseFormat format)
    {
        if (line.Unit is not (Unit.Teaspoon or Unit.Tablespoon or Unit.BarSpoon or Unit.Drop or Unit.Cup or Unit.Float) || !(line.Millilitres > 0))
        {
            return CardAmount.None;
        }
        var figure = Figure(line.Millilitres, line.Millilitres < 10 ? 1 : 0, format);
        return new CardAmount(figure == "0" ? $"< {format.Number(0.1, 1)}" : figure, "mL");
    }

    private static List<LadderRung> Ladder(CardRequest request, List<DraftLine> poured, double topUp)
    {
        var rungs = new List<LadderRung>();
        var total = 0.0;
        var number = 0;
        var melt = MeltMillilitres(request, poured);
        foreach (var line in poured)
        {
            number++;
            if (line.Joins != Joins.Mixed && melt > 0)
            {
                total = Add(rungs, request.Format, RungKind.Melt, 0, total, melt);
                melt = 0;
            }
            var millilitres = line.IsTopUp ? topUp : line.Millilitres;
            total = Add(rungs, request.Format, RungKind.Line, number, total, double.IsFinite(millilitres) ? millilitres : 0);
        }
        total = Add(rungs, request.Format, RungKind.Melt, 0, total, melt);
        Add(rungs, request.Format, RungKind.Ice, 0, total, IceMillilitres(request));
        return rungs;
    }

    private static double Add(List<LadderRung> rungs, HouseFormat format, RungKind kind, int number, double total, double millilitres)
    {
        var to = total + millilitres;
        if (millilitres >= SmallestRungMillilitres)
        {
            // Half a millilitre is as fine as a glass shows; the first line says its own amount.
            var figure = Figure(Math.Round(2 * to) / 2, kind == RungKind.Line ? 1 : 0, format);
            rungs.Add(new LadderRung(kind, number, total, to, kind switch
            {
                RungKind.Melt => $"ice to {figure}",
                RungKind.Ice => $"on ice {figure}",
                _ => rungs.Count == 0 ? figure : $"to {figure}",
            }));
        }
        return to;
    }

    /// <summary>Water that the ice gave, mL; 0 where it is not known.</summary>
    private static double MeltMillilitres(CardRequest request, List<DraftLine> poured)
    {
        var dilution = request.Balance.Served?[Metric.Dilution].Value ?? double.NaN;
        var mixed = poured.Where(line => line.Joins == Joins.Mixed && double.IsFinite(line.Millilitres)).Sum(line => line.Millilitres);
        return dilution > 0 ? dilution / 100 * mixed : 0;
    }

    /// <summary>What one top to the wash line came to, mL; NaN where there is none or it is not known.</summary>
    private static double TopUpMillilitres(CardRequest request, List<DraftLine> poured)
    {
        var tops = poured.Count(line => line.IsTopUp);
        if (tops == 0 || request.Balance.Served is not { } served)
        {
            return double.NaN;
        }
        var rest = poured.Where(line => !line.IsTopUp && double.IsFinite(line.Millilitres)).Sum(line => line.Millilitres);
        return Math.Max(0, served[Metric.Volume].Value - rest - MeltMillilitres(request, poured)) / tops;
    }

    /// <summary>What the ice in the served glass takes up, mL; 0 where there is none or it is not known.</summary>
    private static double IceMillilitres(CardRequest request)
    {
        if (request.Balance.Served is not { } served || request.Catalogue.Glass(request.Build.Glass) is not { } glass)
        {
            return 0;
        }
        var ice = served[Metric.GlassFill].Value / 100 * glass.WashLineMillilitres - served[Metric.Volume].Value;
        return ice > 0 ? ice : 0;
    }

    private static string Count(double value, HouseFormat format) => PourGrid.Fraction(value) is { Length: > 0 } fraction ? fraction : Figure(value, 2, format);

    // So many decimals at most, and no zeros behind them.
    private static string Figure(double value, int decimals, HouseFormat format)
    {
        var text = format.Number(value, decimals);
        return decimals == 0 ? text : text.TrimEnd('0').TrimEnd('.', ',');
    }

    // The grid writes with a point; fractions have none.
    private static string Written(string figure, HouseFormat format) => format.Numbers == NumberPattern.Comma ? figure.Replace('.', ',') : figure;

    private static string Joined(params ReadOnlySpan<string> parts)
    {
        var said = new List<string>();
        foreach (var part in parts)
        {
            if (part.Length > 0)
            {
                said.Add(part);
            }
        }
        return string.Join(", ", said);
    }
}
