using System.Globalization;
using System.Text.RegularExpressions;
using MenuLab.Core.Solutions;

namespace MenuLab.TestKit.Solutions;

/// <summary>Every row of reference-vectors.csv and what the code gives for it; each row names its source. An unknown computation throws, so that none is skipped.</summary>
public static partial class ReferenceVectors
{
    public static IReadOnlyList<OracleRow> All { get; } = Oracle.Rows("reference-vectors.csv");

    public static OracleRow Row(string id) => All.Single(row => row.Text("id") == id);

    public static double Compute(OracleRow row)
    {
        var inputs = row.Text("inputs");
        switch (row.Text("computation"))
        {
            case "sucrose density kg/m3":
                return SucroseDensity.KilogramsPerCubicMetre(Named(inputs, "B"), Named(inputs, "t"));
            case "g sucrose per L":
                return 10 * SucroseDensity.GramsPer100Millilitres(Named(inputs, "B"), Named(inputs, "t"));
            case "Brix from density":
                return SucroseDensity.BrixFrom(Named(inputs, "rho"), Named(inputs, "t"));
            case "water density":
                return WaterDensity.KilogramsPerCubicMetre(Named(inputs, "t"));
            case "ethanol-water density" or "ethanol-water density (cross terms)":
                return EthanolDensity.KilogramsPerCubicMetre(Named(inputs, "p"), Named(inputs, "t"));
            case "SG 20/4":
                // 999.972 kg/m3 is water at 4 C, as the reference states.
                return EthanolDensity.KilogramsPerCubicMetre(Named(inputs, "mass pct") / 100) / 999.972;
            case "ABV pct":
                return EthanolDensity.AbvPercent(Named(inputs, "mass pct") / 100);
            case "ABW pct":
                return 100 * EthanolDensity.MassFraction(Named(inputs, "ABV"));
            case "ternary density kg/m3":
                return TernaryDensity(Named(inputs, "ABV"), Named(inputs, "sucrose g/L"));
            case "pH (Davies)" or "pH":
                return AcidBase.Solve(AcidsIn(inputs), inputs.Contains("SID", StringComparison.Ordinal) ? Named(inputs, "SID") : 0).Ph;
            case "acid factor g/meq":
                return AcidFactor(inputs);
            case "sucrose viscosity mPa s":
                return Viscosity.Sucrose(Named(inputs, "B"), Named(inputs, "t"));
            case "freezing depression C":
                var percent = inputs.StartsWith('B') ? Named(inputs, "B") : Named(inputs, "ethanol mass pct");
                return -Freezing.PointCelsius(new Liquid(
                    inputs.StartsWith('B') ? State.Simple(100 - percent, 0, percent) : State.Simple(100 - percent, percent, 0)));
            case "CO2 Bunsen coefficient":
                return Carbonation.Bunsen(Named(inputs, "t"));
            case "CO2 Henry constant g/(L bar)":
                return Carbonation.GramsPerLitreBar(Named(inputs, "t"), Named(inputs, "ABV"), Named(inputs, "solids g/L"));
            case "water activity":
                return WaterActivity.OfSucrose(Named(inputs, "sucrose molality"));
            case "melt g" when row.Text("id") == "ICE_LIMIT":
                return Ice.Chill(new Liquid(State.Simple(99.82, 0, 0)), 20, new IceSettings(200, 0, 0, 0, 20, 0, 0, CapAtStart: false)).MeltedGrams;
            case "melt g":
                return ChilledCase(row.Text("id")).Chilled.MeltedGrams;
            case "final T C":
                return ChilledCase(row.Text("id")).Chilled.Celsius;
            case "dilution fraction":
                var (chilled, state) = ChilledCase(row.Text("id"));
                return chilled.AddedWaterGrams / 0.9982 / Density.Millilitres(new Liquid(state));
            case "kJ per 100 mL":
                return EnergyOf(inputs, LinearForm.KilojoulesEu);
            case "kcal per 100 mL":
                return EnergyOf(inputs == "same" ? Row("EN1").Text("inputs") : inputs, LinearForm.KilocaloriesEu);
            case "Brix:acid":
                var two = Numbers(inputs);
                return Refractometer.BrixAcidRatio(two[0], two[1]);
            case "mixed viscosity mPa s":
                var mixed = Numbers(inputs);
                return Viscosity.Mixed(mixed[0], mixed[1], mixed[2], mixed[3]);
            case "mixed drink volume mL":
                return Density.Millilitres(new Liquid(State.WorkedDrink()));
            case var unknown:
                throw new NotSupportedException($"No test knows the computation {unknown}.");
        }
    }

