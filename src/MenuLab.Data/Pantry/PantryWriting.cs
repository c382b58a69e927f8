using System.Text.Json;
using MenuLab.Core;
using MenuLab.Core.House;
using MenuLab.Core.Pantry;
using MenuLab.Data.Records;
using MenuLab.Data.Writing;
using Microsoft.EntityFrameworkCore;

namespace MenuLab.Data.Pantry;

/// <summary>
/// Changes ingredients, each change in a transaction of its own that also makes the composition anew. Whoever changes one
/// says which version he saw; if it has moved on since, nothing is saved and one problem says so.
/// </summary>
/// <param name="writer">The one writer.</param>
/// <param name="time">Says when.</param>
public sealed class PantryWriting(IWriter writer, TimeProvider time)
{
    /// <summary>Most characters in a name or an alias.</summary>
    public const int NameMaxLength = 80;

    /// <summary>Most characters in a source.</summary>
    public const int SourceMaxLength = 200;

    /// <summary>Most characters in a note.</summary>
    public const int NoteMaxLength = 2000;

    /// <summary>Most aliases of one ingredient.</summary>
    public const int MostAliases = 60;

    /// <summary>Coldest and warmest place that anything is kept at, °C.</summary>
    public const double Coldest = -40, Warmest = 90;

    /// <summary>Origin of the house's own figures.</summary>
    public const string House = "house";

    /// <summary>Origin of figures that were read on the bench.</summary>
    public const string Reading = "reading";

    /// <summary>Field of the problem that somebody else saved first.</summary>
    public const string SomebodyElse = "version";

    /// <summary>Adds an ingredient of the house. Its allergens are open questions until somebody has read the label.</summary>
    /// <returns>Its id, or what is wrong.</returns>
    public Task<Result<IngredientId>> Add(NewIngredient wish, PersonId by, CancellationToken cancellation = default) =>
        writer.Write(
            async db =>
            {
                if (await db.Ingredients.AnyAsync(i => i.Id == wish.Id))
                {
                    return Result.Ok(wish.Id);
                }
                var problems = new List<Problem>();
                var name = OneLine.Check(wish.Name, 1, NameMaxLength, "name", "a name", problems);
                KeptAt(wish.KeptAtCelsius, problems);
                if (wish.Basis is not (CompositionBuilder.PerMass or CompositionBuilder.PerVolume))
                {
                    problems.Add(new Problem("basis", $"Figures stand per {CompositionBuilder.PerMass} or per {CompositionBuilder.PerVolume}."));
                }
                await NameIsFree(db, wish.Id, name, problems);
                if (problems.Count > 0)
                {
                    return Result.Invalid<IngredientId>(problems);
                }
                var row = new IngredientRow
                {
                    Id = wish.Id, Name = name, SearchName = SearchName.Of(name), Kind = wish.Kind, Basis = wish.Basis, KeptAtCelsius = wish.KeptAtCelsius,
                    IsCarbonated = wish.Kind == IngredientKind.Carbonated, HasRawEgg = false, Version = 1,
                };
                foreach (var allergen in Enum.GetValues<Allergen>())
                {
                    row.Allergens.Add(new AllergenRow { Allergen = allergen, State = AllergenState.Unknown, Law = AllergenLaw.Of(allergen), Source = "nobody has read the label yet" });
                }
                db.Add(row);
                Note(db, by, "ingredient_added", row.Id, null, new { row.Name });
                // The composition's row refers to the ingredient's, so that one goes first.
                await db.SaveChangesAsync();
                db.Add(new IngredientNowRow { Ingredient = row.Id, Composition = (await db.KeepCompositions([PantryReading.Compose(row)]))[0] });
                await db.SaveChangesAsync();
                return Result.Ok(row.Id);
            },
            cancellation);

