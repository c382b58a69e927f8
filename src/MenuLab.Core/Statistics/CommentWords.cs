using MenuLab.Core.Drafts.Reading;
using MenuLab.Core.House;

namespace MenuLab.Core.Statistics;

/// <summary>What one taster wrote about one sample.</summary>
/// <param name="Taster">The taster, counted from 0.</param>
/// <param name="Sample">The sample, counted from 0.</param>
/// <param name="Text">The comment as written.</param>
public readonly record struct Comment(int Taster, int Sample, string Text);

/// <summary>One taster said one descriptor of one sample; counted once however often he said it.</summary>
/// <param name="Taster">The taster, counted from 0.</param>
/// <param name="Sample">The sample, counted from 0.</param>
/// <param name="Descriptor">The descriptor, as the house's list has it.</param>
public readonly record struct Mention(int Taster, int Sample, string Descriptor);

/// <summary>A comment that says too much or too little of something.</summary>
/// <param name="Taster">The taster, counted from 0.</param>
/// <param name="Sample">The sample, counted from 0.</param>
/// <param name="Descriptor">The descriptor.</param>
/// <param name="TooMuch">Too much of it; otherwise too little.</param>
public readonly record struct Hint(int Taster, int Sample, string Descriptor, bool TooMuch);

/// <summary>What comments come to, before a person has confirmed it.</summary>
/// <param name="Mentions">Descriptors said of samples.</param>
/// <param name="Hints">Descriptors said to be too much or too little.</param>
/// <param name="Unmatched">Words on no list, in the form they were compared in, the most frequent first; they stay visible.</param>
public sealed record CommentCount(IReadOnlyList<Mention> Mentions, IReadOnlyList<Hint> Hints, IReadOnlyList<string> Unmatched);

/// <summary>Counts descriptors in free comments by the house's own list of words.</summary>
public static class CommentWords
{
    /// <summary>A descriptor is reported when so many tasters said it.</summary>
    public const int FewestTasters = 3;

    /// <summary>Or when this share of tasters said it.</summary>
    public const double FewestShare = 0.30;

    // A negation or a measure reaches this many words on ("not at all very bitter").
    private const int Reach = 4;

    // Shorter words are too near to each other to be guessed.
    private const int ShortestGuessed = 6;

    private static readonly HashSet<string> Negations = ["NOT", "NO", "NEVER", "WITHOUT", "ISNT", "ARENT", "DOESNT", "HARDLY", "LACKS", "LACKING"];
    private static readonly HashSet<string> Little = ["ENOUGH"];
    private static readonly HashSet<string> Turns = ["BUT", "AND", "THEN"];
    private static readonly HashSet<string> Plain =
    [
        "A", "AN", "THE", "IS", "IT", "IN", "OF", "AT", "ON", "TO", "WITH", "AS", "BIT", "LITTLE", "LOT", "VERY", "QUITE", "RATHER", "SLIGHTLY", "REALLY", "SO", "ALL", "THIS",
        "THAT", "FOR", "ME", "I", "NEEDS", "NEED", "COULD", "BE", "MORE", "LESS", "SOME", "TASTE", "TASTES", "NOTE", "NOTES", "DRINK",
    ];

