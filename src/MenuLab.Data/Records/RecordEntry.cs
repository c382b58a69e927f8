using MenuLab.Core.House;
using MenuLab.Data.Freezing;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace MenuLab.Data.Records;

/// <summary>Identifies an entry of the record.</summary>
public readonly record struct RecordId(Guid Value)
{
    public static RecordId New() => new(Guid.CreateVersion7());
}

/// <summary>Who did what, to what and when; never changes.</summary>
public sealed class RecordEntry
{
    public required RecordId Id { get; init; }

    public required PersonId Who { get; init; }

    /// <summary>What was done, a short key: "ingredient_archived".</summary>
    public required string What { get; init; }

    /// <summary>To what sort of thing, the table's name.</summary>
    public required string OnTable { get; init; }

    /// <summary>Which one.</summary>
    public required Guid OnId { get; init; }

    public required DateTimeOffset At { get; init; }

    /// <summary>As it was, JSON; null where there was nothing.</summary>
    public byte[]? Before { get; init; }

    /// <summary>As it became, JSON; null where nothing is left.</summary>
    public byte[]? After { get; init; }
}

internal sealed class RecordConfiguration : IEntityTypeConfiguration<RecordEntry>
{
    public void Configure(EntityTypeBuilder<RecordEntry> entry)
    {
        entry.ToTable("record");
        entry.HasKey(r => r.Id);
        entry.HasIndex(r => new { r.OnTable, r.OnId });
        entry.HasOne<Person>().WithMany().HasForeignKey(r => r.Who);
        entry.IsFrozen();
    }
}
