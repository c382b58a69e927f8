using System.Text.Json;
using MenuLab.Core.Drafts;
using MenuLab.Core.Drafts.Rounds;
using MenuLab.Core.House;
using MenuLab.Core.Iterations;
using MenuLab.Core.Pantry;
using MenuLab.Data.Conversions;
using MenuLab.Data.Drafts;
using MenuLab.Data.Drafts.Rounds;
using MenuLab.Data.Freezing;
using MenuLab.Data.Pantry;
using MenuLab.Data.Records;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;

namespace MenuLab.Data;

/// <summary>The house's database. One short-lived context per operation; the two subtypes differ in how ids are stored.</summary>
public abstract class MenuLabDbContext(DbContextOptions options) : DbContext(options)
{
    private static readonly Type[] Ids =
    [
        typeof(PersonId), typeof(SiteId), typeof(IngredientId), typeof(ReadingId), typeof(PackId), typeof(PriceId), typeof(DraftId), typeof(LineId), typeof(EditId),
        typeof(PageId), typeof(IterationId), typeof(RecordId), typeof(RoundId), typeof(EntryId), typeof(DeviceId), typeof(AttachmentId),
    ];

    private static readonly Type[] Enums =
    [
        typeof(PersonKind), typeof(SetKind), typeof(FirstUnit), typeof(TemperatureScale), typeof(Paper), typeof(NumberPattern), typeof(DatePattern), typeof(IngredientKind), typeof(FigureStatus), typeof(Allergen),
        typeof(AllergenState), typeof(Standing), typeof(Unit), typeof(Place), typeof(Joins), typeof(SizeKind), typeof(PourLetter),
        typeof(CaptureKind), typeof(CaptureOutcome), typeof(AttachmentKind),
    ];

    public DbSet<Person> People => Set<Person>();

    public DbSet<Site> Sites => Set<Site>();

    public DbSet<NumberedSet> Sets => Set<NumberedSet>();

    public DbSet<HouseSettings> HouseSettings => Set<HouseSettings>();

    public DbSet<IngredientRow> Ingredients => Set<IngredientRow>();

    public DbSet<CompositionRow> Compositions => Set<CompositionRow>();

    public DbSet<IngredientNowRow> IngredientNow => Set<IngredientNowRow>();

    public DbSet<ReadingRow> Readings => Set<ReadingRow>();

    public DbSet<OnHandRow> OnHand => Set<OnHandRow>();

    public DbSet<PackRow> Packs => Set<PackRow>();

    public DbSet<PriceRow> Prices => Set<PriceRow>();

    public DbSet<Draft> Drafts => Set<Draft>();

    public DbSet<EditRow> Edits => Set<EditRow>();

    public DbSet<Iteration> Iterations => Set<Iteration>();

    public DbSet<IterationBody> IterationBodies => Set<IterationBody>();

    public DbSet<IterationLine> IterationLines => Set<IterationLine>();

    public DbSet<Round> Rounds => Set<Round>();

    public DbSet<PourNoteRow> PourNotes => Set<PourNoteRow>();

    public DbSet<CaptureRow> CaptureEntries => Set<CaptureRow>();

    public DbSet<Attachment> Attachments => Set<Attachment>();

    public DbSet<RecordEntry> Record => Set<RecordEntry>();

    /// <summary>The tables whose rows the database refuses to change.</summary>
    public IReadOnlyList<FrozenTable> FrozenTables => Frozen.Tables(Model);

    /// <summary>Holds a draft for this transaction, so that two hosts cannot change it at once.</summary>
    public abstract Task Hold(DraftId draft);

    /// <summary>Holds the order of arrival of what is captured, and with it all rounds, for this transaction; taken before a draft is held.</summary>
    public abstract Task HoldCaptures();

    /// <summary>Names of the triggers that are in the database.</summary>
    internal abstract Task<IReadOnlyList<string>> Triggers();

    /// <summary>Names of the triggers that a frozen table must have.</summary>
    internal abstract IEnumerable<string> TriggersOf(FrozenTable table);

    /// <summary>How ids are stored.</summary>
    private protected abstract Type IdConverter { get; }

    protected override void ConfigureConventions(ModelConfigurationBuilder configurationBuilder)
    {
        foreach (var id in Ids)
        {
            configurationBuilder.Properties(id).HaveConversion(IdConverter.MakeGenericType(id));
        }
        foreach (var @enum in Enums)
        {
            configurationBuilder.Properties(@enum).HaveConversion(typeof(EnumAsText<>).MakeGenericType(@enum));
        }
        configurationBuilder.Properties<ContentHash>().HaveConversion<HashAsBytes>();
        configurationBuilder.Properties<DateTimeOffset>().HaveConversion<UtcTicks>();
        configurationBuilder.Properties<DateOnly>().HaveConversion<IsoDay>();
        configurationBuilder.Properties<TimeOnly>().HaveConversion<IsoTime>();
    }

    protected override void OnModelCreating(ModelBuilder modelBuilder)
    {
        modelBuilder.ApplyConfigurationsFromAssembly(typeof(MenuLabDbContext).Assembly);
        foreach (var entity in modelBuilder.Model.GetEntityTypes())
        {
            foreach (var property in entity.GetProperties().Where(p => p.FindAnnotation(RelationalAnnotationNames.ColumnName) is null))
            {
                property.SetColumnName(JsonNamingPolicy.SnakeCaseLower.ConvertName(property.Name));
            }
            foreach (var hash in entity.GetProperties().Where(p => p.ClrType == typeof(ContentHash)))
            {
                // The compiled model writes down what stands for "not set"; an unset hash cannot be written.
                hash.Sentinel = NoHash;
            }
            foreach (var key in entity.GetKeys())
            {
                key.SetName(Lower(key.GetName()));
            }
            foreach (var index in entity.GetIndexes())
            {
                index.SetDatabaseName(Lower(index.GetDatabaseName()));
            }
            foreach (var foreignKey in entity.GetForeignKeys())
            {
                foreignKey.SetConstraintName(Lower(foreignKey.GetConstraintName()));
                // What refers to a row keeps it; only a draft's own lines go with the draft.
                if (!foreignKey.IsOwnership)
                {
                    foreignKey.DeleteBehavior = DeleteBehavior.Restrict;
                }
            }
        }
    }

    private static readonly ContentHash NoHash = ContentHash.Of([]);

    private static string? Lower(string? name) => name?.ToLowerInvariant();
}
