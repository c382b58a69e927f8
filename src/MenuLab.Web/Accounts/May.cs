namespace MenuLab.Web.Accounts;

/// <summary>Names of the authorization policies. Every route names one; a route without is closed.</summary>
public static class May
{
    /// <summary>No sign-in: health, style sheets, scripts, status pages.</summary>
    public const string Everyone = nameof(Everyone);

    /// <summary>Read drinks: type or paste one and see its balance. Stores nothing.</summary>
    public const string ReadDrinks = nameof(ReadDrinks);

    /// <summary>Work drinks: pantry, prices, drafts, iterations, import, house settings.</summary>
    public const string WorkDrinks = nameof(WorkDrinks);
}