    /// <summary>Changes what an ingredient goes by, what it is there for and where it is kept.</summary>
    /// <returns>Its version now, or what is wrong.</returns>
    public Task<Result<int>> Describe(IngredientId id, int seen, IngredientCard card, PersonId by, CancellationToken cancellation = default) =>
        Change(
            id, seen,
            async (db, row, problems) =>
            {
                var name = OneLine.Check(card.Name, 1, NameMaxLength, "name", "a name", problems);
                var note = card.Note?.Trim() ?? "";
                if (note.Length > NoteMaxLength)
                {
                    problems.Add(new Problem("note", $"Give a note of at most {NoteMaxLength} characters."));
                }
                KeptAt(card.KeptAtCelsius, problems);
                problems.AddRange(card.Roles.Where(r => !Roles.All.Contains(r)).Select(r => new Problem("roles", $"There is no role \"{r}\".")));
                var aliases = card.Aliases.Select(a => OneLine.Check(a, 1, NameMaxLength, "aliases", "each other way to write it on a line of its own,", problems)).Distinct(StringComparer.Ordinal).ToList();
                if (aliases.Count > MostAliases)
                {
                    problems.Add(new Problem("aliases", $"Give at most {MostAliases} other ways to write it."));
                }
                if (name != row.Name)
                {
                    await NameIsFree(db, id, name, problems);
                }
                if (problems.Count > 0)
                {
                    return;
                }
                if (name != row.Name)
                {
                    Note(db, by, "ingredient_renamed", id, new { row.Name }, new { Name = name });
                }
                (row.Name, row.SearchName, row.Kind, row.KeptAtCelsius, row.Note) = (name, SearchName.Of(name), card.Kind, card.KeptAtCelsius, note);
                if (row.Key is null)
                {
                    row.IsCarbonated = card.Kind == IngredientKind.Carbonated;
                    row.HasRawEgg = card.HasRawEgg;
                }
                row.Roles.RemoveAll(r => !card.Roles.Contains(r.Role));
                row.Roles.AddRange(card.Roles.Where(k => row.Roles.All(r => r.Role != k)).Distinct().Select(k => new RoleRow { Role = k }));
                row.Aliases.RemoveAll(a => !aliases.Contains(a.Alias));
                var place = row.Aliases.Count == 0 ? 0 : row.Aliases.Max(a => a.Place);
                foreach (var alias in aliases.Where(a => row.Aliases.All(r => r.Alias != a)))
                {
                    row.Aliases.Add(new AliasRow { Alias = alias, SearchName = SearchName.Of(alias), Place = ++place });
                }
            },
            cancellation);

    /// <summary>Sets figures of the house, or takes them away. A shipped figure is never edited: it stays beside them.</summary>
    /// <returns>The version now, or all that is wrong; then nothing has changed.</returns>
    public Task<Result<int>> SetFigures(IngredientId id, int seen, IReadOnlyList<HouseFigure> figures, PersonId by, CancellationToken cancellation = default) =>
        Change(
            id, seen,
            (db, row, problems) =>
            {
                foreach (var figure in figures)
                {
                    problems.AddRange(Problems(figure, row.Basis));
                }
                if (problems.Count > 0)
                {
                    return Task.CompletedTask;
                }
                foreach (var figure in figures)
                {
                    var own = row.Figures.SingleOrDefault(f => f.Quantity == figure.Quantity && f.Origin == House);
                    var before = own is null ? null : new { own.Quantity, own.Value, own.Low, own.High, own.Source };
                    if (figure.IsTakenAway)
                    {
                        if (own is not null)
                        {
                            row.Figures.Remove(own);
                            Note(db, by, "figure_taken_away", id, before, null);
                        }
                        continue;
                    }
                    if (own is null)
                    {
                        own = new FigureRow { Quantity = figure.Quantity, Source = "", Status = figure.Status, Origin = House };
                        row.Figures.Add(own);
                    }
                    (own.Value, own.Low, own.High, own.Source, own.Status) = (figure.Value, figure.Low, figure.High, figure.Source?.Trim() ?? "", figure.Status);
                    Note(db, by, "figure_set", id, before, new { own.Quantity, own.Value, own.Low, own.High, own.Source });
                }
                return Task.CompletedTask;
            },
            cancellation);

    /// <summary>What is wrong with a figure that the house would set; nothing for a good one.</summary>
    public static IEnumerable<Problem> Problems(HouseFigure figure, string basis)
    {
        if (!FigureQuantities.All.Contains(figure.Quantity))
        {
            return [new Problem(figure.Quantity, $"There is no figure called {figure.Quantity}.")];
        }
        if (figure.IsTakenAway)
        {
            return [];
        }
        if (figure.Status is FigureStatus.Measured)
        {
            throw new ArgumentException("Only a reading is measured.", nameof(figure));
        }
        var problems = new List<Problem>();
        var (least, most) = FigureLimits.Of(figure.Quantity, basis);
        foreach (var number in new[] { figure.Value, figure.Low, figure.High }.OfType<double>())
        {
            if (double.IsNaN(number) || number < least || number > most)
            {
                var said = HouseFormat.Plain.Amount(number);
                problems.Add(new Problem(figure.Quantity, least == 0 && number < 0
                    ? $"{said} cannot be: less than nothing."
                    : $"{said} cannot be: it lies between {HouseFormat.Plain.Amount(least)} and {HouseFormat.Plain.Amount(most)}."));
                return problems;
            }
        }
        if (figure.Low > figure.High)
        {
            problems.Add(new Problem(figure.Quantity, "The low end lies above the high end."));
        }
        else if (figure.Value < figure.Low || figure.Value > figure.High)
        {
            problems.Add(new Problem(figure.Quantity, "The figure lies outside its own low and high."));
        }
        else if (figure is { Value: null, High: null, Low: not null })
        {
            problems.Add(new Problem(figure.Quantity, "\"At least\" alone says too little: give a high end too, or a figure."));
        }
        if (figure.Source?.Trim().Length > SourceMaxLength)
        {
            problems.Add(new Problem(figure.Quantity, $"Give a source of at most {SourceMaxLength} characters."));
        }
        return problems;
    }

