using MenuLab.Core.House;
using MenuLab.Core.Iterations;
using MenuLab.Core.Pantry;

namespace MenuLab.Data.Pantry;

// Rows and not Core's Ingredient itself: that one is what the reader and the engine need, built whole with its
// composition and with NaN for what is unknown, which SQLite cannot store. These are what people edit, figure by figure.

/// <summary>An ingredient as it is edited: its id is for ever; it is renamed, archived or merged, never deleted once used.</summary>
public sealed class IngredientRow
{
    public required IngredientId Id { get; init; }

    /// <summary>Stable key of a shipped ingredient; null for one of the house.</summary>
    public string? Key { get; set; }

    public required string Name { get; set; }

    /// <summary>The name as searched.</summary>
    public required string SearchName { get; set; }

    public required IngredientKind Kind { get; set; }

    /// <summary>What its figures are per: "100 g" or "100 mL".</summary>
    public required string Basis { get; set; }

    public required bool IsCarbonated { get; set; }

    public required bool HasRawEgg { get; set; }

    public required double KeptAtCelsius { get; set; }

    public string Note { get; set; } = "";

    public DateTimeOffset? ArchivedAt { get; set; }

    public PersonId? ArchivedBy { get; set; }

    /// <summary>The ingredient that took this one over; null while it stands for itself.</summary>
    public IngredientId? MergedInto { get; set; }

    public int Version { get; set; }

    public List<FigureRow> Figures { get; } = [];

    public List<AllergenRow> Allergens { get; } = [];

    public List<RoleRow> Roles { get; } = [];

    public List<AliasRow> Aliases { get; } = [];

    public List<PieceRow> Pieces { get; } = [];
}

/// <summary>One figure of an ingredient, with where it comes from; null where only bounds are known.</summary>
public sealed class FigureRow
{
    /// <summary>Name of the quantity, as in seed-data.</summary>
    public required string Quantity { get; init; }

    public double? Value { get; set; }

    public double? Low { get; set; }

    public double? High { get; set; }

    public required string Source { get; set; }

    public required FigureStatus Status { get; set; }

    /// <summary>Who holds it: "shipped N", "house" or "reading".</summary>
    public required string Origin { get; init; }
}

/// <summary>An allergen that is there or is an open question; what is absent has no row.</summary>
public sealed class AllergenRow
{
    public required Allergen Allergen { get; init; }

    public required AllergenState State { get; set; }

    /// <summary>Whose list it stands on: "EU", "US" or "EU US".</summary>
    public required string Law { get; set; }

    public required string Source { get; set; }

    /// <summary>The species, or what to ask.</summary>
    public string Note { get; set; } = "";
}

/// <summary>What an ingredient is there for, by the role's key.</summary>
public sealed class RoleRow
{
    public required string Role { get; init; }
}

/// <summary>Another way to write an ingredient.</summary>
public sealed class AliasRow
{
    public required string Alias { get; init; }

    /// <summary>The alias as searched.</summary>
    public required string SearchName { get; set; }

    /// <summary>Its place among the ingredient's aliases, from 1.</summary>
    public required int Place { get; set; }

    /// <summary>What it takes for granted, to be shown beside the line; empty for nothing.</summary>
    public string Assumes { get; set; } = "";
}

/// <summary>What a piece of an ingredient weighs.</summary>
public sealed class PieceRow
{
    public required string Measure { get; init; }

    public required double Grams { get; set; }

    public required string Source { get; set; }
}

/// <summary>A distinct composition, stored once under the hash of its canonical text.</summary>
public sealed class CompositionRow
{
    public required ContentHash Hash { get; init; }

    /// <summary>The canonical text.</summary>
    public required byte[] Body { get; init; }
}

/// <summary>The composition of an ingredient that drinks use today; derived, rebuilt at will.</summary>
public sealed class IngredientNowRow
{
    public required IngredientId Ingredient { get; init; }

    public required ContentHash Composition { get; set; }
}

/// <summary>Identifies a reading.</summary>
public readonly record struct ReadingId(Guid Value)
{
    public static ReadingId New() => new(Guid.CreateVersion7());
}

/// <summary>Something measured on the bench; a correction is a new row that replaces an old one.</summary>
public sealed class ReadingRow
{
    public required ReadingId Id { get; init; }

    public required IngredientId Ingredient { get; init; }

    /// <summary>What was read: "brix", "ph", "titration", …</summary>
    public required string Kind { get; init; }

    public required double Value { get; init; }

    public required string Unit { get; init; }

    /// <summary>Temperature of what was read, °C; null where nobody said.</summary>
    public double? Celsius { get; init; }

    public required DateOnly Day { get; init; }

    public required PersonId ReadBy { get; init; }

    public string Note { get; init; } = "";

    public ReadingId? Replaces { get; init; }
}

/// <summary>Identifies a pack.</summary>
public readonly record struct PackId(Guid Value)
{
    public static PackId New() => new(Guid.CreateVersion7());
}

/// <summary>How an ingredient is bought at a site.</summary>
public sealed class PackRow
{
    public required PackId Id { get; init; }

    public required IngredientId Ingredient { get; init; }

    public required SiteId Site { get; init; }

    public string Supplier { get; set; } = "";

    /// <summary>What is in it, in <see cref="Unit"/>.</summary>
    public required double Amount { get; set; }

    /// <summary>"ml", "g" or "piece".</summary>
    public required string Unit { get; set; }

    public DateTimeOffset? ArchivedAt { get; set; }
}

/// <summary>Identifies a price.</summary>
public readonly record struct PriceId(Guid Value)
{
    public static PriceId New() => new(Guid.CreateVersion7());
}

/// <summary>What a pack costs from a day on, as typed.</summary>
public sealed class PriceRow
{
    public required PriceId Id { get; init; }

    public required PackId Pack { get; init; }

    /// <summary>The price in 1/10,000 of the currency's unit.</summary>
    public required long Amount { get; init; }

    /// <summary>ISO 4217 code.</summary>
    public required string Currency { get; init; }

    /// <summary>Tax is in it.</summary>
    public required bool IsGross { get; init; }

    /// <summary>The tax rate in 1/10,000 of a per cent.</summary>
    public required long TaxRate { get; init; }

    public required DateOnly FromDay { get; init; }

    public required PersonId EnteredBy { get; init; }
}

/// <summary>An ingredient is in the house at a site; no row: it is not, as far as anybody has said.</summary>
public sealed class OnHandRow
{
    public required IngredientId Ingredient { get; init; }

    public required SiteId Site { get; init; }

    public required DateTimeOffset SaidAt { get; init; }

    public required PersonId SaidBy { get; init; }
}
