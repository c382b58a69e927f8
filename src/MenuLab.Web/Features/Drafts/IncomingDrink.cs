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
        InOrder(read),
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
        var said = Said(Build);
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

    private static BuildFields Said(Build build) =>
        (build.Method is null ? 0 : BuildFields.Method)
        | (build.Seconds is null ? 0 : BuildFields.Seconds)
        | (build.Ice is null ? 0 : BuildFields.Ice)
        | (build.Glass is null ? 0 : BuildFields.Glass)
        | (build.Strain is null ? 0 : BuildFields.Strain)
        | (build.ServedOn is null ? 0 : BuildFields.ServedOn)
        | (build.Steps.Count == 0 ? 0 : BuildFields.Steps);

    // The account says in which order the three kinds were typed.
    private static List<IncomingLine> InOrder(ReadDrink read)
    {
        var lines = new Queue<IncomingLine>(read.Lines.Select(l => new IncomingLine(LineContent.Of(l), "", [])));
        var questions = new Queue<IncomingLine>(read.Questions.Select(Asked));
        var unread = new Queue<IncomingLine>(read.Unread.Select(u => new IncomingLine(LineContent.KeptAsTyped(u.Text), u.Reason, [])));
        var ordered = new List<IncomingLine>();
        foreach (var piece in read.Account)
        {
            var next = piece.As switch { ReadAs.Line => lines, ReadAs.Question => questions, ReadAs.Unread => unread, _ => null };
            if (next is { Count: > 0 })
            {
                ordered.Add(next.Dequeue());
            }
        }
        // A piece of text may give several lines; none is left out.
        ordered.AddRange([.. lines, .. questions, .. unread]);
        return ordered;
    }

    private static IncomingLine Asked(LineQuestion question) => new(
        LineContent.KeptAsTyped(question.Text, double.IsFinite(question.Millilitres) ? question.Millilitres : null, question.Place),
        question.Asks,
        [.. question.Candidates.Select(c => c.Label)]);
}
