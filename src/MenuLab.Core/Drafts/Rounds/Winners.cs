using MenuLab.Core.House;
using MenuLab.Core.Pantry;

namespace MenuLab.Core.Drafts.Rounds;

/// <summary>What becomes of the pour that won.</summary>
public static class Winners
{
    /// <summary>The lines of a pour as it was tasted, at full size: what the next round shares.</summary>
    /// <param name="round">The round.</param>
    /// <param name="letter">The pour.</param>
    /// <param name="understand">What an amount of an ingredient comes to (<see cref="Understanding.Of"/>).</param>
    public static IReadOnlyList<PlacedLine> Lines(Round round, PourLetter letter, Func<LineContent, LineContent> understand) =>
        [.. GlassLines.Whole(round, letter, understand).Zip(round.Lines, (content, line) => new PlacedLine(line.Line, content))];

    /// <summary>The edits that put a pour on the bench.</summary>
    /// <param name="round">The round.</param>
    /// <param name="letter">The pour.</param>
    /// <param name="draft">The working copy as it stands.</param>
    /// <param name="understand">What an amount of an ingredient comes to.</param>
    /// <returns>
    /// Nothing where the bench is like that already; an amount of a line each where the bench still has the lines and the build
    /// of the round; else one edit that sets all of it, and that tells whoever changed the bench meanwhile.
    /// </returns>
    public static IReadOnlyList<EditAction> Edits(Round round, PourLetter letter, Draft draft, Func<LineContent, LineContent> understand)
    {
        var lines = Lines(round, letter, understand);
        if (!IsSameButAmounts(lines, round.Build, draft))
        {
            // It goes on from where the bench went on from: a round is no iteration.
            return [new StartFrom(draft.StartedFrom, lines, round.Build, draft.StartedAtVersion)];
        }
        return [.. lines.Zip(draft.Lines).Where(p => p.First.Content.Amount != p.Second.Content.Amount).Select(p => new ChangeLine(p.First.Line, LineFields.Amount, p.First.Content))];
    }

    /// <summary>The reason of the step from a round to what its winner became: "B: Verjus 15 → 17.5 mL; more sour wanted, finish short".</summary>
    /// <param name="round">The round.</param>
    /// <param name="letter">The pour.</param>
    /// <param name="notes">The notes of the round.</param>
    /// <param name="name">Name of an ingredient.</param>
    /// <param name="format">How the house writes figures.</param>
    /// <returns>One line of at most <see cref="Draft.ReasonMaxLength"/> characters.</returns>
    public static string Reason(Round round, PourLetter letter, IReadOnlyCollection<WrittenNote> notes, Func<IngredientId, string> name, HouseFormat format)
    {
        var changes = string.Join(", ", RoundWords.Changes(round, letter, name, format));
        var said = RoundWords.Notes(notes, letter);
        var text = $"{letter}: {(changes.Length > 0 ? changes : "as it was")}{(said.Length > 0 ? "; " + said : "")}";
        return text.Length <= Draft.ReasonMaxLength ? text : text[..(Draft.ReasonMaxLength - 1)] + "…";
    }

    private static bool IsSameButAmounts(IReadOnlyList<PlacedLine> lines, Build build, Draft draft)
    {
        var bench = draft.Lines;
        return lines.Count == bench.Count
            && lines.Zip(bench).All(p => p.First.Line == p.Second.Id && Bare(p.First.Content) == Bare(p.Second.Content))
            && build with { Steps = [] } == draft.Build.Value with { Steps = [] } && build.Steps.SequenceEqual(draft.Build.Steps);
    }

    // All of a line but how much of it.
    private static LineContent Bare(LineContent line) => line with { Amount = line.Amount with { Value = null, Low = null, High = null }, Understood = Understood.Nothing };
}

/// <summary>A step of the ladder: a round, what won it and why, and what came of it.</summary>
/// <param name="Round">The round.</param>
/// <param name="Reason">What the winner changed and what was said of it; empty while nothing won.</param>
/// <param name="Tally">The winner's informal notes; null while nothing won.</param>
/// <param name="Next">Number of the round that goes on from it; null where none does.</param>
public sealed record Rung(Round Round, string Reason, NoteTally? Tally, int? Next);

/// <summary>The rounds of a draft with the note that drove each step: its default history.</summary>
public static class Ladder
{
    /// <summary>The ladder of a draft.</summary>
    /// <param name="rounds">Its rounds, in any order.</param>
    /// <param name="notes">Their notes.</param>
    /// <param name="name">Name of an ingredient.</param>
    /// <param name="format">How the house writes figures.</param>
    /// <returns>A rung per round, the first first.</returns>
    public static IReadOnlyList<Rung> Of(
        IReadOnlyCollection<Round> rounds, IReadOnlyCollection<WrittenNote> notes, Func<IngredientId, string> name, HouseFormat format) =>
    [
        .. rounds.OrderBy(r => r.Number).Select(round =>
        {
            var own = notes.Where(n => n.Note.Round == round.Id).ToList();
            var next = rounds.Where(r => r.FromRound == round.Id).Select(r => (int?)r.Number).Min();
            // A round may go on from a pour that nobody called the winner.
            var winner = round.Winner ?? rounds.Where(r => r.FromRound == round.Id).OrderBy(r => r.Number).FirstOrDefault()?.FromPour;
            return winner is { } letter
                ? new Rung(round, Winners.Reason(round, letter, own, name, format), NoteTally.Of(own, letter), next)
                : new Rung(round, "", null, next);
        }),
    ];
}
