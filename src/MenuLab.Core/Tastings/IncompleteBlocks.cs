namespace MenuLab.Core.Tastings;

/// <summary>Blocks in which each taster tastes some of the samples, so that every sample and every pair of samples comes equally often.</summary>
/// <param name="Samples">How many samples there are, counted from 0.</param>
/// <param name="BlockSize">How many each taster tastes.</param>
/// <param name="Blocks">The samples of each block, rising.</param>
/// <param name="TimesEach">How often each sample comes.</param>
/// <param name="TimesTogether">How often each pair of samples comes in one block.</param>
public sealed record IncompleteBlocks(int Samples, int BlockSize, IReadOnlyList<IReadOnlyList<int>> Blocks, int TimesEach, int TimesTogether)
{
    // Blocks that are no single construction: ten threes of six.
    private static readonly int[][] SixByThree = [[0, 1, 4], [0, 1, 5], [0, 2, 3], [0, 2, 5], [0, 3, 4], [1, 2, 3], [1, 2, 4], [1, 3, 5], [2, 4, 5], [3, 4, 5]];

    /// <summary>How much of the information of complete orders is kept, 0 to 1.</summary>
    /// <remarks>Source: docs/statistics.md, section 1.3: pairs together times samples over times each times block size. Valid for: balanced blocks. Error: none.</remarks>
    public double Efficiency => (double)TimesTogether * Samples / (TimesEach * BlockSize);

    /// <summary>The sizes that can be had: samples and block size.</summary>
    /// <remarks>Source: docs/statistics.md, section 1.3. Valid for: up to thirteen samples. Error: none.</remarks>
    public static IReadOnlyList<(int Samples, int BlockSize)> Sizes { get; } =
        [(4, 2), (4, 3), (5, 2), (5, 3), (5, 4), (6, 2), (6, 3), (6, 5), (7, 3), (7, 4), (8, 4), (9, 3), (11, 5), (13, 4)];

    /// <summary>The blocks for a size.</summary>
    /// <param name="samples">How many samples.</param>
    /// <param name="blockSize">How many each taster tastes.</param>
    /// <returns>The blocks; a problem for a size that is not among <see cref="Sizes"/>.</returns>
    /// <remarks>
    /// Source: docs/statistics.md, section 1.3: all subsets; shifts of a difference set; lines of the plane of three by three; planes of the cube. Valid
    /// for: the sizes listed. Error: none; equal counts are tested.
    /// </remarks>
    public static Result<IncompleteBlocks> For(int samples, int blockSize)
    {
        if (!Sizes.Contains((samples, blockSize)))
        {
            return Result.Invalid<IncompleteBlocks>(new Problem("Samples", $"There is no even plan of {blockSize} out of {samples} samples. Take fewer samples, or let everybody taste all of them in two sittings."));
        }
        IReadOnlyList<IReadOnlyList<int>> blocks = (samples, blockSize) switch
        {
            (6, 3) => SixByThree,
            (7, 3) => Shifts(samples, 0, 1, 3),
            (7, 4) => Shifts(samples, 0, 1, 2, 4),
            (11, 5) => Shifts(samples, 1, 3, 4, 5, 9),
            (13, 4) => Shifts(samples, 0, 1, 3, 9),
            // Four corners of a cube lie in a plane when the exclusive or of their numbers is nothing.
            (8, 4) => [.. Subsets(8, 4).Where(block => block.Aggregate(0, (all, corner) => all ^ corner) == 0)],
            // Three points of the plane of three by three lie on a line when rows and columns add up to nothing, modulo three.
            (9, 3) => [.. Subsets(9, 3).Where(block => block.Sum(point => point / 3) % 3 == 0 && block.Sum(point => point % 3) % 3 == 0)],
            _ => Subsets(samples, blockSize),
        };
        var each = blocks.Count * blockSize / samples;
        return Result.Ok(new IncompleteBlocks(samples, blockSize, blocks, each, each * (blockSize - 1) / (samples - 1)));
    }

    private static List<IReadOnlyList<int>> Shifts(int samples, params IReadOnlyList<int> start) =>
        [.. Enumerable.Range(0, samples).Select(IReadOnlyList<int> (shift) => [.. start.Select(sample => (sample + shift) % samples).Order()])];

    private static List<IReadOnlyList<int>> Subsets(int samples, int size) =>
        [.. Enumerable.Range(0, 1 << samples).Where(set => int.PopCount(set) == size)
            .Select(IReadOnlyList<int> (set) => [.. Enumerable.Range(0, samples).Where(sample => (set & (1 << sample)) != 0)])];
}
