namespace MenuLab.EndToEnd;

/// <summary>What the tests type; all of it invented.</summary>
internal static class TypedTexts
{
    /// <summary>A short sour of the invented harbour bar, everything readable.</summary>
    public const string LowWater =
        "Low Water\n45 ml black tea, brewed\n22.5 ml honey syrup\n15 ml lemon juice\n15 ml verjus\n2 drops saline\nShake, fine strain into a coupe\nGarnish: rosemary sprig";

    /// <summary>How many of its lines are lines of the drink.</summary>
    public const int LowWaterLines = 6;
}
