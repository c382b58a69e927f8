namespace MenuLab.Core.House;

/// <summary>The rule for short texts that stand on one line: names, places, reasons.</summary>
public static class OneLine
{
    /// <summary>Trims a text and adds a problem when its length is wrong or it holds a line break or another control character.</summary>
    /// <param name="text">As typed.</param>
    /// <param name="shortest">Fewest characters, 0 and up.</param>
    /// <param name="longest">Most characters.</param>
    /// <param name="field">Field of the problem.</param>
    /// <param name="what">What is asked for, with its article: "a name".</param>
    /// <param name="problems">Takes the problem.</param>
    /// <returns>The trimmed text, whether it has a problem or not.</returns>
    public static string Check(string? text, int shortest, int longest, string field, string what, List<Problem> problems)
    {
        var trimmed = text?.Trim() ?? "";
        if (trimmed.Length < shortest || trimmed.Length > longest)
        {
            problems.Add(new Problem(field, shortest == 0 ? $"Give {what} of at most {longest} characters." : $"Give {what} of {shortest} to {longest} characters."));
        }
        else if (trimmed.Any(char.IsControl))
        {
            problems.Add(new Problem(field, $"Give {what} without line breaks or other control characters."));
        }
        return trimmed;
    }
}
