using MenuLab.Core.Balance;
using MenuLab.Core.Drafts;
using MenuLab.Core.House;
using MenuLab.Core.Iterations;
using MenuLab.Core.Safety;
using MenuLab.Web.Features.Bench;

namespace MenuLab.Web.Features.History;

/// <summary>A drink as it stood at one moment: a saved iteration, or what is on the bench now.</summary>
public sealed record DrinkState
{
    /// <summary>What an address calls the working copy.</summary>
    public const string Now = "now";

    /// <summary>The draft.</summary>
    public required DraftId Draft { get; init; }

    /// <summary>The iteration; null for what is on the bench now.</summary>
    public IterationId? Iteration { get; init; }

    /// <summary>Its number; null for what is on the bench now.</summary>
    public int? Number { get; init; }

    /// <summary>Number of the iteration it came from; null for a first one.</summary>
    public int? From { get; init; }

    /// <summary>Why it was saved; may be empty.</summary>
    public string Reason { get; init; } = "";

    /// <summary>Name of who saved it; empty for the bench.</summary>
    public string By { get; init; } = "";

    /// <summary>The site's clock when it was saved; null for the bench.</summary>
    public DateTime? At { get; init; }

    /// <summary>The site's calendar day of that.</summary>
    public DateOnly? Day { get; init; }

    /// <summary>Lines and build.</summary>
    public required Snapshot Snapshot { get; init; }

    /// <summary>The balance as it was stored; of the bench as it is now.</summary>
    public required DrinkBalance Balance { get; init; }

    /// <summary>The lines as the engine takes them, with the compositions of that moment.</summary>
    public required WeighedDrink Weighed { get; init; }

    /// <summary>The site's safety rules of today.</summary>
    public SiteRules Rules { get; init; } = SiteRules.None;

    /// <summary>Version of the engine that computed the balance.</summary>
    public required int Engine { get; init; }

    /// <summary>Hash over inputs and engine; null for the bench.</summary>
    public ContentHash? Hash { get; init; }

    /// <summary>Printed figures that today's engine would give otherwise; the stored ones stay.</summary>
    public IReadOnlyList<MetricChange> Drift { get; init; } = [];

    /// <summary>What an address calls it: its number, or "now".</summary>
    public string Key => Number is { } number ? HouseFormat.Plain.Number(number, 0) : Now;

    /// <summary>What a heading calls it.</summary>
    public string Title => Number is null ? "on the bench now" : $"iteration {Key}";

    /// <summary>The figures that are shown: as served where they can be told.</summary>
    public MetricSet Shown => Balance.Served ?? Balance.Mixed;

    /// <summary>What a person must look at, by the rules of today over the lines and figures of then.</summary>
    public IReadOnlyList<Caution> Cautions() => WhatToMind.Of(
        Weighed,
        Balance,
        new DrinkWords(
            [.. Weighed.From.Select(place => Snapshot.Lines[place]).Select(line => $"{line.IngredientName} {line.Line.Treatment} {line.Line.Text}")],
            [.. Snapshot.Build.Steps, .. Snapshot.KeptAsTyped]),
        Rules);
}
