using MenuLab.Core;
using MenuLab.Core.Drafts.Rounds;
using MenuLab.Core.Iterations;
using MenuLab.Data.Opening;
using MenuLab.Web.Accounts;

namespace MenuLab.Web.Features.Rounds;

/// <summary>
/// The steps of a round that need the server. Each may be sent again: it does nothing twice. They answer with where to go on
/// and what to tell, or with what is wrong in plain words.
/// </summary>
public static class RoundRoutes
{
    /// <summary>Adds the routes.</summary>
    public static void Map(IEndpointRouteBuilder routes)
    {
        Add(routes, "pours", (desk, id, letter, query) => letter is { } l ? desk.AddPourAsync(id, l, RoundKeys.Letter(query["like"])) : NoPour);
        Add(routes, "poured", (desk, id, _, _) => desk.PouredAsync(id));
        Add(routes, "bottled", (desk, id, letter, _) => letter is { } l ? desk.BottleAsync(id, l) : NoPour);
        Add(routes, "end", (desk, id, letter, _) => desk.EndAsync(id, letter));
        Add(routes, "bench", (desk, id, letter, _) => letter is { } l ? desk.ToBenchAsync(id, l) : NoPour);
        Add(routes, "next", (desk, id, letter, query) => letter is { } l && NewId(query) is { } made ? desk.GoOnAsync(id, l, new RoundId(made)) : NoPour);
        Add(routes, "iteration", (desk, id, letter, query) => letter is { } l && NewId(query) is { } made ? desk.ToIterationAsync(id, l, new IterationId(made)) : NoPour);
    }

    private static void Add(IEndpointRouteBuilder routes, string step, Func<RoundDesk, RoundId, PourLetter?, IQueryCollection, Task<Result<RoundAnswer>>> take) =>
        routes.MapPost($"/rounds/{{id:guid}}/{step}", async (HttpRequest request, RoundDesk desk, Guid id) =>
            OwnScript.Sent(request)
                ? await AnswerAsync(() => take(desk, new RoundId(id), RoundKeys.Letter(request.Query["letter"]), request.Query))
                : Results.StatusCode(StatusCodes.Status403Forbidden))
        .DisableAntiforgery()
        .RequireAuthorization(May.WorkDrinks);

    private static async Task<IResult> AnswerAsync(Func<Task<Result<RoundAnswer>>> take)
    {
        try
        {
            var done = await take();
            return done.IsOk
                ? Results.Json(done.Value)
                : Results.Text(string.Join(' ', done.Problems.Select(p => p.Message)), "text/plain; charset=utf-8", statusCode: StatusCodes.Status422UnprocessableEntity);
        }
        catch (StoreException problem)
        {
            return Results.Text(problem.Message, "text/plain; charset=utf-8", statusCode: StatusCodes.Status503ServiceUnavailable);
        }
    }

    private static Task<Result<RoundAnswer>> NoPour => Task.FromResult(Result.Invalid<RoundAnswer>(new Problem("letter", "Say which pour.")));

    private static Guid? NewId(IQueryCollection query) => Guid.TryParse(query["id"], out var id) ? id : null;
}
