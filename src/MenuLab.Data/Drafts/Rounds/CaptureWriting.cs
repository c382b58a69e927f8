using MenuLab.Core;
using MenuLab.Core.Drafts;
using MenuLab.Core.Drafts.Rounds;
using MenuLab.Core.House;
using MenuLab.Core.Pantry;
using MenuLab.Data.Pantry;
using MenuLab.Data.Writing;
using Microsoft.EntityFrameworkCore;

namespace MenuLab.Data.Drafts.Rounds;

/// <summary>
/// Takes what devices captured: each entry once, in the order of arrival, merged by field, with its author. What collides is
/// applied and told, what cannot be applied is kept with its problem; nothing is dropped (design, decision 5).
/// </summary>
/// <param name="writer">The one writer.</param>
/// <param name="time">Says when.</param>
/// <param name="drafts">Applies typed lines.</param>
/// <param name="pantry">Takes readings of ingredients.</param>
/// <param name="read">Reads one typed line; what is not understood is kept as typed.</param>
public sealed class CaptureWriting(IWriter writer, TimeProvider time, DraftWriting drafts, PantryWriting pantry, Func<string, LineContent> read)
{
    private const int MostTries = 5;

    // A reading of the day before yesterday is no news to anybody.
    private static readonly TimeSpan ReadingsMeet = TimeSpan.FromDays(2);

    /// <summary>Takes entries, those of one device in the order of its counter, and answers each when it is durable.</summary>
    /// <param name="entries">The entries.</param>
    /// <param name="cancellation">Gives up waiting; what was taken stays taken, and may be sent again.</param>
    /// <returns>An answer per entry, in the order in which they were taken.</returns>
    public async Task<IReadOnlyList<CaptureAnswer>> Capture(IReadOnlyCollection<CaptureEntry> entries, CancellationToken cancellation = default)
    {
        var answers = new List<CaptureAnswer>(entries.Count);
        foreach (var entry in entries.GroupBy(e => e.Device).SelectMany(g => g.OrderBy(e => e.Counter)))
        {
            answers.Add(await Capture(entry, cancellation));
        }
        return answers;
    }

    /// <summary>Sets what a cell says, from an open page.</summary>
    public Task<CaptureAnswer> SetCell(EntryId id, DeviceId page, PersonId by, CapturedCell cell, CancellationToken cancellation = default) =>
        Capture(new CaptureEntry(id, page, 0, by, time.GetUtcNow(), cell), cancellation);

    /// <summary>Writes a note, from an open page.</summary>
    public Task<CaptureAnswer> Note(EntryId id, DeviceId page, PersonId by, PourNote note, CancellationToken cancellation = default) =>
        Capture(new CaptureEntry(id, page, 0, by, time.GetUtcNow(), new CapturedNote(note)), cancellation);

    private async Task<CaptureAnswer> Capture(CaptureEntry entry, CancellationToken cancellation)
    {
        var problems = entry.Problems();
        if (problems.Count > 0)
        {
            return NotKept(entry, problems);
        }
        // Before its entry: cut off in between, it is sent again and found there.
        var readingProblems = entry.What is CapturedReading reading && CountsInThePantry(reading) ? await TakeReading(entry, reading, cancellation) : [];
        return await writer.Write(
            async db =>
            {
                await db.HoldCaptures();
                if (await db.CaptureEntries.SingleOrDefaultAsync(e => e.Id == entry.Id) is { } before)
                {
                    return before.ToAnswer(isDoubled: true);
                }
                if (!await db.People.AnyAsync(p => p.Id == entry.By))
                {
                    return NotKept(entry, [new Problem("by", "The house does not know this person.")]);
                }
                var order = (await db.CaptureEntries.MaxAsync(e => (long?)e.ReceivedOrder) ?? 0) + 1;
                var met = readingProblems.Count > 0 ? Result.Invalid<IReadOnlyList<Met>>(readingProblems) : await Apply(db, entry, order);
                var row = await Row(db, entry, order, met);
                db.Add(row);
                await db.SaveChangesAsync();
                return row.ToAnswer(isDoubled: false);
            },
            cancellation);
    }

