using MenuLab.Core.Balance;
using MenuLab.Core.Drafts;
using MenuLab.Core.House;
using MenuLab.Core.Iterations;
using MenuLab.Core.Pantry;
using MenuLab.Data;
using MenuLab.Data.Drafts;
using MenuLab.Data.Iterations;
using MenuLab.Web.Features.House;
using Microsoft.EntityFrameworkCore;

namespace MenuLab.Web.Features.History;

/// <summary>Reads what a drink was and is: its iterations and its working copy. It writes nothing.</summary>
public sealed class HistoryDesk(CurrentHouse current)
{
    /// <summary>Most columns side by side.</summary>
    public const int MaxColumns = 4;

    private HouseBook Book => current.Book;

    /// <summary>The iterations of a draft and what is on the bench; null where there is no such draft.</summary>
    public async Task<DrinkHistory?> OfAsync(DraftId id)
    {
        await using var db = current.House.Read();
        if (await db.OpenDraft(id) is not { } draft)
        {
            return null;
        }
        var iterations = await db.HistoryOf(id);
        var now = Bench(draft, iterations);
        var body = iterations.FirstOrDefault(i => i.Number == now.From) is { } from ? await db.IterationBodies.SingleAsync(b => b.Iteration == from.Id) : null;
        var changes = body is null ? null : WhatChanged.Between(body.Snapshot(), now.Snapshot);
        return new DrinkHistory(
            id,
            draft.Name,
            IterationCell.Of(iterations, Book),
            new BenchCell(now.From, changes?.Count ?? 0, changes?.Reason(Book.Format) ?? "", IterationFigures.Of(now.Balance)));
    }

    /// <summary>States of a draft to put side by side, in the order asked for.</summary>
    /// <param name="id">The draft.</param>
    /// <param name="keys">Numbers of iterations, or "now"; what is not there, or asked for twice, is left out, and so is what is over <see cref="MaxColumns"/>. None at all: the last two states.</param>
    /// <returns>The states; null where there is no such draft.</returns>
    public async Task<IReadOnlyList<DrinkState>?> StatesAsync(DraftId id, IReadOnlyList<string> keys)
    {
        await using var db = current.House.Read();
        if (await db.OpenDraft(id) is not { } draft)
        {
            return null;
        }
        var iterations = await db.HistoryOf(id);
        var known = iterations.Select(i => HouseFormat.Plain.Number(i.Number, 0)).Append(DrinkState.Now).ToList();
        var asked = keys.Where(known.Contains).Distinct().Take(MaxColumns).ToList();
        var states = new List<DrinkState>();
        foreach (var key in asked.Count > 0 ? asked : known.TakeLast(2))
        {
            states.Add(key == DrinkState.Now ? Bench(draft, iterations) : await Saved(db, iterations.First(i => HouseFormat.Plain.Number(i.Number, 0) == key), iterations));
        }
        return states;
    }

    /// <summary>One iteration with the one it came from, which is null for a first; null where there is none with this number.</summary>
    public async Task<(DrinkState State, DrinkState? Parent)?> IterationAsync(DraftId id, int number)
    {
        await using var db = current.House.Read();
        var iterations = await db.HistoryOf(id);
        if (iterations.FirstOrDefault(i => i.Number == number) is not { } iteration)
        {
            return null;
        }
        var parent = iterations.FirstOrDefault(i => i.Id == iteration.Parent);
        return (await Saved(db, iteration, iterations), parent is null ? null : await Saved(db, parent, iterations));
    }

    /// <summary>What changed in an iteration against the one it came from, or on the bench against where it goes on from; null for a first one, and where there is none.</summary>
    /// <param name="id">The draft.</param>
    /// <param name="key">A number, or "now".</param>
    public async Task<ChangesInWords?> ChangesAsync(DraftId id, string key)
    {
        if (await StatesAsync(id, [key]) is not [{ From: { } from } after] || after.Key != key || await IterationAsync(id, from) is not { } before)
        {
            return null;
        }
        return ChangesInWords.Of(before.State, after, Book.Format);
    }

