using System.Text.Json;
using MenuLab.Core.Drafts.Rounds;
using MenuLab.Data.Opening;
using MenuLab.Web.Accounts;
using Microsoft.AspNetCore.Http.Features;

namespace MenuLab.Web.Features.Capture;

/// <summary>
/// Where devices send what they captured. Every entry is answered for itself, when it is durable; an answer that got lost is
/// given again when the entry comes again.
/// </summary>
public static class CaptureRoutes
{
    /// <summary>Where entries go.</summary>
    public const string Entries = "/capture/entries";

    /// <summary>Where photos and sounds go and come from.</summary>
    public const string Attachments = "/capture/attachments/{id:guid}";

    private const int MostEntries = 50;

    /// <summary>Adds the routes.</summary>
    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapPost(Entries, async (HttpRequest request, CaptureDesk desk) =>
            OwnScript.Sent(request) ? await TakeAsync(request, desk) : Results.StatusCode(StatusCodes.Status403Forbidden))
        .DisableAntiforgery()
        .RequireAuthorization(May.WorkDrinks);

        routes.MapPost(Attachments, async (HttpRequest request, CaptureDesk desk, Guid id) =>
            OwnScript.Sent(request) ? await AttachAsync(request, desk, new AttachmentId(id)) : Results.StatusCode(StatusCodes.Status403Forbidden))
        .DisableAntiforgery()
        .RequireAuthorization(May.WorkDrinks);

        routes.MapGet(Attachments, async (CaptureDesk desk, Guid id) =>
            await desk.AttachmentAsync(new AttachmentId(id)) is { } found ? Results.Bytes(found.Bytes, found.MediaType) : Results.NotFound())
        .RequireAuthorization(May.WorkDrinks);
    }

    private static async Task<IResult> TakeAsync(HttpRequest request, CaptureDesk desk)
    {
        Limit(request, MostEntries * CaptureText.MostBytes);
        JsonElement[] sent;
        try
        {
            sent = await JsonSerializer.DeserializeAsync<JsonElement[]>(request.Body, cancellationToken: request.HttpContext.RequestAborted) ?? [];
        }
        catch (JsonException)
        {
            return Results.BadRequest();
        }
        if (sent.Length > MostEntries)
        {
            return Results.StatusCode(StatusCodes.Status413PayloadTooLarge);
        }
        try
        {
            return Results.Bytes(CaptureText.WriteAnswers(await desk.TakeAsync(sent)), "application/json");
        }
        catch (StoreException)
        {
            // The device keeps what it has and comes again.
            return Results.StatusCode(StatusCodes.Status503ServiceUnavailable);
        }
    }

    private static async Task<IResult> AttachAsync(HttpRequest request, CaptureDesk desk, AttachmentId id)
    {
        Limit(request, Attachment.MostBytes);
        using var bytes = new MemoryStream();
        await request.Body.CopyToAsync(bytes, request.HttpContext.RequestAborted);
        var kept = await desk.AttachAsync(id, request.ContentType, bytes.ToArray());
        return kept.IsOk
            ? Results.NoContent()
            : Results.Text(string.Join(' ', kept.Problems.Select(p => p.Message)), "text/plain; charset=utf-8", statusCode: StatusCodes.Status422UnprocessableEntity);
    }

    private static void Limit(HttpRequest request, long bytes)
    {
        if (request.HttpContext.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } limit)
        {
            limit.MaxRequestBodySize = bytes;
        }
    }
}
