using MenuLab.Core.House;
using MenuLab.Data.Freezing;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace MenuLab.Data.House;

internal sealed class PersonConfiguration : IEntityTypeConfiguration<Person>
{
    public void Configure(EntityTypeBuilder<Person> person)
    {
        person.ToTable("people");
        person.HasKey(p => p.Id);
        person.Property(p => p.Name).HasMaxLength(Person.NameMaxLength);
        person.Property(p => p.Initials).HasMaxLength(Person.InitialsMaxLength);
    }
}

internal sealed class SiteConfiguration : IEntityTypeConfiguration<Site>
{
    public void Configure(EntityTypeBuilder<Site> site)
    {
        site.ToTable("sites");
        site.HasKey(s => s.Id);
        site.Property(s => s.Name).HasMaxLength(Site.NameMaxLength);
        site.Property(s => s.TimeZone).HasMaxLength(80);
        site.Property(s => s.Currency).HasMaxLength(3);
        site.Property(s => s.Jurisdiction).HasMaxLength(16);
    }
}

internal sealed class HouseSettingsConfiguration : IEntityTypeConfiguration<HouseSettings>
{
    public void Configure(EntityTypeBuilder<HouseSettings> settings)
    {
        settings.ToTable("house_settings");
        settings.HasKey(s => s.Id);
        settings.Property(s => s.Id).ValueGeneratedNever();
        settings.Property(s => s.Name).HasMaxLength(HouseSettings.NameMaxLength);
        settings.Property(s => s.PublicAddress).HasMaxLength(HouseSettings.AddressMaxLength);
        settings.Ignore(s => s.Format);
        settings.Property(s => s.PourStepMillilitres).HasColumnName("pour_step_ml").HasDefaultValue(HouseSettings.UsualPourStepMillilitres);
        settings.Property(s => s.NumberPattern).HasDefaultValue(NumberPattern.Point);
        settings.Property(s => s.DatePattern).HasDefaultValue(DatePattern.DayMonthYear);
        settings.Property(s => s.Version).IsConcurrencyToken();
    }
}

internal sealed class NumberedSetConfiguration : IEntityTypeConfiguration<NumberedSet>
{
    public void Configure(EntityTypeBuilder<NumberedSet> set)
    {
        set.ToTable("sets");
        set.HasKey(s => new { s.Kind, s.Number });
        set.Property(s => s.Number).ValueGeneratedNever();
        set.Ignore(s => s.Body);
        set.Property<byte[]>("_body").HasColumnName("body");
        set.Property(s => s.At).HasColumnName("made_at");
        set.HasOne<Person>().WithMany().HasForeignKey(s => s.MadeBy);
        set.IsFrozen();
    }
}
