using MenuLab.Core.Balance;
using MenuLab.Core.House;

namespace MenuLab.Core.Iterations;

/// <summary>What differs between two states of a drink. Made by <see cref="Between"/>.</summary>
public sealed record WhatChanged
{
    /// <summary>The reason of a draft's first iteration, unless a person writes another.</summary>
    public const string FirstReason = "First pour";

    private WhatChanged(Snapshot before, Snapshot after)
    {
        Before = before;
        After = after;
    }

    /// <summary>The state before.</summary>
    public Snapshot Before { get; }

    /// <summary>The state after.</summary>
    public Snapshot After { get; }

    /// <summary>Every line of both states exactly once, changed or not, in the order of pouring.</summary>
    public required IReadOnlyList<LineChange> Lines { get; init; }

    /// <summary>Lines that both states have are poured in another order.</summary>
    public required bool IsReordered { get; init; }

    /// <summary>Texts that are kept as typed since.</summary>
    public required IReadOnlyList<string> TextsAdded { get; init; }

    /// <summary>Texts that were kept as typed and are no longer there.</summary>
    public required IReadOnlyList<string> TextsRemoved { get; init; }

    /// <summary>What of the build changed.</summary>
    public required IReadOnlyList<BuildChange> Build { get; init; }

    /// <summary>It has another name.</summary>
    public bool IsRenamed => Before.Name != After.Name;

    /// <summary>It has another style.</summary>
    public bool HasOtherStyle => Before.Style != After.Style;

    /// <summary>The lines that changed.</summary>
    public IEnumerable<LineChange> ChangedLines => Lines.Where(l => !l.IsNothing);

    /// <summary>How many changes there are; a line counts once, whatever changed about it.</summary>
    public int Count =>
        ChangedLines.Count() + (IsReordered ? 1 : 0) + TextsAdded.Count + TextsRemoved.Count + Build.Count + (IsRenamed ? 1 : 0) + (HasOtherStyle ? 1 : 0);

    /// <summary>Nothing changed.</summary>
    public bool IsNothing => Count == 0;

    /// <summary>What differs between two states.</summary>
    /// <param name="before">The earlier state.</param>
    /// <param name="after">The later state.</param>
    /// <returns>
    /// The differences of what a person chose and of what the house reckons with (composition, price, glass). How a line was
    /// written ("¾ fl oz" or "22.5 mL") and what an ingredient is called are no differences.
    /// </returns>
    public static WhatChanged Between(Snapshot before, Snapshot after)
    {
        var aligned = AlignedLines.Of([before, after]);
        return new WhatChanged(before, after)
        {
            Lines = [.. aligned.Select(row => LineChange.Of(row.Lines[0], row.Lines[1]))],
            IsReordered = !Order(before, aligned, 0).SequenceEqual(Order(after, aligned, 1)),
            TextsAdded = Without(after.KeptAsTyped, before.KeptAsTyped),
            TextsRemoved = Without(before.KeptAsTyped, after.KeptAsTyped),
            Build = [.. BuildChange.Between(before, after)],
        };
    }

    /// <summary>What a change did to each metric.</summary>
    /// <param name="before">The balance before.</param>
    /// <param name="after">The balance after.</param>
    public static FigureChanges Figures(DrinkBalance before, DrinkBalance after) => FigureChanges.Between(before, after);

    /// <summary>Every change in a few words, the largest first: "Fennel syrup 5 → 7.5 mL", "Verjus in (15 mL)", "shaken 12 → 10 s".</summary>
    /// <param name="format">How the house writes figures.</param>
    public IReadOnlyList<string> InWords(HouseFormat format) => ChangeWords.All(this, format);

    /// <summary>The reason that writes itself: the largest three changes in one line of at most <see cref="Iteration.ReasonMaxLength"/> characters; empty for none.</summary>
    /// <param name="format">How the house writes figures.</param>
    public string Reason(HouseFormat format) => ChangeWords.Reason(this, format);

    /// <summary>What was changed and what that did to the figures that stand large, in one sentence of a fixed pattern; no advice.</summary>
    /// <param name="figures">What it did to each metric.</param>
    /// <param name="format">How the house writes figures.</param>
    public string Sentence(FigureChanges figures, HouseFormat format) => ChangeSentence.Of(this, figures, format);

    // The common lines in the order of one state, by their place in the aligned list.
    private static IEnumerable<int> Order(Snapshot state, IReadOnlyList<AlignedLine> aligned, int column) =>
        state.Lines.Select(line => Enumerable.Range(0, aligned.Count).First(i => ReferenceEquals(aligned[i].Lines[column], line)))
            .Where(i => aligned[i].Lines.All(l => l is not null));

    // A text that stands twice and goes once is one that went.
    private static List<string> Without(IReadOnlyList<string> texts, IReadOnlyList<string> others)
    {
        var left = texts.ToList();
        foreach (var other in others)
        {
            left.Remove(other);
        }
        return left;
    }
}
