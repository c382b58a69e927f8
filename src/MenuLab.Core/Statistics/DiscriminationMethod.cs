namespace MenuLab.Core.Statistics;

/// <summary>How a difference is asked for, each with a forced choice: nobody may answer "I don't know".</summary>
public enum DiscriminationMethod
{
    /// <summary>Three glasses, two alike: which is the odd one?</summary>
    Triangle,
    /// <summary>A known reference and two glasses: which is like the reference?</summary>
    DuoTrio,
    /// <summary>Two glasses: which has more of a named property?</summary>
    PairedComparison,
    /// <summary>Three glasses, two of them the weaker: which is the strongest in a named property?</summary>
    ThreeGlasses,
    /// <summary>Four glasses, two and two alike: make the two pairs.</summary>
    Tetrad,
}

/// <summary>What the methods have in common.</summary>
public static class DiscriminationMethods
{
    /// <summary>Below this many judgements a triangle or a duo-trio has next to no chance of showing what a panel can taste.</summary>
    public const int FewForTriangles = 24;

    /// <summary>Share of right answers from guessing alone.</summary>
    /// <returns>1/2 or 1/3.</returns>
    /// <remarks>Source: the number of answers to choose from; for the tetrad three ways to make two pairs. Valid for: any forced choice. Error: none.</remarks>
    public static double Guess(this DiscriminationMethod method) =>
        method is DiscriminationMethod.DuoTrio or DiscriminationMethod.PairedComparison ? 1.0 / 2 : 1.0 / 3;

    /// <summary>Which method to plan: with few tasters a paired comparison when the property is known, a tetrad when it is not.</summary>
    /// <param name="propertyKnown">The tasters can be told what to look for.</param>
    /// <remarks>Source: docs/statistics.md, section 4.6 (power of twelve judgements). Valid for: 4 to 12 tasters. Error: advice, no figure.</remarks>
    public static DiscriminationMethod ForSmallPanel(bool propertyKnown) =>
        propertyKnown ? DiscriminationMethod.PairedComparison : DiscriminationMethod.Tetrad;

    /// <summary>A warning when the method is too blunt for so few judgements; null when it is not.</summary>
    /// <param name="method">The method.</param>
    /// <param name="judgements">How many judgements are planned, 1 or more.</param>
    /// <remarks>Source: docs/statistics.md, section 4.6. Valid for: planning. Error: the limit of 24 is a choice of ours.</remarks>
    public static string? Warning(DiscriminationMethod method, int judgements)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(judgements, 1);
        return method is DiscriminationMethod.Triangle or DiscriminationMethod.DuoTrio && judgements < FewForTriangles
            ? "With fewer than 24 judgements this test misses most differences that tasters can notice. Pairs of two and two glasses, or a question about one named property, tell more."
            : null;
    }
}
