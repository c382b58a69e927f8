namespace MenuLab.Core.Drafts;

/// <summary>The kind of drink by its build; usual ranges hang on it.</summary>
/// <param name="Key">Stable key, as a draft keeps it.</param>
/// <param name="Name">Name as shown.</param>
/// <param name="Says">How it is built, one plain phrase.</param>
public sealed record Style(string Key, string Name, string Says);

/// <summary>The styles that a brief can name. Common practice, no source: they sort drinks by build, so that like is compared with like.</summary>
public static class Styles
{
    /// <summary>All styles, in the order a menu would have them.</summary>
    public static IReadOnlyList<Style> All { get; } =
    [
        new("before_food", "Before food", "bitter or dry, light, to open the appetite"),
        new("sparkling", "Sparkling", "with something that bubbles as a main part"),
        new("short_sour", "Short sour", "sweet against sour, shaken, served up or over ice"),
        new("over_ice", "Short, over ice", "stirred or built, sipped as the ice melts"),
        new("stirred_strong", "Stirred and strong", "no juice, stirred cold, served up"),
        new("long", "Long", "lengthened in a tall glass over ice"),
        new("frozen", "Frozen", "blended with ice, or churned"),
        new("creamy", "Creamy", "with cream, egg, coconut or another fat"),
        new("hot", "Hot", "served warm enough to steam"),
        new("after_food", "After food", "small and rich, bitter or sweet"),
    ];

    /// <summary>The style of a key; null for none, and for a key that nobody knows any more.</summary>
    public static Style? Find(string? key) => All.FirstOrDefault(s => s.Key == key);

    /// <summary>Name of a style; the key itself where nobody knows it any more, empty for none.</summary>
    public static string NameOf(string? key) => Find(key)?.Name ?? key ?? "";
}
