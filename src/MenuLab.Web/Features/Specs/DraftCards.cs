using MenuLab.Core;
using MenuLab.Core.Drafts;
using MenuLab.Core.Specs;
using MenuLab.Print;
using MenuLab.Web.Accounts;
using MenuLab.Web.Features.Bench;
using MenuLab.Web.Features.House;
using Microsoft.AspNetCore.Mvc;

namespace MenuLab.Web.Features.Specs;

/// <summary>Prints the card of a typed drink. Nobody has approved it, so it says DRAFT across.</summary>
public sealed class DraftCards(CurrentHouse current, TimeProvider clock)
{
    /// <summary>Where a card is printed.</summary>
    public const string Path = "/card/draft";

    /// <summary>Adds the route.</summary>
    public static void Map(IEndpointRouteBuilder routes) =>
        routes.MapPost(Path, (DraftCards cards, [FromForm] string? text, [FromForm] string? unit, [FromForm] string? paper) =>
        {
            var card = cards.Of(text ?? "", unit == "fl oz" ? Unit.FluidOunce : Unit.Millilitre, Enum.TryParse<CardPaper>(paper, out var chosen) ? chosen : CardPaper.A6);
            return card.IsOk
                ? Results.File(card.Value, "application/pdf")
                : Results.Text(string.Join('\n', card.Problems.Select(p => p.Message)), "text/plain; charset=utf-8", statusCode: StatusCodes.Status422UnprocessableEntity);
        })
        // It stores nothing and answers only with what was sent, so a forged request gains nothing.
        .DisableAntiforgery()
        .RequireAuthorization(May.ReadDrinks);

    /// <summary>The card of a typed drink as a PDF, or what a person must do before there can be one.</summary>
    public Result<byte[]> Of(string text, Unit bareNumber, CardPaper paper)
    {
        var book = current.Book;
        var drink = book.Pasted.Work(text, bareNumber);
        if (drink.Read.Lines.Count == 0)
        {
            return Result.Invalid<byte[]>(new Problem("text", "There is no line to print yet: type an amount and an ingredient, and answer what is asked."));
        }
        var content = SpecCard.Content(new CardRequest
        {
            Name = drink.Read.Name.Length > 0 ? drink.Read.Name : "No name yet",
            Issue = "on the bench now",
            IsDraft = true,
            PrintedOn = book.Today(clock),
            Lines = drink.Read.Lines,
            Names = drink.Read.Lines.Select(l => l.Ingredient).Distinct().ToDictionary(id => id, id => book.Stock.Pantry.Find(id)!.Name),
            Build = drink.Read.Build,
            Catalogue = book.Stock.Catalogue,
            Balance = drink.Balance,
            Grid = book.Grid,
            FluidOuncesFirst = bareNumber == Unit.FluidOunce,
            Cautions = [.. NotOnTheCard(drink), .. drink.Cautions.Select(c => c.Text)],
        });
        return CardPrinter.Print(content, paper);
    }

    // A line that is missing from a card without a word would be poured by nobody.
    private static IEnumerable<string> NotOnTheCard(WorkedDrink drink)
    {
        var open = drink.Read.Questions.Select(q => q.Text.Trim()).Concat(drink.Read.Unread.Select(u => u.Text.Trim())).ToList();
        return open.Count == 0 ? [] : [$"Not on this card, still open: {string.Join("; ", open)}."];
    }
}