    /// <summary>An iteration by its id; null where there is none.</summary>
    public async Task<DrinkState?> FindAsync(IterationId id)
    {
        await using var db = current.House.Read();
        return await db.Iterations.SingleOrDefaultAsync(i => i.Id == id) is { } iteration ? await Saved(db, iteration, await db.HistoryOf(iteration.Draft)) : null;
    }

    /// <summary>What is on the bench now; null where there is no such draft.</summary>
    public async Task<DrinkState?> BenchAsync(DraftId id)
    {
        await using var db = current.House.Read();
        return await db.OpenDraft(id) is { } draft ? Bench(draft, await db.HistoryOf(id)) : null;
    }

    /// <summary>The last iteration of a draft, or what is on its bench where none was saved; null where there is no such draft.</summary>
    public async Task<DrinkState?> LastAsync(DraftId id)
    {
        await using var db = current.House.Read();
        var iterations = await db.HistoryOf(id);
        return iterations.Count > 0 ? await Saved(db, iterations[^1], iterations)
            : await db.OpenDraft(id) is { } draft ? Bench(draft, iterations)
            : null;
    }

    private DrinkState Bench(Draft draft, IReadOnlyList<Iteration> iterations)
    {
        var stock = Book.Stock;
        var snapshot = Snapshot.Take(draft, stock.Pantry, stock.Catalogue, stock.Measures, stock.PricePerGram, Book.Site.Currency);
        var weighed = Weigher.Of(draft.DraftLines, draft.Build.Value, stock.Pantry, stock.Catalogue, stock.Measures, stock.PricePerGram);
        return new DrinkState
        {
            Draft = draft.Id,
            From = draft.GoesOnFrom(iterations.Count > 0 ? iterations[^1].Number : null, iterations.Count > 0 ? iterations[^1].DraftVersion : 0),
            Snapshot = snapshot,
            Balance = BalanceEngine.Of(weighed.Lines, weighed.Build, Detail.RangesAndShares, draft.UncountedMillilitres),
            Weighed = weighed,
            Rules = stock.Rules,
            Engine = BalanceEngine.Version,
        };
    }

    private async Task<DrinkState> Saved(MenuLabDbContext db, Iteration iteration, IReadOnlyList<Iteration> iterations)
    {
        var body = await db.IterationBodies.SingleAsync(b => b.Iteration == iteration.Id);
        var snapshot = body.Snapshot();
        var balance = body.Balance();
        var measures = snapshot.Measures == Book.Stock.Measures.Number
            ? Book.Stock.Measures
            : (await db.Sets.SingleAsync(s => s.Kind == SetKind.Measures && s.Number == snapshot.Measures)).Measures();
        var compositions = await db.LoadCompositions(snapshot.Lines.Select(l => l.Composition));
        return new DrinkState
        {
            Draft = iteration.Draft,
            Iteration = iteration.Id,
            Number = iteration.Number,
            From = iterations.FirstOrDefault(i => i.Id == iteration.Parent)?.Number,
            Reason = iteration.Reason,
            By = Book.NameOf(iteration.By),
            At = Book.Site.ClockAt(iteration.At),
            Day = Book.Site.DayOf(iteration.At),
            Snapshot = snapshot,
            Balance = balance,
            Weighed = snapshot.Weigh(Composition, measures),
            Rules = Book.Stock.Rules,
            Engine = iteration.Stamp.Engine,
            Hash = iteration.Hash,
            Drift = Drift(balance, snapshot.Recompute(Composition, measures, Detail.Ranges)),
        };

        Composition Composition(ContentHash hash) => compositions[hash];
    }

    // Engines change; what was saved does not (design, decision 4). What a person would read differently is told beside it.
    private static IReadOnlyList<MetricChange> Drift(DrinkBalance stored, DrinkBalance today)
    {
        var figures = WhatChanged.Figures(stored, today);
        return [.. figures.All.Where(f => f.IsBeyondRounding || f.Before.Certainty != f.After.Certainty)];
    }
}
