using MenuLab.Core;
using MenuLab.Core.Drafts;
using MenuLab.Core.Drafts.Rounds;
using MenuLab.Core.House;
using MenuLab.Core.Iterations;
using MenuLab.Core.Pantry;
using MenuLab.Data;
using MenuLab.Data.Drafts;
using MenuLab.Data.Drafts.Rounds;
using MenuLab.Web.Accounts;
using MenuLab.Web.Features.Bench;
using MenuLab.Web.Features.House;
using Microsoft.EntityFrameworkCore;

namespace MenuLab.Web.Features.Rounds;

/// <summary>What became of a step, for the page.</summary>
/// <param name="Go">Where to go on; null to stay.</param>
/// <param name="Says">What a person should hear; empty for nothing.</param>
public sealed record RoundAnswer(string? Go = null, string Says = "");

/// <summary>What the pages of rounds can do. Cells and notes are captured and come by the outbox of the device.</summary>
public sealed class RoundDesk(CurrentHouse current, CurrentPerson person, BenchDesk bench, TimeProvider time)
{
    private readonly PageId _page = PageId.New();

    private OpenHouse House => current.House;

    /// <summary>How the house pours, for "three across".</summary>
    public PourStep Steps => new(House.Book.Grid);

    /// <summary>A round as its page shows it; null where there is none.</summary>
    public async Task<RoundView?> OpenAsync(RoundId id)
    {
        await using var db = House.Read();
        if (await db.OpenRound(id) is not { } round || await db.OpenDraft(round.Draft) is not { } draft)
        {
            return null;
        }
        var notes = await db.NotesOf(id);
        var from = await db.Rounds.Where(r => r.Id == round.FromRound).Select(r => (int?)r.Number).SingleOrDefaultAsync();
        return (await WordsAsync(db, round)).Of(round, draft, notes, from, await FacesAsync(db));
    }

    /// <summary>Starts a round from the bench.</summary>
    public Task<Result<Round>> StartAsync(RoundToStart wish) => House.Rounds.Start(wish, person.Id);

    /// <summary>Starts the next round from a pour, as large and with as many pours.</summary>
    public async Task<Result<RoundAnswer>> GoOnAsync(RoundId from, PourLetter letter, RoundId id)
    {
        await using var db = House.Read();
        if (await db.OpenRound(from) is not { } round)
        {
            return None;
        }
        var started = await StartAsync(new RoundToStart { Id = id, Draft = round.Draft, Pours = round.Pours.Count, Size = round.Size, FromRound = from, FromPour = letter });
        return started.IsOk ? Result.Ok(new RoundAnswer($"/rounds/{id.Value}")) : started.As<RoundAnswer>();
    }

    /// <summary>Adds a pour under the next letter, like another one.</summary>
    public async Task<Result<RoundAnswer>> AddPourAsync(RoundId id, PourLetter letter, PourLetter? like) => Stay(await House.Rounds.AddPour(id, letter, like));

    /// <summary>Starts the clock of the pours that have none.</summary>
    public async Task<Result<RoundAnswer>> PouredAsync(RoundId id)
    {
        await using var db = House.Read();
        return await db.OpenRound(id) is { } round ? Stay(await House.Rounds.Poured(id, [.. round.Pours.Where(p => p.PouredAt is null).Select(p => p.Letter)])) : None;
    }

    /// <summary>Puts a pour into a bottle today.</summary>
    public async Task<Result<RoundAnswer>> BottleAsync(RoundId id, PourLetter letter) => Stay(await House.Rounds.Bottle(id, letter, House.Book.Today(time)));

    /// <summary>Ends a round; without a winner none wins.</summary>
    public async Task<Result<RoundAnswer>> EndAsync(RoundId id, PourLetter? winner) => Stay(await House.Rounds.End(id, winner, person.Id));

    /// <summary>Puts a pour on the bench.</summary>
    public async Task<Result<RoundAnswer>> ToBenchAsync(RoundId id, PourLetter letter)
    {
        await using var db = House.Read();
        if (await db.OpenRound(id) is not { } round || await db.OpenDraft(round.Draft) is not { } draft)
        {
            return None;
        }
        var told = new List<string>();
        var seen = draft.Version;
        foreach (var edit in Winners.Edits(round, letter, draft, Understand))
        {
            var done = await bench.ApplyAsync(draft.Id, EditId.New(), _page, seen, edit);
            if (!done.IsOk)
            {
                return done.As<RoundAnswer>();
            }
            told.AddRange(done.Value.Collisions.Select(c => $"{House.Book.NameOf(c.Theirs.Edit.By)} had just changed the same on the bench; {letter} stands now."));
        }
        return Result.Ok(new RoundAnswer($"/drafts/{round.Draft.Value}", string.Join(' ', told.Distinct())));
    }

