using MenuLab.Core.Pantry;
using MenuLab.Core.Quantities;

namespace MenuLab.Core.Drafts;

/// <summary>What a drink must achieve before any liquid is touched. All of it may be left open.</summary>
public sealed record Brief
{
    /// <summary>Most characters in one of its texts.</summary>
    public const int TextMaxLength = 500;

    /// <summary>A brief that leaves everything open.</summary>
    public static Brief Open { get; } = new();

    /// <summary>The slot on the menu it is for.</summary>
    public string Slot { get; init; } = "";

    /// <summary>What the menu will claim, e.g. "below 0.5 % ABV".</summary>
    public string Claim { get; init; } = "";

    /// <summary>The direction of flavour.</summary>
    public string Flavour { get; init; } = "";

    /// <summary>What a drink may cost to pour, net; null where open.</summary>
    public Money? CostLimit { get; init; }

    /// <summary>What it is to sell for, as on the menu; null where open.</summary>
    public Money? Price { get; init; }

    /// <summary>Allergens to avoid; those marked present are to be avoided.</summary>
    public AllergenSet Avoid { get; init; }

    /// <summary>Equipment that there is, or is not.</summary>
    public string Equipment { get; init; } = "";

    /// <summary>The day it must be ready; null where open.</summary>
    public DateOnly? Due { get; init; }
}

/// <summary>The fields of a brief; each is merged on its own.</summary>
[Flags]
public enum BriefFields
{
    /// <summary>None.</summary>
    None = 0,
    /// <summary><see cref="Brief.Slot"/>.</summary>
    Slot = 1,
    /// <summary><see cref="Brief.Claim"/>.</summary>
    Claim = 2,
    /// <summary><see cref="Brief.Flavour"/>.</summary>
    Flavour = 4,
    /// <summary><see cref="Brief.CostLimit"/>.</summary>
    CostLimit = 8,
    /// <summary><see cref="Brief.Price"/>.</summary>
    Price = 16,
    /// <summary><see cref="Brief.Avoid"/>.</summary>
    Avoid = 32,
    /// <summary><see cref="Brief.Equipment"/>.</summary>
    Equipment = 64,
    /// <summary><see cref="Brief.Due"/>.</summary>
    Due = 128,
}

/// <summary>Where the work on a draft stands.</summary>
public enum Standing
{
    /// <summary>Being worked on.</summary>
    InTheWorks,
    /// <summary>Put aside for now.</summary>
    Parked,
    /// <summary>Given up, with the reason.</summary>
    Dropped,
}
