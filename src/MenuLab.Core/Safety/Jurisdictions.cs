namespace MenuLab.Core.Safety;

/// <summary>Where a rule holds; several together for a rule that several share.</summary>
[Flags]
public enum Jurisdictions
{
    /// <summary>Nowhere.</summary>
    None = 0,
    /// <summary>United States: federal rules and the FDA Food Code, which states and cities adopt in different editions.</summary>
    UnitedStates = 1,
    /// <summary>United Kingdom.</summary>
    UnitedKingdom = 2,
    /// <summary>European Union.</summary>
    EuropeanUnion = 4,
    /// <summary>Canada, federal.</summary>
    Canada = 8,
    /// <summary>Australia and New Zealand.</summary>
    AustraliaNewZealand = 16,
    /// <summary>All of them: a rule for everywhere, or a place whose own law is not known here, which gets the strictest of all.</summary>
    All = UnitedStates | UnitedKingdom | EuropeanUnion | Canada | AustraliaNewZealand,
}

/// <summary>Reads jurisdictions.</summary>
public static class Jurisdiction
{
    private static readonly string[] MembersOfTheUnion =
        ["AT", "BE", "BG", "CY", "CZ", "DE", "DK", "EE", "ES", "FI", "FR", "GR", "HR", "HU", "IE", "IT", "LT", "LU", "LV", "MT", "NL", "PL", "PT", "RO", "SE", "SI", "SK"];

    private static readonly (Jurisdictions Where, string Key, string Name)[] Known =
    [
        (Jurisdictions.UnitedStates, "US", "US"), (Jurisdictions.UnitedKingdom, "UK", "UK"), (Jurisdictions.EuropeanUnion, "EU", "EU"),
        (Jurisdictions.Canada, "CA", "Canada"), (Jurisdictions.AustraliaNewZealand, "AU-NZ", "Australia and New Zealand"),
    ];

    /// <summary>The law that a site's own word for its jurisdiction stands for.</summary>
    /// <param name="site">What the site says: "EU", "US", "GB", "PT", "US-CA"...; ISO 3166 codes, with or without a part after a hyphen.</param>
    /// <returns>One jurisdiction; <see cref="Jurisdictions.All"/> for a place that is not known here, so that the strictest of all rules is shown.</returns>
    /// <remarks>A state, province or city may have rules of its own, which are not in here: local codes decide.</remarks>
    public static Jurisdictions Of(string site)
    {
        var code = site.Trim().ToUpperInvariant();
        var country = code.Split('-')[0];
        return country switch
        {
            "US" or "USA" => Jurisdictions.UnitedStates,
            "UK" or "GB" => Jurisdictions.UnitedKingdom,
            "CA" or "CANADA" => Jurisdictions.Canada,
            "AU" or "NZ" or "ANZ" => Jurisdictions.AustraliaNewZealand,
            "EU" => Jurisdictions.EuropeanUnion,
            _ => MembersOfTheUnion.Contains(country) ? Jurisdictions.EuropeanUnion : Jurisdictions.All,
        };
    }

    /// <summary>"US", "EU and UK", or "everywhere".</summary>
    public static string Name(Jurisdictions where)
    {
        if (where == Jurisdictions.All)
        {
            return "everywhere";
        }
        var names = Known.Where(k => (where & k.Where) != 0).Select(k => k.Name).ToList();
        return names.Count > 1 ? $"{string.Join(", ", names.SkipLast(1))} and {names[^1]}" : names.FirstOrDefault("nowhere");
    }

    /// <summary>Reads a cell of keys with blanks between, or "all"; null where a key is not known.</summary>
    internal static Jurisdictions? Read(string cell)
    {
        if (cell == "all")
        {
            return Jurisdictions.All;
        }
        var where = Jurisdictions.None;
        foreach (var key in cell.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            var found = Array.Find(Known, k => k.Key == key).Where;
            if (found == Jurisdictions.None)
            {
                return null;
            }
            where |= found;
        }
        return where == Jurisdictions.None ? null : where;
    }
}
