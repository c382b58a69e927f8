using MenuLab.Core.House;
using MenuLab.Data.Freezing;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace MenuLab.Data.Pantry;

internal sealed class IngredientConfiguration : IEntityTypeConfiguration<IngredientRow>
{
    private const string Owner = "ingredient";

    public void Configure(EntityTypeBuilder<IngredientRow> ingredient)
    {
        ingredient.ToTable("ingredients");
        ingredient.HasKey(i => i.Id);
        ingredient.HasIndex(i => i.Key).IsUnique();
        ingredient.HasIndex(i => i.SearchName);
        ingredient.Property(i => i.KeptAtCelsius).HasColumnName("kept_at_c");
        ingredient.Property(i => i.Version).IsConcurrencyToken();
        ingredient.HasOne<IngredientRow>().WithMany().HasForeignKey(i => i.MergedInto);
        ingredient.HasOne<Person>().WithMany().HasForeignKey(i => i.ArchivedBy);
        ingredient.OwnsMany(i => i.Figures, figure =>
        {
            figure.ToTable("ingredient_figures");
            figure.WithOwner().HasForeignKey(Owner);
            // The shipped figure stays beside the house's own and the reading; which one counts is decided in Core.
            figure.HasKey(Owner, nameof(FigureRow.Quantity), nameof(FigureRow.Origin));
        });
        ingredient.OwnsMany(i => i.Allergens, allergen =>
        {
            allergen.ToTable("ingredient_allergens");
            allergen.WithOwner().HasForeignKey(Owner);
            allergen.HasKey(Owner, nameof(AllergenRow.Allergen));
        });
        ingredient.OwnsMany(i => i.Roles, role =>
        {
            role.ToTable("ingredient_roles");
            role.WithOwner().HasForeignKey(Owner);
            role.HasKey(Owner, nameof(RoleRow.Role));
        });
        ingredient.OwnsMany(i => i.Aliases, alias =>
        {
            alias.ToTable("ingredient_aliases");
            alias.WithOwner().HasForeignKey(Owner);
            alias.HasKey(Owner, nameof(AliasRow.Alias));
            alias.HasIndex(a => a.SearchName);
        });
        ingredient.OwnsMany(i => i.Pieces, piece =>
        {
            piece.ToTable("ingredient_pieces");
            piece.WithOwner().HasForeignKey(Owner);
            piece.HasKey(Owner, nameof(PieceRow.Measure));
        });
    }
}

internal sealed class CompositionConfiguration : IEntityTypeConfiguration<CompositionRow>
{
    public void Configure(EntityTypeBuilder<CompositionRow> composition)
    {
        composition.ToTable("compositions");
        composition.HasKey(c => c.Hash);
        composition.IsFrozen(repeatsAreHonest: true);
    }
}

internal sealed class IngredientNowConfiguration : IEntityTypeConfiguration<IngredientNowRow>
{
    public void Configure(EntityTypeBuilder<IngredientNowRow> now)
    {
        now.ToTable("ingredient_now");
        now.HasKey(n => n.Ingredient);
        now.HasOne<IngredientRow>().WithOne().HasForeignKey<IngredientNowRow>(n => n.Ingredient);
        now.HasOne<CompositionRow>().WithMany().HasForeignKey(n => n.Composition);
    }
}

internal sealed class ReadingConfiguration : IEntityTypeConfiguration<ReadingRow>
{
    public void Configure(EntityTypeBuilder<ReadingRow> reading)
    {
        reading.ToTable("readings");
        reading.HasKey(r => r.Id);
        reading.Property(r => r.Celsius).HasColumnName("temperature_c");
        reading.HasOne<IngredientRow>().WithMany().HasForeignKey(r => r.Ingredient);
        reading.HasOne<Person>().WithMany().HasForeignKey(r => r.ReadBy);
        reading.HasOne<ReadingRow>().WithMany().HasForeignKey(r => r.Replaces);
        reading.IsFrozen();
    }
}

internal sealed class PackConfiguration : IEntityTypeConfiguration<PackRow>
{
    public void Configure(EntityTypeBuilder<PackRow> pack)
    {
        pack.ToTable("packs");
        pack.HasKey(p => p.Id);
        pack.HasOne<IngredientRow>().WithMany().HasForeignKey(p => p.Ingredient);
        pack.HasOne<Site>().WithMany().HasForeignKey(p => p.Site);
    }
}

internal sealed class PriceConfiguration : IEntityTypeConfiguration<PriceRow>
{
    public void Configure(EntityTypeBuilder<PriceRow> price)
    {
        price.ToTable("prices");
        price.HasKey(p => p.Id);
        price.Property(p => p.Currency).HasMaxLength(3);
        price.HasOne<PackRow>().WithMany().HasForeignKey(p => p.Pack);
        price.HasOne<Person>().WithMany().HasForeignKey(p => p.EnteredBy);
        price.IsFrozen();
    }
}

internal sealed class OnHandConfiguration : IEntityTypeConfiguration<OnHandRow>
{
    public void Configure(EntityTypeBuilder<OnHandRow> onHand)
    {
        onHand.ToTable("on_hand");
        onHand.HasKey(o => new { o.Ingredient, o.Site });
        onHand.HasOne<IngredientRow>().WithMany().HasForeignKey(o => o.Ingredient);
        onHand.HasOne<Site>().WithMany().HasForeignKey(o => o.Site);
        onHand.HasOne<Person>().WithMany().HasForeignKey(o => o.SaidBy);
    }
}