    private static CaptureAnswer NotKept(CaptureEntry entry, IReadOnlyList<Problem> problems) => new(entry.Id, CaptureOutcome.Refused, false, 0, [], problems);

    private async Task<CaptureRow> Row(MenuLabDbContext db, CaptureEntry entry, long order, Result<IReadOnlyList<Met>> met)
    {
        var round = entry.What switch { CapturedCell cell => cell.Round, CapturedNote note => note.Note.Round, _ => (RoundId?)null };
        return new CaptureRow
        {
            Id = entry.Id,
            Kind = entry.What.Kind,
            Device = entry.Device,
            Counter = entry.Counter,
            Author = entry.By,
            At = entry.At,
            ReceivedAt = time.GetUtcNow(),
            ReceivedOrder = order,
            Draft = entry.What is CapturedLine line ? line.Draft : await db.Rounds.Where(r => r.Id == round).Select(r => (DraftId?)r.Draft).SingleOrDefaultAsync(),
            Round = round,
            Ingredient = entry.What switch
            {
                CapturedReading reading => reading.Ingredient,
                CapturedBatch batch => batch.Prep,
                CapturedPouredAway away => away.Ingredient,
                CapturedOutOfStock stock => stock.Ingredient,
                _ => null,
            },
            Answers = (entry.What as CapturedAnswer)?.To,
            Body = CaptureText.WriteWhat(entry.What),
            Outcome = !met.IsOk ? CaptureOutcome.Refused : met.Value.Count > 0 ? CaptureOutcome.Collided : CaptureOutcome.Kept,
            Met = met.IsOk && met.Value.Count > 0 ? CaptureText.WriteMet(met.Value) : null,
            ProblemField = met.IsOk ? null : met.Problems[0].Field,
            Problem = met.IsOk ? null : string.Join(' ', met.Problems.Select(p => p.Message)),
        };
    }

    private Task<Result<IReadOnlyList<Met>>> Apply(MenuLabDbContext db, CaptureEntry entry, long order) => entry.What switch
    {
        CapturedLine line => Line(db, entry, line),
        CapturedCell cell => Cell(db, entry, cell),
        CapturedNote note => Note(db, entry, note.Note, order),
        CapturedReading reading => Reading(db, entry, reading),
        CapturedBatch batch => Ingredient(db, batch.Prep),
        CapturedPouredAway away => Ingredient(db, away.Ingredient),
        CapturedOutOfStock stock => OutOfStock(db, entry, stock),
        CapturedAnswer answer => Answer(db, answer),
        _ => throw new ArgumentException($"Nobody knows how to take {entry.What.GetType().Name}.", nameof(entry)),
    };

    private async Task<Result<IReadOnlyList<Met>>> Line(MenuLabDbContext db, CaptureEntry entry, CapturedLine typed)
    {
        if (await db.OpenDraft(typed.Draft) is not { } draft)
        {
            return Refused("draft", "There is no such draft.");
        }
        var there = draft.Lines.FirstOrDefault(l => l.Id == typed.Line);
        if (there?.Text == typed.Text)
        {
            // The bench saved it by itself before its network went.
            return Nothing;
        }
        const LineFields All = LineFields.Text | LineFields.Ingredient | LineFields.Amount | LineFields.Place | LineFields.Joins | LineFields.Start | LineFields.Treatment;
        var content = read(typed.Text);
        EditAction action = there is null ? new AddLine(typed.Line, content, draft.Lines.Count == 0 ? null : draft.Lines[^1].Id) : new ChangeLine(typed.Line, All, content);
        var applied = await drafts.ApplyIn(db, typed.Draft, new EditId(entry.Id.Value), entry.By, new PageId(entry.Device.Value), typed.Seen ?? draft.Version, action);
        return applied.IsOk ? Result.Ok<IReadOnlyList<Met>>([.. applied.Value.Collisions.GroupBy(c => c.Theirs.Version).Select(g => MetOf(g, content))]) : applied.As<IReadOnlyList<Met>>();
    }