    // Grams of water that fill a litre holding so much ethanol and sugar, found by halving; the density follows.
    private static double TernaryDensity(double abv, double sucroseGramsPerLitre)
    {
        var ethanol = abv * 10 * EthanolDensity.PureAt20 / 1000;
        double low = 0, high = 1000;
        for (var i = 0; i < 100; i++)
        {
            var water = (low + high) / 2;
            if (Density.Millilitres(new Liquid(State.Simple(water, ethanol, sucroseGramsPerLitre))) > 1000)
            {
                high = water;
            }
            else
            {
                low = water;
            }
        }
        return low + ethanol + sucroseGramsPerLitre;
    }

    private static double AcidFactor(string acid) => acid switch
    {
        "citric monohydrate" => AcidBase.CitricMonohydrateGramsPerMole / Components.GramsPerUnit(Component.Citric)
                                * AcidBase.EquivalentMass(Component.Citric) / 1000,
        _ => AcidBase.EquivalentMass(Enum.Parse<Component>(acid, ignoreCase: true)) / 1000,
    };

    private static (Chilled Chilled, double[] State) ChilledCase(string id)
    {
        var inputs = Row(id[..^1] + "M").Text("inputs");
        var grams = Numbers(inputs[..inputs.IndexOf('{', StringComparison.Ordinal)]);
        var state = State.Simple(grams[0], grams[1], grams[2]);
        var settings = new IceSettings(
            200, -1, 0.02, Named(inputs, "'cv'"), 22, Named(inputs, "'Qamb'"), Named(inputs, "'delta'"), CapAtStart: id.StartsWith("ICE_C", StringComparison.Ordinal));
        return (Ice.Chill(new Liquid(state), 22, settings), state);
    }

    private static double EnergyOf(string inputs, LinearForm form)
    {
        var n = Numbers(inputs);
        var state = State.Of(
            (Component.Ethanol, n[0] * EthanolDensity.PureAt20 / 1000), (Component.Sucrose, n[1]),
            (Component.Citric, State.Moles(Component.Citric, n[2])), (Component.OtherPolyol, n[3]));
        var forms = new double[LinearForms.Count];
        LinearForms.Of(state, forms);
        return forms[(int)form];
    }

    private static double[] AcidsIn(string inputs)
    {
        var acids = new double[Components.AcidCount];
        foreach (Match match in AcidPattern().Matches(inputs))
        {
            var acid = Enum.Parse<Component>(match.Groups[1].Value, ignoreCase: true);
            acids[acid - Components.FirstAcid] = double.Parse(match.Groups[2].Value, CultureInfo.InvariantCulture);
        }
        return acids;
    }

    private static double Named(string inputs, string name)
    {
        var match = Regex.Match(inputs, $@"(?:^|[;{{, ]){Regex.Escape(name)}\s*[=:]\s*(-?[0-9.]+(?:e-?[0-9]+)?)");
        return match.Success ? double.Parse(match.Groups[1].Value, CultureInfo.InvariantCulture) : throw new InvalidDataException($"No {name} in {inputs}.");
    }

    private static double[] Numbers(string inputs) =>
        [.. NumberPattern().Matches(inputs).Select(match => double.Parse(match.Value, CultureInfo.InvariantCulture))];

    [GeneratedRegex(@"'(\w+)':\s*([0-9.e-]+)")]
    private static partial Regex AcidPattern();

    [GeneratedRegex(@"-?[0-9]+(?:\.[0-9]+)?(?:e-?[0-9]+)?")]
    private static partial Regex NumberPattern();
}
