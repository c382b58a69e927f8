using MenuLab.Core.Drafts;
using MenuLab.Core.House;
using MenuLab.Core.Iterations;
using MenuLab.Data.Freezing;
using MenuLab.Data.Pantry;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace MenuLab.Data.Iterations;

internal sealed class IterationConfiguration : IEntityTypeConfiguration<Iteration>
{
    public void Configure(EntityTypeBuilder<Iteration> iteration)
    {
        iteration.ToTable("iterations");
        iteration.HasKey(i => i.Id);
        iteration.Property(i => i.Reason).HasMaxLength(Iteration.ReasonMaxLength);
        iteration.Property(i => i.By).HasColumnName("saved_by");
        iteration.Property(i => i.At).HasColumnName("saved_at");
        iteration.HasIndex(i => new { i.Draft, i.Number }).IsUnique();
        iteration.HasOne<Draft>().WithMany().HasForeignKey(i => i.Draft);
        iteration.HasOne<Iteration>().WithMany().HasForeignKey(i => i.Parent);
        iteration.HasOne<Person>().WithMany().HasForeignKey(i => i.By);
        iteration.ComplexProperty(i => i.Stamp, stamp =>
        {
            stamp.Property(s => s.Engine).HasColumnName("engine");
            stamp.Property(s => s.Measures).HasColumnName("measures_set");
            stamp.Property(s => s.Perception).HasColumnName("perception_set");
            stamp.Property(s => s.Bands).HasColumnName("bands_set");
            stamp.Property(s => s.Ice).HasColumnName("ice_set");
            stamp.Property(s => s.Rules).HasColumnName("rules_edition");
            stamp.Property(s => s.Jurisdiction).HasColumnName("jurisdiction");
        });
        iteration.ComplexProperty(i => i.Figures, figures =>
        {
            figures.Property(f => f.Volume).HasColumnName("volume_ml");
            figures.Property(f => f.Abv).HasColumnName("abv_percent");
            figures.Property(f => f.Sugar).HasColumnName("sugar_g_per_100ml");
            figures.Property(f => f.Sweetness).HasColumnName("sweetness_g_per_100ml");
            figures.Property(f => f.Acid).HasColumnName("acid_citric_g_per_100ml");
            figures.Property(f => f.SugarAcidRatio).HasColumnName("sugar_acid_ratio");
            figures.Property(f => f.Ph).HasColumnName("ph");
            figures.Property(f => f.Brix).HasColumnName("brix");
            figures.Property(f => f.Energy).HasColumnName("energy_kcal");
            figures.Property(f => f.Dilution).HasColumnName("dilution_percent");
            figures.Property(f => f.Temperature).HasColumnName("final_temp_c");
            figures.Property(f => f.GlassFill).HasColumnName("glass_fill_percent");
            figures.Property(f => f.Cost).HasColumnName("cost");
            figures.Property(f => f.Unknown).HasColumnName("unknown_percent");
        });
        iteration.IsFrozen();
    }
}

internal sealed class IterationBodyConfiguration : IEntityTypeConfiguration<IterationBody>
{
    public void Configure(EntityTypeBuilder<IterationBody> body)
    {
        body.ToTable("iteration_bodies");
        body.HasKey(b => b.Iteration);
        body.Property<byte[]>("_inputs").HasColumnName("inputs");
        body.Property<byte[]>("_balance").HasColumnName("balance");
        body.Ignore(b => b.StoredBytes);
        body.HasOne<Iteration>().WithOne().HasForeignKey<IterationBody>(b => b.Iteration);
        body.IsFrozen();
    }
}

internal sealed class IterationLineConfiguration : IEntityTypeConfiguration<IterationLine>
{
    public void Configure(EntityTypeBuilder<IterationLine> line)
    {
        line.ToTable("iteration_lines");
        line.HasKey(l => new { l.Iteration, l.Position });
        line.Property(l => l.Position).ValueGeneratedNever();
        line.HasIndex(l => l.Ingredient);
        line.HasOne<Iteration>().WithMany().HasForeignKey(l => l.Iteration);
        line.HasOne<IngredientRow>().WithMany().HasForeignKey(l => l.Ingredient);
        line.HasOne<CompositionRow>().WithMany().HasForeignKey(l => l.Composition);
        line.IsFrozen();
    }
}
