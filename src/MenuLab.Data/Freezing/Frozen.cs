using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace MenuLab.Data.Freezing;

/// <summary>A table whose rows the database itself refuses to change, replace or delete (design, decision 4).</summary>
/// <param name="Table">Its name.</param>
/// <param name="Keys">Every set of columns that is unique in it: INSERT OR REPLACE deletes by each of them.</param>
/// <param name="RepeatsAreHonest">An insert of a row that is there already is a retry: it is passed over, not refused.</param>
public sealed record FrozenTable(string Table, IReadOnlyList<IReadOnlyList<string>> Keys, bool RepeatsAreHonest);

internal static class Frozen
{
    private const string Mark = "MenuLab:Frozen";

    /// <summary>Says in the model that the table is frozen; the migration that makes it must call Freeze, and a test compares.</summary>
    public static void IsFrozen(this EntityTypeBuilder entity, bool repeatsAreHonest = false) =>
        entity.HasAnnotation(Mark, repeatsAreHonest ? "repeats_are_honest" : "always");

    /// <summary>The frozen tables of a model, in the order of their names.</summary>
    public static IReadOnlyList<FrozenTable> Tables(IModel model) =>
    [
        .. model.GetEntityTypes()
            .Where(e => e.FindAnnotation(Mark) is not null)
            .Select(e => new FrozenTable(e.GetTableName()!, Keys(e), e.FindAnnotation(Mark)!.Value is "repeats_are_honest"))
            .OrderBy(t => t.Table, StringComparer.Ordinal),
    ];

    private static List<IReadOnlyList<string>> Keys(IEntityType entity) =>
    [
        .. entity.GetKeys().Select(k => k.Properties).Concat(entity.GetIndexes().Where(i => i.IsUnique).Select(i => i.Properties))
            .Select(properties => properties.Select(p => p.GetColumnName()).ToList()),
    ];
}
