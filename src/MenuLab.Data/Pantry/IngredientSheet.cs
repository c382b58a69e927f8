using MenuLab.Core.Drafts;
using MenuLab.Core.House;
using MenuLab.Core.Pantry;

namespace MenuLab.Data.Pantry;

/// <summary>A draft that holds an ingredient.</summary>
/// <param name="Id">The draft.</param>
/// <param name="Name">Its name.</param>
/// <param name="Lines">Its lines of the ingredient, as typed.</param>
public sealed record DraftUse(DraftId Id, string Name, IReadOnlyList<string> Lines);

/// <summary>A reading as pages show it.</summary>
/// <param name="Id">The reading.</param>
/// <param name="Kind">What was read.</param>
/// <param name="Value">The figure.</param>
/// <param name="Unit">Its unit.</param>
/// <param name="Celsius">Temperature, °C; null where nobody said.</param>
/// <param name="Day">The day.</param>
/// <param name="ReadBy">Who read it.</param>
/// <param name="Note">Remarks.</param>
/// <param name="Counts">Drinks use it today.</param>
/// <param name="IsCorrected">Another reading replaced it.</param>
public sealed record ReadingShown(
    ReadingId Id, string Kind, double Value, string Unit, double? Celsius, DateOnly Day, PersonId ReadBy, string Note, bool Counts, bool IsCorrected);

/// <summary>A price as pages show it.</summary>
/// <param name="Id">The price.</param>
/// <param name="Amount">As typed, in units of the currency.</param>
/// <param name="Currency">ISO 4217 code.</param>
/// <param name="IsGross">Tax is in it.</param>
/// <param name="TaxPercent">The tax rate, %.</param>
/// <param name="FromDay">From which day on.</param>
/// <param name="EnteredBy">Who entered it.</param>
/// <param name="NetPerGram">Net price per gram; null where a piece's weight is not known.</param>
public sealed record PriceShown(PriceId Id, decimal Amount, string Currency, bool IsGross, decimal TaxPercent, DateOnly FromDay, PersonId EnteredBy, double? NetPerGram);

/// <summary>A pack with its prices, the latest first.</summary>
public sealed record PackShown(PackId Id, string Supplier, double Amount, string Unit, bool IsArchived, IReadOnlyList<PriceShown> Prices);

/// <summary>Somebody said what is known of an allergen.</summary>
public sealed record AllergenSaid(string Allergen, string State, string Source, PersonId Who, DateTimeOffset At);

/// <summary>Everything of one ingredient that its page needs beside its <see cref="Ingredient"/>.</summary>
public sealed record IngredientSheet
{
    /// <summary>The version that a change must name.</summary>
    public required int Version { get; init; }

    /// <summary>It came with the program.</summary>
    public required bool IsShipped { get; init; }

    /// <summary>There is raw egg in it.</summary>
    public required bool HasRawEgg { get; init; }

    /// <summary>When it went out of use; null while it is in use.</summary>
    public required DateTimeOffset? ArchivedAt { get; init; }

    /// <summary>Who took it out of use.</summary>
    public required PersonId? ArchivedBy { get; init; }

    /// <summary>What it is there for.</summary>
    public required IReadOnlyList<string> Roles { get; init; }

    /// <summary>Readings, the latest first.</summary>
    public required IReadOnlyList<ReadingShown> Readings { get; init; }

    /// <summary>Packs in use first.</summary>
    public required IReadOnlyList<PackShown> Packs { get; init; }

    /// <summary>Drafts that hold it.</summary>
    public required IReadOnlyList<DraftUse> Drafts { get; init; }

    /// <summary>What was said of its allergens, the latest first.</summary>
    public required IReadOnlyList<AllergenSaid> AllergensSaid { get; init; }
}

/// <summary>Net price of an ingredient that counts today.</summary>
/// <param name="PerGram">Net price per gram, in the site's currency.</param>
/// <param name="Since">From which day on.</param>
public sealed record PriceNow(double PerGram, DateOnly Since);