    // One edit of somebody else may meet several fields of a line: it is told once, by the text or the amount where it set one.
    private static Met MetOf(IEnumerable<Collision> collisions, LineContent mine)
    {
        var told = collisions.OrderBy(c => c.Field.Name switch { "text" => 0, "amount" => 1, _ => 2 }).First();
        var theirs = told.Theirs.Edit.Action switch { ChangeLine change => change.Content, AddLine add => add.Content, _ => null };
        return new Met(told.Theirs.Edit.By, told.Field.Name, theirs?.Amount.Value, mine.Amount.Value, theirs?.Text ?? "", null);
    }

    private static async Task<Result<IReadOnlyList<Met>>> Cell(MenuLabDbContext db, CaptureEntry entry, CapturedCell cell)
    {
        if (await db.Rounds.AsTracking().SingleOrDefaultAsync(r => r.Id == cell.Round) is not { } round)
        {
            return Refused("round", "There is no such round.");
        }
        var set = round.Set(cell.Letter, cell.Line, cell.Field, cell.Amount, entry.Id);
        if (!set.IsOk)
        {
            return set.As<IReadOnlyList<Met>>();
        }
        var before = set.Value.By is { } by ? await db.CaptureEntries.Where(e => e.Id == by).Select(e => new { e.Id, e.Device, e.Author }).SingleOrDefaultAsync() : null;
        return CaptureEntry.Collides(entry.Device, cell.Seen, cell.Amount, before?.Device, set.Value.Amount)
            ? One(new Met(before!.Author, cell.Field == CellField.Poured ? "poured" : "specified", set.Value.Amount, cell.Amount, "", before.Id))
            : Nothing;
    }

    private static async Task<Result<IReadOnlyList<Met>>> Note(MenuLabDbContext db, CaptureEntry entry, PourNote note, long order)
    {
        if (await db.OpenRound(note.Round) is not { } round || !round.Has(note.Letter))
        {
            return Refused("pour", "There is no such round, or it has no such pour.");
        }
        if (note.Replaces is { } old && !await db.PourNotes.AnyAsync(n => n.Id == old && n.Round == note.Round && n.Letter == note.Letter))
        {
            return Refused("replaces", "What it puts right is not a note of this pour.");
        }
        db.Add(new PourNoteRow
        {
            Id = entry.Id, Round = note.Round, Letter = note.Letter, Author = entry.By, At = entry.At, ReceivedOrder = order, Body = CaptureText.WriteNote(note),
        });
        return Nothing;
    }

    private static bool CountsInThePantry(CapturedReading reading) => reading.Ingredient is not null && reading.Batch is null && ReadingKinds.Find(reading.What) is not null;

    private async Task<IReadOnlyList<Problem>> TakeReading(CaptureEntry entry, CapturedReading reading, CancellationToken cancellation)
    {
        var id = reading.Ingredient!.Value;
        var wish = new NewReading(new ReadingId(entry.Id.Value), reading.What, reading.Value, reading.Unit, reading.Celsius, reading.Day, "");
        for (var attempt = 1; ; attempt++)
        {
            // The device saw no version: a reading changes nothing that somebody else could be changing, so the newest will do.
            var seen = await writer.Write(db => db.Ingredients.Where(i => i.Id == id).Select(i => (int?)i.Version).SingleOrDefaultAsync(), cancellation);
            var taken = await pantry.AddReading(id, seen ?? 0, wish, entry.By, cancellation);
            if (taken.IsOk || attempt == MostTries || taken.Problems[0].Field != PantryWriting.SomebodyElse)
            {
                return taken.Problems;
            }
        }
    }

