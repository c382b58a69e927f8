using MenuLab.Core.Drafts;
using MenuLab.Core.Iterations;
using MenuLab.Core.Pantry;
using MenuLab.Web.Features.History;

namespace MenuLab.Web.Features.Bench;

/// <summary>A draft as the bench shows it: read from the database, computed, never changed.</summary>
public sealed record BenchView
{
    /// <summary>The draft.</summary>
    public required DraftId Id { get; init; }

    /// <summary>Its name.</summary>
    public required string Name { get; init; }

    /// <summary>Key of its style; null for none.</summary>
    public string? Style { get; init; }

    /// <summary>Where the work stands.</summary>
    public Standing Standing { get; init; }

    /// <summary>Why, where somebody said.</summary>
    public string StandingReason { get; init; } = "";

    /// <summary>What it must achieve.</summary>
    public required Brief Brief { get; init; }

    /// <summary>Version of the working copy; 0 for one that nobody touched.</summary>
    public required int Version { get; init; }

    /// <summary>When it last changed.</summary>
    public DateTimeOffset ChangedAt { get; init; }

    /// <summary>The lines in order, each with the row that shows it.</summary>
    public required IReadOnlyList<BenchLine> Lines { get; init; }

    /// <summary>The build as chosen.</summary>
    public required Build Build { get; init; }

    /// <summary>Figures, allergens and cautions; its rows are those of <see cref="Lines"/>.</summary>
    public required TypedDrink Drink { get; init; }

    /// <summary>What the balance was computed from: what an iteration would save.</summary>
    public required Snapshot Now { get; init; }

    /// <summary>Its figures as the history lists them.</summary>
    public required IterationFigures Figures { get; init; }

    /// <summary>What the brief says about the figures.</summary>
    public IReadOnlyList<BriefRemark> BriefRemarks { get; init; } = [];

    /// <summary>Ingredients that a step, a treatment or a kept text names and that are no line.</summary>
    public IReadOnlyList<NamedAside> NamedAsides { get; init; } = [];

    /// <summary>The saved iterations, the first first.</summary>
    public IReadOnlyList<IterationCell> History { get; init; } = [];

    /// <summary>The iteration that the working copy goes on from; null before the first.</summary>
    public IterationCell? GoesOnFrom { get; init; }

    /// <summary>Number that the next iteration gets.</summary>
    public int NextNumber => History.Count == 0 ? 1 : History[^1].Number + 1;

    /// <summary>The lines that the balance cannot count yet.</summary>
    public int NotCounted => Lines.Count(l => l.Content.Ingredient is null);
}

/// <summary>A line of the working copy.</summary>
/// <param name="Id">Identity.</param>
/// <param name="Content">As typed and understood.</param>
/// <param name="Row">As shown.</param>
/// <param name="IsArchived">Its ingredient was archived since; it counts as before.</param>
public sealed record BenchLine(LineId Id, LineContent Content, Row Row, bool IsArchived)
{
    /// <summary>Name of the ingredient, or the text of a line kept as typed.</summary>
    public string Name => Row is ReadRow read ? read.Ingredient : Content.Text;
}

/// <summary>An ingredient that free text names beside the drink, and that is no line: it counts for nothing until it is one.</summary>
/// <param name="Text">The text that names it.</param>
/// <param name="Ingredient">The ingredient.</param>
/// <param name="Name">Its name.</param>
public sealed record NamedAside(string Text, IngredientId Ingredient, string Name);
