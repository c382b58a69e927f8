using MenuLab.Core;
using MenuLab.Core.Balance;
using MenuLab.Core.House;
using MenuLab.Data.Writing;
using Microsoft.EntityFrameworkCore;

namespace MenuLab.Data.Pantry;

/// <summary>Keeps packs and what they cost. A price is never changed: a new one counts from its day on.</summary>
/// <param name="writer">The one writer.</param>
/// <param name="time">Says when.</param>
public sealed class PackWriting(IWriter writer, TimeProvider time)
{
    /// <summary>Most that a pack holds, in its unit: 1000 L.</summary>
    public const double LargestPack = 1_000_000;

    /// <summary>Most that a pack costs, in units of the currency.</summary>
    public const decimal HighestPrice = 10_000_000;

    private const int DaysAhead = 731;

    /// <summary>Keeps a pack; with the same id again it adds nothing.</summary>
    public Task<Result<PackId>> AddPack(NewPack pack, CancellationToken cancellation = default) =>
        writer.Write(
            async db =>
            {
                if (await db.Packs.AnyAsync(p => p.Id == pack.Id))
                {
                    return Result.Ok(pack.Id);
                }
                var problems = new List<Problem>();
                var supplier = OneLine.Check(pack.Supplier, 0, PantryWriting.NameMaxLength, "supplier", "a supplier", problems);
                if (!(pack.Amount > 0 && pack.Amount <= LargestPack))
                {
                    problems.Add(new Problem("amount", "A pack holds more than nothing and at most 1000000 of its unit."));
                }
                if (pack.Unit is not (Costing.Millilitres or Costing.Grams or Costing.Pieces))
                {
                    problems.Add(new Problem("unit", "A pack is counted in mL, g or pieces."));
                }
                if (!await db.Ingredients.AnyAsync(i => i.Id == pack.Ingredient))
                {
                    problems.Add(new Problem("ingredient", "There is no such ingredient."));
                }
                if (problems.Count > 0)
                {
                    return Result.Invalid<PackId>(problems);
                }
                db.Add(new PackRow { Id = pack.Id, Ingredient = pack.Ingredient, Site = pack.Site, Supplier = supplier, Amount = pack.Amount, Unit = pack.Unit });
                await db.SaveChangesAsync();
                return Result.Ok(pack.Id);
            },
            cancellation);

    /// <summary>Takes a pack out of use: its prices stay as history and count no more.</summary>
    public Task<Result<PackId>> ArchivePack(PackId id, CancellationToken cancellation = default) =>
        writer.Write(
            async db =>
            {
                var pack = await db.Packs.AsTracking().SingleOrDefaultAsync(p => p.Id == id);
                if (pack is null)
                {
                    return Result.Invalid<PackId>(new Problem("pack", "There is no such pack."));
                }
                pack.ArchivedAt ??= time.GetUtcNow();
                await db.SaveChangesAsync();
                return Result.Ok(id);
            },
            cancellation);

    /// <summary>Keeps a price as typed; with the same id again it adds nothing.</summary>
    public Task<Result<PriceId>> AddPrice(NewPrice price, PersonId by, CancellationToken cancellation = default) =>
        writer.Write(
            async db =>
            {
                if (await db.Prices.AnyAsync(p => p.Id == price.Id))
                {
                    return Result.Ok(price.Id);
                }
                var problems = new List<Problem>();
                var code = price.Currency?.Trim() ?? "";
                if (!Currencies.Knows(code))
                {
                    problems.Add(new Problem("currency", $"There is no currency \"{code}\"; give an ISO 4217 code, three capital letters such as EUR."));
                }
                // Rounded first: what would be stored as nothing is nothing.
                if (decimal.Round(price.Amount, 4) <= 0 || price.Amount > HighestPrice)
                {
                    problems.Add(new Problem("price", "A price is more than nothing and at most 10000000. What costs nothing has no price here."));
                }
                if (price.TaxPercent is < 0 or > 100)
                {
                    problems.Add(new Problem("tax", "A tax rate lies between 0 and 100 %."));
                }
                PantryWriting.DayIsSane(price.FromDay, time, problems, "day", DaysAhead);
                if (await db.Packs.SingleOrDefaultAsync(p => p.Id == price.Pack) is not { ArchivedAt: null })
                {
                    problems.Add(new Problem("pack", "There is no such pack in use."));
                }
                if (problems.Count > 0)
                {
                    return Result.Invalid<PriceId>(problems);
                }
                db.Add(new PriceRow
                {
                    Id = price.Id, Pack = price.Pack, Amount = (long)decimal.Round(price.Amount * 10_000, MidpointRounding.AwayFromZero), Currency = code, IsGross = price.IsGross,
                    TaxRate = (long)decimal.Round(price.TaxPercent * 10_000, MidpointRounding.AwayFromZero), FromDay = price.FromDay, EnteredBy = by,
                });
                await db.SaveChangesAsync();
                return Result.Ok(price.Id);
            },
            cancellation);
}
