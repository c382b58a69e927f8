using MenuLab.Data.Opening;
using Npgsql;

namespace MenuLab.Data.Writing;

/// <summary>Writes to PostgreSQL: a transaction for each unit, tried again when the server asks for it.</summary>
internal sealed class PostgresWriter(Func<PostgresDbContext> context) : IWriter
{
    private const int MostTries = 5;

    public async Task<T> Write<T>(Func<MenuLabDbContext, Task<T>> unit, CancellationToken cancellation = default)
    {
        for (var attempt = 1; ; attempt++)
        {
            try
            {
                await using var db = context();
                await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
                var result = await unit(db);
                await transaction.CommitAsync(CancellationToken.None);
                return result;
            }
            catch (Exception e) when (attempt < MostTries && StateOf(e) is PostgresErrorCodes.SerializationFailure or PostgresErrorCodes.DeadlockDetected)
            {
                // Two hosts crossed: one of them begins again.
            }
            catch (Exception e) when (StateOf(e) is PostgresErrorCodes.DiskFull)
            {
                throw new StoreException(StoreTrouble.DiskFull, "The disk of the database server is full. Nothing of this change was saved; make room and try again.", e);
            }
        }
    }

    private static string? StateOf(Exception e) => (e as PostgresException ?? e.InnerException as PostgresException)?.SqlState;
}
