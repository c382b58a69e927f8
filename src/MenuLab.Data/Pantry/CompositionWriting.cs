using MenuLab.Core.Iterations;
using MenuLab.Core.Pantry;
using Microsoft.EntityFrameworkCore;

namespace MenuLab.Data.Pantry;

internal static class CompositionWriting
{
    /// <summary>Keeps compositions that are not kept yet; to be called within a unit of the writer.</summary>
    /// <returns>Their hashes, in the order given.</returns>
    public static async Task<IReadOnlyList<ContentHash>> KeepCompositions(this MenuLabDbContext db, IReadOnlyCollection<Composition> compositions)
    {
        var hashes = new List<ContentHash>(compositions.Count);
        foreach (var composition in compositions)
        {
            var body = CompositionText.Write(composition);
            var hash = ContentHash.Of(body);
            hashes.Add(hash);
            // By plain SQL: another host may keep the same one at this moment, and EF Core counts rows.
            await db.Database.ExecuteSqlAsync($"INSERT INTO compositions (hash, body) VALUES ({hash.ToBytes()}, {body}) ON CONFLICT DO NOTHING");
        }
        return hashes;
    }
}