    /// <summary>Says what is known of allergens. That one is absent needs somebody who has read the label.</summary>
    public Task<Result<int>> SetAllergens(IngredientId id, int seen, IReadOnlyList<AllergenWord> words, PersonId by, CancellationToken cancellation = default) =>
        Change(
            id, seen,
            (db, row, problems) =>
            {
                foreach (var word in words)
                {
                    var source = OneLine.Check(word.Source, word.State == AllergenState.Absent ? 1 : 0, SourceMaxLength, "allergens",
                        word.State == AllergenState.Absent ? "what you read (the label, a letter of the supplier): absent needs somebody's word," : "a source", problems);
                    var note = OneLine.Check(word.Note, 0, SourceMaxLength, "allergens", "a note", problems);
                    if (problems.Count > 0)
                    {
                        return Task.CompletedTask;
                    }
                    var known = row.Allergens.SingleOrDefault(a => a.Allergen == word.Allergen);
                    Note(
                        db, by, "allergen_stated", id, known is null ? null : new { Allergen = word.Allergen.ToString(), State = known.State.ToString(), known.Source },
                        new { Allergen = word.Allergen.ToString(), State = word.State.ToString(), Source = source });
                    if (known is null)
                    {
                        known = new AllergenRow { Allergen = word.Allergen, State = word.State, Law = AllergenLaw.Of(word.Allergen), Source = source };
                        row.Allergens.Add(known);
                    }
                    (known.State, known.Source, known.Note) = (word.State, source.Length > 0 ? source : "said by the house", note);
                }
                return Task.CompletedTask;
            },
            cancellation);

    /// <summary>Keeps a reading; it counts before every estimate. A correction is a reading that replaces another.</summary>
    public Task<Result<int>> AddReading(IngredientId id, int seen, NewReading reading, PersonId by, CancellationToken cancellation = default) =>
        Change(
            id, seen,
            async (db, row, problems) =>
            {
                var kind = ReadingKinds.Find(reading.Kind);
                if (kind is null || !kind.Units.Contains(reading.Unit))
                {
                    problems.Add(new Problem("reading", $"There is no reading \"{reading.Kind}\" in {(reading.Unit.Length > 0 ? reading.Unit : "no unit")}."));
                    return;
                }
                var most = kind.Most * ReadingKind.PerFirstUnit(reading.Unit);
                if (!(reading.Value >= kind.Least && reading.Value <= most))
                {
                    problems.Add(new Problem("value", $"A reading of this sort lies between {HouseFormat.Plain.Amount(kind.Least)} and {HouseFormat.Plain.Amount(most)}."));
                }
                if (reading.Celsius is { } celsius && !(celsius >= Coldest && celsius <= Warmest))
                {
                    problems.Add(new Problem("celsius", $"What was read stood between {HouseFormat.Plain.Amount(Coldest)} and {HouseFormat.Plain.Amount(Warmest)} °C."));
                }
                var note = OneLine.Check(reading.Note, 0, SourceMaxLength, "note", "a note", problems);
                DayIsSane(reading.Day, time, problems, "day");
                if (reading.Replaces is { } old && !await db.Readings.AnyAsync(r => r.Id == old && r.Ingredient == id && r.Kind == reading.Kind))
                {
                    problems.Add(new Problem("reading", "What it corrects is not a reading of this sort of this ingredient."));
                }
                if (problems.Count == 0)
                {
                    db.Add(new ReadingRow
                    {
                        Id = reading.Id, Ingredient = id, Kind = reading.Kind, Value = reading.Value, Unit = reading.Unit, Celsius = reading.Celsius, Day = reading.Day,
                        ReadBy = by, Note = note, Replaces = reading.Replaces,
                    });
                }
            },
            cancellation,
            // Sent again, it is there already: whatever version was seen, the answer is the same.
            db => db.Readings.AnyAsync(r => r.Id == reading.Id && r.Ingredient == id));

