using MenuLab.Core;
using MenuLab.Core.Drafts;
using MenuLab.Core.Drafts.Reading;
using MenuLab.Core.House;
using MenuLab.Data.Drafts;
using MenuLab.Data.Opening;
using MenuLab.Web.Features.House;

namespace MenuLab.Web.Features.Drafts;

/// <summary>Starts drafts: from a brief, from a typed text, from drinks that were read from a file.</summary>
/// <param name="house">The house they are started in.</param>
/// <param name="by">Who starts them.</param>
/// <param name="time">Says when.</param>
public sealed class DraftStarter(OpenHouse house, PersonId by, TimeProvider time)
{
    // A draft that starts here has been open on no page yet.
    private readonly PageId _page = PageId.New();

    /// <summary>A draft with a brief and no line yet.</summary>
    /// <param name="id">Made by the form, so that sending it twice starts one draft.</param>
    /// <param name="brief">The form as read.</param>
    /// <param name="cancellation">Gives up waiting.</param>
    /// <returns>Its id, or what stands in the way.</returns>
    public async Task<Result<DraftId>> FromBriefAsync(DraftId id, NamedBrief brief, CancellationToken cancellation = default)
    {
        var actions = new List<EditAction>();
        if (brief.Fields != BriefFields.None)
        {
            actions.Add(new ChangeBrief(brief.Fields, brief.Brief));
        }
        if (brief.Style is not null)
        {
            actions.Add(new ChooseStyle(brief.Style));
        }
        return One(await StartAsync([new DraftToStart(id, brief.Name, actions)], cancellation));
    }

    /// <summary>A draft of a typed text: its name, its lines and its build; what was not understood is kept as typed, in its place.</summary>
    /// <param name="text">As typed.</param>
    /// <param name="bareNumber">Unit of a bare number.</param>
    /// <param name="cancellation">Gives up waiting.</param>
    /// <returns>Its id, or what stands in the way.</returns>
    public async Task<Result<DraftId>> FromTextAsync(string text, Unit bareNumber, CancellationToken cancellation = default)
    {
        var drink = IncomingDrink.Of(house.Book.Reader.Read(text, new ReadSettings { BareNumber = bareNumber }));
        return drink.IsEmpty
            ? Result.Invalid<DraftId>(new Problem("text", "There is no line to start with yet: type one."))
            : One(await StartAsync([drink.ToStart(DraftId.New())], cancellation));
    }

    /// <summary>Drafts of drinks that were brought in: all of them or none.</summary>
    /// <returns>Their ids in order, or what stands in the way.</returns>
    public Task<Result<IReadOnlyList<DraftId>>> BringInAsync(IReadOnlyList<IncomingDrink> drinks, CancellationToken cancellation = default) =>
        StartAsync([.. drinks.Select(d => d.ToStart(DraftId.New()))], cancellation);

    private async Task<Result<IReadOnlyList<DraftId>>> StartAsync(IReadOnlyList<DraftToStart> drafts, CancellationToken cancellation)
    {
        try
        {
            return await new DraftStarting(house.Writer, time).Start(drafts, by, _page, cancellation);
        }
        catch (StoreException problem)
        {
            return Result.Invalid<IReadOnlyList<DraftId>>(new Problem("store", problem.Message));
        }
    }

    private static Result<DraftId> One(Result<IReadOnlyList<DraftId>> started) => started.IsOk ? Result.Ok(started.Value[0]) : started.As<DraftId>();
}
