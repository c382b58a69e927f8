using MenuLab.Core.House;

namespace MenuLab.Core.Specs;

/// <summary>A figure and its unit; they are never parted on paper.</summary>
/// <param name="Figure">E.g. "22.5", "1 ½", "2–3"; a dash where the amount cannot be said honestly in this unit or has none.</param>
/// <param name="Unit">E.g. "mL", "fl oz", "dashes"; may be empty.</param>
public readonly record struct CardAmount(string Figure, string Unit)
{
    /// <summary>Does not apply, or cannot be said honestly.</summary>
    public static CardAmount None { get; } = new("–", "");

    /// <summary>Figure and unit as one text.</summary>
    public override string ToString() => Unit.Length == 0 ? Figure : $"{Figure} {Unit}";
}

/// <summary>A named fact of the build: "Glass", "Coupe, no ice".</summary>
/// <param name="Name">What it is.</param>
/// <param name="Text">What it says; "not said" where nobody said it.</param>
public readonly record struct CardFact(string Name, string Text);

/// <summary>A line that goes into the liquid, in pouring order.</summary>
/// <param name="Number">Its number on the card, from 1.</param>
/// <param name="Amount">In the house's first unit, or as typed where it has no such unit.</param>
/// <param name="Other">In the other unit, or <see cref="CardAmount.None"/>.</param>
/// <param name="Name">The ingredient.</param>
/// <param name="Detail">Treatment, where it starts, when it joins: "strained, fridge"; may be empty.</param>
public sealed record CardLine(int Number, CardAmount Amount, CardAmount Other, string Name, string Detail);

/// <summary>What a rung of the ladder stands for.</summary>
public enum RungKind
{
    /// <summary>A line that is poured.</summary>
    Line,
    /// <summary>Water that the ice gives.</summary>
    Melt,
    /// <summary>Room that the ice in the served glass takes.</summary>
    Ice,
}

/// <summary>A step of the running total.</summary>
/// <param name="Kind">What it stands for.</param>
/// <param name="Number">The line's number; 0 for ice.</param>
/// <param name="From">mL before.</param>
/// <param name="To">mL after.</param>
/// <param name="Label">As printed, e.g. "to 97.5", "ice to 141".</param>
public readonly record struct LadderRung(RungKind Kind, int Number, double From, double To, string Label);

/// <summary>
/// All that a spec card says, as texts and numbers, so that printing needs no science and the card can be tested without
/// a PDF. Made by <see cref="SpecCard.Content"/>.
/// </summary>
public sealed record CardContent
{
    /// <summary>Printed on every card (safety and claims, LB-S-18).</summary>
    public const string Advice = "Advice, not law and no guarantee: local codes and licensed professionals come first.";

    /// <summary>The drink.</summary>
    public required string Name { get; init; }

    /// <summary>"iteration 4", "on the bench now", or "Spec 23, issue 1".</summary>
    public required string Issue { get; init; }

    /// <summary>Nobody has approved it: the card says DRAFT across.</summary>
    public required bool IsDraft { get; init; }

    /// <summary>How the house writes figures and days; the texts below follow it already.</summary>
    public HouseFormat Format { get; init; } = HouseFormat.Plain;

    /// <summary>The site's calendar day of printing.</summary>
    public required DateOnly PrintedOn { get; init; }

    /// <summary>The day from which the issue is in force; null for a draft.</summary>
    public DateOnly? InForceFrom { get; init; }

    /// <summary>Method, ice, glass, then rinse, rim, garnish and what stands beside, in that order.</summary>
    public required IReadOnlyList<CardFact> Facts { get; init; }

    /// <summary>The lines in the liquid, in pouring order.</summary>
    public required IReadOnlyList<CardLine> Lines { get; init; }

    /// <summary>The running total, from the first line to the ice; lines too small to see or without a volume have no rung.</summary>
    public IReadOnlyList<LadderRung> Ladder { get; init; } = [];

    /// <summary>mL to the wash line, with the ice in it; null where the glass is not known.</summary>
    public double? WashLineMillilitres { get; init; }

    /// <summary>The steps, as written.</summary>
    public IReadOnlyList<string> Steps { get; init; } = [];

    /// <summary>One sentence: what it contains, or that nothing is declared; empty where all is open. Never says that something is free of an allergen.</summary>
    public required string Allergens { get; init; }

    /// <summary>One sentence on allergens that nobody has settled; empty where none is open.</summary>
    public string OpenAllergens { get; init; } = "";

    /// <summary>One sentence on shared tools and what else the bar handles.</summary>
    public required string CrossContact { get; init; }

    /// <summary>Strength and grams of alcohol, with the range where it matters.</summary>
    public required string Strength { get; init; }

    /// <summary>Energy and sugar of the glass.</summary>
    public required string Energy { get; init; }

    /// <summary>Cautions, a sentence each, the most serious first.</summary>
    public IReadOnlyList<string> Cautions { get; init; } = [];
}