    /// <summary>Takes an ingredient out of use: no search and no new line finds it, and every draft that holds it goes on.</summary>
    /// <returns>Its version now and the drafts that hold it, or what is wrong.</returns>
    public async Task<Result<IngredientArchived>> Archive(IngredientId id, int seen, PersonId by, CancellationToken cancellation = default)
    {
        IReadOnlyList<string> drafts = [];
        var changed = await Change(
            id, seen,
            async (db, row, problems) =>
            {
                drafts = [.. (await db.DraftsWith(id)).Select(d => d.Name)];
                if (row.ArchivedAt is null)
                {
                    (row.ArchivedAt, row.ArchivedBy) = (time.GetUtcNow(), by);
                    Note(db, by, "ingredient_archived", id, null, new { Drafts = drafts.Count });
                }
            },
            cancellation);
        return changed.IsOk ? Result.Ok(new IngredientArchived(changed.Value, drafts)) : changed.As<IngredientArchived>();
    }

    /// <summary>Takes an archived ingredient back into use.</summary>
    public Task<Result<int>> Restore(IngredientId id, int seen, PersonId by, CancellationToken cancellation = default) =>
        Change(
            id, seen,
            async (db, row, problems) =>
            {
                await NameIsFree(db, id, row.Name, problems);
                if (problems.Count == 0 && row.ArchivedAt is not null)
                {
                    (row.ArchivedAt, row.ArchivedBy) = (null, null);
                    Note(db, by, "ingredient_restored", id, null, null);
                }
            },
            cancellation);

    /// <summary>Says whether an ingredient is in the house at a site; said twice, it is the same.</summary>
    public Task<Result<bool>> SetOnHand(IngredientId id, SiteId site, bool isOnHand, PersonId by, CancellationToken cancellation = default) =>
        writer.Write(
            async db =>
            {
                if (!await db.Ingredients.AnyAsync(i => i.Id == id))
                {
                    return Result.Invalid<bool>(new Problem("ingredient", "There is no such ingredient."));
                }
                var said = await db.OnHand.AsTracking().SingleOrDefaultAsync(o => o.Ingredient == id && o.Site == site);
                if (isOnHand && said is null)
                {
                    db.Add(new OnHandRow { Ingredient = id, Site = site, SaidAt = time.GetUtcNow(), SaidBy = by });
                }
                else if (!isOnHand && said is not null)
                {
                    db.Remove(said);
                }
                await db.SaveChangesAsync();
                return Result.Ok(isOnHand);
            },
            cancellation);

    /// <summary>A day that a person may mean: a typed 2062 is a slip.</summary>
    internal static void DayIsSane(DateOnly day, TimeProvider time, List<Problem> problems, string field, int daysAhead = 1)
    {
        var today = DateOnly.FromDateTime(time.GetUtcNow().DateTime);
        if (day < new DateOnly(2000, 1, 1) || day > today.AddDays(daysAhead))
        {
            problems.Add(new Problem(field, daysAhead > 1 ? "Give a day from 2000 on and not more than two years ahead." : "Give a day from 2000 on that has come."));
        }
    }

    private async Task<Result<int>> Change(
        IngredientId id, int seen, Func<MenuLabDbContext, IngredientRow, List<Problem>, Task> change, CancellationToken cancellation,
        Func<MenuLabDbContext, Task<bool>>? isDone = null)
    {
        try
        {
            return await writer.Write(
                async db =>
                {
                    var row = await db.Ingredients.AsTracking().AsSplitQuery().SingleOrDefaultAsync(i => i.Id == id);
                    if (row is null)
                    {
                        return Result.Invalid<int>(new Problem("ingredient", "There is no such ingredient."));
                    }
                    if (isDone is not null && await isDone(db))
                    {
                        return Result.Ok(row.Version);
                    }
                    if (row.Version != seen)
                    {
                        return Result.Invalid<int>(SavedFirst);
                    }
                    // First of all: whoever comes at the same moment waits here, and then finds that he is second.
                    row.Version++;
                    await db.SaveChangesAsync();
                    var problems = new List<Problem>();
                    await change(db, row, problems);
                    if (problems.Count == 0)
                    {
                        await db.SaveChangesAsync();
                        problems.AddRange(await Settle(db, row));
                    }
                    return problems.Count == 0 ? Result.Ok(row.Version) : throw new Refused(problems);
                },
                cancellation);
        }
        catch (Refused refused)
        {
            // Thrown, so that the transaction takes back what was saved of it already.
            return Result.Invalid<int>(refused.Problems);
        }
        catch (DbUpdateConcurrencyException)
        {
            return Result.Invalid<int>(SavedFirst);
        }
    }

