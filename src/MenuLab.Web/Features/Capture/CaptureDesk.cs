using System.Text;
using System.Text.Json;
using MenuLab.Core;
using MenuLab.Core.Drafts;
using MenuLab.Core.Drafts.Rounds;
using MenuLab.Data.Drafts.Rounds;
using MenuLab.Web.Accounts;
using MenuLab.Web.Features.House;
using Microsoft.EntityFrameworkCore;

namespace MenuLab.Web.Features.Capture;

/// <summary>Takes what devices captured, and tells the pages that it changes something for.</summary>
public sealed class CaptureDesk(CurrentHouse current, CurrentPerson person, TimeProvider time)
{
    /// <summary>The house.</summary>
    public OpenHouse House => current.House;

    /// <summary>Whom the page is made for, until somebody else is chosen on the device.</summary>
    public Core.House.PersonId Person => person.Id;

    /// <summary>The bar's day.</summary>
    public DateOnly Today => House.Book.Today(time);

    /// <summary>Takes entries as they were sent.</summary>
    /// <returns>An answer per entry; one that nobody can read is refused under its id and kept on the device.</returns>
    /// <exception cref="Data.Opening.StoreException">The database cannot take anything now.</exception>
    public async Task<IReadOnlyList<CaptureAnswer>> TakeAsync(IReadOnlyList<JsonElement> sent)
    {
        var read = sent.Select(Read).ToList();
        var answers = await House.Captures.Capture([.. read.Select(r => r.Entry).OfType<CaptureEntry>()]);
        await TellAsync(read.Select(r => r.Entry).OfType<CaptureEntry>(), answers);
        return [.. answers, .. read.Select(r => r.Refused).OfType<CaptureAnswer>()];
    }

    /// <summary>Keeps a photo or a sound.</summary>
    public Task<Result<AttachmentId>> AttachAsync(AttachmentId id, string? mediaType, byte[] bytes) => House.Rounds.Attach(id, mediaType, bytes, person.Id);

    /// <summary>A photo or a sound; null where there is none.</summary>
    public async Task<Attachment?> AttachmentAsync(AttachmentId id)
    {
        await using var db = House.Read();
        return await db.OpenAttachment(id);
    }

    /// <summary>The drafts in the works, and the rounds of theirs that go on, for the page to choose from.</summary>
    public async Task<IReadOnlyList<DraftToCapture>> DraftsAsync()
    {
        await using var db = House.Read();
        var drafts = await db.Drafts.Where(d => d.Standing == Standing.InTheWorks && d.ArchivedAt == null).OrderByDescending(d => d.ChangedAt).Select(d => new { d.Id, d.Name }).ToListAsync();
        var rounds = await db.Rounds.AsNoTracking().AsSplitQuery().Where(r => r.EndedAt == null).ToListAsync();
        return [.. drafts.Select(d => new DraftToCapture(d.Id, d.Name, [.. rounds.Where(r => r.Draft == d.Id).OrderByDescending(r => r.Number)]))];
    }

    /// <summary>What arrived on the bar's day, from every device, the last first.</summary>
    public async Task<IReadOnlyList<ArrivedToday>> TodayAsync()
    {
        await using var db = House.Read();
        var book = House.Book;
        var arrived = (await db.CapturedSince(time.GetUtcNow() - TimeSpan.FromDays(1))).Where(c => book.Site.DayOf(c.ReceivedAt) == Today).ToList();
        var drafts = arrived.Select(c => c.Entry.What).OfType<CapturedLine>().Select(l => l.Draft).Distinct().ToList();
        var words = new CaptureInWords(book, await db.Drafts.Where(d => drafts.Contains(d.Id)).ToDictionaryAsync(d => d.Id, d => d.Name));
        return [.. arrived.Select(c => new ArrivedToday(c.Entry.Id, words.Of(c.Entry.What), book.NameOf(c.Entry.By), book.Site.ClockAt(c.ReceivedAt), c.Answer.Outcome))];
    }

    private static (CaptureEntry? Entry, CaptureAnswer? Refused) Read(JsonElement sent)
    {
        try
        {
            return (CaptureText.Read(Encoding.UTF8.GetBytes(sent.GetRawText())), null);
        }
        catch (JsonException)
        {
            var id = sent.ValueKind == JsonValueKind.Object && sent.TryGetProperty("id", out var text) && text.ValueKind == JsonValueKind.String && text.TryGetGuid(out var guid) ? guid : Guid.Empty;
            return (null, new CaptureAnswer(new EntryId(id), CaptureOutcome.Refused, false, 0, [], [new Problem("entry", "This version of MenuLab cannot read it; it stays on this device.")]));
        }
    }

    private async Task TellAsync(IEnumerable<CaptureEntry> entries, IReadOnlyList<CaptureAnswer> answers)
    {
        var taken = answers.Where(a => a is { Outcome: not CaptureOutcome.Refused, IsDoubled: false }).Select(a => a.Id).ToHashSet();
        var news = entries.Where(e => taken.Contains(e.Id)).ToList();
        foreach (var (draft, device) in news.Where(e => e.What is CapturedLine).Select(e => (((CapturedLine)e.What).Draft, e.Device)).Distinct())
        {
            House.Notice.TellDraft(draft, new PageId(device.Value));
        }
        if (news.Any(e => e.What is CapturedReading or CapturedOutOfStock))
        {
            await House.RefreshAsync();
        }
    }
}

/// <summary>A draft that something may be captured for.</summary>
/// <param name="Id">The draft.</param>
/// <param name="Name">Its name.</param>
/// <param name="Rounds">Its rounds that go on, the newest first.</param>
public sealed record DraftToCapture(DraftId Id, string Name, IReadOnlyList<Round> Rounds);

/// <summary>Something that arrived today.</summary>
/// <param name="Id">The entry.</param>
/// <param name="Says">In words.</param>
/// <param name="By">Who.</param>
/// <param name="At">When it arrived, by the bar's clock.</param>
/// <param name="Outcome">What became of it.</param>
public sealed record ArrivedToday(EntryId Id, string Says, string By, DateTime At, CaptureOutcome Outcome);
