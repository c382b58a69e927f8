namespace MenuLab.Core.Safety;

/// <summary>The quantities that a rule can compare, each with its unit: one closed list, so that a rule cannot name a figure that nobody ever works out.</summary>
public static class SafetyQuantities
{
    private static readonly Dictionary<string, string> Units = new(StringComparer.Ordinal)
    {
        ["ph"] = "", ["final_ph"] = "", ["natural_ph"] = "", ["ferment_ph"] = "", ["drink_ph"] = "", ["ph_in_copper"] = "", ["ph_to_edge"] = "",
        ["aw"] = "", ["aw_to_edge"] = "",
        ["cold_hold_celsius"] = "°C", ["hours_57_to_21"] = "h", ["hours_57_to_5"] = "h", ["hours_room_to_5"] = "h", ["hours_out_of_cooling"] = "h", ["hours_above_8"] = "h",
        ["days_counting_made"] = "days", ["oil_infusion_days"] = "days", ["vacuum_days"] = "days",
        ["abv_percent"] = "% vol", ["low_abv_percent"] = "% vol", ["non_alcoholic_abv_percent"] = "% vol", ["alcohol_free_abv_percent"] = "% vol",
        ["ferment_abv_percent"] = "% vol", ["ferment_potential_abv_percent"] = "% vol",
        ["session_ethanol_g"] = "g", ["standard_drinks"] = "standard drinks", ["weekly_units"] = "units", ["age_years"] = "years",
        ["quinine_mg"] = "mg", ["quinine_mg_per_l"] = "mg/L", ["quinine_mg_per_kg"] = "mg/kg",
        ["caffeine_mg"] = "mg", ["caffeine_mg_per_l"] = "mg/L",
        ["coumarin_mg_per_kg_body"] = "mg/kg body", ["steviol_mg_per_kg_body"] = "mg/kg body", ["erythritol_g_per_kg_body"] = "g/kg body",
        ["safrole_mg_per_kg"] = "mg/kg", ["beta_asarone_mg_per_kg"] = "mg/kg", ["thujone_mg_per_l"] = "mg/L", ["thujone_mg_per_kg"] = "mg/kg", ["quassin_mg_per_kg"] = "mg/kg",
        ["estragole_mg_per_kg"] = "mg/kg", ["pulegone_mg_per_kg"] = "mg/kg", ["methyleugenol_mg_per_kg"] = "mg/kg", ["hcn_mg_per_kg"] = "mg/kg",
        ["nutmeg_g"] = "g", ["glycyrrhizin_percent"] = "%", ["glycyrrhizin_mg_per_l"] = "mg/L", ["glycyrrhizin_mg"] = "mg",
        ["polyol_percent"] = "%", ["so2_mg_per_l"] = "mg/L", ["so2_mg_per_kg"] = "mg/kg", ["p2o5_mg_per_l"] = "mg/L", ["magnesium_mg"] = "mg",
        ["bottle_sugar_g_per_l"] = "g/L", ["room_co2_ppm"] = "ppm",
        ["sugar_g_per_100ml"] = "g/100 mL",
    };

    /// <summary>All keys.</summary>
    public static IReadOnlyCollection<string> All => Units.Keys;

    /// <summary>The unit of a quantity; empty for a pure number, null where there is no such quantity.</summary>
    public static string? Unit(string quantity) => Units.GetValueOrDefault(quantity);
}
