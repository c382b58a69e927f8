namespace MenuLab.Core.Drafts.Rounds;

/// <summary>How large the pours of a round are.</summary>
public enum SizeKind
{
    /// <summary>A whole drink.</summary>
    Full,
    /// <summary>Half a drink.</summary>
    Half,
    /// <summary>A third of a drink.</summary>
    Third,
    /// <summary>So many grams of what is poured, before ice and tops.</summary>
    ByWeight,
}

/// <summary>How large the pours of a round are. The default is a whole drink.</summary>
/// <param name="Kind">Which.</param>
/// <param name="Grams">g of a pour before ice and tops, for <see cref="SizeKind.ByWeight"/>; else null.</param>
public readonly record struct RoundSize(SizeKind Kind, double? Grams = null)
{
    /// <summary>Lightest pour by weight, g: below it a drop more or less is half the line.</summary>
    public const double LightestGrams = 5;

    /// <summary>Heaviest pour by weight, g.</summary>
    public const double HeaviestGrams = 5000;

    /// <summary>A whole drink.</summary>
    public static RoundSize Full { get; }

    /// <summary>Half a drink.</summary>
    public static RoundSize Half { get; } = new(SizeKind.Half);

    /// <summary>A third of a drink.</summary>
    public static RoundSize Third { get; } = new(SizeKind.Third);

    /// <summary>So many grams.</summary>
    public static RoundSize ByWeight(double grams) => new(SizeKind.ByWeight, grams);

    /// <summary>Share of a whole drink that a pour is.</summary>
    /// <param name="drinkGrams">Mass of the whole drink before ice and tops, g; above 0 for a size by weight.</param>
    public double ShareOf(double drinkGrams) => Kind switch
    {
        SizeKind.Half => 0.5,
        SizeKind.Third => 1 / 3.0,
        SizeKind.ByWeight => Grams!.Value / drinkGrams,
        _ => 1,
    };
}
