using MenuLab.Core.Pantry;

namespace MenuLab.Core.Preps;

/// <summary>The composition that drinks use of a prep, and what it rests on.</summary>
/// <param name="Composition">What drinks use.</param>
/// <param name="Batch">The batch it was read on; null for the recipe's estimate.</param>
public sealed record PrepInUse(Composition Composition, PrepBatch? Batch)
{
    /// <summary>The newest batch whose readings say what is in it, else the estimate.</summary>
    /// <param name="estimated">By the recipe.</param>
    /// <param name="batches">Batches with what their readings gave, in any order.</param>
    public static PrepInUse Of(PrepOutcome estimated, IEnumerable<(PrepBatch Batch, MeasuredPrep Measured)> batches)
    {
        var (batch, measured) = batches.Where(b => b.Measured.HasOwnComposition).OrderBy(b => b.Batch.MadeOn).ThenBy(b => b.Batch.Id).LastOrDefault();
        return batch is null ? new PrepInUse(estimated.Composition, null) : new PrepInUse(measured.Composition, batch);
    }
}
