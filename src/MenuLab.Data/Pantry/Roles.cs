namespace MenuLab.Data.Pantry;

/// <summary>What an ingredient may be there for (design: Role).</summary>
public static class Roles
{
    /// <summary>The keys, in the order in which they are offered.</summary>
    public static IReadOnlyList<string> All { get; } =
        ["base", "sweet", "sour", "bitter", "grip", "body", "bite", "salt", "aroma", "lengthener", "colour"];
}
