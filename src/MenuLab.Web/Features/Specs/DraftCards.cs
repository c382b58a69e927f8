using System.Globalization;
using MenuLab.Core;
using MenuLab.Core.Drafts;
using MenuLab.Core.Iterations;
using MenuLab.Print;
using MenuLab.Web.Accounts;
using Microsoft.AspNetCore.Mvc;

namespace MenuLab.Web.Features.Specs;

/// <summary>Where cards of drafts are printed. Each answers with a PDF, or in plain words why there is none.</summary>
public static class DraftCards
{
    /// <summary>The card of a typed drink.</summary>
    public const string Path = "/card/draft";

    /// <summary>The card of a saved iteration.</summary>
    public static string OfIteration(IterationId id, string paper = "") => string.Create(CultureInfo.InvariantCulture, $"/card/iteration/{id.Value}") + Query(paper);

    /// <summary>The card of what is on the bench.</summary>
    public static string OfBench(DraftId id, string paper = "") => string.Create(CultureInfo.InvariantCulture, $"/card/drafts/{id.Value}") + Query(paper);

    /// <summary>Four cards to a sheet.</summary>
    public static string OfSheet(IEnumerable<DraftId> drafts) => $"/card/sheet?drafts={string.Join(',', drafts.Select(d => d.Value))}";

    /// <summary>Adds the routes.</summary>
    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapPost(Path, (CardDesk cards, [FromForm] string? text, [FromForm] string? unit, [FromForm] string? paper) =>
            Answer(cards.Paper(paper), on => cards.Typed(text ?? "", unit == "fl oz" ? Unit.FluidOunce : Unit.Millilitre, on)))
        // It stores nothing and answers only with what was sent, so a forged request gains nothing.
        .DisableAntiforgery()
        .RequireAuthorization(May.ReadDrinks);

        routes.MapGet("/card/iteration/{id:guid}", (CardDesk cards, Guid id, string? paper) =>
            AnswerAsync(cards.Paper(paper), on => cards.IterationAsync(new IterationId(id), on), "There is no such iteration in this house."))
        .RequireAuthorization(May.WorkDrinks);

        routes.MapGet("/card/drafts/{id:guid}", (CardDesk cards, Guid id, string? paper) =>
            AnswerAsync(cards.Paper(paper), on => cards.BenchAsync(new DraftId(id), on), "There is no such draft in this house."))
        .RequireAuthorization(May.WorkDrinks);

        routes.MapGet("/card/sheet", async (CardDesk cards, string? drafts, string? paper) =>
        {
            var ids = Ids(drafts);
            return ids.IsOk
                ? await AnswerAsync(cards.Paper(paper, sheet: true), on => cards.SheetAsync(ids.Value, on), "One of these drafts is not in this house.")
                : Problems(ids.Problems);
        })
        .RequireAuthorization(May.WorkDrinks);
    }

    private static Result<IReadOnlyList<DraftId>> Ids(string? drafts)
    {
        var asked = (drafts ?? "").Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        var ids = asked.Select(a => Guid.TryParse(a, out var id) ? id : (Guid?)null).OfType<Guid>().Select(id => new DraftId(id)).ToList();
        return ids.Count == asked.Length && ids.Count is > 0 and <= CardDesk.MaxDrinks
            ? Result.Ok<IReadOnlyList<DraftId>>(ids)
            : Result.Invalid<IReadOnlyList<DraftId>>(new Problem("drafts", $"Name 1 to {CardDesk.MaxDrinks} drafts by their ids, with commas between them."));
    }

    private static async Task<IResult> AnswerAsync(Result<CardPaper> paper, Func<CardPaper, Task<Result<byte[]>?>> print, string missing) =>
        !paper.IsOk ? Problems(paper.Problems)
        : await print(paper.Value) is { } card ? Answer(paper, _ => card)
        : Results.Text(missing, "text/plain; charset=utf-8", statusCode: StatusCodes.Status404NotFound);

    private static IResult Answer(Result<CardPaper> paper, Func<CardPaper, Result<byte[]>> print)
    {
        if (!paper.IsOk)
        {
            return Problems(paper.Problems);
        }
        var card = print(paper.Value);
        return card.IsOk ? Results.File(card.Value, "application/pdf") : Problems(card.Problems);
    }

    private static IResult Problems(IEnumerable<Problem> problems) =>
        Results.Text(string.Join('\n', problems.Select(p => p.Message)), "text/plain; charset=utf-8", statusCode: StatusCodes.Status422UnprocessableEntity);

    private static string Query(string paper) => paper.Length > 0 ? "?paper=" + paper : "";
}