    /// <summary>Puts a pour on the bench and saves that as an iteration, with the reason that the round gives.</summary>
    /// <param name="id">The round.</param>
    /// <param name="letter">The pour.</param>
    /// <param name="iteration">Made by the page, so that saving twice saves once.</param>
    public async Task<Result<RoundAnswer>> ToIterationAsync(RoundId id, PourLetter letter, IterationId iteration)
    {
        await using var db = House.Read();
        if (await db.OpenRound(id) is not { } round)
        {
            return None;
        }
        if (round.Iteration is { } already)
        {
            return Result.Ok(new RoundAnswer(Address(round.Draft, already)));
        }
        var put = await ToBenchAsync(id, letter);
        if (!put.IsOk)
        {
            return put;
        }
        var reason = Winners.Reason(round, letter, await db.NotesOf(id), NameOf, House.Book.Format);
        if (await bench.ReadAsync(round.Draft, House.Book.FirstUnit) is not { } view)
        {
            return None;
        }
        var saved = await bench.SaveAsync(view, iteration, reason, _page);
        if (!saved.IsOk)
        {
            return saved.As<RoundAnswer>();
        }
        var became = await House.Rounds.Became(id, saved.Value.Number);
        return became.IsOk ? Result.Ok(put.Value with { Go = Address(round.Draft, saved.Value.Number) }) : became.As<RoundAnswer>();
    }

    /// <summary>The rounds of a draft with what drove each step, the last first.</summary>
    public async Task<IReadOnlyList<RungRow>> RungsAsync(DraftId draft)
    {
        await using var db = House.Read();
        var rungs = await db.LadderOf(draft, NameOf, House.Book.Format);
        return new RoundInWords(House.Book, NoRoles, time.GetUtcNow()).Rungs(rungs);
    }

    private static ILookup<IngredientId, string> NoRoles { get; } = Array.Empty<(IngredientId Id, string Role)>().ToLookup(r => r.Id, r => r.Role);

    private static Result<RoundAnswer> None => Result.Invalid<RoundAnswer>(new Problem("round", "There is no such round."));

    private static Result<RoundAnswer> Stay(Result<Round> done) => done.IsOk ? Result.Ok(new RoundAnswer()) : done.As<RoundAnswer>();

    private static string Address(DraftId draft, int iteration) => $"/drafts/{draft.Value}/iterations/{HouseFormat.Plain.Number(iteration, 0)}";

    private LineContent Understand(LineContent content) => Understanding.Of(content, House.Book.Stock.Pantry, House.Book.Stock.Measures);

    private string NameOf(IngredientId id) => House.Book.Stock.Pantry.Find(id)?.Name ?? "something";

    private async Task<RoundInWords> WordsAsync(MenuLabDbContext db, Round round)
    {
        var ids = round.Lines.Select(l => l.Content.Ingredient).OfType<IngredientId>().ToList();
        var roles = await db.Ingredients.Where(i => ids.Contains(i.Id)).SelectMany(i => i.Roles, (i, r) => new { i.Id, r.Role }).ToListAsync();
        return new RoundInWords(House.Book, roles.ToLookup(r => r.Id, r => r.Role), time.GetUtcNow());
    }

    // Whoever sits at this machine is a face only where the house names nobody.
    private static async Task<IReadOnlyList<Face>> FacesAsync(MenuLabDbContext db)
    {
        var people = await db.People.Where(p => p.ErasedAt == null).OrderBy(p => p.Name).ToListAsync();
        var named = people.Where(p => p.Kind != PersonKind.AtThisMachine).ToList();
        return [.. (named.Count > 0 ? named : people).Select(p => new Face(p.Id, p.Name, p.Kind == PersonKind.AtThisMachine ? "me" : Initials(p)))];
    }

    private static string Initials(Person person) => person.Initials.Length > 0 ? person.Initials : person.Name[..Math.Min(2, person.Name.Length)];
}
