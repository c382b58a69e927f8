namespace MenuLab.Data.Writing;

/// <summary>The one way to write.</summary>
public interface IWriter
{
    /// <summary>
    /// Runs a unit of work in a transaction and answers when it is durable. A unit does nothing but database work (no
    /// network, no waiting), since others wait behind it, and it may be run again from the start.
    /// </summary>
    /// <param name="unit">The unit; it saves its changes itself.</param>
    /// <param name="cancellation">Gives up waiting; a unit that has begun is finished nevertheless.</param>
    /// <returns>What the unit returns.</returns>
    /// <exception cref="Opening.StoreException">It was not saved, for a reason that a person can put right.</exception>
    Task<T> Write<T>(Func<MenuLabDbContext, Task<T>> unit, CancellationToken cancellation = default);
}
