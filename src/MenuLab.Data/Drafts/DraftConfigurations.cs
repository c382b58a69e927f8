using MenuLab.Core.Drafts;
using MenuLab.Core.House;
using MenuLab.Data.Conversions;
using MenuLab.Data.Freezing;
using MenuLab.Data.Pantry;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace MenuLab.Data.Drafts;

internal sealed class DraftConfiguration : IEntityTypeConfiguration<Draft>
{
    private const string Owner = "draft";

    public void Configure(EntityTypeBuilder<Draft> draft)
    {
        draft.ToTable("drafts");
        draft.HasKey(d => d.Id);
        draft.Property(d => d.Name).HasMaxLength(Draft.NameMaxLength);
        draft.Property(d => d.Style).HasMaxLength(Draft.KeyMaxLength);
        draft.Property(d => d.StandingReason).HasMaxLength(Draft.ReasonMaxLength);
        draft.Property(d => d.Brief).HasConversion<BriefAsJson>();
        draft.Property(d => d.Version).IsConcurrencyToken();
        draft.HasIndex(d => d.SearchName);
        draft.HasOne<Person>().WithMany().HasForeignKey(d => d.MadeBy);
        draft.Ignore(d => d.Lines).Ignore(d => d.DraftLines).Ignore(d => d.UncountedMillilitres);
        draft.OwnsMany<WorkingLine>("_lines", line =>
        {
            line.ToTable("draft_lines");
            line.WithOwner().HasForeignKey(Owner);
            // By the line's own identity and not by its place: two people move and change lines at once.
            line.HasKey(Owner, nameof(WorkingLine.Id));
            line.Property(l => l.Id).HasColumnName("line").ValueGeneratedNever();
            line.Property(l => l.Text).HasMaxLength(Draft.TextMaxLength);
            line.Property(l => l.Treatment).HasMaxLength(Draft.TreatmentMaxLength);
            line.Property(l => l.Millilitres).HasColumnName("volume_ml");
            line.Property(l => l.Grams).HasColumnName("mass_g");
            line.Property(l => l.GramsUncertainty).HasColumnName("mass_uncertainty_g");
            line.Property(l => l.StartCelsius).HasColumnName("start_c");
            line.Property(l => l.Assumptions).HasConversion<OneALine>(OneALine.Comparer);
            line.Ignore(l => l.Content);
            line.HasIndex(l => l.Ingredient);
            line.HasOne<IngredientRow>().WithMany().HasForeignKey(l => l.Ingredient).OnDelete(DeleteBehavior.Restrict);
        });
        draft.OwnsOne(d => d.Build, build =>
        {
            build.ToTable("draft_build");
            build.WithOwner().HasForeignKey(Owner);
            build.HasKey(Owner);
            build.Property(b => b.Steps).HasConversion<OneALine>(OneALine.Comparer);
            build.Ignore(b => b.Value);
        });
        draft.Navigation(d => d.Build).IsRequired();
    }
}

internal sealed class EditConfiguration : IEntityTypeConfiguration<EditRow>
{
    public void Configure(EntityTypeBuilder<EditRow> edit)
    {
        edit.ToTable("edits");
        edit.HasKey(e => e.Id);
        edit.HasIndex(e => new { e.Draft, e.Version }).IsUnique();
        edit.HasOne<Draft>().WithMany().HasForeignKey(e => e.Draft);
        edit.HasOne<Person>().WithMany().HasForeignKey(e => e.Author);
        edit.IsFrozen(repeatsAreHonest: true);
    }
}
