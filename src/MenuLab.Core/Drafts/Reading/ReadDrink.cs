namespace MenuLab.Core.Drafts.Reading;

/// <summary>A drink as the reader understood it. Every piece of the typed text stands in one of its lists.</summary>
public sealed record ReadDrink
{
    /// <summary>The drink's name; empty where none was typed.</summary>
    public required string Name { get; init; }

    /// <summary>Lines fully read, in the order typed.</summary>
    public required IReadOnlyList<DraftLine> Lines { get; init; }

    /// <summary>Lines with more than one reading, or with an ingredient that the pantry lacks; kept as typed until answered.</summary>
    public required IReadOnlyList<LineQuestion> Questions { get; init; }

    /// <summary>Lines that could not be read; kept as typed.</summary>
    public required IReadOnlyList<UnreadLine> Unread { get; init; }

    /// <summary>Method, ice, glass, strain and steps.</summary>
    public required Build Build { get; init; }

    /// <summary>Yield as typed ("makes 2", "yield 750 ml"); null where none.</summary>
    public ReadYield? Yield { get; init; }

    /// <summary>Everything else that was typed, and what the reader has to say about the drink as a whole.</summary>
    public required IReadOnlyList<string> Notes { get; init; }

    /// <summary>What became of each source line that is not blank: none is dropped.</summary>
    public required IReadOnlyList<SourceLine> Account { get; init; }

    /// <summary>Every line, question and unread line in the order typed; none is left out, though a piece of text may give several.</summary>
    /// <param name="line">Makes something of a line.</param>
    /// <param name="question">Makes something of a question.</param>
    /// <param name="unread">Makes something of an unread line.</param>
    public IReadOnlyList<T> InOrder<T>(Func<DraftLine, T> line, Func<LineQuestion, T> question, Func<UnreadLine, T> unread)
    {
        var lines = new Queue<T>(Lines.Select(line));
        var questions = new Queue<T>(Questions.Select(question));
        var left = new Queue<T>(Unread.Select(unread));
        var ordered = new List<T>();
        foreach (var piece in Account)
        {
            var next = piece.As switch { ReadAs.Line => lines, ReadAs.Question => questions, ReadAs.Unread => left, _ => null };
            if (next is { Count: > 0 })
            {
                ordered.Add(next.Dequeue());
            }
        }
        return [.. ordered, .. lines, .. questions, .. left];
    }
}

/// <summary>What a piece of source text became.</summary>
public enum ReadAs
{
    /// <summary>The drink's name.</summary>
    Name,
    /// <summary>A line of the drink.</summary>
    Line,
    /// <summary>A question.</summary>
    Question,
    /// <summary>Kept as typed, unread.</summary>
    Unread,
    /// <summary>Build.</summary>
    Build,
    /// <summary>Yield.</summary>
    Yield,
    /// <summary>A note.</summary>
    Note,
    /// <summary>An edit of lines that were there.</summary>
    Edit,
}

/// <summary>A piece of source text and what it became; a source line may have several.</summary>
/// <param name="Line">Number of the source line, from 1.</param>
/// <param name="Column">Column of its first character, from 1.</param>
/// <param name="Text">The text, exactly.</param>
/// <param name="As">What it became.</param>
public sealed record SourceLine(int Line, int Column, string Text, ReadAs As);

/// <summary>A line that needs an answer before it counts.</summary>
public sealed record LineQuestion
{
    /// <summary>The text as typed, exactly.</summary>
    public required string Text { get; init; }

    /// <summary>Source line, from 1.</summary>
    public required int Line { get; init; }

    /// <summary>Column of the piece that is asked about, from 1.</summary>
    public required int Column { get; init; }

    /// <summary>What is asked, one sentence.</summary>
    public required string Asks { get; init; }

    /// <summary>The possible answers, likeliest first.</summary>
    public required IReadOnlyList<Candidate> Candidates { get; init; }

    /// <summary>mL understood where the amount is certain, so that the drink's unknown share can be told; else NaN.</summary>
    public double Millilitres { get; init; } = double.NaN;

    /// <summary>Where the line would go.</summary>
    public Place Place { get; init; } = Place.In;
}

/// <summary>One possible answer to a question.</summary>
/// <param name="Label">What it says on the button, e.g. "Lime juice, fresh" or "as new: quince cordial".</param>
/// <param name="Line">The line as it would be read with this answer; null for "as new", whose composition nobody knows yet.</param>
public sealed record Candidate(string Label, DraftLine? Line);

/// <summary>A line that could not be read.</summary>
/// <param name="Text">The text as typed, exactly.</param>
/// <param name="Line">Source line, from 1.</param>
/// <param name="Column">Column where reading failed, from 1.</param>
/// <param name="Reason">One sentence: what was not understood and how to write it.</param>
public sealed record UnreadLine(string Text, int Line, int Column, string Reason);

/// <summary>What a text says it makes.</summary>
/// <param name="Text">As typed.</param>
/// <param name="Drinks">Number of drinks, or NaN.</param>
/// <param name="Millilitres">Volume, mL, or NaN.</param>
public sealed record ReadYield(string Text, double Drinks, double Millilitres);

/// <summary>How bare numbers and ratios are to be read.</summary>
public sealed record ReadSettings
{
    /// <summary>Unit of a bare number: <see cref="Unit.Millilitre"/> or <see cref="Unit.FluidOunce"/>.</summary>
    public Unit BareNumber { get; init; } = Unit.Millilitre;

    /// <summary>Total that parts are scaled to where the text names none, mL; null keeps parts as a question.</summary>
    public double? PartsTotalMillilitres { get; init; }

    /// <summary>Key of the method of the drink that a line is read for, where the text names none; null for none.</summary>
    public string? Method { get; init; }
}