    /// <summary>Counts descriptors.</summary>
    /// <param name="comments">The comments.</param>
    /// <param name="words">The house's words, each with its descriptor ("oaky" as "woody").</param>
    /// <returns>Mentions once a taster, sample and descriptor; hints; words on no list.</returns>
    /// <remarks>
    /// Source: docs/statistics.md, section 5.3: case, accents and punctuation do not count; endings are taken off; a word of six letters may have
    /// one slip. "Not bitter" counts as absent; "too bitter", "too little bitterness" and "not bitter enough" are hints and, the first, mentions. English word order. Valid for: short notes; a person confirms the
    /// count before it is used. Error: unknown; what is not understood is listed.
    /// </remarks>
    public static CommentCount Count(IReadOnlyList<Comment> comments, IReadOnlyDictionary<string, string> words)
    {
        var byStem = new Dictionary<string, string>();
        var spelling = new Spelling();
        foreach (var (word, descriptor) in words)
        {
            var stem = Stem(Letters(SearchName.Of(word)));
            byStem[stem] = descriptor;
            spelling.Add(stem);
        }
        spelling.Seal();

        var mentions = new HashSet<Mention>();
        var hints = new HashSet<Hint>();
        var unmatched = new List<string>();
        foreach (var comment in comments)
        {
            foreach (var clause in SearchName.Of(comment.Text).Split([',', ';', '.', '!', '?', ':', '(', ')', '/'], StringSplitOptions.RemoveEmptyEntries))
            {
                Read(comment, [.. clause.Split([' ', '-'], StringSplitOptions.RemoveEmptyEntries).Select(Letters).Where(word => word.Length > 0)]);
            }
        }
        return new CommentCount([.. mentions], [.. hints], [.. unmatched.GroupBy(word => word).OrderByDescending(group => group.Count()).ThenBy(group => group.Key, StringComparer.Ordinal).Select(group => group.Key)]);

        void Read(Comment comment, string[] clause)
        {
            var (negated, tooMuch, tooLittle) = (-Reach - 1, -Reach - 1, -Reach - 1);
            for (var place = 0; place < clause.Length; place++)
            {
                var word = clause[place];
                if (Turns.Contains(word))
                {
                    (negated, tooMuch, tooLittle) = (-Reach - 1, -Reach - 1, -Reach - 1);
                }
                else if (Negations.Contains(word))
                {
                    negated = place;
                }
                else if (word is "TOO" or "OVERLY")
                {
                    tooMuch = place;
                }
                else if (word is "LITTLE" && tooMuch == place - 1)
                {
                    (tooMuch, tooLittle) = (-Reach - 1, place);
                }
                else if (Descriptor(word) is { } descriptor)
                {
                    var isNegated = place - negated <= Reach;
                    // "Not bitter enough" and "not enough bitterness": enough may stand on either side.
                    if (isNegated ? clause.Skip(negated).Take(place - negated + 2).Any(Little.Contains) : place - tooLittle <= Reach)
                    {
                        hints.Add(new Hint(comment.Taster, comment.Sample, descriptor, TooMuch: false));
                    }
                    else if (!isNegated)
                    {
                        mentions.Add(new Mention(comment.Taster, comment.Sample, descriptor));
                        if (place - tooMuch <= Reach)
                        {
                            hints.Add(new Hint(comment.Taster, comment.Sample, descriptor, TooMuch: true));
                        }
                    }
                }
                else if (!Plain.Contains(word) && !Little.Contains(word) && word is not "MUCH")
                {
                    unmatched.Add(word);
                }
            }
        }

        string? Descriptor(string word)
        {
            var stem = Stem(word);
            if (byStem.TryGetValue(stem, out var found))
            {
                return found;
            }
            // Two words equally near are a question for a person.
            var near = stem.Length >= ShortestGuessed ? spelling.Find(stem, 1) : [];
            return near.Count == 1 ? byStem[near[0].Word] : null;
        }
    }

    /// <summary>Descriptors that enough tasters said to be reported.</summary>
    /// <param name="mentions">Confirmed mentions.</param>
    /// <param name="tasters">How many tasters there were, 1 or more.</param>
    /// <returns>Descriptors, most tasters first.</returns>
    /// <remarks>Source: docs/statistics.md, section 5.3: three tasters or 30 per cent. Valid for: any count. Error: none.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">No tasters.</exception>
    public static IReadOnlyList<string> Reported(IReadOnlyList<Mention> mentions, int tasters)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(tasters, 1);
        return [.. mentions.GroupBy(mention => mention.Descriptor)
            .Select(group => (group.Key, Tasters: group.Select(mention => mention.Taster).Distinct().Count()))
            .Where(said => said.Tasters >= FewestTasters || said.Tasters >= FewestShare * tasters)
            .OrderByDescending(said => said.Tasters).ThenBy(said => said.Key, StringComparer.Ordinal)
            .Select(said => said.Key)];
    }

    private static string Letters(string word) => string.Concat(word.Where(char.IsLetter));

    // Bitter and bitterness, oak and oaky, smoke and smoky, herb and herbs meet; three letters are left at least.
    private static string Stem(string word)
    {
        foreach (var ending in new[] { "INESS", "NESS", "IER", "IEST", "EST", "ES", "S", "Y", "E" })
        {
            if (word.Length >= ending.Length + 3 && word.EndsWith(ending, StringComparison.Ordinal))
            {
                return word[..^ending.Length];
            }
        }
        return word;
    }
}
