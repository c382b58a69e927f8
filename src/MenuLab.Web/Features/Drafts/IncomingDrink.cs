using MenuLab.Core.Drafts;
using MenuLab.Core.Drafts.Reading;
using MenuLab.Core.House;
using MenuLab.Data.Drafts;

namespace MenuLab.Web.Features.Drafts;

/// <summary>A line of a drink that is brought in: what the draft will hold, and what the reader had to say about it.</summary>
/// <param name="Content">The line as the draft keeps it; without an ingredient it is kept as typed.</param>
/// <param name="Says">Empty where the line was read; else the question, or why it could not be read.</param>
/// <param name="Answers">Possible answers to the question.</param>
public sealed record IncomingLine(LineContent Content, string Says, IReadOnlyList<string> Answers)
{
    /// <summary>It was read and counts; else it is kept as typed until somebody answers.</summary>
    public bool IsRead => Content.Ingredient is not null;
}

/// <summary>A drink that was typed, pasted or read from a file, on its way to become a draft. Nothing typed is left out.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Lines">Every line, question and unread line, in the order typed.</param>
/// <param name="Build">The build; notes and the yield stand among its steps, word for word.</param>
public sealed record IncomingDrink(string Name, IReadOnlyList<IncomingLine> Lines, Build Build)
{
    /// <summary>What a drink without a name is called until somebody names it.</summary>
    public const string Nameless = "No name yet";

    /// <summary>A drink as the reader left it.</summary>
    public static IncomingDrink Of(ReadDrink read) => new(
        read.Name.Length > 0 ? read.Name : Nameless,
        read.InOrder(
            line => new IncomingLine(LineContent.Of(line), "", []),
            question => new IncomingLine(LineContent.KeptAsTyped(question), question.Asks, [.. question.Candidates.Select(c => c.Label)]),
            unread => new IncomingLine(LineContent.KeptAsTyped(unread.Text), unread.Reason, [])),
        // A draft has no other place for them, and the card prints the steps.
        read.Build with { Steps = [.. read.Build.Steps, .. read.Account.Where(piece => piece.As is ReadAs.Note or ReadAs.Yield).Select(piece => piece.Text.Trim())] });

    /// <summary>Nothing to bring in: no line at all.</summary>
    public bool IsEmpty => Lines.Count == 0;

    /// <summary>The draft that it becomes.</summary>
    public DraftToStart ToStart(DraftId id)
    {
        var actions = new List<EditAction>();
        LineId? above = null;
        foreach (var line in Lines)
        {
            var here = LineId.New();
            actions.Add(new AddLine(here, line.Content, above));
            above = here;
        }
        var said = EditFields.Said(Build);
        if (said != BuildFields.None)
        {
            actions.Add(new ChangeBuild(said, Build));
        }
        return new DraftToStart(id, Name, actions);
    }

    /// <summary>Why a draft cannot hold it (a line too long, too many lines); null where it can.</summary>
    public string? Problem(PersonId by)
    {
        var made = ToStart(DraftId.New()).Make(by, PageId.New(), DateTimeOffset.UnixEpoch);
        return made.IsOk ? null : made.Problems[0].Message;
    }
}
