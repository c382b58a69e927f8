using MenuLab.Core.Drafts;
using MenuLab.Core.Drafts.Rounds;
using MenuLab.Core.House;
using MenuLab.Data.Freezing;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace MenuLab.Data.Drafts.Rounds;

internal sealed class RoundConfiguration : IEntityTypeConfiguration<Round>
{
    private const string Owner = "round";

    public void Configure(EntityTypeBuilder<Round> round)
    {
        round.ToTable("rounds");
        round.HasKey(r => r.Id);
        round.Property(r => r.By).HasColumnName("started_by");
        round.Property(r => r.At).HasColumnName("started_at");
        round.Property(r => r.SizeGrams).HasColumnName("size_g");
        round.Property<byte[]>("_content").HasColumnName("content");
        round.HasIndex(r => new { r.Draft, r.Number }).IsUnique();
        round.HasOne<Draft>().WithMany().HasForeignKey(r => r.Draft);
        round.HasOne<Round>().WithMany().HasForeignKey(r => r.FromRound);
        round.HasOne<Person>().WithMany().HasForeignKey(r => r.By);
        round.HasOne<Person>().WithMany().HasForeignKey(r => r.EndedBy);
        round.Ignore(r => r.Size).Ignore(r => r.Lines).Ignore(r => r.Build).Ignore(r => r.Pours).Ignore(r => r.Cells).Ignore(r => r.DrinkGrams).Ignore(r => r.Share);
        round.OwnsMany<Pour>("_pours", pour =>
        {
            pour.ToTable("pours");
            pour.WithOwner().HasForeignKey(Owner);
            pour.HasKey(Owner, nameof(Pour.Letter));
            pour.Property(p => p.Letter).ValueGeneratedNever();
        });
        round.OwnsMany<PourCell>("_cells", cell =>
        {
            cell.ToTable("pour_cells");
            cell.WithOwner().HasForeignKey(Owner);
            cell.HasKey(Owner, nameof(PourCell.Letter), nameof(PourCell.Line));
            cell.Property(c => c.Letter).ValueGeneratedNever();
            cell.Property(c => c.Line).ValueGeneratedNever();
        });
    }
}

internal sealed class PourNoteConfiguration : IEntityTypeConfiguration<PourNoteRow>
{
    public void Configure(EntityTypeBuilder<PourNoteRow> note)
    {
        note.ToTable("pour_notes");
        note.HasKey(n => n.Id);
        note.Property(n => n.Id).ValueGeneratedNever();
        note.HasIndex(n => n.Round);
        note.HasOne<Round>().WithMany().HasForeignKey(n => n.Round);
        note.HasOne<Person>().WithMany().HasForeignKey(n => n.Author);
        note.IsFrozen(repeatsAreHonest: true);
    }
}

internal sealed class CaptureConfiguration : IEntityTypeConfiguration<CaptureRow>
{
    public void Configure(EntityTypeBuilder<CaptureRow> entry)
    {
        entry.ToTable("capture_entries");
        entry.HasKey(e => e.Id);
        entry.Property(e => e.Id).ValueGeneratedNever();
        entry.HasIndex(e => e.ReceivedOrder).IsUnique();
        entry.HasIndex(e => e.Answers);
        entry.HasIndex(e => e.Outcome);
        entry.HasIndex(e => e.ReceivedAt);
        entry.HasOne<Person>().WithMany().HasForeignKey(e => e.Author);
        entry.IsFrozen(repeatsAreHonest: true);
    }
}

internal sealed class AttachmentConfiguration : IEntityTypeConfiguration<Attachment>
{
    public void Configure(EntityTypeBuilder<Attachment> attachment)
    {
        attachment.ToTable("attachments");
        attachment.HasKey(a => a.Id);
        attachment.Property(a => a.Id).ValueGeneratedNever();
        attachment.Property(a => a.MediaType).HasMaxLength(Attachment.MediaTypeMaxLength);
        attachment.Property(a => a.By).HasColumnName("taken_by");
        attachment.Property(a => a.At).HasColumnName("received_at");
        attachment.HasOne<Person>().WithMany().HasForeignKey(a => a.By);
    }
}
