using System.Globalization;
using System.Text.Json;
using MenuLab.Core.Drafts;
using MenuLab.Core.Pantry;
using MenuLab.Core.Safety;
using MenuLab.Core.Solutions;

namespace MenuLab.Core.Tests.Safety;

/// <summary>
/// The worked cases of safety-cases.csv, through the public functions. Each kind of case names how its inputs are handed over and which word of
/// the table an answer is; the answer itself comes from the rules. A test below counts that every case was run.
/// </summary>
public class SafetyCasesTests
{
    private static readonly List<Dictionary<string, string>> Table = TestTable.Read("safety-cases.csv");

    public static TheoryData<string> Ids => [.. Table.Select(row => row["case_id"])];

    [Theory]
    [MemberData(nameof(Ids))]
    public void A_worked_case_is_decided_as_its_source_says(string id)
    {
        var row = Table.Single(r => r["case_id"] == id);
        using var json = JsonDocument.Parse(row["inputs_json"]);
        var (word, value) = Kinds[row["check"]](new Inputs(json.RootElement, row["rule_id"]));
        Assert.Equal(row["expected"], word);
        if (row["expected_value"].Length > 0)
        {
            if (value is DateOnly day)
            {
                Assert.Equal(row["expected_value"], day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
            }
            else
            {
                var expected = double.Parse(row["expected_value"], CultureInfo.InvariantCulture);
                Assert.InRange(Assert.IsType<double>(value), expected - Tolerance(row["expected_value"]), expected + Tolerance(row["expected_value"]));
            }
        }
    }

    [Fact]
    public void There_are_109_cases_and_a_way_to_run_each_kind()
    {
        Assert.Equal(109, Table.Count);
        Assert.Equal(109, Table.Select(r => r["case_id"]).Distinct().Count());
        Assert.All(Table, r => Assert.Contains(r["check"], Kinds.Keys));
    }

    // Half a unit of the last digit; a whole number of five digits or more is one that was computed with a rounded factor, right to 1 in 10,000.
    private static double Tolerance(string text) =>
        text.Contains('.', StringComparison.Ordinal) ? 0.5000001 * Math.Pow(10, -(text.Length - text.IndexOf('.', StringComparison.Ordinal) - 1))
        : text.Length > 4 ? 1e-4 * double.Parse(text, CultureInfo.InvariantCulture) : 1e-9;

    private static readonly Dictionary<string, Func<Inputs, (string Word, object? Value)>> Kinds = new()
    {
        ["tcs_table"] = i => (Word(TcsTables.Box(Rules.Book, i.Text("table") == "A" ? TcsTable.A : TcsTable.B, i["ph"], i["aw"]).Result), null),
        ["tcs_table_choice"] = i => (TcsTables.Choose(i.Flag("heat_treated"), i.Flag("packaged_after")).ToString(), null),
        ["tcs_unknown"] = i => (Decide(i).HoldCold ? "TREAT_AS_TCS" : "NON_TCS", null),
        ["syrup_aw"] = i =>
        {
            var activity = WaterActivity.OfSucrose(1000 * i["sucrose_percent"] / 342.297 / (100 - i["sucrose_percent"]));
            return (Word(TcsTables.Box(Rules.Book, TcsTable.B, i["ph"], activity).Result), activity);
        },
        ["cold_hold"] = i => PassOrFail(i, ColdChain.Holding(Rules.Us, i["temp_c"])),
        ["cold_hold_uk"] = i => PassOrFail(i, ColdChain.Holding(Rules.In("UK"), i["temp_c"])),
        ["cooling"] = i => PassOrFail(i, ColdChain.CooledFromHot(Rules.Us, i["h_57_to_21"], i["h_total_to_5"])),
        ["cooling_ambient"] = i => PassOrFail(i, ColdChain.CooledFromRoom(Rules.Us, i["h_to_5"])),
        ["date_mark"] = i => ("USE_BY", Suggested().LastDay(i.Day("made"))),
        ["date_mark_blend"] = i => ("USE_BY", Suggested().LastDay(DateMark.OfBlend(i.Days("made")))),
        ["date_mark_frozen"] = i => ("USE_BY", Suggested().LastDay(i.Day("made"), new FreezerStay(i.Day("frozen"), i.Day("thawed")))),
        ["oil_infusion"] = i => PassOrFail(i, Rules.Us.Check(SafetyFacts.None.With("oil_infusion_days", i["days_cold"]))),
        ["acid_variance"] = i => (Rules.Of(TcsDecision.Of(
            new PrepToHold { Ph = new SafetyReading(i["final_ph"], ReadingOrigin.Measured), IsAcidAddedToAvoidCold = i.Flag("acid_added_to_avoid_cold") }, Rules.Us).Cautions, i.Rule)
            is { NeedsReason: true } ? "VARIANCE_NEEDED" : "NO", null),
        ["acidified_food"] = i => (Fired(i, SafetyFacts.None
            .With("final_ph", i["final_ph"]).With("natural_ph", i["natural_ph"]).With("aw", i["aw"])
            .With("shelf_stable_packaged", i.Flag("shelf_stable_packaged")).With("refrigerated", i.Flag("refrigerated"))
            .With("carbonated", i.Flag("carbonated")).With("alcoholic", i.Flag("alcoholic"))) is null ? "EXCLUDED" : "ACIDIFIED_FOOD", null),
        ["juice_label"] = i => (Fired(i, SafetyFacts.None.With("juice_packaged_on_site", i.Flag("packaged")).With("five_log", i.Flag("five_log"))) is null ? "NO_LABEL" : "WARNING_REQUIRED", null),
        ["abv_mix"] = i => ("ABV", Doses.Abv(i.Pairs("parts").Select(p => new EthanolPart("part", p.First, p.Second)), i["final_ml"])),
        ["abv_claim"] = AbvClaim,
        ["print_claim"] = i => (AlcoholClaims.ToPrint(Rules.In(i.Text("jurisdiction")), OneWord(i), SafetyFigure.Exactly(i["abv"]), i.Flag("ethanol_ingredient")).Answer == ClaimAnswer.Allowed
            ? "ALLOWED" : "NOT_ALLOWED", null),
        ["ferment"] = i => (Fired(i, SafetyFacts.None.With("ferment_abv_percent", SafetyFigure.UpTo(i["abv_at_bottling"], i["abv_end_of_life"]))) is null ? "UNDER" : "ALCOHOL_BEVERAGE", null),
        ["ferment_potential"] = i =>
        {
            var potential = Doses.PotentialAbv(i["residual_sugar_g_l"]);
            return (Fired(i, SafetyFacts.None.With("ferment_potential_abv_percent", potential)) is null ? "UNDER_0_5" : "OVER_0_5", potential);
        },
        ["quinine"] = i =>
        {
            var level = Doses.PerLitre(i["quinine_base_mg"], i["drink_ml"]);
            var cautions = Rules.Us.Check(SafetyFacts.None.With("carbonated", true).With("quinine_mg_per_l", level).With("quinine_mg", i["quinine_base_mg"]));
            return (cautions.Of(i.Rule) is { NeedsReason: true } ? "BLOCK" : cautions.Of("SB-QUI-02") is { Strength: CautionStrength.Act } ? "OK_DECLARE" : "OK", level);
        },
        ["quinine_still"] = i => Strength(Fired(i, SafetyFacts.None.With("carbonated", i.Flag("carbonated")).With("quinine_mg", i["quinine_base_mg"]))),
        ["caffeine_eu"] = i =>
        {
            var level = Doses.PerLitre(i["caffeine_mg"], i["drink_ml"]);
            return (Rules.In("EU").Check(SafetyFacts.None.With("named_tea_or_coffee", i.Flag("named_tea_or_coffee")).With("caffeine_mg_per_l", level)).Of(i.Rule) is null ? "NO_LABEL" : "LABEL", level);
        },
        ["caffeine_single"] = i => Strength(Fired(i, SafetyFacts.None.With("caffeine_mg", i["caffeine_mg"]))),
        ["coumarin"] = i =>
        {
            var dose = Doses.PerBodyKilogram(Doses.Coumarin(i["cassia_g"], i["coumarin_g_per_kg"]), i["bw_kg"]);
            return Strength(Fired(i, SafetyFacts.None.With("coumarin_mg_per_kg_body", dose)), dose);
        },
        ["liquorice_eu"] = i =>
        {
            var facts = SafetyFacts.None.With("glycyrrhizin_mg_per_l", i["glycyrrhizin_mg_l"]);
            var cautions = Rules.In("EU").Check(i.Has("abv") ? facts.With("abv_percent", i["abv"]) : facts.With("abv_percent", 0.0));
            var label = cautions.Of("SB-LIQ-03") is null ? "NO_LABEL" : "LABEL";
            return (i.Rule == "SB-LIQ-03" ? label : label + (cautions.Of(i.Rule) is null ? "_NO_ADVICE" : "_AND_ADVICE"), null);
        },
        ["liquorice_us"] = i => Strength(Fired(i, SafetyFacts.None.With("alcoholic", i.Flag("alcoholic")).With("glycyrrhizin_percent", i["glycyrrhizin_percent"]))),
        ["polyol"] = i => (Rules.In("EU").Check(SafetyFacts.None.With("polyol_percent", i["polyol_percent"])).Of(i.Rule) is null ? "NO_LABEL" : "LABEL", null),
        ["sulphite_eu"] = i => (Rules.In("EU").Check(SafetyFacts.None.With("so2_mg_per_l", i["so2_mg_l"])).Of(i.Rule) is null ? "NO_LABEL" : "LABEL", null),
        ["sulphite_us"] = i => (Fired(i, SafetyFacts.None.With("so2_mg_per_kg", i["so2_ppm"])) is null ? "NO_LABEL" : "DECLARE", null),
        ["steviol"] = i =>
        {
            var dose = Doses.PerBodyKilogram(i["steviol_equiv_mg"], i["bw_kg"]);
            return Strength(Fired(i, SafetyFacts.None.With("steviol_mg_per_kg_body", dose)), dose);
        },
        ["copper"] = i => Strength(Fired(i, SafetyFacts.None.With("ph_in_copper", i["ph"]))),
        ["dry_ice_air"] = i =>
        {
            var level = Doses.RoomCarbonDioxide(i["dry_ice_kg"], i["room_m3"]);
            return Strength(Fired(i, SafetyFacts.None.With("room_co2_ppm", level)), level);
        },
        ["allergen"] = Allergens,
        ["round_kcal"] = i => Rounded("kcal", i["kcal"], i),
        ["round_g"] = i => Rounded("carbohydrate", i["sugars_g"], i),
        ["round_fat"] = i => Rounded("fat", i["fat_g"], i),
        ["round_sodium"] = i => Rounded("sodium", i["sodium_mg"], i),
        ["sugar_tier_uk"] = i => (NutritionLabels.Tier(Rules.Book, i["sugar_g_100ml"], i.Day("date")).ToString().ToUpperInvariant(), null),
        ["claim_eu_sugar"] = i => (NutritionLabels.MeetsClaim(Rules.In("EU"), "sugars_free", i["sugar_g_100ml"]) == true ? "SUGARS_FREE"
            : NutritionLabels.MeetsClaim(Rules.In("EU"), "low_sugars", i["sugar_g_100ml"]) == true ? "LOW_SUGARS" : "NONE", null),
        ["claim_eu_energy"] = i => (NutritionLabels.MeetsClaim(Rules.In("EU"), "low_energy", i["kcal_100ml"]) == true ? "LOW" : "NOT_LOW", null),
        ["menu_label_us"] = i => (NutritionLabels.Duties(Rules.Us, "locations", i["locations"]).Any(d => d.Id == i.Rule) ? "COVERED" : "NOT_COVERED", null),
        ["calorie_uk"] = i => (NutritionLabels.Duties(Rules.In("UK"), "employees", i["employees"]).Any(d => d.Id == i.Rule) ? "COVERED" : "NOT_COVERED", null),
        ["std_drinks"] = i => ("COUNT", StandardDrink.Of(Rules.Book, i.Text("country").Replace(" (unit)", "", StringComparison.Ordinal)).Count(i["ethanol_g"])),
    };

    private static string Word(TcsResult result) => result == TcsResult.Assessment ? "PA" : "NON_TCS";

    private static TcsDecision Decide(Inputs i) => TcsDecision.Of(
        new PrepToHold
        {
            Ph = i.Has("ph") ? new SafetyReading(i["ph"], i.Has("ph_source") && i.Text("ph_source") == "computed" ? ReadingOrigin.Computed : ReadingOrigin.Measured) : null,
            WaterActivity = i.Has("aw") ? new SafetyReading(i["aw"], ReadingOrigin.Measured) : null,
        }, Rules.Us);

    // An untested prep without a type: the date mark alone.
    private static UseBySuggestion Suggested() => UseBySuggestion.Of(null, null, Rules.Us);

    private static Caution? Fired(Inputs i, SafetyFacts facts) => Rules.Us.Check(facts).Of(i.Rule) ?? Rules.In("EU").Check(facts).Of(i.Rule);

    // The rules named, and no other that is law there: a limit that is passed by all is passed.
    private static (string, object?) PassOrFail(Inputs i, IReadOnlyList<Caution> cautions) =>
        (i.Rule.Split('|').Any(rule => cautions.Of(rule) is { NeedsReason: true }) ? "FAIL" : i.Rule.Split('|').All(rule => cautions.Of(rule) is null) ? "PASS" : "UNSETTLED", null);

    private static (string, object?) Strength(Caution? caution, object? value = null) => (caution?.Strength switch
    {
        null => "OK",
        CautionStrength.Strongest => "BLOCK",
        CautionStrength.Act => "ACT",
        CautionStrength.Mind => "CAUTION",
        _ => "INFO",
    }, value);

    private static AlcoholWord OneWord(Inputs i) => Assert.Single(Claims.WordsOf(i.Text("claim")));

    private static (string, object?) AbvClaim(Inputs i)
    {
        var rules = Rules.In(i.Text("jurisdiction") == "AU/NZ" ? "AU" : i.Text("jurisdiction"));
        var abv = SafetyFigure.Exactly(i["abv"]);
        if (Claims.WordsOf(i.Text("claim")).Count > 0)
        {
            return (AlcoholClaims.ByPlace(rules, OneWord(i), abv).Answer == ClaimAnswer.Allowed ? "ALLOWED" : "NOT_ALLOWED", null);
        }
        var applies = AlcoholClaims.Duties(rules, abv).Of(i.Rule) is not null;
        return (i.Text("claim") == "licensable" ? applies ? "LICENSABLE" : "NOT_LICENSABLE" : applies ? "REQUIRED" : "NOT_REQUIRED", null);
    }

    private static (string, object?) Allergens(Inputs i)
    {
        var where = Jurisdiction.Of(i.Text("jurisdiction") == "EU14" ? "EU" : i.Text("jurisdiction"));
        if (i.Has("key"))
        {
            return (AllergenLists.IsListed(Rules.Book, i.Text("key"), where) ? "DECLARE" : "NOT_MAJOR", null);
        }
        var listed = AllergenLists.InName(Rules.Book, i.Text("ingredient"))
            .Where(h => h.State == AllergenState.Present && AllergenLists.IsListed(Rules.Book, h.Key, where)).ToList();
        return (listed.Count == 0 ? "NOT_MAJOR" : string.Join('|', listed.Select(h => h.Species.Length > 0 ? $"{h.Key}:{h.Species}" : h.Key)), null);
    }

    private static (string, object?) Rounded(string key, double figure, Inputs i)
    {
        var declared = NutritionLabels.Round(Rules.Book, key, figure);
        Assert.Equal(i.Rule, declared.Band.Id);
        return (declared.Words.Length > 0 ? declared.Words : "ROUND", declared.Words.Length > 0 ? null : declared.Value);
    }

    /// <summary>The inputs of a case.</summary>
    private sealed class Inputs(JsonElement root, string rule)
    {
        public string Rule { get; } = rule;

        public double this[string name] => root.GetProperty(name).GetDouble();

        public bool Has(string name) => root.TryGetProperty(name, out var value) && value.ValueKind != JsonValueKind.Null;

        public bool Flag(string name) => root.GetProperty(name).GetBoolean();

        public string Text(string name) => root.GetProperty(name).GetString()!;

        public DateOnly Day(string name) => DateOnly.ParseExact(Text(name), "yyyy-MM-dd", CultureInfo.InvariantCulture);

        public List<DateOnly> Days(string name) => [.. root.GetProperty(name).EnumerateArray().Select(d => DateOnly.ParseExact(d.GetString()!, "yyyy-MM-dd", CultureInfo.InvariantCulture))];

        public List<(double First, double Second)> Pairs(string name) => [.. root.GetProperty(name).EnumerateArray().Select(p => (p[0].GetDouble(), p[1].GetDouble()))];
    }
}