    private async Task<Result<IReadOnlyList<Met>>> Reading(MenuLabDbContext db, CaptureEntry entry, CapturedReading reading)
    {
        if (reading.Ingredient is { } id && !await db.Ingredients.AnyAsync(i => i.Id == id))
        {
            return Refused("ingredient", "There is no such ingredient.");
        }
        var since = time.GetUtcNow() - ReadingsMeet;
        var rows = await db.CaptureEntries
            .Where(e => e.Kind == CaptureKind.Reading && e.Ingredient == reading.Ingredient && e.Outcome != CaptureOutcome.Refused && e.ReceivedAt >= since)
            .OrderByDescending(e => e.ReceivedOrder).ToListAsync();
        foreach (var row in rows)
        {
            if (CaptureText.ReadWhat(row.Body) is CapturedReading other && (other.Batch, other.Thing, other.What, other.Day) == (reading.Batch, reading.Thing, reading.What, reading.Day))
            {
                // The last of its sort: either it was seen, or it is news.
                return CaptureEntry.Collides<(EntryId?, double)>(entry.Device, (reading.Seen, other.Value), (row.Id, reading.Value), row.Device, (row.Id, other.Value))
                    ? One(new Met(row.Author, reading.What, other.Value, reading.Value, "", row.Id))
                    : Nothing;
            }
        }
        return await MetInThePantry(db, entry, reading);
    }

    // Somebody may have entered it on the ingredient's page.
    private static async Task<Result<IReadOnlyList<Met>>> MetInThePantry(MenuLabDbContext db, CaptureEntry entry, CapturedReading reading)
    {
        if (!CountsInThePantry(reading))
        {
            return Nothing;
        }
        var (own, kind, day) = (new ReadingId(entry.Id.Value), reading.What, reading.Day);
        var other = await db.Readings.Where(r => r.Ingredient == reading.Ingredient && r.Kind == kind && r.Day == day && r.Id != own).OrderByDescending(r => r.Id).FirstOrDefaultAsync();
        return other is not null && other.ReadBy != entry.By && other.Id.Value != reading.Seen?.Value && other.Value != reading.Value
            ? One(new Met(other.ReadBy, reading.What, other.Value, reading.Value, "", null))
            : Nothing;
    }

    private static async Task<Result<IReadOnlyList<Met>>> Ingredient(MenuLabDbContext db, IngredientId id) =>
        await db.Ingredients.AnyAsync(i => i.Id == id) ? Nothing : Refused("ingredient", "There is no such ingredient.");

    private static async Task<Result<IReadOnlyList<Met>>> OutOfStock(MenuLabDbContext db, CaptureEntry entry, CapturedOutOfStock stock)
    {
        if (!await db.Sites.AnyAsync(s => s.Id == stock.Site) || !await db.Ingredients.AnyAsync(i => i.Id == stock.Ingredient))
        {
            return Refused("ingredient", "There is no such ingredient, or no such site.");
        }
        var said = await db.OnHand.AsTracking().SingleOrDefaultAsync(o => o.Ingredient == stock.Ingredient && o.Site == stock.Site);
        if (said is null)
        {
            return Nothing;
        }
        db.Remove(said);
        // Two clocks are compared to tell somebody, never to decide: the last to arrive stands.
        return said.SaidBy != entry.By && said.SaidAt > entry.At ? One(new Met(said.SaidBy, "on_hand", null, null, "", null)) : Nothing;
    }

    private static async Task<Result<IReadOnlyList<Met>>> Answer(MenuLabDbContext db, CapturedAnswer answer) =>
        await db.CaptureEntries.AnyAsync(e => e.Id == answer.To && e.Outcome == CaptureOutcome.Collided) ? Nothing : Refused("to", "There is no collision to answer.");

    private static Result<IReadOnlyList<Met>> Nothing => Result.Ok<IReadOnlyList<Met>>([]);

    private static Result<IReadOnlyList<Met>> One(Met met) => Result.Ok<IReadOnlyList<Met>>([met]);

    private static Result<IReadOnlyList<Met>> Refused(string field, string message) => Result.Invalid<IReadOnlyList<Met>>(new Problem(field, message));
}
