using MenuLab.Core.House;
using MenuLab.Core.Pantry;

namespace MenuLab.Data.Pantry;

/// <summary>An ingredient of the house that is to come in.</summary>
/// <param name="Id">Its id, made by whoever asks: asking again adds nothing.</param>
/// <param name="Name">Name as shown.</param>
/// <param name="Kind">What sort of thing.</param>
/// <param name="Basis">What its figures are per: "100 g" or "100 mL".</param>
/// <param name="KeptAtCelsius">Where it is kept, °C.</param>
public sealed record NewIngredient(IngredientId Id, string? Name, IngredientKind Kind, string Basis, double KeptAtCelsius);

/// <summary>What an ingredient goes by.</summary>
/// <param name="Name">Name as shown.</param>
/// <param name="Kind">What sort of thing.</param>
/// <param name="KeptAtCelsius">Where it is kept, °C.</param>
/// <param name="Note">Remarks.</param>
/// <param name="Roles">What it is there for, keys of <see cref="Pantry.Roles"/>.</param>
/// <param name="Aliases">Other ways to write it.</param>
/// <param name="HasRawEgg">There is raw egg in it; a shipped ingredient keeps what it came with.</param>
public sealed record IngredientCard(
    string? Name, IngredientKind Kind, double KeptAtCelsius, string? Note, IReadOnlyList<string> Roles, IReadOnlyList<string> Aliases, bool HasRawEgg);

/// <summary>A figure that the house sets; without value and bounds it says that nobody knows.</summary>
/// <param name="Quantity">Name of the quantity, as in seed-data.</param>
/// <param name="Value">The figure; null where only bounds are known, or nothing.</param>
/// <param name="Low">Lower bound, or null.</param>
/// <param name="High">Upper bound, or null.</param>
/// <param name="Source">Where it was read.</param>
/// <param name="Status">Confirmed from a label, a table or a paper; Assumed where it is only typical.</param>
public sealed record HouseFigure(string Quantity, double? Value, double? Low, double? High, string? Source, FigureStatus Status)
{
    /// <summary>The house takes its own figure away: the shipped one counts again.</summary>
    public bool IsTakenAway { get; init; }

    /// <summary>Takes the house's own figure of a quantity away.</summary>
    public static HouseFigure TakeAway(string quantity) => new(quantity, null, null, null, "", FigureStatus.Assumed) { IsTakenAway = true };
}

/// <summary>What a person says of an allergen.</summary>
/// <param name="Allergen">Which.</param>
/// <param name="State">There, an open question, or absent by the label.</param>
/// <param name="Source">What was read; asked for where it is said to be absent.</param>
/// <param name="Note">The species, or what to ask.</param>
public sealed record AllergenWord(Allergen Allergen, AllergenState State, string? Source, string? Note);

/// <summary>Something that was read on the bench.</summary>
/// <param name="Id">Its id, made by whoever asks: asking again adds nothing.</param>
/// <param name="Kind">One of <see cref="ReadingKinds"/>.</param>
/// <param name="Value">The figure.</param>
/// <param name="Unit">Its unit, one that the kind has.</param>
/// <param name="Celsius">Temperature of what was read, °C; null where nobody said.</param>
/// <param name="Day">The day.</param>
/// <param name="Note">Remarks.</param>
/// <param name="Replaces">The reading that it corrects; null for a new one.</param>
public sealed record NewReading(ReadingId Id, string Kind, double Value, string Unit, double? Celsius, DateOnly Day, string? Note, ReadingId? Replaces = null);

/// <summary>A pack that is to be bought.</summary>
public sealed record NewPack(PackId Id, IngredientId Ingredient, SiteId Site, string? Supplier, double Amount, string Unit);

/// <summary>What a pack costs from a day on, as typed.</summary>
/// <param name="Id">Its id, made by whoever asks: asking again adds nothing.</param>
/// <param name="Pack">The pack.</param>
/// <param name="Amount">The price, in units of the currency.</param>
/// <param name="Currency">ISO 4217 code.</param>
/// <param name="IsGross">Tax is in it.</param>
/// <param name="TaxPercent">The tax rate, %.</param>
/// <param name="FromDay">From which day on.</param>
public sealed record NewPrice(PriceId Id, PackId Pack, decimal Amount, string? Currency, bool IsGross, decimal TaxPercent, DateOnly FromDay);

/// <summary>An ingredient went out of use.</summary>
/// <param name="Version">Its version now.</param>
/// <param name="Drafts">Names of the drafts that hold it, which stay as they are.</param>
public sealed record IngredientArchived(int Version, IReadOnlyList<string> Drafts);
