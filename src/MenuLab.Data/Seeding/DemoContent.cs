using MenuLab.Core.Drafts;
using MenuLab.Core.House;
using MenuLab.Core.Pantry;
using MenuLab.Core.Quantities;
using MenuLab.Data.Pantry;

namespace MenuLab.Data.Seeding;

/// <summary>The invented demo bar as its files tell it; days count back from the day on which it is made.</summary>
/// <param name="People">Who works there.</param>
/// <param name="Ingredients">What the house has beside the shipped pantry.</param>
/// <param name="Prices">What its packs cost, from which day on.</param>
/// <param name="Readings">What was read on the bench.</param>
/// <param name="Drinks">Its drafts, with what became of each.</param>
public sealed record DemoContent(
    IReadOnlyList<DemoPerson> People, IReadOnlyList<Ingredient> Ingredients, IReadOnlyList<DemoPrice> Prices, IReadOnlyList<DemoReading> Readings,
    IReadOnlyList<DemoDrink> Drinks);

/// <summary>Somebody who works at the demo bar.</summary>
public sealed record DemoPerson(PersonId Id, string Name, string Initials);

/// <summary>A price of a pack; a pack with a history has a row for each price.</summary>
/// <param name="Key">Key of the ingredient, shipped or of the demo.</param>
/// <param name="Pack">Which pack.</param>
/// <param name="Supplier">An invented supplier.</param>
/// <param name="Amount">What is in the pack.</param>
/// <param name="Unit">"ml", "g" or "piece".</param>
/// <param name="Price">The price as typed.</param>
/// <param name="IsGross">Tax is in it.</param>
/// <param name="TaxPercent">The tax rate, %.</param>
/// <param name="DaysBefore">Days before the day at hand from which it holds.</param>
/// <param name="By">Who entered it.</param>
public sealed record DemoPrice(string Key, PackId Pack, string Supplier, double Amount, string Unit, Money Price, bool IsGross, decimal TaxPercent, int DaysBefore, PersonId By);

/// <summary>Something read on the bench.</summary>
/// <param name="Key">Key of the ingredient.</param>
/// <param name="Kind">"brix", "ph" or "titration".</param>
/// <param name="Value">The value, in <paramref name="Unit"/>.</param>
/// <param name="Unit">Its unit.</param>
/// <param name="Celsius">Temperature of what was read, °C; null where nobody said.</param>
/// <param name="DaysBefore">Days before the day at hand.</param>
/// <param name="By">Who read it.</param>
/// <param name="Note">What it was read of.</param>
public sealed record DemoReading(string Key, string Kind, double Value, string Unit, double? Celsius, int DaysBefore, PersonId By, string Note);

/// <summary>A moment of the past.</summary>
/// <param name="DaysBefore">Days before the day at hand, from 1.</param>
/// <param name="Time">Time of that day at the site.</param>
/// <param name="By">Who did something then.</param>
public sealed record DemoMoment(int DaysBefore, TimeOnly Time, PersonId By);

/// <summary>A drink of the demo bar.</summary>
/// <param name="Id">Identity of its draft: the same in every house.</param>
/// <param name="Name">Name.</param>
/// <param name="Started">When and by whom.</param>
/// <param name="Brief">Its brief, but for the day.</param>
/// <param name="DueInDays">Days after the day at hand by which it must be ready; null where open.</param>
/// <param name="Iterations">Its saved iterations, the first first.</param>
/// <param name="Now">What was changed since the last of them; null for nothing.</param>
/// <param name="Standing">How it was parked or dropped; null while it is in the works.</param>
public sealed record DemoDrink(
    DraftId Id, string Name, DemoMoment Started, Brief Brief, int? DueInDays, IReadOnlyList<DemoIteration> Iterations, DemoChange? Now, DemoStanding? Standing);

/// <summary>A drink as typed at some moment.</summary>
/// <param name="Text">The whole drink, a line each.</param>
/// <param name="Moment">When and by whom.</param>
public sealed record DemoChange(string Text, DemoMoment Moment);

/// <summary>A saved iteration.</summary>
/// <param name="Drink">The drink as typed.</param>
/// <param name="From">Number of the iteration that it came from; null for the last one.</param>
/// <param name="Reason">Why; may be empty.</param>
public sealed record DemoIteration(DemoChange Drink, int? From, string Reason);

/// <summary>How work on a drink ended.</summary>
public sealed record DemoStanding(Standing Standing, string Reason, DemoMoment Moment);
