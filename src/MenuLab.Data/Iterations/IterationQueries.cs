using MenuLab.Core.Drafts;
using MenuLab.Core.Iterations;
using MenuLab.Core.Pantry;
using Microsoft.EntityFrameworkCore;

namespace MenuLab.Data.Iterations;

/// <summary>Reads iterations. Lists read the narrow table alone; bodies are read one at a time.</summary>
public static class IterationQueries
{
    /// <summary>The iterations of a draft, the first first.</summary>
    public static async Task<IReadOnlyList<Iteration>> HistoryOf(this MenuLabDbContext db, DraftId draft) =>
        await db.Iterations.Where(i => i.Draft == draft).OrderBy(i => i.Number).ToListAsync();

    /// <summary>An iteration with all that was stored of it; null where there is none.</summary>
    public static async Task<SavedIteration?> LoadIteration(this MenuLabDbContext db, IterationId id)
    {
        var iteration = await db.Iterations.SingleOrDefaultAsync(i => i.Id == id);
        if (iteration is null)
        {
            return null;
        }
        var body = await db.IterationBodies.SingleAsync(b => b.Iteration == id);
        var lines = await db.IterationLines.Where(l => l.Iteration == id).OrderBy(l => l.Position).ToListAsync();
        return new SavedIteration(iteration, body, lines);
    }

    /// <summary>The compositions under these hashes.</summary>
    /// <exception cref="InvalidDataException">One is missing, or its text does not have its hash.</exception>
    public static async Task<IReadOnlyDictionary<ContentHash, Composition>> LoadCompositions(this MenuLabDbContext db, IEnumerable<ContentHash> hashes)
    {
        var wanted = hashes.Distinct().ToList();
        var rows = await db.Compositions.Where(c => wanted.Contains(c.Hash)).ToDictionaryAsync(c => c.Hash, c => c.Body);
        return wanted.ToDictionary(h => h, h =>
            rows.TryGetValue(h, out var body) && ContentHash.Of(body) == h
                ? CompositionText.Read(body)
                : throw new InvalidDataException($"The composition {h} is missing or damaged."));
    }
}
