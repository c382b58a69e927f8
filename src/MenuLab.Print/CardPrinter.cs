using System.Globalization;
using MenuLab.Core;
using MenuLab.Core.Specs;
using PdfSharp.Pdf;
using PdfSharp.UniversalAccessibility;

namespace MenuLab.Print;

/// <summary>Prints spec cards: vector only, black on white, real text in embedded faces.</summary>
public static class CardPrinter
{
    /// <summary>The PDF of one card; a sheet of four carries it four times.</summary>
    /// <returns>The file, or problems that a person can act on: a character that cannot be printed, a card that does not fit.</returns>
    public static Result<byte[]> Print(CardContent content, CardPaper paper) => Print([content], paper);

    /// <summary>The PDF of several cards: a page each, or four to a sheet. One alone fills its sheet.</summary>
    /// <returns>The file, or problems that a person can act on, those of all cards at once.</returns>
    /// <exception cref="ArgumentException">No card.</exception>
    public static Result<byte[]> Print(IReadOnlyList<CardContent> contents, CardPaper paper)
    {
        var drawn = Draw(contents, paper);
        return drawn.IsOk ? Result.Ok(drawn.Value.Pdf) : drawn.As<byte[]>();
    }

    internal static Result<PrintedCards> Draw(IReadOnlyList<CardContent> contents, CardPaper cardPaper)
    {
        if (contents.Count == 0)
        {
            throw new ArgumentException("There is no card to print.", nameof(contents));
        }
        var paper = Paper.Of(cardPaper);
        var set = contents.Select(content => Set(content, paper)).ToList();
        var problems = set.SelectMany(card => card.Problems).ToList();
        if (problems.Count > 0)
        {
            return Result.Invalid<PrintedCards>(problems);
        }
        var cards = set.Select(card => card.Value).ToList();
        var perPage = paper.Across * paper.Down;
        if (cards.Count == 1)
        {
            cards = [.. Enumerable.Repeat(cards[0], perPage)];
        }

        using var document = new PdfDocument();
        document.Info.Title = string.Join(", ", contents.Select(content => content.Name).Distinct());
        document.Info.CreationDate = contents[0].PrintedOn.ToDateTime(TimeOnly.MinValue, DateTimeKind.Unspecified);
        document.Language = "en";
        var tags = UAManager.ForDocument(document);
        var boxes = new List<IReadOnlyList<DrawnBox>>();
        foreach (var onPage in cards.Chunk(perPage))
        {
            using var page = new Page(document, tags, paper);
            for (var i = 0; i < onPage.Length; i++)
            {
                foreach (var part in onPage[i])
                {
                    page.Draw(part, i % paper.Across * paper.CardWidth, i / paper.Across * paper.CardHeight);
                }
            }
            if (perPage > 1)
            {
                page.Draw(CutMarks(paper), 0, 0);
            }
            boxes.Add(page.Boxes);
        }
        using var stream = new MemoryStream();
        document.Save(stream, closeStream: false);
        return Result.Ok(new PrintedCards(stream.ToArray(), boxes));
    }

    private static Result<IReadOnlyList<Part>> Set(CardContent content, Paper paper)
    {
        var spelling = new Spelling();
        var spelled = Spelled(content, spelling);
        if (spelling.Problems.Count > 0)
        {
            return Result.Invalid<IReadOnlyList<Part>>(spelling.Problems);
        }
        CardSetting? last = null;
        foreach (var setting in CardSetting.All(spelled, paper.CardWidth, paper.CardHeight))
        {
            if (setting.Fits)
            {
                return Result.Ok(setting.Parts());
            }
            last = setting;
        }
        return Result.Invalid<IReadOnlyList<Part>>(new Problem(content.Name, last!.Over < double.PositiveInfinity
            ? string.Create(CultureInfo.InvariantCulture, $"The card does not fit on {paper.Name}: it needs {Math.Ceiling(last.Over)} mm more at the smallest type. Most room goes to the {last.Largest}: shorten there, or take a larger paper.")
            : $"The card does not fit on {paper.Name}: its amounts leave no room for the names. Shorten the amounts, or take a larger paper."));
    }

    private static CardContent Spelled(CardContent content, Spelling spelling) => content with
    {
        Name = spelling.Set(content.Name, "Name"),
        Issue = spelling.Set(content.Issue, "Issue"),
        Facts = [.. content.Facts.Select(fact => new CardFact(spelling.Set(fact.Name, "Build"), spelling.Set(fact.Text, fact.Name)))],
        Lines =
        [
            .. content.Lines.Select(line =>
            {
                var field = $"Line {line.Number.ToString(CultureInfo.InvariantCulture)}";
                return line with
                {
                    Amount = Spelled(line.Amount, field, spelling), Other = Spelled(line.Other, field, spelling),
                    Name = spelling.Set(line.Name, field), Detail = spelling.Set(line.Detail, field),
                };
            }),
        ],
        Ladder = [.. content.Ladder.Select(rung => rung with { Label = spelling.Set(rung.Label, "Ladder") })],
        Steps = [.. content.Steps.Select((step, i) => spelling.Set(step, $"Step {(i + 1).ToString(CultureInfo.InvariantCulture)}"))],
        Allergens = spelling.Set(content.Allergens, "Allergens"),
        OpenAllergens = spelling.Set(content.OpenAllergens, "Allergens"),
        CrossContact = spelling.Set(content.CrossContact, "Allergens"),
        Strength = spelling.Set(content.Strength, "Strength"),
        Energy = spelling.Set(content.Energy, "Energy"),
        Cautions = [.. content.Cautions.Select(caution => spelling.Set(caution, "Cautions"))],
    };

    private static CardAmount Spelled(CardAmount amount, string field, Spelling spelling) =>
        new(spelling.Set(amount.Figure, field), spelling.Set(amount.Unit, field));

    /// <summary>Short strokes where the knife goes in, and a cross where the cuts meet; none of them on a card's contents.</summary>
    private static Part CutMarks(Paper paper)
    {
        const double from = Paper.SafeMargin + 0.2;
        const double length = 4;
        const double stroke = 0.15;
        var (x, y) = (paper.CardWidth, paper.CardHeight);
        return Part.Artifact(
            new LineMark(x, from, x, from + length, stroke), new LineMark(x, paper.Height - from, x, paper.Height - from - length, stroke),
            new LineMark(from, y, from + length, y, stroke), new LineMark(paper.Width - from, y, paper.Width - from - length, y, stroke),
            new LineMark(x - length / 2, y, x + length / 2, y, stroke), new LineMark(x, y - length / 2, x, y + length / 2, stroke));
    }
}

/// <summary>A file and what lies where on each of its pages.</summary>
internal sealed record PrintedCards(byte[] Pdf, IReadOnlyList<IReadOnlyList<DrawnBox>> Pages);