    private static Problem SavedFirst => new(
        SomebodyElse, "Somebody else saved this ingredient since you opened it. Nothing of theirs was overwritten and what you typed still stands here: take in their version, then save again.");

    /// <summary>Makes the composition anew from figures and readings; answers with problems where they make none.</summary>
    private static async Task<IReadOnlyList<Problem>> Settle(MenuLabDbContext db, IngredientRow row)
    {
        var now = await db.IngredientNow.AsTracking().SingleAsync(n => n.Ingredient == row.Id);
        var counting = ReadingKinds.ThatCount(await db.Readings.AsNoTracking().Where(r => r.Ingredient == row.Id).ToListAsync()).ToList();
        Composition composition;
        try
        {
            // A titration comes last: it is per volume, and the density may have been read too.
            foreach (var reading in counting.OrderBy(r => r.Kind == ReadingKinds.Titration.Key))
            {
                var quantity = ReadingKinds.Find(reading.Kind)!.Quantity;
                var density = reading.Kind == ReadingKinds.Titration.Key ? PantryReading.Compose(row).GramsPerMillilitre : double.NaN;
                var figure = row.Figures.SingleOrDefault(f => f.Quantity == quantity && f.Origin == Reading);
                if (figure is null)
                {
                    figure = new FigureRow { Quantity = quantity, Source = "", Status = FigureStatus.Measured, Origin = Reading };
                    row.Figures.Add(figure);
                }
                (figure.Value, figure.Low, figure.High, figure.Status) = (ReadingKinds.FigureOf(reading, row.Basis, density), null, null, FigureStatus.Measured);
                figure.Source = $"read here on {new HouseFormat(Dates: DatePattern.YearMonthDay).Day(reading.Day)}";
            }
            composition = PantryReading.Compose(row);
        }
        catch (ArgumentException impossible)
        {
            return [new Problem("figures", "These figures make no liquid: " + impossible.Message)];
        }
        // Only where this change brought it about: a shipped record may be over by itself, and its note must stay editable.
        if (composition.Caveats.HasFlag(CompositionCaveats.MassOverstated) && row.Figures.Any(f => f.Origin == House) && !await IsOverstated(db, now))
        {
            return [new Problem("figures", "The parts add up to more than the whole by over 0.5 g. Look at sugars, acids, fibre, alcohol and water: one of them is too high, or counted twice.")];
        }
        now.Composition = (await db.KeepCompositions([composition]))[0];
        await db.SaveChangesAsync();
        return [];
    }

    private static async Task<bool> IsOverstated(MenuLabDbContext db, IngredientNowRow now) =>
        (await db.LoadComposition(now.Composition)).Caveats.HasFlag(CompositionCaveats.MassOverstated);

    private static async Task NameIsFree(MenuLabDbContext db, IngredientId id, string name, List<Problem> problems)
    {
        var search = SearchName.Of(name);
        if (problems.All(p => p.Field != "name") && await db.Ingredients.AnyAsync(i => i.Id != id && i.ArchivedAt == null && i.SearchName == search))
        {
            problems.Add(new Problem("name", $"There is already an ingredient called {name}. Open that one, or give this one a name that tells them apart."));
        }
    }

    private static void KeptAt(double celsius, List<Problem> problems)
    {
        if (!(celsius >= Coldest && celsius <= Warmest))
        {
            problems.Add(new Problem("kept", $"A place is kept between {HouseFormat.Plain.Amount(Coldest)} and {HouseFormat.Plain.Amount(Warmest)} °C."));
        }
    }

    private void Note(MenuLabDbContext db, PersonId by, string what, IngredientId id, object? before, object? after) => db.Add(new RecordEntry
    {
        Id = RecordId.New(), Who = by, What = what, OnTable = "ingredients", OnId = id.Value, At = time.GetUtcNow(), Before = Bytes(before), After = Bytes(after),
    });

    private static byte[]? Bytes(object? value) => value is null ? null : JsonSerializer.SerializeToUtf8Bytes(value, Plainly);

    private static readonly JsonSerializerOptions Plainly = new() { PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower };

    // Takes the whole unit back; seen by nobody outside this class.
#pragma warning disable CA1032, CA1064
    private sealed class Refused(IReadOnlyList<Problem> problems) : Exception(problems[0].Message)
    {
        public IReadOnlyList<Problem> Problems { get; } = problems;
    }
#pragma warning restore CA1032, CA1064
}
