using MenuLab.Core.House;

namespace MenuLab.Core.Drafts.Reading;

/// <summary>
/// Reads drinks as bars write them. Nothing is dropped and nothing guessed in silence: each piece of the text becomes a
/// line, part of the build, a yield, a note, a question with candidates, or stays unread with a reason; what was assumed
/// stands with the line. The rules are told in docs/reading.md. Never throws, whatever is typed; a reader may be used by
/// several threads at once.
/// </summary>
/// <param name="vocabulary">Names of the house.</param>
/// <param name="measures">What its measures hold.</param>
public sealed class DrinkReader(Vocabulary vocabulary, MeasuresSet measures)
{
    /// <summary>The names that it reads by.</summary>
    public Vocabulary Vocabulary => vocabulary;

    /// <summary>Longest text that <see cref="Read"/> takes, characters; a longer one comes back unread, whole.</summary>
    public const int MaxDrink = 100_000;

    /// <summary>Longest text that <see cref="ReadSheet"/> takes, characters.</summary>
    public const int MaxSheet = 2_000_000;

    /// <summary>Longest source line that is read, characters; a longer one stays unread.</summary>
    public const int MaxLine = 2_000;

    /// <summary>Reads one drink; its first line may be its name.</summary>
    /// <param name="text">As typed or pasted; lines end in any of the usual ways.</param>
    /// <param name="settings">Unit of a bare number, total of parts.</param>
    public ReadDrink Read(string text, ReadSettings settings)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(settings);
        return text.Length > MaxDrink ? TooLong(text, MaxDrink, "one drink at a time") : ReadLines(Lines(text), settings);
    }

    /// <summary>
    /// Reads a text file of drinks: each is its name on a line, its lines below, an empty line between drinks. Line
    /// numbers count from the top of the file.
    /// </summary>
    public IReadOnlyList<ReadDrink> ReadSheet(string text, ReadSettings settings)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(settings);
        if (text.Length > MaxSheet)
        {
            return [TooLong(text, MaxSheet, "it in several files")];
        }
        var drinks = new List<ReadDrink>();
        var block = new List<(int Number, string Text)>();
        foreach (var line in Lines(text))
        {
            if (string.IsNullOrWhiteSpace(line.Text))
            {
                Finish();
            }
            else
            {
                block.Add(line);
            }
        }
        Finish();
        return drinks;

        void Finish()
        {
            if (block.Count > 0)
            {
                drinks.Add(ReadLines(block, settings));
                block.Clear();
            }
        }
    }

    /// <summary>
    /// Reads an edit against a drink that is there: "as 4 but lemon 20 > 22.5", "no salt", "+ 2 dashes bitters", "swap
    /// honey for date syrup", "double the syrup". What is clear is done; what is not is asked and changes nothing.
    /// </summary>
    /// <param name="before">The drink as it was read or loaded.</param>
    /// <param name="text">The edit; commas, semicolons and line ends part several.</param>
    /// <param name="settings">Unit of a bare number, total of parts.</param>
    /// <returns>The whole drink after the edit; questions and unread lines are those of the edit.</returns>
    public ReadDrink Edit(ReadDrink before, string text, ReadSettings settings)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(settings);
        if (text.Length > MaxDrink)
        {
            var unread = TooLong(text, MaxDrink, "one edit at a time");
            return before with { Questions = [], Unread = unread.Unread, Account = unread.Account };
        }
        var editor = new EditReader(vocabulary, measures, settings, before);
        foreach (var (number, line) in Lines(text))
        {
            if (line.Length > MaxLine)
            {
                editor.Keep(number, line, LineTooLong);
            }
            else if (!string.IsNullOrWhiteSpace(line))
            {
                editor.Add(number, line);
            }
        }
        return editor.Done();
    }

    internal const string LineTooLong = "This line is too long to be one: write a line for each ingredient.";

    private ReadDrink ReadLines(IReadOnlyList<(int Number, string Text)> lines, ReadSettings settings)
    {
        var draft = new DrinkInReading(vocabulary, measures, settings);
        foreach (var (number, line) in lines)
        {
            if (line.Length > MaxLine)
            {
                draft.KeepUnread(number, 1, line, LineTooLong);
            }
            else if (!string.IsNullOrWhiteSpace(line))
            {
                draft.Add(number, line);
            }
        }
        return draft.Done();
    }

    private static ReadDrink TooLong(string text, int most, string how) => new()
    {
        Name = "",
        Lines = [],
        Questions = [],
        Unread = [new UnreadLine(text, 1, 1, $"This text is longer than {most} characters: paste {how}.")],
        Build = new Build(),
        Notes = [],
        Account = [new SourceLine(1, 1, text, ReadAs.Unread)],
    };

    /// <summary>Source lines with their numbers from 1.</summary>
    private static List<(int Number, string Text)> Lines(string text)
    {
        var lines = new List<(int, string)>();
        var from = 0;
        var number = 1;
        for (var i = 0; i <= text.Length; i++)
        {
            if (i < text.Length && text[i] is not ('\n' or '\r' or '\u2028' or '\u2029' or '\u0085' or '\v' or '\f'))
            {
                continue;
            }
            lines.Add((number++, text[from..i]));
            if (i + 1 < text.Length && text[i] == '\r' && text[i + 1] == '\n')
            {
                i++;
            }
            from = i + 1;
        }
        return lines;
    }
}
