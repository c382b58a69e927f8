using MenuLab.Core.House;
using MenuLab.Data.Writing;
using Microsoft.EntityFrameworkCore;

namespace MenuLab.Data.House;

/// <summary>The rows that every house has from its first start on: one person, one site, its settings and the shipped measures.</summary>
public static class FirstRows
{
    /// <summary>The person at this machine: the same id in every house, until there are accounts.</summary>
    public static PersonId AtThisMachine { get; } = new(new Guid("01941f29-7c00-7000-8000-000000000001"));

    /// <summary>The first site.</summary>
    public static SiteId FirstSite { get; } = new(new Guid("01941f29-7c00-7000-8000-000000000002"));

    /// <summary>Adds what is missing; a second call changes nothing.</summary>
    /// <param name="writer">The one writer.</param>
    /// <param name="measures">Measures set number 1.</param>
    /// <param name="now">The time.</param>
    public static Task<int> Ensure(IWriter writer, MeasuresSet measures, DateTimeOffset now) =>
        writer.Write(async db =>
        {
            if (!await db.People.AnyAsync(p => p.Id == AtThisMachine))
            {
                db.Add(Person.Of(AtThisMachine, "The person at this machine", "", PersonKind.AtThisMachine).Value);
            }
            if (!await db.Sites.AnyAsync())
            {
                db.Add(Site.Of(FirstSite, "The house", "Etc/UTC", Site.UsualDayTurn, "EUR", "EU").Value);
            }
            if (!await db.HouseSettings.AnyAsync())
            {
                db.Add(new HouseSettings());
            }
            if (!await db.Sets.AnyAsync(s => s.Kind == SetKind.Measures && s.Number == measures.Number))
            {
                db.Add(NumberedSet.Of(measures, null, now));
            }
            return await db.SaveChangesAsync();
        });
}
